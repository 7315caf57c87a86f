"""What is found in running text: each measurement with its place, kind and exact value."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.quantities import Length, Unit


class Kind(StrEnum):
    """What a number in a text measures."""

    LENGTH = "length"
    PERCENT = "percent"
    RATIO = "ratio"
    STITCH = "stitch"
    WEIGHT = "weight"
    AREA = "area"
    TIME = "time"
    COUNT = "count"


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement of a text, from its number to its unit. ``line`` and ``column`` count from 1.

    ``low`` is the number, or the lower end of a range whose upper end is ``high``; for a length both are exact
    millimetres, for a percentage the number before the sign, else the number as written. ``unit`` is the unit of a
    length: the written one, the neighbour's (``carried``) or, where no unit stands at all, the author's (``supplied``).
    """

    text: str
    start: int
    end: int
    line: int
    column: int
    kind: Kind
    low: Fraction
    high: Fraction | None = None
    unit: Unit | None = None
    carried: bool = False
    supplied: bool = False
    decimals: int | None = None
    """How many decimals were printed; None for a number without a point."""
    wrong_way: bool = False
    """Whether the range was written with its greater end first; ``low`` is the smaller all the same."""

    @property
    def low_mm(self) -> Fraction | None:
        """Exact millimetres of a length, or of the lower end of its range; None for another kind."""
        return self.low if self.kind is Kind.LENGTH else None

    @property
    def high_mm(self) -> Fraction | None:
        """Exact millimetres of the upper end of a range of lengths, else None."""
        return self.high if self.kind is Kind.LENGTH else None

    @property
    def length(self) -> Length:
        """The length, or the lower end of its range. Raises TypeError for another kind."""
        if self.kind is not Kind.LENGTH:
            raise TypeError(f"{self.text!r} is a {self.kind.value}, not a length")
        return Length(self.low)
