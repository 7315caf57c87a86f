"""Shows a length as a ruler can show it, and what must be enough rounded up, on the ruler or to what shops sell.

Smallest marks: tapes have 1/8 in, clear rulers 1/16 in and 1 mm (common practice, no source). Long metric
lengths are shown to half a centimetre, as sewing handbooks print them (28 in as 71 cm, 60 in as 152.5 cm), but to the
millimetre where they were written so, or follow from such: what an author wrote as 25.7 cm is never told as 25.5 cm.
Shops sell by the eighth of a yard and by the tenth of a metre (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from math import ceil, floor

from sitegen.quantities.length import ZERO, Length, System, Unit, cm, inches, mm

SHOP_STEPS = {System.INCHES: Length(Unit.YD.mm / 8), System.CENTIMETRES: cm(10)}
"""The steps by which cloth is sold."""

_PARTS_OF_A_YARD = (1, 2, 3, 4, 8, 16)
"""Parts of a yard by which people ask for cloth."""

_FINE_MARKS = {
    System.INCHES: tuple(inches(part) for part in ("1/8", "1/10", "1/16", "1/32", "1/64", "1/100", "1/1000")),
    System.CENTIMETRES: (mm(1), mm("1/10"), mm("1/100")),
}
"""Marks finer than a ruler's on which a written number may sit, coarsest first."""


class Rounding(Enum):
    """How a length is brought to a mark where it is shown."""

    NEAREST = "to the nearest mark"
    ENOUGH = "up to the next mark, since less would not do"
    SOLD = "up to what shops sell; in a sum, which a reader adds up, up to the next mark"
    TOLD = "as an author tells to buy it, in the words of a shop; in a sum up to the next mark"


@dataclass(frozen=True, slots=True)
class Ruler:
    """The marks to which lengths are read and shown; from ``turn`` upward the long step is used.

    Read to the marks of a tape, a length of an inch or more may be on an eighth; shown, it is on a sixteenth up to
    where centimetres are shown to the millimetre too: both are then about as exact, and four quarters of a small band
    come to the band.
    """

    inch_short: Length = inches("1/16")
    inch_long: Length = inches("1/8")
    inch_turn: Length = inches(1)
    inch_shown_turn: Length = inches(4)
    metric_short: Length = mm(1)
    metric_long: Length = mm(5)
    metric_turn: Length = cm(10)

    def step(self, value: Length, system: System) -> Length:
        """The distance between two marks for a length of this size."""
        turn = self.inch_turn if system is System.INCHES else self.metric_turn
        if abs(value) < turn:
            return self.finest(system)
        return self.inch_long if system is System.INCHES else self.metric_long

    def finest(self, system: System) -> Length:
        """The distance between two marks for short lengths."""
        return self.inch_short if system is System.INCHES else self.metric_short

    def rounded(self, value: Length, system: System) -> Length:
        """The nearest mark, halves away from zero. A length is never rounded to nothing."""
        return _on_marks(value, self.step(value, system))

    def shown(self, value: Length, system: System, rounding: Rounding = Rounding.NEAREST) -> Length:
        """The nearest mark of those that are shown, halves away from zero, or the next one above where less would not
        do. A length is never rounded to nothing.

        Half a millimetre that is exact stays, as the 2.5 mm of a needle: it is a size, not a mark.
        """
        if system is System.CENTIMETRES and abs(value) < cm(1) and value.sits_on(mm("1/2")):
            return value
        if rounding is not Rounding.NEAREST:
            return _up_to(value, self._shown_step(value, system))
        step = self.finest(system) if value.fine and system is System.CENTIMETRES else self._shown_step(value, system)
        return replace(_on_marks(value, step), fine=value.fine)

    def _shown_step(self, value: Length, system: System) -> Length:
        short = system is System.INCHES and abs(value) < self.inch_shown_turn
        return self.finest(system) if short else self.step(value, system)

    def show(self, value: Length, system: System, rounding: Rounding = Rounding.NEAREST) -> str:
        """The length in words of one system: ``17 3/4 in``, ``45 cm``, ``6 mm``."""
        rounded = self.shown(value, system, rounding)
        sign = "−" if rounded.mm < 0 else ""
        size = abs(rounded)
        if system is System.INCHES:
            return f"{sign}{_on_inch_ruler(size.in_unit(Unit.IN))} in"
        if size < cm(1):
            return f"{sign}{_something(size.in_unit(Unit.MM))} mm"
        return f"{sign}{decimal(size.in_unit(Unit.CM))} cm"

    def show_both(self, value: Length, first: System = System.INCHES, rounding: Rounding = Rounding.NEAREST) -> str:
        """The length in both systems, the second in brackets: ``17 3/4 in (45 cm)``."""
        second = System.CENTIMETRES if first is System.INCHES else System.INCHES
        return f"{self.show(value, first, rounding)} ({self.show(value, second, rounding)})"

    def agrees(self, said: Length, exact: Length, system: System, rounding: Rounding = Rounding.NEAREST) -> bool:
        """Whether a written length is the exact one, rounded to the ruler's own mark or finer.

        A number written on a finer mark claims more, and must be right to half of that finer mark: where 17 3/4 in
        is exact, 17 11/16 in is wrong although the ruler's step is 1/8 in. What must be enough is rounded up, so it is
        never less, and less than a mark more; of cloth it may also be what shops sell.
        """
        if rounding is Rounding.SOLD and said == to_buy(exact, system):
            return True
        step = self.step(exact, system)
        for mark in (step, *(fine for fine in _FINE_MARKS[system] if fine < step)):
            if said.sits_on(mark):
                over = said - exact
                return abs(over) * 2 <= mark if rounding is Rounding.NEAREST else ZERO <= over < mark
        return said == exact


