"""What a file holds, before anyone asks what it means: texts, lists and tables, each with its place."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from sitegen.findings import Place
from sitegen.reading.offsets import Runs, Source, place_in


@dataclass(frozen=True, slots=True)
class Scalar:
    """A text as the author wrote it, free of quotation marks and indentation. It is never read as a number or date.

    ``place`` is that of its first character, inside any quotation mark. ``quoted`` says that it stood in quotes or
    under ``|`` or ``>``.
    """

    text: str
    place: Place
    quoted: bool = False
    _source: Source | None = field(default=None, repr=False, compare=False)
    _runs: Runs = field(default=(), repr=False, compare=False)
    _from: Scalar | None = field(default=None, repr=False, compare=False)
    _offset: int = field(default=0, repr=False, compare=False)

    def part(self, start: int, end: int) -> Scalar:
        """``text[start:end]`` as a text of its own that still knows its place in the file."""
        return Scalar(self.text[start:end], self.at(start, end), self.quoted, _from=self, _offset=start)

    def at(self, start: int = 0, end: int | None = None) -> Place:
        """The place in the file of ``text[start:end]``; offsets outside of the text are taken as its ends."""
        size = len(self.text)
        first = min(max(start, 0), size)
        last = size if end is None else min(max(end, first), size)
        if self._from is not None:
            return self._from.at(self._offset + first, self._offset + last)
        if self._source is not None and self._runs:
            return place_in(self._source, self._runs, first, last)
        column = self.place.column + first
        return replace(self.place, column=column, end_column=column + last - first)

    def line_starts(self) -> tuple[int, ...]:
        """The offsets in the text at which a further line of the file begins, if it is spread over several."""
        pairs = zip(self._runs, self._runs[1:], strict=False)
        return tuple(run.text for before, run in pairs if before.width == 0 and run.width)


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list."""

    items: tuple[Node, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Entry:
    """A key and what stands behind it."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Mapping:
    """Keys with their values, in the author's order; no key is there twice."""

    entries: tuple[Entry, ...]
    place: Place

    def get(self, name: str) -> Entry | None:
        """The entry of a key, or None."""
        return next((entry for entry in self.entries if entry.key.text == name), None)

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys in the author's order."""
        return tuple(entry.key.text for entry in self.entries)


@dataclass(frozen=True, slots=True)
class Empty:
    """Nothing, where a value could have been: behind a colon or a dash."""

    place: Place


Node = Scalar | Sequence | Mapping | Empty


@dataclass(frozen=True, slots=True)
class Table:
    """The cells of a spreadsheet file. Every row has as many cells as the header."""

    header: tuple[Scalar, ...]
    rows: tuple[tuple[Scalar, ...], ...]
    place: Place
