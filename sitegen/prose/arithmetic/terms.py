"""Terms of a written sum as patterns of symbols, and what they make.

A term is a length by itself or with a count, a share or a doubling: ``3/8 in``, ``two 3/8 in seam allowances``,
``2 × 3/8 in``, ``80% of 20 in``, ``twice 1 in``, ``3/8 in at both ends``. Where people leave a count unsaid, a term has
more than one reading, the likeliest first; a sum is wrong only when no reading makes it right.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.find import CIRCLE_NUMBERS
from sitegen.quantities import Ratio, decimal, show_ratio, vulgar

COUNTED = r"N(?:\*|[_panejzWu]{0,3}o?_?)L"
"""``two 3/8 in``, ``2 × 3/8 in``, ``two seam allowances of 3/8 in``."""
SHARED = r"[PR]\*L|P_?o?_?L|R(?:_?o_?|_)L|L\*[PR]"
DOUBLED = r"D_?o?_?L|L_?D(?!_?o?_?L)"
TERM = (
    rf"(?:{COUNTED}|{SHARED}|{DOUBLED}|L\*N(?![*L])|L)"
    r"(?:[_aponw]{0,3}[tif]?_?S|[_wi]{0,2}[_pa]{0,2}e(?=[_,+.=:;q&]))?[W]?(?:_?[ap]){0,2}"
)
"""One term with what belongs to it: sides, ``each``, what it is an allowance of."""
_PART = re.compile(rf"(?P<counted>{COUNTED})|(?P<share>{SHARED})|(?P<double>{DOUBLED})|(?P<times>L\*N)|(?P<plain>L)")

Said = Callable[[Item], str]
"""The text of an item as it was written."""


def factor_said(factor: Fraction) -> str:
    """How a factor is shown: in vulgar fractions, but for π."""
    return decimal(factor, 4) if factor in CIRCLE_NUMBERS else vulgar(factor)


@dataclass(frozen=True, slots=True)
class TermRead:
    """What a term can mean, in millimetres, the likeliest first; how to say it; whether it is more than a length."""

    values: tuple[Fraction, ...]
    words: str
    worked: bool
    hedged: bool


def read_term(items: Sequence[Item], symbols: str, start: int, end: int, said: Said) -> TermRead:
    """The term that stands from ``start`` to ``end`` of the symbols."""
    match = _PART.search(symbols, start, end)
    if match is None:
        raise ValueError(f"no term in {symbols[start:end]!r}")
    part = items[match.start() : match.end()]
    length = next(item for item in part if item.symbol == "L")
    hedged = any(item.hedged for item in part)
    tail = symbols[match.end() : end]
    if match.group("plain"):
        values, words = _plain(length.value, said(length), tail)
        return TermRead(values, words, len(values) > 1, hedged)
    factor_item = next((item for item in part if item.symbol in "NPR"), None)
    factor = factor_item.value if factor_item is not None else Fraction(2)
    product = factor * length.value
    both_sides = "S" in tail and match.group("counted") is not None
    as_percent = factor_item is not None and factor_item.symbol == "P"
    share = f"{show_ratio(Ratio(factor))} of" if as_percent else f"{factor_said(factor)} ×"
    return TermRead((product, product * 2) if both_sides else (product,), f"{share} {said(length)}", True, hedged)


def _plain(value: Fraction, said: str, tail: str) -> tuple[tuple[Fraction, ...], str]:
    if "S" in tail:
        return (2 * value, 4 * value), f"2 × {said}"
    if "e" in tail:
        return (2 * value, 4 * value, value), f"2 × {said}"
    if "p" in tail:
        return (2 * value, value, 4 * value), f"2 × {said}"
    return (value,), said
