"""The ways in which the words of a text may put its numbers together."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import chain

from sitegen.prose.arithmetic.agree import Exactness
from sitegen.prose.arithmetic.symbols import Item, is_cloth_width
from sitegen.prose.arithmetic.terms import Said
from sitegen.prose.arithmetic.ways_of.by_count import counted_ways
from sitegen.prose.arithmetic.ways_of.by_factor import shared_ways
from sitegen.prose.arithmetic.ways_of.by_sum import adds, summed_ways
from sitegen.prose.arithmetic.ways_of.parts import Parts, Scope, Way
from sitegen.quantities import Unit

_MOST_LENGTHS = 6

__all__ = ["Scope", "Way", "ways_in"]


def _in_the_unit_of(items: Sequence[Item], scope: Scope) -> Sequence[Item]:
    """The items, lengths that are given in two units in the one of the result."""
    unit = items[scope.at].unit
    if unit is None or not any(item.other for item in items[scope.start : scope.end]):
        return items
    return [
        item._replace(value=item.other.value * item.other.unit.mm, number=item.other)
        if item.other is not None
        and item.other.unit is not None
        and item.unit is not None
        and item.unit.system is not unit.system
        and item.other.unit.system is unit.system
        and at != scope.at
        else item
        for at, item in enumerate(items)
    ]


def _fits(items: Sequence[Item], at: int, scope: Scope, said: Said) -> bool:
    """Whether a length is told in the system of the result, and is no width of cloth of which so much is bought."""
    unit, result = items[at].unit, items[scope.at].unit
    if result in (Unit.YD, Unit.M) and is_cloth_width(items, at, said):
        return False
    return unit is None or result is None or unit.system is result.system or items[at].other is not None


def ways_in(items: Sequence[Item], symbols: str, scope: Scope, said: Said) -> Iterator[Way]:
    """Every way, named or not, in no order."""
    lengths = tuple(
        at
        for at in range(scope.start, scope.end)
        if symbols[at] == "L" and at != scope.at and _fits(items, at, scope, said)
    )[-_MOST_LENGTHS:]
    last = max(lengths, default=scope.start)
    end = scope.end if scope.end == scope.at else min(scope.end, last + 8)
    behind = "".join(symbol for symbol in symbols[scope.at + 1 : scope.at + 5] if symbol in "cveSE")
    behind += "T" if re.match(r"_?t_?T", symbols[scope.at + 1 :][:4]) else ""
    around = symbols[scope.start : end] + " " + behind
    items = _in_the_unit_of(items, scope)
    parts = Parts(items, symbols, scope, said, lengths, around)
    told = adds(parts) and "S" in around and bool(set(scope.tie) & set("u="))
    for at in () if told else lengths:
        yield Way("", items[at].value, "", Exactness.EXACT, items[at].hedged, items[at].value, named=False)
    around_result = scope.start < scope.at < scope.end
    for way in chain(shared_ways(parts), counted_ways(parts), summed_ways(parts)):
        only_excuses = around_result and way.named and way.kind != "percent"
        yield way._replace(named=False) if only_excuses else way
