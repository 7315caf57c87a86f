"""The first page of a handout, and the tables behind it."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.classes import Session
from sitegen.handouts.model import Care, Cover, SheetPicture, Table
from sitegen.handouts.pictures import code_of, photo
from sitegen.handouts.source import Source
from sitegen.publishing import NumberView, day_in_words, duration, photo_path, printed_line, printed_text


def cover_of(source: Source) -> Cover:
    """What a student must know before the first card."""
    tutorial, view, own = source.cls.computed.tutorial, source.page.view, source.page.language.own
    steps = {step.number: step for step in tutorial.steps}
    printed = {step.number for step in source.steps}
    return Cover(
        facts=tuple(_facts(source)),
        sessions=tuple(_session(each, source) for each in source.cls.written.sessions),
        summary=printed_text(tutorial.summary.text, source.numbers_in(tutorial.summary.text))
        if tutorial.summary is not None
        else (),
        learn=tuple(printed_line(each.text, source.numbers_in(each.text)) for each in tutorial.learn),
        before=printed_text(tutorial.before.text, source.numbers_in(tutorial.before.text))
        if tutorial.before is not None
        else (),
        done_before=tuple(own(step.title) for number, step in steps.items() if number in source.cls.before_class),
        bring=tuple(own(each.text) for each in source.cls.written.brings),
        fabrics=_fabrics(source),
        supplies=_supplies(source),
        care=tuple(Care(each.name, each.text) for each in view.cautions if printed & set(each.cards)),
        picture=_picture(source),
        code=code_of(source.page.address) if source.page.address else "",
        address=source.page.address,
    )


def tables_of(source: Source) -> tuple[tuple[str, Table], ...]:
    """Measurements of the body and of what is made, and what is cut, each with its heading."""
    view, words = source.page.view, source.words
    head = ("", *source.size_names) if source.size_names[0] else ("", "")
    found = [
        (words("body"), Table(head, tuple(_rows(view.chart.rows, source)), by_size=True)),
        (words("finished"), Table(head, tuple(_rows(view.finished.rows, source)), by_size=True)),
        (words("cutting"), Table(head, tuple(_cutting(source)), by_size=True)),
    ]
    return tuple((title, table) for title, table in found if table.rows)


def _facts(source: Source) -> Iterator[str]:
    words = source.words
    if source.size_names[0]:
        yield words("sizes", count=len(source.size_names), sizes=", ".join(source.size_names))
    for _, choice in source.cls.computed.tutorial.chosen:
        yield source.page.language.own(choice)
    for change in source.cls.written.changes:
        yield source.page.language.own(change.name.replace("_", " "))
    done = (step for step in source.steps if step.number not in source.cls.before_class)
    minutes = [step.minutes for step in done if step.minutes is not None]
    if minutes:
        yield words("about", time=str(duration(sum(minutes))))
    if source.page.view.level:
        yield source.page.view.level


def _session(session: Session, source: Source) -> str:
    """``Session 1: 12 January 2027, 18:30 to 21:00``, or its minutes."""
    number = source.words("session", number=session.number)
    if session.starts is None or session.stops is None:
        return f"{number}: {duration(session.minutes)}"
    day = source.page.language.say(day_in_words(session.starts.date()))
    hours = source.page.language.span(f"{session.starts:%H:%M}", f"{session.stops:%H:%M}")
    return f"{number}: {day}, {hours}"


def _fabrics(source: Source) -> Table | None:
    """The fabrics; how much to buy only of those that students bring."""
    brought = {each.text for each in source.cls.written.brings}
    rows = []
    for fabric in source.page.view.fabrics:
        about = [fabric.structure, fabric.stretch, fabric.weight]
        if fabric.width is not None:
            about.append(source.words("wide", width=source.numbers.both(fabric.width)))
        if fabric.buy is not None and {fabric.called, fabric.name} & brought:
            buy = source.numbers(fabric.buy.name)
            about.append(source.words("to_buy", length=buy) if buy is not None else "")
        rows.append((fabric.name, ", ".join(each for each in about if each)))
    return Table((source.words("fabric"), ""), tuple(rows)) if rows else None


def _supplies(source: Source) -> Table | None:
    brought = {each.text for each in source.cls.written.brings}
    rows = [
        (each.item, ", ".join(source.numbers.both(part) for part in (each.size, each.amount) if part), each.purpose)
        for each in source.page.view.supplies
        if each.item not in brought
    ]
    return Table((source.words("supply"), "", source.words("purpose")), tuple(rows)) if rows else None


def _picture(source: Source) -> SheetPicture | None:
    tutorial = source.cls.computed.tutorial
    path = photo_path(tutorial.photo, source.cls.computed, source.folder) if tutorial.photo is not None else None
    if tutorial.photo is None or path is None:
        return None
    shows = source.page.language.own(tutorial.photo.shows)
    return photo(tutorial.photo, path, shows, lambda text: printed_line(text.text, source.numbers))


def _rows(rows: tuple[NumberView, ...], source: Source) -> Iterator[tuple[str, ...]]:
    for row in rows:
        view = source.numbers.view(row.name)
        if view is not None:
            each = source.numbers.each(view)
            yield (view.words, *(each if len(each) == len(source.wanted.sizes) else each * len(source.wanted.sizes)))


def _cutting(source: Source) -> Iterator[tuple[str, ...]]:
    """The name of a part, how often it is cut and of what, then a row for each of its numbers."""
    for piece in source.page.view.cutting:
        how = ", ".join(part for part in (piece.how_many, piece.fabric) if part)
        yield (f"{piece.piece}: {source.words('cut_as', how=how)}", *("" for _ in source.wanted.sizes))
        yield from _rows(piece.numbers, source)
