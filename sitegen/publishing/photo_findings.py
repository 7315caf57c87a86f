"""What is wrong with the photos of a content folder: files that cannot be shown, marks that cannot be seen on them."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from sitegen.checks import Review
from sitegen.diagrams import mark_troubles
from sitegen.findings import Finding, Severity
from sitegen.pictures import Trouble, upright_size
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, Photo

Size = tuple[int, int]


def photo_path(photo: Photo, computed: Computed, folder: ContentFolder) -> Path | None:
    """The file of a photo; None when there is none in the folder."""
    return folder.file(f"tutorials/{computed.tutorial.key}/photos/{photo.file}")


def photos_of(found: Review, folder: ContentFolder) -> dict[Photo, Path]:
    """Every photo whose file is there, once, with its file."""
    paths = {photo: photo_path(photo, computed, folder) for computed in found.tutorials for photo in _photos(computed)}
    return {photo: path for photo, path in paths.items() if path is not None}


def photo_findings(found: Review, folder: ContentFolder) -> tuple[Finding, ...]:
    """What is wrong with the picture files, each read to its end as publishing does, but nothing made of it."""
    photos = photos_of(found, folder)
    paths = tuple(dict.fromkeys(photos.values()))
    with ThreadPoolExecutor(os.cpu_count() or 1) as pool:
        sizes = dict(zip(paths, pool.map(upright_size, paths), strict=True))
    return tuple(findings_on(photos, sizes.__getitem__))


def findings_on(photos: dict[Photo, Path], size: Callable[[Path], Size | Trouble]) -> Iterator[Finding]:
    """A finding for every photo of which ``size`` knows a trouble, and for every mark that cannot be seen."""
    for photo, path in photos.items():
        found = size(path)
        if isinstance(found, Trouble):
            yield Finding("picture-broken", Severity.WRONG, photo.place, found.message, photo.file)
            continue
        for trouble in mark_troubles(photo.marks, *found):
            if trouble.covered:
                yield Finding("mark-covered", Severity.WRONG, trouble.mark.place, trouble.message)
            else:
                yield Finding("mark-unseen", Severity.WRONG, trouble.mark.place, trouble.message)


def _photos(computed: Computed) -> Iterator[Photo]:
    if computed.tutorial.photo is not None:
        yield computed.tutorial.photo
    for step in computed.tutorial.steps:
        yield from step.photos
