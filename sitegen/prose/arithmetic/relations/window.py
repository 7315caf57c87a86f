"""Runs of neighbouring quantities, of which the first or the last may be the result of the others."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from sitegen.prose.arithmetic.relations.roles import is_part, leads_to_parts, only_names, other_ways
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_QUANTITIES = frozenset("LNPRDH")
_FACTORS = {"D": Fraction(2), "H": Fraction(1, 2)}
_BARRIERS = frozenset("~X\n")
"""Ranges and what no sum of lengths holds: no run goes over them."""
_LONGEST = 6
"""How many quantities may stand beside a result."""
_SENTENCES_BEFORE = 3
_SENTENCES_BEHIND = 2
_AROUND = 14
"""Items behind a result within which one more length may explain it."""
_OTHERS = ".\nLNPRDHX~"
_LITTLE_LESS, _LITTLE_MORE = Fraction(199, 200), Fraction(201, 200)
_QUANTITY, _QUANTITY_OR_STOP = re.compile(r"[LNPRX~\n]"), re.compile(r"[LNPRX~.\n]")


@dataclass(frozen=True)
class Beside:
    """What stands right before and behind a result, whatever run of quantities it may be the result of."""

    items: Sequence[Item]
    symbols: str
    said: Said
    at: int

    @cached_property
    def same(self) -> tuple[Fraction, Fraction]:
        """Between which lengths another is the same as the result, given more and less exactly."""
        value = self.items[self.at].value
        return value * _LITTLE_LESS, value * _LITTLE_MORE

    @cached_property
    def ahead(self) -> str:
        """The symbols between the result and the quantity before it."""
        return _QUANTITY.split(self.symbols[max(0, self.at - 9) : self.at])[-1]

    @cached_property
    def words_ahead(self) -> str:
        """The words between the result and the quantity before it, in small letters."""
        return " ".join(self.said(item) for item in self.items[self.at - len(self.ahead) : self.at]).lower()

    @cached_property
    def behind(self) -> str:
        """The symbols between the result and the quantity or stop behind it."""
        return _QUANTITY_OR_STOP.split(self.symbols[self.at + 1 : self.at + 8])[0]

    @cached_property
    def words_behind(self) -> str:
        """The item right behind the result as it was written; nothing where the text has ended."""
        return self.said(self.items[self.at + 1]) if self.at + 1 < len(self.items) else ""

    @cached_property
    def only_names(self) -> bool:
        """Whether the length is no result, but only says which thing is meant."""
        return only_names(self.said(self.items[self.at]), self.words_ahead, self.behind, self.words_behind)

    @cached_property
    def other_ways(self) -> frozenset[str]:
        """The words for directions in which the result is not measured."""
        return other_ways(self.ahead, self.words_ahead, self.words_behind.lower())


@dataclass(frozen=True)
class Window:
    """A run of quantities: the result at ``at``, the other lengths, and the counts, shares and doublings.

    All places are indices of items; the clauses of the run reach from ``start`` to ``end``.
    """

    items: Sequence[Item]
    symbols: str
    said: Said
    at: int
    parts: tuple[int, ...]
    factors: tuple[int, ...]
    start: int
    end: int
    beside: Beside

    @cached_property
    def text(self) -> str:
        """The symbols of the clauses in which the run stands."""
        return self.symbols[self.start : self.end]

    @cached_property
    def words(self) -> str:
        """The words of those clauses in small letters, without the lengths."""
        clauses = self.items[self.start : self.end]
        return " ".join(self.said(item) for item in clauses if item.symbol != "L").lower()

    @property
    def ahead(self) -> str:
        """The symbols between the result and the quantity before it."""
        return self.beside.ahead

    @property
    def words_ahead(self) -> str:
        """The words between the result and the quantity before it, in small letters."""
        return self.beside.words_ahead

    @property
    def behind(self) -> str:
        """The symbols between the result and the quantity or stop behind it."""
        return self.beside.behind

    @property
    def result(self) -> Fraction:
        """The written result in millimetres."""
        return self.items[self.at].value

    @property
    def places(self) -> tuple[int, ...]:
        """The places of all parts and factors."""
        return (*self.parts, *self.factors)

    @property
    def hedged(self) -> bool:
        """Whether any of the quantities is only about right."""
        return any(self.items[at].hedged for at in (self.at, *self.places))

    def has(self, symbols: str) -> bool:
        """Whether one of these symbols stands in the clauses of the run."""
        return any(map(self.text.__contains__, symbols))

    def name(self, at: int) -> str:
        """An item as it was written; nothing where the text has ended."""
        return self.said(self.items[at]) if 0 <= at < len(self.items) else ""

    def value(self, at: int) -> Fraction:
        """Millimetres of a length, in the system of the result where it is given in both; else the bare number."""
        item = self.items[at]
        if item.symbol in _FACTORS:
            return _FACTORS[item.symbol]
        return item.value if item.other is None else item.beside(self.items[self.at].unit)


def windows_of(items: Sequence[Item], symbols: str, said: Said, asked: Sequence[int]) -> Iterator[Window]:
    """Every run of quantities whose first or last one is asked for and may be a result: the shorter runs first."""
    places = [at for at, symbol in enumerate(symbols) if symbol in _BARRIERS or _is_quantity(items[at])]
    rank_of = {at: rank for rank, at in enumerate(places)}
    for at in asked:
        rank = rank_of[at]
        if items[at].value <= 0 or is_part(symbols, at):
            continue
        beside = Beside(items, symbols, said, at)
        for first in range(rank - 1, max(-1, rank - _LONGEST - 1), -1):
            if symbols[places[first]] in _BARRIERS or symbols.count(".", places[first], at) > _SENTENCES_BEFORE:
                break
            yield _window(beside, places[first : rank + 1])
            if rank + 1 < len(places) and _counted_behind(items, symbols, said, at):
                yield _window(beside, places[first : rank + 2])
        if rank + 1 == len(places) or not leads_to_parts(symbols[at + 1 : places[rank + 1]]):
            continue
        for last in range(rank + 1, min(len(places), rank + _LONGEST + 1)):
            if symbols[places[last]] in _BARRIERS or symbols.count(".", at, places[last]) > _SENTENCES_BEHIND:
                break
            yield _window(beside, places[rank : last + 1])
            if rank and symbols[places[rank - 1]] == "L" and "." not in symbols[places[rank - 1] : places[last]]:
                yield _window(beside, places[rank - 1 : last + 1])


def _counted_behind(items: Sequence[Item], symbols: str, said: Said, at: int) -> bool:
    """Whether the count of the result's parts stands right behind it: ``makes 1.8 m for six bows``."""
    return symbols[at : at + 3] == "L_N" and said(items[at + 1]) == "for"


