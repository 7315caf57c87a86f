"""What must come before what, and what can be done at the same time."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

from sitegen.tutorial.making import graph
from sitegen.tutorial.making.joining import Joining, hanging_together, neighbours, seams_of
from sitegen.tutorial.making.work import Work, works_of
from sitegen.tutorial.model import Reference, Step, Tutorial


@dataclass(frozen=True, slots=True)
class Link:
    """One step before another. ``through`` names what the later one uses and the earlier one made or changed; it is
    empty where only the author's own order is kept: both work on one thing, or one does not say what it makes."""

    before: int
    after: int
    through: tuple[str, ...]

    @property
    def sure(self) -> bool:
        """Whether the later step uses what the earlier one made or changed."""
        return bool(self.through)


@dataclass(frozen=True, slots=True)
class Making:
    """The order of making of a whole tutorial. Steps are named by their numbers."""

    works: tuple[Work, ...]
    links: tuple[Link, ...]

    def must_come_before(self, step: int) -> tuple[int, ...]:
        """The steps whose work this one uses, at once or by way of others. What is not certain is left out."""
        return tuple(sorted(graph.before(step, self._pairs(sure=True))))

    def can_be_done_together(self) -> tuple[tuple[int, int], ...]:
        """Every two steps of which neither waits for the other, so that two people can do them at one time. What is
        not certain is left out: steps on the same thing keep the author's order."""
        pairs = self._pairs(sure=False)
        steps = [work.step for work in self.works]
        earlier = {step: graph.before(step, pairs) for step in steps}
        return tuple((one, other) for one, other in combinations(steps, 2) if one not in earlier[other])

    def layers(self) -> tuple[tuple[int, ...], ...]:
        """Steps by layers: each waits for steps of earlier layers only, so those of one layer can be done together."""
        return graph.layers((work.step for work in self.works), self._pairs(sure=False))

    def longest_path(self) -> graph.LongestPath | None:
        """The steps that wait for each other longest, with their minutes; None when a step has no minutes."""
        minutes = {work.step: work.minutes for work in self.works if work.minutes is not None}
        if len(minutes) < len(self.works):
            return None
        return graph.longest_path(minutes, self._pairs(sure=False))

    def _pairs(self, *, sure: bool) -> frozenset[tuple[int, int]]:
        return frozenset((link.before, link.after) for link in self.links if link.sure or not sure)


def making_of(tutorial: Tutorial) -> Making:
    """The order of making of a tutorial.

    A step must come after another when it uses what that one made or changed: a piece that was cut, an edge that was
    stabilised, sewn, finished or turned, pieces that were joined so that their edges run on in one. It keeps its place
    behind another when both work on the same thing, or on things that are already sewn together, or when one of the
    two does not say what it makes.
    """
    works, seams = works_of(tutorial), seams_of(tutorial)
    joining = Joining(seams)
    links: list[Link] = []
    for index, (work, step) in enumerate(zip(works, tutorial.steps, strict=True)):
        running_on = _running_on(step, joining, tutorial)
        earlier_seams = [seam for seam in seams if seam.step < work.step]
        on_the_table = hanging_together(work.handles, earlier_seams)
        for earlier in works[:index]:
            through = sorted((earlier.makes & work.uses) | running_on.get(earlier.step, set()))
            same_thing = bool(earlier.handles & on_the_table) or not (earlier.told and work.told)
            if through or same_thing:
                links.append(Link(earlier.step, work.step, tuple(through)))
    return Making(works, tuple(links))


def _running_on(step: Step, joining: Joining, tutorial: Tutorial) -> dict[int, set[str]]:
    """The earlier steps that made edges of several pieces run on in one, and the edges that they joined."""
    chains: list[tuple[Reference, ...]] = [chain for join in step.joins for chain in join.chains]
    chains += [tutorial.hems[name.name].edges for name in step.hems if name.name in tutorial.hems]
    pairs = {(part, beyond) for chain in chains for _, _, part, beyond in neighbours(chain, tutorial)}
    found: dict[int, set[str]] = {}
    for part, beyond in pairs:
        way = joining.way(part, beyond) or ()
        if all(seam.step < step.number for seam in way):
            for seam in way:
                found.setdefault(seam.step, set()).update(name.name for name in seam.join.names())
    return found
