"""The lengths of a tutorial's texts that their words bind to one of its numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.prose import Bound, bind
from sitegen.quantities import RULER, Length
from sitegen.tutorial import Computed, Prose, Step, Tutorial


def said_lengths(tutorial: Tutorial, computed: Computed) -> Iterator[tuple[Prose, Bound]]:
    """Every such length, with the text it stands in."""
    cards = _cards(tutorial)
    for prose in tutorial.prose():
        for bound in bind(prose, cards.get(id(prose)), computed):
            yield prose, bound


def surely_bound(prose: Prose, computed: Computed) -> frozenset[tuple[int, int]]:
    """From where to where in a text the lengths reach of which its words say what they are."""
    step = _cards(computed.tutorial).get(id(prose))
    each = (bound.measurement for bound in bind(prose, step, computed) if bound.sure)
    return frozenset((found.start, found.end) for found in each)


def _cards(tutorial: Tutorial) -> dict[int, Step]:
    return {id(prose): step for step in tutorial.steps for prose in step.prose()}


def sizes_of(bound: Bound, tutorial: Tutorial) -> Sequence[int]:
    """The sizes of which its sentence speaks."""
    return range(tutorial.size_count) if bound.size is None else (bound.size,)


def values_of(bound: Bound, name: str, computed: Computed) -> list[Length]:
    """What the number of this name is in these sizes, as far as it is known."""
    worked = (computed.length(name, size) for size in sizes_of(bound, computed.tutorial))
    return [each.length for each in worked if each is not None]


def names_that_fit(bound: Bound, computed: Computed) -> list[str]:
    """Those of its names whose number it is, in all of these sizes."""
    return [name for name in bound.names if _fits(bound, name, computed)]


def _fits(bound: Bound, name: str, computed: Computed) -> bool:
    values = values_of(bound, name, computed)
    unit = bound.measurement.unit
    said = bound.measurement.length
    if bound.less:
        return any(said < value for value in values)
    return bool(values) and unit is not None and all(RULER.agrees(said, value, unit.system) for value in values)
