"""Defines the ratio that serves when a band is made from another fabric."""

from __future__ import annotations

from sitegen.quantities import Worked
from sitegen.sewing import band
from sitegen.tutorial.compute.given import share_maker
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Swap, Tutorial


def define_swaps(tutorial: Tutorial, numbers: Numbers) -> None:
    """For each swap the least ratio that the other fabric allows, and the one to use."""
    for swap in tutorial.swaps.values():
        _define_swap(swap, numbers)


def _define_swap(swap: Swap, numbers: Numbers) -> None:
    key = swap.key

    def least(size: int) -> Worked:
        opening = numbers.length_at(f"{swap.band.name}.opening_length", size)
        reach_name = f"{swap.band.name}.reach"
        reach = numbers.length_at(reach_name, size) if reach_name in numbers else opening
        longer = reach if reach.length > opening.length else opening
        stretch = numbers.at(f"{swap.fabric.name}.stretch_across", size)
        return band.least_ratio(words_of(f"{key}.least_ratio"), opening, longer, stretch)

    def in_use(size: int) -> Worked:
        needed = [numbers.at(f"{key}.least_ratio", each) for each in range(numbers.size_count)]
        return band.whole_percent(words_of(f"{key}.ratio"), max(needed, key=lambda each: each.ratio))

    numbers.define(f"{key}.least_ratio", least)
    numbers.define(f"{key}.ratio", share_maker(swap.ratio, "ratio") if swap.ratio is not None else in_use)
