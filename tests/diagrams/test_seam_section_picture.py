"""The picture of a seam: allowances at their true width, pressed the way that is said, edges as they are finished."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagrams.reading_svg import SVG, named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.seam_section import Closed, Layer, Pressed, Row, SeamSection, describe, draw
from sitegen.quantities import ZERO, Length, inches, mm

WIDE = inches("3/8")


def seam(
    pressed: Pressed = Pressed.ASIDE,
    press: str = "to the back",
    *,
    row: Row = Row.STRAIGHT,
    other: Length = WIDE,
    finished: bool = False,
    closed: Closed | None = None,
    hidden: str = "",
) -> SeamSection:
    first, second = Layer("front", "front.side", WIDE, finished), Layer("back", "back.side", other, finished)
    return SeamSection("seam of the front side", first, second, row.value, row, pressed, press, hidden, closed)


def svg_of(picture: SeamSection) -> str:
    return write_svg(draw(picture), "p")


def raw_ends(svg: str) -> list[float]:
    """How far from the seam line the upright raw edges of the section lie, in millimetres, from left to right."""
    scale = float(parsed(svg).attrib["data-scale"])
    line = spots(svg, "stitch")[0][0][0] if spots(svg, "stitch") else spots(svg, "zigzag")[0][0][0]
    face, *section = [edge for edge in spots(svg, "raw") if edge[0][0] == edge[-1][0]]
    assert (face[0][0] - line) / scale == pytest.approx(9.525, abs=0.01)
    return sorted((edge[0][0] - line) / scale for edge in section)


def test_allowances_pressed_to_one_side_both_end_on_that_side_at_their_true_width() -> None:
    assert raw_ends(svg_of(seam())) == pytest.approx([9.525, 9.525], abs=0.01)


def test_allowances_pressed_open_end_on_either_side() -> None:
    svg = svg_of(seam(Pressed.OPEN, "open"))
    assert raw_ends(svg) == pytest.approx([-9.525, 9.525], abs=0.01)
    assert {line.mm for line in named(svg).values()} == {WIDE.mm}
    assert set(named(svg)) == {"front.side.seam_allowance", "back.side.seam_allowance"}


def test_two_allowances_that_differ_are_both_measured() -> None:
    svg = svg_of(seam(Pressed.NOT, "", other=mm(20)))
    assert {name: line.mm for name, line in named(svg).items()} == {
        "front.side.seam_allowance": WIDE.mm,
        "back.side.seam_allowance": 20,
    }
    assert "The allowance of the front is 3/8 in (1 cm), that of the back 13/16 in (2 cm)." in describe(
        seam(Pressed.NOT, "", other=mm(20))
    )


def test_piece_to_which_it_is_pressed_lies_on_the_right_and_is_named() -> None:
    texts = list(parsed(svg_of(seam())).iter(f"{SVG}text"))
    across = {"".join(text.itertext()): float(text[0].attrib["x"]) for text in texts}
    assert across["front"] < across["back"]
    assert "cut through, pressed to the back" in across


def test_section_has_as_many_layers_under_the_piece_as_are_pressed_there() -> None:
    """Each course of cloth has two outlines; the thread of the seam passes through both allowances."""
    svg = svg_of(seam())
    assert len(spots(svg, "cut")) == 4
    (thread,) = [line for line in spots(svg, "thread") if abs(line[0][1] - line[1][1]) > 10]
    edges = [edge for edge in spots(svg, "raw") if edge[0][0] == edge[-1][0]][1:]
    heights = [y for edge in edges for _, y in edge]
    assert min(y for _, y in thread) <= min(heights)
    assert max(y for _, y in thread) >= max(heights)


@pytest.mark.parametrize(
    ("row", "role", "absent"), [(Row.STRAIGHT, "stitch", "zigzag"), (Row.ZIGZAG, "zigzag", "stitch")]
)
def test_row_is_drawn_as_its_stitch(row: Row, role: str, absent: str) -> None:
    svg = svg_of(seam(row=row))
    assert len(spots(svg, role)) == 1
    assert not spots(svg, absent)
    assert f"{row.value} stitches" in words(svg)


def test_overlock_loops_reach_from_the_seam_line_just_round_the_raw_edge() -> None:
    svg = svg_of(seam(row=Row.OVERLOCK))
    loops, line = spots(svg, "zigzag")[0], spots(svg, "stitch")[0]
    scale = float(parsed(svg).attrib["data-scale"])
    assert (max(x for x, _ in loops) - 2 - line[0][0]) / scale == pytest.approx(9.525, abs=0.01)
    assert min(x for x, _ in loops) == pytest.approx(line[0][0])
    assert "overlock stitches" in words(svg)
    assert "The overlock stitch runs round the raw edges." in describe(seam(row=Row.OVERLOCK))


def test_finished_edges_have_thread_round_each_of_them() -> None:
    plain, done = svg_of(seam()), svg_of(seam(finished=True))
    assert len(spots(done, "thread")) == len(spots(plain, "thread")) + 2
    assert "finished edges" in words(done)
    assert "finished edges" not in words(plain)
    both = replace(seam(finished=True), together=True)
    assert len(spots(svg_of(both), "thread")) == len(spots(plain, "thread")) + 1
    assert "finished together" in describe(both)
    opened = replace(seam(Pressed.OPEN, "open", finished=True), together=True)
    assert len(spots(svg_of(opened), "thread")) == len(spots(svg_of(seam(Pressed.OPEN, "open")), "thread")) + 2


@pytest.mark.parametrize("closed", list(Closed))
def test_closed_seam_says_that_its_section_is_not_to_scale_and_keeps_the_true_allowance(closed: Closed) -> None:
    svg = svg_of(seam(closed=closed, hidden=f"in a {closed.value}"))
    assert f"{closed.value}, not to scale" in words(svg)
    assert named(svg)["back.side.seam_allowance"].mm == WIDE.mm
    assert len([line for line in spots(svg, "thread") if abs(line[0][1] - line[1][1]) > 10]) == 2, "two rows"


def test_french_seam_begins_wrong_sides_together_with_the_right_side_in_sight() -> None:
    svg = svg_of(seam(closed=Closed.FRENCH))
    assert "first, wrong sides together" in words(svg)
    assert not spots(svg, "stitch"), "how far in the first row runs is not known"
    assert len(spots(svg, "wrong")) == len(spots(svg_of(seam()), "wrong")) - 1, "no wrong side from above"


def test_sides_of_the_cloth_differ_by_hatching_and_are_explained() -> None:
    svg = svg_of(seam())
    assert {"right side of the cloth", "wrong side"} <= set(words(svg))
    assert parsed(svg).find(f".//{SVG}pattern[@id='p-wrong']") is not None


def test_description_says_stitch_allowance_pressing_and_what_hides_the_edges() -> None:
    said = describe(seam(hidden="inside the waistband"))
    for part in ("straight", "3/8 in (1 cm)", "pressed to the back", "disappear inside the waistband", "to scale"):
        assert part in said


@pytest.mark.parametrize("other", [ZERO, mm(-1), mm(100)])
def test_seam_without_allowance_or_with_a_huge_one_cannot_be_drawn(other: Length) -> None:
    with pytest.raises(CannotDraw):
        seam(other=other)
