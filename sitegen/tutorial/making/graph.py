"""Sums over an order of steps. A pair (1, 3) says that step 1 comes before step 3; the first is always the smaller."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

Pairs = Collection[tuple[int, int]]


@dataclass(frozen=True, slots=True)
class LongestPath:
    """Steps of which each waits for the one before it, and the minutes that they take together."""

    steps: tuple[int, ...]
    minutes: int


def before(step: int, pairs: Pairs) -> frozenset[int]:
    """Every step that comes before this one, at once or by way of others."""
    found: set[int] = set()
    for one, other in sorted(pairs, key=lambda pair: pair[1], reverse=True):
        if other == step or other in found:
            found.add(one)
    return frozenset(found)


def layers(steps: Iterable[int], pairs: Pairs) -> tuple[tuple[int, ...], ...]:
    """Steps by layers: those that wait for nothing, then those that wait for these only, and so on."""
    depth: dict[int, int] = {}
    for step in sorted(steps):
        depth[step] = max((depth[one] + 1 for one, other in pairs if other == step), default=0)
    count = max(depth.values(), default=-1) + 1
    return tuple(tuple(step for step in depth if depth[step] == level) for level in range(count))


def longest_path(minutes: Mapping[int, int], pairs: Pairs) -> LongestPath:
    """The way through the steps that takes longest: how long the work takes with any number of hands."""
    best: dict[int, LongestPath] = {}
    for step in sorted(minutes):
        ways = [best[one] for one, other in sorted(pairs) if other == step]
        longest = max(ways, key=lambda way: way.minutes, default=LongestPath((), 0))
        best[step] = LongestPath((*longest.steps, step), longest.minutes + minutes[step])
    return max(best.values(), key=lambda way: way.minutes, default=LongestPath((), 0))
