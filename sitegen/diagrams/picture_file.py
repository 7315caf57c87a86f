"""A written picture as a file of its own, which carries its style and says how large it is and what it shows."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import dataclass
from math import ceil

from sitegen.diagrams.style import STYLE_SHEET

_FILLS_ITS_FILE = "svg.d-picture:not(.d-true){width:100%;height:100%;max-width:none}"


@dataclass(frozen=True, slots=True)
class PictureFile:
    """A picture to be kept in a file."""

    text: str
    """The SVG with its style."""
    width: int
    """In page units, rounded up: CSS pixels where the picture is of true size, else for the ratio only."""
    height: int
    true_size: bool
    """Whether it keeps its size on paper."""
    title: str
    description: str
    """What it shows, in words."""


def picture_file(svg: str, colours: str = "") -> PictureFile:
    """The picture that ``write_svg`` wrote for a page, as a file.

    ``colours`` are style rules that set ``--d-ink`` and the like for light, dark and paper, since a file knows nothing
    of the page that shows it.
    """
    root = ET.fromstring(svg)
    width, height = (ceil(float(size)) for size in root.attrib["viewBox"].split()[2:])
    style = f"<style>{STYLE_SHEET}{_FILLS_ITS_FILE}\n{colours}</style>"
    return PictureFile(
        text=svg.replace("</desc>\n", f"</desc>\n{style}\n", 1),
        width=width,
        height=height,
        true_size="d-true" in root.attrib["class"].split(),
        title=root[0].text or "",
        description=root[1].text or "",
    )
