"""Where a site may stand, and which paths a file of a site may have."""

from __future__ import annotations

import os
import re
import stat
import unicodedata
from collections.abc import Iterable
from pathlib import Path

from sitegen.publishing.manifest import MANIFEST_NAME
from sitegen.publishing.not_replaced import NotReplaced, plain_words, shown

_ODD = re.compile(r'[\x00-\x1f\x7f<>:"|?*\\]')
_LONGEST_NAME = 255
# Windows opens a device instead of a file under these names, whatever stands behind the first dot.
_DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}


def site_place(target: Path, forbidden: Iterable[Path] = ()) -> Path:
    """The full path of the folder in which a site may be written.

    Links on the way to the folder are followed; the folder itself must not be a link, because putting a new
    folder in its place would take the link away, and following it would replace a folder that nobody named.
    Raises NotReplaced for the root of a disk, the home folder and what is around it, a forbidden folder and
    what is inside or around it, a file, a link, and a folder that would stand in a missing one.
    """
    if "\0" in str(target):
        raise NotReplaced(f"The site cannot be written to {shown(target)}: this is not a usable path.")
    try:
        place = target.resolve() if target.name in ("", "..") else target.parent.resolve(strict=True) / target.name
        _refuse_link_or_file(place)
    except FileNotFoundError:
        parent = shown(target.parent)
        raise NotReplaced(
            f"The site cannot be written to {shown(target)}: the folder {parent} is not there. "
            "Make it first, or name another place."
        ) from None
    except OSError as error:
        raise NotReplaced(f"The site cannot be written to {shown(target)}: {plain_words(error)}.") from None
    except RuntimeError:  # Python 3.11 and 3.12
        raise NotReplaced(f"The site cannot be written to {shown(target)}: a link leads in a circle.") from None
    if place == place.parent:
        raise NotReplaced(f"The site cannot be written to {shown(place)}: this is the root of the disk.")
    home = _home()
    if home is not None and _is_within(home, place):
        raise NotReplaced(
            f"The site cannot be written to {shown(place)}: your home folder is there. Name a folder inside it."
        )
    for folder in forbidden:
        _refuse_near(place, Path(os.path.realpath(folder)))
    return place


def _refuse_link_or_file(place: Path) -> None:
    if place.is_symlink():
        raise NotReplaced(
            f"{shown(place)} is a link to {shown(os.readlink(place))}. A site is never written through a link: "
            "name the folder that it leads to, or another place."
        )
    if os.path.lexists(place) and not stat.S_ISDIR(place.lstat().st_mode):
        raise NotReplaced(f"{shown(place)} is a file. Name a folder for the site.")


def _home() -> Path | None:
    try:
        return Path.home().resolve()
    except (OSError, RuntimeError):
        return None


def _refuse_near(place: Path, folder: Path) -> None:
    if _is_same(place, folder):
        how = "is the same folder"
    elif _is_within(place, folder):
        how = "is a folder around it"
    elif _is_within(folder, place):
        how = "lies inside it"
    else:
        return
    raise NotReplaced(
        f"The site cannot be written to {shown(place)}: {shown(folder)}, from which it is made, {how}. "
        "Name a place outside."
    )


def _is_within(inner: Path, outer: Path) -> bool:
    """Whether a path is a folder or lies in it, however the letters of the two are written."""
    return any(_is_same(step, outer) for step in (inner, *inner.parents))


def _is_same(one: Path, other: Path) -> bool:
    if one == other:
        return True
    try:
        return os.path.samefile(one, other)
    except OSError:
        return False


def folded(path: str) -> str:
    """A path as disks see it that make no difference between capitals and small letters."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", path).casefold())


def ways_to(path: str) -> list[str]:
    """The folders that a path passes through, the outermost first: ``a`` and ``a/b`` for ``a/b/c``."""
    parts = path.split("/")
    return ["/".join(parts[:count]) for count in range(1, len(parts))]


def site_path(relative: str) -> str:
    """The path of a file of a site, as given, once it is known to work on every disk and web server.

    Raises NotReplaced for what leads out of the site, for names that some systems cannot hold, and for
    the name of the list of files.
    """
    parts = relative.split("/")
    if len(parts[0]) == 0 or any(not _is_usable(part) for part in parts):
        raise NotReplaced(
            f"“{shown(relative)}” cannot be the path of a file of the site. A path is made of plain names with / "
            "between them, such as tutorials/lantern-tee/index.html."
        )
    if is_reserved(relative):
        raise NotReplaced(f"“{shown(relative)}” cannot be the path of a file of the site: sitegen needs the name.")
    return relative


def is_device(name: str) -> bool:
    """Whether Windows opens a device under this name."""
    return folded(name) in _DEVICES


def is_reserved(path: str) -> bool:
    """Whether sitegen needs the name itself, for the list of files or while writing it."""
    return folded(path).startswith(MANIFEST_NAME)


def _is_usable(name: str) -> bool:
    if name in ("", ".", "..") or name != name.strip() or name.endswith(".") or _ODD.search(name):
        return False
    if is_device(name.split(".")[0].strip()):
        return False
    try:
        return len(name.encode("utf-8")) <= _LONGEST_NAME
    except UnicodeEncodeError:
        return False
