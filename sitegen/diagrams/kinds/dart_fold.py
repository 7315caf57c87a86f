"""A dart: marked on its edge, with its legs and its point, and folded for sewing."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from sitegen.diagrams.drawing import (
    CannotDraw,
    Dimension,
    Drawing,
    Label,
    Line,
    Number,
    Role,
    Shape,
    Side,
    View,
    at,
    fitting_scale,
    path,
)
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_ROOM = (60, 190)
_BESIDE = 22
_BELOW = 34
_LEFT = 112
_BETWEEN = 74
_CAPTION = 52


@dataclass(frozen=True)
class DartFold:
    """The width of a dart at its edge, its length to the point, and its leg.

    ``name`` is that of the dart in references, ``edge`` what its edge is called, ``count`` how many alike lie in it.
    Raises ``CannotDraw`` for a dart of no width or length, or one that is far wider than long or far longer than wide.
    """

    name: str
    called: str
    edge: str
    width: Length
    length: Length
    leg: Length
    count: int = 1

    def __post_init__(self) -> None:
        if min(self.width, self.length, self.leg) <= ZERO:
            raise CannotDraw("a dart needs a width and a length above nothing")
        if self.width > self.length * 8 or self.length > self.width * 60:
            raise CannotDraw("width and length of the dart differ too much to be drawn to one scale")

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        return min(fitting_scale(self.width, _ROOM[0]), fitting_scale(self.length, _ROOM[1]))


def describe(dart: DartFold, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    also = f" There are {dart.count} such darts in this edge." if dart.count > 1 else ""
    return (
        f"Marked: the {dart.called} takes {say(dart.width)} of the seam line of the {dart.edge}. Its point lies"
        f" {say(dart.length)} from the seam line, straight in from the middle of its width; either leg, from the seam"
        f" line to the point, is {say(dart.leg)} long.{also} Folded: along the middle, so that one leg lies on the"
        f" other; the stitches begin {say(dart.width / 2)} from the fold and run straight to the point."
    )


def draw(dart: DartFold, *, first: System = System.INCHES) -> Drawing:
    """The dart marked and folded, side by side, to one scale."""
    across = dart.width.mm * dart.scale
    marked = View(dart.scale, tuple(_marked(dart, first)), right=_LEFT)
    folded = View(dart.scale, tuple(_folded(dart, first)), right=_LEFT + across + _BESIDE + _BETWEEN)
    title = capital(f"{dart.called}: how it is marked and folded")
    return Drawing(title, describe(dart, first=first), (marked, folded))


def _marked(dart: DartFold, first: System) -> list[Shape]:
    """The wedge, with the edge above and the point below."""
    middle, width, foot = dart.width / 2, dart.width, dart.length
    begin, end = at(right=-_BESIDE), at(width, right=_BESIDE)
    low_begin, low_end = at(y=foot, right=-_BESIDE, down=_BELOW), at(width, foot, right=_BESIDE, down=_BELOW)
    left, right, point = at(), at(width), at(middle, foot)
    taken, long = Number(f"{dart.name}.width", width), Number(f"{dart.name}.length", foot)
    return [
        Label("marked", at(middle, down=-_CAPTION), (Side.ABOVE,), strong=True, leader=False),
        path((begin, end, low_end, low_begin), Role.RIGHT, closed=True),
        Line(begin, low_begin, Role.BREAK),
        Line(end, low_end, Role.BREAK),
        Line(low_begin, low_end, Role.BREAK),
        Line(begin, end, Role.SEAM),
        Line(at(middle), point, Role.FOLD),
        Line(left, point, Role.STITCH),
        Line(right, point, Role.STITCH),
        Dimension(left, right, taken, f"width {both_units(width, first)}", (Side.ABOVE,), down=-10, width=130),
        Dimension(
            left, at(y=foot), long, f"length\n{both_units(foot, first)}", (Side.LEFT,), right=-_BESIDE - 8, width=74
        ),
        Label("point", point, (Side.BELOW,), gap=4),
        Label(f"seam line, {dart.edge}", begin, (Side.LEFT,), width=68, gap=8, leader=False),
        Label(f"leg\n{both_units(dart.leg, first)}", at(width * 3 / 4, foot / 2), (Side.RIGHT,), width=66),
    ]


def _folded(dart: DartFold, first: System) -> list[Shape]:
    """The fold at the left, one leg on the other."""
    half, foot = dart.width / 2, dart.length
    corner, point = at(), at(y=foot)
    end, low_end, low = at(half, right=_BESIDE), at(half, foot, right=_BESIDE, down=_BELOW), at(y=foot, down=_BELOW)
    number = Number(f"{dart.name}.width/2", half)
    return [
        Label("folded", at(half / 2, down=-_CAPTION), (Side.ABOVE,), strong=True, leader=False),
        path((corner, end, low_end, low), Role.RIGHT, closed=True),
        Line(end, low_end, Role.BREAK),
        Line(low, low_end, Role.BREAK),
        Line(corner, end, Role.SEAM),
        Line(corner, low, Role.FOLD),
        Line(at(half), point, Role.STITCH),
        Dimension(corner, at(half), number, f"half {both_units(half, first)}", (Side.ABOVE,), down=-10, width=120),
        Label("fold", at(y=foot * Fraction(4, 5)), (Side.LEFT,), gap=3),
        Label("sew", at(half / 2, foot / 2), (Side.RIGHT, Side.BELOW)),
    ]
