"""The page of one tutorial from its computed numbers."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from os.path import relpath

from sitegen.publishing.amounts import Filled, with_squares
from sitegen.publishing.card_page import card
from sitegen.publishing.change_numbers import bought_after, change_names
from sitegen.publishing.chapters import CHAPTERS, chapters
from sitegen.publishing.cutting_list import cutting_list
from sitegen.publishing.drawings import DrawingFiles, Drawings
from sitegen.publishing.marked_photos import ShowPhoto, marked_photo
from sitegen.publishing.number_book import CardNumbers, NumberBook
from sitegen.publishing.picture_views import Picture
from sitegen.publishing.size_finder import measure_words, size_finder
from sitegen.publishing.slugs import Slugs
from sitegen.publishing.spoken import rendered, rendered_inline, speech_of
from sitegen.publishing.terms import PageTerms, Terms
from sitegen.publishing.view_choices import ViewChoice, ViewOption
from sitegen.publishing.views import (
    Both,
    BoughtForChange,
    Caution,
    Change,
    Fabric,
    NumberTable,
    NumberView,
    SiteView,
    StepCard,
    Supply,
    TutorialCard,
    TutorialView,
)
from sitegen.publishing.whole_drawings import whole_drawings
from sitegen.quantities import RULER, English, Length, System, in_system, show_ratio
from sitegen.tutorial import Change as ChangeOfPieces
from sitegen.tutorial import Computed, Tutorial, Words, more_cloth
from sitegen.tutorial import Fabric as Cloth

_BETWEEN = "\n"
"""Between the choices of several views: what no choice holds, so that each combination has a name of its own."""


def tutorial_page(
    computed: Computed, site: SiteView, root: str, show: ShowPhoto, files: DrawingFiles, terms: Terms
) -> TutorialView:
    """Everything that the page of a tutorial shows, in the order of the page."""
    tutorial = computed.tutorial
    first = site.units_first
    language = speech_of(site, computed)
    book = NumberBook(computed, first, language)
    drawings = Drawings(computed, first, f"{root}{site.up}", files, language)
    on_page = PageTerms(terms)
    numbers = CardNumbers(book, "at the start of the page", tutorial.sizes, first)
    before = rendered(tutorial.before, language, numbers)
    chart = _body_chart(tutorial, book)
    finished = book.table(_finished_names(computed), "with the sizes")
    fabrics, buying = _fabrics(computed, book, numbers)
    changes = tuple(_change(change, computed, book, drawings) for change in tutorial.changes.values())
    cutting, cutting_working = cutting_list(computed, book)
    cards = tuple(card(step, computed, book, first, show, drawings.diagram, on_page.card()) for step in tutorial.steps)
    minutes = [each.minutes for each in cards if each.minutes is not None]
    return TutorialView(
        site=site,
        root=root,
        home=f"{root}tutorials/{tutorial.key}/",
        terms=on_page.used,
        names_differ=on_page.names_differ,
        views=_views(tutorial, language),
        title=language.own(tutorial.title),
        summary=rendered(tutorial.summary, language, numbers),
        cards=cards,
        level=language.own(tutorial.level),
        wearer=_wearer(tutorial),
        minutes=sum(minutes) if minutes else None,
        learn=tuple(rendered_inline(text, numbers) for text in tutorial.learn),
        before=before,
        picture=marked_photo(tutorial.photo, show, numbers) if tutorial.photo else None,
        sizes=tutorial.sizes,
        chart=chart,
        finished=replace(finished, working=(*numbers.told, *finished.working)),
        fabrics=fabrics,
        supplies=tuple(
            Supply(
                language.own(each.item.text),
                _in_both(each.size, language),
                _in_both(each.amount, language, enough=True),
                language.own(each.purpose),
            )
            for each in tutorial.supplies
        ),
        tools=tuple(language.own(tool.text) for tool in tutorial.tools),
        cautions=_gathered(cards),
        cutting=cutting,
        cutting_working=cutting_working,
        buying_working=buying,
        changes=changes,
        chapters=CHAPTERS if chapters(tutorial) else "",
        whole=whole_drawings(computed, first, drawings, {each.number: each.anchor for each in cards}),
        finder=size_finder(computed, first, language),
        numbers=book.taken,  # last, when every text above has asked for its numbers
    )


def page_address(tutorial: Tutorial) -> str:
    """Where the page of a tutorial lies in the site: in its folder, or one below for every further view."""
    here = f"tutorials/{tutorial.key}/"
    slugs = Slugs()
    _, *further = product(*tutorial.views.values())
    folders = {choices: f"{slugs.of(_BETWEEN.join(choices))}/" for choices in further}
    return f"{here}{folders.get(tuple(choice for _, choice in tutorial.chosen), '')}index.html"


def _views(tutorial: Tutorial, language: English) -> tuple[ViewChoice, ...]:
    """Each view with its choices, each of which leads to the page that differs in this one choice."""
    here = page_address(tutorial)
    found = []
    for view, choices in tutorial.views.items():
        options = []
        for choice in choices:
            chosen = tuple((name, choice if name == view else now) for name, now in tutorial.chosen)
            there = page_address(replace(tutorial, chosen=chosen))
            address = relpath(there, here.rpartition("/")[0]).replace("\\", "/")
            options.append(ViewOption(language.own(choice), address, chosen == tutorial.chosen))
        found.append(ViewChoice(language.own(view.replace("_", " ")), tuple(options)))
    return tuple(found)


def front_card(page: TutorialView, computed: Computed, picture: Picture | None) -> TutorialCard:
    """The tutorial as the front page lists it. Its summary leads to no working, for that is on another page."""
    key = computed.tutorial.key
    first = page.site.units_first
    language = speech_of(page.site, computed)
    numbers = CardNumbers(NumberBook(computed, first, language), "", page.sizes, first)

    def plain(name: str) -> Filled | None:
        filled = numbers(name)
        return Filled(filled.plain, filled.plain) if filled is not None else None

    return TutorialCard(
        key=key,
        title=page.title,
        href=f"tutorials/{key}/index.html",
        summary=rendered(computed.tutorial.summary, language, plain),
        level=page.level,
        wearer=page.wearer,
        minutes=page.minutes,
        sizes=page.sizes,
        cards=len(page.cards),
        picture=picture,
        learn=tuple(rendered_inline(text, plain) for text in computed.tutorial.learn),
    )


def _wearer(tutorial: Tutorial) -> str:
    """Whom the garment is for; empty for what nobody wears, such as a bag: it has no sizes and fits no body."""
    if tutorial.child:
        return "child"
    return "adult" if tutorial.sizes or tutorial.body else ""


def _body_chart(tutorial: Tutorial, book: NumberBook) -> NumberTable:
    """The size table, below whose caption ``waist`` is enough."""
    names = {f"body.{name}": measure_words(name, book.language) for name in tutorial.body}
    chart = book.table(tuple(names), "with the sizes")
    return replace(chart, rows=tuple(replace(row, words=names[row.name]) for row in chart.rows))


def _in_both(words: Words | None, language: English, *, enough: bool = False) -> Both | None:
    """The size or the amount of a supply: a length in both systems, other words as they are."""
    if words is None:
        return None
    inches, metric = (in_system(words.text, system, enough=enough) for system in System)
    if inches == metric:
        return Both(language.own(inches), language.own(metric))
    return Both(language.amount(inches), language.amount(metric))


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
    found, working, language = [], [], book.language
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
                name=language.own(cloth.name),
                called=cloth.key,
                shown_as=language.own(cloth.key),
                structure=language.own(cloth.structure),
                stretch=language.say(_stretch(cloth)),
                width=_both(width.length, language) if width is not None else None,
                weight=with_squares(language.amount(language.own(cloth.weight))),
                shrinkage=language.amount(show_ratio(cloth.shrinkage.ratio)) if cloth.shrinkage else "",
                advice=rendered_inline(cloth.advice, numbers) if cloth.advice else "",
                # A table of all that is bought names each row by its cloth.
                buy=replace(buy, words=language.own(cloth.name)) if buy is not None else None,
            )
        )
    return tuple(found), tuple(working)


def _both(value: Length, language: English) -> Both:
    return Both(*(language.amount(RULER.show(value, system)) for system in System))


def _stretch(cloth: Cloth) -> str:
    parts = [(cloth.stretch_across, "across"), (cloth.stretch_down, "down")]
    return ", ".join(f"{show_ratio(share.ratio)} {way}" for share, way in parts if share is not None)


def _change(change: ChangeOfPieces, computed: Computed, book: NumberBook, drawings: Drawings) -> Change:
    diagram = drawings.diagram(change.key)
    title = book.language.own(change.key.replace("_", " "))
    place = "with the changes"
    more = [fabric for fabric in computed.tutorial.fabrics.values() if more_cloth(change.key, fabric.key, computed)]
    needs = tuple(f"{change.key}.then.{fabric.key}.need" for fabric in more)
    numbers = book.table((*change_names(change, computed), *needs), place)
    bought = ((fabric, bought_after(change.key, fabric.key, computed, book)) for fabric in more)
    return Change(
        title=title[:1].upper() + title[1:],
        anchor=f"change-{change.key}",
        numbers=numbers,
        diagrams=(diagram,) if diagram is not None else (),
        bought=tuple(BoughtForChange(book.language.own(fabric.name), buy) for fabric, buy in bought if buy is not None),
    )


def _gathered(cards: tuple[StepCard, ...]) -> tuple[Caution, ...]:
    """Every caution once, with the numbers of the cards where it applies."""
    found: dict[tuple[str, str], Caution] = {}
    for each in cards:
        for one in each.cautions:
            before = found.get((one.name, one.text), one)
            found[(one.name, one.text)] = replace(before, cards=(*before.cards, each.number))
    return tuple(found.values())
