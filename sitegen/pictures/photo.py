"""One picture file made ready for a page."""

from __future__ import annotations

import stat
from hashlib import blake2b
from pathlib import Path

from sitegen.pictures import decode
from sitegen.pictures.encode import EXTENSIONS, MOST_PIXELS_A_SIDE, Encoded, encoded, fallback
from sitegen.pictures.prepared import Prepared, Rendition, Trouble, UnusableError
from sitegen.pictures.recipe import key

WIDTHS = (480, 960, 1600)
"""Widths in pixels in which a picture is made unless others are asked for."""
_MOST_MEGABYTES = 200
_HIGHEST_TO_WIDEST = 4
"""A picture may be so many times as high as the widest width; a longer one becomes narrower."""


def prepare(path: Path, *, stem: str, widths: tuple[int, ...] = WIDTHS) -> Prepared | Trouble:
    """A picture as it stands in a page, or in plain words why the file cannot be used.

    ``stem`` begins the file names; ``widths`` are in pixels, and no picture is enlarged to reach one. The same file
    gives the same bytes. Never raises for anything a file may hold.
    """
    wanted = sorted(set(widths))
    if not wanted or wanted[0] < 1:
        raise ValueError("widths must name at least one width, in pixels from 1")
    try:
        files = _files(_source(path), wanted)
    except UnusableError as trouble:
        return Trouble(f"{_shown(path)} {trouble}")
    widest = files[-1]
    return Prepared(widest.width, widest.height, tuple(_named(file, stem) for file in files))


def for_paper(path: Path, *, width: int) -> Rendition | Trouble:
    """A picture as JPEG or PNG alone, at most so many pixels wide, upright and free of hidden data as on a page."""
    try:
        picture = decode.pixels(_source(path), width, _HIGHEST_TO_WIDEST * width)
    except UnusableError as trouble:
        return Trouble(f"{_shown(path)} {trouble}")
    return _named(fallback(picture), path.stem)


def upright_size(path: Path) -> tuple[int, int] | Trouble:
    """Width and height in pixels of a picture file as it is seen upright, or why it cannot be used.

    The file is read to its end, so that what is cut off is told; of a JPEG in an eighth of its detail, which is quick.
    """
    try:
        return decode.upright_size(_source(path))
    except UnusableError as trouble:
        return Trouble(f"{_shown(path)} {trouble}")


def recipe_of(path: Path, widths: tuple[int, ...] = WIDTHS) -> str | None:
    """What decides on the bytes of the finished picture, in a few letters; None when the file cannot be used."""
    try:
        return key(_source(path), sorted(set(widths)))
    except UnusableError:
        return None


def _files(source: bytes, widths: list[int]) -> tuple[Encoded, ...]:
    widest = min(widths[-1], MOST_PIXELS_A_SIDE)
    picture = decode.pixels(source, widest, min(_HIGHEST_TO_WIDEST * widest, MOST_PIXELS_A_SIDE))
    return encoded(picture, widths)


def _source(path: Path) -> bytes:
    try:
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            raise UnusableError("is a folder. Name the picture file in it.")
        if not stat.S_ISREG(status.st_mode):
            raise UnusableError("is no file. Name a picture file.")
        if status.st_size > _MOST_MEGABYTES * 1_000_000:
            raise UnusableError(f"is larger than {_MOST_MEGABYTES} MB. Save it as JPEG, 4000 pixels wide at most.")
        source = path.read_bytes()
    except FileNotFoundError:
        raise UnusableError("is not there. Check its name, capitals and small letters too.") from None
    except (OSError, ValueError):
        raise UnusableError("cannot be read. Check who may read it, and whether its disk is well.") from None
    if not source:
        raise UnusableError("is empty: it holds no bytes at all. Copy it from the camera again.")
    return source


def _named(file: Encoded, stem: str) -> Rendition:
    digest = blake2b(file.content, digest_size=4).hexdigest()
    name = f"{stem}-{digest}-{file.width}.{EXTENSIONS[file.mime]}"
    return Rendition(name, file.width, file.height, file.mime, file.content)


def _shown(path: Path) -> str:
    return "".join(char if char.isprintable() else "?" for char in path.name)
