"""The search over the whole site: a list of everything for readers, and the same with its texts for the script.

The data are a script that sets a name, so that a page opened from a disk can load them; nothing is asked of a server.
"""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum

from sitegen.publishing.class_pages.views import ClassPage
from sitegen.publishing.page_words import words_of_card
from sitegen.publishing.plain_text import plain_text
from sitegen.publishing.techniques import TechniqueView
from sitegen.publishing.views import GLOSSARY_PAGE, GlossaryEntry, GlossaryView, SiteView, TutorialView
from sitegen.quantities import ENGLISH, English
from sitegen.tutorial import Computed

SEARCH_PAGE = "search.html"
SEARCH_DATA = "search-data.js"
_OTHER_LETTERS = "0–9"
"""Where what begins with no letter is listed."""


class EntryKind(Enum):
    """What can be found."""

    TUTORIAL = "tutorial"
    STEP = "step"
    TECHNIQUE = "technique"
    TERM = "word"
    SUPPLY = "supply"
    CLASS = "class"


_WEIGHTS = {
    EntryKind.TUTORIAL: 100,
    EntryKind.TECHNIQUE: 70,
    EntryKind.TERM: 70,
    EntryKind.STEP: 30,
    EntryKind.SUPPLY: 10,
    EntryKind.CLASS: 100,
}
"""How much a hit in the title counts, where one in a text counts one. Half of each is more than all of the next."""


@dataclass(frozen=True, slots=True)
class Entry:
    """Something that can be found."""

    kind: EntryKind
    title: str
    href: str
    """From the folder of the site."""
    text: str = ""
    under: str = ""
    """The title of the tutorial that it belongs to."""


@dataclass(frozen=True, slots=True)
class SearchView:
    """The page to search on."""

    site: SiteView
    letters: tuple[tuple[str, tuple[Entry, ...]], ...]
    """Everything from A to Z."""
    root: str = ""


def entries_of(
    pages: Mapping[str, TutorialView],
    computed: Mapping[str, Computed],
    glossary: GlossaryView,
    techniques: Iterable[TechniqueView],
    language: English = ENGLISH,
) -> tuple[Entry, ...]:
    """Everything that can be found. What several views of a tutorial share is found on the first page that has it."""
    found: list[Entry] = []
    told: set[tuple[str, ...]] = set()
    for address, page in pages.items():
        tutorial = computed[address].tutorial
        files = {step.number: step.file for step in tutorial.steps}
        for key, entry in _of_tutorial(address, page, files, language):
            if (tutorial.key, *key) not in told:
                told.add((tutorial.key, *key))
                found.append(entry)
    found += (
        Entry(EntryKind.TECHNIQUE, each.name, each.address, plain_text(each.term.means) if each.term else "")
        for each in techniques
    )
    found += (
        Entry(EntryKind.TERM, _with_other_names(term), f"{GLOSSARY_PAGE}#{term.anchor}", plain_text(term.means))
        for term in glossary.entries
    )
    return tuple(found)


def class_entries(classes: Iterable[ClassPage]) -> tuple[Entry, ...]:
    """The classes that have a page."""
    return tuple(
        Entry(EntryKind.CLASS, each.title, each.address, " ".join(filter(None, (each.link.first_day, each.where))))
        for each in classes
    )


def search_view(site: SiteView, entries: Iterable[Entry]) -> SearchView:
    """Everything in the order of the alphabet, accents aside."""
    letters: dict[str, list[Entry]] = {}
    for entry in sorted(entries, key=lambda each: (_folded(each.title), each.under, each.href)):
        first = _folded(entry.title)[:1].upper()
        letters.setdefault(first if first.isalpha() else _OTHER_LETTERS, []).append(entry)
    return SearchView(site, tuple((letter, tuple(each)) for letter, each in sorted(letters.items())))


def search_data(entries: Iterable[Entry], language: English = ENGLISH) -> str:
    """The data of the script. A page stands once, and its entries say where on it they are."""
    kinds = list(EntryKind)
    pages: dict[tuple[str, str], int] = {}
    rows: list[list[object]] = []
    for entry in entries:
        path, mark, anchor = entry.href.partition("#")
        page = pages.setdefault((entry.under, path), len(pages))
        rows.append([kinds.index(entry.kind), entry.title, f"{mark}{anchor}", page, entry.text])
    data = {
        "kinds": [language.say(kind.value) for kind in kinds],
        "weights": [_WEIGHTS[kind] for kind in kinds],
        "pages": [list(page) for page in pages],
        "entries": rows,
    }
    return f"var searchData={json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n"


def _of_tutorial(
    address: str, page: TutorialView, files: Mapping[int, str], language: English
) -> Iterator[tuple[tuple[str, ...], Entry]]:
    """What a page holds, each with what tells it from everything else of its tutorial."""
    about = " ".join([plain_text(page.summary), *(plain_text(line) for line in page.learn)])
    yield ("page",), Entry(EntryKind.TUTORIAL, page.title, address, about)
    for card in page.cards:
        at = f"{address}#{card.anchor}"
        yield (
            ("step", files[card.number]),
            Entry(EntryKind.STEP, card.title, at, words_of_card(card), page.title),
        )
    at = f"{address}#supplies"
    for supply in page.supplies:
        purpose = f"{language.say('for')} {supply.purpose}" if supply.purpose else ""
        measures = (each.text(page.site.units_first) for each in (supply.size, supply.amount) if each)
        text = ", ".join(filter(None, [*measures, purpose]))
        yield ("supply", supply.item, text), Entry(EntryKind.SUPPLY, supply.item, at, text, page.title)
    for fabric in page.fabrics:
        text = ", ".join(filter(None, [fabric.structure, plain_text(fabric.advice)]))
        yield (
            ("supply", fabric.name),
            Entry(EntryKind.SUPPLY, fabric.name, f"{address}#fabrics", text, page.title),
        )


def _with_other_names(term: GlossaryEntry) -> str:
    """``baste (tack)``: the term, and what it is called elsewhere."""
    names = (name.strip() for called in (term.us, term.uk) for name in called.split(","))
    others = [name for name in dict.fromkeys(names) if name and name != term.term]
    return f"{term.term} ({', '.join(others)})" if others else term.term


def _folded(text: str) -> str:
    """The text as an alphabet orders it."""
    letters = unicodedata.normalize("NFD", text.casefold())
    return "".join(letter for letter in letters if not unicodedata.combining(letter)).lstrip("“‘\"'")