def _is_quantity(item: Item) -> bool:
    return item.symbol in _QUANTITIES and not (item.symbol in "NPR" and item.value in (0, 1))


def _window(beside: Beside, run: Sequence[int]) -> Window:
    symbols, at = beside.symbols, beside.at
    parts = tuple(each for each in run if symbols[each] == "L" and each != at)
    factors = tuple(each for each in run if symbols[each] != "L")
    start, end = run[0], run[-1] + 1
    stops = f"{_OTHERS},;:" if at in run[-2:] else _OTHERS
    while start > 0 and run[0] - start < 8 and symbols[start - 1] not in _OTHERS:
        start -= 1
    while end < len(symbols) and end - run[-1] < 6 and symbols[end] not in stops:
        end += 1
    return Window(beside.items, symbols, beside.said, at, parts, factors, start, end, beside)


def widened(window: Window) -> Iterator[Window]:
    """The window with the next quantity on the other side of its result, which may explain it."""
    if not window.parts:
        return
    symbols, at = window.symbols, window.at
    last = at > window.parts[-1]
    order = range(at + 1, min(len(symbols), at + _AROUND)) if last else range(at - 1, max(-1, at - _AROUND), -1)
    for place in order:
        if symbols[place] == "\n":
            return
        if symbols[place] not in "LNPR" or not _is_quantity(window.items[place]):
            continue
        parts = (*window.parts, place) if symbols[place] == "L" else window.parts
        factors = window.factors if symbols[place] == "L" else (*window.factors, place)
        start, end = min(window.start, place), max(window.end, place + 1)
        parts, factors = tuple(sorted(parts)), tuple(sorted(factors))
        yield replace(window, parts=parts, factors=factors, start=start, end=end)
        return
