"""Cloth to allow for: shrinkage, another width, a repeat to match, widths side by side.

Sums are exact; what is needed is shown rounded up, and ``to_buy`` of the quantities is what shops sell of it. Source,
where a sum names none: arithmetic of whole repeats and widths, common practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from sitegen.quantities import ZERO, Length, Ratio, Rounding, Worked, given, minus, over, times, work
from sitegen.sewing import counting

WHOLE = given("whole cloth", Ratio(Fraction(1)))
LEAST_SHARE = Fraction(22, 25)
"""Published swaps of width lie between 88 % of the sum by area and that sum ÷ 88 %.

Derived from a yardage table of twelve rows and eight widths, 36 to 66 in (web reprints, names withheld, usually
credited to Rutgers Cooperative Extension): the farthest cells lie at 88.4 % and 113.1 %.
"""


def before_washing(name: str, need: Worked, shrinkage: Worked) -> Worked:
    """The cloth to buy for what must be left after washing: need ÷ (1 − shrinkage).

    100 cm at 5 % are 105.3 cm, not 105. Source: derived. Raises ValueError unless shrinkage is from 0 to under 100 %.
    """
    return work(name, need, over(_left_by(shrinkage))).rounded(Rounding.ENOUGH)


def after_washing(name: str, bought: Worked, shrinkage: Worked) -> Worked:
    """What washing leaves of a length: length × (1 − shrinkage).

    Source: derived. Raises ValueError unless shrinkage is from 0 to under 100 %.
    """
    return work(name, bought, times(_left_by(shrinkage)))


def shrinkage_found(name: str, before: Worked, after: Worked) -> Worked:
    """The shrinkage of a washed swatch: (before − after) ÷ before; negative if it grew. Source: common practice."""
    return work(name, work("lost in the wash", before, minus(after)), over(before))


def at_other_width(name: str, need: Worked, width: Worked, other: Worked) -> Worked:
    """The length of a cloth of another width with the same area: length × width ÷ other width.

    No cutting layout: large pieces may need more. It tells a plausible swap from a slip. Source: derived.
    """
    return work(name, need, times(work("width against the other", width, over(other))))


def swap_is_plausible(said: Length, by_area: Length) -> bool:
    """Whether a stated swap of width lies as near to the sum by area as published ones do (``LEAST_SHARE``)."""
    return by_area * LEAST_SHARE <= said <= by_area / LEAST_SHARE


def rises(lengths_by_width: Sequence[Length]) -> tuple[int, ...]:
    """Where a row of lengths for ever wider cloth rises, which it never should; indexes of the wrong ones.

    Source: derived; all twelve rows of the published yardage table fall or stay level to the right.
    """
    steps = enumerate(pairwise(lengths_by_width), start=1)
    return tuple(index for index, (narrower, wider) in steps if wider > narrower)


def usable_width(name: str, width: Worked, selvage: Worked) -> Worked:
    """The width between the selvages, which are not sewn in. Source: common practice, no source."""
    return work(name, width, minus(selvage, 2))


def whole_repeats(name: str, cut: Worked, repeat: Worked) -> Worked:
    """The length to allow so that every cut begins at the same place of the pattern: whole repeats, rounded up.

    Source: common practice, no source. Raises ValueError when the repeat is not above zero.
    """
    return work(name, repeat, times(counting.enough("repeats", cut, repeat)))


def added_for_repeat(name: str, cut: Worked, repeat: Worked) -> Worked:
    """What matching adds to one cut length, less than one repeat. Raises ValueError as ``whole_repeats`` does."""
    return work(name, whole_repeats("length in whole repeats", cut, repeat), minus(cut))


def matched_rows(name: str, repeat: Worked, rows: Worked) -> Worked:
    """What matching adds to a cutting layout: one repeat for every row of matched pieces but the first.

    A row is where pieces begin along the cloth. Each row that must begin at another place of the print, and all behind
    it, is moved on by less than one repeat; the first row lies where it likes. So it is always enough. Source: derived.
    """
    if rows.number <= 1:
        return given(name, ZERO, "none: the matched pieces begin in one row")
    moved = work("rows to be moved on", rows, minus(given("first row", 1)))
    return work(name, repeat, times(moved)).rounded(Rounding.ENOUGH)


def drops(name: str, total_width: Worked, fabric_width: Worked) -> Worked:
    """How many cut lengths side by side make up a width: width ÷ fabric width, rounded up, never down.

    Source: common practice, no source. Raises ValueError when the fabric has no width.
    """
    return counting.enough(name, total_width, fabric_width)


def joined_drops(name: str, total_width: Worked, usable: Worked, seam_allowance: Worked) -> Worked:
    """How many cut lengths, joined by seams, make up a width, rounded up.

    Every seam takes two allowances, and there is one seam fewer than there are drops: n × width − (n − 1) × 2
    allowances. Source: arithmetic of allowances. Raises ValueError when the seams leave nothing of the fabric.
    """
    need = work("width to make up less one seam", total_width, minus(seam_allowance, 2))
    return drops(name, need, work("width that each drop adds", usable, minus(seam_allowance, 2)))


def pieces_across(name: str, fabric_width: Worked, piece_width: Worked) -> Worked:
    """How many equal pieces lie side by side in the width, whole ones only.

    Source: common practice, no source. Raises ValueError when a piece has no width.
    """
    return counting.fitting(name, fabric_width, piece_width)


def length_for_drops(name: str, cut: Worked, count: Worked) -> Worked:
    """The length of cloth for so many cut lengths, one after the other: cut length × count."""
    return work(name, cut, times(count)).rounded(Rounding.ENOUGH)


def _left_by(shrinkage: Worked) -> Worked:
    if not 0 <= shrinkage.ratio.value < 1:
        raise ValueError(f"{shrinkage.name} must be from 0% to less than 100%")
    return work("what washing leaves", WHOLE, minus(shrinkage))
