"""Exact lengths, and the units in which people write them.

Source: the international yard of 1959 is 0.9144 m exactly, so 1 in = 25.4 mm exactly (National Bureau
of Standards, Addendum to Circular 572, 1960).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction

Exact = int | Fraction
"""A number without rounding. Floats never enter a length."""


def must_be(value: object, *kinds: type) -> None:
    """Nothing, when the value is of one of these exact kinds; raises TypeError for a float and anything else."""
    if not isinstance(value, kinds):
        wanted = " or ".join(kind.__name__ for kind in kinds)
        raise TypeError(f"numbers are exact here: expected {wanted}, got {type(value).__name__} {value!r}")


def exact(number: Exact | str) -> Fraction:
    """The number as a fraction; a text is read as one. Raises TypeError for a float, ValueError for other text."""
    must_be(number, int, Fraction, str)
    return Fraction(number)


class System(Enum):
    """The two families of units that a student chooses between."""

    INCHES = "inches"
    CENTIMETRES = "centimetres"


class Unit(Enum):
    """A unit of length with its exact size in millimetres."""

    MM = ("mm", Fraction(1), System.CENTIMETRES)
    CM = ("cm", Fraction(10), System.CENTIMETRES)
    M = ("m", Fraction(1000), System.CENTIMETRES)
    IN = ("in", Fraction(127, 5), System.INCHES)
    FT = ("ft", Fraction(1524, 5), System.INCHES)
    YD = ("yd", Fraction(4572, 5), System.INCHES)

    def __init__(self, symbol: str, mm: Fraction, system: System) -> None:
        self.symbol = symbol
        self.mm = mm
        self.system = system


@dataclass(frozen=True, order=True, slots=True)
class Length:
    """A length, kept as an exact fraction of a millimetre. It may be negative, as a difference can be.

    ``fine`` says that it was written to the millimetre, or follows from one that was: it is then shown so, however long
    it is. Two lengths that differ in nothing else are the same.
    """

    mm: Fraction
    fine: bool = field(default=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        must_be(self.mm, Fraction)

    def __add__(self, other: Length) -> Length:
        return Length(self.mm + other.mm, self.fine or other.fine)

    def __sub__(self, other: Length) -> Length:
        return Length(self.mm - other.mm, self.fine or other.fine)

    def __mul__(self, factor: Exact) -> Length:
        return Length(self.mm * factor, self.fine)

    __rmul__ = __mul__

    def __truediv__(self, divisor: Exact) -> Length:
        return Length(self.mm / divisor, self.fine)

    def __neg__(self) -> Length:
        return Length(-self.mm, self.fine)

    def __abs__(self) -> Length:
        return Length(abs(self.mm), self.fine)

    def __bool__(self) -> bool:
        return self.mm != 0

    def over(self, other: Length) -> Fraction:
        """How many times the other length goes into this one. Raises ZeroDivisionError for nothing."""
        return self.mm / other.mm

    def in_unit(self, unit: Unit) -> Fraction:
        """The number that stands before the unit, exactly."""
        return self.mm / unit.mm

    def sits_on(self, step: Length) -> bool:
        """Whether it is a whole number of these steps, as a mark of a ruler is."""
        # Done with whole numbers: a fraction would be brought to its lowest terms only to look at its denominator.
        return self.mm.numerator * step.mm.denominator % (self.mm.denominator * step.mm.numerator) == 0


ZERO = Length(Fraction(0))


def length(number: Exact | str, unit: Unit) -> Length:
    """The length of so many units. A text is read as a fraction or a decimal: ``"3/8"``, ``"0.6"``."""
    return Length(exact(number) * unit.mm)


def inches(number: Exact | str) -> Length:
    """The length of so many inches."""
    return length(number, Unit.IN)


def cm(number: Exact | str) -> Length:
    """The length of so many centimetres."""
    return length(number, Unit.CM)


def mm(number: Exact | str) -> Length:
    """The length of so many millimetres."""
    return length(number, Unit.MM)
