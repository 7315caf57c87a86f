"""How a typed number slips: pure functions from its text to the texts that a hand or an eye makes of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.quantities import NotUnderstood, decimal, parse_number, vulgar

NEIGHBOUR = "neighbouring mark of the ruler"
DIGIT = "digit of a fraction or decimal"
TRANSPOSED = "digits transposed"
POINT = "decimal point moved"
WHOLE = "neighbouring whole number"
DROPPED = "fraction or decimals dropped"
UNIT = "wrong unit"
NUMBER_KINDS = (NEIGHBOUR, DIGIT, TRANSPOSED, POINT, WHOLE, DROPPED)

_VULGAR = re.compile(r"(?:(?P<whole>\d+)(?P<gap>[-\s]+))?(?P<top>\d+)/(?P<bottom>\d+)")
_DECIMAL = re.compile(r"(?P<whole>\d*)\.(?P<part>\d+)")
_MARKS = {"in": ("1/8", "1/16"), "yd": ("1/8",), "cm": ("1/2", "1/10"), "mm": ("1",), "m": ("1/10",), "%": ("5", "1")}
_RULER_BOTTOMS = (2, 4, 8, 16)
_OTHER_UNITS = {"in": ("cm",), "cm": ("in", "mm"), "mm": ("cm",), "yd": ("m",), "m": ("yd", "cm")}


def number(text: str) -> Fraction | None:
    """The value of a typed number, None when it is none any more."""
    try:
        return parse_number(text)
    except NotUnderstood:
        return None


def written(value: Fraction, like: str, unit: str) -> str:
    """A number in the style of another: with a vulgar fraction, or with decimals."""
    if "." in like or (unit not in ("in", "yd", "") and "/" not in like):
        return decimal(value, 3)
    return vulgar(value)


def slips_of_number(text: str, unit: str) -> Iterator[tuple[str, str]]:
    """Each kind of slip with the text that it makes of this one. The value always changes and stays above nothing."""
    before = number(text)
    seen = {text}
    for kind, slipped in _all(text, unit, before or Fraction(0)):
        after = number(slipped)
        if before is not None and after is not None and after > 0 and after != before and slipped not in seen:
            seen.add(slipped)
            yield kind, slipped


def other_units(unit: str) -> tuple[str, ...]:
    """The units that are written instead of this one."""
    return _OTHER_UNITS.get(unit, ())


def _all(text: str, unit: str, value: Fraction) -> Iterator[tuple[str, str]]:
    match = _VULGAR.fullmatch(text) or _DECIMAL.fullmatch(text)
    if match and (match["whole"] or "").strip("0"):
        yield DROPPED, match["whole"]
    for mark in _MARKS.get(unit, ()):
        for apart in (Fraction(mark), -Fraction(mark)):
            if value + apart > 0:
                yield NEIGHBOUR, written(value + apart, text, unit)
    yield from ((DIGIT, each) for each in _digit(text))
    yield from ((TRANSPOSED, each) for each in _transposed(text))
    yield from ((POINT, each) for each in _point(text, unit))
    yield from ((WHOLE, each) for each in _whole(text))


def _digit(text: str) -> Iterator[str]:
    """Another numerator, another denominator, or another last decimal."""
    if match := _VULGAR.fullmatch(text):
        top, bottom = int(match["top"]), int(match["bottom"])
        before = text[: match.start("top")]
        apart = 2 if bottom in _RULER_BOTTOMS else 1
        tops = [other for other in (top - apart, top + apart) if 0 < other < bottom]
        bottoms = [other for other in (bottom // 2, bottom * 2) if other in _RULER_BOTTOMS and top < other]
        yield from (f"{before}{other}/{bottom}" for other in tops)
        yield from (f"{before}{top}/{other}" for other in bottoms)
    elif match := _DECIMAL.fullmatch(text):
        last = int(match["part"][-1])
        yield from (f"{text[:-1]}{(last + apart) % 10}" for apart in (3, 7) if (last + apart) % 10)


def _transposed(text: str) -> Iterator[str]:
    """Two neighbouring digits that changed places, also over the point or over the gap before a fraction."""
    if match := _VULGAR.fullmatch(text):
        whole, top = match["whole"] or "", match["top"]
        rest = text[match.start("gap") :] if whole else text
        yield from (swapped + rest for swapped in _swaps(whole))
        if len(whole) == len(top) == 1 and whole != top and int(whole) < int(match["bottom"]):
            yield f"{top}{match['gap']}{whole}/{match['bottom']}"
    elif match := _DECIMAL.fullmatch(text):
        whole, part = match["whole"], match["part"]
        yield from (f"{swapped}.{part}" for swapped in _swaps(whole))
        if whole.strip("0") and whole[-1] != part[0] and not (len(whole) == 1 and part[0] == "0"):
            yield f"{whole[:-1]}{part[0]}.{whole[-1]}{part[1:]}"
    elif text.isdigit():
        yield from _swaps(text)


def _swaps(digits: str) -> Iterator[str]:
    for index in range(len(digits) - 1):
        first, second = digits[index], digits[index + 1]
        swapped = digits[:index] + second + first + digits[index + 2 :]
        if first != second and swapped[0] != "0":
            yield swapped


def _point(text: str, unit: str) -> Iterator[str]:
    """The point a place to the left or the right; only where decimals are usual."""
    if match := _DECIMAL.fullmatch(text):
        whole, part = match["whole"].lstrip("0"), match["part"]
        yield (whole + part[0]).lstrip("0") + (f".{part[1:]}" if part[1:] else "")
        if whole:
            yield f"{whole[:-1] or 0}.{whole[-1]}{part}"
    elif text.isdigit() and unit in ("cm", "mm", "m"):
        yield f"{text}0"
        yield f"{text[:-1] or 0}.{text[-1]}"


def _whole(text: str) -> Iterator[str]:
    """The whole part one more or one less."""
    match = re.match(r"\d+(?!\d*/)", text)
    if match is None:
        return
    whole = int(match.group())
    rest = text[match.end() :]
    yield f"{whole + 1}{rest}"
    if whole > 1 or (whole and rest):
        yield f"{whole - 1}{rest}" if whole > 1 or rest.startswith(".") else rest.strip(" -")
