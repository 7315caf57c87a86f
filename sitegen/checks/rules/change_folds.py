"""The folds that shorten a piece: whether there is enough of it above and below them, and whether they lie flat."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from sitegen.checks.held import in_size
from sitegen.checks.registry import check
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, ZERO, Length, Worked, show_working
from sitegen.tutorial import Change, Computed, folds_in_the_way, words_of

_SLEEVE = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven, buy: 3 yd}}\n"
    "pieces:\n  sleeve: {cut: 2, fabric: main, length: 24 in, sides: {top: seam, bottom: seam}}\n"
    "changes: {shorter: {piece: sleeve, line_at: 3 in from the bottom, shorten_by: AMOUNT}}"
)


@check(
    id="fold-room",
    area="changes",
    severity=Severity.WRONG,
    looks_at=Change,
    title="A fold that is deeper than the part of the piece beside it",
    why="There is not enough cloth at the line to fold away.",
    source="A fold takes half of the amount on either side of its line: Central Washington Univ., costume construction"
    " text, chapter 17",
    trips=_SLEEVE.replace("AMOUNT", "7 in"),
    passes=_SLEEVE.replace("AMOUNT", "2 in"),
)
def fold_room(change: Change, computed: Computed) -> Iterator[Finding]:
    """Where a change shortens, each of its pieces has more above and below the line than the fold takes there, and
    between two lines more than both of their folds, in every size. Where it has, but a pressed fold would hide all that
    lies below it or lie over another, it is doubtful: no picture can show it."""
    if change.widens:
        return
    found = [
        finding
        for owner, piece in change.owners[1:] or change.owners
        for size in range(computed.tutorial.size_count)
        if (finding := _in_size(change, owner, piece, size, computed)) is not None
    ]
    yield from sorted(found, key=lambda each: each.severity is not Severity.WRONG)[:1]


@dataclass(frozen=True, slots=True)
class _Room:
    """A stretch of the piece beside one line or between two: what the folds take of it, and which lines these are."""

    stretch: Worked | None
    folds: tuple[Length, ...]
    first_line: int
    where: str

    @property
    def too_small(self) -> bool:
        """Whether the folds use it up; a line that is not on the piece is another matter."""
        needed = sum(self.folds, ZERO)
        return self.stretch is not None and needed > ZERO and ZERO < self.stretch.length <= needed


def _rooms(change: Change, owner: str, size: int, computed: Computed) -> Iterator[_Room]:
    lines = [f".line_{number}" for number in range(1, len(change.lines) + 1)] or [""]
    folds = [_fold(computed.length(f"{change.key}{line}.amount", size)) for line in lines]
    last = len(lines) - 1
    yield _Room(computed.length(f"{owner}{lines[0]}.part_above", size), (folds[0],), 0, "above it")
    for number, both in enumerate(pairwise(folds), 1):
        between = computed.length(f"{owner}.line_{number + 1}.from_line_{number}", size)
        yield _Room(between, both, number - 1, "between them")
    yield _Room(computed.length(f"{owner}{lines[-1]}.part_below", size), (folds[-1],), last, "below it")


def _in_size(change: Change, owner: str, piece: str, size: int, computed: Computed) -> Finding | None:
    after = computed.length(f"{owner}.new_cut_length", size)
    if after is not None and after.length <= ZERO:
        return None
    return _too_deep(change, owner, piece, size, computed) or _not_flat(change, owner, piece, size, computed)


def _not_flat(change: Change, owner: str, piece: str, size: int, computed: Computed) -> Finding | None:
    reason = folds_in_the_way(change, owner, computed, size)
    if not reason:
        return None
    place, said = _place(change, len(change.lines) - 1 if change.lines else 0, size)
    of_piece = f" of the {words_of(piece)}" if len(change.owners) > 1 else ""
    move = "move the lines" if change.lines else "move the line up, or cut it off at the lower edge"
    return Finding(
        "fold-room",
        Severity.DOUBTFUL,
        place,
        f"With {words_of(change.key)} {reason}{of_piece}{in_size(computed.size_name(size))}, so it has no picture. Take"
        f" out less, or {move}.",
        said,
        size=computed.size_name(size),
    )


def _too_deep(change: Change, owner: str, piece: str, size: int, computed: Computed) -> Finding | None:
    room = next((room for room in _rooms(change, owner, size, computed) if room.too_small), None)
    if room is None or room.stretch is None:
        return None
    system, size_name = computed.tutorial.first_system, computed.size_name(size)
    number, several = room.first_line + 1, len(room.folds) > 1
    lines = f"lines {number} and {number + 1}" if several else f"line {number}" if change.lines else "its line"
    deep = " and ".join(RULER.show(each, system) for each in room.folds if each > ZERO)
    deepest = room.first_line + (several and room.folds[1] > room.folds[0])
    place, said = _place(change, deepest, size)
    return Finding(
        "fold-room",
        Severity.WRONG,
        place,
        f"{words_of(change.key).capitalize()} folds {deep} away on either side of {lines}, but {room.where} the"
        f" {words_of(piece)} has only {RULER.show(room.stretch.length, system)}{in_size(size_name)}. Take out less, or"
        f" move the {'lines apart' if several else 'line'}.",
        said,
        "",
        show_working(room.stretch, system),
        size_name,
    )


def _fold(amount: Worked | None) -> Length:
    """What a fold takes on either side of its line; nothing where cloth is added."""
    return max(ZERO, -amount.length) / 2 if amount is not None else ZERO


def _place(change: Change, line: int, size: int) -> tuple[Place, str]:
    """Where it is said how much is taken out at a line, and the text there."""
    own = change.lines[line].amount if change.lines else None
    given = own or change.amount or change.wanted
    if given is None:
        return change.place, ""
    amount = given.amount_at(size)
    return (amount.place, amount.typed.text.strip()) if amount is not None else (given.place, "")
