"""A drawing with its words in another language. Its lines stay as they are; its labels are placed anew."""

from __future__ import annotations

from dataclasses import replace

from sitegen.diagrams.drawing import Dimension, Drawing, Label, Shape
from sitegen.quantities import English


def said(drawing: Drawing, language: English) -> Drawing:
    """The drawing as the language says it: title and labels line by line, the description sentence by sentence."""
    if language.as_made:
        return drawing
    views = tuple(
        replace(view, shapes=tuple(_said(shape, language) for shape in view.shapes)) for view in drawing.views
    )
    title, description = language.say(drawing.title), language.sentences(drawing.description)
    return replace(drawing, title=title, description=description, views=views)


def _said(shape: Shape, language: English) -> Shape:
    if isinstance(shape, Label | Dimension) and shape.text:
        return replace(shape, text="\n".join(language.unmarked(language.own(line)) for line in shape.text.split("\n")))
    return shape
