"""The words that call a length a result."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_TIES = frozenset("=kq:ucvt(d*g")
_SIZES = re.compile(r"LW,_?LW,?&_?LW")
_SAYS_OF_IT = re.compile(r"L[_u]{0,2}[,(][_k]{0,2}$")
_OF_IT = re.compile(r"_?o_(?:,_?&|[.)])")
_NO_THING = re.compile(r"[,(] ?(?:about|roughly|around|some|nearly|or|which is|that's|that is|i.e.)*$")
_LONGEST_REMARK = 7
_BEFORE, _BEHIND = 20, 6
"""How many symbols around a length have any say."""


def tie_of(symbols: str, index: int) -> str | None:
    """The words that call a length a result: those behind the last number before it, or right behind it."""
    first = max(0, index - _BEFORE)
    return _tie(symbols[first : index + _BEHIND], index - first)


@lru_cache(maxsize=4096)
def _tie(symbols: str, index: int) -> str | None:
    start = index
    while start > 0 and symbols[start - 1] not in "LPRX~.\n" and index - start < 8:
        start -= 1
    if symbols[start:index].rstrip("_").endswith("f"):
        return None  # “15 strips from 1 m”: it is a part
    if (
        re.search(r"[^b/i_]_?N_?n?_?o_?$", symbols[max(0, index - 8) : index])
        and "/" not in symbols[max(0, index - 14) : index]
    ):
        return None  # “2 pieces of 1.8 m”
    if re.search(r"[^b/]N$|[+\-]_?(?:N[_apo]{0,3})?$", symbols[max(0, index - 6) : index]):
        return None  # “makes nine 6 in squares”, “plus two 1/2 in seams”
    if symbols[start:index].endswith("oe"):
        return None  # “you won't get it out of one 54 in width”
    ahead, behind = symbols[start:index], symbols[index + 1 : index + 4]
    sizes = _SIZES.search(symbols, max(0, index - 8))
    if sizes is not None and sizes.start() <= index < sizes.end():
        return None  # “3 in thick, 16 in deep and 48 in long” are the sizes of one thing
    if ahead.endswith("t") and re.match(r"_?&_?L", symbols[index + 1 : index + 5]):
        return None  # “grade the layers to 3/8 in and 1/2 in”
    if "c" not in ahead and ahead.rstrip("_")[-1:] in ("A", "g") and re.match(r"p|[^L.]{0,3}S", behind):
        return None  # “add 1/2 in along each side”
    if "c" not in ahead and ahead.endswith((":", ":_")) and re.match(r"[_i]{0,3},_?L", symbols[index + 1 : index + 7]):
        return None  # “three tiers: 5 in on top, 5 in in the middle, …”
    told = re.split(r"[.;L]", behind)[0] + ("c" if re.match(r"o_?i?_?c", symbols[index + 1 : index + 6]) else "")
    if (ahead == "*" and symbols[start - 1 : start] == "L") or re.match(r"_?[b*]_?L", symbols[index + 1 : index + 5]):
        return None  # a side of a rectangle
    if (
        any(symbol in _TIES for symbol in ahead)
        or any(symbol in "cv:eE" for symbol in told)
        or "e" in re.split("&", ahead)[-1]
        or "no" in ahead
        or (ahead.endswith("b") and set("TAlmu") & set(ahead))
    ):
        return ahead
    if (
        ahead.endswith("T")
        and "P" in symbols[max(0, index - 14) : index]
        and "h" in symbols[max(0, index - 14) : index]
    ):
        return ahead  # “shrinks by 5%: 60 in will lose 3 in”
    if re.search(r"L[^LN.]{0,4}[HR]_?$", symbols[max(0, index - 8) : index]):
        return ahead  # “full width 57 cm, half pattern 28.5 cm”
    if re.search(r"N[^L.]{0,4}L[_oe,&]{0,5}T$", symbols[max(0, index - 10) : index]):
        return ahead  # “6 pleats of 2 in eat up 12 in”
    if re.search(r"L[^L]{0,3}T_?tL,_?T$", symbols[max(0, index - 14) : index]):
        return ahead  # “42 in long. Trim it to 36 1/2 in, which removes 5 1/2 in”
    if re.search(r"No?_?T$", symbols[max(0, start - 3) : index].rstrip("_")):
        return ahead  # “Four of them eat up 9 in”
    if re.match(r"[_i]{0,2}fS", symbols[index + 1 : index + 5]):
        return ahead
    near = symbols[max(0, index - 14) : index]
    if re.search(r"[,:.]_?$", ahead) and (behind[:1] == "k" or any(symbol in near for symbol in "PRDH/evTz<>")):
        return ahead
    nominal = symbols[start - 1 : start] == "." or re.match(r"[;:]", ahead) is not None
    if nominal and ((behind[:1] in (".", ",", "") and ahead) or (behind[:1] == "o" and not ahead)):
        return ahead  # a sentence without a verb: “Length of the border 112 cm.”
    if nominal and "L" in near and set("PRDH/") & set(near):
        return ahead  # “80% of the opening. My opening is 25 in. Out came 20 in.”
    if re.search(r"P_?o_[^.]*L_?$", symbols[max(0, index - 16) : index]) and near.count("L") == 1:
        return ahead
    return ahead if "L" in near and re.search(r"(?:[DH][^L.]*|H[^L.]{0,3}L[^L.]*)$", near) else None


def told_of_the_length_before(items: Sequence[Item], symbols: str, said: Said, share: int) -> int | None:
    """The length of which a share says what it is of another: ``7 in finished, about 78% of it, and 7 3/4 in cut``."""
    first = max(0, share - _LONGEST_REMARK)
    before = _SAYS_OF_IT.search(symbols[first:share])
    if before is None or not _OF_IT.match(symbols, share + 1):
        return None
    words = " ".join(said(item) for item in items[first + before.start() + 1 : share]).lower()
    return first + before.start() if _NO_THING.search(words) else None


def is_of_another(items: Sequence[Item], symbols: str, said: Said, share: int, length: int) -> bool:
    """Whether a share is of something that is not named beside the length: ``half the chest plus 2 in``."""
    if symbols[share + 1 : share + 3] != "_+":
        return False
    whole = said(items[share + 1]).lower().split()[-1]
    return not any(whole in said(item).lower().split() for item in items[max(0, length - 3) : length + 3])
