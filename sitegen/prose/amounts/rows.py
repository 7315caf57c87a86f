"""Costs in rows, one a line: what a row comes to, what all rows come to, and the share of one head in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.prose.amounts.amount import COUNT, MONEY, NUMBERS, RATE, Item, with_cents
from sitegen.prose.amounts.explain import agrees
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.vocabulary import BUNDLE, COMPLETE_ROW, MORE_COUNTED, PEOPLE, TAKEN_OFF, THE_WHOLE, TOTAL_ROW
from sitegen.prose.arithmetic.likely import is_like
from sitegen.quantities import Unit, decimal

_LAST = re.compile(rf"[MU][^{NUMBERS}]{{0,4}}$")
_CELLS = re.compile(r"(?P<count>[LN])_{0,2}\|_?(?P<one>[MU])_?\|[_*]{0,2}(?P<all>M)[^MUTGLNPX]{0,4}$")
_CLOSING = re.compile(r"[_*]{0,3}(?P<tie>s?=|c|s?_{1,3}[i=])[_p=i]{0,3}(?P<all>M)(?P<behind>[_fN]{0,5}|.{0,2}c)")
"""``That's £22 for the lot``, ``All up I paid £22``: behind a list, as the first words of what follows."""
_DIVIDED = re.compile(r"_?/[_*]?(?P<n>N)")
_FEWEST = 2
_MOST = 60
_ROUND = (Fraction(1, 10), Fraction(1, 2), Fraction(1), Fraction(5))
"""To what a price for one head is rounded up where money is collected (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a text: its items, its words, those before its first price, whether an empty line stands before it,
    whether its last price stands in a column of its own or behind a colon, and whether it is an entry of a list."""

    items: Sequence[Item]
    words: frozenset[str]
    opening: frozenset[str]
    apart: bool
    in_column: bool
    listed: bool

    @property
    def symbols(self) -> str:
        """The symbols of the items."""
        return "".join(item.symbol for item in self.items)

    @property
    def price(self) -> Item | None:
        """The last price, if it ends the line and stands in a column or in an entry of a list."""
        last = _LAST.search(self.symbols) if self.in_column or self.listed else None
        return self.items[last.start()] if last else None


@dataclass(frozen=True, slots=True)
class RowResult:
    """A price that is a result: what it should be, None where it is right or nobody can know, and the working."""

    item: Item
    should_be: Fraction | None
    words: str
    kind: str


@dataclass(slots=True)
class _Bill:
    """The rows of a list that were read so far, how many empty lines stand behind them, and whether
    each of them tells one price."""

    prices: list[Fraction] = field(default_factory=list)
    total: Fraction | None = None
    gaps: int = 0
    sure: bool = True


def heads_of(items: Iterable[Item]) -> dict[str, set[Fraction]]:
    """How many people a text counts, by their names."""
    heads: dict[str, set[Fraction]] = {}
    for item in items:
        if item.symbol == COUNT and item.noun in PEOPLE:
            heads.setdefault(item.noun, set()).add(item.value)
    return heads


def row_results(rows: Iterable[Row], heads: Mapping[str, set[Fraction]]) -> Iterator[RowResult]:
    """The results that the rows of a text tell; a sum reaches over one empty line at most, and only to its total."""
    bill = _Bill()
    for row in rows:
        bill.gaps += row.apart
        if bill.gaps > 1:
            bill = _Bill()
        price = row.price
        share = _share_of_one(row)
        if share is not None and bill.total is not None:
            yield from _share(bill.total, row, share, heads)
        elif price is not None and row.in_column and _is_total(row):
            yield from _total(bill, price)
        elif closing := _closing(bill, row):
            yield from _total(bill, closing)
        elif price is not None and _is_complete(bill, row, price):
            yield from _total(bill, price)
        elif price is not None:
            yield from _in_cells(row)
            _add(bill, row, price)
        elif row.listed and not {MONEY, RATE}.isdisjoint(row.symbols):
            bill.sure = False


def _is_total(row: Row) -> bool:
    return not row.words.isdisjoint(TOTAL_ROW) or {"to", "pay"} <= row.words or {"all", "together"} <= row.words


