"""Cloth that is drawn in, folded away or taken out in darts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, drawn_percent, told, worked

from sitegen.quantities import ZERO, Worked, inches
from sitegen.sewing import dart, gather, pleats
from sitegen.sewing.pleats import Pleat

KINDS = st.sampled_from(Pleat)
COUNTS = st.integers(1, 30)


@given(drawn(), drawn())
def test_ratio_times_after_is_before(before: Worked, after: Worked) -> None:
    fullness = gather.ratio("fullness", before, after)
    assert gather.cut_length("cut", after, fullness).length == before.length


@given(drawn(), drawn_percent(100, 400))
def test_gathering_the_cut_length_gives_the_length_after(after: Worked, fullness: Worked) -> None:
    cut = gather.cut_length("cut", after, fullness)
    assert gather.gathered_length("gathered", cut, fullness).length == after.length


@given(drawn(), drawn())
def test_drawn_in_and_left_make_the_whole(before: Worked, after: Worked) -> None:
    assert gather.drawn_in("drawn in", before, after).length + after.length == before.length


def test_gathering_to_nothing_has_no_ratio() -> None:
    with pytest.raises(ZeroDivisionError):
        gather.ratio("fullness", worked(20), worked(0))


@given(drawn(), drawn(), COUNTS)
def test_gathering_rows_are_equally_far_apart(first: Worked, apart: Worked, count: int) -> None:
    found = gather.rows("row", first, apart, count)
    assert found[0].length == first.length
    assert found[-1].length - found[0].length == apart.length * (count - 1)


def test_row_beyond_the_seam_line_counts_as_negative() -> None:
    assert gather.inside("hidden by", worked("5/8"), worked("3/4")).length == -inches("1/8")


def test_knife_pleat_hides_twice_its_depth_and_a_box_pleat_four_times() -> None:
    found = {kind: pleats.take_up("take-up", worked(1), kind).length for kind in Pleat}
    assert found == {
        Pleat.KNIFE: inches(2),
        Pleat.TUCK: inches(2),
        Pleat.BOX: inches(4),
        Pleat.INVERTED: inches(4),
    }


@given(drawn(), COUNTS, KINDS)
def test_full_pleats_of_any_kind_take_three_times_the_finished_width(finished: Worked, count: int, kind: Pleat) -> None:
    seen = pleats.visible("seen", finished, count)
    taken = pleats.take_up("take-up", pleats.full_depth("depth", seen, kind), kind)
    cut = pleats.cut_width("cut", finished, taken, count).length
    assert cut == pleats.full_width("full", finished).length == finished.length * 3


@given(drawn(), drawn(), st.integers(0, 30), KINDS)
def test_pleating_the_cut_width_gives_the_finished_width(
    finished: Worked, depth: Worked, count: int, kind: Pleat
) -> None:
    taken = pleats.take_up("take-up", depth, kind)
    cut = pleats.cut_width("cut", finished, taken, count)
    assert pleats.finished_width("finished", cut, taken, count).length == finished.length


@given(drawn(), drawn(), COUNTS, KINDS)
def test_depth_that_fits_is_the_depth_that_was_cut_for(
    finished: Worked, depth: Worked, count: int, kind: Pleat
) -> None:
    taken = pleats.take_up("take-up", depth, kind)
    cut = pleats.cut_width("cut", finished, taken, count)
    assert pleats.depth("depth", cut, finished, count, kind).length == depth.length
    assert pleats.pleats_that_fit("pleats", cut, finished, taken).number == count


def test_spare_cloth_of_less_than_a_pleat_makes_none() -> None:
    assert pleats.pleats_that_fit("pleats", worked(21), worked(20), worked(2)).number == 0


def test_cloth_narrower_than_the_finished_width_makes_no_pleat() -> None:
    assert pleats.pleats_that_fit("pleats", worked(15), worked(20), worked(2)).number == 0
    assert pleats.depth("depth", worked(15), worked(20), 5, Pleat.KNIFE).length < ZERO


@pytest.mark.parametrize(
    "pleated", [lambda: pleats.visible("seen", worked(20), 0), lambda: pleats.cut_width("c", worked(20), worked(2), -1)]
)
def test_too_few_pleats_are_refused(pleated) -> None:
    with pytest.raises(ValueError, match="pleats: at least"):
        pleated()


@given(drawn(), drawn(), COUNTS)
def test_edge_with_its_darts_sewn_is_the_shorter_edge(longer: Worked, shorter: Worked, count: int) -> None:
    taken = dart.intake("dart", longer, shorter, count)
    assert dart.sewn_edge("edge", longer, [(taken, count)]).length == shorter.length


def test_leg_of_a_dart_is_the_long_side_of_a_triangle() -> None:
    assert dart.leg("leg", worked(6), worked(4)).length == inches(5)


def test_edge_without_darts_stays_as_it_is() -> None:
    assert dart.sewn_edge("edge", worked(20), []).length == inches(20)


def test_no_darts_take_nothing_in() -> None:
    with pytest.raises(ValueError, match="darts: at least"):
        dart.intake("dart", worked(20), worked(18), 0)


def test_working_of_pleats_names_the_hidden_layers() -> None:
    taken = pleats.take_up("take-up", worked(1, "depth"), Pleat.BOX)
    cut = pleats.cut_width("panel", worked(20, "finished panel"), taken, 5)
    assert told(cut)[:2] == [
        "take-up: depth 1 in × hidden layers of a box pleat 4 = 4 in",
        "panel: finished panel 20 in + 5 take-ups of 4 in = 40 in",
    ]
