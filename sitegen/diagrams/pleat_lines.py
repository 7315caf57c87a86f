"""Where the lines of a pleat lie on the flat cloth, and how the cloth runs once it is folded, seen from its edge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.diagrams.drawing import Path, Point, Role, Turn, at, path
from sitegen.quantities import ZERO, Length
from sitegen.sewing import pleats as pleating

PITCH = 12
"""Page units from layer to layer, whatever the cloth."""

_BEND = PITCH // 2
_APART = 1
"""Page units that keep two folds apart which touch in the cloth."""


@dataclass(frozen=True, slots=True)
class PleatLines:
    """The lines of one pleat from its left end, in depths of its folds.

    ``folds`` are folded along, ``places`` show where a fold is brought to, ``moves`` lead from what is moved to where
    it goes.
    """

    folds: tuple[int, ...]
    places: tuple[int, ...]
    moves: tuple[tuple[int, int], ...]
    extent: int
    hidden_between: int = 0
    """How much of what is seen of a pleat, in depths, lies between its own lines."""


LINES = {
    pleating.Pleat.KNIFE: PleatLines((2,), (0,), ((2, 0),), 2),
    pleating.Pleat.BOX: PleatLines((2, 4), (0, 6), ((2, 0), (4, 6)), 6, 2),
    pleating.Pleat.INVERTED: PleatLines((0, 4), (2,), ((0, 2), (4, 2)), 4),
    pleating.Pleat.TUCK: PleatLines((1,), (0, 2), ((2, 0),), 2),
}
"""The under folds of a box pleat meet behind its middle, as is usual (common practice, no source): so it shows as wide
as two depths."""


def folded(kind: pleating.Pleat, depth: Length, beside: int) -> Path:
    """The cloth of one pleat from left to right, right side up, seen from its edge: its first two folds lie at nothing
    and at the depth. So many page units are shown on either side."""
    course = {pleating.Pleat.BOX: _box, pleating.Pleat.INVERTED: _inverted}.get(kind, _knife)
    return path(tuple(course(depth, beside)), Role.TRUED)


def _spot(x: Length, layer: int, right: int = 0) -> Point:
    return at(x, right=right, down=layer * PITCH)


def _knife(depth: Length, beside: int) -> Iterator[Point | Turn]:
    yield _spot(ZERO, 2, -beside)
    yield _spot(depth, 2, -_BEND)
    yield Turn(_spot(depth, 1, -_BEND), clockwise=False)
    yield _spot(ZERO, 1, _BEND)
    yield Turn(_spot(ZERO, 0, _BEND), clockwise=True)
    yield _spot(depth, 0, beside)


def _box(depth: Length, beside: int) -> Iterator[Point | Turn]:
    end, inner = depth * 2, _BEND + _APART
    yield _spot(ZERO, 2, -beside)
    yield _spot(depth, 2, -inner)
    yield Turn(_spot(depth, 1, -inner), clockwise=False)
    yield _spot(ZERO, 1, _BEND)
    yield Turn(_spot(ZERO, 0, _BEND), clockwise=True)
    yield _spot(end, 0, -_BEND)
    yield Turn(_spot(end, 1, -_BEND), clockwise=True)
    yield _spot(depth, 1, inner)
    yield Turn(_spot(depth, 2, inner), clockwise=False)
    yield _spot(end, 2, beside)


def _inverted(depth: Length, beside: int) -> Iterator[Point | Turn]:
    end, outer = depth * 2, _BEND + _APART
    yield _spot(ZERO, 0, -beside)
    yield _spot(depth, 0, -outer)
    yield Turn(_spot(depth, 1, -outer), clockwise=True)
    yield _spot(ZERO, 1, _BEND)
    yield Turn(_spot(ZERO, 2, _BEND), clockwise=False)
    yield _spot(end, 2, -_BEND)
    yield Turn(_spot(end, 1, -_BEND), clockwise=False)
    yield _spot(depth, 1, outer)
    yield Turn(_spot(depth, 0, outer), clockwise=True)
    yield _spot(end, 0, beside)
