"""Percentages that are results: ``from 4 in to 5 in, so 25% stretch``, ``16 in, which is 80% of the opening``.

Two lengths make several percentages: what is gained or lost of the one or of the other, and what the one is of the
other. A percentage that is none of these is wrong, where words tie it to just two lengths.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_TIES = frozenset("=kq:vb(")
_GAINS = frozenset("ATh<>d")
"""Words that tell of a gain or a loss, which a percentage beside them measures."""
_SENTENCES = 2
_REACH = 30
_NEAR = Fraction(1, 100)
_HEDGED = Fraction(3, 100)
_MOST = Fraction(2)


@dataclass(frozen=True, slots=True)
class WrongPercent:
    """A percentage that its two lengths do not make: its item, what it should be as a share, and the sum in words.

    ``parts`` are the places of the lengths.
    """

    index: int
    share: Fraction
    words: str
    parts: tuple[int, ...]


def right_percents(items: Sequence[Item], symbols: str) -> Iterator[tuple[int, int, int]]:
    """The places of the percentages that are what their lengths make, each with its two lengths."""
    for at, symbol in enumerate(symbols):
        if symbol != "P" or not 0 < items[at].value <= _MOST:
            continue
        if _goes_into_a_length(symbols, at) and "h" not in symbols[at + 1 : at + 4]:
            continue
        start = _scope_start(symbols, at)
        lengths = [other for other in range(start, at) if symbols[other] == "L" and items[other].value > 0][-2:]
        told = _tied(symbols, at) or bool(_GAINS & set(symbols[max(0, at - 4) : at + 3]))
        if len(lengths) < 2 or not told:
            continue
        near = _HEDGED if items[at].hedged else _NEAR
        from_to = re.search(r"f_?L_?t_?L", symbols[start:at]) is not None
        first, second = lengths
        shares = (_of_the_first if from_to else _shares)(items[first].value, items[second].value)
        if any(abs(items[at].value - each) <= near for each in shares):
            yield at, first, second


def wrong_percents(items: Sequence[Item], symbols: str, said: Said) -> Iterator[WrongPercent]:
    """Every percentage of a text that its lengths contradict, in order."""
    for at, symbol in enumerate(symbols):
        if symbol != "P" or items[at].value > _MOST:
            continue
        start = _own_start(items, symbols, at)
        places = tuple(other for other in range(start, at) if symbols[other] == "L")
        distinct = list({items[other].value: items[other] for other in places}.values())
        stretches = bool(set("hd") & set(symbols[start:at])) or "h" in symbols[at + 1 : at + 4]
        of_it = _is_share_of_something(symbols, at)
        named = re.match(r"_?h", symbols[at + 1 : at + 3]) or re.search(r"[hd]_?o?_?$", symbols[max(0, at - 4) : at])
        tied = _tied(symbols, at) or (named and not set("hd").isdisjoint(symbols[start:at]))
        if len(distinct) != 2 or not (stretches or of_it) or not tied:
            continue
        if symbols[start:at].count("P") or _goes_into_a_length(symbols, at):
            continue
        before, after = distinct
        near = _HEDGED if items[at].hedged else _NEAR
        from_to = stretches and not of_it and re.search(r"f_?L_?t_?L", symbols[start:at]) is not None
        shares = _of_the_first(before.value, after.value) if from_to else _shares(before.value, after.value)
        if any(abs(items[at].value - share) <= near for share in shares):
            continue
        if stretches and not of_it:
            more, less = (after, before) if after.value > before.value else (before, after)
            share = (more.value - less.value) / before.value
            words = f"({said(more)} − {said(less)}) ÷ {said(before)}"
        else:
            small, great = sorted(distinct, key=lambda item: item.value)
            share, words = small.value / great.value, f"{said(small)} ÷ {said(great)}"
        if share <= _MOST:
            yield WrongPercent(at, share, words, places)


def _of_the_first(first: Fraction, second: Fraction) -> Iterator[Fraction]:
    """What is gained or lost ``from 4 in to 5 in`` is a share of the 4 in."""
    yield abs(second - first) / first
    yield second / first


def _shares(one: Fraction, other: Fraction) -> Iterator[Fraction]:
    for first, second in permutations((one, other)):
        yield first / second
        yield abs(second - first) / first


def _scope_start(symbols: str, at: int) -> int:
    """Where the sentence before the one of this item begins, in the same paragraph."""
    before = symbols[max(0, at - _REACH) : at].rpartition("\n")[2]
    return at - len(".".join(before.split(".")[-_SENTENCES:]))


def _own_start(items: Sequence[Item], symbols: str, at: int) -> int:
    """Where the sentence of a percentage begins if just two lengths stand in it, else where the one before it does."""
    own = symbols.rfind(".", 0, at) + 1
    start = _scope_start(symbols, at)
    lengths = {items[other].value for other in range(own, at) if symbols[other] == "L"}
    return max(own, start) if len(lengths) == 2 else start


def _tied(symbols: str, at: int) -> bool:
    start = at
    while start > 0 and symbols[start - 1] not in "LRN~.\n" and at - start < 7:
        start -= 1
    return bool(_TIES & set(symbols[start:at]))


def _is_share_of_something(symbols: str, at: int) -> bool:
    """Whether it is said to be a share of something without a number: ``which is 80% of the opening``."""
    behind = symbols[at + 1 : at + 6]
    return (
        behind.startswith("o")
        and "L" not in behind
        and re.search(r"[k=](?:t_)?,?_?$", symbols[max(0, at - 6) : at]) is not None
    )


def _goes_into_a_length(symbols: str, at: int) -> bool:
    """Whether a length made with this percentage follows in the sentence: then it is a part and no result."""
    return "L" in symbols[at + 1 : at + 14].partition(".")[0]
