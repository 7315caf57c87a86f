"""Pictures that a page shows although no step asks for them: the stretch gauge of a fabric, and the size chart."""

from __future__ import annotations

from sitegen.diagrams.drawing import CannotDraw
from sitegen.diagrams.drawn import Drawn, drawn
from sitegen.diagrams.kinds import size_chart, stretch_gauge
from sitegen.quantities import ENGLISH, English, Length, System, cm, inches
from sitegen.tutorial import Computed, body_words

_SWATCHES = {
    System.INCHES: tuple(inches(each) for each in (3, 2, 1, "1/2")),
    System.CENTIMETRES: tuple(cm(each) for each in (8, 5, 3, 1)),
}
"""Swatches that are easily folded and held, the longest first: the first that fits on paper is taken."""


def stretch_gauge_of(
    computed: Computed, fabric: str, prefix: str, first: System, language: English = ENGLISH
) -> Drawn | None:
    """The gauge for the stretch of a fabric across the grain, of true size; ``prefix`` starts every id in it.

    None for a fabric without a stretch, and for one that stretches more than paper can show.
    """
    found, stretch = computed.tutorial.fabrics.get(fabric), computed.number(f"{fabric}.stretch_across", 0)
    if found is None or stretch is None:
        return None
    for rest in _SWATCHES[first]:
        try:
            gauge = stretch_gauge.StretchGauge(fabric, found.name, rest, stretch.ratio.value)
        except CannotDraw:
            continue
        return drawn(stretch_gauge.draw(gauge, first=first), prefix, language)
    return None


def size_chart_of(
    computed: Computed, prefix: str, first: System, language: English = ENGLISH, *, only: System | None = None
) -> Drawn | None:
    """The body measurements in every size and, where a girth of the garment goes round one, the garment there.

    ``prefix`` starts every id in it; ``only`` leaves out the other system.
    None when there are fewer than two sizes, or no measurement is known in all.
    """
    tutorial = computed.tutorial
    measures = tuple(found for name in tutorial.body if (found := _measure(name, computed)) is not None)
    try:
        chart = size_chart.SizeChart(tutorial.title, tutorial.sizes, measures)
    except CannotDraw:
        return None
    return drawn(size_chart.draw(chart, first=first, only=only), prefix, language)


def _measure(name: str, computed: Computed) -> size_chart.Measure | None:
    body = _each(f"body.{name}", computed)
    if not body:
        return None
    girths = computed.tutorial.girths.values()
    girth = next((girth for girth in girths if girth.body is not None and girth.body.name == f"body.{name}"), None)
    garment = _each(f"{girth.key}.finished_girth", computed) if girth is not None else ()
    key = girth.key if girth is not None and garment else ""
    return size_chart.Measure(f"body.{name}", body_words(name), body, key, garment)


def _each(number: str, computed: Computed) -> tuple[Length, ...]:
    """A length in every size; none when one size lacks it."""
    found = [computed.length(number, size) for size in range(computed.tutorial.size_count)]
    known = tuple(each.length for each in found if each is not None)
    return known if len(known) == len(found) else ()
