"""The cutting layout: every paper piece where it lies on the cloth, to one scale, with selvages, folds and grain."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from string import ascii_uppercase

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
from sitegen.diagrams.text_boxes import UNIT, block_size, wrapped
from sitegen.diagrams.words import both_units, capital, in_the_shop, plain_both_units
from sitegen.quantities import ZERO, Length, Rounding, System
from sitegen.sewing import layout

_WIDTH, _LENGTH = 224, 520
_CENTRE = 210
_ASIDE = 8
_NAME_IN, _NAME_UP = 4, 11
_CLEAR = 6
"""Page units that stay free above and below the words in a piece, together; nearer to its outline, they go outside."""
_GRAIN_FROM = 26
"""Page units of a side from which a piece has room for its grain line."""


@dataclass(frozen=True)
class CuttingLayout:
    """A layout of the pieces of one fabric; ``called`` says what each piece is called.

    ``name`` is that of the fabric in references, ``width`` that of the cloth. ``need`` is what the layout takes with
    shrinkage and whatever else is added, ``buy`` what the author says to buy; where she does not, it is the need.
    Raises ``CannotDraw`` for no pieces.
    """

    name: str
    fabric: str
    laid: layout.Layout
    width: Length
    called: Mapping[str, str]
    need: Length | None = None
    buy: Length | None = None

    def __post_init__(self) -> None:
        if not self.laid.placements:
            raise CannotDraw("a cutting layout needs a piece")
        if self.laid.length > self.width * 40:
            raise CannotDraw("the cloth is too long for its width to be drawn to one scale")

    @cached_property
    def widest(self) -> Length:
        """The widest stretch of the cloth as it lies."""
        return max(section.width for section in self.laid.sections)

    @cached_property
    def letters(self) -> dict[str, str]:
        """The letter of each piece that is somewhere too small for its name: A to Z, then A2 to Z2, and so on."""
        small = dict.fromkeys(placed.piece for placed in self.laid.placements if not _fits(placed, self))
        return {piece: _letter(number) for number, piece in enumerate(small)}

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        return min(fitting_scale(self.widest, _WIDTH), fitting_scale(self.laid.length, _LENGTH))


def describe(cutting: CuttingLayout, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers: how the cloth lies, and every piece from the start of the cloth on."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    laid = cutting.laid
    taken = plain_both_units(laid.length, first, Rounding.ENOUGH)
    parts = [f"The pieces on the {cutting.fabric}, {say(cutting.width)} wide. They take {taken} of its length."]
    for number, section in enumerate(laid.sections):
        where = f"From {say(section.start)} on the" if section.start else "The"
        parts.append(f"{where} cloth is {section.fold.value}, {say(section.width)} wide as it lies.")
        pieces = [_placed_words(each, cutting, say(each.y)) for each in laid.placements if each.section == number]
        parts.append(f"{capital('; '.join(pieces))}.")
    parts += [f"{words}." for words in _amounts(cutting, first)]
    return " ".join(parts)


def draw(cutting: CuttingLayout, *, first: System = System.INCHES) -> Drawing:
    """The cloth from above, its start at the top."""
    shapes: list[Shape] = []
    for section in cutting.laid.sections:
        shapes += _cloth(section)
    for placed in cutting.laid.placements:
        shapes += _piece(placed, cutting)
    shapes += _measures(cutting, first)
    for section in cutting.laid.sections:
        shapes += _edge_names(section)
    shapes += [_piece_name(placed, cutting) for placed in cutting.laid.placements]
    view = View(cutting.scale, tuple(shapes), right=_CENTRE - cutting.widest.mm * cutting.scale / 2)
    return Drawing(capital(f"cutting layout on {cutting.fabric}"), describe(cutting, first=first), (view,))


def _placed_words(placed: layout.Placement, cutting: CuttingLayout, start: str) -> str:
    where = " on the fold" if placed.at_fold is not None else ""
    pieces = f", {len(placed.copies)} pieces at once" if len(placed.copies) > 1 else ""
    return f"{cutting.called[placed.piece]}{where} at {start}{pieces}"


def _amounts(cutting: CuttingLayout, first: System) -> list[str]:
    """The length of cloth that is needed, and the length to buy."""
    words = []
    if cutting.need is not None and cutting.need != cutting.laid.length:
        words.append(f"Needed in all: {both_units(cutting.need, first, Rounding.ENOUGH)}")
    if cutting.buy is not None:
        words.append(f"Buy {in_the_shop(cutting.buy, first, told=True)}")
    elif cutting.need is not None:
        words.append(f"Buy {in_the_shop(cutting.need, first)}")
    return words


def _cloth(section: layout.Section) -> list[Shape]:
    """The cloth as it lies: its ragged cut ends, its folds and its selvages."""
    top, foot, right = section.start, section.start + section.length, section.width
    left_fold, right_fold = section.fold is not layout.Fold.OPEN, section.fold is layout.Fold.DOUBLE
    shapes: list[Shape] = [Line(at(y=level), at(right, level), Role.RAW) for level in (top, foot)]
    for x, folded in ((ZERO, left_fold), (right, right_fold)):
        shapes.append(Line(at(x, top), at(x, foot), Role.FOLD if folded else Role.CUT))
    if section.fold is layout.Fold.DOUBLE:
        middle = right / 2
        shapes += [Line(at(middle, top, right=aside), at(middle, foot, right=aside), Role.TICK) for aside in (-1, 1)]
    return shapes


def _piece(placed: layout.Placement, cutting: CuttingLayout) -> list[Shape]:
    outline = [at(x, y) for x, y in placed.outline]
    shapes: list[Shape] = [path(outline, Role.RIGHT, closed=True), path(outline, Role.CUT, closed=True)]
    if placed.at_fold is not None:
        x = placed.x if placed.at_fold is layout.FoldSide.LEFT else placed.x + placed.width
        shapes.append(Line(at(x, placed.y), at(x, placed.y + placed.height), Role.FOLD))
    if _has_grain(placed, cutting):
        shapes.append(_grain(placed))
    return shapes


def _has_grain(placed: layout.Placement, cutting: CuttingLayout) -> bool:
    return min(placed.width, placed.height).mm * cutting.scale >= _GRAIN_FROM


def _grain(placed: layout.Placement) -> Line:
    """The grain line of the paper piece: along the cloth, or across it where the piece lies a quarter turned."""
    near, far = Fraction(1, 8), Fraction(7, 8)
    if placed.turned % 180 == 90:
        level = placed.y + placed.height * Fraction(1, 5)
        return Line(at(placed.x + placed.width * near, level), at(placed.x + placed.width * far, level), Role.GRAIN)
    x = placed.x + placed.width * Fraction(1, 8)
    return Line(at(x, placed.y + placed.height * near), at(x, placed.y + placed.height * far), Role.GRAIN)


def _piece_name(placed: layout.Placement, cutting: CuttingLayout) -> Label:
    """What a piece is called, or the letter that stands for it where it is too small for words."""
    letter = cutting.letters.get(placed.piece)
    across = Fraction(1, 2) if letter or not _has_grain(placed, cutting) else Fraction(9, 16)
    spot = at(placed.x + placed.width * across, placed.y + placed.height / 2)
    words = letter or _words(placed, cutting)
    return Label(words, spot, (Side.CENTRE, Side.BELOW, Side.ABOVE), width=_room(placed, cutting), strong=True)


def _letter(number: int) -> str:
    again, which = divmod(number, len(ascii_uppercase))
    return f"{ascii_uppercase[which]}{again + 1 if again else ''}"


def _words(placed: layout.Placement, cutting: CuttingLayout) -> str:
    many = f" ×\u00a0{len(placed.copies)}" if len(placed.copies) > 1 else ""
    return cutting.called[placed.piece] + many


def _room(placed: layout.Placement, cutting: CuttingLayout) -> int:
    """Page units across a piece for its words, beside the grain line if it has one."""
    free = Fraction(7, 8) if _has_grain(placed, cutting) else 1
    return int(placed.width.mm * cutting.scale * free) - _ASIDE


def _fits(placed: layout.Placement, cutting: CuttingLayout) -> bool:
    room = _room(placed, cutting)
    width, height = block_size(wrapped(_words(placed, cutting), max(1, room), strong=True), strong=True)
    return width <= room * UNIT and height <= (placed.height.mm * cutting.scale - _CLEAR) * UNIT


def _key(cutting: CuttingLayout) -> list[str]:
    """What the letters stand for."""
    many = {placed.piece: _words(placed, cutting) for placed in cutting.laid.placements}
    return [f"{letter}: {many[piece]}" for piece, letter in cutting.letters.items()]


def _edge_names(section: layout.Section) -> list[Shape]:
    """What the edges of the cloth are: above it, and beside what lies in another way further on."""
    left, right, middle = {
        layout.Fold.OPEN: ("selvage", "selvage", ""),
        layout.Fold.LENGTHWISE: ("fold", "selvages", ""),
        layout.Fold.DOUBLE: ("fold", "fold", "selvages"),
    }[section.fold]
    level = section.start if not section.start else section.start + section.length / 2
    if section.start:
        beside = at(ZERO, level), at(section.width, level)
        return [Label(left, beside[0], (Side.LEFT,), gap=3), Label(right, beside[1], (Side.RIGHT,), gap=3)]
    above = at(right=_NAME_IN, down=-_NAME_UP), at(section.width, right=-_NAME_IN, down=-_NAME_UP)
    names: list[Shape] = [
        Label(left, above[0], (Side.RIGHT,), gap=0, leader=False),
        Label(right, above[1], (Side.LEFT,), gap=0, leader=False),
    ]
    if middle:
        names.append(Label(middle, at(section.width / 2, section.length * 3 / 4), (Side.RIGHT, Side.LEFT), gap=4))
    return names


def _measures(cutting: CuttingLayout, first: System) -> list[Shape]:
    """The width of the cloth as it lies, the length that the pieces take, and what to buy."""
    laid = cutting.laid
    shapes: list[Shape] = []
    begin = laid.sections[0]
    halved = "" if begin.fold is layout.Fold.OPEN else "/2"
    across = Number(f"{cutting.name}.width{halved}", begin.width)
    words = f"{'width' if begin.fold is layout.Fold.OPEN else 'half width'} {both_units(begin.width, first)}"
    shapes.append(Dimension(at(), at(begin.width), across, words, (Side.ABOVE,), down=-28, width=240))
    along = Number(f"{cutting.name}.laid", laid.length)
    taken = f"takes\n{both_units(laid.length, first, Rounding.ENOUGH)}"
    end = at(y=laid.length)
    shapes.append(Dimension(at(), end, along, taken, (Side.LEFT,), right=-14, width=66))
    for text, strong in (("\n".join(_key(cutting)), False), ("\n".join(_amounts(cutting, first)), True)):
        if text:
            spot = at(cutting.widest / 2, laid.length)
            shapes.append(Label(text, spot, (Side.BELOW,), width=320, gap=10, strong=strong, leader=False))
    return shapes
