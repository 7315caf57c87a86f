"""A pattern piece that runs in, or out, towards its lower edge: where its edges are at any level, exactly."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from functools import cached_property

from sitegen.diagrams.drawing import CannotDraw
from sitegen.quantities import ZERO, Length

_CAP_STEPS = 12
_PARTS = tuple(Fraction(step, _CAP_STEPS) for step in range(_CAP_STEPS + 1))
_CAP = tuple((part, part * part * (3 - 2 * part)) for part in _PARTS)
"""Half of a sketched sleeve cap: how far across, and how far up an S-shaped rise from nothing to one."""


class Edge(Enum):
    """What the left side of the piece is."""

    SLOPING = "sloping"
    STRAIGHT = "straight"
    FOLD = "fold"


@dataclass(frozen=True)
class TaperedPiece:
    """Widths at the upper and the lower end of the taper, its height, the cut length, and what the left side is.

    The right side slopes. The taper ends at the lower edge. Above it the sides are straight, or there is a sleeve
    cap, whose curve is only sketched. Raises ``CannotDraw`` for lengths of nothing or less.
    """

    top: Length
    bottom: Length
    over: Length
    cut_length: Length
    left: Edge = Edge.SLOPING
    cap: bool = False

    def __post_init__(self) -> None:
        if min(self.top, self.bottom, self.over, self.cut_length) <= ZERO:
            raise CannotDraw("a piece needs widths and lengths above nothing")

    @property
    def sloping(self) -> int:
        """How many sides slope."""
        return 2 if self.left is Edge.SLOPING else 1

    @cached_property
    def slope(self) -> Fraction:
        """By how much each sloping side runs in for each unit of height; negative when it runs out."""
        return (self.top - self.bottom).over(self.over) / self.sloping

    @cached_property
    def start(self) -> Length:
        """The level at which the taper starts, from the top."""
        return max(ZERO, self.cut_length - self.over)

    @cached_property
    def width(self) -> Length:
        """The widest part."""
        return self.top + self._spread * self.sloping

    @cached_property
    def _spread(self) -> Length:
        """How far a side that runs out comes beyond its upper end."""
        return max(ZERO, -self._run(self.cut_length))

    @cached_property
    def _right(self) -> Length:
        """Where the right side starts."""
        return self.width - self._spread

    def _run(self, level: Length) -> Length:
        below = level - self.start
        return below * self.slope if below > ZERO else ZERO

    def left_at(self, level: Length) -> Length:
        """Where the left side is at a level of the uncut piece."""
        return self._spread + self._run(level) if self.left is Edge.SLOPING else ZERO

    def right_at(self, level: Length) -> Length:
        """Where the right side is at a level of the uncut piece."""
        return self._right - self._run(level)

    def levels(self, upper: Length, lower: Length) -> tuple[Length, ...]:
        """Where the sides begin, bend and end between two levels. A cap leaves no sides above the taper."""
        if self.has_cap:
            upper = max(upper, self.start)
        bend = (self.start,) if upper < self.start < lower else ()
        return (upper, *bend, lower)

    @property
    def has_cap(self) -> bool:
        """Whether there is a cap and room for it above the taper."""
        return self.cap and self.start > ZERO

    @cached_property
    def top_edge(self) -> tuple[tuple[Length, Length], ...]:
        """The upper edge from left to right: straight, or a sketched sleeve cap down to the start of the taper."""
        left, right = self.left_at(ZERO), self.right_at(ZERO)
        if not self.has_cap:
            return (left, ZERO), (right, ZERO)
        half = (right - left) / 2
        rising = [(left + half * across, self.start * (1 - up)) for across, up in _CAP]
        falling = [(left + half + half * across, self.start * up) for across, up in _CAP]
        return (*rising, *falling[1:])
