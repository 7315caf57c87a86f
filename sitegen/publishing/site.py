"""Makes the whole site from a content folder, if nothing in it is wrong, and has it written whole or not at all."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from markupsafe import Markup

from sitegen.checks import Review, review
from sitegen.diagrams import STYLE_SHEET
from sitegen.findings import Finding, Severity
from sitegen.pictures import Trouble
from sitegen.publishing.chapters import chapters
from sitegen.publishing.markdown import render, render_inline
from sitegen.publishing.picture_files import PictureFiles
from sitegen.publishing.render import (
    ThemeNotFoundError,
    render_front,
    render_glossary,
    render_tutorial,
    theme_assets,
)
from sitegen.publishing.tutorial_page import front_card, page_address, tutorial_page
from sitegen.publishing.views import (
    FRONT_PAGE,
    GLOSSARY_PAGE,
    THEME_FOLDER,
    FrontView,
    GlossaryEntry,
    GlossaryView,
    Picture,
    SiteView,
    TutorialCard,
)
from sitegen.publishing.write import SiteWriter
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Photo, Site

Progress = Callable[[int, int, str], None]
"""Told how many pages are done, how many there are, and which is next."""


@dataclass(frozen=True)
class Outcome:
    """What became of a publication. ``front`` is the page to open, None when nothing was written."""

    review: Review
    findings: tuple[Finding, ...]
    front: Path | None
    files: int = 0
    notes: tuple[str, ...] = ()


def publish(folder: ContentFolder, target: Path, *, draft: bool, progress: Progress) -> Outcome:
    """Check the folder and, if nothing is wrong or it is a draft, write its site to the target.

    A folder of which something could not be read is never published. Raises NotReplaced when the target cannot
    be written; the old site is then as it was.
    """
    found = review(folder)
    pictures = PictureFiles(target)
    troubles = tuple(_picture_troubles(found, folder, pictures))
    theme_trouble = _theme_trouble(found.site)
    findings = tuple(sorted((*found.findings, *troubles, *theme_trouble), key=lambda each: each.place))
    wrong = any(each.severity is Severity.WRONG for each in findings)
    if found.any_unread or theme_trouble or (wrong and not draft):
        return Outcome(found, findings, None)
    with SiteWriter(target, forbidden=(folder.root,)) as writer:
        files = 0
        for name, content in _files(found, folder, pictures, draft, progress):
            writer.write(name, content)
            files += 1
    return Outcome(found, findings, target / FRONT_PAGE, files, tuple(writer.notes))


def _files(
    found: Review, folder: ContentFolder, pictures: PictureFiles, draft: bool, progress: Progress
) -> Iterator[tuple[str, str | bytes]]:
    """Every file of the site with its content, page by page."""
    site = site_view(found.site, draft=draft)
    theme = found.site.theme
    total = len(found.tutorials) + 2
    cards: list[TutorialCard] = []
    for done, computed in enumerate(found.tutorials):
        tutorial = computed.tutorial
        progress(done, total, tutorial.title)
        address = page_address(tutorial)
        root = "../" * address.count("/")
        page = tutorial_page(computed, site, root, _shown(computed, folder, pictures, root))
        if tutorial.key not in {card.key for card in cards}:
            show = _shown(computed, folder, pictures, "")
            cards.append(front_card(page, computed, show(tutorial.photo) if tutorial.photo else None))
        yield address, render_tutorial(page, theme)
        if page.chapters:
            yield f"{address.rpartition('/')[0]}/{page.chapters}", chapters(tutorial)
    progress(len(found.tutorials), total, "front page and glossary")
    yield FRONT_PAGE, render_front(FrontView(site, tuple(cards)), theme)
    if found.site.glossary:
        yield GLOSSARY_PAGE, render_glossary(_glossary(found.site, site), theme)
    for name, path in theme_assets(theme).items():
        content = path.read_bytes()
        if name == "style.css":
            content += b"\n" + STYLE_SHEET.encode("utf-8")
        yield f"{THEME_FOLDER}/{name}", content
    yield from pictures.files().items()
    progress(total, total, "")


def site_view(site: Site, *, draft: bool) -> SiteView:
    """What all pages share."""
    return SiteView(
        title=site.title,
        author=site.author,
        about=render(site.about.text) if site.about else Markup(),
        note=site.note,
        language=site.language,
        units_first=site.first_system,
        draft=draft,
        glossary=bool(site.glossary),
    )


def _glossary(site: Site, view: SiteView) -> GlossaryView:
    entries = (
        GlossaryEntry(
            term=term.term,
            anchor=re.sub(r"[^a-z0-9]+", "-", term.term.lower()).strip("-") or "term",
            means=render_inline(term.means.text),
            us=term.us,
            uk=term.uk,
        )
        for term in site.glossary
    )
    return GlossaryView(view, tuple(sorted(entries, key=lambda entry: entry.term.casefold())))


def _shown(
    computed: Computed, folder: ContentFolder, pictures: PictureFiles, root: str
) -> Callable[[Photo], Picture | None]:
    def show(photo: Photo) -> Picture | None:
        path = _path(photo, computed, folder)
        return pictures.view(path, photo.shows, root) if path is not None else None

    return show


def _path(photo: Photo, computed: Computed, folder: ContentFolder) -> Path | None:
    return folder.file(f"tutorials/{computed.tutorial.key}/photos/{photo.file}")


def _picture_troubles(found: Review, folder: ContentFolder, pictures: PictureFiles) -> Iterator[Finding]:
    """A finding for every photo that is there but cannot be shown."""
    photos = [(photo, _path(photo, computed, folder)) for computed in found.tutorials for photo in _photos(computed)]
    pictures.prepare_all(path for _, path in photos if path is not None)
    for photo, path in photos:
        made = pictures.prepared(path) if path is not None else None
        if isinstance(made, Trouble):
            yield Finding("picture-broken", Severity.WRONG, photo.place, made.message, photo.file)


def _photos(computed: Computed) -> Iterator[Photo]:
    if computed.tutorial.photo is not None:
        yield computed.tutorial.photo
    for step in computed.tutorial.steps:
        yield from step.photos


def _theme_trouble(site: Site) -> tuple[Finding, ...]:
    try:
        theme_assets(site.theme)
    except ThemeNotFoundError as trouble:
        return (Finding("theme-unknown", Severity.WRONG, site.place, f"{trouble}.".capitalize(), site.theme),)
    return ()
