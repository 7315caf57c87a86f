"""Elastic in the supplies, against the elastics of the garment."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import instead
from sitegen.checks.registry import check
from sitegen.checks.supplied_lengths import too_little
from sitegen.findings import Finding, Severity
from sitegen.quantities import Rounding, Typed, Worked, plus, work
from sitegen.tutorial import (
    Computed,
    Elastic,
    Supply,
    Tutorial,
    elastic_supplies,
    elastics_from,
    same_width,
    stated_width,
)

_WAIST = (
    "body: {waist: 28 in}\n"
    "elastics: {waistband: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}}\n"
)


@check(
    id="elastic-width",
    area="supplies",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Elastic in the supplies of another width than its casing is made for",
    why="Wider elastic does not go into the casing, narrower elastic turns over in it.",
    source="Follows from the elastic's own width: the casing is that width and its room",
    trips=_WAIST + "supplies: [{item: soft elastic, size: 1 in wide, amount: 1 yd}]",
    passes=_WAIST + "supplies: [{item: soft elastic, size: 3/4 in wide, amount: 1 yd}]",
)
def elastic_width(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The width of elastic in the supplies, in its size or else in its name, must be that of an elastic of the garment.
    Clear elastic, elastic thread and elastic cord do not count."""
    pairs = [(supply, width) for supply in elastic_supplies(tutorial) if (width := stated_width(supply)) is not None]
    without = [
        elastic for elastic in tutorial.elastics.values() if not any(same_width(width, elastic) for _, width in pairs)
    ]
    stray = [
        (supply, width)
        for supply, width in pairs
        if not any(same_width(width, elastic) for elastic in tutorial.elastics.values())
    ]
    needed = _width(without[0]) if len(without) == 1 else None
    if len(stray) != 1 or needed is None:
        return
    (supply, width), elastic = stray[0], without[0]
    told = supply.size or supply.item
    yield Finding(
        "elastic-width",
        Severity.WRONG,
        told.place,
        f"The supplies have elastic {width.text.strip()} wide, but {_words(elastic.key)} is planned for elastic"
        f" {needed.text.strip()} wide.",
        told.text,
        told.text.replace(width.text.strip(), instead(width, needed.value)),
    )


@check(
    id="elastic-short",
    area="supplies",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Less elastic in the supplies than is cut",
    why="The student stands before the open casing with elastic that does not reach.",
    source="Arithmetic: the longest cut length of all sizes",
    trips=_WAIST + "supplies: [{item: soft elastic, size: 3/4 in wide, amount: 25 in}]",
    passes=_WAIST + "supplies: [{item: soft elastic, size: 3/4 in wide, amount: 27 in}]",
)
def elastic_short(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The amount of elastic in the supplies must be enough for all elastics of its width, in every size."""
    for supply in elastic_supplies(tutorial):
        cut = _cut_from(supply, tutorial, computed)
        yield from too_little("elastic-short", supply.amount, "elastic", cut, computed)


def _width(elastic: Elastic) -> Typed | None:
    amount = elastic.width.amount_at(0)
    return amount.typed if amount is not None else None


def _cut_from(supply: Supply, tutorial: Tutorial, computed: Computed) -> list[tuple[int, Worked]]:
    """What is cut from a supply in each size. Nothing where it is not certain which elastics are cut from it."""
    elastics = elastics_from(supply, tutorial)
    found = []
    for size in range(tutorial.size_count):
        lengths = [computed.number(f"{each.key}.cut_length", size) for each in elastics]
        known = [each for each in lengths if each is not None]
        if not known or len(known) != len(lengths):
            return []
        first, *more = known
        whole = work("elastic to cut", first, *(plus(each) for each in more)) if more else first
        found.append((size, whole.rounded(Rounding.ENOUGH)))
    return found


def _words(key: str) -> str:
    return key.replace("_", " ")
