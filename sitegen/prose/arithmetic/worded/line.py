"""A paragraph as a line of words with its lengths and numbers as marks, and what is said of a result found in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_MARKED = frozenset("LNR")
_AROUND = 40
"""Items before a result in which another length may explain it."""
_BEHIND = 12
_TAIL = 8
_WITH_MORE = re.compile(
    r"\b(?<!without )(?:with|includ\w+|counting)\b[^.]{0,30}\b(?:seams?|joins?|joining|laps?|overlaps?"
    r"|hems?|allowances?"
    r"|turnings?|headers?|headings?|spare|extra|more|bit|some)\b"
)
_ADDING = re.compile(r"\b(?:with|includ\w+|counting|for|allow\w*)\b")
_TIMES, _ONCE = (1, 2, 4), (1,)


@dataclass(frozen=True, slots=True)
class Line:
    """``L12`` is the length at the place 12 among the items, ``N`` a number, ``R`` a share; all else is small words."""

    items: Sequence[Item]
    symbols: str
    said: Said
    text: str

    def item(self, found: re.Match[str], group: str) -> Item:
        """The item of a group of digits."""
        return self.items[int(found[group])]

    def value(self, found: re.Match[str], group: str) -> Fraction:
        """Millimetres of a length, or the number."""
        return self.item(found, group).value

    def count(self, found: re.Match[str], group: str) -> int:
        """A whole number that counts; 0 where it is none."""
        value = self.value(found, group)
        return int(value) if value.denominator == 1 and 1 < value < 100 else 0

    def told(
        self,
        found: re.Match[str],
        values: Sequence[Fraction],
        words: str,
        kind: str,
        parts: Iterable[str],
        *,
        result: str = "r",
        exactness: Exactness = Exactness.RULER,
        counts: Iterable[str] = (),
        near: Fraction | None = None,
    ) -> Stated | None:
        """What a phrase says of its result."""
        places = tuple(int(found[part]) for part in parts if found[part])
        counted = frozenset(int(found[part]) for part in counts if found[part])
        return self.judged(int(found[result]), values, words, kind, places, exactness, counted, near)

    def judged(
        self,
        at: int,
        values: Sequence[Fraction],
        words: str,
        kind: str,
        places: tuple[int, ...],
        exactness: Exactness = Exactness.RULER,
        counts: frozenset[int] = frozenset(),
        near: Fraction | None = None,
        *,
        sure: bool = False,
    ) -> Stated | None:
        """The result at ``at``, of which the likeliest value comes first; None where it may be another's.

        ``near`` is how far, as a share, a slip may lie from the right result where it is plain what the result is;
        it is ``sure`` where the other results of a row hold.
        """
        result = self.items[at]
        if result.unit is None or at in places or not values or values[0] <= 0:
            return None
        hedged = result.hedged or any(self.items[place].hedged for place in places)
        right = any(agrees(value, unit, values, exactness, hedged=hedged) for value, unit in result.written or ())
        if not right:
            apart = abs(result.value - values[0])
            slip = is_like(result.value, values[0], result.unit) or (near is not None and apart <= values[0] * near)
            if not slip or hedged or (not sure and self._is_explained(at, values, places)):
                return None
            if result.value > values[0] and (self._has_more_in_it(at) or self._has_slack(at, values[0], kind)):
                return None
        return Stated(at, places, right, kind, values[0], words, counts)

    def _has_more_in_it(self, at: int) -> bool:
        """Whether the words behind a result say that something is added that the phrase did not name."""
        return _WITH_MORE.search(self._words(at + 1, at + 1 + _TAIL).partition(".")[0]) is not None

    def _has_slack(self, at: int, right: Fraction, kind: str) -> bool:
        return has_slack(self.items, self.symbols, at, right, "sum" if kind == "band" else kind, self.said)

    def _words(self, first: int, behind: int) -> str:
        return " ".join(self.said(item) for item in self.items[first:behind]).lower()

    def _is_explained(self, at: int, values: Sequence[Fraction], places: tuple[int, ...]) -> bool:
        """Whether another length around is what the result has more or less, once or at two or four sides."""
        wanted = self.items[at].value
        around = range(max(0, at - _AROUND), min(len(self.items), at + _BEHIND))
        others = [each for each in around if self.items[each].symbol == "L" and each not in (*places, at)]
        apart = {abs(wanted - value) for value in values}
        return any(
            self.items[each].value == wanted
            or any(
                times * self.items[each].value in apart
                for times in (_TIMES if each < at or _ADDING.search(self._words(at, each)) else _ONCE)
            )
            for each in others
        )


def line_of(items: Sequence[Item], symbols: str, said: Said) -> Line:
    """The line of a paragraph."""
    parts = []
    for at, symbol in enumerate(symbols):
        if symbol == "\n":
            parts.append("\n")
        elif symbol in _MARKED and not items[at].times and items[at].number is not None:
            parts.append(f"{symbol}{at}")
        else:
            parts.append(said(items[at]).lower().replace("\n", " "))
    text = re.sub(r" (?=[.,;:!?)])", "", " ".join(parts))
    return Line(items, symbols, said, text)
