"""Reads the lengths, ratios and weights that people type.

Every reader takes the text and gives back exact values that remember how they were written, or raises
``NotUnderstood`` with what was expected, an example and the offset of the trouble.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from sitegen.quantities.by_size import BySize
from sitegen.quantities.length import Length, Unit
from sitegen.quantities.measures import FabricWeight, Ratio

UNIT_NAMES: dict[str, Unit] = {
    **dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "”", "''"), Unit.IN),
    **dict.fromkeys(("cm", "cm.", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CM),
    **dict.fromkeys(("mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MM),
    **dict.fromkeys(("m", "m.", "metre", "metres", "meter", "meters"), Unit.M),
    **dict.fromkeys(("yd", "yd.", "yds", "yds.", "yard", "yards"), Unit.YD),
    **dict.fromkeys(("ft", "ft.", "foot", "feet"), Unit.FT),
}

FRACTION_SIGNS: dict[str, Fraction] = {
    sign: Fraction(top, bottom)
    for sign, top, bottom in (
        ("½", 1, 2), ("⅓", 1, 3), ("⅔", 2, 3), ("¼", 1, 4), ("¾", 3, 4), ("⅕", 1, 5), ("⅖", 2, 5), ("⅗", 3, 5),
        ("⅘", 4, 5), ("⅙", 1, 6), ("⅚", 5, 6), ("⅛", 1, 8), ("⅜", 3, 8), ("⅝", 5, 8), ("⅞", 7, 8),
    )
}  # fmt: skip

_SIGNS = "".join(FRACTION_SIGNS)
_SLASH = "[/⁄]"
NUMBER_PATTERN = (
    r"(?:"
    rf"(?P<whole>\d{{1,6}})(?:\s*-\s*|\s+|\s+and\s+|\s*\+\s*)(?P<top>\d{{1,3}}){_SLASH}(?P<bottom>\d{{1,3}})"
    rf"|(?P<top2>\d{{1,3}}){_SLASH}(?P<bottom2>\d{{1,3}})"
    rf"|(?P<whole3>\d{{1,6}})?[ \t\u200b\u2009\u202f\u00a0-]?(?P<sign>[{_SIGNS}])"
    r"|(?P<decimal>\d{0,6}[.,]\d{1,6})"
    r"|(?P<integer>\d{1,6})"
    r")(?![\d/⁄])"
)
_NUMBER = re.compile(NUMBER_PATTERN)
_UNIT = re.compile(
    r"[\s\u00a0\u202f-]*(?P<unit>"
    + "|".join(re.escape(name) for name in sorted(UNIT_NAMES, key=len, reverse=True))
    + r")(?![A-Za-z])",
    re.IGNORECASE,
)
_RANGE_WORD = re.compile(r"\s*(?:to|–|—|-|−)\s*")
_EXAMPLE = "3/8 in, 1 1/2 in, 0.6 cm or 5/8 in (1.5 cm)"
_RULER_BOTTOMS = frozenset((2, 4, 8, 16, 32, 64))


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


@dataclass(frozen=True, slots=True)
class Typed:
    """A length as somebody typed it.

    ``high`` is the upper end of a range. ``pair`` is the same length in a second unit, given in brackets.
    ``start`` and ``end`` are offsets in the text that was read, the brackets included.
    """

    value: Length
    unit: Unit
    text: str
    start: int
    end: int
    high: Length | None = None
    pair: Typed | None = None
    number: str = ""

    def printed_step(self) -> Length | None:
        """The step of the last printed decimal, for ``1.59 cm`` 0.01 cm; None when no decimals were printed."""
        decimals = re.search(r"[.,](\d+)$", self.number)
        return Length(self.unit.mm / 10 ** len(decimals.group(1))) if decimals else None


def parse_number(text: str, *, example: str = "1 1/2 or 1.5") -> Fraction:
    """A bare number: whole, decimal, vulgar fraction or mixed. Raises NotUnderstood."""
    lead = len(text) - len(text.lstrip())
    match = _NUMBER.match(text, lead)
    if match is None or text[match.end() :].strip():
        raise NotUnderstood("a number", example, lead, len(text.strip()))
    return number_of(match)


def parse_length(text: str, default: Unit | None = None) -> Typed:
    """One length, with its unit or in the default one, perhaps with its pair in brackets. Raises NotUnderstood.

    >>> parse_length("1 1/2 in").value.mm
    Fraction(381, 10)
    """
    typed = _one(text, 0, default, ranges=False)
    _nothing_more(text, typed.end)
    return typed


def parse_range(text: str, default: Unit | None = None) -> Typed:
    """One length or a range of lengths, ``1/4 to 3/8 in``. Raises NotUnderstood, also for a range the wrong way."""
    typed = _one(text, 0, default, ranges=True)
    _nothing_more(text, typed.end)
    return typed


def parse_lengths(text: str, default: Unit | None = None) -> BySize[Typed]:
    """Lengths by size, ``31, 33 1/2, 35 in``; a single one serves every size. Raises NotUnderstood.

    A comma parts two lengths when a space follows it; ``1,5 cm`` is one length with a decimal comma.
    A unit at the end serves all before it that have none.
    """
    spans = _split(text)
    last_start, last_end = spans[-1]
    carried = default
    if len(spans) > 1 and text[last_start:last_end].strip():
        carried = _one(text[last_start:last_end], 0, default, ranges=False).unit
    found = []
    for start, end in spans:
        part = text[start:end]
        try:
            typed = _one(part, 0, carried, ranges=False)
            _nothing_more(part, typed.end)
        except NotUnderstood as trouble:
            if part.count(",") > 1:
                raise NotUnderstood(
                    "a space after each comma between sizes", "31, 33 1/2, 35 in", start, len(part)
                ) from None
            raise trouble.moved(start) from None
        found.append(_moved(typed, start))
    return BySize(tuple(found))


def parse_ratio(text: str) -> Ratio:
    """A percentage, vulgar fraction or decimal: ``80%``, ``4/5``, ``0.8``, ``85 percent``. Raises NotUnderstood."""
    body = text.strip()
    percent = re.search(r"\s*(%|percent|per cent)$", body, re.IGNORECASE)
    number = parse_number(body[: percent.start()] if percent else body, example="80% or 4/5")
    return Ratio.percent(number) if percent else Ratio(number)


def parse_weight(text: str) -> FabricWeight:
    """Weight of cloth: ``180 g/m2``, ``180 gsm``, ``5 oz/yd2``. Raises NotUnderstood."""
    match = re.fullmatch(r"\s*(.+?)\s*(g/m2|g/m²|gsm|oz/yd2|oz/yd²|oz)\s*", text, re.IGNORECASE)
    if match is None:
        raise NotUnderstood("a weight of cloth", "180 g/m2 or 5 oz/yd2", 0, len(text))
    number = parse_number(match.group(1), example="180 g/m2")
    if match.group(2).lower().startswith("g"):
        return FabricWeight(number)
    return FabricWeight.ounces_per_square_yard(number)


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
    if whole and top >= bottom:
        raise NotUnderstood(
            "a fraction smaller than 1 after a whole number", "1 1/2", match.start(), len(match.group())
        )
    return whole + Fraction(top, bottom)


def _one(text: str, start: int, default: Unit | None, *, ranges: bool) -> Typed:
    """The length that begins here, its pair in brackets included."""
    begin = start + len(text[start:]) - len(text[start:].lstrip())
    match = _NUMBER.match(text, begin)
    if match is None:
        raise NotUnderstood("a length", _EXAMPLE, begin, len(text[begin:].rstrip()))
    value = number_of(match)
    unit, end = _unit_at(text, match.end())
    high_match = None
    if ranges and (link := _RANGE_WORD.match(text, end)) and (high_match := _NUMBER.match(text, link.end())):
        high_unit, end = _unit_at(text, high_match.end())
        unit = unit or high_unit
        if high_unit is not None and high_unit is not unit:
            raise NotUnderstood("the same unit at both ends of a range", "1/4 to 3/8 in", begin, end - begin)
    unit = unit or default
    if unit is None:
        raise NotUnderstood("a unit after the number", _EXAMPLE, begin, end - begin)
    if unit is Unit.IN:
        _on_a_ruler(match)
    high = None
    if high_match is not None:
        high = Length(number_of(high_match) * unit.mm)
        if high <= Length(value * unit.mm):
            raise NotUnderstood("the smaller end of a range first", "1/4 to 3/8 in", begin, end - begin)
    pair, end = _pair_at(text, end)
    return Typed(
        Length(value * unit.mm), unit, text[begin:end], begin, end, high, pair, match.group().strip()
    )


def _unit_at(text: str, end: int) -> tuple[Unit | None, int]:
    match = _UNIT.match(text, end)
    return (UNIT_NAMES[match.group("unit").lower()], match.end()) if match else (None, end)


def _pair_at(text: str, end: int) -> tuple[Typed | None, int]:
    opening = re.compile(r"\s*([(\[]|/(?=\s*\d)|=)\s*").match(text, end)
    if opening is None:
        return None, end
    pair = _one(text, opening.end(), None, ranges=False)
    closing = re.compile(r"\s*[)\]]").match(text, pair.end)
    if opening.group(1) in "([":
        if closing is None:
            raise NotUnderstood("a closing bracket", "5/8 in (1.5 cm)", pair.start, len(text) - pair.start)
        return pair, closing.end()
    return pair, pair.end


def _on_a_ruler(match: re.Match[str]) -> None:
    bottom = match.group("bottom") or match.group("bottom2")
    if bottom is not None and int(bottom) not in _RULER_BOTTOMS:
        raise NotUnderstood(
            "halves, quarters, eighths or sixteenths of an inch, as on a ruler",
            "3/8 in",
            match.start(),
            len(match.group()),
        )


def _nothing_more(text: str, end: int) -> None:
    rest = text[end:].strip()
    if rest:
        start = end + len(text[end:]) - len(text[end:].lstrip())
        raise NotUnderstood("one length and nothing behind it", _EXAMPLE, start, len(rest))


def _split(text: str) -> list[tuple[int, int]]:
    """The spans between the commas (or semicolons) that part sizes, brackets kept together."""
    spans, start, depth = [], 0, 0
    for index, char in enumerate(text):
        if char in "([":
            depth += 1
        elif char in ")]":
            depth -= 1
        elif depth == 0 and (char == ";" or (char == "," and not text[index + 1 : index + 2].isdigit())):
            spans.append((start, index))
            start = index + 1
    spans.append((start, len(text)))
    return spans


def _moved(typed: Typed, by: int) -> Typed:
    pair = _moved(typed.pair, by) if typed.pair else None
    return Typed(
        typed.value, typed.unit, typed.text, typed.start + by, typed.end + by, typed.high, pair, typed.number
    )
