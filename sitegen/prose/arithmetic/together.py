"""Results that all the numbers before them make together: ``Each pleat takes 5 in of cloth. Six of them use 35 in.``

Where a paragraph gives few numbers and a length follows that its words call a result, this length is made of all of
them, whatever else the words say. They are read as if keyed into a calculator: what the last ones make takes their
place. The length holds if any simple sum makes it; it may be wrong if none does and one of the plainest sums of all
numbers that are left comes near.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, product

from sitegen.prose.arithmetic.agree import Exactness, agrees
from sitegen.prose.arithmetic.likely import is_like
from sitegen.prose.arithmetic.relations import is_adjective
from sitegen.prose.arithmetic.slack import has_slack
from sitegen.prose.arithmetic.symbols import Item
from sitegen.prose.arithmetic.terms import Said, factor_said
from sitegen.quantities import Ratio, show_ratio

_MOST_LENGTHS, _MOST_FACTORS = 4, 3
"""So many numbers may make one result."""
_MOST_SEEN = 9
_REACH = 45
"""Where more numbers stand before a result, or the first one farther off, nobody can tell which of them make it."""
_FACTORS = frozenset("NPRHDS")
_COUNTS = frozenset("NDS")
_UNKNOWN = frozenset("~X")
"""A range, or a number that nobody knows here."""
_NUMBERS = re.compile("[LNPR~X]")
_CALLS, _CALLS_BEHIND = frozenset("=qcvTk:u<>("), frozenset("cv")
"""Words before a length, and behind it, that call it a result."""
_BEGINS = re.compile(r"\.[_oBbE]{0,3}$|[_,]b$")
"""Before a length that begins a sentence, or by which something grew: ``That is it. A grand 4 1/2 in more``."""
_PIECES_OF = re.compile("N_?n?_?(?:o_?)?$")
"""Before a length of which there are several: ``two widths of 54 in``."""
_LISTED = re.compile("&[^L=qcvT:<>(]*$|:_?L[^L]{0,4}:_?$")
"""Before a length that is one more of a list: ``the drop is 11 in, a strap is 28 in, and the top is 15 in``."""
_TAKES_OFF = frozenset("T-<")
_BESIDE = 6
"""Items behind a length that still say what it is."""


@dataclass(frozen=True, slots=True)
class Together:
    """A sum of all numbers: its kind, what it makes in millimetres, and the sum in words."""

    kind: str
    value: Fraction
    words: str


@dataclass(frozen=True, slots=True)
class _Factor:
    """A number that counts or shares, and its symbol."""

    symbol: str
    value: Fraction


def together_results(
    items: Sequence[Item], symbols: str, said: Said, right: Mapping[int, Collection[int]]
) -> Iterator[tuple[int, Together]]:
    """Every length of a paragraph that may be wrong, by its place, and the sum that should make it.

    ``right`` gives the results that hold, each with the places of its parts: these are used up.
    """
    made_before = {part for at, parts in right.items() for part in parts if part > at}
    """What another result is made of that stands before it: ``58 cm and 56 cm, which is 97%``."""
    seen: list[int] = []
    left: list[int] = []
    """The numbers that are not used up."""
    for at, symbol in enumerate(symbols):
        counts_nothing = symbol == "N" and (not items[at].value or symbols.startswith("t", at + 1))  # “2 to 1”
        if counts_nothing or symbol in _UNKNOWN or len(seen) > _MOST_SEEN or (seen and at - seen[0] > _REACH):
            return
        if symbol == "L":
            if not _is_of_one_system(items, at, seen):
                return
            parts = right.get(at)
            if parts is not None:
                left = [place for place in left if place not in parts]
            elif not _is_named_again(items, at, left):
                begin = _makes_from(items, symbols, at, left, said)
                if begin is not None:
                    del left[begin:]
                elif _may_be_result(items, symbols, at, said):
                    near = _near_miss(items, symbols, at, seen, left, said)
                    if near is not None and not has_slack(items, symbols, at, near.value, near.kind, said):
                        yield at, near
        if symbol == "L" or symbol in _FACTORS:
            seen.append(at)
            if at not in made_before:
                left.append(at)


def _is_of_one_system(items: Sequence[Item], at: int, seen: Iterable[int]) -> bool:
    """Whether a length is told exactly, and in inches like all before it, or in centimetres like them."""
    units = [unit for place in (*seen, at) if (unit := items[place].unit) is not None]
    return items[at].unit is not None and not items[at].hedged and len({unit.system for unit in units}) == 1


def _is_named_again(items: Sequence[Item], at: int, left: Iterable[int]) -> bool:
    return any(items[place].symbol == "L" and items[place].value == items[at].value for place in left)


def _makes_from(items: Sequence[Item], symbols: str, at: int, left: Sequence[int], said: Said) -> int | None:
    """Where among the numbers that are left those begin that make the length at ``at``, the nearest first."""
    unit = items[at].unit
    if unit is None or not _is_called_a_result(symbols, at):
        return None
    for begin in reversed(range(len(left))):
        sums = _plain_sums(items, symbols, at, left[begin:], said)
        if any(agrees(items[at].value, unit, (each.value,), Exactness.RULER, hedged=False) for each in sums):
            return begin
    return None


def _may_be_result(items: Sequence[Item], symbols: str, at: int, said: Said) -> bool:
    behind = said(items[at + 1]) if at + 1 < len(items) else ""
    return (
        not items[at].times
        and not is_adjective(said(items[at]), behind)
        and _PIECES_OF.search(symbols[max(0, at - _BESIDE) : at]) is None
        and _NUMBERS.search(symbols[at + 1 :].partition(".")[0]) is None
        and _is_called_a_result(symbols, at)
    )


def _is_called_a_result(symbols: str, at: int) -> bool:
    before, behind = symbols[max(0, at - _REACH) : at], symbols[at + 1 : at + 1 + _BESIDE].partition(".")[0]
    if behind.startswith("W") and "LW" not in before:
        return False  # how wide something is, where no width was told
    if behind.startswith("j"):
        return False  # “pins 2 in apart”
    ahead = re.split("[LNPRHD]", before)[-1]
    called = not (_CALLS.isdisjoint(ahead) and _CALLS_BEHIND.isdisjoint(behind))
    return called or _BEGINS.search(ahead) is not None


def _near_miss(
    items: Sequence[Item], symbols: str, at: int, seen: Sequence[int], left: Sequence[int], said: Said
) -> Together | None:
    """The plainest sum that comes near a length, if no simple one makes it."""
    result, unit = items[at].value, items[at].unit
    lengths, factors = _lengths(items, left), _factors(items, left)
    if unit is None or not lengths or len(lengths) > _MOST_LENGTHS or len(factors) > _MOST_FACTORS:
        return None
    sums = _plain_sums(items, symbols, at, left, said)
    listed = _LISTED.search(symbols[left[0] : at]) is not None
    near = [
        each
        for each in sums
        if is_like(result, each.value, unit) and not (listed and each.kind in ("sum", "difference"))
    ]
    if not near:
        return None
    simple = _sums_of_many([item.value for item in lengths], factors)
    simple |= _sums_of_two([item.value for item in _lengths(items, seen)], _factors(items, seen))
    if any(agrees(result, unit, (each,), Exactness.COARSE, hedged=False) for each in simple if each > 0):
        return None
    return min(near, key=lambda each: abs(each.value - result))


def _lengths(items: Sequence[Item], places: Iterable[int]) -> list[Item]:
    return [items[place] for place in places if items[place].symbol == "L"]


def _factors(items: Sequence[Item], places: Iterable[int]) -> list[_Factor]:
    return [_Factor(items[place].symbol, items[place].value) for place in places if items[place].symbol != "L"]


def _plain_sums(items: Sequence[Item], symbols: str, at: int, places: Sequence[int], said: Said) -> Iterator[Together]:
    """The plainest sums of all numbers: lengths added, or taken off the greatest; and one factor, or several counts."""
    lengths, factors = _lengths(items, places), _factors(items, places)
    if len(lengths) == 1:
        one = Together("", lengths[0].value, said(lengths[0]))
        if len(factors) == 1:
            yield from _times(one, factors[0])
        elif factors and _COUNTS.issuperset(factor.symbol for factor in factors):
            for factor in factors:
                one = next(_times(one, factor))
            yield one
    elif lengths and all(item.unit is items[at].unit for item in lengths):
        takes_off = not _TAKES_OFF.isdisjoint(symbols[places[0] : at])
        sums = _added_or_taken_off(lengths, said, takes_off=takes_off)
        if not factors:
            yield from sums
        elif [factor.symbol for factor in factors] == ["N"]:
            yield from (each for one in sums for each in _times(one, factors[0]))


def _added_or_taken_off(lengths: Sequence[Item], said: Said, *, takes_off: bool) -> Iterator[Together]:
    total = sum((item.value for item in lengths), Fraction(0))
    yield Together("sum", total, " + ".join(map(said, lengths)))
    whole = max(lengths, key=lambda item: item.value)
    rest = [item for item in lengths if item is not whole]
    if 2 * whole.value > total and (len(rest) == 1 or takes_off):
        yield Together("difference", 2 * whole.value - total, " − ".join(map(said, (whole, *rest))))


def _times(one: Together, factor: _Factor) -> Iterator[Together]:
    """A sum with a factor, in the ways in which people mean one."""
    term = f"({one.words})" if " + " in one.words or " − " in one.words else one.words
    if factor.symbol == "N":
        count = factor_said(factor.value)
        yield Together("product", one.value * factor.value, f"{count} × {term}")
        yield Together("division", one.value / factor.value, f"{term} ÷ {count}")
    elif factor.symbol == "P":
        share = show_ratio(Ratio(factor.value))
        yield Together("percent", one.value * factor.value, f"{share} of {term}")
        yield Together("percent", one.value * (1 - factor.value), f"{term} − {share}")
        yield Together("percent", one.value * (1 + factor.value), f"{term} + {share}")
    elif factor.symbol == "R":
        yield Together("share", one.value * factor.value, f"{factor_said(factor.value)} of {term}")
    elif factor.symbol == "H":
        yield Together("halving", one.value / 2, f"half of {term}")
    else:
        yield Together("doubling", one.value * 2, f"2 × {term}")


def _sums_of_many(lengths: Sequence[Fraction], factors: Sequence[_Factor]) -> set[Fraction]:
    """What three lengths or more make, added and taken off, each once or twice."""
    times = _all_times(factors)
    made: set[Fraction] = set()
    for size in range(3, len(lengths) + 1):
        for some in combinations(lengths, size):
            made.update(each * sum(some) for each in times)
            for signs in product((1, -1, 2, -2), repeat=size - 1):
                rest = (sign * length for sign, length in zip(signs, some[1:], strict=True))
                made.add(abs(some[0] + sum(rest)))
    return made


def _sums_of_two(lengths: Sequence[Fraction], factors: Sequence[_Factor]) -> set[Fraction]:
    """What a length with a factor makes, or two of which one is taken so often; or pieces that lose seams in a row."""
    times = _all_times(factors)
    made = {length * each for length in lengths for each in times}
    for pair in combinations(lengths, 2):
        for one, other in (pair, pair[::-1]):
            for each in times:
                more = each * other
                made.update((one + more, one - more, more - one, each * (one - other), each * (one + other)))
                made.update(each * one - 2 * seams * other for seams in (each - 1, each))
    return made


def _all_times(factors: Sequence[_Factor]) -> set[Fraction]:
    """What a length may be multiplied by; of things in a row, the gaps are one fewer or one more."""
    times = {Fraction(1), Fraction(2), Fraction(1, 2)}
    for factor in factors:
        if factor.symbol == "N":
            counts = (factor.value - 1, factor.value, factor.value + 1)
            times.update(each for count in counts if count > 0 for each in (count, 1 / count))
        elif factor.symbol in "PR":
            times.update((factor.value, 1 - factor.value, 1 + factor.value))
    for one, other in combinations([factor.value for factor in factors if factor.value], 2):
        times.update((one * other, one / other, other / one))
    return times
