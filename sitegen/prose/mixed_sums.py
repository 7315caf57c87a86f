"""Finds sums with references among their terms, ``{front.side} + 1/2 in = 12 in``, and does them with their numbers."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sitegen.prose.sums import Term, WrittenSum, find_sums
from sitegen.quantities import UNIT_NAMES, Length, Ratio, Unit, Worked, show_in_unit, show_ratio, vulgar

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
_SIGNS = {"plus": "+", "minus": "−"}
_SIGN_WORD = re.compile(r"\b(?:plus|minus)\b")
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

    @property
    def names(self) -> tuple[str, ...]:
        """The numbers that it refers to, those of the result included."""
        return tuple(match["name"] for match in _REFERENCE.finditer(f"{self.terms} {self.result}"))

    @staticmethod
    def filled(done: WrittenSum) -> str:
        """The sum as it was done, with what it truly makes: ``5 in + 1/2 in + 6 in = 11 1/2 in``."""
        signs = (*done.signs, "=")
        terms = (f"{_said_term(term)} {sign}" for term, sign in zip(done.terms, signs, strict=True))
        return f"{' '.join(terms)} {done.right}"

    def done(self, number: Callable[[str], Worked | None], default: Unit) -> WrittenSum | None:
        """The sum with these numbers put in, in the unit that is typed in it or in this one; None where one of them is
        not known, or what it puts together is no length."""
        typed = _TYPED_UNIT.search(self.result) or _TYPED_UNIT.search(self.terms)
        unit = UNIT_NAMES[typed[1]] if typed is not None else default
        if any(number(name) is None for name in self.names):
            return None
        return next(find_sums(self._with(number, unit)), None)

    def _with(self, number: Callable[[str], Worked | None], unit: Unit) -> str:
        terms = _SIGN_WORD.sub(lambda match: _SIGNS[match[0]], " ".join(self.terms.split()))
        whole = f"{terms} = {self.result}"
        return _REFERENCE.sub(lambda match: _said(number(match["name"]), unit), whole)


def find_mixed_sums(text: str) -> Iterator[MixedSum]:
    """Each sum with signs and a result behind an equals sign, of whose terms one or more are references."""
    for terms in _CHAIN.finditer(text):
        result = _RESULT.match(text, terms.end()) if "{" in terms.group() else None
        ahead = max(0, terms.start() - _AHEAD), terms.start()
        if result is not None and not _GOES_ON.search(text, *ahead) and not _OF_IT.search(text, *ahead):
            yield MixedSum(terms.group(), result["result"], terms.start(), result.start("result"), result.end())


def _said(number: Worked | None, unit: Unit) -> str:
    value = number.value if number is not None else None
    if isinstance(value, Length):
        return f"{vulgar(value.in_unit(unit))} {unit.symbol}"
    return show_ratio(value) if isinstance(value, Ratio) else str(value)


def _said_term(term: Term) -> str:
    if isinstance(term.value, Length):
        return show_in_unit(term.value, term.unit or Unit.IN)
    return show_ratio(term.value) if isinstance(term.value, Ratio) else vulgar(term.value)
