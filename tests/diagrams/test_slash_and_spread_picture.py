"""The picture of a piece lengthened or shortened: parts, paper or fold, step, new edge, grain."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import measured, named, parsed, spots, words

from sitegen.diagrams import CannotDraw, Edge, TaperedPiece, write_svg
from sitegen.diagrams.kinds.slash_and_spread import SlashAndSpread, describe, draw
from sitegen.quantities import Length, inches

SLEEVE = TaperedPiece(inches(15), inches(9), inches(18), inches(24), cap=True)
LONGER = SlashAndSpread("longer_sleeve", "sleeve", "sleeve", SLEEVE, inches(16), inches(2))
SHORTER = SlashAndSpread("shorter_sleeve", "sleeve", "sleeve", SLEEVE, inches(16), inches(-3))


def change(piece: TaperedPiece, line: Length, amount: Length) -> SlashAndSpread:
    return SlashAndSpread("change", "piece", "piece", piece, line, amount)


def main_scale(svg: str) -> float:
    return float(parsed(svg).attrib["data-scale"])


def test_lengthening_draws_both_parts_the_amount_and_the_new_length() -> None:
    lines = measured(write_svg(draw(LONGER), "p"))
    values = {line.name: line.mm for line in lines}
    assert values == {
        "longer_sleeve.part_above": inches(16).mm,
        "longer_sleeve.part_below": inches(8).mm,
        "longer_sleeve.amount": inches(2).mm,
        "longer_sleeve.new_cut_length": inches(26).mm,
        "longer_sleeve.taper_step": inches(2).mm / 6,
    }


def test_paper_fills_the_gap_between_the_parts() -> None:
    svg = write_svg(draw(LONGER), "p")
    line = named(svg)["longer_sleeve.part_above"]
    paper = spots(svg, "paper")[0]
    levels = sorted({y for _, y in paper})
    unit = main_scale(svg)
    assert [(y - line.start[1]) / unit for y in levels] == pytest.approx([16 * 25.4, 18 * 25.4], abs=0.1)


def test_new_edges_are_straight_from_end_to_end_of_the_taper() -> None:
    svg = write_svg(draw(LONGER), "p")
    unit, top = main_scale(svg), named(svg)["longer_sleeve.new_cut_length"].start[1]
    for start, end in spots(svg, "trued")[:2]:
        assert (start[1] - top) / unit == pytest.approx(6 * 25.4, abs=0.1)
        assert (end[1] - top) / unit == pytest.approx(26 * 25.4, abs=0.1)
        assert abs(end[0] - start[0]) / unit == pytest.approx(3 * 25.4, abs=0.1)


def test_enlarged_edge_has_a_larger_scale_of_its_own() -> None:
    steps = [line for line in measured(write_svg(draw(LONGER), "p")) if line.name.endswith("taper_step")]
    assert [line.scale > 3 * main_scale(write_svg(draw(LONGER), "p")) for line in steps] == [True]


def test_enlarged_edge_steps_between_the_old_edges() -> None:
    svg = write_svg(draw(LONGER), "p")
    step = named(svg)["longer_sleeve.taper_step"]
    upper, lower = spots(svg, "old")[-2:]
    run_on = spots(svg, "join")[-1]
    assert upper[-1] == run_on[0]
    assert sorted((run_on[1][0], lower[0][0])) == sorted((step.start[0], step.end[0]))


def test_grain_line_runs_on_through_both_parts() -> None:
    svg = write_svg(draw(LONGER), "p")
    before, after = (line[:2] for line in spots(svg, "grain"))
    paper = sorted({y for _, y in spots(svg, "paper")[0]})
    for line in (before, after):
        assert line[0][0] == line[1][0]
    assert after[0][1] < paper[0]
    assert after[1][1] > paper[1]


def test_grain_line_is_named_where_there_is_room() -> None:
    squat = TaperedPiece(inches(15), inches(9), inches(14), inches(16))
    assert "grain line" in words(write_svg(draw(LONGER), "p"))
    assert "grain line" not in words(write_svg(draw(change(squat, inches(8), inches(1))), "p"))


def test_shortening_draws_a_fold_of_half_the_amount() -> None:
    svg = write_svg(draw(SHORTER), "p")
    lines = named(svg)
    assert lines["shorter_sleeve.fold"].mm == inches("3/2").mm
    assert lines["shorter_sleeve.new_cut_length"].mm == inches(21).mm
    assert "shorter_sleeve.amount" not in lines
    assert any(said.startswith("fold 1½\u00a0in") for said in words(svg))


def test_shortened_parts_miss_each_other_at_the_fold() -> None:
    svg = write_svg(draw(SHORTER), "p")
    upper, lower = spots(svg, "old")[-2:]
    step = named(svg)["shorter_sleeve.taper_step"]
    assert step.mm == inches("1/2").mm
    assert (upper[-1][0] - lower[0][0]) / step.scale == pytest.approx(12.7, rel=0.005)
    assert upper[-1][1] == lower[0][1]


def test_straight_piece_needs_no_enlarged_edge() -> None:
    panel = TaperedPiece(inches(10), inches(10), inches(20), inches(20))
    svg = write_svg(draw(change(panel, inches(12), inches(2))), "p")
    assert "change.taper_step" not in named(svg)
    assert not spots(svg, "trued")


def test_line_above_the_taper_makes_no_step() -> None:
    svg = write_svg(draw(change(SLEEVE, inches(3), inches(1))), "p")
    assert "change.taper_step" not in named(svg)
    assert not spots(svg, "trued")


def test_piece_on_the_fold_keeps_its_fold_straight() -> None:
    front = TaperedPiece(inches(9), inches(11), inches(15), inches(26), Edge.FOLD)
    svg = write_svg(draw(change(front, inches(18), inches(1))), "p")
    before, after = spots(svg, "fold")
    for side in (before, after):
        assert len({x for x, _ in side}) == 1
    assert len(spots(svg, "trued")) == 2, "one in the picture, one enlarged"


def test_piece_that_widens_steps_the_other_way() -> None:
    skirt = TaperedPiece(inches(20), inches(40), inches(20), inches(20))
    svg = write_svg(draw(change(skirt, inches(12), inches(4))), "p")
    upper, lower = spots(svg, "old")[-2:]
    assert named(svg)["change.taper_step"].mm == inches(2).mm
    assert spots(svg, "join")[-1][1][0] > lower[0][0]
    assert upper[-1][0] > upper[0][0]


def test_wide_piece_is_drawn_above_its_change_and_a_long_one_beside() -> None:
    wide = TaperedPiece(inches(40), inches(40), inches(20), inches(20))
    stacked = spots(write_svg(draw(change(wide, inches(10), inches(1))), "p"), "grain")
    beside = spots(write_svg(draw(LONGER), "p"), "grain")
    assert stacked[0][0][0] == stacked[1][0][0]
    assert beside[0][0][0] < beside[1][0][0]


def test_description_says_every_number() -> None:
    said = describe(LONGER)
    for part in ("24 in (61 cm)", "16 in (40.5 cm)", "8 in (20.5 cm)", "2 in (5.1 cm)", "26 in (66 cm)",
                 "5/16 in (8 mm)", "one straight line", "grain line"):  # fmt: skip
        assert part in said
    assert "1 1/2 in (3.8 cm) deep, half of the 3 in (7.6 cm)" in describe(SHORTER)


@pytest.mark.parametrize(
    ("line", "amount", "why"),
    [
        (inches(0), inches(1), "does not cross"),
        (inches(24), inches(1), "does not cross"),
        (inches(16), inches(0), "nothing to add"),
        (inches(16), inches(-8), "not enough"),
        (inches(1), inches(-4), "not enough"),
    ],
)
def test_change_that_cannot_be_done_cannot_be_drawn(line: Length, amount: Length, why: str) -> None:
    with pytest.raises(CannotDraw, match=why):
        change(SLEEVE, line, amount)


@pytest.mark.parametrize("spoilt", range(4))
def test_piece_without_width_or_length_cannot_be_drawn(spoilt: int) -> None:
    numbers = [inches(0) if place == spoilt else inches(10) for place in range(4)]
    with pytest.raises(CannotDraw, match="above nothing"):
        TaperedPiece(*numbers)
