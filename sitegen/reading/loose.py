"""Single files outside of any content folder: a draft, a handout, captions, or what comes by standard input."""

from __future__ import annotations

from pathlib import Path

from sitegen.findings import Collector, Place
from sitegen.reading.bytes_of_file import CouldNotRead, bytes_of_file
from sitegen.reading.decode import decode
from sitegen.reading.offsets import Source

MOST_BYTES_OF_A_DRAFT = 50_000_000
"""The captions of a year's videos fit into this (common practice, no source)."""


class LooseFiles:
    """Reads files by the names that their user typed, line breaks as they are: offsets are those of the file."""

    def __init__(self) -> None:
        self._sources: dict[str, Source] = {}

    def text(self, name: str, data: bytes | None, collector: Collector) -> str | None:
        """The text of the file of this name, or of the bytes given instead; None if unreadable, which is collected."""
        if data is None:
            try:
                data = bytes_of_file(Path(name), named=Path(name), most=MOST_BYTES_OF_A_DRAFT)
            except CouldNotRead as trouble:
                collector.wrong(trouble.check, Place(name), trouble.message, unread=True)
                return None
            except ValueError:
                collector.wrong("file-missing", Place(name), "There is no such file.", unread=True)
                return None
        source, usable = decode(data, name, collector)
        self._sources[name] = source
        return source.text if usable else None

    def source_line(self, name: str, line: int) -> str:
        """One line of a file that was read; empty if there is none."""
        source = self._sources.get(name)
        return source.line(line) if source else ""
