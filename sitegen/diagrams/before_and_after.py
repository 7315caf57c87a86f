"""A piece before and after a change, to one scale: where both stand on the page, and what stands above and below."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.drawing import Label, Point, Side, at, fitting_scale
from sitegen.diagrams.piece_shapes import on
from sitegen.diagrams.tapered_piece import TaperedPiece
from sitegen.quantities import ZERO, Length

_LEFT = 90
_BESIDE = 76
_STACKED = 170
_BETWEEN = 21
_CAPTIONS = 70


@dataclass(frozen=True, slots=True)
class Placing:
    """Page units to the millimetre, the corners of the piece before and after, and where the picture ends below."""

    scale: Fraction
    before: Point
    after: Point
    foot: int


def placing_of(piece: TaperedPiece, longest: Length, height: int = 230) -> Placing:
    """Both beside each other, or the later below the earlier where the piece is wider than long.

    ``longest`` is the longer of the lengths before and after; ``height`` are the page units that it may take.
    """
    stacked = piece.width > longest
    across = _STACKED if stacked else _BESIDE
    scale = min(fitting_scale(piece.width, across), fitting_scale(longest, height))
    width, tall = piece.width.mm * scale, longest.mm * scale
    before = at(right=_LEFT + (0 if stacked else across - width))
    after = before.moved(down=tall + _CAPTIONS) if stacked else before.moved(right=width + _BETWEEN)
    return Placing(scale, before, after, int(after.down + tall))


def captions(piece: TaperedPiece, corner: Point, when: str, foot: Length, length: str) -> tuple[Label, Label]:
    """The words above the piece, and its length below it."""
    middle = piece.width / 2
    return (
        Label(when, on(corner, middle, ZERO), (Side.ABOVE,), strong=True, leader=False),
        Label(length, on(corner, middle, foot), (Side.BELOW,), width=140, leader=False),
    )


def word_spot(piece: TaperedPiece, corner: Point, line: Length) -> Point:
    """On a line across the piece, between the grain line and the right side."""
    left, right = piece.left_at(line), piece.right_at(line)
    return on(corner, left + (right - left) * Fraction(5, 8), line)
