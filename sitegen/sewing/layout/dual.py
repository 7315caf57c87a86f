"""Whole-number functions that show when rectangles cannot lie on a cloth, whatever the arrangement.

A function of this family gives every size a weight such that sizes which fit side by side never weigh more
than the room they fit in. Rectangles that fit a cloth then keep, with any such function across and any along,
weights whose products never exceed the weight of the cloth.
Source: dual feasible functions for packing, Fekete and Schepers, "A general framework for bounds for
higher-dimensional orthogonal packing problems" (2004); Carlier, Clautiaux and Moukrim, "New reduction
procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation" (2007).
"""

from __future__ import annotations

from collections.abc import Sequence

Weights = tuple[tuple[int, ...], int]
"""The weight of each size, in the order of the sizes, and the weight of the room."""
_PARTS = range(1, 7)
_MOST_STEPS = 40
"""Of more steps than these only some are tried, so that many different sizes do not take long."""


def all_weights(sizes: Sequence[int], room: int) -> list[Weights]:
    """The weights that the functions give to these sizes in this room, each set once."""
    found: dict[Weights, None] = {(tuple(sizes), room): None}
    near = {step for size in sizes for step in (size, size + 1, room - size, room - size + 1)}
    steps = sorted(step for step in near if 0 < 2 * step <= room)
    for step in steps[:: 1 + len(steps) // _MOST_STEPS]:
        found[_large_or_nothing(sizes, room, step)] = None
        found[_whole_steps(sizes, room, step)] = None
    for parts in _PARTS:
        found[_rounded_parts(sizes, room, parts)] = None
    return list(found)


def without_weaker(many: Sequence[Weights]) -> list[Weights]:
    """The weights without those that show nothing which another does not show as well."""
    kept: list[Weights] = []
    for weights in many:
        if not any(_at_least(one, weights) for one in kept):
            kept = [one for one in kept if not _at_least(weights, one)]
            kept.append(weights)
    return kept


def _at_least(one: Weights, other: Weights) -> bool:
    """Whether every size takes at least as much of the room by one set of weights as by the other."""
    return all(mine * other[1] >= its * one[1] for mine, its in zip(one[0], other[0], strict=True))


def _large_or_nothing(sizes: Sequence[int], room: int, step: int) -> Weights:
    """Sizes under the step weigh nothing, and those beside which nothing of the step fits weigh the whole room."""
    return tuple(room if size > room - step else size if size >= step else 0 for size in sizes), room


def _whole_steps(sizes: Sequence[int], room: int, step: int) -> Weights:
    """A small size counts the whole steps in it; a large one what it takes from the steps in the room."""
    most = room // step

    def weight(size: int) -> int:
        if 2 * size > room:
            return 2 * (most - (room - size) // step)
        return most if 2 * size == room else 2 * (size // step)

    return tuple(weight(size) for size in sizes), 2 * most


def _rounded_parts(sizes: Sequence[int], room: int, parts: int) -> Weights:
    """Sizes rounded down to whole parts of the room, which is divided into one part more than it is said to have."""

    def weight(size: int) -> int:
        whole, rest = divmod((parts + 1) * size, room)
        return whole * room if rest else parts * size

    return tuple(weight(size) for size in sizes), parts * room
