"""How many pieces a long one gives, and how many things stand along it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from math import floor

from sitegen.prose.amounts.amount import COUNT, LENGTH
from sitegen.prose.amounts.claims import Claim, Paragraph
from sitegen.prose.amounts.vocabulary import BOTH_ENDS, GETS, NO_WASTE, PIECES, SKIPS
from sitegen.quantities import Unit

_INTO = re.compile(r"(?P<whole>L)_{1,4}(?P<one>L)_{1,2}[^NMTGLUXP]{0,8}[.,&:=][^NMTGLUXP.]{0,6}(?P<r>N)")
_OUT_OF = re.compile(r"(?P<whole>L)_[^NMTGLUXP.,]{0,7}(?P<r>N)__(?P<one>L)")
_BITS = re.compile(r"(?P<whole>L)_[^NMTGLUXP.]{0,8}(?P<one>L)_{1,2}[^NMTGLUXP.]{0,10}(?:&_?|,[_s&]{0,3})(?P<r>N)")
_ALONG = re.compile(
    r"e(?P<step>L)[^NMTGLUXP.]{1,4}(?P<whole>L)[^NMTGLUXP.]{1,14}?(?:[,.:]s?|&)[^NMTGLUXP.]{0,4}(?P<r>N)"
)
_NEAR = 5


def pieces(told: Paragraph) -> Iterator[Claim]:
    """Every count of a paragraph that two lengths make."""
    yield from _into(told)
    yield from _out_of(told)
    yield from _along(told)


def _length(told: Paragraph, at: int) -> Fraction:
    """Millimetres."""
    item = told.items[at]
    return item.value * Unit[item.unit].mm


def _quotient(told: Paragraph, whole: int, one: int, result: int, *, even: bool) -> Claim | None:
    """So many as lie in a length; fewer may be right where something is cut off first, more never are."""
    if not _length(told, one):
        return None
    number = _length(told, whole) / _length(told, one)
    value = Fraction(floor(number))
    said = told.items[result].value
    if said.denominator != 1 or value < 2 or (said < value and not even):
        return None
    words = f"{told.said(told.items[whole])} ÷ {told.said(told.items[one])}"
    return Claim(result, (value,), words, "rest", (whole, one), firm=True)


def _into(told: Paragraph) -> Iterator[Claim]:
    """``Cut 2 1/4 yards of ribbon into 9" lengths. This gives 9 lengths with nothing left over``."""
    for form in (_INTO, _BITS):
        for found in form.finditer(told.symbols):
            whole, one, result = (found.start(name) for name in ("whole", "one", "r"))
            between = told.words_behind(whole, one - whole - 1)
            into = between[-1] == "into" or (form is _BITS and bool({"cut", "get", "made", "make"} & set(between)))
            named = told.items[result].noun in (PIECES | set(told.names(one)))
            of_them = told.words_behind(result, 2) in (("of", "them"), ("of", "these"))
            if into and (named or of_them):
                behind = told.words_behind(one, result - one + _NEAR)
                number = _length(told, whole) / (_length(told, one) or 1)
                even = not NO_WASTE.isdisjoint(behind) or number.denominator == 1
                if claim := _quotient(told, whole, one, result, even=even):
                    yield claim


def _out_of(told: Paragraph) -> Iterator[Claim]:
    """``From each 42" strip you can cut 12 squares of 3 1/2"``; a wider strip may give several rows of them."""
    for found in _OUT_OF.finditer(told.symbols):
        whole, one, result = (found.start(name) for name in ("whole", "one", "r"))
        strip = told.words_behind(whole, 1) in (("strip",), ("strips",), ("length",), ("piece",))
        long_one = told.words_behind(whole, 1) in (("of",), ("reel",), ("roll",))
        got = not GETS.isdisjoint(told.words_behind(whole, result - whole - 1))
        strip = strip or (long_one and got and told.items[result].noun in PIECES)
        of = told.words_behind(one - 2, 1) == ("of",)
        claim = _quotient(told, whole, one, result, even=False) if strip and of else None
        if claim is not None and told.items[result].value % claim.values[0]:
            yield claim


def _along(told: Paragraph) -> Iterator[Claim]:
    """``Hooks go at every 10 cm across the 120 cm heading including one right at both ends, so put in 13 hooks``."""
    for found in _ALONG.finditer(told.symbols):
        step, whole, result = (found.start(name) for name in ("step", "whole", "r"))
        words = told.words_behind(whole, result - whole + _NEAR)
        ends = [at for at, word in enumerate(words) if word in BOTH_ENDS and words[max(0, at - 1)] in _BOTH]
        if not SKIPS.isdisjoint(words):
            continue
        number = _length(told, whole) / (_length(told, step) or 1)
        if ends and number.denominator == 1 and told.symbols[result] == COUNT and told.symbols[step] == LENGTH:
            words_ = f"{told.said(told.items[whole])} ÷ {told.said(told.items[step])} + 1"
            yield Claim(result, (number + 1,), words_, "rest", (step, whole), firm=True)


_BOTH = frozenset(("both", "each", "either", "and", "very"))
