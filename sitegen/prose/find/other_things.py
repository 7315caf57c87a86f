"""Bare numbers in talk that are no lengths: prices, needles, ages, settings, times, temperatures and counts."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from sitegen.prose.find.measured import Measured, says_money
from sitegen.prose.find.numbers import Form
from sitegen.prose.find.tokens import Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import MONEY, PAYING, words

_MONEY_REACH = 12
"""Tokens: how far a price reaches on, if no length comes between."""
_COST_REACH = 18
"""Tokens from a price by the yard to what was paid."""
_MONEY = MONEY | PAYING | words("pounds pound")
_THING_REACH = 6
_THINGS = words(
    "needle needles size sizes age aged tension stitches degrees percent minutes minute hours hour seconds oven iron"
    " year years old o'clock gauge kilos"
)
"""Words near a number that make it something else."""
SIDES = words("wide tall deep high long across round around square")
"""Words behind a number that tell which way it is measured."""
_WASHING = words("wash washed washing prewash washes")
_PARTING = words("cut cuts divide divided split fold folded share")
_STITCHING = words("stitch stitched zigzag")
_PEOPLE = words(
    "he's she's kid daughter son niece nephew grandson granddaughter boy girl baby turned dog"
    " mum's mom's dad's gran's nan's grandma's"
)
_NEEDLE_SIZES = (60, 65, 70, 75, 80, 90, 100, 110, 120, 116)
"""Hundredths of a millimetre (common practice, no source); ``a hundred sixteen`` is 100 and its older number 16."""
_NEEDLE_REACH = 20
_NO_PLURALS = words("that's it's there's what's across this plus less makes gives leaves")
_COUNTED_BEHIND = words("times divided into pins clips pieces")
_LARGEST_DIAL = 20
_COUNTING = words("sold made counted were")
_THERE_WERE = (["there", "were"], ["there", "are"])
_GROUPS = words("class group course workshop guild")
_NAMED_GROUP = 5
"""Words: ``in the saturday morning class``."""
_LATELY = 3
_LARGEST_SIZE = 32
_PATTERNS = words("pattern line lines graded grading")
_HOURS = 12
_CLOCK = words("lunch break class tea o'clock bus train doors")
_LONGEST_STITCH = 8
_DIAL_REACH = 6
_MAKES = words("get gets fit fits have has")


def is_something_else(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether words near a number without a unit make it no length."""
    one = found[index]
    begin = one.first - _MONEY_REACH
    said = [other for other in found[max(0, index - 2) : index] if _has_unit(other)]
    if said:
        begin = max(begin, said[-1].behind)
    before = tokens.words[max(0, begin) : one.first]
    after = tokens.words[one.behind : one.behind + 3]
    last = found[max(0, index - 2) : index]
    named = [other.behind for other in last if other.kind is not None or other.counted]
    lately = tokens.words[max(0, begin, *named) : one.first]
    timed = any(other.kind is Kind.TIME and one.first - other.behind < _THING_REACH for other in last)
    sided = not SIDES.isdisjoint(after[:1])
    if not sided and (_is_price(before) or _is_price(after[:2])):
        return True
    if not sided and (timed or not _THINGS.isdisjoint(lately[-_THING_REACH:]) or not _THINGS.isdisjoint(after[:1])):
        return True
    whole = one.form is Form.WHOLE
    if sided and before[-1:] and before[-1] in _MAKES and whole and one.value <= 6:
        return True  # “I get three across”
    if sided and whole and (not _STITCHING.isdisjoint(before[-4:]) or _is_plural(after[1:2])):
        return True  # “stitch it on 3 wide”, “6 wide stripes”
    if whole and one.value <= _LARGEST_DIAL and (before[-1:] in (["a"], ["an"]) and not sided and after[:1] != ["by"]):
        return True  # “back to about a three”, “for a 16 and over”
    if after == ["on", "the", "dial"] or before[-2:] in (["class", "of"], ["group", "of"]):
        return True
    if last and last[-1].counted and tokens.words[last[-1].behind : one.first] in (["or"], ["to"], ["and"]):
        return True  # “a size 12 or 14”
    if whole and (not _COUNTING.isdisjoint(before[-1:]) or before[-2:] in (*_THERE_WERE, ["by", "the"])):
        return True  # “i sold fifteen at the fair”, “buy them by the hundred”
    if (
        whole
        and after[:2] in (["in", "the"], ["in", "my"])
        and not _GROUPS.isdisjoint(tokens.words[one.behind : one.behind + _NAMED_GROUP])
    ):
        return True  # “we had eighteen in the class”
    if before[-1:] == ["took"] and any(other.kind is Kind.TIME for other in found[max(0, index - _LATELY) : index]):
        return True  # “it took me forty five minutes and the next one took twenty”
    if whole and before[-1:] in (["a"], ["the"]) and one.value <= _LARGEST_SIZE and _is_of_a_pattern(before):
        return True  # “the pattern goes up to a twenty two”
    if whole and before[-1:] == ["into"]:
        return True  # “cut that into six”
    if one.value <= _HOURS and before[-1:] == ["at"] and not _CLOCK.isdisjoint(before):
        return True  # “we stop for lunch at twelve”
    if one.form is Form.DECIMAL and one.value <= _LONGEST_STITCH and "machine" in before[-_DIAL_REACH:]:
        return True  # “my machine goes to three point five”
    if before[-1:] == ["at"] and not _WASHING.isdisjoint(before[-6:]):
        return True
    if before[-1:] == ["in"] and whole and one.value <= 12 and not _PARTING.isdisjoint(before[-4:]):
        return True  # “cut it in three”
    if (
        after[:2] in (["to", "1"], ["to", "one"])
        or after == ["in", "a", "row"]
        or not _COUNTED_BEHIND.isdisjoint(after[:1])
    ):
        return True
    if before[-1:] in (["length"], ["width"]) and one.value <= 8:
        return True
    if before[-1:] in (["so"], ["that's"], ["is"]) and not sided and _is_a_cost(tokens, one):
        return True
    if _divides(tokens, found, index) or _is_a_needle(tokens, one) or _of_counted(tokens, found, index):
        return True
    return (
        not _PEOPLE.isdisjoint(before[-2:]) and not sided and after[:2] != ["from", "the"] and "measuring" not in before
    )


