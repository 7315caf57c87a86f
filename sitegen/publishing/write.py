"""Writes a site to the disk, whole or not at all. No other module writes one.

The new site is built in a folder beside the old one, then the two change places in one act. A run that is killed
at any moment leaves a whole site, the old or the new one; the next run takes away what it left. This holds for a
killed program, not for a power cut: the files are handed to the system, which brings them to the disk in its time.

Knows nothing of tutorials or pages: only of files and their paths.
"""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from types import TracebackType
from typing import BinaryIO

from sitegen.publishing.exchange import Lock, put_in_place
from sitegen.publishing.leftovers import Beside, clear, clear_leftovers, fresh_name, kept_note
from sitegen.publishing.manifest import Manifest, content_digest, new_digest, write_manifest
from sitegen.publishing.not_replaced import NotReplaced, plain_words, shown
from sitegen.publishing.old_site import carry_over, old_site, refuse_foreign, remove_old
from sitegen.publishing.site_place import folded, site_path, site_place, ways_to

__all__ = ["NotReplaced", "SiteWriter"]

_PIECE = 1 << 20


class SiteWriter:
    """One new site for one folder, used in a ``with`` statement; from one thread only.

    Everything that stops it is a NotReplaced, raised on entering, by ``write`` and ``copy``, or on leaving; the
    old site is then as it was. ``forbidden`` names folders that the site may not be in, around or the same as.
    """

    def __init__(self, target: Path, *, forbidden: tuple[Path, ...] = ()) -> None:
        self._named = target
        self._forbidden = forbidden
        self._files: dict[str, str] = {}
        self._taken: dict[str, str] = {}
        self._folders: set[str] = set()
        self._refusal: NotReplaced | None = None
        self._inside = False
        self.notes: list[str] = []
        """What the author should know although the site was written, a sentence or two each."""

    def __enter__(self) -> SiteWriter:
        """Check the place, take the lock, clear up after runs that were stopped, and make the folder to build in."""
        self._target = site_place(self._named, self._forbidden)
        self._lock = Lock(self._target.with_name(f".{self._target.name}.lock"), self._target)
        self._build = fresh_name(self._target, Beside.BUILDING)
        self._lock.take()
        try:
            self.notes += clear_leftovers(self._target)
            refuse_foreign(self._target)
            with self._disk_words():
                self._build.mkdir()
                write_manifest(self._build, Manifest(complete=False))
        except BaseException:
            self._discard()
            raise
        self._inside = True
        return self

    def write(self, relative: str, content: str | bytes) -> None:
        """Write one file of the site; text becomes UTF-8. Raises NotReplaced for a path that cannot be or is taken."""
        with self._refusing(relative) as place:
            try:
                data = content.encode("utf-8") if isinstance(content, str) else content
            except UnicodeEncodeError:
                raise NotReplaced(f"{relative} holds characters that no text file can hold.") from None
            with self._disk_words(), self._new_file(place).open("xb") as file:
                file.write(data)
            self._files[relative] = content_digest(data)

    def copy(self, relative: str, source: Path) -> None:
        """Copy the content of a file into the site, without its date and rights. Raises NotReplaced as ``write`` does,
        and when the source is no file or cannot be read.
        """
        with self._refusing(relative) as place:
            try:
                if not stat.S_ISREG(source.stat().st_mode):
                    raise NotReplaced(f"{shown(source)} is not a file, so it cannot be copied into the site.")
                reading = source.open("rb")
            except OSError as error:
                raise _unreadable(source, error) from None
            digest = new_digest()
            with reading, self._disk_words(), self._new_file(place).open("xb") as writing:
                while piece := _piece(reading, source):
                    digest.update(piece)
                    writing.write(piece)
            self._files[relative] = digest.hexdigest()

    @property
    def written(self) -> Mapping[str, str]:
        """The path of each file written so far, and the digest of its content."""
        return dict(self._files)

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Put the new site in the place of the old one; after an exception, leave the old one and drop the new."""
        self._inside = False
        if kind is not None:
            self._discard()
            return
        try:
            if self._refusal is not None:
                raise self._refusal
            with self._disk_words():
                self._replace()
        except BaseException:
            self._discard()
            raise
        self._lock.release()

    def _replace(self) -> None:
        old = old_site(self._target)
        carried: frozenset[str] = frozenset()
        if old is not None:
            carried = carry_over(old, self._target, self._build, self._taken, self._folders)
        write_manifest(self._build, Manifest(self._files, carried))
        if os.path.lexists(self._target):
            shutil.copymode(self._target, self._build)
        replaced = put_in_place(self._build, self._target, fresh_name(self._target, Beside.BEFORE))
        if replaced is None:
            return
        # From here on the new site stands, so nothing may be refused any more, only told.
        known, seen = (Manifest(), None) if old is None else (old.manifest, old.entries)
        try:
            self.notes += kept_note(replaced, remove_old(replaced, self._target, known, seen))
        except OSError as failure:
            self.notes.append(f"The old site could not be taken away from {shown(replaced)}: {plain_words(failure)}.")

    def _discard(self) -> None:
        """Take away the folder of this run and let go of the lock. What cannot be taken away, the next run takes."""
        try:
            with suppress(OSError):
                if self._build.is_dir():
                    clear(self._build, self._target)
        finally:
            self._lock.release()

    @contextmanager
    def _refusing(self, relative: str) -> Iterator[Path]:
        """The place of a new file. A refusal is remembered: a site that lacks a file must not be put in place."""
        if not self._inside:
            raise RuntimeError("a SiteWriter writes only inside its with statement")
        try:
            self._take(site_path(relative))
            yield self._build / relative
        except NotReplaced as refusal:
            self._refusal = self._refusal or refusal
            raise

    def _take(self, relative: str) -> None:
        path, ways = folded(relative), [folded(way) for way in ways_to(relative)]
        before = self._taken.get(path)
        if before is not None:
            raise NotReplaced(f"Two files of the site want the same path: {before} and {relative}.")
        if path in self._folders or any(way in self._taken for way in ways):
            raise NotReplaced(f"The site wants a file and a folder at the same path: see {relative}.")
        self._taken[path] = relative
        self._folders.update(ways)

    def _new_file(self, place: Path) -> Path:
        place.parent.mkdir(parents=True, exist_ok=True)
        return place

    @contextmanager
    def _disk_words(self) -> Iterator[None]:
        try:
            yield
        except OSError as error:
            raise NotReplaced(
                f"The site could not be written to {shown(self._target)}: {plain_words(error)}{self._spot(error)}. "
                "What stood there is as it was."
            ) from error

    def _spot(self, error: OSError) -> str:
        """Which file of the site it is about, in brackets, where that is known."""
        for root in (self._build, self._target):
            if isinstance(error.filename, str) and error.filename.startswith(f"{root}{os.sep}"):
                return f" ({shown(Path(error.filename).relative_to(root).as_posix())})"
        return ""


def _piece(reading: BinaryIO, source: Path) -> bytes:
    try:
        return reading.read(_PIECE)
    except OSError as error:
        raise _unreadable(source, error) from None


def _unreadable(source: Path, error: OSError) -> NotReplaced:
    return NotReplaced(f"{shown(source)} cannot be copied into the site: {plain_words(error)}.")
