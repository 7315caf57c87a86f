"""The step cards of a handout."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from html import unescape

from sitegen.diagrams import diagram_of
from sitegen.handouts.model import Care, Copy, SecondWay, Sewn, SheetCard, SheetPicture, Table
from sitegen.handouts.pictures import IDS, drawing, photo
from sitegen.handouts.source import Source
from sitegen.handouts.words import SheetWords
from sitegen.publishing import (
    Block,
    NumberView,
    PrintedNumbers,
    Span,
    StepCard,
    Stitching,
    duration,
    photo_path,
    printed_line,
    printed_text,
)
from sitegen.tutorial import Prose, Step

_DRAWN_NUMBER = re.compile(r' data-name="([^"]*)"')


def cards_of(source: Source) -> Iterator[SheetCard]:
    """Every card that students follow, in the tutorial's order."""
    views = {card.number: card for card in source.page.view.cards}
    for step in source.steps:
        yield _card(step, views[step.number], source)


class _Texts:
    """The texts of one card, and the numbers in them."""

    def __init__(self, source: Source) -> None:
        self._source = source
        self._asked: dict[str, NumberView] = {}

    def blocks(self, text: Prose | None) -> tuple[Block, ...]:
        """A text as blocks, its numbers noted."""
        return printed_text(text.text, self._noting(self._source.numbers_in(text.text))) if text is not None else ()

    def number(self, name: str) -> str | None:
        """A number that stands in no text, noted."""
        return self._noting(self._source.numbers)(name)

    def _noting(self, numbers: PrintedNumbers) -> Callable[[str], str | None]:
        def noted(name: str) -> str | None:
            view = numbers.view(name)
            if view is not None:
                self._asked.setdefault(name, view)
            return numbers(name)

        return noted

    def line(self, text: Prose) -> tuple[Span, ...]:
        """A text in one line, its numbers noted."""
        return printed_line(text.text, self._noting(self._source.numbers_in(text.text)))

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the noted numbers."""
        return tuple(self._asked)

    def by_size(self) -> Table | None:
        """The noted numbers that the sizes of the sheet do not share, a column for each; None when they share all."""
        rows = tuple((view.words, *self._source.numbers.each(view)) for view in self._asked.values() if view.by_size)
        return Table(("", *self._source.size_names), rows, by_size=True) if rows else None


def _card(step: Step, card: StepCard, source: Source) -> SheetCard:
    texts = _Texts(source)
    told = {
        "text": texts.blocks(step.text),
        "look_for": texts.blocks(step.look_for),
        "if_wrong": texts.blocks(step.if_wrong),
        "teacher": texts.blocks(step.teacher) if source.wanted.copy is Copy.TEACHER else (),
    }
    sewn = tuple(_sewn(seam, texts, source.words) for seam in card.stitching)
    second_way = _second_way(step, card, texts, source.words)
    pictures = (*_drawings(step, source), *_photos(step, source, texts))
    return SheetCard(
        number=card.number,
        title=card.title,
        minutes=str(duration(card.minutes)) if card.minutes is not None else "",
        when=source.when(step),
        needs=card.needs,
        tools=card.tools,
        sewn=sewn,
        numbers=texts.by_size(),
        pictures=pictures,
        care=tuple(Care(each.name, each.text) for each in card.cautions),
        second_way=second_way,
        uses=tuple(dict.fromkeys((*texts.names, *_drawn(pictures, source)))),
        **told,
    )


def _sewn(seam: Stitching, texts: _Texts, words: SheetWords) -> Sewn:
    """A seam with its settings. Its allowance is told in the sizes of the sheet."""
    settings = [seam.stitch]
    if seam.stitch_width:
        settings.append(words("stitch_width", width=seam.stitch_width))
    if seam.stitch_length:
        settings.append(words("stitch_length", length=seam.stitch_length))
    allowance = texts.number(seam.allowance.name) if seam.allowance is not None else None
    if allowance is not None:
        told = words("hem_allowance", length=allowance) if seam.is_hem else words("allowance", length=allowance)
        settings.append(told)
    from_fold = texts.number(seam.from_fold.name) if seam.from_fold is not None else None
    if from_fold is not None:
        settings.append(words("from_fold", length=from_fold))
    if seam.press:
        settings.append(words("press", way=seam.press))
    return Sewn(seam.what, tuple(each for each in (*settings, *seam.notes) if each))


def _second_way(step: Step, card: StepCard, texts: _Texts, words: SheetWords) -> SecondWay | None:
    if step.other_way is None or card.other_way is None:
        return None
    return SecondWay(
        when=texts.blocks(step.other_way.when),
        text=texts.blocks(step.other_way.text),
        sewn=tuple(_sewn(seam, texts, words) for seam in card.other_way.stitching),
    )


def _drawings(step: Step, source: Source) -> Iterator[SheetPicture]:
    for name in (each.name for each in step.diagrams):
        computed = source.cls.plain if source.is_made(name) else source.cls.computed
        first, language = source.numbers.units[0], source.page.language
        found = diagram_of(name, computed, source.drawn_size, IDS, first, language)
        if found is not None:
            yield drawing(found.svg)


def _photos(step: Step, source: Source, texts: _Texts) -> Iterator[SheetPicture]:
    for each in step.photos:
        path = photo_path(each, source.cls.computed, source.folder)
        if path is not None:
            yield photo(each, path, source.page.language.own(each.shows), texts.line)


def _drawn(pictures: tuple[SheetPicture, ...], source: Source) -> Iterator[str]:
    """The names of the numbers that are drawn to scale."""
    for name in (unescape(name) for each in pictures for name in _DRAWN_NUMBER.findall(each.svg)):
        if source.numbers.view(name) is not None:
            yield name
