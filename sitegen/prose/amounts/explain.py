"""Whether an amount is right after all, and whether a wrong one looks like a slip."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable
from fractions import Fraction
from itertools import combinations, takewhile

from sitegen.prose.amounts.amount import COUNT, LENGTH, MONEY, PERCENT, RATE, TIME, Item
from sitegen.prose.amounts.claims import Claim, Paragraph, sort_of
from sitegen.prose.amounts.vocabulary import MORE_BEHIND, SPARES
from sitegen.prose.arithmetic.likely import is_like
from sitegen.quantities import Unit, decimal

_BEFORE, _BEHIND = 12, 4
"""Numbers before and behind a result among which another sum for it is looked for."""
_CENT = Fraction(1, 100)
_HEDGED = Fraction(1, 8)
_QUARTER_HOUR = 15
_NEARLY_AN_HOUR = 45
_HOUR = 60
_FEW = 2
_MORE = 3
_CLAUSE = 6
_MADE = ("grid", "count", "product")


def agrees(item: Item, value: Fraction, *, rounded: bool = True) -> bool:
    """Whether an amount is a value, as people round: to the cent, to the whole, or loosely where words say so."""
    if not rounded:
        return item.value == value
    apart = abs(item.value - value)
    if item.hedged and apart <= value * _HEDGED:
        return True
    if item.symbol in (MONEY, RATE):
        return apart < (1 if item.value.denominator == 1 and value.denominator != 1 and not item.decimals else _CENT)
    if item.symbol == TIME:
        return apart == 0 or (
            item.unit == "hour" and not item.exact and value >= _NEARLY_AN_HOUR and apart <= _QUARTER_HOUR
        )
    return apart == 0


def is_explained(told: Paragraph, claim: Claim) -> bool:
    """Whether some other simple sum of the numbers around makes the amount."""
    item = told.items[claim.at]
    at = bisect_left(told.numbers, claim.at)
    places = [*told.numbers[max(0, at - _BEFORE) : at], *told.numbers[at + 1 : at + 1 + _BEHIND]]
    around = [told.items[each] for each in places]
    sort = sort_of(item)
    alike = [each.value for each in around if sort_of(each) == sort]
    plain = [each.value for each in around if sort_of(each) == sort and each.symbol != RATE]
    others = (told.items[each] for each in places if each not in claim.parts)
    if any(each.value == item.value and sort_of(each) == sort for each in others):
        return True
    factors = {each.value for each in around if each.symbol in (COUNT, LENGTH)} - {Fraction(0)}
    percents = [each.value for each in around if each.symbol == PERCENT]
    return any(agrees(item, value, rounded=item.hedged) for value in _simple(plain, alike, factors, percents))


def is_rest(told: Paragraph, claim: Claim) -> bool:
    """Whether what is told as a sum is what its later parts leave of the first, however firmly words join them."""
    if claim.kind != "sum" or len(claim.parts) < _FEW:
        return False
    first, *later = (told.items[each].value for each in claim.parts)
    return told.items[claim.at].value == abs(first - sum(later, Fraction(0)))


def _simple(
    plain: list[Fraction], alike: list[Fraction], factors: set[Fraction], percents: list[Fraction]
) -> Iterable[Fraction]:
    for one, other in combinations(plain, 2):
        yield one + other
        yield abs(one - other)
    for start in range(len(plain)):
        total = rest = plain[start]
        for each in plain[start + 1 :]:
            total += each
            rest -= each
            yield total
            yield rest
    for one in alike:
        for factor in factors:
            yield one * factor
            yield one / factor
        for percent in percents:
            yield one * percent
            yield one * (1 - percent)
            yield one * (1 + percent)


def _same_figures(said: Fraction, right: Fraction) -> bool:
    """Whether two numbers have the same figures in another order: 3.60 and 6.30."""
    first, second = (decimal(value, 2) for value in (said, right))
    return len(first) == len(second) > 1 and said != right and sorted(first) == sorted(second)


def _takes_more(told: Paragraph, at: int) -> bool:
    """Whether more goes into a result than was told: ``$30 with the bus fare``."""
    behind = told.words_behind(at, _MORE)
    clause = takewhile(lambda word: word not in (",", ".", ";", ")", "before"), behind)
    return not MORE_BEHIND.isdisjoint(clause)


def is_slip(item: Item, right: Fraction, claim: Claim, told: Paragraph) -> bool:
    """Whether a wrong amount lies near the right one, differs by one figure, or is another multiple by one."""
    if claim.kind in _MADE and item.symbol == COUNT and not SPARES.isdisjoint(told.words_behind(claim.at, _CLAUSE)):
        return False
    if item.hedged or right <= 0 or (claim.kind != "rest" and _takes_more(told, claim.at)):
        return False
    scale = _HOUR if item.symbol == TIME and item.unit == "hour" else 1
    if is_like(item.value / scale, right / scale, Unit.MM):
        return True
    if _same_figures(item.value, right):
        return True
    if claim.kind in ("rows", "rest") and abs(item.value - right) <= _FEW:
        return True
    if claim.kind not in ("product", "grid", "count"):
        return False
    if item.symbol == TIME and item.unit == "hour" and abs(item.value - right) == _HOUR:
        return True
    lengths = claim.kind == "count"
    steps = (told.items[each].value for each in claim.parts if lengths or told.items[each].symbol != LENGTH)
    return any(abs(item.value - right) == step for step in steps)
