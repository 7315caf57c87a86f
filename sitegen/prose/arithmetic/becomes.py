"""Results told as what a length becomes by what was added or taken off before: ``The bottom seam takes 1/2 in and the
casing 1 1/2 in, so 16 in becomes 14 in``; ``trim 1/4 in from every side; the 9 in block now measures 8 1/2 in``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.statements import Stated, how_often
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_BECOMES = re.compile(
    r"\b(?:becom\w+|(?:is|are|was|'s) now|now (?:measures?|is)|(?:you're|i'm|we're|it's|is|are) (?:now |then )?down to"
    r"|(?:grows|shrinks|drops|goes|comes) (?:up |down )?to|ends? up(?: at| as)?|(?:comes|finishes|works) out at"
    r"|needs (?:a )?cut (?:width|length|height|size) of|needs to be cut)\W*$"
)
_FROM_TO = re.compile(r"^(?:\w+ ){0,2}(?:down |up )?to\W*$")
_CUTS = re.compile(r"\bcut\b")
_ALL_ROUND = re.compile(
    r"\b(?:each|every|both|either|two|all)\b(?: \w+){0,3}? (?:sides?|ends?|edges?|seams?)\b"
    r"|\b(?:four|4) (?:sides|edges)\b"
)
_SIDES = re.compile(r"\b(?:sides|ends|edges)\b")
_COUNTS_SIDES = re.compile(r"^(?:\w+ )?(?:sides?|ends?|edges?|seams?)\b")
_ONLY_PLACES = re.compile(r"(?:above|below)\b")
"""Words behind a length that tell where something is done: ``cut 5 in above the wrist``."""
_TAKES = frozenset("T-<m")
_ADDS = frozenset("+ABl")
_OTHERS = frozenset("NPRDH~X*/Q<>\n")
_LONGEST_GAP = 8
"""Items between a length and what it becomes."""
_REACH = 26
"""Items before that length in which its parts stand."""
_MOST = 3
"""Parts of one sentence; more may be of several things."""
_BESIDE = 7
"""Items behind a part that tell at how many sides it is."""


def become_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every result that words tell as what a length becomes, where parts stand before that length."""
    for at, symbol in enumerate(symbols):
        base = symbols.rfind("L", max(0, at - _LONGEST_GAP), at) if symbol == "L" else -1
        if base >= 0 and (stated := _become(items, symbols, base, at, said)):
            yield stated


def _become(items: Sequence[Item], symbols: str, base: int, at: int, said: Said) -> Stated | None:
    whole, result = items[base], items[at]
    between = " ".join(said(item) for item in items[base + 1 : at]).lower()
    comes_from = symbols[max(0, base - 2) : base].rstrip("_").endswith("f")
    if not (_BECOMES.search(between) or (comes_from and _FROM_TO.search(between))):
        return None
    if result.unit is None or result.unit is not whole.unit or result.hedged or whole.hedged or result.times:
        return None
    places = _parts_before(items, symbols, base, at, said)
    sign = (1 if result.value > whole.value else -1) if comes_from else _sign(symbols, places, base, between)
    if (
        not places
        or sign * (result.value - whole.value) < 0
        or not sign
        or any(items[place].hedged for place in places)
    ):
        return None
    often = [_often(items, symbols, place, said) for place in places]
    sizes = [items[place].beside(result.unit) for place in places]
    values = [
        whole.value + sign * sum((size * times for size, times in zip(sizes, taken, strict=True)), Fraction(0))
        for taken in product(*often)
    ]
    words = said(whole) + "".join(
        f" {'+' if sign > 0 else '−'} {f'{each[0]} × ' if each[0] > 1 else ''}{said(items[place])}"
        for place, each in zip(places, often, strict=True)
    )
    kind = "sum" if sign > 0 else "difference"
    right = any(agrees(written, unit, values, Exactness.RULER, hedged=False) for written, unit in result.written)
    slip = values[0] > 0 and is_like(result.value, values[0], result.unit)
    if not right and (not slip or _is_told_otherwise(items, symbols, places, base, at)):
        return None
    return Stated(at, (*places, base), right, kind, values[0], words)


def _is_told_otherwise(items: Sequence[Item], symbols: str, places: Sequence[int], base: int, at: int) -> bool:
    """Whether the result was told before, or another length makes it, once or twice taken off or added."""
    near = {items[each].value for each in range(max(0, base - _REACH), base) if symbols[each] == "L"}
    others = near - {items[place].value for place in places}
    whole, wanted = items[base].value, items[at].value
    return wanted in near or any(abs(whole - wanted) in (other, 2 * other) for other in others)


def _often(items: Sequence[Item], symbols: str, at: int, said: Said) -> tuple[int, ...]:
    """How often a part is taken: twice where it is told of all sides."""
    behind = re.split(r"[L.,;&]", symbols[at + 1 : at + 1 + _BESIDE])[0]
    told = " ".join(said(item) for item in items[at + 1 : at + 1 + len(behind)]).lower()
    ahead = said(items[at - 1]).lower() if at else ""
    if _ALL_ROUND.search(told) or (told.startswith("each") and _SIDES.search(ahead)):
        return (2,)
    return how_often(items, symbols, at, said)


def _parts_before(items: Sequence[Item], symbols: str, base: int, at: int, said: Said) -> list[int]:
    """The lengths before the whole, in its sentence and, where it has none there, in the one before."""
    start = max(0, base - _REACH)
    ahead = symbols[start:base]
    own = ahead.rfind(".") + 1
    first = start + own if "L" in ahead[own:] else start + ahead.rfind(".", 0, max(0, own - 1)) + 1
    named = symbols.rfind(":", first, base) + 1
    first = named if "L" in symbols[named:base] and named else first
    told = "".join(
        "_" if symbols[place] == "N" and _counts_sides(items, place, said) else symbols[place]
        for place in range(first, base)
    )
    places = [
        place
        for place in range(first, base)
        if symbols[place] == "L" and not _ONLY_PLACES.match(said(items[place + 1]).lower())
    ]
    less = all(items[place].value * 2 < items[base].value for place in places)
    places = places if _are_apart(items, places) else []
    plain = _OTHERS.isdisjoint(told) and _OTHERS.isdisjoint(symbols[base:at]) and told.count("L") <= _MOST
    return places if less and plain else []


def _are_apart(items: Sequence[Item], places: Sequence[int]) -> bool:
    """Whether no part is what the others make, as the inch that half an inch at either side takes."""
    sizes = [items[place].value for place in places]
    return not any(
        sizes[at] in (2 * one, one + other) for at in range(len(sizes)) for one in sizes[:at] for other in sizes[:at]
    )


def _counts_sides(items: Sequence[Item], at: int, said: Said) -> bool:
    """Whether a number counts the sides at which something is told: ``on both side seams``."""
    return _COUNTS_SIDES.match(" ".join(said(item) for item in items[at + 1 : at + 3]).lower()) is not None


def _sign(symbols: str, places: Sequence[int], base: int, between: str) -> int:
    """Whether the parts are added or taken off, by the words around them; 0 where these say neither."""
    if _CUTS.search(between):
        return 1
    told = symbols[max(0, min(places, default=base) - 3) : base]
    if not _TAKES.isdisjoint(told):
        return -1 if _ADDS.isdisjoint(told.partition("L")[0]) else 0
    return 1 if not _ADDS.isdisjoint(told) else -1 if "a" in told and "u" in told else 0
