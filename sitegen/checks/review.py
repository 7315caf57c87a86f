"""Reads, computes and checks a whole content folder: what every command begins with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from sitegen.checks.glossary import Glossary
from sitegen.checks.run import check_class, check_text, run_checks
from sitegen.classes import ComputedClass
from sitegen.classes.build import class_files, class_in_language, class_of
from sitegen.findings import Collector, Finding, Severity
from sitegen.reading import ContentFolder
from sitegen.tutorial import Accepted, Computed, Site, Tutorial, combinations, compute
from sitegen.tutorial.build import glossary, languages_of_folder, site, tutorial


@dataclass(frozen=True)
class Translation:
    """The site in one of its further languages, with the numbers of its tutorials in every view."""

    site: Site
    tutorials: tuple[Computed, ...]


OF_THE_PLAN = frozenset({"class-minutes", "class-step-long", "class-time"})
"""Checks that speak of the session in which a step is done. What students are handed holds without it."""


@dataclass(frozen=True)
class Review:
    """What was read, every tutorial with its numbers (once for each combination of its views), the classes, and every
    finding."""

    site: Site
    tutorials: tuple[Computed, ...]
    classes: tuple[ComputedClass, ...]
    findings: tuple[Finding, ...]
    any_wrong: bool
    any_unread: bool
    translations: tuple[Translation, ...] = ()


def review(folder: ContentFolder) -> Review:
    """The whole folder, with all findings of reading, computing and checking."""
    collector = Collector()
    found = site(folder, collector)
    words = Glossary(found.glossary)
    language = found.language
    computed = tuple(each for one in found.tutorials for each in _in_every_view(one, words, collector, language))
    classes = _classes(folder, computed, collector)
    others = tuple(_translation(folder, each, collector) for each in found.languages[1:])
    return Review(found, computed, classes, collector.findings, collector.any_wrong, collector.any_unread, others)


def _translation(folder: ContentFolder, language: str, collector: Collector) -> Translation:
    """The folder in a further language. Its numbers are those of the first, so only its texts are checked again."""
    found = site(folder, collector, language)
    return Translation(found, tuple(each for one in found.tutorials for each in _translated(one, language, collector)))


def _translated(one: Tutorial, language: str, collector: Collector) -> Iterator[Computed]:
    """Every view of a tutorial in a further language, its texts checked."""
    own = Collector()
    for each in combinations(one):
        computed = compute(each, own)
        for text in each.prose():
            if not text.language:
                check_text(text, computed, own, language)
        yield computed
    collector.extend(_accepted(one, own.findings, set()))


def review_tutorial(folder: ContentFolder, home: str) -> tuple[tuple[Computed, ...], Collector]:
    """One tutorial of a folder with its numbers in every view (none if it cannot be read), and all findings on it."""
    collector = Collector()
    spoken = languages_of_folder(folder)
    found = tutorial(folder, home, collector, spoken)
    # What is wrong with the glossary itself is said when the whole folder is reviewed.
    words = Glossary(glossary(folder, Collector(), spoken))
    return (() if found is None else _in_every_view(found, words, collector, spoken.current)), collector


def review_class(folder: ContentFolder, relative: str) -> tuple[ComputedClass | None, Collector]:
    """One class of a folder with its tutorial (None if either cannot be read), and all findings on both."""
    collector = Collector()

    def tutorial_of(name: str) -> tuple[Computed, ...]:
        computed, own = review_tutorial(folder, f"tutorials/{name}")
        collector.extend(own.findings)
        return computed

    known = folder.folders("tutorials", Collector())
    found = class_of(folder, relative, known, tutorial_of, collector)
    if found is not None:
        check_class(found, collector)
    return found, collector


def review_class_in(cls: ComputedClass, folder: ContentFolder, language: str) -> tuple[ComputedClass | None, Collector]:
    """A class of a folder in a further language of its site (None if its tutorial cannot be read in it), and all
    findings on the texts of the tutorial in it."""
    collector = Collector()
    spoken = replace(languages_of_folder(folder), current=language)
    found = tutorial(folder, f"tutorials/{cls.plain.tutorial.key}", collector, spoken)
    views = tuple(_translated(found, language, collector)) if found is not None else ()
    plain = next((each for each in views if each.tutorial.chosen == cls.plain.tutorial.chosen), None)
    if plain is None:
        return None, collector
    relative = f"classes/{cls.written.place.file.rpartition('/')[2]}"
    return class_in_language(cls, folder, relative, plain, language), collector


def _classes(folder: ContentFolder, computed: tuple[Computed, ...], collector: Collector) -> tuple[ComputedClass, ...]:
    """Every class of a folder, checked; those that cannot be read are reported and left out."""
    by_name: dict[str, list[Computed]] = {}
    for each in computed:
        by_name.setdefault(each.tutorial.key, []).append(each)
    known = folder.folders("tutorials", Collector())
    found = []
    for relative in class_files(folder, collector):
        one = class_of(folder, relative, known, lambda name: by_name.get(name, ()), collector)
        if one is not None:
            check_class(one, collector)
            found.append(one)
    return tuple(found)


def _in_every_view(tutorial: Tutorial, words: Glossary, collector: Collector, language: str) -> tuple[Computed, ...]:
    """Each combination of views computed and checked by itself, and what the author accepts marked as accepted."""
    own = Collector()
    computed = _all_views(tutorial, words, own, language)
    collector.extend(_accept(tutorial, own.findings))
    return computed


def _all_views(tutorial: Tutorial, words: Glossary, collector: Collector, language: str) -> tuple[Computed, ...]:
    """Each combination computed and checked. What is not found in all names its view."""
    computed: list[Computed] = []
    found: list[tuple[Finding, ...]] = []
    for each in combinations(tutorial):
        own = Collector()
        computed.append(compute(each, own))
        run_checks(computed[-1], words, own, language)
        found.append(own.findings)
    chosen = [frozenset(one.tutorial.chosen) for one in computed]
    for finding in dict.fromkeys(each for findings in found for each in findings):
        where = [choices for choices, findings in zip(chosen, found, strict=True) if finding in findings]
        for view in _in_words(where, chosen):
            collector.add(replace(finding, message=f"{view}{finding.message}"))
    return tuple(computed)


def _accept(tutorial: Tutorial, findings: tuple[Finding, ...]) -> Iterator[Finding]:
    """What ``_accepted`` gives, and whatever was accepted and is found nowhere."""
    used: set[Accepted] = set()
    yield from _accepted(tutorial, findings, used)
    for each in tutorial.accepted:
        if each not in used:
            yield Finding(
                "accepted-nothing",
                Severity.DOUBTFUL,
                each.place,
                f"No finding {each.check} says “{each.said}” in this file, so there is nothing to accept. Take it out.",
            )


def _accepted(tutorial: Tutorial, findings: tuple[Finding, ...], used: set[Accepted]) -> Iterator[Finding]:
    """The findings, those that the author accepted with a reason turned into hints that say so; tells what is used."""
    for finding in findings:
        accepted = next((each for each in tutorial.accepted if _matches(each, finding)), None)
        if accepted is None:
            yield finding
            continue
        used.add(accepted)
        message = f"Accepted ({accepted.reason}): {finding.message}"
        yield replace(finding, severity=Severity.HINT, message=message, should_be="")


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
