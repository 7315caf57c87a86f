"""A length with its partner in another unit, and how near the two are."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.prose.find import Measured, Reading
from sitegen.quantities import Length, Typed, Unit, decimal

_HEDGED = Fraction(6, 100)


@dataclass(frozen=True, slots=True)
class InTwoUnits:
    """A length and its partner in the other unit, with the tokens from ``first`` up to ``behind``."""

    one: Measured
    other: Measured
    first: int
    behind: int
    agrees: bool
    bolt: bool = False
    unit_slipped: str = ""
    """What was meant, where both are in one system and another unit of either would make them one length."""
    sure: bool = True
    """Whether a bracket or words such as ``which is`` join the two; else they may be two lengths."""
    hidden_from: int | None = None
    """The first of the tokens that only say the length again, where they do not stand right behind it."""

    @property
    def said_again(self) -> range:
        """The tokens that only say the length again."""
        return range(self.one.behind if self.hidden_from is None else self.hidden_from, self.behind)


def typed_of(reading: Reading, one: Measured) -> Typed:
    """The length as the readers of files give it, with the number as it was printed."""
    if one.unit is None:
        raise TypeError("a length has a unit")
    start, end = reading.span(one)
    high = None if one.high is None else Length(one.high * one.unit.mm)
    number = reading.tokens.words[one.first] if one.decimals is not None else ""
    last = decimal(one.high, 6) if one.high is not None and one.decimals is not None else ""
    return Typed(
        Length(one.value * one.unit.mm), one.unit, reading.text[start:end], start, end, high, None, number, last
    )


def plausible(one: Measured, other: Measured, unit: Unit, second: Unit, times: Fraction) -> bool:
    """Whether the words may well join one length in two units: so many times apart at most."""
    low, high = sorted((one.value * unit.mm, other.value * second.mm))
    return high <= times * low


def hardly_apart(one: Measured, other: Measured) -> bool:
    """Whether two lengths or ranges are one as ``about`` says it."""
    ends = zip(_ends(one), _ends(other), strict=True)
    return all(abs(a - b) <= _HEDGED * max(a, b) for a, b in ends)


def _ends(one: Measured) -> list[Fraction]:
    if one.unit is None:
        return []
    return [end * one.unit.mm for end in (one.value, one.high) if end is not None]
