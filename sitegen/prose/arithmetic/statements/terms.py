"""The terms of a statement: how often each is taken, and whether it is added or taken off."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_COUNTED = re.compile(r"N(?:\*|[_apejnz]{0,4}o?_?)$")
_COUNTS = 7
"""Items before a length among which a number may count it."""
_MOST = 100
_FOUR = re.compile(r"\b(?:four|4)\b")
_FOR_BOTH = re.compile(r"^for (?!each|either|every)")
_NEAR = 14
_WHERE = 6
"""Items beside a length in which sides, ends and allowances are told of it."""


@dataclass(frozen=True, slots=True)
class Term:
    """A length of a statement: its place, 1 or -1 where words add it or take it off, and how often it may be taken."""

    at: int
    sign: int
    often: tuple[int, ...]


def counts_before(symbols: str, at: int) -> str:
    """The symbols from a number on that counts the length at ``at``, up to the length; nothing where none does."""
    found = _COUNTED.search(symbols[max(0, at - _COUNTS) : at])
    return found.group() if found else ""


def own_sign(symbols: str, at: int) -> int:
    """The sign of a first term, by the words before it: ``add 1 in to``, ``take 2 in off``."""
    first = at - len(counts_before(symbols, at))
    near = re.split(r"[LNPRDHX~.,;:\n=q]", symbols[max(0, first - 4) : first])[-1]
    return 1 if "A" in near else -1 if not set("T-m").isdisjoint(near) else 0


def is_allowance(symbols: str, at: int) -> bool:
    """Whether the words beside a length call it a seam, a hem or an allowance."""
    behind = re.split(r"[L,;.]", symbols[at + 1 : at + 4])[0]
    before = symbols[max(0, at - 4) : at]
    return not set("ap").isdisjoint(behind) or re.search(r"[ap]_?[ok:]?_?$", before) is not None


def how_often(items: Sequence[Item], symbols: str, at: int, said: Said) -> tuple[int, ...]:
    """How often a length may be taken by the words beside it, the likeliest first."""
    counted = counts_before(symbols, at)
    if counted and symbols[at] == "L":
        count = items[at - len(counted)].value
        again = re.match(r"_?&_?L", symbols[at + 1 : at + 5])
        if again and items[at + again.end()].value == items[at].value:
            return (1,)  # “two of those, 13 and 13”
        return (int(count),) if count.denominator == 1 and 1 < count < _MOST else (1,)
    if re.search(r"Do?$", symbols[max(0, at - 3) : at]):
        return (2,)
    before = symbols[max(0, at - _WHERE) : at]
    behind = re.split(r"[L.\n,;&+=q(]", symbols[at + 1 : at + 1 + _WHERE])[0]
    ahead = re.split(r"[L.\n,;+&q]", before)[-1]
    if re.match(r"_S", behind) and _FOR_BOTH.search(f"{said(items[at + 1])} {said(items[at + 2])}".lower()):
        return 2, 1  # “1 1/4 in for both ends”
    if re.match(r"_?S", behind) and _FOUR.search(said(items[at + behind.index("S") + 1]).lower()):
        return 2, 4
    if "S" in behind or "S" in ahead or re.search(r"(?<!L)(?<!L_)S&_?[=k]?_?$", before):
        return (2,)
    if re.match(r"[_oaTA]{0,4}[pe]", behind) or re.match(r"D|_D(?!_?[apL])", symbols[at + 1 : at + 6]):
        return (2,) if "S" in symbols[max(0, at - _NEAR) : at] else (2, 1)
    shared = re.match(r"[^LN.;]{0,4}&[^LN.;]{0,3}L[^LN.;,&]{0,4}S", symbols[at + 1 : at + 14])
    return (1, 2) if shared else (1,)
