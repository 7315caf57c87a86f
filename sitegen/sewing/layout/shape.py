"""Polygons on a fine grid of whole numbers: mirrored, turned, unfolded, measured, and slid together.

Whole numbers keep every test exact. Only two steps round, and both to the safe side by less than a thousandth
of a millimetre: a piece turned 45° is a trace larger than in truth, and slid pieces lie a trace apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import lcm

from sitegen.quantities import Length
from sitegen.sewing.geometry import root
from sitegen.sewing.layout.parts import Cloth, LayoutPiece

Point = tuple[int, int]
Shape = tuple[Point, ...]

DIAGONAL = 1 / root(Fraction(2))
"""How far a step along a 45° line goes across: 1 ÷ √2, never less than in truth, as the root is rounded down."""
_FINE = 1000
"""Grid lines to the smallest part of a millimetre in the sizes, so that the rounding of a slide is nothing."""


@dataclass(frozen=True, slots=True)
class Grid:
    """Lengths as whole numbers: so many to a millimetre that all given lengths are exact."""

    to_mm: int

    @classmethod
    def of(cls, pieces: Sequence[LayoutPiece], cloth: Cloth) -> Grid:
        """The grid on which all sizes fall on a line, and the corners of bias pieces once they are turned."""
        sizes = [cloth.width / 4, cloth.selvage]
        sizes += [side for piece in pieces for side in (piece.width, piece.length)]
        sizes += [side for piece in pieces for corner in piece.outline or () for side in corner]
        to_mm = lcm(*(size.mm.denominator for size in sizes))
        if any(piece.bias for piece in pieces):
            to_mm *= DIAGONAL.denominator
        if any(piece.outline for piece in pieces):
            to_mm *= _FINE
        return cls(to_mm)

    def whole(self, length: Length) -> int:
        """The length in steps of the grid."""
        return int(length.mm * self.to_mm)

    def length(self, whole: int) -> Length:
        """So many steps of the grid as a length."""
        return Length(Fraction(whole, self.to_mm))

    def shape(self, piece: LayoutPiece) -> Shape:
        """The outline of the paper piece, its lower left corner at nothing; the rectangle if it has no outline."""
        if piece.outline is None:
            return rectangle(self.whole(piece.width), self.whole(piece.length))
        return to_corner(tuple((self.whole(x), self.whole(y)) for x, y in piece.outline))


def rectangle(across: int, along: int) -> Shape:
    """A rectangle with its lower left corner at nothing."""
    return (0, 0), (across, 0), (across, along), (0, along)


def box(shape: Shape) -> tuple[int, int]:
    """How far a shape reaches across and along."""
    return max(x for x, _ in shape), max(y for _, y in shape)


def moved(shape: Shape, across: int, along: int) -> Shape:
    """The shape farther on."""
    return tuple((x + across, y + along) for x, y in shape)


def to_corner(shape: Shape) -> Shape:
    """The shape with the lower left corner of its box at nothing."""
    return moved(shape, -min(x for x, _ in shape), -min(y for _, y in shape))


def turned_over(shape: Shape) -> Shape:
    """The shape with its other face up: left and right change places."""
    across, _ = box(shape)
    return tuple((across - x, y) for x, y in shape)


def head_to_foot(shape: Shape) -> Shape:
    """The shape turned by 180°."""
    across, along = box(shape)
    return tuple((across - x, along - y) for x, y in shape)


def quarter_turned(shape: Shape) -> Shape:
    """The shape turned by 90°, anticlockwise."""
    _, along = box(shape)
    return tuple((along - y, x) for x, y in shape)


def on_diagonal(whole: int) -> int:
    """How far across a length reaches along a 45° line; a whole number on a grid made for bias pieces."""
    return whole // DIAGONAL.denominator * DIAGONAL.numerator


def on_bias(shape: Shape) -> Shape:
    """The shape turned by 45°, anticlockwise."""
    return to_corner(tuple((on_diagonal(x - y), on_diagonal(x + y)) for x, y in shape))


def unfolded(half: Shape) -> Shape:
    """The whole of a piece whose left side, at nothing across, lies on the fold."""
    at_fold = [index for index, (x, _) in enumerate(half) if x == 0]
    first = next(index for index in at_fold if half[index - 1][0] > 0)
    last = next(index for index in at_fold if half[(index + 1) % len(half)][0] > 0)
    chain = [half[(last + step) % len(half)] for step in range((first - last) % len(half) + 1)]
    other = [(-x, y) for x, y in reversed(chain[1:-1])]
    return to_corner((*chain, *other))


def twice_area(shape: Shape) -> int:
    """Twice the area of a shape, never more than that of its box."""
    crossed = sum(x * b - a * y for (x, y), (a, b) in _edges(shape))
    across, along = box(shape)
    return min(abs(crossed), 2 * across * along)


def fold_edge(half: Shape) -> int:
    """The length of the side at nothing across, the one on the fold."""
    return sum(abs(b - y) for (x, y), (a, b) in _edges(half) if x == 0 and a == 0)


def same_turned_over(shape: Shape, *, head_to_foot_allowed: bool) -> bool:
    """Whether the other face of a piece is the same piece, if need be with its head where its foot was."""
    over = turned_over(shape)
    others = [over, head_to_foot(over)] if head_to_foot_allowed else [over]
    own = _edge_set(shape)
    return any(own == _edge_set(other) for other in others)


def slide(left: Shape, right: Shape) -> int:
    """How far right of the first shape's begin the second may begin so that nothing of it lies over the first.

    The second comes from the right until it touches: at every height the farthest point of the first stays
    left of the nearest of the second. Both are largest apart at a corner of one of them.
    """
    gaps = [0]
    near_sides = _sides(right, facing_right=False)
    for first in _sides(left, facing_right=True):
        for second in near_sides:
            low = max(first[0][1], second[0][1])
            high = min(first[1][1], second[1][1])
            if low <= high:
                gaps += (_gap(first, second, low), _gap(first, second, high))
    return max(gaps)


def _sides(shape: Shape, *, facing_right: bool) -> list[tuple[Point, Point]]:
    """The edges with the cloth of the piece on their left, or on their right, each from its lower to its upper end.

    Level edges are left out: their ends are ends of others.
    """
    edges = _edges(shape)
    anticlockwise = sum(x * b - a * y for (x, y), (a, b) in edges) > 0
    up = [(lower, upper) for lower, upper in edges if lower[1] < upper[1]]
    down = [(lower, upper) for upper, lower in edges if lower[1] < upper[1]]
    return up if anticlockwise is facing_right else down


def _gap(first: tuple[Point, Point], second: tuple[Point, Point], level: int) -> int:
    """How far the first edge reaches right of the begin of the second at a level, rounded up to the grid."""
    (x, y), (a, b) = first
    far, far_under = x * (b - y) + (a - x) * (level - y), b - y
    (x, y), (a, b) = second
    near, near_under = x * (b - y) + (a - x) * (level - y), b - y
    return -((near * far_under - far * near_under) // (far_under * near_under))


def _edges(shape: Shape) -> list[tuple[Point, Point]]:
    return list(pairwise((*shape, shape[0])))


def _edge_set(shape: Shape) -> set[frozenset[Point]]:
    return {frozenset(edge) for edge in _edges(shape)}
