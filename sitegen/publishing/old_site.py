"""The site that stands there: what was put into it by hand goes over into the new one, the rest is taken away.

Nothing that sitegen did not write is ever deleted. A file is taken away only when it is known to be sitegen's own
and unchanged, or known to stand in the new site as well.
"""

from __future__ import annotations

import os
import shutil
import stat
import sys
from collections.abc import Callable, Collection, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from sitegen.publishing.manifest import (
    MANIFEST_NAME,
    Entry,
    Kind,
    Manifest,
    file_content_digest,
    fingerprint,
    read_manifest,
    scan,
)
from sitegen.publishing.not_replaced import NotReplaced, named, plain_words, shown
from sitegen.publishing.site_place import folded, is_reserved, ways_to


@dataclass(frozen=True, slots=True)
class OldSite:
    """A site that may be replaced: its own files are as they were written."""

    entries: Mapping[str, Entry]
    manifest: Manifest
    by_hand: tuple[Entry, ...]
    """Files, links and folders that sitegen did not make, each folder before what is in it."""


def refuse_foreign(target: Path) -> Manifest | None:
    """The list of the site that stands at the target; None for nothing and for an empty folder.

    Raises NotReplaced for a link, a file, and a folder that sitegen did not make.
    """
    try:
        if not os.path.lexists(target):
            return None
        if target.is_symlink() or not target.is_dir():
            raise NotReplaced(f"{shown(target)} is no longer a folder. Name a folder for the site.")
        manifest = read_manifest(target)
        if manifest is None and any(target.iterdir()):
            raise NotReplaced(
                f"{shown(target)} was not made by sitegen (there is no {MANIFEST_NAME} in it), so it is not replaced. "
                "Name a new or an empty folder, or move away what is in this one."
            )
    except OSError as error:
        raise NotReplaced(f"{shown(target)} cannot be looked into: {plain_words(error)}.") from None
    if manifest is not None and not manifest.complete:
        raise NotReplaced(
            f"{shown(target)} is the unfinished work of a run that was stopped, put here by another program. "
            "Move it away, or name another place."
        )
    return manifest


def old_site(target: Path) -> OldSite | None:
    """The site that stands at the target, looked through; None for nothing and for an empty folder.

    Raises NotReplaced as ``refuse_foreign`` does, for files of the site that were edited since they were written,
    and for things that cannot be carried over. Raises OSError for what cannot be read.
    """
    manifest = refuse_foreign(target)
    if manifest is None:
        return None
    entries = scan(target)
    own_folders = {way for path in manifest.files for way in ways_to(path)}
    edited: list[str] = []
    by_hand: list[Entry] = []
    for path, entry in sorted(entries.items()):
        if entry.kind is Kind.OTHER:
            raise NotReplaced(
                f"{shown(target)} was not replaced: {shown(path)} in it is no file, folder or link that could be kept. "
                "Move it away."
            )
        if entry.kind is Kind.FOLDER:
            if path not in own_folders:
                by_hand.append(entry)
        elif path not in manifest.files:
            by_hand.append(entry)
        elif entry.kind is Kind.LINK or file_content_digest(target / path) != manifest.files[path]:
            edited.append(path)
    if edited:
        raise NotReplaced(
            f"{shown(target)} was not replaced: of the files that sitegen wrote there, some were edited since, and the "
            f"edits would be lost: {named(edited)}. Move them away, or delete them, then publish again."
        )
    return OldSite(entries, manifest, tuple(by_hand))


def carry_over(
    old: OldSite, target: Path, new: Path, files: Collection[str], folders: Collection[str]
) -> frozenset[str]:
    """Put all that was put into the old site by hand into the new one; gives back the fingerprints of it.

    ``files`` and ``folders`` are the folded paths of the new site. Raises NotReplaced where both want the same
    place, OSError where the disk does.
    """
    clashes = [entry.path for entry in old.by_hand if _clashes(entry, files, folders)]
    if clashes:
        raise NotReplaced(
            f"{shown(target)} was not replaced: the new site needs the place of what was put there by hand: "
            f"{named(clashes)}. Move it away, or give it another name."
        )
    carried: set[str] = set()
    made: dict[str, None] = {}
    for entry in old.by_hand:
        for folder in [*ways_to(entry.path), *([entry.path] if entry.kind is Kind.FOLDER else [])]:
            if not (new / folder).is_dir():
                (new / folder).mkdir()
                made[folder] = None
        if entry.kind is not Kind.FOLDER:
            _carry(target / entry.path, new / entry.path, entry.kind)
            carried.add(fingerprint(new, entry))
    for folder in reversed(made):  # inner ones first, since filling a folder changes its date
        shutil.copystat(target / folder, new / folder)
    return frozenset(carried)