def _closing(bill: _Bill, row: Row) -> Item | None:
    """The price of all that was listed, which the sentence behind the list begins with."""
    found = _CLOSING.match(row.symbols) if row.apart and bill.sure and len(bill.prices) >= _FEWEST else None
    more = row.words & (BUNDLE | MORE_COUNTED)
    if found is None or more - ({"plus"} if "&" in row.symbols[found.end("all") :] else set()):
        return None
    behind = row.items[found.end("all") : found.end()]
    many = [item.value for item in behind if item.symbol == COUNT]
    whole = not THE_WHOLE.isdisjoint(row.words) and "f" in found["behind"]
    whole = whole or not (THE_WHOLE.isdisjoint(row.opening) or "if" in row.words)
    if found["tie"] == "c" or "c" in found["behind"] or whole or (many == [len(bill.prices)] and "the" in row.words):
        return row.items[found.start("all")]
    return None


def _is_complete(bill: _Bill, row: Row, price: Item) -> bool:
    """Whether a row is likely to tell the sum of those before it: a price for all may also be a lower one, but hardly
    one with the same pence."""
    if row.words.isdisjoint(COMPLETE_ROW) or not row.words.isdisjoint(BUNDLE) or bill.gaps:
        return False
    apart = abs(sum(bill.prices, Fraction(0)) - price.value)
    return price.value.denominator != 1 and apart.denominator == 1


def _add(bill: _Bill, row: Row, price: Item) -> None:
    """Takes a row into the bill; one that tells the sum of those before it stands for them all."""
    if bill.gaps:
        bill.prices, bill.total, bill.gaps, bill.sure = [], None, 0, True
    if row.listed and not row.in_column and row.symbols.count(MONEY) != 1:
        bill.sure = False
    if price.symbol != MONEY or len(bill.prices) >= _MOST:
        bill.sure = False
        return
    if len(bill.prices) >= _FEWEST and price.value == sum(bill.prices, Fraction(0)):
        bill.prices = []
    bill.prices.append(price.value if row.words.isdisjoint(TAKEN_OFF) else -price.value)


def _in_cells(row: Row) -> Iterator[RowResult]:
    """A row of a table with a quantity, a price for one and a price for all of them."""
    cells = _CELLS.search(row.symbols)
    if cells is not None:
        count, one, result = (row.items[cells.start(name)] for name in ("count", "one", "all"))
        words = f"{decimal(count.value)} × {with_cents(one.value)}"
        yield _judged(result, (count.value * one.value,), words, "product")


def _total(bill: _Bill, price: Item) -> Iterator[RowResult]:
    if _FEWEST <= len(bill.prices) < _MOST:
        value = sum(bill.prices, Fraction(0))
        words = " ".join(f"{'−' if each < 0 else '+'} {with_cents(abs(each))}" for each in bill.prices)
        yield _judged(price, (value,), words.removeprefix("+ "), "sum")
    bill.prices, bill.total, bill.gaps, bill.sure = [price.value], price.value, 0, True


def _share_of_one(row: Row) -> Item | None:
    """The price for one head, as a row tells it: ``per pupil £3.50``, ``$14.39 for each student``."""
    rate = next((item for item in row.items if item.symbol == RATE and item.per in PEOPLE), None)
    if rate is None and "per" in row.words and row.words & PEOPLE:
        return row.price
    return rate


def _share(total: Fraction, row: Row, price: Item, heads: Mapping[str, set[Fraction]]) -> Iterator[RowResult]:
    names = row.words & PEOPLE
    named = [heads[name] for name in names if name in heads] or list(heads.values())
    divided = _DIVIDED.match(row.symbols)
    many = {row.items[divided.start("n")].value} if divided else set().union(*named)
    if len(many) == 1:
        number = many.pop()
        value = total / number
        rounded_up = (-(-value // step) * step for step in _ROUND)
        yield _judged(price, (value, *rounded_up), f"{with_cents(total)} ÷ {decimal(number)}", "share")


def _judged(price: Item, values: tuple[Fraction, ...], words: str, kind: str) -> RowResult:
    right = price.hedged or any(agrees(price, value) for value in values)
    slip = not right and values[0] > 0 and is_like(price.value, values[0], Unit.MM)
    return RowResult(price, values[0] if slip else None, words, kind)


def people_in(words: Iterable[str]) -> frozenset[str]:
    """The words of a line, those of people one for several."""
    return frozenset(stem(word) if stem(word) in PEOPLE else word for word in words)
