"""Changes made at several lines: where the lines lie, and what each of them takes of the whole amount."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import COMMON_PRACTICE, check, found_while_reading
from sitegen.checks.rules.change_lines import MOST_AT_ONE_LINE
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, show_working
from sitegen.tutorial import Change, ChangeLine, Claim, Computed, words_of

_LEG = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven, buy: 3 yd}}\n"
    "pieces:\n  leg: {cut: 2 mirrored, fabric: main, length: 42 in, sides: {top: seam, bottom: seam}}\n"
)
_LINES = _LEG + "changes: {longer: {piece: leg, lines: [{line_at: 12 in from the top, FIRST}, {SECOND}]}}"
_BY = _LINES.replace("FIRST", "lengthen_by: 1 in")

found_while_reading(
    id="line-shares",
    area="changes",
    title="Shares of lines that do not make the whole amount",
    what="The shares of the lines of a change, added up, are more or less than the whole amount.",
    why="The piece would come out at another length than the wanted one.",
    source="Arithmetic: the amounts at all lines add up to the whole amount",
    trips=_LEG + "changes: {longer: {piece: leg, lengthen_by: 3 in, lines: [{line_at: 12 in from the top, share: 1/2},"
    " {line_at: 2/3 from the top, share: 1/3}]}}",
    passes=_LEG + "changes: {longer: {piece: leg, lengthen_by: 3 in, lines: [{line_at: 12 in from the top, share: 2/3},"
    " {line_at: 2/3 from the top, share: 1/3}]}}",
)


def _numbered(change: Change) -> Iterator[tuple[str, str, ChangeLine, int]]:
    """Every line of a change for every piece: its name for numbers, the piece, the line and its number."""
    for owner, piece in change.owners[1:] or change.owners:
        for number, line in enumerate(change.lines, 1):
            yield f"{owner}.line_{number}", piece, line, number


@check(
    id="lines-apart",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Change,
    title="Lines of a change that are not on the piece, or not one below the other",
    why="Outside the piece there is nothing to cut across, and two lines at one place are one line.",
    source="Arithmetic: lines lie between the two ends of the piece, and are numbered from the top down",
    trips=_BY.replace("SECOND", "line_at: 11 in from the top, lengthen_by: 1 in"),
    passes=_BY.replace("SECOND", "line_at: 28 in from the top, lengthen_by: 1 in"),
)
def lines_apart(change: Change, computed: Computed) -> Iterator[Finding]:
    """The lines of a change lie on each of its pieces, from the top down, in every size."""
    for name, piece, line, number in _numbered(change):
        for size in range(computed.tutorial.size_count):
            above, below, down = (
                computed.number(f"{name}.{field}", size)
                for field in ("part_above", "part_below", f"from_line_{number - 1}")
            )
            outside = next((part for part in (above, below) if part is not None and part.length <= ZERO), None)
            off = outside or (down if down is not None and down.length <= ZERO else None)
            if off is None:
                continue
            trouble = (
                f"lies outside the {words_of(piece)}"
                if outside
                else f"does not lie below line {number - 1} on the {words_of(piece)}"
            )
            order = "" if outside else " Write the lines from the top down."
            size_name = computed.size_name(size)
            yield Finding(
                "lines-apart",
                Severity.WRONG,
                line.at.place,
                f"Line {number} of {words_of(change.key)} {trouble}{in_size(size_name)}.{order}",
                "",
                "",
                show_working(off, computed.tutorial.first_system),
                size_name,
            )
            return


@check(
    id="line-large",
    area="changes",
    severity=Severity.HINT,
    looks_at=Change,
    title="Much length at one of several lines",
    why="Added at one place, it moves the elbow or the knee, and bends a sloping edge.",
    source="No more than about 3 in (7.5 cm) at one line: " + COMMON_PRACTICE,
    trips=_BY.replace("SECOND", "line_at: 28 in from the top, lengthen_by: 4 in"),
    passes=_BY.replace("SECOND", "line_at: 28 in from the top, lengthen_by: 2 in"),
)
def line_large(change: Change, computed: Computed) -> Iterator[Finding]:
    """At each of several lines no more than 3 in (7.5 cm) is added or taken out, in any size."""
    system = computed.tutorial.first_system
    most = MOST_AT_ONE_LINE[system]
    for number, line in enumerate(change.lines, 1):
        amounts = [
            (abs(amount.length), size)
            for size in range(computed.tutorial.size_count)
            if (amount := computed.number(f"{change.key}.line_{number}.amount", size)) is not None
        ]
        largest, size = max(amounts, key=lambda each: each[0], default=(ZERO, 0))
        if largest <= most:
            continue
        at = line.amount.amount_at(size) if line.amount is not None else None
        yield Finding(
            "line-large",
            Severity.HINT,
            at.place if at is not None else line.place,
            f"Line {number} of {words_of(change.key)} takes {RULER.show(largest, system)}"
            f"{in_size(computed.size_name(size))}. Beyond {RULER.show(most, system)} a piece keeps its shape better"
            " with one line more.",
            at.typed.text.strip() if at is not None else "",
            "",
            (),
            computed.size_name(size),
        )


@check(
    id="line-sum",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A fold or a distance between two lines that does not add up",
    why="The lines are drawn on the piece by these numbers before it is cut.",
    source="A fold takes up cloth twice: Central Washington Univ., costume construction text, chapter 17; the distance"
    " is arithmetic",
    trips=_BY.replace("SECOND", "line_at: 28 in from the top, lengthen_by: 1 in, from_line_1: 15 in"),
    passes=_BY.replace("SECOND", "line_at: 28 in from the top, lengthen_by: 1 in, from_line_1: 16 in"),
)
def line_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """A written fold at a line must be half of what is taken out there, and a written distance between two lines that
    of their places."""
    if claim.part == "change" and (claim.field == "fold" or claim.field.startswith("from_line_")):
        yield from disagreements("line-sum", claim, computed)
