"""What is cut for a finished length with an allowance on both sides: ``45 cm finished, 1 cm at each edge, cut 47 cm``.

Three lengths that stand next to each other, told as finished, as an allowance on both sides and as cut: the cut one is
the finished one with the allowance twice, and nobody means it once.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import permutations

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_FINISHED = re.compile(r"\b(?:finish(?:ed|es)?|made up|when (?:it's )?(?:done|ready))\b")
_CUT = re.compile(r"\b(?:cut(?:ting)?|mark out)\b")
_ALLOWED = re.compile(r"\b(?:seams?|allowances?|turnings?)\b")
_BOTH = re.compile(r"\b(?:seams|allowances|seam allowance)\b")
_ROUND = re.compile(r"\b(?:square|circles?|diameter)\b")
"""What has a seam at both ends whichever way it is measured."""
_OTHERS = frozenset("X~PRDHN*/bz")
"""What may not stand among the three."""
_FARTHEST = 30
"""Items from the first of the three to the last."""
_NEAR = 30
"""Items around in which other lengths may explain what is cut."""
_SMALL = 4
"""How many times as long as the allowance the finished length is at least."""


@dataclass(frozen=True, slots=True)
class WrongCut:
    """A cut length that is not the finished one with the allowance on both sides: what it should be, and the sum."""

    index: int
    value: Fraction
    words: str


def wrong_cuts(items: Sequence[Item], symbols: str, said: Said) -> Iterator[WrongCut]:
    """Every such cut length, in order."""
    lengths = [at for at, symbol in enumerate(symbols) if symbol == "L" and not items[at].times]
    for three in zip(lengths, lengths[1:], lengths[2:], strict=False):
        if three[-1] - three[0] <= _FARTHEST and _are_alike(items, three) and _stand_alone(symbols, three):
            yield from _of_three(items, symbols, said, three)


def _are_alike(items: Sequence[Item], three: Sequence[int]) -> bool:
    """Whether three lengths are told in one unit, and each exactly."""
    return len({items[at].unit for at in three}) == 1 and not any(items[at].hedged for at in three)


def _stand_alone(symbols: str, three: Sequence[int]) -> bool:
    """Whether nothing else that counts or measures stands among three lengths."""
    within = re.sub(r"N_?(?=L)|N_?n_?", "", symbols[three[0] : three[-1] + 3])
    return _OTHERS.isdisjoint(within) and "\n" not in within


def _of_three(items: Sequence[Item], symbols: str, said: Said, three: Sequence[int]) -> Iterator[WrongCut]:
    before, behind = _words_beside(items, symbols, said, three)
    for finished, allowance, cut in permutations(three):
        whole, seam, result = items[finished], items[allowance], items[cut]
        if (
            result.unit is None
            or "." in symbols[cut:finished]  # the next sentence finishes another one
            or not _FINISHED.search(before[finished] + behind[finished])
            or not _CUT.search(before[cut])
            or _FINISHED.search(before[cut] + behind[cut])
            or not _ALLOWED.search(before[allowance] + behind[allowance])
            or seam.value * _SMALL > whole.value
        ):
            continue
        beside = before[allowance] + behind[allowance]
        sides = "S" in "".join(_beside(symbols, allowance))
        around = _BOTH.search(beside) and _ROUND.search(" ".join((*before.values(), *behind.values())))
        value = whole.value + 2 * seam.value
        if not (sides or around) or not is_like(result.value, value, result.unit):
            continue
        if agrees(result.value, result.unit, (value,), Exactness.EXACT, hedged=False):
            continue
        if not _is_explained(items, symbols, three, result.value - value):
            yield WrongCut(cut, value, f"{said(whole)} + 2 × {said(seam)}")


def _words_beside(
    items: Sequence[Item], symbols: str, said: Said, three: Sequence[int]
) -> tuple[dict[int, str], dict[int, str]]:
    """The words before and behind each length, up to the next length or the end of the clause."""
    before, behind = dict[int, str](), dict[int, str]()
    for at in three:
        ahead, following = _beside(symbols, at)
        before[at] = " ".join(said(item) for item in items[at - len(ahead) : at]).lower() + " "
        last = at + 1 + len(re.split("[,:]", following)[0])
        behind[at] = " ".join(said(item) for item in items[at + 1 : last]).lower() + " "
    return before, behind


def _beside(symbols: str, at: int) -> tuple[str, str]:
    """The symbols before and behind a length, up to the next length or the end of the sentence."""
    before, behind = symbols[max(0, at - _FARTHEST) : at], symbols[at + 1 : at + 1 + _FARTHEST]
    return re.split(r"[L.;]", before)[-1], re.split(r"[L.;]", behind)[0]


def _is_explained(items: Sequence[Item], symbols: str, three: Sequence[int], more: Fraction) -> bool:
    """Whether another length around is what the cut length has more, or less, once or twice."""
    around = range(max(0, three[0] - _NEAR), min(len(items), three[-1] + _NEAR))
    others = [items[at].value for at in around if symbols[at] == "L" and at not in three]
    return any(abs(more) in (other, 2 * other) for other in others)
