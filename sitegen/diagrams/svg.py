"""The only writer of SVG: the same drawing gives the same text, byte for byte.

Every element whose length stands for a number carries ``data-name`` and ``data-mm`` (the true length of cloth
in millimetres, exact), and the group of its view carries ``data-scale`` (page units to the millimetre); the
picture carries that of the main view. So a reader, or a test, can measure that the picture is true.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from html import escape

from sitegen.diagrams.drawing import TEXT_SIZE, TRUE_SCALE, Drawing, Number, Path, Role, Side, View
from sitegen.diagrams.geometry import SHORTEST, Segment, Spot, arrowhead, length_of, to_and_fro
from sitegen.diagrams.labels import PlacedLabel, laid_out
from sitegen.diagrams.on_page import DimensionOnPage, LineOnPage, PathOnPage, ViewOnPage
from sitegen.diagrams.style import PATTERNS, STYLE_SHEET
from sitegen.diagrams.text_boxes import LINE_STEP, RISE, UNIT, Box

_SWINGS = {Role.RAW: (3, 1.6), Role.ZIGZAG: (5, 3.6), Role.BREAK: (12, 1.7)}
_FLUSH = {Side.LEFT: "end", Side.RIGHT: "start"}


def write_svg(drawing: Drawing, prefix: str, *, standalone: bool = True) -> str:
    """The drawing as an SVG picture of its own, or, not standalone, for a page that carries ``STYLE_SHEET``.

    ``prefix`` starts every id, so that many pictures can stand in one page.
    """
    layout = laid_out(drawing)
    prefix = escape(prefix)
    box = layout.window
    size = " ".join(map(_number, (box.left, box.top, box.right - box.left, box.bottom - box.top)))
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {_size(drawing, box)} role="img" viewBox="{size}"'
        f' aria-labelledby="{prefix}-title {prefix}-desc" data-scale="{_scale(drawing.views[0])}">',
        f'<title id="{prefix}-title">{escape(drawing.title)}</title>',
        f'<desc id="{prefix}-desc">{escape(drawing.description)}</desc>',
    ]
    if standalone:
        parts.append(f"<style>{STYLE_SHEET}</style>")
    parts += _definitions(drawing, prefix)
    parts += [_view(view, prefix) for view in layout.views]
    parts += [_label(label) for label in layout.labels]
    parts.append("</svg>\n")
    return "\n".join(parts)


def _size(drawing: Drawing, box: Box) -> str:
    """Class and size: as wide as there is room, or in millimetres of paper, right to a ten thousandth."""
    if not drawing.true_size:
        return 'class="d-picture" width="100%"'
    wide, high = (
        _exact(round(Fraction(units, UNIT) / TRUE_SCALE, 4)) for units in (box.right - box.left, box.bottom - box.top)
    )
    return f'class="d-picture d-true" width="{wide}mm" height="{high}mm"'


def _scale(view: View | ViewOnPage) -> str:
    """Page units to the millimetre as a decimal, right to the ninth place where it has no end."""
    return _exact(round(view.scale, 9))


def _definitions(drawing: Drawing, prefix: str) -> list[str]:
    used = {shape.role.value for view in drawing.views for shape in view.shapes if isinstance(shape, Path)}
    patterns = [text.format(id=f"{prefix}-{name}") for name, text in PATTERNS.items() if name in used]
    return [f"<defs>{''.join(patterns)}</defs>"] if patterns else []


def _view(view: ViewOnPage, prefix: str) -> str:
    lines = [f'<g data-scale="{_scale(view)}">']
    for shape in view.shapes:
        if isinstance(shape, LineOnPage):
            lines.append(_line(shape))
        elif isinstance(shape, PathOnPage):
            lines += _path(shape, prefix)
        else:
            lines.append(_dimension(shape))
    return "\n".join([*lines, "</g>"])


def _line(line: LineOnPage) -> str:
    role, number, segment = line.shape.role, line.shape.number, line.ends
    name = f"d-{role.value}"
    if number and length_of(segment) >= SHORTEST:
        return _measured(segment, name, number)
    if role in _SWINGS:
        return f'<path class="{name}" d="{_through(to_and_fro(segment, *_SWINGS[role]))}"/>'
    if role in (Role.GRAIN, Role.ARROW):
        both = role is Role.GRAIN
        ends = (arrowhead(segment), *([arrowhead((segment[1], segment[0]))] if both else []))
        return f'<path class="{name}" d="{_through(segment)}{"".join(map(_through, ends))}"/>'
    return f'<path class="{name}" d="{_through(segment)}"/>'


def _path(path: PathOnPage, prefix: str) -> list[str]:
    drawn = _outline(path)
    role = path.shape.role.value
    if role not in PATTERNS:
        return [f'<path class="d-{role}" d="{drawn}"/>']
    return [
        f'<path class="d-tone" d="{drawn}"/>',
        f'<path class="d-{role}" fill="url(#{prefix}-{role})" d="{drawn}"/>',
    ]


def _outline(path: PathOnPage) -> str:
    last = path.start
    drawn = "M" + _spot(last)
    for end, turn in path.steps:
        if turn is None:
            drawn += "L" + _spot(end)
        else:
            radius = _number(round(length_of((last, end)) / 2))
            drawn += f"A{radius} {radius} 0 0 {int(turn.clockwise)} {_spot(end)}"
        last = end
    return drawn + ("Z" if path.shape.closed else "")


def _dimension(dimension: DimensionOnPage) -> str:
    ends = "".join(map(_through, dimension.ends))
    return f'<g class="d-dim">{_measured(dimension.line, "d-length", dimension.shape.number)}<path d="{ends}"/></g>'


def _measured(segment: Segment, name: str, number: Number) -> str:
    (x1, y1), (x2, y2) = segment
    places = f'x1="{_number(x1)}" y1="{_number(y1)}" x2="{_number(x2)}" y2="{_number(y2)}"'
    said = f'data-name="{escape(number.name)}" data-mm="{_exact(number.value.mm)}"'
    return f'<line class="{name}" {places} {said}/>'


def _label(placed: PlacedLabel) -> str:
    box = placed.box
    x = {Side.LEFT: box.right, Side.RIGHT: box.left}.get(placed.flush, (box.left + box.right) // 2)
    style = "d-text d-strong" if placed.label.strong else "d-text"
    lines = "".join(
        f'<tspan x="{_number(x)}" y="{_number(box.top + RISE + row * LINE_STEP)}">{escape(line)}</tspan>'
        for row, line in enumerate(placed.lines)
    )
    anchor = _FLUSH.get(placed.flush, "middle")
    text = f'<text class="{style}" font-size="{TEXT_SIZE}" text-anchor="{anchor}">{lines}</text>'
    if placed.leader is None:
        return text
    spot, end = placed.leader
    dot = f'<circle class="d-dot" cx="{_number(spot[0])}" cy="{_number(spot[1])}" r="1.8"/>'
    return f'<path class="d-leader" d="{_through((spot, end))}"/>{dot}{text}'


def _through(spots: Iterable[Spot]) -> str:
    return "M" + "L".join(map(_spot, spots))


def _spot(spot: Spot) -> str:
    return f"{_number(spot[0])} {_number(spot[1])}"


def _number(thousandths: int) -> str:
    """Thousandths as a short decimal."""
    whole, part = divmod(abs(thousandths), 1000)
    sign = "-" if thousandths < 0 else ""
    return f"{sign}{whole}.{part:03d}".rstrip("0") if part else f"{sign}{whole}"


def _exact(number: Fraction) -> str:
    """A number as a decimal where it has an end, as a fraction otherwise: nothing is rounded."""
    bottom, places = number.denominator, 0
    while 10**places % bottom and places < 12:
        places += 1
    if 10**places % bottom:
        return f"{number.numerator}/{bottom}"
    digits = str(abs(number.numerator) * (10**places // bottom)).rjust(places + 1, "0")
    sign = "-" if number < 0 else ""
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)
