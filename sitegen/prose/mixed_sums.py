"""Finds sums with references among their terms, ``{front.side} + 1/2 in = 12 in``, and does them with their numbers."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.sums import Term, WrittenSum, done_again, typed_term
from sitegen.quantities import UNIT_NAMES, Length, Ratio, Unit, Worked

_REFERENCE = re.compile(r"\{\s*(?P<name>[a-z][\w.]*)\s*\}")
_UNIT = r"(?:in|cm|mm|yd|m)(?![A-Za-z])"
_NUMBER = r"\d{1,6}(?:[.,]\d{1,6})?(?:(?:[ -]\d{1,3})?[/⁄](?:[234568]|1[026]|32|64)(?!\d)|\s?[½¼¾⅛⅜⅝⅞])?"
_TERM = rf"(?:\{{\s*[a-z][\w.]*\s*\}}|{_NUMBER}(?:\s?(?:{_UNIT}|%))?)"
_LINK = r"(?:\s*[+−×÷]\s*|[ \t]+[–*/x-][ \t]+|\s+(?:plus|minus)\s+)"
_MAKES = r"(?:\s*=\s*|(?:,?\s+(?:which|that))?\s+(?:is|makes)\s+)"
_NEXT = rf"(?:,\s+|,?\s+(?:or|and)\s+|\s*/\s*){_NUMBER}\s?{_UNIT}|\s*\([^()\n]{{1,20}}\b(?:in|for) size\b"
"""The result of another size behind that of the first: no single one is to be made in every size."""
_COMPARED = r"\s+(?:too|short|more|less|longer|shorter|wider|narrower|larger|smaller|deeper)\b"
"""A difference and no result: ``is 1 cm too much``."""
_CHAIN = re.compile(rf"(?<![\w}}/.,⁄]){_TERM}(?:{_LINK}{_TERM})++")
"""The terms of a sum, each looked at once however many there are."""
_RESULT = re.compile(rf"{_MAKES}(?P<result>(?>{_TERM}))(?!{_LINK}|\s*=|[\w/⁄]|{_NEXT}|{_COMPARED})")
_GOES_ON = re.compile(r"[+−×÷=][^\d\n.=;:{}]*$")
"""A sign before the first term, or before the name of one: the sum began before, in a way that is not read here."""
_OF_IT = re.compile(
    r"(?:\b(?:half|third|quarter|fifth|sixth|eighth|tenth|twice|double|triple|times|percent)|%)(?: of)?(?: the)?\s*\Z",
    re.IGNORECASE,
)
"""A share or several of the first term are told in words."""
_AHEAD = 40
_ONE_TERM = re.compile(_TERM)
_SIGNS = {"plus": "+", "minus": "−", "–": "−", "-": "−", "*": "×", "x": "×", "/": "÷"}
_TYPED_UNIT = re.compile(rf"\d\s?({_UNIT})")


@dataclass(frozen=True, slots=True)
class MixedSum:
    """A sum with references among its terms; offsets in the text in which it stands."""

    terms: str
    result: str
    start: int
    result_start: int
    end: int

    def holds_place(self, offset: int) -> bool:
        """Whether it reaches over this offset of the text."""
        return self.start <= offset < self.end

    def done(self, number: Callable[[str], Worked | None], default: Unit) -> WrittenSum | None:
        """The sum with these numbers put in, exact as they were worked out, in the unit that is typed in it or in this
        one; None where one of them is not known, or what it puts together is no length."""
        typed = _TYPED_UNIT.search(self.result) or _TYPED_UNIT.search(self.terms)
        unit = UNIT_NAMES[typed[1]] if typed is not None else default
        found = tuple(_ONE_TERM.finditer(self.terms))
        terms = tuple(_term(each.group(), self.start + each.start(), number, unit) for each in found)
        links = (self.terms[one.end() : other.start()].strip() for one, other in pairwise(found))
        result = _term(self.result, self.result_start, number, unit)
        known = tuple(term for term in terms if term is not None)
        if result is None or len(known) < len(terms):
            return None
        return done_again(known, tuple(_SIGNS.get(link, link) for link in links), result)


def find_mixed_sums(text: str) -> Iterator[MixedSum]:
    """Each sum with signs and a result behind an equals sign, of whose terms one or more are references."""
    for terms in _CHAIN.finditer(text):
        result = _RESULT.match(text, terms.end()) if "{" in terms.group() else None
        ahead = max(0, terms.start() - _AHEAD), terms.start()
        if result is not None and not _GOES_ON.search(text, *ahead) and not _OF_IT.search(text, *ahead):
            yield MixedSum(terms.group(), result["result"], terms.start(), result.start("result"), result.end())


def _term(text: str, start: int, number: Callable[[str], Worked | None], unit: Unit) -> Term | None:
    """One term of a sum: a reference with its number, a length in this unit, or what was typed."""
    reference = _REFERENCE.fullmatch(text)
    if reference is None:
        return typed_term(text, start)
    worked = number(reference["name"])
    if worked is None:
        return None
    end = start + len(text)
    if isinstance(worked.value, Length):
        return Term(worked.value, unit, start, end)
    if isinstance(worked.value, Ratio):
        return Term(worked.value, None, start, end)
    return Term(Fraction(worked.value), None, start, end) if isinstance(worked.value, int | Fraction) else None
