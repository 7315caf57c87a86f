"""Grading: the steps from size to size, and values between sizes.

Published grades are uneven (ASTM D5585), so every step is its own; ``breaks`` tells which value stands out.
Sources: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from sitegen.quantities import Worked, minus, over, plus, times, work


def steps(values: Sequence[Worked]) -> tuple[Worked, ...]:
    """What each size adds to the one before, in order; one fewer than there are sizes."""
    return tuple(
        work(f"from {smaller.name} to {larger.name}", larger, minus(smaller)) for smaller, larger in pairwise(values)
    )


def between(name: str, smaller: Worked, larger: Worked, share: Worked) -> Worked:
    """The value between two sizes at a share of the way: smaller + step × share; half way is a half size."""
    (step,) = steps((smaller, larger))
    return work(name, smaller, plus(work("part of the step", step, times(share))))


def for_body(name: str, body: Worked, bodies: Sequence[Worked], values: Sequence[Worked]) -> Worked:
    """The value for a body measurement between sizes, on the straight line from one size to the next: a hint only.

    ``bodies`` and ``values`` are the body measurements and the values of the sizes, in one order. A pattern is
    not drawn along straight lines between sizes, so the number needs a fitting. Raises ValueError when the
    two differ in count, when a body measurement does not rise from size to size, and outside their range.
    """
    if len(bodies) != len(values) or not bodies:
        raise ValueError("each size needs one body measurement and one value")
    if any(larger.length <= smaller.length for smaller, larger in pairwise(bodies)):
        raise ValueError("body measurements must rise from size to size")
    if not bodies[0].length <= body.length <= bodies[-1].length:
        raise ValueError(f"{body.name} lies outside the sizes, where no value between them tells")
    size = next(index for index, each in enumerate(bodies) if body.length <= each.length)
    if body.length == bodies[size].length:
        return values[size].named(name)
    smaller, larger = bodies[size - 1], bodies[size]
    (step,) = steps((smaller, larger))
    share = work("share of the step", work("over the smaller size", body, minus(smaller)), over(step))
    return between(name, values[size - 1], values[size], share).noted("between sizes, a hint only")
