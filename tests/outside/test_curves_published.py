"""Curved edges, hems and trued edges against geometry done by another library (shapely) and by textbooks."""

from __future__ import annotations

from fractions import Fraction
from math import atan2, degrees, hypot, pi

import pytest
from shapely import LineString, Point

from sitegen.quantities import Length, Worked, cm, given, inches, mm
from sitegen.sewing import geometry, hem, lengthen, stitches_per_inch

CHORDS = 256
"""Chords to a quarter circle: shapely's rounded joins are then right to about 1e-5."""


def length(value: Length, name: str = "given") -> Worked:
    return given(name, value)


@pytest.mark.parametrize("radius_mm", [60, 75, 90])
@pytest.mark.parametrize("allowance_mm", [6, 10, 15])
def test_neckline_seam_line_is_the_offset_curve_of_its_cut_edge(radius_mm: int, allowance_mm: int) -> None:
    """A round neckline of this radius at the cut edge; shapely draws the seam line at the allowance outside it."""
    cut = Point(0, 0).buffer(radius_mm, quad_segs=CHORDS).exterior.length
    seam = Point(0, 0).buffer(radius_mm + allowance_mm, quad_segs=CHORDS).exterior.length
    ours = geometry.seam_line(
        "neckline", length(mm(Fraction(cut))), length(mm(allowance_mm)), Fraction(360), inward=True
    )
    assert float(ours.length.mm) == pytest.approx(seam, rel=1e-4)


def test_seam_line_of_an_uneven_curve_depends_on_the_turn_alone() -> None:
    """A scooped edge drawn as a parabola: the offset curve of shapely against allowance × turn."""
    points = [(x, x * x / 200) for x in range(-100, 101)]
    edge = LineString(points)
    allowance = 10
    inner = edge.parallel_offset(allowance, "left", resolution=64, join_style=1)
    (x0, y0), (x1, y1) = points[0], points[1]
    (x2, y2), (x3, y3) = points[-2], points[-1]
    turn = degrees(atan2(y3 - y2, x3 - x2) - atan2(y1 - y0, x1 - x0))
    ours = geometry.seam_line(
        "scoop", length(mm(Fraction(edge.length))), length(mm(allowance)), Fraction(turn), inward=False
    )
    assert float(ours.length.mm) == pytest.approx(inner.length, rel=2e-3)


def test_cut_edge_and_seam_line_undo_each_other() -> None:
    seam = length(inches(20), "neckline")
    allowance = length(inches("3/8"))
    cut = geometry.cut_edge("cut", seam, allowance, Fraction(180), inward=True)
    back = geometry.seam_line("neckline", cut, allowance, Fraction(180), inward=True)
    assert back.length == seam.length


@pytest.mark.parametrize(("depth", "printed_in"), [("1/2", 3.1), ("1", 6.3)])
def test_circle_hem_has_two_pi_depth_more_edge_than_fold(depth: str, printed_in: float) -> None:
    """Geometry, for a full circle: 1/2 in hem 3.1 in, 1 in hem 6.3 in."""
    more = geometry.curve_difference("more", length(inches(depth)), Fraction(360))
    assert float(more.length.mm / Fraction("25.4")) == pytest.approx(printed_in, abs=0.05)


def test_circle_hem_of_2_cm_has_12_6_cm_more_edge() -> None:
    more = geometry.curve_difference("more", length(cm(2)), Fraction(360))
    assert float(more.length.mm) == pytest.approx(126, abs=0.5)


def test_turned_edge_of_a_circle_lands_on_the_smaller_circle_of_shapely() -> None:
    """Fold at R: the raw edge lies on R + h and lands on R − h; the fullness is the difference of the circles."""
    fold, depth = 300, 20
    outer = Point(0, 0).buffer(fold + depth, quad_segs=CHORDS).exterior.length
    inner = Point(0, 0).buffer(fold - depth, quad_segs=CHORDS).exterior.length
    ours = hem.fullness("fullness", length(mm(depth)), Fraction(360))
    assert float(ours.length.mm) == pytest.approx(outer - inner, rel=1e-4)


@pytest.mark.parametrize(("top", "bottom", "height", "amount"), [(360, 220, 430, 50), (400, 200, 380, 25)])
def test_step_and_trued_edge_of_a_spread_sleeve(top: int, bottom: int, height: int, amount: int) -> None:
    """The edge of the piece drawn in shapely, cut across and spread: the parts miss each other by amount × slope."""
    edge = LineString([(top / 2, 0), (bottom / 2, height)])
    line = height * 2 / 3
    at_line = edge.interpolate(line / height, normalized=True).x
    continued = at_line - amount * (top - bottom) / 2 / height
    slope = lengthen.slope("slope", length(mm(top)), length(mm(bottom)), length(mm(height)), 2)
    step = lengthen.taper_step("step", length(mm(amount)), slope)
    assert float(step.length.mm) == pytest.approx(at_line - continued)
    trued = lengthen.trued_edge("edge", length(mm(top)), length(mm(bottom)), length(mm(height)), 2, length(mm(amount)))
    spread = LineString([(top / 2, 0), (bottom / 2, height + amount)])
    assert float(trued.length.mm) == pytest.approx(spread.length, abs=1e-5)
    assert spread.length == pytest.approx(hypot((top - bottom) / 2, height + amount))


def test_shortening_by_an_inch_folds_half_an_inch() -> None:
    """Central Washington Univ., costume construction text, chapter 17: the fold is half of the amount."""
    assert lengthen.fold_depth("fold", length(-inches(1))).length == inches("1/2")


@pytest.mark.parametrize(("stitch", "per_inch"), [("2.5", "10.2"), ("3", "8.5"), ("4", "6.4")])
def test_stitches_to_the_inch(stitch: str, per_inch: str) -> None:
    """25.4 ÷ millimetres (arithmetic)."""
    found = stitches_per_inch("stitches", Fraction(stitch)).number
    assert float(found) == pytest.approx(float(per_inch), abs=0.06)


def test_pi_is_the_pi_of_the_standard_library() -> None:
    assert float(geometry.PI) == pi
