"""Bindings, circle skirts and edges that are arcs."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, Rounding, show_working
from sitegen.tutorial import Binding, Claim, Computed

_NECK = (
    "seam_allowance: 1/4 in\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, edges: {neckline: 20 in}}}\n"
)
_BINDING = "edges: [front.neckline], kind: double fold, finished_width: 3/8 in, overlap: 1 in"
_CIRCLE = (
    "seam_allowance: 1/2 in\nbody: {waist: 28 in}\n"
    "circles: {skirt: {waist: body.waist, share: half, length: 20 in, CLAIM}}"
)
_ARC = (
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {skirt: {cut: 1, fabric: main, edges: {hem: {radius: 30 in, turn: 90 outward, CLAIM}}}}"
)


@check(
    id="bias-sum",
    area="bindings",
    severity=Severity.WRONG,
    looks_at=(Claim, Binding),
    title="A binding whose strip is too narrow, too short, or cut out of too small a square",
    why="A strip that is too narrow does not reach round the edge, and one that is too short ends before it.",
    source="Widths in the strip, edge, overlap and joins: "
    + COMMON_PRACTICE
    + "; strips out of a square: geometry of squares and strips",
    trips=_NECK + f"bindings: {{neck_binding: {{{_BINDING}, strip_width: 1 1/4 in}}}}",
    passes=_NECK
    + f"bindings: {{neck_binding: {{{_BINDING}, square: 9 in, strip_width: 1 1/2 in, length: 21 3/4 in}}}}",
)
def bias_sum(part: Claim | Binding, computed: Computed) -> Iterator[Finding]:
    """Written widths and lengths of a binding must be the computed ones, and the square of cloth must make enough of
    it in every size, its joins taken off."""
    if isinstance(part, Claim):
        if part.part == "binding":
            yield from disagreements("bias-sum", part, computed)
        return
    if part.square is None:
        return
    for size in range(computed.tutorial.size_count):
        made, needed = (computed.number(f"{part.key}.{field}", size) for field in ("sewn_length", "needed"))
        if made is None or needed is None or made.length >= needed.length:
            continue
        system, size_name = computed.tutorial.first_system, computed.size_name(size)
        amount, short_of = part.square.amount_at(size), RULER.show(needed.length, system, Rounding.ENOUGH)
        yield Finding(
            "bias-sum",
            Severity.WRONG,
            amount.place if amount is not None else part.square.place,
            f"This square makes {RULER.show(made.length, system)} of strip for the {part.key.replace('_', ' ')}, but"
            f" {f'size {size_name} needs' if size_name else 'it needs'} {short_of}.",
            amount.typed.text.strip() if amount is not None else "",
            "",
            (*show_working(made, system), *show_working(needed, system)),
            size_name,
        )
        return


@check(
    id="circle-radius",
    area="circles",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A circle skirt cut with the wrong radius",
    why="A waist that is cut too large cannot be made smaller again: half an inch of radius is three inches of waist.",
    source="Radius = waist ÷ (2π × share): geometry of the circle",
    trips=_CIRCLE.replace("CLAIM", "radius: 4 1/2 in"),
    passes=_CIRCLE.replace("CLAIM", "radius: 8 7/8 in, cut_radius: 8 3/8 in"),
)
def circle_radius(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """Written radii of a circle skirt, and the length of its lower edge, must be the computed ones."""
    if claim.part == "circle":
        yield from disagreements("circle-radius", claim, computed)


@check(
    id="edge-arc",
    area="circles",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A curved edge whose length is not that of its arc",
    why="Whatever is sewn to the edge is cut to its length.",
    source="Arc = radius × turn: geometry of the circle",
    trips=_ARC.replace("CLAIM", "length: 45 in"),
    passes=_ARC.replace("CLAIM", "length: 47 1/8 in"),
)
def edge_arc(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written length of an edge that has a radius must be the radius round as much of a circle as it turns."""
    if claim.part == "edge":
        yield from disagreements("edge-arc", claim, computed)
