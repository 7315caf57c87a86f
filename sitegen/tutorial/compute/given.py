"""Defines the numbers that the author gave, and the allowances and edges that follow from them at once."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.quantities import Worked, given
from sitegen.sewing import geometry
from sitegen.tutorial.compute.numbers import Maker, Missing, Numbers
from sitegen.tutorial.model import Amount, Edge, Fabric, Lengths, MeasuredOn, Piece, Reference, Share, Tutorial


def words_of(name: str) -> str:
    """A number's name in plain words: ``neckband.cut_length`` → neckband cut length."""
    return name.replace(".", " ").replace("_", " ")


def lengths_maker(lengths: Lengths, numbers: Numbers, words: str = "") -> Maker:
    """What the author typed, or the number that is referred to."""
    name = words or words_of(lengths.name)
    source = lengths.source
    if isinstance(source, Reference):
        return lambda size: numbers.length_at(source.name, size).named(name)

    def typed(size: int) -> Worked:
        amount = lengths.amount_at(size)
        if amount is None:
            raise Missing(lengths.name)
        return given(name, amount.typed.value)

    return typed


def amount_maker(amount: Amount, words: str) -> Maker:
    """One length for all sizes."""
    worked = given(words, amount.typed.value)
    return lambda size: worked


def share_maker(share: Share, words: str) -> Maker:
    """One ratio for all sizes."""
    worked = given(words, share.ratio)
    return lambda size: worked


def define_given(tutorial: Tutorial, numbers: Numbers) -> None:
    """Body measurements, the seam allowance, fabrics, and the edges of pieces."""
    for name, lengths in tutorial.body.items():
        numbers.define(f"body.{name}", lengths_maker(lengths, numbers))
    if tutorial.seam_allowance:
        numbers.define("seam_allowance", amount_maker(tutorial.seam_allowance, "seam allowance"))
    for fabric in tutorial.fabrics.values():
        _define_fabric(fabric, numbers)
    for piece in tutorial.pieces.values():
        _define_piece_allowances(piece, numbers)
        for edge in piece.edges.values():
            _define_edge(edge, numbers)


def _define_fabric(fabric: Fabric, numbers: Numbers) -> None:
    for field in ("stretch_across", "stretch_down", "shrinkage"):
        share: Share | None = getattr(fabric, field)
        if share:
            numbers.define(f"{fabric.key}.{field}", share_maker(share, words_of(f"{fabric.name} {field}")))
    for field in ("width", "buy"):
        lengths: Lengths | None = getattr(fabric, field)
        if lengths:
            numbers.define(f"{fabric.key}.{field}", lengths_maker(lengths, numbers))


def _define_piece_allowances(piece: Piece, numbers: Numbers) -> None:
    """The allowance of a piece, and of each of its edges: the nearest one given, the garment's last."""
    own = f"{piece.key}.seam_allowance"
    if piece.seam_allowance:
        numbers.define(own, amount_maker(piece.seam_allowance, "seam allowance"))
    else:
        numbers.define(own, lambda size: numbers.at("seam_allowance", size))
    for edge in piece.edges.values():
        name = f"{edge.name}.seam_allowance"
        if edge.seam_allowance:
            numbers.define(name, amount_maker(edge.seam_allowance, f"{edge.key.replace('_', ' ')} seam allowance"))
        else:
            numbers.define(name, lambda size, own=own: numbers.at(own, size))  # type: ignore[misc]


def _define_edge(edge: Edge, numbers: Numbers) -> None:
    """An edge along its seam line, which all sums use, and along its cut edge where it is curved."""
    if edge.lengths is None:
        return
    words = words_of(edge.name)
    measured = lengths_maker(edge.lengths, numbers, words)
    if edge.turn is None:
        numbers.define(edge.name, measured)
        return
    turn, allowance_name, cut_name = edge.turn, f"{edge.name}.seam_allowance", f"{edge.name}.cut_edge"
    if edge.measured_on is MeasuredOn.CUT_EDGE:
        as_cut = lengths_maker(edge.lengths, numbers, f"{words} along the cut edge")

        def on_seam_line(size: int) -> Worked:
            allowance = numbers.at(allowance_name, size)
            return geometry.seam_line(words, as_cut(size), allowance, turn.degrees, inward=turn.inward)

        numbers.define(edge.name, on_seam_line)
        numbers.define(cut_name, as_cut)
        return

    def on_cut_edge(size: int) -> Worked:
        allowance = numbers.at(allowance_name, size)
        return geometry.cut_edge(
            f"{words} along the cut edge", measured(size), allowance, turn.degrees, inward=turn.inward
        )

    numbers.define(edge.name, measured)
    numbers.define(cut_name, on_cut_edge)


def edge_number(reference: Reference, tutorial: Tutorial) -> str:
    """The number that stands for a name in a chain of edges: a band's or an elastic's own ring, or the edge."""
    if reference.name in tutorial.bands or reference.name in tutorial.elastics:
        return f"{reference.name}.finished_length"
    return reference.name


def need(table: Mapping[str, Piece], name: str) -> Piece:
    """The piece of this name. Raises Missing when there is none (reported as an unknown reference)."""
    if name not in table:
        raise Missing(name)
    return table[name]
