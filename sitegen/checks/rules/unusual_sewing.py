"""Allowances, elastics and hems that can be, but hardly are meant: a seam of 10 cm, elastic that holds nothing."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, cm
from sitegen.tutorial import AXES, Amount, Computed, Elastic, Hem, Piece, Tutorial

MOST_ALLOWANCE = cm(5)
"""Seams that are to be let out later have up to 2 in; hardly anything has more."""
_ELASTIC = (
    "body: {waist: 28 in}\n"
    "elastics: {waistband: {around: body.waist, ratio: RATIO, overlap: 1 in, width: 3/4 in, room: ROOM}}\n"
)
_SKIRT = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: poplin, structure: woven}}\n"
    "pieces: {skirt: {cut: 2, fabric: main, length: 20 in, sides: {top: seam, bottom: SIDE},"
    " edges: {lower: 30 in}}}\n"
    "hems: {deep: {edges: [skirt.lower], turn: 1 in, fold_under: 1/4 in, stitch: straight}}\n"
)


@check(
    id="allowance-unusual",
    area="seams",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A seam allowance that is far too wide",
    why="Every piece is cut by it; mostly millimetres are read as centimetres, or a point slipped.",
    source="Allowances are 1/4 to 1 in (6 to 25 mm), up to 2 in where a seam is to be let out: " + COMMON_PRACTICE,
    trips="seam_allowance: 10 cm",
    passes="seam_allowance: 10 mm",
)
def allowance_unusual(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A seam allowance, of the tutorial, a piece, an edge or a band, is no more than 2 in (5 cm)."""
    for what, amount in _allowances(tutorial):
        if amount is None or amount.typed.value <= MOST_ALLOWANCE + cm("0.1"):
            continue
        typed = amount.typed
        read = RULER.show(typed.value, typed.unit.system)
        also = f", since a number without a unit is in {typed.unit.system.value}" if typed.is_bare else ""
        yield Finding(
            "allowance-unusual",
            Severity.DOUBTFUL,
            amount.place,
            f"The seam allowance{what} is read as {read}{also}. Hardly any seam has more than 2 in (5 cm). Is its unit"
            " the right one?",
            typed.text.strip(),
        )


def _allowances(tutorial: Tutorial) -> Iterator[tuple[str, Amount | None]]:
    yield "", tutorial.seam_allowance
    for piece in tutorial.pieces.values():
        yield f" of the {piece.called}", piece.seam_allowance
        yield from ((f" of {edge.name}", edge.seam_allowance) for edge in piece.edges.values())
    yield from ((f" of the {key.replace('_', ' ')}", band.seam_allowance) for key, band in tutorial.bands.items())


@check(
    id="elastic-loose",
    area="elastic",
    severity=Severity.DOUBTFUL,
    looks_at=Elastic,
    title="Elastic that is no shorter than what it holds, or that has no room in its casing",
    why="Elastic holds because it is stretched; and into a casing just as wide as itself it cannot be drawn.",
    source="Elastic is cut shorter than the body, a casing wider than the elastic: " + COMMON_PRACTICE,
    trips=_ELASTIC.replace("RATIO", "105%").replace("ROOM", "1/8 in"),
    passes=_ELASTIC.replace("RATIO", "90%").replace("ROOM", "1/8 in"),
)
def elastic_loose(elastic: Elastic, computed: Computed) -> Iterator[Finding]:
    """The ratio of an elastic is below 100 %, and its casing has room for it."""
    words = elastic.key.replace("_", " ")
    if elastic.ratio.ratio.value >= 1:
        yield Finding(
            "elastic-loose",
            Severity.DOUBTFUL,
            elastic.ratio.place,
            f"The {words} is {elastic.ratio.text} of what it goes round, so it is not stretched and holds nothing."
            " Usual are 80% to 95%.",
            elastic.ratio.text,
        )
    room = elastic.room.amount_at(0)
    if room is not None and room.typed.value == ZERO:
        yield Finding(
            "elastic-loose",
            Severity.DOUBTFUL,
            room.place,
            f"The casing of the {words} has no room, so that the elastic can hardly be drawn through. Usual are 1/8 to"
            " 1/4 in (3 to 6 mm).",
            room.typed.text.strip(),
        )


@check(
    id="hem-nowhere",
    area="hems",
    severity=Severity.DOUBTFUL,
    looks_at=Hem,
    title="A hem for which no cloth is reckoned",
    why="What is turned up is missing in the length of the garment, or too much is told of it, once it is sewn.",
    source="Arithmetic: a side takes what is turned there",
    trips=_SKIRT.replace("SIDE", "raw"),
    passes=_SKIRT.replace("SIDE", "deep"),
)
def hem_nowhere(hem: Hem, computed: Computed) -> Iterator[Finding]:
    """A hem on a piece whose sizes are worked out from its sides is at one of them. Only a piece with a raw side and no
    side that names the edge or the hem is told of, since the hem may lie inside of a piece."""
    pieces = computed.tutorial.pieces
    of_hem = {edge.name.partition(".")[0]: edge.name.partition(".")[2] for edge in hem.edges}
    without = [pieces[key] for key, edge in of_hem.items() if key in pieces and _is_raw_beside(pieces[key], hem, edge)]
    if not without:
        return
    piece = without[0]
    raw = [side for side, name in piece.sides.items() if name.name == "raw" and _is_worked_out(piece, side)]
    who = listed(each.called for each in without)
    yield Finding(
        "hem-nowhere",
        Severity.DOUBTFUL,
        piece.sides[raw[0]].place,
        f"The {hem.key.replace('_', ' ')} turns an edge of the {who}, whose sizes are worked out as if nothing were"
        f" turned there: its {listed(raw)} is raw. If the hem is there, name it: sides: {{{raw[0]}: {hem.key}}}",
        "raw",
        hem.key if len(raw) == 1 else "",
    )


def _is_raw_beside(piece: Piece, hem: Hem, edge: str) -> bool:
    named = {name.name for name in piece.sides.values()}
    raw = any(name.name == "raw" and _is_worked_out(piece, side) for side, name in piece.sides.items())
    return raw and not named & {hem.key, edge}


def _is_worked_out(piece: Piece, side: str) -> bool:
    """Whether a cut or finished size of the piece follows from what becomes of this side."""
    (axis,) = (axis for axis, ends in AXES.items() if side in ends)
    return piece.given_along(axis) is not None and not piece.untold_sides(axis)
