"""Gathers: how much fuller the cloth is before than after, and the rows that draw it in.

A ratio of 2, in words 2 to 1, is cloth cut twice as long as it finishes: a plain number, since nobody gathers to
200 %. Sources: common practice, no source, but for the rows.
"""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import Term, Worked, given, minus, over, plus, times, work
from sitegen.sewing import counting

TO_ONE = "to 1"
USUAL_LEAST = Fraction(5, 4)
"""Below 1 1/4 to 1 gathers look like puckers (common practice, no source)."""
USUAL_MOST = Fraction(3)
"""Above 3 to 1 the cloth hardly fits into the seam (common practice, no source)."""


def ratio(name: str, before: Worked, after: Worked) -> Worked:
    """How much fuller the cloth is: length before ÷ length after. Raises ZeroDivisionError when nothing is left."""
    terms = (Term("", 1, before), Term(counting.DIVIDED_BY, 1, after))
    return Worked(name, before.length.over(after.length), terms, TO_ONE)


def fullness(name: str, number: Fraction) -> Worked:
    """A ratio that was chosen."""
    return given(name, number, TO_ONE)


def cut_length(name: str, after: Worked, fullness: Worked) -> Worked:
    """The length to gather so that it finishes at this length: length after × ratio, seam allowances apart."""
    return work(name, after, times(fullness))


def gathered_length(name: str, before: Worked, fullness: Worked) -> Worked:
    """The length to which the cloth draws in: length before ÷ ratio. Raises ZeroDivisionError for no ratio."""
    return work(name, before, over(fullness))


def panel(name: str, before: Worked, panels: int) -> Worked:
    """The length to gather on each of several equal panels: length before ÷ panels. Raises ValueError for no panels."""
    return work(name, before, over(given("panels", counting.at_least(1, "panels", panels))))


def drawn_in(name: str, before: Worked, after: Worked) -> Worked:
    """The length that the gathers take up: length before less length after."""
    return work(name, before, minus(after))


def rows(name: str, first: Worked, apart: Worked, count: int) -> tuple[Worked, ...]:
    """The distance of every gathering row from the raw edge: the first, and each next one so far further in.

    Source: two rows 1/4 in apart, the first 1/4 in from the edge (4-H bulletin, "It's Fun to Sew a Cotton
    School Dress").
    """
    found = []
    for row in range(count):
        title = f"{name} {row + 1}"
        further = work(f"{title} from the first", apart, times(given("rows before it", row)))
        found.append(work(title, first, plus(further)) if row else first.named(title))
    return tuple(found)


def inside(name: str, allowance: Worked, row: Worked) -> Worked:
    """How far inside the seam line a row lies, hidden in the allowance; it shows on the garment if negative."""
    return work(name, allowance, minus(row))
