"""Turns and slopes: the sums that need pi or a root, kept exact to far below any ruler's mark.

Source: plane geometry, held against the shapely library in the tests.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt

from sitegen.quantities import Length, Term, Worked, given, minus, plus, times, work

PI = Fraction("3.14159265358979323846")
"""To 20 decimals, which is exact to 1e-15 mm on any garment."""


def radians(degrees: Fraction) -> Fraction:
    """A turn in radians."""
    return degrees * PI / 180


def root(square: Fraction) -> Fraction:
    """The square root, right to a millionth. Raises ValueError below zero."""
    if square < 0:
        raise ValueError("a negative number has no root")
    return Fraction(isqrt(int(square * 10**12)), 10**6)


def slant(name: str, height: Worked, run: Worked) -> Worked:
    """The length of a straight slanting edge, the long side of a right triangle of this height and run."""
    value = Length(root(height.length.mm**2 + run.length.mm**2))
    return Worked(name, value, (Term("", 1, height), Term("by", 1, run)), "the long side of the right triangle")


def curve_difference(name: str, allowance: Worked, degrees: Fraction) -> Worked:
    """How much longer one side of an even allowance is than the other round a curve: allowance × turn.

    The turn is the angle by which the direction of the edge changes from one end to the other, whatever its
    shape between. Source: geometry of parallel curves; for a full circle 2 × pi × allowance.
    """
    turn = given(f"a turn of {degrees}° as an arc", radians(degrees))
    return work(name, allowance, times(turn))


def seam_line(name: str, cut_edge: Worked, allowance: Worked, degrees: Fraction, *, inward: bool) -> Worked:
    """The length along the seam line of an edge that was measured along its cut edge.

    Round an inward curve, such as a neckline, the seam line is the longer of the two; round an outward one,
    such as a curved hem, the shorter.
    """
    difference = curve_difference(f"what the curve of the {name} makes", allowance, degrees)
    return work(name, cut_edge, plus(difference) if inward else minus(difference))


def cut_edge(name: str, seam: Worked, allowance: Worked, degrees: Fraction, *, inward: bool) -> Worked:
    """The length along the cut edge of an edge that was measured along its seam line."""
    difference = curve_difference(f"what the curve of the {seam.name} makes", allowance, degrees)
    return work(name, seam, minus(difference) if inward else plus(difference))
