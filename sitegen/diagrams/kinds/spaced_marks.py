"""Marks at even distances along an edge or round a ring: where each lies, measured from one end."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil

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
    rectangle,
)
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System
from sitegen.tutorial import MOST_DRAWN_MARKS

_LEFT = 104
_CLOTH = 66
_MIDDLE = 33
_HALF_MARK = 11
_SHORT, _TALL = 220, 460
_ROW = 23
_APART = 19
"""Page units from one line of words to the next: where marks lie closer, not every one says where it lies."""


@dataclass(frozen=True, slots=True)
class SpacedMarks:
    """Where each mark lies along a length, from its beginning; the gap between two of them.

    ``name`` is that of the spacing in references, ``called`` what the marks are called, ``ring`` says that the length
    runs round, so that its end is its beginning. Raises ``CannotDraw`` when a mark lies beyond the length, the marks do
    not follow each other, or there are too many to be told apart.
    """

    name: str
    called: str
    length: Length
    positions: tuple[Length, ...]
    gap: Length
    ring: bool = False

    def __post_init__(self) -> None:
        if not self.positions or self.length <= ZERO or self.gap <= ZERO:
            raise CannotDraw("there are no marks to draw")
        if len(self.positions) > MOST_DRAWN_MARKS:
            raise CannotDraw("there are too many marks to be told apart")
        if any(later - earlier != self.gap for earlier, later in pairwise(self.positions)):
            raise CannotDraw("the marks do not follow each other at the gap")
        if not ZERO <= self.positions[0] <= self.positions[-1] <= self.length:
            raise CannotDraw("a mark lies beyond the length")

    @property
    def count(self) -> int:
        """How many marks there are."""
        return len(self.positions)

    @property
    def after(self) -> Length:
        """From the last mark to the end of the length."""
        return self.length - self.positions[-1]

    @property
    def end(self) -> str:
        """What the ends of the length are called."""
        return "beginning" if self.ring else "edge"


def describe(marks: SpacedMarks, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    where = "round a ring, laid out flat," if marks.ring else "along a length"
    places = ", ".join(say(position) for position in marks.positions)
    many = f"{marks.count} marks" if marks.count > 1 else "1 mark"
    parts = [f"{capital(many)} {where} of {say(marks.length)}: {places} from the {marks.end}."]
    if marks.count > 1:
        parts.append(f"From mark to mark it is {say(marks.gap)}.")
    if marks.after:
        parts.append(f"From the last mark to the {marks.end} {'again ' if marks.ring else ''}it is {say(marks.after)}.")
    return " ".join(parts)


def draw(marks: SpacedMarks, *, first: System = System.INCHES) -> Drawing:
    """The length upright, with its marks, their distances on the left and their places on the right."""
    scale = fitting_scale(marks.length, min(max(_SHORT, _ROW * (marks.count + 1)), _TALL))
    every = ceil(_APART / (marks.gap.mm * scale))
    shapes = (*_cloth(marks, first), *_distances(marks, first), *_places(marks, every, first))
    view = View(scale, shapes, right=_LEFT)
    return Drawing(capital(f"{marks.called}: where the marks lie"), describe(marks, first=first), (view,))


def _cloth(marks: SpacedMarks, first: System) -> list[Shape]:
    foot = marks.length
    ends = Role.SEAM if marks.ring else Role.CUT
    below = "the beginning again" if marks.ring else "edge"
    shapes: list[Shape] = [
        rectangle(at(), at(y=foot, right=_CLOTH), Role.RIGHT),
        Line(at(), at(right=_CLOTH), ends),
        Line(at(y=foot), at(y=foot, right=_CLOTH), ends),
        Line(at(), at(y=foot), Role.TICK, Number(f"{marks.name}.length", foot)),
        Line(at(right=_CLOTH), at(y=foot, right=_CLOTH), Role.BREAK),
        Line(at(right=_MIDDLE), at(y=foot, right=_MIDDLE), Role.JOIN),
    ]
    for position in marks.positions:
        spot = at(y=position, right=_MIDDLE)
        shapes.append(Line(spot.moved(-_HALF_MARK), spot.moved(_HALF_MARK), Role.MARK))
    text = f"{below}\n{'round' if marks.ring else 'length'} {both_units(foot, first)}"
    shapes.append(Label(marks.end, at(right=_MIDDLE), (Side.ABOVE,), gap=6, leader=False))
    shapes.append(Label(text, at(y=foot, right=_MIDDLE), (Side.BELOW,), width=200, gap=6, leader=False))
    return shapes


def _distances(marks: SpacedMarks, first: System) -> list[Shape]:
    """The first distance, one gap, and what is left after the last mark."""
    begin, last = marks.positions[0], marks.positions[-1]
    measured = [(ZERO, begin, "position_1", f"from the {marks.end}")] if begin else []
    if marks.count > 1:
        gaps = "gap" if marks.count == 2 else f"each of {marks.count - 1} gaps"
        middle = (marks.count - 1) // 2
        measured.append((marks.positions[middle], marks.positions[middle + 1], "gap", gaps))
    if marks.after:
        measured.append((last, marks.length, "after_last", "to the beginning" if marks.ring else "to the edge"))
    return [
        Dimension(
            at(y=start), at(y=stop), Number(f"{marks.name}.{name}", stop - start),
            f"{words}\n{both_units(stop - start, first)}", (Side.LEFT,), right=-9, width=88,
        )
        for start, stop, name, words in measured
    ]  # fmt: skip


def _places(marks: SpacedMarks, every: int, first: System) -> list[Shape]:
    """The number of each mark and how far it lies from the beginning; of crowded ones every second, third … says so."""
    told = range(marks.count - 1, -1, -every)
    shapes: list[Shape] = []
    for count, position in enumerate(marks.positions):
        edge = at(y=position, right=_CLOTH)
        shapes.append(Line(edge.moved(4), edge.moved(12), Role.TICK))
        if count in told:
            where = both_units(position, first) if position else f"at the {marks.end}"
            shapes.append(Label(f"{count + 1}: {where}", edge.moved(12), (Side.RIGHT,), width=160, gap=4))
    return shapes
