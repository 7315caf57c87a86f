"""From pixels to the files of a picture: each width as WebP, and once more for browsers that lack it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from PIL import Image

from sitegen.pictures.decode import Pixels, height_at

MOST_PIXELS_A_SIDE = 16_383
"""WebP holds no more."""

_WEBP = "image/webp"
_JPEG = "image/jpeg"
_PNG = "image/png"
EXTENSIONS = {_WEBP: "webp", _JPEG: "jpg", _PNG: "png"}

# Quality and effort as measured: more quality costs more bytes than anyone sees; more effort on PNG and lossless WebP
# takes two to three times as long for 7 % and 1 % of the bytes.
_SAVING: dict[str, dict[str, Any]] = {
    "lossy WebP": {"format": "WEBP", "quality": 80, "method": 4},
    "lossless WebP": {"format": "WEBP", "lossless": True, "quality": 40, "method": 4},
    "JPEG": {"format": "JPEG", "quality": 82, "optimize": True, "progressive": True},
    "PNG": {"format": "PNG"},
}
SETTINGS = repr(_SAVING)
"""All that decides on the bytes besides the picture and the widths."""


@dataclass(frozen=True, slots=True)
class Encoded:
    """One file of a picture that has no name yet."""

    width: int
    height: int
    mime: str
    content: bytes


def encoded(picture: Pixels, widths: Sequence[int]) -> tuple[Encoded, ...]:
    """The files of a picture, first WebP from narrow to wide, then JPEG or PNG likewise.

    A photo goes into lossy WebP and JPEG. What has few colours goes into lossless WebP and PNG where that is
    smaller at full width; what is transparent in places goes into PNG, since JPEG cannot show it.
    """
    sizes = _scaled(picture.image, widths)
    widest = sizes[-1]
    webp, fallback = ["lossy WebP"], ["PNG" if widest.mode == "RGBA" else "JPEG"]
    if picture.few_colours:
        webp.append("lossless WebP")
        fallback.append("PNG")
    return (*_in_all_widths(sizes, webp, _WEBP), *_in_all_widths(sizes, fallback, ""))


def _in_all_widths(sizes: Sequence[Image.Image], savings: Sequence[str], mime: str) -> Iterator[Encoded]:
    """Each width, saved in that of the ways which makes the widest one smallest."""
    widest = {saving: _saved(sizes[-1], saving) for saving in dict.fromkeys(savings)}
    best = min(widest, key=lambda saving: len(widest[saving]))
    kind = mime or (_PNG if best == "PNG" else _JPEG)
    for image in sizes[:-1]:
        yield Encoded(image.width, image.height, kind, _saved(image, best))
    yield Encoded(sizes[-1].width, sizes[-1].height, kind, widest[best])


def shown_widths(width: int, wanted: Sequence[int]) -> list[int]:
    """The widths to make of a picture this wide: those wanted that are clearly narrower, then its own."""
    return [each for each in sorted(set(wanted)) if 10 * each <= 9 * width] + [width]


def _scaled(image: Image.Image, wanted: Sequence[int]) -> list[Image.Image]:
    """The picture in each width, each made from the next wider one, the narrowest first."""
    made = [image]
    for width in reversed(shown_widths(image.width, wanted)[:-1]):
        size = (width, height_at(image.size, width))
        made.append(made[-1].resize(size, Image.Resampling.LANCZOS, reducing_gap=2))
    return made[::-1]


def _saved(image: Image.Image, saving: str) -> bytes:
    file = BytesIO()
    image.save(file, **_SAVING[saving])
    return file.getvalue()
