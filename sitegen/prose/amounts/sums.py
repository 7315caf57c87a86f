"""Sums and what is left: a list with its total, one price off another."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.amounts.amount import COUNT, MONEY, NUMBERS, PERCENT, RATE, TIME, WEIGHT
from sitegen.prose.amounts.claims import Claim, Paragraph, is_bundle, sort_of
from sitegen.prose.amounts.vocabulary import AHEAD, FOUND, GOES, SAVED

_LONGEST_GAP = 16
"""Items between two amounts of one list."""
_MOST_PARTS = 12
_FARTHEST = 120
_TOTAL_OPENS = re.compile(r"[.]_?c(?:[:i=]|_p)?$")
_TOTAL_REACH = 6
_BREAKS = frozenset("-o/vw")
_IN_ALL_BEHIND = re.compile(r"[_,]{0,2}(?P<all>c)(?![|:]?[MUTG])")
_IN_ITS_CLAUSE = re.compile(r"[^.]*(?:\.[s_]?[=c:_][^.]{0,3})?")
"""What stands between a list and its sum, which may be said in the next sentence: ``That's £25``."""
_IN_UNIT = {"hour": Fraction(60), "second": Fraction(1, 60), "cents": Fraction(1, 100)}
_JOINED = re.compile(r"[,&:]|^f|_i$")
"""``£2 and £3``; ``12 pounds for the hem 18 for the waist``; ``cutting is 15 minutes sewing is 40``."""
_FOR_TWO = re.compile(r"[MU]f_{1,4}&_?[MU]f_{1,4},$")
_FOR_TWO_REACH = 16
_LEFT_BEHIND = re.compile(r"[_i]{0,2}w")
_LESS = re.compile(r"(?P<whole>[MTG])_{0,3}-_{0,3}(?P<less>[MTG])[_,]{0,4}[=s:][_=i]{0,3}(?P<r>[MTG])")
_SAVED_REACH = 4
_KNOWN = 40
_FROM_NOTE = re.compile(r"(?P<r>M)wf?_{0,3}(?P<whole>M)")


def sums(told: Paragraph) -> Iterator[Claim]:
    """Every sum and difference of a paragraph that words name as one."""
    for at in told.numbers:
        added = told.symbols[at] in (MONEY, RATE, TIME, WEIGHT) and told.items[at].unit != "cents"
        if not added:
            continue
        if claim := _total(told, at) or _left(told, at):
            yield claim
        if claim := _grand_total(told, at):
            yield claim
    yield from _less(told)


def _total(told: Paragraph, at: int) -> Claim | None:
    tie = told.tie_before(at)
    strong = _is_total(told, at)
    back = told.words_behind(at, 1) == ("back",)
    rest = back or tie[:1] == "v" or _LEFT_BEHIND.match(told.behind(at, 3)) or _goes_to(told, at)
    if rest or not (tie or strong or _is_of_pair(told, at)):
        return None
    parts = _parts(told, at)
    if len(parts) < 2:
        return None
    listed = _is_list(told, parts, at)
    if not (strong or listed) or is_bundle(told, parts[0], at):
        return None
    values = [_value(told, parts, each) for each in parts]
    real = [told.items[each].value for each in parts if told.items[each].symbol != COUNT]
    likeliest = sum(values, Fraction(0))
    runs = [sum(values[start:], Fraction(0)) for start in range(1, len(values) - 1)]
    percents = (each.value for each in told.numbers_before(parts[0], _LONGEST_GAP) if each.symbol == PERCENT)
    off = [likeliest * (1 - percent) for percent in percents]
    words = " + ".join(told.said(told.items[each]) for each in parts)
    return Claim(at, (likeliest, sum(real, Fraction(0)), *runs, *off), words, "sum", tuple(parts), firm=listed)


