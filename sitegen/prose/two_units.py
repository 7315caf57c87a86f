"""Lengths that a text gives in two units, and ranges written with the greater end first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.find import Measured, Reading
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Length, NotUnderstood, Typed, Unit, decimal, grain, pair_agrees, parse_length

_LINKS = words(
    "which is that's that equals = about roughly or approximately approx in metric equal to your regular"
    " usual the our good old i.e ie aka a.k.a around nearly just so , ~ ≈ are be say it's makes"
)
_SAME = words("or which that's equals = i.e ie aka is are")
_NOUNS = words("seam seams allowance hem wide long of it across deep bolt fabric cloth -")
"""Words that may follow a length before it is said again."""
_OPERATORS = words("of x × * + plus - minus less by times twice double ÷ /")
"""Words before a length that make it a part of a sum, whose result is no other name of it."""
_BRACKET_ENDS = words(") ] for if in to on by with at")
_EQUALS = frozenset(("is", "that's", "equals", "="))
_HEDGES = words("about roughly approximately approx around nearly just ~ ≈ say almost")
_HEDGED = Fraction(6, 100)


@dataclass(frozen=True, slots=True)
class InTwoUnits:
    """A length and its partner in the other unit, with the tokens from ``first`` up to ``behind``."""

    one: Measured
    other: Measured
    first: int
    behind: int
    agrees: bool
    bolt: bool = False
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""


def in_two_units(reading: Reading) -> Iterator[InTwoUnits]:
    """Each length that is given again in the other system of units, in order."""
    lengths = [one for one in reading.numbers if one.kind is Kind.LENGTH]
    for one, other in pairwise(lengths):
        if one.unit is None or other.unit is None or other.first - one.behind > 6:
            continue
        found = _pair(reading, one, other, one.unit, other.unit)
        if found is not None:
            yield found


def _pair(reading: Reading, one: Measured, other: Measured, unit: Unit, second: Unit) -> InTwoUnits | None:
    tokens = reading.tokens
    link = [token.word for token in tokens[one.behind : other.first]]
    after = tokens[other.behind].word if other.behind < len(tokens) else ""
    while link and link[0] in _NOUNS:
        link = link[1:]
    if (
        link[-1:] == ["("]
        and len(link) <= 4
        and tokens[one.behind].word == "of"
        and all(word.isalpha() for word in link[:-1])
    ):
        link = ["("]
    bracket = link[:1] in (["("], ["["]) and after in _BRACKET_ENDS and all(word in _LINKS for word in link[1:])
    behind = other.behind + 1 if bracket and after in (")", "]") else other.behind
    stroke = link == ["/"]
    worked = one.first > 0 and tokens[one.first - 1].word in _OPERATORS
    said = 0 < len(link) <= 4 and all(word in _LINKS for word in link) and bool(_SAME & set(link)) and not worked
    if (
        unit.system is second.system
        and unit is not second
        and (bracket or (link and link[-1] in _EQUALS and all(word in _LINKS for word in link) and not worked))
    ):
        return _same_system(reading, one, other, behind)
    if unit.system is second.system:
        meant = _slipped(reading, one, other) if bracket and len(link) == 1 else ""
        return InTwoUnits(one, other, one.first, behind, False, unit_slipped=meant) if meant else None
    if not (bracket or stroke or said) or (one.high is None) != (other.high is None):
        return None
    bolt = _is_bolt(reading, one, behind)
    hedged = bool(_HEDGES & set(link)) or any(
        token.word in _HEDGES for token in tokens[max(0, one.first - 1) : one.first]
    )
    agrees = pair_agrees(typed_of(reading, one), typed_of(reading, other), bolt=bolt)
    if not agrees and hedged:
        agrees = all(
            abs(a - b) <= _HEDGED * max(a, b) for a, b in zip(_ends(one, unit), _ends(other, second), strict=True)
        )
    if not agrees and said and not _plausible(one, other, unit, second):
        return None
    return InTwoUnits(one, other, one.first, behind, agrees, bolt)


def _same_system(reading: Reading, one: Measured, other: Measured, behind: int) -> InTwoUnits:
    """A length given again in a greater or smaller unit of the same system: ``0.3 cm (3 mm)``, ``63 in (1 3/4 yd)``."""
    typed, second = typed_of(reading, one), typed_of(reading, other)
    apart = abs(typed.value - second.value)
    agrees = apart * 2 <= max(grain(typed), grain(second)) if Unit.YD in (one.unit, other.unit) else not apart
    return InTwoUnits(one, other, one.first, behind, agrees)


def _plausible(one: Measured, other: Measured, unit: Unit, second: Unit) -> bool:
    """Whether ``or`` and ``which is`` may well join one length in two units: at most twelve times apart."""
    low, high = sorted((one.value * unit.mm, other.value * second.mm))
    return high <= 12 * low


def _ends(one: Measured, unit: Unit) -> list[Fraction]:
    return [one.value * unit.mm] + ([one.high * unit.mm] if one.high is not None else [])


def _is_bolt(reading: Reading, one: Measured, behind: int) -> bool:
    tokens = reading.tokens
    after = [token.word for token in tokens[behind : behind + 2]]
    before = [token.word for token in tokens[max(0, one.first - 3) : one.first]]
    return "wide" in after or "width" in after or ("width" in before and before[-1] in ("of", ":", "is"))


def typed_of(reading: Reading, one: Measured) -> Typed:
    """The length as the readers of files give it, with the number as it was printed."""
    if one.unit is None:
        raise TypeError("a length has a unit")
    start, end = reading.span(one)
    high = None if one.high is None else Length(one.high * one.unit.mm)
    number = reading.tokens[one.first].word if one.decimals is not None else ""
    last = decimal(one.high, 6) if one.high is not None and one.decimals is not None else ""
    return Typed(
        Length(one.value * one.unit.mm), one.unit, reading.text[start:end], start, end, high, None, number, last
    )


def _slipped(reading: Reading, one: Measured, other: Measured) -> str:
    """Both lengths with the unit of one put right, if that makes them one length."""
    if one.high is not None or other.high is not None or one.unit is None or other.unit is None:
        return ""
    first, second = (reading.text[slice(*_number_span(reading, each))].strip() for each in (one, other))
    for unit in (Unit.IN, Unit.CM, Unit.MM):
        if unit.system is one.unit.system:
            continue
        for left, right in ((unit, other.unit), (one.unit, unit)):
            try:
                typed = parse_length(f"{first} {left.symbol}"), parse_length(f"{second} {right.symbol}")
            except NotUnderstood:
                continue
            if pair_agrees(*typed):
                return f"{first} {left.symbol} ({second} {right.symbol})"
    return ""


def _number_span(reading: Reading, one: Measured) -> tuple[int, int]:
    return reading.tokens[one.first].start, reading.tokens[one.first].end
