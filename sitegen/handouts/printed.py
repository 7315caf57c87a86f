"""What a printed handout was printed with: it lies as a file in the PDF itself, so that a slip can tell what moved.

Format 1, JSON in UTF-8: the class, the mark, how the handout was wanted; ``record`` is a record of published numbers
(see ``publishing.releases``) that holds the numbers of this print in its sizes; ``cards`` holds by number the title of
each card, a digest of what its author wrote, the name of its step file without its number, and the names of the
numbers on it. Older prints lack the last two, and their language.
"""

from __future__ import annotations

import json
import logging
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from hashlib import blake2b
from io import BytesIO
from pathlib import PurePosixPath
from typing import Any

from sitegen.handouts.model import Copy, Handout, Paper
from sitegen.handouts.needed import NoPdf
from sitegen.handouts.source import Source
from sitegen.publishing import PublishedNumber, PublishedPage, Record, record_in, record_text
from sitegen.quantities import System
from sitegen.tutorial import Step

NUMBERS_FILE = "numbers.json"
"""The name under which a PDF carries it."""
_FORMAT = 1
_LEADING_NUMBER = re.compile(r"^\d+[-_ ]*")
_ABOUT = "The numbers that this handout was printed with. sitegen errata compares them with those of today."


@dataclass(frozen=True, slots=True)
class PrintedCard:
    """A card as it was printed."""

    title: str
    digest: str
    step: str = ""
    """The name of its file without ending and number; empty where the print does not say."""
    uses: tuple[str, ...] | None = None
    """The names of the numbers on it; None where the print does not say."""


@dataclass(frozen=True)
class Printed:
    """What a handout was printed with."""

    class_key: str
    mark: str
    day: date
    paper: Paper
    copy: Copy
    units: tuple[System, ...]
    page: PublishedPage
    cards: Mapping[int, PrintedCard]
    language: str = ""
    """Of its sheets; empty where the print does not say: then it is the first of the site."""


class NotPrintedHere(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why a file is no handout of this program, in words."""


def printed_with(handout: Handout, source: Source, day: date) -> Printed:
    """What a handout is printed with."""
    used = dict.fromkeys(name for names in (source.numbers.asked, source.before.asked) for name in names)
    views = {name: view for name in used if (view := source.numbers.view(name)) is not None}
    page = replace(
        source.page.published,
        sizes=handout.sizes,
        numbers={name: PublishedNumber(view.words, view.values) for name, view in sorted(views.items())},
    )
    uses = {card.number: card.uses for card in handout.cards}
    return Printed(
        class_key=source.cls.written.key,
        mark=handout.mark,
        day=day,
        paper=handout.wanted.paper,
        copy=handout.wanted.copy,
        units=handout.wanted.units,
        page=page,
        cards={
            step.number: PrintedCard(step.title, _digest(step), _step_name(step), uses[step.number])
            for step in source.steps
        },
        language=handout.language,
    )


def printed_as_text(printed: Printed, path: str) -> str:
    """The same as the text of its file; ``path`` is that of the page in the site."""
    data = {
        "about": _ABOUT,
        "made_by": "sitegen",
        "format": _FORMAT,
        "class": printed.class_key,
        "mark": printed.mark,
        "day": printed.day.isoformat(),
        "paper": printed.paper.value,
        "copy": printed.copy.value,
        "language": printed.language,
        "units": [unit.value for unit in printed.units],
        "cards": {
            str(number): [card.title, card.digest, card.step, list(card.uses or ())]
            for number, card in printed.cards.items()
        },
        "record": json.loads(record_text(Record(printed.day, {path: printed.page}))),
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def read_printed(pdf: bytes) -> Printed:
    """What the handout in the bytes of a PDF was printed with. Raises NotPrintedHere for any other file."""
    try:
        data = json.loads(_attached(pdf))
        record = record_in(json.dumps(data["record"]).encode())
        if data["made_by"] != "sitegen" or data["format"] != _FORMAT or record is None or len(record.pages) != 1:
            raise NotPrintedHere("what it carries is of another version of this program")
        return _read(data, next(iter(record.pages.values())))
    except (KeyError, TypeError, ValueError, AttributeError, IndexError):
        raise NotPrintedHere("the numbers in it are damaged") from None


def _read(data: Mapping[str, Any], page: PublishedPage) -> Printed:
    return Printed(
        class_key=str(data["class"]),
        mark=str(data["mark"]),
        day=date.fromisoformat(data["day"]),
        paper=Paper(data["paper"]),
        copy=Copy(data["copy"]),
        units=tuple(System(unit) for unit in data["units"]),
        page=page,
        cards={int(number): _card(*card) for number, card in data["cards"].items()},
        language=str(data.get("language", "")),
    )


def _card(title: str, digest: str, step: str = "", uses: list[str] | None = None) -> PrintedCard:
    return PrintedCard(str(title), str(digest), str(step), tuple(map(str, uses)) if uses is not None else None)


def _attached(pdf: bytes) -> bytes:
    try:
        from pypdf import PdfReader
        from pypdf.errors import PyPdfError
    except ImportError:
        raise NoPdf.without("pypdf") from None
    if not pdf.startswith(b"%PDF-"):
        raise NotPrintedHere("it is no PDF")
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # what is wrong with a file is told in our own words
    try:
        found = PdfReader(BytesIO(pdf)).attachments.get(NUMBERS_FILE, ())
    except (PyPdfError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        raise NotPrintedHere("it is a damaged PDF") from None
    if not found:
        raise NotPrintedHere("it carries no numbers of this program")
    return bytes(found[0])


def _step_name(step: Step) -> str:
    stem = PurePosixPath(step.file).stem
    return _LEADING_NUMBER.sub("", stem) or stem


def _digest(step: Step) -> str:
    return blake2b("\n".join(_written(step)).encode(), digest_size=6).hexdigest()


def _written(step: Step) -> Iterator[str]:
    """Everything on a card that its author wrote for students; references stand for their numbers."""
    yield step.title
    yield from (each.text for words in (step.needs, step.tools, step.cautions) for each in words)
    for text in step.prose():
        if text is not step.teacher:
            yield text.text
    for join in step.every_join():
        yield " ".join(name.name for name in join.names())
        yield f"{join.stitch.text if join.stitch else ''} {join.stitch_length_mm} {join.stitch_width_mm} {join.press}"
