"""What a paragraph claims of an amount: that it is made of others."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from sitegen.prose.amounts.amount import COUNT, MONEY, NUMBERS, RATE, TIME, WEIGHT, Item
from sitegen.prose.amounts.items import stem
from sitegen.prose.amounts.line import Line
from sitegen.prose.amounts.vocabulary import BUNDLE, NO_NOUN

_TIE = re.compile(r"(?:[=sp][_i=spc]{0,4}|:_?|c[_i=:fp]{0,5}|v[_:]{0,2})$")
_LONGEST_TIE = 6
_NUMBERS = re.compile(f"[{NUMBERS}]")


@dataclass(frozen=True, slots=True)
class Claim:
    """A result by its place among the items: what it may be, the likeliest first, and the working in words.

    ``firm`` where words bind the parts to each other, so that nothing else can explain the result; ``sure`` where a set
    phrase ties the result to them.
    """

    at: int
    values: tuple[Fraction, ...]
    words: str
    kind: str
    parts: tuple[int, ...]
    firm: bool = False
    sure: bool = True


@dataclass(frozen=True, slots=True)
class Paragraph:
    """The items of a paragraph, their symbols as a text, how they are written and which open a line, and the places of
    its numbers."""

    items: Line
    symbols: str
    said: Callable[[Item], str]
    word: Callable[[Item], str]
    opens: Callable[[Item], bool]
    numbers: list[int] = field(default_factory=list)

    def tie_before(self, at: int) -> str:
        """The symbols of the words that tie an amount to what stands before it; empty where none do."""
        start = max(0, at - _LONGEST_TIE)
        tie = _TIE.search(self.symbols[start:at])
        return tie.group() if tie else ""

    def words_behind(self, at: int, many: int) -> tuple[str, ...]:
        """The words and signs behind an amount, in small letters."""
        return tuple(map(self.word, self.items[max(0, at + 1) : max(0, at + 1 + many)]))

    def numbers_before(self, at: int, many: int) -> Iterator[Item]:
        """The amounts among so many items before one."""
        start = bisect_left(self.numbers, at - many)
        return (self.items[each] for each in self.numbers[start : bisect_left(self.numbers, at)])

    def numbers_between(self, first: int, behind: int) -> list[int]:
        """The places of the amounts from one item up to, not including, another."""
        return self.numbers[bisect_left(self.numbers, first) : bisect_left(self.numbers, behind)]

    def names(self, at: int) -> list[str]:
        """What a count counts, by the two words behind it, one for several."""
        return [stem(word) for word in self.words_behind(at, 2) if word.isalpha() and word not in NO_NOUN]

    def ends_clause(self, at: int) -> bool:
        """Whether an amount ends its sentence, or the row or entry of a list in which it stands."""
        if at + 1 >= len(self.items) or self.symbols[at + 1] in ".)":
            return True
        after = self.items[at + 1]
        return self.opens(after) and not self.said(after)[0].islower()

    def behind(self, at: int, many: int) -> str:
        """The symbols behind an amount."""
        return self.symbols[at + 1 : at + 1 + many]


def paragraph_of(
    items: Line, said: Callable[[Item], str], word: Callable[[Item], str], opens: Callable[[Item], bool]
) -> Paragraph:
    """The paragraph that is made of these items."""
    symbols = "".join(items.symbols)
    return Paragraph(items, symbols, said, word, opens, [number.start() for number in _NUMBERS.finditer(symbols)])


def sort_of(item: Item) -> tuple[str, str]:
    """What an amount can be added to: prices to prices, times to times, a weight to one in its unit."""
    if item.symbol in (MONEY, RATE):
        return MONEY, ""
    if item.symbol == TIME:
        return TIME, ""
    if item.symbol == WEIGHT:
        return WEIGHT, item.unit
    return item.symbol, item.noun if item.symbol != COUNT else ""


def is_bundle(told: Paragraph, first: int, at: int) -> bool:
    """Whether things cost less together: a set, or a whole price for both."""
    words = told.words_behind(first, at - first - 1)
    both = told.items[at].decimals == 0 and any(word in ("both on", "both for", "for both") for word in words)
    behind = told.words_behind(at, 3)
    return both or "for both" in behind or not BUNDLE.isdisjoint(words) or not BUNDLE.isdisjoint(behind)
