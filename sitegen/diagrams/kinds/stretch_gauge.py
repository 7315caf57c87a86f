"""A stretch gauge of true size: a swatch at rest, and beside it how far it reaches at each stretch."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.diagrams.drawing import (
    MARGIN,
    TRUE_SCALE,
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
    path,
)
from sitegen.diagrams.text_boxes import UNIT, text_width
from sitegen.diagrams.words import both_units, plain_both_units
from sitegen.quantities import ZERO, Length, System, cm, decimal, inches, mm

USUAL_MARKS = tuple(Fraction(each, 100) for each in (10, 20, 25, 40, 50, 75, 100))
"""The stretches that a gauge shows (common practice, no source)."""
WIDEST = mm(175)
"""The widest gauge that fits on a sheet of A4 (210 mm, ISO 216) between usual margins; US Letter is wider."""

_LEFT = 20
_RIGHT = 20
_CLOTH = 64
_TICK = 12
_ROW = 17
_OWN = 22
_CHECK = 112
_CHECK_STEP = 34


@dataclass(frozen=True, slots=True)
class StretchGauge:
    """A swatch ``rest`` long, the stretches to mark as shares of it, and the cloth's own, called ``cloth``.

    ``name`` begins the names of its lengths. Raises ``CannotDraw`` for a swatch or stretch of nothing or less, and when
    the longest reach does not fit on paper.
    """

    name: str
    cloth: str
    rest: Length
    own: Fraction
    marks: tuple[Fraction, ...] = USUAL_MARKS

    def __post_init__(self) -> None:
        if self.rest <= ZERO or min(self.own, *self.marks) <= 0:
            raise CannotDraw("a gauge needs a swatch and stretches above nothing")
        if self.reach(max(self.own, *self.marks)) > WIDEST:
            raise CannotDraw("the gauge is too long for a sheet of paper")

    @property
    def every(self) -> tuple[Fraction, ...]:
        """All stretches that are marked, the cloth's own among them, in order."""
        return tuple(sorted({*self.marks, self.own}))

    def reach(self, stretch: Fraction) -> Length:
        """How long the swatch is at a stretch: rest × (1 + stretch)."""
        return self.rest * (1 + stretch)


def percent(share: Fraction) -> str:
    """A share in percent, without its sign."""
    return decimal(share * 100)


