"""Cloth folded into a hem, cut through: true heights, a drawn thickness, right and wrong side told apart."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.drawing import Line, Path, Point, Role, Shape, Turn, at
from sitegen.quantities import Exact, Length

THICKNESS = 14
"""Page units through one layer, whatever the cloth."""

PITCH = 17
"""Page units from layer to layer."""

_HALF = Fraction(THICKNESS, 2)


@dataclass(frozen=True, slots=True)
class FoldedCloth:
    """A turn, what is folded under at its edge, the height to show true, and how much more above that, in page units.

    Layers stand side by side, the outside on the left; heights are counted up from the fold. The cloth runs
    down, round the fold and up the turn, its right side always on the outside of the bend.
    """

    turn: Length
    fold_under: Length
    top: Length
    more: int

    @property
    def layers(self) -> int:
        """How many layers lie in the hem."""
        return 3 if self.fold_under else 2

    @property
    def width(self) -> int:
        """Page units through all layers."""
        return PITCH * (self.layers - 1) + THICKNESS

    def shapes(self, left: int) -> list[Shape]:
        """The cloth with its outlines, from this far across the page."""
        outer, inner = self._along(left, _HALF), self._along(left, -_HALF)
        middle = self._along(left, 0)
        raw = outer[-1][0], inner[-1][0]
        return [
            _strip(inner, middle, Role.WRONG),
            _strip(middle, outer, Role.RIGHT),
            _line(outer),
            _line(inner),
            Line(outer[0][0], inner[0][0], Role.BREAK),
            Line(*raw, Role.RAW),
        ]

    def raw_edge(self, left: int) -> Point:
        """The middle of the raw edge."""
        return self._along(left, 0)[-1][0]

    def _along(self, left: int, outward: Exact) -> list[tuple[Point, bool]]:
        """The line at this distance from the middle of the cloth: its spots, and whether a bend leads to each."""
        first, last = left + _HALF, left + _HALF + PITCH * (self.layers - 1)
        bend = Fraction(self.width, 2)
        spots = [
            (at(y=-self.top, right=first - outward, down=-self.more), False),
            (at(right=first - outward, down=-bend), False),
            (at(right=last + outward, down=-bend), True),
        ]
        if not self.fold_under:
            return [*spots, (at(y=-self.turn, right=last + outward), False)]
        upper = Fraction(PITCH + THICKNESS, 2)
        return [
            *spots,
            (at(y=-self.turn, right=last + outward, down=upper), False),
            (at(y=-self.turn, right=last - PITCH - outward, down=upper), True),
            (at(y=self.fold_under - self.turn, right=last - PITCH - outward), False),
        ]


def _line(spots: list[tuple[Point, bool]]) -> Path:
    return Path(spots[0][0], tuple(_step(spot, bent, clockwise=False) for spot, bent in spots[1:]), Role.CUT)


def _strip(there: list[tuple[Point, bool]], back: list[tuple[Point, bool]], role: Role) -> Path:
    """The area between two lines: along the one, and back along the other."""
    forth = [_step(spot, bent, clockwise=False) for spot, bent in there[1:]]
    turned = [
        _step(spot, came_by_bend, clockwise=True)
        for (spot, _), (_, came_by_bend) in zip(reversed(back[:-1]), reversed(back[1:]), strict=True)
    ]
    return Path(there[0][0], (*forth, back[-1][0], *turned), role, closed=True)


def _step(spot: Point, bent: bool, *, clockwise: bool) -> Point | Turn:
    return Turn(spot, clockwise) if bent else spot
