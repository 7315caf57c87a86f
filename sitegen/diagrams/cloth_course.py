"""Cloth cut through along a course of level stretches and bends, its right and wrong side told apart.

The thickness is drawn in page units, whatever the cloth. Bends are quarter circles through exact spots.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.drawing import Line, Point, Role, Shape, path
from sitegen.diagrams.folded_cloth import THICKNESS
from sitegen.quantities import Exact

_HALF = Fraction(THICKNESS, 2)
_STEPS = 8

Way = tuple[int, int]
"""One page unit to the right or left, and down or up."""

LEFT, RIGHT, UP, DOWN = (-1, 0), (1, 0), (0, -1), (0, 1)


@dataclass(frozen=True, slots=True)
class Spot:
    """A spot in the middle of the cloth, and the step of one page unit from there to its right side."""

    middle: Point
    to_right_side: tuple[Exact, Exact]

    def off(self, units: Exact) -> Point:
        """The spot so many page units nearer to the right side."""
        right, down = self.to_right_side
        return self.middle.moved(right * units, down * units)


def flat(start: Point, end: Point, right_side: Way) -> list[Spot]:
    """A straight stretch; ``right_side`` is the way in which its right side looks."""
    return [Spot(start, right_side), Spot(end, right_side)]


def quarter(centre: Point, radius: Exact, begin: Way, end: Way, *, right_side_out: bool) -> list[Spot]:
    """A quarter circle round a centre, from one way to another at right angles to it."""
    sign = 1 if right_side_out else -1
    spots = []
    for step in range(_STEPS + 1):
        # Rational spots of the circle: (1 - t²) / (1 + t²) and 2t / (1 + t²).
        part = Fraction(step, _STEPS)
        along, across = (1 - part * part) / (1 + part * part), 2 * part / (1 + part * part)
        right, down = (one * along + other * across for one, other in zip(begin, end, strict=True))
        spots.append(Spot(centre.moved(right * radius, down * radius), (sign * right, sign * down)))
    return spots


def course(spots: list[Spot], *, raw_end: bool = True) -> list[Shape]:
    """The cloth along these spots, which goes on before the first; it ends raw at the last, or goes on there too."""
    right, middle, wrong = ([spot.off(units) for spot in spots] for units in (_HALF, 0, -_HALF))
    return [
        path((*middle, *reversed(wrong)), Role.WRONG, closed=True),
        path((*middle, *reversed(right)), Role.RIGHT, closed=True),
        path(right, Role.CUT),
        path(wrong, Role.CUT),
        Line(right[0], wrong[0], Role.BREAK),
        Line(right[-1], wrong[-1], Role.RAW if raw_end else Role.BREAK),
    ]
