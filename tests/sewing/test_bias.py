"""Bias strips: the cloth in them, the square they come from, and what joins take."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, told, worked

from sitegen.quantities import ZERO, Worked, inches, mm
from sitegen.sewing import bias
from sitegen.sewing.bias import Binding

WIDTHS = drawn(8, 80)
SIDES = drawn(160, 960)


@given(drawn(), WIDTHS)
def test_strip_and_its_square_hold_the_same_cloth(length: Worked, width: Worked) -> None:
    """To a thousandth of a millimetre of strip: the root is right to a millionth."""
    side = bias.square_side("side", length, width)
    back = bias.strip_length("strip", side, width).length
    assert ZERO <= length.length - back < mm("1/1000")


@given(SIDES, WIDTHS)
def test_area_of_the_strip_is_the_area_of_the_square(side: Worked, width: Worked) -> None:
    strip = bias.strip_length("strip", side, width)
    assert bias.area("a", strip, width).value == bias.area("b", side, side).value


@given(SIDES, WIDTHS, drawn(1, 16))
def test_sewn_strip_is_never_longer_than_the_area_makes(side: Worked, width: Worked, allowance: Worked) -> None:
    assert bias.sewn_length("sewn", side, width, allowance).length < bias.strip_length("strip", side, width).length


@given(SIDES, WIDTHS, drawn(1, 16))
def test_last_strip_is_narrower_than_the_others(side: Worked, width: Worked, allowance: Worked) -> None:
    left = bias.left_over("left", side, width, allowance).length
    assert ZERO <= left < width.length


def test_square_too_small_for_a_strip_makes_none() -> None:
    assert bias.sewn_length("sewn", worked(2), worked(3), worked("1/4")).length == ZERO


def test_allowance_as_wide_as_the_square_is_refused() -> None:
    with pytest.raises(ValueError, match="leaves nothing"):
        bias.sewn_length("sewn", worked("1/4"), worked(3), worked("1/4"))


@pytest.mark.parametrize("width", [0, -1])
def test_strip_without_width_is_refused(width: int) -> None:
    with pytest.raises(ValueError, match="than nothing"):
        bias.strip_length("strip", worked(20), worked(width))
    with pytest.raises(ValueError, match="than nothing"):
        bias.whole_strips("strips", worked(20), worked(width), worked("1/4"))


@given(drawn(16, 4000), drawn(160, 960), drawn(1, 80))
def test_strips_needed_reach_and_one_less_would_not(need: Worked, each: Worked, join: Worked) -> None:
    count = int(bias.strips_needed("strips", need, each, join).number)

    def joined(strips: int) -> object:
        return each.length * strips - join.length * (strips - 1)

    assert count >= 1
    assert joined(count) >= need.length
    assert count == 1 or joined(count - 1) < need.length


def test_strip_no_longer_than_a_join_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than nothing"):
        bias.strips_needed("strips", worked(20), worked(2), worked(2))


@given(drawn(), drawn(1, 64), drawn(1, 64), st.integers(0, 9))
def test_binding_less_its_joins_and_overlap_is_the_edge(
    edge: Worked, overlap: Worked, join: Worked, joins: int
) -> None:
    whole = bias.binding_length("binding", edge, overlap, join, joins).length
    assert whole - overlap.length - join.length * joins == edge.length


def test_negative_joins_are_refused() -> None:
    with pytest.raises(ValueError, match="joins"):
        bias.binding_length("binding", worked(20), worked(1), worked(1), -1)


@pytest.mark.parametrize(("binding", "cut"), [(Binding.SINGLE_FOLD, 1), (Binding.DOUBLE_FOLD, 2), (Binding.FRENCH, 3)])
def test_strip_is_two_four_or_six_times_the_finished_width(binding: Binding, cut: int) -> None:
    assert bias.strip_width("strip", worked("1/2"), binding).length == inches(cut)


def test_thick_cloth_takes_more_to_go_round_the_edge() -> None:
    strip = bias.strip_width("strip", worked("1/2"), Binding.DOUBLE_FOLD, worked("1/8"))
    assert strip.length == inches("17/8")


@given(WIDTHS)
def test_slanted_end_squared_is_twice_the_width_squared(width: Worked) -> None:
    slanted = bias.diagonal("slanted end", width).length.mm
    assert abs(slanted**2 - 2 * width.length.mm**2) < width.length.mm / 100_000


def test_square_join_takes_the_width_of_the_strip() -> None:
    assert bias.square_join("join", worked("3/2")).length == inches("3/2")


def test_working_of_a_strip_says_what_it_leaves_out() -> None:
    strip = bias.strip_length("strip", worked(20, "side"), worked(2, "strip width"))
    assert told(strip)[:2] == [
        "cloth in the square: side 20 in × side 20 in = 400 sq in",
        "strip: cloth in the square 400 sq in divided by strip width 2 in = 200 in"
        " (by area; joins and a last narrow strip not counted)",
    ]
    side = bias.square_side("side", worked(200, "strip"), worked(2, "strip width"))
    assert told(side)[0] == (
        "side: the square root of strip 200 in × strip width 2 in = 20 in (joins and a last narrow strip not counted)"
    )
    assert told(bias.sewn_length("sewn", worked(20), worked(2), worked("1/4")))
