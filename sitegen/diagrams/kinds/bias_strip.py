"""Bias strips out of a square: the square cut from corner to corner, and its halves joined with the strips marked."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.drawing import (
    CannotDraw,
    Dimension,
    Drawing,
    Label,
    Line,
    Number,
    Point,
    Role,
    Shape,
    Side,
    View,
    at,
    fitting_scale,
    path,
)
from sitegen.diagrams.piece_shapes import on
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System
from sitegen.tutorial import MOST_DRAWN_STRIPS

_LEFT = 88
_ROOM = 242
_BETWEEN = 74


@dataclass(frozen=True, slots=True)
class BiasStrip:
    """A square of cloth, and what comes of it once its two halves are joined.

    ``side`` is that of the square, ``width`` that of a strip, ``strip`` the length of its long edge, ``count`` how many
    whole strips there are, ``left_over`` the width of the last one, ``sewn`` the length of all of them joined. ``name``
    is that of the binding in references. Raises ``CannotDraw`` when there is no whole strip, or too many to be seen.
    """

    name: str
    called: str
    side: Length
    width: Length
    strip: Length
    count: int
    left_over: Length
    sewn: Length

    def __post_init__(self) -> None:
        if min(self.side, self.width, self.strip, self.sewn) <= ZERO or self.left_over < ZERO:
            raise CannotDraw("a square and its strips need lengths above nothing")
        if self.count < 1:
            raise CannotDraw("the square is too small for a strip")
        if self.count > MOST_DRAWN_STRIPS:
            raise CannotDraw("there are too many strips to be seen")

    @property
    def height(self) -> Length:
        """From bias edge to bias edge once the halves are joined."""
        return self.width * self.count + self.left_over

    @property
    def scale(self) -> Fraction:
        """Page units to the millimetre: the slanted ends run at 45°, so they lean by as much as they rise."""
        return fitting_scale(self.strip + self.height, _ROOM)


def describe(bias: BiasStrip, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    strips = f"{bias.count} strips" if bias.count > 1 else "1 strip"
    rest = f", and {say(bias.left_over)} left over" if bias.left_over else ""
    joined = (
        f"Sewn end to end the strips are {say(bias.sewn)} long."
        if bias.count > 1
        else f"It is {say(bias.sewn)} long along its long edge."
    )
    return (
        f"First: a square of {say(bias.side)}, cut from corner to corner at 45 degrees to the grain; its upper and its"
        f" lower side carry the letter a. Then: the two halves joined along the sides a to a slanted shape, with level"
        f" bias edges {say(bias.strip)} long. Lines parallel to them, {say(bias.width)} apart, mark {strips}{rest}."
        f" {joined}"
    )


def draw(bias: BiasStrip, *, first: System = System.INCHES) -> Drawing:
    """The square above, the joined halves below it, to one scale."""
    joined = at(down=int(bias.side.mm * bias.scale) + _BETWEEN)
    shapes = (*_square(bias, at(), first), *_joined(bias, joined, first))
    title = capital(f"{bias.called}: bias strips out of a square")
    return Drawing(title, describe(bias, first=first), (View(bias.scale, shapes, right=_LEFT),))


def _square(bias: BiasStrip, corner: Point, first: System) -> list[Shape]:
    side = bias.side
    top_left, top_right = corner, on(corner, side, ZERO)
    low_left, low_right = on(corner, ZERO, side), on(corner, side, side)
    number = Number(f"{bias.name}.square", side)
    return [
        Label("cut from corner to corner", on(corner, side / 2, ZERO), (Side.ABOVE,), 250, 22, True, leader=False),
        path((top_left, top_right, low_right, low_left), Role.RIGHT, closed=True),
        path((top_left, top_right, low_right, low_left), Role.CUT, closed=True),
        Line(top_left, low_right, Role.TRUED),
        Line(on(corner, side / 6, side / 2), on(corner, side / 6, side * Fraction(9, 10)), Role.GRAIN),
        Label("a", on(corner, side / 2, ZERO), (Side.ABOVE,), gap=2, strong=True, leader=False),
        Label("a", on(corner, side / 2, side), (Side.BELOW,), gap=2, strong=True, leader=False),
        Dimension(top_left, low_left, number, f"square\n{both_units(side, first)}", (Side.LEFT,), right=-9, width=76),
        Label("grain", on(corner, side / 6, side * Fraction(7, 10)), (Side.RIGHT,), gap=3, leader=False),
        Label("the cut runs on the bias, at 45°", on(corner, side, side / 2), (Side.RIGHT,), 112, 12, leader=False),
    ]


def _joined(bias: BiasStrip, corner: Point, first: System) -> list[Shape]:
    """The two halves, joined along the sides a, with their bias edges level."""
    long, high = bias.strip, bias.height
    whole = bias.width * bias.count
    shapes: list[Shape] = [
        Label("joined, with the strips marked", on(corner, long / 2, ZERO), (Side.ABOVE,), 250, 18, True, leader=False),
        path(_slanted(corner, long, ZERO, whole), Role.RIGHT, closed=True),
        *([path(_slanted(corner, long, whole, high), Role.PAPER, closed=True)] if bias.left_over else []),
        path(_slanted(corner, long, ZERO, high), Role.CUT, closed=True),
        Line(on(corner, high, high), on(corner, long, ZERO), Role.SEAM),
    ]
    shapes += [
        Line(on(corner, level, level), on(corner, level + long, level), Role.TICK)
        for level in (bias.width * strip for strip in range(1, bias.count + (1 if bias.left_over else 0)))
    ]
    width, strip = Number(f"{bias.name}.strip_width", bias.width), Number(f"{bias.name}.strip", long)
    strips = "strip" if bias.count == 1 else f"each of {bias.count} strips"
    shapes += [
        Dimension(
            corner, on(corner, ZERO, bias.width), width, f"strip\n{both_units(bias.width, first)}", (Side.LEFT,),
            right=-9, width=76,
        ),
        Dimension(
            on(corner, high, high), on(corner, high + long, high), strip, f"{strips} {both_units(long, first)}",
            (Side.BELOW,), down=10, width=260,
        ),
    ]  # fmt: skip
    if bias.left_over:
        middle = (whole + high) / 2
        text = f"left over {both_units(bias.left_over, first)}"
        shapes.append(Label(text, on(corner, middle, middle), (Side.LEFT,), width=80, gap=9))
    shapes.append(Label("a joined to a", on(corner, long, ZERO).moved(down=-3), (Side.RIGHT,), 110, 13, leader=False))
    if bias.count > 1:
        text = f"sewn end to end {both_units(bias.sewn, first)}"
        spot = on(corner, (long + high) / 2, high)
        shapes.append(Label(text, spot, (Side.BELOW,), 300, 38, True, leader=False))
    return shapes


def _slanted(corner: Point, long: Length, upper: Length, lower: Length) -> tuple[Point, ...]:
    """What lies between two levels of the joined halves, which lean by as much as they go down."""
    return (
        on(corner, upper, upper),
        on(corner, upper + long, upper),
        on(corner, lower + long, lower),
        on(corner, lower, lower),
    )
