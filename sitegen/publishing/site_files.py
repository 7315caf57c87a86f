"""Every file of a site with its content."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from markupsafe import Markup, escape

from sitegen.publishing.changes_page import CHANGES_PAGE, changed_view, changes_view
from sitegen.publishing.chapters import chapters
from sitegen.publishing.discovery import (
    FEED,
    ROBOTS,
    SITE_MAP,
    WEB_MANIFEST,
    FeedEntry,
    at_root_of_host,
    feed,
    home_on_host,
    how_to,
    page_head,
    robots,
    site_map,
    term_set,
    web_manifest,
    website,
)
from sitegen.publishing.offline import OFFLINE_PAGE
from sitegen.publishing.packed import packed_page
from sitegen.publishing.releases import RECORD_FILE, Record, Status, record_text
from sitegen.publishing.render import (
    render_changes,
    render_class,
    render_front,
    render_glossary,
    render_not_found,
    render_offline,
    render_search,
    render_technique,
    render_techniques,
    render_tutorial,
)
from sitegen.publishing.search_page import SEARCH_DATA, SEARCH_PAGE, class_entries, entries_of, search_data, search_view
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.techniques import TECHNIQUES_PAGE, techniques_view
from sitegen.publishing.views import FRONT_PAGE, GLOSSARY_PAGE, THEME_FOLDER, FrontView
from sitegen.publishing.whole_site import Progress, WholeSite
from sitegen.quantities import English

NOT_FOUND_PAGE = "404.html"
"""By this name servers of files know the page for an address at which there is none (common practice, no standard)."""

Files = Iterator[tuple[str, str | bytes]]


def site_files(whole: WholeSite, progress: Progress) -> Files:
    """All files but drawings and pictures, page by page."""
    total = len(whole.pages) + 1
    progress(len(whole.pages), total, "the pages around the tutorials")
    yield from _tutorials(whole)
    yield from _pages_around(whole)
    yield from _techniques(whole)
    yield from _classes(whole)
    yield from _search(whole)
    yield from _for_other_programs(whole)
    if not whole.site.up:
        for name, content in whole.theme.files().items():
            yield f"{THEME_FOLDER}/{name}", content
    if whole.kept is not None:
        yield RECORD_FILE, record_text(whole.kept)
    progress(total, total, "")


def _tutorials(whole: WholeSite) -> Files:
    for address, page in whole.pages.items():
        chosen = f"{page.chosen[:1].upper()}{page.chosen[1:]}. " if page.chosen else ""
        head = page_head(
            escape(chosen) + page.summary,
            address,
            whole.address,
            kind="article",
            picture=page.picture,
            root=page.root,
            data=_unless_draft(whole, how_to(page, address, whole.address)),
        )
        classes = [each.link for each in whole.classes if each.href == address]
        changed = changed_view(address, page, whole.record) if whole.record is not None else None
        yield address, packed_page(render_tutorial(page, whole.theme, head, changed, classes))
        if page.chapters:
            yield f"{address.rpartition('/')[0]}/{page.chapters}", chapters(whole.computed[address].tutorial)


def _pages_around(whole: WholeSite) -> Files:
    site, theme, address = whole.site, whole.theme, whole.address
    picture = next((card.picture for card in whole.cards if card.picture is not None), None)
    say = speech_of(site).say
    about = site.about or say(f"Sewing tutorials by {site.author}.")
    head = page_head(about, FRONT_PAGE, address, picture=picture, data=website(site, whole.cards, address))
    front = FrontView(site, whole.cards, techniques=len(whole.techniques), terms=len(whole.glossary.entries))
    yield FRONT_PAGE, render_front(front, theme, head, [each.link for each in whole.classes])
    if site.glossary:
        told = say(f"{len(whole.glossary.entries)} words of sewing, each explained in a line.")
        data = _unless_draft(whole, term_set(whole.glossary, GLOSSARY_PAGE, address))
        yield GLOSSARY_PAGE, render_glossary(whole.glossary, theme, page_head(told, GLOSSARY_PAGE, address, data=data))
    told = say(f"Which numbers of {site.title} moved in the last releases, for those who have cut already.")
    changes = changes_view(site, whole.record, whole.pages)
    yield OFFLINE_PAGE, render_offline(site, theme)
    yield CHANGES_PAGE, render_changes(changes, theme, page_head(told, CHANGES_PAGE, address))


def _techniques(whole: WholeSite) -> Files:
    if not whole.site.techniques:
        return
    say = speech_of(whole.site).say
    told = say(f"Stitches, hems and other techniques of {whole.site.title}, and the steps in which each is done.")
    view = techniques_view(whole.site, whole.techniques)
    yield TECHNIQUES_PAGE, render_techniques(view, whole.theme, page_head(told, TECHNIQUES_PAGE, whole.address))
    for technique in whole.techniques:
        means = f"{technique.term.means} " if technique.term is not None else ""
        titles = ", ".join(each.title for each in technique.used)
        head = page_head(f"{technique.name}. {means}{say(f'Used in: {titles}.')}", technique.address, whole.address)
        yield technique.address, render_technique(technique, whole.theme, replace(head, path=TECHNIQUES_PAGE))


def _classes(whole: WholeSite) -> Files:
    for page in whole.classes:
        first = page.link.first_day
        told = ". ".join(filter(None, [page.title, page.tutorial, first, page.where]))
        head = page_head(f"{told}.", page.address, whole.address, picture=page.picture, root=page.root)
        yield page.address, render_class(page, whole.theme, head)


def _search(whole: WholeSite) -> Files:
    entries = entries_of(whole.pages, whole.computed, whole.glossary, whole.techniques, speech_of(whole.site))
    entries += class_entries(whole.classes)
    told = speech_of(whole.site).say(
        f"Search the tutorials, steps, techniques, words and supplies of {whole.site.title}."
    )
    head = page_head(told, SEARCH_PAGE, whole.address)
    yield SEARCH_PAGE, render_search(search_view(whole.site, entries), whole.theme, head)
    yield SEARCH_DATA, search_data(entries, speech_of(whole.site))


def _unless_draft(whole: WholeSite, data: Markup) -> Markup:
    """A draft tells other programs nothing."""
    return Markup() if whole.site.draft else data


def _for_other_programs(whole: WholeSite) -> Files:
    """The manifest; and what needs to know where the site lies: the page for wrong addresses, feed, list of pages and
    robots' file."""
    yield WEB_MANIFEST, web_manifest(whole.site, whole.theme.phone_colours())
    record, address = whole.record, whole.address
    if not address or record is None:
        return
    entries = [
        FeedEntry(
            card,
            record.pages[card.href].published,
            record.pages[card.href].updated,
            _moved(card.href, record, speech_of(whole.site)),
        )
        for card in whole.cards
    ]
    if not whole.site.up:
        yield NOT_FOUND_PAGE, render_not_found(whole.site, home_on_host(address), whole.theme)
    yield FEED, feed(whole.site, entries, address, record.released)
    days: dict[str, date | None] = {page: record.pages[page].updated for page in whole.pages}
    techniques = [TECHNIQUES_PAGE, *(each.address for each in whole.techniques)] if whole.site.techniques else []
    classes = [each.address for each in whole.classes]
    around = [FRONT_PAGE, *techniques, *classes, *([GLOSSARY_PAGE] if whole.site.glossary else []), CHANGES_PAGE]
    yield SITE_MAP, site_map({**dict.fromkeys(around), **days}, address)
    if at_root_of_host(address) and not whole.site.up:
        yield ROBOTS, robots(address)


def _moved(address: str, record: Record, language: English) -> str:
    """What the last release changed on a page, in a sentence; empty when it moved no number there."""
    page = record.pages[address]
    numbers = [
        number.words
        for release in record.releases
        if release.day == page.updated
        for changes in release.pages
        if changes.address == address and changes.status is Status.CHANGED
        for number in changes.numbers
    ]
    return f"{language.say('Numbers that changed')}: {', '.join(dict.fromkeys(numbers))}." if numbers else ""
