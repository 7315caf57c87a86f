"""Amounts taken whole: what the last numbers before a result make, all of them together, by the words around them.

No set phrase ties them to it, so that what is claimed is never sure: ``35 minutes each, and a dozen is 8 hours`` may be
told of another dozen.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import product

from sitegen.prose.amounts.amount import COUNT, LENGTH, MONEY, OPAQUE, PERCENT, RATE, TIME, WEIGHT
from sitegen.prose.amounts.claims import Claim, Paragraph, is_bundle, sort_of
from sitegen.prose.amounts.vocabulary import MASSES, MINUTES_IN, MORE_COUNTED, PERCENT_ADDED, PERCENT_TAKEN
from sitegen.quantities import Unit

_REACH = 50
"""Items before a result within which its numbers stand."""
_MOST = 5
_TIES = frozenset("=scv:")
_IS_OR_PAID = re.compile(r"^,?_?i_?$|p_?$")
_SUMS = frozenset("=sc:p")
_LEAVES, _MINUS = frozenset("vw"), "-"
_BEHIND = 4
_RESULTS = frozenset((MONEY, TIME, COUNT))
_QUANTITIES = frozenset((COUNT, LENGTH, TIME, WEIGHT))

_Way = tuple[Fraction, str]


def runs(told: Paragraph, settled: Mapping[int, Collection[int]]) -> Iterator[Claim]:
    """What the numbers right before each result make, taken whole.

    ``settled`` are the places of results that are right, with those of their parts: neither is added to the other.
    """
    for index, at in enumerate(told.numbers):
        if told.symbols[at] not in _RESULTS or not _is_result(told, index, at):
            continue
        found = list(_of_result(told, index, at, settled))
        if found and not _may_be_right(told, index, at):
            yield from found


def _of_result(told: Paragraph, index: int, at: int, settled: Mapping[int, Collection[int]]) -> Iterator[Claim]:
    """What the two, three or more numbers before a result make."""
    for size in range(2, _MOST + 1):
        places = told.numbers[max(0, index - size) : index]
        if len(places) < size or places[0] < at - _REACH or told.symbols[places[0]] == OPAQUE:
            break
        settled_here = any(not set(settled.get(place, ())).isdisjoint(places) for place in places)
        if settled_here or _are_apart(told, index, places, at):
            continue
        yield from (
            Claim(at, (value,), words, "run", tuple(places), sure=False) for value, words in _ways(told, places, at)
        )


def _is_result(told: Paragraph, index: int, at: int) -> bool:
    """Whether words call an amount a result, and name nothing else that is in it: ``with the tape that's £64.50``."""
    before = told.numbers[index - 1] + 1 if index else 0
    gap = told.symbols[before:at]
    in_all = "c" in told.behind(at, _BEHIND).partition(".")[0]
    if "&" in gap or not (in_all or not _TIES.isdisjoint(gap) or _IS_OR_PAID.search(gap)):
        return False
    words = told.words_behind(before - 1, at - before)
    return MORE_COUNTED.isdisjoint(words) and not is_bundle(told, before - 1, at)


def _are_apart(told: Paragraph, index: int, places: Sequence[int], at: int) -> bool:
    """Whether something parts the numbers from the result: rows of a table, a minus, another price for one."""
    rows = any(told.opens(told.items[place + 1]) for place in places)
    earlier = told.numbers[max(0, index - _MOST - 1) : index - len(places)]
    rates = any(told.symbols[place] == RATE for place in earlier)
    return rows or rates or _MINUS in told.symbols[places[0] : at]


def _may_be_right(told: Paragraph, index: int, at: int) -> bool:
    """Whether some of the last numbers make the result, each added, taken off or left out, or one so often."""
    item, sort = told.items[at], sort_of(told.items[at])
    near = [told.items[place] for place in told.numbers[max(0, index - _MOST - 1) : index]]
    values = [each.value for each in near if sort_of(each) == sort]
    counts = [each.value for each in near if each.symbol == COUNT]
    made = {Fraction(0)}
    for value in values:
        made |= {one + sign * value for one in made for sign in (1, -1)}
    several = (
        abs(count * one + sign * other)
        for count in counts
        for one, other in product(values, repeat=2)
        for sign in (1, -1)
    )
    return item.value in made or item.value in several


