"""Reads the numbers that people type: whole, decimal, vulgar and mixed; and says what is wrong with the others."""

from __future__ import annotations

import re
from fractions import Fraction

FRACTION_SIGNS: dict[str, Fraction] = {
    sign: Fraction(top, bottom)
    for sign, top, bottom in (
        ("½", 1, 2), ("⅓", 1, 3), ("⅔", 2, 3), ("¼", 1, 4), ("¾", 3, 4), ("⅕", 1, 5), ("⅖", 2, 5), ("⅗", 3, 5),
        ("⅘", 4, 5), ("⅙", 1, 6), ("⅚", 5, 6), ("⅛", 1, 8), ("⅜", 3, 8), ("⅝", 5, 8), ("⅞", 7, 8),
    )
}  # fmt: skip

_SIGNS = "".join(FRACTION_SIGNS)
_SLASH = "[/⁄]"
SPACE = r"[\s\u200b\ufeff]"
_GLUE = rf"(?:[-‐‑]|{SPACE}+(?:and{SPACE}+)?|{SPACE}*\+{SPACE}*)"
_THOUSANDS = r"[1-9]\d{0,2},\d{3}(?!\d)"
NUMBER_PATTERN = (
    r"(?<!\d)(?<!\d[.,/⁄])(?:"
    rf"(?P<whole>\d{{1,6}}){_GLUE}(?P<top>\d{{1,3}}){_SLASH}(?P<bottom>\d{{1,3}})"
    rf"|(?P<top2>\d{{1,3}}){_SLASH}(?P<bottom2>\d{{1,3}})"
    rf"|(?:(?P<whole3>\d{{1,6}}){_GLUE}?)?(?P<sign>[{_SIGNS}])"
    rf"|(?P<decimal>(?!{_THOUSANDS})\d{{1,6}}[.,]\d{{1,6}}|\.\d{{1,6}})"
    r"|(?P<integer>\d{1,6})"
    r")(?![\d/⁄]|[.,]\d)"
)
"""A number as it is typed, never the middle of a longer one. A comma before three digits may part thousands or
decimals (1,500): nobody can know, so it is no number."""
NUMBER = re.compile(NUMBER_PATTERN)
_BLANK = re.compile(rf"{SPACE}*")

_TRAPS = tuple(
    (re.compile(pattern), expected, example)
    for pattern, expected, example in (
        ("[\"'“”„‟‘’«»″]", "a number first, without a quotation mark before it", "3/8 in"),
        (rf"[-‐‑–−]{SPACE}*[\d.{_SIGNS}]", "a number without a minus sign before it", "3/8 in"),
        (
            rf"\d{{1,3}}(?:{SPACE}+{_SLASH}{SPACE}*|{_SLASH}{SPACE}+)\d",
            "no spaces around the line of a fraction",
            "3/8 in",
        ),
        (_THOUSANDS, "no comma between thousands, and a point before three decimals", "1234 or 1.234"),
        (r"\d*[.,]?\d{7}", "a number of at most six digits, and six behind its point", "1234.5"),
        (r"\d+(?:[.,]\d+){2}", "a number with one point or comma", "1234.5"),
    )
)
"""What looks nearly like a number, and is worth its own words: pattern, expected, example."""


class NotUnderstood(ValueError):  # noqa: N818 - reads as what happened, not as a program's fault
    """A text that is not a quantity: what was expected, an example of it, and where the trouble starts."""

    def __init__(self, expected: str, example: str, offset: int = 0, size: int = 0) -> None:
        super().__init__(f"expected {expected}, such as {example}")
        self.expected = expected
        self.example = example
        self.offset = offset
        self.size = size

    def moved(self, by: int) -> NotUnderstood:
        """The same trouble in a text of which this one is a part."""
        return NotUnderstood(self.expected, self.example, self.offset + by, self.size)


def parse_number(text: str, *, example: str = "1 1/2 or 1.5") -> Fraction:
    """A bare number: whole, decimal, vulgar fraction or mixed. Raises NotUnderstood."""
    match = number_at(text, 0, "a number", example)
    if rest_of(text, match.end()):
        raise NotUnderstood("a number", example, match.start(), len(text[match.start() :].rstrip()))
    return number_of(match)


def number_of(match: re.Match[str]) -> Fraction:
    """The exact value of a match of NUMBER_PATTERN. Raises NotUnderstood for a fraction no ruler could mean."""
    groups = match.groupdict()
    if groups["decimal"] is not None:
        text = groups["decimal"].replace(",", ".")
        return Fraction("0" + text if text.startswith(".") else text)
    if groups["integer"] is not None:
        return Fraction(int(groups["integer"]))
    if groups["sign"] is not None:
        return int(groups["whole3"] or 0) + FRACTION_SIGNS[groups["sign"]]
    whole, top, bottom = (
        (int(groups["whole"]), int(groups["top"]), int(groups["bottom"]))
        if groups["whole"] is not None
        else (0, int(groups["top2"]), int(groups["bottom2"]))
    )
    if bottom == 0:
        raise NotUnderstood("a fraction with something below the line", "3/8", match.start(), len(match.group()))
    if groups["whole"] is not None and top >= bottom:
        raise NotUnderstood(
            "a fraction smaller than 1 after a whole number", "1 1/2", match.start(), len(match.group())
        )
    return whole + Fraction(top, bottom)


def number_at(text: str, start: int, expected: str, example: str) -> re.Match[str]:
    """The number that begins here, behind blanks. Raises NotUnderstood with the words that fit the trouble best."""
    begin = blank_end(text, start)
    for pattern, instead, its_example in _TRAPS:
        if pattern.match(text, begin):
            raise NotUnderstood(instead, its_example, *trimmed(text, begin, len(text)))
    match = NUMBER.match(text, begin)
    if match is None:
        raise NotUnderstood(expected, example, *trimmed(text, begin, len(text)))
    return match


def rest_of(text: str, end: int) -> str:
    """What stands behind the offset, without the blanks around it."""
    return text[blank_end(text, end) :].rstrip()


def blank_end(text: str, start: int) -> int:
    """The offset of the first character from here that is no blank."""
    blank = _BLANK.match(text, start)
    return blank.end() if blank else start


def trimmed(text: str, start: int, end: int) -> tuple[int, int]:
    """The offset and the size of a part of the text without the blanks around it."""
    begin = min(blank_end(text, start), end)
    return begin, len(text[begin:end].rstrip())
