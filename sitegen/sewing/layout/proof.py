"""Shows that rectangles cannot lie on a cloth of some length, for as long a length as it can, in whole numbers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from operator import mul

from sitegen.sewing.layout.dual import all_weights, without_weaker

_MOST_SUMS = 2000
_PRECISION = 256
"""The search ends at this part of the length in use."""


@dataclass(frozen=True, slots=True)
class Item:
    """A piece as the bound sees it.

    ``twice_area`` is what it covers, ``is_box`` says that it fills its rectangle, ``on_fold`` how much of the
    fold it takes, ``turns`` that it may lie a quarter turned.
    """

    across: int
    along: int
    twice_area: int
    is_box: bool = True
    on_fold: int = 0
    turns: bool = False

    def turns_on(self, strip: int) -> bool:
        """Whether there are two ways to lay it across a strip of this width."""
        return self.turns and self.across <= strip and self.along <= strip


def longest_refuted(boxes: Sequence[Item], strip: int, strips: int, least: int, used: int) -> int:
    """A length that the rectangles cannot do without, from ``least``, which is one, up to ``used``, which suffices."""
    proof = _Proof(boxes, strip, strips)
    least = max(least, proof.across_alone())
    if least >= used or proof.refutes(used - 1):
        return used
    enough = used
    while (enough - least) * _PRECISION > used:
        middle = (least + enough) // 2
        if proof.refutes(middle):
            least = middle + 1
        else:
            enough = middle
    return least


def fullest(sizes: Sequence[int], room: int) -> int:
    """The most of a room that some of the sizes fill together; all of it where there are too many sums to try."""
    sums = {0}
    for size in sizes:
        sums |= {before + size for before in sums if before + size <= room}
        if len(sums) > _MOST_SUMS:
            return room
    return max(sums)


class _Proof:
    """Weighs the rectangles across and along; those that weigh more than the cloth cannot lie on it."""

    def __init__(self, boxes: Sequence[Item], strip: int, strips: int) -> None:
        counted = Counter(_with_dead_cloth(boxes, strip))
        steady = [one for one in counted if not one.turns_on(strip)]
        turning = [one for one in counted if one.turns_on(strip)]
        self.steady = len(steady)
        self.end = len(counted)
        self.strips = strips
        self.along = [one.along for one in (*steady, *turning)] + [one.across for one in turning]
        counts = [counted[one] for one in (*steady, *turning, *turning)]
        widths = [one.across for one in (*steady, *turning)] + [one.along for one in turning]
        room = fullest([width for one in boxes for width in _widths(one, strip)], strip)
        strongest = without_weaker(all_weights(widths, room))
        self.across = [(list(map(mul, weights, counts)), whole * strips) for weights, whole in strongest]

    def across_alone(self) -> int:
        """The length of cloth whose weight is that of the pieces, weighed across and measured along."""
        return max(-(-self._together(across, self.along) // whole) for across, whole in self.across)

    def refutes(self, length: int) -> bool:
        """Whether the pieces weigh more than a cloth of this length."""
        both = all_weights([min(each, length) for each in self.along], length)
        return any(
            self._together(across, along) > whole * room for along, room in both for across, whole in self.across
        )

    def _together(self, across: Sequence[int], along: Sequence[int]) -> int:
        """The weight of all pieces: first those that lie in one way, then the lesser weight of those that may turn."""
        weights: list[int] = list(map(mul, across, along))
        total = sum(weights[: self.steady])
        for straight, turned in zip(weights[self.steady : self.end], weights[self.end :], strict=True):
            total += min(straight, turned)
        return total


def _widths(one: Item, strip: int) -> list[int]:
    """What a piece may take of the width."""
    return [one.across, one.along] if one.turns_on(strip) else [one.across]


def _with_dead_cloth(boxes: Sequence[Item], strip: int) -> list[Item]:
    """The pieces on the fold made wider by what beside them no other pieces can fill."""
    others = [width for one in boxes if not one.on_fold for width in _widths(one, strip)]
    return [replace(one, across=strip - fullest(others, strip - one.across)) if one.on_fold else one for one in boxes]
