"""Units that a number takes from its neighbour: ``5 x 7 in``, ``4, 6 or 8 in``, ``1 + 40 + 1 cm``."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sitegen.prose.find.measured import Measured, between, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_PARTING = ("divid", "split", "multipl", "lengthen", "shorten")
_TIMES = frozenset(("x", "×", "by", "*"))
_BEFORE_SHARES = words("in the each have last other shows roughly about it's to by")
"""Words before a share."""
_SIDES = words("wide long deep high tall across")
_WIDTHS = {Unit.M: (Unit.CM, range(70, 321)), Unit.YD: (Unit.IN, range(27, 119))}
"""In which unit, and from what to what, the width of cloth is said that is bought by the metre or yard."""
_MOST_PIECES = 6
_ENDS = words(". , ; : ) wide or for and but in")
_SUMS = frozenset(("+", "plus", "−", "minus", "less", "=", "equals", "makes", "is"))


def with_carried_units(tokens: Tokens, numbers: Sequence[Measured]) -> list[Measured]:
    """The numbers, those without a unit given that of the length beside them where the words allow it."""
    found = list(numbers)
    for index in range(len(found) - 2, -1, -1):
        one, other = found[index], found[index + 1]
        sides = between(tokens, one, other) in (("x",), ("×",))
        bare = one.kind is None and (not one.counted or sides)
        giving = other.kind in (Kind.LENGTH, Kind.PERCENT) and not other.supplied
        if bare and giving and _carries_back(tokens, found, index):
            found[index] = replace(one, kind=other.kind, unit=other.unit, carried=True)
    for index in range(1, len(found)):
        one, other = found[index - 1], found[index]
        if other.kind is None and one.kind is Kind.LENGTH and _carries_on(tokens, one, other):
            found[index] = replace(other, kind=one.kind, unit=one.unit, carried=True)
        elif other.kind is None and not other.counted and (width := _width_of_cloth(tokens, one, other)) is not None:
            found[index] = replace(other, kind=Kind.LENGTH, unit=width, carried=True)
    return found


def _width_of_cloth(tokens: Tokens, one: Measured, other: Measured) -> Unit | None:
    """The unit of the width in ``3.1 m of 115 cm wide, or 2.4 m of 150``."""
    bought = _WIDTHS.get(one.unit) if one.kind is Kind.LENGTH and one.unit is not None else None
    if bought is None or other.form is not Form.WHOLE or between(tokens, one, other) != ("of",):
        return None
    ends = other.behind >= len(tokens) or tokens.words[other.behind] in _ENDS or tokens.opens_line(other.behind)
    return bought[0] if ends and other.value in bought[1] else None


def _carries_back(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    one, other = found[index], found[index + 1]
    link = between(tokens, one, other)
    if link and link[0] in ("-",) and len(link) == 2:
        link = link[1:]
    if len(link) == 2 and link[0] == "," and link[1] in ("or", "and"):
        link = (link[1],)
    if len(link) == 2 and link[0] in _SIDES and link[1] in _TIMES:
        return other.kind is Kind.LENGTH  # “48 long × 49 cm wide”
    if len(link) != 1 or (one.form is Form.FRACTION and one.value.denominator % 2):
        return False  # no ruler has thirds or fifths
    sign = link[0]
    if sign in (",", "to") and _is_a_share(tokens, one):
        return False
    if other.kind is Kind.PERCENT:
        return sign in ("or", "and") and one.form is Form.WHOLE and one.value > 20
    if sign in _TIMES:
        return not _multiplies(tokens, one, other)
    if sign in ("+", "plus", "−", "minus", "less") or (sign in ("-", "–") and _spaced(tokens, one.behind)):
        return True
    if sign in ("=", "is", "makes", "equals"):
        before = between(tokens, found[index - 1], one) if index > 0 else ()
        if index > 1 and before in (("×",), ("x",), ("*",)) and found[index - 1].form is Form.WHOLE:
            before = between(tokens, found[index - 2], found[index - 1])  # “110 + 2 × 25 = 160 cm”
        return bool(set(before) & _SUMS)
    if one.value == 1 and one.spoken and sign in ("and", "or"):
        return False
    if sign in ("or", "and", "&", "to"):
        joined = sign in ("and", "&") and other.form is Form.FRACTION and not other.carried
        return not (one.form is Form.WHOLE and joined)
    if sign == ",":
        listed = other.carried or one.form is not Form.WHOLE
        if not listed and index > 0:
            listed = found[index - 1].kind is None and between(tokens, found[index - 1], one) == (",",)
        return listed
    return False


def _is_a_share(tokens: Tokens, one: Measured) -> bool:
    """Whether a fraction said alone is a part of something: ``in half to 2 cm``, ``the last quarter, 40 cm``."""
    alone = one.spoken and one.form is Form.FRACTION and one.behind == one.first + 1
    return alone and word_at(tokens, one.first - 1) in _BEFORE_SHARES


def _spaced(tokens: Tokens, index: int) -> bool:
    return tokens.ends[index - 1] < tokens.starts[index] and tokens.ends[index] < tokens.starts[index + 1]


def _multiplies(tokens: Tokens, one: Measured, other: Measured) -> bool:
    """Whether ``2 x 3/8 in`` is twice a length, and not a rectangle as ``5 x 7 in`` is."""
    word = tokens.words[one.behind]
    if one.form is Form.DECIMAL:
        return one.value < 2 and other.value >= 5 * one.value
    if one.form is not Form.WHOLE:
        return one.form is Form.FRACTION and word in ("×", "*") and other.form is Form.WHOLE
    if word == "by":
        return False
    if one.value <= _MOST_PIECES and one.value < other.value and _has_sides(tokens, other):
        return True  # “2 × 27 cm × 18 cm”: who writes the unit of both sides counts with the first number
    before, after = word_at(tokens, one.first - 1), word_at(tokens, other.behind)
    return (
        (other.unit is not None and other.value * other.unit.mm < 26 and one.value <= 12)
        or before in ("+", "plus", "−", "minus", "less", "=")
        or (before in ("and", "is", ":") and one.value <= 4)
        or after in ("=", "+", "plus", "makes", "equals", "is")
        or _product_follows(tokens, one, other)
    )


def _has_sides(tokens: Tokens, one: Measured) -> bool:
    """Whether a metric length with its own unit is the first side of two, with a unit each, behind a count."""
    at = one.behind + 1
    if one.unit not in (Unit.CM, Unit.MM) or one.carried or tokens.words[one.behind : at] != ["×"]:
        return False
    behind = tokens.words[at + 2 : at + 3]
    return tokens.value(at) is not None and tokens.word(at + 1) in ("cm", "mm") and behind not in (["×"], ["x"], ["="])


def _product_follows(tokens: Tokens, one: Measured, other: Measured) -> bool:
    """Whether about the product of the two stands right behind them: ``3 × 33 in, or 99 in``."""
    behind = (tokens.value(index) for index in range(other.behind, other.behind + 4))
    values = [value for value in behind if value is not None]
    product = one.value * other.value
    return any(abs(value - product) * 4 <= product for value in values[:1])


def _carries_on(tokens: Tokens, one: Measured, other: Measured) -> bool:
    link = between(tokens, one, other)
    if len(link) != 1:
        return False
    after = word_at(tokens, other.behind)
    noun = other.behind < len(tokens) and tokens.kinds[other.behind] is TokenKind.WORD
    if link[0] == "by":
        return not any(word.startswith(_PARTING) for word in tokens.words[max(0, one.first - 4) : one.behind + 1])
    if link[0] in ("x", "×"):
        counts = noun and after.endswith("s")
        return after != "=" and not counts and not (other.form is Form.WHOLE and other.value <= 4)
    if link[0] in ("+", "−"):
        return after == "=" or after in ("+", "−") or (other.form is not Form.WHOLE and not noun)
    if one.form is Form.FRACTION and other.form is Form.FRACTION and link[0] in ("or", "to", "and"):
        return after != "of"
    if link[0] in ("or", "to") or (link[0] == "=" and not one.carried):
        return other.form in (Form.FRACTION, Form.MIXED, Form.DECIMAL) and after not in ("of", "%")
    return False
