"""Rectangles cut for a size that the text gave before, with an allowance on every edge.

``A block 35 cm long and 25 cm wide … the size of the block with 1.5 cm on all four sides, 38 x 28 cm.`` One side that
comes out with the allowance at both ends shows which size is meant; the other side must come out by it too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import permutations

from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.rectangles import WrongSide
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said

_SIZE = re.compile(r"L_?W(?:[,&_]{1,3}L_?W){1,2}|L_?[*b]_?L")
_RECTANGLE = re.compile(r"(?P<one>L)(?:_?[*b]_?(?P<by>L)(?!_?[*b]_?L)|_?W_?&_?(?P<and>L)_?W)")
_EVERY_EDGE = re.compile(r"L[_ap]{0,2}S")
_SO = re.compile(r"_?q")
"""Begins the sentence of a rectangle whose allowance is in the one before: ``4 cm for each edge. So cut …``."""
_NO_PLAIN = frozenset("RPDHX~T")
"""What in the sentence of a rectangle makes it more than a size with an allowance."""
_MORE = re.compile(r"\b(?:hems?|casings?|fold\w*|flaps?|headings?|turn\w* (?:over|down|up)|together)\b")
"""What makes one side longer than the size with its allowance."""
_SMALL = 6
"""How many times as long as the allowance a side is at least."""
_LONGEST = 40
"""Items of a sentence before a rectangle and behind it."""
_MOST = 8
"""How many sizes are remembered."""

Size = tuple[Item, ...]


def remembered(sizes: Sequence[Size], items: Sequence[Item], symbols: str) -> tuple[Size, ...]:
    """The last sizes that were told, those of a paragraph last."""
    return (*sizes, *(size for _, size in _sizes_in(items, symbols)))[-_MOST:]


def wrong_cut_sides(items: Sequence[Item], symbols: str, said: Said, sizes: Sequence[Size]) -> Iterator[WrongSide]:
    """Every side that is not what the same size makes of the other one. ``sizes`` are those before the paragraph."""
    told, own = list(sizes), _sizes_in(items, symbols)
    following = next(own, None)
    for found in _RECTANGLE.finditer(symbols):
        one, other = found.start("one"), max(found.start("by"), found.start("and"))
        first = max(max(symbols.rfind(sign, max(0, one - _LONGEST), one) for sign in ".\n") + 1, one - _LONGEST, 0)
        last = other + len(re.split(r"[.\n]", symbols[other : other + _LONGEST])[0])
        while following is not None and following[0] < first:
            told.append(following[1])
            following = next(own, None)
        lengths = [at for at in range(first, last) if symbols[at] == "L" and at not in (one, other)]
        if not lengths and _SO.match(symbols, first):
            lengths = [at for at in range(max(0, first - _LONGEST), first) if symbols[at] == "L"][-1:]
        words = " ".join(said(item) for item in items[first:last]).lower()
        plain = _NO_PLAIN.isdisjoint(symbols[first:last]) and not _MORE.search(words)
        if len(lengths) != 1 or not plain or not _EVERY_EDGE.match(symbols, lengths[0]):
            continue
        allowance = items[lengths[0]]
        wrong = _wrong_side((items[one], items[other]), 2 * allowance.value, told[-_MOST:])
        if wrong is not None:
            place, side = wrong
            value = side.value + 2 * allowance.value
            yield WrongSide((one, other)[place], value, f"{said(side)} + 2 × {said(allowance)}")


def _sizes_in(items: Sequence[Item], symbols: str) -> Iterator[tuple[int, Size]]:
    """The two or three measures that are told of one thing, with their place."""
    for found in _SIZE.finditer(symbols):
        yield found.start(), tuple(items[at] for at in range(*found.span()) if symbols[at] == "L")


def _wrong_side(sides: tuple[Item, Item], more: Fraction, sizes: Sequence[Size]) -> tuple[int, Item] | None:
    """Which of the two sides is wrong, and the measure it should be made of; None where both may be right."""
    measures = {item.value for size in sizes for item in size}
    if min(side.value for side in sides) < _SMALL * more / 2:
        return None
    measures |= {one.value + other.value for size in sizes for one, other in permutations(size, 2)}
    right = [side.value - more in measures for side in sides]
    if right[0] is right[1]:
        return None
    place = right.index(False)
    wrong, held = sides[place], sides[1 - place]
    for size in reversed(sizes):
        for known, unknown in permutations(size, 2):
            fits = known.value + more == held.value
            if fits and wrong.unit is not None and is_like(wrong.value, unknown.value + more, wrong.unit):
                return place, unknown
    return None
