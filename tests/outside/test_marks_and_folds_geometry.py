"""Marks, circles, bias squares, joins and folded corners against shapes measured by another library (shapely)."""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate
from math import hypot, sqrt

import pytest
from shapely import LineString, Point, Polygon, box
from shapely.affinity import translate
from shapely.ops import unary_union

from sitegen.quantities import RULER, Length, System, Worked, given, inches, mm
from sitegen.sewing import bias, circle, dart, pleats, rectangle, spacing
from sitegen.sewing.pleats import Pleat
from sitegen.sewing.spacing import Spread

CHORDS = 256


def length(value: Length | int, name: str = "given") -> Worked:
    return given(name, mm(value) if isinstance(value, int) else value)


@pytest.mark.parametrize(("whole", "marks"), [(500, 7), (613, 8), (455, 11)])
def test_buttons_lie_where_the_drawn_band_is_divided(whole: int, marks: int) -> None:
    band = LineString([(0, 0), (0, whole)])
    ours = spacing.positions("button", length(whole), marks, Spread.BOTH_ENDS)
    drawn = [band.interpolate(mark / (marks - 1), normalized=True).y for mark in range(marks)]
    assert [float(each.length.mm) for each in ours] == pytest.approx(drawn)


def test_belt_loops_are_equally_far_apart_on_a_drawn_ring() -> None:
    """Chords between neighbouring loops on a circle of the waist's length are all alike."""
    waist = 720
    ring = Point(0, 0).buffer(waist / 2 / 3.141592653589793, quad_segs=CHORDS).exterior
    at = [ring.interpolate(float(each.length.mm)) for each in spacing.positions("loop", length(waist), 6, Spread.ROUND)]
    chords = [one.distance(next_one) for one, next_one in zip(at, [*at[1:], at[0]], strict=True)]
    assert chords == pytest.approx([chords[0]] * 6, rel=1e-3)


def test_buttonholes_stay_within_the_factory_tolerance_where_adding_up_gaps_does_not() -> None:
    """MIL-L-24778, Commercial Item Description A-A-55095A: ± 1/16 in for the distance of buttonholes."""
    whole, marks = given("band", inches("235/12")), 9
    exact = spacing.positions("buttonhole", whole, marks, Spread.BOTH_ENDS)
    shown = [RULER.rounded(each.length, System.INCHES) for each in exact]
    assert all(abs(one.length - other) <= spacing.TOLERANCE.length for one, other in zip(exact, shown, strict=True))
    gap = RULER.rounded(spacing.gap("gap", whole, marks, Spread.BOTH_ENDS).length, System.INCHES)
    added_up = list(accumulate([gap] * (marks - 1)))
    assert abs(added_up[-1] - exact[-1].length) > spacing.TOLERANCE.length


@pytest.mark.parametrize(("waist", "share"), [(700, Fraction(1)), (640, Fraction(1, 2)), (820, Fraction(1, 4))])
def test_waist_of_a_drawn_circle_skirt_is_the_waist(waist: int, share: Fraction) -> None:
    radius = circle.radius("radius", length(waist), share)
    ring = Point(0, 0).buffer(float(radius.length.mm), quad_segs=CHORDS).exterior
    assert ring.length * float(share) == pytest.approx(waist, rel=1e-4)


def test_full_circle_skirt_of_28_in_has_a_radius_of_about_four_and_a_half() -> None:
    """Geometry: 28 ÷ 2π = 4.456 in; half circle 8.913 in; quarter circle 17.825 in."""
    found = [
        circle.radius("radius", given("waist", inches(28)), share).length
        for share in (1, Fraction(1, 2), Fraction(1, 4))
    ]
    assert [float(each.over(inches(1))) for each in found] == pytest.approx([4.456, 8.913, 17.825], abs=5e-4)


def test_cloth_of_a_drawn_skirt_lies_between_waist_and_hem() -> None:
    """Half circle, cut edges drawn: the area of the half ring against π (R² − r²) ÷ 2 of the worked radii."""
    radius = circle.radius("radius", length(640), circle.HALF)
    cut, hem = circle.cut_radius("cut", radius, length(15)), circle.hem_radius("hem", radius, length(600), length(20))
    outer, inner = (Point(0, 0).buffer(float(each.length.mm), quad_segs=CHORDS) for each in (hem, cut))
    half = outer.difference(inner).intersection(box(-2000, 0, 2000, 2000))
    edges = (circle.edge("e", hem, circle.HALF).length.mm + circle.edge("e", cut, circle.HALF).length.mm) / 2
    assert half.area == pytest.approx(float(edges * (hem.length.mm - cut.length.mm)), rel=1e-4)


@pytest.mark.parametrize(("side", "allowance"), [(500, 6), (900, 10), (300, 5)])
def test_square_cut_across_and_joined_is_the_parallelogram_of_the_smaller_square(side: int, allowance: int) -> None:
    """Two drawn triangles, cut off at their seam lines and put together so that the edges cross at the seam line."""
    lower = Polygon([(0, 0), (side, 0), (side, side)]).intersection(box(-side, allowance, 2 * side, side))
    upper = Polygon([(0, 0), (side, side), (0, side)]).intersection(box(-side, 0, 2 * side, side - allowance))
    upper = translate(upper, allowance, 2 * allowance - side)
    joined = unary_union([lower, upper])
    ours = bias.joined_side("side", length(side), length(allowance))
    edge = float(bias.diagonal("edge", ours).length.mm)
    assert joined.area == pytest.approx(joined.convex_hull.area)
    assert joined.area == pytest.approx(float(ours.length.mm) ** 2)
    assert joined.length == pytest.approx(2 * edge + 2 * float(ours.length.mm))


