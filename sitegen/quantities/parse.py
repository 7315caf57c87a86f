"""Reads the lengths, ratios and weights that people type.

Every reader takes the text and gives back exact values that remember how they were written, or raises
``NotUnderstood`` with what was expected, an example and the offset of the trouble.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from sitegen.quantities.by_size import BySize
from sitegen.quantities.length import Length, System, Unit, inches, mm
from sitegen.quantities.measures import FabricWeight, Ratio
from sitegen.quantities.number import (
    FRACTION_SIGNS,
    NUMBER,
    SPACE,
    NotUnderstood,
    blank_end,
    number_at,
    number_of,
    parse_number,
    rest_of,
    trimmed,
)

UNIT_NAMES: dict[str, Unit] = {
    **dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "”", "''"), Unit.IN),
    **dict.fromkeys(("cm", "cm.", "centimetre", "centimetres", "centimeter", "centimeters"), Unit.CM),
    **dict.fromkeys(("mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters"), Unit.MM),
    **dict.fromkeys(("m", "m.", "metre", "metres", "meter", "meters"), Unit.M),
    **dict.fromkeys(("yd", "yd.", "yds", "yds.", "yard", "yards"), Unit.YD),
    **dict.fromkeys(("ft", "ft.", "foot", "feet"), Unit.FT),
}

_UNIT = re.compile(
    rf"(?:{SPACE}*|-)(?P<unit>(?ai:"
    + "|".join(re.escape(name) for name in sorted(UNIT_NAMES, key=len, reverse=True))
    + r"))(?![A-Za-z])"
)
_RANGE_WORD = re.compile(rf"{SPACE}*(?:(?ai:to)|[-‐‑–—−]){SPACE}*")
_PAIR_OPENING = re.compile(rf"{SPACE}*([(\[/=]){SPACE}*")
_PAIR_CLOSING = re.compile(rf"{SPACE}*[)\]]")
_CROWDED = re.compile(rf"\d,\d+(?:,\d|{SPACE}+\d)")
_EXAMPLE = "3/8 in, 1 1/2 in, 0.6 cm or 5/8 in (1.5 cm)"
_SIZES_EXAMPLE = "31, 33 1/2, 35 in"
_RULER_BOTTOMS = frozenset((2, 4, 8, 16, 32, 64))
_LARGEST_BARE_RATIO = 5
"""No ratio of the trade is greater (gathers reach 3, a very stretchy knit 150 %): ``80`` lacks its percent sign."""


@dataclass(frozen=True, slots=True)
class Typed:
    """A length as somebody typed it.

    ``high`` is the upper end of a range. ``pair`` is the same length in a second unit, given in brackets.
    ``start`` and ``end`` are offsets in the text that was read, the brackets included. ``number`` and
    ``high_number`` are the numbers as they were typed, without the unit.
    """

    value: Length
    unit: Unit
    text: str
    start: int
    end: int
    high: Length | None = None
    pair: Typed | None = None
    number: str = ""
    high_number: str = ""

    @property
    def is_bare(self) -> bool:
        """Whether it was typed without a unit, which then is that of its row or of the file."""
        return self.text.strip() == self.number

    @property
    def with_unit(self) -> str:
        """As it was typed, and its unit if it is bare: ``36`` of a row in inches is ``36 in``."""
        text = self.text.strip()
        return f"{text} {self.unit.symbol}" if self.is_bare else text

    def printed_step(self) -> Length | None:
        """The step of the last printed decimal, for ``1.59 cm`` 0.01 cm; None when no decimals were printed."""
        decimals = re.search(r"[.,](\d+)$", self.number)
        return Length(self.unit.mm / 10 ** len(decimals.group(1))) if decimals else None


def parse_length(text: str, default: Unit | None = None) -> Typed:
    """One length, with its unit or in the default one, perhaps with its pair in brackets. Raises NotUnderstood.

    >>> parse_length("1 1/2 in").value.mm
    Fraction(381, 10)
    """
    typed = _one(text, 0, default, ranges=False)
    _nothing_more(text, typed.end)
    return typed


def parse_range(text: str, default: Unit | None = None) -> Typed:
    """One length or a range of lengths, ``1/4 to 3/8 in``. Raises NotUnderstood, also for a range the wrong way.

    A hyphen between a whole number and a fraction glues them: ``1-1/2 in`` is one and a half.
    """
    typed = _one(text, 0, default, ranges=True)
    _nothing_more(text, typed.end)
    return typed


def length_at(text: str, start: int, default: Unit | None = None) -> Typed:
    """The length, or the range of lengths, that begins at this offset of a longer text. Raises NotUnderstood.

    In prose a bracket may hold anything: it is the length's pair only when it holds a length of the other system.
    """
    return _one(text, start, default, ranges=True, in_prose=True)


def parse_lengths(text: str, default: Unit | None = None) -> BySize[Typed]:
    """Lengths by size, ``31, 33 1/2, 35 in``; a single one serves every size. Raises NotUnderstood.

    A comma parts two lengths when a space follows it; ``1,5 cm`` is one length with a decimal comma. Each length
    has its own unit, or the last one's unit serves all, or all are in the default unit.
    """
    spans = _split(text)
    units = [_own_unit(text[start:end]) for start, end in spans]
    carried = units[-1] or default
    # Without any unit the last length is the one that lacks it, so its trouble is told first.
    if carried is None:
        _listed(text, *spans[-1], None, alone=len(spans) == 1)
    found = [_listed(text, start, end, carried, alone=len(spans) == 1) for start, end in spans]
    if any(units[:-1]) and not all(units):
        start, end = next(span for span, unit in zip(spans, units, strict=True) if unit is None)
        raise NotUnderstood(
            "a unit after each length, or one after the last that serves all",
            _SIZES_EXAMPLE,
            *trimmed(text, start, end),
        )
    return BySize(tuple(found))


def parse_ratio(text: str) -> Ratio:
    """A percentage, vulgar fraction or decimal: ``80%``, ``4/5``, ``0.8``, ``85 percent``. Raises NotUnderstood."""
    body, name = _without_ending(text, ("per cent", "percent", "%"))
    number = parse_number(body, example="80% or 4/5")
    if name:
        return Ratio.percent(number)
    if number > _LARGEST_BARE_RATIO:
        raise NotUnderstood("a percent sign after the number", "80%", *trimmed(text, 0, len(text)))
    return Ratio(number, as_fraction=any(sign in body for sign in ("/", "⁄", *FRACTION_SIGNS)))


def parse_weight(text: str) -> FabricWeight:
    """Weight of cloth: ``180 g/m2``, ``180 gsm``, ``5 oz/yd2``. Raises NotUnderstood."""
    body, name = _without_ending(text, ("g/m2", "g/m²", "gsm", "oz/yd2", "oz/yd²", "oz"))
    if not name or not body.strip():
        raise NotUnderstood("a weight of cloth", "180 g/m2 or 5 oz/yd2", *trimmed(text, 0, len(text)))
    number = parse_number(body, example="180 g/m2")
    return FabricWeight(number) if name.startswith("g") else FabricWeight.ounces_per_square_yard(number)


def _one(text: str, start: int, default: Unit | None, *, ranges: bool, in_prose: bool = False) -> Typed:
    """The length that begins here, its pair in brackets included."""
    typed = _unpaired(text, start, default, ranges=ranges)
    opening = _PAIR_OPENING.match(text, typed.end)
    if opening is None or NUMBER.match(text, opening.end()) is None:
        return typed
    try:
        pair = _unpaired(text, opening.end(), None, ranges=ranges)
        end = pair.end
        if opening.group(1) in "([":
            closing = _PAIR_CLOSING.match(text, pair.end)
            if closing is None:
                raise NotUnderstood("a closing bracket", "5/8 in (1.5 cm)", *trimmed(text, pair.start, len(text)))
            end = closing.end()
    except NotUnderstood:
        if in_prose:
            return typed
        raise
    if in_prose and pair.unit.system is typed.unit.system:
        return typed
    return replace(typed, text=text[typed.start : end], end=end, pair=pair)


def _unpaired(text: str, start: int, default: Unit | None, *, ranges: bool) -> Typed:
    """The length or the range that begins here."""
    low = number_at(text, start, "a length", _EXAMPLE)
    begin = low.start()
    own_unit, end = _unit_at(text, low.end())
    high = None
    if (link := _RANGE_WORD.match(text, end)) and (high := NUMBER.match(text, link.end())):
        if not ranges:
            raise NotUnderstood("one length, not a range", _EXAMPLE, begin, high.end() - begin)
        high_unit, end = _unit_at(text, high.end())
        own_unit = own_unit or high_unit
        if high_unit is not None and high_unit is not own_unit:
            raise NotUnderstood("the same unit at both ends of a range", "1/4 to 3/8 in", begin, end - begin)
    unit = own_unit or default
    if unit is None:
        raise NotUnderstood("a unit after the number", _EXAMPLE, begin, end - begin)
    first = _length_of(low, unit)
    if high is None:
        return Typed(first, unit, text[begin:end], begin, end, number=low.group())
    last = _length_of(high, unit)
    if last <= first:
        raise NotUnderstood("the smaller end of a range first", "1/4 to 3/8 in", begin, end - begin)
    return Typed(first, unit, text[begin:end], begin, end, last, None, low.group(), high.group())


def _length_of(number: re.Match[str], unit: Unit) -> Length:
    value = number_of(number)
    below = number.group("bottom") or number.group("bottom2")
    sign = number.group("sign")
    parts = int(below) if below else FRACTION_SIGNS[sign].denominator if sign else None
    if unit is Unit.IN and parts is not None and parts not in _RULER_BOTTOMS:
        raise NotUnderstood(
            "halves, quarters, eighths or sixteenths of an inch, as on a ruler",
            "3/8 in",
            number.start(),
            len(number.group()),
        )
    length = Length(value * unit.mm)
    return replace(length, fine=unit.system is System.CENTIMETRES and not length.sits_on(mm(5)))


def _unit_at(text: str, end: int) -> tuple[Unit | None, int]:
    match = _UNIT.match(text, end)
    return (UNIT_NAMES[match.group("unit").lower()], match.end()) if match else (None, end)


def unit_behind(text: str, end: int) -> int:
    """Where the unit ends that stands at this offset; the offset itself if there is none."""
    return _unit_at(text, end)[1]


def _own_unit(part: str) -> Unit | None:
    """The unit that is typed behind the first number of a text."""
    number = NUMBER.match(part, blank_end(part, 0))
    return _unit_at(part, number.end())[0] if number else None


def _listed(text: str, start: int, end: int, unit: Unit | None, *, alone: bool) -> Typed:
    """One length of a list by size, with its offsets in the whole text."""
    part = text[start:end]
    if not alone and not part.strip():
        comma = max(0, start - 1)
        raise NotUnderstood("a length before and after each comma", _SIZES_EXAMPLE, comma, 1)
    try:
        typed = _one(part, 0, unit, ranges=False)
        _nothing_more(part, typed.end)
    except NotUnderstood as trouble:
        if _CROWDED.search(part):
            raise NotUnderstood(
                "a space after each comma between sizes", _SIZES_EXAMPLE, *trimmed(text, start, end)
            ) from None
        raise trouble.moved(start) from None
    if "," in typed.number and not typed.number.startswith("0") and not _on_a_mark(typed.value):
        raise NotUnderstood(
            "a space after a comma between sizes, or a point before decimals",
            "31, 33 in or 31.3 in",
            start + typed.start,
            len(typed.number),
        )
    pair = replace(typed.pair, start=typed.pair.start + start, end=typed.pair.end + start) if typed.pair else None
    return replace(typed, start=typed.start + start, end=typed.end + start, pair=pair)


def _on_a_mark(value: Length) -> bool:
    """Whether a ruler has this mark: ``31,5 in`` can be meant, ``31,33 in`` is rather two sizes without a space."""
    return value.sits_on(inches("1/16")) or value.sits_on(mm(1))


def _nothing_more(text: str, end: int) -> None:
    if rest := rest_of(text, end):
        raise NotUnderstood("one length and nothing behind it", _EXAMPLE, blank_end(text, end), len(rest))


def _without_ending(text: str, endings: tuple[str, ...]) -> tuple[str, str]:
    """The text before the first of these endings that it has, in any letter case, and that ending; else no ending."""
    body = text.rstrip()
    for ending in endings:
        if body[-len(ending) :].lower() == ending:
            return body[: -len(ending)], ending
    return body, ""


def _split(text: str) -> list[tuple[int, int]]:
    """The spans between the commas (or semicolons) that part sizes, brackets kept together."""
    spans, start, depth = [], 0, 0
    for index, char in enumerate(text):
        if char in "([":
            depth += 1
        elif char in ")]":
            depth -= 1
        elif depth == 0 and (char == ";" or (char == "," and not _digits_around(text, index))):
            spans.append((start, index))
            start = index + 1
    spans.append((start, len(text)))
    return spans


def _digits_around(text: str, index: int) -> bool:
    return text[index - 1 : index].isdigit() and text[index + 1 : index + 2].isdigit()
