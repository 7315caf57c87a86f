"""What is printed at true scale: lines for seam allowances, and the stretch gauges of the fabrics."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.diagrams import stretch_gauge_of
from sitegen.handouts.model import AllowanceMark, Gauges, SheetPicture
from sitegen.handouts.pictures import IDS, drawing
from sitegen.handouts.source import Source
from sitegen.quantities import Length, cm

_LONGEST = cm(8)
"""A longer allowance is measured with a tape, not with a gauge."""
_ALLOWANCES = (".seam_allowance", ".allowance", ".turn", ".stitch_line")


def gauges_of(source: Source) -> Gauges:
    """The gauges of a handout, by the numbers that it uses."""
    return Gauges(tuple(_allowances(source)), tuple(_stretch(source)))


def _stretch(source: Source) -> Iterator[SheetPicture]:
    computed = source.cls.computed
    for fabric in computed.tutorial.fabrics:
        found = stretch_gauge_of(computed, fabric, IDS, source.numbers.units[0], source.page.language)
        if found is not None:
            yield drawing(found.svg)


def _allowances(source: Source) -> Iterator[AllowanceMark]:
    """Every length that is sewn or turned from an edge, each once, the shortest first, with what it is used for."""
    found: dict[Length, list[str]] = {}
    for number in source.page.view.numbers:
        if number.name != "seam_allowance" and not number.name.endswith(_ALLOWANCES):
            continue
        view = source.numbers.view(number.name)
        for size in source.wanted.sizes:
            worked = source.cls.computed.length(number.name, size)
            if view is not None and worked is not None and cm(0) < worked.length <= _LONGEST:
                found.setdefault(worked.length, []).append(view.words)
    for length in sorted(found):
        words = source.numbers.length(length)
        yield AllowanceMark(length.mm, words, ", ".join(dict.fromkeys(found[length])))
