"""The only door to an author's files."""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path

from sitegen.findings import Collector, Place
from sitegen.reading.bytes_of_file import CouldNotRead, bytes_of_file, why
from sitegen.reading.csv_rows import read_csv
from sitegen.reading.decode import MOST_BYTES, decode
from sitegen.reading.nodes import Mapping, Table
from sitegen.reading.offsets import LINE_END, Source
from sitegen.reading.yaml_file import read_yaml

_UNPRINTABLE = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff]")


class ContentFolder:
    """An author's folder. Names are relative to it, with ``/`` between folders; nothing outside of it is read.

    ``shown`` is the folder as its user named it: the file of every place begins with it.
    """

    def __init__(self, root: Path, shown: str) -> None:
        self._root = Path(os.path.realpath(root))
        self._shown = shown.rstrip("/")
        self._sources: dict[str, Source] = {}

    @property
    def root(self) -> Path:
        """The folder itself, links resolved."""
        return self._root

    def exists(self, relative: str) -> bool:
        """Whether a file or folder of this name is there. A link counts, so that reading it can say where it fails."""
        name = Path(os.path.normpath(relative))
        path = self._root / name
        try:
            inside = name == Path() or (name.parts[0] != ".." and self._inside(path.parent) is not None)
            return inside and os.path.lexists(path)
        except ValueError:
            return False

    def list(self, relative: str, collector: Collector, *, suffixes: tuple[str, ...] = ()) -> tuple[str, ...]:
        """The names of the files in a folder, in the order of their names, without hidden ones; none if it is missing.

        With ``suffixes`` whatever has such a name counts, also a folder: reading it says what is wrong.
        """
        wanted = tuple(suffix.casefold() for suffix in suffixes)
        return tuple(
            entry.name
            for entry in self._entries(relative, collector)
            if (entry.name.casefold().endswith(wanted) if wanted else not _is_folder(entry))
        )

    def folders(self, relative: str, collector: Collector) -> tuple[str, ...]:
        """The names of the folders in a folder, in order, without hidden ones; none if it is missing."""
        names = []
        for entry in self._entries(relative, collector):
            inner = f"{relative}/{entry.name}" if relative else entry.name
            if self._inside(Path(entry.path)) is None:
                self._say_outside(inner, collector)
            elif _is_folder(entry):
                names.append(entry.name)
            elif not os.path.exists(entry.path):
                self._wrong("file-missing", inner, "This link leads to nothing. Take it out or mend it.", collector)
        return tuple(names)

    def yaml(self, relative: str, collector: Collector, *, may_be_empty: bool = False) -> Mapping | None:
        """The keys and values of a YAML file; None if it cannot be used, which the collector is told.

        A file that ``may_be_empty`` and is gives None without a word.
        """
        source = self._source(relative, collector)
        return None if source is None else read_yaml(source, collector, may_be_empty=may_be_empty)

    def csv(self, relative: str, collector: Collector) -> Table | None:
        """The cells of a spreadsheet file; None if it cannot be used, which the collector is told."""
        source = self._source(relative, collector, spreadsheet=True)
        return None if source is None else read_csv(source, collector)

    def text(self, relative: str, collector: Collector) -> str | None:
        """The text of a file with plain line breaks; None if it cannot be used, which the collector is told."""
        source = self._source(relative, collector)
        return None if source is None else LINE_END.sub("\n", source.text)

    def file(self, relative: str) -> Path | None:
        """Where a file is; None if there is none of this name, or if it lies outside of the folder."""
        path = self._inside(self._root / relative)
        try:
            return path if path is not None and path.is_file() else None
        except (OSError, ValueError):
            return None

    def no_file(self, relative: str) -> str:
        """Why ``file`` has none of a name that is there, in words that follow the name; empty where nothing is."""
        named = self._root / relative
        path = self._inside(named)
        if path is None:
            return "leads out of the content folder, and only files inside it are read. Put a copy of it inside."
        try:
            return "is a folder, not a file." if stat.S_ISDIR(os.stat(path).st_mode) else "is not an ordinary file."
        except (FileNotFoundError, NotADirectoryError):
            return "is a link that leads to nothing. Take it out or mend it." if os.path.islink(named) else ""
        except OSError as error:
            return f"cannot be opened: {why(error)}."
        except ValueError:
            return ""

    def place(self, relative: str) -> Place:
        """The first character of a file, for what is to be said of the file as a whole."""
        return Place(self._name(relative))

    def source_line(self, shown_file: str, line: int) -> str:
        """The text of one line of a file that was read; empty if it was not, or has no such line."""
        source = self._sources.get(shown_file)
        return source.line(line) if source else ""

    def _name(self, relative: str) -> str:
        name = f"{self._shown}/{relative}" if relative else self._shown
        return _UNPRINTABLE.sub(lambda match: f"\\x{ord(match[0]):02x}", name)

    def _inside(self, path: Path) -> Path | None:
        """The path with all links followed, unless it leaves the folder."""
        try:
            real = Path(os.path.realpath(path))
        except (OSError, ValueError):
            return None
        return real if real.is_relative_to(self._root) else None

    def _entries(self, relative: str, collector: Collector) -> tuple[os.DirEntry[str], ...]:
        if not self.exists(relative):
            return ()
        path = self._inside(self._root / relative)
        if path is None:
            self._say_outside(relative, collector)
            return ()
        try:
            with os.scandir(path) as entries:
                found = [entry for entry in entries if not entry.name.startswith(".")]
        except FileNotFoundError:
            self._wrong("file-missing", relative, "This link leads to nothing. Take it out or mend it.", collector)
            return ()
        except NotADirectoryError:
            self._wrong("folder-unreadable", relative, "A folder is expected here, but this is a file.", collector)
            return ()
        except OSError as error:
            self._wrong("folder-unreadable", relative, f"This folder cannot be opened: {why(error)}.", collector)
            return ()
        good = []
        for entry in sorted(found, key=lambda item: item.name):
            if _UNPRINTABLE.search(entry.name):
                message = "The name of this file or folder holds characters that cannot be shown. Give it a plain name."
                self._wrong("file-name", f"{relative}/{entry.name}" if relative else entry.name, message, collector)
            else:
                good.append(entry)
        return tuple(good)

    def _source(self, relative: str, collector: Collector, *, spreadsheet: bool = False) -> Source | None:
        data = self._bytes(relative, collector)
        if data is None:
            return None
        source, usable = decode(data, self._name(relative), collector, spreadsheet=spreadsheet)
        self._sources[source.shown] = source
        return source if usable else None

    def _bytes(self, relative: str, collector: Collector) -> bytes | None:
        if "\0" in relative:
            self._wrong("file-missing", relative, "There is no such file.", collector)
            return None
        path = self._inside(self._root / relative)
        if path is None:
            self._say_outside(relative, collector)
            return None
        try:
            return bytes_of_file(path, named=self._root / relative, most=MOST_BYTES)
        except CouldNotRead as trouble:
            other = f"{relative.removesuffix('.yaml')}.yml"
            misnamed = trouble.check == "file-missing" and relative.endswith(".yaml") and self.exists(other)
            hint = f" There is {Path(other).name}: call it {Path(relative).name}." if misnamed else ""
            self._wrong(trouble.check, relative, trouble.message + hint, collector)
            return None

    def _say_outside(self, relative: str, collector: Collector) -> None:
        message = "This leads out of the content folder, and only files inside it are read. Put a copy of it inside."
        self._wrong("outside-folder", relative, message, collector)

    def _wrong(self, check: str, relative: str, message: str, collector: Collector) -> None:
        collector.wrong(check, self.place(relative), message, unread=True)


def _is_folder(entry: os.DirEntry[str]) -> bool:
    try:
        return entry.is_dir()
    except OSError:
        return False
