"""Counting lines under a box, the order of places, and spots on the page: the quick ways agree with the plain ones."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.diagrams.drawing import Drawing, Label, Line, Number, Role, Side, View, at
from sitegen.diagrams.drawn_lines import DrawnLines
from sitegen.diagrams.geometry import Segment, Spot, crosses, meet
from sitegen.diagrams.label_places import places
from sitegen.diagrams.on_page import on_page, placing
from sitegen.diagrams.svg import write_svg
from sitegen.diagrams.text_boxes import UNIT, Box
from sitegen.quantities import Length, mm

ROOM = (8 * UNIT, 342 * UNIT)
UNLIMITED = 10**9

coordinates = st.integers(-40, 40).map(lambda number: number * 500)
spots = st.tuples(coordinates, coordinates)
segments = st.lists(st.tuples(spots, spots), max_size=12)
fractions = st.fractions(min_value=-500, max_value=500, max_denominator=64)


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    left, top = draw(spots)
    return Box(left, top, left + draw(st.integers(0, 30)) * 500, top + draw(st.integers(0, 30)) * 500)


def hatching(area: Box) -> list[Segment]:
    return [((area.left, level), (area.right, level)) for level in range(area.top, area.bottom, 7 * UNIT)]


@settings(max_examples=300)
@given(segments, st.lists(boxes(), max_size=3), boxes())
def test_lines_through_a_box_are_counted_as_one_by_one(lines: list[Segment], areas: list[Box], box: Box) -> None:
    each = [*lines, *(level for area in areas for level in hatching(area))]
    assert DrawnLines(lines, areas).through(box, UNLIMITED) == sum(crosses(line, box) for line in each)


@given(segments, st.lists(boxes(), max_size=3), boxes(), st.integers(1, 8))
def test_counting_ends_early_only_when_there_are_enough(
    lines: list[Segment], areas: list[Box], box: Box, enough: int
) -> None:
    counted = DrawnLines(lines, areas)
    whole = counted.through(box, UNLIMITED)
    found = counted.through(box, enough)
    assert found == whole if whole < enough else enough <= found <= whole


@given(segments, st.tuples(spots, spots))
def test_lines_that_a_leader_crosses_are_counted_as_one_by_one(lines: list[Segment], leader: Segment) -> None:
    drawn = [line for line in lines if line[0] != line[1]]
    assert DrawnLines(drawn, []).met_by(leader) == sum(meet(leader, line) for line in drawn)


def test_line_drawn_twice_counts_twice_whichever_way_it_runs() -> None:
    line = ((0, 5), (10, 5))
    assert DrawnLines([line, (line[1], line[0])], []).through(Box(2, 2, 8, 8), UNLIMITED) == 2


@given(
    st.lists(st.sampled_from(Side), min_size=1, max_size=5, unique=True),
    st.tuples(st.integers(-50, 400), st.integers(-50, 400)),
    st.tuples(st.integers(1, 334), st.integers(10, 90)),
    st.integers(0, 12),
)
def test_places_come_cheapest_first_and_inside(sides: list[Side], spot: Spot, size: tuple[int, int], gap: int) -> None:
    x, y, width, height = (number * UNIT for number in (*spot, *size))
    label = Label("word", at(), tuple(sides), gap=gap)
    found = list(places(label, (x, y), (width, height), ROOM))
    costs = [cost for cost, _, _ in found]
    assert costs == sorted(costs)
    assert len(found) == sum(33 if side is Side.CENTRE else 14 * 33 for side in sides)
    for _, _, box in found:
        assert ROOM[0] <= box.left < box.right <= ROOM[1]
        assert (box.right - box.left, box.bottom - box.top) == (width, height)


def test_first_place_is_on_the_first_side_at_its_gap() -> None:
    label = Label("word", at(), (Side.RIGHT, Side.ABOVE), gap=4)
    cost, side, box = next(places(label, (100_000, 50_000), (30_000, 10_000), ROOM))
    assert (cost, side, box) == (0, Side.RIGHT, Box(104_000, 45_000, 134_000, 55_000))


@given(fractions, fractions, fractions, fractions, fractions.filter(lambda scale: scale > 0), fractions, fractions)
def test_spot_is_its_exact_place_rounded_once(
    x: Fraction, y: Fraction, right: Fraction, down: Fraction, scale: Fraction, start: Fraction, top: Fraction
) -> None:
    place = placing(View(scale, (), start, top))
    across, along = start + right + x * scale, top + down + y * scale
    assert place(at(Length(x), Length(y), right, down)) == (round(across * 1000), round(along * 1000))


def test_halves_of_a_thousandth_go_to_the_even_neighbour() -> None:
    place = placing(View(Fraction(1), ()))
    halves = [Fraction(number, 2000) for number in (1, 3, -1, -3)]
    assert [place(at(right=half))[0] for half in halves] == [0, 2, 0, -2]


def test_lines_end_on_the_page_where_they_are_written() -> None:
    line = Line(at(mm(10), mm(20), right=3), at(mm(40), mm(20), right=3), Role.CUT, Number("a", mm(30)))
    view = View(Fraction(3, 2), (line,), right=7, down=Fraction(1, 3))
    ((start, end),) = on_page(view).shapes[0].segments
    assert (start, end) == ((25_000, 30_333), (70_000, 30_333))
    assert 'x1="25" y1="30.333" x2="70" y2="30.333"' in write_svg(Drawing("t", "d", (view,)), "p")
