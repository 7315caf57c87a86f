"""How sure it is that a number is the wrong result of a sum: words may mean another thing than a program reads in them.

A finding is sure if its words tie it firmly to its parts, or it is what a slip makes of the right result, and no other
number beside it explains what was said. The other findings are worth a look, no more.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.symbols import Item
from sitegen.quantities import Unit

_BEFORE, _BEHIND = 48, 16
"""Items before and behind a result among which another sum for it is looked for."""
_TIMES = tuple(Fraction(share) for share in ("2", "1/2", "3", "1/3", "4", "1/4"))
_OFTEN = (1, -1, 2, -2)
"""How often a length is added to another or taken off it: once, or on both sides."""


def is_sure(
    items: Sequence[Item], symbols: str, at: int, right: Fraction, parts: Collection[int], *, firm: bool
) -> bool:
    """Whether the length at ``at``, which should be ``right`` millimetres, is wrong for sure.

    ``parts`` are the places of the numbers that make the right one; ``firm`` words leave no doubt of it.
    """
    unit = items[at].unit
    if unit is None or not (firm or is_like(items[at].value, right, unit)):
        return False
    return not _is_explained(items, symbols, at, right, parts)


def _is_explained(items: Sequence[Item], symbols: str, at: int, right: Fraction, parts: Collection[int]) -> bool:
    """Whether a simple sum with a number that is none of the parts makes what was said.

    What the parts alone make in another way, as with one allowance for two, is what people slip into.
    """
    said, unit = items[at].value, items[at].unit or Unit.MM
    around = range(max(0, at - _BEFORE), min(len(symbols), at + _BEHIND))
    near = [
        place for place in around if symbols[place] in "LN" and place != at and not _is_one_thing(items, symbols, place)
    ]
    lengths = {place: items[place].value * (1 if symbols[place] == "L" else unit.mm) for place in near}
    for other in near:
        if other in parts:
            continue
        length = lengths[other]
        if length == said or any(length * times == said for times in _TIMES):
            return True
        rest = [right, *(lengths[place] for place in near if place != other)]
        if any(length + often * more == said or more + often * length == said for more in rest for often in _OFTEN):
            return True
        if any(_is_so_many(items, symbols, *pair, said) for place in near for pair in ((other, place), (place, other))):
            return True
    return False


def _is_one_thing(items: Sequence[Item], symbols: str, at: int) -> bool:
    """Whether a number is no more than a name: ``with one at each end``."""
    return symbols[at] == "N" and items[at].value == 1


def _is_so_many(items: Sequence[Item], symbols: str, count: int, length: int, said: Fraction) -> bool:
    """Whether a length is made by a count of another, or by an equal division of it."""
    many, one = items[count].value, items[length].value
    return symbols[count] + symbols[length] == "NL" and many > 0 and said in (many * one, one / many)
