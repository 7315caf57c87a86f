"""Which parts hang together, and by which seams."""

from __future__ import annotations

from bisect import bisect_left
from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.tutorial.model import Band, Binding, CircleSkirt, Elastic, Join, Piece, Reference, Step, Tutorial


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


Part = Piece | CircleSkirt | Band | Binding | Elastic
"""What is cut out and sewn."""


def parts_of(tutorial: Tutorial) -> tuple[Part, ...]:
    """Everything that is cut out and sewn: pieces, circles, bands, bindings and elastics."""
    return tuple(part for section in _sections(tutorial) for part in section.values())


def _sections(tutorial: Tutorial) -> tuple[Mapping[str, Part], ...]:
    return tutorial.pieces, tutorial.circles, tutorial.bands, tutorial.bindings, tutorial.elastics


def seams_of(tutorial: Tutorial) -> tuple[Seam, ...]:
    """Every seam in the order in which it is sewn. The other way of a step is left out: it sews the same again."""
    return tuple(seam_of(step, join, tutorial) for step in tutorial.steps for join in step.joins)


def seam_of(step: Step, join: Join, tutorial: Tutorial) -> Seam:
    """The seam that a join of this step makes."""
    parts = (part_of(name.name, tutorial) for name in join.names())
    return Seam(step.number, join, tuple(dict.fromkeys(part for part in parts if part is not None)))


def first_joined(one: str, other: str, seams: Sequence[Seam]) -> tuple[Seam, ...] | None:
    """The seams by which two parts hang together as soon as they do, as few as can be; None if they never do."""
    if _way(one, other, seams) is None:
        return None
    count = bisect_left(range(len(seams)), True, key=lambda count: _way(one, other, seams[:count]) is not None)
    return _way(one, other, seams[:count])


def _way(start: str, end: str, seams: Sequence[Seam]) -> tuple[Seam, ...] | None:
    """The fewest seams from part to part, None where there is no way. Parts are reached seam by seam."""
    reached: dict[str, tuple[Seam, ...]] = {start: ()}
    waiting = deque([start])
    while waiting and end not in reached:
        part = waiting.popleft()
        for seam in (seam for seam in seams if part in seam.parts):
            for beyond in seam.parts:
                if beyond not in reached:
                    reached[beyond] = (*reached[part], seam)
                    waiting.append(beyond)
    return reached.get(end)


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


def unjoined(
    names: Iterable[Reference], seams: Sequence[Seam], tutorial: Tutorial
) -> tuple[Reference, Reference] | None:
    """The first two neighbours in a chain of edges whose parts these seams do not bring together; None if all hang
    together, or if a name is unknown."""
    for one, other in pairwise(names):
        parts = part_of(one.name, tutorial), part_of(other.name, tutorial)
        if parts[0] is not None and parts[1] is not None and _way(parts[0], parts[1], seams) is None:
            return one, other
    return None
