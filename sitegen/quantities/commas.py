"""Lengths by size with something else than a comma and a space between them, put as they are written."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.quantities.length import Unit
from sitegen.quantities.number import NUMBER, SPACE, NotUnderstood
from sitegen.quantities.parse import parse_length, unit_behind

_BETWEEN = tuple(
    re.compile(pattern)
    for pattern in (
        rf"{SPACE}*,{SPACE}*",
        rf"{SPACE}+[/|]{SPACE}+",
        rf"{SPACE}+[-‐‑–—−]{SPACE}+",
        rf"{SPACE}+and{SPACE}+",
    )
)
_BLANKS = re.compile(rf"{SPACE}+")
_LEAST = 3
"""So many values that are not as many as the sizes are still taken for a row, if no comma may be the decimal mark of
one: two may be one slip in one value."""


def row_without_commas(text: str, sizes: int, default: Unit) -> tuple[tuple[int, int], ...]:
    """The spans of the lengths in a text that was meant as a row of them for so many sizes, ``52 54 57 cm``, where
    nothing but blanks, commas without a blank, lines or dashes stands between them; empty for any other text."""
    by_sign = ((*_parted(text, sign),) for sign in _BETWEEN if sign.search(text))
    for spans in (*by_sign, (*_parted_by_blanks(text),)):
        is_row = len(spans) == sizes or (len(spans) >= _LEAST and "," not in text)
        if len(spans) > 1 and is_row and _are_lengths(text, spans, default):
            return spans
    return ()


def _parted(text: str, between: re.Pattern[str]) -> Iterator[tuple[int, int]]:
    start = len(text) - len(text.lstrip())
    for match in between.finditer(text):
        yield start, match.start()
        start = match.end()
    yield start, len(text.rstrip())


def _parted_by_blanks(text: str) -> Iterator[tuple[int, int]]:
    """The lengths of a text with blanks between them; a fraction belongs to the whole number before it."""
    blanks = _BLANKS.match(text)
    at = blanks.end() if blanks else 0
    while at < len(text.rstrip()):
        number = NUMBER.match(text, at)
        if number is None:
            yield at, len(text)
            return
        end = unit_behind(text, number.end())
        yield at, end
        blanks = _BLANKS.match(text, end)
        at = blanks.end() if blanks else end


def _are_lengths(text: str, spans: tuple[tuple[int, int], ...], default: Unit) -> bool:
    try:
        for start, end in spans:
            parse_length(text[start:end], default)
    except NotUnderstood:
        return False
    return True
