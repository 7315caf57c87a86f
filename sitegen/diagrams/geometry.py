"""Straight and bent lines in whole thousandths of a page unit: their lengths, ticks, arrows, zigzags and half circles.

The only module of the room with roots and angles: floats live inside these functions and are rounded away.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import atan2, cos, hypot, pi, sin

from sitegen.diagrams.text_boxes import UNIT, Box

Spot = tuple[int, int]
Segment = tuple[Spot, Spot]

_TICK = 3.5
_EXTENSION_GAP = 2.5
_EXTENSION_OVER = 3.5
_ARROW = (8.0, 3.2)
SHORTEST = UNIT
"""A line of less than one page unit cannot be seen, nor drawn true to thousandths: it is left out."""


def length_of(segment: Segment) -> float:
    """How long a piece of line is on the page."""
    (x1, y1), (x2, y2) = segment
    return hypot(x2 - x1, y2 - y1)


def dimension_ends(feet: Segment, line: Segment) -> tuple[Segment, Segment]:
    """The ticks of a dimension, or the thin lines that lead to it from what it measures where that is further off."""
    across = _direction(line)
    square = (-across[1], across[0])
    return _dimension_end(feet[0], line[0], square), _dimension_end(feet[1], line[1], square)


def _dimension_end(foot: Spot, end: Spot, square: tuple[float, float]) -> Segment:
    if length_of((foot, end)) > (_EXTENSION_GAP + 1) * UNIT:
        along = _direction((foot, end))
        return _along(foot, along, _EXTENSION_GAP), _along(end, along, _EXTENSION_OVER)
    return _along(end, square, _TICK), _along(end, square, -_TICK)


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


def half_circle(start: Spot, end: Spot, *, clockwise: bool) -> Iterator[Spot]:
    """Spots along a half circle, an eighth of it apart, without its start."""
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    radius = length_of((start, end)) / 2
    begin = atan2(start[1] - middle[1], start[0] - middle[0])
    for eighth in range(1, 8):
        angle = begin + pi * eighth / 8 * (1 if clockwise else -1)
        yield round(middle[0] + radius * cos(angle)), round(middle[1] + radius * sin(angle))
    yield end


def crosses(segment: Segment, box: Box) -> bool:
    """Whether a straight piece of line passes through a box."""
    (x1, y1), (x2, y2) = segment
    left, top, right, bottom = box
    if max(x1, x2) <= left or min(x1, x2) >= right or max(y1, y2) <= top or min(y1, y2) >= bottom:
        return False
    across, down = x2 - x1, y2 - y1
    # Each product is larger or smaller as the corners lie to one side of the line or the other.
    upper, lower = across * (top - y1), across * (bottom - y1)
    nearer, farther = down * (left - x1), down * (right - x1)
    corners = (upper - nearer, upper - farther, lower - nearer, lower - farther)
    return min(corners) < 0 < max(corners)


def meet(one: Segment, other: Segment) -> bool:
    """Whether two straight pieces of line cross each other; touching at an end is none."""
    return _parts(one, other) and _parts(other, one)


def _parts(line: Segment, ends: Segment) -> bool:
    """Whether the ends of a segment lie on both sides of a straight line."""
    (x1, y1), (x2, y2) = line
    one, other = ((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1) for x, y in ends)
    return (one < 0 < other) or (other < 0 < one)


def nearest_on(box: Box, spot: Spot) -> Spot:
    """The place of a box, edge or inside, that is nearest to a spot."""
    return min(max(spot[0], box.left), box.right), min(max(spot[1], box.top), box.bottom)


def _direction(segment: Segment) -> tuple[float, float]:
    (x1, y1), (x2, y2) = segment
    size = hypot(x2 - x1, y2 - y1)
    return (x2 - x1) / size, (y2 - y1) / size


def _along(spot: Spot, direction: tuple[float, float], units: float) -> Spot:
    return round(spot[0] + direction[0] * units * UNIT), round(spot[1] + direction[1] * units * UNIT)