def describe(gauge: StretchGauge, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""
    reaches = [f"{percent(stretch)}% at {plain_both_units(gauge.reach(stretch), first)}" for stretch in gauge.every]
    return (
        f"A stretch gauge of true size. On the left a swatch, {plain_both_units(gauge.rest, first)} of folded cloth at"
        f" rest, its fold along the line. Beside it, measured from the left end, how far the swatch reaches:"
        f" {', '.join(reaches)}. An arrow points out the {percent(gauge.own)}% of the {gauge.cloth}. Below are bars of"
        " 5 cm and 2 in to check the print with a ruler."
    )


def draw(gauge: StretchGauge, *, first: System = System.INCHES) -> Drawing:
    """The gauge, as large on paper as the cloth."""
    shapes = (*_swatch(gauge, first), *_ruler(gauge), *_own(gauge), *_checks())
    reach, checks = (int(value.mm * TRUE_SCALE) for value in (gauge.reach(gauge.every[-1]), _CHECKS[-1].value))
    width = max(reach + _RIGHT, checks + _BESIDE_CHECKS + _WORDS) + _LEFT + MARGIN
    view = View(TRUE_SCALE, shapes, right=_LEFT)
    return Drawing(
        f"Stretch gauge for {gauge.cloth}, of true size", describe(gauge, first=first), (view,), width, true_size=True
    )


def _swatch(gauge: StretchGauge, first: System) -> list[Shape]:
    end = gauge.rest
    corners = (at(), at(end), at(end, down=_CLOTH), at(down=_CLOTH))
    return [
        path(corners, Role.RIGHT, closed=True),
        Line(corners[1], corners[2], Role.BREAK),
        Line(corners[3], corners[2], Role.BREAK),
        Line(at(), at(end), Role.FOLD, Number(f"{gauge.name}.rest", end)),
        Line(at(down=-_TICK - _ROW), at(down=_CLOTH), Role.MARK),
        Line(at(end, down=-_TICK), at(end, down=_TICK), Role.MARK),
        Label("hold here", at(down=-_TICK - _ROW), (Side.ABOVE,), leader=False),
        Label(
            f"lay {both_units(end, first)} of cloth here, the fold on the line, not stretched",
            at(end / 2, down=_CLOTH // 2), (Side.CENTRE,), width=int(end.mm * TRUE_SCALE) - 24, leader=False,
        ),
    ]  # fmt: skip


def _ruler(gauge: StretchGauge) -> list[Shape]:
    """The line along which the swatch is stretched, in pieces from mark to mark, and its marks."""
    shapes: list[Shape] = []
    for before, stretch in pairwise((Fraction(0), *gauge.every)):
        begin, end = gauge.reach(before), gauge.reach(stretch)
        number = Number(f"{gauge.name}.from_{percent(before)}_to_{percent(stretch)}", end - begin)
        shapes.append(Line(at(begin), at(end), Role.CUT, number))
    rows = dict(_rows(gauge))
    for stretch in (Fraction(0), *gauge.every):
        x, up = gauge.reach(stretch), -_TICK - rows[stretch] * _ROW
        shapes.append(Line(at(x), at(x, down=up), Role.TICK))
        shapes.append(Label(percent(stretch), at(x, down=up), (Side.ABOVE,), gap=2, leader=False))
    middle = (gauge.rest + gauge.reach(gauge.every[-1])) / 2
    top = -_TICK - (max(rows.values()) + 1) * _ROW
    words = Label(
        "stretch in percent", at(middle, down=top), (Side.ABOVE,), width=150, gap=8, strong=True, leader=False
    )
    return [*shapes, words]


def _rows(gauge: StretchGauge) -> Iterator[tuple[Fraction, int]]:
    """The row of each mark's figures, counted up from the line: the lowest on which they are clear of the last ones."""
    taken: list[Fraction] = []
    for stretch in (Fraction(0), *gauge.every):
        middle = gauge.reach(stretch).mm * TRUE_SCALE
        half = Fraction(text_width(percent(stretch)), 2 * UNIT)
        row = next((row for row, right in enumerate(taken) if right < middle - half - 2), len(taken))
        taken[row : row + 1] = [middle + half]
        yield stretch, row


def _own(gauge: StretchGauge) -> list[Shape]:
    x = gauge.reach(gauge.own)
    text = f"{percent(gauge.own)}%: {gauge.cloth}"
    return [
        Line(at(x, down=_OWN + 10), at(x, down=3), Role.ARROW),
        Label(text, at(x, down=_OWN + 10), (Side.BELOW,), width=190, gap=2, strong=True, leader=False),
    ]


_CHECKS = (Number("check.5_cm", cm(5)), Number("check.2_in", inches(2)))
_BESIDE_CHECKS = 58
_WORDS = 180


def _checks() -> list[Shape]:
    """Two bars under each other to hold a ruler to, with a tick at every centimetre and inch."""
    shapes: list[Shape] = []
    for row, (number, text, parts) in enumerate(zip(_CHECKS, ("5 cm", "2 in"), (5, 2), strict=True)):
        down = _CHECK + row * _CHECK_STEP
        end = number.value
        shapes.append(Dimension(at(down=down), at(end, down=down), number))
        inner = (end * part / parts for part in range(1, parts))
        shapes += [Line(at(x, down=down - 4), at(x, down=down), Role.TICK) for x in inner]
        shapes.append(Label(text, at(end, down=down), (Side.RIGHT,), gap=8, leader=False))
    words = "Print at 100%, then hold a ruler to these bars."
    return [
        *shapes,
        Label(
            words,
            at(_CHECKS[-1].value, down=_CHECK + _CHECK_STEP // 2),
            (Side.RIGHT,),
            _WORDS,
            _BESIDE_CHECKS,
            leader=False,
        ),
    ]
