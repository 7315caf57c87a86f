"""Written numbers that nothing can be held against."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.rules.cut_size_unknown import is_without_sides
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Claim, Computed, words_of

_PARTS = {
    "piece": "the piece has that length or width, as cut or finished, and its sides say what lies at both ends of it",
    "band": "the edges of its opening have a length; only a band on a neck, with a front and a back, has a quarter from"
    " the shoulder",
    "change": "its piece has the length, the line or the taper from which it follows",
    "boxed": "the panel has its finished length and width, and all four of its sides",
    "drops": "its fabric has a width, and a repeat where the print is matched",
    "dart": "its edge has a length",
    "trim": "the edges along which it lies have a length",
    "darted edge": "the edge has a length, and its darts a width",
    "fabric": "the fabric has a width, and all of its pieces a length, a width and how many to cut",
}
_LEG = (
    "fabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\npieces: {leg: {cut: 2, fabric: main, LENGTH}}\n"
    "changes: {longer: {piece: leg, line_at: 12 in from the top, lengthen_by: 1 in, part_below: 28 in}}"
)


@check(
    id="claim-unheld",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Claim,
    title="A written number that cannot be worked out",
    why="Nothing is held against it, so that a slip in it would be published.",
    source="The content format of this program: what can be computed and is written is held against the computed one",
    trips=_LEG.replace("LENGTH", "edges: {side: 40 in}"),
    passes=_LEG.replace("LENGTH", "length: 40 in"),
)
def claim_unheld(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A number that is written although it can be computed can be worked out in some size: what it follows from is
    there. This looks at pieces, bands, changes, darts, boxed corners, trims, drops and repeats; of
    a piece of which only its finished size is known, cut-size-unknown speaks."""
    needs = _PARTS.get(claim.part)
    if needs is None or any(computed.number(claim.lengths.name, size) for size in range(computed.tutorial.size_count)):
        return
    piece_name, _, field = claim.lengths.name.partition(".")
    piece = computed.tutorial.pieces.get(piece_name)
    if claim.part == "piece" and piece is not None and is_without_sides(piece, field.partition("_")[2]):
        return
    yield Finding(
        "claim-unheld",
        Severity.DOUBTFUL,
        claim.lengths.place,
        f"The {words_of(claim.lengths.name)} cannot be worked out, so nothing is held against it. See that {needs}, or"
        " take it out.",
    )
