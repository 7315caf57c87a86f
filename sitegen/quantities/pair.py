"""Whether two printed lengths, one in inches and one metric, are the same length.

The rule, derived from the pairs that sewing handbooks print (1/4 in = 6 mm, 5/8 in = 1.5 cm, 28 in = 71 cm): a
printed length says "nearest to this mark", so it stands for all lengths nearer to its mark than to the next. A pair
agrees when any of these holds:

1. **Each is the other, rounded to a mark that the trade uses for lengths of that size.** The coarsest such mark on
   which a number sits is its grain; the two are at most half the grain of each apart. 5/8 in (1.5 cm) agrees:
   0.875 mm apart, eighths of an inch and half centimetres. 12 in (30 cm) agrees: 4.8 mm apart, whole centimetres and
   half inches. A decimal finer than any ruler can only come from a conversion, so its grain is its last decimal:
   5/8 in (1.59 cm) agrees, 1 in (2.45 cm) does not.
2. **The second is the first, read off a ruler**: to the mark that a ruler shows at that size, or to the nearest
   sixteenth of an inch or millimetre. 4 mm (3/16 in) agrees, since no sixteenth is nearer to 4 mm; the other way round
   it does not, since 3/16 in is nearer to 5 mm.
3. **One long length lies nearest to both marks.** From 10 cm on, where a ruler is read to half centimetres and eighths,
   the two may be as far apart as half the distance between the marks of the one and of the other together, for both
   may have been rounded from a length on no mark at all. What the ruler shows of a long length agrees by this.
4. **Both are cloth as shops sell it**, the one in eighths of a yard and the other in tenths of a metre, and one need
   rounded up gives both: 1 3/8 yd (1.3 m).

5/8 in (1 cm) agrees by none: 5.875 mm apart. Two numbers of one system must be equal, and both ends of a range agree.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from sitegen.quantities.length import Length, System, Unit, cm, inches, mm
from sitegen.quantities.number import NotUnderstood
from sitegen.quantities.parse import Typed, parse_length
from sitegen.quantities.ruler import RULER, SHOP_STEPS, Ruler, decimal, show_in_unit, vulgar

_LONG_METRIC_MARK = (cm(10), cm(100))
_SHORT_METRIC_MARKS = (
    (cm(1), cm(10)),
    (mm(5), mm(15)),
    (mm(2), cm(1)),
    (mm(1), mm(0)),
)
_METRIC_MARKS = (_LONG_METRIC_MARK, *_SHORT_METRIC_MARKS)
"""The marks that lengths sit on, the coarsest first, each with the least length that is given on it."""
_METRE_MARKS = (_LONG_METRIC_MARK, (cm(5), cm(100)), *_SHORT_METRIC_MARKS)
"""Cloth is measured off in steps of 5 cm: 3 yd (2.75 m) (common practice, no source)."""
_INCH_MARKS = (
    (inches("1/2"), inches(8)),
    (inches("1/4"), inches(1)),
    (inches("1/8"), inches("3/8")),
    (inches("1/16"), inches(0)),
)
_YARD_MARKS = ((Length(Unit.YD.mm / 8), inches(0)), *_INCH_MARKS)
_FOOT_MARKS = ((Length(Unit.FT.mm), inches(0)), *_INCH_MARKS)
_BOLT_MARK = cm(5)
"""Widths of cloth on the bolt are nominal: 45 in is sold as 115 cm, 60 in as 150 cm (common practice, no source)."""


def grain(typed: Typed, *, bolt: bool = False) -> Length:
    """The distance between the coarsest marks of the trade on which a printed length sits.

    ``bolt`` allows the coarser marks that are used for the width of cloth. Without any mark to sit on, the
    grain is that of the last printed decimal, or a hundredth of the unit.
    """
    marks = {
        Unit.YD: _YARD_MARKS,
        Unit.FT: _FOOT_MARKS,
        Unit.IN: _INCH_MARKS,
        Unit.M: _METRE_MARKS,
    }.get(typed.unit, _METRIC_MARKS)
    fitting = next((step for step, least in marks if typed.value >= least and typed.value.sits_on(step)), None)
    if bolt:
        coarse = inches(1) if typed.unit.system is System.INCHES else _BOLT_MARK
        if typed.value.sits_on(coarse):
            return max(fitting or coarse, coarse * 2)
    return fitting or typed.printed_step() or Length(typed.unit.mm / 100)


def pair_agrees(first: Typed, second: Typed, *, bolt: bool = False, ruler: Ruler = RULER) -> bool:
    """Whether the two are one length by the rule of this module; the second is the one in brackets."""
    if (first.high is None) != (second.high is None):
        return False
    return all(_agree(*ends, bolt, ruler) for ends in zip(_ends(first), _ends(second), strict=True))


def pair_for(first: Typed, second: Typed, ruler: Ruler = RULER) -> str:
    """What the second should say if the first is right, in the second's own unit, so that the two agree."""
    *lower, last = (_partner(end, second.unit, ruler) for end in _ends(first))
    return " to ".join([*(text.removesuffix(f" {second.unit.symbol}") for text in lower), last])


