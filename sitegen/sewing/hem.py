"""Hems: what they take, where the stitches run, and what a curve leaves over.

Source: arithmetic of the folds; the margin beyond the stitches is common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import Worked, given, inches, minus, plus, times, work
from sitegen.sewing.geometry import radians

MARGIN = given("margin beyond the stitches", inches("1/8"))
"""Cloth that must lie beyond the row of stitches nearest the raw edge (common practice, no source)."""


def allowance(name: str, turn: Worked, fold_under: Worked | None) -> Worked:
    """What a hem takes from the length: the turn, and in a double hem the part folded under.

    Source: depth and turn-in, such as 1 + 1/4 in, as New Mexico State Univ. and 4-H leaflets give it.
    """
    return work(name, turn, plus(fold_under)) if fold_under else turn.named(name)


def far_row(name: str, stitch_line: Worked, gap: Worked | None) -> Worked:
    """How far from the fold the row nearest the raw edge runs: a twin needle adds its gap."""
    return work(name, stitch_line, plus(gap)) if gap else stitch_line.named(name)


def catch(name: str, turn: Worked, row: Worked) -> Worked:
    """The cloth that lies beyond the far row, up to the raw edge or, in a double hem, to the inner fold."""
    return work(name, turn, minus(row))


def stitch_line(name: str, turn: Worked, gap: Worked | None) -> Worked:
    """Where to stitch when the author does not say: as far from the fold as the margin allows."""
    terms = [minus(MARGIN), *([minus(gap)] if gap else [])]
    return work(name, turn, *terms)


def fullness(name: str, depth: Worked, degrees: Fraction) -> Worked:
    """What must be eased in when a hem that curves outward is turned up: 2 × turn of the edge × depth.

    The turned edge lands as far inside the fold as it lay outside, so it is longer than the line on which it
    lands by two arcs of the depth. Source: geometry; for a full circle and 1 in: 4 × pi × 1 in.
    """
    arcs = given(f"twice a turn of {degrees}° as an arc", 2 * radians(degrees))
    return work(name, depth, times(arcs))
