"""Rows of lengths, such as the sides of a box, that are given again in the other unit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.find import Measured, Reading
from sitegen.prose.link_words import HEDGES, NOUNS, PLACES
from sitegen.prose.links import BESIDE, FAR, LINKS
from sitegen.prose.nominal import agrees_in_print
from sitegen.prose.pair import InTwoUnits, hardly_apart, plausible, typed_of
from sitegen.prose.words import words

_SIDES = (["x"], ["×"], ["by"], ["*"])
_SAYS = words("or that's which is = i.e.") | HEDGES
_TELLS = _SAYS | {"so", "makes", "equals"}
_BETWEEN = LINKS | NOUNS | words("each ; that")
"""Words of which none between two rows makes the second a row of its own."""
_IN_A_ROW = ([",", "then"], ["then"], [",", "and"])
_COUNTS = (4, 3, 2)
"""So many lengths may be in a row."""
_PARTED, _APART = 6, 14
"""Tokens between two lengths of a row, and between two rows."""
_SUMS = words("+ − plus minus less = ; add")
"""Words that part lengths of which each is something else."""


def rows_in_two_units(reading: Reading, lengths: Sequence[Measured]) -> Iterator[InTwoUnits]:
    """The lengths of each row that is given again in the other unit.

    ``36 x 48 in (91 x 122 cm)``, ``turn 1 cm, then 2 cm (3/8, then 3/4 in)``, ``12 in wide and 9 in tall; for metric
    readers, 30.5 by 23 cm``.
    """
    tokens, behind = reading.tokens, 0
    systems = [one.unit and one.unit.system for one in lengths]
    for at in range(len(lengths) - 3):
        if lengths[at].first < behind or systems[at] is not systems[at + 1]:
            continue
        for count in _COUNTS:
            if at + 2 * count > len(lengths) or systems[at + count] is systems[at]:
                continue
            first, again = lengths[at : at + count], _in_one_unit(lengths[at + count : at + 2 * count])
            if _given_again(reading, first, again):
                last = again[-1].behind
                closed = last < len(tokens) and tokens.words[last] in (")", "]")
                behind = last + closed
                yield from _sides_in_two_units(reading, first, again, behind)
                break


def _in_one_unit(row: Sequence[Measured]) -> list[Measured]:
    """Lengths in a row, those that are printed without a unit in the unit of the first one."""
    return [replace(each, unit=row[0].unit) if each.supplied else each for each in row]


def _sides_in_two_units(
    reading: Reading, first: Sequence[Measured], again: Sequence[Measured], behind: int
) -> Iterator[InTwoUnits]:
    for index, (one, other) in enumerate(zip(first, again, strict=True)):
        agrees = _agree(reading, one, other, hedged=_is_hedged(reading, first, again))
        found = InTwoUnits(one, other, other.first, other.behind, agrees, hidden_from=first[-1].behind)
        end = behind if index == len(first) - 1 else other.behind
        yield replace(found, behind=end) if agrees else found


def _is_hedged(reading: Reading, first: Sequence[Measured], again: Sequence[Measured]) -> bool:
    return not HEDGES.isdisjoint(reading.tokens.words[first[-1].behind : again[0].first])


def _agree(reading: Reading, one: Measured, other: Measured, *, hedged: bool) -> bool:
    return agrees_in_print(typed_of(reading, one), typed_of(reading, other)) or (hedged and hardly_apart(one, other))


def _given_again(reading: Reading, first: Sequence[Measured], again: Sequence[Measured]) -> bool:
    """Whether lengths in a row are followed by as many in the other system."""
    one, other = ({each.unit.system if each.unit else None for each in row} for row in (first, again))
    if len(one) != 1 or len(other) != 1 or one == other or None in one | other:
        return False
    words = reading.tokens.words
    parting = [words[a.behind : min(b.first, a.behind + 8)] for row in (first, again) for a, b in pairwise(row)]
    between = words[first[-1].behind : min(again[0].first, first[-1].behind + _APART + 1)]
    return _parted_alike(parting, between, first, again) or _told_again(reading, parting, between, first, again)


def _parted_alike(
    parting: list[list[str]], between: list[str], first: Sequence[Measured], again: Sequence[Measured]
) -> bool:
    """Whether the lengths of both rows are parted in the same way, and little stands between the rows."""
    parting = [[word for word in each if word not in NOUNS] for each in parting]
    between = [word for word in between if word not in NOUNS and word != "finished"]
    if any(each not in _SIDES for each in parting):
        return between == ["("] and len({tuple(each) for each in parting}) == 1 and parting[0] in _IN_A_ROW
    return len(between) <= 4 and (
        between[:1] in (["("], ["["], ["/"], ["|"])
        or between[-1:] in (["–"], ["—"])
        or (
            all(word in LINKS for word in between)
            and not _SAYS.isdisjoint(between)
            and _are_alike(first, again, BESIDE)
        )
    )


def _told_again(
    reading: Reading, parting: list[list[str]], between: list[str], first: Sequence[Measured], again: Sequence[Measured]
) -> bool:
    """Whether all lengths but one at most say again what the other row says, so that both rows are the same."""
    if len(between) > _APART or any(len(each) > _PARTED or not _SUMS.isdisjoint(each) for each in parting):
        return False
    if between[-1:] in (["and"], ["but"], ["or"]):
        return False  # “18 by 22 in in America and 50 by 55 cm here”
    opens = between[-1:] == ["("] or (between[-2:-1] == ["("] and between[-1] in HEDGES)
    said = not _TELLS.isdisjoint(between) and all(word in _BETWEEN for word in between)
    before = reading.tokens.words[max(0, first[0].first - _PARTED) : first[0].first]
    near = [*before, *between] if len(between) < _PARTED else between
    told = opens or said or not PLACES.isdisjoint(near)
    if not told or not _are_alike(first, again, FAR):
        return False
    hedged = _is_hedged(reading, first, again)
    agreeing = [_agree(reading, a, b, hedged=hedged) for a, b in zip(first, again, strict=True)]
    return sum(agreeing) >= max(len(agreeing) - 1, 1)


def _are_alike(first: Sequence[Measured], again: Sequence[Measured], times: Fraction) -> bool:
    """Whether every length is about as long as its partner: so many times at most."""
    pairs = zip(first, again, strict=True)
    return all(plausible(one, other, one.unit, other.unit, times) for one, other in pairs if one.unit and other.unit)
