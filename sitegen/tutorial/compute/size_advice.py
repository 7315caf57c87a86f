"""Which size of a tutorial to make, from a person's measurements. Never from age."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from sitegen.quantities import System, Worked, cm, given, inches
from sitegen.sewing import ease, size_choice
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import Girth, Tutorial

TOLERANCE = {System.INCHES: inches("1/2"), System.CENTIMETRES: cm(1)}
"""By how much a person may be over a size and still be between two sizes (common practice, no source)."""


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


def size_advice(
    computed: Computed, person: Mapping[str, Worked], *, matters_most: str | None = None
) -> tuple[SizeAdvice, ...]:
    """The size to make, one for each run of sizes, such as children's and adults'.

    ``person`` holds measurements by the names of the tutorial's body measurements. Raises ValueError, in words for the
    author, when the tutorial has one size only, when none of the measurements is in its table, or when its sizes do
    not rise.
    """
    tutorial = computed.tutorial
    if len(tutorial.sizes) < 2:
        raise ValueError("this tutorial has one size only, so there is none to choose")
    starts = (0, *tutorial.runs, len(tutorial.sizes))
    tolerance = given("tolerance", TOLERANCE[tutorial.first_system])
    stretches = _stretches(tutorial)
    advice = []
    for start, end in pairwise(starts):
        rows = [row for name in tutorial.body if (row := _row(name, range(start, end), computed)) is not None]
        found = size_choice.choose_all(rows, person, tolerance, stretches=stretches, matters_most=matters_most)
        advice.append(SizeAdvice(tutorial.sizes[start:end], found))
    return tuple(advice)


def _row(name: str, sizes: range, computed: Computed) -> size_choice.Row | None:
    """One body measurement of the table with the garment there; None when it is not known in every size."""
    bodies = _each(f"body.{name}", f"{name} of size", sizes, computed)
    if len(bodies) != len(sizes):
        return None
    girth = _girth(name, computed.tutorial)
    finished = _each(f"{girth.key}.finished_girth", "garment of size", sizes, computed) if girth is not None else ()
    return size_choice.Row(name, bodies, finished if len(finished) == len(sizes) else (), _least_ease(name))


def _each(number: str, words: str, sizes: range, computed: Computed) -> tuple[Worked, ...]:
    """A number in every size in which it is known, named after the size."""
    found = ((size, computed.number(number, size)) for size in sizes)
    return tuple(given(f"{words} {computed.size_name(size)}", each.length) for size, each in found if each is not None)


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
