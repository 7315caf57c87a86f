"""Defines the numbers of darts, and of the edges in which they are sewn."""

from __future__ import annotations

from sitegen.quantities import Worked, given, times, work
from sitegen.sewing import dart as sums
from sitegen.tutorial.compute.given import lengths_maker, sewn_edge_name, together
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Dart, Piece, Tutorial


def define_darts(tutorial: Tutorial, numbers: Numbers) -> None:
    """Darts: their width at the edge, what they take off it, their legs, and the edge once they are sewn."""
    for piece in tutorial.pieces.values():
        for each in piece.darts.values():
            _define_dart(each, piece, tutorial, numbers)
        for edge in dict.fromkeys(each.edge.name for each in piece.darts.values()):
            if edge in piece.edges:
                _define_sewn_edge(piece, edge, numbers)


def _define_dart(each: Dart, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    width, length, leg = (f"{each.name}.{field}" for field in ("width", "length", "leg"))
    if each.width is not None:
        numbers.define(width, lengths_maker(each.width, numbers))
    else:
        _define_width(each, width, piece, tutorial, numbers)
    numbers.define(length, lengths_maker(each.length, numbers))
    numbers.define(
        f"{each.name}.taken",
        lambda size: work(words_of(f"{each.name}.taken"), numbers.at(width, size), times(given("darts", each.count))),
    )
    numbers.define(leg, lambda size: sums.leg(words_of(leg), numbers.at(width, size), numbers.at(length, size)))
    other = f"{each.name}.other_leg"
    numbers.define(other, lambda size: sums.other_leg(words_of(other), numbers.at(leg, size)))


def _define_width(each: Dart, name: str, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    """The width that follows from the edge that the sewn edge meets; other darts of the edge are taken off first."""
    mate = together(f"{each.name}.meets", each.meets, tutorial, numbers)
    others = [dart for dart in piece.darts_in(each.edge.name) if dart is not each]

    def width(size: int) -> Worked:
        edge = numbers.length_at(each.edge_name, size)
        if others:
            taken = [(numbers.at(f"{other.name}.width", size), other.count) for other in others]
            edge = sums.sewn_edge(f"{words_of(each.edge_name)} with the other darts sewn", edge, taken)
        return sums.intake(words_of(name), edge, mate(size), each.count)

    numbers.define(name, width)


def _define_sewn_edge(piece: Piece, edge: str, numbers: Numbers) -> None:
    full = piece.edges[edge].name
    name = sewn_edge_name(full)

    def sewn(size: int) -> Worked:
        taken = [(numbers.at(f"{each.name}.width", size), each.count) for each in piece.darts_in(edge)]
        return sums.sewn_edge(words_of(name), numbers.length_at(full, size), taken)

    numbers.define(name, sewn)
