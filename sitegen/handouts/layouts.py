"""The cutting layouts of a student who cuts, and how much cloth each size takes."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.diagrams import layout_of
from sitegen.handouts.model import SheetPicture, Table
from sitegen.handouts.pictures import IDS, drawing
from sitegen.handouts.source import Source
from sitegen.tutorial import words_of


def layouts_of(source: Source) -> Iterator[SheetPicture]:
    """The layout of each fabric that students cut themselves, in the size that is drawn. What to buy stands in it
    where that is the only size of the sheet, else in the table of cloth, since it is right for no other."""
    computed, one_size = source.cls.computed, len(source.wanted.sizes) == 1
    for fabric in _cut_in_class(source):
        found = layout_of(
            computed,
            fabric,
            source.drawn_size,
            IDS,
            source.numbers.units[0],
            source.page.language,
            with_amounts=one_size,
        )
        if found is not None:
            yield drawing(found.svg)


def cloth_by_size(source: Source) -> Table | None:
    """How much of each fabric is needed and bought, a column for each size; None for a sheet of one size."""
    if len(source.wanted.sizes) == 1:
        return None
    fabrics, language = source.cls.computed.tutorial.fabrics, source.page.language
    rows: list[tuple[str, ...]] = []
    for key in _cut_in_class(source):
        amounts = tuple(_amounts(key, source))
        if amounts:
            name = language.own(fabrics[key].name) if fabrics[key].name else language.say(words_of(key))
            rows += [(name, *("" for _ in source.wanted.sizes)), *amounts]
    return Table(("", *source.size_names), tuple(rows), by_size=True) if rows else None


def _amounts(fabric: str, source: Source) -> Iterator[tuple[str, ...]]:
    for words, number in ((source.words("needed"), "need"), (source.words("buy"), "buy")):
        view = source.numbers.view(f"{fabric}.{number}")
        if view is not None:
            each = source.numbers.each(view)
            yield (words, *(each if len(each) > 1 else each * len(source.wanted.sizes)))


def _cut_in_class(source: Source) -> Iterator[str]:
    """The keys of the fabrics of which students cut."""
    tutorial = source.cls.computed.tutorial
    cut = {name.name for step in source.steps if step.number not in source.cls.before_class for name in step.cuts}
    fabrics = {piece.fabric.name for key, piece in tutorial.pieces.items() if key in cut and piece.fabric}
    fabrics |= {band.fabric.name for key, band in tutorial.bands.items() if key in cut}
    yield from (key for key in tutorial.fabrics if key in fabrics)
