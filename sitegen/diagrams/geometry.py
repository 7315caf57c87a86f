"""Where shapes fall on the page, in whole thousandths of a page unit.

The only module of the room with roots and angles: floats live inside these functions and are rounded away.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import atan2, cos, hypot, pi, sin

from sitegen.diagrams.drawing import HATCHED, Dimension, Line, Path, Point, Shape, Turn, View
from sitegen.diagrams.text_boxes import UNIT, Box

Spot = tuple[int, int]
Segment = tuple[Spot, Spot]

_TICK = 3.5
_EXTENSION_GAP = 2.5
_EXTENSION_OVER = 3.5
_ARROW = (8.0, 3.2)
_HATCH_STEP = 7 * UNIT
SHORTEST = UNIT
"""A line of less than one page unit cannot be seen, nor drawn true to thousandths: it is left out."""


def spot_of(point: Point, view: View) -> Spot:
    """Where a spot falls on the page."""
    across = view.right + point.right + point.x.mm * view.scale
    down = view.down + point.down + point.y.mm * view.scale
    return _thousandths(across), _thousandths(down)


def length_of(segment: Segment) -> float:
    """How long a piece of line is on the page."""
    (x1, y1), (x2, y2) = segment
    return hypot(x2 - x1, y2 - y1)


def dimension_line(dimension: Dimension, view: View) -> Segment:
    """The line of a dimension, beside what it measures."""
    shift = (dimension.right, dimension.down)
    return spot_of(dimension.start.moved(*shift), view), spot_of(dimension.end.moved(*shift), view)


def dimension_ends(dimension: Dimension, view: View) -> tuple[Segment, ...]:
    """The ticks of a dimension, and the thin lines that lead from the cloth to them."""
    line = dimension_line(dimension, view)
    feet = spot_of(dimension.start, view), spot_of(dimension.end, view)
    across = _direction(line) if length_of(line) else (0.0, 0.0)
    pieces: list[Segment] = []
    for foot, end in zip(feet, line, strict=True):
        away = length_of((foot, end))
        if away > (_EXTENSION_GAP + 1) * UNIT:
            along = _direction((foot, end))
            pieces.append((_along(foot, along, _EXTENSION_GAP), _along(end, along, _EXTENSION_OVER)))
        else:
            square = (-across[1], across[0])
            pieces.append((_along(end, square, _TICK), _along(end, square, -_TICK)))
    return tuple(pieces)


def arrowhead(segment: Segment) -> tuple[Spot, Spot, Spot]:
    """The barb, tip and barb of an arrow at the end of the line."""
    ahead = _direction(segment)
    tip = segment[1]
    foot = _along(tip, ahead, -_ARROW[0])
    square = (-ahead[1], ahead[0])
    return _along(foot, square, _ARROW[1]), tip, _along(foot, square, -_ARROW[1])


def to_and_fro(segment: Segment, pitch: int, swing: float) -> tuple[Spot, ...]:
    """A line that swings evenly to both sides of a straight one: a zigzag, or a ragged edge."""
    steps = max(2, round(length_of(segment) / (pitch * UNIT)))
    ahead = _direction(segment)
    square = (-ahead[1], ahead[0])
    stride = length_of(segment) / UNIT / steps
    turns = (_along(segment[0], ahead, stride * (step + 0.5)) for step in range(steps))
    swung = (_along(spot, square, swing if step % 2 else -swing) for step, spot in enumerate(turns))
    return segment[0], *swung, segment[1]


def segments_of(shape: Shape, view: View) -> Iterator[Segment]:
    """The drawn lines of a shape as straight pieces. A label has none."""
    if isinstance(shape, Line):
        yield spot_of(shape.start, view), spot_of(shape.end, view)
    elif isinstance(shape, Dimension):
        line = dimension_line(shape, view)
        if length_of(line) >= SHORTEST:
            yield line
            yield from dimension_ends(shape, view)
    elif isinstance(shape, Path):
        yield from _path_segments(shape, view)
        if shape.role in HATCHED:
            yield from _hatching(tuple(_path_segments(shape, view)))


def crosses(segment: Segment, box: Box) -> bool:
    """Whether a straight piece of line passes through a box."""
    (x1, y1), (x2, y2) = segment
    if max(x1, x2) <= box.left or min(x1, x2) >= box.right or max(y1, y2) <= box.top or min(y1, y2) >= box.bottom:
        return False
    corners = ((box.left, box.top), (box.right, box.top), (box.left, box.bottom), (box.right, box.bottom))
    sides = {_sign((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) for x, y in corners}
    return not (sides <= {0, 1} or sides <= {0, -1})


def nearest_on(box: Box, spot: Spot) -> Spot:
    """The place of a box, edge or inside, that is nearest to a spot."""
    return min(max(spot[0], box.left), box.right), min(max(spot[1], box.top), box.bottom)


def _path_segments(shape: Path, view: View) -> Iterator[Segment]:
    first = last = spot_of(shape.start, view)
    for step in shape.steps:
        for spot in _half_circle(last, step, view) if isinstance(step, Turn) else (spot_of(step, view),):
            yield last, spot
            last = spot
    if shape.closed:
        yield last, first


def _hatching(outline: tuple[Segment, ...]) -> Iterator[Segment]:
    """Level lines across an area, as close as its hatching: words on hatching are hard to read."""
    across = [spot[0] for line in outline for spot in line]
    down = [spot[1] for line in outline for spot in line]
    for level in range(min(down), max(down), _HATCH_STEP):
        yield (min(across), level), (max(across), level)


def _half_circle(start: Spot, turn: Turn, view: View) -> Iterator[Spot]:
    end = spot_of(turn.to, view)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    radius = length_of((start, end)) / 2
    begin = atan2(start[1] - middle[1], start[0] - middle[0])
    for eighth in range(1, 8):
        angle = begin + pi * eighth / 8 * (1 if turn.clockwise else -1)
        yield round(middle[0] + radius * cos(angle)), round(middle[1] + radius * sin(angle))
    yield end


def _direction(segment: Segment) -> tuple[float, float]:
    (x1, y1), (x2, y2) = segment
    size = hypot(x2 - x1, y2 - y1)
    return (x2 - x1) / size, (y2 - y1) / size


def _along(spot: Spot, direction: tuple[float, float], units: float) -> Spot:
    return round(spot[0] + direction[0] * units * UNIT), round(spot[1] + direction[1] * units * UNIT)


def _thousandths(number: Fraction) -> int:
    return round(number * UNIT)


def _sign(number: int) -> int:
    return (number > 0) - (number < 0)
