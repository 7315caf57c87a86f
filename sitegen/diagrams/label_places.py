"""Where a label may stand: every place around its spot, in the order of how much each is liked.

A place costs more the later its side was named, the further it is from the spot, and the more it is slid along.
"""

from __future__ import annotations

from collections.abc import Iterator
from heapq import heapify, heappop, heappush

from sitegen.diagrams.drawing import Label, Side
from sitegen.diagrams.geometry import Spot
from sitegen.diagrams.text_boxes import UNIT, Box

_STEP = 6 * UNIT
_STEPS = 14
_SLIDES = 16
_SIDE_COST = 5 * UNIT
_UPRIGHT = (Side.ABOVE, Side.BELOW, Side.CENTRE)

Place = tuple[int, Side, Box]
"""What a place costs, on which side of the spot it is, and the box."""


def places(label: Label, spot: Spot, size: tuple[int, int], room: tuple[int, int]) -> Iterator[Place]:
    """Places for a label of this width and height between the edges of the room, the cheapest first.

    Places are worked out only as they are asked for. The queue holds places with their cost, and, before any of
    them at the same cost, rings: two places slid equally far to both sides, with the least that they can cost.
    """
    width, height = size
    queue = [(order * _SIDE_COST, False, order, 0, 0, (0, 0)) for order in range(len(label.places))]
    heapify(queue)
    while queue:
        cost, settled, order, step, slide, corner = heappop(queue)
        side = label.places[order]
        if settled:
            yield cost, side, Box(*corner, corner[0] + width, corner[1] + height)
            continue
        base = order * _SIDE_COST + step * _STEP
        along = width if side in _UPRIGHT else height
        away = label.gap * UNIT + step * _STEP
        # Among places of equal cost the rank decides: the unslid one, then backward before forward, ring by ring.
        for rank, slid in ((2 * slide - 1, -slide), (2 * slide, slide)) if slide else ((0, 0),):
            left, top = _corner(side, spot, size, away, slid)
            inside = max(room[0], min(left, room[1] - width))
            moved = abs(inside - left) + slide * along // 4
            heappush(queue, (base + moved // 3, True, order, step, rank, (inside, top)))
        if slide < _SLIDES:
            heappush(queue, (base + (slide + 1) * along // 4 // 3, False, order, step, slide + 1, (0, 0)))
        if slide == 0 and step + 1 < _STEPS and side is not Side.CENTRE:
            heappush(queue, (base + _STEP, False, order, step + 1, 0, (0, 0)))


def _corner(side: Side, spot: Spot, size: tuple[int, int], away: int, slide: int) -> Spot:
    """Top left corner of a box on that side of the spot, slid along by quarters of its size."""
    (x, y), (width, height) = spot, size
    if side is Side.LEFT or side is Side.RIGHT:
        return (x - away - width if side is Side.LEFT else x + away), y - height // 2 + slide * height // 4
    left = x - width // 2 + slide * width // 4
    if side is Side.CENTRE:
        return left, y - height // 2
    return left, (y - away - height if side is Side.ABOVE else y + away)
