"""Defines every number of a tutorial."""

from __future__ import annotations

from collections.abc import Callable

from sitegen.tutorial.compute.bands_and_hems import define_bands, define_elastics, define_hems
from sitegen.tutorial.compute.boxed_corners import define_boxed
from sitegen.tutorial.compute.changes import define_changes
from sitegen.tutorial.compute.cloth import define_cloth
from sitegen.tutorial.compute.darts import define_darts
from sitegen.tutorial.compute.drops import define_drops
from sitegen.tutorial.compute.given import define_given
from sitegen.tutorial.compute.lengths_of_pieces import define_pieces
from sitegen.tutorial.compute.marks_and_folds import define_gathers, define_pleats, define_spacings
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.compute.strips_and_circles import define_bindings, define_circles
from sitegen.tutorial.compute.swaps import define_swaps
from sitegen.tutorial.compute.trims import define_trims
from sitegen.tutorial.model import Tutorial


def numbers_of(tutorial: Tutorial, before: Callable[[Numbers], None] | None = None) -> Numbers:
    """The makers of all numbers. ``before`` may define some first: the first definition of a name stands."""
    numbers = Numbers(tutorial.size_count)
    if before is not None:
        before(numbers)
    define_given(tutorial, numbers)
    define_darts(tutorial, numbers)
    define_hems(tutorial, numbers)
    define_elastics(tutorial, numbers)
    define_bands(tutorial, numbers)
    define_pieces(tutorial, numbers)
    define_cloth(tutorial, numbers)
    define_changes(tutorial, numbers)
    define_swaps(tutorial, numbers)
    define_gathers(tutorial, numbers)
    define_pleats(tutorial, numbers)
    define_bindings(tutorial, numbers)
    define_circles(tutorial, numbers)
    define_boxed(tutorial, numbers)
    define_drops(tutorial, numbers)
    define_spacings(tutorial, numbers)
    define_trims(tutorial, numbers)
    return numbers
