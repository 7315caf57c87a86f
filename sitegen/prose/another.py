"""Whether a length that seems to say another again is one of its own, a term of a sum, or only about as long."""

from __future__ import annotations

import re

from sitegen.prose.find import Measured, Reading
from sitegen.prose.link_words import HEDGES, PLACES, RULERS
from sitegen.prose.links import Link, of_one_system
from sitegen.prose.words import words
from sitegen.quantities import Unit

_MORE = words(
    "more less longer shorter wider narrower deeper bigger larger smaller higher lower extra too over under above below"
    " apart away left short further after once before with without including plus minus altogether now"
)
"""Words behind a length that make it a difference, or a length of its own: ``2.8 m, which is 50 cm more``."""
_NEEDED = words("is are will would should does do makes make gives give leaves of")
"""Words behind ``so 2 m`` that tell how much of a width is needed: ``it is 60 in wide, so 2 m is enough``."""
_DIMENSIONS = {
    word: name
    for name, said in {
        "width": "wide across width",
        "length": "long length",
        "height": "high tall height",
        "depth": "deep depth",
        "thickness": "thick thickness",
    }.items()
    for word in said.split()
}
_ENOUGH = words("enough plenty ample fine too do be not")
_NEVER = words("won't isn't wouldn't can't")
_OF_PART = (["at"], ["for"], ["on"], ["with"])
"""Words behind a length in a bracket that give another length of one part: ``5/8 in (1 cm at the neck)``."""
_SCALES = words("scale drawing plan sketch map paper")
_SOLD_IN = (Unit.YD, Unit.M, Unit.FT)
_CHANGED = words("now wait sorry no was")
_DIRECTIONS = words("down in up along") | _DIMENSIONS.keys()
_IN_ALL = (["in", "all"], ["in", "total"], ["all", "told"])
_WISHES = words("want need like have prefer plan add can count include")
_OF_UNITS = PLACES | words("in inch cm mm m metre metres meter meters yd yds yard yards ft feet foot us eu")
"""Words in the heading of a column that tell its unit."""
_SIZE_ROW = re.compile(r"[ \t]*\|?[ \t*]*(?:size[ \t]+)?(?:(?:x{0,3}|\d)[sl]|m|\d{1,2})[ \t*]*\|", re.IGNORECASE)
_MOST_ROWS = 200
"""Rows above a row of a table among which its headings are looked for, so that time grows with the text."""
_SIGNS = words("+ − - × * plus minus times")
_HEDGED_PAIRS = tuple((word, way) for word in ("just", "slightly", "bit", "little") for way in ("under", "over"))


def is_another(reading: Reading, one: Measured, other: Measured, link: Link) -> bool:
    """Whether the words around the second length make it a length of its own: ``2 in wide (40 cm long)``."""
    words = reading.tokens.words
    after = words[link.behind : link.behind + 3]
    named, measured = (_DIMENSIONS.get(word) for word in (words[one.behind], after[0] if after else ""))
    if named and measured and named != measured:
        return True
    if link.words == ("|",):
        return _under_other_headings(reading, one, other)
    if one.first and words[one.first - 1] == "or" and any(each.behind == one.first - 1 for each in reading.numbers):
        return True  # “a quarter or half an inch, so about a centimetre”
    if link.bracket:
        elsewhere = not (PLACES | RULERS).isdisjoint(words[other.behind : other.behind + 6])
        of_part = len(link.words) == 1 and words[other.behind : other.behind + 1] in _OF_PART and not elsewhere
        return of_part or other.carried  # “hip 37 in (87, 69, 94 cm)” tells a row of lengths
    if not _CHANGED.isdisjoint(words[one.behind : other.first]):
        return True
    before = words[max(0, one.first - 8) : one.first]
    if not _SCALES.isdisjoint(before) or (before[-1:] == [":"] and after[:1] == [":"]):
        return True  # “28 in: 65 cm, 30 in: 70 cm”
    if after[:1] == ["of"] and one.unit not in _SOLD_IN and not of_one_system(one, other):
        return True  # “the waist is 28 in, that's 65 cm of elastic”
    if after[:2] == ["and", "a"] and one.unit and other.unit:  # “an inch, so 2 cm and a bit”
        more = (one.value * one.unit.mm) / other.unit.mm - other.value
        return 0 <= more <= 1
    return bool(after) and _goes_on_otherwise(after, words[one.behind], (one, other), link)


