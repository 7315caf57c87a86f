"""Looks at site folders from outside, with code of its own, for the tests of writing."""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from hashlib import blake2b
from pathlib import Path

import pytest

from sitegen.publishing.write import SiteWriter

NOBODY = 65534
OLD = {"index.html": "old home", "a/index.html": "old a", "a/deep/er/page.html": "old deep", "gone.css": "old style"}
NEW = {"index.html": "new home", "a/index.html": "new a", "b/index.html": b"new b", "photo.webp": b"\x00\x01" * 50_000}


def publish(
    target: Path,
    files: Mapping[str, str | bytes],
    forbidden: tuple[Path, ...] = (),
    *,
    then: Callable[[SiteWriter], object] | None = None,
) -> list[str]:
    """Publish some files, with something done when all are written; gives back what the author is told."""
    with SiteWriter(target, forbidden=forbidden) as writer:
        for path, held in files.items():
            writer.write(path, held)
        if then is not None:
            then(writer)
    return writer.notes


@contextmanager
def folder_of_plain_user() -> Iterator[Path]:
    """A folder of a user without special rights, as whom the test runs meanwhile."""
    if sys.platform == "win32":
        pytest.skip("rights are of another kind there")
    with tempfile.TemporaryDirectory() as made:
        user = os.geteuid()
        if user == 0:
            os.chown(made, NOBODY, NOBODY)
            os.seteuid(NOBODY)
        try:
            yield Path(made).resolve()
        finally:
            os.seteuid(user)


def content(folder: Path) -> dict[str, str | bytes]:
    """All that is in a folder but the list of files: content of files, ``-> place`` of links, ``folder``."""
    found: dict[str, str | bytes] = {}
    for where, folders, files in os.walk(folder):
        for name in [*folders, *files]:
            place = Path(where) / name
            path = place.relative_to(folder).as_posix()
            if place.is_symlink():
                found[path] = f"-> {os.readlink(place)}"
            else:
                found[path] = "folder" if place.is_dir() else place.read_bytes()
    found.pop(".sitegen.json", None)
    return found


def files_in(folder: Path) -> dict[str, bytes]:
    """Only the plain files of a folder, without the list of files."""
    return {path: held for path, held in content(folder).items() if isinstance(held, bytes)}


def as_bytes(files: Mapping[str, str | bytes]) -> dict[str, bytes]:
    """The same files with their content as it stands on a disk."""
    return {path: held.encode() if isinstance(held, str) else held for path, held in files.items()}


def listed(folder: Path) -> dict[str, str]:
    """The files that the list of a site names, after every one was hashed and found as listed."""
    data = json.loads((folder / ".sitegen.json").read_text(encoding="utf-8"))
    assert data["complete"] is True
    assert data["format"] == 1
    for path, digest in data["files"].items():
        assert blake2b((folder / path).read_bytes(), digest_size=20).hexdigest() == digest, path
    files: dict[str, str] = data["files"]
    return files


def beside(target: Path) -> set[str]:
    """The names of what stands beside a target."""
    return {item.name for item in target.parent.iterdir()} - {target.name}
