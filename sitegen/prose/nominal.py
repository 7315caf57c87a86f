"""Nominal sizes, in which cloth and zips are sold: 60 in is 150 cm there, and 22 in 55 cm."""

from __future__ import annotations

from fractions import Fraction

from sitegen.prose.find import Measured, Reading
from sitegen.prose.words import words
from sitegen.quantities import Unit

_SOLD_BY_LENGTH = words("zip zips zipper zippers")
"""Sold in nominal lengths: a 16 in zip is sold as 40 cm (common practice, no source)."""
_BOLT_WIDTHS = {
    Unit.IN: (36, 44, 45, 48, 54, 55, 56, 57, 58, 59, 60, 62, 72, 108, 110),
    Unit.CM: (90, 110, 112, 114, 115, 120, 137, 140, 142, 145, 147, 148, 150, 152, 160, 180, 280),
}
"""The widths in which cloth is sold, nominal in both units (common practice, no source)."""
_NO_WIDTH = words("long high tall deep round around")
_NOMINAL = Fraction(4, 100)


def is_nominal(reading: Reading, one: Measured, other: Measured, behind: int) -> bool:
    """Whether two lengths are one nominal size; ``behind`` is the token behind both."""
    if one.unit is None or other.unit is None or not nearly(one, other, one.unit, other.unit):
        return False
    after = reading.tokens.words[behind] if behind < len(reading.tokens) else ""
    widths = one.value in _BOLT_WIDTHS.get(one.unit, ()) and other.value in _BOLT_WIDTHS.get(other.unit, ())
    return (widths and after not in _NO_WIDTH) or _is_bolt(reading, one, behind)


def _is_bolt(reading: Reading, one: Measured, behind: int) -> bool:
    """Whether it is the nominal size of something sold, such as the width of cloth or the length of a zip."""
    tokens = reading.tokens
    after = tokens.words[behind : behind + 2]
    if _SOLD_BY_LENGTH & {*after}:
        return True
    before = tokens.words[max(0, one.first - 3) : one.first]
    return "wide" in after or "width" in after or ("width" in before and before[-1] in ("of", ":", "is"))


def nearly(one: Measured, other: Measured, unit: Unit, second: Unit) -> bool:
    """Whether two nominal sizes are near enough to be one: 60 in is sold as 150 cm, 22 in as 55 cm."""
    first, last = one.value * unit.mm, other.value * second.mm
    return abs(first - last) <= _NOMINAL * max(first, last)
