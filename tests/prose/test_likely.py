"""Whether a number looks like a slip of what it should be."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.prose import proofread
from sitegen.prose.arithmetic.likely import is_like
from sitegen.quantities import Unit


@pytest.mark.parametrize(
    ("said", "right", "like"),
    [
        ("84", "82", True),  # near
        ("38", "28", True),  # one figure
        ("63", "53", True),
        ("35", "53", True),  # two neighbours have changed places
        ("14.5", "14.25", True),
        ("31", "26", True),
        ("72", "27", False),  # two neighbours have changed places, but far off
        ("2.8", "28", False),  # a point too many, but far off
        ("9", "7", False),  # of one figure, any two numbers differ in one
        ("52", "20", False),
        ("1", "0", False),
    ],
)
def test_likeness(said: str, right: str, like: bool) -> None:
    for unit in (Unit.CM, Unit.IN):
        assert is_like(Fraction(said) * unit.mm, Fraction(right) * unit.mm, unit) is like


@pytest.mark.parametrize(("written", "told"), [("88", False), ("83", True), ("35", False)])
def test_a_number_that_loose_words_tie_is_told_only_where_it_is_like_the_right_one(written: str, told: bool) -> None:
    text = f"The frill is twice the edge. Edge 44 cm, frill {written} cm, gathered on two threads."
    assert bool(proofread(text)) is told
