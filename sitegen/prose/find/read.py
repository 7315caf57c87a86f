"""From a text to its measurements."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

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
    file: str
    """The text whose lines are counted."""
    line_starts: Sequence[int]
    short: Packed | None
    """How the text was made shorter than that of its file, if it was."""

    def in_file(self, start: int, end: int) -> tuple[str, int, int]:
        """What stands between two offsets of the text, and where it begins and ends in the file."""
        if self.short is None:
            return self.text[start:end], start, end
        start, end = self.short.place(start), self.short.place(end)
        return self.file[start:end], start, end

    def line_and_column(self, offset: int) -> tuple[int, int]:
        """Where an offset of the file lies, both counted from 1."""
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def measurements(self) -> tuple[Measurement, ...]:
        """What is measured, in order."""
        return tuple(self.cut_out(one) for one in in_context(self.tokens, self.numbers))

    def span(self, one: Measured) -> tuple[int, int]:
        """The offsets of a number with its unit."""
        return self.tokens.starts[one.first], self.tokens.ends[one.behind - 1]

    def cut_out(self, one: Measured) -> Measurement:
        """The measurement with its place in the text."""
        text, start, end = self.in_file(*self.span(one))
        kind = one.kind or Kind.COUNT
        low, high = one.value, one.high
        if kind is Kind.LENGTH and one.unit is not None:
            low, high = low * one.unit.mm, None if high is None else high * one.unit.mm
        return Measurement(
            text,
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
    short = packed(text)
    plain = text if short is None else short.text
    tokens = tokens_of(plain)
    atoms = atoms_of(tokens, plain)
    unit = author or _author_unit([atom.unit for atom in atoms if atom.unit is not None])
    file = text if lines_of is None else lines_of
    line_starts = [0, *map(re.Match.end, _LINE_END.finditer(file))]
    return Reading(plain, tokens, with_settings(tokens, assembled(tokens, atoms, unit)), file, line_starts, short)


def read(text: str, *, author: Unit | None = None, lines_of: str | None = None) -> tuple[Measurement, ...]:
    """Every measurement of a text, in order.

    ``author`` is the unit of a length that is said without any; left out, it is centimetres for a text that
    measures mostly in metric units, else inches. ``lines_of`` is the text whose lines are counted, if another one.

    >>> [found.text for found in read("Sew a 3/8 in seam, then press it for 10 seconds.")]
    ['3/8 in', '10 seconds']
    """
    return reading_of(text, author=author, lines_of=lines_of).measurements()


def _author_unit(units: Sequence[Unit]) -> Unit:
    metric = sum(1 for unit in units if unit.system is System.CENTIMETRES)
    return Unit.CM if metric * 2 > len(units) else Unit.IN
