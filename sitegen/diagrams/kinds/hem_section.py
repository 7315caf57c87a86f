"""A hem seen from outside and, beside it at the same heights, cut through: fold, turn and rows of stitches."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from functools import cached_property

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
    rectangle,
)
from sitegen.diagrams.folded_cloth import THICKNESS, FoldedCloth
from sitegen.diagrams.legend import legend_of_sides
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_ROOM = 150
_MOST_ROOM = 300
_SMALLEST = 36
_FACE = (10, 80)
_SECTION = 178
_ABOVE_TURN = 46
_LEGEND = at(right=_FACE[0] + 4, down=44)


class Stitch(Enum):
    """How a row looks from outside."""

    STRAIGHT = "straight stitches"
    ZIGZAG = "zigzag stitches"


@dataclass(frozen=True)
class HemSection:
    """A hem: its turn, the row nearest the fold, the part folded under in a double hem, a twin needle's gap.

    ``name`` is the hem's own name in references. All are measured along the cloth from the fold. Raises
    ``CannotDraw`` when a length is nothing or less, or more is folded under than is turned.
    """

    name: str
    called: str
    turn: Length
    stitch_line: Length
    fold_under: Length = ZERO
    gap: Length = ZERO
    stitch: Stitch = Stitch.STRAIGHT

    def __post_init__(self) -> None:
        if min(self.turn, self.stitch_line) <= ZERO or min(self.gap, self.fold_under) < ZERO:
            raise CannotDraw("a hem needs a turn and a row of stitches above the fold")
        if self.fold_under > self.turn:
            raise CannotDraw("more is folded under than is turned up")
        if max(self.far_row, self.turn) > self.turn * 3 or self.scale * self.turn.mm > 4 * _MOST_ROOM:
            raise CannotDraw("the parts of the hem differ too much to be drawn to one scale")

    @property
    def far_row(self) -> Length:
        """From the fold to the row nearest the raw edge."""
        return self.stitch_line + self.gap

    @property
    def catch(self) -> Length:
        """The cloth beyond the far row; negative when the row misses the turn."""
        return self.turn - self.far_row

    @property
    def rows(self) -> tuple[Length, ...]:
        """The rows of stitches, from the fold."""
        return (self.stitch_line, self.far_row) if self.gap else (self.stitch_line,)

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre: the smallest part large enough to see, the turn not too tall."""
        smallest = min(part for part in (self.gap, abs(self.catch), self.fold_under, self.stitch_line) if part)
        least, most = fitting_scale(self.turn, _ROOM), fitting_scale(self.turn, _MOST_ROOM)
        wanted = min(max(fitting_scale(smallest, _SMALLEST), least), most)
        if self.fold_under:
            wanted = max(wanted, fitting_scale(self.fold_under, THICKNESS * 2))
        return wanted

    @cached_property
    def cloth(self) -> FoldedCloth:
        """The cloth, folded, as it is seen when it is cut through."""
        above = max(self.turn, self.far_row)
        return FoldedCloth(self.turn, self.fold_under, above, _ABOVE_TURN)


