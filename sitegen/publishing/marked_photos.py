"""A photo on its card, with the texts of its marks below it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from markupsafe import Markup, escape

from sitegen.publishing.markdown import Numbers, render_inline
from sitegen.publishing.picture_views import MarkText, Picture
from sitegen.publishing.spoken import of_its_language
from sitegen.tutorial import ArrowMark, Mark, NumberMark, Photo

ShowPhoto = Callable[[Photo], Picture | None]
"""Gives the picture of a photo, or None when there is none to show."""


def marked_photo(photo: Photo, show: ShowPhoto, numbers: Numbers) -> Picture | None:
    """The picture of a photo with what its marks say: the numbers in their order, then the words in the picture."""
    picture = show(photo)
    if picture is None:
        return None
    in_order = sorted(photo.marks, key=lambda mark: mark.number if isinstance(mark, NumberMark) else 100)
    return replace(picture, marks=tuple(_told(mark, numbers) for mark in in_order))


def _told(mark: Mark, numbers: Numbers) -> MarkText:
    if isinstance(mark, NumberMark):
        return MarkText(of_its_language(render_inline(mark.text.text.strip(), numbers), mark.text), mark.number)
    words = Markup(escape(" ".join(mark.text.text.split())))
    return MarkText(of_its_language(words, mark.text), kind="arrow" if isinstance(mark, ArrowMark) else "circle")
