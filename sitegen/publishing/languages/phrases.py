"""Phrases that the program makes in English, and how another language says each.

``{part} cut length`` stands for every phrase of this shape. The places ``n``, ``n1``, ``n2`` … hold an amount with its
unit, one whose name begins with ``count`` a whole number, ``letter`` the capital that stands for a piece; any other
holds words, which are said in turn. Words end where a clause does, but those of the places ``rest`` and ``parts`` may
hold several. A phrase with a full stop is a sentence and is sought only for one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

Say = Callable[[str], str]

PLACE = re.compile(r"\{(\w+)\}")
_AMOUNT = (
    r"[−\d½⅓⅔¼¾⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚⁰¹²³⁴-⁹][\d½⅓⅔¼¾⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚⁰¹²³⁴-⁹₀-₉⁄/.,%×\s ]*(?:(?:sq )?(?:in|yd|mm|cm²|cm|m)(?![\w²]))?"
    r"(?: \([−\d][^()]*\))?"
)
_OF_AMOUNT = re.compile(r"n\d*")
_WHOLE_AMOUNT = re.compile(_AMOUNT)
_LETTER = "letter"
_LONG = frozenset({"rest", "parts"})
_TO_END_OF_SENTENCE = r"(?:(?!\. ).)+?"
_TO_END_OF_CLAUSE = r"(?:(?![.:;] ).)+?"


@dataclass(frozen=True, slots=True)
class _Phrase:
    pattern: re.Pattern[str]
    anchor: str
    """The longest of its fixed words: a text without them needs no closer look."""
    said: str


class Phrases:
    """A table from English to one language."""

    def __init__(self, table: Mapping[str, str]) -> None:
        self._exact = {english: said for english, said in table.items() if not PLACE.search(english)}
        shaped = [english for english in table if PLACE.search(english)]
        self._shaped = tuple(
            _phrase(english, table[english])
            for english in sorted(shaped, key=lambda each: (-len(PLACE.sub("", each)), each))
        )

    def find(self, text: str, say: Say, amount: Say) -> str | None:
        """The text in the language, None when no phrase has its shape."""
        exact = self._exact.get(text)
        if exact is not None:
            return exact
        if _WHOLE_AMOUNT.fullmatch(text):
            return amount(text)
        for phrase in self._shaped:
            alike = phrase.anchor in text and text.endswith(".") == phrase.said.endswith(".")
            found = phrase.pattern.fullmatch(text) if alike else None
            if found is not None:
                values = {name: _said(name, value, say, amount) for name, value in found.groupdict().items()}
                return fill(phrase.said, **values)
        return None


def fill(text: str, **values: str) -> str:
    """A text with its places filled. Raises KeyError for a place that has no value."""
    return PLACE.sub(lambda place: values[place[1]], text)


def places_of(text: str) -> tuple[str, ...]:
    """The names of the places of a text, in their order."""
    return tuple(PLACE.findall(text))


def misplaced(table: Mapping[str, str]) -> Iterable[str]:
    """The phrases whose translation has other places than they have."""
    return (english for english, said in table.items() if set(places_of(english)) != set(places_of(said)))


def _phrase(english: str, said: str) -> _Phrase:
    parts = PLACE.split(english)
    pattern = "".join(re.escape(part) if index % 2 == 0 else _place(part) for index, part in enumerate(parts))
    first = re.escape(english[0])
    if english[0].isalpha():
        pattern = f"[{first.lower()}{first.upper()}]{pattern[1:]}"
    fixed = [parts[0][1:], *parts[2::2]]
    return _Phrase(re.compile(pattern, re.DOTALL), max(fixed, key=len), said)


def _place(name: str) -> str:
    if name.startswith("count"):
        return rf"(?P<{name}>\d+)"
    if _OF_AMOUNT.fullmatch(name):
        return rf"(?P<{name}>{_AMOUNT})"
    if name == _LETTER:
        return rf"(?P<{name}>[A-Z]\d*)"
    return rf"(?P<{name}>{_TO_END_OF_SENTENCE if name in _LONG else _TO_END_OF_CLAUSE})"


def _said(name: str, value: str, say: Say, amount: Say) -> str:
    if name.startswith("count") or name == _LETTER:
        return value
    return amount(value) if _OF_AMOUNT.fullmatch(name) else say(value)