def describe(hem: HemSection, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    parts = [f"The {hem.called} from outside and cut through, with the fold below.", f"The turn is {say(hem.turn)}."]
    if hem.fold_under:
        parts.append(f"Its edge is folded under by {say(hem.fold_under)}.")
    if hem.gap:
        parts.append(f"Two rows of {hem.stitch.value}: the first {say(hem.stitch_line)} from the fold,")
        parts.append(f"the second {say(hem.gap)} further from it.")
    else:
        parts.append(f"A row of {hem.stitch.value} runs {say(hem.stitch_line)} from the fold.")
    edge = "inner fold" if hem.fold_under else "raw edge"
    if hem.catch > ZERO:
        parts.append(f"The stitches catch the turn with {say(hem.catch)} to spare, up to the {edge}.")
    else:
        parts.append(f"The far row misses the turn: it lies {say(-hem.catch)} beyond the {edge}.")
    parts.append("Heights are to scale; the thickness of the cloth is not.")
    return " ".join(parts)


def draw(hem: HemSection, *, first: System = System.INCHES) -> Drawing:
    """The hem from outside and cut through, at one scale."""
    shapes = (*_face(hem), *_section(hem), *_numbers(hem, first), *legend_of_sides(_LEGEND))
    return Drawing(
        capital(f"{hem.called}: where the stitches go"), describe(hem, first=first), (View(hem.scale, shapes),)
    )


def _up(height: Length, right: int = 0, down: int = 0) -> Point:
    """A spot so far above the fold."""
    return at(y=-height, right=right, down=down)


def _face(hem: HemSection) -> list[Shape]:
    left, right = _FACE
    top = hem.cloth.top
    shapes: list[Shape] = [
        rectangle(_up(top, left, -_ABOVE_TURN), _up(ZERO, right), Role.RIGHT),
        Line(_up(top, left, -_ABOVE_TURN), _up(top, right, -_ABOVE_TURN), Role.BREAK),
        Line(_up(top, left, -_ABOVE_TURN), _up(ZERO, left), Role.BREAK),
        Line(_up(top, right, -_ABOVE_TURN), _up(ZERO, right), Role.BREAK),
        Line(_up(ZERO, left), _up(ZERO, right), Role.CUT),
        Line(_up(hem.turn, left + 3), _up(hem.turn, right - 3), Role.JOIN),
        _caption("outside", (left + right) // 2, hem),
    ]
    role = Role.ZIGZAG if hem.stitch is Stitch.ZIGZAG else Role.STITCH
    shapes += [Line(_up(row, left + 2), _up(row, right - 2), role) for row in hem.rows]
    return shapes


def _caption(text: str, middle: int, hem: HemSection) -> Label:
    return Label(text, _up(hem.cloth.top, middle, -_ABOVE_TURN), (Side.ABOVE,), gap=8, strong=True, leader=False)


def _section(hem: HemSection) -> list[Shape]:
    cloth = hem.cloth
    shapes: list[Shape] = [
        *cloth.shapes(_SECTION),
        _caption("cut through", _SECTION + cloth.width // 2, hem),
        Label("fold", _up(ZERO, _SECTION + cloth.width // 2), (Side.BELOW,), gap=3, leader=False),
    ]
    for row in hem.rows:
        reach = cloth.width if row <= hem.turn else THICKNESS
        begin, end = _SECTION - 4, _SECTION + reach + 4
        shapes += [Line(_up(row, begin), _up(row, end), Role.THREAD)]
        shapes += [Line(_up(row, x, -3), _up(row, x, 3), Role.THREAD) for x in (begin, end)]
    if hem.gap and hem.far_row <= hem.turn:
        x = _SECTION + cloth.width + 6
        shapes.append(Line(_up(hem.stitch_line, x), _up(hem.far_row, x), Role.ZIGZAG))
    shapes.append(Label("raw edge", cloth.raw_edge(_SECTION), (Side.ABOVE, Side.RIGHT), width=70, gap=3))
    return shapes


def _numbers(hem: HemSection, first: System) -> list[Shape]:
    face, outer = _FACE[1], _SECTION + hem.cloth.width + 8
    rightward, leftward = (Side.RIGHT,), (Side.LEFT,)

    def named(name: str, value: Length) -> Number:
        return Number(f"{hem.name}.{name}", value)

    def text(words: str, value: Length) -> str:
        return f"{words}\n{both_units(value, first)}"

    shapes: list[Shape] = [
        Dimension(
            _up(hem.turn, face), _up(ZERO, face), named("turn", hem.turn), text("turn", hem.turn),
            rightward, right=9, width=74,
        ),
        Dimension(
            _up(hem.stitch_line, outer), _up(ZERO, outer), named("stitch_line", hem.stitch_line),
            text("fold to stitches", hem.stitch_line), rightward, right=9, width=98,
        ),
    ]  # fmt: skip
    if hem.fold_under:
        shapes.append(Dimension(
            _up(hem.turn, _SECTION), _up(hem.turn - hem.fold_under, _SECTION), named("fold_under", hem.fold_under),
            text("folded under", hem.fold_under), leftward, right=-12, width=74,
        ))  # fmt: skip
    if hem.gap:
        shapes.append(Dimension(
            _up(hem.far_row, outer), _up(hem.stitch_line, outer), named("needle_gap", hem.gap),
            text("needle gap", hem.gap), rightward, right=9, width=98,
        ))  # fmt: skip
    if hem.catch > ZERO:
        shapes.append(Dimension(
            _up(hem.turn, outer), _up(hem.far_row, outer), named("catch", hem.catch),
            text("catch", hem.catch), rightward, right=9, width=98,
        ))  # fmt: skip
    elif hem.catch:
        shapes.append(Dimension(
            _up(hem.far_row, _SECTION), _up(hem.turn, _SECTION), named("catch.missing", -hem.catch),
            text("misses by", -hem.catch), leftward, right=-12, width=74,
        ))  # fmt: skip
    return shapes
