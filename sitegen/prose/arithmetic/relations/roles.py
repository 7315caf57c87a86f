"""What the words beside a length make of it: a part, a result, or no more than a name."""

from __future__ import annotations

import re

from sitegen.prose.arithmetic.vocabulary import ACROSS, UPRIGHT
from sitegen.prose.words import words as words_of

_NOT_UPRIGHT = ACROSS | words_of("deep thick")
_WIDTH, _HEIGHT = re.compile(r"\bwidth\b|\bacross\b"), re.compile(r"\b(?:length|height)\b")
_ADJECTIVE = re.compile(r"-\s*(?:in|inch|cm|mm|yard|metre|meter)\b")
_SUPPOSED = re.compile(r"\b(?:if|unless)\b[^.]*$|^\. (?:over|under)lap (?!is|of)[a-z ]*$")
"""Words before a length that is only supposed, or only what is to be done: ``Overlap the ends by 1 in``."""
_KNOWN = re.compile(r"\b(?:on|to|from|of|with|buy|for) (?:the|those|these)$|\bstays? at$")
"""Before a length that was told before: ``which on the 140 cm makes``, ``the side seams stay at 1.5 cm``."""
_ROUNDED = re.compile(r"\b(?:round(?:ed|s|ing)? (?:up|down|it|to|the)|nearest)\b")
_PART_AHEAD = re.compile(r"f_?$|[+\-*]_?(?:N[_apo]{0,3})?$|[^b/i_c]_?N_?n?_?o_?$|ao_?$")
_AGAIN_AHEAD, _COUNT_AHEAD = re.compile(r"[_,&T]Q_?$"), re.compile(r"[^q=:/]N[_jn]{0,3}k?_?,?_?$")
_SIDE_AHEAD, _SIDE_BEHIND = re.compile(r"L_?[b*]_?$"), re.compile(r"_?[b*]_?L")
_ADDED_AHEAD, _SIDES_BEHIND = re.compile(r"[Ag]_?$"), re.compile(r"p|[^L.]{0,3}S")


def is_part(symbols: str, at: int) -> bool:
    """Whether the words beside a length make it a part of a sum, or a side of a rectangle, and no result."""
    before, behind = symbols[max(0, at - 8) : at], symbols[at + 1 : at + 5]
    if _PART_AHEAD.search(before):
        return True  # “from 1 m”, “plus two 1/2 in seams”, “2 pieces of 1.8 m”, “an allowance of 1 cm”
    if _AGAIN_AHEAD.search(before) and set("RPHDo").isdisjoint(before):
        return True  # “then turn again 3 cm”
    grows = not set("TlmAh</").isdisjoint(symbols[max(0, at - 14) : at])
    if _SIDE_BEHIND.match(behind) or (_SIDE_AHEAD.search(before) and not grows):
        return True
    divided = "/" in symbols[max(0, at - 14) : at]
    if behind[:1] == "e" and _COUNT_AHEAD.search(before) and not divided:
        return True  # “the two facings are 6 in each”
    return _ADDED_AHEAD.search(before) is not None and _SIDES_BEHIND.match(behind) is not None


def leads_to_parts(gap: str) -> bool:
    """Whether what stands behind a length lets its parts follow: ``62 in (48 in + 14 in)``."""
    return (
        ":" in gap[:3]
        or "(" in gap
        or "r" in gap
        or ("=" in gap and "q" not in gap)
        or re.match(r"W?\._k", gap) is not None
    )


def is_rounded(words: str) -> bool:
    """Whether the words around say that a length is rounded: ``round it up``, ``to the nearest``."""
    return ("round" in words or "nearest" in words) and _ROUNDED.search(words) is not None


def other_ways(ahead: str, words_ahead: str, name: str) -> frozenset[str]:
    """The words for directions in which a length is not measured: of ``36 in wide``, what is long, tall or high.

    ``name`` is what stands right behind it.
    """
    others = frozenset[str]()
    if "c" not in ahead:
        others |= _NOT_UPRIGHT if name in UPRIGHT else UPRIGHT if name in _NOT_UPRIGHT else others
    if _WIDTH.search(words_ahead):
        return others | UPRIGHT
    return others | ACROSS if _HEIGHT.search(words_ahead) else others


def only_names(said: str, words_ahead: str, behind: str, words_behind: str) -> bool:
    """Whether a length only says which thing is meant: ``a 4-inch opening``, ``with a 1 cm seam``."""
    if _KNOWN.search(words_ahead) or is_adjective(said, words_behind):
        return True
    rate = words_ahead.endswith("at") and behind.startswith("e")
    allowance = re.match(r"_?[ap]", behind) is not None and re.search(r"\b(?:an?|with)$", words_ahead) is not None
    supposed = _SUPPOSED.search(words_ahead) is not None or words_behind.startswith(("or ", "is not", "isn't"))
    return rate or allowance or supposed


def is_adjective(said: str, words_behind: str) -> bool:
    """Whether a length only tells which thing is meant: ``a 4-inch opening``, ``60"-wide cloth``."""
    return words_behind.startswith("-") or _ADJECTIVE.search(said) is not None
