"""Drawings, photos with their marks, and the code of the page, as SVG for paper."""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

from sitegen.diagrams import marks_on_paper, print_picture
from sitegen.handouts.model import SheetPicture
from sitegen.handouts.needed import NoPdf
from sitegen.pictures import Trouble, for_paper
from sitegen.publishing import Span
from sitegen.tutorial import NumberMark, Photo, Prose

IDS = "d"
"""What every id in a drawing begins with."""
FONT = "Libertinus Serif"
"""One of the fonts that the program which lays out the sheets carries in itself (SIL Open Font License)."""
_PHOTO_PIXELS = 900
"""For a photo 80 mm wide: 285 pixels to the inch."""
_PHOTO_WIDTH = 80.0


def drawing(svg: str) -> SheetPicture:
    """A drawing in black and white."""
    found = print_picture(svg, FONT)
    return SheetPicture(
        svg=found.svg,
        width=float(found.width),
        height=float(found.height),
        true_size=found.true_size,
        title=found.title,
        alt=found.description or found.title,
    )


def photo(photo: Photo, path: Path, shows: str, line: Callable[[Prose], tuple[Span, ...]]) -> SheetPicture:
    """A photo with its marks drawn in; ``line`` gives the words of each. Raises NoPdf when its file cannot be shown."""
    found = for_paper(path, width=_PHOTO_PIXELS)
    if isinstance(found, Trouble):
        raise NoPdf(found.message)
    data = b64encode(found.content).decode("ascii")
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{found.width}" height="{found.height}"'
        f' viewBox="0 0 {found.width} {found.height}">'
        f'<image width="{found.width}" height="{found.height}" href="data:{found.mime};base64,{data}"/>'
        f"{marks_on_paper(photo.marks, found.width, found.height, FONT)}</svg>"
    )
    marks = sorted((mark for mark in photo.marks if isinstance(mark, NumberMark)), key=lambda mark: mark.number)
    return SheetPicture(
        svg=svg,
        width=_PHOTO_WIDTH,
        height=_PHOTO_WIDTH * found.height / found.width,
        true_size=False,
        title="",
        alt=shows,
        marks=tuple((mark.number, line(mark.text)) for mark in marks),
    )


def code_of(address: str) -> str:
    """The address as a QR code (ISO/IEC 18004) of medium error correction with its quiet zone, as SVG. Raises NoPdf."""
    try:
        import segno
    except ImportError:
        raise NoPdf.without("segno") from None
    file = BytesIO()
    segno.make(address, error="m", micro=False).save(
        file, kind="svg", xmldecl=False, svgclass=None, lineclass=None, omitsize=True, border=4
    )
    return file.getvalue().decode("utf-8")
