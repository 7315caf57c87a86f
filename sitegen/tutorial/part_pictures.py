"""Why marks, gathers, pleats or a binding cannot be drawn: what is not known, or is too much to be seen."""

from __future__ import annotations

from sitegen.quantities import Length
from sitegen.sewing import pleats as pleating
from sitegen.tutorial.compute import Computed, words_of
from sitegen.tutorial.model import Binding, Pleats

MOST_DRAWN_MARKS = 60
"""More marks than these cannot be told apart in a picture as tall as a phone."""
MOST_DRAWN_RATIO = 12
"""Gathers fuller than this leave too little of the shorter edge to be seen."""
MOST_DRAWN_STRIPS = 26
"""More bias strips than these run into each other in a picture as wide as a phone."""


def lacking_of_part(name: str, computed: Computed, size: int) -> str:
    """Why the part of this name cannot be drawn for the size, in words; empty when it can, or is drawn otherwise."""
    tutorial = computed.tutorial
    if name in tutorial.spacings:
        return _of_spacing(name, computed, size)
    if name in tutorial.gathers:
        return _of_gather(name, computed, size)
    if name in tutorial.pleats:
        return _of_pleats(tutorial.pleats[name], computed, size)
    if name in tutorial.bindings:
        return _of_binding(tutorial.bindings[name], computed, size)
    return ""


def _of_spacing(key: str, computed: Computed, size: int) -> str:
    marks = computed.number(f"{key}.marks", size)
    if marks is None or marks.number == 0:
        return "how many marks there are is not known"
    if marks.number > MOST_DRAWN_MARKS:
        return f"there are more than {MOST_DRAWN_MARKS} marks, too many to be told apart"
    return _unknown(computed, size, f"{key}.length", f"{key}.gap")


def _of_gather(key: str, computed: Computed, size: int) -> str:
    before, after = (_length(computed, f"{key}.{field}", size) for field in ("before", "after"))
    if before is None or after is None:
        return _unknown(computed, size, f"{key}.before", f"{key}.after")
    if before <= after:
        return "what is gathered is not longer than what it is gathered onto"
    if before > after * MOST_DRAWN_RATIO:
        return f"it is more than {MOST_DRAWN_RATIO} times as long as what it is gathered onto"
    return ""


def _of_pleats(pleats: Pleats, computed: Computed, size: int) -> str:
    depth, seen = (_length(computed, f"{pleats.key}.{field}", size) for field in ("depth", "visible"))
    if depth is None:
        return _unknown(computed, size, f"{pleats.key}.depth")
    if depth.mm <= 0:
        return "the cloth is too narrow for a pleat"
    if pleats.kind is pleating.Pleat.BOX and seen is not None and seen < depth * 2:
        return "the box pleats would lie over each other"
    return ""


def _of_binding(binding: Binding, computed: Computed, size: int) -> str:
    if binding.square is None:
        return "only strips out of a square are drawn, and it has no square. Example: square: 12 in"
    strips = computed.number(f"{binding.key}.whole_strips", size)
    if strips is None or strips.number < 1:
        return "the square is too small for a whole strip"
    if strips.number > MOST_DRAWN_STRIPS:
        return f"the square makes more than {MOST_DRAWN_STRIPS} strips, too many to be told apart"
    return _unknown(computed, size, *(f"{binding.key}.{field}" for field in ("strip_width", "strip", "sewn_length")))


def _unknown(computed: Computed, size: int, *names: str) -> str:
    """The first of these lengths that is not known."""
    return next((f"the {words_of(name)} is not known" for name in names if _length(computed, name, size) is None), "")


def _length(computed: Computed, name: str, size: int) -> Length | None:
    number = computed.length(name, size)
    return number.length if number is not None else None
