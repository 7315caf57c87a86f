"""The page of one tutorial from its computed numbers."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from os.path import relpath

from markupsafe import Markup

from sitegen.publishing.amounts import Filled
from sitegen.publishing.card_page import card
from sitegen.publishing.change_numbers import change_names
from sitegen.publishing.chapters import CHAPTERS, chapters
from sitegen.publishing.cutting_list import cutting_list
from sitegen.publishing.drawings import Drawings
from sitegen.publishing.markdown import render, render_inline
from sitegen.publishing.number_book import CardNumbers, NumberBook
from sitegen.publishing.views import (
    Both,
    Caution,
    Change,
    Fabric,
    NumberView,
    Picture,
    SiteView,
    StepCard,
    Supply,
    TutorialCard,
    TutorialView,
    ViewChoice,
    ViewOption,
)
from sitegen.quantities import RULER, Length, System, show_ratio
from sitegen.tutorial import Change as ChangeOfPieces
from sitegen.tutorial import Computed, Photo, Prose, Tutorial, Words
from sitegen.tutorial import Fabric as Cloth

ShowPhoto = Callable[[Photo], Picture | None]


def tutorial_page(computed: Computed, site: SiteView, root: str, show: ShowPhoto) -> TutorialView:
    """Everything that the page of a tutorial shows, in the order of the page."""
    tutorial = computed.tutorial
    first = site.units_first
    book = NumberBook(computed, first)
    drawings = Drawings(computed, first)
    numbers = CardNumbers(book, "at the start of the page", tutorial.sizes, first)
    before = render(tutorial.before.text, numbers) if tutorial.before else render("")
    chart = book.table(tuple(f"body.{name}" for name in tutorial.body), "with the sizes")
    finished = book.table(_finished_names(computed), "with the sizes")
    fabrics, buying = _fabrics(computed, book, numbers)
    changes = tuple(_change(change, computed, book, drawings) for change in tutorial.changes.values())
    cutting, cutting_working = cutting_list(computed, book)
    cards = tuple(card(step, computed, book, first, show, drawings.diagram) for step in tutorial.steps)
    minutes = [each.minutes for each in cards if each.minutes is not None]
    return TutorialView(
        site=site,
        root=root,
        views=_views(tutorial),
        title=tutorial.title,
        summary=_prose(tutorial.summary, numbers),
        cards=cards,
        level=tutorial.level,
        wearer="child" if tutorial.child else "adult",
        minutes=sum(minutes) if minutes else None,
        learn=tuple(render_inline(text.text, numbers) for text in tutorial.learn),
        before=before,
        picture=show(tutorial.photo) if tutorial.photo else None,
        sizes=tutorial.sizes,
        chart=chart,
        finished=replace(finished, working=(*numbers.told, *finished.working)),
        fabrics=fabrics,
        supplies=tuple(
            Supply(each.item.text, _words(each.size), _words(each.amount), each.purpose) for each in tutorial.supplies
        ),
        tools=tuple(tool.text for tool in tutorial.tools),
        cautions=_gathered(cards),
        cutting=cutting,
        cutting_working=cutting_working,
        buying_working=buying,
        changes=changes,
        chapters=CHAPTERS if chapters(tutorial) else "",
    )


def page_address(tutorial: Tutorial) -> str:
    """Where the page of a tutorial lies in the site: in its folder, or one below for every further view."""
    first = all(choice == tutorial.views[view][0] for view, choice in tutorial.chosen)
    words = "-".join(choice for _, choice in tutorial.chosen)
    below = "" if first else re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-") + "/"
    return f"tutorials/{tutorial.key}/{below}index.html"


def _views(tutorial: Tutorial) -> tuple[ViewChoice, ...]:
    """Each view with its choices, each of which leads to the page that differs in this one choice."""
    here = page_address(tutorial)
    found = []
    for view, choices in tutorial.views.items():
        options = []
        for choice in choices:
            chosen = tuple((name, choice if name == view else now) for name, now in tutorial.chosen)
            there = page_address(replace(tutorial, chosen=chosen))
            address = relpath(there, here.rpartition("/")[0]).replace("\\", "/")
            options.append(ViewOption(choice, address, chosen == tutorial.chosen))
        found.append(ViewChoice(view.replace("_", " "), tuple(options)))
    return tuple(found)


def front_card(page: TutorialView, computed: Computed, picture: Picture | None) -> TutorialCard:
    """The tutorial as the front page lists it. Its summary leads to no working, for that is on another page."""
    key = computed.tutorial.key
    numbers = CardNumbers(NumberBook(computed, page.site.units_first), "", page.sizes, page.site.units_first)

    def plain(name: str) -> Filled | None:
        filled = numbers(name)
        return Filled(filled.plain, filled.plain) if filled is not None else None

    summary = computed.tutorial.summary
    return TutorialCard(
        key=key,
        title=page.title,
        href=f"tutorials/{key}/index.html",
        summary=render(summary.text, plain) if summary is not None else Markup(),
        level=page.level,
        wearer=page.wearer,
        minutes=page.minutes,
        sizes=page.sizes,
        cards=len(page.cards),
        picture=picture,
    )


def _prose(text: Prose | None, numbers: CardNumbers) -> Markup:
    return render(text.text, numbers) if text is not None else Markup()


def _words(words: Words | None) -> str:
    return words.text if words else ""


def _finished_names(computed: Computed) -> tuple[str, ...]:
    """Girths with their ease, boxed bags, widths of cloth made up, then finished lengths and widths of the pieces."""
    tutorial = computed.tutorial
    names = [f"{key}.{field}" for key in tutorial.girths for field in ("finished_girth", "ease")]
    names += [f"{key}.joined_length" for key in tutorial.joined]
    names += [f"{key}.{field}" for key in tutorial.boxed for field in ("width", "height", "depth")]
    names += [f"{key}.full_width" for key in tutorial.drops]
    names += [f"{key}.finished_{axis}" for key in tutorial.pieces for axis in ("length", "width")]
    return tuple(names)


def _fabrics(
    computed: Computed, book: NumberBook, numbers: CardNumbers
) -> tuple[tuple[Fabric, ...], tuple[NumberView, ...]]:
    found, working = [], []
    for cloth in computed.tutorial.fabrics.values():
        buy, first = book.take(f"{cloth.key}.buy", "with the fabrics")
        width = computed.number(f"{cloth.key}.width", 0)
        if buy is not None and first:
            working.append(buy)
        drops = [f"{each.key}.cloth" for each in computed.tutorial.drops.values() if each.fabric.name == cloth.key]
        for name in (*(f"{cloth.key}.{field}" for field in ("repeat", "for_repeat", "need")), *drops):
            need, first = book.take(name, "with the fabrics")
            if need is not None and first:
                working.append(need)
        found.append(
            Fabric(
                name=cloth.name,
                called=cloth.key,
                structure=cloth.structure,
                stretch=_stretch(cloth),
                width=_both(width.length) if width is not None else None,
                weight=cloth.weight,
                shrinkage=show_ratio(cloth.shrinkage.ratio) if cloth.shrinkage else "",
                advice=render_inline(cloth.advice.text, numbers) if cloth.advice else "",
                buy=buy,
            )
        )
    return tuple(found), tuple(working)


def _both(value: Length) -> Both:
    return Both(RULER.show(value, System.INCHES), RULER.show(value, System.CENTIMETRES))


def _stretch(cloth: Cloth) -> str:
    parts = [(cloth.stretch_across, "across"), (cloth.stretch_down, "down")]
    return ", ".join(f"{show_ratio(share.ratio)} {way}" for share, way in parts if share is not None)


def _change(change: ChangeOfPieces, computed: Computed, book: NumberBook, drawings: Drawings) -> Change:
    diagram = drawings.diagram(change.key)
    title = change.key.replace("_", " ")
    return Change(
        title=title[:1].upper() + title[1:],
        anchor=f"change-{change.key}",
        numbers=book.table(change_names(change, computed), "with the changes"),
        diagrams=(diagram,) if diagram is not None else (),
    )


def _gathered(cards: tuple[StepCard, ...]) -> tuple[Caution, ...]:
    """Every caution once, with the numbers of the cards where it applies."""
    found: dict[tuple[str, str], Caution] = {}
    for each in cards:
        for one in each.cautions:
            before = found.get((one.name, one.text), one)
            found[(one.name, one.text)] = replace(before, cards=(*before.cards, each.number))
    return tuple(found.values())
