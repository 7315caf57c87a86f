"""Marks at even distances: buttons, buttonholes, loops."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, Worked, decimal, show_working
from sitegen.sewing import spacing as spacing_sums
from sitegen.tutorial import Claim, Computed, Spacing, words_of

_PLACKET = (
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {front: {cut: 2, fabric: main, edges: {placket: 20 in}}}\n"
)
_BUTTONS = "along: front.placket, marks: 5, first_margin: 1 in, last_margin: 1 in"


@check(
    id="mark-spacing",
    area="marks",
    severity=Severity.WRONG,
    looks_at=(Claim, Spacing),
    title="Marks that are not evenly spread",
    why="Buttons and holes that are marked at different distances pull the front askew.",
    source="Length ÷ gaps, every mark from the whole length: " + COMMON_PRACTICE,
    trips=_PLACKET + f"spacings: {{buttons: {{{_BUTTONS}, gap: 4 in}}}}",
    passes=_PLACKET + f"spacings: {{buttons: {{{_BUTTONS}, gap: 4 1/2 in, position_3: 10 in}}}}",
)
def mark_spacing(part: Claim | Spacing, computed: Computed) -> Iterator[Finding]:
    """Written gaps, positions and buttonholes must be the computed ones, and a stated number of marks must leave no gap
    above the greatest that is stated."""
    if isinstance(part, Spacing):
        yield from _gap_too_great(part, computed)
    elif part.part == "spacing":
        yield from _no_such_mark(part, computed)
        yield from disagreements("mark-spacing", part, computed)


def _no_such_mark(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A written position behind the last mark."""
    key = claim.lengths.name.partition(".")[0]
    marks = computed.number(f"{key}.marks", 0)
    if claim.field.startswith("position_") and claim.lengths.name not in computed.numbers and marks is not None:
        number = claim.field.removeprefix("position_")
        yield Finding(
            "mark-spacing",
            Severity.WRONG,
            claim.lengths.place,
            f"There is no mark {number}: {words_of(key)} has {decimal(marks.number)} marks.",
        )


def _gap_too_great(spacing: Spacing, computed: Computed) -> Iterator[Finding]:
    """The size in which the stated marks leave the widest gap, if it is above the greatest that is stated."""
    if spacing.marks is None or spacing.greatest_gap is None:
        return
    whole = "span" if spacing.spread is spacing_sums.Spread.BOTH_ENDS else "length"
    needed: list[tuple[int, Worked]] = []
    for size in range(computed.tutorial.size_count):
        length, gap, greatest = (
            computed.number(f"{spacing.key}.{field}", size) for field in (whole, "gap", "greatest_gap")
        )
        if length is None or gap is None or greatest is None:
            continue
        if gap.length > greatest.length > ZERO:
            needed.append((size, spacing_sums.marks_needed("marks needed", length, greatest, spacing.spread)))
    if not needed:
        return
    size, most = max(needed, key=lambda each: each[1].number)
    gap = computed.numbers.at(f"{spacing.key}.gap", size)
    size_name = computed.size_name(size)
    system = computed.tutorial.first_system
    yield Finding(
        "mark-spacing",
        Severity.WRONG,
        spacing.marks_place,
        f"With {spacing.marks} marks the gap of {words_of(spacing.key)} is {RULER.show(gap.length, system)}"
        f"{in_size(size_name)}, more than the greatest gap. It takes {decimal(most.number)} marks.",
        str(spacing.marks),
        decimal(most.number),
        (*show_working(gap, system), *show_working(most, system)),
        size_name,
    )
