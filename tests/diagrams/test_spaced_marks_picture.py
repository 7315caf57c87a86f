"""The picture of even marks: each at its distance from the beginning, none moved by the rounding of a gap."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from diagrams.reading_svg import named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.spaced_marks import SpacedMarks, describe, draw
from sitegen.quantities import ZERO, cm, inches

BUTTONS = SpacedMarks(
    "buttons", "buttons", inches(20), tuple(inches("1/2") + inches("37/8") * mark for mark in range(5)), inches("37/8")
)
RING = SpacedMarks(
    "skirt_marks", "skirt marks", inches(60), tuple(inches("15/2") * mark for mark in range(8)), inches("15/2"), True
)
MANY = SpacedMarks("snaps", "snaps", cm(120), tuple(cm(2) + cm(4) * mark for mark in range(30)), cm(4))


def marks_of(marks: SpacedMarks) -> list[float]:
    """The distance of each drawn mark from the beginning, in millimetres."""
    svg = write_svg(draw(marks), "p")
    start = named(svg)[f"{marks.name}.length"].start[1]
    unit = float(parsed(svg).attrib["data-scale"])
    return [(line[0][1] - start) / unit for line in spots(svg, "mark")]


@pytest.mark.parametrize("marks", [BUTTONS, RING, MANY])
def test_every_mark_lies_at_its_own_distance(marks: SpacedMarks) -> None:
    assert marks_of(marks) == pytest.approx([float(position.mm) for position in marks.positions], abs=0.02)


def test_distances_from_both_edges_and_one_gap_are_measured() -> None:
    values = {name: line.mm for name, line in named(write_svg(draw(BUTTONS), "p")).items()}
    assert values == {
        "buttons.length": inches(20).mm,
        "buttons.position_1": inches("1/2").mm,
        "buttons.gap": inches("37/8").mm,
        "buttons.after_last": inches(1).mm,
    }
    assert any(said.startswith("each of 4 gaps") for said in words(write_svg(draw(BUTTONS), "p")))


def test_every_mark_says_where_it_lies() -> None:
    said = words(write_svg(draw(BUTTONS), "p"))
    assert "1: ½\u00a0in (1.3\u00a0cm)" in said
    assert "5: 19\u00a0in (48.5\u00a0cm)" in said


def test_crowded_marks_say_it_by_turns_and_the_last_always_does() -> None:
    said = [text for text in words(write_svg(draw(MANY), "p")) if text.split(":")[0].isdigit()]
    numbers = sorted(int(text.split(":")[0]) for text in said)
    assert numbers[-1] == 30
    assert {later - earlier for earlier, later in pairwise(numbers)} == {2}


def test_ring_ends_where_it_begins() -> None:
    svg = write_svg(draw(RING), "p")
    assert "1: at the beginning" in words(svg)
    assert any(said.startswith("the beginning again") for said in words(svg))
    assert named(svg)["skirt_marks.after_last"].mm == inches("15/2").mm
    assert "to the beginning again it is 7 1/2 in" in describe(RING)


def test_description_says_every_place() -> None:
    assert "1/2 in (1.3 cm), 5 1/8 in (13 cm), 9 3/4 in (25 cm)" in describe(BUTTONS)


@pytest.mark.parametrize(
    "change",
    [
        {"positions": ()},
        {"length": inches(10)},
        {"gap": inches(4)},
        {"gap": ZERO},
        {"positions": tuple(inches("1/10") * mark for mark in range(61)), "gap": inches("1/10")},
    ],
)
def test_marks_that_do_not_lie_so_cannot_be_drawn(change: dict) -> None:
    with pytest.raises(CannotDraw):
        replace(BUTTONS, **change)
