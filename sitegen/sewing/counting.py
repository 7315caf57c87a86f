"""Whole counts out of lengths: how many are needed, how many fit. Source: common practice, no source."""

from __future__ import annotations

from math import ceil, floor

from sitegen.quantities import Length, Term, Worked

DIVIDED_BY = "divided by"
"""Stands for ÷ where the result is a whole count or a length out of an area."""


def enough(name: str, need: Worked, each: Worked) -> Worked:
    """The smallest whole count of equal lengths that makes up the need; none when nothing is needed.

    Raises ValueError when the length of one is not above zero.
    """
    count = max(0, ceil(need.length.over(_positive(each))))
    return Worked(name, count, (Term("", 1, need), Term(DIVIDED_BY, 1, each)), "rounded up to a whole one")


def fitting(name: str, room: Worked, each: Worked) -> Worked:
    """The largest whole count of equal lengths that the room holds; none when it holds not even one.

    Raises ValueError when the length of one is not above zero.
    """
    count = max(0, floor(room.length.over(_positive(each))))
    return Worked(name, count, (Term("", 1, room), Term(DIVIDED_BY, 1, each)), "whole ones only")


def at_least(least: int, name: str, count: int) -> int:
    """The count itself. Raises ValueError when it is less than the least that makes sense."""
    if count < least:
        raise ValueError(f"{count} {name}: at least {least} needed")
    return count


def _positive(each: Worked) -> Length:
    if each.length.mm <= 0:
        raise ValueError(f"{each.name} must be longer than nothing")
    return each.length
