"""Writes a new folder, whole or not at all, and never over one in which something is.

The files are written into a hidden folder beside the place, which then takes its name in one act. A run that is
killed may leave the hidden folder there; no later run needs it or trips over it.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from sitegen.publishing.not_replaced import NotReplaced, plain_words, shown
from sitegen.publishing.site_place import site_path


class NotBegun(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why no folder was written. Whatever stood at the place stands there unchanged."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def write_new_folder(target: Path, files: Mapping[str, str]) -> None:
    """Write texts by their paths into a new or an empty folder.

    Raises NotBegun for a folder in which something is, a file, a link, a place in a folder that is not there, and
    for whatever the disk refuses; nothing of the folder is written then.
    """
    try:
        place = _place(target)
        building = Path(tempfile.mkdtemp(prefix=f".{place.name}.", dir=place.parent))
        try:
            for relative, text in files.items():
                file = building / site_path(relative)
                file.parent.mkdir(parents=True, exist_ok=True)
                file.write_text(text, encoding="utf-8", newline="\n")
            building.chmod(0o777 & ~_mask())
            if os.name == "nt" and place.is_dir():
                place.rmdir()  # elsewhere an empty folder is replaced; both are refused when something came into it
            os.rename(building, place)
        except BaseException:
            shutil.rmtree(building, ignore_errors=True)
            raise
    except NotReplaced as refusal:  # a path that not every disk can hold
        raise NotBegun(refusal.reason) from None
    except (OSError, ValueError) as error:
        why = plain_words(error) if isinstance(error, OSError) else "this is not a usable path"
        raise NotBegun(f"{shown(target)} could not be written: {why}.") from None


def _place(target: Path) -> Path:
    """The full path of the new folder. Raises NotBegun, and OSError for what cannot be looked at."""
    if target.is_symlink():
        raise NotBegun(f"{shown(target)} is a link. Name a new folder, or the folder that it leads to.")
    if target.exists() and not target.is_dir():
        raise NotBegun(f"{shown(target)} is a file. Name a new folder.")
    if target.is_dir() and any(target.iterdir()):
        raise NotBegun(
            f"{shown(target)} is there already and holds something."
            " A draft is never written over it: name a new folder."
        )
    place = target.resolve()
    if not place.parent.is_dir():
        raise NotBegun(f"The folder {shown(target.parent)} is not there. Make it first, or name another place.")
    if target.exists() and place in (Path.cwd().resolve(), *Path.cwd().resolve().parents):
        raise NotBegun(f"{shown(target)} is the folder that you are in. Name a new folder inside it, such as my-site.")
    return place


def _mask() -> int:
    """What the rights of new files leave out; it can only be read by setting it."""
    mask = os.umask(0o077)
    os.umask(mask)
    return mask
