"""Bare numbers in talk that are taken for lengths because nothing near makes them anything else.

Among lengths, people who sew seldom say a number that is none without naming what it counts. So a number that ends what
is said (``so cut fifteen got it``, ``the horns are three``) is a length, unless a word before it shares, counts, tells
the time, or sets the machine. Small numbers count more often than they measure, and need a word that measures.
"""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.prose.find.cued import PIECES, is_of_cloth
from sitegen.prose.find.measured import Measured, word_at
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words

_SMALL = 12
"""Up to here a number is as often a count as a length."""
_YEARS = 1900
_LARGEST_DIAL = 8
_DIAL_REACH = 8
_CLOCK_REACH = 14
_PERSON_REACH = 5
_NO_LENGTH_BEFORE = words(
    "into in all those these the not no count counts counting counted oh or both only times part page number every"
    " room table step view row block day week than got's who chapter version between times"
)
"""Words before a number that measures nothing: ``split into four``, ``all eight``, ``between the two``."""
_COUNTING_BEFORE = words(
    "cut need needs there's have has got get gets and so make makes made i've we've want wants for on to do give gives"
    " buy bought bring take takes took them of i we you they my by with see"
)
"""Words before a small number that is as likely a count: ``and you cut two``, ``i need two``."""
_MEASURING_BEFORE = words("adding another shortening lengthening minus plus deep wide be lose losing less")
_DIAL = words("machine dial stitch stitches zigzag tension speed needle differential setting overlocker serger")
_CLOCK = words("class we'll lunch break tea o'clock till until morning evening afternoon tonight open opens")
_PERSON = words(
    "guy boy girl son daughter kid niece nephew grandson granddaughter baby toddler turned turns turning birthday"
    " people students ladies girls boys kids"
)


def is_taken_for_a_length(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether a bare number that ends what is said is a length, for want of anything else that it could be."""
    one = found[index]
    if one.value >= _YEARS or one.form is Form.FRACTION:
        return False
    if one.value < 2 and not (one.form is Form.DECIMAL and is_of_cloth(found, index)):
        return False
    before = tokens.words[max(0, one.first - _CLOCK_REACH) : one.first]
    last = before[-1] if before else ""
    if last == "at" and word_at(tokens, one.behind) in ("each", "apiece"):
        return False
    if before[-3:-1] == ["if", "yours"]:
        return False  # another case than that of the text
    last = before[-1] if before else ""
    if last in _NO_LENGTH_BEFORE or not _PERSON.isdisjoint(before[-_PERSON_REACH:]):
        return False
    dial = before[-_DIAL_REACH:] + tokens.words[one.behind : one.behind + 4]
    if one.value <= _LARGEST_DIAL and not _DIAL.isdisjoint(dial):
        return False
    if last == "of":
        return before[-2:-1] != [] and before[-2] in PIECES
    if one.form is not Form.WHOLE:
        return True
    if one.value <= _SMALL:
        return _small(tokens, found, index, before)
    return not _goes_on_a_count(tokens, found, index)


def _small(tokens: Tokens, found: Sequence[Measured], index: int, before: list[str]) -> bool:
    last = before[-1] if before else ""
    if last in _COUNTING_BEFORE or not _CLOCK.isdisjoint(before):
        return False
    if tokens.words[found[index].behind : found[index].behind + 3] in (["on", "the", "left"], ["on", "the", "right"]):
        return False  # as often pleats as centimetres
    return last in _MEASURING_BEFORE or not _goes_on_a_count(tokens, found, index)


def _goes_on_a_count(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether what was counted right before may be counted still: ``twelve napkins so that's four each``."""
    if index == 0 or word_at(tokens, found[index].first - 1) == "at":
        return False  # “five strips of sashing at two”
    other = found[index - 1]
    if other.kind is Kind.LENGTH:
        return False
    thing = word_at(tokens, other.behind)
    return other.value > 1 and len(thing) > 3 and thing.endswith("s") and not thing.endswith("'s")