def _ends(typed: Typed) -> tuple[Typed, ...]:
    """A range as its two ends, a single length as itself."""
    if typed.high is None:
        return (typed,)
    return replace(typed, high=None), replace(typed, value=typed.high, number=typed.high_number, high=None)


def _agree(first: Typed, second: Typed, bolt: bool, ruler: Ruler) -> bool:
    apart = abs(first.value - second.value)
    if first.unit.system is second.unit.system:
        return not apart
    return (
        all(apart * 2 <= grain(typed, bolt=bolt) for typed in (first, second))
        or apart * 2 <= ruler.finest(second.unit.system)
        or second.value == ruler.rounded(first.value, second.unit.system)
        or _nearest_to_both(first, second, ruler)
        or _one_need(first, second)
    )


def _nearest_to_both(first: Typed, second: Typed, ruler: Ruler) -> bool:
    if min(first.value, second.value) < ruler.metric_turn:
        return False
    marks = (_mark(first, second.value, ruler), _mark(second, first.value, ruler))
    if marks[0] is None or marks[1] is None:
        return False
    return abs(first.value - second.value) * 2 <= marks[0] + marks[1]


def _mark(typed: Typed, towards: Length, ruler: Ruler) -> Length | None:
    """The distance from the mark on which a number sits to the next one in that direction; None off any mark.

    At the turn of the ruler the marks below lie closer than those above.
    """
    system = typed.unit.system
    finest = ruler.finest(system)
    beside = typed.value if towards >= typed.value else typed.value - finest
    return next((step for step in (ruler.step(beside, system), finest) if typed.value.sits_on(step)), None)


def _one_need(first: Typed, second: Typed) -> bool:
    """Whether one need of cloth is rounded up to both: neither may be a whole shop step more than the other."""
    if {first.unit, second.unit} != {Unit.YD, Unit.M}:
        return False
    if not all(typed.value.sits_on(SHOP_STEPS[typed.unit.system]) for typed in (first, second)):
        return False
    more, less = (first, second) if first.value > second.value else (second, first)
    return more.value - less.value < SHOP_STEPS[more.unit.system]


def _partner(first: Typed, unit: Unit, ruler: Ruler) -> str:
    candidates = list(_candidates(first.value, unit, ruler))
    return next((text for text in candidates if _agrees_typed(first, text, ruler)), candidates[0])


def _agrees_typed(first: Typed, text: str, ruler: Ruler) -> bool:
    try:
        return _agree(first, parse_length(text), False, ruler)
    except NotUnderstood:  # more digits than anybody sews
        return False


def _candidates(value: Length, unit: Unit, ruler: Ruler) -> Iterator[str]:
    """The length in a unit, from the plainest way of printing it to the finest."""
    number = value.in_unit(unit)
    eighth = Fraction(round(number * 8), 8)
    if unit is Unit.YD or (unit is Unit.IN and eighth):
        yield f"{vulgar(eighth)} {unit.symbol}"
    yield show_in_unit(value, unit, ruler)
    if unit.system is System.INCHES and number.denominator <= 64:
        yield f"{vulgar(number)} {unit.symbol}"
    for places in range(1, 6):
        yield f"{decimal(number, places)} {unit.symbol}"
