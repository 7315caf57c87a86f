"""Cuts a text into numbers, words and signs, and leaves out what only looks like a number."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from functools import lru_cache
from itertools import accumulate
from typing import NamedTuple, overload

from sitegen.quantities import FRACTION_SIGNS, NotUnderstood, number_of

_SIGNS = "".join(FRACTION_SIGNS)
_GLUE = r"(?:[-‐‑]|\s{1,3}(?:(?:and|&)\s{1,3})?|(?<=\d)\u2064)"
_MONTHS = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|march|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?"
    r"|nov(?:ember)?|dec(?:ember)?)\b"
)
_SKIPPED_NUMBERS = "|".join(
    (
        r"\d{1,9}(?:[.,]\d{1,3}){0,3}\s?(?:dollars?|cents?|pence|pounds? sterling|euros?|usd|gbp|eur)\b",
        r"\d{1,4}[/.-]\d{1,2}[/.-]\d{2,4}(?![\d/])",
        r"\d{1,2}:\d\d(?::\d\d)?(?:[.,]\d+)?(?:\s?[ap]\.?m\b\.?)?|\d{1,2}\s?[ap]\.?m\b\.?",
        rf"\d{{1,2}}(?:st|nd|rd|th)?\s(?:of\s)?{_MONTHS}(?:,?\s\d{{4}})?",
        r"\d{1,2}(?:\.\d)/\d{2,3}|(?:[5-9]\d|1[0-3]\d)/(?:[6-9]|1\d|2[0-2])(?![\d/])(?!\s?(?:in\b|inch|\"|cm|mm|yd|yard))",
        r"\d{1,4}(?:st|nd|rd|th)\b",
        r"(?:19|20)\d\ds\b",
        r"[1-9]\d{0,2},\d{3}(?!\d)(?!\s?(?:mm\b|millimet))",
    )
)
_SKIPPED = "|".join(
    (
        r"i\.\s?e\.|e\.\s?g\.|approx\.(?=\s[\da-z])",
        r"https?://\S+|www\.\S+",
        r"\{[^{}\n]{1,200}\}",
        r"[$£€]\s?\d{1,9}(?:[.,]\d{1,3}){0,3}(?:[^\S\n]?(?:to|[-–])[^\S\n]?[$£€]?\d{1,9}(?:[.,]\d{1,3}){0,3})?",
        rf"(?=\d)(?:{_SKIPPED_NUMBERS})",
        rf"{_MONTHS}\.?\s\d{{1,2}}(?:st|nd|rd|th)?\b(?!\s?(?:in\b|inch|cm|mm|[/¼½¾⅛⅜⅝⅞\"]|\d/))(?:,?\s\d{{4}})?",
        r"(?!x\d)[A-Za-z]{1,20}\d[A-Za-z0-9]*|#\s?\d+",
    )
)
"""Addresses, references, prices, dates, times of day, needle sizes, ordinals and codes; and a comma before three
digits, which may part thousands or decimals: nobody can know."""
_ORDINAL = r"(?:(?:ths?|nds?|rds?)\b)?"
"""What some write behind a vulgar fraction: ``5/8ths of an inch``."""
_THIN = r"[\u00a0\u2009\u202f]"
_THOUSANDS = (
    rf"[1-9]\d{{0,2}}(?:(?:,\d{{3}}){{1,2}}|(?:{_THIN}\d{{3}}){{1,2}}| 0\d\d)"
    r"(?!\d)(?=\s?(?:mm\b|millimet))"
)
"""Millimetres in groups of three. Behind a blank that any typewriter has, only a group with a nought in front is one:
``cut 2 150 mm strips`` tells of two."""
_PARTS = (10, 12, 16, 32, 64)
"""Into how many parts, of more than nine, anything is divided in a vulgar fraction."""
_WIDTH = rf"(?:[3-9]\d|[12]\d\d)(?=/(?!32|64)(?:[3-9]\d|[12]\d\d){_THIN}?[\s-]?(?:in\b|inch|[\"″”]|cm\b|centimet))"
"""The first of two widths of cloth: ``44/45 in``, ``110/115 cm``."""
_WORD = rf"[^\W\d_{_SIGNS}]++(?:['’][^\W\d_]++)?+"
_FIRST = r"(?<![^\W\d_])"
"""No letter stands before."""
_NO_POINT = rf"(?<!{_FIRST}[ieIE])(?<!{_FIRST}(?i:approx))(?<!{_FIRST}(?i:www))"
"""What stands before is none of the words whose point belongs to them."""
_PLAIN_WORD = (
    rf"(?:{_WORD}(?=\s(?!\d)|[^\w\s.:'’]|_|{_NO_POINT}\.(?!\s?\d|\.)|:(?!/))"
    rf"|(?!(?i:{_MONTHS})){_WORD}(?=\s\d)) ?+"
)
_PLAIN_MARK = r"[^\w\s.'’′{$£€#]|\.(?![\d.])|'(?!')|’(?!’)|′(?!′)|[$£€#](?!\s?\d)"
_BLANK = r"[^\S\n]|\n(?![^\S\n]*\n)|_"
# What most of a text is stands first, and is cut in one go: a run of words and marks with which nothing longer begins.
_TOKEN = re.compile(
    rf"(?P<run>(?-i:(?:{_PLAIN_WORD}|{_PLAIN_MARK})(?:{_PLAIN_WORD}|{_PLAIN_MARK}|{_BLANK})*+))"
    rf"|(?<![\d/⁄∕.,])(?P<width>{_WIDTH})"
    rf"|(?P<skipped>{_SKIPPED})"
    r"|(?P<number>(?<![\d⁄∕])(?:"
    rf"(?P<whole>\d{{1,6}}){_GLUE}(?P<top>\d{{1,3}})[/⁄∕](?P<bottom>\d{{1,3}}){_ORDINAL}"
    rf"|(?P<top2>\d{{1,3}})[/⁄∕](?P<bottom2>\d{{1,3}}){_ORDINAL}"
    rf"|(?:(?P<whole3>\d{{1,6}}){_GLUE}?)?(?P<sign>[{_SIGNS}])"
    rf"|(?P<thousands>{_THOUSANDS})"
    r"|(?P<decimal>\d{1,6}[.,]\d{1,6}|\.\d{1,6})"
    r"|(?P<integer>\d{1,9})"
    r")(?![\d⁄∕]|/\d))"
    r"|(?P<word>[^\W\d_]+(?:['’][^\W\d_]+)?)"
    r"|(?P<break>\n[^\S\n]*\n\s*)"
    r"|(?P<mark>\.\.\.|''|’’|′′|[^\s\w])",
    re.IGNORECASE,
)
_PIECE = re.compile(rf"({_WORD}|[^\w\s])")


class TokenKind(Enum):
    """What a token is."""

    NUMBER = "number"
    WORD = "word"
    MARK = "mark"
    SKIPPED = "skipped"
    BREAK = "break"


class Printed(NamedTuple):
    """A printed number: its exact value, and how it was written."""

    value: Fraction
    vulgar: bool
    mixed: bool
    decimals: int | None


class Token(NamedTuple):
    """A piece of the text. ``word`` is its text in small letters."""

    kind: TokenKind
    start: int
    end: int
    word: str


@dataclass(frozen=True, slots=True)
class Tokens(Sequence[Token]):
    """All tokens of a text in order. Blanks are no tokens; an empty line is one.

    They are kept in columns, since most are only passed over: what looks at many of them reads the columns, and a token
    is made where one is asked for. ``printed`` has the printed numbers by their places, ``skipped`` the places of what
    only looks like a number, ``breaks`` those of the empty lines.
    """

    text: str
    kinds: list[TokenKind]
    starts: list[int]
    ends: list[int]
    words: list[str]
    printed: dict[int, Printed]
    skipped: list[int]
    breaks: list[int]

    def __len__(self) -> int:
        return len(self.words)

    @overload
    def __getitem__(self, index: int) -> Token: ...

    @overload
    def __getitem__(self, index: slice) -> list[Token]: ...

    def __getitem__(self, index: int | slice) -> Token | list[Token]:
        if isinstance(index, slice):
            return list(map(Token, self.kinds[index], self.starts[index], self.ends[index], self.words[index]))
        return Token(self.kinds[index], self.starts[index], self.ends[index], self.words[index])

    def opens_line(self, index: int) -> bool:
        """Whether a line ends right before the token."""
        return self.text.find("\n", self.ends[index - 1] if index else 0, self.starts[index]) >= 0

    def word(self, index: int) -> str:
        """The word at a place, which may lie outside the text; empty where no word stands."""
        words = self.words
        return words[index] if 0 <= index < len(words) and self.kinds[index] is TokenKind.WORD else ""

    def value(self, index: int) -> Fraction | None:
        """The printed number at a place, which may lie behind the last token; None where none is printed."""
        printed = self.printed.get(index)
        return printed.value if printed is not None else None

    def touch(self, index: int) -> bool:
        """Whether nothing stands between the token and the one before it."""
        return self.ends[index - 1] == self.starts[index]


def tokens_of(text: str) -> Tokens:
    """The tokens of a text, in time in proportion to it."""
    kinds: list[TokenKind] = []
    starts: list[int] = []
    ends: list[int] = []
    words: list[str] = []
    printed: dict[int, Printed] = {}
    skipped: list[int] = []
    breaks: list[int] = []
    word, mark = TokenKind.WORD, TokenKind.MARK
    for match in _TOKEN.finditer(text):
        group, said = match.lastgroup, match.group()
        if group == "run":
            small = said.lower()
            as_it_is = len(small) == len(said) and "’" not in small
            pieces = _PIECE.split(small if as_it_is else said)
            edges = list(accumulate(map(len, pieces), initial=match.start()))
            found = pieces[1::2]
            kinds += [word if len(piece) > 1 or piece.isalnum() else mark for piece in found]
            starts += edges[1:-1:2]
            ends += edges[2::2]
            words += found if as_it_is else map(_small, found)
            continue
        starts.append(match.start())
        ends.append(match.end())
        if group == "number":
            number = _number(match)
            if number is not None:
                printed[len(words)] = number
            else:
                skipped.append(len(words))
            kinds.append(TokenKind.NUMBER if number is not None else TokenKind.SKIPPED)
            words.append(said)
        elif group == "width":
            printed[len(words)] = _whole(said)
            kinds.append(TokenKind.NUMBER)
            words.append(said)
        elif group == "word":
            kinds.append(word)
            words.append(_small(said))
        elif group == "skipped":
            skipped.append(len(words))
            kinds.append(TokenKind.SKIPPED)
            words.append(said.lower())
        elif group == "mark":
            kinds.append(mark)
            words.append(said)
        else:
            breaks.append(len(words))
            kinds.append(TokenKind.BREAK)
            words.append("\n")
    return Tokens(text, kinds, starts, ends, words, printed, skipped, breaks)


def _small(said: str) -> str:
    """A word in small letters, with a straight apostrophe; a mark as it is."""
    return said.lower().replace("’", "'") if len(said) > 1 else said.lower()


@lru_cache(maxsize=1024)
def _whole(digits: str) -> Printed:
    """A whole number. Kept, since most numbers of a text are a few small ones."""
    return Printed(Fraction(int(digits)), False, False, None)


def _number(match: re.Match[str]) -> Printed | None:
    """The number; None for what is none, such as ``58/60``."""
    if integer := match["integer"]:
        return _whole(integer)
    if thousands := match["thousands"]:
        return _whole(re.sub(r"\D", "", thousands))
    try:
        value = number_of(match)
    except NotUnderstood:
        return None
    bottom = match["bottom"] or match["bottom2"]
    if bottom is not None and len(bottom) > 1 and int(bottom) not in _PARTS:
        return None
    decimal = match["decimal"]
    vulgar, mixed = bottom is not None or match["sign"] is not None, bool(match["whole"] or match["whole3"])
    return Printed(value, vulgar, mixed, len(re.split(r"[.,]", decimal)[1]) if decimal else None)
