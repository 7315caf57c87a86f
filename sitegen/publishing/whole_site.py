"""Every page of a site as plain data, before any of it is written: pages may speak of each other."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from sitegen.checks import Review
from sitegen.publishing.class_pages.student import class_pages
from sitegen.publishing.class_pages.views import ClassPage
from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.languages import speech_in
from sitegen.publishing.photo_findings import photo_path
from sitegen.publishing.picture_files import PictureFiles
from sitegen.publishing.picture_views import LogoPicture, Picture
from sitegen.publishing.releases import Record, StoredRecord, next_record, published_page
from sitegen.publishing.site_look import SiteLook
from sitegen.publishing.slugs import Slugs
from sitegen.publishing.spoken import rendered, rendered_inline, speech_of
from sitegen.publishing.techniques import TechniqueView, technique_pages, with_links
from sitegen.publishing.terms import Terms
from sitegen.publishing.themes import Theme
from sitegen.publishing.tutorial_page import front_card, page_address, tutorial_page
from sitegen.publishing.views import (
    GlossaryEntry,
    GlossaryView,
    OtherLanguage,
    SiteView,
    TutorialCard,
    TutorialView,
)
from sitegen.quantities import English, System
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Photo, Site

_MAIN_PART = "main"
"""The id of what is read first on every page."""

Progress = Callable[[int, int, str], None]
"""Told how many pages are done, how many there are, and which is next."""


@dataclass(frozen=True)
class WholeSite:
    """The pages of a site, each tutorial in every view."""

    site: SiteView
    theme: Theme
    address: str
    """The site's own address; empty when it is not known, and for a draft, which tells nobody of itself."""
    glossary: GlossaryView
    techniques: tuple[TechniqueView, ...]
    computed: Mapping[str, Computed]
    pages: Mapping[str, TutorialView]
    """By address from the folder of the site, as is ``computed``."""
    cards: tuple[TutorialCard, ...]
    """Each tutorial once."""
    classes: tuple[ClassPage, ...]
    """Those that are to be on the site."""
    record: Record | None
    """What this release holds and what moved in it; of a draft, what it would. None when nothing is to be compared."""
    kept: Record | None
    """The record to be written: a draft is no release, and keeps that of the last one."""


def whole_site(
    found: Review,
    look: SiteLook,
    folder: ContentFolder,
    pictures: PictureFiles,
    drawings: DrawingFiles,
    progress: Progress,
    *,
    draft: bool,
    today: date,
    stored: StoredRecord,
) -> WholeSite:
    """Every page from the checked folder and from the record of the last release, in the language of ``found.site``."""
    site = site_view(found.site, look.logo, draft=draft)
    glossary = _glossary(found.site, site)
    terms = Terms(glossary.entries)
    pages: dict[str, TutorialView] = {}
    cards: dict[str, TutorialCard] = {}
    computed = {page_address(each.tutorial): each for each in found.tutorials}
    for done, (address, each) in enumerate(computed.items()):
        progress(done, len(computed) + 1, each.tutorial.title)
        root = "../" * address.count("/")
        language = speech_of(site, each)
        show = _shown(each, folder, pictures, f"{root}{site.up}", language)
        page = tutorial_page(each, site, root, show, drawings, terms)
        if each.tutorial.key not in cards:
            photo = each.tutorial.photo
            show = _shown(each, folder, pictures, site.up, language)
            cards[each.tutorial.key] = front_card(page, each, show(photo) if photo is not None else None)
        pages[address] = page
    techniques = technique_pages(site, glossary, computed, pages)
    pages = {address: with_links(page, techniques) for address, page in pages.items()}
    now = {address: published_page(page, computed[address].tutorial, today) for address, page in pages.items()}
    record = next_record(stored.record, now, today)
    if draft:
        record_shown, kept = (record if stored.record is not None else None), stored.record
    else:
        record_shown, kept = record, (None if stored.foreign else record)
    return WholeSite(
        site=site,
        theme=look.theme,
        address="" if draft else language_address(found.site),
        glossary=glossary,
        techniques=techniques,
        computed=computed,
        pages=pages,
        cards=tuple(cards.values()),
        classes=class_pages(found.classes, site, cards, pages, computed),
        record=record_shown,
        kept=kept,
    )


def folder_of(site: Site) -> str:
    """Where the pages of a language lie in the site: the first at its root, others in a folder of their own."""
    return "" if site.language == site.languages[0] else f"{site.language}/"


def language_address(site: Site) -> str:
    """The address of that folder; empty when the site does not know its own."""
    return f"{site.address}/{folder_of(site)}".rstrip("/") if site.address else ""


def site_view(site: Site, logo: LogoPicture | None = None, *, draft: bool) -> SiteView:
    """What all pages share."""
    language = speech_in(site.language, site.languages[0]).of_tutorial({}, (), site.untranslated)
    return SiteView(
        title=language.own(site.title),
        author=site.author,
        about=rendered(site.about, language),
        note=language.own(site.note),
        language=site.language,
        first_language=site.languages[0],
        up="../" if folder_of(site) else "",
        others=tuple(
            OtherLanguage(code, f"{'../' if folder_of(site) else ''}{folder_of(replace(site, language=code))}")
            for code in site.languages
            if code != site.language
        ),
        units_first=System.CENTIMETRES if language.metric_first and not site.units_said else site.first_system,
        draft=draft,
        logo=logo,
        glossary=bool(site.glossary),
        techniques=any(tutorial.steps for tutorial in site.tutorials),
        searchable=True,
    )


def _glossary(site: Site, view: SiteView) -> GlossaryView:
    language = speech_in(site.language, site.languages[0])
    anchors = Slugs(taken=[_MAIN_PART])
    entries = (
        GlossaryEntry(
            term=language.own(term.term),
            anchor=anchors.of(term.term),
            means=rendered_inline(term.means),
            us=term.us,
            uk=term.uk,
        )
        for term in site.glossary
    )
    return GlossaryView(view, tuple(sorted(entries, key=lambda entry: entry.term.casefold())))


def _shown(
    computed: Computed, folder: ContentFolder, pictures: PictureFiles, root: str, language: English
) -> Callable[[Photo], Picture | None]:
    def show(photo: Photo) -> Picture | None:
        path = photo_path(photo, computed, folder)
        shows = language.own(photo.shows)
        return pictures.view(path, replace(photo, shows=shows), root) if path is not None else None

    return show
