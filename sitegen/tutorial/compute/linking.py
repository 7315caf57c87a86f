"""Follows every reference of a tutorial and reports those that lead nowhere, in a circle, or to the wrong kind."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Protocol

from sitegen.findings import Collector, Place, meant, nearest
from sitegen.quantities import ZERO, Length
from sitegen.tutorial.compute.given import edge_names
from sitegen.tutorial.compute.lengths_of_pieces import sides_to_tell
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import (
    MOST_LINKS,
    Circle,
    DividesByNothing,
    Impossible,
    LongChain,
    Missing,
    Numbers,
)
from sitegen.tutorial.compute.result import Computed
from sitegen.tutorial.model import AXES, PLAIN_SIDES, SIZES_FILE, Reference, Step, Tutorial
from sitegen.tutorial.picture_names import Asked, PictureOf, picture_names

_SIZE = "size"
_THEN = ".then."
_NUMBER = "number"
_CORNERS = "boxed corners"
_SIZES_OF_CLOTH = ("cut_", "finished_")
_DRAWABLE = "band, hem, change, dart, boxed corners, spacing, gather, pleats or binding to draw"
_ASKED = {
    Asked.SEAM: "seam to draw, by one of its edges,",
    Asked.MEETING: "seam to draw, by one of its edges,",
    Asked.PLAN: "piece or band to draw",
}


class Placed(Protocol):
    """A part that knows where it was written."""

    @property
    def place(self) -> Place:
        """Where it was written."""
        ...


def report_unknown(computed: Computed, collector: Collector) -> None:
    """Report every reference to nothing, with the nearest names."""
    for reference, known, what in _expected(computed):
        if reference.name in known or _is_unread(reference.name, computed.tutorial):
            continue
        if _may_be_in_the_table(reference.name, what, computed.tutorial):
            continue
        if what == _NUMBER and _may_follow_from_a_gap(reference.name, computed.tutorial):
            continue
        reason = _why_there_is_none(reference.name, computed.tutorial)
        near = () if reason else nearest(reference.name, known)
        near = tuple(name for name in near if _is_same_measure(reference.name, name))
        if reason:
            hint = reason
        elif near:
            hint = f" Nearest: {', '.join(near)}."
        elif known:
            hint = f" Known are: {', '.join(sorted(known)[:8])}."
        else:
            hint = " The tutorial has none."
        collector.wrong(
            "unknown-reference",
            reference.place,
            f"There {'are' if what == _CORNERS else 'is'} no {what} “{reference.name}”.{hint}",
            said=reference.name,
            should_be=meant(reference.name, known),
        )


def _is_same_measure(asked: str, known: str) -> bool:
    """Whether a name may be told as the nearest: a finished size is not what was meant by a cut one, nor the other way
    round."""
    return not any(kind in asked and kind not in known for kind in _SIZES_OF_CLOTH)


def _why_there_is_none(name: str, tutorial: Tutorial) -> str:
    """What a size needs that a piece or boxed corners could have; empty for a name that is none of these."""
    key, _, field = name.partition(".")
    kind, _, axis = field.partition("_")
    piece, boxed = tutorial.pieces.get(key), tutorial.boxed.get(key)
    if boxed is not None and not boxed.cut_out and (field == "square" or field.startswith("cut_out_")):
        return (
            " With a depth alone the corner is sewn across uncut. If it is cut out, write square beside the depth, or"
            " cut_out_width and cut_out_height."
        )
    if piece is None or axis not in AXES or f"{kind}_" not in _SIZES_OF_CLOTH:
        return ""
    if piece.given_along(axis) is None or not piece.untold_sides(axis):
        return ""
    return f" It follows from what lies at each end of the {axis}: {sides_to_tell(piece, [axis])}."


def _is_unread(name: str, tutorial: Tutorial) -> bool:
    """Whether a name is that of a part or number that is there and could not be understood, which is reported there.
    In ``plan of yoke`` it is the yoke."""
    parts = {part.partition(".")[0] for part in name.split()}
    of_edge = name.rpartition(".")[0]
    return not tutorial.unread.isdisjoint({name, of_edge, *parts})


def untold_references(computed: Computed) -> tuple[Reference, ...]:
    """The references to numbers that are not known and not reported, since something else is reported from which they
    may follow."""
    tutorial = computed.tutorial
    return tuple(
        reference
        for reference, known, what in _expected(computed)
        if what == _NUMBER
        and reference.name not in known
        and (
            _is_unread(reference.name, tutorial)
            or _may_be_in_the_table(reference.name, what, tutorial)
            or _may_follow_from_a_gap(reference.name, tutorial)
        )
    )


def _may_be_in_the_table(name: str, what: str, tutorial: Tutorial) -> bool:
    """Whether a number or an edge may stand in a size table that could not be read."""
    part = name.rpartition(_THEN)[2].partition(".")[0]
    is_of_a_part = "." not in name or part in tutorial.pieces or part == "body"
    return SIZES_FILE in tutorial.gaps and is_of_a_part and (what == _NUMBER or what.startswith("edge"))


def _may_follow_from_a_gap(name: str, tutorial: Tutorial) -> bool:
    """Whether a number that is not known is one that a part could have, while something of the parts is not understood
    from which it may follow: that is reported where it stands, and this is not reported as well."""
    plain = name.rpartition(_THEN)[2]
    of_one_piece = re.sub(r"\..*\.", ".", plain)
    return bool(tutorial.gaps) and not tutorial.could_have.isdisjoint({plain, of_one_piece})


def _expected(computed: Computed) -> Iterator[tuple[Reference, Iterable[str] | Numbers, str]]:
    """Every reference of a tutorial with the names that it may have."""
    tutorial, numbers = computed.tutorial, computed.numbers
    names = {*numbers, _SIZE}
    edges = {edge.name for piece in tutorial.pieces.values() for edge in piece.edges.values()}
    rings = edge_names(tutorial)
    for prose in tutorial.prose():
        yield from ((reference, names, _NUMBER) for reference in prose.references)
    for lengths in _referring(tutorial):
        yield lengths, names, _NUMBER
    for piece in tutorial.pieces.values():
        if piece.fabric:
            yield piece.fabric, tutorial.fabrics, "fabric"
        sides = {*piece.edges, *PLAIN_SIDES, *tutorial.hems, *tutorial.elastics}
        yield from ((side, sides, "edge, hem or elastic") for side in piece.sides.values())
    for band in tutorial.bands.values():
        yield band.fabric, tutorial.fabrics, "fabric"
        yield from ((edge, rings, "edge") for edge in band.around)
        if band.goes_over is not None and band.goes_over.text.startswith("body."):
            over = Reference(band.goes_over.text, band.goes_over.place)
            yield over, {name for name in names if name.startswith("body.")}, "body measurement"
    for hem in tutorial.hems.values():
        yield from ((edge, rings, "edge") for edge in hem.edges)
    for elastic in tutorial.elastics.values():
        yield elastic.around, names, _NUMBER
    for joined in tutorial.joined.values():
        yield from ((piece_name, tutorial.pieces, "piece") for piece_name in joined.pieces)
    for girth in tutorial.girths.values():
        yield from ((edge, rings, "edge") for edge in girth.edges)
        if girth.body:
            yield girth.body, {name for name in names if name.startswith("body.")}, "body measurement"
    for change in tutorial.changes.values():
        yield from ((piece_name, tutorial.pieces, "piece") for piece_name in change.pieces)
        pieces = [tutorial.pieces[name.name] for name in change.pieces if name.name in tutorial.pieces]
        own = {edge for piece in pieces for edge in piece.edges}
        yield from ((edge, {*own, *edges}, "edge") for edge in change.crosses)
    for swap in tutorial.swaps.values():
        yield swap.band, tutorial.bands, "band"
        yield swap.fabric, tutorial.fabrics, "fabric"
    yield from _expected_in_worked_parts(tutorial, names, rings)
    darts = {dart.name for piece in tutorial.pieces.values() for dart in piece.darts.values()}
    drawable = {
        *tutorial.bands, *tutorial.hems, *tutorial.changes, *tutorial.boxed, *darts,
        *tutorial.spacings, *tutorial.gathers, *tutorial.pleats, *tutorial.bindings,
    }  # fmt: skip
    pictures = picture_names(tutorial)
    for step in tutorial.steps:
        yield from (_expected_picture(name, drawable, pictures) for name in step.diagrams)
        yield from ((name, darts, "dart") for name in step.darts)
        yield from ((name, tutorial.boxed, _CORNERS) for name in step.boxes)
        yield from _expected_in_making(step, tutorial, edges)


def _expected_picture(
    name: Reference, drawable: set[str], pictures: Mapping[str, PictureOf]
) -> tuple[Reference, Iterable[str], str]:
    """A name to draw, with those that it may have: of its own kind where it begins like ``seam of``."""
    for asked in Asked:
        if name.name.startswith(asked.value):
            return name, {each for each in pictures if each.startswith(asked.value)}, _ASKED[asked]
    return name, {*drawable, *pictures}, _DRAWABLE


def _expected_in_worked_parts(
    tutorial: Tutorial, names: set[str], rings: set[str]
) -> Iterator[tuple[Reference, Iterable[str], str]]:
    """What marks lie along, what is gathered, pleated and bound, and the hem of a circle."""
    along = (name for spacing in tutorial.spacings.values() for name in spacing.along)
    yield from ((name, {*names, *rings}, "edge or number") for name in along)
    for gather in tutorial.gathers.values():
        yield from ((name, rings, "edge") for name in (*gather.edges, *gather.onto))
    folded = (name for pleats in tutorial.pleats.values() for name in pleats.edges)
    bound = (name for binding in tutorial.bindings.values() for name in binding.edges)
    yield from ((name, rings, "edge") for name in (*folded, *bound))
    supplies = {supply.item.text for supply in tutorial.supplies} | set(tutorial.translated)
    for trim in tutorial.trims.values():
        yield from ((name, rings, "edge") for name in trim.edges)
        yield trim.supply, supplies, "supply"
    for boxed in tutorial.boxed.values():
        yield from ((name, tutorial.pieces, "piece") for name in boxed.pieces)
    for piece in tutorial.pieces.values():
        for dart in piece.darts.values():
            yield dart.edge, piece.edges, f"edge of {piece.key}"
            yield from ((name, rings, "edge") for name in dart.meets)
    yield from ((circle.hem, tutorial.hems, "hem") for circle in tutorial.circles.values() if circle.hem)
    yield from ((drops.fabric, tutorial.fabrics, "fabric") for drops in tutorial.drops.values())
    for fabric in tutorial.fabrics.values():
        own = {key for key, piece in tutorial.pieces.items() if piece.fabric and piece.fabric.name == fabric.key}
        yield from ((name, own, f"piece of {fabric.key}") for name in fabric.matched)
    fabrics = [part.fabric for part in tutorial.bindings.values()] + [part.fabric for part in tutorial.circles.values()]
    yield from ((fabric, tutorial.fabrics, "fabric") for fabric in fabrics if fabric)


def _expected_in_making(
    step: Step, tutorial: Tutorial, edges: set[str]
) -> Iterator[tuple[Reference, Iterable[str], str]]:
    """What a step cuts, sews, turns and puts in, in either way of doing it."""
    rings = edge_names(tutorial)
    cuttable = {
        *tutorial.pieces, *tutorial.bands, *tutorial.elastics, *tutorial.bindings, *tutorial.circles, *tutorial.trims,
    }  # fmt: skip
    inserted = {*tutorial.elastics, *tutorial.trims}
    yield from ((name, cuttable, "piece, band, elastic, binding, circle or trim to cut") for name in step.cuts)
    yield from ((name, edges, "edge") for name in step.stabilises)
    yield from ((name, inserted, "elastic or trim") for name in step.inserts)
    yield from ((name, rings, "edge") for join in step.every_join() for name in join.names())
    for way in (step, step.other_way):
        if way is not None:
            yield from ((name, rings, "edge") for chain in way.finishes for name in chain)
            yield from ((name, tutorial.hems, "hem") for name in way.hems)


def _referring(tutorial: Tutorial) -> Iterator[Reference]:
    """The references that stand for lengths in the YAML."""
    for lengths in tutorial.referred:
        if isinstance(lengths.source, Reference):
            yield lengths.source


def report_other_kinds(computed: Computed, collector: Collector) -> None:
    """A reference that stands for a length must not be one to a percentage."""
    lengths = _referring(computed.tutorial)
    around = (elastic.around for elastic in computed.tutorial.elastics.values())
    along = (name for spacing in computed.tutorial.spacings.values() for name in spacing.along)
    for reference in (*lengths, *around, *along):
        number = computed.number(reference.name, 0)
        if number is not None and not isinstance(number.value, Length):
            collector.wrong(
                "reference-kind",
                reference.place,
                f'A length is needed here, and {reference.name} is none. Example: "{{back.side}}"',
                said=reference.name,
            )


def report_circles(computed: Computed, collector: Collector) -> None:
    """Show each circle once, whole, at the reference that closes it; and each chain that is too long once."""
    shown: set[frozenset[str]] = set()
    in_chains: set[str] = set()
    for name in computed.numbers:
        try:
            computed.numbers.by_size(name)
        except Circle as circle:
            if frozenset(circle.names) not in shown:
                shown.add(frozenset(circle.names))
                collector.wrong(
                    "circle",
                    _place_in(circle.names, computed.tutorial),
                    f"These numbers need each other in a circle: {' → '.join(circle.names)}."
                    " Write one of them as a length.",
                )
        except DividesByNothing as trouble:
            if trouble.name == name and not _goes_round_nothing(name, computed):
                place = _place_of(name.partition(".")[0], computed.tutorial)
                message = f"{name} cannot be worked out: it divides by a length of nothing."
                collector.wrong("zero-length", place, message, said=name)
        except Impossible as trouble:
            if trouble.name == name:
                _report_impossible(trouble, computed, collector)
        except LongChain as chain:
            if in_chains.isdisjoint(chain.names):
                _report_chain(chain, computed, collector)
            in_chains.update(chain.names)
        except Missing:
            continue


def _goes_round_nothing(name: str, computed: Computed) -> bool:
    """Whether a number is that of a band that comes out at nothing, or of its swap: a check tells that, where the edge
    without a length stands."""
    key = name.partition(".")[0]
    swap = computed.tutorial.swaps.get(key)
    band = swap.band.name if swap is not None else key
    lengths = (computed.length(f"{band}.finished_length", size) for size in range(computed.tutorial.size_count))
    return band in computed.tutorial.bands and any(each is not None and each.length <= ZERO for each in lengths)


def _report_chain(chain: LongChain, computed: Computed, collector: Collector) -> None:
    collector.wrong(
        "long-chain",
        _place_in(chain.names, computed.tutorial),
        f"{chain.names[0]} follows from another number, that one from the next, and so on over more than {MOST_LINKS}"
        " in a row. Write one of them as a length.",
    )


def _report_impossible(trouble: Impossible, computed: Computed, collector: Collector) -> None:
    """Show a sum that cannot be done once, at the part to which its number belongs."""
    place = _place_of(trouble.name.partition(".")[0], computed.tutorial)
    size = computed.size_name(trouble.size)
    message = f"cannot be worked out{f' in size {size}' if size else ''}: {trouble.reason}."
    if not any(each.place == place and each.message.endswith(message) for each in collector.findings):
        collector.wrong("impossible-sum", place, f"The {words_of(trouble.name)} {message}", size=size)


def _place_of(key: str, tutorial: Tutorial) -> Place:
    sections: tuple[Mapping[str, Placed], ...] = (
        tutorial.fabrics, tutorial.pieces, tutorial.bands, tutorial.hems, tutorial.elastics, tutorial.changes,
        tutorial.spacings, tutorial.gathers, tutorial.pleats, tutorial.bindings, tutorial.circles,
        tutorial.boxed, tutorial.drops, tutorial.trims,
    )  # fmt: skip
    return next((section[key].place for section in sections if key in section), tutorial.place)


def _place_in(names: tuple[str, ...], tutorial: Tutorial) -> Place:
    places = [lengths.place for lengths in tutorial.referred if lengths.name in names]
    return min(places) if places else tutorial.place
