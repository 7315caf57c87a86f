"""Whether a number that is not what its parts make looks like a slip of it, or like another number altogether.

People slip by a little, or in one figure: 16 for 18, 6.25 for 6.5. Where only loose words tie a number to others, one
that is nothing like what they make is more often no result of them (common practice, no source; the labelled passages
of the tests bear it out).
"""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import Unit, decimal

_NEAR = Fraction(1, 4)
_FARTHEST_FIGURE = Fraction(2, 5)
"""How far off one wrong figure may bring a number; farther, it says nothing that the figure is one only."""
_PLACES = 4
_FEWEST_FIGURES = 2
"""Of numbers of one figure any two differ in no more than one."""


def is_like(said: Fraction, right: Fraction, unit: Unit) -> bool:
    """Whether a result lies near what it should be, or is the same but for one figure.

    Both are in millimetres; ``unit`` is the unit in which the result is said.
    """
    apart = abs(said - right)
    if apart <= right * _NEAR:
        return True
    return apart <= right * _FARTHEST_FIGURE and _one_figure_apart(said / unit.mm, right / unit.mm)


def _one_figure_apart(one: Fraction, other: Fraction) -> bool:
    """Whether one figure is wrong, left out or too many, or two neighbours have changed places."""
    first, second = decimal(one, _PLACES), decimal(other, _PLACES)
    if len(second.replace(".", "").strip("0")) < _FEWEST_FIGURES:
        return False
    start = _alike(first, second)
    end = _alike(first[start:][::-1], second[start:][::-1])
    wrong, right = first[start : len(first) - end], second[start : len(second) - end]
    return max(len(wrong), len(right)) <= 1 or (len(wrong) == 2 and wrong == right[::-1])


def _alike(one: str, other: str) -> int:
    """How many characters two texts begin with alike."""
    return next(
        (at for at, (first, second) in enumerate(zip(one, other, strict=False)) if first != second),
        min(len(one), len(other)),
    )
