"""Casings of elastic for which no piece is cut longer."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER
from sitegen.tutorial import AXES, Computed, Elastic, Piece, Tutorial, part_of

_LEGS = (
    "seam_allowance: 1 cm\nbody: {waist: 60 cm}\nfabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {leg: {cut: 2, fabric: main, finished: {length: 50 cm}, sides: {top: SIDE, bottom: raw},"
    " edges: {waist: 40 cm}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 2 cm, width: 2 cm, room: 5 mm, fold_under: 1 cm}}\n"
)


@check(
    id="casing-nowhere",
    area="elastic",
    severity=Severity.WRONG,
    looks_at=Elastic,
    title="A casing for which no piece is cut longer",
    why="What is turned down for the elastic is missing in the height of the garment, after the cloth is cut.",
    source="Arithmetic: a side takes what is turned there",
    trips=_LEGS.replace("SIDE", "waist"),
    passes=_LEGS.replace("SIDE", "ring"),
)
def casing_nowhere(elastic: Elastic, computed: Computed) -> Iterator[Finding]:
    """Every piece whose cut size is worked out and that has the edge round which elastic goes (named like its
    measurement, or in a girth of it) has the elastic at a side. Nothing is said of an edge that is hemmed as deep as
    the elastic is wide, bound, or sewn to something else, nor where another elastic of the same measurement lies. If no
    piece has such an edge, one must have the elastic at a side, or a hem or band must be as deep."""
    tutorial = computed.tutorial
    twins = {each.key for each in tutorial.elastics.values() if each.around.name == elastic.around.name}
    carried = {piece.key for piece in tutorial.pieces.values() if twins & {side.name for side in piece.sides.values()}}
    sized = {key: piece for key, piece in tutorial.pieces.items() if _is_worked_out(piece)}
    seats = seats_of(elastic, tutorial)
    if seats:
        elsewhere = _elsewhere(elastic, seats, computed)
        without = {name.partition(".")[0] for name in seats - elsewhere} & sized.keys() - carried
        if carried and not any(step.every_join() for step in tutorial.steps):
            return
    elif carried or _could_lie_elsewhere(elastic, computed):
        return
    else:
        without = set(sized)
    pieces = [piece for key, piece in sized.items() if key in without]
    if pieces:
        yield _finding(elastic, pieces, seats, computed, alone=not carried)


def _is_worked_out(piece: Piece) -> bool:
    """Whether a cut or finished size of the piece follows from what becomes of its sides."""
    return any(piece.given_along(axis) is not None and not piece.untold_sides(axis) for axis in AXES)


def seats_of(elastic: Elastic, tutorial: Tutorial) -> set[str]:
    """The edges round which the elastic goes, by its own words, by their names or by a girth."""
    around = elastic.around.name
    measure = around.rpartition(".")[2]
    edges = [edge for piece in tutorial.pieces.values() for edge in piece.edges.values()]
    girths = [girth for girth in tutorial.girths.values() if girth.body is not None and girth.body.name == around]
    girded = {edge.name for girth in girths for edge in girth.edges}
    return {edge.name for edge in edges if edge.key == measure or edge.name == around or edge.name in girded}


def _elsewhere(elastic: Elastic, seats: set[str], computed: Computed) -> set[str]:
    """Those of the edges that need no casing at a side: hemmed deep enough, bound, or sewn to another part."""
    tutorial = computed.tutorial
    hems = [hem.edges for hem in tutorial.hems.values() if _as_deep(f"{hem.key}.turn", elastic, computed)]
    rings = [band.around for band in tutorial.bands.values()] + [each.edges for each in tutorial.bindings.values()]
    found = {edge.name for edges in (*hems, *rings) for edge in edges}
    own = {part_of(name, tutorial) for name in seats}
    for join in (join for step in tutorial.steps for join in step.every_join()):
        names = {name.name for name in join.names()}
        if any(part_of(name, tutorial) not in own for name in names):
            found |= names
    return found | {edge.name for gather in tutorial.gathers.values() for edge in (*gather.edges, *gather.onto)}


def _could_lie_elsewhere(elastic: Elastic, computed: Computed) -> bool:
    """Whether there is any hem, band or binding into which the elastic goes."""
    tutorial = computed.tutorial
    depths = [f"{hem.key}.turn" for hem in tutorial.hems.values()]
    depths += [f"{key}.finished_width" for key in (*tutorial.bands, *tutorial.bindings)]
    return any(_as_deep(depth, elastic, computed) for depth in depths)


def _as_deep(name: str, elastic: Elastic, computed: Computed) -> bool:
    """Whether a depth is at least the width of the elastic in every size."""
    for size in range(computed.tutorial.size_count):
        depth, width = computed.length(name, size), computed.length(f"{elastic.key}.width", size)
        if depth is None or width is None or depth.length < width.length:
            return False
    return True


def _finding(elastic: Elastic, pieces: list[Piece], seats: set[str], computed: Computed, *, alone: bool) -> Finding:
    casing = computed.length(f"{elastic.key}.casing", 0)
    deep = f", {RULER.show(casing.length, computed.tutorial.first_system)} deep" if casing is not None else ""
    who = "No piece has" if alone else f"The {listed(piece.called for piece in pieces)} {_has(len(pieces))} no"
    where = listed(piece.key for piece in pieces) if seats else "the piece in which it runs"
    side = f"sides: {{{_side(pieces[0], seats)}: {elastic.key}}}"
    return Finding(
        "casing-nowhere",
        Severity.WRONG,
        elastic.place,
        f"{who} room for the casing of {elastic.key.replace('_', ' ')}{deep}: cut sizes are worked out as if nothing"
        f" were turned there. Name the elastic at that side of {where}: {side}",
    )


def _has(count: int) -> str:
    return "has" if count == 1 else "have"


def _side(piece: Piece, seats: set[str]) -> str:
    """The side of a piece at which an edge lies; the top where none is known."""
    at = (side for side, name in piece.sides.items() if f"{piece.key}.{name.name}" in seats)
    return next(at, "top")
