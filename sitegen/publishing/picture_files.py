"""The pictures of a site: each photo prepared once, its files written once, shown wherever it is asked for.

A picture that the site already has is taken from there: a small list beside the pictures says from which photo
each was made, and a file is used again only if its content is still that of its name.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from hashlib import blake2b
from itertools import groupby
from pathlib import Path

from sitegen.diagrams import marks_svg
from sitegen.pictures import Prepared, Rendition, Trouble, prepare, recipe_of
from sitegen.publishing.picture_views import Picture, PictureSource
from sitegen.publishing.slugs import slug
from sitegen.tutorial import Photo

PICTURES_FOLDER = "pictures"
LIST_OF_PICTURES = f"{PICTURES_FOLDER}/made-from.json"


class PictureFiles:
    """Prepares photos and keeps what must be written. ``old`` is the site that is to be replaced, if there is one."""

    def __init__(self, old: Path) -> None:
        self.site = old
        """The site that is to be replaced."""
        self._old = old
        self._known = _list_of(old)
        self._made_from: dict[str, list[list[object]]] = {}
        self._prepared: dict[Path, Prepared | Trouble] = {}
        self._overlays: dict[str, bytes] = {}

    def prepare_all(self, paths: Iterable[Path]) -> None:
        """Prepare many photos at once: Pillow lets other threads work while it encodes."""
        wanted = [path for path in dict.fromkeys(paths) if path not in self._prepared]
        with ThreadPoolExecutor(os.cpu_count() or 1) as pool:
            for path, (key, made) in zip(wanted, pool.map(self._make, wanted), strict=True):
                self._prepared[path] = made
                if isinstance(made, Prepared) and key is not None:
                    self._made_from[key] = [[each.name, each.width, each.height, each.mime] for each in made.sources]

    def prepared(self, path: Path) -> Prepared | Trouble:
        """The photo in its widths, or what is wrong with it."""
        self.prepare_all([path])
        return self._prepared[path]

    def files(self) -> dict[str, bytes]:
        """Every file of every picture, and the list that says from what they were made."""
        found = {
            f"{PICTURES_FOLDER}/{each.name}": each.content
            for made in self._prepared.values()
            if isinstance(made, Prepared)
            for each in made.sources
        }
        if found:
            found[LIST_OF_PICTURES] = (json.dumps(self._made_from, indent=1, sort_keys=True) + "\n").encode()
        return found | self._overlays

    def view(self, path: Path, photo: Photo, root: str) -> Picture | None:
        """The photo as a page shows it; None when it cannot be shown (reported by ``prepared``)."""
        made = self.prepared(path)
        if isinstance(made, Trouble):
            return None
        formats = [(mime, tuple(group)) for mime, group in groupby(made.sources, key=lambda each: each.mime)]
        *better, (_, plain) = formats
        largest = max(plain, key=lambda each: each.width)
        return Picture(
            src=f"{root}{PICTURES_FOLDER}/{largest.name}",
            width=largest.width,
            height=largest.height,
            alt=photo.shows,
            srcset=_srcset(plain, root),
            sources=tuple(PictureSource(mime, _srcset(each, root)) for mime, each in better),
            overlay=f"{root}{self._overlay(path, photo, made)}" if photo.marks else "",
        )

    def _overlay(self, path: Path, photo: Photo, made: Prepared) -> str:
        """The path in the site of the file with the marks of a photo."""
        content = marks_svg(photo.marks, made.width, made.height).encode("utf-8")
        name = f"{PICTURES_FOLDER}/{slug(path.stem)}-marks-{blake2b(content, digest_size=4).hexdigest()}.svg"
        self._overlays[name] = content
        return name

    def _make(self, path: Path) -> tuple[str | None, Prepared | Trouble]:
        code = recipe_of(path)
        stem = slug(path.stem)
        key = f"{stem}-{code}" if code is not None else None
        again = self._from_old(key) if key is not None else None
        return key, again or prepare(path, stem=stem)

    def _from_old(self, key: str) -> Prepared | None:
        """The picture as the old site has it; None when any of its files is missing or was changed."""
        found = []
        for name, width, height, mime in self._known.get(key, ()):
            try:
                content = (self._old / PICTURES_FOLDER / name).read_bytes()
            except OSError:
                return None
            if f"-{blake2b(content, digest_size=4).hexdigest()}-" not in name:
                return None
            found.append(Rendition(name, width, height, mime, content))
        return Prepared(found[-1].width, found[-1].height, tuple(found)) if found else None


def _list_of(old: Path) -> dict[str, tuple[tuple[str, int, int, str], ...]]:
    """From which photo each picture of a site was made; nothing when the list is missing or not as it was written."""
    try:
        entries = json.loads((old / LIST_OF_PICTURES).read_text(encoding="utf-8"))
        return {
            key: tuple((Path(name).name, int(width), int(height), str(mime)) for name, width, height, mime in files)
            for key, files in entries.items()
        }
    except (OSError, ValueError, TypeError, AttributeError):
        return {}


def _srcset(renditions: tuple[Rendition, ...], root: str) -> str:
    return ", ".join(f"{root}{PICTURES_FOLDER}/{each.name} {each.width}w" for each in renditions)
