"""Laws of changes at several lines, boxed corners, joined drops, and rows of matched pieces."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, told, worked

from sitegen.quantities import ZERO, Ratio, Worked, inches
from sitegen.quantities import given as typed
from sitegen.sewing import dart, fabric_need, lengthen, rectangle

LINES = st.integers(1, 6)


@given(drawn(), LINES)
def test_equal_shares_of_all_lines_make_the_whole_amount(amount: Worked, lines: int) -> None:
    each = [lengthen.shared_equally("each", amount, lines) for _ in range(lines)]
    assert lengthen.together("all", each).length == amount.length


@given(drawn(), st.integers(1, 99))
def test_two_shares_of_one_make_the_whole_amount(amount: Worked, percent: int) -> None:
    parts = [typed("share", Ratio.percent(each)) for each in (percent, 100 - percent)]
    shared = [lengthen.shared("part", amount, share) for share in parts]
    assert lengthen.together("all", shared).length == amount.length


def test_no_lines_add_nothing() -> None:
    assert lengthen.together("all", []).length == ZERO
    with pytest.raises(ValueError, match="lines: at least"):
        lengthen.shared_equally("each", worked(2), 0)


def test_second_line_lies_as_far_below_the_first_as_their_parts_differ() -> None:
    assert told(lengthen.between("apart", worked(28, "lower line"), worked(12, "upper line")))[0] == (
        "apart: lower line 28 in − upper line 12 in = 16 in"
    )


@given(drawn(32), drawn(1, 30), drawn(1, 30))
def test_square_on_the_seams_is_the_cut_out_square_the_other_way_round(depth: Worked, seam: Worked, c: Worked) -> None:
    if depth.length / 2 + seam.length <= c.length:
        return
    cut = rectangle.corner_square("cut", depth, seam_allowance=seam, corner_allowance=c)
    assert rectangle.square_on_seams("side", cut, seam, c).length == depth.length / 2
    assert rectangle.half_depth("half", depth).length == depth.length / 2


@given(drawn(), drawn(), drawn())
def test_bag_is_as_large_as_its_panel_was_cut_for(width: Worked, height: Worked, depth: Worked) -> None:
    panel = rectangle.boxed_width("panel", width, depth), rectangle.boxed_length("panel", height, depth)
    assert rectangle.width_once_boxed("bag", panel[0], depth).length == width.length
    assert rectangle.height_once_boxed("bag", panel[1], depth).length == height.length


def test_seam_that_takes_the_whole_square_is_refused() -> None:
    with pytest.raises(ValueError, match="the seams leave nothing of square"):
        rectangle.square_on_seams("side", worked("1/4", "square"), worked("3/4"), worked("1/2"))


@given(drawn(160, 4000), drawn(320, 1000), drawn(1, 20))
def test_joined_drops_reach_and_one_fewer_would_not(width: Worked, usable: Worked, seam: Worked) -> None:
    count = int(fabric_need.joined_drops("drops", width, usable, seam).number)

    def reach(drops: int) -> object:
        return usable.length * drops - seam.length * 2 * (drops - 1)

    if width.length > seam.length * 2:
        assert reach(count) >= width.length  # type: ignore[operator]
        assert count == 1 or reach(count - 1) < width.length  # type: ignore[operator]


def test_seams_that_take_the_whole_fabric_are_refused() -> None:
    with pytest.raises(ValueError, match="must be longer than nothing"):
        fabric_need.joined_drops("drops", worked(60), worked(1), worked("1/2"))


@given(drawn(16, 400), st.lists(st.integers(1, 2000), min_size=1, max_size=8, unique=True))
def test_a_repeat_for_each_further_row_lets_every_row_begin_at_one_place_of_the_print(
    repeat: Worked, begins: list[int]
) -> None:
    enough = fabric_need.matched_rows("added", repeat, typed("rows", len(begins))).length
    first, *others = sorted(inches(1) * mark / 16 for mark in begins)
    moved = ZERO
    for start in others:
        apart = (start + moved - first).over(repeat.length)
        moved = moved + repeat.length * (-apart % 1)
    assert moved <= enough


def test_pieces_in_one_row_need_nothing_for_the_repeat() -> None:
    assert told(fabric_need.matched_rows("added", worked(6), typed("rows", 1)))[0] == (
        "added: 0 in (none: the matched pieces begin in one row)"
    )


def test_edge_with_darts_of_two_widths_loses_each_as_often_as_there_are_such() -> None:
    sewn = dart.sewn_edge("waist", worked(16, "edge"), [(worked(1, "bust dart"), 1), (worked("3/4", "waist dart"), 2)])
    assert told(sewn)[0] == "waist: edge 16 in − bust dart 1 in − 2 waist darts of 3/4 in = 13 1/2 in"


def test_other_leg_is_the_first_leg() -> None:
    leg = dart.leg("leg", worked(6), worked(4))
    assert dart.other_leg("other leg", leg).length == leg.length
