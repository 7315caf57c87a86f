"""Lengths as print rounds them, and nominal sizes, in which cloth and zips are sold: 60 in is 150 cm there."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from sitegen.prose.find import Measured, Reading
from sitegen.prose.words import words
from sitegen.quantities import SHOP_STEPS, System, Typed, Unit, cm, inches, pair_agrees

_SOLD_BY_LENGTH = words("zip zips zipper zippers")
"""Sold in nominal lengths: a 16 in zip is sold as 40 cm (common practice, no source)."""
_BOLT_WIDTHS = {
    Unit.IN: (36, 44, 45, 48, 54, 55, 56, 57, 58, 59, 60, 62, 72, 108, 110),
    Unit.CM: (90, 110, 112, 114, 115, 120, 137, 140, 142, 145, 147, 148, 150, 152, 160, 180, 280),
}
"""The widths in which cloth is sold, nominal in both units (common practice, no source)."""
CLOTHS = words(
    "fabric fabric's cloth cloth's material material's cotton linen canvas calico jersey fleece denim muslin satin felt"
    " lining interfacing flannel poplin wool voile velvet tulle batting wadding stuff bolt"
)
_INCH, _FIVE, _ROUND, _SHORT = inches(1), cm(5), 50, 915
"""Whole inches beside a multiple of 5 cm are one length within 2 per cent, up to 36 in: 18 in (45 cm)."""
_NO_WIDTH = words("long high tall deep round around")
_NOMINAL = Fraction(4, 100)


def is_nominal(reading: Reading, one: Measured, other: Measured, behind: int) -> bool:
    """Whether two lengths are one nominal size; ``behind`` is the token behind both."""
    if one.unit is None or other.unit is None or not nearly(one, other, one.unit, other.unit):
        return False
    after = reading.tokens.words[behind] if behind < len(reading.tokens) else ""
    return (are_widths(one, other) and after not in _NO_WIDTH) or _is_bolt(reading, one, behind)


def is_sold_so_wide(one: Measured) -> bool:
    """Whether cloth is sold so wide."""
    return one.unit is not None and one.value in _BOLT_WIDTHS.get(one.unit, ())


def are_widths(one: Measured, other: Measured) -> bool:
    """Whether cloth is sold in both widths, so that ``45 in or 150 cm`` may be a choice."""
    return is_sold_so_wide(one) and is_sold_so_wide(other)


def _is_bolt(reading: Reading, one: Measured, behind: int) -> bool:
    """Whether it is the nominal size of something sold, such as the width of cloth or the length of a zip."""
    tokens = reading.tokens
    after = tokens.words[behind : behind + 2]
    named = tokens.words[max(0, one.first - 3) : one.behind + 1]
    if not _SOLD_BY_LENGTH.isdisjoint((*named, *after)):
        return True
    before = tokens.words[max(0, one.first - 3) : one.first]
    return "wide" in after or "width" in after or ("width" in before and before[-1] in ("of", ":", "is"))


def nearly(one: Measured, other: Measured, unit: Unit, second: Unit) -> bool:
    """Whether two nominal sizes are near enough to be one: 60 in is sold as 150 cm, 22 in as 55 cm."""
    first, last = one.value * unit.mm, other.value * second.mm
    return abs(first - last) <= _NOMINAL * max(first, last)


def agrees_in_print(one: Typed, other: Typed, *, bolt: bool = False) -> bool:
    """Whether two lengths are one as running text rounds them.

    Cloth to buy may be off by half of what a shop cuts off (common practice, no source).
    """
    if pair_agrees(one, other, bolt=bolt):
        return True
    if one.unit.system is other.unit.system or (one.high is None) is not (other.high is None):
        return False
    if one.high is not None and other.high is not None:
        ends = (
            (replace(one, value=a, high=None), replace(other, value=b, high=None))
            for a, b in ((one.value, other.value), (one.high, other.high))
        )
        return all(agrees_in_print(first, second) for first, second in ends)
    apart, most = abs(one.value.mm - other.value.mm), max(one.value.mm, other.value.mm)
    imperial, metric = (one, other) if one.unit.system is System.INCHES else (other, one)
    if imperial.value.sits_on(_INCH) and metric.value.sits_on(_FIVE) and apart * _ROUND <= most <= _SHORT:
        return True
    if imperial.value.sits_on(_INCH) and metric.value.sits_on(cm(1)) and apart * 2 <= _INCH.mm and apart * 100 <= most:
        return True  # bodies and cloth are told in whole inches: “hips over 110 cm (43 in)”
    if imperial.value.sits_on(_INCH) and metric.value.sits_on(cm(10)) and apart * 100 <= most:
        return True  # long drops are told in tens of centimetres: “90 in (230 cm)”
    shop = {one.unit, other.unit} <= {Unit.YD, Unit.M, Unit.CM} and apart * 2 <= SHOP_STEPS[System.CENTIMETRES].mm
    return shop and apart * 10 <= most
