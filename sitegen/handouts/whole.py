"""The whole handout of a class."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from sitegen.classes import ComputedClass, plan_of, without_minutes
from sitegen.handouts.cards import cards_of
from sitegen.handouts.cover import cover_of, tables_of
from sitegen.handouts.gauges import gauges_of
from sitegen.handouts.layouts import cloth_by_size, layouts_of
from sitegen.handouts.marking import marking_of
from sitegen.handouts.model import Copy, Handout, Marking, Wanted
from sitegen.handouts.pdf import laid_out
from sitegen.handouts.printed import NUMBERS_FILE, Printed, printed_as_text, printed_with
from sitegen.handouts.slip import Slip, slip_of
from sitegen.handouts.source import Source
from sitegen.handouts.teacher import parts_of
from sitegen.handouts.words import SheetWords
from sitegen.publishing import PaperPage, PrintedNumbers, PublishedPage
from sitegen.reading import ContentFolder

_MARK_LETTERS = 6


@dataclass(frozen=True)
class Made:
    """A handout, what it is made from, and what it carries in itself."""

    handout: Handout
    source: Source
    printed: Printed


def handout_of(cls: ComputedClass, page: PaperPage, folder: ContentFolder, wanted: Wanted, day: date) -> Made:
    """The handout of a class by the page of its tutorial, as it is wanted on a day.

    Raises NoPdf when a package is not installed that it needs, or a photo cannot be shown.
    """
    source = Source(
        cls=cls,
        page=page,
        folder=folder,
        wanted=wanted,
        numbers=PrintedNumbers(cls.computed, wanted.sizes, wanted.units, page.language),
        before=PrintedNumbers(cls.plain, wanted.sizes, wanted.units, page.language),
        words=SheetWords(page.words),
        sessions=_sessions(cls),
    )
    handout = _handout(source, day)
    return Made(handout, source, printed_with(handout, source, day))


def _handout(source: Source, day: date) -> Handout:
    page, wanted = source.page, source.wanted
    return Handout(
        language=page.view.site.language,
        title=page.view.title,
        class_title=page.language.own(source.cls.written.title),
        author=page.view.site.author,
        mark=release_mark(page.published, day),
        sizes=source.size_names if source.size_names[0] else (),
        cover=cover_of(source),
        tables=tables_of(source),
        cloth=cloth_by_size(source),
        layouts=tuple(layouts_of(source)),
        cards=tuple(cards_of(source)),
        marking=_marking(source),
        gauges=gauges_of(source),
        parts=parts_of(source) if wanted.copy is Copy.TEACHER else (),
        words=source.words.all(),
        wanted=wanted,
    )


def handout_pdf(made: Made) -> bytes:
    """A handout as a PDF, which carries what it was printed with. Raises NoPdf when it cannot be laid out."""
    carried = printed_as_text(made.printed, made.source.page.path)
    return laid_out(
        "handout.typ", {"handout": made.handout, "carried": carried, "file": NUMBERS_FILE}, made.printed.day
    )


def slip_for(old: Printed, made: Made) -> Slip:
    """What moved between a print and the handout as it would be printed now."""
    return slip_of(old, made.printed, made.handout, made.source.numbers, made.source.words)


def slip_pdf(slip: Slip, day: date) -> bytes:
    """A slip as a PDF, two on a sheet. Raises NoPdf when it cannot be laid out."""
    return laid_out("slip.typ", {"slip": slip}, day)


def release_mark(page: PublishedPage, day: date) -> str:
    """The mark of a print: its day, and the first letters of the digest of all that the page tells."""
    return f"{day.isoformat()} · {page.mark[:_MARK_LETTERS]}"


def _sessions(cls: ComputedClass) -> Mapping[int, int]:
    """The session of each step; none of a plan that does not fit, since another one takes its place."""
    if without_minutes(cls):
        return {}
    plan = plan_of(cls)
    if not plan.fits:
        return {}
    found = {}
    for planned in plan.sessions:
        for placed in planned.placed:
            for step in (placed.work.step, *placed.meanwhile):
                found[step.number] = planned.session.number
    return found


def _marking(source: Source) -> tuple[Marking, ...]:
    views = {card.number: card for card in source.page.view.cards}
    each = (
        marking_of(step, views[step.number], source)
        for step in source.steps
        if step.number not in source.cls.before_class
    )
    return tuple(found for found in each if found is not None)
