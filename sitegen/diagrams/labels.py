"""Finds a place for every label: never over another, never over the edge, and off the lines where it can be.

Labels are placed one after another in the order of the drawing. Each tries the sides that it asks for, near
first, and takes the cheapest place that is free of other labels; above and below there is always one, since
the picture grows in height. A label that had to move away gets a leader to its spot. A view below another goes
further down where the words of that one leave no room for its heading.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from sitegen.diagrams.drawing import MARGIN, Drawing, Label, Side
from sitegen.diagrams.drawn_lines import DrawnLines
from sitegen.diagrams.geometry import Segment, Spot, crosses, nearest_on
from sitegen.diagrams.label_places import places
from sitegen.diagrams.on_page import DimensionOnPage, PathOnPage, ViewOnPage, on_page
from sitegen.diagrams.text_boxes import UNIT, Box, block_size, wrapped

_AIR = UNIT
"""Kept free around every label."""
_LEADER_FROM = 5 * UNIT
_LINE_COST = 30 * UNIT
_LEADER_COST = 60 * UNIT
_LEADER_LINE_COST = 2 * UNIT
_MEASURE_COST = 40 * UNIT
"""For words on the line of a dimension, and for a leader across it, which would read as a part of it."""
_NO_LIMIT = 10**12


@dataclass(frozen=True, slots=True)
class PlacedLabel:
    """A label with its lines, its box on the page, the side at which its lines are flush, and its leader."""

    label: Label
    lines: tuple[str, ...]
    box: Box
    flush: Side
    leader: Segment | None


@dataclass(frozen=True, slots=True)
class Layout:
    """The window of the picture in thousandths of a page unit, its views, and its labels in place."""

    window: Box
    views: tuple[ViewOnPage, ...]
    labels: tuple[PlacedLabel, ...]


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A label that looks for a place: its spot, its lines, and their width and height."""

    label: Label
    spot: Spot
    lines: tuple[str, ...]
    size: tuple[int, int]


@dataclass(frozen=True, slots=True)
class _Page:
    """The left and right edge of the room for labels, the drawn lines, those of dimensions, and the labels placed so
    far."""

    room: tuple[int, int]
    lines: DrawnLines
    measures: DrawnLines
    placed: list[PlacedLabel]
    taken: list[Box]
    """The boxes of the placed labels with air around them."""

    def add(self, label: PlacedLabel) -> None:
        """Keeps the place of a label free of the next ones."""
        self.placed.append(label)
        self.taken.append(label.box.grown(_AIR))


def laid_out(drawing: Drawing) -> Layout:
    """The drawing with all its labels in place, and the window that holds everything."""
    layout = _laid_out(drawing)
    for place in range(1, len(drawing.views)):
        missing = _room_missing_above(place, layout)
        if missing:
            above, below = drawing.views[:place], drawing.views[place:]
            moved = tuple(replace(view, down=view.down + missing) for view in below)
            drawing = replace(drawing, views=(*above, *moved))
            layout = _laid_out(drawing)
    return layout


