"""Pictures of a whole tutorial: its cutting layouts, and the order of making."""

from __future__ import annotations

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
    """The map of the steps of a tutorial, or of one combination of its views; None for fewer than two steps.

    ``prefix`` starts every id in it.
    """
    tutorial = computed.tutorial
    making = making_of(tutorial)
    try:
        picture = order_of_making.OrderOfMaking(
            titles={step.number: step.title for step in tutorial.steps},
            arrows=arrows_of(making),
            together=making.can_be_done_together(),
        )
    except CannotDraw:
        return None
    return drawn(order_of_making.draw(picture), prefix, language)


def arrows_of(making: Making) -> tuple[Arrow, ...]:
    """The links between steps without those that follow from others: what is needed is left out only where the steps
    between are needed too."""
    every = {(link.before, link.after): link.sure for link in making.links}
    sure = {pair for pair, certain in every.items() if certain}
    return tuple(
        Arrow(before, after, certain)
        for (before, after), certain in sorted(every.items())
        if not _goes_by_way_of(before, after, sure if certain else set(every))
    )


def _goes_by_way_of(before: int, after: int, pairs: set[tuple[int, int]]) -> bool:
    """Whether pairs lead from one step to another in more than one stride."""
    reached = {other for one, other in pairs if one == before and other != after}
    grown = True
    while grown:
        further = {other for one, other in pairs if one in reached} - reached
        grown = bool(further)
        reached |= further
    return after in reached
