"""Shows every part of a computed tutorial to the checks that look at such parts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from sitegen.checks.catalogue import all_checks
from sitegen.checks.registry import Check
from sitegen.findings import Collector
from sitegen.tutorial import Computed, Tutorial


def run_checks(computed: Computed, collector: Collector) -> None:
    """All findings of all checks on one tutorial."""
    by_type: dict[type, list[Check]] = defaultdict(list)
    for each in all_checks():
        for kind in each.looks_at:
            by_type[kind].append(each)
    for part in parts_of(computed.tutorial):
        for each in by_type[type(part)]:
            if each.find is not None:
                collector.extend(each.find(part, computed))


def parts_of(tutorial: Tutorial) -> Iterator[object]:
    """Every part of a tutorial that a check may look at, from the whole to the smallest."""
    yield tutorial
    yield from tutorial.fabrics.values()
    for piece in tutorial.pieces.values():
        yield piece
        yield from piece.edges.values()
    yield from tutorial.bands.values()
    yield from tutorial.hems.values()
    yield from tutorial.elastics.values()
    yield from tutorial.joined.values()
    yield from tutorial.girths.values()
    yield from tutorial.changes.values()
    yield from tutorial.typed
    yield from tutorial.claims
    yield from tutorial.supplies
    if tutorial.photo is not None:
        yield tutorial.photo
    for step in tutorial.steps:
        yield step
        yield from step.joins
        yield from step.photos
    yield from tutorial.prose()
