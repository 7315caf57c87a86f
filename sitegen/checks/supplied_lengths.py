"""Holds how much of a supply is bought against how much of it the garment needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from sitegen.checks.held import instead
from sitegen.findings import Finding, Severity
from sitegen.quantities import (
    RULER,
    NotUnderstood,
    Rounding,
    Typed,
    Worked,
    parse_length,
    show_in_unit,
    show_working,
)
from sitegen.tutorial import Computed, Words


def length_said(words: Words | None) -> Typed | None:
    """The length that an amount or a size of a supply is; None where it is none, or more than a length."""
    if words is None:
        return None
    try:
        return parse_length(words.text)
    except NotUnderstood:
        return None


def too_little(
    check_id: str,
    said: Words | None,
    of_what: str,
    needed: Sequence[tuple[int, Worked]],
    computed: Computed,
    *,
    lacks: str = "little",
    rounding: Rounding = Rounding.SOLD,
) -> Iterator[Finding]:
    """A finding where the length that is said is less than what is needed in some size, with the size that needs most.
    Nothing where no length is said, or nobody knows what is needed."""
    typed = length_said(said)
    if said is None or typed is None or not needed:
        return
    size, most = max(needed, key=lambda each: each[1].length)
    if typed.value >= most.length or RULER.agrees(typed.value, most.length, typed.unit.system):
        return
    size_name = computed.size_name(size) if len({length.length for _, length in needed}) > 1 else ""
    yield Finding(
        check_id,
        Severity.WRONG,
        said.place,
        f"{typed.text.strip()} of {of_what} is too {lacks}:"
        f" {show_in_unit(most.length, typed.unit, rounding=rounding)} are needed"
        f"{f' for size {size_name}' if size_name else ''}.",
        said.text,
        instead(typed, most.length, rounding),
        show_working(most, typed.unit.system),
        size_name,
    )