def _ways(told: Paragraph, places: Sequence[int], at: int) -> Iterator[_Way]:
    """All that the numbers make together in the sort of the result."""
    sort = sort_of(told.items[at])
    alike = [place for place in places if sort_of(told.items[place]) == sort and told.symbols[place] != RATE]
    around = told.symbols[places[0] : at] + told.behind(at, _BEHIND)
    if len(alike) == len(places):
        yield from _added(told, places, at, around)
    elif sort[0] == MONEY:
        yield from _priced(told, places, around)
    elif len(places) == 2:
        yield from _times(told, places, at)


def _added(told: Paragraph, places: Sequence[int], at: int, around: str) -> Iterator[_Way]:
    values = [told.items[place].value for place in places]
    said = [told.said(told.items[place]) for place in places]
    counts = told.symbols[places[0]] == COUNT
    if counts and any(told.items[place].value.denominator > 1 for place in places):
        return
    if counts and "one" in told.words_behind(places[0], at - places[0]):
        return  # “two from the front, one from the cuff”
    if not _SUMS.isdisjoint(around) and _LEAVES.isdisjoint(around):
        yield sum(values, Fraction(0)), " + ".join(said)
    if not _LEAVES.isdisjoint(around):
        yield values[0] - sum(values[1:], Fraction(0)), " − ".join(said)


def _priced(told: Paragraph, places: Sequence[int], around: str) -> Iterator[_Way]:
    """Prices and quantities, taken by pairs; a price that stands alone is added; a percentage goes over all."""
    percents = [place for place in places if told.symbols[place] == PERCENT]
    if len(percents) > 1:
        return
    left = [place for place in places if place not in percents]
    lines = _lines(told, left)
    if lines is None or (len(lines) == len(left) and not percents):
        return
    total = sum((value for value, _ in lines), Fraction(0))
    words = " + ".join(said for _, said in lines)
    if not percents:
        yield total, words
        return
    share, said = told.items[percents[0]].value, told.said(told.items[percents[0]])
    near = {*told.words_behind(max(0, percents[0] - 6), 12)}
    if "o" in around or not PERCENT_TAKEN.isdisjoint(near):
        yield total * (1 - share), f"{words} less {said}"
    elif not PERCENT_ADDED.isdisjoint(near):
        yield total * (1 + share), f"{words} plus {said}"
    else:
        yield total * share, f"{said} of {words}"


def _lines(told: Paragraph, places: Sequence[int]) -> list[_Way] | None:
    """The lines of a bill: a quantity at a price, in either order, or a price alone; None where one is left over."""
    lines: list[_Way] = []
    index = 0
    while index < len(places):
        one = places[index]
        other = places[index + 1] if index + 1 < len(places) else None
        pair = _pair(told, one, other) if other is not None else None
        if pair is not None:
            lines.append(pair)
            index += 2
        elif told.symbols[one] == MONEY:
            lines.append((told.items[one].value, told.said(told.items[one])))
            index += 1
        else:
            return None
    return lines


def _pair(told: Paragraph, one: int, other: int) -> _Way | None:
    """So much of something at a price."""
    price, many = (one, other) if told.symbols[one] in (MONEY, RATE) else (other, one)
    if told.symbols[price] not in (MONEY, RATE) or told.symbols[many] not in _QUANTITIES:
        return None
    factor = _factor(told, price, many)
    if factor is None:
        return None
    return factor * told.items[price].value, f"{told.said(told.items[many])} at {told.said(told.items[price])}"


def _factor(told: Paragraph, price: int, many: int) -> Fraction | None:
    """How often a price is paid for a quantity; None where it is not the price of such things."""
    per, item = told.items[price].per, told.items[many]
    if item.symbol == COUNT:
        return item.value if per not in Unit.__members__ and per not in MASSES and per not in MINUTES_IN else None
    if item.symbol == LENGTH and per in Unit.__members__:
        return item.value * Unit[item.unit].mm / Unit[per].mm
    if item.symbol == TIME and per in MINUTES_IN:
        return item.value / MINUTES_IN[per]
    if item.symbol == WEIGHT and MASSES.get(per) == item.unit:
        return item.value
    return None


def _times(told: Paragraph, places: Sequence[int], at: int) -> Iterator[_Way]:
    """So many times an amount."""
    one, other = (told.items[place] for place in places)
    result = told.items[at]
    count, much = (one, other) if one.symbol == COUNT else (other, one)
    if count.symbol == COUNT and much.symbol == result.symbol and (much.symbol == TIME or result.symbol == COUNT):
        yield count.value * much.value, f"{told.said(one)} × {told.said(other)}"
