"""Results told by a word that points back at the last length: ``twice that is 9 in``, ``half of it, 3 cm``, ``three of
those, 690 cm``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, agrees, part_exactness
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.quantities import vulgar

_POINTS = r"(?:that|this|it|them|those|these|its \w+|the (?:width|depth|height|length) of it)"
_BACK = re.compile(
    rf"\b(?:(?P<double>(?:twice|doubles?|doubled|(?:two|2) times)(?: of)? {_POINTS}"
    r"|as much again)"
    rf"|(?P<half>(?:half|halves?|halved)(?: of)? {_POINTS})"
    rf"|(?P<share>(?:an? |one )?(?:third|quarter|fourth|fifth|sixth|eighth)s? of {_POINTS})"
    r"|(?P<count>of (?:them|those|these)))(?![\w'])(?:\W+[\w']+){0,5}\W*$"
)
_SIDE = re.compile(r"L_?[b*]_?$")
_SHARES = {"third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "eighth": 8}
_KINDS = {Fraction(2): "doubling", Fraction(1, 2): "halving"}
_LONGEST = 14
_MORE = frozenset("+-ATB<>~X/")
"""Words behind which the result is not the multiple alone."""
_FACTORS = "RDHNQ"
_SLIPS = (Fraction(1, 4), Fraction(1, 2), Fraction(2), Fraction(4))
"""People double what is to be halved, or leave it as it is."""


def pointed_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every result that such a word ties to the length before it."""
    for at, symbol in enumerate(symbols):
        if symbol == "L" and not items[at].times and (stated := _pointed(items, symbols, at, said)):
            yield stated


def _pointed(items: Sequence[Item], symbols: str, at: int, said: Said) -> Stated | None:
    base = symbols.rfind("L", max(0, at - _LONGEST), at)
    result = items[at]
    if base < 0 or result.unit is None or result.hedged or items[base].hedged or items[base].times:
        return None
    gap = symbols[base + 1 : at]
    words = " ".join(said(item) for item in items[base + 1 : at]).lower()
    found = _BACK.search(words)
    if found is None or gap.count(".") > 1 or re.match(r"[+\-/]|\*N", symbols[at + 1 : at + 3]):
        return None
    if not _MORE.isdisjoint(gap[max(map(gap.rfind, _FACTORS)) :]):
        return None
    if found["count"] and (not re.search(r"[qkvu:,=c][_tgi]*$", gap) or re.match(r"_?f", symbols[at + 1 : at + 3])):
        return None  # “two of those 13 and 13”, “32 in from the first to the last”
    apart = _SIDE.search(symbols[max(0, base - 4) : base]) is not None or "apart" in words
    factor = None if apart and found["count"] else _factor(items, symbols, base, at, found)
    if not factor or not items[base].value:
        return None
    whole = items[base].beside(result.unit)
    earlier = symbols.rfind("L", max(0, base - _LONGEST), base)
    if found["count"] and earlier >= 0 and items[earlier].value + items[base].value == result.value:
        return None  # “a quarter inch, then three eighths: the two of them use up five eighths”
    if found["count"] and any(
        items[place].value * factor == result.value for place in range(max(0, base - _LONGEST), base)
        if symbols[place] == "L"
    ):  # fmt: skip
        return None  # “a dart 1 in across, each leg 1/2 in from the middle. Four of them make 4 in”
    value = whole * factor
    exactness = part_exactness(value) if factor < 1 else Exactness.RULER
    kind = _KINDS.get(factor, "share" if factor < 1 else "product")
    holds = any(agrees(written, unit, (value,), exactness, hedged=False) for written, unit in result.written)
    name = said(items[base])
    said_sum = f"{name} ÷ {vulgar(1 / factor)}" if factor < 1 else f"{vulgar(factor)} × {name}"
    stated = Stated(at, (base,), holds, kind, value, said_sum)
    if holds:
        return stated
    near = abs(result.value - value) * 2 <= value or (factor > 2 and (result.value / whole).denominator == 1)
    slip = near or any(result.value == value * each for each in _SLIPS)
    return stated if slip and not has_slack(items, symbols, at, value, kind, said) else None


def _factor(items: Sequence[Item], symbols: str, base: int, at: int, found: re.Match[str]) -> Fraction | None:
    """By what the length is multiplied; None where several numbers stand between, or none that counts."""
    counts = [place for place in range(base + 1, at) if symbols[place] == "N"]
    if found["count"]:
        if len(counts) != 1 or not set("RPDHj").isdisjoint(symbols[base + 1 : at]):
            return None
        return items[counts[0]].value
    if counts and symbols[counts[-1] - 1 : counts[-1]] != "k":
        return None
    if found["double"]:
        return Fraction(2)
    if found["half"]:
        return Fraction(1, 2)
    return next(Fraction(1, parts) for name, parts in _SHARES.items() if name in found["share"])
