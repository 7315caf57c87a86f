"""Fills the templates of a theme. Everything is escaped unless it is ``Markup``, and a name that a template does not
know is an error.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, partial
from traceback import extract_tb
from typing import Protocol

from jinja2 import FunctionLoader, StrictUndefined
from jinja2.sandbox import ImmutableSandboxedEnvironment

from sitegen.findings import Finding, Place, Severity
from sitegen.publishing import amounts, sums, views
from sitegen.publishing.changes_page import CHANGES_PAGE, ChangedView, ChangesView, day_in_words
from sitegen.publishing.class_pages.views import ClassLink, ClassPage, TeacherPage
from sitegen.publishing.discovery import FEED, NO_HEAD, Head
from sitegen.publishing.languages import language_name, speech_in, words_in
from sitegen.publishing.search_page import SEARCH_DATA, SEARCH_PAGE, SearchView
from sitegen.publishing.techniques import TECHNIQUES_PAGE, TechniquesView, TechniqueView
from sitegen.publishing.themes import DEFAULT_THEME, Theme, shipped_theme
from sitegen.publishing.views import FrontView, GlossaryView, SiteView, TutorialView


class ThemeBrokenError(Exception):
    """A template of the author's own that fails while a page is made of it."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def render_front(
    view: FrontView, theme: Theme | None = None, head: Head = NO_HEAD, classes: Sequence[ClassLink] = ()
) -> str:
    """The front page as HTML, with the classes that have a page."""
    return _render("front.html", view, theme, head, classes=classes)


def render_tutorial(
    view: TutorialView,
    theme: Theme | None = None,
    head: Head = NO_HEAD,
    changed: ChangedView | None = None,
    classes: Sequence[ClassLink] = (),
) -> str:
    """The page of one tutorial as HTML, with what moved on it in the last releases, and the classes that make it."""
    return _render("tutorial.html", view, theme, head, changed=changed, classes=classes)


def render_glossary(view: GlossaryView, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page of terms as HTML."""
    return _render("glossary.html", view, theme, head)


def render_changes(view: ChangesView, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page of what moved in the last releases as HTML."""
    return _render("changes.html", view, theme, head)


def render_techniques(view: TechniquesView, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page that lists the techniques as HTML."""
    return _render("techniques.html", view, theme, head)


def render_technique(view: TechniqueView, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page of one technique as HTML."""
    return _render("technique.html", view, theme, head)


def render_search(view: SearchView, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page to search on as HTML."""
    return _render("search.html", view, theme, head)


def render_class(view: ClassPage, theme: Theme | None = None, head: Head = NO_HEAD) -> str:
    """The page of a class for its students as HTML."""
    return _render("class.html", view, theme, head)


def render_class_teacher(view: TeacherPage, theme: Theme | None = None) -> str:
    """The page of a class for its teacher as HTML, which needs no other file."""
    return _render("class-teacher.html", view, theme, NO_HEAD)


def render_offline(site: SiteView, theme: Theme | None = None) -> str:
    """The page that stands for one which was not kept, as HTML."""
    return _render("offline.html", _Plain(site), theme, NO_HEAD)


def render_not_found(site: SiteView, home: str, theme: Theme | None = None) -> str:
    """The page that a server sends for an address at which there is none, as HTML.

    It is read at any address, so its links begin with ``home``, the path of the site on its host: ``/``,
    ``/sewing/``.
    """
    return _render("not-found.html", _Plain(site, home), theme, NO_HEAD)


def duration(minutes: int) -> str:
    """A time in words: ``45 min``, ``2 h``, ``3 h 20 min``."""
    hours, rest = divmod(minutes, 60)
    parts = ([f"{hours} h"] if hours else []) + ([f"{rest} min"] if rest or not hours else [])
    return amounts.unbroken(" ".join(parts)).replace(" ", "\N{NO-BREAK SPACE}")


@dataclass(frozen=True, slots=True)
class _Plain:
    """A page that shows nothing but itself."""

    site: SiteView
    root: str = ""


class _Page(Protocol):
    """What every page has."""

    @property
    def site(self) -> SiteView: ...

    @property
    def root(self) -> str: ...


def _render(template: str, view: _Page, theme: Theme | None, head: Head, **more: object) -> str:
    theme = theme or shipped_theme()
    try:
        site = view.site
        page = environment_of(theme, site.language, site.first_language).get_template(template)
        return page.render(view=view, site=view.site, root=view.root, head=head, **more)
    except Exception as trouble:
        # A template can fail in any way that an expression can; those of the program itself are not to fail.
        place = _place_in(theme, trouble)
        if place is None:
            raise
        message = f"This line makes no page: {trouble}. The templates of the theme {DEFAULT_THEME} show what there is."
        raise ThemeBrokenError(Finding("theme-broken", Severity.WRONG, place, message)) from trouble


def _place_in(theme: Theme, trouble: Exception) -> Place | None:
    """The line of a template of the author's own at which making a page failed; None when it was another's."""
    own = {each.place.file: each.place for each in theme.below("templates").values() if each.own}
    for frame in reversed(extract_tb(trouble.__traceback__)):
        if frame.filename in own:
            return replace(own[frame.filename], line=frame.lineno or 1)
    return None


@lru_cache(maxsize=8)
def environment_of(theme: Theme, language: str = "en", first_language: str = "") -> ImmutableSandboxedEnvironment:
    """What the templates of a theme may use. They are data: a template reaches nothing but what it is given."""
    speech = speech_in(language, first_language)
    templates = theme.below("templates")

    def source(name: str) -> tuple[str, str, None] | None:
        return (templates[name].text, templates[name].place.file, None) if name in templates else None

    environment = ImmutableSandboxedEnvironment(
        loader=FunctionLoader(source),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.globals |= {
        "t": words_in(theme.words, language),
        "words_of": partial(words_in, theme.words),
        "say": speech.say,
        "language_name": language_name,
        "amount": amounts.amount,
        "cells": amounts.cells,
        "number": partial(amounts.number, language=speech),
        "unbroken": amounts.unbroken,
        "terms_of": partial(sums.terms_of, language=speech),
        "summed": sums.summed,
        "has_star": sums.has_star,
        "starred": sums.starred,
        "FRONT_PAGE": views.FRONT_PAGE,
        "GLOSSARY_PAGE": views.GLOSSARY_PAGE,
        "CHANGES_PAGE": CHANGES_PAGE,
        "FEED": FEED,
        "SEARCH_PAGE": SEARCH_PAGE,
        "SEARCH_DATA": SEARCH_DATA,
        "TECHNIQUES_PAGE": TECHNIQUES_PAGE,
        "THEME_FOLDER": views.THEME_FOLDER,
    }
    environment.filters["duration"] = duration
    environment.filters["day"] = lambda day: speech.say(day_in_words(day))
    return environment
