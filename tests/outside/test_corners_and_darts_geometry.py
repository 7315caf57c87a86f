"""Boxed corners and darts, drawn in the plane with the shapely library instead of worked out by formula."""

from __future__ import annotations

import pytest
from shapely import LineString, Point, affinity

from sitegen.quantities import given, inches
from sitegen.sewing import dart, rectangle

FAR = 100


@pytest.mark.parametrize(
    ("square", "seam", "corner"), [(2, 0.5, 0.5), (2.5, 0.5, 0.25), (3, 0.375, 0.625), (2, 0, 0.5)]
)
def test_depth_is_the_seam_across_up_to_both_folds(square: float, seam: float, corner: float) -> None:
    """The panel lies with its raw corner at 0, 0. Opened and laid flat, it folds from the inner corner of the cut-out
    at 45°; the seam across runs beside the raw edge of the cut-out, from the bottom seam to the fold, on both panels."""
    fold = LineString([(square, square), (square + FAR, square + FAR)])
    across = LineString([(square + corner, seam), (square + corner, FAR)])
    depth = 2 * Point(square + corner, seam).distance(fold.intersection(across))
    tip = rectangle.square_on_seams(
        "tip",
        given("square", inches(str(square))),
        given("seam", inches(str(seam))),
        given("corner", inches(str(corner))),
    )
    computed = rectangle.depth_of_corner("depth", tip)
    assert float(computed.length.mm) / 25.4 == pytest.approx(depth)


@pytest.mark.parametrize(("width", "length"), [(1, 3), (1.5, 4), (4, 4.5), (0.75, 6)])
def test_legs_of_a_dart_lie_on_each_other_once_it_is_folded(width: float, length: float) -> None:
    """The edge runs along the x axis, the dart is folded along its middle, and its point lies inside the piece."""
    point = (width / 2, length)
    legs = LineString([(0, 0), point]), LineString([(width, 0), point])
    folded = affinity.scale(legs[1], xfact=-1, origin=(width / 2, 0))
    assert folded.equals_exact(legs[0], 1e-9)
    leg = dart.leg("leg", given("width", inches(str(width))), given("length", inches(str(length))))
    assert float(leg.length.mm) / 25.4 == pytest.approx(legs[0].length, abs=1e-6)
    assert float(dart.other_leg("other leg", leg).length.mm) / 25.4 == pytest.approx(legs[1].length, abs=1e-6)
