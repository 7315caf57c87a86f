"""What all commands need to print."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TextIO

from sitegen.reading import ContentFolder

NOTHING_WRONG, SOMETHING_WRONG, COULD_NOT = 0, 1, 2
"""The exit codes of every command."""


def coloured(stream: TextIO) -> bool:
    """Whether to colour: on a terminal only, and never against NO_COLOR (no-color.org)."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def content_folder(path: str) -> ContentFolder | None:
    """The author's folder, or None with a message when there is none."""
    root = Path(path)
    try:
        if root.is_dir():
            return ContentFolder(root, root.as_posix())
        found = "it is a file" if root.exists() else "it does not exist"
    except OSError as trouble:
        found = trouble.strerror or "it cannot be opened"
    print(f"sitegen: {path} is not a folder that can be read: {found}.", file=sys.stderr)
    return None


def folder_above(path: Path, levels: int) -> Path:
    """The folder so many levels above a path, named as its user would: as it was written, if it was, else from the root
    of the disk or from here, as the path itself is."""
    whole = path.resolve()
    found = (whole, *whole.parents)[min(levels, len(whole.parents))]
    written = (path, *path.parents)[min(levels, len(path.parents))]
    if written.resolve() == found:
        return written
    return found if path.is_absolute() else Path(os.path.relpath(found))
