"""The length of cloth that no layout can do without, in whole numbers.

Shapes that do not fill their rectangle count with their area and their length only, since others may lie in
what they leave free. A layout as long as the bound is the best there is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

from sitegen.sewing.layout.proof import Item, fullest, longest_refuted


class Reason(Enum):
    """What shows that no layout can be shorter. The value says it in words."""

    LONGEST = "the longest piece takes as much"
    AREA = "the area of the pieces alone takes as much"
    FOLD = "the pieces on the fold lie one after the other"
    BESIDE = "the pieces do not fit beside each other on less"
    PARTS = "the part in one layer follows the folded part"


@dataclass(frozen=True, slots=True)
class Least:
    """A length that no layout can do without, and why."""

    length: int
    reason: Reason


def least(items: Sequence[Item], strip: int, strips: int, used: int) -> Least:
    """The longest length found that no layout on so many strips of this width can do without; never above ``used``.

    ``used`` is the length of some layout of these items, so that the search knows where to end.
    """
    if not items:
        return Least(0, Reason.LONGEST)
    found = [
        Least(max(min(one.along, one.across) if one.turns_on(strip) else one.along for one in items), Reason.LONGEST),
        Least(sum(one.twice_area for one in items) // (2 * strip * strips), Reason.AREA),
        Least(_along_fold(items, strip, strips), Reason.FOLD),
    ]
    best = max(found, key=lambda each: each.length)
    boxes = [one for one in items if one.is_box]
    if best.length >= used or not boxes:
        return best
    beside = longest_refuted(boxes, strip, strips, best.length, used)
    return Least(beside, Reason.BESIDE) if beside > best.length else best


def _along_fold(items: Sequence[Item], strip: int, strips: int) -> int:
    """The least length of the folds: what lies on them, and one piece that fits beside none of that."""
    on_fold = [one for one in items if one.on_fold]
    taken = sum(one.on_fold for one in on_fold)
    if strips > 1:
        return taken - fullest([one.on_fold for one in on_fold], taken // 2)
    with_one = [
        one.along + sum(each.on_fold for each in on_fold if each.is_box and each.across + one.across > strip)
        for one in items
        if one.is_box and not one.on_fold and not one.turns
    ]
    return max(taken, *with_one, 0)
