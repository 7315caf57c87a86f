"""Finds lengths that are given in two units, ``3/8 in (1 cm)``, in running text."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.quantities import (
    NUMBER_PATTERN,
    NotUnderstood,
    Typed,
    Unit,
    length_at,
    pair_agrees,
    parse_length,
)

_START = re.compile(rf"(?<![\w/.,⁄-]){NUMBER_PATTERN}")
_IN_A_SUM = re.compile(r"[\w\"″⅛¼⅜½⅝¾⅞)]\s*(?:[+−×÷=]|\s[-–*])\s*$")
"""An operator behind another term. A dash or star at the head of a line is a list, two stars are bold print."""
_BRACKET = re.compile(r"\s*\(([^()]{1,30})\)")
_WIDE = re.compile(r"[\s-]+wide\b", re.IGNORECASE)
_WIDTH_OF = re.compile(r"\bwidth of (?:about |at least )?$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class WrittenPair:
    """A length with its pair, from ``start`` to ``end`` of the text, the bracket included."""

    first: Typed
    second: Typed
    start: int
    end: int
    bolt: bool = False
    """Whether the words around it speak of the width of cloth, for which coarser pairs are usual."""
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""


def _in_one_system(text: str, typed: Typed) -> WrittenPair | None:
    """A length in brackets in the same system of units, if another unit of either would make the two one length.

    Then a unit slipped, ``5 cm (12.5 cm)``; any other two lengths of one system may well be meant.
    """
    bracket = _BRACKET.match(text, typed.end)
    if bracket is None:
        return None
    try:
        other = length_at(text, bracket.start(1))
    except NotUnderstood:
        return None
    one_system = other.unit.system is typed.unit.system and other.value != typed.value
    if not one_system or other.pair is not None or other.high is not None or other.end != bracket.end(1):
        return None
    meant = next((f"{one} ({two})" for one, two in _slipped_units(typed, other) if _one_length(one, two)), "")
    return WrittenPair(typed, other, typed.start, bracket.end(), unit_slipped=meant) if meant else None


def _slipped_units(typed: Typed, other: Typed) -> Iterator[tuple[str, str]]:
    for unit in (Unit.IN, Unit.CM, Unit.MM):
        if unit.system is not typed.unit.system:
            yield f"{typed.number} {unit.symbol}", f"{other.number} {other.unit.symbol}"
            yield f"{typed.number} {typed.unit.symbol}", f"{other.number} {unit.symbol}"


def _one_length(first: str, second: str) -> bool:
    try:
        return pair_agrees(parse_length(first), parse_length(second))
    except NotUnderstood:
        return False


def find_pairs(text: str) -> Iterator[WrittenPair]:
    """Each length that is followed by the same length in the other system of units, in brackets or after a slash.

    What cannot be read as such a pair, and the last term of a sum, is passed over in silence.
    """
    position = 0
    while match := _START.search(text, position):
        position = match.end()
        if _IN_A_SUM.search(text, max(0, match.start() - 8), match.start()):
            continue
        try:
            typed = length_at(text, match.start())
        except NotUnderstood:
            continue
        if typed.pair is not None:
            position = typed.end
            before = text[max(0, match.start() - 24) : match.start()]
            bolt = bool(_WIDE.match(text, typed.end) or _WIDTH_OF.search(before))
            yield WrittenPair(typed, typed.pair, typed.start, typed.end, bolt)
        elif slipped := _in_one_system(text, typed):
            position = slipped.end
            yield slipped
