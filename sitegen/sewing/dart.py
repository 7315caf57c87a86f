"""Darts: what they take from an edge, and how long their legs are. Sources: common practice; geometry."""

from __future__ import annotations

from sitegen.quantities import Worked, given, minus, over, work
from sitegen.sewing import counting, geometry


def intake(name: str, longer: Worked, shorter: Worked, darts: int) -> Worked:
    """The width of each dart at the edge, when darts alone bring one edge to another.

    Raises ValueError for no darts.
    """
    spare = work(f"{longer.name} less {shorter.name}", longer, minus(shorter))
    return work(name, spare, over(given("darts", counting.at_least(1, "darts", darts))))


def sewn_edge(name: str, cut: Worked, taken: Worked, darts: int) -> Worked:
    """The length of an edge once its darts are sewn: cut edge less the width of every dart.

    Raises ValueError for fewer than none.
    """
    return work(name, cut, minus(taken, darts)) if counting.at_least(0, "darts", darts) else cut.named(name)


def leg(name: str, taken: Worked, length: Worked) -> Worked:
    """The length of either leg of a dart, from the edge to its point: the long side over half of its width."""
    return geometry.slant(name, length, work("half of the dart", taken, over(given("legs", 2))))
