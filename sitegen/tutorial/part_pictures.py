"""Why marks, gathers, pleats, a binding or a change cannot be drawn: what is not known, or is too much to be seen."""

from __future__ import annotations

from itertools import pairwise

from sitegen.quantities import ZERO, Length
from sitegen.sewing import pleats as pleating
from sitegen.tutorial.compute import Computed, words_of
from sitegen.tutorial.model import Binding, Change, Pleats

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
    if name in tutorial.changes:
        return _of_change(tutorial.changes[name], computed, size)
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


def _of_change(change: Change, computed: Computed, size: int) -> str:
    if change.widens:
        return "a change of width has no line across the piece, and only what is done at lines is drawn"
    owner, piece = change.owners[0]
    lines = _lines(change)
    own = computed.tutorial.pieces.get(piece)
    width = "taper_top" if own is not None and own.taper is not None else "cut_width"
    names = [f"{owner}{line}.{field}" for line in lines for field in ("amount", "part_above", "part_below")]
    unknown = _unknown(computed, size, f"{piece}.cut_length", f"{piece}.{width}", *names)
    if unknown:
        return unknown
    amounts, above, below = (
        [_length(computed, f"{owner}{line}.{field}", size) or ZERO for line in lines]
        for field in ("amount", "part_above", "part_below")
    )
    if not all(amounts):
        return "there is nothing to add or take out"
    if min(*above, *below) <= ZERO:
        return "a line does not lie on the piece"
    return folds_in_the_way(change, owner, computed, size)


def folds_in_the_way(change: Change, owner: str, computed: Computed, size: int) -> str:
    """Which folds of a change, whose numbers stand under this name, do not lie flat beside each other on the piece, in
    words; empty when all do, or it is not known.

    A pressed fold lies up from its line, as deep as half of what it takes out, and below the line the piece goes on
    behind all that it takes out. Source: geometry of a fold.
    """
    lines = _lines(change)
    taken = [_taken_out(computed, f"{change.key}{line}.amount", size) for line in lines]
    above = _length(computed, f"{owner}{lines[0]}.part_above", size)
    below = _length(computed, f"{owner}{lines[-1]}.part_below", size)
    if above is not None and above < taken[0] / 2:
        return "the fold is deeper than what lies above its line"
    for number, (upper, lower) in enumerate(pairwise(taken), 1):
        between = _length(computed, f"{owner}.line_{number + 1}.from_line_{number}", size)
        if between is not None and upper and between <= upper:
            return f"the fold at line {number} hides all down to line {number + 1}"
        if between is not None and lower and between < upper + lower / 2:
            return f"the fold at line {number + 1} reaches up over line {number}"
    if below is not None and taken[-1] and below <= taken[-1]:
        return "the fold hides all that lies below its line"
    return ""


def _lines(change: Change) -> list[str]:
    """What stands between the name of a change and the numbers at each of its lines."""
    return [f".line_{number}" for number in range(1, len(change.lines) + 1)] or [""]


def _taken_out(computed: Computed, name: str, size: int) -> Length:
    amount = _length(computed, name, size)
    return max(ZERO, -amount) if amount is not None else ZERO


def _unknown(computed: Computed, size: int, *names: str) -> str:
    """The first of these lengths that is not known."""
    return next((f"the {words_of(name)} is not known" for name in names if _length(computed, name, size) is None), "")


def _length(computed: Computed, name: str, size: int) -> Length | None:
    number = computed.length(name, size)
    return number.length if number is not None else None
