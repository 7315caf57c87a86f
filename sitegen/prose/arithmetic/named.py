"""Lengths that a text gives once and then only names in a sum: ``113 cm less the net``, ``twice the length``.

A name stands for a length only where the text before it gives that length to this name and no other, and only where
words of a sum take it up; everywhere else it stays a word.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping, Sequence
from collections.abc import Set as AbstractSet
from fractions import Fraction
from typing import NamedTuple

from sitegen.prose.arithmetic.given_names import (
    DETERMINERS,
    GO_ON,
    KINDS_OF_SIZE,
    MEASURED,
    MEASURES,
    ROUND,
    SHARES,
    STOPS,
    SUMS,
    Given,
    first_of,
    given_names,
    quality_of,
)
from sitegen.prose.find import Measured, Reading, Tokens
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words

_LINKS, _CHANGES = words(", and then"), words("add subtract deduct")
_LONGEST_LINK = 3
_PERCENT = words("% percent")
_JOINED = words("plus minus less + −")
_FACTORS = words("twice double half of quarter third a an one") | _PERCENT
"""Between a sign and the name of what is multiplied."""
_MOST_FACTORS = 4
_ALLOWANCES = words("seam seams allowance allowances turning turnings hem hems")
_ROUNDS = 3
"""Names without which a sum is not known make its other names unknown, and so on."""
_ADDED, _TAKEN = words("add adding added adds"), words("subtract subtracting take takes taking deduct deducting off")
_COMPARED = words("longer shorter wider narrower deeper shallower taller smaller bigger larger less more")
_ITS = words("its their")
_MOST = 30
"""A name that is given more often than this is no name of one length."""
_LONG = 40
"""Tokens of a long sentence."""
_NEAR = 8
"""Tokens between what is added and what it is added to."""


class Named(NamedTuple):
    """A length that is only named here: the token behind its name, and where the text gave it."""

    behind: int
    length: Measured


def named_lengths(reading: Reading) -> Mapping[int, Named]:
    """The lengths that are only named in a sum, by the tokens at which their names begin."""
    tokens = reading.tokens
    given, places = given_names(reading)
    if not given:
        return {}
    number_at = {one.first: one for one in reading.numbers}
    ends = {one.behind: one for one in reading.numbers if one.kind is Kind.LENGTH}
    found: dict[int, Named] = {}
    for at, word in enumerate(tokens.words):
        if word in given and at not in places and (name := _name_in_a_sum(tokens, at, ends, number_at)):
            length = _meant(tokens, given[word], name)
            if length is not None and not _is_given_again(tokens, name.behind, length, number_at):
                found[at] = Named(name.behind, length)
    for _ in range(_ROUNDS):
        found = {at: name for at, name in found.items() if _is_among_known(tokens, at, name.behind, found, number_at)}
    return found


class _Name(NamedTuple):
    """A name that stands in a sum: its place, the token behind it, its quality and its owner."""

    at: int
    behind: int
    quality: str
    owner: str
    beside: bool
    """Whether its length is to be sought in its own sentence: that of ``its depth``."""
    share: bool
    """Whether a percentage of it is told, which needs no name where its whole is in the same sentence."""


def _name_in_a_sum(
    tokens: Tokens, at: int, ends: Mapping[int, Measured], number_at: Mapping[int, Measured]
) -> _Name | None:
    """The name at a place, where words of a sum take it up; None for any other word."""
    said = tokens.words
    word, quality, first = said[at], quality_of(tokens, at), first_of(tokens, at)
    determined = tokens.word(first) in DETERMINERS and first < at
    behind = at + 1 + (tokens.word(at + 1) in MEASURED)
    if not determined and (quality or word not in MEASURES):
        return None
    before = said[first - 1] if first else ""
    following = said[behind] if behind < len(said) else ""
    taken = (
        _is_taken_up(tokens, first)
        or (determined and _is_compared_or_added(tokens, first, ends))
        or (determined and following in GO_ON)
        or (determined and following == "less" and tokens.word(behind + 1) != "than")
        or (determined and _is_added_to(tokens, behind, number_at))
        or (determined and before in ROUND and said[max(0, first - 2) : first - 1] in (["once"], ["twice"]))
    )
    if not taken:
        return None
    owner = ""
    if following == "of":
        if tokens.word(behind + 1) not in DETERMINERS:
            return None
        owner = tokens.word(behind + 2)
    share = before == "of" and not _PERCENT.isdisjoint(said[max(0, first - 2) : first - 1])
    return _Name(at, behind, quality, owner, tokens.word(first) in _ITS, share)


def _is_taken_up(tokens: Tokens, first: int) -> bool:
    """Whether a word of a sum stands before a name; ``2 in for half the base`` only tells what a length is for."""
    said = tokens.words
    sign = first - (2 if said[first - 1 : first] == ["of"] else 1)
    if sign < 0 or (said[sign] not in (SUMS if sign == first - 1 else SHARES)):
        return False
    return said[max(0, sign - 1) : sign] != ["for"]


def _is_added_to(tokens: Tokens, behind: int, number_at: Mapping[int, Measured]) -> bool:
    """Whether what is added or taken off follows a name: ``take your waist and add 5 cm``."""
    at = behind
    while at < behind + _LONGEST_LINK and tokens.words[at : at + 1] and tokens.words[at] in _LINKS:
        at += 1
    return at > behind and tokens.word(at) in _CHANGES and at + 1 in number_at


def _is_compared_or_added(tokens: Tokens, first: int, ends: Mapping[int, Measured]) -> bool:
    """Whether a length is told beside a name: ``3 cm shorter than the curtain``, ``add 2 in of ease to the hip``."""
    said = tokens.words
    before = said[first - 1] if first else ""
    if before == "than":
        return said[first - 2] in _COMPARED and first - 2 in ends
    verbs = _ADDED if before in ("to", "onto") else _TAKEN if before in ("from", "off") else frozenset[str]()
    if not verbs:
        return False
    for at in range(first - 1, max(0, first - _NEAR), -1):
        if said[at] in STOPS:
            return False
        if (one := ends.get(at)) is not None:
            return not verbs.isdisjoint(said[max(0, one.first - 3) : one.first])
    return False


def _is_among_known(
    tokens: Tokens, at: int, behind: int, found: Mapping[int, Named], number_at: Mapping[int, Measured]
) -> bool:
    """Whether what a sign joins to a name is known too: of ``twice the length plus the ease`` it must be both."""
    said = tokens.words
    first = first_of(tokens, at)
    for _ in range(_MOST_FACTORS):
        if first and said[first - 1] in _FACTORS:
            first -= 1
    ahead = range(first - 2, max(-1, first - 2 - _NEAR), -1)
    following = range(behind + 1, min(len(tokens), behind + 1 + _NEAR))
    known = found.keys() | number_at.keys()
    return (first == 0 or said[first - 1] not in _JOINED or _comes_known(tokens, ahead, known)) and (
        behind >= len(tokens) or said[behind] not in GO_ON | {"less"} or _comes_known(tokens, following, known)
    )


def _comes_known(tokens: Tokens, places: Iterable[int], known: AbstractSet[int]) -> bool:
    """Whether a known length or an allowance comes before a sign or the end of the sentence."""
    for at in places:
        if at in known or tokens.words[at] in _ALLOWANCES:
            return True
        if tokens.words[at] in STOPS | _JOINED:
            return False
    return False


def _meant(tokens: Tokens, given: Sequence[Given], name: _Name) -> Measured | None:
    """The one length that a name means; None where it may mean several."""
    told = bisect_left(given, name.at, key=lambda each: each.place)
    if told > _MOST:
        return None
    before = [each for each in given[:told] if not name.owner or name.owner in each.owners]
    if name.quality:
        alike = [each for each in before if each.quality == name.quality]
        before = alike if alike or name.quality in KINDS_OF_SIZE or given[0].noun in MEASURES else before
    breaks = bisect_left(tokens.breaks, name.at)
    start = tokens.breaks[breaks - 1] if breaks else 0
    near = [each for each in before if each.place > start]
    beside = [each for each in near if _is_in_its_sentence(tokens, each.length, name.at)]
    for some in (beside,) if name.beside else (before, near):
        values = {None if each.length is None else _millimetres(each.length) for each in some}
        if len(values) == 1 and None not in values:
            length = some[-1].length
            return None if name.share and _is_in_its_sentence(tokens, length, name.at) else length
    return None


def _is_in_its_sentence(tokens: Tokens, length: Measured | None, at: int) -> bool:
    """Whether a length stands in the sentence of its name."""
    return length is not None and at - length.behind < _LONG and STOPS.isdisjoint(tokens.words[length.behind : at])


def _millimetres(one: Measured) -> Fraction:
    return one.value * (one.unit.mm if one.unit is not None else 1)


def _is_given_again(tokens: Tokens, behind: int, length: Measured, number_at: Mapping[int, Measured]) -> bool:
    """Whether a length stands right behind its name: ``twice the depth of 8 cm``, ``plus half the depth (2 in)``."""
    if behind in number_at or (tokens.words[behind : behind + 1] in (["of"], ["("]) and behind + 1 in number_at):
        return True
    near = (number_at[at] for at in range(behind, behind + 3) if at in number_at)
    return any(one.kind is Kind.LENGTH and _millimetres(one) == _millimetres(length) for one in near)
