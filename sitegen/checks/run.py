"""Shows every part of a computed tutorial to the checks that look at such parts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from sitegen.checks.catalogue import all_checks
from sitegen.checks.glossary import Glossary
from sitegen.checks.other_languages import as_written, can_read, is_english, readable
from sitegen.checks.registry import Check
from sitegen.checks.withheld import can_tell
from sitegen.classes import ComputedClass
from sitegen.findings import Collector
from sitegen.tutorial import Band, Computed, Join, Prose, Tutorial


def run_checks(computed: Computed, glossary: Glossary, collector: Collector, language: str = "en") -> None:
    """All findings of all checks on one tutorial of a site with this glossary, written in this language."""
    by_type = _by_type(language)
    for part in (*parts_of(computed.tutorial), glossary):
        if isinstance(part, Prose):
            check_text(part, computed, collector, language)
            continue
        for each in by_type[type(part)]:
            if each.find is not None and can_tell(each, computed.tutorial):
                collector.extend(each.find(part, computed))
    _after_changes(computed, by_type, collector)


def check_text(part: Prose, computed: Computed, collector: Collector, language: str = "en") -> None:
    """All findings on one text, by the checks that can read its language."""
    own = part.language or language
    for each in _by_type(own)[Prose]:
        if each.find is None:
            continue
        if is_english(own):
            collector.extend(each.find(part, computed))
        else:
            collector.extend(as_written(each.find(readable(part), computed), part))


def check_class(cls: ComputedClass, collector: Collector) -> None:
    """All findings of all checks on one class."""
    for each in _by_type("en")[ComputedClass]:
        if each.find is not None:
            collector.extend(each.find(cls, cls.computed))


@lru_cache(maxsize=16)
def _by_type(language: str) -> dict[type, list[Check]]:
    """The checks that can read a language, by the kinds of part that they look at."""
    found: dict[type, list[Check]] = defaultdict(list)
    for each in all_checks():
        for kind in each.looks_at if can_read(each, language) else ():
            found[kind].append(each)
    return found


def _after_changes(computed: Computed, by_type: dict[type, list[Check]], collector: Collector) -> None:
    """Seams and bands once more as they are after each change: what it breaks, and was not broken before."""
    before = {(each.check, each.place) for each in collector.findings}
    for key, changed in computed.changed.items():
        for part in parts_of(changed.tutorial):
            if not isinstance(part, Join | Band):
                continue
            for check in by_type[type(part)]:
                for finding in check.find(part, changed) if check.find is not None else ():
                    if (finding.check, finding.place) not in before:
                        words = key.replace("_", " ")
                        collector.add(replace(finding, message=f"With {words}: {finding.message}"))


def parts_of(tutorial: Tutorial) -> Iterator[object]:
    """Every part of a tutorial that a check may look at, from the whole to the smallest."""
    yield tutorial
    yield from tutorial.fabrics.values()
    for piece in tutorial.pieces.values():
        yield piece
        yield from piece.edges.values()
        yield from piece.darts.values()
    yield from tutorial.bands.values()
    yield from tutorial.hems.values()
    yield from tutorial.elastics.values()
    yield from tutorial.joined.values()
    yield from tutorial.girths.values()
    yield from tutorial.changes.values()
    yield from tutorial.swaps.values()
    yield from tutorial.spacings.values()
    yield from tutorial.gathers.values()
    yield from tutorial.pleats.values()
    yield from tutorial.bindings.values()
    yield from tutorial.circles.values()
    yield from tutorial.boxed.values()
    yield from tutorial.drops.values()
    yield from tutorial.trims.values()
    yield from tutorial.typed
    yield from tutorial.claims
    yield from tutorial.supplies
    if tutorial.photo is not None:
        yield tutorial.photo
    for step in tutorial.steps:
        yield step
        yield from step.every_join()
        yield from step.photos
    yield from tutorial.prose()
