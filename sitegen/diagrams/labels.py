"""Finds a place for every label: never over another, never over the edge, and off the lines where it can be.

Labels are placed one after another in the order of the drawing. Each tries the sides that it asks for, near
first, and takes the cheapest place that is free of other labels; above and below there is always one, since
the picture grows in height. A label that had to move away gets a leader to its spot.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.diagrams.drawing import MARGIN, PAGE_WIDTH, Dimension, Drawing, Label, Side, View
from sitegen.diagrams.geometry import Segment, Spot, crosses, nearest_on, segments_of, spot_of
from sitegen.diagrams.text_boxes import UNIT, Box, block_size, wrapped

_AIR = UNIT
"""Kept free around every label."""
_STEP = 6 * UNIT
_STEPS = 14
_LEADER_FROM = 5 * UNIT
_SIDE_COST = 5 * UNIT
_LINE_COST = 30 * UNIT
_LEADER_COST = 60 * UNIT
_LEADER_LINE_COST = 2 * UNIT


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
    """The window of the picture in thousandths of a page unit, and its labels in place."""

    window: Box
    labels: tuple[PlacedLabel, ...]


@dataclass(frozen=True, slots=True)
class _Page:
    left: int
    right: int
    lines: tuple[Segment, ...]


def laid_out(drawing: Drawing) -> Layout:
    """The drawing with all its labels in place, and the window that holds everything."""
    lines = tuple(line for view in drawing.views for shape in view.shapes for line in segments_of(shape, view))
    wanted = [found for view in drawing.views for found in _labels_of(view)]
    inner = (PAGE_WIDTH - 2 * MARGIN) * UNIT
    widest = max((_size(label)[0] for label, _ in wanted), default=0)
    page = _Page(MARGIN * UNIT, MARGIN * UNIT + max(inner, widest), lines)
    placed: list[PlacedLabel] = []
    for label, spot in wanted:
        placed.append(_place(label, spot, page, placed))
    return Layout(_window(page, placed), tuple(placed))


def _labels_of(view: View) -> Iterator[tuple[Label, Spot]]:
    for shape in view.shapes:
        label = shape.label if isinstance(shape, Dimension) else shape
        if isinstance(label, Label) and label.text:
            yield label, spot_of(label.spot, view)


def _lines(label: Label) -> tuple[str, ...]:
    return wrapped(label.text, min(label.width, PAGE_WIDTH - 2 * MARGIN), strong=label.strong)


def _size(label: Label) -> tuple[int, int]:
    return block_size(_lines(label), strong=label.strong)


def _place(label: Label, spot: Spot, page: _Page, placed: Sequence[PlacedLabel]) -> PlacedLabel:
    best: tuple[int, PlacedLabel] | None = None
    for cost, side, box in sorted(_candidates(label, spot, page), key=lambda candidate: candidate[0]):
        if best is not None and cost >= best[0]:
            break
        if any(box.grown(_AIR).overlaps(other.box) for other in placed):
            continue
        found = PlacedLabel(label, _lines(label), box, side, _leader(box, spot, label))
        cost += _crossing_cost(found, page, placed)
        if best is None or cost < best[0]:
            best = cost, found
    if best is None:
        return _place_below_all(label, spot, page, placed)
    return best[1]


def _place_below_all(label: Label, spot: Spot, page: _Page, placed: Sequence[PlacedLabel]) -> PlacedLabel:
    width, height = _size(label)
    top = max(other.box.bottom for other in placed) + 2 * _AIR
    left = _within(spot[0] - width // 2, width, page)
    box = Box(left, top, left + width, top + height)
    return PlacedLabel(label, _lines(label), box, Side.CENTRE, _leader(box, spot, label))


def _candidates(label: Label, spot: Spot, page: _Page) -> Iterator[tuple[int, Side, Box]]:
    width, height = _size(label)
    for order, side in enumerate(label.places):
        for step in range(_STEPS if side is not Side.CENTRE else 1):
            away = label.gap * UNIT + step * _STEP
            for slide in _SLIDES:
                left, top = _corner(side, spot, (width, height), away, slide)
                inside = _within(left, width, page)
                moved = abs(inside - left) + abs(slide) * (width if side in _UPRIGHT else height) // 4
                cost = order * _SIDE_COST + step * _STEP + moved // 3
                yield cost, side, Box(inside, top, inside + width, top + height)


_SLIDES = tuple(sorted(range(-16, 17), key=abs))
_UPRIGHT = (Side.ABOVE, Side.BELOW, Side.CENTRE)


def _corner(side: Side, spot: Spot, size: tuple[int, int], away: int, slide: int) -> Spot:
    """Top left corner of a box on that side of the spot, slid along by quarters of its size."""
    (x, y), (width, height) = spot, size
    if side in _UPRIGHT:
        left = x - width // 2 + slide * width // 4
        top = {Side.ABOVE: y - away - height, Side.BELOW: y + away, Side.CENTRE: y - height // 2}[side]
        return left, top
    top = y - height // 2 + slide * height // 4
    return (x - away - width if side is Side.LEFT else x + away), top


def _within(left: int, width: int, page: _Page) -> int:
    return max(page.left, min(left, page.right - width))


def _leader(box: Box, spot: Spot, label: Label) -> Segment | None:
    if not label.leader:
        return None
    end = nearest_on(box, spot)
    apart = max(abs(end[0] - spot[0]), abs(end[1] - spot[1]))
    return (spot, end) if apart > label.gap * UNIT + _LEADER_FROM else None


def _crossing_cost(found: PlacedLabel, page: _Page, placed: Sequence[PlacedLabel]) -> int:
    box, leader = found.box.grown(_AIR), found.leader
    cost = _LINE_COST * sum(crosses(line, box) for line in page.lines)
    for other in placed:
        if other.leader and crosses(other.leader, box):
            cost += _LEADER_COST
        if leader and crosses(leader, other.box):
            cost += _LEADER_COST
    if leader:
        path = Box(
            min(leader[0][0], leader[1][0]),
            min(leader[0][1], leader[1][1]),
            max(leader[0][0], leader[1][0]) + 1,
            max(leader[0][1], leader[1][1]) + 1,
        )
        cost += _LEADER_LINE_COST * sum(crosses(line, path) for line in page.lines)
    return cost


def _window(page: _Page, placed: Sequence[PlacedLabel]) -> Box:
    spots = [spot for line in page.lines for spot in line]
    edge = MARGIN * UNIT
    lefts = [x for x, _ in spots] + [page.left]
    rights = [x for x, _ in spots] + [page.right]
    tops = [y for _, y in spots] + [label.box.top for label in placed]
    bottoms = [y for _, y in spots] + [label.box.bottom for label in placed]
    return Box(min(lefts) - edge, min(tops) - edge, max(rights) + edge, max(bottoms) + edge)
