"""What else the quantities of a window may make, so that a result may be right in a way that no words name.

What the words say plainly is not doubted: an allowance at both ends is taken twice, what is taken off is not added.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from math import lcm

from sitegen.prose.arithmetic.relations.parts import at_points, is_a_width, sign, times
from sitegen.prose.arithmetic.relations.window import Window
from sitegen.quantities import RULER, Length, Typed, grain

_BETWEEN = re.compile(r"(?:in )?between|apart|gaps?|spaces?")
_MOST_PARTS = 5
_MOST_FACTORS = 3
_ON_A_RULER = (1, 2, 4, 8)
"""A length in so many parts is on a mark again, and need not be rounded."""
_NEAR = Fraction(1, 50)
"""How near a result must come to a share or a part of what stands there; sums must be met exactly."""
_COUNTS_BEFORE = 25
"""Items before a length within which a count may say how often it is taken."""


def is_excused(window: Window) -> bool:
    """Whether the quantities of the window make its result in any way that the words allow."""
    if not 1 <= len(window.parts) <= _MOST_PARTS:
        return False
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
    if len(sizes) == 2 and window.factors:
        wide = is_a_width(window, window.parts[base]) and not is_a_width(window, window.at)
        for scale in scales:
            small = int(scale * sizes[rest[0]])
            yield from ((small + often * sizes[base], True) for often in ((0, 1, 2) if wide else (1, 2)))


def _sums(window: Window, sizes: Sequence[int], rest: Sequence[int]) -> Iterator[int]:
    """What is added to the greatest length or taken off it.

    Parts of which no word tells go one way together, but an allowance may be meant either way.
    """
    counts = [_counts(window, window.parts[index]) for index in rest]
    signs = [sign(window, window.parts[index]) for index in rest]
    allowances = [_is_allowance(window, window.parts[index]) for index in rest]
    for unsigned, allowed in product((1, -1), repeat=2):
        ways = [way or (allowed if allowance else unsigned) for way, allowance in zip(signs, allowances, strict=True)]
        taken = [
            {way * often * sizes[index] for often in each} for way, each, index in zip(ways, counts, rest, strict=True)
        ]
        yield from (sum(each) for each in product(*taken))


def _is_allowance(window: Window, at: int) -> bool:
    """Whether a part is called a seam, a hem or an allowance."""
    symbols = window.symbols
    behind, before = re.split(r"[L,;.]", symbols[at + 1 : at + 4])[0], symbols[max(0, at - 4) : at]
    return not set("ap").isdisjoint(behind) or re.search(r"[ap]_?o?_?$", before) is not None


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
            own |= {factor - 1, factor + 1, 1 / (factor + 1)} | ({1 / (factor - 1)} if factor > 1 else set())
        found |= {one * each for one in found for each in own}
    if window.has("S"):
        found |= {2 * each for each in found} if window.factors else {Fraction(2), Fraction(1, 2)}
    if "S" in window.behind:
        found |= {each / 2 for each in found}
    if window.factors:
        found.discard(Fraction(1))
    return sorted(found)


def _counts(window: Window, at: int) -> list[int]:
    """How often a part may be taken; 0 times where it measures something else."""
    symbols = window.symbols
    often, place = times(window, at)
    behind = symbols[at + 1 : at + 6]
    found = {often}
    lone, allowance = len(window.parts) == 2, _is_allowance(window, at)
    at_sides = window.has("S") and all(times(window, other)[0] == 1 for other in window.parts)
    following = next((other for other in window.parts if other > at), at)
    joined = "&" in symbols[at:following] and times(window, following)[0] == 2
    if often == 1 and (at_sides or joined or window.has("D") or behind[:1] == "e" or (lone and allowance)):
        found.add(2)
    if place is None and allowance and window.has("p") and not window.has("S"):
        found |= {1, 2, 4}
    if often == 2 and place is None:
        if window.has("Nn"):
            found.add(4)
        if not set("<>").isdisjoint(behind[:3]) or (following != at and window.value(at) == window.value(following)):
            found.add(1)  # “2 in shorter than the curtain all round”, “2 cm left and 2 cm right”
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
