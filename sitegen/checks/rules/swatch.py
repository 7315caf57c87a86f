"""Stretch that was claimed, and stretch that was measured on a swatch."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import Ratio, show_ratio, show_working
from sitegen.tutorial import Computed, Fabric

STEP = Fraction(1, 20)
"""Five percent: on a swatch of 4 in one mark of a ruler, 1/16 in, is already 1.6 %, and no two hands pull alike."""
_JERSEY = "fabrics: {main: {name: jersey, structure: knit, swatch: {rest: 4 in, stretched: 5 1/2 in}, CLAIM}}"


@check(
    id="stretch-claim",
    area="stretch",
    severity=Severity.WRONG,
    looks_at=Fabric,
    title="A stretch that the swatch does not show",
    why="Bands and ease are worked out from the stretch; with a wrong one a neckband does not go over the head.",
    source="Stretch is (stretched − relaxed) ÷ relaxed, tested on 4 in across: Purdue Univ. Cooperative Extension"
    " HE-452; laboratories agree poorly (ASTM D2594), so that no finer than 5 % is claimed: " + COMMON_PRACTICE,
    trips=_JERSEY.replace("CLAIM", "stretch_across: 50%"),
    passes=_JERSEY.replace("CLAIM", "stretch_across: 40%"),
)
def stretch_claim(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """The stretch across that a fabric is said to have must be that of its swatch, to the nearest 5 %, since a test by
    hand cannot tell more. Without a claim, the one to write is named."""
    measured = computed.number(f"{fabric.key}.swatch_stretch", 0)
    if fabric.swatch is None or measured is None:
        return
    exact = measured.ratio.value
    right = show_ratio(Ratio(floor(exact / STEP + Fraction(1, 2)) * STEP))
    working = show_working(measured, computed.tutorial.first_system)
    if fabric.swatch.stretched.typed.value < fabric.swatch.rest.typed.value:
        yield Finding(
            "stretch-claim",
            Severity.WRONG,
            fabric.swatch.stretched.place,
            f"The swatch of {fabric.name} is shorter stretched than at rest. Are the two lengths changed over?",
            fabric.swatch.stretched.typed.text.strip(),
        )
    elif fabric.stretch_across is None:
        yield Finding(
            "stretch-claim",
            Severity.HINT,
            fabric.place,
            f"The swatch of {fabric.name} stretches by {show_ratio(measured.ratio)}. Write it down as"
            f" stretch_across: {right}",
            working=working,
        )
    elif abs(fabric.stretch_across.ratio.value - exact) > STEP / 2:
        said = fabric.stretch_across
        yield Finding(
            "stretch-claim",
            Severity.WRONG,
            said.place,
            f"{fabric.name} is said to stretch by {said.text}, but its swatch stretches by"
            f" {show_ratio(measured.ratio)}, to the nearest 5% {right}.",
            said.text,
            right,
            working,
        )
