"""Lengths in the wrong order: a range with its greater end first, a least above the most, growing that gets shorter."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.prose.find import Measured, Reading
from sitegen.prose.measurement import Kind
from sitegen.prose.words import words
from sitegen.quantities import Length, Unit, show_in_unit

_LEAST = words("minimum least smallest shortest narrowest lowest lightest")
_MOST = words("maximum most largest longest widest greatest biggest highest")
_LESS = words("narrower thinner shorter smaller less lighter lower shallower fewer")
_MORE = words("wider thicker longer greater more heavier higher deeper bigger larger taller")
_NOT = words("no not never")
_GROWS = words(
    "lengthen lengthens lengthened extend extends extended grow grows grew widen widens widened expand expands"
    " stretch stretches stretched opens"
)
_SHRINKS = words(
    "shorten shortens shortened shrink shrinks shrank closes narrows narrowed tapers tapering cinch cinches tighten"
    " tightens gathers gathered reduce reduces reduced"
)
_STOPS = words(". , ; : ! ? ( )")
_IN_THE_MIDDLE = frozenset(
    (("the", "middle"), ("the", "midpoint"), ("the", "centre"), ("the", "center"), ("halfway", "between"))
)
_OF_BOTH = words("range two")
_RIGHT = words("bang right exactly dead smack precisely plumb")
_MIDDLE_FAR = 18
_NAMED_BEHIND = 6
_NAMED_BEFORE = 6
"""Tokens before a length in which it may be called the least, or said to grow."""


@dataclass(frozen=True, slots=True)
class OutOfOrder:
    """Two lengths in the wrong order, from offset ``start`` to ``end``, what to put there, and why."""

    start: int
    end: int
    put: str
    working: str
    message: str


def out_of_order(reading: Reading) -> Iterator[OutOfOrder]:
    """Every two lengths of a text that stand in the wrong order."""
    lengths = [one for one in reading.numbers if one.kind is Kind.LENGTH]
    yield from _ranges(reading, lengths)
    yield from _least_and_most(reading, lengths)
    yield from _at_their_least(reading, lengths)
    yield from _middles(reading, lengths)
    yield from _ways(reading, lengths)


def _ranges(reading: Reading, lengths: Sequence[Measured]) -> Iterator[OutOfOrder]:
    for one in lengths:
        if one.wrong_way and one.unit is not None and one.high is not None and not _ends_a_name(reading, one):
            low, high = (_short(value, one.unit) for value in (one.value, one.high))
            unit = one.unit.symbol
            working = f"{low} {unit} is less than {high} {unit}"
            message = "The greater end of this range stands first."
            yield OutOfOrder(*reading.span(one), f"{low} to {high} {unit}", working, message)


def _ends_a_name(reading: Reading, one: Measured) -> bool:
    """Whether it only ends a name, as that of an encoding: ``charset="iso-8859-1"``."""
    return re.search(r"[A-Za-z]-$", reading.text[max(0, reading.span(one)[0] - 2) : reading.span(one)[0]]) is not None


def _at_their_least(reading: Reading, lengths: Sequence[Measured]) -> Iterator[OutOfOrder]:
    """``from 90 cm at its shortest to 75 cm at its longest``: each length is called so behind it."""
    for one, other in pairwise(lengths):
        between = reading.tokens.words[one.behind : other.first]
        behind = reading.tokens.words[other.behind : other.behind + _NAMED_BEHIND]
        if (
            "at" not in between[:1]
            or "at" not in behind[:1]
            or len(between) > _NAMED_BEFORE + 2
            or one.high
            or other.high
        ):
            continue
        called = tuple(_least_or_most(words) for words in (between[1:], behind[1:]))
        if called not in ((-1, 1), (1, -1)) or one.unit is None or one.unit is not other.unit:
            continue
        least, most = (one, other) if called == (-1, 1) else (other, one)
        if least.value > most.value:
            low, high = _short(most.value, one.unit), _short(least.value, one.unit)
            unit = one.unit.symbol
            start, end = reading.span(one)[0], reading.span(other)[1]
            working = f"{low} {unit} is less than {high} {unit}"
            yield OutOfOrder(start, end, f"{low} to {high} {unit}", working, "What is called the least is the greater.")


def _least_or_most(said: Sequence[str]) -> int:
    """-1 where words call a length the least, 1 where they call it the most, 0 where neither, up to a stop."""
    for word in said:
        if word in _LEAST or word in _MOST:
            return -1 if word in _LEAST else 1
        if word in _STOPS:
            return 0
    return 0


def _middles(reading: Reading, lengths: Sequence[Measured]) -> Iterator[OutOfOrder]:
    """A length that is called the middle of a range and lies outside of it, or is to be right there and is not."""
    for one, other in pairwise(lengths):
        if one.high is None or other.high is not None or other.first - one.behind > _MIDDLE_FAR:
            continue
        between = reading.tokens.words[one.behind : other.first]
        if "midway" not in between and _IN_THE_MIDDLE.isdisjoint(pairwise(between)):
            continue
        if one.unit is None or one.unit is not other.unit or not (_OF_BOTH | _RIGHT).intersection(between):
            continue
        middle = (one.value + one.high) / 2
        inside = one.value <= other.value <= one.high
        if other.value == middle or (inside and _RIGHT.isdisjoint(between)):
            continue
        low, high, right = (_short(value, one.unit) for value in (one.value, one.high, middle))
        unit = one.unit.symbol
        working = f"({low} {unit} + {high} {unit}) ÷ 2 = {right} {unit}"
        yield OutOfOrder(
            *reading.span(other), f"{right} {unit}", working, f"The middle of the range is {right} {unit}."
        )


def _least_and_most(reading: Reading, lengths: Sequence[Measured]) -> Iterator[OutOfOrder]:
    """A least length that is greater than the most named behind it: ``a minimum of 60 cm, a maximum of 45 cm``."""
    single = [one for one in lengths if one.high is None]
    for one, other in pairwise(single):
        before = reading.tokens.words[max(0, one.first - _NAMED_BEFORE) : one.first]
        between = reading.tokens.words[one.behind : other.first]
        least = not _LEAST.isdisjoint(before) or _denied(before, _LESS)
        most = not _MOST.isdisjoint(between) or _denied(between, _MORE)
        if not least or not most or "." in between or not _MOST.isdisjoint(before):
            continue
        if one.unit is not None and other.unit is not None and one.value * one.unit.mm > other.value * other.unit.mm:
            (start, behind), (again, end) = reading.span(one), reading.span(other)
            first, last = reading.text[start:behind], reading.text[again:end]
            message = "The least length here is greater than the greatest."
            put = " ".join(f"{last}{reading.text[behind:again]}{first}".split())
            yield OutOfOrder(start, end, put, f"{last} is less than {first}", message)


def _denied(before: Sequence[str], comparisons: frozenset[str]) -> bool:
    """Whether words deny a comparison: ``no narrower than``, ``not more than``."""
    return not _NOT.isdisjoint(before) and any(one in _NOT and other in comparisons for one, other in pairwise(before))


def _ways(reading: Reading, lengths: Sequence[Measured]) -> Iterator[OutOfOrder]:
    """What should grow and does not, or the other way round: ``the straps shorten from 40 to 95 cm``."""
    words = reading.tokens.words
    for one, other in zip(lengths, [*lengths[1:], None], strict=False):
        if one.unit is None or words[one.first - 1 : one.first] != ["from"]:
            continue
        first, last, end = one.value, one.high, reading.span(one)[1]
        if one.wrong_way and last is not None:
            first, last = last, first
        if last is None and other is not None and other.unit is one.unit and other.high is None:
            if words[one.behind : other.first] != ["to"]:
                continue
            last, end = other.value, reading.span(other)[1]
        before = words[max(0, one.first - _NAMED_BEFORE) : one.first]
        if "." in before:
            before = before[len(before) - before[::-1].index(".") :]
        grows, shrinks = not _GROWS.isdisjoint(before), not _SHRINKS.isdisjoint(before)
        if last is None or grows is shrinks or (first <= last if grows else first >= last):
            continue
        from_, to = (_short(value, one.unit) for value in (first, last))
        unit = one.unit.symbol
        working = f"{from_} {unit} is {'more' if grows else 'less'} than {to} {unit}"
        message = (
            f"What {'gets longer goes from the smaller' if grows else 'gets shorter goes from the greater'} length"
        )
        message += f" to the {'greater' if grows else 'smaller'} one."
        yield OutOfOrder(reading.span(one)[0], end, f"{to} to {from_} {unit}", working, message)


def _short(value: Fraction, unit: Unit) -> str:
    return show_in_unit(Length(value * unit.mm), unit).removesuffix(f" {unit.symbol}")
