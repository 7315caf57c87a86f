"""The picture of a piece changed at several lines: where they lie, paper and folds, the one straight new edge."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import measured, named, parsed, spots, words

from sitegen.diagrams import CannotDraw, Edge, TaperedPiece, write_svg
from sitegen.diagrams.kinds.slash_at_lines import LineAcross, SlashAtLines, describe, draw
from sitegen.quantities import inches

LEG = TaperedPiece(inches(12), inches(8), inches(30), inches(44), Edge.STRAIGHT)


def change(*lines: tuple[str, str], piece: TaperedPiece = LEG) -> SlashAtLines:
    return SlashAtLines("longer", "leg", piece, tuple(LineAcross(inches(at), inches(by)) for at, by in lines))


LONGER = change(("8", "1/2"), ("30", "3/2"))
SHORTER = change(("20", "-1"), ("30", "-2"))


def main_scale(svg: str) -> float:
    return float(parsed(svg).attrib["data-scale"])


def levels(svg: str, role: str) -> list[list[float]]:
    """The levels that each shape of a role reaches, in inches from the top."""
    top, unit = named(svg)["longer.new_cut_length"].start[1], main_scale(svg)
    return [sorted({round((y - top) / unit / 25.4, 2) for _, y in shape}) for shape in spots(svg, role)]


def test_every_line_draws_where_it_lies_and_what_it_adds() -> None:
    values = {line.name: line.mm for line in measured(write_svg(draw(LONGER), "p"))}
    assert values == {
        "longer.line_1.part_above": inches(8).mm,
        "longer.line_2.from_line_1": inches(22).mm,
        "longer.line_2.part_below": inches(14).mm,
        "longer.line_1.amount": inches("1/2").mm,
        "longer.line_2.amount": inches("3/2").mm,
        "longer.new_cut_length": inches(46).mm,
    }


def test_paper_of_the_second_line_lies_lower_by_what_the_first_added() -> None:
    assert levels(write_svg(draw(LONGER), "p"), "paper") == [[8, 8.5], [30.5, 32]]


def test_new_edge_is_one_straight_line_from_end_to_end_of_the_taper() -> None:
    svg = write_svg(draw(LONGER), "p")
    assert levels(svg, "trued") == [[14.5, 46]]
    assert levels(svg, "old") == [[14.5, 30.5], [32, 46]]


def test_both_sides_of_a_sleeve_are_trued() -> None:
    sleeve = TaperedPiece(inches(15), inches(9), inches(18), inches(24), cap=True)
    svg = write_svg(draw(change(("9", "1"), ("16", "1"), piece=sleeve)), "p")
    assert levels(svg, "trued") == [[6, 26], [6, 26]]


def test_lines_above_the_taper_leave_the_edge_as_it_is() -> None:
    svg = write_svg(draw(change(("4", "1"), ("10", "1"))), "p")
    assert not spots(svg, "trued")
    assert not spots(svg, "old")


def test_shortening_draws_a_fold_of_half_the_amount_at_every_line() -> None:
    svg = write_svg(draw(SHORTER), "p")
    assert {name: line.mm for name, line in named(svg).items() if name.endswith("fold")} == {
        "longer.line_1.fold": inches("1/2").mm,
        "longer.line_2.fold": inches(1).mm,
    }
    assert named(svg)["longer.new_cut_length"].mm == inches(41).mm
    assert [shape for shape in levels(svg, "paper") if len(shape) == 2][2:] == [[19.5, 20], [28, 29]]


def test_one_line_may_add_and_another_take_out() -> None:
    both = change(("10", "1"), ("25", "-1"))
    assert named(write_svg(draw(both), "p"))["longer.new_cut_length"].mm == inches(44).mm
    assert draw(both).title == "Leg changed at 2 lines"
    assert [draw(each).title for each in (LONGER, SHORTER)] == ["Leg lengthened at 2 lines", "Leg shortened at 2 lines"]


def test_grain_line_runs_on_through_all_parts() -> None:
    svg = write_svg(draw(LONGER), "p")
    before, after = (line[:2] for line in spots(svg, "grain"))
    papers = [y for paper in spots(svg, "paper") for _, y in paper]
    for line in (before, after):
        assert line[0][0] == line[1][0]
    assert after[0][1] < min(papers)
    assert max(papers) < after[1][1]


def test_every_line_is_named() -> None:
    assert {"line 1", "line 2"} <= set(words(write_svg(draw(LONGER), "p")))


def test_description_says_every_number() -> None:
    said = describe(LONGER)
    for part in ("44 in (112 cm)", "line 1 8 in (20.5 cm) from the top", "line 2 22 in (56 cm) below line 1",
                 "14 in (35.5 cm) below", "line 1 and spread by 1/2 in (1.3 cm)",
                 "line 2 and spread by 1 1/2 in (3.8 cm)", "46 in (117 cm)", "3/16 in (5 mm) at line 2",
                 "one straight line"):  # fmt: skip
        assert part in said
    assert "at line 1" not in said.partition("miss each other")[2]
    assert "folded at line 2, the fold 1 in (2.5 cm) deep, half of the 2 in (5.1 cm)" in describe(SHORTER)


@pytest.mark.parametrize(
    ("lines", "why"),
    [
        ((("0", "1"),), "one below the other"),
        ((("44", "1"),), "one below the other"),
        ((("20", "1"), ("10", "1")), "one below the other"),
        ((("20", "-4"), ("22", "1")), "one below the other"),
        ((("8", "1"), ("30", "0")), "nothing to add"),
        ((), "nothing to add"),
        ((("1", "-4"),), "not enough"),
        ((("20", "1"), ("21", "-3")), "not enough"),
        ((("20", "1"), ("42", "-2")), "not enough"),
    ],
)
def test_change_that_cannot_be_done_cannot_be_drawn(lines: tuple[tuple[str, str], ...], why: str) -> None:
    with pytest.raises(CannotDraw, match=why):
        change(*lines)
