"""Whether two printed lengths, one in inches and one metric, are the same length.

The rule, derived from the pairs that sewing handbooks print: each number sits on a mark of its ruler, and
says no more than "nearest to this mark". The coarsest mark on which it sits, among the marks that the trade
uses for lengths of that size, is its grain. A pair agrees when the two lengths differ by at most half the
grain of each. So 5/8 in (1.5 cm) agrees: 0.875 mm apart, the 1.5 cm sits on a 5 mm mark, the 5/8 in on a
1/8 in mark. And 5/8 in (1 cm) does not: 5.875 mm apart.

Decimals that were printed are marks as well: 1.59 cm sits on 0.1 mm and must be right to half of that.
"""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities.length import Length, System, Unit, cm, inches, mm
from sitegen.quantities.parse import Typed
from sitegen.quantities.ruler import RULER, Ruler, show_in_unit

_METRIC_MARKS = (
    (mm(1), mm(0)),
    (mm(2), cm(1)),
    (mm(5), mm(15)),
    (cm(1), cm(10)),
    (cm(10), cm(100)),
)
_INCH_MARKS = (
    (inches("1/16"), inches(0)),
    (inches("1/8"), inches("3/8")),
    (inches("1/4"), inches(4)),
    (inches("1/2"), inches(8)),
)
_YARD_MARKS = (*_INCH_MARKS, (Length(Unit.YD.mm / 8), inches(0)))
_FOOT_MARKS = (*_INCH_MARKS, (Length(Unit.FT.mm), inches(0)))
_BOLT_MARK = cm(5)
"""Widths of cloth on the bolt are nominal: 45 in is sold as 115 cm, 60 in as 150 cm (common practice, no source)."""


def grain(typed: Typed, *, bolt: bool = False) -> Length:
    """The distance between the marks on which a printed length sits.

    ``bolt`` allows the coarser marks that are used for the width of cloth. Without any mark to sit on, the
    grain is that of the last printed decimal, or a hundredth of the unit.
    """
    marks = {
        Unit.YD: _YARD_MARKS,
        Unit.FT: _FOOT_MARKS,
        Unit.IN: _INCH_MARKS,
    }.get(typed.unit, _METRIC_MARKS)
    fitting = [step for step, least in marks if typed.value >= least and _sits_on(typed.value, step)]
    if bolt:
        coarse = inches(1) if typed.unit.system is System.INCHES else _BOLT_MARK
        fitting += [coarse * 2] if _sits_on(typed.value, coarse) else []
    if fitting:
        return max(fitting)
    return typed.printed_step() or Length(typed.unit.mm / 100)


def pair_agrees(first: Typed, second: Typed, *, bolt: bool = False) -> bool:
    """Whether the two are one length, each rounded as the trade rounds. Two lengths of one system must be equal."""
    apart = abs(first.value - second.value)
    if first.unit.system is second.unit.system:
        return not apart
    return all(apart * 2 <= grain(typed, bolt=bolt) for typed in (first, second))


def pair_for(first: Typed, second: Typed, ruler: Ruler = RULER) -> str:
    """What the second should say if the first is right, in the second's own unit."""
    return show_in_unit(first.value, second.unit, ruler)


def _sits_on(value: Length, step: Length) -> bool:
    return Fraction(value.mm / step.mm).denominator == 1
