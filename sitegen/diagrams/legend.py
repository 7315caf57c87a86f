"""The legend under a picture of cloth: which tone and which hatching is which side."""

from __future__ import annotations

from sitegen.diagrams.drawing import Label, Point, Role, Shape, Side, path, rectangle

_SIDES = ((Role.RIGHT, "right side of the cloth"), (Role.WRONG, "wrong side"))
_NEXT = 186
_SWATCH = (20, 12)


def legend_of_sides(corner: Point) -> list[Shape]:
    """Both sides of the cloth, each with a swatch, from this corner on."""
    shapes: list[Shape] = []
    for row, (role, words) in enumerate(_SIDES):
        begin = corner.moved(row * _NEXT)
        swatch = rectangle(begin, begin.moved(*_SWATCH), role)
        frame = path((swatch.start, *swatch.steps), Role.TICK, closed=True)
        shapes += [swatch, frame, Label(words, begin.moved(_SWATCH[0], 6), (Side.RIGHT,), width=170)]
    return shapes
