"""Finds sums that are written out with signs, ``6 in + 1/2 in + 1/2 in = 7 in``, and does them again."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from sitegen.quantities import (
    NUMBER_PATTERN,
    RULER,
    UNIT_NAMES,
    Length,
    NotUnderstood,
    Ratio,
    Unit,
    number_of,
    show_in_unit,
    show_ratio,
    vulgar,
)

_UNITS = "|".join(re.escape(name) for name in sorted(UNIT_NAMES, key=len, reverse=True))
_BEHIND_UNIT = r"(?<=[\"″”A-Za-z]/)(?=\d{1,2}\s*[=+−×÷])"
"""A stroke between a length and the count that it is divided by."""
_TERM = re.compile(
    rf"(?<![\w.,⁄])(?:(?<!/)|{_BEHIND_UNIT}){NUMBER_PATTERN}(?:[\s\u00a0-]*(?P<unit>{_UNITS}|%)(?![A-Za-z]))?",
    re.IGNORECASE,
)
_SIGN = re.compile(r"\s*(?P<sign>[+−×÷=])\s*|[ \t]+(?P<typed>[–*/x-])[ \t]+|(?P<over>/)")
"""A dash, star or x is a sign only between two spaces of one line: at the head of a line it begins a list. A stroke
right behind a unit divides by the count that follows."""
_PART = re.compile(r"[^;:!?|`()\[\]{}]+")
"""What may hold a sum: none reaches over one of these signs, and most parts of a text have no equals sign."""
_BRACKET = re.compile(
    rf"(?<![\w/.,⁄]){NUMBER_PATTERN}\s*[×x*]\s*\((?P<inside>[^()=\n]{{3,80}})\)\s*=\s*", re.IGNORECASE
)
"""So many times a sum in brackets: ``2 × (18 in + 54 in) = 144 in``."""
_BRACKET_FIRST = re.compile(
    rf"\((?P<inside>[^()=\n]{{3,80}})\)\s*(?P<op>[×x*÷/])\s*{NUMBER_PATTERN}\s*=\s*", re.IGNORECASE
)
"""The same the other way about, or shared out: ``(36 in + 2 in) ÷ 4 = 9 1/2 in``."""
_CLOSES = re.compile(r"\)[^()\n=]{0,20}=")
"""The end of such a sum, without which none need be looked for."""
_SIGNS = {"–": "−", "-": "−", "*": "×", "x": "×", "/": "÷"}
_GOES_ON = re.compile(r"[+−×÷][^\d\n.=;:]*$")
"""A sign before a term, or before the name of one: the sum began before, in a way that is not read here."""
_NAMED = 40
_MOST_SHOWN, _FIRST_SHOWN = 12, 4
"""So many terms are shown, or so many at the head of a longer sum."""
_HALF_PERCENT = Fraction(1, 200)


@dataclass(frozen=True, slots=True)
class Term:
    """One number of a written sum: its value, the unit that was written, and its place in the text."""

    value: Length | Ratio | Fraction
    unit: Unit | None
    start: int
    end: int

    @property
    def shown(self) -> str:
        """The number in the unit that was written, of which a bare number has none."""
        if isinstance(self.value, Length):
            return show_in_unit(self.value, self.unit or Unit.IN)
        return show_ratio(self.value) if isinstance(self.value, Ratio) else vulgar(self.value)


@dataclass(frozen=True, slots=True)
class WrittenSum:
    """A sum as it was written: the terms, the signs between them, the written result, and what they truly make."""

    terms: tuple[Term, ...]
    signs: tuple[str, ...]
    result: Term
    makes: Length | Ratio

    @property
    def right(self) -> str:
        """What the terms make, in the unit of the written result; exact if a vulgar fraction or decimal can say it."""
        if isinstance(self.makes, Ratio):
            return show_ratio(self.makes)
        unit = self.result.unit or Unit.IN
        number = self.makes.in_unit(unit)
        exact = unit is Unit.IN and number.denominator in (1, 2, 4, 8, 16)
        return f"{vulgar(number)} {unit.symbol}" if exact else show_in_unit(self.makes, unit)

    @property
    def filled(self) -> str:
        """The sum as it was done, with what it truly makes: ``5 in + 1/2 in + 6 in = 11 1/2 in``."""
        terms = (f"{term.shown} {sign}" for term, sign in zip(self.terms, (*self.signs, "="), strict=True))
        return f"{' '.join(terms)} {self.right}"

    def _is_rounded(self, said: Length, makes: Length) -> bool:
        """Whether bare numbers make the result but for less than half of its unit: ``16 × 3.14 = 50 in``."""
        unit = self.result.unit
        bare = all(term.unit is None for term in self.terms) and not set(self.signs) <= {"+", "−"}
        whole = unit is not None and said.in_unit(unit).denominator == 1
        return bare and whole and unit is not None and abs(said.mm - makes.mm) * 2 < unit.mm

    def shown(self, text: str) -> str:
        """The terms as they stand in the text, of very many the first few and the last."""

        def said(start: int, end: int) -> str:
            return " ".join(text[start:end].split())

        if len(self.terms) <= _MOST_SHOWN:
            return said(self.terms[0].start, self.terms[-1].end)
        return (
            f"{said(self.terms[0].start, self.terms[_FIRST_SHOWN].start)} …"
            f" {said(self.terms[-2].end, self.terms[-1].end)} ({len(self.terms)} terms)"
        )

    @property
    def holds(self) -> bool:
        """Whether the written result is what the terms make: exactly, or rounded where a product was rounded."""
        said, makes = self.result.value, self.makes
        if isinstance(said, Length) and isinstance(makes, Length):
            if said == makes:
                return True
            if self._is_rounded(said, makes):
                return True
            one_unit = len({term.unit for term in (*self.terms, self.result) if term.unit is not None}) == 1
            if one_unit and set(self.signs) <= {"+", "−"}:
                return False
            return self.result.unit is not None and RULER.agrees(said, makes, self.result.unit.system)
        if isinstance(said, Ratio) and isinstance(makes, Ratio):
            return abs(said.value - makes.value) <= _HALF_PERCENT
        return True


def find_sums(text: str) -> Iterator[WrittenSum]:
    """Each sum with its result behind an equals sign. What is no sum of lengths is passed over in silence."""
    for part in _PART.finditer(text):
        if "=" in part.group():
            yield from _in_part(text, *part.span())
    if _CLOSES.search(text):
        yield from _with_brackets(text)


def _with_brackets(text: str) -> Iterator[WrittenSum]:
    """Sums in brackets that are multiplied or divided."""
    for match in (*_BRACKET.finditer(text), *_BRACKET_FIRST.finditer(text)):
        try:
            number = number_of(match)
        except NotUnderstood:
            continue
        written = _TERM.match(text, match.end())
        result = _term(written) if written is not None else None
        chain = [_term(each) for each in _TERM.finditer(text, *match.span("inside"))]
        terms = [term for term in chain if term is not None]
        links = [_SIGN.fullmatch(text, one.end, other.start) for one, other in pairwise(terms)]
        if result is None or len(terms) < 2 or not all(links):
            continue
        signs = [_sign_of(link) for link in links if link is not None]
        inside = _worked(_with_units(terms, signs, result), signs)
        begins, ends = match.start("inside") - 1, match.end("inside") + 1
        divides = match.re is _BRACKET_FIRST and match["op"] in "÷/"
        if isinstance(inside, Length) and isinstance(result.value, Length) and number:
            bracket = Term(inside, result.unit, begins, ends)
            if match.re is _BRACKET:
                both = Term(number, None, match.start(), begins), bracket
            else:
                both = bracket, Term(number, None, ends, match.start() + len(match.group().rstrip(" \t\n=")))
            makes = inside / number if divides else inside * number
            yield WrittenSum(both, ("÷" if divides else "×",), result, makes)


def _in_part(text: str, start: int, end: int) -> Iterator[WrittenSum]:
    """The sums in a part of a text."""
    chain: list[Term] = []
    signs: list[str] = []
    for match in _TERM.finditer(text, start, end):
        term = _term(match)
        link = _SIGN.fullmatch(text, chain[-1].end, match.start()) if chain and term is not None else None
        if term is None or link is None:
            yield from _finished(chain, signs)
            goes_on = _GOES_ON.search(text, max(0, match.start() - _NAMED), match.start()) is not None
            chain, signs = ([term] if term is not None and not goes_on else []), []
            continue
        chain.append(term)
        signs.append(_sign_of(link))
    yield from _finished(chain, signs)


def _sign_of(link: re.Match[str]) -> str:
    return link["sign"] or _SIGNS[link["typed"] or link["over"]]


def typed_term(text: str, start: int) -> Term | None:
    """The number that a text is, ``1/2 in``, which begins at this place; None for what is no number."""
    match = _TERM.fullmatch(text)
    term = _term(match) if match is not None else None
    return replace(term, start=start, end=start + len(text)) if term is not None else None


def _term(match: re.Match[str]) -> Term | None:
    try:
        number = number_of(match)
    except NotUnderstood:
        return None
    name = (match.group("unit") or "").lower()
    unit = UNIT_NAMES.get(name)
    value: Length | Ratio | Fraction = Length(number * unit.mm) if unit else Ratio.percent(number) if name else number
    return Term(value, unit, match.start(), match.end())


def _finished(chain: list[Term], signs: list[str]) -> Iterator[WrittenSum]:
    """The sums in a chain of terms: ``a + b = c`` and then ``c − d = e`` share the ``c``."""
    start = 0
    for place, sign in enumerate(signs):
        if sign != "=":
            continue
        terms, inner, result = tuple(chain[start : place + 1]), tuple(signs[start:place]), chain[place + 1]
        start = place + 1
        done = done_again(terms, inner, result) if inner else None
        if done is not None:
            yield done


def done_again(terms: tuple[Term, ...], signs: tuple[str, ...], result: Term) -> WrittenSum | None:
    """The sum of these terms with the result that was written behind it; None for what cannot be put together, or
    makes another kind of quantity than the result is."""
    makes = _worked(_with_units(terms, signs, result), signs, result.unit)
    if isinstance(makes, Length | Ratio) and isinstance(result.value, type(makes)):
        return WrittenSum(terms, signs, result, makes)
    return None


def _with_units(terms: Sequence[Term], signs: Sequence[str], result: Term) -> list[Length | Ratio | Fraction]:
    """The values; a bare number that is only added or taken off has the unit of what stands behind it."""
    values: list[Length | Ratio | Fraction] = []
    unit = result.unit
    for index in range(len(terms) - 1, -1, -1):
        term = terms[index]
        unit = term.unit or unit
        beside = signs[max(0, index - 1) : index + 1]
        bare = isinstance(term.value, Fraction) and unit is not None and set(beside) <= {"+", "−"}
        values.append(
            Length(term.value * unit.mm) if bare and unit and isinstance(term.value, Fraction) else term.value
        )
    return values[::-1]


def _worked(
    values: list[Length | Ratio | Fraction], signs: Sequence[str], unit: Unit | None = None
) -> Length | Ratio | Fraction | None:
    """The result, products before sums; None for what cannot be put together.

    A bare number that a product of bare numbers makes is a length where a length is told: ``27 − 2 × 1 = 25 cm``.
    """
    sums: list[tuple[str, Length | Ratio | Fraction]] = [("+", values[0])]
    for sign, value in zip(signs, values[1:], strict=True):
        if sign in "+−":
            sums.append((sign, value))
            continue
        product = _product(sums[-1][1], sign, value)
        if product is None:
            return None
        sums[-1] = (sums[-1][0], product)
    if unit is not None:
        sums = [(sign, Length(each * unit.mm) if isinstance(each, Fraction) else each) for sign, each in sums]
    total = sums[0][1]
    for sign, value in sums[1:]:
        if isinstance(total, Length) and isinstance(value, Length):
            total = total + value if sign == "+" else total - value
        else:
            return None
    return total


def _product(
    left: Length | Ratio | Fraction, sign: str, right: Length | Ratio | Fraction
) -> Length | Ratio | Fraction | None:
    factor = right.value if isinstance(right, Ratio) else right
    if isinstance(left, Fraction) and isinstance(right, Fraction):
        return left * right if sign == "×" else left / right if right else None
    if sign == "×":
        if isinstance(left, Length) and isinstance(factor, Fraction):
            return left * factor
        if isinstance(right, Length) and not isinstance(left, Length):
            return right * (left.value if isinstance(left, Ratio) else left)
        return None
    if isinstance(left, Length) and isinstance(right, Length):
        return Ratio(left.over(right)) if right else None
    if isinstance(left, Length) and isinstance(factor, Fraction) and factor:
        return left / factor
    return None