RULER = Ruler()
"""The marks that are used unless an author chooses others."""


def _on_marks(value: Length, step: Length) -> Length:
    marks = nearest_whole(abs(value.mm.numerator) * step.mm.denominator, value.mm.denominator * step.mm.numerator)
    if marks == 0 and value:
        return value
    return step * (marks if value.mm >= 0 else -marks)


def _up_to(value: Length, step: Length) -> Length:
    return step * ceil(value.over(step))


def nearest_whole(part: int, whole: int) -> int:
    """The quotient of two whole numbers, the first not below nothing, to the nearest whole one, halves up.

    Done with whole numbers: a fraction would be brought to its lowest terms, which is what rounding takes most of its
    time for.
    """
    return (2 * part + whole) // (2 * whole)


def vulgar(number: Fraction) -> str:
    """A number with a vulgar fraction, ``17 3/4``. Finer parts than sixty-fourths come as decimals."""
    bottom = number.denominator
    if bottom > 64:
        return decimal(number)
    whole, top = divmod(abs(number.numerator), bottom)
    sign = "−" if number < 0 else ""
    if not top:
        return f"{sign}{whole}"
    return f"{sign}{whole} {top}/{bottom}" if whole else f"{sign}{top}/{bottom}"


def decimal(number: Fraction, places: int = 2) -> str:
    """A number with at most so many decimals, no needless zeros, a zero before the point."""
    scaled = nearest_whole(abs(number.numerator) * 10**places, number.denominator)
    whole, part = divmod(scaled, 10**places)
    digits = f"{part:0{places}d}".rstrip("0")
    sign = "−" if number < 0 and scaled else ""
    return f"{sign}{whole}.{digits}" if digits else f"{sign}{whole}"


def to_buy(need: Length, system: System) -> Length:
    """Fabric to ask for: the need rounded up, never down, to 1/8 yd or 10 cm."""
    return _up_to(need, SHOP_STEPS[system])


def show_to_buy(need: Length, system: System) -> str:
    """Fabric to ask for, in the words of a shop: ``1 3/8 yd``, ``1.3 m``."""
    bought = to_buy(need, system)
    if system is System.INCHES:
        return f"{vulgar(bought.in_unit(Unit.YD))} yd"
    return f"{decimal(bought.in_unit(Unit.M))} m"


def show_told_to_buy(told: Length, system: System) -> str:
    """Fabric that an author tells to buy, in the words of a shop: as exactly as these can say it, ``0.25 m``,
    ``1/3 yd``, ``10 in``, else rounded up as a need is.
    """
    if system is System.CENTIMETRES:
        return f"{decimal(told.in_unit(Unit.M), 3)} m" if told.sits_on(mm(5)) else show_to_buy(told, system)
    yards = told.in_unit(Unit.YD)
    if yards.denominator in _PARTS_OF_A_YARD:
        return f"{vulgar(yards)} yd"
    return f"{vulgar(told.in_unit(Unit.IN))} in" if told.sits_on(inches("1/2")) else show_to_buy(told, system)


def show_in_unit(value: Length, unit: Unit, ruler: Ruler = RULER, rounding: Rounding = Rounding.NEAREST) -> str:
    """A length in one unit, rounded to the ruler of that unit's system: for putting right what was typed.

    Cloth in yards or metres is what shops sell.
    """
    if rounding is Rounding.SOLD and unit in (Unit.YD, Unit.M):
        return show_to_buy(value, unit.system)
    number = ruler.shown(value, unit.system, rounding).in_unit(unit)
    if unit is Unit.IN:
        return f"{_on_inch_ruler(number)} in"
    return f"{vulgar(number) if unit.system is System.INCHES else decimal(number, 3)} {unit.symbol}"


def _on_inch_ruler(number: Fraction) -> str:
    """Inches with a fraction that a ruler could have, else with decimals."""
    return vulgar(number) if 64 % number.denominator == 0 else _something(number)


def _something(number: Fraction) -> str:
    """A number with two decimals, or with so many more that it does not read as nothing."""
    places = 2
    while number and floor(number * 10**places + Fraction(1, 2)) == 0:
        places += 1
    return decimal(number, places)


def show_exactly(value: Length, unit: Unit) -> str:
    """A length in one unit as finely as decimals tell it, three of an inch and two of metric units: ``0.787 in``."""
    return f"{decimal(value.in_unit(unit), 3 if unit.system is System.INCHES else 2)} {unit.symbol}"
