"""The feed of the tutorials, in the Atom Syndication Format (RFC 4287)."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from sitegen.publishing.discovery.addresses import absolute
from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.views import FRONT_PAGE, SiteView, TutorialCard

FEED = "feed.xml"


@dataclass(frozen=True, slots=True)
class FeedEntry:
    """A tutorial with the days of its first release and of the last that changed what it tells."""

    card: TutorialCard
    published: date
    updated: date
    moved: str = ""
    """What its last release changed, in a sentence."""


def feed(site: SiteView, entries: Sequence[FeedEntry], address: str, released: date) -> str:
    """One entry a tutorial, what was updated last first. Ids are addresses, which stay from release to release."""
    root = ET.Element("feed", {"xmlns": "http://www.w3.org/2005/Atom", "xml:lang": site.language})
    _text(root, "id", absolute(address, FRONT_PAGE))
    _text(root, "title", site.title)
    _text(root, "updated", _moment(max([released, *(entry.updated for entry in entries)])))
    ET.SubElement(root, "link", rel="self", type="application/atom+xml", href=absolute(address, FEED))
    ET.SubElement(root, "link", rel="alternate", type="text/html", href=absolute(address, FRONT_PAGE))
    _text(ET.SubElement(root, "author"), "name", site.author)
    _text(root, "generator", site.generator)
    for entry in sorted(entries, key=lambda each: (-each.updated.toordinal(), each.card.title.casefold())):
        _entry(ET.SubElement(root, "entry"), entry, address)
    ET.indent(root, space=" ")
    return f'<?xml version="1.0" encoding="utf-8"?>\n{ET.tostring(root, encoding="unicode")}\n'


def _entry(element: ET.Element, entry: FeedEntry, address: str) -> None:
    home = absolute(address, entry.card.href)
    _text(element, "id", home)
    _text(element, "title", entry.card.title)
    _text(element, "published", _moment(entry.published))
    _text(element, "updated", _moment(entry.updated))
    ET.SubElement(element, "link", rel="alternate", type="text/html", href=home)
    _text(element, "summary", " ".join(filter(None, [plain_text(entry.card.summary), entry.moved])))


def _text(parent: ET.Element, tag: str, text: str) -> None:
    ET.SubElement(parent, tag).text = text


def _moment(day: date) -> str:
    """The beginning of a day in UTC, as RFC 3339 writes it: a release knows its day and not its hour."""
    return f"{day.isoformat()}T00:00:00Z"
