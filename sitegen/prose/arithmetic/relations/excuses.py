"""What else the quantities of a window may make, so that a result may be right in a way that no words name.

What the words say plainly is not doubted: an allowance at both ends is taken twice, what is taken off is not added.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from math import lcm

from sitegen.prose.arithmetic.relations.parts import (
    are_all_shares,
    at_points,
    gaps,
    is_a_width,
    is_allowance,
    sign,
    times,
)
from sitegen.prose.arithmetic.relations.window import Window
from sitegen.quantities import RULER, Length, Typed, grain

_BETWEEN = re.compile(r"(?:in )?between|apart|gaps?|spaces?")
_ENDS = re.compile(r"\bfirst and (?:the )?last\b")
_MOST_PARTS = 5
_MOST_FACTORS = 3
_ON_A_RULER = (1, 2, 4, 8)
"""A length in so many parts is on a mark again, and need not be rounded."""
_NEAR = Fraction(1, 50)
"""How near a result must come to a share or a part of what stands there; sums must be met exactly."""
_PIECE = 4
"""What is no more than a fourth part of another length is no piece that is joined to it, but a part of it."""
_EARLIER = 12
"""Items before a window within which its whole may have been told."""
_COUNTS_BEFORE = 25
"""Items before a length within which a count may say how often it is taken."""


def is_excused(window: Window) -> bool:
    """Whether the quantities of the window make its result in any way that the words allow."""
    if not 1 <= len(window.parts) <= _MOST_PARTS:
        return False
    if _is_left_of_an_earlier(window):
        return True
    item = window.items[window.at]
    for one in (item.number, item.other):
        if one is None or one.unit is None or one.high is not None:
            continue
        value = one.value * one.unit.mm
        mark = max(RULER.finest(one.unit.system).mm / 2, value * _NEAR)
        near = min(grain(Typed(Length(value), one.unit, "", 0, 0)).mm / 2, mark)
        if _makes(window, value, near):
            return True
    return False


def _is_left_of_an_earlier(window: Window) -> bool:
    """Whether it is left of a length told before the window, whose only whole is a width: ``54 inches of this canvas,
    it's 60 wide and the bag takes 20, so there's 34 left``."""
    widths = [at for at in window.parts if is_a_width(window, at)]
    if len(widths) != 1 or len(window.parts) != 2:
        return False
    taken = next(window.value(at) for at in window.parts if at not in widths)
    before = range(max(0, window.parts[0] - _EARLIER), window.parts[0])
    return any(window.symbols[at] == "L" and window.value(at) - taken == window.result for at in before)


def _makes(window: Window, result: Fraction, near: Fraction) -> bool:
    """Whether one of the ways makes the result. All is counted in whole numbers of one small part of a millimetre."""
    values = [window.value(at) for at in window.parts]
    scales = _scales(window)
    unit = lcm(*(each.denominator for each in values), result.denominator, near.denominator)
    unit *= lcm(*(scale.denominator for scale in scales))
    sizes = [int(value * unit) for value in values]
    wanted, apart = int(result * unit), int(near * unit)
    return any(abs(value - wanted) <= (apart if rough else 0) for value, rough in _ways(window, sizes, scales))


def _ways(window: Window, sizes: Sequence[int], scales: Sequence[Fraction]) -> Iterator[tuple[int, bool]]:
    """Each way: what it makes, and whether the result need only come near it."""
    base = max(range(len(sizes)), key=lambda index: sizes[index])
    rest = [index for index in range(len(sizes)) if index != base]
    scaled = [(int(scale * sizes[base]), scale, scale.denominator not in _ON_A_RULER) for scale in scales]
    if window.behind[:1] in tuple("&,") and any(window.symbols[at] in "PR" for at in window.factors):
        yield from ((whole, rough) for whole, _, rough in scaled)  # “that is 16.8 cm and, with the seams, 19.8 cm”
    for at in window.factors if "c" not in window.ahead + window.behind else ():
        # “4 shepherds”, 3 m each, of two kinds; “twice the waist”, where the hip is told too
        of = sizes if window.symbols[at] == "N" else [sizes[index] for index in rest]
        yield from ((int(window.value(at) * size), False) for size in of)
    for more in _sums(window, sizes, rest):
        for whole, scale, rough in scaled:
            yield whole + more, rough
            if more and scale != 1:
                yield int(scale * (sizes[base] + more)), rough
    if len(sizes) == 2:
        often, place = times(window, window.parts[base])
        if place is not None:  # pieces in a row: a seam fewer than pieces, and what the outer two keep
            row, seam = often * sizes[base], sizes[rest[0]]
            yield from ((row - count * seam, False) for count in (often - 1, 2 * often - 2, 2 * often, often))
    used = {times(window, at)[1] for at in window.parts}
    if len(sizes) == 2 and not used.issuperset(window.factors):
        wide = is_a_width(window, window.parts[base]) and not is_a_width(window, window.at)
        for scale in scales:
            small = int(scale * sizes[rest[0]])
            yield from ((small + often * sizes[base], True) for often in ((0, 1, 2) if wide else (1, 2)))


def _sums(window: Window, sizes: Sequence[int], rest: Sequence[int]) -> Iterator[int]:
    """What is added to the greatest length or taken off it.

    Parts of which no word tells go one way together, but pieces may be joined with an allowance taken off.
    """
    counts = [_counts(window, window.parts[index]) for index in rest]
    signs = [sign(window, window.parts[index]) for index in rest]
    allowances = [is_allowance(window, window.parts[index]) for index in rest]
    pieces = (sizes[index] for index, allowance in zip(rest, allowances, strict=True) if not allowance)
    joined = all(size * _PIECE >= max(sizes) for size in pieces)
    for unsigned, allowed in product((1, -1), repeat=2):
        if unsigned != allowed and not joined:
            continue
        ways = [way or (allowed if allowance else unsigned) for way, allowance in zip(signs, allowances, strict=True)]
        taken = [
            {way * often * sizes[index] for often in each} for way, each, index in zip(ways, counts, rest, strict=True)
        ]
        yield from (sum(each) for each in product(*taken))


def _scales(window: Window) -> list[Fraction]:
    """By what the greatest length, or all together, may be multiplied."""
    found = {Fraction(1)}
    points = at_points(window)
    base = max(window.parts, key=window.value)
    used = {times(window, at)[1] for at in window.parts if at != base}
    for at in [each for each in window.factors if each not in used][:_MOST_FACTORS]:
        factor, symbol = window.value(at), window.symbols[at]
        own = {factor, 1 / factor}
        if symbol in "PR":
            own |= {1 + factor, abs(1 - factor)}
        if symbol == "N" and points:
            own = {scale for each in gaps(window, factor) if each > 0 for scale in (each, 1 / each)}
        found |= own if are_all_shares(window) else {one * each for one in found for each in own}
    if "S" in window.behind:
        found |= {each / 2 for each in found}  # “32 cm, so that there is 1 cm at both ends”
    if window.factors:
        found.discard(Fraction(1))
    return sorted(found)


def _counts(window: Window, at: int) -> list[int]:
    """How often a part may be taken; 0 times where it measures something else."""
    symbols = window.symbols
    often, place = times(window, at)
    behind = symbols[at + 1 : at + 6]
    found = {often}
    lone, allowance = len(window.parts) == 2, is_allowance(window, at)
    told = window.symbols[window.start : window.at] if window.at > window.parts[-1] else window.text
    at_sides = "S" in told and all(times(window, other)[0] == 1 for other in window.parts)
    following = next((other for other in window.parts if other > at), at)
    joined = "&" in symbols[at:following] and times(window, following)[0] == 2
    if often == 1 and (at_sides or joined or window.has("D") or behind[:1] == "e" or (lone and allowance)):
        found.add(2)
    if place is None and allowance and window.has("p") and not window.has("S"):
        before = symbols[max(0, at - 2) : at]
        each = (symbols[at + 1 : at + 2] == "p" and before[-1:] != "+") or re.search(r"p[:k]?$", before) is not None
        found |= {2, 4} if each else {1, 2, 4}
    if often == 2 and place is None:
        if window.has("Nn"):
            found.add(4)
        if not set("<>").isdisjoint(behind[:3]) or (following != at and window.value(at) == window.value(following)):
            found.add(1)  # “2 in shorter than the curtain all round”, “2 cm left and 2 cm right”
    if often == 1 and _ENDS.search(window.words):
        found.add(2)  # “the first and the last 4.5 cm in from the sides”
    if place is not None and window.has("S"):
        found.add(2 * often)
    if "e" in behind and place is None:
        for other in range(max(0, at - _COUNTS_BEFORE), at):
            count = window.items[other].value
            if symbols[other] == "N" and count.denominator == 1 and 1 < count < 100:
                found |= {int(count), int(count) - 1}  # “64 cm for each drop after the first”
    if place is None and at + 1 < len(window.items) and _BETWEEN.match(window.name(at + 1).lower()):
        numbers = {int(window.value(each)) for each in window.factors if window.symbols[each] == "N"}
        found |= {number + one for number in numbers for one in (-1, 1)}  # “five pockets with 2 cm between them”
    if is_a_width(window, at) and not is_a_width(window, window.at):
        found.add(0)
    return sorted(found)
