"""The page of a tutorial for printed sheets, and the words of its language."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from sitegen.findings import Collector
from sitegen.publishing.discovery.addresses import absolute
from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.languages import Speech, Words, words_in
from sitegen.publishing.releases import PublishedPage, published_page
from sitegen.publishing.site_look import site_look
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.terms import Terms
from sitegen.publishing.tutorial_page import page_address, tutorial_page
from sitegen.publishing.views import TutorialView
from sitegen.publishing.whole_site import language_address, site_view
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Site


@dataclass(frozen=True)
class PaperPage:
    """What the page of a tutorial shows, without its photos and drawings, and what a sheet needs beside it."""

    view: TutorialView
    words: Words
    language: Speech
    address: str
    """Of the page on the web; empty when the site does not know its own."""
    path: str
    """Of the page in the site."""
    published: PublishedPage
    """Every number of the page as it reads today, to be compared with that of another day."""


def paper_page(computed: Computed, site: Site, folder: ContentFolder, first: System, today: date) -> PaperPage | None:
    """The page of a tutorial with one system of units first, by its numbers of today.

    None when the site has no usable theme, which gives the words.
    """
    look = site_look(site, folder, Collector())
    if look is None:
        return None
    shared = replace(site_view(site, draft=False), units_first=first)
    view = tutorial_page(computed, shared, "", lambda photo: None, DrawingFiles(""), Terms(()))
    path = page_address(computed.tutorial)
    base = language_address(site)
    return PaperPage(
        view=view,
        words=words_in(look.theme.words, site.language),
        language=speech_of(shared, computed),
        address=absolute(base, path) if base else "",
        path=path,
        published=published_page(view, computed.tutorial, today),
    )
