"""One way to put the numbers of a text together, and the words beside a number that say how."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said


class Way(NamedTuple):
    """One way: what it makes in millimetres, the sum in words, and how exactly the result must follow."""

    kind: str
    value: Fraction
    words: str
    exactness: Exactness
    hedged: bool
    greatest: Fraction
    named: bool = True
    """Whether words name this way; others only excuse a result."""


@dataclass(frozen=True, slots=True)
class Scope:
    """Where the parts of the result at ``at`` may stand, the words that tie it, and the results settled already."""

    start: int
    end: int
    at: int
    tie: str
    settled: frozenset[int]


@dataclass(frozen=True, slots=True)
class Parts:
    items: Sequence[Item]
    symbols: str
    scope: Scope
    said: Said
    lengths: tuple[int, ...]
    around: str
    """The symbols of the scope, to a little behind its last length, and those right behind the result."""

    def has(self, symbols: str) -> bool:
        """Whether one of these symbols stands around."""
        return any(map(self.around.__contains__, symbols))

    def after(self) -> list[Fraction]:
        """The lengths said soon behind the result: what is left over, perhaps."""
        behind = range(self.scope.at + 1, min(len(self.items), self.scope.at + 12))
        return [self.items[at].value for at in behind if self.symbols[at] == "L"]

    def summed(self) -> list[int]:
        """The lengths from the last settled result onwards."""
        results = [at for at in self.lengths if at in self.scope.settled]
        return [at for at in self.lengths if not results or at >= results[-1]]


_STOPS = re.compile(r"[L.\n]")
_HOW_OFTEN = frozenset("NSDpe")
"""Without one of these beside it a length is taken once."""


def times_of(parts: Parts, at: int) -> int:
    """How often a length is taken: as often as a number says, twice at both ends, or as one of several allowances."""
    symbols = parts.symbols
    if _HOW_OFTEN.isdisjoint(symbols[max(0, at - 4) : at + 7]):
        return 1
    if symbols[max(0, at - 2) : at] == "N*":
        return int(parts.items[at - 2].value)
    if symbols[at + 1 : at + 2] == "e" and (count := count_of(parts, at)):
        return int(count)  # “the two returns use 9 cm each”
    return _times_by_words(symbols[max(0, at - 4) : at], symbols[at + 1 : at + 12])


@lru_cache(maxsize=4096)
def _times_by_words(before: str, following: str) -> int:
    if re.match(r"[^L.\n]{0,5}[&,;][_]?S[_uk]{0,3}L", following):
        return 1  # “10 cm long, and each end needs 1 cm”: the ends are the next length's
    if following[:1] == "D":
        return 2  # “1 cm twice”
    behind = _STOPS.split(following[:6], maxsplit=1)[0]
    ahead = _STOPS.split(before)[-1]
    return 2 if "S" in behind or "S" in ahead or "p" in behind[:2] else 1


def count_of(parts: Parts, at: int) -> Fraction:
    """How many of a length there are, by the number in its own clause; 0 where none is told."""
    each = "e" in parts.symbols[at + 1 : at + 3].partition(",")[0]
    before = re.split(r"[L.\n]" if each else r"[L.\n&,;:]", parts.symbols[max(0, at - 8) : at])[-1]
    start = at - len(before)
    found = [parts.items[start + index] for index, symbol in enumerate(before) if symbol == "N"]
    return found[-1].value if len(found) == 1 else Fraction(0)


def counts_of(parts: Parts) -> list[int]:
    """The whole numbers of the scope that may count one of its lengths."""
    found = (parts.items[at] for at in range(parts.scope.start, parts.scope.end) if parts.symbols[at] == "N")
    return [int(item.value) for item in found if 1 < item.value < 100 and item.value.denominator == 1][-2:]


def sign_of(parts: Parts, at: int) -> int:
    """1 where the words beside a length add it, -1 where they take it off, 0 where they tell neither or both."""
    return _sign_by_words(parts.symbols[max(0, at - 7) : at], parts.symbols[at + 1 : min(at + 6, parts.scope.at)])


@lru_cache(maxsize=4096)
def _sign_by_words(ahead: str, following: str) -> int:
    *earlier, before = _STOPS.split(ahead)
    if earlier:
        before = re.sub(r"^_?[<>T]", "", before)  # “3 in shorter, plus 1/2 in”: shorter belongs to the 3 in
    behind = re.split(r"[L.\n,&]", following)[0]
    near = before + behind
    less, more = bool(set("T-<m") & set(near)), bool(set("+AlB>") & set(near))
    return 0 if less == more else 1 if more else -1


def joined_to_the_last(symbols: str, at: int) -> bool:
    """Whether only ``and`` or a comma joins a length to the one before it."""
    before = re.split(r"[L.\n]", symbols[max(0, at - 8) : at])[-1]
    return bool(set("&,") & set(before)) and not set("=kqvu:") & set(before)
