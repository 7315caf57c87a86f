"""The words behind a number that say what it measures."""

from __future__ import annotations

from typing import NamedTuple

from sitegen.prose.find.tokens import TokenKind, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import UNIT_NAMES, Unit

_LENGTHS = {name: unit for name, unit in UNIT_NAMES.items() if name.isalpha()} | {"ins": Unit.IN, "mil": Unit.MM}
_MARKS = {'"': Unit.IN, "″": Unit.IN, "”": Unit.IN, "''": Unit.IN, "“": Unit.IN, "’’": Unit.IN, "′′": Unit.IN}
_THIN_SHEETS = words("vinyl plastic film pvc polythene clear thick mylar sheeting")
_TIMES = words("second seconds sec secs minute minutes min mins hour hours hr hrs day days week weeks month months")
_SECOND_THINGS = words("fold turn turning seam row line hem pass piece cut")
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
_MONTHS = words("january february march april may june july august september october november december")
_NUMBERED = words("room page pages chapter lesson")
"""Words before a number that names something, so that ``in`` behind it is the preposition."""
_BEHIND_INCHES = words("wide long deep high tall square from of by to and or")
_DIVERSE = words("colours colors sizes shades fabrics prints ways places batches stages weeks days hours minutes")
"""Words behind a second number before which ``in`` is the preposition: ``cut 4 in 2 colours``."""
_AROUND = words("round around along ways")
"""Words behind ``all`` that tell where a length is added, where ``in all`` alone tells a total."""
_MEASURED = words(
    "edge opening length width depth height distance gap drop hem waist skirt seam allowance strip band overlap ease"
)
_CLOTHS = words(
    "lining rib ribbing fabric interfacing felt cotton contrast jersey denim linen wadding batting fleece"
    " self main muslin calico canvas wool silk satin organza twill cloth lawn flannel"
)
_CUTTING = words("cut cutting make making need sew fold")
_NO_ABBREVIATIONS = words("cm mm m")
"""Units that need no point, so that one before a number or at the end of a line ends the sentence."""
_FOOT_BEHIND = words("long wide of from apart by high deep square length piece strip lengths or and to")


class UnitFound(NamedTuple):
    """What a number measures, and the token behind the unit."""

    kind: Kind
    behind: int
    unit: Unit | None = None


def unit_at(tokens: Tokens, number_first: int, index: int, *, whole: bool, text: str) -> UnitFound | None:
    """The unit that stands at this token, behind a number that began at ``number_first``, or None.

    ``whole`` says that the number is a whole one, which may count things: ``4 in the middle`` has no unit.
    """
    if index >= len(tokens) or _in_one(tokens, number_first, index):
        return None
    hyphen = tokens.words[index] in _HYPHENS and tokens.ends[index - 1] == tokens.starts[index]
    if hyphen and (index + 1 >= len(tokens) or tokens.ends[index] != tokens.starts[index + 1]):
        return None
    at = index + 1 if hyphen else index
    kind, word = tokens.kinds[at], tokens.words[at]
    if kind is TokenKind.MARK:
        return _mark_at(tokens, at, whole=whole)
    if word in _AREAS:
        return UnitFound(Kind.AREA, at + 1)
    if kind is not TokenKind.WORD:
        return None
    if word in _SQUARES and (area := _area_behind(tokens, at)):
        return UnitFound(Kind.AREA, area)
    if word == "mil" and tokens.word(at + 1) in _THIN_SHEETS:
        return None  # thousandths of an inch
    if word in _LENGTHS:
        written_end = tokens.ends[at]
        if text[tokens.starts[at] : written_end] == "M" or (
            word == "in" and not hyphen and _preposition(tokens, number_first, at, whole=whole)
        ):
            return None
        if word == "foot" and whole and tokens.word(at + 1) not in _FOOT_BEHIND and _one_foot(tokens, number_first, at):
            return None
        end = _behind_point(tokens, at, text)
        if text[written_end : written_end + 1] in ("²", "2"):
            return UnitFound(Kind.AREA, end)
        if tokens.word(end) in ("squared",):
            return UnitFound(Kind.AREA, end + 1)
        return UnitFound(Kind.LENGTH, end, _LENGTHS[word])
    if word in _TIMES and not (word == "second" and tokens.word(at + 1) in _SECOND_THINGS):
        return UnitFound(Kind.TIME, at + 1)
    if word in _WEIGHTS:
        return UnitFound(Kind.WEIGHT, _weight_end(tokens, at))
    if word in ("percent", "per") and not hyphen:
        if word == "percent":
            return UnitFound(Kind.PERCENT, at + 1)
        return UnitFound(Kind.PERCENT, at + 2) if tokens.word(at + 1) == "cent" else None
    return None


def _mark_at(tokens: Tokens, at: int, *, whole: bool) -> UnitFound | None:
    mark = tokens.words[at]
    if mark == "%":
        return UnitFound(Kind.PERCENT, at + 1)
    unit = _MARKS.get(mark)
    if unit is None or not tokens.touch(at) or (whole and mark in ('"', "”") and _closes_speech(tokens, at)):
        return None
    return UnitFound(Kind.LENGTH, at + 1, unit)


