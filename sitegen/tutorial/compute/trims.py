"""Defines the lengths of cords, tapes and zips."""

from __future__ import annotations

from sitegen.quantities import Rounding
from sitegen.sewing import trim
from sitegen.tutorial.compute.given import lengths_maker, together
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Trim, Tutorial


def define_trims(tutorial: Tutorial, numbers: Numbers) -> None:
    """The edges along which each lies, and how long it is."""
    for each in tutorial.trims.values():
        _define_trim(each, tutorial, numbers)


def _define_trim(each: Trim, tutorial: Tutorial, numbers: Numbers) -> None:
    edges, end, length = (f"{each.key}.{field}" for field in ("edge_length", "each_end", "length"))
    numbers.define(edges, together(edges, each.edges, tutorial, numbers))
    if each.each_end:
        numbers.define(end, lengths_maker(each.each_end, numbers, "end"))
    numbers.define(
        length,
        lambda size: trim.length(
            words_of(length), numbers.at(edges, size), numbers.at(end, size) if each.each_end else None
        ).rounded(Rounding.ENOUGH),
    )
