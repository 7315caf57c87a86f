"""Pictures that a step asks for and that cannot be drawn."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Step, lacking, lacking_of_part, picture_names

_PIECES = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces:\n"
    "  front: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    "  back: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew the side seams.\n"
    "join: [{edges: [front.side, back.side], stitch: zigzag}]\n"
)


@check(
    id="picture-undrawable",
    area="pictures",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A picture that cannot be drawn",
    why="The card has no picture where its author means to show one.",
    source="Arithmetic: a picture to scale needs every length that it shows",
    trips=_PIECES + "diagrams: [plan of front]",
    passes=_PIECES + "diagrams: [seam of front.side]",
)
def picture_undrawable(step: Step, computed: Computed) -> Iterator[Finding]:
    """Every seam, meeting of two edges, plan of a piece, spacing, gather, binding and every pleats that a step asks for
    under diagrams can be drawn in every size."""
    pictures = picture_names(computed.tutorial)
    for name in step.diagrams:
        picture = pictures.get(name.name)
        sizes = range(computed.tutorial.size_count)
        reasons = (
            (size, lacking(picture, computed, size) if picture else lacking_of_part(name.name, computed, size))
            for size in sizes
        )
        size, reason = next((found for found in reasons if found[1]), (0, ""))
        if reason:
            yield Finding(
                "picture-undrawable",
                Severity.DOUBTFUL,
                name.place,
                f"The picture “{name.name}” cannot be drawn: {reason}.",
                name.name,
                size=computed.size_name(size),
            )
