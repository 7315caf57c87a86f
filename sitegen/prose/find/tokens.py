"""Cuts a text into numbers, words and signs, and leaves out what only looks like a number."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from sitegen.quantities import FRACTION_SIGNS, NotUnderstood, number_of

_SIGNS = "".join(FRACTION_SIGNS)
_GLUE = r"(?:[-‐‑]|\s{1,3}(?:(?:and|&)\s{1,3})?|(?<=\d)\u2064)"
_MONTHS = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|march|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?"
    r"|nov(?:ember)?|dec(?:ember)?)\b"
)
_SKIPPED = "|".join(
    (
        r"i\.\s?e\.|e\.\s?g\.|approx\.(?=\s[\da-z])",
        r"https?://\S+|www\.\S+",
        r"\{[^{}\n]{1,200}\}",
        r"[$£€]\s?\d{1,9}(?:[.,]\d{1,3}){0,3}(?:\s?(?:to|[-–])\s?[$£€]?\d{1,9}(?:[.,]\d{1,3}){0,3})?",
        r"\d{1,9}(?:[.,]\d{1,3}){0,3}\s?(?:dollars?|cents?|pence|pounds? sterling|euros?|usd|gbp|eur)\b",
        r"\d{1,4}[/.-]\d{1,2}[/.-]\d{2,4}(?![\d/])",
        r"\d{1,2}:\d\d(?::\d\d)?(?:[.,]\d+)?(?:\s?[ap]\.?m\b\.?)?|\d{1,2}\s?[ap]\.?m\b\.?",
        rf"\d{{1,2}}(?:st|nd|rd|th)?\s(?:of\s)?{_MONTHS}(?:,?\s\d{{4}})?",
        rf"{_MONTHS}\.?\s\d{{1,2}}(?:st|nd|rd|th)?\b(?!\s?(?:in\b|inch|cm|mm|[/¼½¾⅛⅜⅝⅞\"]|\d/))(?:,?\s\d{{4}})?",
        r"\d{1,2}(?:\.\d)/\d{2,3}|(?:[5-9]\d|1[0-3]\d)/(?:[6-9]|1\d|2[0-2])(?![\d/])(?!\s?(?:in\b|inch|\"|cm|mm|yd|yard))",
        r"\d{1,4}(?:st|nd|rd|th)\b",
        r"(?:19|20)\d\ds\b",
        r"[1-9]\d{0,2},\d{3}(?!\d)",
        r"(?!x\d)[A-Za-z]{1,20}\d[A-Za-z0-9]*|#\s?\d+",
    )
)
"""Addresses, references, prices, dates, times of day, needle sizes, ordinals and codes; and a comma before three
digits, which may part thousands or decimals: nobody can know."""
_PARTS = (10, 12, 16, 32, 64)
"""Into how many parts, of more than nine, anything is divided in a vulgar fraction."""
# What most of a text is stands first: a word before a blank that no number follows is no address, code or date.
_TOKEN = re.compile(
    rf"(?P<plain>[^\W\d_{_SIGNS}]++(?:['’][^\W\d_]++)?+(?=[,;)]|\s(?!\d)))"
    rf"|(?P<skipped>{_SKIPPED})"
    r"|(?P<number>(?<![\d⁄])(?:"
    rf"(?P<whole>\d{{1,6}}){_GLUE}(?P<top>\d{{1,3}})[/⁄](?P<bottom>\d{{1,3}})"
    r"|(?P<top2>\d{1,3})[/⁄](?P<bottom2>\d{1,3})"
    rf"|(?:(?P<whole3>\d{{1,6}}){_GLUE}?)?(?P<sign>[{_SIGNS}])"
    r"|(?P<decimal>\d{1,6}[.,]\d{1,6}|\.\d{1,6})"
    r"|(?P<integer>\d{1,9})"
    r")(?![\d⁄]|/\d))"
    r"|(?P<word>[^\W\d_]+(?:['’][^\W\d_]+)?)"
    r"|(?P<break>\n[^\S\n]*\n\s*)"
    r"|(?P<mark>\.\.\.|''|[^\s\w])",
    re.IGNORECASE,
)


class TokenKind(Enum):
    """What a token is."""

    NUMBER = "number"
    WORD = "word"
    MARK = "mark"
    SKIPPED = "skipped"
    BREAK = "break"


@dataclass(slots=True)
class Token:
    """A piece of the text. ``word`` is its text in small letters; ``value`` the exact value of a printed number."""

    kind: TokenKind
    start: int
    end: int
    word: str
    value: Fraction | None = None
    vulgar: bool = False
    mixed: bool = False
    decimals: int | None = None
    opens_line: bool = False


def tokens_of(text: str) -> list[Token]:
    """All tokens in order. Blanks are no tokens; an empty line is one."""
    found = list(_tokens(text))
    end = 0
    for token in found:
        start = token.start
        if start - end == 1:
            token.opens_line = text[end] == "\n"
        elif start > end:
            token.opens_line = text.find("\n", end, start) >= 0
        end = token.end
    return found


def _tokens(text: str) -> Iterator[Token]:
    word, mark, breaks, skipped = TokenKind.WORD, TokenKind.MARK, TokenKind.BREAK, TokenKind.SKIPPED
    for match in _TOKEN.finditer(text):
        group = match.lastgroup
        start, end = match.span()
        if group == "plain" or group == "word":
            yield Token(word, start, end, match.group().lower().replace("’", "'"))
        elif group == "mark":
            yield Token(mark, start, end, match.group())
        elif group == "break":
            yield Token(breaks, start, end, "\n")
        elif group == "skipped":
            yield Token(skipped, start, end, match.group().lower())
        else:
            yield _number(match, start, end)


def _number(match: re.Match[str], start: int, end: int) -> Token:
    try:
        value = number_of(match)
    except NotUnderstood:
        return Token(TokenKind.SKIPPED, start, end, match.group())
    bottom = match.group("bottom") or match.group("bottom2")
    if bottom is not None and len(bottom) > 1 and int(bottom) not in _PARTS:
        return Token(TokenKind.SKIPPED, start, end, match.group())  # “58/60 in” is two widths of cloth
    top, sign, decimal = match.group("top") or match.group("top2"), match.group("sign"), match.group("decimal")
    mixed = bool(match.group("whole") or match.group("whole3"))
    decimals = len(re.split(r"[.,]", decimal)[1]) if decimal else None
    return Token(TokenKind.NUMBER, start, end, match.group(), value, bool(top or sign), mixed, decimals)
