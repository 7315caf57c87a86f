"""Counts as people tell them over: listed and summed, multiplied aloud, shared out, taken from packs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from math import ceil

from sitegen.prose.amounts.amount import COUNT, TIME
from sitegen.prose.amounts.claims import Claim, Paragraph
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import EVERYBODY, FILLERS, MORE_COUNTED, ONE_THING, PACKS, REST, TAKES
from sitegen.quantities import vulgar

_ALOUD = re.compile(r"(?<![-/*])(?<!N&)(?P<a>N)(?P<x>\*)(?P<b>N),?(?:s?=_?|i_?)(?P<r>N)")
_LISTED = re.compile(r"(?P<p>N_{1,2}(?:,&?N_{1,2}){0,4},?&N_{1,2}),?(?:s_?=?_?|=)(?P<r>N)_{1,2}[.,)c]")
_JOINED = re.compile(r"N_{1,2}(?:(?:,|,?&)N_{1,2})+")
_IN_ALL = re.compile(r"_{1,2}c")
_EACH_BOTH = re.compile(r"(?P<a>N)_{1,2}&(?P<b>N)_{1,2},?s[_f]{0,2}(?P<n>N)[^N.]{1,6}?(?P<r>N)_")
_TIME_LAID_OUT = re.compile(r"(?P<r>T)_{0,3}:_?(?P<p>[NT]f[^NTMGLUX.:e]{1,8}(?:[NT]f[^NTMGLUX.:e]{1,8}){1,5})(?=\.|$)")
_FROM_PACKS = re.compile(r"(?P<whole>N)_{0,3}\.[^.]{0,14}?(?P<less>N)_{0,2},?&_(?P<r>N)")
_USED_UP = re.compile(r"(?P<a>N)_{1,2}(?P<b>N)_{0,2}e(?P<to>_{1,2})(?P<r>N)[&,.]")
_SHARED = re.compile(r"(?:=_{0,2}|s[_=i]{0,3})(?P<r>N)_{1,2}e")
_THE_OTHER = re.compile(r"(?P<whole>N)[^N.]{1,10}(?P<less>N)_{0,2}\.__(?P<r>N)")
_ALL_AT_THAT = re.compile(r"(?P<one>T),?s[_=]{0,3}(?P<n>N)_{1,2}[^.NTMGLUX]{0,3}(?P<r>T)")
_BACK = 60
_NEAR = 6
_ONE_THING = 9
_MINUTE = "minute"
_SEVERAL = 2
_MANY_PARTS = 3


def tallies(told: Paragraph) -> Iterator[Claim]:
    """Every count and time of a paragraph that is told as one of these."""
    yield from _aloud(told)
    yield from _listed(told)
    yield from _listed_before(told)
    yield from _each_both(told)
    yield from _time_laid_out(told)
    yield from _from_packs(told)
    yield from _shared(told)
    yield from _the_other(told)
    yield from _all_at_that(told)


def _claim(
    told: Paragraph, at: int, value: Fraction, sign: str, parts: tuple[int, ...], kind: str, *, firm: bool
) -> Claim:
    said = (
        told.said(told.items[each]) if told.symbols[each] == TIME else vulgar(told.items[each].value) for each in parts
    )
    return Claim(at, (value,), f" {sign} ".join(said), kind, parts, firm=firm)


def _aloud(told: Paragraph) -> Iterator[Claim]:
    """``twelve times three that's 36 bags``."""
    for found in _ALOUD.finditer(told.symbols):
        between = told.words_behind(found.start("b"), found.start("r") - found.start("b") - 1)
        filled = found.group()[-2] != "_" or between[-1] in FILLERS
        whole = all(told.items[found.start(name)].value.denominator == 1 for name in "ab")
        if whole and filled and told.words_behind(found.start("a"), 1) == ("times",):
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))


def _product(told: Paragraph, one: int, other: int, result: int) -> Claim:
    value = told.items[one].value * told.items[other].value
    return _claim(told, result, value, "×", (one, other), "grid", firm=True)


def _sum(told: Paragraph, parts: list[int], result: int) -> Claim:
    value = sum((told.items[each].value for each in parts), Fraction(0))
    return _claim(told, result, value, "+", tuple(parts), "count", firm=False)


def _listed(told: Paragraph) -> Iterator[Claim]:
    """``9 small, 7 medium and 4 large, so 20 vests``."""
    for found in _LISTED.finditer(told.symbols):
        if told.items[found.start("r")].noun:
            yield _sum(told, _counts_in(told, found.span("p")), found.start("r"))


def _counts_in(told: Paragraph, span: tuple[int, int]) -> list[int]:
    return [each for each in range(*span) if told.symbols[each] in (COUNT, TIME)]


