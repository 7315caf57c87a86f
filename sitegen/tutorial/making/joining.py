"""Which parts hang together, and by which seams."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.tutorial.model import (
    Band,
    Binding,
    CircleSkirt,
    Elastic,
    Join,
    Piece,
    Reference,
    Step,
    Trim,
    Tutorial,
)


@dataclass(frozen=True, slots=True)
class Seam:
    """A join with the step that sews it and the parts that it brings together."""

    step: int
    join: Join
    parts: tuple[str, ...]


def part_of(name: str, tutorial: Tutorial) -> str | None:
    """The part that a name in a chain belongs to: ``front`` for ``front.side``, None if unknown."""
    whole = name.partition(".")[0]
    return whole if any(whole in section for section in _sections(tutorial)) else None


Part = Piece | CircleSkirt | Band | Binding | Elastic | Trim
"""What is cut out and sewn, and what is sewn on or drawn in."""


def parts_of(tutorial: Tutorial) -> tuple[Part, ...]:
    """Everything that is cut out and sewn, sewn on or drawn in: pieces, circles, bands, bindings, elastics, trims."""
    return tuple(part for section in _sections(tutorial) for part in section.values())


def _sections(tutorial: Tutorial) -> tuple[Mapping[str, Part], ...]:
    return tutorial.pieces, tutorial.circles, tutorial.bands, tutorial.bindings, tutorial.elastics, tutorial.trims


def seams_of(tutorial: Tutorial) -> tuple[Seam, ...]:
    """Every seam in the order in which it is sewn. The other way of a step is left out: it sews the same again."""
    return tuple(seam_of(step, join, tutorial) for step in tutorial.steps for join in step.joins)


def seam_of(step: Step, join: Join, tutorial: Tutorial) -> Seam:
    """The seam that a join of this step makes."""
    parts = (part_of(name.name, tutorial) for name in join.names())
    return Seam(step.number, join, tuple(dict.fromkeys(part for part in parts if part is not None)))


class Joining:
    """How parts come to hang together, seam by seam.

    A seam that brings two wholes together hangs the smaller below the larger. So the way up from a part passes later
    and later seams, and where the ways of two parts meet, the last seam passed is the one since which they hang
    together.
    """

    def __init__(self, seams: Sequence[Seam]) -> None:
        self._seams = seams
        self._sewn_by: dict[str, list[int]] = {}
        self._above: dict[str, tuple[str, int]] = {}
        size: dict[str, int] = {}
        for number, seam in enumerate(seams, 1):
            for part in seam.parts:
                self._sewn_by.setdefault(part, []).append(number)
                one, other = self._top(seam.parts[0]), self._top(part)
                if one != other:
                    low, high = sorted((one, other), key=lambda top: size.get(top, 1))
                    self._above[low] = (high, number)
                    size[high] = size.get(low, 1) + size.get(high, 1)

    def _top(self, part: str) -> str:
        while part in self._above:
            part = self._above[part][0]
        return part

    def since(self, one: str, other: str) -> int | None:
        """How many seams must be sewn until two parts hang together; None if they never do."""
        number = 0
        while one != other:
            ways = [(self._above[part], part) for part in (one, other) if part in self._above]
            if not ways:
                return None
            (above, number), part = min(ways, key=lambda way: way[0][1])
            one, other = (above, other) if part == one else (one, above)
        return number

    def way(self, one: str, other: str) -> tuple[Seam, ...] | None:
        """The fewest seams by which two parts hang together as soon as they do; None if they never do."""
        sewn = self.since(one, other)
        if sewn is None:
            return None
        reached: dict[str, tuple[Seam, ...]] = {one: ()}
        waiting = deque([one])
        while other not in reached:
            part = waiting.popleft()
            for seam in (self._seams[number - 1] for number in self._sewn_by[part] if number <= sewn):
                new = [beyond for beyond in seam.parts if beyond not in reached]
                reached.update((beyond, (*reached[part], seam)) for beyond in new)
                waiting.extend(new)
        return reached[other]


def hanging_together(parts: Iterable[str], seams: Iterable[Seam]) -> frozenset[str]:
    """These parts and everything that these seams have sewn to them."""
    found = set(parts)
    groups = [set(seam.parts) for seam in seams]
    grown = True
    while grown:
        grown = False
        for group in groups:
            if group & found and not group <= found:
                found |= group
                grown = True
    return frozenset(found)


def neighbours(names: Iterable[Reference], tutorial: Tutorial) -> Iterable[tuple[Reference, Reference, str, str]]:
    """Every two neighbours in a chain of edges with the parts that they belong to. Unknown names are passed over."""
    for one, other in pairwise(names):
        part, beyond = part_of(one.name, tutorial), part_of(other.name, tutorial)
        if part is not None and beyond is not None:
            yield one, other, part, beyond


def unjoined(
    names: Iterable[Reference], seams: Sequence[Seam], tutorial: Tutorial
) -> tuple[Reference, Reference] | None:
    """The first two neighbours in a chain of edges whose parts these seams do not bring together; None if all hang
    together, or if a name is unknown."""
    joining = Joining(seams)
    for one, other, part, beyond in neighbours(names, tutorial):
        if joining.since(part, beyond) is None:
            return one, other
    return None
