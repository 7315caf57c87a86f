"""Whether a written result is what its parts make, rounded as people round."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from fractions import Fraction
from functools import lru_cache

from sitegen.quantities import RULER, Length, Typed, Unit, grain, inches, mm

_HEDGED = Fraction(8, 100)
"""``about 18 in`` is right for 16 3/4 to 19 1/2 in (common practice, no source)."""
_LONGEST_STEP = max(RULER.metric_long, RULER.inch_long).mm
"""Millimetres: what lies farther apart than half of this is on two marks of any ruler."""


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
    if length.sits_on(inches("1/8")) or length.sits_on(mm(5)):
        return Exactness.EXACT
    return Exactness.RULER if length.sits_on(inches("1/16")) or length.sits_on(mm(1)) else Exactness.COARSE


def agrees(said: Fraction, unit: Unit, makes: Iterable[Fraction], exactness: Exactness, *, hedged: bool) -> bool:
    """Whether the said length is one of those that the parts can make. All in millimetres."""
    return any(_agrees(said, unit, each, exactness, hedged) for each in makes)


def _agrees(said: Fraction, unit: Unit, makes: Fraction, exactness: Exactness, hedged: bool) -> bool:
    if said == makes:
        return True
    if exactness is Exactness.EXACT and not hedged:
        return said == RULER.rounded(Length(makes), unit.system).mm  # 50.4 cm is 50.5 cm on a ruler
    apart = abs(said - makes)
    if hedged:
        return apart <= max(_half_grain(said, unit), makes * _HEDGED)
    if apart * 2 <= _LONGEST_STEP and RULER.agrees(Length(said), Length(makes), unit.system):
        return True
    return exactness is Exactness.COARSE and apart <= _half_grain(said, unit)


@lru_cache(maxsize=4096)
def _half_grain(said: Fraction, unit: Unit) -> Fraction:
    """Millimetres: half the distance between the coarsest marks of the trade on which a written length sits."""
    return grain(Typed(Length(said), unit, "", 0, 0)).mm / 2
