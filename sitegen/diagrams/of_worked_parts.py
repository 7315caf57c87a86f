"""From what is worked out along edges and out of cloth to its drawing: marks, gathers, pleats, bindings."""

from __future__ import annotations

from sitegen.diagrams.drawing import Drawing
from sitegen.diagrams.kinds import bias_strip, gathers, pleat_folds, spaced_marks
from sitegen.quantities import ZERO, Length, System
from sitegen.sewing import spacing as spacings
from sitegen.tutorial import Binding, Computed, Gather, Pleats, Reference, Spacing, chain_allowance, words_of


def worked_drawing(name: str, computed: Computed, size: int, first: System) -> Drawing | None:
    """The picture of the marks, gathers, pleats or binding of this name for one size; None when there is none of this
    name, or its numbers are not all known. Raises ``CannotDraw``."""
    tutorial = computed.tutorial
    if name in tutorial.spacings:
        return _spacing(tutorial.spacings[name], computed, size, first)
    if name in tutorial.gathers:
        return _gather(tutorial.gathers[name], computed, size, first)
    if name in tutorial.pleats:
        return _pleats(tutorial.pleats[name], computed, size, first)
    if name in tutorial.bindings:
        return _binding(tutorial.bindings[name], computed, size, first)
    return None


def _length(computed: Computed, name: str, size: int) -> Length | None:
    number = computed.length(name, size)
    return number.length if number is not None else None


def _spacing(each: Spacing, computed: Computed, size: int, first: System) -> Drawing | None:
    key = each.key
    whole, gap = (_length(computed, f"{key}.{field}", size) for field in ("length", "gap"))
    marks = computed.number(f"{key}.marks", size)
    if whole is None or gap is None or marks is None:
        return None
    positions = [_length(computed, f"{key}.position_{mark}", size) for mark in range(1, int(marks.number) + 1)]
    known = tuple(position for position in positions if position is not None)
    if len(known) < len(positions):
        return None
    ring = each.spread is spacings.Spread.ROUND
    return spaced_marks.draw(spaced_marks.SpacedMarks(key, words_of(key), whole, known, gap, ring), first=first)


def _gather(each: Gather, computed: Computed, size: int, first: System) -> Drawing | None:
    key = each.key
    before, after = (_length(computed, f"{key}.{field}", size) for field in ("before", "after"))
    if before is None or after is None:
        return None
    numbers = range(1, each.rows.count + 1) if each.rows else range(0)
    rows = tuple(row for each_row in numbers if (row := _length(computed, f"{key}.row_{each_row}", size)) is not None)
    allowance = chain_allowance(each.edges, computed, size) if rows else None
    picture = gathers.Gathers(
        key,
        _called(each.edges),
        _called(each.onto) or "shorter length",
        before,
        after,
        rows,
        allowance.length if allowance is not None else ZERO,
    )
    return gathers.draw(picture, first=first)


def _called(edges: tuple[Reference, ...]) -> str:
    """What edges are called together: ``front top and back top``, each once."""
    return " and ".join(dict.fromkeys(words_of(edge.name) for edge in edges))


def _pleats(each: Pleats, computed: Computed, size: int, first: System) -> Drawing | None:
    key = each.key
    depth = _length(computed, f"{key}.depth", size)
    if depth is None:
        return None
    seen, before, after = (
        _length(computed, f"{key}.{field}", size) for field in ("visible", "cut_width", "finished_width")
    )
    picture = pleat_folds.PleatFolds(key, words_of(key), each.kind, each.count, depth, seen, before, after)
    return pleat_folds.draw(picture, first=first)


def _binding(each: Binding, computed: Computed, size: int, first: System) -> Drawing | None:
    key = each.key
    side, width, strip, left_over, sewn = (
        _length(computed, f"{key}.{field}", size)
        for field in ("square", "strip_width", "strip", "left_over", "sewn_length")
    )
    count = computed.number(f"{key}.whole_strips", size)
    if side is None or width is None or strip is None or left_over is None or sewn is None or count is None:
        return None
    picture = bias_strip.BiasStrip(key, words_of(key), side, width, strip, int(count.number), left_over, sewn)
    return bias_strip.draw(picture, first=first)
