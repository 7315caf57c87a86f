"""Edges that are longer than the piece on which they lie."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.held import in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER
from sitegen.tutorial import Computed, Edge, Piece

MOST = Fraction(5, 4)
"""How much longer than the piece is wide an edge across it may be: the curve of a shirt tail is some 15 % longer."""
_ACROSS = re.compile(r"(?:^|_)(?:hem|waist|wrist|top|bottom)$")
_UPRIGHT = re.compile(r"(?:^|_)(?:side|inseam|outseam|underarm)$")
_SKIRT = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\n"
    "pieces: {skirt: {cut: 2, fabric: main, length: 24 in, width: WIDTH, edges: {hem: 18 in, side: 23 in}}}\n"
)


@check(
    id="edge-too-long",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="An edge across a piece that is longer than the piece is wide",
    why="Mostly one of the two is meant of half the piece; then the cloth or the band is worked out for half of it.",
    source="Arithmetic; how much longer a curve may be: " + COMMON_PRACTICE,
    trips=_SKIRT.replace("WIDTH", "9 1/2 in"),
    passes=_SKIRT.replace("WIDTH", "19 in"),
)
def edge_too_long(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """A hem, waist, wrist, top or bottom is at most a quarter longer than the whole piece is wide, in every size. On a
    piece with a side that is the fold, its width is taken twice. Pieces without a side seam that is at least half as
    long as they are may lie in another way, and nothing is said of them."""
    if piece.bias or piece.crosswise:
        return
    half = any(side.name == "fold" for side in piece.sides.values())
    upright = {piece.sides[side].name for side in ("left", "right") if side in piece.sides}
    for edge in piece.edges.values():
        if edge.arc is not None or edge.key in upright or not _ACROSS.search(edge.key):
            continue
        for size in range(computed.tutorial.size_count):
            finding = _too_long(piece, edge, size, computed, half=half)
            if finding is not None:
                yield finding
                break


def _too_long(piece: Piece, edge: Edge, size: int, computed: Computed, *, half: bool) -> Finding | None:
    long = computed.length(edge.name, size)
    width = computed.length(f"{piece.key}.cut_width", size)
    if long is None or width is None or not _is_upright(piece, size, computed):
        return None
    whole = width.length * 2 if half else width.length
    if long.length <= whole * MOST:
        return None
    system = computed.tutorial.first_system
    on_fold = " On the fold, width is that of the whole piece, opened out." if piece.on_fold and not half else ""
    return Finding(
        "edge-too-long",
        Severity.DOUBTFUL,
        edge.place,
        f"{edge.name} is {RULER.show(long.length, system)} long{in_size(computed.size_name(size))}, but the whole"
        f" {piece.called} is cut only {RULER.show(whole, system)} wide. Is one of the two half of what is meant?"
        f"{on_fold}",
        "",
        "",
        (),
        computed.size_name(size),
    )


def _is_upright(piece: Piece, size: int, computed: Computed) -> bool:
    """Whether a side seam of the piece shows that its length runs down the garment."""
    length = computed.length(f"{piece.key}.cut_length", size)
    seams = (computed.length(edge.name, size) for edge in piece.edges.values() if _UPRIGHT.search(edge.key))
    return length is not None and any(seam is not None and seam.length * 2 >= length.length for seam in seams)
