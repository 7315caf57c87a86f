"""Defines the numbers that the author gave, and the allowances and edges that follow from them at once."""

from __future__ import annotations

from collections.abc import Mapping

from sitegen.quantities import ZERO, Rounding, Worked, given, plus, work
from sitegen.sewing import band, circle, fabric_need, geometry
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Maker, Missing, Numbers
from sitegen.tutorial.model import Amount, Edge, Fabric, Lengths, MeasuredOn, Piece, Reference, Share, Tutorial, Washed


def lengths_maker(lengths: Lengths, numbers: Numbers, words: str = "") -> Maker:
    """What the author typed, or the number that is referred to."""
    name = words or words_of(lengths.name)
    source = lengths.source
    if isinstance(source, Reference):
        return lambda size: numbers.length_at(source.name, size).named(name).rounded(Rounding.NEAREST)

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


def allowance_or_own(name: str, own: Amount | None, numbers: Numbers) -> None:
    """Define the allowance of a part: its own, or that of the garment."""
    words = words_of(name)
    if own:
        numbers.define(name, amount_maker(own, words))
    else:
        numbers.define(name, lambda size: numbers.at("seam_allowance", size).named(words))


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
        _define_piece_allowances(piece, numbers, wrapped_edges(tutorial))
        for edge in piece.edges.values():
            _define_edge(edge, numbers)


def _define_fabric(fabric: Fabric, numbers: Numbers) -> None:
    for field in ("stretch_across", "stretch_down", "shrinkage"):
        share: Share | None = getattr(fabric, field)
        if share:
            numbers.define(f"{fabric.key}.{field}", share_maker(share, words_of(f"{fabric.name} {field}")))
    for field in ("width", "repeat"):
        lengths: Lengths | None = getattr(fabric, field)
        if lengths:
            numbers.define(f"{fabric.key}.{field}", lengths_maker(lengths, numbers))
    if fabric.buy:
        bought = lengths_maker(fabric.buy, numbers)
        numbers.define(f"{fabric.key}.buy", lambda size: bought(size).rounded(Rounding.TOLD))
    if fabric.washed is not None:
        _define_washed(fabric, fabric.washed, numbers)
    if fabric.swatch is not None:
        rest, stretched = f"{fabric.key}.swatch_rest", f"{fabric.key}.swatch_stretched"
        numbers.define(rest, amount_maker(fabric.swatch.rest, "swatch at rest"))
        numbers.define(stretched, amount_maker(fabric.swatch.stretched, "stretched swatch"))
        words = words_of(f"{fabric.name} swatch_stretch")
        numbers.define(
            f"{fabric.key}.swatch_stretch",
            lambda size: band.stretch_needed(words, numbers.at(stretched, size), numbers.at(rest, size)),
        )


def _define_washed(fabric: Fabric, washed: Washed, numbers: Numbers) -> None:
    before, after = f"{fabric.key}.washed_before", f"{fabric.key}.washed_after"
    numbers.define(before, amount_maker(washed.before, "swatch before washing"))
    numbers.define(after, amount_maker(washed.after, "swatch after washing"))
    words = words_of(f"{fabric.name} washed_shrinkage")
    numbers.define(
        f"{fabric.key}.washed_shrinkage",
        lambda size: fabric_need.shrinkage_found(words, numbers.at(before, size), numbers.at(after, size)),
    )


def wrapped_edges(tutorial: Tutorial) -> frozenset[str]:
    """The edges that a binding goes round. Unless their author gives them an allowance, they have none."""
    bindings = (binding for binding in tutorial.bindings.values() if binding.wraps)
    return frozenset(edge.name for binding in bindings for edge in binding.edges)


def _define_piece_allowances(piece: Piece, numbers: Numbers, wrapped: frozenset[str]) -> None:
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
        elif edge.name in wrapped:
            bound = given(f"{edge.key.replace('_', ' ')} seam allowance", ZERO, "none: the binding wraps the raw edge")
            numbers.define(name, lambda size, bound=bound: bound)  # type: ignore[misc]
        else:
            numbers.define(name, lambda size, own=own: numbers.at(own, size))  # type: ignore[misc]


def _define_edge(edge: Edge, numbers: Numbers) -> None:
    """An edge along its seam line, which all sums use, and along its cut edge where it is curved."""
    words = words_of(edge.name)
    if edge.arc is not None:
        numbers.define(f"{edge.name}.radius", lengths_maker(edge.arc.radius, numbers))
    elif edge.lengths is None:
        return
    measured = _measured(edge, numbers, words)
    if edge.turn is None:
        numbers.define(edge.name, measured)
        return
    turn, allowance_name, cut_name = edge.turn, f"{edge.name}.seam_allowance", f"{edge.name}.cut_edge"
    if edge.measured_on is MeasuredOn.CUT_EDGE:
        as_cut = _measured(edge, numbers, f"{words} along the cut edge")

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


def _measured(edge: Edge, numbers: Numbers, words: str) -> Maker:
    """The length of an edge as it was measured: typed, or its radius round as much of a circle as it is."""
    if edge.arc is not None:
        share = edge.arc.degrees / 360
        return lambda size: circle.edge(words, numbers.at(f"{edge.name}.radius", size), share)
    if edge.lengths is None:
        raise AssertionError("an edge has a length or is an arc")
    return lengths_maker(edge.lengths, numbers, words)


def edge_names(tutorial: Tutorial) -> set[str]:
    """Everything that may stand where an edge may: edges of pieces and circles, and rings that are sewn to edges."""
    circles = (name for each in tutorial.circles.values() for name in (each.waist_edge, each.hem_edge))
    edges = (edge.name for piece in tutorial.pieces.values() for edge in piece.edges.values())
    return {*edges, *circles, *tutorial.bands, *tutorial.elastics, *tutorial.bindings}


def together(name: str, edges: tuple[Reference, ...], tutorial: Tutorial, numbers: Numbers) -> Maker:
    """Several edges one behind the other, as one length."""

    def length(size: int) -> Worked:
        first, *others = (numbers.length_at(edge_number(edge, tutorial), size) for edge in edges)
        return work(words_of(name), first, *(plus(other) for other in others))

    return length


def edge_number(reference: Reference, tutorial: Tutorial) -> str:
    """The number that stands for a name in a chain of edges: a band's, an elastic's or a binding's own length, or the
    edge, with its darts sewn if it has any."""
    if reference.name in tutorial.bindings:
        return f"{reference.name}.edge_length"
    piece, _, edge = reference.name.partition(".")
    if piece in tutorial.pieces and edge in tutorial.pieces[piece].edges and tutorial.pieces[piece].darts_in(edge):
        return sewn_edge_name(reference.name)
    if reference.name in tutorial.bands or reference.name in tutorial.elastics:
        return f"{reference.name}.finished_length"
    return reference.name


def sewn_edge_name(edge: str) -> str:
    """The name of the length of an edge once its darts are sewn."""
    return f"{edge}.sewn"


def need(table: Mapping[str, Piece], name: str) -> Piece:
    """The piece of this name. Raises Missing when there is none (reported as an unknown reference)."""
    if name not in table:
        raise Missing(name)
    return table[name]