def _grand_total(told: Paragraph, at: int) -> Claim | None:
    """The sum of all prices of a paragraph so far, of several sentences: ``Foam was $24. The zip was $5.40 and the
    cord $7.80. Grand total $37.20``."""
    if told.items[at].symbol != MONEY or not _TOTAL_OPENS.search(told.symbols[max(0, at - _TOTAL_REACH) : at]):
        return None
    parts = [each for each in range(max(0, at - _FARTHEST), at) if told.symbols[each] == MONEY]
    if not 2 < len(parts) <= _MOST_PARTS or any(_is_total(told, each) for each in parts):
        return None
    between = told.symbols[parts[0] : at]
    if not _BREAKS.isdisjoint(between) or PERCENT in between or is_bundle(told, parts[0], at):
        return None
    values = [told.items[each].value for each in parts]
    runs = [sum(values[start:], Fraction(0)) for start in range(len(values) - 1)]
    words = " + ".join(told.said(told.items[each]) for each in parts)
    return Claim(at, tuple(runs), words, "sum", tuple(parts))


def _value(told: Paragraph, parts: list[int], place: int) -> Fraction:
    """The value of a part; a bare number is in the unit of the part before it: ``two hours on Friday, three on``."""
    item = told.items[place]
    if item.symbol != COUNT:
        return item.value
    unit = next((told.items[each].unit for each in reversed(parts) if each < place and told.items[each].unit), "")
    return item.value * _IN_UNIT.get(unit, Fraction(1))


def _is_of_pair(told: Paragraph, at: int) -> bool:
    """Whether two prices for two things stand before the price of both: ``$14 for the hem and $22 for the waist,
    $36 a pair``."""
    return told.items[at].per == "pair" and _FOR_TWO.search(told.symbols[max(0, at - _FOR_TWO_REACH) : at]) is not None


def _parts(told: Paragraph, at: int) -> list[int]:
    """The amounts of the list before a total, those of its own sentence if these are several."""
    sort = sort_of(told.items[at])
    parts: list[int] = []
    gap = 0
    for place in range(at - 1, max(-1, at - _FARTHEST), -1):
        symbol, item = told.symbols[place], told.items[place]
        if symbol == "." and len(parts) > 1:
            break
        if symbol in _BREAKS or symbol in (PERCENT, "X") or gap > _LONGEST_GAP or len(parts) == _MOST_PARTS:
            break
        if symbol in "MTGLNU":
            gap = 0
        gap += 1
        if symbol == RATE:
            continue
        if symbol == COUNT and _is_bare(told, place, sort):
            parts.append(place)
        elif sort_of(item) == sort and symbol != COUNT:
            told_again = any(told.symbols[each] == COUNT and told.items[each].value == item.value for each in parts)
            if told_again or (parts and _is_total(told, place)):
                break
            parts.append(place)
    parts.reverse()
    while parts and told.symbols[parts[0]] == COUNT and not _is_known(told, parts[0]):
        parts.pop(0)
    return parts


def _is_total(told: Paragraph, place: int) -> bool:
    if told.behind(place, 1) == "&":
        return False
    if "c" in told.tie_before(place):
        return True
    behind = _IN_ALL_BEHIND.match(told.symbols, place + 1, place + 6)
    if behind is None:
        return False
    total = told.items[behind.start("all")]
    return not (told.opens(total) and told.said(total)[0].isupper())  # “Total”, a row of its own


def _is_bare(told: Paragraph, place: int, sort: tuple[str, str]) -> bool:
    """Whether a number without a unit goes on a list: ``11 dollars for the canvas, 6 for the lining``."""
    item = told.items[place]
    behind = told.behind(place, 1)
    return (
        sort[0] in (MONEY, TIME)
        and not item.noun
        and (
            behind in tuple("f,&s")
            or told.symbols[max(0, place - 2) : place] == "_i"
            or told.words_behind(place, 1) == ("on",)
            or _is_known(told, place)
        )
    )


def _is_known(told: Paragraph, place: int) -> bool:
    """Whether a bare number was told as a price shortly before."""
    item = told.items[place]
    before = told.numbers_before(place, _KNOWN)
    return not item.noun and any(each.symbol == MONEY and each.value == item.value for each in before)


