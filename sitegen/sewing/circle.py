"""Circle skirts: full, half, quarter or any other share of a ring of cloth. Source: geometry of the circle."""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import Worked, given, minus, over, plus, times, vulgar, work
from sitegen.sewing.geometry import radians

FULL, HALF, QUARTER = Fraction(1), Fraction(1, 2), Fraction(1, 4)
"""Shares of a full circle."""


def radius(name: str, waist: Worked, share: Fraction) -> Worked:
    """The radius of the waist seam line: waist ÷ (2π × share). Raises ValueError when the share is not above zero.

    The waist is what the sewn ring measures, ease and the gathers of an elastic included.
    """
    return work(name, waist, over(_turn(share)))


def cut_radius(name: str, seam_radius: Worked, allowance: Worked) -> Worked:
    """The radius to cut at the waist: seam radius − allowance, since the allowance lies inside the waist.

    Raises ValueError when the allowance leaves no hole to cut.
    """
    cut = work(name, seam_radius, minus(allowance))
    if cut.length.mm <= 0:
        raise ValueError(f"{allowance.name} is as wide as {seam_radius.name}")
    return cut


def hem_radius(name: str, seam_radius: Worked, length: Worked, hem: Worked | None = None) -> Worked:
    """The radius to cut at the hem: seam radius + finished length + hem allowance."""
    return work(name, seam_radius, plus(length), *([plus(hem)] if hem else []))


def edge(name: str, at_radius: Worked, share: Fraction) -> Worked:
    """The length of the edge at a radius: radius × 2π × share. Raises ValueError when the share is not above zero."""
    return work(name, at_radius, times(_turn(share)))


def across(name: str, rim: Worked) -> Worked:
    """How wide a whole circle is whose edge is so long: edge ÷ π."""
    return work(name, rim, over(given("π", radians(Fraction(180)))))


def _turn(share: Fraction) -> Worked:
    if share <= 0:
        raise ValueError("a skirt is more than no share of a circle")
    degrees = 360 * share
    return given(f"a turn of {vulgar(degrees)}° as an arc", radians(degrees))
