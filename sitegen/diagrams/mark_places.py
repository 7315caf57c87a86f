"""Where the words of marks stand on a photo, and which marks cannot be seen.

All is measured in ``em`` of the words, in the picture as a phone shows it and as a wide page does. The words take most
of the picture on the phone; between the two widths everything only moves apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import cos, dist, pi, sin

from sitegen.diagrams.drawing import TEXT_SIZE
from sitegen.diagrams.text_boxes import UNIT, text_width, wrapped
from sitegen.tutorial import ArrowMark, CircleMark, Mark, NumberMark, Spot

NARROWEST = 280
"""CSS pixels of the narrowest picture on which lines and words have their full size: that of a phone of 350."""
TEXT_PIXELS = 15
DISC = 0.85
"""Radius in em of the disc of a number."""
_WIDEST = 640
_DISC_ROOM = DISC + 0.1
_HEAD_ROOM = 0.5
_GAP = 0.5
_EDGE = 0.15
_LINE_STEP = 1.2
_SHORTEST_ARROW = 1.8
_SMALLEST_CIRCLE = 1.5
_LINE_WIDTHS = (8, 4)
"""Em after which words go on in a further line: as is best read, and where that has no room."""
_NEAR = 0.45

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place of the picture in percent, moved from there by ``dx`` and ``dy`` em; ``dy`` to their middle."""

    lines: tuple[str, ...]
    across: float
    down: float
    dx: float
    dy: float
    anchor: str
    """``start``, ``middle`` or ``end``: which part of the words the place is at."""


@dataclass(frozen=True, slots=True)
class MarkTrouble:
    """A mark that a reader cannot see."""

    mark: Mark
    covered: bool
    """Whether another mark lies on it; else it is too small, cut off or without room."""
    message: str


@dataclass(frozen=True, slots=True)
class _Box:
    left: float
    top: float
    right: float
    bottom: float

    def holds(self, point: Point, near: float = 0) -> bool:
        x, y = point
        return self.left - near < x < self.right + near and self.top - near < y < self.bottom + near

    def overlaps(self, other: _Box) -> bool:
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom


@dataclass(frozen=True, slots=True)
class _Frame:
    """The picture at one width, in em."""

    width: float
    height: float

    def at(self, spot: Spot) -> Point:
        return self.point(float(spot.across), float(spot.down))

    def point(self, across: float, down: float) -> Point:
        return across / 100 * self.width, down / 100 * self.height

    def whole(self, box: _Box, edge: float = _EDGE) -> bool:
        inside_across = box.left >= edge and box.right <= self.width - edge
        return inside_across and box.top >= edge and box.bottom <= self.height - edge


def labels(marks: Sequence[Mark], width: int, height: int) -> tuple[Label | None, ...]:
    """The words of each arrow and circle of a photo of this size, inside it and clear of the other marks.

    In the order of the marks; None for numbers, and for words that have no room.
    """
    frames = _frames(width, height)
    placed: list[Label | None] = []
    for mark in marks:
        taken = [label for label in placed if label is not None]
        placed.append(None if isinstance(mark, NumberMark) else _placed(mark, marks, taken, frames))
    return tuple(placed)


def mark_troubles(marks: Sequence[Mark], width: int, height: int) -> tuple[MarkTrouble, ...]:
    """The marks that cannot be seen on a photo of this size in pixels, as it stands upright."""
    narrow = _frames(width, height)[0]
    found = [trouble for mark in marks if (trouble := _unseen(mark, narrow)) is not None]
    for one, other in combinations(marks, 2):
        if _covers(one, other, narrow):
            words = f"{name_of(other).capitalize()} lies on {name_of(one)}. Move one of them."
            found.append(MarkTrouble(other, True, words))
    if not found:
        for mark, label in zip(marks, labels(marks, width, height), strict=True):
            if label is None and not isinstance(mark, NumberMark):
                words = (
                    f"There is no room in the picture for the words of {name_of(mark)}. Make them shorter, or move it."
                )
                found.append(MarkTrouble(mark, False, words))
    return tuple(found)


def name_of(mark: Mark) -> str:
    """How a message calls a mark."""
    if isinstance(mark, NumberMark):
        return f"number {mark.number}"
    return f"the {'arrow' if isinstance(mark, ArrowMark) else 'circle'} “{' '.join(mark.text.text.split())}”"


def _frames(width: int, height: int) -> tuple[_Frame, _Frame]:
    narrow, wide = (pixels / TEXT_PIXELS for pixels in (NARROWEST, _WIDEST))
    return _Frame(narrow, narrow * height / width), _Frame(wide, wide * height / width)


# -- what cannot be seen ------------------------------------------------------------------------------


def _unseen(mark: Mark, frame: _Frame) -> MarkTrouble | None:
    percent_of_em = 100 / frame.width
    words = ""
    if isinstance(mark, ArrowMark):
        length = dist(frame.at(mark.tail), frame.at(mark.tip))
        if length < _SHORTEST_ARROW:
            words = _too_small(mark, "long", length * percent_of_em, _SHORTEST_ARROW * percent_of_em)
    elif isinstance(mark, CircleMark):
        across = float(mark.across)
        if across < _SMALLEST_CIRCLE * percent_of_em:
            words = _too_small(mark, "across", across, _SMALLEST_CIRCLE * percent_of_em)
        elif not frame.whole(_around(frame.at(mark.centre), across / percent_of_em / 2)):
            words = _cut_off(mark)
    elif not frame.whole(_around(frame.at(mark.at), _DISC_ROOM), edge=0):
        words = _cut_off(mark)
    return MarkTrouble(mark, False, words) if words else None


