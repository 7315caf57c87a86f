"""Lengthening and shortening: where the line lies, and edges that must stay equal."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import ZERO, show_working
from sitegen.tutorial import Change, Computed, Join

_PIECES = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, length: 26 in, edges: {side: 15 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, length: 26 in, edges: {side: 15 in}}\n"
)
_STEP = (
    "\n--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew the side seams.\n"
    "join: [{edges: [front.side, back.side], stitch: zigzag}]"
)


@check(
    id="line-outside",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Change,
    title="A lengthening line that is not on the piece",
    why="There is nothing to cut across there.",
    source="Arithmetic: a line lies between the two ends of its piece",
    trips=_PIECES + "changes: {longer: {piece: front, line_at: 30 in from the top, lengthen_by: 1 in}}",
    passes=_PIECES + "changes: {longer: {piece: front, line_at: 18 in from the top, lengthen_by: 1 in}}",
)
def line_outside(change: Change, computed: Computed) -> Iterator[Finding]:
    """The line across which a piece is lengthened or shortened must lie between its ends, in every size."""
    if change.line_at is None:
        return
    for size in range(computed.tutorial.size_count):
        for part in ("part_above", "part_below"):
            number = computed.number(f"{change.key}.{part}", size)
            if number is not None and number.length <= ZERO:
                size_name = computed.size_name(size)
                yield Finding(
                    "line-outside",
                    Severity.WRONG,
                    change.line_at.place,
                    f"The line of {change.key.replace('_', ' ')} lies outside the piece"
                    f"{f' in size {size_name}' if size_name else ''}.",
                    "",
                    "",
                    show_working(number, computed.tutorial.first_system),
                    size_name,
                )
                return


@check(
    id="mate-unchanged",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Change,
    title="A lengthened edge whose mate stays as it was",
    why="The two edges no longer meet when they are sewn together.",
    source="Mates are changed by the same amount at the same level: " + COMMON_PRACTICE,
    trips=_PIECES
    + "changes: {longer: {piece: front, line_at: 2/3 from the top, lengthen_by: 2 in, crosses: [side]}}"
    + _STEP,
    passes=_PIECES
    + "changes: {longer: {pieces: [front, back], line_at: 2/3 from the top, lengthen_by: 2 in, crosses: [side]}}"
    + _STEP,
)
def mate_unchanged(change: Change, computed: Computed) -> Iterator[Finding]:
    """When a change crosses an edge, every edge joined to it must belong to a piece that changes with it."""
    changed = {name.name for name in change.pieces}
    crossed = {
        edge.name if "." in edge.name else f"{piece}.{edge.name}" for edge in change.crosses for piece in changed
    }
    missing: dict[str, str] = {}
    for step in computed.tutorial.steps:
        for join in step.every_join():
            for name in _mates(join, crossed):
                piece = name.partition(".")[0]
                if piece not in changed and piece in computed.tutorial.pieces:
                    missing.setdefault(piece, name)
    for piece, name in missing.items():
        yield Finding(
            "mate-unchanged",
            Severity.WRONG,
            change.place,
            f"{change.key.replace('_', ' ').capitalize()} crosses an edge that is sewn to {name}, but the"
            f" {piece} is not changed with it. Add {piece} to its pieces.",
            "",
            f"pieces: [{', '.join([*(each.name for each in change.pieces), piece])}]",
        )


def _mates(join: Join, crossed: set[str]) -> Iterator[str]:
    """The edges to which the crossed ones are sewn: at the same place of a chain as long, else the whole chain."""
    for chain in join.chains:
        for index, edge in enumerate(chain):
            if edge.name not in crossed:
                continue
            for other in join.chains:
                if other is chain:
                    continue
                yield from (name.name for name in (other if len(other) != len(chain) else other[index : index + 1]))
