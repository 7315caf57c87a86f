"""Marks on a photo: arrows, circles and numbers drawn over it, in an SVG that lies on the picture and fills it.

Places are in percent of the picture, lines and words in ``em`` of one size of text: so a mark stays at its place at
every width, and lines and words keep their size. Only on a picture narrower than a phone shows it, as on paper, they
shrink with it; what has room on a phone has room everywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import hypot
from xml.sax.saxutils import escape

from sitegen.diagrams.mark_places import DISC, NARROWEST, TEXT_PIXELS, Label, labels
from sitegen.tutorial import ArrowMark, CircleMark, Mark, NumberMark

_INK, _HALO = "#16130f", "#fff"
_LINE, _UNDER = 0.17, 0.5
_HEAD_LENGTH, _HEAD_HALF = 0.72, 0.46
_LINE_STEP, _TO_FOOT = 1.2, 0.35
_FONT = 'system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans","Liberation Sans",sans-serif'


def marks_svg(marks: Sequence[Mark], width: int, height: int) -> str:
    """The marks of a photo of this size in pixels, as a file to be laid over it.

    Dark with a light halo, so that they show on light and dark cloth, on any page and in black and white. A text that
    has no room is left out; ``mark_troubles`` tells of it.
    """
    font_size = f"min({TEXT_PIXELS}px,{_short(100 * TEXT_PIXELS / NARROWEST)}vw)"
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="100%" height="100%">\n'
        f"<style>svg{{font:700 {font_size}/1 {_FONT}}}</style>\n{_drawn(marks, width, height)}</svg>\n"
    )


def marks_on_paper(marks: Sequence[Mark], width: int, height: int, font: str) -> str:
    """The same marks in the pixels of the photo, to stand behind it in one picture of a printed sheet."""
    size = _short(TEXT_PIXELS * width / NARROWEST)
    return f'<g font-family="{font}" font-weight="700" font-size="{size}">{_drawn(marks, width, height)}</g>'


def _drawn(marks: Sequence[Mark], width: int, height: int) -> str:
    lines = "".join(_line(mark, "url(#{})") for mark in marks if isinstance(mark, ArrowMark))
    lines += "".join(_circle(mark, width, height) for mark in marks if isinstance(mark, CircleMark))
    return (
        f"<defs>{_head('under', _UNDER, _HALO)}{_head('over', _LINE, _INK)}</defs>\n"
        f"{_lines(lines, 'under', _UNDER, _HALO)}\n{_lines(lines, 'over', _LINE, _INK)}\n"
        + "".join(_disc(mark) for mark in marks if isinstance(mark, NumberMark))
        + "".join(_words(label) for label in labels(marks, width, height) if label is not None)
    )


def _head(name: str, line: float, colour: str) -> str:
    """An arrow head for a line so many em thick, drawn in thicknesses of the line."""
    back, half = _short(_HEAD_LENGTH / line), _short(_HEAD_HALF / line)
    return (
        f'<marker id="{name}" orient="auto" overflow="visible">'
        f'<path d="M-{back} -{half} 0 0-{back} {half}" fill="none" stroke="{colour}" stroke-linecap="round"'
        ' stroke-linejoin="round"/></marker>'
    )


def _lines(lines: str, name: str, line: float, colour: str) -> str:
    drawn = lines.replace("url(#{})", f"url(#{name})")
    return f'<g fill="none" stroke="{colour}" stroke-width="{line}em" stroke-linecap="round">{drawn}</g>'


def _line(mark: ArrowMark, head: str) -> str:
    ends = (mark.tail.across, mark.tail.down, mark.tip.across, mark.tip.down)
    x1, y1, x2, y2 = map(_short, ends)
    return f'<line x1="{x1}%" y1="{y1}%" x2="{x2}%" y2="{y2}%" marker-end="{head}"/>'


def _circle(mark: CircleMark, width: int, height: int) -> str:
    """SVG 2, section 7.10: a radius in percent is of the length √(width² + height²) ÷ √2."""
    radius = float(mark.across) / 2 * width / (hypot(width, height) / 2**0.5)
    return f'<circle cx="{_short(mark.centre.across)}%" cy="{_short(mark.centre.down)}%" r="{_short(radius)}%"/>'


def _disc(mark: NumberMark) -> str:
    x, y = f"{_short(mark.at.across)}%", f"{_short(mark.at.down)}%"
    return (
        f'<circle cx="{x}" cy="{y}" r="{DISC}em" fill="{_INK}" stroke="{_HALO}" stroke-width="{_LINE}em"/>'
        f'<text x="{x}" y="{y}" dy="{_TO_FOOT}em" fill="{_HALO}" text-anchor="middle">{mark.number}</text>\n'
    )


def _words(label: Label) -> str:
    first = label.dy - (len(label.lines) - 1) * _LINE_STEP / 2 + _TO_FOOT
    x, y = f"{_short(label.across)}%", f"{_short(label.down)}%"
    start = f'<tspan x="{x}" y="{y}" dx="{_short(label.dx)}em"'
    rows = "".join(
        f'{start} dy="{_short(first + row * _LINE_STEP)}em">{escape(line)}</tspan>'
        for row, line in enumerate(label.lines)
    )
    return (
        f'<text fill="{_INK}" stroke="{_HALO}" stroke-width=".34em" stroke-linejoin="round" paint-order="stroke"'
        f' text-anchor="{label.anchor}">{rows}</text>\n'
    )


def _short(number: float | Fraction) -> str:
    """A number with two decimals at most."""
    return f"{float(number):.2f}".rstrip("0").rstrip(".")
