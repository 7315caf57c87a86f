"""What is wrong with the paths that names of an author become, before any file is written."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks import Review
from sitegen.findings import Finding, Place, Severity
from sitegen.publishing.class_pages.student import class_addresses
from sitegen.publishing.not_replaced import NotReplaced
from sitegen.publishing.site_look import SiteLook
from sitegen.publishing.site_place import folded, site_path
from sitegen.publishing.themes import THEMES_FOLDER
from sitegen.publishing.tutorial_page import page_address
from sitegen.publishing.views import FRONT_PAGE, THEME_FOLDER
from sitegen.publishing.whole_site import folder_of
from sitegen.reading import ContentFolder


def path_findings(found: Review, look: SiteLook | None, folder: ContentFolder) -> Iterator[Finding]:
    """A finding for every name of an author that gives a path which no site can hold, or the path of another file."""
    taken: dict[str, Place] = {}
    for path, place, check in (*_of_content(found), *_of_theme(look, folder)):
        try:
            site_path(path)
        except NotReplaced as refusal:
            yield Finding(check, Severity.WRONG, place, str(refusal), path)
            continue
        before = taken.setdefault(folded(path), place)
        if before != place:
            message = f"This and {before.file} both become {path} in the site. Give one of them another name."
            yield Finding("name-twice", Severity.WRONG, place, message, path)


def _of_content(found: Review) -> Iterator[tuple[str, Place, str]]:
    """The path of each page that is called after something, where that stands, and which check finds fault with it."""
    for site in (found.site, *(each.site for each in found.translations)):
        yield f"{folder_of(site)}{FRONT_PAGE}", site.place, "bad-name"
    for each in found.tutorials:
        yield page_address(each.tutorial), each.tutorial.place, "bad-name"
    shown = [each.written for each in found.classes if each.written.on_site]
    addresses = class_addresses(each.key for each in shown)
    for written in shown:
        yield addresses[written.key], written.place, "bad-name"


def _of_theme(look: SiteLook | None, folder: ContentFolder) -> Iterator[tuple[str, Place, str]]:
    if look is not None:
        place = folder.place(f"{THEMES_FOLDER}/{look.theme.key}")
        yield from ((f"{THEME_FOLDER}/{name}", place, "theme-broken") for name in look.theme.files())
