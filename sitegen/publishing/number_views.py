"""From a worked number to the number as pages show it, its working lined up size by size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from sitegen.publishing.views import Both, NumberView, WorkingLine
from sitegen.quantities import (
    ENGLISH,
    RULER,
    Area,
    BySize,
    English,
    Length,
    Ratio,
    Ruler,
    System,
    Value,
    Worked,
    lines_of,
    show_number,
    show_sum,
)


def number_view(
    name: str,
    words: str,
    worked: BySize[Worked],
    *,
    anchor: str = "",
    place: str = "",
    ruler: Ruler = RULER,
    language: English = ENGLISH,
    every: BySize[Worked] | None = None,
) -> NumberView:
    """The number in both systems for every size, rounded as it says, with its working unless ``anchor`` is empty.

    ``every`` holds it for every size where ``worked`` says it once: what is alike may come from sums that are not.
    """
    values = [number.value for number in worked]
    places = range(len(values))
    return NumberView(
        name=name,
        words=words,
        values=tuple(Both(*(show_number(number, system, ruler, language) for system in System)) for number in worked),
        low=min(places, key=lambda at: _size(values[at])),
        high=max(places, key=lambda at: _size(values[at])),
        working=working_lines(every or worked, ruler, language) if anchor else (),
        anchor=anchor,
        place=place,
    )


def working_lines(worked: BySize[Worked], ruler: Ruler = RULER, language: English = ENGLISH) -> tuple[WorkingLine, ...]:
    """The working line by line: a line that reads the same in every size comes once.

    Lines that give a number of the same name belong together. A size that has no such line, because its sum was
    another, has an empty text there.
    """
    each = [_lines_by_name(number, ruler, language) for number in worked]
    names = dict.fromkeys(name for lines in each for name in lines)
    rows = ((name, tuple(lines.get(name, Both("", "")) for lines in each)) for name in names)
    return tuple(WorkingLine(name, row[:1] if len(set(row)) == 1 else row) for name, row in rows)


def without_repeats(view: NumberView, told: Mapping[WorkingLine, NumberView]) -> NumberView:
    """The number with its working, where a line that another number has told already only leads there.

    ``told`` holds the number that first told each line. The last line is the number's own and is always told.
    """
    lines = tuple(
        WorkingLine(line.gives, (), told[line].anchor, told[line].place) if line in told else line
        for line in view.working[:-1]
    )
    return replace(view, working=lines + view.working[-1:])


def _lines_by_name(worked: Worked, ruler: Ruler, language: English) -> dict[str, Both]:
    lines: dict[str, Both] = {}
    for number in lines_of(worked):
        name = language.say(number.name)
        line = Both(*(show_sum(number, system, ruler, language) for system in System))
        before = lines.get(name)
        if before is None:
            lines[name] = line
        elif line != before:
            lines[name] = Both(f"{before.inches}; {line.inches}", f"{before.metric}; {line.metric}")
    return lines


def _size(value: Value) -> Fraction:
    """The bare number, to order values of one kind by."""
    if isinstance(value, Length):
        return value.mm
    if isinstance(value, Ratio):
        return value.value
    if isinstance(value, Area):
        return value.mm2
    return Fraction(value)
