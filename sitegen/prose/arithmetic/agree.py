"""Whether a written result is what its parts make, rounded as people round."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from fractions import Fraction

from sitegen.quantities import RULER, Length, Typed, Unit, grain, inches, mm

_HEDGED = Fraction(6, 100)
"""``about 18 in`` is right for 17 to 19 in (common practice, no source)."""


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
    return Exactness.RULER if length.sits_on(inches("1/16")) or length.sits_on(mm(1)) else Exactness.COARSE


def agrees(said: Fraction, unit: Unit, makes: Iterable[Fraction], exactness: Exactness, *, hedged: bool) -> bool:
    """Whether the said length is one of those that the parts can make. All in millimetres."""
    return any(_agrees(said, unit, each, exactness, hedged) for each in makes)


def _agrees(said: Fraction, unit: Unit, makes: Fraction, exactness: Exactness, hedged: bool) -> bool:
    if said == makes:
        return True
    apart = abs(said - makes)
    coarse = grain(Typed(Length(said), unit, "", 0, 0)).mm / 2
    if hedged:
        return apart <= max(coarse, makes * _HEDGED)
    if exactness is Exactness.EXACT:
        return False
    if RULER.agrees(Length(said), Length(makes), unit.system):
        return True
    return exactness is Exactness.COARSE and apart <= coarse
