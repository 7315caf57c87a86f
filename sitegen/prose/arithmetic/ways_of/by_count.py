"""Ways by a count: so many times a length, or a length in so many parts."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.arithmetic.agree import Exactness, part_exactness
from sitegen.prose.arithmetic.symbols import Item, is_cloth_width
from sitegen.prose.arithmetic.ways_of.parts import Parts, Way, count_of
from sitegen.prose.words import words
from sitegen.quantities import vulgar

_POINTS = words(
    "button buttons buttonhole buttonholes mark marks eyelet eyelets pin pins hook hooks snap snaps ring rings"
    " apart carriers"
)
"""Things that are set at points: one gap fewer lies between them."""
_MOST_THINGS = 30
"""More than this and nothing counted behind it is a length without its unit: ``the neck, 36, with 1.5 at each end``."""
_NEAR = 16
"""Items between a count and what it counts."""


@dataclass(frozen=True, slots=True)
class _Counted:
    """A count, the length it may go with, and what the words around say of them."""

    count: Fraction
    length: Item
    near: bool
    """Whether the words let the two go together."""
    points: bool
    """Whether points in a row are counted, not things that take room."""


def counted_ways(parts: Parts) -> Iterator[Way]:
    """Every way by a count: products and equal parts."""
    yield from _counted_together(parts)
    counts = _counts(parts)
    multiplies, divides = _multiplies(parts, counts), _divides(parts, counts)
    if len(counts) == 2:
        yield from _by_two_counts(parts, counts)
    for at in counts[-3:]:
        for each in _with_lengths(parts, counts, at):
            yield from _products(parts, each, multiplies)
            yield from _shares(parts, each, divides)


def _counts(parts: Parts) -> list[int]:
    """The numbers that count: not those at the end of a sentence, unless something is divided by them."""
    found = []
    for at in range(parts.scope.start, parts.scope.end):
        if parts.symbols[at] != "N":
            continue
        item = parts.items[at]
        told = item.number is not None or item.value > 2
        ends = parts.symbols[at + 1 : at + 2] in tuple("=.;q") and not parts.has("/in*ez")
        counts = item.value.denominator == 1 or parts.symbols[at + 1 : at + 2] in ("*", "n")
        stated = at > 0 and parts.said(parts.items[at - 1]).lower() == "is"  # “the side is 4”
        length = item.value > _MOST_THINGS and parts.symbols[at + 1 : at + 2] in tuple(",W+A")
        if item.value > 1 and told and counts and not ends and not stated and not length:
            found.append(at)
    return found


def _behind(parts: Parts) -> bool:
    """Whether the parts stand behind their result."""
    return parts.scope.start > parts.scope.at


def _lone(parts: Parts, counts: Sequence[int]) -> bool:
    """Whether there is just one length and one count, and a word such as ``so`` before the result."""
    alone = len(parts.lengths) == 1 and len(counts) == 1
    return not _behind(parts) and alone and bool(set("q=") & set(parts.scope.tie))


def _multiplies(parts: Parts, counts: Sequence[int]) -> bool:
    return (
        _lone(parts, counts)
        or parts.has("ec*n")
        or "N" in parts.scope.tie
        or re.search(r"N[_apj]{0,3}o", parts.around) is not None
        or ("q" in parts.scope.tie and re.search(r"N_?L", parts.around) is not None)
    )


def _divides(parts: Parts, counts: Sequence[int]) -> bool:
    tie, told = parts.scope.tie, re.split(r"[.L\n]", parts.symbols[parts.scope.at + 1 : parts.scope.at + 4])[0]
    return (
        _lone(parts, counts)
        or parts.has("/nz")
        or bool({"iN", "gN"} & {parts.around[at : at + 2] for at in range(len(parts.around))})
        or re.search(r"[q&]_?e", tie) is not None
        or ("e" in told and not _behind(parts))
        or ("e" in tie and "N" not in tie)
        or re.search(r"f[^.L]*L[^.]*N", parts.around) is not None  # “from one 27 in strip I cut nine”
    )


def _with_lengths(parts: Parts, counts: Sequence[int], at: int) -> Iterator[_Counted]:
    """The count at this item with each of the nearest lengths."""
    items, scope, symbols = parts.items, parts.scope, parts.symbols
    settled = max((place for place in scope.settled if place < scope.at), default=-1)
    things = re.match(r"_?[jz]", symbols[at + 1 : at + 3])
    parted = any(symbols[other + 1 : other + 2] == "n" for other in counts if other != at)
    if things and parted:
        return  # “10 eyelets, 9 equal distances”: the parts are counted by themselves
    thing = items[at + things.end()] if things else None
    points = thing is not None and (thing.symbol == "z" or parts.said(thing).lower() in _POINTS)
    for place in sorted(parts.lengths, key=lambda each: abs(each - at))[:3]:
        if _is_a_side(symbols, place) or (not parts.has("n") and is_cloth_width(items, place, parts.said)):
            continue
        between = symbols[min(at, place) : max(at, place)]
        together = (
            "." not in between
            or bool(set(scope.tie) & set("N=q:"))
            or symbols[at + 1 : at + 2] == "*"
            or parts.has("/")
        )
        near = abs(place - at) < _NEAR and settled < max(at, place) and together
        yield _Counted(items[at].value, items[place], near, points)


def _products(parts: Parts, each: _Counted, multiplies: bool) -> Iterator[Way]:
    """So many times the length; what allowances, gaps and remainders may make of it only excuses a result."""
    length, count, said = each.length, each.count, parts.said(each.length)

    def way(value: Fraction, words: str = "", *, named: bool = False) -> Way:
        return Way("product", value, words, Exactness.RULER, length.hedged, length.value, named)

    product = count * length.value
    yield way(product, f"{vulgar(count)} × {said}", named=multiplies and each.near)
    for other in (parts.items[at] for at in parts.lengths if parts.items[at] is not length):
        yield way(product + count * other.value)
        if other.value < length.value:
            yield way(product - other.value)
            yield way(product + other.value)
            if parts.has("a"):
                yield way(product - 2 * (count - 1) * other.value)  # with a seam between each two
    if parts.has("ap"):
        yield way(2 * product)
    behind = parts.symbols[parts.scope.at + 1 : parts.scope.at + 6]
    first_to_last = re.search(r"f[^.L]*t", parts.scope.tie + behind) is not None
    if each.points or first_to_last:
        yield way((count - 1) * length.value, f"{vulgar(count - 1)} × {said}", named=each.near and first_to_last)


def _shares(parts: Parts, each: _Counted, divides: bool) -> Iterator[Way]:
    """The length in so many parts, or in one more or one less where points are counted."""
    length, count, said = each.length, each.count, parts.said(each.length)
    apiece = parts.symbols[parts.scope.at + 1 : parts.scope.at + 2] == "e"
    every = "e" in parts.scope.tie and not parts.has("/n")
    shares = (count, *((count - 1, count + 1) if (each.points and not apiece) or every else ()))
    if each.points and not apiece and "S" in parts.around:
        shares = (count - 1,)
    for share in shares:
        if share <= 1 or share.denominator != 1:
            continue
        others = {parts.items[at].value for at in parts.lengths} | set(parts.after())
        for rest in (other for other in others if other < length.value):
            value = (length.value - rest) / share
            yield Way("", value, "", part_exactness(value), length.hedged, length.value, named=False)
        value = length.value / share
        named = divides and each.near and share == shares[0]
        words = f"{said} ÷ {vulgar(share)}"
        yield Way("division", value, words, part_exactness(value), length.hedged, length.value, named)


def _by_two_counts(parts: Parts, counts: Sequence[int]) -> Iterator[Way]:
    """A length that is counted twice: ``eight people, two napkins each, 70 in of hem per napkin``."""
    one, other = (parts.items[at].value for at in counts)
    for length in (parts.items[place] for place in parts.lengths):
        share = length.value / (one * other)
        yield Way("", share, "", part_exactness(share), length.hedged, length.value, named=False)
        words = f"{vulgar(one)} × {vulgar(other)} × {parts.said(length)}"
        named = len(parts.lengths) == 1 and parts.has("e*")
        yield Way("product", one * other * length.value, words, Exactness.RULER, length.hedged, length.value, named)


def _counted_together(parts: Parts) -> Iterator[Way]:
    """Several lengths, each so many times, in all: ``four handles of 22 in and two of 10 in``."""
    places = parts.summed()
    counts = [count_of(parts, at) for at in places]
    if len(places) < 2 or not all(counts):
        return
    each = [(count, parts.items[at]) for at, count in zip(places, counts, strict=True)]
    value = sum((count * item.value for count, item in each), Fraction(0))
    words = " + ".join(f"{vulgar(count)} × {parts.said(item)}" for count, item in each)
    exactness = Exactness.EXACT if len({item.unit for _, item in each}) == 1 else Exactness.RULER
    yield Way("product", value, words, exactness, False, max(item.value for _, item in each))


def _is_a_side(symbols: str, at: int) -> bool:
    """Whether a length is a side of a rectangle: ``20 cm by 25 cm``."""
    behind, ahead = symbols[at + 1 : at + 5], symbols[max(0, at - 4) : at]
    return bool(re.match(r"_?[b*]_?L", behind) or re.search(r"L_?[b*]_?$", ahead))
