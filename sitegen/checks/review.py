"""Reads, computes and checks a whole content folder: what every command begins with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sitegen.checks.glossary import Glossary
from sitegen.checks.run import run_checks
from sitegen.findings import Collector, Finding, Severity
from sitegen.reading import ContentFolder
from sitegen.tutorial import Accepted, Computed, Site, Tutorial, combinations, compute
from sitegen.tutorial.build import glossary, site, tutorial


@dataclass(frozen=True)
class Review:
    """What was read, every tutorial with its numbers (once for each combination of its views), and every finding."""

    site: Site
    tutorials: tuple[Computed, ...]
    findings: tuple[Finding, ...]
    any_wrong: bool
    any_unread: bool


def review(folder: ContentFolder) -> Review:
    """The whole folder, with all findings of reading, computing and checking."""
    collector = Collector()
    found = site(folder, collector)
    words = Glossary(found.glossary)
    computed = tuple(each for tutorial in found.tutorials for each in _in_every_view(tutorial, words, collector))
    return Review(found, computed, collector.findings, collector.any_wrong, collector.any_unread)


def review_tutorial(folder: ContentFolder, home: str) -> tuple[tuple[Computed, ...], Collector]:
    """One tutorial of a folder with its numbers in every view (none if it cannot be read), and all findings on it."""
    collector = Collector()
    found = tutorial(folder, home, collector)
    # What is wrong with the glossary itself is said when the whole folder is reviewed.
    words = Glossary(glossary(folder, Collector()))
    return (() if found is None else _in_every_view(found, words, collector)), collector


def _in_every_view(tutorial: Tutorial, words: Glossary, collector: Collector) -> tuple[Computed, ...]:
    """Each combination of views computed and checked by itself, and what the author accepts marked as accepted."""
    own = Collector()
    computed = _all_views(tutorial, words, own)
    collector.extend(_accept(tutorial, own.findings))
    return computed


def _all_views(tutorial: Tutorial, words: Glossary, collector: Collector) -> tuple[Computed, ...]:
    """Each combination computed and checked. What is not found in all names its view."""
    computed: list[Computed] = []
    found: list[tuple[Finding, ...]] = []
    for each in combinations(tutorial):
        own = Collector()
        computed.append(compute(each, own))
        run_checks(computed[-1], words, own)
        found.append(own.findings)
    chosen = [frozenset(one.tutorial.chosen) for one in computed]
    for finding in dict.fromkeys(each for findings in found for each in findings):
        where = [choices for choices, findings in zip(chosen, found, strict=True) if finding in findings]
        for view in _in_words(where, chosen):
            collector.add(replace(finding, message=f"{view}{finding.message}"))
    return tuple(computed)


def _accept(tutorial: Tutorial, findings: tuple[Finding, ...]) -> Iterator[Finding]:
    """The findings, those that the author accepted with a reason turned into hints that say so."""
    used: set[Accepted] = set()
    for finding in findings:
        accepted = next((each for each in tutorial.accepted if _matches(each, finding)), None)
        if accepted is None:
            yield finding
            continue
        used.add(accepted)
        message = f"Accepted ({accepted.reason}): {finding.message}"
        yield replace(finding, severity=Severity.HINT, message=message, should_be="")
    for each in tutorial.accepted:
        if each not in used:
            yield Finding(
                "accepted-nothing",
                Severity.DOUBTFUL,
                each.place,
                f"No finding {each.check} says “{each.said}” in this file, so there is nothing to accept. Take it out.",
            )


def _matches(accepted: Accepted, finding: Finding) -> bool:
    same = finding.check == accepted.check and finding.place.file == accepted.place.file
    return same and not finding.unread and accepted.said in (finding.said or finding.message)


Choices = frozenset[tuple[str, str]]


def _in_words(where: list[Choices], everywhere: list[Choices]) -> list[str]:
    """In which views something was found: nothing if in all, one choice if it is that alone, else each combination."""
    if where == everywhere:
        return [""]
    for choice in sorted(frozenset[tuple[str, str]]().union(*where)):
        if where == [choices for choices in everywhere if choice in choices]:
            return [f"With {' '.join(choice)}: "]
    return [f"With {', '.join(' '.join(choice) for choice in sorted(choices))}: " for choices in where]
