"""Marks at even distances, each worked from the whole length."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, told, worked

from sitegen.quantities import RULER, ZERO, System, Worked, inches
from sitegen.sewing import spacing
from sitegen.sewing.spacing import Spread

SPREADS = st.sampled_from(Spread)
COUNTS = st.integers(2, 40)


def test_marks_at_both_ends_make_one_gap_less() -> None:
    assert spacing.gap("gap", worked(20), 6, Spread.BOTH_ENDS).length == inches(4)


def test_marks_inside_make_one_gap_more() -> None:
    assert spacing.gap("gap", worked(20), 4, Spread.INSIDE).length == inches(4)


def test_marks_round_a_ring_make_as_many_gaps() -> None:
    assert spacing.gap("gap", worked(20), 5, Spread.ROUND).length == inches(4)


@given(drawn(), COUNTS)
def test_marks_at_both_ends_begin_and_end_the_length(length: Worked, marks: int) -> None:
    found = spacing.positions("button", length, marks, Spread.BOTH_ENDS)
    assert (found[0].length, found[-1].length) == (ZERO, length.length)


@given(drawn(), COUNTS, SPREADS)
def test_every_two_neighbours_are_one_gap_apart(length: Worked, marks: int, spread: Spread) -> None:
    gap = spacing.gap("gap", length, marks, spread).length
    found = spacing.positions("button", length, marks, spread)
    assert len(found) == marks
    assert {later.length - earlier.length for earlier, later in pairwise(found)} == {gap}


@given(drawn(), COUNTS)
def test_marks_inside_lie_one_gap_from_both_ends(length: Worked, marks: int) -> None:
    gap = spacing.gap("gap", length, marks, Spread.INSIDE).length
    found = spacing.positions("button", length, marks, Spread.INSIDE)
    assert (found[0].length, length.length - found[-1].length) == (gap, gap)


@given(drawn(), COUNTS)
def test_last_gap_of_a_ring_leads_back_to_its_start(length: Worked, marks: int) -> None:
    gap = spacing.gap("gap", length, marks, Spread.ROUND).length
    assert spacing.positions("loop", length, marks, Spread.ROUND)[-1].length + gap == length.length


@given(drawn(), COUNTS)
def test_positions_of_evenly_spread_marks_add_up_to_half_of_each_pair_of_ends(length: Worked, marks: int) -> None:
    for spread in (Spread.BOTH_ENDS, Spread.INSIDE):
        found = spacing.positions("button", length, marks, spread)
        assert sum((each.length for each in found), ZERO) == length.length * marks / 2


@given(drawn(), COUNTS, SPREADS, drawn())
def test_start_moves_every_mark_alike(length: Worked, marks: int, spread: Spread, start: Worked) -> None:
    still = spacing.positions("button", length, marks, spread)
    moved = spacing.positions("button", length, marks, spread, start)
    assert {after.length - before.length for before, after in zip(still, moved, strict=True)} == {start.length}


@given(drawn(), COUNTS, SPREADS, st.sampled_from(System))
def test_no_shown_mark_is_off_by_more_than_half_of_a_ruler_step(
    length: Worked, marks: int, spread: Spread, system: System
) -> None:
    for each in spacing.positions("button", length, marks, spread):
        off = abs(RULER.rounded(each.length, system) - each.length)
        assert off * 2 <= RULER.step(each.length, system)


@given(drawn(800), drawn(1, 160), drawn(1, 160), COUNTS)
def test_margins_are_kept_at_both_ends(length: Worked, first: Worked, last: Worked, marks: int) -> None:
    found = spacing.within_margins("button", length, marks, first, last)
    assert (found[0].length, length.length - found[-1].length) == (first.length, last.length)


@given(drawn(), drawn(), SPREADS)
def test_fewest_marks_keep_the_greatest_gap_and_one_less_would_not(
    length: Worked, greatest: Worked, spread: Spread
) -> None:
    marks = int(spacing.marks_needed("marks", length, greatest, spread).number)
    gaps = marks + spread.value
    assert length.length / gaps <= greatest.length
    assert gaps == 1 or length.length / (gaps - 1) > greatest.length


@given(drawn(), COUNTS, SPREADS)
def test_marks_needed_for_their_own_gap_are_the_same_marks(length: Worked, marks: int, spread: Spread) -> None:
    gap = spacing.gap("gap", length, marks, spread)
    assert spacing.marks_needed("marks", length, gap, spread).number == marks


def test_short_length_needs_no_mark_inside() -> None:
    assert spacing.marks_needed("marks", worked(2), worked(3), Spread.INSIDE).number == 0


def test_buttonhole_is_diameter_and_thickness() -> None:
    assert spacing.buttonhole_length("buttonhole", worked("3/4"), worked("1/8")).length == inches("7/8")


@pytest.mark.parametrize(("marks", "spread"), [(1, Spread.BOTH_ENDS), (0, Spread.INSIDE), (0, Spread.ROUND)])
def test_too_few_marks_are_refused(marks: int, spread: Spread) -> None:
    with pytest.raises(ValueError, match="needed"):
        spacing.gap("gap", worked(20), marks, spread)


def test_margins_that_meet_are_refused() -> None:
    with pytest.raises(ValueError, match="nothing is left"):
        spacing.within_margins("button", worked(5), 3, worked(2), worked(3))


def test_greatest_gap_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than nothing"):
        spacing.marks_needed("marks", worked(20), worked(0), Spread.ROUND)


def test_working_of_a_button_reads_from_the_whole_length() -> None:
    third = spacing.within_margins("button", worked(22, "band"), 6, worked(1, "top"), worked(1, "bottom"))[2]
    assert told(third)[:3] == [
        "length between the first button and the last: band 22 in − top 1 in − bottom 1 in = 20 in",
        "button 3 from top: length between the first button and the last 20 in × gaps before it 2 ÷ gaps 5 = 8 in",
        "button 3: top 1 in + button 3 from top 8 in = 9 in",
    ]


@pytest.mark.parametrize("mark", [0, 4, -1])
def test_mark_that_is_not_there_has_no_position(mark: int) -> None:
    with pytest.raises(ValueError, match="no mark"):
        spacing.position("button", worked(20), mark, 3, Spread.BOTH_ENDS)
