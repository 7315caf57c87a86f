"""Girths that list an edge once although its piece is cut twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.held import in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, show_working
from sitegen.tutorial import Computed, Girth, pieces_cut

_HALF, _ROUND = Fraction(13, 20), (Fraction(4, 5), Fraction(2))
"""A girth below the first share of the body is half of one; all copies between the others are a whole one."""
_TROUSERS = (
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\nbody: {waist: 52 cm}\n"
    "pieces: {leg: {cut: 2 mirrored, fabric: main, edges: {waist: 32 cm}}}\n"
    "girths: {waistline: {edges: [EDGES], body: waist}}\n"
)


@check(
    id="girth-half",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Girth,
    title="A finished measurement that is half of the garment",
    why="The student reads the half as the whole, and takes a size that is far too large.",
    source="Arithmetic; which share of the body is a half and which a whole: " + COMMON_PRACTICE,
    trips=_TROUSERS.replace("EDGES", "leg.waist"),
    passes=_TROUSERS.replace("EDGES", "leg.waist, leg.waist"),
)
def girth_half(girth: Girth, computed: Computed) -> Iterator[Finding]:
    """A girth is not below 65 % of the body where its edges, each counted as often as its piece is cut, go round it."""
    tutorial = computed.tutorial
    listed = Counter(edge.name for edge in girth.edges)
    counts = {}
    for name, times in listed.items():
        piece = tutorial.pieces.get(name.partition(".")[0])
        counts[name] = max(times, pieces_cut(piece) or 0) if piece is not None else times
    if girth.body is None or counts == dict(listed):
        return
    for size in range(tutorial.size_count):
        written, body = computed.length(f"{girth.key}.finished_girth", size), computed.length(girth.body.name, size)
        edges = {name: computed.length(name, size) for name in counts}
        if written is None or body is None or not body.length or None in edges.values():
            return
        whole = sum(edge.length.over(body.length) * counts[name] for name, edge in edges.items() if edge is not None)
        if written.length.over(body.length) > _HALF or not _ROUND[0] <= whole <= _ROUND[1]:
            continue
        system, size_name = tutorial.first_system, computed.size_name(size)
        right = ", ".join(name for name, count in counts.items() for _ in range(count))
        yield Finding(
            "girth-half",
            Severity.WRONG,
            girth.edges[0].place,
            f"The {girth.key.replace('_', ' ')} is {RULER.show(written.length, system)}{in_size(size_name)}, the body"
            f" {RULER.show(body.length, system)}. List each edge as often as it goes round the garment:"
            f" edges: [{right}]",
            "",
            "",
            show_working(written, system),
            size_name,
        )
        return
