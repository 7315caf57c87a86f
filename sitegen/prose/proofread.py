"""Finds the arithmetic errors of a text: in plain English, printed or spoken."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from sitegen.findings import Severity
from sitegen.prose.amounts import wrong_amounts
from sitegen.prose.arithmetic import wrong_results
from sitegen.prose.find import Measured, Reading, reading_of
from sitegen.prose.measurement import Measurement
from sitegen.prose.order import out_of_order
from sitegen.prose.pair import InTwoUnits, typed_of
from sitegen.prose.sums import WrittenSum, find_sums
from sitegen.prose.two_units import in_two_units
from sitegen.quantities import (
    RULER,
    Length,
    Ratio,
    System,
    Unit,
    decimal,
    pair_for,
    show_exactly,
    show_in_unit,
    show_ratio,
    vulgar,
)

_PARTS = frozenset(("percent", "share", "division", "halving", "band"))
"""Results that seldom come out even."""
_HUNDREDTHS = 100
_BLANKED = re.compile(r"  +")
"""Where marks of Markdown stood."""


@dataclass(frozen=True, slots=True)
class TextFinding:
    """What is wrong at one place of a text, from offset ``start`` to ``end``; ``line`` and ``column`` count from 1."""

    check: str
    severity: Severity
    start: int
    end: int
    line: int
    column: int
    said: str
    should_be: str
    working: tuple[str, ...]
    message: str


def proofread(text: str, *, author: Unit | None = None, lines_of: str | None = None) -> tuple[TextFinding, ...]:
    """Every arithmetic error of a text, in order.

    ``author`` is the unit of lengths that are said without any; ``lines_of`` the text whose lines are counted, if it
    is another one.

    >>> proofread("Cut 16 in plus 1 in, so 18 in.")[0].should_be
    '17 in'
    """
    return errors_of(reading_of(text, author=author, lines_of=lines_of))


@dataclass(frozen=True, slots=True)
class Proof:
    """All that is measured in a text, and all that is wrong in it, both in order."""

    measurements: tuple[Measurement, ...]
    findings: tuple[TextFinding, ...]


def proof(text: str, *, author: Unit | None = None, lines_of: str | None = None) -> Proof:
    """What ``read`` and ``proofread`` give, for the time of ``proofread`` alone.

    >>> len(proof("Cut 16 in plus 1 in, so 18 in.").measurements)
    3
    """
    reading = reading_of(text, author=author, lines_of=lines_of)
    return Proof(reading.measurements(), errors_of(reading))


def errors_of(reading: Reading) -> tuple[TextFinding, ...]:
    """Every arithmetic error of a text that was read already."""
    pairs = list(in_two_units(reading))
    partners = {pair.one.first: pair.other for pair in pairs if pair.agrees}
    skipped = frozenset(index for pair in pairs for index in pair.said_again)
    signs = list(find_sums(reading.text))
    found = [*_pairs(reading, pairs), *_misordered(reading), *_signs(reading, signs)]
    written = [(each.result.start, each.result.end) for each in signs]
    found += [
        error
        for error in _results(reading, partners, skipped)
        if not any(start < error.end and error.start < end for start, end in written)
    ]
    taken = sorted((error.start, error.end) for error in found)
    found += [error for error in _amounts(reading) if not _overlaps(error, taken)]
    in_order = sorted(found, key=lambda error: (error.start, error.end, error.check))
    return tuple(in_order if reading.short is None else (_in_file(error, reading) for error in in_order))


def _in_file(error: TextFinding, reading: Reading) -> TextFinding:
    said, start, end = reading.in_file(error.start, error.end)
    line, column = reading.line_and_column(start)
    return replace(error, said=said, start=start, end=end, line=line, column=column)


def _overlaps(error: TextFinding, taken: list[tuple[int, int]]) -> bool:
    """Whether something is found already where an error is."""
    before = bisect_left(taken, (error.end, 0))
    return before > 0 and taken[before - 1][1] > error.start


def _amounts(reading: Reading) -> Iterator[TextFinding]:
    """Prices, times, weights and counts that are not what the text makes them of."""
    for each in wrong_amounts(reading):
        message = _message(each.words, each.should_be, " ".join(each.said.split()), sure=each.sure)
        working = (f"{each.words} = {each.should_be}",)
        yield _error(reading, "told-amount", (each.start, each.end), each.should_be, working, message, sure=each.sure)


def _signs(reading: Reading, signs: list[WrittenSum]) -> Iterator[TextFinding]:
    """Sums written out with signs whose result is not what the terms make."""
    for each in signs:
        if not each.holds:
            right = each.right
            terms = each.shown(reading.text)
            said = reading.text[each.result.start : each.result.end]
            unit_is_cut_short = each.result.unit is not None and each.result.unit.system is System.INCHES
            span = each.result.start, each.result.end - (said.endswith(".") and not unit_is_cut_short)
            working = (f"{terms} = {right}",)
            yield _error(
                reading, "written-sum", span, right, working, f"{terms} makes {right}, not {said.rstrip('.')}."
            )


def _error(
    reading: Reading,
    check: str,
    span: tuple[int, int],
    should_be: str,
    working: tuple[str, ...],
    message: str,
    *,
    sure: bool = True,
) -> TextFinding:
    line, column = reading.line_and_column(span[0])
    said = reading.text[span[0] : span[1]]
    severity = Severity.WRONG if sure else Severity.DOUBTFUL
    put = " ".join(should_be.split())
    return TextFinding(check, severity, span[0], span[1], line, column, said, put, working, message)


def _pairs(reading: Reading, pairs: list[InTwoUnits]) -> Iterator[TextFinding]:
    for pair in pairs:
        span = reading.tokens.starts[pair.first], reading.tokens.ends[pair.behind - 1]
        said = " ".join(reading.text[span[0] : span[1]].split())
        if pair.unit_slipped:
            yield _error(
                reading,
                "unit-pair",
                span,
                pair.unit_slipped,
                (),
                f"{said} gives two different lengths in one kind of unit.",
            )
        elif not pair.agrees:
            one, other = typed_of(reading, pair.one), typed_of(reading, pair.other)
            right = pair_for(one, other)
            first = " ".join(one.text.split())
            put = reading.text[span[0] : other.start] + right + reading.text[other.end : span[1]]
            put = _BLANKED.sub(" ", put)
            working = (f"{first} = {show_exactly(one.value, other.unit)}, on a ruler {right}",)
            yield _error(
                reading,
                "unit-pair",
                span,
                put,
                working,
                f"{first} is {right}, not {' '.join(other.text.split())}.",
                sure=pair.sure,
            )


def _misordered(reading: Reading) -> Iterator[TextFinding]:
    for each in out_of_order(reading):
        yield _error(reading, "range-order", (each.start, each.end), each.put, (each.working,), each.message)


def _results(reading: Reading, partners: dict[int, Measured], skipped: frozenset[int]) -> Iterator[TextFinding]:
    for wrong in wrong_results(reading, partners, skipped):
        right = (
            show_ratio(Ratio(wrong.should_be)) if wrong.unit is None else _show(wrong.should_be, wrong.unit, wrong.kind)
        )
        span = reading.span(wrong.number)
        said = " ".join(reading.text[span[0] : span[1]].split()).rstrip(".")
        message = _message(wrong.words, right, said, sure=wrong.sure)
        working = (f"{wrong.words} = {right}",)
        yield _error(reading, "told-sum", span, right, working, message, sure=wrong.sure)


def _message(words: str, right: str, said: str, *, sure: bool) -> str:
    """What is wrong, or what would be if the words mean what they seem to."""
    return f"{words} makes {right}, not {said}." if sure else f"If {said} is meant to be {words}, it should be {right}."


def _show(value: Fraction, unit: Unit, kind: str) -> str:
    """A length in its unit: exact if it was only added and multiplied, or on a mark; else rounded to one of a ruler."""
    number = value / unit.mm
    if unit.system is System.CENTIMETRES and kind not in _PARTS and (number * _HUNDREDTHS).denominator == 1:
        return f"{decimal(number, 2)} {unit.symbol}"
    if unit is Unit.IN and number.denominator in (1, 2, 4, 8, 16):
        return f"{vulgar(number)} in"
    return show_in_unit(Length(value), unit, RULER)