def _closes_speech(tokens: Tokens, at: int) -> bool:
    """Whether a quotation mark behind a number ends a quotation that was opened shortly before, rather than inches."""
    mark = tokens.words[at]
    opening = '"' if mark == '"' else "“"
    for index in range(at - 1, max(-1, at - 40), -1):
        if tokens.kinds[index] is TokenKind.BREAK:
            return False
        if tokens.words[index] == opening:
            behind_number = (
                mark == '"' and index > 0 and tokens.kinds[index - 1] is TokenKind.NUMBER and tokens.touch(index)
            )
            if behind_number:
                continue
            free = index == 0 or not tokens.touch(index) or tokens.words[index - 1] in "([“"
            return free and not _closed_later(tokens, at, mark)
    return False


def _closed_later(tokens: Tokens, at: int, mark: str) -> bool:
    """Whether another closing mark follows soon behind a word or stop, so that this one is inches."""
    for index in range(at + 1, min(len(tokens), at + 40)):
        if tokens.kinds[index] is TokenKind.BREAK:
            return False
        if tokens.words[index] != mark:
            continue
        if not tokens.touch(index):
            return False
        if tokens.kinds[index - 1] is not TokenKind.NUMBER:
            return True
    return False


def _preposition(tokens: Tokens, number_first: int, at: int, *, whole: bool) -> bool:
    if tokens.touch(at):
        return False
    if tokens.kinds[at - 1] is TokenKind.WORD:
        return True  # “one in twenty-five”: who writes the number as a word writes the unit too
    following = tokens.word(at + 1)
    if _of_a_month(tokens, at + 1) or _of_numbered_things(tokens, number_first, at):
        return True  # “I bought 3 in March”, “cut 4 in 2 colours”, “room 12 in building 4”
    if following == "all":
        return tokens.word(at + 2) not in _AROUND
    if not whole:
        return False
    if following == "each" and tokens.word(at + 2) in ("", "and", "plus"):
        return False  # “two rings at 22 in each, …”
    ahead = tokens.word(number_first - 1)
    if following in ("with", "that", "which", "each") and ahead == "of":
        return False  # “an edge of 38 in with 5/8 in allowed”
    if (
        (following == "each" and ahead == "at")
        or (following == "with" and ahead in ("each", "every"))
        or (following == "one" and ahead in ("a", "an"))
        or (ahead == "of" and tokens.word(number_first - 2) in _MEASURED)
    ):
        return False  # “five loops at 3 in each”, “mark each 9 in with a pin”, “an edge of 24 in the ruffle is”
    if following in _BEHIND_PREPOSITION:
        return True
    if following in _UNLESS_NAMED:
        return tokens.word(number_first - 1) not in ("a", "an", "the", "this", "your")
    return following in _CLOTHS and tokens.word(number_first - 1) in _CUTTING


def _of_a_month(tokens: Tokens, at: int) -> bool:
    """Whether a month stands here: ``may`` and ``march`` in small letters are verbs."""
    return tokens.word(at) in _MONTHS and tokens.text[tokens.starts[at]].isupper()


def _of_numbered_things(tokens: Tokens, number_first: int, at: int) -> bool:
    """Whether the number before ``in`` names a room or a page, or things with a number of their own stand behind it."""
    ahead = tokens.word(number_first - 1)
    if ahead in _NUMBERED and tokens.kinds[at + 1 : at + 2] == [TokenKind.WORD]:
        return tokens.word(at + 1) not in _BEHIND_INCHES
    if tokens.value(at + 1) is None:
        return False
    if tokens.words[at + 1] == "1" and ahead in ("a", "an", "the", "this", "my", "your"):
        behind = tokens.word(at + 2)
        return bool(behind) and (behind == "foot" or behind not in _LENGTHS)  # “a 5 in 1 tool”
    return tokens.word(at + 2) in _DIVERSE


def _in_one(tokens: Tokens, first: int, behind: int) -> bool:
    """Whether the number ends a name such as ``10-in-1`` or begins one."""
    words = tokens.words
    return (words[max(0, first - 3) : first] == ["-", "in", "-"] and words[first] == "1") or (
        words[behind : behind + 4] == ["-", "in", "-", "1"]
    )


def _one_foot(tokens: Tokens, number_first: int, at: int) -> bool:
    return at - number_first == 1 and tokens.value(number_first) != 1


def _behind_point(tokens: Tokens, at: int, text: str) -> int:
    """The token behind a unit and its point: ``3/8-in. seam``. A point that ends the sentence is left to it."""
    if tokens.words[at] not in ("in", "cm", "mm", "m", "yd", "yds", "ft") or at + 1 >= len(tokens):
        return at + 1
    if tokens.words[at + 1] != "." or not tokens.touch(at + 1):
        return at + 1
    behind = tokens.ends[at + 1]
    rest = text[behind : behind + 3].lstrip()
    ends = not rest or rest[0].isupper() or rest[0] in "\"”'’"
    if tokens.words[at] in _NO_ABBREVIATIONS:
        ends = ends or rest[0].isdigit() or tokens.opens_line(at + 2)
    return at + 1 if ends or at + 2 >= len(tokens) or tokens.kinds[at + 2] is TokenKind.BREAK else at + 2


def _area_behind(tokens: Tokens, at: int) -> int:
    if tokens.word(at) in ("square", "sq"):
        begin = at + 2 if at + 1 < len(tokens) and tokens.words[at + 1] == "." else at + 1
        if tokens.word(begin) in _LENGTHS:
            return begin + 1
    return 0


def _weight_end(tokens: Tokens, at: int) -> int:
    """Behind ``g/m2``, ``g per square metre``, ``oz/yd2``; else behind the one word."""
    if at + 2 < len(tokens) and tokens.words[at + 1] == "/":
        return at + 3
    if tokens.word(at + 1) == "per" and (area := _area_behind(tokens, at + 2)):
        return area
    return at + 1
