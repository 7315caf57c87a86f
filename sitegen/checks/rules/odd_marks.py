"""A single value of a list that lies on a finer mark than all others."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import System, inches, mm
from sitegen.tutorial import Computed, Lengths, Reference

_FEWEST = 4
_MARKS = {System.INCHES: inches("1/8"), System.CENTIMETRES: mm(5)}
_LIST = "sizes: [S, M, L, XL]\nbody: {bust: 'BUST in'}"


@check(
    id="odd-mark",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Lengths,
    title="One size on a finer mark than the others",
    why="Sizes grow by round steps; one value between the marks is mostly a slip of the eye on the ruler.",
    source="Grading in steps of 1/8 in or 5 mm: " + COMMON_PRACTICE,
    trips=_LIST.replace("BUST", "33, 35 1/16, 37, 39"),
    passes=_LIST.replace("BUST", "33, 35, 37, 39"),
)
def odd_mark(part: Lengths, computed: Computed) -> Iterator[Finding]:
    """In a list of four sizes or more of which all values but one lie on 1/8 in or 5 mm, that one does too. What is
    computed is rounded as it comes, and is passed over."""
    source = part.source
    if isinstance(source, Reference) or len(source.values) < _FEWEST:
        return
    if any(claim.lengths is part for claim in computed.tutorial.claims):
        return
    off = [each for each in source.values if not each.typed.value.sits_on(_MARKS[each.typed.unit.system])]
    if len(off) == 1:
        said = off[0].typed.text.strip()
        mark = "1/8 in" if off[0].typed.unit.system is System.INCHES else "5 mm"
        message = f"{said} is the only value of this list that does not lie on a mark of {mark}. Is it right?"
        yield Finding("odd-mark", Severity.DOUBTFUL, off[0].place, message, said)
