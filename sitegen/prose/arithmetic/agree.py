"""Whether a written result is what its parts make, rounded as people round."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from fractions import Fraction
from functools import lru_cache

from sitegen.quantities import RULER, Length, Typed, Unit, grain, inches, mm

_HEDGED = Fraction(8, 100)
"""``about 18 in`` is right for 16 3/4 to 19 1/2 in (common practice, no source)."""
_HALF_STEP = max(RULER.metric_long, RULER.inch_long).mm / 2
"""Millimetres: what lies farther apart than this is on two marks of any ruler."""
_GOOD_MARKS = inches("1/8"), mm(5)
_FINE_MARKS = inches("1/16"), mm(1)


class Exactness(Enum):
    """How closely a result must follow from its parts."""

    EXACT = "exact"
    """Lengths of one unit added and taken off."""
    RULER = "ruler"
    """Multiplied or divided by a whole number: to the mark of a ruler."""
    COARSE = "coarse"
    """A percentage or a share: to the coarsest mark that the trade uses for lengths of that size."""


def part_exactness(value: Fraction) -> Exactness:
    """How exactly an equal part must be given: to the ruler where a mark has it, coarsely where none has."""
    length = Length(value)
    if any(map(length.sits_on, _GOOD_MARKS)):
        return Exactness.EXACT
    return Exactness.RULER if any(map(length.sits_on, _FINE_MARKS)) else Exactness.COARSE


def agrees(said: Fraction, unit: Unit, makes: Iterable[Fraction], exactness: Exactness, *, hedged: bool) -> bool:
    """Whether the said length is one of those that the parts can make. All in millimetres."""
    return any(_agrees(said, unit, each, exactness, hedged) for each in makes)


def _agrees(said: Fraction, unit: Unit, makes: Fraction, exactness: Exactness, hedged: bool) -> bool:
    if said.numerator == makes.numerator and said.denominator == makes.denominator:
        return True
    if hedged:
        return abs(said - makes) <= max(_half_grain(said, unit), makes * _HEDGED)
    if _are_within(said, makes, _HALF_STEP):
        if exactness is Exactness.EXACT:
            return said == RULER.rounded(Length(makes), unit.system).mm  # 50.4 cm is 50.5 cm on a ruler
        if RULER.agrees(Length(said), Length(makes), unit.system):
            return True
    return exactness is Exactness.COARSE and _are_within(said, makes, _half_grain(said, unit))


def _are_within(one: Fraction, other: Fraction, most: Fraction) -> bool:
    """Whether two numbers lie no farther apart than this."""
    # Done with whole numbers: fractions would be brought to their lowest terms only to be compared.
    apart = abs(one.numerator * other.denominator - other.numerator * one.denominator)
    return apart * most.denominator <= most.numerator * one.denominator * other.denominator


@lru_cache(maxsize=4096)
def _half_grain(said: Fraction, unit: Unit) -> Fraction:
    """Millimetres: half the distance between the coarsest marks of the trade on which a written length sits."""
    return grain(Typed(Length(said), unit, "", 0, 0)).mm / 2
