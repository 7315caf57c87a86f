"""Bindings, circle skirts and edges that are arcs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, Rounding, Worked, inches, show_working
from sitegen.sewing import circle
from sitegen.tutorial import Binding, Claim, Computed, Edge, Piece

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
_TIP = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven}}\n"
    "pieces: {tip: {cut: 2, fabric: main, length: 8 in, width: 8 in, edges: {rim: {length: RIM, turn: 360 outward}}}}"
)
_RIM = re.compile(r"(?:^|_)(?:rim|circumference)$")
TOLERANCE = inches("1/8")
"""How much wider or narrower than its rim a round piece may be: a mark of the ruler."""


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


@check(
    id="round-rim",
    area="circles",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="A round piece that is not as wide as its rim makes it",
    why="Whatever is sewn round it is cut to the rim: it comes out too long or too short by three times as much.",
    source="Width of a circle = edge ÷ π: geometry of the circle; tolerance 1/8 in: " + COMMON_PRACTICE,
    trips=_TIP.replace("RIM", "25 1/8 in"),
    passes=_TIP.replace("RIM", "22 in"),
)
def round_rim(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """A piece with an edge that is a whole circle, by its radius or by its name (rim, circumference) and a turn of 360
    degrees, is as long and as wide as a circle with this edge, within 1/8 in (3 mm): both cut, or both along the seam
    line. A rim of a piece that is longer than it is wide is no circle, and nothing is said of it."""
    edge = next((each for each in piece.edges.values() if _is_round(each)), None)
    if edge is None or piece.on_fold:
        return
    for size in range(computed.tutorial.size_count):
        finding = _other_width(piece, edge, size, computed)
        if finding is not None:
            yield finding
            return


def _is_round(edge: Edge) -> bool:
    whole = edge.turn is not None and edge.turn.degrees == 360 and not edge.turn.inward
    return whole and (edge.arc is not None or _RIM.search(edge.key) is not None)


def _other_width(piece: Piece, edge: Edge, size: int, computed: Computed) -> Finding | None:
    for number, kind in ((f"{edge.name}.cut_edge", "cut"), (edge.name, "finished")):
        rim = computed.length(number, size)
        axes = {axis: computed.length(f"{piece.key}.{kind}_{axis}", size) for axis in ("width", "length")}
        known = {axis: worked for axis, worked in axes.items() if worked is not None}
        if rim is None or not known:
            continue
        if edge.arc is None and len({worked.length for worked in known.values()}) > 1:
            return None
        wide = circle.across(f"width of a circle with this {'cut ' if kind == 'cut' else ''}edge", rim)
        for worked in known.values():
            if abs(worked.length - wide.length) > TOLERANCE:
                return _not_as_wide(piece, edge, wide, worked, size, computed)
    return None


def _not_as_wide(piece: Piece, edge: Edge, wide: Worked, told: Worked, size: int, computed: Computed) -> Finding:
    system, name = computed.tutorial.first_system, computed.size_name(size)
    return Finding(
        "round-rim",
        Severity.DOUBTFUL,
        edge.place,
        f"The {wide.name} is {RULER.show(wide.length, system)}{in_size(name)}, but the {told.name} is"
        f" {RULER.show(told.length, system)}.",
        "",
        "",
        show_working(wide, system),
        name,
    )
