"""The marking sheet: what to look for in each step, and what can be measured on the work, with its tolerance."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.handouts.model import Marking, Measured
from sitegen.handouts.source import Source
from sitegen.publishing import Fill, NumberView, PrintedNumbers, Span, StepCard, printed_line
from sitegen.quantities import Worked, given, minus, plus, work
from sitegen.sewing import tolerance
from sitegen.tutorial import Computed, Step, words_of

_POINT_ENDS = re.compile(r"(?<=[.!?])\s+(?=[A-ZÀ-Ý¿¡{\"“])|\n\s*(?:[-*+]|\d+[.)])\s+")
_FIRST_ITEM = re.compile(r"\A\s*(?:[-*+]|\d+[.)])\s+")


def marking_of(step: Step, card: StepCard, source: Source) -> Marking | None:
    """What the sheet asks of one step; None for a step after which there is nothing to look at."""
    asked: list[str] = []
    look_for = step.look_for.text if step.look_for is not None else ""
    told = source.numbers_in(look_for)

    def fill(name: str) -> str | None:
        if told is source.numbers:
            asked.append(name)
        return told(name)

    points = tuple(_points(look_for, fill))
    sewn = [seam.allowance.name for seam in card.stitching if seam.allowance is not None]
    names = dict.fromkeys((*sewn, *(f"{hem.name}.stitch_line" for hem in step.hems), *asked))
    measured = tuple(found for name in names if (found := _measured(name, source)) is not None)
    return Marking(step.number, card.title, points, measured) if points or measured else None


def _points(text: str, fill: Fill) -> Iterator[tuple[Span, ...]]:
    for part in _POINT_ENDS.split(_FIRST_ITEM.sub("", text.strip())):
        line = printed_line(part, fill)
        if any(span.text.strip() for span in line):
            yield line


def _measured(name: str, source: Source) -> Measured | None:
    """A length of the work in the sizes of the sheet; None for a body measurement, and for what is no length."""
    computed, sizes, numbers = source.cls.computed, source.wanted.sizes, source.numbers
    view = numbers.view(name)
    each = [computed.length(name, size) for size in sizes]
    known = [length for length in each if length is not None]
    if view is None or name.startswith("body.") or len(known) < len(each):
        return None
    allowed = [tolerance.of_length(words_of(name), length) for length in known]
    return Measured(view.words, _in_each_size(view, computed, sizes, numbers), _between(view, known, allowed, numbers))


def _in_each_size(view: NumberView, computed: Computed, sizes: tuple[int, ...], numbers: PrintedNumbers) -> str:
    if not view.by_size:
        return numbers.both(view.values[0])
    names = (computed.size_name(size) for size in sizes)
    each = (f"{name}: {value}" for name, value in zip(names, numbers.each(view), strict=True))
    return ", ".join(one.replace(" ", "\N{NO-BREAK SPACE}") for one in each)


def _between(view: NumberView, lengths: list[Worked], allowed: list[Worked], numbers: PrintedNumbers) -> str:
    """From the least to the most that will do; where sizes differ, how much either way."""
    if view.by_size:
        return "; ".join(dict.fromkeys(f"± {numbers.length(each.length)}" for each in allowed))
    least, most = (work("", lengths[0], part(given("tolerance", allowed[0].value))) for part in (minus, plus))
    return numbers.between(least.length, most.length)
