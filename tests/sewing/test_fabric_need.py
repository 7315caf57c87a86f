"""Cloth to allow for shrinkage, another width, a repeat, and widths side by side."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, drawn_percent, in_lengths, told, worked
from sewing.lengths import percent as share

from sitegen.quantities import Ratio, Worked, inches
from sitegen.sewing import fabric_need

SHRINKAGE = drawn_percent(0, 40)


@given(drawn(), SHRINKAGE)
def test_washing_what_was_bought_leaves_the_need(need: Worked, shrinkage: Worked) -> None:
    bought = fabric_need.before_washing("to buy", need, shrinkage)
    assert bought.length >= need.length
    assert fabric_need.after_washing("left", bought, shrinkage).length == need.length


@given(drawn(), SHRINKAGE)
def test_swatch_shows_the_shrinkage_it_had(before: Worked, shrinkage: Worked) -> None:
    after = fabric_need.after_washing("after", before, shrinkage)
    assert fabric_need.shrinkage_found("shrinkage", before, after).ratio == shrinkage.ratio


@pytest.mark.parametrize("shrinkage", [100, 120, -5])
def test_shrinkage_that_leaves_nothing_or_grows_is_refused(shrinkage: int) -> None:
    with pytest.raises(ValueError, match="from 0% to less than 100%"):
        fabric_need.before_washing("to buy", worked(20), share(shrinkage, "shrinkage"))


def test_swatch_that_grew_has_negative_shrinkage() -> None:
    assert fabric_need.shrinkage_found("shrinkage", worked(10), worked(11)).ratio == Ratio.percent(-10)


@given(drawn(), drawn(480, 1200), drawn(480, 1200))
def test_swap_of_width_keeps_the_area_and_comes_back(need: Worked, width: Worked, other: Worked) -> None:
    swapped = fabric_need.at_other_width("swapped", need, width, other)
    assert swapped.length.mm * other.length.mm == need.length.mm * width.length.mm
    assert fabric_need.at_other_width("back", swapped, other, width).length == need.length


@pytest.mark.parametrize(
    ("said", "plausible"), [("87", False), ("88", True), ("100", True), ("113", True), ("114", False)]
)
def test_swap_is_plausible_only_near_the_area(said: str, plausible: bool) -> None:
    assert fabric_need.swap_is_plausible(inches(said), inches(100)) is plausible


def test_row_that_rises_is_told_by_its_place() -> None:
    assert fabric_need.rises(in_lengths("5 4 4 4.5 3 3.25")) == (3, 5)


@given(st.lists(drawn(), min_size=1, max_size=9))
def test_sorted_row_never_rises(row: list[Worked]) -> None:
    assert fabric_need.rises(sorted((each.length for each in row), reverse=True)) == ()


def test_selvages_are_taken_off_both_sides() -> None:
    assert fabric_need.usable_width("usable", worked(60), worked("3/4")).length == inches("58.5")


@given(drawn(), drawn(1, 480))
def test_length_in_repeats_is_whole_and_adds_less_than_one(cut: Worked, repeat: Worked) -> None:
    whole = fabric_need.whole_repeats("whole", cut, repeat).length
    added = fabric_need.added_for_repeat("added", cut, repeat).length
    assert whole.sits_on(repeat.length)
    assert cut.length + added == whole
    assert inches(0) <= added < repeat.length


@given(drawn(), drawn(1, 960))
def test_drops_reach_the_width_and_one_less_would_not(width: Worked, fabric: Worked) -> None:
    count = int(fabric_need.drops("drops", width, fabric).number)
    assert fabric.length * count >= width.length > fabric.length * (count - 1)


@given(drawn(1, 960), drawn(1, 960))
def test_pieces_across_fit_and_one_more_would_not(fabric: Worked, piece: Worked) -> None:
    count = int(fabric_need.pieces_across("pieces", fabric, piece).number)
    assert piece.length * count <= fabric.length < piece.length * (count + 1)


@pytest.mark.parametrize("width", [0, -3])
def test_cloth_without_width_is_refused(width: int) -> None:
    with pytest.raises(ValueError, match="longer than nothing"):
        fabric_need.drops("drops", worked(20), worked(width))


def test_length_for_drops_is_one_after_the_other() -> None:
    drops = fabric_need.drops("drops", worked(130), worked(54))
    length = fabric_need.length_for_drops("length", worked(90, "cut length"), drops)
    assert length.length == inches(270)
    assert told(length)[0] == "drops: length 130 in divided by length 54 in = 3 (rounded up to a whole one)"
