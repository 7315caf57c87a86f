"""The cutting layouts of a whole class, to scale."""

from __future__ import annotations

from sitegen.classes import ClassPiece, ComputedClass, KitLine
from sitegen.diagrams import CannotDraw, PictureFile, cutting_layout, picture_file, write_svg
from sitegen.publishing.class_views.parts import ClothLayout
from sitegen.quantities import ENGLISH, RULER, English, Rounding, System, show_number
from sitegen.tutorial import Computed, words_of


def class_layout(line: KitLine, cls: ComputedClass, language: English = ENGLISH) -> ClothLayout | None:
    """The layout of a fabric that is laid for the whole class at once; None for all else, and for what cannot be
    drawn."""
    cloth = line.cloth[0] if line.cloth else None
    if cloth is None or cloth.laid is None or cloth.width is None or cloth.needed is None:
        return None
    called = {piece.paper.name: _called(piece, cls.computed, language) for piece in cloth.pieces}
    try:
        picture = cutting_layout.CuttingLayout(
            name=line.key,
            fabric=language.own(line.name),
            laid=cloth.laid,
            width=cloth.width.length,
            called=called,
            need=cloth.needed.length,
            buy=line.buy.length,
        )
    except CannotDraw:
        return None
    width = show_number(cloth.width, line.system, language=language)
    length = language.amount(RULER.show(cloth.laid.length, line.system, Rounding.ENOUGH))
    return ClothLayout(line.key, language.own(line.name), width, length, picture)


def layout_drawing(layout: ClothLayout, system: System, prefix: str) -> tuple[str, PictureFile]:
    """The layout as SVG for a page that carries the style of drawings, every id in it begins with ``prefix``; and as a
    file of its own."""
    svg = write_svg(cutting_layout.draw(layout.picture, first=system), prefix, standalone=False)
    return svg, picture_file(svg)


def _called(piece: ClassPiece, computed: Computed, language: English) -> str:
    """The name of a piece of the class, ``front M``: what the piece is called, and its size."""
    known = computed.tutorial.pieces.get(piece.key)
    name = language.own((known.called if known is not None else "") or words_of(piece.key))
    return f"{name} {computed.size_name(piece.size)}".strip()
