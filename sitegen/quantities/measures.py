"""Ratios, areas, weights per area and counts: the other exact numbers of the trade."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.quantities.length import Exact, Length, Unit, exact, must_be


@dataclass(frozen=True, order=True, slots=True)
class Ratio:
    """A share or a stretch: 85 % is ``Ratio(Fraction(17, 20))``; a stretch of 40 % is ``Ratio(Fraction(2, 5))``.

    ``as_fraction`` says that it was written as a vulgar fraction, ``2/3``, and is to be shown so.
    """

    value: Fraction
    as_fraction: bool = field(default=False, compare=False)

    def __post_init__(self) -> None:
        must_be(self.value, Fraction)

    @classmethod
    def percent(cls, number: Exact | str) -> Ratio:
        """So many hundredths."""
        return cls(exact(number) / 100)

    def __add__(self, other: Ratio) -> Ratio:
        return Ratio(self.value + other.value)

    def __sub__(self, other: Ratio) -> Ratio:
        return Ratio(self.value - other.value)

    def of(self, whole: Length) -> Length:
        """This share of a length."""
        return whole * self.value


@dataclass(frozen=True, order=True, slots=True)
class Area:
    """An area in exact square millimetres."""

    mm2: Fraction

    def __post_init__(self) -> None:
        must_be(self.mm2, Fraction)

    def __add__(self, other: Area) -> Area:
        return Area(self.mm2 + other.mm2)

    def __sub__(self, other: Area) -> Area:
        return Area(self.mm2 - other.mm2)

    def __mul__(self, factor: Exact) -> Area:
        return Area(self.mm2 * factor)

    def along(self, side: Length) -> Length:
        """The other side of a rectangle of this area."""
        return Length(self.mm2 / side.mm)

    def over(self, other: Area) -> Fraction:
        """How many times the other area goes into this one."""
        return self.mm2 / other.mm2

    def in_square(self, unit: Unit) -> Fraction:
        """The number that stands before the square unit, exactly."""
        return self.mm2 / unit.mm**2


def rectangle(width: Length, height: Length) -> Area:
    """The area of a rectangle."""
    return Area(width.mm * height.mm)


_GRAMS_PER_OUNCE = Fraction("28.349523125")
"""Exact: the avoirdupois pound is 0.45359237 kg (NBS, Addendum to Circular 572, 1960), an ounce a sixteenth."""


@dataclass(frozen=True, order=True, slots=True)
class FabricWeight:
    """Weight of cloth per area, in exact grams per square metre."""

    gsm: Fraction

    def __post_init__(self) -> None:
        must_be(self.gsm, Fraction)

    @classmethod
    def ounces_per_square_yard(cls, number: Exact | str) -> FabricWeight:
        """So many ounces to the square yard (1 oz/yd² = 33.906 g/m²)."""
        square_metres = Unit.YD.mm**2 / 1_000_000
        return cls(exact(number) * _GRAMS_PER_OUNCE / square_metres)

    def in_ounces_per_square_yard(self) -> Fraction:
        """The number that stands before oz/yd², exactly."""
        return self.gsm * Unit.YD.mm**2 / 1_000_000 / _GRAMS_PER_OUNCE

    def grams(self, area: Area) -> Fraction:
        """What so much cloth weighs, in grams."""
        return self.gsm * area.mm2 / 1_000_000
