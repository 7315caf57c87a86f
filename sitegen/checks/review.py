"""Reads, computes and checks a whole content folder: what every command begins with."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.checks.run import run_checks
from sitegen.findings import Collector, Finding
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Site, compute
from sitegen.tutorial.build import site, tutorial


@dataclass(frozen=True)
class Review:
    """What was read, every tutorial with its numbers, and every finding."""

    site: Site
    tutorials: tuple[Computed, ...]
    findings: tuple[Finding, ...]
    any_wrong: bool
    any_unread: bool


def review(folder: ContentFolder) -> Review:
    """The whole folder, with all findings of reading, computing and checking."""
    collector = Collector()
    found = site(folder, collector)
    computed = tuple(_checked(compute(each, collector), collector) for each in found.tutorials)
    return Review(found, computed, collector.findings, collector.any_wrong, collector.any_unread)


def review_tutorial(folder: ContentFolder, home: str) -> tuple[Computed | None, Collector]:
    """One tutorial of a folder with its numbers, and all findings on it."""
    collector = Collector()
    found = tutorial(folder, home, collector)
    return (None if found is None else _checked(compute(found, collector), collector)), collector


def _checked(computed: Computed, collector: Collector) -> Computed:
    run_checks(computed, collector)
    return computed
