"""Pleats and tucks: what they take up, and whether they have room."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, ZERO, Worked, show_working
from sitegen.tutorial import Claim, Computed, Pleats


@check(
    id="pleat-sum",
    area="pleats",
    severity=Severity.WRONG,
    looks_at=(Claim, Pleats),
    title="Pleats that take up another width than is said",
    why="A panel that is cut too narrow for its pleats cannot be joined to the waistband.",
    source="A fold hides two layers of its depth, a box pleat has two folds: geometry of folds",
    trips="pleats: {front_pleats: {kind: knife, count: 6, depth: 1 in, finished: 12 in, cut_width: 18 in}}",
    passes="pleats: {front_pleats: {kind: knife, count: 6, depth: 1 in, finished: 12 in, cut_width: 24 in,"
    " taken: 12 in}}",
)
def pleat_sum(part: Claim | Pleats, computed: Computed) -> Iterator[Finding]:
    """What pleats take up, and the widths before and after, must be as computed; some cloth must be left, and some must
    be there to fold."""
    if isinstance(part, Claim):
        if part.part == "pleats":
            yield from disagreements("pleat-sum", part, computed)
        return
    for size in range(computed.tutorial.size_count):
        size_name = computed.size_name(size)
        for field, trouble in (
            ("finished_width", "take up the whole width, so that nothing is left"),
            ("depth", "need more cloth than there is: the width before is no wider than the finished one"),
        ):
            number = computed.number(f"{part.key}.{field}", size)
            if number is not None and number.length <= ZERO:
                yield _of_pleats("pleat-sum", Severity.WRONG, part.place, part, trouble, number, size_name, computed)
                return


@check(
    id="pleat-overlap",
    area="pleats",
    severity=Severity.HINT,
    looks_at=Pleats,
    title="Pleats so deep that they lie over each other",
    why="Where folds lie over their neighbours the seam has five layers or more, which is hard to sew for a beginner.",
    source="Fold against fold a pleat is as deep as what is seen of it: geometry of folds",
    trips="pleats: {front_pleats: {kind: knife, count: 6, depth: 3 in, finished: 12 in}}",
    passes="pleats: {front_pleats: {kind: knife, count: 6, depth: 2 in, finished: 12 in}}",
)
def pleat_overlap(pleats: Pleats, computed: Computed) -> Iterator[Finding]:
    """Pleats that are deeper than the finished width leaves room for, in any size."""
    for size in range(computed.tutorial.size_count):
        depth, full = (computed.number(f"{pleats.key}.{field}", size) for field in ("depth", "full_depth"))
        if depth is not None and full is not None and ZERO < full.length < depth.length:
            room = RULER.show(full.length, computed.tutorial.first_system)
            trouble = f"lie over each other: a depth of up to {room} fits fold against fold"
            place = pleats.depth.place if pleats.depth else pleats.place
            name = computed.size_name(size)
            yield _of_pleats("pleat-overlap", Severity.HINT, place, pleats, trouble, full, name, computed)
            return


def _of_pleats(
    check_id: str,
    severity: Severity,
    place: Place,
    pleats: Pleats,
    trouble: str,
    number: Worked,
    size_name: str,
    computed: Computed,
) -> Finding:
    return Finding(
        check_id,
        severity,
        place,
        f"Pleats {pleats.key} {trouble}{in_size(size_name)}.",
        "",
        "",
        show_working(number, computed.tutorial.first_system),
        size_name,
    )
