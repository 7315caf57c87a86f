"""From the bytes of a file to pixels: upright, in sRGB, no larger than needed, with nothing hidden behind them."""

from __future__ import annotations

import threading
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO

from PIL import Image, ImageCms, UnidentifiedImageError, features

from sitegen.pictures.prepared import UnusableError

MOST_MEGAPIXELS = 80
_LONGEST_TO_SHORTEST = 100
_FEW_COLOURS = 256
_ORIENTATION = 0x0112  # EXIF 2.3, tag 274
_UPRIGHT = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_LAID_ON_ITS_SIDE = (5, 6, 7, 8)
_MODE_OF_PROFILE = {"RGB": "RGB", "GRAY": "L", "CMYK": "CMYK"}
_SERVES = "Save it as JPEG, PNG, WebP or AVIF."
_OTHERS = (
    (b"%PDF", "a PDF document"),
    (b"II*\0", "a TIFF picture"),
    (b"MM\0*", "a TIFF picture"),
    (b"BM", "a BMP picture"),
    (b"<svg", "an SVG drawing"),
    (b"<?xml", "an SVG drawing or another XML text"),
    (b"<!DOCTYPE", "a web page"),
    (b"<html", "a web page"),
    (b"PK\x03\x04", "a ZIP archive or a document"),
)


@dataclass(frozen=True, slots=True)
class Pixels:
    """A picture ready to be made smaller and encoded."""

    image: Image.Image
    """Mode RGB, or RGBA where something shows through."""
    few_colours: bool
    """A drawing or a screenshot rather than a photo."""


def pixels(data: bytes, widest: int, highest: int) -> Pixels:
    """The picture in a file, at most so many pixels wide and high, never enlarged.

    Of a moving picture the first one. Raises UnusableError for whatever cannot be read.
    """
    with _no_warnings():
        image = _opened(data)
        _refuse_size(*image.size)
        with _told_as_damaged():
            return _read(image, widest, highest)


def upright_size(data: bytes) -> tuple[int, int]:
    """Width and height in pixels of the picture in a file as it is seen upright.

    Raises UnusableError for whatever cannot be read: the file is read to its end, in the least detail that it offers.
    """
    with _no_warnings():
        image = _opened(data)
        width, height = image.size
        _refuse_size(width, height)
        with _told_as_damaged():
            image.draft(None, (1, 1))
            image.load()
            return (height, width) if _orientation(image) in _LAID_ON_ITS_SIDE else (width, height)


@contextmanager
def _told_as_damaged() -> Iterator[None]:
    """Whatever goes wrong while a file is read to its end, in words for its author."""
    try:
        yield
    except MemoryError:
        raise UnusableError("needs more memory than there is. Make it smaller, 4000 pixels wide at most.") from None
    except Exception:
        # Damaged files make Pillow raise nearly anything; for the author it is always the same.
        raise UnusableError(
            "is damaged or cut off: it cannot be read to its end. Copy it from the camera again, or save it anew."
        ) from None


def _opened(data: bytes) -> Image.Image:
    formats = ["JPEG", "PNG", "WEBP", "GIF"] + (["AVIF"] if features.check("avif") else [])
    try:
        return Image.open(BytesIO(data), formats=formats)
    except UnidentifiedImageError:
        raise UnusableError(_what_it_is(data)) from None
    except Image.DecompressionBombError:
        raise UnusableError(_too_large()) from None
    except Exception:  # as above
        raise UnusableError(
            "is damaged: not even its size can be read. Copy it from the camera again, or save it anew."
        ) from None


def _what_it_is(data: bytes) -> str:
    start = data[:1024].lstrip()
    for mark, name in _OTHERS:
        if start.lower().startswith(mark.lower()):
            return f"is {name}, which a page cannot show as a photo. {_SERVES}"
    if data[4:8] == b"ftyp":
        is_avif = data[8:12] in (b"avif", b"avis")
        if not (is_avif and features.check("avif")):
            name = "an AVIF picture" if is_avif else "a HEIC picture or a film, as phones take them"
            return f"is {name}, which cannot be read here. Save it as JPEG or PNG."
    if data.startswith((b"\xff\xd8\xff", b"\x89PNG", b"RIFF", b"GIF8")) or data[4:8] == b"ftyp":
        return "is damaged: it begins as a picture, but its size cannot be read. Copy it from the camera again."
    return f"is no picture that can be read. {_SERVES}"


def _too_large() -> str:
    return f"has more than {MOST_MEGAPIXELS} million pixels. Make it smaller; 4000 pixels wide is plenty for a page."


def _refuse_size(width: int, height: int) -> None:
    if width * height > MOST_MEGAPIXELS * 1_000_000:
        raise UnusableError(_too_large())
    if max(width, height) > _LONGEST_TO_SHORTEST * min(width, height):
        raise UnusableError(
            f"is {width} × {height} pixels, too long and thin for a page. Cut it to what is to be seen."
        )


