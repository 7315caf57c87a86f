"""Sums of a class: turns at shared tools, the minutes of a step for a whole class, spares.

Source, where a sum names none: common practice, no source. All counts are whole and above nothing.
"""

from __future__ import annotations

from math import ceil

from sitegen.quantities import Ratio, Rounding, Term, Worked, given, minus, plus, times, work
from sitegen.sewing.counting import DIVIDED_BY, enough

_ALL = given("whole of a step", Ratio.percent(100))


def turns(name: str, students: Worked, tools: Worked) -> Worked:
    """How many turns students take at tools that are fewer than they: students ÷ tools, rounded up.

    Source: arithmetic; every student has a tool alone for the turn. Raises ValueError when there is no tool.
    """
    return _shared_out(name, students, tools)


def groups(name: str, students: Worked, each: Worked) -> Worked:
    """How many groups of so many students make up the class, rounded up. Raises ValueError for a group of nobody."""
    return _shared_out(name, students, each)


def minutes_in_class(name: str, minutes: Worked, at_tool: Worked, in_turn: Worked) -> Worked:
    """The minutes of a step for a class that takes turns: away from the tool + at the tool × turns, rounded up.

    A step of 30 minutes, half of them at a machine that two students share, takes 15 + 15 × 2 = 45. Source: derived;
    that one share of the minutes holds for every step is common practice, no source. Raises ValueError for a share
    that is not from 0 to 100 %.
    """
    if not 0 <= at_tool.ratio.value <= 1:
        raise ValueError(f"{at_tool.name} must be from 0% to 100%")
    if in_turn.number == 1:
        return minutes.named(name)
    away = work("minutes away from the tool", minutes, times(work("share away from the tool", _ALL, minus(at_tool))))
    one_turn = work("minutes of one turn", minutes, times(at_tool))
    all_turns = work("minutes of all turns", one_turn, times(in_turn))
    exact = work(name, away, plus(all_turns))
    if exact.number.denominator == 1:
        return exact
    parts = (Term("", 1, away), Term("and", 1, all_turns))
    return Worked(name, ceil(exact.number), parts, "rounded up to a whole minute")


def spare_counted(name: str, need: Worked, share: Worked) -> Worked:
    """How many spares of things that are counted: need × share, rounded up to a whole one. Source: common practice,
    no source.
    """
    exact = work(name, need, times(share))
    if exact.number.denominator == 1:
        return exact
    return Worked(name, ceil(exact.number), (Term("", 1, share), Term("of", 1, need)), "rounded up to a whole one")


def spare_length(name: str, need: Worked, share: Worked) -> Worked:
    """The spare of what is bought by its length: need × share. Source: common practice, no source."""
    return work(name, need, times(share))


def in_whole_steps(name: str, total: Worked, step: Worked, steps: str) -> Worked:
    """What to ask for in a shop: the length in whole steps of what it sells, rounded up. Source: common practice, no
    source.
    """
    return work(name, step, times(enough(steps, total, step))).rounded(Rounding.SOLD)


def _shared_out(name: str, students: Worked, each: Worked) -> Worked:
    if each.number < 1:
        raise ValueError(f"{each.name} must be at least 1")
    count = ceil(students.number / each.number)
    return Worked(name, count, (Term("", 1, students), Term(DIVIDED_BY, 1, each)), "rounded up to a whole one")
