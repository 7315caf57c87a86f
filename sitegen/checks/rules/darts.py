"""Darts: what they take off an edge, and legs that lie on each other."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.quantities import ZERO, show_working
from sitegen.tutorial import Claim, Computed, Dart, Piece, words_of

_BODICE = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\npieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {side: {length: 16 in, SEWN}},\n"
    "    darts: {bust: {edge: side, DART}}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in}}\n"
)
_DART = "width: 1 in, length: 3 in"


def _bodice(dart: str, sewn: str = "sewn: 15 in") -> str:
    return _BODICE.replace("DART", dart).replace("SEWN", sewn)


@check(
    id="dart-sum",
    area="darts",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A dart that takes another width off its edge than is said",
    why="The edge with its dart sewn no longer meets the one to which it is sewn.",
    source="Arithmetic: the edge less the width of every dart in it",
    trips=_bodice(_DART, "sewn: 15 1/2 in"),
    passes=_bodice(f"{_DART}, taken: 1 in"),
)
def dart_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written length of an edge with its darts sewn, what they take in all, and a written width that follows from
    the edge that they meet, must be as computed."""
    if claim.part == "darted edge" or (claim.part == "dart" and claim.field in ("width", "taken")):
        yield from disagreements("dart-sum", claim, computed)


@check(
    id="dart-legs",
    area="darts",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A dart whose legs are not equally long",
    why="The legs are sewn onto each other: the longer one puckers, or the edge gets a step at the dart.",
    source="The leg is the long side over half of the width: geometry; that legs are trued to equal length is common"
    " practice, no source",
    trips=_bodice("width: 4 in, length: 4 1/2 in, leg: 4 7/8 in, other_leg: 5 1/4 in", "sewn: 12 in"),
    passes=_bodice("width: 4 in, length: 4 1/2 in, leg: 4 7/8 in, other_leg: 4 7/8 in", "sewn: 12 in"),
)
def dart_legs(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """Both written legs of a dart must be as long as its width and its length make them."""
    if claim.part == "dart" and claim.field in ("leg", "other_leg"):
        yield from disagreements("dart-legs", claim, computed)


@check(
    id="dart-room",
    area="darts",
    severity=Severity.WRONG,
    looks_at=Piece,
    title="Darts for which the edge has no room",
    why="Either nothing is left of the edge, or there is nothing to take in.",
    source="Arithmetic: a dart is wider than nothing, and narrower than its edge",
    trips=_bodice("meets: back.side, length: 3 in", "").replace("side: 15 in", "side: 17 in"),
    passes=_bodice("meets: back.side, length: 3 in, width: 1 in"),
)
def dart_room(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """The darts of an edge leave some of it, and where their width follows from the edge that they meet, that edge is
    the shorter one, in every size."""
    for dart in piece.darts.values():
        for size in range(computed.tutorial.size_count):
            finding = _no_room(dart, size, computed)
            if finding is not None:
                yield finding
                break


def _no_room(dart: Dart, size: int, computed: Computed) -> Finding | None:
    width, sewn = (computed.length(name, size) for name in (f"{dart.name}.width", f"{dart.edge_name}.sewn"))
    size_name = computed.size_name(size)
    if width is not None and width.length <= ZERO:
        off, trouble = width, f"has nothing to take in: {words_of(dart.edge_name)} is no longer than what it meets"
    elif sewn is not None and sewn.length <= ZERO:
        off, trouble = sewn, f"leaves nothing of {words_of(dart.edge_name)}"
    else:
        return None
    return Finding(
        "dart-room",
        Severity.WRONG,
        dart.place,
        f"The dart {words_of(dart.name)} {trouble}{in_size(size_name)}.",
        "",
        "",
        show_working(off, computed.tutorial.first_system),
        size_name,
    )
