"""Where a piece is lengthened, and by how much at one line."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, Length, System, cm, inches
from sitegen.tutorial import Change, Computed, Piece, taken_at

MOST_AT_ONE_LINE = {System.INCHES: inches(3), System.CENTIMETRES: cm("7.5")}
"""More than this is better spread over two lines (common practice, no source)."""
_SLEEVE = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 2 yd}}\n"
    "pieces:\n  sleeve: {cut: 2 on fold, fabric: main, length: 24 in, sides: {top: seam, bottom: seam},\n"
    "    taper: {top: 14 in, bottom: 8 in, over: 10 in, edges: 2}}\n"
)


@check(
    id="taper-above-line",
    area="changes",
    severity=Severity.DOUBTFUL,
    looks_at=Change,
    title="A lengthening line where the edge does not slope",
    why="The two parts of the edge meet there, and a step that is trued all the same bends the seam.",
    source="Derived: the step is the amount times the slope, and the taper of a piece ends at its lower edge",
    trips=_SLEEVE + "changes: {longer: {piece: sleeve, line_at: 6 in from the top, lengthen_by: 2 in}}",
    passes=_SLEEVE + "changes: {longer: {piece: sleeve, line_at: 6 in from the bottom, lengthen_by: 2 in}}",
)
def taper_above_line(change: Change, computed: Computed) -> Iterator[Finding]:
    """A line across a tapered piece lies where the piece tapers, in every size. The taper reaches up from the lower
    edge, or from the seam or hem there."""
    piece = computed.tutorial.pieces.get(change.pieces[0].name)
    if change.line_at is None or piece is None or piece.taper is None or "bottom" not in piece.sides:
        return
    for size in range(computed.tutorial.size_count):
        above = _above_taper(change, piece, size, computed)
        if above is not None and above > ZERO:
            size_name = computed.size_name(size)
            yield Finding(
                "taper-above-line",
                Severity.DOUBTFUL,
                change.line_at.place,
                f"The line of {_words(change.key)} lies {RULER.show(above, computed.tutorial.first_system)} above the"
                f" part of the {piece.called} that tapers{f' in size {size_name}' if size_name else ''}. The edge does"
                " not slope there, so there is no step to true. Move the line down.",
                "",
                "",
                (),
                size_name,
            )
            return


def _above_taper(change: Change, piece: Piece, size: int, computed: Computed) -> Length | None:
    """How far the line lies above the upper end of the taper."""
    below = computed.number(f"{change.key}.part_below", size)
    height = computed.number(f"{piece.key}.taper_over", size)
    taken = taken_at(piece, "bottom", computed, size)
    if below is None or height is None:
        return None
    return below.length - height.length - (taken.length if taken is not None else ZERO)


@check(
    id="change-large",
    area="changes",
    severity=Severity.HINT,
    looks_at=Change,
    title="Much length added or taken out at one line",
    why="Added at one place, it moves the elbow or the knee, and bends a sloping edge.",
    source="More than about 3 in (7.5 cm) is spread over two lines: " + COMMON_PRACTICE,
    trips=_SLEEVE + "changes: {longer: {piece: sleeve, line_at: 6 in from the bottom, lengthen_by: 4 in}}",
    passes=_SLEEVE + "changes: {longer: {piece: sleeve, line_at: 6 in from the bottom, lengthen_by: 2 in}}",
)
def change_large(change: Change, computed: Computed) -> Iterator[Finding]:
    """At one line no more than 3 in (7.5 cm) is added or taken out, in any size."""
    system = computed.tutorial.first_system
    most = MOST_AT_ONE_LINE[system]
    amounts = [
        (abs(amount.length), size)
        for size in range(computed.tutorial.size_count)
        if (amount := computed.number(f"{change.key}.amount", size)) is not None
    ]
    largest, size = max(amounts, default=(ZERO, 0))
    if change.widens or change.line_at is None or largest <= most:
        return
    given = change.amount or change.wanted
    at = given.amount_at(size) if given is not None else None
    size_name = computed.size_name(size)
    yield Finding(
        "change-large",
        Severity.HINT,
        at.place if at is not None else change.place,
        f"{_words(change.key).capitalize()} {'takes out' if change.shortens else 'adds'}"
        f" {RULER.show(largest, system)} at one line{f' in size {size_name}' if size_name else ''}. Beyond"
        f" {RULER.show(most, system)} a piece keeps its shape better with two lines,"
        f" {RULER.show(largest / 2, system)} at each.",
        at.typed.text.strip() if at is not None else "",
        "",
        (),
        size_name,
    )


def _words(key: str) -> str:
    return key.replace("_", " ")