def _too_small(mark: Mark, way: str, found: float, least: float) -> str:
    return (
        f"{name_of(mark).capitalize()} is {found:.0f}% of the picture's width {way}, too small to be seen on a phone."
        f" Make it {int(least) + 1}% {way}, or more."
    )


def _cut_off(mark: Mark) -> str:
    return f"{name_of(mark).capitalize()} is cut off by the edge of the picture. Move it further in."


def _covers(one: Mark, other: Mark, frame: _Frame) -> bool:
    """Whether two marks lie so that one hides the other: numbers and heads of arrows, or circles on each other."""
    if isinstance(one, CircleMark) and isinstance(other, CircleMark):
        radius, further = (float(each.across) / 200 * frame.width for each in (one, other))
        return dist(frame.at(one.centre), frame.at(other.centre)) + abs(radius - further) < 2 * _NEAR
    if isinstance(one, CircleMark) or isinstance(other, CircleMark):
        return False
    (here, room), (there, further_room) = (_spot_of(one, frame), _spot_of(other, frame))
    return dist(here, there) < room + further_room


def _spot_of(mark: ArrowMark | NumberMark, frame: _Frame) -> tuple[Point, float]:
    if isinstance(mark, NumberMark):
        return frame.at(mark.at), _DISC_ROOM
    return frame.at(mark.tip), _HEAD_ROOM


# -- where the words stand ----------------------------------------------------------------------------


def _placed(
    mark: ArrowMark | CircleMark, marks: Sequence[Mark], taken: Sequence[Label], frames: Sequence[_Frame]
) -> Label | None:
    """The first place around the mark that is inside and free; else the first that hides at most lines."""
    inside = [
        label
        for label in _around_mark(mark, frames[0])
        if all(frame.whole(_box(label, frame)) for frame in frames)
        and not any(_hides(label, marks, taken, frame) for frame in frames)
    ]
    free = (label for label in inside if not any(_crosses(label, marks, frame) for frame in frames))
    return next(free, inside[0] if inside else None)


def _around_mark(mark: ArrowMark | CircleMark, frame: _Frame) -> Iterator[Label]:
    """Every place that is tried, the best first: of an arrow behind its tail, of a circle at its right."""
    words = " ".join(mark.text.text.split())
    for lines in dict.fromkeys(wrapped(words, width * TEXT_SIZE, strong=True) for width in _LINE_WIDTHS):
        yield from _beside(mark, lines, frame)


def _beside(mark: ArrowMark | CircleMark, lines: tuple[str, ...], frame: _Frame) -> Iterator[Label]:
    aside = (len(lines) - 1) * _LINE_STEP / 2 + 0.6 + _GAP / 2
    if isinstance(mark, ArrowMark):
        spot, reach = mark.tail, 0.0
        (x, y), (to_x, to_y) = frame.at(mark.tail), frame.at(mark.tip)
        behind = (x - to_x, y - to_y)
    else:
        spot, reach, behind = mark.centre, float(mark.across) / 2, (1.0, 0.1)
    across, down = float(spot.across), float(spot.down)
    reach_down = reach * frame.width / frame.height
    sides = ((1, 0), (-1, 0), (0, -1), (0, 1))
    for x_side, y_side in sorted(sides, key=lambda side: -(side[0] * behind[0] + side[1] * behind[1])):
        at = (across + x_side * reach, down + y_side * reach_down)
        if x_side:
            yield Label(lines, *at, x_side * _GAP, 0, "start" if x_side > 0 else "end")
        else:
            for anchor, dx in (("middle", 0.0), ("start", -_GAP), ("end", _GAP)):
                yield Label(lines, *at, dx, y_side * aside, anchor)


def _box(label: Label, frame: _Frame) -> _Box:
    """The room that the words take."""
    width = max(text_width(line, strong=True) for line in label.lines) / UNIT / TEXT_SIZE
    height = (len(label.lines) - 1) * _LINE_STEP + 1.2
    x, y = frame.point(label.across, label.down)
    left = x + label.dx - width * {"start": 0, "middle": 0.5, "end": 1}[label.anchor]
    top = y + label.dy - height / 2
    return _Box(left, top, left + width, top + height)


def _hides(label: Label, marks: Sequence[Mark], taken: Sequence[Label], frame: _Frame) -> bool:
    """Whether the words lie on a number, on the head of an arrow or on other words."""
    box = _box(label, frame)
    spots = (_spot_of(mark, frame) for mark in marks if not isinstance(mark, CircleMark))
    obstacles = (*(_around(*spot) for spot in spots), *(_box(other, frame) for other in taken))
    return any(box.overlaps(obstacle) for obstacle in obstacles)


def _crosses(label: Label, marks: Sequence[Mark], frame: _Frame) -> bool:
    """Whether the words lie on a line."""
    box = _box(label, frame)
    return any(box.holds(point, 0.1) for mark in marks for point in _points_of_line(mark, frame))


def _points_of_line(mark: Mark, frame: _Frame) -> Iterator[Point]:
    """Points along the line of an arrow or a circle, close enough to meet any words that lie on it."""
    if isinstance(mark, ArrowMark):
        (x, y), (to_x, to_y) = frame.at(mark.tail), frame.at(mark.tip)
        steps = max(2, round(dist((x, y), (to_x, to_y)) / _NEAR))
        yield from ((x + (to_x - x) * step / steps, y + (to_y - y) * step / steps) for step in range(steps + 1))
    elif isinstance(mark, CircleMark):
        x, y = frame.at(mark.centre)
        radius = float(mark.across) / 200 * frame.width
        steps = max(8, round(2 * pi * radius / _NEAR))
        turns = (2 * pi * step / steps for step in range(steps))
        yield from ((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)


def _around(point: Point, room: float) -> _Box:
    x, y = point
    return _Box(x - room, y - room, x + room, y + room)
