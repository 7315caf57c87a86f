"""Pages as data in JSON-LD 1.1 (W3C) with the vocabulary of schema.org: HowTo, WebSite, ItemList, DefinedTermSet.

Durations are those of ISO 8601: ``PT3H20M``.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from markupsafe import Markup

from sitegen.publishing.amounts import number
from sitegen.publishing.discovery.addresses import absolute
from sitegen.publishing.discovery.head import shortened
from sitegen.publishing.picture_views import Picture
from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.spoken import speech_of
from sitegen.publishing.views import (
    FRONT_PAGE,
    Fabric,
    GlossaryEntry,
    GlossaryView,
    SiteView,
    StepCard,
    TutorialCard,
    TutorialView,
)

_CONTEXT = "https://schema.org"
_STEP_TEXT = 80
"""Letters of a step's text: its whole text stands on the page, at the address of the step."""


def how_to(page: TutorialView, path: str, address: str) -> Markup:
    """The tutorial as a HowTo: its steps, supplies, tools and times. Addresses only where the site knows its own."""
    data: dict[str, Any] = {
        "@context": _CONTEXT,
        "@type": "HowTo",
        "name": page.title,
        "description": plain_text(page.summary),
        "inLanguage": page.site.language,
        "creditText": page.site.author,
        "educationalLevel": page.level,
        "totalTime": duration(page.minutes),
        "supply": [*(_cloth(fabric, page) for fabric in page.fabrics), *_supplies(page)],
        "tool": [{"@type": "HowToTool", "name": tool} for tool in page.tools],
        "step": [_step(card, page, path, address) for card in page.cards],
    }
    if address:
        data |= {"url": absolute(address, path), "image": _image(page.picture, page.root, address)}
    return _script(data)


def website(site: SiteView, cards: Sequence[TutorialCard], address: str) -> Markup:
    """The front page: the site, and the list of its tutorials. Empty without an address, of which all of it speaks."""
    if not address:
        return Markup()
    home = absolute(address, FRONT_PAGE)
    items = [
        {"@type": "ListItem", "position": place, "name": card.title, "url": absolute(address, card.href)}
        for place, card in enumerate(cards, 1)
    ]
    described = {
        "@type": "WebSite",
        "@id": f"{home}#site",
        "url": home,
        "name": site.title,
        "description": plain_text(site.about),
        "inLanguage": site.language,
        "creditText": site.author,
    }
    named = speech_of(site).say("Tutorials")
    listed = {"@type": "ItemList", "name": named, "numberOfItems": len(items), "itemListElement": items}
    return _script({"@context": _CONTEXT, "@graph": [described, listed]})


def term_set(view: GlossaryView, path: str, address: str) -> Markup:
    """The glossary as a set of defined terms."""
    return _script(
        {
            "@context": _CONTEXT,
            "@type": "DefinedTermSet",
            "name": speech_of(view.site).say("Glossary"),
            "inLanguage": view.site.language,
            "url": absolute(address, path) if address else None,
            "hasDefinedTerm": [_term(entry, path, address) for entry in view.entries],
        }
    )


def duration(minutes: int | None) -> str:
    """A time as ISO 8601 has it: ``PT45M``, ``PT2H``, ``PT3H20M``; empty for None."""
    if minutes is None:
        return ""
    hours, rest = divmod(minutes, 60)
    return f"PT{f'{hours}H' if hours else ''}{f'{rest}M' if rest or not hours else ''}"


def _step(card: StepCard, page: TutorialView, path: str, address: str) -> dict[str, Any]:
    text = shortened(plain_text(card.prose), _STEP_TEXT)
    direction = {"@type": "HowToDirection", "text": text, "performTime": duration(card.minutes)}
    step: dict[str, Any] = {
        "@type": "HowToStep",
        "position": card.number,
        "name": card.title,
        "itemListElement": _filled(direction),
    }
    if address:
        step["url"] = absolute(address, f"{path}#{card.anchor}")
        step["image"] = _image(card.pictures[0], page.root, address) if card.pictures else None
    return step


def _cloth(fabric: Fabric, page: TutorialView) -> dict[str, Any]:
    speech = speech_of(page.site)
    buy = plain_text(number(fabric.buy, page.site.units_first, speech).plain) if fabric.buy is not None else ""
    return {"@type": "HowToSupply", "name": fabric.name, "requiredQuantity": buy}


def _supplies(page: TutorialView) -> list[dict[str, Any]]:
    first = page.site.units_first
    return [
        {
            "@type": "HowToSupply",
            "name": f"{supply.item}, {supply.size.text(first)}" if supply.size else supply.item,
            "requiredQuantity": supply.amount.text(first) if supply.amount else "",
        }
        for supply in page.supplies
    ]


def _term(entry: GlossaryEntry, path: str, address: str) -> dict[str, Any]:
    names = dict.fromkeys(name.strip() for names in (entry.us, entry.uk) for name in names.split(","))
    return {
        "@type": "DefinedTerm",
        "name": entry.term,
        "description": plain_text(entry.means),
        "alternateName": [name for name in names if name and name != entry.term],
        "url": absolute(address, f"{path}#{entry.anchor}") if address else None,
    }


def _image(picture: Picture | None, root: str, address: str) -> str:
    return absolute(address, picture.src.removeprefix(root)) if picture is not None else ""


def _script(data: dict[str, Any]) -> Markup:
    """The data as text that a script element may hold: nothing in it can end the element."""
    text = json.dumps(_filled(data), ensure_ascii=False, separators=(",", ":"))
    return Markup(text.replace("<", "\\u003c").replace(">", "\\u003e"))


def _filled(data: Any) -> Any:
    """The data without what is empty: an empty text says nothing in this vocabulary."""
    if isinstance(data, dict):
        return {key: _filled(value) for key, value in data.items() if value not in ("", None, [])}
    return [_filled(each) for each in data] if isinstance(data, list) else data
