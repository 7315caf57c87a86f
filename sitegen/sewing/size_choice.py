"""Which size to make, chosen by body measurements and never by age.

The usual rule: the smallest size whose body measurement is no less than the person's. Who is over a smaller
size by no more than a tolerance is between sizes: a cloth that stretches, or a garment that still leaves the
ease wanted, allows the smaller one. Several measurements ask for the size of the one that matters most, else
for the largest, since cloth is more easily taken in than let out.
Sources: common practice, no source; that knit designs need little or no wearing ease: Central Washington
Univ., costume construction text, chapter 16.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from itertools import pairwise

from sitegen.quantities import Worked, minus, work
from sitegen.sewing import ease


class Fit(Enum):
    """Where a measurement lies in a run of sizes."""

    IN_A_SIZE = "in a size"
    BETWEEN = "between two sizes"
    BELOW = "below the smallest size"
    ABOVE = "above the largest size"


OUTSIDE = (Fit.BELOW, Fit.ABOVE)
"""Where no size of the run was made for the measurement."""


@dataclass(frozen=True, slots=True)
class Row:
    """One measurement in every size, from the smallest to the largest, as the size table has it.

    ``finished`` is the garment there in every size, and ``least_ease`` the least room wanted, where they are
    known. Raises ValueError when the run is empty or falls, or the garment has another count of sizes.
    """

    measure: str
    bodies: tuple[Worked, ...]
    finished: tuple[Worked, ...] = ()
    least_ease: Worked | None = None

    def __post_init__(self) -> None:
        if not self.bodies:
            raise ValueError(f"{self.measure}: no sizes to choose from")
        if any(larger.length < smaller.length for smaller, larger in pairwise(self.bodies)):
            raise ValueError(f"{self.measure}: sizes must go from the smallest to the largest")
        if self.finished and len(self.finished) != len(self.bodies):
            raise ValueError(f"{self.measure}: the garment needs one finished measurement for each size")


@dataclass(frozen=True, slots=True)
class Choice:
    """The size for one measurement: its index, the two sizes between which it lies, the ease, and why."""

    measure: str
    index: int
    fit: Fit
    between: tuple[int, int] | None
    ease: Worked | None
    """Finished garment less the person, in the size chosen; None where the garment is not known."""
    reason: Worked
    """The sum that decided, with the rule as its note."""


@dataclass(frozen=True, slots=True)
class Recommendation:
    """The size for the whole garment: its index, the choice that decided it, every choice, and why in words."""

    index: int
    decided_by: Choice
    choices: tuple[Choice, ...]
    reason: str

    @property
    def agreed(self) -> bool:
        """Whether every measurement asks for this one size and lies in the range."""
        return all(each.index == self.index and each.fit not in OUTSIDE for each in self.choices)


def choose(row: Row, person: Worked, tolerance: Worked, *, stretches: bool) -> Choice:
    """The size that one measurement asks for.

    Up to the tolerance below the smallest size or above the largest still counts as that size; beyond it the
    nearest size is given and said to be out of range.
    """
    smallest, largest = row.bodies[0], row.bodies[-1]
    last = len(row.bodies) - 1
    if person.length < smallest.length - tolerance.length:
        under = work(f"{row.measure} under the smallest size", smallest, minus(person))
        return _choice(row, person, 0, Fit.BELOW, under.noted("below the range of sizes: the smallest is loose"))
    if person.length > largest.length:
        over = work(f"{row.measure} over the largest size", person, minus(largest))
        if over.length > tolerance.length:
            return _choice(row, person, last, Fit.ABOVE, over.noted("above the range of sizes: the largest is tight"))
        return _choice(row, person, last, Fit.IN_A_SIZE, over.noted("within the tolerance; there is no larger size"))
    size = next(index for index, body in enumerate(row.bodies) if person.length <= body.length)
    if size:
        over = work(f"{row.measure} over the smaller size", person, minus(row.bodies[size - 1]))
        if over.length <= tolerance.length:
            return _between(row, person, size, over, stretches=stretches)
    room = work(f"{row.measure} of the size less the person's", row.bodies[size], minus(person))
    return _choice(row, person, size, Fit.IN_A_SIZE, room.noted("the smallest size that is no less than the person"))


def choose_all(
    rows: Sequence[Row],
    person: Mapping[str, Worked],
    tolerance: Worked,
    *,
    stretches: bool,
    matters_most: str | None = None,
) -> Recommendation:
    """The size for a garment by every measurement that both the table and the person have.

    ``matters_most`` names the measurement that decides, such as the bust for a top. Without it, or when it was
    not taken, the largest size asked for does; of those that ask for it, one that lies in the range. Raises
    ValueError when no measurement is in both.
    """
    choices = tuple(
        choose(row, person[row.measure], tolerance, stretches=stretches) for row in rows if row.measure in person
    )
    if not choices:
        raise ValueError("no measurement of the person is in the size table")
    first = next((each for each in choices if each.measure == matters_most), None)
    decided = first or max(choices, key=_weight)
    return Recommendation(decided.index, decided, choices, _told(decided, choices, matters_most=first is not None))


def _weight(choice: Choice) -> tuple[int, bool, bool]:
    """What makes one measurement decide: above every size before the largest, in a size before below all."""
    return choice.index, choice.fit is Fit.ABOVE, choice.fit is not Fit.BELOW


def _between(row: Row, person: Worked, larger: int, over: Worked, *, stretches: bool) -> Choice:
    """The choice for who is over the smaller size by no more than the tolerance."""
    smaller = larger - 1
    if stretches:
        note, index = "between sizes: the cloth stretches, so the smaller one serves", smaller
    elif _room(row, person, smaller):
        note, index = "between sizes: the smaller one still leaves the ease wanted", smaller
    else:
        note, index = "between sizes: the larger one, since it can be taken in", larger
    return _choice(row, person, index, Fit.BETWEEN, over.noted(note), (smaller, larger))


def _room(row: Row, person: Worked, size: int) -> bool:
    """Whether the garment in a size is known to leave the least ease wanted."""
    left = _ease(row, person, size)
    return left is not None and row.least_ease is not None and left.length >= row.least_ease.length


def _ease(row: Row, person: Worked, size: int) -> Worked | None:
    return ease.ease(f"ease at the {row.measure}", row.finished[size], person) if row.finished else None


def _choice(
    row: Row, person: Worked, index: int, fit: Fit, reason: Worked, between: tuple[int, int] | None = None
) -> Choice:
    return Choice(row.measure, index, fit, between, _ease(row, person, index), reason)


def _told(decided: Choice, choices: Sequence[Choice], *, matters_most: bool) -> str:
    """Why this size, in words, and which measurements ask for another or lie outside every size."""
    outside = [each for each in choices if each.fit in OUTSIDE]
    others = [each for each in choices if each.index != decided.index and each not in outside]
    if len(choices) == 1:
        why = f"by the {decided.measure}, the only measurement given"
    elif matters_most:
        why = f"by the {decided.measure}, which matters most in this garment"
    elif others or outside:
        why = f"by the {decided.measure}: none asks for a larger size, and cloth is more easily taken in than let out"
    else:
        why = "every measurement asks for this size"
    told = [why]
    told += [f"the {each.measure} asks for {_apart(each.index - decided.index)}" for each in others]
    told += [f"the {each.measure} is {each.fit.value}" for each in outside]
    return "; ".join(told)


def _apart(sizes: int) -> str:
    return f"{abs(sizes)} {'size' if abs(sizes) == 1 else 'sizes'} {'larger' if sizes > 0 else 'smaller'}"
