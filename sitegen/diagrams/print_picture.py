"""A written picture for a program that lays out paper: black on white, its size in millimetres."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass
from decimal import Decimal

from sitegen.diagrams.style import print_sheet

_STYLE = re.compile(r"<style>.*?</style>\n?", re.DOTALL)
_MM_OF_UNIT = Decimal("25.4") / 96
"""A page unit is a CSS pixel, 96 to the inch (CSS Values 3, section 5.2)."""


@dataclass(frozen=True, slots=True)
class PrintPicture:
    """A picture as SVG of black lines."""

    svg: str
    width: Decimal
    """In millimetres: exact where it is of true size, else as wide as it is on a page with room."""
    height: Decimal
    true_size: bool
    """Whether it must be printed in this very size."""
    title: str
    description: str


def print_picture(svg: str, font: str) -> PrintPicture:
    """A picture of ``write_svg`` or of ``picture_file``, its words set in a font that the program has."""
    root = ET.fromstring(svg)
    true_size = "d-true" in root.attrib["class"].split()
    if true_size:
        width, height = (Decimal(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    else:
        width, height = (Decimal(size) * _MM_OF_UNIT for size in root.attrib["viewBox"].split()[2:])
    told = {child.tag.rpartition("}")[2]: child.text or "" for child in root[:2]}
    plain = _STYLE.sub("", svg, count=1)
    # Not by the sheet: there it would stand above the patterns that shapes are filled with.
    plain = plain.replace("<svg ", '<svg fill="none" ', 1)
    return PrintPicture(
        svg=plain.replace("</desc>\n", f"</desc>\n<style>{print_sheet(font)}</style>\n", 1),
        width=width,
        height=height,
        true_size=true_size,
        title=told["title"],
        description=told["desc"],
    )
