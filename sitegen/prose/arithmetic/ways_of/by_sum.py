"""Ways by adding lengths and taking them off."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, pairwise

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.symbols import Item, is_cloth_width
from sitegen.prose.arithmetic.vocabulary import ACROSS, UPRIGHT
from sitegen.prose.arithmetic.ways_of.parts import Parts, Way, counts_of, joined_to_the_last, sign_of, times_of

_SENTENCES_OF_A_LIST = 1
"""Full stops over which several lengths are still taken off one."""


def summed_ways(parts: Parts) -> Iterator[Way]:
    """Every way by adding lengths and taking them off."""
    yield from _added(parts)
    yield from _all_but_one(parts)
    yield from _at_both_sides(parts)
    yield from _signed(parts)
    yield from _taken_off(parts)
    yield from _round_a_rectangle(parts)
    yield from _cut_and_finished(parts)


def adds(parts: Parts) -> bool:
    """Whether the words around add the lengths together."""
    allowance = parts.has("ap")
    names = {parts.said(parts.items[at + 1]).lower() for at in parts.lengths if at + 1 < len(parts.items)}
    if not (UPRIGHT.isdisjoint(names) or ACROSS.isdisjoint(names) or parts.has("+c")):
        return False
    if "=" in parts.scope.tie and (parts.has("&") or parts.around.count(",") > 1):
        return True
    return (
        _grows_from_finished(parts)
        or parts.has("+AcB")
        or "c" in parts.scope.tie
        or (parts.has("Se") and allowance)
        or ("u" in parts.scope.tie and allowance)
        or ("q" in parts.scope.tie and _joined_last(parts) and not parts.has("T-</P"))
        or _listed(parts)
        or (_eases(parts) and _is_the_greatest(parts))
    )


def _eases(parts: Parts) -> bool:
    """Whether the result is told with ease, which is what one length has more than another."""
    return "E" in parts.scope.tie or parts.around.endswith("E")


def _is_the_greatest(parts: Parts) -> bool:
    """Whether the result is longer than each of its parts: ``a 27 in waist with 2 in of ease is 29 in``."""
    return all(parts.items[at].value < parts.items[parts.scope.at].value for at in parts.lengths)


def _listed(parts: Parts) -> bool:
    """Whether three lengths or more stand in one list, and a sentence behind it tells the result."""
    if len(parts.lengths) < 3 or parts.has("T-<PRDHN*b"):
        return False
    between = [parts.symbols[one + 1 : other] for one, other in pairwise(parts.lengths)]
    return all(re.fullmatch(r"_?,_?", each) for each in between) and bool(set("u:") & set(parts.scope.tie))


def _joined_last(parts: Parts) -> bool:
    """Whether the last two lengths are joined by ``and``: ``2 1/2 in and 5/8 in between them, so …``."""
    if len(parts.lengths) < 2:
        return False
    between = re.split(r"[.\n]", parts.symbols[parts.lengths[-2] : parts.lengths[-1]])[-1]
    return "&" in between and "i" not in between  # “1 cm in width and 3 cm in length” are not added


def _grows_from_finished(parts: Parts) -> bool:
    """Whether a finished length comes first and the cut one is told: ``finishes at 30 in, … is cut 31 in long``."""
    if not parts.lengths or "u" not in parts.symbols[parts.scope.start : parts.scope.at]:
        return False
    words = [
        (at, parts.said(parts.items[at])) for at in range(parts.scope.start, parts.scope.at) if parts.symbols[at] == "u"
    ]
    finished = next((at for at, word in words if word.lower().startswith("finish")), None)
    if finished is None or not words[-1][1].lower().startswith("cut"):
        return False
    return abs(finished - max(parts.lengths, key=lambda at: parts.items[at].value)) <= 5


def _added(parts: Parts) -> Iterator[Way]:
    adding = adds(parts)
    summed = [at for at in parts.summed() if not is_cloth_width(parts.items, at, parts.said)]
    for size in range(2, len(summed) + 1):
        some = [(parts.items[at], times_of(parts, at)) for at in summed[-size:]]
        exactness = Exactness.EXACT if len({item.unit for item, _ in some}) == 1 else Exactness.RULER
        hedged = any(item.hedged for item, _ in some)
        whole = max(item.value for item, _ in some)
        likely = tuple(1 if item.value == whole else times for item, times in some)
        readings = [likely, (1, *(2 for _ in some[1:]))]
        if "D" in parts.around and "LD" not in parts.around:
            readings.append(tuple(1 if item.value == whole else 2 * times for item, times in some))
        if "S" not in parts.around and "N*L" not in parts.around:
            readings.append(tuple(1 for _ in some))
        for often in counts_of(parts):
            readings += [tuple(often if at == place else 1 for at in range(len(some))) for place in range(len(some))]
        for times in dict.fromkeys(readings):
            pairs = [(item, often) for (item, _), often in zip(some, times, strict=True)]
            words = " + ".join(f"{f'{often} × ' if often > 1 else ''}{parts.said(item)}" for item, often in pairs)
            value = sum((item.value if often == 1 else often * item.value for item, often in pairs), Fraction(0))
            yield Way("sum", value, words, exactness, hedged, value, adding and times == likely and size == len(summed))


def _at_both_sides(parts: Parts) -> Iterator[Way]:
    """One length at both sides: ``1.5 cm on each comes to 3 cm``, ``5 in each, front and back together 10 in``."""
    around = parts.around
    told = ("S" in around or ("e" in around and "c" in around)) and bool(
        set("=qct") & set(parts.scope.tie + around[-4:])
    )
    if told and len(parts.lengths) == 1 and "N" not in around:
        length = parts.items[parts.lengths[0]]
        words = f"2 × {parts.said(length)}"
        yield Way("doubling", 2 * length.value, words, Exactness.RULER, length.hedged, length.value)


def _all_but_one(parts: Parts) -> Iterator[Way]:
    """All lengths but one, which another was made of: ``a hem of 4 in, which uses 8 in``."""
    lengths = [parts.items[at].value for at in parts.lengths]
    if len(lengths) > 3:
        for each in lengths:
            yield Way("", sum(lengths) - each, "", Exactness.EXACT, False, max(lengths), named=False)


def _signed(parts: Parts) -> Iterator[Way]:
    """The greatest length, with all others added or taken off as the words beside each say.

    ``The neckline is 22 in. Cut the band 3 in shorter, plus two 1/2 in allowances``. Nothing where one is told neither.
    """
    places = parts.summed()
    if len(places) < 2:
        return
    base = max(places, key=lambda at: parts.items[at].value)
    whole = parts.items[base]
    value, words, signs, sign = whole.value, parts.said(whole), set[int](), 0
    for at in places:
        if at == base:
            sign = 0
            continue
        sign = sign_of(parts, at) or (sign if joined_to_the_last(parts.symbols, at) else 0)
        if not sign:
            return
        times = times_of(parts, at)
        value += sign * times * parts.items[at].value
        words += f" {'+' if sign > 0 else '−'} {f'{times} × ' if times > 1 else ''}{parts.said(parts.items[at])}"
        signs.add(sign)
    if value <= 0:
        return
    items = [parts.items[at] for at in places]
    exactness = Exactness.EXACT if len({item.unit for item in items}) == 1 else Exactness.RULER
    kind = "sum" if signs == {1} else "difference"
    yield Way(kind, value, words, exactness, any(item.hedged for item in items), whole.value)


def _takes(parts: Parts) -> bool:
    """Whether the words around take one length off another."""
    tie = parts.scope.tie
    taken = parts.has("T-v<dmyhB") and not _grows_from_finished(parts)
    compared = "q" in tie and len(parts.summed()) == 2
    eases = _eases(parts) and not _is_the_greatest(parts)
    got = ("g" in tie and parts.has("f")) or tie.endswith("b")
    return taken or compared or eases or got or (parts.has("S") and parts.has("ap"))


def _taken_off(parts: Parts) -> Iterator[Way]:
    """One length without another, once or at both ends; then all others taken off the greatest."""
    summed, takes = parts.summed(), _takes(parts)
    complete = len(summed) > 2 and any(True for _ in _signed(parts))
    adding = adds(parts)
    for one, other in () if complete else combinations(parts.lengths, 2):
        named = takes and len(summed) == 2 and {one, other} == set(summed)
        yield from _without(parts, one, other, named=named, adding=adding)
    if parts.has("T-") and len(parts.lengths) > 2:
        yield from _each_less(parts)
    if len(summed) > 2:
        near = parts.symbols.count(".", summed[0], parts.scope.at) <= _SENTENCES_OF_A_LIST
        yield from _all_taken_off(parts, [parts.items[at] for at in summed], takes=takes and near)
    for first in range(1, len(summed) - 1):  # what stands before may have no part in it
        for way in _all_taken_off(parts, [parts.items[at] for at in summed[first:]], takes=False):
            yield way._replace(named=False)


def _without(parts: Parts, one: int, other: int, *, named: bool, adding: bool) -> Iterator[Way]:
    """The greater of two lengths without the smaller; only to excuse a result, the two together too."""
    items, symbols = (parts.items[one], parts.items[other]), parts.symbols
    more, less = items if items[0].value >= items[1].value else items[::-1]
    exactness = Exactness.EXACT if more.unit is less.unit else Exactness.RULER
    often = times_of(parts, one if less is items[0] else other)
    least = max(often, 2 if "S" in parts.around else 1)
    apart = more.value - less.value

    def way(kind: str, value: Fraction, words: str = "", *, named: bool = False) -> Way:
        return Way(kind, value, words, exactness, more.hedged or less.hedged, more.value, named)

    for times in (often,) if often > 1 and not parts.has("D") else (least, 2 * least):
        value = apart if times == 1 else more.value - times * less.value
        if value > 0:
            words = f"{parts.said(more)} − {f'{times} × ' if times > 1 else ''}{parts.said(less)}"
            yield way("difference", value, words, named=named and times == least)
    if "<" in symbols[other + 1 : other + 3] or "<" in symbols[one + 1 : one + 3]:
        yield way("", apart)
    if parts.has("vSH"):
        yield way("", apart / 2)  # what is left on either side
    alike = sum(1 for at in parts.lengths if parts.items[at].value == less.value) > 1
    if "S" in parts.around and len(parts.lengths) > 2 and not alike:
        yield way("", more.value + 2 * less.value)  # “16 in, 19 in stretched; with 1/2 in at both ends I cut 17 in”
    counted = "*" in symbols[max(0, other - 1) : other]
    lone = "S" not in symbols[max(0, other - 4) : other + 4] and "A" in symbols[max(0, other - 3) : other]
    if not counted and (not adding or (other == parts.lengths[-1] and lone)):
        yield way("", more.value + less.value)


def _each_less(parts: Parts) -> Iterator[Way]:
    """Several lengths together, each without the least one: ``42 cm and 66 cm; the seam swallows 1.5 cm of each``."""
    items = [parts.items[at] for at in parts.lengths]
    least = min(items, key=lambda item: item.value)
    others = [item for item in items if item.value >= 3 * least.value]
    if len(others) < 2:
        return
    value = sum((item.value - least.value for item in others), Fraction(0))
    words = " + ".join(parts.said(item) for item in others) + f" − {len(others)} × {parts.said(least)}"
    named = "e" in parts.symbols[parts.lengths[-1] : parts.scope.at]
    yield Way("difference", value, words, Exactness.RULER, False, max(item.value for item in items), named)


def _all_taken_off(parts: Parts, items: Sequence[Item], *, takes: bool) -> Iterator[Way]:
    """The first or the greatest length without all the others: ``36 in, 2 in off the top and 2 in off the bottom``."""
    whole = max(items, key=lambda item: item.value)
    rest = [item for item in items if item is not whole]
    value = whole.value - sum((item.value for item in rest), Fraction(0))
    told = any(
        one.value + other.value == third.value for one, other, third in zip(rest, rest[1:], rest[2:], strict=False)
    )
    if value > 0 and not told:
        words = f"{parts.said(whole)} − " + " − ".join(parts.said(item) for item in rest)
        exactness = Exactness.EXACT if len({item.unit for item in items}) == 1 else Exactness.RULER
        hedged = any(item.hedged for item in items)
        yield Way("difference", value, words, exactness, hedged, whole.value, takes and not parts.has("+A"))


def _round_a_rectangle(parts: Parts) -> Iterator[Way]:
    """All four sides of a rectangle together."""
    for one, other in pairwise(parts.lengths):
        if re.fullmatch(r"_?[*b]_?", parts.symbols[one + 1 : other]):
            sides = parts.items[one], parts.items[other]
            value = 2 * (sides[0].value + sides[1].value)
            words = f"2 × {parts.said(sides[0])} + 2 × {parts.said(sides[1])}"
            named = re.search(r"S_?c|S[^L]{0,3}$", parts.around) is not None
            yield Way("sum", value, words, Exactness.EXACT, False, value, named and parts.has("S"))


def _cut_and_finished(parts: Parts) -> Iterator[Way]:
    """Pieces sewn together, with the allowances of the first and the last left: what the seams of a block leave."""
    for one, other in pairwise(parts.lengths):
        more, less = sorted((parts.items[one].value, parts.items[other].value), reverse=True)
        if more > 2 * less:
            continue
        for count in counts_of(parts):
            yield Way("", count * less + more - less, "", Exactness.EXACT, False, more, named=False)
