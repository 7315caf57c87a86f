"""From pixels to the files of a picture: each width as AVIF where that is smaller, as WebP, and for older browsers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from PIL import Image, features

from sitegen.pictures.decode import Pixels, height_at

MOST_PIXELS_A_SIDE = 16_383
"""WebP holds no more."""

_AVIF = "image/avif"
_WEBP = "image/webp"
_JPEG = "image/jpeg"
_PNG = "image/png"
EXTENSIONS = {_AVIF: "avif", _WEBP: "webp", _JPEG: "jpg", _PNG: "png"}

# Quality and effort as measured: more quality costs more bytes than anyone sees; more effort on PNG and lossless WebP
# takes two to three times as long for 7 % and 1 % of the bytes. AVIF differs from the picture as little as WebP does
# (PSNR 38 to 41 dB in both), in 7 to 36 % fewer bytes; at speed 6 it would take ten times as long. One thread, because
# several pictures are made at once.
_SAVING: dict[str, dict[str, Any]] = {
    "AVIF": {"format": "AVIF", "quality": 60, "speed": 8, "max_threads": 1},
    "lossy WebP": {"format": "WEBP", "quality": 80, "method": 4},
    "lossless WebP": {"format": "WEBP", "lossless": True, "quality": 40, "method": 4},
    "JPEG": {"format": "JPEG", "quality": 82, "optimize": True, "progressive": True},
    "PNG": {"format": "PNG"},
}
_HAS_AVIF = features.check("avif")
SETTINGS = repr((_SAVING, _HAS_AVIF))
"""All that decides on the bytes besides the picture and the widths."""


@dataclass(frozen=True, slots=True)
class Encoded:
    """One file of a picture that has no name yet."""

    width: int
    height: int
    mime: str
    content: bytes


def encoded(picture: Pixels, widths: Sequence[int]) -> tuple[Encoded, ...]:
    """The files of a picture: AVIF from narrow to wide, then WebP, then JPEG or PNG likewise.

    AVIF is left out where this machine cannot write it, or where it is no smaller than WebP at full width. A photo
    goes into lossy WebP and JPEG. What has few colours goes into lossless WebP and PNG where that is smaller at full
    width; what is transparent in places goes into PNG, since JPEG cannot show it.
    """
    sizes = _scaled(picture.image, widths)
    webp = ["lossy WebP", "lossless WebP"] if picture.few_colours else ["lossy WebP"]
    in_webp = tuple(_webp(sizes, webp))
    in_avif = tuple(_in_all_widths(sizes, "AVIF", _AVIF)) if _HAS_AVIF else ()
    if in_avif and len(in_avif[-1].content) >= len(in_webp[-1].content):
        in_avif = ()
    return (*in_avif, *in_webp, *_fallback(sizes, _for_any_browser(picture)))


def fallback(picture: Pixels) -> Encoded:
    """The one file of a picture that any program can read: JPEG or PNG, as ``encoded`` makes it at full width."""
    return next(_fallback([picture.image], _for_any_browser(picture)))


def _for_any_browser(picture: Pixels) -> list[str]:
    first = "PNG" if picture.image.mode == "RGBA" else "JPEG"
    return [first, "PNG"] if picture.few_colours and first != "PNG" else [first]


def _webp(sizes: Sequence[Image.Image], savings: Sequence[str]) -> Iterator[Encoded]:
    """Each width in that of the ways which makes it smallest: a drawing made narrow has many colours."""
    for image in sizes:
        content = min((_saved(image, saving) for saving in savings), key=len)
        yield Encoded(image.width, image.height, _WEBP, content)


def _fallback(sizes: Sequence[Image.Image], savings: Iterable[str]) -> Iterator[Encoded]:
    """Each width in that of the formats which makes the widest one smallest."""
    best = min(savings, key=lambda saving: len(_saved(sizes[-1], saving)))
    yield from _in_all_widths(sizes, best, _PNG if best == "PNG" else _JPEG)


def _in_all_widths(sizes: Sequence[Image.Image], saving: str, mime: str) -> Iterator[Encoded]:
    for image in sizes:
        yield Encoded(image.width, image.height, mime, _saved(image, saving))


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
