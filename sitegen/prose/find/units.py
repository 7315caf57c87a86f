"""The words behind a number that say what it measures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.prose.find.tokens import Token, TokenKind
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import UNIT_NAMES, Unit

_LENGTHS = {name: unit for name, unit in UNIT_NAMES.items() if name.isalpha()} | {"ins": Unit.IN}
_MARKS = {'"': Unit.IN, "″": Unit.IN, "”": Unit.IN, "''": Unit.IN, "“": Unit.IN}
_TIMES = words("second seconds sec secs minute minutes min mins hour hours hr hrs day days week weeks month months")
_WEIGHTS = words("g gsm gram grams gramme grammes kg kilo kilos oz ounce ounces lb lbs pound pounds")
_SQUARES = frozenset(["square", "sq", "squared"])
_AREAS = words("m² cm² yd² in² ft² m2 cm2 sqm")
_HYPHENS = frozenset(("-", "‐", "‑"))

_BEHIND_PREPOSITION = words(
    "the a an this that these those each every its their his her your our my one half two three four"
    " place order total all turn pairs rows with which case both another layers thirds quarters sequence"
    " advance step steps size sizes view views class figure photo picture chart table time"
)
"""Words before which ``in`` is the preposition: ``join all 4 in the middle``, ``cut 2 in each size``."""
_UNLESS_NAMED = words("front between pair row black white red blue")
"""The same, unless an article before the number makes it one thing: ``a 14 in front edge``."""
_CLOTHS = words(
    "lining rib ribbing fabric interfacing felt cotton contrast jersey denim linen wadding batting fleece"
    " self main muslin calico canvas wool silk satin organza twill cloth lawn flannel"
)
_CUTTING = words("cut cutting make making need sew fold")
_FOOT_BEHIND = words("long wide of from apart by high deep square length piece strip lengths or and to")


@dataclass(frozen=True, slots=True)
class UnitFound:
    """What a number measures, and the token behind the unit."""

    kind: Kind
    behind: int
    unit: Unit | None = None


def unit_at(tokens: Sequence[Token], number_first: int, index: int, *, whole: bool, text: str) -> UnitFound | None:
    """The unit that stands at this token, behind a number that began at ``number_first``, or None.

    ``whole`` says that the number is a whole one, which may count things: ``4 in the middle`` has no unit.
    """
    if index >= len(tokens):
        return None
    hyphen = tokens[index].word in _HYPHENS and tokens[index - 1].end == tokens[index].start
    if hyphen and (index + 1 >= len(tokens) or tokens[index].end != tokens[index + 1].start):
        return None
    at = index + 1 if hyphen else index
    token = tokens[at]
    if token.kind is TokenKind.MARK:
        return _mark_at(tokens, at, whole=whole)
    word = token.word
    if word in _AREAS:
        return UnitFound(Kind.AREA, at + 1)
    if token.kind is not TokenKind.WORD:
        return None
    if word in _SQUARES and (area := _area_behind(tokens, at)):
        return UnitFound(Kind.AREA, area)
    if word in _LENGTHS:
        if text[token.start : token.end] == "M" or (
            word == "in" and not hyphen and whole and _preposition(tokens, number_first, at)
        ):
            return None
        if (
            word == "foot"
            and whole
            and _word(tokens, at + 1) not in _FOOT_BEHIND
            and _one_foot(tokens, number_first, at)
        ):
            return None
        end = _behind_point(tokens, at, text)
        if text[token.end : token.end + 1] in ("²", "2") and text[token.end : token.end + 1]:
            return UnitFound(Kind.AREA, end)
        if _word(tokens, end) in ("squared",):
            return UnitFound(Kind.AREA, end + 1)
        return UnitFound(Kind.LENGTH, end, _LENGTHS[word])
    if word in _TIMES:
        return UnitFound(Kind.TIME, at + 1)
    if word in _WEIGHTS:
        return UnitFound(Kind.WEIGHT, _weight_end(tokens, at))
    if word in ("percent", "per") and not hyphen:
        if word == "percent":
            return UnitFound(Kind.PERCENT, at + 1)
        return UnitFound(Kind.PERCENT, at + 2) if _word(tokens, at + 1) == "cent" else None
    return None


def _word(tokens: Sequence[Token], index: int) -> str:
    return tokens[index].word if 0 <= index < len(tokens) and tokens[index].kind is TokenKind.WORD else ""


def _mark_at(tokens: Sequence[Token], at: int, *, whole: bool) -> UnitFound | None:
    token = tokens[at]
    if token.word == "%":
        return UnitFound(Kind.PERCENT, at + 1)
    unit = _MARKS.get(token.word)
    speech = whole and token.word in ('"', "”") and _closes_speech(tokens, at)
    if unit is None or tokens[at - 1].end != token.start or speech:
        return None
    return UnitFound(Kind.LENGTH, at + 1, unit)


def _closes_speech(tokens: Sequence[Token], at: int) -> bool:
    """Whether a quotation mark behind a number ends a quotation that was opened shortly before, rather than inches."""
    mark = tokens[at].word
    opening = '"' if mark == '"' else "“"
    for index in range(at - 1, max(-1, at - 40), -1):
        token = tokens[index]
        if token.kind is TokenKind.BREAK:
            return False
        if token.word == opening:
            behind_number = (
                mark == '"'
                and index > 0
                and tokens[index - 1].kind is TokenKind.NUMBER
                and tokens[index - 1].end == token.start
            )
            if behind_number:
                continue
            free = index == 0 or tokens[index - 1].end < token.start or tokens[index - 1].word in "([“"
            return free and not _closed_later(tokens, at, mark)
    return False


def _closed_later(tokens: Sequence[Token], at: int, mark: str) -> bool:
    """Whether another closing mark follows soon behind a word or stop, so that this one is inches."""
    for index in range(at + 1, min(len(tokens), at + 40)):
        token = tokens[index]
        if token.kind is TokenKind.BREAK:
            return False
        if token.word != mark:
            continue
        if tokens[index - 1].end < token.start:
            return False
        if tokens[index - 1].kind is not TokenKind.NUMBER:
            return True
    return False


def _preposition(tokens: Sequence[Token], number_first: int, at: int) -> bool:
    following = _word(tokens, at + 1)
    if following == "each" and _word(tokens, at + 2) in ("", "and", "plus"):
        return False  # “two rings at 22 in each, …”
    if following in _BEHIND_PREPOSITION:
        return True
    if following in _UNLESS_NAMED:
        return _word(tokens, number_first - 1) not in ("a", "an", "the", "this", "your")
    return following in _CLOTHS and _word(tokens, number_first - 1) in _CUTTING


def _one_foot(tokens: Sequence[Token], number_first: int, at: int) -> bool:
    return at - number_first == 1 and tokens[number_first].value != 1


def _behind_point(tokens: Sequence[Token], at: int, text: str) -> int:
    """The token behind a unit and its point: ``3/8-in. seam``. A point that ends the sentence is left to it."""
    token = tokens[at]
    if token.word not in ("in", "cm", "mm", "m", "yd", "yds", "ft") or at + 1 >= len(tokens):
        return at + 1
    point = tokens[at + 1]
    if point.word != "." or point.start != token.end:
        return at + 1
    rest = text[point.end : point.end + 3].lstrip()
    ends = not rest or rest[0].isupper() or rest[0] in "\"”'’"
    return at + 1 if ends or at + 2 >= len(tokens) or tokens[at + 2].kind is TokenKind.BREAK else at + 2


def _area_behind(tokens: Sequence[Token], at: int) -> int:
    if _word(tokens, at) in ("square", "sq"):
        begin = at + 2 if at + 1 < len(tokens) and tokens[at + 1].word == "." else at + 1
        if _word(tokens, begin) in _LENGTHS:
            return begin + 1
    return 0


def _weight_end(tokens: Sequence[Token], at: int) -> int:
    """Behind ``g/m2``, ``g per square metre``, ``oz/yd2``; else behind the one word."""
    if at + 2 < len(tokens) and tokens[at + 1].word == "/":
        return at + 3
    if _word(tokens, at + 1) == "per" and (area := _area_behind(tokens, at + 2)):
        return area
    return at + 1
