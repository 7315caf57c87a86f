"""Edges that are sewn as one, and the seams that must be there before."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import by_title, listed
from sitegen.findings import Finding, Severity
from sitegen.tutorial import (
    Computed,
    Join,
    Joining,
    Reference,
    Seam,
    Step,
    Tutorial,
    neighbours,
    seam_of,
    seams_of,
    unjoined,
)

_TOP = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {shoulder: 5 in, neckline: 12 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {shoulder: 5 in, neckline: 8 in}}\n"
    "bands: {neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: main}}\n"
)
_SHOULDERS = "title: Sew the shoulders\ntext: Sew.\njoin: [{edges: [front.shoulder, back.shoulder], stitch: zigzag}]\n"
_NECKBAND = (
    "title: Sew on the neckband\ntext: Sew.\n"
    "join: [{edges: [neckband, front.neckline + back.neckline], stitch: zigzag}]\n"
)


@check(
    id="chain-unjoined",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Edges sewn as one before their pieces are joined",
    why="The edge does not exist yet: a neckline of front and back is there once a shoulder is sewn.",
    source="Follows from the steps; " + COMMON_PRACTICE,
    trips=f"{_TOP}--- steps/01.yaml\n{_NECKBAND}--- steps/02.yaml\n{_SHOULDERS}",
    passes=f"{_TOP}--- steps/01.yaml\n{_SHOULDERS}--- steps/02.yaml\n{_NECKBAND}",
)
def chain_unjoined(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A chain such as front.neckline + back.neckline needs a seam between its pieces, in an earlier step or earlier in
    the same one. It is doubtful where no step has that seam, and for a hem, which may also be turned before."""
    seams = seams_of(tutorial)
    for step in tutorial.steps:
        yield from _seams_not_yet_one(step, step.joins, seams, tutorial)
        if step.other_way:
            yield from _seams_not_yet_one(step, step.other_way.joins, seams, tutorial)
        yield from _hems_not_yet_one(step, seams, tutorial)


def _seams_not_yet_one(
    step: Step, joins: tuple[Join, ...], seams: tuple[Seam, ...], tutorial: Tutorial
) -> Iterator[Finding]:
    done = tuple(seam for seam in seams if seam.step < step.number)
    for join in joins:
        others = tuple(seam for seam in seams if seam.join is not join)
        for gap in (unjoined(chain, done, tutorial) for chain in join.chains):
            if gap is not None:
                yield _not_yet_one(gap, others, step, tutorial)
        done = (*done, seam_of(step, join, tutorial))


def _not_yet_one(gap: tuple[Reference, Reference], seams: tuple[Seam, ...], step: Step, tutorial: Tutorial) -> Finding:
    one, other = gap
    later = _joining(gap, seams, tutorial)
    parts = listed(name.name.partition(".")[0] for name in gap)
    sewn = f"{one.name} and {other.name} are sewn here as one edge, but"
    if later is None:
        severity, message = Severity.DOUBTFUL, f"{sewn} no step joins {parts}. Add the join to the step that sews it."
    elif later is step:
        severity, message = Severity.WRONG, f"{sewn} {parts} are joined only after that. Put that join first."
    else:
        severity = Severity.WRONG
        message = f"{sewn} {parts} are joined only in {by_title(later)}. That step must come before this one."
    return Finding("chain-unjoined", severity, other.place, message, other.name)


def _joining(gap: tuple[Reference, Reference], seams: tuple[Seam, ...], tutorial: Tutorial) -> Step | None:
    """The step whose seam brings both parts together, when all seams are sewn in order."""
    way = next((Joining(seams).way(part, beyond) for _, _, part, beyond in neighbours(gap, tutorial)), None)
    last = max((seam.step for seam in way), default=0) if way is not None else 0
    return next((step for step in tutorial.steps if step.number == last), None)


def _hems_not_yet_one(step: Step, seams: tuple[Seam, ...], tutorial: Tutorial) -> Iterator[Finding]:
    done = tuple(seam for seam in seams if seam.step <= step.number)
    for name in step.hems:
        hem = tutorial.hems.get(name.name)
        gap = unjoined(hem.edges, done, tutorial) if hem is not None else None
        later = _joining(gap, seams, tutorial) if gap is not None else None
        if gap is not None and later is not None:
            edges = listed(each.name for each in gap)
            yield Finding(
                "chain-unjoined",
                Severity.DOUBTFUL,
                name.place,
                f"This hem runs over {edges}, which are joined only in {by_title(later)}. Turn it after that step, or"
                " give each piece a hem of its own.",
                name.name,
            )
