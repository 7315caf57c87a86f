"""Pictures of a whole tutorial: its cutting layouts, and the order of making."""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce
from operator import or_

from sitegen.diagrams.drawing import CannotDraw
from sitegen.diagrams.drawn import Drawn, drawn
from sitegen.diagrams.kinds import cutting_layout, order_of_making
from sitegen.diagrams.order_map import Arrow
from sitegen.quantities import ENGLISH, English, System
from sitegen.sewing import layout
from sitegen.tutorial import Computed, Making, making_of, words_of


def layout_of(
    computed: Computed,
    fabric: str,
    size: int,
    prefix: str,
    first: System,
    language: English = ENGLISH,
    *,
    with_amounts: bool = True,
) -> Drawn | None:
    """The cutting layout of a fabric by its key, for one size; None when it is not known or not drawable.

    ``prefix`` starts every id in it. Without amounts it does not say how much cloth is needed and bought.
    """
    laid = computed.laid(fabric, size)
    width = computed.length(f"{fabric}.width", size)
    if not isinstance(laid, layout.Layout) or width is None:
        return None
    tutorial = computed.tutorial
    called = {piece.key: piece.called or words_of(piece.key) for piece in tutorial.pieces.values()}
    called |= {key: words_of(key) for key in tutorial.bands}
    amounts = (computed.length(f"{fabric}.{name}", size) for name in ("need", "buy")) if with_amounts else (None, None)
    need, buy = amounts
    try:
        picture = cutting_layout.CuttingLayout(
            name=fabric,
            fabric=tutorial.fabrics[fabric].name or words_of(fabric),
            laid=laid,
            width=width.length,
            called=called,
            need=need.length if need is not None else None,
            buy=buy.length if buy is not None else None,
        )
        return drawn(cutting_layout.draw(picture, first=first), prefix, language)
    except CannotDraw:
        return None


def order_of(computed: Computed, prefix: str, language: English = ENGLISH) -> Drawn | None:
    """The map of the steps of a tutorial, or of one combination of its views; None for too few steps or too many.

    ``prefix`` starts every id in it.
    """
    tutorial = computed.tutorial
    if not order_of_making.can_show(len(tutorial.steps)):
        return None
    making = making_of(tutorial)
    picture = order_of_making.OrderOfMaking(
        titles={step.number: step.title for step in tutorial.steps},
        arrows=arrows_of(making),
        together=making.can_be_done_together(),
    )
    return drawn(order_of_making.draw(picture), prefix, language)


def arrows_of(making: Making) -> tuple[Arrow, ...]:
    """The links between steps without those that follow from others: what is needed is left out only where the steps
    between are needed too."""
    every = {(link.before, link.after): link.sure for link in making.links}
    around = _by_way_of_others(every)
    around_surely = _by_way_of_others(pair for pair, sure in every.items() if sure)
    return tuple(
        Arrow(before, after, sure)
        for (before, after), sure in sorted(every.items())
        if not (around_surely if sure else around)[after] >> before & 1
    )


def _by_way_of_others(pairs: Iterable[tuple[int, int]]) -> dict[int, int]:
    """For each step that comes after another: those that come before it in more than one stride, one bit each."""
    directly: dict[int, list[int]] = {}
    for before, after in pairs:
        directly.setdefault(after, []).append(before)
    every: dict[int, int] = {}
    found: dict[int, int] = {}
    for after in sorted(directly):  # each step comes after those of smaller numbers alone
        found[after] = reduce(or_, (every.get(before, 0) for before in directly[after]))
        every[after] = reduce(or_, (1 << before for before in directly[after]), found[after])
    return found