def _clashes(entry: Entry, files: Collection[str], folders: Collection[str]) -> bool:
    path = folded(entry.path)
    if is_reserved(path) or path in files or any(way in files for way in ways_to(path)):
        return True
    return entry.kind is not Kind.FOLDER and path in folders


def _carry(source: Path, place: Path, kind: Kind) -> None:
    """The same file under a second name where the disk can do that, so that not even its date changes; else a copy.

    On Windows always a copy: a write-protected file could not be taken away there under one of two names.
    """
    if kind is Kind.FILE and sys.platform != "win32":
        with suppress(OSError):
            os.link(source, place)
            return
    shutil.copy2(source, place, follow_symlinks=False)
    if kind is Kind.FILE:
        with place.open("rb") as file, suppress(OSError):
            os.fsync(file.fileno())  # the old file goes away soon: the new one must not only be on its way to the disk


def remove_old(folder: Path, target: Path, manifest: Manifest, seen: Mapping[str, Entry] | None = None) -> list[str]:
    """Take away a folder that has been replaced, or one that never came into use; gives back what was kept of it.

    ``seen`` is what stood in the folder when it was last looked through: what is the same still was either checked
    or carried over then. A file that nobody knows moves into the site at ``target`` if its place is free there,
    and stays in ``folder`` otherwise.
    """
    try:
        standing = read_manifest(target)
    except NotReplaced:
        standing = None
    carried = manifest.carried | (standing.carried if standing else frozenset())

    def may_go(entry: Entry) -> bool:
        if not manifest.complete or (seen is not None and seen.get(entry.path) == entry):
            return True
        place = folder / entry.path
        if entry.kind is Kind.OTHER:
            return False
        if entry.kind is Kind.FILE and file_content_digest(place) == manifest.files.get(entry.path):
            return True
        return fingerprint(folder, entry) in carried or _is_same_file(place, target / entry.path)

    def move(entry: Entry) -> bool:
        place = target / entry.path
        if standing is None or not _is_way_free(target, entry.path):
            return False
        if os.path.lexists(place):
            copy = scan(target).get(entry.path)
            if copy is None or copy.kind is Kind.FOLDER or fingerprint(target, copy) not in standing.carried:
                return False
        place.parent.mkdir(parents=True, exist_ok=True)
        os.replace(folder / entry.path, place)
        return True

    kept = _clear(folder, may_go, move)
    if not kept:  # the list goes last: while anything is left, it tells whose folder this is
        (folder / MANIFEST_NAME).unlink(missing_ok=True)
        folder.rmdir()
    return kept


def _clear(folder: Path, may_go: Callable[[Entry], bool], move: Callable[[Entry], bool]) -> list[str]:
    """Take away or move what is in a folder, inner things first; gives back what could be neither."""
    entries = scan(folder)
    _make_writable(folder)
    for entry in entries.values():
        if entry.kind is Kind.FOLDER:
            _make_writable(folder / entry.path)
    kept: list[str] = []
    for path, entry in sorted(entries.items(), reverse=True):
        place = folder / path
        try:
            if entry.kind is Kind.FOLDER:
                if not any(place.iterdir()):
                    place.rmdir()
            elif may_go(entry):
                _unlink(place)
            elif not move(entry):
                kept.append(path)
        except OSError:
            kept.append(path)
    return kept


def _make_writable(folder: Path) -> None:
    mode = stat.S_IMODE(folder.lstat().st_mode)
    if mode & stat.S_IRWXU != stat.S_IRWXU:
        with suppress(OSError):
            folder.chmod(mode | stat.S_IRWXU)


def _unlink(place: Path) -> None:
    if sys.platform == "win32" and not place.is_symlink():
        place.chmod(stat.S_IWRITE)  # Windows takes no write-protected file away
    place.unlink()


def _is_same_file(one: Path, other: Path) -> bool:
    with suppress(OSError):
        return os.path.samestat(one.lstat(), other.lstat())
    return False


def _is_way_free(target: Path, path: str) -> bool:
    """Whether each folder on the way to a path is a real one or can still be made."""
    ways = [target / way for way in ways_to(path)]
    return all(not os.path.lexists(way) or stat.S_ISDIR(way.lstat().st_mode) for way in ways)
