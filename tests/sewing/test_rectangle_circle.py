"""Rectangles with their sides, boxed corners, circle skirts."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, told, worked

from sitegen.quantities import Worked, inches
from sitegen.sewing import circle, rectangle
from sitegen.sewing.rectangle import End, Sides, Size

SHARES = st.sampled_from([circle.FULL, circle.HALF, circle.QUARTER, Fraction(3, 4), Fraction(1, 3), Fraction(3, 2)])


@given(drawn(160), drawn(160), drawn(0, 40), drawn(0, 40))
def test_sewing_the_cut_rectangle_gives_the_finished_one(
    length: Worked, width: Worked, seam: Worked, hem: Worked
) -> None:
    sides = Sides(top=End(hem), bottom=End(seam), left=End(seam), right=End())
    cut = rectangle.cut_size("pocket", Size(length, width), sides)
    sewn = rectangle.finished_size("pocket", cut, sides)
    assert (sewn.length.length, sewn.width.length) == (length.length, width.length)


def test_each_side_of_a_pocket_takes_its_own() -> None:
    seam, hem = End(worked("3/8", "seam allowance")), End(worked("5/4", "hem"))
    cut = rectangle.cut_size("pocket", Size(worked(6, "length"), worked(5, "width")), Sides(hem, seam, seam, seam))
    assert told(cut.length)[0] == "pocket cut length: length 6 in + hem 1 1/4 in + seam allowance 3/8 in = 7 5/8 in"
    assert told(cut.width)[0] == "pocket cut width: width 5 in + 2 seam allowances of 3/8 in = 5 3/4 in"


def test_side_on_a_fold_takes_nothing_and_the_piece_is_cut_by_half() -> None:
    cut = rectangle.cut_size("yoke", Size(worked(6), worked(20)), Sides(left=End(worked(1)), right=End(worked(1))))
    assert rectangle.on_fold("yoke", cut.width).length == inches(11)


@given(drawn())
def test_square_at_the_seam_lines_makes_its_depth(depth: Worked) -> None:
    square = rectangle.corner_square("square", depth)
    assert rectangle.depth_of_corner("depth", square).length == depth.length


@given(drawn(64), drawn(1, 16))
def test_square_cut_out_from_raw_edges_with_one_allowance_is_half_of_the_depth(depth: Worked, seam: Worked) -> None:
    square = rectangle.corner_square("square", depth, seam_allowance=seam, corner_allowance=seam)
    assert square.length * 2 == depth.length


@given(drawn(64), drawn(1, 16))
def test_square_from_raw_edges_is_larger_by_the_allowance_than_from_seam_lines(depth: Worked, seam: Worked) -> None:
    from_seams = rectangle.corner_square("square", depth)
    from_raw = rectangle.corner_square("square", depth, seam_allowance=seam)
    assert from_raw.length - from_seams.length == seam.length


def test_depth_of_less_than_two_allowances_leaves_no_square_to_cut_out() -> None:
    with pytest.raises(ValueError, match="leaves no square"):
        rectangle.corner_square("square", worked("1/2"), corner_allowance=worked("1/4"))


def test_panel_of_a_boxed_bag_is_wider_by_the_depth_and_longer_by_half_of_it() -> None:
    assert rectangle.boxed_width("panel width", worked(14), worked(4)).length == inches(18)
    assert rectangle.boxed_length("panel length", worked(15), worked(4)).length == inches(17)


@given(drawn(160), SHARES)
def test_edge_at_the_waist_radius_is_the_waist(waist: Worked, share: Fraction) -> None:
    assert circle.edge("edge", circle.radius("radius", waist, share), share).length == waist.length


@given(drawn(160), st.integers(1, 8))
def test_skirt_of_part_of_a_circle_has_a_radius_so_many_times_as_long(waist: Worked, parts: int) -> None:
    whole = circle.radius("radius", waist, circle.FULL).length
    assert circle.radius("radius", waist, Fraction(1, parts)).length == whole * parts


def test_allowance_lies_inside_the_waist_and_the_hem_outside_the_skirt() -> None:
    radius = worked(9, "waist radius")
    assert circle.cut_radius("cut", radius, worked("5/8")).length == inches("67/8")
    assert circle.hem_radius("hem", radius, worked(24), worked("1/2")).length == inches("67/2")
    assert circle.hem_radius("hem", radius, worked(24)).length == inches(33)


def test_allowance_wider_than_the_radius_is_refused() -> None:
    with pytest.raises(ValueError, match="as wide as"):
        circle.cut_radius("cut", worked("1/2"), worked("5/8"))


@pytest.mark.parametrize("share", [Fraction(0), Fraction(-1, 2)])
def test_no_share_of_a_circle_is_refused(share: Fraction) -> None:
    with pytest.raises(ValueError, match="no share"):
        circle.radius("radius", worked(28), share)


def test_working_of_a_half_circle_names_its_turn() -> None:
    radius = circle.radius("waist radius", worked(28, "waist"), circle.HALF)
    assert told(radius)[0] == "waist radius: waist 28 in ÷ a turn of 180° as an arc 3.14 = 8 7/8 in"
