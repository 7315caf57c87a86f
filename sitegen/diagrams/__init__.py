"""Pictures drawn to scale from computed numbers: a drawing in exact lengths of cloth, and its SVG.

A kind of picture is one module of ``kinds``: what it needs as a frozen input, ``describe`` for those who do not
see it, and ``draw``. ``write_svg`` turns a drawing into SVG; a page that shows several carries ``STYLE_SHEET``,
and ``picture_file`` makes a file of one.

Knows nothing of files, pages or how numbers are computed.
"""

from sitegen.diagrams.drawing import CannotDraw, Drawing
from sitegen.diagrams.drawn import Drawn
from sitegen.diagrams.kinds import (
    band_on_opening,
    bias_strip,
    boxed_corner,
    cutting_layout,
    dart_fold,
    edges_meeting,
    gathers,
    hem_section,
    order_of_making,
    piece_plan,
    pleat_folds,
    seam_section,
    size_chart,
    slash_and_spread,
    slash_at_lines,
    spaced_marks,
    stretch_gauge,
)
from sitegen.diagrams.mark_places import MarkTrouble, mark_troubles
from sitegen.diagrams.of_tutorial import diagram_of
from sitegen.diagrams.of_whole import arrows_of, layout_of, order_of
from sitegen.diagrams.on_request import size_chart_of, stretch_gauge_of
from sitegen.diagrams.photo_marks import marks_on_paper, marks_svg
from sitegen.diagrams.picture_file import PictureFile, picture_file
from sitegen.diagrams.print_picture import PrintPicture, print_picture
from sitegen.diagrams.style import STYLE_SHEET
from sitegen.diagrams.svg import write_svg
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece

__all__ = [
    "STYLE_SHEET",
    "CannotDraw",
    "Drawing",
    "Drawn",
    "Edge",
    "MarkTrouble",
    "PictureFile",
    "PrintPicture",
    "TaperedPiece",
    "arrows_of",
    "band_on_opening",
    "bias_strip",
    "boxed_corner",
    "cutting_layout",
    "dart_fold",
    "diagram_of",
    "edges_meeting",
    "gathers",
    "hem_section",
    "layout_of",
    "mark_troubles",
    "marks_on_paper",
    "marks_svg",
    "order_of",
    "order_of_making",
    "picture_file",
    "piece_plan",
    "pleat_folds",
    "print_picture",
    "seam_section",
    "size_chart",
    "size_chart_of",
    "slash_and_spread",
    "slash_at_lines",
    "spaced_marks",
    "stretch_gauge",
    "stretch_gauge_of",
    "write_svg",
]