def _is_of_a_pattern(before: list[str]) -> bool:
    """Whether sizes of a pattern are spoken of."""
    return not _PATTERNS.isdisjoint(before[-_DIAL_REACH:])


def _is_a_cost(tokens: Tokens, one: Measured) -> bool:
    """Whether a price by the length was named shortly before, so that this is what the whole costs."""
    near = tokens.words[max(0, one.first - _COST_REACH) : one.first]
    return any(first in _MONEY and second in ("a", "per") for first, second in pairwise(near))


def _is_price(near: Sequence[str]) -> bool:
    return says_money(near) or not _MONEY.isdisjoint(near)


def _has_unit(one: Measured) -> bool:
    return one.kind is Kind.LENGTH and not one.supplied and not one.carried


def _divides(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it divides something, or is what dividing a count gives: ``150 divided by 12 is 12 and a half``."""
    first = found[index].first
    if tokens.words[max(0, first - 1) : first] == ["by"] and any(
        word.startswith("divid") for word in tokens.words[max(0, first - 8) : first]
    ):
        return True
    if index < 2 or first - found[index - 1].behind > 2 or found[index - 2].kind is Kind.LENGTH:
        return False
    dividend = found[index - 2].value
    if any(one.kind is Kind.LENGTH and one.value == dividend for one in found[max(0, index - 8) : index - 2]):
        return False
    divisor = found[index - 1].first
    return tokens.words[max(0, divisor - 2) : divisor] == ["divided", "by"]


def _is_a_needle(tokens: Tokens, one: Measured) -> bool:
    """Whether it is a size of needles: ``a seventy`` where a needle was named."""
    article = tokens.words[max(0, one.first - 1) : one.first] in (["a"], ["an"])
    said = tokens.words[one.first : one.first + 1] == ["a"]
    if one.value not in _NEEDLE_SIZES or not (article or said):
        return False
    return any(word.startswith("needle") for word in tokens.words[max(0, one.first - _NEEDLE_REACH) : one.first])


def _is_plural(word: list[str]) -> bool:
    return bool(word) and len(word[0]) > 3 and word[0].endswith("s") and word[0] not in _NO_PLURALS


def _of_counted(tokens: Tokens, found: Sequence[Measured], index: int) -> bool:
    """Whether it goes on a count of things: ``twelve pins maybe three each side``."""
    if index == 0 or found[index - 1].kind is not None or found[index].value > 12:
        return False
    before, one = found[index - 1], found[index]
    link = tokens.words[before.behind : one.first]
    return len(link) == 2 and _is_plural(link[:1]) and link[1] in ("maybe", "about", "or")
