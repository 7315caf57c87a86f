"""Marks that part a length evenly, told apart from the words that part it: ``Mark the loop in quarters. … The pins on
the 28 in loop sit 7 in apart``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.prose.arithmetic.agree import agrees, part_exactness
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.statements import Stated
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.quantities import vulgar

_MARK = r"(?:pin|mark|notch|clip|dot|point)(?:e?s)?"
_BEHIND = re.compile(rf"(?:apart\b|(?:from|between) (?:one |each |the )?{_MARK}\b|between each\b)")
_AHEAD = re.compile(
    r"(?:\b(?:comes?|falls?|are|sit|is|lie|a pin|a mark) every"
    rf"|\bbetween (?:the |each |your |two )?(?:quarter )?{_MARK}"
    r"(?: (?:there's|there is|there are|it's|is|are|you have|you get))?)\W*$"
)
_NAMES = re.compile(r"(?:quarter|eighth|third|sixth|halves)")
_OF_RESULT = re.compile(r"^(?:apart )?(?:on|of|for|around|round)(?: (?:the|a|an|your|my|that)\b|$)")
_LONGEST = 60
"""Items before a result in which words part a length."""
_NEAR = 8
"""Items beside a result that call it a distance of marks."""
_MOST_PARTS = 16
_SLIPS = (Fraction(1, 2), Fraction(2))
"""People part a length once too often, or not often enough."""


def spaced_results(items: Sequence[Item], symbols: str, said: Said) -> Iterator[Stated]:
    """Every distance of marks that words tell beside the length they part."""
    for at, symbol in enumerate(symbols):
        if symbol == "L" and not items[at].hedged and (stated := _spaced(items, symbols, at, said)):
            yield stated


def _spaced(items: Sequence[Item], symbols: str, at: int, said: Said) -> Stated | None:
    following = re.split(r"[L.;]", symbols[at + 1 : at + 1 + _NEAR])[0]
    behind = " ".join(said(item) for item in items[at + 1 : at + 1 + len(following)]).lower()
    ahead = re.split(r"[L.;]", symbols[max(0, at - _NEAR) : at])[-1]
    before = " ".join(said(item) for item in items[at - len(ahead) : at]).lower()
    if not (_BEHIND.match(behind) or _AHEAD.search(before)):
        return None
    count = next((each for each in range(at - 1, max(-1, at - _LONGEST), -1) if _parts(items, symbols, each, said)), -1)
    unit = items[at].unit
    if count < 0 or unit is None:
        return None
    parts = items[count].value
    first = count - _NEAR if "L" not in symbols[count:at] else count
    lengths = [each for each in range(max(0, first), at) if symbols[each] == "L"]
    whole = lengths[-1] if lengths else None
    if _OF_RESULT.search(behind) and symbols[at + 1 + len(following) :][:1] == "L":
        whole = at + 1 + len(following)
    if whole is None or items[whole].hedged or items[whole].unit is not unit:
        return None
    value = items[whole].value / parts
    exactness = part_exactness(value)
    made = {items[each].value / parts for each in (*lengths, whole)}
    right = any(agrees(written, one, made, exactness, hedged=False) for written, one in items[at].written)
    slip = is_like(items[at].value, value, unit) or items[at].value / value in _SLIPS
    others = [items[each].value for each in range(max(0, at - _LONGEST), at) if symbols[each] == "N" and each != count]
    apart = {items[whole].value / (other + more) for other in others for more in (-1, 0, 1) if other + more > 1}
    if not right and (not slip or items[at].value in apart):
        return None
    words = f"{said(items[whole])} ÷ {vulgar(parts)}"
    return Stated(at, (whole,), right, "division", value, words, frozenset((count,)))


def _parts(items: Sequence[Item], symbols: str, at: int, said: Said) -> bool:
    """Whether words part something here: ``quarters``, ``in four``."""
    if symbols[at] != "N" or not 1 < items[at].value <= _MOST_PARTS:
        return False
    if _NAMES.match(said(items[at]).lower()):
        return True
    return symbols[max(0, at - 1) : at] == "i" and symbols[at + 1 : at + 2] in tuple("&.,;n")
