"""The record as a file of the site, ``numbers.json``, written for programs and for the next run.

Format 1, JSON in UTF-8: ``released`` is a day; ``pages`` holds by address the ``numbers`` by name, each with its
``words`` and its ``values``, one for all ``sizes`` or one for each in order; a value is its words in inches and in
metric, or one text where they are the same. ``releases`` holds what moved, the newest first, in the same way.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from sitegen.publishing.not_replaced import plain_words
from sitegen.publishing.releases.record import (
    NumberChange,
    PageChanges,
    PublishedNumber,
    PublishedPage,
    Record,
    Release,
    SizeChange,
    Status,
)
from sitegen.publishing.views import Both

RECORD_FILE = "numbers.json"
_FORMAT = 1
_ABOUT = "Every number that this site has published, and what moved in the last releases. Read by the next release."
_COUNTS_AS_FIRST = "so this release counts as the first one, and no page tells what moved"


@dataclass(frozen=True, slots=True)
class StoredRecord:
    """What a site folder knows of its last release."""

    record: Record | None = None
    foreign: bool = False
    """Whether a file of that name stands there that is no record: it stays, and no record is written."""
    note: str = ""
    """What the author should know about it, in a sentence; empty when all is well."""


def read_record(site: Path) -> StoredRecord:
    """The record of the site that stands in a folder. A file that cannot be understood gives a note, never an error."""
    place = site / RECORD_FILE
    try:
        data = json.loads(place.read_bytes())
    except FileNotFoundError:
        return StoredRecord()
    except NotADirectoryError:
        return StoredRecord()
    except OSError as error:
        return _foreign(f"cannot be read ({plain_words(error)})")
    except (ValueError, RecursionError):
        return _foreign("is no JSON")
    if not isinstance(data, dict) or data.get("made_by") != "sitegen":
        return _foreign("was not written by sitegen")
    if data.get("format") != _FORMAT:
        note = f"{RECORD_FILE} has the format of another version of sitegen, {_COUNTS_AS_FIRST}."
        return StoredRecord(note=note)
    try:
        return StoredRecord(_record(data))
    except (KeyError, TypeError, ValueError, AttributeError):
        note = f"{RECORD_FILE} is damaged, {_COUNTS_AS_FIRST}."
        return StoredRecord(note=note)


def record_in(data: bytes) -> Record | None:
    """The record in the bytes of such a file, wherever they were kept; None when they are not one of this format."""
    try:
        found = json.loads(data)
        ours = found.get("made_by") == "sitegen" and found.get("format") == _FORMAT
        return _record(found) if ours else None
    except (KeyError, TypeError, ValueError, AttributeError, RecursionError):
        return None


def record_text(record: Record) -> str:
    """The record as the text of its file: the same record gives the same text."""
    data = {
        "about": _ABOUT,
        "made_by": "sitegen",
        "format": _FORMAT,
        "released": record.released.isoformat(),
        "pages": {address: _page_data(page) for address, page in sorted(record.pages.items())},
        "releases": [_release_data(release) for release in record.releases],
    }
    return json.dumps(data, ensure_ascii=False, indent=0, separators=(",", ":")) + "\n"


def _foreign(why: str) -> StoredRecord:
    note = (
        f"{RECORD_FILE} in the folder of the site {why}. It was left as it is, so no record of this release is kept, "
        "and no page tells what moved. Move the file away, then publish again."
    )
    return StoredRecord(foreign=True, note=note)


def _page_data(page: PublishedPage) -> dict[str, Any]:
    return {
        "tutorial": page.tutorial,
        "view": page.view,
        "title": page.title,
        "sizes": list(page.sizes),
        "mark": page.mark,
        "published": page.published.isoformat(),
        "updated": page.updated.isoformat(),
        "numbers": {
            name: {"words": number.words, "values": [_both_data(value) for value in number.values]}
            for name, number in sorted(page.numbers.items())
        },
    }


def _release_data(release: Release) -> dict[str, Any]:
    return {
        "day": release.day.isoformat(),
        "since": release.since.isoformat(),
        "pages": [
            {
                "address": page.address,
                "tutorial": page.tutorial,
                "view": page.view,
                "title": page.title,
                "status": page.status.value,
                "new_sizes": list(page.new_sizes),
                "gone_sizes": list(page.gone_sizes),
                "numbers": [_change_data(change) for change in page.numbers],
            }
            for page in release.pages
        ],
    }


def _change_data(change: NumberChange) -> dict[str, Any]:
    sizes = [
        {
            "size": each.size,
            "before": None if each.before is None else _both_data(each.before),
            "after": None if each.after is None else _both_data(each.after),
        }
        for each in change.sizes
    ]
    return {"name": change.name, "words": change.words, "sizes": sizes}


def _both_data(both: Both) -> str | list[str]:
    return both.inches if both.alike else [both.inches, both.metric]


# Reading back. What is not as it was written raises one of KeyError, TypeError, ValueError and AttributeError.


def _record(data: Mapping[str, Any]) -> Record:
    return Record(
        date.fromisoformat(data["released"]),
        {_text(address): _page(page) for address, page in data["pages"].items()},
        tuple(_release(release) for release in data["releases"]),
    )


def _page(data: Mapping[str, Any]) -> PublishedPage:
    sizes = _texts(data["sizes"])
    numbers = {name: _number(number, len(sizes)) for name, number in data["numbers"].items()}
    return PublishedPage(
        tutorial=_text(data["tutorial"]),
        view=_text(data["view"]),
        title=_text(data["title"]),
        sizes=sizes,
        numbers=numbers,
        mark=_text(data["mark"]),
        published=date.fromisoformat(data["published"]),
        updated=date.fromisoformat(data["updated"]),
    )


def _number(data: Mapping[str, Any], size_count: int) -> PublishedNumber:
    values = tuple(_both(value) for value in data["values"])
    if len(values) not in (1, size_count):
        raise ValueError("neither one value nor one for each size")
    return PublishedNumber(_text(data["words"]), values)


def _release(data: Mapping[str, Any]) -> Release:
    pages = tuple(_changes(page) for page in data["pages"])
    return Release(date.fromisoformat(data["day"]), date.fromisoformat(data["since"]), pages)


def _changes(data: Mapping[str, Any]) -> PageChanges:
    return PageChanges(
        address=_text(data["address"]),
        tutorial=_text(data["tutorial"]),
        view=_text(data["view"]),
        title=_text(data["title"]),
        status=Status(data["status"]),
        numbers=tuple(_change(change) for change in data["numbers"]),
        new_sizes=_texts(data["new_sizes"]),
        gone_sizes=_texts(data["gone_sizes"]),
    )


def _change(data: Mapping[str, Any]) -> NumberChange:
    sizes = tuple(
        SizeChange(
            _text(each["size"]),
            None if each["before"] is None else _both(each["before"]),
            None if each["after"] is None else _both(each["after"]),
        )
        for each in data["sizes"]
    )
    return NumberChange(_text(data["name"]), _text(data["words"]), sizes)


def _both(data: object) -> Both:
    if isinstance(data, str):
        return Both(data, data)
    if not isinstance(data, list) or len(data) != 2:
        raise TypeError("no value in two units")
    return Both(_text(data[0]), _text(data[1]))


def _texts(data: object) -> tuple[str, ...]:
    if not isinstance(data, list):
        raise TypeError("no list")
    return tuple(_text(each) for each in data)


def _text(data: object) -> str:
    if not isinstance(data, str):
        raise TypeError("no text")
    return data
