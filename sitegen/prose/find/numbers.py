"""Numbers, printed and spoken: ``1 1/2``, ``2 and a half``, ``three eighths``, and ``3-8`` as captions write it."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import NamedTuple

from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.words import MONEY, PAYING

_SMALL = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen"
    " eighteen nineteen"
)
_ROUND = "twenty thirty forty fifty sixty seventy eighty ninety"
_ONES = {word: value for value, word in enumerate(_SMALL.split())}
_TENS = {word: 10 * value for value, word in enumerate(_ROUND.split(), start=2)}
_PARTS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
    "fifth": 5, "fifths": 5, "sixth": 6, "sixths": 6, "eighth": 8, "eighths": 8, "eights": 8, "tenth": 10, "tenths": 10,
    "sixteenth": 16, "sixteenths": 16,
}  # fmt: skip
_MANY = frozenset(word for word in _PARTS if word.endswith("s"))
ARTICLES = frozenset(("a", "an"))
_HYPHENS = frozenset(("-", "‐", "‑"))
STARTS = frozenset((*_ONES, *_TENS, *ARTICLES, "hundred", "half", "quarter", "point", "inch"))
"""The words with which a spoken number, or a length without a number before its unit, may begin."""
_CAPTION_PARTS = {4: (1, 3), 8: (1, 3, 5, 7), 16: (1, 3, 5, 7, 9, 11, 13, 15), 2: (1,)}


_GOES_ON = frozenset(("so", "and", "but", "for", "because", "which", "i", "we", "you", "or"))
"""Words behind ``this`` that go on with the sentence, so that it names no thing of its own."""
_BEFORE_HUNDREDS = frozenset(
    ("is", "it's", "that's", "so", "be", "about", "to", "gives", "makes", "gets", "get", "than", "used", "took")
)
_MONEY = MONEY | PAYING | {"pound", "pounds"}


class Form(Enum):
    """How a number was written."""

    WHOLE = "whole"
    DECIMAL = "decimal"
    FRACTION = "fraction"
    MIXED = "mixed"


class Number(NamedTuple):
    """A number from token ``first`` up to, not including, token ``behind``."""

    value: Fraction
    form: Form
    first: int
    behind: int
    spoken: bool = False
    decimals: int | None = None
    hyphened: bool = False
    """Whether it was written ``3-8``, which may also be a range."""


def number_at(tokens: Tokens, index: int) -> Number | None:
    """The number that begins at this token, printed or spoken, or None."""
    kind = tokens.kinds[index]
    if kind is TokenKind.NUMBER:
        return _printed(tokens, index)
    if kind is TokenKind.WORD:
        return _spoken(tokens, index)
    return None


def fraction_at(tokens: Tokens, index: int) -> Number | None:
    """A fraction below one that begins at this token: ``a half``, ``three quarters``, ``3/8``, ``3-8``, or None."""
    number = number_at(tokens, index) if index < len(tokens) else None
    if number is None and index < len(tokens) and tokens.words[index] in _PARTS:
        number = Number(Fraction(1, _PARTS[tokens.words[index]]), Form.FRACTION, index, index + 1, spoken=True)
    return number if number is not None and number.form is Form.FRACTION and number.value < 1 else None


def _touching(tokens: Tokens, index: int) -> bool:
    """Whether the token is a hyphen with nothing between it and its neighbours."""
    return (
        0 < index < len(tokens.words) - 1
        and tokens.words[index] in _HYPHENS
        and tokens.touch(index)
        and tokens.touch(index + 1)
    )


def _printed(tokens: Tokens, index: int) -> Number:
    printed = tokens.printed[index]
    value = printed.value
    if printed.mixed:
        return Number(value, Form.MIXED, index, index + 1)
    if printed.vulgar:
        return Number(value, Form.FRACTION if value < 1 else Form.MIXED, index, index + 1)
    if printed.decimals is not None:
        return Number(value, Form.DECIMAL, index, index + 1, decimals=printed.decimals)
    caption = _caption_fraction(tokens, index) or _caption_decimal(tokens, index)
    if caption is not None:
        return caption
    parts = _parts_at(tokens, index + 1, value)
    if parts is not None:
        return Number(value / parts[0], Form.FRACTION, index, parts[1], spoken=True)
    return _with_fraction(tokens, Number(value, Form.WHOLE, index, index + 1))


def _caption_fraction(tokens: Tokens, index: int) -> Number | None:
    """``3-8``, and ``1-3-8`` or ``1 3-8`` for one and three eighths."""
    if _HYPHENS.isdisjoint(tokens.words[index + 1 : index + 3]):
        return None
    plain = _hyphened(tokens, index)
    if plain is not None and not _touching(tokens, plain[1]):
        return Number(plain[0], Form.FRACTION, index, plain[1], hyphened=True)
    begin = index + 2 if _touching(tokens, index + 1) else index + 1
    behind = _hyphened(tokens, begin) if begin < len(tokens) and tokens.kinds[begin] is TokenKind.NUMBER else None
    if behind is None:
        return None
    whole = tokens.printed[index].value
    return Number(whole + behind[0], Form.MIXED, index, behind[1], hyphened=True)


def _caption_decimal(tokens: Tokens, index: int) -> Number | None:
    """``18 point 9``."""
    digits = tokens.words[index + 2] if tokens.word(index + 1) == "point" and index + 2 in tokens.printed else ""
    if not digits.isdigit() or len(digits) > 3:
        return None
    value = tokens.printed[index].value + Fraction(f"0.{digits}")
    return Number(value, Form.DECIMAL, index, index + 3, spoken=True, decimals=len(digits))


def _hyphened(tokens: Tokens, index: int) -> tuple[Fraction, int] | None:
    if not _touching(tokens, index + 1):
        return None
    top, bottom = tokens.value(index), tokens.value(index + 2)
    if top is None or bottom is None or tokens.printed[index].decimals is not None or bottom.denominator != 1:
        return None
    if top not in _CAPTION_PARTS.get(int(bottom), ()) or len(tokens.words[index + 2]) != len(str(int(bottom))):
        return None
    return top / bottom, index + 3


def _spoken(tokens: Tokens, index: int) -> Number | None:
    word = tokens.words[index]
    if word in ARTICLES:
        if tokens.word(index + 1) == "dozen":
            return Number(Fraction(12), Form.WHOLE, index, index + 2, spoken=True)
        following = tokens.word(index + 1)
        if following in _PARTS and following not in _MANY:
            return Number(Fraction(1, _PARTS[following]), Form.FRACTION, index, index + 2, spoken=True)
        if following == "hundred":
            return _cardinal(tokens, index + 1, index)
        return None
    if word in ("half", "quarter"):
        return Number(Fraction(1, _PARTS[word]), Form.FRACTION, index, index + 1, spoken=True)
    if word == "point":
        return _spoken_decimal(tokens, 0, index, index + 1) if tokens.word(index + 1) in _ONES else None
    return _cardinal(tokens, index, index) if word in _ONES or word in _TENS or word == "hundred" else None


def _cardinal(tokens: Tokens, index: int, first: int) -> Number | None:
    value, behind = _below_hundred(tokens, index)
    if value is None:
        value, behind = 1, index
    if value in (1, 2) and (said := _hundreds_said_short(tokens, behind, first)) is not None:
        value, behind = 100 * value + said[0], said[1]
    if tokens.word(behind) == "hundred":
        value, behind = value * 100, behind + 1
        begin = behind + 1 if tokens.word(behind) == "and" else behind
        rest, end = _below_hundred(tokens, begin)
        # “a hundred and a half” and “one hundred and three eighths” end at the hundred; their fraction comes later.
        if rest is not None and _parts_at(tokens, end, Fraction(rest)) is None:
            value, behind = value + rest, end
    parts = _parts_at(tokens, behind, Fraction(value))
    if parts is not None:
        return Number(Fraction(value) / parts[0], Form.FRACTION, first, parts[1], spoken=True)
    if tokens.word(behind) == "point":
        return _spoken_decimal(tokens, value, first, behind + 1)
    return _with_fraction(tokens, Number(Fraction(value), Form.WHOLE, first, behind, spoken=True))


def _hundreds_said_short(tokens: Tokens, index: int, first: int) -> tuple[int, int] | None:
    """What goes on a number of hundreds said without that word: ``one seventy three``, ``two ten``, ``one oh five``."""
    if tokens.word(index) == "oh":
        ones = _ONES.get(tokens.word(index + 1), 0)
        return (ones, index + 2) if 1 <= ones <= 9 else None
    rest, behind = _below_hundred(tokens, index)
    ahead = tokens.word(first - 1)
    cut = ahead == "at" and tokens.word(first - 2) in ("cut", "cutting")
    if rest is None or rest < 10 or not (cut or ahead in _BEFORE_HUNDREDS):
        return None
    before = tokens.words[max(0, first - 14) : first]
    singular = tokens.word(behind) in ("inch", "centimetre", "centimeter", "metre", "meter", "yard", "millimetre")
    if singular or tokens.word(behind) in ("minutes", "hours") or not _MONEY.isdisjoint(before):
        return None  # “so one twenty inch strip”, “that's two fifty”
    return rest, behind


def _below_hundred(tokens: Tokens, index: int) -> tuple[int | None, int]:
    word = tokens.word(index)
    if word in _TENS:
        begin = index + 2 if _touching(tokens, index + 1) else index + 1
        ones = _ONES.get(tokens.word(begin), 0)
        # “twenty two and a half” is 22 1/2, “twenty five eighths” is nobody's number.
        if 1 <= ones <= 9 and _parts_at(tokens, begin + 1, Fraction(ones)) is None:
            return _TENS[word] + ones, begin + 1
        return _TENS[word], index + 1
    if word in _ONES:
        return _ONES[word], index + 1
    return None, index


def _spoken_decimal(tokens: Tokens, whole: int, first: int, index: int) -> Number | None:
    digits, behind = "", index
    while tokens.word(behind) in _ONES and len(digits) < 4:
        digits, behind = digits + str(_ONES[tokens.word(behind)]), behind + 1
    if not digits:
        return Number(Fraction(whole), Form.WHOLE, first, index - 1, spoken=True)
    return Number(Fraction(f"{whole}.{digits}"), Form.DECIMAL, first, behind, spoken=True, decimals=len(digits))


def _parts_at(tokens: Tokens, index: int, count: Fraction) -> tuple[int, int] | None:
    """Of how many parts the count speaks, ``eighths`` or ``-eighths``, and the token behind."""
    begin = index + 1 if _touching(tokens, index) else index
    word = tokens.word(begin)
    parts = _PARTS.get(word)
    if parts is None or not 0 < count < 3 * parts:
        return None
    if (count == 1) != (word in _MANY) or word == "eights":
        return parts, begin + 1
    # “five eighth inch” and “three-quarter inch”, but three seams in “three quarter-inch seams”.
    one_word = begin == index and _touching(tokens, begin + 1)
    return (parts, begin + 1) if word not in _MANY and count % 2 and count < parts and not one_word else None


def _with_fraction(tokens: Tokens, whole: Number) -> Number:
    """``two and a half``, ``2 and three eighths``, ``1 and 3-8``; else the whole number as it is."""
    if tokens.word(whole.behind) != "and":
        return whole
    fraction = fraction_at(tokens, whole.behind + 1)
    if fraction is not None and fraction.hyphened and _touching(tokens, whole.first - 1):
        return whole  # “sizes 5-6 and 7-8”
    if fraction is None or fraction.first != whole.behind + 1 or _own_measure(tokens, fraction.behind):
        return whole
    return Number(whole.value + fraction.value, Form.MIXED, whole.first, fraction.behind, spoken=True)


def _own_measure(tokens: Tokens, index: int) -> bool:
    """Whether what stands behind makes the fraction one of its own: ``two and a quarter of the edge``."""
    named = tokens.word(index + 1)
    if named in ("this", "that") and (not tokens.word(index + 2) or tokens.word(index + 2) in _GOES_ON):
        return False  # “two and a half of this”
    return tokens.word(index) == "of" and named in ("the", "that", "its", "each", "this")
