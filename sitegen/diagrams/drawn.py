"""A diagram as a page carries it."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.diagrams.drawing import Drawing
from sitegen.diagrams.said import said
from sitegen.diagrams.svg import write_svg
from sitegen.quantities import ENGLISH, English


@dataclass(frozen=True, slots=True)
class Drawn:
    """A picture for a page that carries ``STYLE_SHEET``, with its title."""

    title: str
    svg: str


def drawn(drawing: Drawing, prefix: str, language: English = ENGLISH) -> Drawn:
    """The drawing, written in a language; ``prefix`` starts every id in it."""
    drawing = said(drawing, language)
    return Drawn(drawing.title, write_svg(drawing, prefix, standalone=False))
