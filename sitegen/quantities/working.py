"""Numbers that remember how they were got.

A worked number is built by doing the sum: the value and the line that explains it come from the same
operands, so they cannot part. Lines are data until they are shown, so one sum can be read in inches or in
centimetres, and says so when its rounded parts do not make its rounded total.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor

from sitegen.quantities.language import ENGLISH, English
from sitegen.quantities.length import Length, System, Unit, must_be
from sitegen.quantities.measures import Area, Ratio
from sitegen.quantities.ruler import RULER, Rounding, Ruler, decimal, show_to_buy, show_told_to_buy, vulgar

SHOWN_ROUNDED = "(shown rounded; worked with the exact numbers)"
"""Stands behind the result of a line whose parts, as they are shown, do not make it."""

SOLD_AS = "sold as"
"""Stands before what shops sell of a need, behind its sum."""

_IN_SHOPS = {Rounding.SOLD: show_to_buy, Rounding.TOLD: show_told_to_buy}

Value = Length | Ratio | Area | int | Fraction
"""What a worked number can be. A bare Fraction is a plain number, such as stitches to the inch."""

SQUARE_INCH = Unit.IN.mm**2


@dataclass(frozen=True, slots=True)
class Term:
    """One operand of a sum: the sign before it, how many times it is taken, and the number."""

    sign: str
    count: int
    number: Worked


@dataclass(frozen=True, slots=True)
class Worked:
    """A number, its name in words, and the sum that gave it; no terms when it was given by the author.

    ``note`` says what no sum can: a rule, a source, a rounding. The value is exact; ``rounding`` is how a length is
    shown, wherever it is.
    """

    name: str
    value: Value
    terms: tuple[Term, ...] = ()
    note: str = ""
    rounding: Rounding = Rounding.NEAREST

    def __post_init__(self) -> None:
        must_be(self.value, Length, Ratio, Area, int, Fraction)

    @property
    def length(self) -> Length:
        """The value, known to be a length. Raises TypeError when it is something else."""
        if not isinstance(self.value, Length):
            raise TypeError(f"{self.name} is not a length")
        return self.value

    @property
    def ratio(self) -> Ratio:
        """The value, known to be a ratio. Raises TypeError when it is something else."""
        if not isinstance(self.value, Ratio):
            raise TypeError(f"{self.name} is not a ratio")
        return self.value

    @property
    def number(self) -> Fraction:
        """The value, known to be a plain number. Raises TypeError when it is something else."""
        if not isinstance(self.value, int | Fraction):
            raise TypeError(f"{self.name} is not a plain number")
        return Fraction(self.value)

    def named(self, name: str) -> Worked:
        """The same number under another name."""
        return replace(self, name=name)

    def noted(self, note: str) -> Worked:
        """The same number with a note."""
        return replace(self, note=note)

    def rounded(self, rounding: Rounding) -> Worked:
        """The same number, shown in this way."""
        return replace(self, rounding=rounding)


def given(name: str, value: Value, note: str = "") -> Worked:
    """A number that the author measured, chose or looked up."""
    return Worked(name, value, (), note)


def plus(number: Worked, count: int = 1) -> Term:
    """Add the number, so many times."""
    return Term("+", count, number)


def minus(number: Worked, count: int = 1) -> Term:
    """Take the number off, so many times."""
    return Term("−", count, number)


def times(number: Worked) -> Term:
    """Multiply by the number."""
    return Term("×", 1, number)


def over(number: Worked) -> Term:
    """Divide by the number."""
    return Term("÷", 1, number)


def work(name: str, first: Worked | Term, *rest: Term, note: str = "") -> Worked:
    """Do a sum from left to right and keep it as the working of its result.

    A sum is either of pluses and minuses or of times and divisions, so that it reads as it was done;
    ValueError otherwise, and when it begins with anything but a number to add. Raises ZeroDivisionError for a
    division by nothing and TypeError for quantities that cannot be put together.
    """
    start = first if isinstance(first, Term) else Term("", 1, first)
    if start.sign not in ("", "+"):
        raise ValueError(f"a sum begins with a number, not with {start.sign}")
    start = replace(start, sign="")
    signs = {term.sign for term in rest}
    if signs & {"+", "−"} and signs & {"×", "÷"}:
        raise ValueError("a sum reads from left to right: split sums and products into lines of their own")
    value = _scaled(start.number.value, start.count)
    for term in rest:
        value = _apply(term.sign, value, _scaled(term.number.value, term.count))
    return Worked(name, value, (start, *rest), note)


def show_number(number: Worked, system: System, ruler: Ruler = RULER, language: English = ENGLISH) -> str:
    """A worked number in words, alone: a need of cloth as shops sell it, what is told to be bought as it is told, all
    else as ``show_measured`` does."""
    if number.rounding in _IN_SHOPS:
        return language.amount(_IN_SHOPS[number.rounding](number.length, system))
    return show_measured(number, system, ruler, language)


def show_measured(number: Worked, system: System, ruler: Ruler = RULER, language: English = ENGLISH) -> str:
    """A worked number in words as it is laid off with a ruler, and as it stands in a sum."""
    return language.amount(_show_plain(number.value, system, ruler, number.rounding))


def show_value(value: Value, system: System, ruler: Ruler = RULER, language: English = ENGLISH) -> str:
    """Any value in words: a length on the nearest mark of the ruler, a ratio in percent, a number as it is."""
    return language.amount(_show_plain(value, system, ruler))


def _show_plain(value: Value, system: System, ruler: Ruler, rounding: Rounding = Rounding.NEAREST) -> str:
    if isinstance(value, Length):
        return ruler.show(value, system, rounding)
    if isinstance(value, Ratio):
        return show_ratio(value)
    if isinstance(value, Area):
        if system is System.INCHES:
            return f"{decimal(value.mm2 / SQUARE_INCH, 1)} sq in"
        return f"{decimal(value.mm2 / 100, 0)} cm²"
    number = Fraction(value)
    return vulgar(number) if _as_vulgar(number) else decimal(number)


def show_ratio(ratio: Ratio) -> str:
    """A ratio in percent, or as a vulgar fraction when it was written as one."""
    return vulgar(ratio.value) if ratio.as_fraction else f"{decimal(ratio.value * 100, 1)}%"


def show_line(number: Worked, system: System, ruler: Ruler = RULER, language: English = ENGLISH) -> str:
    """One line: ``neckband cut length: neckband finished length 17 in + 2 seam allowances of 3/8 in = 17 3/4 in``."""
    return f"{language.say(number.name)}: {show_sum(number, system, ruler, language)}"


def show_sum(number: Worked, system: System, ruler: Ruler = RULER, language: English = ENGLISH) -> str:
    """A line without the name of what it gives.

    ``SHOWN_ROUNDED`` stands as it is in every language, since a page says once what it means. A need of cloth ends
    with what shops sell.
    """
    result = show_measured(number, system, ruler, language)
    bought = show_number(number, system, ruler, language)
    sold = f", {language.say(SOLD_AS)} {bought}" if number.rounding in _IN_SHOPS else ""
    note = f" ({language.say(number.note)})" if number.note else ""
    if not number.terms:
        return f"{result}{sold}{note}"
    parts = " ".join(_show_term(term, system, ruler, language) for term in number.terms)
    if len(number.terms) == 1 and number.terms[0].count == 1 and _reads_as_its_term(number, system, ruler):
        return f"{parts}{sold}{note}"
    return f"{parts} = {result}{_rounding(number, system, ruler)}{sold}{note}"


def lines_of(number: Worked) -> tuple[Worked, ...]:
    """Every computed number behind this one and it itself, in the order in which they are needed, each once.

    A number that was merely given comes along only when it carries a note.
    """
    seen: dict[int, Worked] = {}

    def walk(current: Worked) -> None:
        if id(current) in seen:
            return
        for term in current.terms:
            walk(term.number)
        if current.terms or current.note or current is number:
            seen[id(current)] = current

    walk(number)
    return tuple(seen.values())


def show_working(number: Worked, system: System, ruler: Ruler = RULER) -> tuple[str, ...]:
    """The whole working as lines of words, in one system of units."""
    return tuple(dict.fromkeys(show_line(line, system, ruler) for line in lines_of(number)))


def inputs_of(number: Worked) -> Iterator[Worked]:
    """The given numbers at the bottom of the working, each as often as it is used."""
    if not number.terms:
        yield number
    for term in number.terms:
        yield from inputs_of(term.number)


def _show_term(term: Term, system: System, ruler: Ruler, language: English) -> str:
    value = show_measured(term.number, system, ruler, language)
    sign = f"{language.say(term.sign) if term.sign[0].isalpha() else term.sign} " if term.sign else ""
    if term.count == 1:
        return f"{sign}{language.say(term.number.name)} {value}".strip()
    return f"{sign}{language.several(term.count, term.number.name, value)}"


def _reads_as_its_term(number: Worked, system: System, ruler: Ruler) -> bool:
    """Whether a number with one term stands in it as it is shown: a need may be rounded up where its term is not."""
    if number.rounding is Rounding.NEAREST:
        return True
    return _as_shown(number, system, ruler) == _as_shown(number.terms[0].number, system, ruler)


def _rounding(number: Worked, system: System, ruler: Ruler) -> str:
    """Says so when the parts as shown do not make the total as shown.

    A sum of shown parts must be the shown total itself, since a reader adds it up; a product or a quotient of
    shown parts must round to it.
    """
    signs = {term.sign for term in number.terms}
    if not signs <= {"", "+", "−", "×", "÷"}:
        return ""
    first, *rest = number.terms
    total = _scaled(_as_shown(first.number, system, ruler), first.count)
    for term in rest:
        total = _apply(term.sign, total, _scaled(_as_shown(term.number, system, ruler), term.count))
    if signs & {"×", "÷"}:
        total = _as_shown(replace(number, value=total), system, ruler)
    if total == _as_shown(number, system, ruler):
        return ""
    return f" {SHOWN_ROUNDED}"


def _as_shown(number: Worked, system: System, ruler: Ruler) -> Value:
    """The value that ``show_measured`` prints; never rounded to nothing, so that it can still divide."""
    value = number.value
    if isinstance(value, Length):
        return ruler.shown(value, system, number.rounding)
    if isinstance(value, Ratio):
        return value if value.as_fraction else Ratio(_nearest(value.value, Fraction(1, 1000)))
    if isinstance(value, Area):
        step = SQUARE_INCH / 10 if system is System.INCHES else Fraction(100)
        return Area(_nearest(value.mm2, step))
    plain = Fraction(value)
    return plain if _as_vulgar(plain) else _nearest(plain, Fraction(1, 100))


def _as_vulgar(number: Fraction) -> bool:
    return number.denominator <= 8


def _nearest(number: Fraction, step: Fraction) -> Fraction:
    """The nearest whole number of steps, halves away from zero; the number itself rather than nothing."""
    steps = floor(abs(number) / step + Fraction(1, 2))
    return (steps if number >= 0 else -steps) * step or number


def _scaled(value: Value, count: int) -> Value:
    if count == 1:
        return value
    if isinstance(value, Ratio):
        return Ratio(value.value * count)
    return value * count


def _apply(sign: str, left: Value, right: Value) -> Value:
    if sign in ("+", "−"):
        for kind in (Length, Ratio, Area):
            if isinstance(left, kind) and isinstance(right, kind):
                return left + right if sign == "+" else left - right  # type: ignore[operator]
        if isinstance(left, int | Fraction) and isinstance(right, int | Fraction):
            return left + right if sign == "+" else left - right
        raise TypeError("only quantities of one kind can be added or taken off")
    factor = right.value if isinstance(right, Ratio) else right
    if sign == "×":
        if isinstance(left, Length) and isinstance(factor, Length):
            return Area(left.mm * factor.mm)
        if isinstance(factor, int | Fraction):
            return Ratio(left.value * factor) if isinstance(left, Ratio) else left * factor
    elif sign == "÷":
        if isinstance(left, Length) and isinstance(factor, Length):
            return Ratio(left.over(factor))
        if isinstance(factor, int | Fraction):
            if isinstance(left, Ratio):
                return Ratio(left.value / factor)
            return Fraction(left) / factor if isinstance(left, int) else left * (1 / Fraction(factor))
    raise TypeError("these quantities cannot be multiplied or divided")
