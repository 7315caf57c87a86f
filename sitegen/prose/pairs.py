"""Finds lengths that are given in two units, ``3/8 in (1 cm)``, in running text."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.quantities import NUMBER_PATTERN, NotUnderstood, Typed, length_at

_START = re.compile(rf"(?<![\w/.,⁄-]){NUMBER_PATTERN}")
_IN_A_SUM = re.compile(r"[\w\"″⅛¼⅜½⅝¾⅞)]\s*(?:[+−×÷=]|\s[-–*])\s*$")
"""An operator behind another term. A dash or star at the head of a line is a list, two stars are bold print."""
_WIDE = re.compile(r"[\s-]+wide\b", re.IGNORECASE)
_WIDTH_OF = re.compile(r"\bwidth of (?:about |at least )?$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class WrittenPair:
    """A length with its pair; ``first.start`` and ``first.end`` are offsets of the whole in the text."""

    first: Typed
    second: Typed
    bolt: bool
    """Whether the words around it speak of the width of cloth, for which coarser pairs are usual."""


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
        pair = typed.pair
        if pair is not None and pair.unit.system is not typed.unit.system:
            position = typed.end
            before = text[max(0, match.start() - 24) : match.start()]
            yield WrittenPair(typed, pair, bool(_WIDE.match(text, typed.end) or _WIDTH_OF.search(before)))
