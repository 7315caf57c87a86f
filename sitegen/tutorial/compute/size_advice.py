"""Which size of a tutorial to make, from a person's measurements. Never from age."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from sitegen.quantities import RULER, System, Worked, cm, given, inches
from sitegen.sewing import ease, size_choice
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import Girth, Tutorial

TOLERANCE = {System.INCHES: inches("1/2"), System.CENTIMETRES: cm(1)}
"""By how much a person may be over a size and still be between two sizes (common practice, no source)."""
NO_SYSTEMS: Mapping[str, System] = {}
"""Everything is measured in the units of the tutorial."""


@dataclass(frozen=True, slots=True)
class SizeAdvice:
    """The size to make out of one run of sizes."""

    sizes: tuple[str, ...]
    found: size_choice.Recommendation

    @property
    def size(self) -> str:
        """The size for the whole garment."""
        return self.sizes[self.found.index]

    def size_of(self, choice: size_choice.Choice) -> str:
        """The size that one measurement asks for, with the two between which it lies, or that it lies outside."""
        name = f"size {self.sizes[choice.index]}"
        if choice.between is not None:
            smaller, larger = (self.sizes[index] for index in choice.between)
            return f"{name}, between {smaller} and {larger}"
        return f"{name}, {choice.fit.value}" if choice.fit in size_choice.OUTSIDE else name


@dataclass(frozen=True, slots=True)
class SizeTable:
    """One run of sizes, such as children's or adults', with every measurement that is known in all of them."""

    sizes: tuple[str, ...]
    rows: tuple[size_choice.Row, ...]


@dataclass(frozen=True, slots=True)
class SizeRule:
    """By what a size of a tutorial is chosen: a table for each run of sizes, and what is allowed over a size."""

    tables: tuple[SizeTable, ...]
    tolerance: Worked
    stretches: bool


def size_rule(computed: Computed, system: System) -> SizeRule:
    """The tables as they are printed in one system of units, so that who measures what they print has that size.

    The tolerance is that of the units of the tutorial in both systems. Raises ValueError, in words for the author, when
    the tutorial has one size only, or when its sizes do not rise.
    """
    tutorial = computed.tutorial
    if len(tutorial.sizes) < 2:
        raise ValueError("this tutorial has one size only, so there is none to choose")
    tables = []
    for start, end in pairwise((0, *tutorial.runs, len(tutorial.sizes))):
        found = (_row(name, range(start, end), computed, system) for name in tutorial.body)
        tables.append(SizeTable(tutorial.sizes[start:end], tuple(row for row in found if row is not None)))
    tolerance = given("tolerance", TOLERANCE[tutorial.first_system])
    return SizeRule(tuple(tables), tolerance, _stretches(tutorial))


def size_advice(
    computed: Computed,
    person: Mapping[str, Worked],
    *,
    matters_most: str | None = None,
    measured_in: Mapping[str, System] = NO_SYSTEMS,
) -> tuple[SizeAdvice, ...]:
    """The size to make, one for each run of sizes, such as children's and adults'.

    ``person`` holds measurements by the names of the tutorial's body measurements, ``measured_in`` the units of those
    that were not measured in the tutorial's own. Raises ValueError, in words for the author, when the tutorial has one
    size only, when none of the measurements is in its table, or when its sizes do not rise.
    """
    first = computed.tutorial.first_system
    rules = {system: size_rule(computed, system) for system in {first, *measured_in.values()}}
    rule = rules[first]
    advice = []
    for place, table in enumerate(rule.tables):
        rows = [
            row
            for name in computed.tutorial.body
            for row in rules[measured_in.get(name, first)].tables[place].rows
            if row.measure == name
        ]
        found = size_choice.choose_all(
            rows, person, rule.tolerance, stretches=rule.stretches, matters_most=matters_most
        )
        advice.append(SizeAdvice(table.sizes, found))
    return tuple(advice)


def _row(name: str, sizes: range, computed: Computed, system: System) -> size_choice.Row | None:
    """One body measurement of the table with the garment there; None when it is not known in every size."""
    bodies = _each(f"body.{name}", f"{name} of size", sizes, computed, system)
    if len(bodies) != len(sizes):
        return None
    girth = _girth(name, computed.tutorial)
    number = f"{girth.key}.finished_girth" if girth is not None else ""
    finished = _each(number, "garment of size", sizes, computed, system) if number else ()
    return size_choice.Row(name, bodies, finished if len(finished) == len(sizes) else (), _least_ease(name))


def _each(number: str, words: str, sizes: range, computed: Computed, system: System) -> tuple[Worked, ...]:
    """A number in every size in which it is known, as it is printed, named after the size."""
    found = ((size, computed.number(number, size)) for size in sizes)
    return tuple(
        given(f"{words} {computed.size_name(size)}", RULER.shown(each.length, system))
        for size, each in found
        if each is not None
    )


def _girth(body: str, tutorial: Tutorial) -> Girth | None:
    girths = tutorial.girths.values()
    return next((girth for girth in girths if girth.body is not None and girth.body.name == f"body.{body}"), None)


def _least_ease(where: str) -> Worked | None:
    """The ease that every source would call enough: the greatest of the least that they give."""
    ranges = ease.published(where)
    if not ranges:
        return None
    most = max(ranges, key=lambda each: each.least)
    return given(f"least ease at the {where}", most.least, most.source)


def _stretches(tutorial: Tutorial) -> bool:
    """Whether every piece is cut of a knit."""
    names = {piece.fabric.name for piece in tutorial.pieces.values() if piece.fabric is not None}
    fabrics = [tutorial.fabrics[name] for name in names if name in tutorial.fabrics]
    return bool(fabrics) and all(fabric.knit for fabric in fabrics)
