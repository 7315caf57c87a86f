"""What a card says of the cloth of a piece, and how far from an edge it sews."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.part_words import called
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import ZERO, Length, NotUnderstood, length_at
from sitegen.tutorial import Computed, Piece, Prose, Step, Tutorial

_ROW = re.compile(r"^[ ]*\|(?P<cells>[^\n]+)\|[ ]*$", re.MULTILINE)
_TABLE = (
    "fabrics: {canvas: {name: canvas, structure: woven, buy: 1 yd},\n"
    "  denim: {name: denim, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {called: panel, cut: 2, fabric: canvas}, base: {called: base, cut: 2, fabric: denim}}\n"
    "--- steps/01.yaml\ntitle: Cut\ncut: [panel, base]\ntext: |\n  | piece | cloth |\n  | --- | --- |\n"
    "  | panel | CLOTH |\n  | base | denim |\n"
)
_SEWN_ON = re.compile(
    r"\b(?:sew|stitch|topstitch)(?:ed)?\b[^.;{]{0,50}?\s(?P<length>\d[\d./ ]*\s*(?:in|cm|mm)\b)(?: \([^)]*\))?"
    r"\s+from (?:its|their|the folded)\s+(?:\w+\s+)?edges?\b",
    re.IGNORECASE,
)
_POCKET = (
    "fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\nseam_allowance: 1/2 in\n"
    "pieces: {pocket: {called: pocket, cut: 1, fabric: main, length: 8 in, width: 7 in}}\n"
    "--- steps/01.yaml\ntitle: Sew\ntext: Lay the pocket on the panel. Sew it on DISTANCE from its edge.\n"
)


@check(
    id="cloth-in-table",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A piece cut from another cloth in a table than in its data",
    why="The cutting list and the amounts to buy follow the data, the student follows the table.",
    source="Follows from the pieces",
    trips=_TABLE.replace("CLOTH", "denim"),
    passes=_TABLE.replace("CLOTH", "canvas"),
)
def cloth_in_table(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A row of a table that names one piece in its first cell, and in another cell nothing but a fabric by its key or
    name, names the fabric of that piece."""
    for step in tutorial.steps:
        if step.text is None:
            continue
        for row in _ROW.finditer(step.text.text):
            cells = [cell.strip().lower() for cell in row["cells"].split("|")]
            pieces = [piece for piece in tutorial.pieces.values() if _is_called(piece, cells[0], tutorial)]
            named = {key for key, fabric in tutorial.fabrics.items() if {key, fabric.name.lower()} & set(cells[1:])}
            if len(pieces) == 1 and len(named) == 1 and pieces[0].fabric is not None:
                right = pieces[0].fabric
                if right.name not in named:
                    yield Finding(
                        "cloth-in-table",
                        Severity.DOUBTFUL,
                        right.place,
                        f"The {pieces[0].called} is cut from {right.name}, but a table of step “{step.title}” says"
                        f" {next(iter(named))}.",
                        right.name,
                        next(iter(named)),
                    )


def _is_called(piece: Piece, cell: str, tutorial: Tutorial) -> bool:
    return any(name.search(cell) for name in called(piece.key, tutorial)[-1:])


@check(
    id="sewn-on-far-inside",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A piece sewn on further inside its edge than the allowance reaches",
    why="The stitches miss what was pressed under, and the edge stands open.",
    source="Edge stitching runs close to the folded edge, inside the allowance: " + COMMON_PRACTICE,
    trips=_POCKET.replace("DISTANCE", "2 cm"),
    passes=_POCKET.replace("DISTANCE", "2 mm"),
)
def sewn_on_far_inside(step: Step, computed: Computed) -> Iterator[Finding]:
    """“Sew it on … from its edge” is nearer to the edge than the seam allowance of the tutorial."""
    allowance = computed.number("seam_allowance", 0)
    if allowance is None or allowance.length <= ZERO:
        return
    for text in (text for text in (step.text, step.if_wrong) if text is not None):
        for match in _SEWN_ON.finditer(text.text):
            distance = _length(text, match)
            if distance is not None and distance > allowance.length:
                yield Finding(
                    "sewn-on-far-inside",
                    Severity.DOUBTFUL,
                    text.locate(*match.span("length")),
                    f"Stitches {' '.join(match['length'].split())} from an edge lie beyond the seam allowance.",
                )


def _length(text: Prose, match: re.Match[str]) -> Length | None:
    try:
        return length_at(text.text, match.start("length")).value
    except NotUnderstood:
        return None
