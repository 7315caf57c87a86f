"""Rectangles that grow or shrink by the same on every edge: ``45 x 32 cm and 1 cm all round: cut 47 x 34 cm``.

One side that comes out shows how the allowance is meant; the other side must come out by it too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_RECTANGLE = re.compile(r"L_?[*b]_?L(?!_?[*b]_?L)")
_REACH = 40
_BEFORE = 20
"""Items before the first of two rectangles in which it is told what is added on every side."""
_NEAR = Fraction(1, 4)


@dataclass(frozen=True, slots=True)
class WrongSide:
    """A side that is not what the side of the rectangle before and the allowance make."""

    index: int
    value: Fraction
    words: str


def wrong_sides(items: Sequence[Item], symbols: str, said: Said) -> Iterator[WrongSide]:
    """Every such side, in order."""
    rectangles = [(match.start(), match.end() - 1) for match in _RECTANGLE.finditer(symbols)]
    for one, other in pairwise(rectangles):
        between = range(one[1] + 1, other[0])
        changes = [at for at in between if symbols[at] == "L"]
        told = symbols[between.start : between.stop]
        if not changes:  # “it extends 3 in on every side. For a top 45 by 60 …”
            first = max(0, one[0] - _BEFORE)
            told = symbols[first : one[0]]
            changes = [first + at for at, symbol in enumerate(told) if symbol == "L" and "S" in told]
        if len(changes) != 1 or len(between) > _REACH or not set("AT+-S") & set(told):
            continue
        change = items[changes[0]]
        sides = [(items[before], at) for before, at in zip(one, other, strict=True)]
        for factor in (2, -2, 1, -1):
            wanted = [(before.value + factor * change.value, at) for before, at in sides]
            wrong = [(value, at) for value, at in wanted if items[at].value != value]
            if len(wrong) == 1 and _near(wrong[0][0], items[wrong[0][1]].value):
                (value, at) = wrong[0]
                before = next(item for item, place in sides if place == at)
                if items[at].value == before.value:
                    continue  # only one side grows
                sign = "+" if factor > 0 else "−"
                yield WrongSide(at, value, f"{said(before)} {sign} {'2 × ' if abs(factor) == 2 else ''}{said(change)}")
                break


def _near(value: Fraction, written: Fraction) -> bool:
    return value > 0 and abs(value - written) <= value * _NEAR
