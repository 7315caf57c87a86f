"""In which steps of a tutorial a technique is used, and with which settings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from sitegen.publishing.amounts import number
from sitegen.publishing.number_book import NumberBook
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.techniques.known import (
    DART_SETTINGS,
    DARTS,
    FINISHING,
    SECTIONS,
    STABILISING,
    Named,
    Section,
    stitch,
)
from sitegen.publishing.views import StepCard, Stitching, TutorialView
from sitegen.quantities import English, System
from sitegen.tutorial import Computed, Step, Tutorial, words_of


@dataclass(frozen=True, slots=True)
class Use:
    """A technique in one step."""

    named: Named
    step: int
    """The number of its card."""
    what: str
    """What is made by it: ``front hem``."""
    settings: tuple[tuple[str, Markup], ...]
    """What each is called, and its value as it is read."""


def uses_of(computed: Computed, page: TutorialView) -> Iterator[Use]:
    """Every technique of every step, step by step within a technique."""
    tutorial = computed.tutorial
    language = speech_of(page.site, computed)
    settings = _Settings(computed, page.site.units_first, language)
    for card in page.cards:
        yield from _stitches(card, page.site.units_first, language)
    for section in SECTIONS:
        for key, part in section.parts(tutorial).items():
            named = section.named(part)
            told = settings.of(key, section.settings)
            for step in _steps_with(section, key, part, tutorial):
                yield Use(named, step.number, language.own(words_of(key)), told)
    for step in tutorial.steps:
        for dart in step.darts:
            yield Use(DARTS, step.number, language.own(words_of(dart.name)), settings.of(dart.name, DART_SETTINGS))
        for named, names in (
            (FINISHING, [name.name for chain in step.finishes for name in chain]),
            (STABILISING, [name.name for name in step.stabilises]),
        ):
            if names:
                edges = ", ".join(language.own(words_of(name)) for name in dict.fromkeys(names))
                yield Use(named, step.number, edges, ())


def _stitches(card: StepCard, first: System, language: English) -> Iterator[Use]:
    other = card.other_way.stitching if card.other_way is not None else ()
    for seam in (*card.stitching, *other):
        named = stitch(seam.named or seam.stitch)
        if named is not None:
            yield Use(named, card.number, seam.what, tuple(_of_seam(seam, first, language)))


def _of_seam(seam: Stitching, first: System, language: English) -> Iterator[tuple[str, Markup]]:
    if seam.allowance is not None:
        yield language.say("allowance"), number(seam.allowance, first, language).plain
    if seam.from_fold is not None:
        yield language.say("from the fold"), number(seam.from_fold, first, language).plain
    for called, value in (
        ("width", seam.stitch_width),
        ("length", seam.stitch_length),
        ("press", seam.press),
        ("how", "; ".join(seam.notes)),
    ):
        if value:
            yield language.say(called), Markup.escape(value)


def _steps_with(section: Section, key: str, part: object, tutorial: Tutorial) -> list[Step]:
    """The steps that make a part or draw it; those whose text takes its numbers where no step says that it does."""
    edges = {key, *section.edges(part)}
    making = [
        step
        for step in tutorial.steps
        if any(name in edges or name.startswith(f"{key}.") for name in section.made(step))
        or any(asked.name == key for asked in step.diagrams)
    ]
    return making or [
        step
        for step in tutorial.steps
        if any(said.name.startswith(f"{key}.") for prose in step.prose() for said in prose.references)
    ]


class _Settings:
    """The numbers of parts as they are read on a page that has no choice of size."""

    def __init__(self, computed: Computed, first: System, language: English) -> None:
        self._language = language
        self._book = NumberBook(computed, first, language)
        self._first = first

    def of(self, key: str, fields: tuple[str, ...]) -> tuple[tuple[str, Markup], ...]:
        """The numbers of a part that can be worked out."""
        found = []
        for field in fields:
            view, _ = self._book.take(f"{key}.{field}", "")
            if view is not None:
                found.append((self._language.say(words_of(field)), number(view, self._first, self._language).plain))
        return tuple(found)