def _read(image: Image.Image, widest: int, highest: int) -> Pixels:
    is_jpeg = image.format in ("JPEG", "MPO")
    if not is_jpeg:
        image.load()  # a damaged file shows here, not while its orientation is asked for
    orientation = _orientation(image)
    size = _size_as_stored(image.size, orientation, widest, highest)
    if is_jpeg:
        image.draft(None, size)  # the decoder leaves out the detail that is not needed
        image.load()
    profile = image.info.get("icc_profile")
    image = _plain_mode(image)
    few_colours = not is_jpeg and image.getcolors(_FEW_COLOURS) is not None
    if image.size != size:
        image = image.resize(size, Image.Resampling.LANCZOS, reducing_gap=2)
    image = _in_srgb(image, profile)
    if orientation in _UPRIGHT:
        image = image.transpose(_UPRIGHT[orientation])
    return Pixels(_bare(image), few_colours)


def _size_as_stored(size: tuple[int, int], orientation: int, widest: int, highest: int) -> tuple[int, int]:
    """The size to aim at before the picture is turned upright, since a small picture turns faster."""
    if orientation not in _LAID_ON_ITS_SIDE:
        return _size_within(size, widest, highest)
    width, height = _size_within((size[1], size[0]), widest, highest)
    return height, width


def _size_within(size: tuple[int, int], widest: int, highest: int) -> tuple[int, int]:
    """The same shape no wider and no higher than this, never enlarged, at least one pixel each way."""
    width, height = size
    fitting = max(1, min(width, widest, width * highest // height))
    return fitting, height_at(size, fitting)


def height_at(size: tuple[int, int], width: int) -> int:
    """The height of the same shape at another width, to the nearest pixel."""
    return max(1, (2 * size[1] * width + size[0]) // (2 * size[0]))


def _orientation(image: Image.Image) -> int:
    try:
        return int(image.getexif().get(_ORIENTATION, 1))
    except Exception:  # damaged camera data do not make the picture unusable
        return 1


def _plain_mode(image: Image.Image) -> Image.Image:
    """The same pixels as RGB, RGBA, L or CMYK, eight bits each."""
    if image.mode.startswith("I"):
        # Sixteen bits of grey; a plain conversion would cut all above 255 to white instead of scaling.
        return image.convert("I").point(lambda value: value * (1 / 256)).convert("L")
    if image.has_transparency_data:
        return image.convert("RGBA")
    if image.mode in ("RGB", "L", "CMYK"):
        return image
    return image.convert("L" if image.mode == "1" else "RGB")


def _in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """The same colours in sRGB, the colour space of a web page for pictures that name none."""
    plain = "RGBA" if image.mode == "RGBA" else "RGB"
    if not profile:
        return image.convert(plain)
    try:
        given = ImageCms.ImageCmsProfile(BytesIO(profile))
        mode = _MODE_OF_PROFILE[given.profile.xcolor_space.strip()]
        if (mode == "CMYK") != (image.mode == "CMYK"):
            return image.convert(plain)
        turned = ImageCms.profileToProfile(image.convert(mode), given, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError, KeyError):
        return image.convert(plain)  # a damaged profile: the colours are taken as they stand
    if turned is None:
        return image.convert(plain)
    if image.mode == "RGBA":
        turned.putalpha(image.getchannel("A"))
    return turned


def _bare(image: Image.Image) -> Image.Image:
    """The pixels alone, on a new picture: the old one may carry a comment or a profile that saving would keep.

    What is wholly transparent loses its colour, so that nothing rubbed out can be brought back.
    """
    if image.mode == "RGBA":
        alpha = image.getchannel("A")
        if alpha.getextrema() == (255, 255):
            image = image.convert("RGB")
        else:
            shows = alpha.point(lambda value: 255 if value else 0)
            image = Image.composite(image, Image.new("RGBA", image.size), shows)
    bare = Image.new(image.mode, image.size)
    bare.paste(image)
    return bare


_quiet_lock = threading.Lock()
_quiet_depth = 0
_quiet_filters = warnings.catch_warnings()


@contextmanager
def _no_warnings() -> Iterator[None]:
    """Keep Pillow's warnings off the screen, also while several threads read pictures.

    The filters are one for the whole program: the first thread to enter saves them, the last to leave restores them.
    """
    global _quiet_depth, _quiet_filters
    with _quiet_lock:
        if _quiet_depth == 0:
            _quiet_filters = warnings.catch_warnings()
            _quiet_filters.__enter__()
            warnings.simplefilter("ignore")
        _quiet_depth += 1
    try:
        yield
    finally:
        with _quiet_lock:
            _quiet_depth -= 1
            if _quiet_depth == 0:
                _quiet_filters.__exit__(None, None, None)
