"""Money that runs up over several sentences, and what more than two amounts leave of one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import accumulate

from sitegen.prose.amounts.amount import COUNT, MONEY, PERCENT, RATE, TIME
from sitegen.prose.amounts.claims import Claim, Paragraph, is_bundle, sort_of
from sitegen.prose.amounts.vocabulary import ADDED, MINUTES_IN, THE_WHOLE

_SO_MUCH = re.compile(r"(?:[=i]|p|sc)[_p=i:]{0,4}$")
"""What stands right before a total: ``the whole thing came to``, ``and you will have spent``."""
_SO_MUCH_REACH = 8
_WORDS_OF_TOTAL = 6
_FARTHEST = 120
_MOST_PARTS = 12
_FEWEST_PARTS = 3
_BREAKS = frozenset("-o/vwX") | {PERCENT}
_SENTENCE = 40
_TAKEN = re.compile(
    r"(?P<whole>T)[^.NMTGLU]{0,8}\.?[^.NMTGLU]{0,6}(?P<a>T)[^.NMTGLU]{0,8}&[^.NMTGLU]{0,4}(?P<b>[TN])[^NMTGLU.:]{0,10}"
    r"(?:,_v|:[^.NMTGLU]{0,4}i|,s_{0,2}v)_{0,2}(?P<r>T)"
)
_TAKES_OFF = frozenset(("take", "takes", "taking", "deduct", "subtract", "lose", "loses", "lost"))


def running_totals(told: Paragraph) -> Iterator[Claim]:
    """Every total of a paragraph that takes in what its earlier sentences told."""
    for at in told.numbers:
        if told.symbols[at] == MONEY and (claim := _added_up(told, at) or _of_all(told, at)):
            yield claim
    yield from _taken(told)


def _sentence_start(told: Paragraph, at: int) -> int:
    """Where the sentence of an amount begins."""
    start = max(0, at - _SENTENCE)
    return max(start, told.symbols.rfind(".", start, at) + 1)


def _added_up(told: Paragraph, at: int) -> Claim | None:
    """``Canvas came to $14.00. Add a five-dollar zip and $3 of cord and you're at $22``."""
    start = _sentence_start(told, at)
    parts = [each for each in range(start, at) if _is_price(told, each)]
    opening = told.words_behind(start - 1, 1)
    if not parts or opening not in ADDED or not _tie(told, at) or not _BREAKS.isdisjoint(told.symbols[start:at]):
        return None
    before = [each for each in range(max(0, start - _FARTHEST), start) if told.symbols[each] == MONEY]
    if not before or is_bundle(told, start, at):
        return None
    added = sum((told.items[each].value for each in parts), Fraction(0))
    bases = accumulate(told.items[each].value for each in reversed(before[-_MOST_PARTS:]))
    words = " + ".join(told.said(told.items[each]) for each in (before[-1], *parts))
    return Claim(at, tuple(base + added for base in bases), words, "sum", (before[-1], *parts))


def _is_price(told: Paragraph, at: int) -> bool:
    """Whether something is told to cost so much, as ``£3`` or ``at £3``, which is no price for a yard."""
    return told.symbols[at] == MONEY or (told.symbols[at] == RATE and not told.items[at].per)


def _of_all(told: Paragraph, at: int) -> Claim | None:
    """``The wire was $3.00 and the swivel $2.25, so the whole thing came to $18.75``: all that was told so far."""
    if not _tie(told, at) or not _is_whole(told, at):
        return None
    parts = [each for each in range(max(0, at - _FARTHEST), at) if told.symbols[each] == MONEY]
    if not _FEWEST_PARTS <= len(parts) <= _MOST_PARTS or is_bundle(told, parts[0], at):
        return None
    if not _BREAKS.isdisjoint(told.symbols[parts[0] : at]) or "." not in told.symbols[parts[0] : parts[-1]]:
        return None
    runs = accumulate(told.items[each].value for each in reversed(parts))
    words = " + ".join(told.said(told.items[each]) for each in parts)
    return Claim(at, tuple(reversed(list(runs))), words, "sum", tuple(parts))


def _tie(told: Paragraph, at: int) -> bool:
    return _SO_MUCH.search(told.symbols[max(0, at - _SO_MUCH_REACH) : at]) is not None


def _is_whole(told: Paragraph, at: int) -> bool:
    """Whether the words before a price call it the price of all: ``the whole lot came to``, ``so all in I spent``."""
    many = min(_WORDS_OF_TOTAL, at - _sentence_start(told, at))
    symbols = told.symbols[at - many : at]
    rest = symbols.rfind(",")
    near = told.words_behind(at - many + rest, many - rest - 1)
    return not THE_WHOLE.isdisjoint(near) or "sc" in symbols[rest + 1 :]


def _taken(told: Paragraph) -> Iterator[Claim]:
    """``You have 3 hours. Cutting takes 40 minutes and sewing 110, which leaves 30 minutes``."""
    for found in _TAKEN.finditer(told.symbols):
        whole, one, other, result = (found.start(name) for name in ("whole", "a", "b", "r"))
        if _TAKES_OFF.isdisjoint(told.words_behind(whole, one - whole - 1)):
            continue
        unit = told.items[one].unit if told.symbols[other] == COUNT else ""
        value = told.items[other].value * MINUTES_IN.get(unit, Fraction(1))
        left = told.items[whole].value - told.items[one].value - value
        if left > 0 and sort_of(told.items[whole]) == (TIME, ""):
            words = " − ".join(told.said(told.items[each]) for each in (whole, one, other))
            yield Claim(result, (left,), words, "difference", (whole, one, other), firm=True)
