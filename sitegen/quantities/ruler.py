"""Shows a length as a ruler can show it, and rounds fabric up to what shops sell.

Smallest marks: tapes have 1/8 in, clear rulers 1/16 in and 1 mm (common practice, no source). Long metric
lengths are shown to half a centimetre, as sewing handbooks print them (28 in as 71 cm, 60 in as 152.5 cm).
Shops sell by the eighth of a yard and by the tenth of a metre (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from sitegen.quantities.length import Length, System, Unit, cm, inches, mm


@dataclass(frozen=True, slots=True)
class Ruler:
    """The marks to which lengths are shown; from ``turn`` upward the long step is used."""

    inch_short: Length = inches("1/16")
    inch_long: Length = inches("1/8")
    inch_turn: Length = inches(1)
    metric_short: Length = mm(1)
    metric_long: Length = mm(5)
    metric_turn: Length = cm(10)

    def step(self, value: Length, system: System) -> Length:
        """The distance between two marks for a length of this size."""
        if system is System.INCHES:
            return self.inch_long if abs(value) >= self.inch_turn else self.inch_short
        return self.metric_long if abs(value) >= self.metric_turn else self.metric_short

    def rounded(self, value: Length, system: System) -> Length:
        """The nearest mark, halves away from zero. A length is never rounded to nothing."""
        step = self.step(value, system)
        marks = floor(abs(value).over(step) + Fraction(1, 2))
        if marks == 0 and value:
            return value
        return step * (marks if value.mm >= 0 else -marks)

    def show(self, value: Length, system: System) -> str:
        """The length in words of one system: ``17 3/4 in``, ``45 cm``, ``6 mm``."""
        rounded = self.rounded(value, system)
        sign = "−" if rounded.mm < 0 else ""
        size = abs(rounded)
        if system is System.INCHES:
            return f"{sign}{vulgar(size.in_unit(Unit.IN))} in"
        if size < cm(1):
            return f"{sign}{decimal(size.in_unit(Unit.MM))} mm"
        return f"{sign}{decimal(size.in_unit(Unit.CM))} cm"

    def show_both(self, value: Length, first: System = System.INCHES) -> str:
        """The length in both systems, the second in brackets: ``17 3/4 in (45 cm)``."""
        second = System.CENTIMETRES if first is System.INCHES else System.INCHES
        return f"{self.show(value, first)} ({self.show(value, second)})"

    def agrees(self, said: Length, exact: Length, system: System) -> bool:
        """Whether a written length is the exact one, rounded to the ruler's own mark or finer."""
        return abs(said - exact) * 2 <= self.step(exact, system)


RULER = Ruler()
"""The marks that are used unless an author chooses others."""


def vulgar(number: Fraction) -> str:
    """A number with a vulgar fraction, ``17 3/4``. Finer parts than sixty-fourths come as decimals."""
    whole, part = divmod(number, 1)
    if part == 0:
        return str(whole)
    if part.denominator > 64:
        return decimal(number)
    return f"{whole} {part}" if whole else str(part)


def decimal(number: Fraction, places: int = 2) -> str:
    """A number with at most so many decimals, no needless zeros, a zero before the point."""
    scaled = floor(abs(number) * 10**places + Fraction(1, 2))
    whole, part = divmod(scaled, 10**places)
    digits = f"{part:0{places}d}".rstrip("0")
    sign = "−" if number < 0 and scaled else ""
    return f"{sign}{whole}.{digits}" if digits else f"{sign}{whole}"


def to_buy(need: Length, system: System) -> Length:
    """Fabric to ask for: the need rounded up, never down, to 1/8 yd or 10 cm."""
    step = Length(Unit.YD.mm / 8) if system is System.INCHES else cm(10)
    return step * ceil(need.over(step))


def show_to_buy(need: Length, system: System) -> str:
    """Fabric to ask for, in the words of a shop: ``1 3/8 yd``, ``1.3 m``."""
    bought = to_buy(need, system)
    if system is System.INCHES:
        return f"{vulgar(bought.in_unit(Unit.YD))} yd"
    return f"{decimal(bought.in_unit(Unit.M))} m"


def show_in_unit(value: Length, unit: Unit, ruler: Ruler = RULER) -> str:
    """A length in one unit, rounded to the ruler of that unit's system: for putting right what was typed."""
    rounded = ruler.rounded(value, unit.system)
    number = rounded.in_unit(unit)
    text = vulgar(number) if unit.system is System.INCHES else decimal(number, 3)
    return f"{text} {unit.symbol}"
