"""Whether a number looks like a slip of what it should be."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.prose import proofread
from sitegen.prose.arithmetic.likely import Likeness, likeness
from sitegen.quantities import Unit


@pytest.mark.parametrize(
    ("said", "right", "like"),
    [
        ("84", "82", Likeness.SLIP),  # near
        ("38", "28", Likeness.SLIP),  # one figure
        ("72", "27", Likeness.FAR),  # two figures changed places, but far off
        ("2.8", "28", Likeness.FAR),  # a point too many, but far off
        ("63", "53", Likeness.SLIP),
        ("35", "53", Likeness.SLIP),  # two neighbours have changed places
        ("14.5", "14.25", Likeness.SLIP),
        ("9", "7", Likeness.FAR),  # of one figure, any two numbers differ in one
        ("21", "26", Likeness.SLIP),
        ("31", "26", Likeness.SOME),
        ("52", "20", Likeness.FAR),
    ],
)
def test_likeness(said: str, right: str, like: Likeness) -> None:
    for unit in (Unit.CM, Unit.IN):
        assert likeness(Fraction(said) * unit.mm, Fraction(right) * unit.mm, unit) is like


def test_a_number_that_loose_words_tie_is_told_only_where_it_is_like_the_right_one() -> None:
    slip = "Mark the binding for the bib. Neck edge 32 cm, ties 28 cm each, the whole strip 98 cm."
    other = "The pocket is 8 cm below the waist seam and 6 cm from the side. The bag hangs 24 cm down."
    assert proofread(other) == ()
    assert all(each.should_be != "14 cm" for each in proofread(slip))
