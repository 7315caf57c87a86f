"""Gathers: the longer edge below the shorter one that it is drawn up to, mark to mark, and the rows that draw it in."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.diagrams.drawing import (
    MARGIN,
    PAGE_WIDTH,
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
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Exact, Length, System, decimal
from sitegen.tutorial import MOST_DRAWN_RATIO

_ROOM = PAGE_WIDTH - 2 * MARGIN
_SHORTER = 34
_BETWEEN = 52
_LONGER = _SHORTER + _BETWEEN
_LONGER_FOOT = _LONGER + 40
_MARK = 9
_ROWS = (128, 80)
_ROWS_DOWN = _LONGER_FOOT + 132
_ROWS_TALL = 76
_BELOW_ROWS = 30
_SAID = 128


@dataclass(frozen=True, slots=True)
class Gathers:
    """The edge before it is gathered, the edge that it is gathered onto, and what both are called.

    ``rows`` are the distances of the gathering rows from the raw edge, none where they are not known, and ``allowance``
    that of the seam line. ``name`` is that of the gather in references. Raises ``CannotDraw`` when the longer edge is
    not the longer one, or so much longer that the other one cannot be seen.
    """

    name: str
    longer_called: str
    shorter_called: str
    before: Length
    after: Length
    rows: tuple[Length, ...] = ()
    allowance: Length = ZERO

    def __post_init__(self) -> None:
        if not ZERO < self.after < self.before:
            raise CannotDraw("what is gathered must be longer than what it is gathered onto")
        if self.before > self.after * MOST_DRAWN_RATIO:
            raise CannotDraw("the two edges differ too much to be drawn to one scale")
        if self.allowance < ZERO or any(later <= earlier for earlier, later in pairwise((ZERO, *self.rows))):
            raise CannotDraw("the gathering rows do not follow each other from the raw edge")

    @property
    def ratio(self) -> Fraction:
        """How much longer the edge is before than after."""
        return self.before.over(self.after)

    @property
    def _depth(self) -> Length:
        return max(self.allowance, *self.rows)

    @property
    def rows_scale(self) -> Fraction:
        """Page units to the millimetre of the rows."""
        return fitting_scale(self._depth, _ROWS_TALL)


def describe(gathers: Gathers, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    parts = [
        f"Above, the {gathers.shorter_called}, {say(gathers.after)} in all; below it, to the same scale, the"
        f" {gathers.longer_called}, {say(gathers.before)} before it is gathered: {_ratio(gathers)} to 1.",
        f"Dotted lines join the quarter marks of both: {say(gathers.before / 4)} of the longer edge is drawn up to"
        f" {say(gathers.after / 4)}.",
    ]
    if gathers.rows:
        rows = ", ".join(say(row) for row in gathers.rows)
        parts.append(f"Enlarged: {_rows_called(gathers)} of gathering stitches, {rows} from the raw edge.")
        if gathers.allowance:
            parts.append(f"The seam line lies {say(gathers.allowance)} from it.")
    return " ".join(parts)


def draw(gathers: Gathers, *, first: System = System.INCHES) -> Drawing:
    """Both edges to one scale and, where they are known, the rows, enlarged."""
    edges = View(fitting_scale(gathers.before, _ROOM), tuple(_edges(gathers, first)), right=MARGIN)
    rows = [View(gathers.rows_scale, tuple(_rows(gathers, first)), down=_ROWS_DOWN)] if gathers.rows else []
    title = capital(f"{gathers.longer_called} gathered onto the {gathers.shorter_called}")
    return Drawing(title, describe(gathers, first=first), (edges, *rows))


def _ratio(gathers: Gathers) -> str:
    return decimal(gathers.ratio)


def _rows_called(gathers: Gathers) -> str:
    return "1 row" if len(gathers.rows) == 1 else f"{len(gathers.rows)} rows"


def _edges(gathers: Gathers, first: System) -> list[Shape]:
    left = (gathers.before - gathers.after) / 2
    name, long, short = gathers.name, gathers.before, gathers.after
    words = f"{gathers.shorter_called}\n{both_units(short, first)}"
    shapes: list[Shape] = [
        rectangle(at(left), at(left + short, down=_SHORTER), Role.RIGHT),
        *_strip(left, short, 0, _SHORTER, "after", name),
        rectangle(at(down=_LONGER), at(long, down=_LONGER_FOOT), Role.RIGHT),
        *_strip(ZERO, long, _LONGER_FOOT, _LONGER, "before", name),
    ]
    for quarter in range(5):
        above, below = at(left + short * quarter / 4, down=_SHORTER), at(long * quarter / 4, down=_LONGER)
        shapes += [
            Line(above, below, Role.JOIN),
            Line(above.moved(down=-_MARK), above, Role.MARK),
            Line(below, below.moved(down=_MARK), Role.MARK),
        ]
    longer = f"{gathers.longer_called}, not gathered\n{both_units(long, first)}"
    return [
        *shapes,
        _quarter(at(left), short / 4, Side.ABOVE, f"{name}.after/4", first),
        Label(words, at(left + short * Fraction(5, 8)), (Side.ABOVE,), 210, 8, True, leader=False),
        Label(
            f"{_ratio(gathers)} to 1", at(long / 2, down=_SHORTER + _BETWEEN // 2), (Side.RIGHT,), 90, 6, True, False
        ),
        _quarter(at(down=_LONGER_FOOT), long / 4, Side.BELOW, f"{name}.before/4", first),
        Label(longer, at(long * Fraction(5, 8), down=_LONGER_FOOT), (Side.BELOW,), 230, 8, True, leader=False),
    ]


def _strip(start: Length, long: Length, torn: int, edge: int, field: str, name: str) -> list[Line]:
    """The lines round a strip of cloth: its edge, where it goes on, and its two ends."""
    end = start + long
    return [
        Line(at(start, down=edge), at(end, down=edge), Role.CUT, Number(f"{name}.{field}", long)),
        Line(at(start, down=torn), at(end, down=torn), Role.BREAK),
        Line(at(start, down=torn), at(start, down=edge), Role.TICK),
        Line(at(end, down=torn), at(end, down=edge), Role.TICK),
    ]


def _quarter(start: Point, long: Length, side: Side, name: str, first: System) -> Dimension:
    text, end = f"a quarter\n{both_units(long, first)}", Point(start.x + long, start.y, start.right, start.down)
    down = -10 if side is Side.ABOVE else 10
    return Dimension(start, end, Number(name, long), text, (side,), down=down, width=70)


def _rows(gathers: Gathers, first: System) -> list[Shape]:
    """The raw edge above, the rows and the seam line at their distances below it."""
    left, wide = _ROWS
    foot = max(gathers.allowance, gathers.rows[-1])
    low = at(y=foot, right=left, down=_BELOW_ROWS)

    def level(value: Length, role: Role, inside: int = 0) -> Line:
        return Line(at(y=value, right=left + inside), at(y=value, right=left + wide - inside), role)

    caption = f"{_rows_called(gathers)} of gathering stitches, enlarged"
    shapes: list[Shape] = [
        Label(caption, at(right=PAGE_WIDTH // 2), (Side.ABOVE,), 300, 12, True, leader=False),
        Label("raw edge", at(right=left + wide), (Side.RIGHT,), _SAID, 8),
        rectangle(at(right=left), low.moved(right=wide), Role.RIGHT),
        level(ZERO, Role.RAW),
        Line(low, low.moved(right=wide), Role.BREAK),
        Line(at(right=left), low, Role.BREAK),
        Line(at(right=left + wide), low.moved(right=wide), Role.BREAK),
    ]
    for count, row in enumerate(gathers.rows, 1):
        shapes.append(level(row, Role.STITCH, 3))
        number = Number(f"{gathers.name}.row_{count}", row)
        aside: Exact = -10 - 14 * (count - 1)
        shapes.append(Dimension(at(right=left), at(y=row, right=left), number, right=aside))
        shapes.append(
            Label(f"row {count}: {both_units(row, first)}", at(y=row, right=left + wide), (Side.RIGHT,), _SAID, 8)
        )
    if gathers.allowance:
        shapes.append(level(gathers.allowance, Role.SEAM))
        text = f"seam line\n{both_units(gathers.allowance, first)}"
        number = Number(f"{gathers.name}.allowance", gathers.allowance)
        aside = -10 - 14 * len(gathers.rows)
        shapes.append(
            Dimension(
                at(right=left), at(y=gathers.allowance, right=left), number, text, (Side.LEFT,), right=aside, width=76
            )
        )
    return shapes