def _is_list(told: Paragraph, parts: list[int], at: int) -> bool:
    """Whether commas and ``and`` join the parts, and nothing but the tie stands behind them."""
    if any(told.symbols[each] in NUMBERS for each in range(parts[-1] + 1, at)):
        return False
    if "." in told.symbols[parts[0] : parts[-1]] or not _IN_ITS_CLAUSE.fullmatch(told.symbols[parts[-1] + 1 : at]):
        return False
    if _is_of_pair(told, at):
        return True
    if {"s", "=", ":", "p"}.isdisjoint(told.tie_before(at)):
        return False
    joined = (told.symbols[one + 1 : other] for one, other in pairwise(parts))
    return all(_JOINED.search(each) is not None or told.symbols[parts[0]] == COUNT for each in joined)


def _left(told: Paragraph, at: int) -> Claim | None:
    """What is left of one amount when another one is taken off it."""
    tie = told.tie_before(at)
    back = told.words_behind(at, 1) == ("back",)
    left = back or tie[:1] == "v" or _LEFT_BEHIND.match(told.behind(at, 3)) or _goes_to(told, at)
    if not left and not _is_saved(told, at):
        return None
    if note := _FROM_NOTE.match(told.symbols[at : at + 8]):
        whole = at + note.start("whole")
        earlier = _earlier(told, at)[-1:]
        return _difference(told, at, whole, earlier[0]) if earlier else None
    before = _earlier(told, at)
    if len(before) > 2 and tie[:1] == "v" and (claim := _rest_of_all(told, at, before)):
        return claim
    earlier = before[-2:]
    if len(earlier) < 2:
        return None
    one, other = earlier
    greater, less = (one, other) if told.items[one].value > told.items[other].value else (other, one)
    return _difference(told, at, greater, less)


def _goes_to(told: Paragraph, at: int) -> bool:
    """Whether the rest of a price goes to somebody: ``so $389 goes to the library``."""
    return told.symbols[at - 1] == "s" and not GOES.isdisjoint(told.words_behind(at, 1))


def _rest_of_all(told: Paragraph, at: int, before: list[int]) -> Claim | None:
    """``Budget was $200. Fabric $85, foam $70. That leaves $45``: all that was spent is taken off."""
    whole, *spent = before[-_MOST_PARTS:]
    values = [told.items[each].value for each in spent]
    left = told.items[whole].value - sum(values, Fraction(0))
    if left <= 0 or "c" in told.symbols[whole:at] or not FOUND.isdisjoint(told.words_behind(whole, at - whole - 1)):
        return None
    words = " − ".join(told.said(told.items[each]) for each in (whole, *spent))
    last = abs(told.items[spent[-2]].value - values[-1])
    return Claim(at, (left, last), words, "difference", (whole, *spent))


def _is_saved(told: Paragraph, at: int) -> bool:
    """Whether a price tells by how much one is lower than another: ``so I saved $12``, ``so I'm $12 in front``."""
    behind = told.words_behind(at, 2)
    ahead = any(behind[: len(each)] == each for each in AHEAD)
    saved = at > 0 and told.word(told.items[at - 1]) in SAVED
    return (ahead or saved) and "s" in told.symbols[max(0, at - _SAVED_REACH) : at]


def _earlier(told: Paragraph, at: int) -> list[int]:
    sort = sort_of(told.items[at])
    window = range(max(0, at - 60), at)
    return [each for each in window if told.symbols[each] == sort[0] and sort_of(told.items[each]) == sort]


def _difference(told: Paragraph, at: int, whole: int, less: int, *, firm: bool = False) -> Claim:
    value = told.items[whole].value - told.items[less].value
    words = f"{told.said(told.items[whole])} − {told.said(told.items[less])}"
    return Claim(at, (value,), words, "difference", (whole, less), firm=firm)


def _less(told: Paragraph) -> Iterator[Claim]:
    for found in _LESS.finditer(told.symbols):
        whole, less, result = found.start("whole"), found.start("less"), found.start("r")
        if len({sort_of(told.items[each]) for each in (whole, less, result)}) == 1:
            yield _difference(told, result, whole, less, firm=True)
