"""From each size to the next: which way its name and its body measurements go."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import pairwise

from sitegen.tutorial import Computed, Tutorial

LETTERS = re.compile(r"(?:(?P<times>\d)?(?P<more>X{0,4})(?P<end>[SL])|M)", re.IGNORECASE)
NUMBER = re.compile(r"\d{1,3}(?:[.,]5)?")


def runs_of(tutorial: Tutorial) -> list[range]:
    """The indices of each run of sizes."""
    starts = (0, *tutorial.runs, len(tutorial.sizes))
    return [range(start, end) for start, end in pairwise(starts)]


def turned_names(tutorial: Tutorial) -> dict[int, bool]:
    """The sizes whose name goes against the run, by index, and whether the run rises."""
    found: dict[int, bool] = {}
    for run in runs_of(tutorial):
        ranks = [_rank(tutorial.sizes[size]) for size in run]
        known = [rank for rank in ranks if rank is not None]
        if len(known) != len(ranks) or len({_is_number(tutorial.sizes[size]) for size in run}) != 1:
            continue
        signs = {later: _sign(after - before) for later, before, after in zip(run[1:], known, known[1:], strict=False)}
        way = _way(signs.values())
        found |= {size: way > 0 for size, sign in signs.items() if sign == -way}
    return found


def turned_bodies(computed: Computed) -> dict[int, bool]:
    """The sizes at which every body measurement goes against the run, by index, and whether the run rises."""
    found: dict[int, bool] = {}
    for run in runs_of(computed.tutorial):
        steps = {size: steps_to(size, computed) for size in run[1:]}
        way = _way(sign for signs in steps.values() for sign in signs.values())
        for size, signs in steps.items():
            moved = [sign for sign in signs.values() if sign]
            if len(moved) >= 2 and all(sign == -way for sign in moved):
                found[size] = way > 0
    return found


def odd_bodies(run: range, computed: Computed) -> Iterator[tuple[str, int, bool]]:
    """Measurements that go against the run where others go with it: name, index of the size, whether the run rises."""
    steps = {size: steps_to(size, computed) for size in run[1:]}
    way = _way(sign for signs in steps.values() for sign in signs.values())
    for size, signs in steps.items():
        if way in signs.values():
            yield from ((name, size, way > 0) for name, sign in signs.items() if sign == -way)


def steps_to(size: int, computed: Computed) -> dict[str, int]:
    """For each body measurement whether it rises (1), falls (-1) or stays (0) from the size before to this one."""
    found: dict[str, int] = {}
    for name in computed.tutorial.body:
        before, after = (computed.number(f"body.{name}", index) for index in (size - 1, size))
        if before is not None and after is not None:
            found[name] = _sign((after.length - before.length).mm)
    return found


def _rank(name: str) -> Fraction | None:
    """Where a size stands among its like: S below M below L, 92 below 98; None for a name of another kind."""
    if NUMBER.fullmatch(name):
        return Fraction(name.replace(",", "."))
    match = LETTERS.fullmatch(name)
    if match is None or (match["times"] and len(match["more"]) != 1):
        return None
    if match["end"] is None:
        return Fraction(0)
    extra = int(match["times"] or len(match["more"]))
    return Fraction(1 + extra if match["end"].upper() == "L" else -1 - extra)


def _is_number(name: str) -> bool:
    return NUMBER.fullmatch(name) is not None


def _sign(number: Fraction) -> int:
    return (number > 0) - (number < 0)


def _way(signs: Iterable[int]) -> int:
    """1 for a run that rises, or that does so as often as not, -1 for one that falls."""
    return 1 if sum(signs) >= 0 else -1
