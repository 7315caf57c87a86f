"""Runs of sizes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from sitegen.checks.held import instead
from sitegen.checks.registry import check
from sitegen.checks.size_steps import turned_bodies
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, System
from sitegen.sewing import breaks
from sitegen.tutorial import Amount, Computed, Lengths, Reference, words_of


@check(
    id="size-run",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Lengths,
    title="A size that breaks the run",
    why="One value off in an otherwise even run is most often a typing slip, and one size of students cuts wrong.",
    source="Grades may be uneven but run one way (ASTM D5585-11e1, bust row); that a lone odd value is a slip is"
    " common practice, no source",
    trips="sizes: [S, M, L, XL, XXL]\nbody: {bust: '33, 35, 36 1/2, 39, 41 in'}",
    passes="sizes: [S, M, L, XL, XXL]\nbody: {bust: '33, 35, 37, 39, 41 in'}",
)
def size_run(part: Lengths, computed: Computed) -> Iterator[Finding]:
    """In a run of four sizes or more, a value that turns back, or that alone keeps the steps from being even. Where
    a tutorial has several runs, such as children's and adult sizes, each is looked at by itself. Where the whole body
    turns back, the sizes themselves are out of order, which is another check's."""
    source = part.source
    if isinstance(source, Reference) or len(source.values) < 4:
        return
    if any(claim.lengths is part for claim in computed.tutorial.claims):
        return
    starts = (0, *computed.tutorial.runs, len(source.values))
    for start, end in pairwise(starts):
        yield from _run(part, source.values[start:end], start, computed)


def _run(part: Lengths, amounts: tuple[Amount, ...], start: int, computed: Computed) -> Iterator[Finding]:
    if len(amounts) < 4:
        return
    values = [amount.typed.value for amount in amounts]
    found = breaks(values)
    turned = set(turned_bodies(computed)) if found else set()
    for each in found:
        if {start + each.index, start + each.index + 1} & turned:
            continue
        amount = amounts[each.index]
        size = computed.size_name(start + each.index)
        system: System = amount.typed.unit.system
        right = instead(amount.typed, each.expected) if each.expected is not None else ""
        hint = f" An even run would have {right} here." if right else ""
        yield Finding(
            "size-run",
            Severity.DOUBTFUL,
            amount.place,
            f"The {words_of(part.name)} of size {size}, {amount.typed.text.strip()}, breaks the run.{hint}",
            amount.typed.text.strip(),
            right,
            ("steps: " + ", ".join(RULER.show(b - a, system) for a, b in pairwise(values)),),
            size,
        )
