"""Bands and cuffs, cut shorter than the opening that they finish.

Sources: a rib band is two thirds to three quarters of its opening, measured at the seam line (sewing.org,
"Using ribbing for a cuff or neckline opening"); its cut width is twice the finished width and two allowances
(sewing handbook, ribbed edges).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from sitegen.quantities import Ratio, Worked, given, minus, over, plus, times, work

MARKS_ROUND = given("marks", 4)
TWO_SIDES = given("sides of the fold", 2)
USUAL_LEAST = Ratio(Fraction(13, 20))
"""Bands of less than 65 % of the opening are unusual (tightest rib cuff; common practice, no source)."""
USUAL_MOST = Ratio(Fraction(19, 20))
"""Bands of more than 95 % of the opening hardly draw it in (loose hem band; common practice, no source)."""
USUAL_AT = {
    "neckband": (Ratio(Fraction(3, 4)), Ratio(Fraction(9, 10))),
    "cuff": (Ratio(Fraction(13, 20)), Ratio(Fraction(17, 20))),
    "hem band": (Ratio(Fraction(4, 5)), Ratio(Fraction(19, 20))),
}
"""The usual least and greatest ratio by where a band is (common practice, no source)."""


def opening_length(name: str, edges: Sequence[Worked]) -> Worked:
    """The length of the opening along the seam line: all its edges together."""
    first, *others = edges
    return work(name, first, *(plus(edge) for edge in others))


def finished_length(name: str, opening: Worked, ratio: Worked) -> Worked:
    """The length of the band once it is a ring: opening × ratio.

    Worked example: 16 in × 3/4 = 12 in (sewing.org, as above).
    """
    return work(name, opening, times(ratio))


def cut_length(name: str, finished: Worked, allowance: Worked) -> Worked:
    """The length to cut: the finished length and an allowance at both ends of the join."""
    return work(name, finished, plus(allowance, 2))


def cut_width(name: str, finished_width: Worked, allowance: Worked, *, folded: bool) -> Worked:
    """The width to cut: a folded band twice its finished width and two allowances, a single one once and one.

    Source: sewing handbook, ribbed edges (rib by the yard: 2 × finished + 1/2 in; pre-finished: + 1/4 in).
    """
    if not folded:
        return work(name, finished_width, plus(allowance))
    both = work(f"both sides of the {_noun(name)}", finished_width, times(TWO_SIDES))
    return work(name, both, plus(allowance, 2))


def quarter(name: str, whole: Worked) -> Worked:
    """A quarter of an opening or of a band: the distance between two of its four marks."""
    return work(name, whole, over(MARKS_ROUND))


def quarter_from_shoulder(name: str, front: Worked, back: Worked) -> Worked:
    """How far in front of the shoulder seam the side quarter mark falls: (F − B) ÷ 4; behind it if negative.

    From centre front to the shoulder seam lie F ÷ 2, to the quarter mark (F + B) ÷ 4. Source: derived.
    """
    apart = work("front less back", front, minus(back))
    return work(name, apart, over(MARKS_ROUND))


def stretch_needed(name: str, reach: Worked, at_rest: Worked) -> Worked:
    """The share by which a length must stretch to reach another: (reach − length) ÷ length; nothing if it is longer.

    Source: the stretch formula (stretched − relaxed) ÷ relaxed, Purdue Univ. Cooperative Extension HE-452.
    """
    if reach.length <= at_rest.length:
        return given(name, Ratio(Fraction(0)), f"{at_rest.name} is no shorter than {reach.name}")
    growth = work(f"{reach.name} less {at_rest.name}", reach, minus(at_rest))
    return work(name, growth, over(at_rest))


def least_ratio(name: str, opening: Worked, reach: Worked, stretch: Worked) -> Worked:
    """The smallest ratio at which a band still reaches: reach ÷ (1 + stretch) ÷ opening. Source: derived."""
    factor = work("stretched to", given("its own length", Ratio(Fraction(1))), plus(stretch))
    at_rest = work("shortest band that reaches", reach, over(given("stretched to", factor.ratio.value)))
    return work(name, at_rest, over(opening))


def whole_percent(name: str, ratio: Worked) -> Worked:
    """The ratio rounded up to a whole percent, so that the band still reaches."""
    return given(name, Ratio.percent(ceil(ratio.ratio.value * 100)), "rounded up to a whole percent")


def _noun(name: str) -> str:
    return name.removesuffix(" cut width")
