"""The list of files that a site carries with it: what sitegen wrote there, and what it found and kept.

A folder with such a list was made by sitegen, so sitegen may replace it; a folder without one never is.
"""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from hashlib import blake2b, file_digest
from pathlib import Path

from sitegen.publishing.not_replaced import NotReplaced, plain_words, shown

MANIFEST_NAME = ".sitegen.json"
PART_NAME = ".sitegen.json.part"
"""The list while it is being written."""

_FORMAT = 1
_ABOUT = (
    "This folder was made by sitegen, which replaces it whole each time the site is published. Files that you put here "
    "yourself are kept. Without this list sitegen refuses to replace the folder."
)
_DIGEST_BYTES = 20
_JUNCTION = 0xA0000003  # Windows: a folder that leads to another place


@dataclass(frozen=True, slots=True)
class Manifest:
    """What is known of the files of one site folder."""

    files: Mapping[str, str] = field(default_factory=dict)
    """Path of each file that sitegen made, and the digest of its content."""
    carried: frozenset[str] = frozenset()
    """Fingerprints of what was put there by hand and kept. Not by name: a site is public, and so is its list."""
    complete: bool = True
    """False while the folder is being built."""


class Kind(Enum):
    """What stands at a path."""

    FILE = "file"
    LINK = "link"
    FOLDER = "folder"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Entry:
    """What stands at a path inside a site folder, not looked through if it is a link."""

    path: str
    kind: Kind
    size: int
    modified: int
    """Nanoseconds."""
    number: int
    """By which the disk knows it: another file put in its place has another number."""


def content_digest(content: bytes) -> str:
    """The blake2b digest of some content, in hexadecimal."""
    return blake2b(content, digest_size=_DIGEST_BYTES).hexdigest()


def file_content_digest(path: Path) -> str:
    """The blake2b digest of a file, in hexadecimal. Raises OSError."""
    with path.open("rb") as file:
        return file_digest(file, new_digest).hexdigest()


def new_digest() -> blake2b:
    """A digest that takes content piece by piece and ends like ``content_digest``."""
    return blake2b(digest_size=_DIGEST_BYTES)


def fingerprint(root: Path, entry: Entry) -> str:
    """One digest of path, kind and content; for a link, of the place it names. Raises OSError."""
    place = root / entry.path
    content = ""
    if entry.kind is Kind.FILE:
        content = file_content_digest(place)
    elif entry.kind is Kind.LINK:
        content = os.readlink(place)
    return content_digest(b"\0".join(os.fsencode(part) for part in (entry.path, entry.kind.value, content)))


def scan(root: Path) -> dict[str, Entry]:
    """All that stands in a folder by its path, without the list of files; no link is followed. Raises OSError.

    A folder on another disk, or one that leads elsewhere, is of the kind OTHER and not entered.
    """
    disk = root.lstat().st_dev
    found: dict[str, Entry] = {}
    folders = [""]
    while folders:
        folder = folders.pop()
        with os.scandir(root / folder) as inside:
            names = sorted(item.name for item in inside)
        for name in names:
            path = f"{folder}{name}"
            if path == MANIFEST_NAME:
                continue
            status = (root / path).lstat()
            kind = _kind(status, disk)
            found[path] = Entry(path, kind, status.st_size, status.st_mtime_ns, status.st_ino)
            if kind is Kind.FOLDER:
                folders.append(f"{path}/")
    return found


def _kind(status: os.stat_result, disk: int) -> Kind:
    if stat.S_ISLNK(status.st_mode):
        return Kind.LINK
    if stat.S_ISREG(status.st_mode):
        return Kind.FILE
    junction = getattr(status, "st_reparse_tag", 0) == _JUNCTION
    if stat.S_ISDIR(status.st_mode) and status.st_dev == disk and not junction:
        return Kind.FOLDER
    return Kind.OTHER


def write_manifest(folder: Path, manifest: Manifest) -> None:
    """Put the list into its folder, whole or not at all. Raises OSError."""
    data = {
        "about": _ABOUT,
        "made_by": "sitegen",
        "format": _FORMAT,
        "complete": manifest.complete,
        "files": dict(sorted(manifest.files.items())),
        "carried": sorted(manifest.carried),
    }
    part = folder / PART_NAME
    with part.open("wb") as file:
        file.write(json.dumps(data, ensure_ascii=False, indent=1).encode("utf-8") + b"\n")
        file.flush()
        os.fsync(file.fileno())
    part.replace(folder / MANIFEST_NAME)


def read_manifest(folder: Path) -> Manifest | None:
    """The list of a folder, or None where there is none. Raises NotReplaced where it cannot be understood."""
    place = folder / MANIFEST_NAME
    try:
        if not stat.S_ISREG(place.lstat().st_mode):
            raise _unusable(folder, "is not a plain file")
        data = json.loads(place.read_bytes())
    except FileNotFoundError:
        return None
    except OSError as error:
        raise _unusable(folder, f"cannot be read: {plain_words(error)}") from None
    except (ValueError, RecursionError):
        raise _unusable(folder, "is damaged") from None
    if not isinstance(data, dict) or data.get("made_by") != "sitegen":
        raise _unusable(folder, "was not written by sitegen")
    if data.get("format") != _FORMAT:
        raise _unusable(folder, "was written by another version of sitegen, whose format is not known here")
    files, carried, complete = data.get("files"), data.get("carried"), data.get("complete")
    if (
        not isinstance(files, dict)
        or not all(isinstance(value, str) for value in files.values())
        or not isinstance(carried, list)
        or not all(isinstance(value, str) for value in carried)
        or not isinstance(complete, bool)
    ):
        raise _unusable(folder, "is damaged")
    return Manifest(files, frozenset(carried), complete)


def _unusable(folder: Path, why: str) -> NotReplaced:
    return NotReplaced(
        f"{shown(folder)} was not replaced: the list of its files, {MANIFEST_NAME}, {why}. "
        "Move the folder away, or name another place."
    )
