"""Runs of sizes: which value breaks an otherwise even grading.

Published grades are uneven (bust steps of 5/8 to 2 in in ASTM D5585), so no constant step is assumed. A
value stands out only when its two neighbouring steps are the odd ones out beside equal steps and together
make two of them, so that one changed value would make the run even; or when the run turns back at it.

Source: common practice, no source; that published grades pass is held against ASTM D5585-11e1 in the tests.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from sitegen.quantities import Length

_LONG_RUN = 5


@dataclass(frozen=True, slots=True)
class Break:
    """A value that breaks the run: its index, and what would make the run even (None when nobody can know)."""

    index: int
    expected: Length | None


def breaks(values: Sequence[Length]) -> tuple[Break, ...]:
    """The values that break a run, in order."""
    steps = [later - earlier for earlier, later in pairwise(values)]
    uneven = [
        Break(index, values[index - 1] + (steps[index - 1] + steps[index]) / 2)
        for index in range(1, len(values) - 1)
        if _stands_out(steps, index)
    ]
    return tuple(uneven) or _turned(values, steps)


def _stands_out(steps: Sequence[Length], index: int) -> bool:
    """Whether the two steps around the value differ but make two of a step beside them.

    Two equal steps beside them are evidence enough; in a long run one is, since rounding an even grade to the
    ruler never makes three different steps in a row.
    """
    before, after = steps[index - 1], steps[index]
    left, right = steps[max(0, index - 3) : index - 1], steps[index + 1 : index + 3]
    beside = [(left[-1], right[0])] if left and right else []
    beside += [(side[0], side[1]) for side in (left, right) if len(side) == 2]
    if len(steps) >= _LONG_RUN:
        beside += [(side, side) for side in (*left[-1:], *right[:1])]
    return before != after and any(one == other and before + after == one * 2 for one, other in beside)


def _turned(values: Sequence[Length], steps: Sequence[Length]) -> tuple[Break, ...]:
    """The one value at which a run that otherwise rises falls, or the other way round."""
    rising = sum(1 for step in steps if step.mm > 0)
    falling = sum(1 for step in steps if step.mm < 0)
    if not rising or not falling or rising == falling:
        return ()
    turn = 1 if rising > falling else -1
    for index in range(len(values)):
        rest = [*values[:index], *values[index + 1 :]]
        if all((later - earlier).mm * turn >= 0 for earlier, later in pairwise(rest)):
            return (Break(index, None),)
    first_against = next(i for i, step in enumerate(steps) if step.mm * turn < 0)
    return (Break(first_against + 1, None),)
