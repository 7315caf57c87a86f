"""The picture of a dart: its width on the edge, its point, its legs, and half of it when it is folded."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.dart_fold import DartFold, describe, draw
from sitegen.quantities import System, inches

BUST = DartFold("front.bust", "bust dart", "front side", inches(1), inches(3), inches("3.0414"))


def test_width_length_and_half_width_are_drawn_with_their_exact_values() -> None:
    assert {name: line.mm for name, line in named(write_svg(draw(BUST), "p")).items()} == {
        "front.bust.width": inches(1).mm,
        "front.bust.length": inches(3).mm,
        "front.bust.width/2": inches("1/2").mm,
    }


def test_legs_run_from_the_ends_of_the_width_to_the_point() -> None:
    svg = write_svg(draw(BUST), "p")
    left, right, folded = spots(svg, "stitch")
    unit = float(parsed(svg).attrib["data-scale"])
    assert left[-1] == right[-1]
    assert (right[0][0] - left[0][0]) / unit == pytest.approx(25.4, abs=0.05)
    assert left[-1][0] - left[0][0] == pytest.approx(right[0][0] - right[-1][0], abs=0.01)
    assert (left[-1][1] - left[0][1]) / unit == pytest.approx(76.2, abs=0.05)
    for leg in (left, right, folded):
        across, down = (leg[-1][axis] - leg[0][axis] for axis in (0, 1))
        assert (across**2 + down**2) ** 0.5 / unit == pytest.approx(float(BUST.leg.mm), rel=0.001)


def test_folded_dart_ends_at_the_fold_half_of_its_width_from_its_beginning() -> None:
    svg = write_svg(draw(BUST), "p")
    stitches, fold = spots(svg, "stitch")[-1], spots(svg, "fold")[-1]
    half = named(svg)["front.bust.width/2"]
    assert stitches[-1][0] == fold[0][0] == half.start[0]
    assert stitches[0][0] == half.end[0]


def test_leg_is_said_beside_it_in_both_units() -> None:
    said = words(write_svg(draw(BUST, first=System.CENTIMETRES), "p"))
    assert any(each.startswith("leg 7.7\u00a0cm") for each in said)
    assert any("front side" in each for each in said)


def test_description_says_every_number_and_how_many_darts() -> None:
    said = describe(BUST)
    for part in ("1 in (2.5 cm)", "3 in (7.6 cm)", "1/2 in (1.3 cm)", "front side"):
        assert part in said
    assert "such darts" not in said
    pair = DartFold("back.waist", "waist dart", "back waist", inches(1), inches(4), inches("4.03"), 2)
    assert "There are 2 such darts in this edge." in describe(pair)


@pytest.mark.parametrize(
    ("width", "length", "leg", "why"),
    [
        ("0", "3", "3", "above nothing"),
        ("1", "0", "1", "above nothing"),
        ("1", "3", "0", "above nothing"),
        ("9", "1", "5", "differ too much"),
        ("1/8", "8", "8", "differ too much"),
    ],
)
def test_dart_without_extent_cannot_be_drawn(width: str, length: str, leg: str, why: str) -> None:
    with pytest.raises(CannotDraw, match=why):
        DartFold("front.bust", "bust dart", "front side", inches(width), inches(length), inches(leg))