def _goes_on_otherwise(after: list[str], before: str, both: tuple[Measured, Measured], link: Link) -> bool:
    """Whether the words behind the second length tell another thing of it, with the word behind the first one."""
    one, other = both
    if after[0] == "from" and (before in _DIRECTIONS or before == "from"):
        return True  # “2 inches down and it's 3 cm from the notch”
    if after[0] in _MORE:
        return after != ["more", "or", "less"]
    if other.carried and after[0] in ("or", "to", "and", ","):
        return True  # “an inch or so, about 2 or 3 centimetres”
    if after[0] == "if" and of_one_system(one, other):
        return True  # “1.8 m if your hips are over 100 cm, or 0.9 m if you are under that”
    if after[:2] == ["if", "you"]:
        return after[2:] != [] and after[2] in _WISHES
    if after[:2] in _IN_ALL or (after[:2] == ["off", "the"] and after[2:] and after[2] in _DIMENSIONS):
        return True
    if "so" in link.words and (after[0] in _NEVER or (after[0] in _NEEDED and not _ENOUGH.isdisjoint(after[1:2]))):
        return True
    return _DIMENSIONS.get(before) == "width" and "so" in link.words and after[0] in _NEEDED


def _under_other_headings(reading: Reading, one: Measured, other: Measured) -> bool:
    """Whether the columns of a table in which two lengths stand tell two measures, such as waist and band.

    The unit in a heading is no part of its name: ``Waist`` and ``Waist cm`` are one measure. Without headings a row
    that is named for a size tells several measures of it, and any other row one.
    """
    text = reading.text
    first, second = reading.tokens.starts[one.first], reading.tokens.starts[other.first]
    begins = text.rfind("\n", 0, first) + 1
    heading = _heading_above(text, begins)
    if not heading:
        return _SIZE_ROW.match(text, begins) is not None
    cells = heading.lower().split("|")
    places = (text.count("|", begins, place) for place in (first, second))
    names = [_name_of_column(cells[place]) if place < len(cells) else frozenset[str]() for place in places]
    return not (names[0] <= names[1] or names[1] <= names[0])


def _heading_above(text: str, begins: int) -> str:
    """The first row of the table whose row begins at this offset; empty for that row itself."""
    heading = ""
    for _ in range(_MOST_ROWS):
        before = text.rfind("\n", 0, max(begins - 1, 0)) + 1
        row = text[before : max(begins - 1, 0)]
        if "|" not in row:
            break
        heading, begins = row, before
    return heading


def _name_of_column(heading: str) -> frozenset[str]:
    """The words of a heading without those that tell its unit."""
    return frozenset(re.findall(r"[^\W\d_]+", heading)) - _OF_UNITS


def is_term(reading: Reading, one: Measured) -> bool:
    """Whether a sign joins a length to the number before it; else it is the mark of a list or of bold print."""
    before = reading.tokens.words[max(0, one.first - 2) : one.first]
    if not before or before[-1] not in _SIGNS:
        return False
    return before[-1].isalpha() or any(number.behind == one.first - 1 for number in reading.numbers)


def is_hedged(reading: Reading, one: Measured, link: Link) -> bool:
    """Whether words say that the one length is only about the other."""
    before = reading.tokens.words[max(0, one.first - 2) : one.first]
    return (
        bool(HEDGES & set(link.words))
        or before[-1:] in ([word] for word in HEDGES)
        or tuple(before) in _HEDGED_PAIRS
        or ("just" in link.words and bool({"under", "over"} & set(link.words)))
    )
