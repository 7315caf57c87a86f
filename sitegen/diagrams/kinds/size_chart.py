"""The size chart as a picture: a bar for each size and measurement, the body and, where known, the garment round it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from math import ceil

from sitegen.diagrams.drawing import (
    MARGIN,
    PAGE_WIDTH,
    CannotDraw,
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
    rectangle,
)
from sitegen.diagrams.text_boxes import UNIT, text_width, wrapped
from sitegen.diagrams.words import both_units, capital, one_unit, plain_both_units
from sitegen.quantities import RULER, ZERO, Length, System

_BAR = 11
_ROW = 20
_LINE = 16
_BETWEEN = 18
_GAP = 6
_LEAST_BARS = 100
_OVER = 3
_LEGEND = (("body", Role.RIGHT), ("ease", Role.PAPER))


@dataclass(frozen=True, slots=True)
class Measure:
    """A body measurement in every size and, where it is known, the finished garment there.

    ``name`` and ``garment_name`` are those of the numbers in references.
    """

    name: str
    called: str
    body: tuple[Length, ...]
    garment_name: str = ""
    garment: tuple[Length, ...] = ()

    @property
    def ease(self) -> tuple[Length, ...]:
        """Garment − body in every size; none where the garment is not known."""
        return tuple(garment - body for body, garment in zip(self.body, self.garment, strict=False))


@dataclass(frozen=True, slots=True)
class SizeChart:
    """The sizes of a garment and its measurements. Raises ``CannotDraw`` when there is nothing to compare, when a
    measurement lacks a size, or when one is nothing or less."""

    called: str
    sizes: tuple[str, ...]
    measures: tuple[Measure, ...]

    def __post_init__(self) -> None:
        if len(self.sizes) < 2 or not self.measures:
            raise CannotDraw("there are no sizes to compare")
        for measure in self.measures:
            if any(len(row) != len(self.sizes) for row in (measure.body, measure.garment or measure.body)):
                raise CannotDraw(f"the {measure.called} is not known in every size")
            if min(*measure.body, *measure.garment) <= ZERO:
                raise CannotDraw(f"the {measure.called} must be above nothing")

    @property
    def longest(self) -> Length:
        """The longest bar."""
        return max(length for measure in self.measures for length in (*measure.body, *measure.garment))

    @property
    def eased(self) -> bool:
        """Whether the garment is known anywhere."""
        return any(measure.garment for measure in self.measures)


Say = Callable[[Length], str]
"""Puts a length into words."""


def describe(chart: SizeChart, *, first: System = System.INCHES, only: System | None = None) -> str:
    """The picture in words, with its numbers."""

    def say(length: Length) -> str:
        return plain_both_units(length, first) if only is None else RULER.show(length, only)

    parts = [f"Body measurements in {len(chart.sizes)} sizes as bars, all from nothing and to one scale."]
    for measure in chart.measures:
        rows = [f"{size} {say(body)}" for size, body in zip(chart.sizes, measure.body, strict=True)]
        parts.append(f"{capital(measure.called)} by size: {', '.join(rows)}.")
        if measure.ease:
            parts.append(capital(f"{_eased(measure.ease, say)}."))
    return " ".join(parts)


def draw(chart: SizeChart, *, first: System = System.INCHES, only: System | None = None) -> Drawing:
    """The measurements under each other, a bar for every size. With ``only`` the numbers are in that system alone."""

    def say(length: Length) -> str:
        return both_units(length, first) if only is None else one_unit(length, only)

    numbers = [say(body) for measure in chart.measures for body in measure.body]
    left = MARGIN + _widest(chart.sizes, strong=True) + _widest(numbers) + 2 * _GAP
    down = 0
    shapes: list[Shape] = []
    for measure in chart.measures:
        panel, foot = _panel(chart, measure, left, down, say)
        shapes += panel
        down = foot + _BETWEEN
    if chart.eased:
        shapes += _legend(left, down)
    room = max(_LEAST_BARS, PAGE_WIDTH - MARGIN - _OVER - left)
    view = View(fitting_scale(chart.longest, room), tuple(shapes), right=left)
    shown = "body and garment" if chart.eased else "the body"
    return Drawing(capital(f"{chart.called}: {shown} in every size"), describe(chart, first=first, only=only), (view,))


def _widest(texts: Iterable[str], *, strong: bool = False) -> int:
    """Page units that the widest of these takes."""
    return ceil(max(text_width(text, strong=strong) for text in texts) / UNIT)


def _panel(chart: SizeChart, measure: Measure, left: int, down: int, say: Say) -> tuple[list[Shape], int]:
    """The rows of one measurement, so many page units down, and where they end."""
    start = MARGIN - left
    shapes: list[Shape] = [
        Label(capital(measure.called), at(right=start, down=down + 8), (Side.RIGHT,), 320, 0, True, leader=False)
    ]
    top = down + _LINE + 6
    if measure.ease:
        text = _eased(measure.ease, say)
        high = _LINE * len(wrapped(text, PAGE_WIDTH - 2 * MARGIN))
        shapes.append(
            Label(text, at(right=start, down=top + high // 2 - 2), (Side.RIGHT,), PAGE_WIDTH, 0, leader=False)
        )
        top += high + 3
    for row, (size, body) in enumerate(zip(chart.sizes, measure.body, strict=True)):
        level = top + _ROW * row
        middle = level + _BAR // 2
        shapes += [
            *_bar(measure, row, level),
            Label(size, at(right=start, down=middle), (Side.RIGHT,), PAGE_WIDTH, 0, True, leader=False),
            Label(say(body), at(down=middle), (Side.LEFT,), PAGE_WIDTH, _GAP, leader=False),
        ]
    foot = top + _ROW * len(chart.sizes)
    shapes.append(Line(at(down=top - 4), at(down=foot - 4), Role.CUT))
    return shapes, foot


def _bar(measure: Measure, row: int, level: int) -> list[Shape]:
    """The body from nothing, its end marked; between it and the end of the garment the ease."""
    body, low = measure.body[row], level + _BAR
    shapes: list[Shape] = [
        rectangle(at(down=level), at(body, down=low), Role.RIGHT),
        Line(at(down=low), at(body, down=low), Role.TICK, Number(measure.name, body)),
        Line(at(down=level), at(body, down=level), Role.TICK),
        Line(at(body, down=level), at(body, down=low), Role.TICK),
    ]
    if not measure.garment:
        return shapes
    garment = measure.garment[row]
    ends = sorted((body, garment))
    number = Number(f"{measure.garment_name}.ease", ends[1] - ends[0])
    return [
        *shapes,
        rectangle(at(ends[0], down=level), at(ends[1], down=low), Role.PAPER),
        Line(at(ends[0], down=level), at(ends[1], down=level), Role.TICK, number),
        Line(at(garment, down=level - _OVER), at(garment, down=low + _OVER), Role.MARK),
    ]


def _eased(ease: tuple[Length, ...], say: Say) -> str:
    """How much larger the garment is: one length, or from the least to the most."""
    least, most = min(ease), max(ease)
    if least == most == ZERO:
        return "the garment is as large as the body"
    if least < ZERO < most:
        return f"the garment is up to {say(-least)} smaller and up to {say(most)} larger than the body"
    way = "larger" if most > ZERO else "smaller"
    least, most = sorted((abs(least), abs(most)))
    much = say(most) if least == most else f"{say(least)} to {say(most)}"
    return f"the garment is {much} {way}"


def _legend(left: int, down: int) -> list[Shape]:
    begin = at(right=MARGIN - left, down=down)
    shapes: list[Shape] = []
    for row, (words, role) in enumerate(_LEGEND):
        corner = begin.moved(row * 84)
        box = rectangle(corner, corner.moved(20, _BAR), role)
        frame = path((box.start, *box.steps), Role.TICK, closed=True)
        shapes += [box, frame, Label(words, corner.moved(20, _BAR // 2), (Side.RIGHT,), 60, leader=False)]
    end = begin.moved(84 * len(_LEGEND) + 6)
    shapes.append(Line(end.moved(down=-_OVER), end.moved(down=_BAR + _OVER), Role.MARK))
    shapes.append(Label("finished garment", end.moved(0, _BAR // 2), (Side.RIGHT,), 130, 7, leader=False))
    return shapes
