"""Pleats and tucks: the cloth that they hide, and the width to cut.

A fold of some depth hides two layers of it, so a full knife pleat takes three times its visible depth in
all: once seen, twice hidden. Sources: common practice, no source; geometry of folds.
"""

from __future__ import annotations

from enum import Enum

from sitegen.quantities import Worked, given, minus, over, plus, times, work
from sitegen.sewing import counting

FULL = given("layers of full pleating", 3)


class Pleat(Enum):
    """A kind of pleat, by its plain name and how many folds it has."""

    KNIFE = ("knife pleat", 1)
    BOX = ("box pleat", 2)
    INVERTED = ("inverted box pleat", 2)
    TUCK = ("tuck", 1)

    def __init__(self, word: str, folds: int) -> None:
        self.word = word
        self.folds = folds


def take_up(name: str, depth: Worked, pleat: Pleat) -> Worked:
    """The cloth that one pleat hides: twice the depth of each of its folds."""
    return work(name, depth, times(_hidden_layers(pleat)))


def cut_width(name: str, finished: Worked, taken: Worked, pleats: int) -> Worked:
    """The width to pleat: the finished width and what every pleat takes up, seam allowances apart.

    Raises ValueError for fewer than none.
    """
    counting.at_least(0, "pleats", pleats)
    return work(name, finished, plus(taken, pleats)) if pleats else finished.named(name)


def finished_width(name: str, cut: Worked, taken: Worked, pleats: int) -> Worked:
    """The width once it is pleated: the cut width less what every pleat takes up.

    Raises ValueError for fewer than none.
    """
    counting.at_least(0, "pleats", pleats)
    return work(name, cut, minus(taken, pleats)) if pleats else cut.named(name)


def full_width(name: str, finished: Worked) -> Worked:
    """The width to cut for full pleating, fold against fold: three times the finished width."""
    return work(name, finished, times(FULL))


def visible(name: str, finished: Worked, pleats: int) -> Worked:
    """What is seen of each pleat when pleats cover the whole width. Raises ValueError for no pleats."""
    return work(name, finished, over(_count(pleats)))


def full_depth(name: str, seen: Worked, pleat: Pleat) -> Worked:
    """The deepest fold that does not lie over its neighbour: what is seen of a pleat ÷ its folds."""
    return work(name, seen, over(given(f"folds in a {pleat.word}", pleat.folds)))


def depth(name: str, cut: Worked, finished: Worked, pleats: int, pleat: Pleat) -> Worked:
    """The depth of fold that brings a cut width to a finished width in so many pleats.

    Raises ValueError for no pleats; a negative depth says that the cloth is too narrow.
    """
    spare = work("cloth to take up", cut, minus(finished))
    each = work(f"cloth for each {pleat.word}", spare, over(_count(pleats)))
    return work(name, each, over(_hidden_layers(pleat)))


def pleats_that_fit(name: str, cut: Worked, finished: Worked, taken: Worked) -> Worked:
    """How many whole pleats the spare cloth makes. Raises ValueError when a pleat takes nothing."""
    return counting.fitting(name, work("cloth to take up", cut, minus(finished)), taken)


def _hidden_layers(pleat: Pleat) -> Worked:
    return given(f"hidden layers of a {pleat.word}", 2 * pleat.folds)


def _count(pleats: int) -> Worked:
    return given("pleats", counting.at_least(1, "pleats", pleats))
