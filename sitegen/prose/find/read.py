"""From a text to its measurements."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, replace

from sitegen.prose.find.assemble import assembled
from sitegen.prose.find.atoms import atoms_of
from sitegen.prose.find.context import in_context, with_settings
from sitegen.prose.find.measured import Measured
from sitegen.prose.find.tokens import Tokens, tokens_of
from sitegen.prose.measurement import Kind, Measurement
from sitegen.prose.packed import Packed, packed
from sitegen.quantities import System, Unit

_LINE_END = re.compile(r"\r\n|[\r\n]")


@dataclass(frozen=True, slots=True)
class Reading:
    """A text with its tokens and all its numbers, those that measure nothing included."""

    text: str
    tokens: Tokens
    numbers: Sequence[Measured]
    line_starts: Sequence[int]

    def line_and_column(self, offset: int) -> tuple[int, int]:
        """Where an offset lies, both counted from 1."""
        return place_of(self.line_starts, offset)

    def measurements(self) -> tuple[Measurement, ...]:
        """What is measured, in order."""
        return tuple(self.cut_out(one) for one in in_context(self.tokens, self.numbers))

    def span(self, one: Measured) -> tuple[int, int]:
        """The offsets of a number with its unit."""
        return self.tokens.starts[one.first], self.tokens.ends[one.behind - 1]

    def cut_out(self, one: Measured) -> Measurement:
        """The measurement with its place in the text."""
        start, end = self.span(one)
        kind = one.kind or Kind.COUNT
        low, high = one.value, one.high
        if kind is Kind.LENGTH and one.unit is not None:
            low, high = low * one.unit.mm, None if high is None else high * one.unit.mm
        return Measurement(
            self.text[start:end],
            start,
            end,
            *self.line_and_column(start),
            kind,
            low,
            high,
            one.unit if kind is Kind.LENGTH else None,
            carried=one.carried,
            supplied=one.supplied,
            decimals=one.decimals,
            wrong_way=one.wrong_way,
        )


def reading_of(text: str, *, author: Unit | None = None, lines_of: str | None = None) -> Reading:
    """The text with every number in it. Takes time in proportion to the text.

    ``lines_of`` is the text whose lines are counted, as long as this one, where this one has others (captions).
    """
    tokens = tokens_of(text)
    atoms = atoms_of(tokens, text)
    unit = author or _author_unit([atom.unit for atom in atoms if atom.unit is not None])
    lines = line_starts(text if lines_of is None else lines_of)
    return Reading(text, tokens, with_settings(tokens, assembled(tokens, atoms, unit)), lines)


def line_starts(text: str) -> list[int]:
    """The offset at which each line begins."""
    return [0, *map(re.Match.end, _LINE_END.finditer(text))]


def place_of(starts: Sequence[int], offset: int) -> tuple[int, int]:
    """The line and the column of an offset, both counted from 1."""
    line = bisect_right(starts, offset)
    return line, offset - starts[line - 1] + 1


def read(text: str, *, author: Unit | None = None, lines_of: str | None = None) -> tuple[Measurement, ...]:
    """Every measurement of a text, in order.

    ``author`` is the unit of a length that is said without any; left out, it is centimetres for a text that
    measures mostly in metric units, else inches. ``lines_of`` is the text whose lines are counted, if another one.

    >>> [found.text for found in read("Sew a 3/8 in seam, then press it for 10 seconds.")]
    ['3/8 in', '10 seconds']
    """
    short = packed(text)
    if short is None:
        return reading_of(text, author=author, lines_of=lines_of).measurements()
    file = text if lines_of is None else lines_of
    lines = line_starts(file)
    return tuple(_in_file(each, file, lines, short) for each in reading_of(short.text, author=author).measurements())


def _in_file(one: Measurement, file: str, lines: Sequence[int], short: Packed) -> Measurement:
    start, end = short.place(one.start), short.place(one.end)
    line, column = place_of(lines, start)
    return replace(one, text=file[start:end], start=start, end=end, line=line, column=column)


def _author_unit(units: Sequence[Unit]) -> Unit:
    metric = sum(1 for unit in units if unit.system is System.CENTIMETRES)
    return Unit.CM if metric * 2 > len(units) else Unit.IN