def _room_missing_above(place: int, layout: Layout) -> int:
    """By how many page units a view must go down so that its heading stands below the words of the views above it.

    0 for one without a heading, and for one that stands beside those before it.
    """
    first = sum(len(view.labels) for view in layout.views[:place])
    before, heading = layout.labels[:first], next(iter(layout.labels[first:]), None)
    if heading is None or not heading.label.strong or heading.label.places != (Side.ABOVE,):
        return 0
    above = [level for view in layout.views[:place] for level in _levels(view)]
    lowest = max(above, default=0)
    top = min(_levels(layout.views[place]), default=lowest)
    if lowest > top or lowest <= heading.box.top < heading.box.bottom <= top:
        return 0
    words = max((label.box.bottom for label in before), default=lowest)
    height = heading.box.bottom - heading.box.top + heading.label.gap * UNIT
    return -(-max(0, max(words, lowest) + 2 * _AIR + height - top) // UNIT)


def _levels(view: ViewOnPage) -> list[int]:
    return [level for shape in view.shapes for segment in shape.segments for _, level in segment]


def _laid_out(drawing: Drawing) -> Layout:
    views = tuple(on_page(view) for view in drawing.views)
    shapes = [shape for view in views for shape in view.shapes]
    segments = [segment for shape in shapes for segment in shape.segments]
    hatched = [area for shape in shapes if isinstance(shape, PathOnPage) and (area := shape.hatched)]
    inner = drawing.width - 2 * MARGIN
    wanted = [_wanted(label, spot, inner) for view in views for label, spot in view.labels]
    widest = max((each.size[0] for each in wanted), default=0)
    room = (MARGIN * UNIT, MARGIN * UNIT + max(inner * UNIT, widest))
    measures = (each for shape in shapes if isinstance(shape, DimensionOnPage) for each in shape.segments)
    page = _Page(room, DrawnLines(segments, hatched), DrawnLines(measures, ()), [], [])
    for each in wanted:
        page.add(_placed(each, page))
    return Layout(_window(room, segments, page.placed), views, tuple(page.placed))


def _wanted(label: Label, spot: Spot, inner: int) -> _Wanted:
    lines = wrapped(label.text, min(label.width, inner), strong=label.strong)
    return _Wanted(label, spot, lines, block_size(lines, strong=label.strong))


def _placed(wanted: _Wanted, page: _Page) -> PlacedLabel:
    best: PlacedLabel | None = None
    least = _NO_LIMIT
    for liked, side, box in places(wanted.label, wanted.spot, wanted.size, page.room):
        if liked >= least:
            break
        if any(box.overlaps(other) for other in page.taken):
            continue
        leader = _leader(box, wanted)
        cost = liked + _crossing_cost(box, leader, page, least - liked)
        if cost < least:
            best, least = PlacedLabel(wanted.label, wanted.lines, box, side, leader), cost
    return best or _placed_below_all(wanted, page)


def _placed_below_all(wanted: _Wanted, page: _Page) -> PlacedLabel:
    width, height = wanted.size
    top = max(other.box.bottom for other in page.placed) + 2 * _AIR
    left = max(page.room[0], min(wanted.spot[0] - width // 2, page.room[1] - width))
    box = Box(left, top, left + width, top + height)
    return PlacedLabel(wanted.label, wanted.lines, box, Side.CENTRE, _leader(box, wanted))


def _leader(box: Box, wanted: _Wanted) -> Segment | None:
    if not wanted.label.leader:
        return None
    spot, end = wanted.spot, nearest_on(box, wanted.spot)
    apart = max(abs(end[0] - spot[0]), abs(end[1] - spot[1]))
    return (spot, end) if apart > wanted.label.gap * UNIT + _LEADER_FROM else None


def _crossing_cost(box: Box, leader: Segment | None, page: _Page, limit: int) -> int:
    """What a place costs for all that it or its leader would cross; when that reaches the limit, it may cost more."""
    aired = box.grown(_AIR)
    cost = 0
    for other in page.placed:
        if other.leader and crosses(other.leader, aired):
            cost += _LEADER_COST
        if leader and crosses(leader, other.box):
            cost += _LEADER_COST
    if cost < limit:
        cost += _LINE_COST * page.lines.through(aired, _times(_LINE_COST, limit - cost))
    if cost < limit:
        cost += _MEASURE_COST * page.measures.through(aired, _times(_MEASURE_COST, limit - cost))
    if leader and cost < limit:
        cost += _MEASURE_COST * page.measures.met_by(leader)
    if leader and cost < limit:
        (x1, y1), (x2, y2) = leader
        along = Box(min(x1, x2), min(y1, y2), max(x1, x2) + 1, max(y1, y2) + 1)
        cost += _LEADER_LINE_COST * page.lines.through(along, _times(_LEADER_LINE_COST, limit - cost))
    return cost


def _times(cost: int, limit: int) -> int:
    """How many times a cost reaches the limit."""
    return -(-limit // cost)


def _window(room: tuple[int, int], segments: Sequence[Segment], placed: Sequence[PlacedLabel]) -> Box:
    xs = [*room, *(x for segment in segments for x, _ in segment)]
    ys = [y for segment in segments for _, y in segment]
    for label in placed:
        ys += label.box.top, label.box.bottom
    edge = MARGIN * UNIT
    return Box(min(xs) - edge, min(ys) - edge, max(xs) + edge, max(ys) + edge)
