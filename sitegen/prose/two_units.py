"""Lengths that a text gives in two units, and ranges written with the greater end first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.another import is_another, is_hedged, is_term
from sitegen.prose.find import Measured, Reading, reading_of
from sitegen.prose.link_words import HEDGES, PLACES, RULERS
from sitegen.prose.links import BESIDE, EQUALS, FAR, LOOSE, Link, asked, link_between, told_elsewhere
from sitegen.prose.measurement import Kind
from sitegen.prose.nominal import agrees_in_print, are_widths, is_nominal, nearly
from sitegen.prose.pair import InTwoUnits, hardly_apart, plausible, typed_of
from sitegen.prose.rows import rows_in_two_units
from sitegen.quantities import (
    Length,
    NotUnderstood,
    System,
    Typed,
    Unit,
    grain,
    pair_agrees,
    parse_length,
)

_CONDITIONS = (["if"], ["when"], ["where"], ["depending"])
"""Words behind two lengths joined by ``or`` that make them a choice: ``1 cm, or 5/8 in if your pattern has that``."""
_COUNTS_BEFORE = 10
"""Tokens before a length in which a count may say how often it is taken."""
_TIMES = {word: Fraction(2) for word in ("both", "each", "either", "twice", "double", "doubled")} | {
    "half": Fraction(1, 2),
    "halve": Fraction(1, 2),
}
_FARTHEST, _FARTHEST_SAID = 8, 12
"""Tokens between a length and the same length in the other unit; the second where words name the other system."""
_NO_CHOICE = Fraction(4, 3)
"""Nobody offers a choice between centimetres and millimetres so near: ``2.5 cm or 20 mm`` is a slip."""
_BOUGHT = (Unit.YD, Unit.M, Unit.FT)
_ACROSS = (["wide"], ["across"])
_BOTH_TIMES = Fraction(1, 100)
"""So much two lengths may be apart that are both so many times a pair that was told before."""
_MOVED = (Fraction(10), Fraction(100), Fraction(1, 10), Fraction(1, 100))
_POWERS = tuple(Fraction(10) ** power for power in range(-3, 4))
"""A point in the wrong place: ``3.5 m (35 mm)``."""


@dataclass(frozen=True, slots=True)
class WrittenPair:
    """A length with its partner in the other unit, from ``start`` to ``end`` of the text, the bracket included."""

    first: Typed
    second: Typed
    start: int
    end: int
    agrees: bool
    sure: bool
    """Whether a bracket or words such as ``which is`` join the two; else they may be two lengths."""
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""


def find_pairs(text: str) -> Iterator[WrittenPair]:
    """Each length of a text that is given again in the other system of units, in order."""
    reading = reading_of(text)
    for pair in in_two_units(reading):
        start, end = reading.tokens.starts[pair.first], reading.tokens.ends[pair.behind - 1]
        first, second = typed_of(reading, pair.one), typed_of(reading, pair.other)
        yield WrittenPair(first, second, start, end, pair.agrees, pair.sure, pair.unit_slipped)


def in_two_units(reading: Reading) -> Iterator[InTwoUnits]:
    """Each length that is given again in the other system of units, in order."""
    lengths = [one for one in reading.numbers if one.kind is Kind.LENGTH]
    counts = {one.first: one.value for one in reading.numbers if one.kind is not Kind.LENGTH}
    rows = list(rows_in_two_units(reading, lengths))
    yield from rows
    in_rows = {pair.other.first for pair in rows}
    ratios: set[Fraction] = set()
    again: Measured | None = None
    for one, other in pairwise(lengths):
        if other.first in in_rows:
            continue
        apart = other.first - one.behind
        if one.unit is None or other.unit is None or apart > _FARTHEST_SAID:
            continue
        if apart > _FARTHEST and not (told_elsewhere(reading, one, other) or asked(reading, one, other)):
            continue
        found = _pair(reading, counts, one, other, one.unit, other.unit)
        if one is again and reading.tokens.words[one.behind : other.first] == ["|"]:
            continue  # “| 28 in | 71 cm | 22 1/2 in |”: the cell before gave it already
        if found is not None and (found.sure or one is not again):
            again = other
            ratio = _ratio(one, other)
            if found.agrees:
                ratios.add(ratio)
            elif ratio in ratios and abs(ratio - 1) <= _BOTH_TIMES:
                found = replace(found, agrees=True)  # “46 cm (18 in)”, and twice as much: “92 cm (36 in)”
            yield found


def _pair(
    reading: Reading, counts: Mapping[int, Fraction], one: Measured, other: Measured, unit: Unit, second: Unit
) -> InTwoUnits | None:
    link = link_between(reading, one, other)
    if link is None:
        return None
    after = reading.tokens.words[link.behind : link.behind + 8]
    if not link.bracket and _is_counted(reading, counts, one, other):
        return None
    between = reading.tokens.words[one.behind : other.first]
    if link.bracket and unit in _BOUGHT and "of" in between and after[:1] in _ACROSS:
        return None  # “1 yard of canvas (45 in wide)”
    if unit.system is second.system:
        found = _one_system(reading, one, other, link)
        sure = found is not None and _is_moved_point(one, other, link)
        return None if found and not (found.agrees or sure) and is_another(reading, one, other, link) else found
    if (one.high is None) != (other.high is None):
        return _half_a_range(reading, one, other, link)
    bolt = is_nominal(reading, one, other, link.behind)
    agrees = agrees_in_print(typed_of(reading, one), typed_of(reading, other), bolt=bolt)
    agrees = agrees or (is_hedged(reading, one, link) and hardly_apart(one, other))
    of_place = not (PLACES | RULERS).isdisjoint(after)
    chosen = not agrees and "or" in link.words and after[:1] in _CONDITIONS and not of_place
    in_a_sum = link.bracket and is_term(reading, one)
    far = link.farthest is not None and not plausible(one, other, unit, second, link.farthest)
    far = far and not _ten_times(one, other, unit, second)
    if link.bracket and second in _BOUGHT and not plausible(one, other, unit, second, FAR):
        far = True  # “elastic 1/2 in wide (1.5 m)”
    chosen = chosen or (after[:1] == ["wide"] and "or" in link.words and are_widths(one, other))
    shops = {unit, second} == {Unit.YD, Unit.M} and one.value == other.value and not link.bracket
    if not agrees and (far or in_a_sum or chosen or shops or is_another(reading, one, other, link)):
        return None
    sure = link.farthest is None or link.farthest is FAR
    return InTwoUnits(one, other, one.first, link.behind, agrees, bolt, sure=sure)


def _is_counted(reading: Reading, counts: Mapping[int, Fraction], one: Measured, other: Measured) -> bool:
    """Whether a count near a length makes the other of it: ``ten rows at 60 cm, which is 6 metres``."""
    if one.high is not None or other.high is not None:
        return False
    first = max(0, one.first - _COUNTS_BEFORE)
    told = {counts[at] for at in range(first, one.first) if at in counts and counts[at] != 1}
    words = {*reading.tokens.words[first : one.first], *reading.tokens.words[one.behind : other.first]}
    told |= {_TIMES[word] for word in words & _TIMES.keys()}
    if not told:
        return False
    if _ratio(one, other) in told:
        return True
    typed, second = typed_of(reading, one), typed_of(reading, other)
    if typed.unit.system is second.unit.system:
        return False
    counted = (replace(typed, value=Length(typed.value.mm * times)) for times in told if times)
    return not agrees_in_print(typed, second) and any(agrees_in_print(each, second) for each in counted)


def _ratio(one: Measured, other: Measured) -> Fraction:
    """How many times as long the second length is as the first; 0 where nobody can tell."""
    if one.unit is None or other.unit is None or not one.value:
        return Fraction(0)
    return other.value * other.unit.mm / (one.value * one.unit.mm)


def _half_a_range(reading: Reading, one: Measured, other: Measured, link: Link) -> InTwoUnits | None:
    """A range with a single length in brackets: wrong, unless that is one of its ends."""
    if one.high is None or one.unit is None or other.unit is None or not link.bracket:
        return None
    ends = [replace(one, value=value, high=None) for value in (one.value, one.high)]
    if any(pair_agrees(typed_of(reading, end), typed_of(reading, other)) for end in ends):
        return None
    return InTwoUnits(one, other, one.first, link.behind, False)


def _one_system(reading: Reading, one: Measured, other: Measured, link: Link) -> InTwoUnits | None:
    """Two lengths of one system: the same in a greater or smaller unit, or a unit that slipped."""
    unit, second = one.unit, other.unit
    if unit is None or second is None:
        return None
    if unit is second:
        meant = _slipped(reading, one, other) if link.words in (("(",), ("[",)) else ""
        return InTwoUnits(one, other, one.first, link.behind, False, unit_slipped=meant) if meant else None
    if one.value * unit.mm == 2 * other.value * second.mm:
        return None  # “3 cm, that is 15 mm on either side”
    again = _same_system(reading, one, other, link.behind)
    said = [word for word in link.words if not again.agrees or word not in HEDGES]  # “696 cm, call it 7 m” is rounded
    if link.bracket or (bool(said) and said[-1] in EQUALS):
        times = BESIDE if "so" in link.words else _NO_CHOICE if link.farthest is LOOSE else FAR
        powers = link.bracket and one.value in {power * other.value for power in _POWERS}
        return again if powers or plausible(one, other, unit, second, times) else None
    if said[-1:] == ["so"]:
        return again if plausible(one, other, unit, second, _NO_CHOICE) else None
    if "or" in link.words:
        near = is_hedged(reading, one, link) and nearly(one, other, unit, second)
        if again.agrees or near:
            return replace(again, agrees=True)
        if _is_moved_point(one, other, link):
            return again
        choice = unit.system is System.INCHES or not plausible(one, other, unit, second, _NO_CHOICE)
        return None if choice else again
    return None


def _is_moved_point(one: Measured, other: Measured, link: Link) -> bool:
    """Whether ``or`` gives a metric length again and only its point stands wrong: ``300 mm, or 3 cm if you prefer``."""
    metric = one.unit is not other.unit and one.unit is not None and one.unit.system is System.CENTIMETRES
    return "or" in link.words and metric and one.value != other.value and _ratio(one, other) in _MOVED


def _same_system(reading: Reading, one: Measured, other: Measured, behind: int) -> InTwoUnits:
    """A length given again in a greater or smaller unit of the same system: ``0.3 cm (3 mm)``, ``63 in (1 3/4 yd)``."""
    typed, second = typed_of(reading, one), typed_of(reading, other)
    apart = abs(typed.value - second.value)
    coarse = grain(second) if second.unit is not Unit.YD else max(grain(typed), grain(second))
    agrees = apart * 2 <= coarse if Unit.YD in (one.unit, other.unit) else not apart
    return InTwoUnits(one, other, one.first, behind, agrees)


def _ten_times(one: Measured, other: Measured, unit: Unit, second: Unit) -> bool:
    """Whether one is about ten times the other: centimetres said for millimetres, or a point left out."""
    low, high = sorted((one.value * unit.mm, other.value * second.mm))
    return abs(high - 10 * low) * 10 <= high


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
    return reading.tokens.starts[one.first], reading.tokens.ends[one.first]
