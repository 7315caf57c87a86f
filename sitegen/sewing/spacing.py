"""Marks at even distances: buttons, buttonholes, snaps, belt loops.

Every position is worked from the whole length, so that rounding one gap never moves the marks after it.
Sources: common practice, no source, but for the tolerance.
"""

from __future__ import annotations

from enum import Enum

from sitegen.quantities import Worked, given, inches, minus, over, plus, times, work
from sitegen.sewing import counting

TOLERANCE = given("tolerance of a factory buttonhole", inches("1/16"))
"""By how much the distance of buttonholes may miss (MIL-L-24778; Commercial Item Description A-A-55095A)."""


class Spread(Enum):
    """Where the first and the last mark lie; the value is how many more gaps than marks there are."""

    BOTH_ENDS = -1
    """A mark at each end of the length, as on a button band between its margins."""
    ROUND = 0
    """Round a ring, where the last gap leads back to the first mark."""
    INSIDE = 1
    """No mark at the ends: a gap lies before the first mark and after the last."""


def span(name: str, length: Worked, first_margin: Worked | None, last_margin: Worked | None) -> Worked:
    """What lies between the first mark and the last: the length less a margin at each end that has one.

    Raises ValueError when nothing is left between them.
    """
    between = work(name, length, *(minus(margin) for margin in (first_margin, last_margin) if margin))
    if between.length.mm <= 0:
        raise ValueError("nothing is left between the first mark and the last")
    return between


def gap(name: str, length: Worked, marks: int, spread: Spread) -> Worked:
    """The distance from one mark to the next: length ÷ (n − 1) with both ends, ÷ (n + 1) without, ÷ n round a ring.

    Raises ValueError when there are too few marks to have a gap.
    """
    return work(name, length, over(given("gaps", _gaps(marks, spread))))


def positions(name: str, length: Worked, marks: int, spread: Spread, start: Worked | None = None) -> tuple[Worked, ...]:
    """The distance of every mark from one end, in order, as ``position`` works out each.

    Raises ValueError when there are too few marks to have a gap.
    """
    _gaps(marks, spread)
    return tuple(position(name, length, mark, marks, spread, start) for mark in range(1, marks + 1))


def position(name: str, length: Worked, mark: int, marks: int, spread: Spread, start: Worked | None = None) -> Worked:
    """The distance of one mark from one end: k × length ÷ gaps, from the whole length; the first ``mark`` is 1.

    ``start`` is the margin before the length begins; round a ring the first mark lies at the start.
    Raises ValueError when there are too few marks to have a gap, and for a mark that is not among them.
    """
    gaps = given("gaps", _gaps(marks, spread))
    if not 1 <= mark <= marks:
        raise ValueError(f"there is no mark {mark} among {marks}")
    before = given("gaps before it", mark if spread is Spread.INSIDE else mark - 1)
    title = f"{name} {mark}"
    along = work(f"{title} from {start.name}" if start else title, length, times(before), over(gaps))
    return work(title, start, plus(along)) if start else along


def within_margins(
    name: str, length: Worked, marks: int, first_margin: Worked, last_margin: Worked
) -> tuple[Worked, ...]:
    """The distance of every mark from one end, when the first and the last lie a margin inside the ends.

    Raises ValueError for fewer than two marks, and when the margins leave nothing between them.
    """
    between = span(f"length between the first {name} and the last", length, first_margin, last_margin)
    return positions(name, between, marks, Spread.BOTH_ENDS, first_margin)


def marks_needed(name: str, length: Worked, greatest_gap: Worked, spread: Spread) -> Worked:
    """The fewest marks that leave no gap greater than this; none may be needed inside a short length.

    Raises ValueError when the greatest gap is not above zero.
    """
    gaps = counting.enough("gaps", length, greatest_gap)
    if spread is Spread.BOTH_ENDS:
        return work(name, gaps, plus(given("mark more than gaps", 1)))
    if spread is Spread.INSIDE:
        return work(name, gaps, minus(given("gap more than marks", 1)))
    return gaps.named(name)


def buttonhole_length(name: str, diameter: Worked, thickness: Worked) -> Worked:
    """The length to cut open: the button's diameter and its thickness. Try it on a scrap first."""
    return work(name, diameter, plus(thickness))


def _gaps(marks: int, spread: Spread) -> int:
    return counting.at_least(2 if spread is Spread.BOTH_ENDS else 1, "marks", marks) + spread.value
