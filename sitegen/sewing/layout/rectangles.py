"""Rectangles to be laid on strips of cloth, and the spots where they come to lie, in whole numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle to be laid: its size across and along the strip.

    ``at_fold`` keeps it at the begin of a strip, where the fold is; ``turns`` lets it lie a quarter turned.
    """

    across: int
    along: int
    at_fold: bool = False
    turns: bool = False


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a rectangle lies: its number, its strip, how far from the begin of both, and whether it is turned."""

    number: int
    strip: int
    x: int
    y: int
    turned: bool


@dataclass(frozen=True, slots=True)
class Packed:
    """An arrangement: the length that it takes, and the spot of every rectangle by number."""

    length: int
    spots: tuple[Spot, ...]


@dataclass(frozen=True, slots=True)
class Kind:
    """Rectangles that are alike, tried once for all: their numbers, and the ways in which they may lie.

    A way is the size across, the size along, and whether that is a quarter turned.
    """

    numbers: tuple[int, ...]
    ways: tuple[tuple[int, int, bool], ...]
    at_fold: bool

    @property
    def size(self) -> tuple[int, int]:
        """Across and along, in the first of its ways."""
        across, along, _ = self.ways[0]
        return across, along


def kinds_of(rectangles: Sequence[Rectangle], width: int) -> list[Kind]:
    """The rectangles by size and by what may be done with them on strips of this width."""
    alike: dict[Rectangle, list[int]] = {}
    for number, one in enumerate(rectangles):
        alike.setdefault(one, []).append(number)
    return [Kind(tuple(numbers), _ways(one, width), one.at_fold) for one, numbers in alike.items()]


def _ways(one: Rectangle, width: int) -> tuple[tuple[int, int, bool], ...]:
    ways = [(one.across, one.along, False)]
    if one.turns and one.across != one.along:
        ways.append((one.along, one.across, True))
    return tuple(way for way in ways if way[0] <= width)
