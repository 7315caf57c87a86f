"""Shares of a length in their order, and the lengths that they are: ``pins at a quarter and three quarters … on a band
of 28 in at 7 in and 21 in``."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.prose.arithmetic.agree import part_exactness
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.worded.line import Line
from sitegen.quantities import vulgar

_SHARE = r"(?:[LR]\d+|halfway|half way|half|the middle)"
_SHARES = re.compile(
    rf"(?P<shares>{_SHARE}(?:(?:,|,? and)(?: [a-z]+){{0,3}} {_SHARE}){{1,3}})(?: of| along| round| across| up| down)"
)
_WHOLE = re.compile(r"\b(?:of|on|for|is|measures|long|with)(?: [a-z]+){0,3}? L(?P<w>\d+)")
_SPELLED = re.compile(
    r"^(?:one |a |two |three |the )?-?(?:half|third|thirds|quarter|quarters|fifth|fifths|fourths?|eighths?)$"
)
_HALVES = frozenset(("halfway", "half way", "half", "the middle"))
_LISTED = re.compile(
    r"\b(?:at|be|are|is|come|lie|fall|:|,)[^LNR.\n]{0,20}?(?P<row>L\d+(?:(?:,|,? and)(?: [a-z]+){0,2} L\d+)+)"
)
_EVENLY = re.compile(
    r"\b(?P<part>quarter|third|fourth|fifth|sixth|eighth)s?-?(?: (?:marks?|points?|pins?|notches))?\b[^LNR.\n]{0,30}?"
    r"(?P<row>L\d+(?:(?:,|,? and)(?: [a-z]+){0,2} L\d+)+)"
)
_PARTS = {"quarter": 4, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "eighth": 8}
_REACH = 160


def shares(line: Line) -> Iterator[Stated]:
    """Each length of such a row, where all but one of them are their share of the whole."""
    yield from _evenly(line)
    for found in _SHARES.finditer(line.text):
        told = [_value(line, each) for each in re.findall(_SHARE, found["shares"])]
        parts = [each for each in told if each is not None]
        text = line.text[found.end() : found.end() + _REACH]
        whole = _WHOLE.search(text)
        row = _LISTED.search(text, whole.end()) if whole else None
        if len(parts) != len(told) or whole is None or row is None:
            continue
        places = [int(each) for each in re.findall(r"L(\d+)", row["row"])]
        one = line.items[int(whole["w"])]
        wrong = [at for at, part in zip(places, parts, strict=False) if line.items[at].value != part * one.value]
        if len(places) != len(parts) or len(wrong) > 1:
            continue
        for at, part in zip(places, parts, strict=True):
            value = part * one.value
            words = f"{vulgar(part)} × {line.said(one)}"
            if stated := line.judged(
                at, (value,), words, "share", (int(whole["w"]),), part_exactness(value), sure=True
            ):
                yield stated


def _evenly(line: Line) -> Iterator[Stated]:
    """Each of the marks that part a length evenly: ``on 60 cm the quarter marks fall at 15 cm, 30 cm and 45 cm``."""
    for found in _EVENLY.finditer(line.text):
        parts = _PARTS[found["part"]]
        places = [int(each) for each in re.findall(r"L(\d+)", found["row"])]
        wholes = re.findall(r"L(\d+)", line.text[max(0, found.start() - _REACH) : found.start()])
        if len(places) != parts - 1 or not wholes:
            continue
        one = line.items[int(wholes[-1])]
        right = [one.value * Fraction(each, parts) for each in range(1, parts)]
        if sum(line.items[at].value != value for at, value in zip(places, right, strict=True)) > 1:
            continue
        for number, (at, value) in enumerate(zip(places, right, strict=True), 1):
            words = f"{vulgar(Fraction(number, parts))} × {line.said(one)}"
            if stated := line.judged(
                at, (value,), words, "share", (int(wholes[-1]),), part_exactness(value), sure=True
            ):
                yield stated


def _value(line: Line, said: str) -> Fraction | None:
    if said in _HALVES:
        return Fraction(1, 2)
    item = line.items[int(said[1:])]
    if item.number is None or not _SPELLED.match(line.said(item).lower()):
        return None
    return item.number.value
