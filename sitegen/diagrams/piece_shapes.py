"""The drawn lines of a tapered piece, whole or in parts, from the corner at which it stands.

A corner is set off by page units only: it is where the measures of the piece begin.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from sitegen.diagrams.drawing import Line, Path, Point, Role, path
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.quantities import ZERO, Length


def on(corner: Point, x: Length, y: Length) -> Point:
    """A spot so far across and down the piece, set off by as many page units as its corner."""
    return Point(x, y, corner.right, corner.down)


def side_spots(
    piece: TaperedPiece, corner: Point, left: bool, levels: Sequence[Length], shift: Length = ZERO
) -> list[Point]:
    """Where a side is at these levels of the uncut piece, all moved down by the shift."""
    at_level = piece.left_at if left else piece.right_at
    return [on(corner, at_level(level), level + shift) for level in levels]


def side_role(piece: TaperedPiece, left: bool) -> Role:
    """A side is cut, or on the fold."""
    return Role.FOLD if left and piece.left is Edge.FOLD else Role.CUT


def side(piece: TaperedPiece, corner: Point, left: bool) -> Path:
    """One side of the whole piece."""
    return path(side_spots(piece, corner, left, piece.levels(ZERO, piece.cut_length)), side_role(piece, left))


def area(
    piece: TaperedPiece, corner: Point, upper: Length, lower: Length, shift: Length = ZERO, role: Role = Role.RIGHT
) -> Path:
    """The cloth between two levels of the uncut piece, moved down by the shift."""
    top = [on(corner, x, y) for x, y in piece.top_edge] if not upper else []
    levels = piece.levels(upper, lower)
    right, left = (side_spots(piece, corner, which, levels, shift) for which in (False, True))
    return path((*top, *right, *reversed(left)), role, closed=True)


def ends(piece: TaperedPiece, corner: Point, shift: Length = ZERO) -> list[Path | Line]:
    """The upper edge, and the lower one moved down by the shift."""
    upper = path([on(corner, x, y) for x, y in piece.top_edge], Role.CUT)
    return [upper, across(piece, corner, piece.cut_length, Role.CUT, shift)]


def across(piece: TaperedPiece, corner: Point, level: Length, role: Role, shift: Length = ZERO) -> Line:
    """A level line from side to side, moved down by the shift."""
    left, right = piece.left_at(level), piece.right_at(level)
    return Line(on(corner, left, level + shift), on(corner, right, level + shift), role)


def grain_line(piece: TaperedPiece, corner: Point, foot: Length) -> Line:
    """The grain line: upright, nearer to the left, through most of the length."""
    left = max(piece.left_at(ZERO), piece.left_at(piece.cut_length))
    right = min(piece.right_at(ZERO), piece.right_at(piece.cut_length))
    x = left + (right - left) * Fraction(3, 10)
    return Line(on(corner, x, foot * Fraction(3, 20)), on(corner, x, foot * Fraction(17, 20)), Role.GRAIN)
