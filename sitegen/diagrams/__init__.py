"""Pictures drawn to scale from computed numbers: a drawing in exact lengths of cloth, and its SVG.

A kind of picture is one module of ``kinds``: what it needs as a frozen input, ``describe`` for those who do not
see it, and ``draw``. ``write_svg`` turns a drawing into SVG; a page that shows several carries ``STYLE_SHEET``.

Knows nothing of files, pages or how numbers are computed.
"""

from sitegen.diagrams.drawing import CannotDraw, Drawing
from sitegen.diagrams.kinds import (
    band_on_opening,
    boxed_corner,
    dart_fold,
    hem_section,
    slash_and_spread,
    slash_at_lines,
)
from sitegen.diagrams.of_tutorial import Drawn, diagram_of
from sitegen.diagrams.style import STYLE_SHEET
from sitegen.diagrams.svg import write_svg
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece

__all__ = [
    "STYLE_SHEET",
    "CannotDraw",
    "Drawing",
    "Drawn",
    "Edge",
    "TaperedPiece",
    "band_on_opening",
    "boxed_corner",
    "dart_fold",
    "diagram_of",
    "hem_section",
    "slash_and_spread",
    "slash_at_lines",
    "write_svg",
]