def _listed_before(told: Paragraph) -> Iterator[Claim]:
    """``two outer pieces and two lining pieces, all of one size. So that's four pieces altogether``: the same noun."""
    for result in told.numbers:
        item = told.items[result]
        if item.symbol != COUNT or not item.noun or not _IN_ALL.match(told.symbols, result + 1):
            continue
        start = max(0, result - _BACK)
        sentence = max(start, told.symbols.rfind(".", start, result))
        more = not MORE_COUNTED.isdisjoint(told.words_behind(sentence, result - sentence))
        if more or "=" not in told.tie_before(result):
            continue
        for run in reversed(list(_JOINED.finditer(told.symbols, start, result))):
            parts = _counts_in(told, run.span())
            if all(item.noun in told.names(each) for each in parts):
                yield _sum(told, parts, result)
                break


def _each_both(told: Paragraph) -> Iterator[Claim]:
    """``Everybody cuts two outer and two lining pieces, so with 8 people there will be 32 pieces``."""
    for found in _EACH_BOTH.finditer(told.symbols):
        one, other, many, result = (found.start(name) for name in "abnr")
        near = told.words_behind(one - _NEAR - 1, _NEAR)
        if EVERYBODY.isdisjoint(near) or told.items[result].noun not in told.names(other):
            continue
        first, second, number = (told.items[each].value for each in (one, other, many))
        words = f"({vulgar(first)} + {vulgar(second)}) × {vulgar(number)}"
        yield Claim(result, ((first + second) * number,), words, "grid", (one, other, many), firm=True)


def _time_laid_out(told: Paragraph) -> Iterator[Claim]:
    """``We have 120 minutes: 30 for cutting, 60 for sewing, 30 for pressing``."""
    for found in _TIME_LAID_OUT.finditer(told.symbols):
        parts, whole = _counts_in(told, found.span("p")), found.start("r")
        last_is_joined = "&" in told.symbols[parts[-2] : parts[-1]]
        words = told.words_behind(whole, found.end() - whole)
        minutes = told.items[whole].unit == _MINUTE or all(told.symbols[each] == TIME for each in parts)
        if minutes and (last_is_joined or len(parts) >= _MANY_PARTS) and REST.isdisjoint(words):
            yield _sum(told, parts, whole)


def _from_packs(told: Paragraph) -> Iterator[Claim]:
    """``Packs of 12. Five shirts with two buttons apiece use up 10 and leave 2``."""
    for found in _USED_UP.finditer(told.symbols):
        verb = told.words_behind(found.start("to") - 1, 1)[0]
        if verb in TAKES:
            yield _product(told, found.start("a"), found.start("b"), found.start("r"))
    for found in _FROM_PACKS.finditer(told.symbols):
        whole, less, result = (found.start(name) for name in ("whole", "less", "r"))
        packed = not PACKS.isdisjoint((*told.words_behind(whole - 3, 2), *told.words_behind(whole, 3)))
        pack, used = told.items[whole].value, told.items[less].value
        if packed and pack > 1 and told.words_behind(result - 2, 1)[0] in ("leave", "leaves", "have"):
            left = ceil(used / pack) * pack - used
            bought = f"{vulgar(pack)}" if used <= pack else f"{ceil(used / pack)} × {vulgar(pack)}"
            yield Claim(result, (left,), f"{bought} − {vulgar(used)}", "rest", (whole, less), firm=True)


def _shared(told: Paragraph) -> Iterator[Claim]:
    """``There are 30 chairs. Five helpers have come forward, which makes six chairs each``."""
    for found in _SHARED.finditer(told.symbols):
        result = found.start("r")
        noun = told.items[result].noun
        before = [at for at in range(max(0, result - _BACK), result) if told.symbols[at] == COUNT]
        if not noun or not before or told.items[before[-1]].noun == noun:
            continue
        people = before.pop()
        whole = next((at for at in reversed(before) if told.items[at].noun == noun), None)
        number = told.items[people].value
        if whole is None or number < _SEVERAL or (told.items[whole].value / number).denominator != 1:
            continue
        value = told.items[whole].value / number
        yield _claim(told, result, value, "÷", (whole, people), "quotient", firm=False)


def _the_other(told: Paragraph) -> Iterator[Claim]:
    """``Of the 24 flags I have sewn 15. The other 9 can wait``."""
    for found in _THE_OTHER.finditer(told.symbols):
        whole, less, result = (found.start(name) for name in ("whole", "less", "r"))
        of_these = told.words_behind(whole - 3, 2) == ("of", "the")
        value = told.items[whole].value - told.items[less].value
        if of_these and told.words_behind(result - 3, 2) == ("the", "other") and value > 0:
            yield _claim(told, result, value, "−", (whole, less), "rest", firm=True)


def _all_at_that(told: Paragraph) -> Iterator[Claim]:
    """``I sewed a set in about 2 hours, so all five sets took 10 hours``."""
    for found in _ALL_AT_THAT.finditer(told.symbols):
        one, many, result = (found.start(name) for name in ("one", "n", "r"))
        noun = told.items[many].noun
        before = told.words_behind(one - _ONE_THING - 1, _ONE_THING)
        if noun and any(word in ONE_THING and stem(after) == noun for word, after in pairwise(before)):
            yield _product(told, one, many, result)
