"""Numbers that follow a length so closely, and in such words, that they can only be lengths too, as people talk."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sitegen.prose.find.measured import Measured, is_priced, word_at
from sitegen.prose.find.numbers import ARTICLES, STARTS, Form
from sitegen.prose.find.tokens import Token, TokenKind
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Unit

_RESULT_WORDS = words(
    "mine ours them is gives makes making makes it's that's was equals get gets leaves left now at be to"
    " me you it then ="
)
_FREE_BEHIND = frozenset(
    [
        "before",
        "after",
        "and",
        "now",
        "so",
        "which",
        "then",
        "that",
        "but",
        "for",
        "by",
        ".",
        ",",
        ";",
        ":",
        "!",
        "?",
        "for",
        "at",
        "is",
        "in",
        "because",
        "plus",
        "minus",
        "or",
        ")",
        "you",
        "we",
        "i",
    ]
)
_PEOPLE = words(
    "kid kids kiddo guy boy boys girl girls son sons daughter daughters child children toddler baby he"
    " she he's age aged nephew niece grandson granddaughter twin twins sister brother turned turns turning"
    " birthday old grade"
)
_PLACES = words(
    "here there square finished each apiece all altogether total to from across down long wide for on off"
    " up over deep high inside around below above"
)
_MOST_YARDS = 8
_DIMENSIONS = words("finished across square wide long altogether")
_NEAR = 30
"""Tokens between a length and a number that speaks of lengths too."""


def with_unsaid_units(tokens: Sequence[Token], found: Sequence[Measured]) -> list[Measured]:
    """The numbers, those that speak of a length near them given its unit."""
    talk = _is_talk(tokens)
    onwards = _said_again(tokens, found, talk)
    mixed = [_spoken_mixed(tokens, one) for one in _said_again(tokens, onwards[::-1], talk)[::-1]]
    return _said_again(tokens, _said_again(tokens, mixed, talk)[::-1], talk)[::-1]


def _spoken_mixed(tokens: Sequence[Token], one: Measured) -> Measured:
    """``two and a half`` with nothing behind it that it could count is inches."""
    if one.kind is None and one.form is Form.MIXED and one.spoken and not one.counted and _mixed_alone(tokens, one):
        return replace(one, kind=Kind.LENGTH, unit=Unit.IN, supplied=True)
    return one


def _mixed_alone(tokens: Sequence[Token], one: Measured) -> bool:
    ahead = word_at(tokens, one.first - 1)
    behind = [token.word for token in tokens[one.behind : one.behind + 2]] or ["."]
    if (
        ahead in ("times", "by", "x", "×", "*")
        or _of_a_person(tokens, one)
        or (behind[0] == "to" and behind[1:] in (["1"], ["one"]))
    ):
        return False
    return behind[0] in _FREE_BEHIND or behind[0] in _PLACES or _at_line_end(tokens, one)


def _of_a_person(tokens: Sequence[Token], one: Measured) -> bool:
    """Whether the number may be an age: ``my kiddo is seven and a half``."""
    return any(token.word.removesuffix("'s") in _PEOPLE for token in tokens[max(0, one.first - 9) : one.first])


def _at_line_end(tokens: Sequence[Token], one: Measured) -> bool:
    return one.behind >= len(tokens) or tokens[one.behind].opens_line


def _is_talk(tokens: Sequence[Token]) -> bool:
    """Whether a text is talk rather than print: captions have next to no stops or commas."""
    words = sum(1 for token in tokens if token.kind is TokenKind.WORD)
    return words > 40 * sum(1 for token in tokens if token.word in (".", ",", ";", ":"))


def _said_again(tokens: Sequence[Token], found: Sequence[Measured], talk: bool) -> list[Measured]:
    last: Measured | None = None
    told: list[Measured] = []
    for one in found:
        near = last is not None and _apart(one, last) <= _NEAR
        if last is not None and near and one.kind is None and not one.counted and _same_again(tokens, one, told, talk):
            told.append(replace(one, kind=Kind.LENGTH, unit=_likely_unit(one, last.unit), carried=True))
        else:
            told.append(one)
        if told[-1].kind is Kind.LENGTH:
            last = told[-1]
    return told


def _likely_unit(one: Measured, last: Unit | None) -> Unit | None:
    """The last unit said; but ``forty four wide`` behind yards of cloth is inches."""
    if last in (Unit.YD, Unit.FT) and one.value > _MOST_YARDS:
        return Unit.IN
    return Unit.CM if last is Unit.M and one.value > _MOST_YARDS else last


def _apart(one: Measured, other: Measured) -> int:
    return max(one.first - other.behind, other.first - one.behind)


def _things_behind(tokens: Sequence[Token], one: Measured) -> bool:
    word = word_at(tokens, one.behind)
    return (
        one.value > 1
        and len(word) > 3
        and word.endswith("s")
        and word not in ("that's", "it's", "equals", "plus", "makes", "gives")
    )


def _same_again(tokens: Sequence[Token], one: Measured, before: Sequence[Measured], talk: bool) -> bool:
    behind = tokens[one.behind].word if one.behind < len(tokens) else "."
    ahead = word_at(tokens, one.first - 1)
    if one.form is Form.MIXED:
        return _mixed_alone(tokens, one)
    line_end = _at_line_end(tokens, one)
    free = line_end or behind in _FREE_BEHIND or (talk and behind in _DIMENSIONS)
    if one.first and (tokens[one.first - 1].kind is TokenKind.NUMBER or ahead in STARTS - ARTICLES):
        return False  # “thirteen fifty”
    if not free or ahead in ("times", "by", "x", "×", "*") or _of_a_person(tokens, one):
        return False
    called = ahead in _RESULT_WORDS or (ahead.endswith("'s") and len(ahead) > 2)
    if one.form is Form.DECIMAL:
        return called and not is_priced(tokens, one)
    if one.form is Form.FRACTION:
        return (called or ahead == "plus") and behind != "of" and one.value.denominator in (2, 4)
    if one.value < 2:
        return False
    again = any(each.kind is Kind.LENGTH and each.value == one.value and each.high is None for each in before[-4:])
    if again and one.value >= 10:
        return True
    if not talk and not one.spoken:
        return False
    if any(_things_behind(tokens, each) for each in before[-2:] if each.kind is None):
        return False
    cutting = line_end and bool(
        {"cut", "cutting", "to", "at"} & {token.word for token in tokens[max(0, one.first - 4) : one.first]}
    )
    likely = called or cutting or (talk and one.value >= 9)
    return one.value >= 3 and behind not in ("by", "times") and likely
