"""Ease: garments so close that they may not be wearable."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import in_size
from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, System, show_working
from sitegen.sewing import ease as ease_sums
from sitegen.tutorial import Computed, Girth

_SHIRT = (
    "fabrics: {main: {name: linen, structure: woven}}\nbody: {bust: 36 in}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, edges: {chest: CHEST}}, back: {cut: 1 on fold, fabric: main,"
    " edges: {chest: 18 1/2 in}}}\ngirths: {chest_round: {edges: [front.chest, back.chest], body: bust}}"
)


@check(
    id="ease-unusual",
    area="ease",
    severity=Severity.DOUBTFUL,
    looks_at=Girth,
    title="A woven garment with less ease than any source gives",
    why="A woven cloth does not stretch: without ease one cannot breathe, sit or lift an arm.",
    source="Wearing ease for wovens: New Mexico State Univ. Guide C-228; US clothing-construction textbook; Central"
    " Washington Univ., costume construction text, chapter 16. They differ",
    trips=_SHIRT.replace("CHEST", "18 in"),
    passes=_SHIRT.replace("CHEST", "19 1/2 in"),
)
def ease_unusual(girth: Girth, computed: Computed) -> Iterator[Finding]:
    """The ease of an adult's woven garment at the bust, the waist or the hip must not lie below every published range
    of wearing ease. More is a matter of design; knits, cloth with stretch and children's clothes are not compared."""
    where = girth.body.name.removeprefix("body.") if girth.body is not None else ""
    ranges = ease_sums.published(where)
    if not ranges or computed.tutorial.child or not _firm(girth, computed):
        return
    least = min(each.least for each in ranges)
    for size in range(computed.tutorial.size_count):
        room = computed.number(f"{girth.key}.ease", size)
        if room is None or room.length >= least:
            continue
        system, size_name = computed.tutorial.first_system, computed.size_name(size)
        yield Finding(
            "ease-unusual",
            Severity.DOUBTFUL,
            girth.place,
            f"The ease at the {where} is {RULER.show(room.length, system)}{in_size(size_name)}."
            " Published for wovens, and not agreed upon:"
            f" {'; '.join(_told(each, system) for each in ranges)}.",
            "",
            "",
            show_working(room, system),
            size_name,
        )
        return


@check(
    id="ease-missing",
    area="ease",
    severity=Severity.DOUBTFUL,
    looks_at=Girth,
    title="A woven garment that is smaller than the body",
    why="It cannot be put on: a woven cloth does not stretch.",
    source="Arithmetic; a woven without elastane hardly stretches along its threads: common practice, no source",
    trips=_SHIRT.replace("bust: 36", "neck: 38").replace("body: bust", "body: neck").replace("CHEST", "19 in"),
    passes=_SHIRT.replace("bust: 36", "neck: 36").replace("body: bust", "body: neck").replace("CHEST", "19 in"),
)
def ease_missing(girth: Girth, computed: Computed) -> Iterator[Finding]:
    """A woven garment without stretch, a child's too, is nowhere smaller than the body. Pieces on the bias are not
    compared, nor what ease-unusual tells."""
    where = girth.body.name.removeprefix("body.") if girth.body is not None else ""
    told = ease_sums.published(where) and not computed.tutorial.child
    if not where or told or not _firm(girth, computed) or _on_the_bias(girth, computed):
        return
    for size in range(computed.tutorial.size_count):
        room = computed.number(f"{girth.key}.ease", size)
        if room is None or room.length >= ZERO:
            continue
        system, size_name = computed.tutorial.first_system, computed.size_name(size)
        yield Finding(
            "ease-missing",
            Severity.DOUBTFUL,
            girth.place,
            f"Round the {where.replace('_', ' ')} the garment is {RULER.show(abs(room.length), system)} smaller than"
            f" the body{in_size(size_name)}, and its cloth does not stretch. Look at the edges and at the measurement.",
            "",
            "",
            show_working(room, system),
            size_name,
        )
        return


def _on_the_bias(girth: Girth, computed: Computed) -> bool:
    pieces = (computed.tutorial.pieces.get(edge.name.partition(".")[0]) for edge in girth.edges)
    return any(piece is not None and piece.bias for piece in pieces)


def _firm(girth: Girth, computed: Computed) -> bool:
    """Whether every piece round which the garment is measured is of a woven without stretch."""
    tutorial = computed.tutorial
    pieces = [tutorial.pieces.get(edge.name.partition(".")[0]) for edge in girth.edges]
    fabrics = [tutorial.fabrics.get(piece.fabric.name) for piece in pieces if piece is not None and piece.fabric]
    if len(fabrics) != len(girth.edges):
        return False
    return all(fabric is not None and not fabric.knit and fabric.stretch_across is None for fabric in fabrics)


def _told(one: ease_sums.WearingEase, system: System) -> str:
    least, most = (RULER.show(value, system) for value in (one.least, one.most))
    number, _, unit = least.rpartition(" ")
    span = least if one.least == one.most else f"{number if most.endswith(f' {unit}') else least} to {most}"
    return f"{span}{f' in {one.garment}' if one.garment else ''} ({one.source})"
