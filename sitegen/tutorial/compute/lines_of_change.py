"""Defines the numbers of the lines at which a piece is changed: where each lies, and its step at a tapered edge."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.quantities import ZERO, Worked, given
from sitegen.sewing import lengthen
from sitegen.tutorial.compute.given import lengths_maker
from sitegen.tutorial.compute.lengths_of_pieces import end_of
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.numbers import Numbers
from sitegen.tutorial.model import Change, ChangeLine, LineAt, Piece, Tutorial

NO_SLOPE = "none: the edge does not slope at this line"


def define_lines(change: Change, owner: str, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    """For each line of a piece both parts, how far it lies below the line before it, and the step at the taper."""
    for number, line in enumerate(change.lines, 1):
        own = f"{owner}.line_{number}"
        define_parts(line.at, own, f"{piece.key}.cut_length", numbers)
        if number > 1:
            _define_distance(owner, number, numbers)
        if piece.taper is not None:
            _define_step(change, number, own, piece, tutorial, numbers)


def define_parts(line: LineAt, owner: str, cut: str, numbers: Numbers) -> None:
    """The parts above and below a line, as the uncut piece lies on the table."""
    if cut not in numbers:
        return
    near, far = ("part_above", "part_below") if line.from_top else ("part_below", "part_above")
    share, distance = line.share, line.distance

    def near_part(size: int) -> Worked:
        name = words_of(f"{owner}.{near}")
        if share is not None:
            side = "top" if line.from_top else "bottom"
            return lengthen.part_above(name, numbers.at(cut, size), given(f"share from the {side}", share.ratio))
        if distance is None:
            raise AssertionError("a line lies at a share or at a distance")
        return lengths_maker(distance, numbers, name)(size)

    numbers.define(f"{owner}.{near}", near_part)
    numbers.define(
        f"{owner}.{far}",
        lambda size: lengthen.other_part(
            words_of(f"{owner}.{far}"), numbers.at(cut, size), numbers.at(f"{owner}.{near}", size)
        ),
    )


def _define_distance(owner: str, number: int, numbers: Numbers) -> None:
    name = f"{owner}.line_{number}.from_line_{number - 1}"
    above = f"{owner}.line_{number - 1}.part_above"
    numbers.define(
        name,
        lambda size: lengthen.between(
            words_of(name), numbers.at(f"{owner}.line_{number}.part_above", size), numbers.at(above, size)
        ),
    )


def _define_step(change: Change, number: int, own: str, piece: Piece, tutorial: Tutorial, numbers: Numbers) -> None:
    name = f"{own}.taper_step"

    def step(size: int) -> Worked:
        if not _slopes_at(change, number, piece, tutorial, numbers, size):
            return given(words_of(name), ZERO, NO_SLOPE)
        amount = numbers.at(f"{change.key}.line_{number}.amount", size)
        return lengthen.taper_step(words_of(name), amount, numbers.at(f"{piece.key}.slope", size))

    numbers.define(name, step)


def on_slope(
    change: Change, lines: Sequence[ChangeLine], piece: Piece, tutorial: Tutorial, numbers: Numbers, size: int
) -> tuple[list[Worked], list[Worked]]:
    """The amounts of these lines of the change: those where the piece tapers, and those above. Raises Missing."""
    sloping: list[Worked] = []
    straight: list[Worked] = []
    for number, line in enumerate(change.lines, 1):
        if line in lines:
            amount = numbers.at(f"{change.key}.line_{number}.amount", size)
            slopes = _slopes_at(change, number, piece, tutorial, numbers, size)
            (sloping if slopes else straight).append(amount)
    return sloping, straight


def _slopes_at(change: Change, number: int, piece: Piece, tutorial: Tutorial, numbers: Numbers, size: int) -> bool:
    """Whether a line lies where the piece tapers, which ends at its lower edge, or at the seam or hem there.

    Where the lower end of the piece is not known, the line is taken to lie there.
    """
    owner = f"{change.key}.{piece.key}" if len(change.owners) > 1 else change.key
    if piece.taper is None or "bottom" not in piece.sides or f"{owner}.line_{number}.part_below" not in numbers:
        return True
    taken = end_of(piece, "bottom", tutorial, numbers, size).taken
    below = numbers.at(f"{owner}.line_{number}.part_below", size).length
    return below - (taken.length if taken else ZERO) <= numbers.at(f"{piece.key}.taper_over", size).length
