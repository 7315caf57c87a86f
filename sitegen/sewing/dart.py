"""Darts: what they take from an edge, and how long their legs are. Sources: common practice; geometry."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.quantities import Worked, given, minus, over, work
from sitegen.sewing import counting, geometry


def intake(name: str, longer: Worked, shorter: Worked, darts: int) -> Worked:
    """The width of each dart at the edge, when darts alone bring one edge to another.

    Raises ValueError for no darts.
    """
    spare = work(f"{longer.name} less {shorter.name}", longer, minus(shorter))
    return work(name, spare, over(given("darts", counting.at_least(1, "darts", darts))))


def sewn_edge(name: str, cut: Worked, taken: Sequence[tuple[Worked, int]]) -> Worked:
    """The length of an edge once its darts are sewn: cut edge less each width, as often as there are such darts."""
    return work(name, cut, *(minus(width, count) for width, count in taken))


def leg(name: str, taken: Worked, length: Worked) -> Worked:
    """The length of either leg of a dart, from the edge to its point: the long side over half of its width."""
    return geometry.slant(name, length, work("half of the dart", taken, over(given("legs", 2))))


def other_leg(name: str, first: Worked) -> Worked:
    """The length of the other leg: that of the first, since they are sewn onto each other and end at one point.

    Source: common practice, legs are trued to equal length; geometry.
    """
    return work(name, first)
