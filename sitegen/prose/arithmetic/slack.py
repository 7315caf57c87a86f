"""Results that need not follow from their parts to the last mark, as the words of their sentence say."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said
from sitegen.quantities import System, Unit

_ROOM = re.compile(
    r"\b(?:some left|(?<!nothing )(?<!nothing is )(?<!none )left ?over|to spare|safe side|to be (?:safe"
    r"|generous)|just in case"
    r"|a (?:little|bit) (?:(?:of )?play|more|extra|over)|or so|nearest|not quite"
    r"|round(?:ed|s|ing)? (?:it |that )?(?:up|down|to|off))\b"
)
"""Words that leave room on purpose: ``3 m to be on the safe side``."""
_BUYS = re.compile(r"\b(?:buys?|bought|orders?|ordered|ordering|purchase|ask(?:ed)? for|(?:is|are) (?:just )?enough)\b")
_TRIMMED = re.compile(r"\b(?:seamed|joined|sewn together|overlapped|not quite)\b")
_SEWN_IN_A_ROW = re.compile(r"\bsew(?:n|ed)? (?:\S+ ){0,8}(?:together|in a row|side by side|end to end)\b")
_AS_CUT = re.compile(r"\b(?:cut|strips?)\b")
_MADE = ("product", "class total", "sum", "division", "doubling")
_LITTLE = Fraction(1, 4)
_REACH = 24
_SEAMS = Fraction(1, 20)
"""How much of a row of pieces its seams may take."""
_STEPS = {
    System.INCHES: tuple(Unit.YD.mm * Fraction(part) for part in ("1", "1/2", "1/4", "1/8")),
    System.CENTIMETRES: tuple(Unit.M.mm * Fraction(part) for part in ("1", "1/2", "1/4", "1/5", "1/10", "1/20")),
}
"""Millimetres: what cloth is bought by, the coarsest first (common practice, no source)."""


def has_slack(items: Sequence[Item], symbols: str, at: int, right: Fraction, kind: str, said: Said) -> bool:
    """Whether a result may differ from what its parts make: by a reserve, by what a shop sells, by unnamed seams."""
    result, unit = items[at].value, items[at].unit
    words = _sentences(items, symbols, at, said)
    if abs(result - right) > right * _LITTLE or unit is None:
        return False
    roomy = result < right if kind == "division" else result > right
    if roomy and kind in _MADE and _ROOM.search(words):
        return True
    if kind in ("product", "doubling") and result < right and loses_seams(words):
        return True
    if kind in ("product", "class total") and right * (1 - _SEAMS) <= result < right and _TRIMMED.search(words):
        return True
    return result > right and kind in _MADE and _BUYS.search(words) is not None and _is_bought_by(result, right, unit)


def loses_seams(words: str) -> bool:
    """Whether pieces as they were cut are sewn in a row, of which the seams take what nobody names."""
    return _SEWN_IN_A_ROW.search(words) is not None and _AS_CUT.search(words) is not None


def _is_bought_by(result: Fraction, right: Fraction, unit: Unit) -> bool:
    """Whether a shop sells the result, and what is needed lies less than one step of the shop below it."""
    step = next((each for each in _STEPS[unit.system] if (result / each).denominator == 1), Fraction(0))
    return result - right < step


def _sentences(items: Sequence[Item], symbols: str, at: int, said: Said) -> str:
    """The words of the result's sentence and, where its parts come later, of the next one."""
    start = max(symbols.rfind(".", 0, at) + 1, at - _REACH)
    end = symbols.find(".", at)
    if end >= 0 and "L" not in symbols[start:at]:
        end = symbols.find(".", end + 1)
    return " ".join(said(item) for item in items[start : end if 0 <= end < at + _REACH else at + _REACH]).lower()
