"""How much room words take, estimated wide, in thousandths of a page unit.

The page chooses the font, so the widths are those of a wide one (DejaVu Sans, in thousandths of the text
size), with a little added; a word in another common sans-serif takes less.
"""

from __future__ import annotations

from typing import NamedTuple

from sitegen.diagrams.drawing import TEXT_SIZE

UNIT = 1000
"""Thousandths in a page unit: page places are whole thousandths, so that every machine rounds alike."""

_BY_WIDTH = (
    (290, "'ijlIJ|⁄"),
    (340, " ,.:;/’‘\u00a0"),
    (415, "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉!()[]fjrt-′"),
    (530, '*_°–“”"sz?″'),
    (640, "acdeghknouvxybpqLFPTYESéèöüäßñçåø$0123456789{}"),
    (700, "ABCKRVXZ"),
    (790, "DGHNOQU&"),
    (840, "w#+<=>^~×÷−"),
    (1000, "MWm%@—¼½¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚"),
)
_WIDTHS = {sign: width for width, signs in _BY_WIDTH for sign in signs}
_UNKNOWN = 1000
_SPARE = 103
_STRONG_SPARE = 114
LINE_STEP = TEXT_SIZE * 1200
"""From one line of words to the next."""
RISE = TEXT_SIZE * 950
"""From the foot of the letters up to the top of the line's box."""
DROP = TEXT_SIZE * 260
"""From the foot of the letters down to the bottom of the line's box."""


class Box(NamedTuple):
    """An upright box on the page, in thousandths of a page unit."""

    left: int
    top: int
    right: int
    bottom: int

    def overlaps(self, other: Box) -> bool:
        """Whether the two share any of their area."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def grown(self, by: int) -> Box:
        """The box with so much added all round."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)


def text_width(text: str, *, strong: bool = False) -> int:
    """The most that a line of words is likely to take."""
    spare = _STRONG_SPARE if strong else _SPARE
    return sum(_WIDTHS.get(sign, _UNKNOWN) for sign in text) * TEXT_SIZE * spare // 100


def wrapped(text: str, width: int, *, strong: bool = False) -> tuple[str, ...]:
    """The words in lines of at most so many page units; a longer word has a line of its own, a line break is kept."""
    return tuple(line for part in text.split("\n") for line in _wrapped(part, width, strong))


def _wrapped(text: str, width: int, strong: bool) -> list[str]:
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, strong=strong) <= width * UNIT:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def block_size(lines: tuple[str, ...], *, strong: bool = False) -> tuple[int, int]:
    """Width and height of several lines under one another."""
    width = max(text_width(line, strong=strong) for line in lines)
    return width, RISE + DROP + LINE_STEP * (len(lines) - 1)
