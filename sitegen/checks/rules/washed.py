"""Shrinkage that was claimed, and shrinkage that was measured on a washed swatch."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import Ratio, show_ratio, show_working
from sitegen.tutorial import Computed, Fabric

STEP = Fraction(1, 100)
"""One percent: on a swatch of 10 in, one mark of a ruler, 1/16 in, is 0.6 %."""
_COTTON = (
    "fabrics: {main: {name: cotton, structure: woven, washed: {before: 10 in, after: 9 1/2 in}, CLAIM}}\n"
    "pieces: {panel: {cut: 2, fabric: main}}"
)


@check(
    id="shrinkage-claim",
    area="cloth",
    severity=Severity.WRONG,
    looks_at=Fabric,
    title="A shrinkage that the washed swatch does not show",
    why="The cloth to buy is worked out from the shrinkage; with too little of it the last piece cannot be cut.",
    source="Shrinkage is (before − after) ÷ before, in percent; no finer than 1 % is claimed: " + COMMON_PRACTICE,
    trips=_COTTON.replace("CLAIM", "shrinkage: 3%"),
    passes=_COTTON.replace("CLAIM", "shrinkage: 5%"),
)
def shrinkage_claim(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """The shrinkage that a fabric is said to have must be that of its washed swatch, within 1 %. Without a claim, the
    one to write is named."""
    found = computed.number(f"{fabric.key}.washed_shrinkage", 0)
    if fabric.washed is None or found is None:
        return
    exact, shown = found.ratio.value, show_ratio(found.ratio)
    right = show_ratio(Ratio(ceil(exact / STEP) * STEP))
    working = show_working(found, computed.tutorial.first_system)
    if exact < 0:
        yield Finding(
            "shrinkage-claim",
            Severity.DOUBTFUL,
            fabric.washed.after.place,
            f"The swatch of {fabric.name} is longer after washing than before. Are the two lengths changed over?",
            fabric.washed.after.typed.text.strip(),
            working=working,
        )
    elif fabric.shrinkage is None:
        yield Finding(
            "shrinkage-claim",
            Severity.HINT,
            fabric.place,
            f"The swatch of {fabric.name} shrinks by {shown}. Write it down as shrinkage: {right}",
            working=working,
        )
    elif abs(fabric.shrinkage.ratio.value - exact) > STEP:
        said = fabric.shrinkage
        yield Finding(
            "shrinkage-claim",
            Severity.WRONG,
            said.place,
            f"{fabric.name} is said to shrink by {said.text}, but its swatch shrinks by {shown}.",
            said.text,
            right,
            working,
        )
