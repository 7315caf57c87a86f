"""Defines cut and finished sizes of pieces, joined lengths and girths."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from sitegen.quantities import Worked, plus, work
from sitegen.sewing import End, allowance, ease
from sitegen.tutorial.compute.given import edge_number, lengths_maker, need, wrapped_edges
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Circle, Missing, Numbers
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import AXES, SIDES, Girth, Joined, Piece, Tutorial


def define_pieces(tutorial: Tutorial, numbers: Numbers) -> None:
    """Cut and finished length and width of every piece that gives one of them."""
    for piece in tutorial.pieces.values():
        for axis in AXES:
            _define_axis(piece, axis, tutorial, numbers)
    for joined in tutorial.joined.values():
        numbers.define(f"{joined.key}.joined_length", lambda size, j=joined: _joined(j, tutorial, numbers, size))  # type: ignore[misc]
    for girth in tutorial.girths.values():
        _define_girth(girth, tutorial, numbers)


def _define_axis(piece: Piece, axis: str, tutorial: Tutorial, numbers: Numbers) -> None:
    lengths = piece.given_along(axis)
    if lengths is None:
        return
    cut, finished = f"{piece.key}.cut_{axis}", f"{piece.key}.finished_{axis}"
    first, second = (cut, finished) if not piece.finished_given else (finished, cut)
    numbers.define(first, lengths_maker(lengths, numbers, words_of(first)))
    if piece.untold_sides(axis):
        return
    computed = allowance.finished_length if second == finished else allowance.cut_length

    def other(size: int) -> Worked:
        ends = [end_of(piece, side, tutorial, numbers, size) for side in AXES[axis]]
        return computed(words_of(second), numbers.at(first, size), ends)

    numbers.define(second, other)


def end_of(piece: Piece, side: str, tutorial: Tutorial, numbers: Numbers, size: int) -> End:
    """What happens to a piece at one side, by what is sewn or turned there. Raises Missing."""
    name = piece.sides[side].name
    if name in ("fold", "raw"):
        return End()
    if name == "seam":
        return End(numbers.at(f"{piece.key}.seam_allowance", size))
    if name in tutorial.hems:
        return End(numbers.at(f"{name}.allowance", size))
    if name in tutorial.elastics:
        return End(numbers.at(f"{name}.casing", size))
    if name not in piece.edges:
        raise Missing(name)
    full = piece.edges[name].name
    if full in wrapped_edges(tutorial) and piece.edges[name].seam_allowance is None:
        return End()
    for hem in tutorial.hems.values():
        if any(edge.name == full for edge in hem.edges):
            return End(numbers.at(f"{hem.key}.allowance", size))
    seam = numbers.at(f"{full}.seam_allowance", size)
    for band in tutorial.bands.values():
        if any(edge.name == full for edge in band.around):
            return End(seam, numbers.at(f"{band.key}.finished_width", size))
    return End(seam)


def taken_at(piece: Piece, side: str, computed: Computed, size: int) -> Worked | None:
    """What a seam, a hem or a casing takes off a piece at one of its sides; None when it is not known or nothing."""
    try:
        return end_of(piece, side, computed.tutorial, computed.numbers, size).taken if side in piece.sides else None
    except (Missing, Circle, ZeroDivisionError):
        return None


def sides_to_tell(piece: Piece, axes: Iterable[str]) -> str:
    """An example of what to write at the sides of which nothing is said: ``sides: {top: seam, bottom: seam}``."""
    untold = [side for axis in axes for side in piece.untold_sides(axis)]
    told = {side: name.name for side, name in piece.sides.items()} | dict.fromkeys(untold, "seam")
    return f"sides: {{{', '.join(f'{side}: {told[side]}' for side in SIDES if side in told)}}}"


def _joined(joined: Joined, tutorial: Tutorial, numbers: Numbers, size: int) -> Worked:
    """The length over all seams: each pair of neighbours overlaps by both of their allowances."""
    pieces = [need(tutorial.pieces, reference.name) for reference in joined.pieces]
    cut = [numbers.at(f"{piece.key}.cut_length", size) for piece in pieces]
    overlaps = [
        (_seam_at(above, "bottom", numbers, size), _seam_at(below, "top", numbers, size))
        for above, below in pairwise(pieces)
    ]
    return allowance.joined_length(words_of(f"{joined.key}.joined_length"), cut, overlaps)


def _seam_at(piece: Piece, side: str, numbers: Numbers, size: int) -> Worked:
    reference = piece.sides.get(side)
    if reference is not None and reference.name in piece.edges:
        found = numbers.at(f"{piece.edges[reference.name].name}.seam_allowance", size)
    else:
        found = numbers.at(f"{piece.key}.seam_allowance", size)
    return found.named(f"seam allowance of the {piece.called}")


def _define_girth(girth: Girth, tutorial: Tutorial, numbers: Numbers) -> None:
    def around(size: int) -> Worked:
        first, *others = (numbers.length_at(edge_number(edge, tutorial), size) for edge in girth.edges)
        return work(words_of(f"{girth.key}.finished_girth"), first, *(plus(edge) for edge in others))

    numbers.define(f"{girth.key}.finished_girth", around)
    body = girth.body
    if body is not None:

        def room(size: int) -> Worked:
            finished = numbers.at(f"{girth.key}.finished_girth", size)
            return ease.ease(words_of(f"{girth.key}.ease"), finished, numbers.at(body.name, size))

        numbers.define(f"{girth.key}.ease", room)
