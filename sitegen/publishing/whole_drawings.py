"""The drawings of a tutorial as a whole, for its page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from markupsafe import Markup

from sitegen.diagrams import arrows_of, layout_of, order_of, size_chart_of, stretch_gauge_of
from sitegen.publishing.drawings import IDS, Drawings
from sitegen.publishing.picture_views import Diagram
from sitegen.publishing.whole_views import OrderedStep, OrderOfSteps, WholeDrawings
from sitegen.quantities import System
from sitegen.tutorial import Computed, making_of


def whole_drawings(computed: Computed, first: System, drawings: Drawings, anchors: Mapping[int, str]) -> WholeDrawings:
    """Every drawing whose numbers are known. ``anchors`` holds the id of each card by its number."""
    fabrics = computed.tutorial.fabrics
    gauges = {key: _gauge(computed, key, first, drawings) for key in fabrics}
    layouts = {key: _layout(computed, key, first, drawings) for key in fabrics}
    return WholeDrawings(
        chart=_chart(computed, first, drawings),
        gauges={key: found for key, found in gauges.items() if found is not None},
        layouts={key: found for key, found in layouts.items() if found is not None},
        order=_order(computed, drawings, anchors),
    )


def _chart(computed: Computed, first: System, drawings: Drawings) -> Diagram | None:
    """Beside a table that follows the choice of a system, so that it must follow it too."""
    drawn, *alone = (size_chart_of(computed, IDS, first, drawings.language, only=only) for only in (None, *System))
    return _without_words(drawings.alike("size-chart", drawn, alone))


def _gauge(computed: Computed, fabric: str, first: System, drawings: Drawings) -> Diagram | None:
    drawn = stretch_gauge_of(computed, fabric, IDS, first, drawings.language)
    return _without_words(drawings.alike(f"stretch-{fabric}", drawn))


def _layout(computed: Computed, fabric: str, first: System, drawings: Drawings) -> Diagram | None:
    return drawings.by_size(
        f"layout-{fabric}", lambda size: layout_of(computed, fabric, size, IDS, first, drawings.language)
    )


def _without_words(diagram: Diagram | None) -> Diagram | None:
    """For a drawing that is a tool for the eye, or stands beside a table or a list which says the same."""
    return replace(diagram, words=Markup(), anchor="") if diagram is not None else None


def _order(computed: Computed, drawings: Drawings, anchors: Mapping[int, str]) -> OrderOfSteps | None:
    diagram = _without_words(drawings.alike("order", order_of(computed, IDS, drawings.language)))
    if diagram is None:
        return None
    making = making_of(computed.tutorial)
    arrows, pairs = arrows_of(making), making.can_be_done_together()
    steps = tuple(
        OrderedStep(
            number=step.number,
            title=drawings.language.own(step.title),
            anchor=anchors[step.number],
            after=tuple(sorted(arrow.before for arrow in arrows if arrow.after == step.number)),
            beside=tuple(sorted(sum(pair) - step.number for pair in pairs if step.number in pair)),
        )
        for step in computed.tutorial.steps
    )
    longest = making.longest_path()
    shorter = longest is not None and len(longest.steps) < len(steps)
    return OrderOfSteps(diagram, steps, longest.minutes if longest is not None and shorter else None)