@pytest.mark.parametrize(("side", "width"), [(500, 40), (900, 55), (305, 30)])
def test_whole_strips_and_the_one_left_over_are_the_whole_parallelogram(side: int, width: int) -> None:
    allowance = length(6)
    strips = int(bias.whole_strips("strips", length(side), length(width), allowance).number)
    left = float(bias.left_over("left", length(side), length(width), allowance).length.mm)
    joined = bias.joined_side("side", length(side), allowance)
    each = float(bias.diagonal("strip", joined).length.mm)
    assert (strips * width + left) * each == pytest.approx(float(joined.length.mm) ** 2)


def test_slanted_join_of_drawn_strips_takes_both_allowances_along_the_strip() -> None:
    """Strips with ends at 45°, cut off at the seam line: what the two lose in area, as length of strip."""
    width, long, allowance = 40, 400, 6
    strip = Polygon([(0, 0), (long, 0), (long + width, width), (width, width)])
    along = allowance * sqrt(2)
    kept = strip.intersection(Polygon([(0, 0), (long - along, 0), (long - along + width, width), (width, width)]))
    lost = 2 * (strip.area - kept.area) / width
    end = LineString([(long - width, -width), (long + width, width)])
    assert end.distance(Point(long - along, 0)) == pytest.approx(allowance)
    assert float(bias.slanted_join("join", length(allowance)).length.mm) == pytest.approx(lost, abs=1e-5)


def test_square_join_of_drawn_strips_takes_the_width() -> None:
    """Square ends at right angles, sewn from corner to corner: each strip loses half of a square."""
    width, long = 40, 400
    strip = box(0, 0, long, width)
    kept = strip.difference(Polygon([(long, 0), (long, width), (long - width, width)]))
    assert float(bias.square_join("join", length(width)).length.mm) == pytest.approx(
        2 * (strip.area - kept.area) / width
    )


@pytest.mark.parametrize("width", [30, 40, 51])
def test_slanted_end_of_a_drawn_strip(width: int) -> None:
    end = LineString([(0, 0), (width, width)])
    assert float(bias.diagonal("end", length(width)).length.mm) == pytest.approx(end.length, abs=1e-5)


@pytest.mark.parametrize(("wide", "tall", "deep"), [(350, 380, 100), (200, 260, 60)])
def test_panel_with_boxed_corners_has_the_surface_of_half_a_box(wide: int, tall: int, deep: int) -> None:
    """Panel drawn on its seam lines less two corner squares: front, half of each side, half of the floor."""
    width = float(rectangle.boxed_width("width", length(wide), length(deep)).length.mm)
    height = float(rectangle.boxed_length("length", length(tall), length(deep)).length.mm)
    square = float(rectangle.corner_square("square", length(deep)).length.mm)
    panel = box(0, 0, width, height).difference(
        unary_union([box(0, 0, square, square), box(width - square, 0, width, square)])
    )
    assert panel.area == pytest.approx(wide * tall + 2 * (deep / 2) * tall + wide * deep / 2)


@pytest.mark.parametrize("allowance", [6, 10, 15])
def test_square_cut_from_raw_edges_is_the_notch_of_the_offset_panel(allowance: int) -> None:
    """The panel drawn on its seam lines, offset by one allowance all round: its two notches against ours."""
    deep, width, height = 100, 450, 430
    square = deep / 2
    seams = box(0, 0, width, height).difference(
        unary_union([box(0, 0, square, square), box(width - square, 0, width, square)])
    )
    raw = seams.buffer(allowance, join_style="mitre")
    notch = sqrt((box(*raw.bounds).area - raw.area) / 2)
    ours = rectangle.corner_square(
        "square", length(deep), seam_allowance=length(allowance), corner_allowance=length(allowance)
    )
    assert float(ours.length.mm) == pytest.approx(notch)


@pytest.mark.parametrize(("kind", "folds"), [(Pleat.KNIFE, 1), (Pleat.BOX, 2)])
def test_cloth_followed_through_its_pleats_is_as_long_as_the_cut_width(kind: Pleat, folds: int) -> None:
    """The path of the cloth seen from its edge: for each pleat its face, then back under and on again at every fold."""
    count, seen, depth = 5, 60, 20
    path = [(0.0, 0.0)]
    for _ in range(count * folds):
        fold = path[-1][0] + seen / folds
        path += [(fold, 0.0), (fold - depth, 0.0), (fold, 0.0)]
    taken = pleats.take_up("take-up", length(depth), kind)
    cut = pleats.cut_width("cut", length(count * seen), taken, count)
    assert float(cut.length.mm) == pytest.approx(LineString(path).length)
    assert path[-1][0] == pytest.approx(count * seen)


def test_leg_of_a_drawn_dart() -> None:
    leg = dart.leg("leg", length(30), length(110))
    assert float(leg.length.mm) == pytest.approx(LineString([(15, 0), (0, 110)]).length, abs=1e-5)
    assert float(leg.length.mm) == pytest.approx(hypot(15, 110), abs=1e-5)


def test_square_of_20_in_makes_164_in_of_joined_strip_2_in_wide() -> None:
    """Geometry, with allowances of 1/4 in: 6 strips of 19 3/4 × √2 less 5 joins of 1/2 × √2 are 116 × √2 in."""
    side, width, allowance = (given("given", inches(number)) for number in ("20", "2", "1/4"))
    sewn = bias.sewn_length("strip", side, width, allowance).length
    assert float(sewn.over(inches(1))) == pytest.approx(116 * sqrt(2), abs=1e-5)
    assert bias.strip_length("strip", side, width).length == inches(200)
