"""Pieces of which only the finished size is known, so that nobody could cut them."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.tutorial import AXES, Computed, Piece, sides_to_tell

_PANEL = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven}}\n"
    "pieces: {panel: {cut: 2, fabric: main, finished: {length: 8 in}SIDES}}\n"
)


@check(
    id="cut-size-unknown",
    area="pieces",
    severity=Severity.WRONG,
    looks_at=Piece,
    title="A piece of which only the finished size is known",
    why="A student who cuts the finished size has no cloth for the seams, and the piece is in no cutting list.",
    source="Arithmetic: the cut size is the finished one and what lies at both ends",
    trips=_PANEL.replace("SIDES", ""),
    passes=_PANEL.replace("SIDES", ", sides: {top: seam, bottom: seam}"),
)
def cut_size_unknown(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """A piece with a finished length says what lies at its top and bottom, one with a finished width what lies at its
    left and right."""
    axes = [axis for axis in AXES if is_without_sides(piece, axis)]
    if axes:
        untold = [side for axis in axes for side in piece.untold_sides(axis)]
        told = sides_to_tell(piece, axes)
        yield Finding(
            "cut-size-unknown",
            Severity.WRONG,
            piece.place,
            f"The cut {listed(axes)} of the {piece.called} cannot be worked out. Say what lies at its {listed(untold)},"
            f" such as {told}: a seam, an edge by its name, a hem, an elastic, fold or raw.",
        )


def is_without_sides(piece: Piece, axis: str) -> bool:
    """Whether only the finished size of a piece is known along it, since nothing is said of its sides."""
    return piece.finished_given and piece.given_along(axis) is not None and bool(piece.untold_sides(axis))
