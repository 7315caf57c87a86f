"""How many drawn lines a box would hide, asked many times of the same picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from sitegen.diagrams.geometry import Segment, crosses, meet
from sitegen.diagrams.text_boxes import UNIT, Box

_HATCH_STEP = 7 * UNIT
"""Hatching counts as level lines this far apart, as close as it is drawn: words on it are hard to read."""


class DrawnLines:
    """The lines of a picture and its hatched areas.

    Lines drawn twice, as where two areas meet, count twice but are looked at once.
    """

    def __init__(self, segments: Iterable[Segment], hatched: Iterable[Box]) -> None:
        self._upright: list[tuple[Box, int]] = []
        self._sloping: list[tuple[Box, int, Segment]] = []
        counted = Counter((one, other) if one <= other else (other, one) for one, other in segments)
        for segment, times in counted.items():
            (left, y1), (right, y2) = segment
            around = Box(left, min(y1, y2), right, max(y1, y2))
            if left != right and y1 != y2:
                self._sloping.append((around, times, segment))
            elif left != right or y1 != y2:
                self._upright.append((around, times))
        self._hatched = [area for area in hatched if area.left < area.right]

    def through(self, box: Box, enough: int) -> int:
        """How many lines pass through the box. Counting ends early once there are enough."""
        left, top, right, bottom = box
        found = 0
        for area in self._hatched:
            if area.left < right and left < area.right:
                found += _levels(area, top, bottom)
        if found >= enough:
            return found
        for (west, north, east, south), times in self._upright:
            if west < right and left < east and north < bottom and top < south:
                found += times
        if found >= enough:
            return found
        for (west, north, east, south), times, segment in self._sloping:
            if west < right and left < east and north < bottom and top < south and crosses(segment, box):
                found += times
        return found

    def met_by(self, line: Segment) -> int:
        """How many lines, hatching apart, a straight line crosses."""
        (x1, y1), (x2, y2) = line
        left, right, top, bottom = min(x1, x2), max(x1, x2), min(y1, y2), max(y1, y2)
        found = 0
        for (west, north, east, south), times in self._upright:
            if west <= right and left <= east and north <= bottom and top <= south:
                found += times * meet(line, ((west, north), (east, south)))
        for (west, north, east, south), times, segment in self._sloping:
            if west < right and left < east and north < bottom and top < south:
                found += times * meet(line, segment)
        return found


def _levels(area: Box, top: int, bottom: int) -> int:
    """How many level lines of hatching, the first along the upper edge, lie below ``top`` and above ``bottom``."""
    first = max(0, (top - area.top) // _HATCH_STEP + 1)
    beyond = -((area.top - min(bottom, area.bottom)) // _HATCH_STEP)
    return max(0, beyond - first)
