"""Counts that are told over a sentence or two and then summed, and what is still wanting of a number."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise, takewhile

from sitegen.prose.amounts.amount import COUNT
from sitegen.prose.amounts.claims import Claim, Paragraph
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import (
    ENOUGH,
    FROM,
    HAD,
    MORE_COUNTED,
    NO_NOUN,
    REST,
    SORTS,
    TO_GO,
    USED,
    WHEN,
    WHERE,
)
from sitegen.quantities import vulgar

_BACK = 50
_MOST_PARTS = 6
_BETWEEN = re.compile(r"(?:[_iADpwsf]|\*(?=_)){0,9}(?:[,;.]|,?&)[_iADpf]{0,4},?|f_{1,3}")
"""What stands between two counts that are told over: their things and places, then a comma or ``and``."""
_ALL_TOLD = re.compile(r"_{0,2}c")
_SO = re.compile(r"(?:s[=_]?|[=s]_?|[:])$")
_BEHIND_PARTS = re.compile(r"(?:[_iADwpf]|\*(?=_)){0,9}(?:\([^()NMTGLUXP]{0,12}\))?[,.:]?[_i]{0,3}[s=c:,_]{0,4}")
_WANTED = re.compile(
    r"(?P<whole>N)[^N.MTGLUXP]{0,6}(?:[.,]|,?&)?[^NMTGLUXP.]{0,8}(?P<less>N)[^N.MTGLUXP]{0,8}"
    r"(?P<to>[,.]?_?(?:s_{0,2}|v_{0,2})|[,.]_{1,3}|&_{1,2})(?P<r>N)"
)
_EACH_OF_SOME = re.compile(
    r"(?P<whole>N)[^NMTGLUXP.]{0,7}\.[^NMTGLUXP.]{0,3}(?P<a>N)_{1,3}(?P<b>N)_{0,2}e_{0,2}(?:[_,&]{0,2}v|[_,&]{1,4})_?"
    r"(?P<r>N)"
)
_SHARE_OF = re.compile(r"N_[_N]")
_TIED = re.compile(r"(?:s_{0,2}|=_?)$")
_OF_THESE = (("of", "them"), ("of", "these"), ("of", "those"))
_THE = frozenset(("the", "my", "our", "your", "these", "those"))
_SHARE_REACH = 24
_NEAR = 3
_CLAUSE = 7


def told_over(told: Paragraph) -> Iterator[Claim]:
    """Every count of a paragraph that is told as what others come to, or as what is still wanting."""
    for at in told.numbers:
        if told.symbols[at] == COUNT and (claim := _sum(told, at)):
            yield claim
    yield from _still_wanting(told)
    yield from _for_spares(told)
    yield from _shares(told)


def _sum(told: Paragraph, at: int) -> Claim | None:
    """``Seven on Monday, nine on Tuesday and six on Wednesday, which puts us at 22``."""
    in_all = _is_all_told(told, at)
    if not in_all and _SO.search(told.symbols[max(0, at - _NEAR) : at]) is None:
        return None
    parts = _parts(told, at)
    if len(parts) < 2 or not (in_all or _are_alike(told, parts, at)):
        return None
    behind = tuple(takewhile(lambda word: word != ".", told.words_behind(at, _CLAUSE)))
    start = told.words_behind(parts[0] - 1, at - parts[0])
    if any(after == "one" and word in (",", "and", "&") for word, after in pairwise(start)):
        return None  # a part that is read as a pronoun
    if not ENOUGH.isdisjoint(behind) or not (MORE_COUNTED | REST).isdisjoint(start):
        return None
    if any(
        told.words_behind(each - 3, 2)[:1] == ("of",) or told.words_behind(each - 2, 1) == ("of",) for each in parts
    ):
        return None  # “half of the 20 red ones and the 6 blue ones”
    values = [told.items[each].value for each in parts]
    if any(value.denominator != 1 for value in (*values, told.items[at].value)):
        return None
    runs = [sum(values[start:], Fraction(0)) for start in range(len(values) - 1)]
    words = " + ".join(vulgar(value) for value in values)
    return Claim(at, tuple(runs), words, "sum", tuple(parts))


def _is_all_told(told: Paragraph, at: int) -> bool:
    """Whether a count is called the number of all: ``14 all told``, ``in all 14``."""
    return "c" in told.tie_before(at) or _ALL_TOLD.match(told.symbols, at + 1) is not None


def _parts(told: Paragraph, at: int) -> list[int]:
    """The counts told over before a result: all of its own sentence, or of the sentence before where it has none."""
    index = bisect_left(told.numbers, at)
    parts: list[int] = []
    for place in reversed(told.numbers[max(0, index - _MOST_PARTS - 1) : index]):
        if place < at - _BACK or told.symbols[place] != COUNT:
            break
        behind = parts[0] if parts else at
        joined = _BETWEEN if parts else _BEHIND_PARTS
        between = told.symbols[place + 1 : behind]
        if joined.fullmatch(between) is None or (parts and "." in between):
            break
        parts.insert(0, place)
    return parts if len(parts) <= _MOST_PARTS else []


def _are_alike(told: Paragraph, parts: list[int], at: int) -> bool:
    """Whether the counts behind the first one count what that counts: ``nine of you on Thursday and eleven on
    Saturday``."""
    first, result = told.items[parts[0]].noun, told.items[at].noun
    of_some = told.words_behind(parts[0], 1) == ("of",)
    placed = bool(WHERE.intersection(told.words_behind(at, 1)))
    if not result and not placed and not told.ends_clause(at):
        return False

    def is_one_more(place: int) -> bool:
        noun = told.items[place].noun
        name = told.words_behind(place, 1)[:1]
        bare = not noun and bool(name) and name[0] in WHERE | FROM | SORTS | WHEN
        return bare or noun in WHERE | SORTS | WHEN or (bool(noun) and noun in (first, result))

    sorts = not first.endswith("s") and all(_is_sort_of(told, place, at) for place in parts)
    return sorts or ((of_some or bool(first) or is_one_more(parts[0])) and all(map(is_one_more, parts[1:])))


def _is_sort_of(told: Paragraph, place: int, at: int) -> bool:
    """Whether a count tells of which sort some things are, as ``four small aprons`` or ``nine large``."""
    names = told.names(place)
    result = told.items[at].noun
    behind = told.words_behind(place, 1)
    return (
        bool(names) and bool(result) and (result in names or not behind[0].endswith("s")) and behind[0] not in NO_NOUN
    )


def _difference(told: Paragraph, whole: int, less: int, result: int) -> Claim:
    one, other = told.items[whole].value, told.items[less].value
    return Claim(result, (one - other,), f"{vulgar(one)} − {vulgar(other)}", "difference", (whole, less))


def _still_wanting(told: Paragraph) -> Iterator[Claim]:
    """``I need 120 squares, I had 84 cut by bedtime, so only 36 to go``."""
    for found in _WANTED.finditer(told.symbols):
        whole, less, result = (found.start(name) for name in ("whole", "less", "r"))
        between = told.words_behind(whole, less - whole - 1)
        had = not HAD.isdisjoint(between[-_NEAR - 1 :])
        more = not TO_GO.isdisjoint(told.words_behind(result, 2)) or "v" in found["to"]
        thing = told.items[whole].noun or told.items[less].noun
        told_behind = told.words_behind(less, 2)
        done = told_behind[:1] == ("are",) and (told_behind[-1].endswith("ed") or not HAD.isdisjoint(told_behind))
        if "still" in told.words_behind(less, result - less + _NEAR):
            more = True
            had = had or not USED.isdisjoint(between[-_NEAR - 1 :])
        if (had or done) and more and thing and told.items[whole].value > told.items[less].value:
            yield _difference(told, whole, less, result)


def _for_spares(told: Paragraph) -> Iterator[Claim]:
    """``36 buttons bought. Five waistcoats with six on each leaves 6 for spares``."""
    for found in _EACH_OF_SOME.finditer(told.symbols):
        whole, one, other, result = (found.start(name) for name in ("whole", "a", "b", "r"))
        leaves = told.words_behind(other, result - other - 1)
        things, used = told.items[whole].value, told.items[one].value * told.items[other].value
        if told.items[whole].noun and {"leave", "leaves", "leaving"} & set(leaves) and things > used:
            words = f"{vulgar(things)} − {vulgar(told.items[one].value)} × {vulgar(told.items[other].value)}"
            yield Claim(result, (things - used,), words, "rest", (whole, one, other))


def _shares(told: Paragraph) -> Iterator[Claim]:
    """``I wanted one third of the fabrics to be solids. I pulled 27 fabrics, so 9 of those are solids``."""
    for found in _SHARE_OF.finditer(told.symbols):
        share = told.items[found.start()]
        of, the, thing = (*told.words_behind(found.start(), 3), "", "", "")[:3]
        if share.value >= 1 or of != "of":
            continue
        near = told.numbers_between(found.start() + 1, found.start() + _SHARE_REACH)
        if len(near) < 2 or told.symbols[near[0]] != COUNT or told.symbols[near[1]] != COUNT:
            continue
        whole, result = near[0], near[1]
        value = told.items[whole].value * share.value
        tied = _TIED.search(told.symbols[max(0, result - _NEAR) : result]) is not None
        tied = tied or told.words_behind(result, 2) in _OF_THESE
        of_it = told.items[whole].noun == stem(thing) or (whole <= found.start() + 3 and told.items[whole].noun)
        if of_it and tied and the in _THE | {told.said(told.items[whole])} and value.denominator == 1:
            words = f"{told.said(share)} of {vulgar(told.items[whole].value)}"
            yield Claim(result, (value, told.items[whole].value - value), words, "rest", (found.start(), whole))
