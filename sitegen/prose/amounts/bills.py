"""Bills of several kinds of lines: so many at a price each, so much cloth at a price, one thing at its price; and what
things cost together of which the price was told by name."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Collection, Iterator
from fractions import Fraction
from itertools import accumulate, islice

from sitegen.prose.amounts.amount import COUNT, LENGTH, MONEY, PERCENT
from sitegen.prose.amounts.claims import Claim, Paragraph, is_bundle
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import BOTH_NAMED, BUNDLE, MORE_COUNTED, NO_NOUN, THE_WHOLE, TOTAL_OPENS
from sitegen.quantities import vulgar

_FARTHEST = 90
_MOST_LINES = 12
_BREAKS = frozenset("-o/vwX|") | {PERCENT}
_TOTAL = re.compile(r"(?:c[:,i=]{0,2}(?:_{0,2}p)?[,:]?|c_?=|[=i]_?)$")
_OPENS = re.compile(r"[.(][_p:,i]{1,4}$")
_REACH = 8
_AHEAD = re.compile(r"(?P<n>[NL])(?:_{0,4}|_{1,2}L_{0,3}),?a?_?$")
_AHEAD_REACH = 10
_PLAIN = frozenset("_ai")
_SUPPLIED = re.compile(r",[_&]?(?P<n>N)_{0,3}[._=,]")
_RESULT = re.compile(r"_{0,2},?_?(?:[=i:]|s=?)[_=i]{0,2}|,")
_LAST_WORDS = 6
_NAMES = 3
_PRICED_REACH = 100
_TOGETHER = re.compile(r"(?:=_?|c[i=,:]?_?|i)$")


def bills(told: Paragraph) -> Iterator[Claim]:
    """Every price of a paragraph that is told as what its bill comes to."""
    named: list[tuple[str, int]] = []
    totals: set[int] = set()
    for at in told.numbers:
        if told.symbols[at] != MONEY or told.items[at].unit == "cents":
            if told.symbols[at] == MONEY:
                named.append((_name_before(told, at), at))
            continue
        while named and named[0][1] < at - _PRICED_REACH:
            named.pop(0)
        if _is_total(told, at):
            totals.add(at)
        together = _together(told, at, named)
        if together is not None:
            yield together
        elif at in totals and (claim := _bill(told, at, totals)):
            yield claim
        named.append((_name_before(told, at), at))


def _bill(told: Paragraph, at: int, totals: Collection[int]) -> Claim | None:
    """``Two sliders at £1.70 each, four rings at 90p each and a zip at £3.40. Grand total £10.40``.

    ``totals`` are the places up to this one that words call a sum.
    """
    lines = _lines(told, at, totals)
    if lines is None or not 2 <= len(lines) <= _MOST_LINES:
        return None
    first = lines[0][0]
    words = told.words_behind(lines[-1][0] + 1, at - lines[-1][0] - 2)
    behind = told.words_behind(at, _LAST_WORDS)
    if is_bundle(told, first, at) or not MORE_COUNTED.isdisjoint((*words, *behind)):
        return None
    values = [value for _, value, _ in lines]
    runs = [sum(values[start:], Fraction(0)) for start in range(len(values) - 1)]
    single = sum((told.items[place].value for place, _, _ in lines), Fraction(0))
    return Claim(at, (*runs, single), " + ".join(said for *_, said in lines), "sum", tuple(line[0] for line in lines))


def _is_total(told: Paragraph, at: int) -> bool:
    """Whether words call a price the sum of those before it."""
    before = told.symbols[max(0, at - _REACH) : at]
    tie = _TOTAL.search(before)
    opens = _OPENS.search(before)
    opening = told.words_behind(at - len(opens.group()), len(opens.group()) - 1) if opens else ()
    if not TOTAL_OPENS.isdisjoint(opening) or (tie and "c" in tie.group()):
        return True
    sentence = told.symbols.rfind(".", max(0, at - _REACH), at)
    words = told.words_behind(sentence, at - sentence - 1) if sentence >= 0 else ()
    return tie is not None and not THE_WHOLE.isdisjoint(words)


def _lines(told: Paragraph, at: int, totals: Collection[int]) -> list[tuple[int, Fraction, str]] | None:
    """The lines of a bill: the place of each price, what it comes to and how that is told; None where one cannot be
    read."""
    lines: list[tuple[int, Fraction, str]] = []
    start = bisect_left(told.numbers, at - _FARTHEST)
    prices = [each for each in told.numbers[start : bisect_left(told.numbers, at)] if told.symbols[each] in "MU"]
    prices = prices[-2 * _MOST_LINES :]
    if not prices or not _BREAKS.isdisjoint(told.symbols[prices[0] : at]):
        return None
    for index, place in enumerate(prices):
        behind = prices[index + 1] if index + 1 < len(prices) else at
        if told.symbols[place] == MONEY:
            if place in totals and told.items[place].value in _sums_of_last(lines):
                lines.clear()  # what the lines before it come to
            lines.append((place, told.items[place].value, told.said(told.items[place])))
            continue
        if told.symbols[behind] == MONEY and _RESULT.fullmatch(told.symbols[place + 1 : behind]) and behind != at:
            continue  # its product is told, and counts
        many = _many(told, place, at)
        if many is None:
            return None
        price = told.items[place]
        said = told.said(price) if many == 1 else f"{vulgar(many)} × {told.said(price)}"
        lines.append((place, many * price.value, said))
    return lines


def _sums_of_last(lines: list[tuple[int, Fraction, str]]) -> Iterator[Fraction]:
    """What the last two lines come to, the last three, and so on, as far as a bill is long."""
    return islice(accumulate(value for _, value, _ in reversed(lines[-_MOST_LINES:])), 1, None)


def _many(told: Paragraph, place: int, at: int) -> Fraction | None:
    """Of how many things or how much cloth a price is the price of one; None where nothing tells."""
    price = told.items[place]
    ahead = _AHEAD.search(told.symbols[max(0, place - _AHEAD_REACH) : place])
    if ahead is not None:
        number = told.items[place - len(ahead.group())]
        if number.symbol == COUNT and price.per in ("", "each", number.noun):
            return number.value
        if number.symbol == LENGTH and price.per in ("", number.unit):
            return number.value
        return None
    if price.per == "each" and (supplied := _SUPPLIED.match(told.symbols, place + 1, at)):
        return told.items[supplied.start("n")].value
    if price.per:
        return None
    clause = re.split(r"[,.&:]", told.symbols[max(0, place - _AHEAD_REACH) : place])[-1]
    return Fraction(1) if set(clause) <= _PLAIN else None


def _name_before(told: Paragraph, at: int) -> str:
    """Of what a price is the price, by the last word before it: ``jeans $28``, ``a hem is £9``."""
    words = list(told.words_behind(at - _NAMES - 1, _NAMES)) if at >= _NAMES else list(told.words_behind(-1, at))
    while words and (words[-1] in (":", ",", "is", "are", "cost", "costs", "was", "were") or words[-1] in "–-—"):
        words.pop()
    return stem(words[-1]) if words and words[-1].isalpha() and words[-1] not in NO_NOUN else ""


def _together(told: Paragraph, at: int, named: list[tuple[str, int]]) -> Claim | None:
    """``Jeans $28, skirt $30, tent $45. One pair of jeans plus one skirt comes to $58``."""
    tie = _TOGETHER.search(told.symbols[max(0, at - _REACH) : at])
    if tie is None or not named:
        return None
    start = max(at - _PRICED_REACH, told.symbols.rfind(".", max(0, at - _PRICED_REACH), at), named[-1][1])
    if not (BUNDLE | MORE_COUNTED - {"plus"}).isdisjoint(told.words_behind(start, at - start + _NAMES)):
        return None
    clause = told.symbols[start + 1 : at - len(tie.group())]
    if "&" not in clause or start == named[-1][1]:
        return None
    prices = {name: place for name, place in named if name}
    if len(prices) < 2:
        return None
    found: list[tuple[int, Fraction]] = []
    many = Fraction(1)
    pieces = 1
    for place in range(start + 1, at - len(tie.group())):
        symbol = told.symbols[place]
        if symbol in "&,":
            pieces += symbol == "&" or told.symbols[place + 1] != "&"
            many = Fraction(1)
        elif symbol == COUNT:
            many = told.items[place].value
        elif symbol in "MUTGLPX-o/":
            return None
        elif (name := stem(told.word(told.items[place]))) in prices and prices[name] not in dict(found):
            found.append((prices[name], many))
        elif symbol == "_" and told.word(told.items[place]) not in BOTH_NAMED:
            return None
    if len(found) < 2 or len(found) != pieces:
        return None
    value = sum((told.items[place].value * many for place, many in found), Fraction(0))
    single = sum((told.items[place].value for place, _ in found), Fraction(0))
    words = " + ".join(
        told.said(told.items[place]) if many == 1 else f"{vulgar(many)} × {told.said(told.items[place])}"
        for place, many in found
    )
    return Claim(at, (value, single), words, "sum", tuple(place for place, _ in found), firm=True)
