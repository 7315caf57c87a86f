"""A piece lengthened or shortened across a line: before, after, and the edge at the line enlarged."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from sitegen.diagrams.before_and_after import captions, placing_of, word_spot
from sitegen.diagrams.drawing import (
    CannotDraw,
    Dimension,
    Drawing,
    Label,
    Line,
    Number,
    Point,
    Role,
    Shape,
    Side,
    View,
    path,
    rectangle,
)
from sitegen.diagrams.enlarged_edge import EnlargedEdge, edge_view
from sitegen.diagrams.piece_shapes import across, area, ends, grain_line, on, side, side_role, side_spots
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_PAPER_OVER = 5
_GRAIN_NAME_ROOM = 60
_LEFTWARD = (Side.LEFT,)
_RIGHTWARD = (Side.RIGHT,)


@dataclass(frozen=True)
class SlashAndSpread:
    """A piece, how far the line is from its top, and the amount to add there, or to take out if negative.

    ``name`` and ``piece_name`` are those of the change and the piece in references. Raises ``CannotDraw`` when
    the line misses the piece or there is not enough of it to fold away.
    """

    name: str
    piece_name: str
    called: str
    piece: TaperedPiece
    line_at: Length
    amount: Length

    def __post_init__(self) -> None:
        if not ZERO < self.line_at < self.piece.cut_length:
            raise CannotDraw("the line does not cross the piece")
        if not self.amount:
            raise CannotDraw("there is nothing to add or take out")
        if self.fold > self.line_at or self.part_below + self.amount <= ZERO:
            raise CannotDraw("there is not enough of the piece to fold away at the line")

    @property
    def part_below(self) -> Length:
        """From the line to the lower edge."""
        return self.piece.cut_length - self.line_at

    @property
    def new_length(self) -> Length:
        """The cut length afterwards."""
        return self.piece.cut_length + self.amount

    @property
    def fold(self) -> Length:
        """The depth of the fold that shortens; nothing when the piece is lengthened."""
        return max(ZERO, -self.amount) / 2

    @cached_property
    def shown(self) -> TaperedPiece:
        """The piece as it is drawn: a line through a cap would cut a mere sketch, so there is no cap then."""
        return self.piece if self.line_at >= self.piece.start else replace(self.piece, cap=False)

    @cached_property
    def edge(self) -> EnlargedEdge | None:
        """The sloping edge at the line, if it slopes there."""
        edge = EnlargedEdge(self.piece, self.line_at, self.amount, self.name)
        return edge if edge.step and self.line_at >= self.piece.start else None


def describe(change: SlashAndSpread, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    parts = [
        f"Before: the {change.called}, {say(change.piece.cut_length)} long, with a line across it "
        f"{say(change.line_at)} from the top, which leaves {say(change.part_below)} below.",
    ]
    if change.amount > ZERO:
        parts.append(
            f"After: cut apart at the line and spread by {say(change.amount)}, with paper behind the gap; "
            f"now {say(change.new_length)} long."
        )
    else:
        parts.append(
            f"After: folded at the line, the fold {say(change.fold)} deep, half of the {say(-change.amount)} "
            f"to take out; now {say(change.new_length)} long."
        )
    if change.edge:
        parts.append(
            f"Enlarged: at each sloping edge the two parts miss each other by {say(change.edge.step)}; "
            "the new edge is one straight line from the upper end of the slope to its lower end."
        )
    parts.append("The grain line runs straight on through both parts.")
    return " ".join(parts)


def draw(change: SlashAndSpread, *, first: System = System.INCHES) -> Drawing:
    """The piece before and after, to one scale, and the edge at the line at a larger one."""
    piece, longest = change.piece, max(change.piece.cut_length, change.new_length)
    placed = placing_of(piece, longest)
    shapes = (*_before(change, placed.before, first, placed.scale), *_after(change, placed.after, first))
    views = [View(placed.scale, shapes)]
    if change.edge:
        views.append(edge_view(change.edge, first, placed.foot + 80))
    verb = "lengthened" if change.amount > ZERO else "shortened"
    return Drawing(capital(f"{change.called} {verb} at a line"), describe(change, first=first), tuple(views))


def _before(change: SlashAndSpread, corner: Point, first: System, scale: Fraction) -> list[Shape]:
    piece, line, foot = change.shown, change.line_at, change.piece.cut_length
    top, middle, end = (on(corner, ZERO, level) for level in (ZERO, line, foot))
    above, below = Number(f"{change.name}.part_above", line), Number(f"{change.name}.part_below", change.part_below)
    grain, word = grain_line(piece, corner, foot), "cut" if change.amount > ZERO else "fold"
    name_at = replace(grain.start, y=max(line * 2, foot) / 5)
    shapes: list[Shape] = [area(piece, corner, ZERO, foot)]
    if change.amount < ZERO:
        second = line - change.amount
        shapes += [across(piece, corner, second, Role.SEAM), area(piece, corner, line, second, role=Role.PAPER)]
    shapes += [
        *ends(piece, corner),
        *(side(piece, corner, left) for left in (True, False)),
        across(piece, corner, line, Role.SEAM),
        grain,
        *([Label("grain line", name_at, _RIGHTWARD, width=50, gap=5)] if line.mm * scale > _GRAIN_NAME_ROOM else []),
        Label(word, word_spot(piece, corner, line), (Side.ABOVE, Side.BELOW), gap=2),
        Dimension(top, middle, above, f"above\n{both_units(line, first)}", _LEFTWARD, -8, width=74),
        Dimension(middle, end, below, f"below\n{both_units(below.value, first)}", _LEFTWARD, -8, width=74),
    ]
    heading, length = captions(piece, corner, "before", foot, f"cut length\n{both_units(foot, first)}")
    return [heading, *shapes, length]


def _after(change: SlashAndSpread, corner: Point, first: System) -> list[Shape]:
    piece, line, amount, foot = change.shown, change.line_at, change.amount, change.new_length
    resume = max(line, line - amount)
    shapes: list[Shape] = [
        area(piece, corner, ZERO, line),
        area(piece, corner, resume, piece.cut_length, amount),
        *ends(piece, corner, amount),
    ]
    for left in (True, False):
        shapes += _new_side(change, corner, left, resume)
    if amount > ZERO:
        shapes += _spread(change, corner, first)
    else:
        shapes += _folded(change, corner, first)
    number = Number(f"{change.name}.new_cut_length", foot)
    shapes.append(Dimension(on(corner, ZERO, ZERO), on(corner, ZERO, foot), number, right=-11))
    shapes.append(grain_line(piece, corner, foot))
    heading, length = captions(piece, corner, "after", foot, f"new length\n{both_units(foot, first)}")
    return [heading, *shapes, length]


def _spread(change: SlashAndSpread, corner: Point, first: System) -> list[Shape]:
    piece, line, amount = change.shown, change.line_at, change.amount
    left, right = piece.left_at(line), piece.right_at(line)
    beyond = _PAPER_OVER if piece.left is not Edge.FOLD else 0
    begin, end = on(corner, piece.width, line), on(corner, piece.width, line + amount)
    number = Number(f"{change.name}.amount", amount)
    paper = rectangle(
        on(corner, left, line).moved(right=-beyond),
        on(corner, right, line + amount).moved(right=_PAPER_OVER),
        Role.PAPER,
    )
    return [
        paper,
        across(piece, corner, line, Role.CUT),
        across(piece, corner, line, Role.CUT, amount),
        Dimension(begin, end, number, f"paper\n{both_units(amount, first)}", _RIGHTWARD, right=9, width=66),
    ]


def _folded(change: SlashAndSpread, corner: Point, first: System) -> list[Shape]:
    piece, line, hidden = change.shown, change.line_at, change.line_at - change.fold
    begin, end = on(corner, piece.width, hidden), on(corner, piece.width, line)
    number = Number(f"{change.name}.fold", change.fold)
    text = f"fold\n{both_units(change.fold, first)}\ndeep"
    return [
        area(piece, corner, hidden, line, role=Role.PAPER),
        across(piece, corner, line, Role.FOLD),
        across(piece, corner, hidden, Role.JOIN),
        Dimension(begin, end, number, text, _RIGHTWARD, right=9, width=66),
    ]


def _new_side(change: SlashAndSpread, corner: Point, left: bool, resume: Length) -> list[Shape]:
    """One side afterwards: where it slopes at the line, the old edges and the straight new one."""
    piece, line, amount = change.shown, change.line_at, change.amount
    upper, lower = piece.levels(ZERO, line), piece.levels(resume, piece.cut_length)
    straight = left and piece.left is not Edge.SLOPING
    if straight or change.edge is None:
        spots = (*side_spots(piece, corner, left, upper), *side_spots(piece, corner, left, lower, amount))
        return [path(spots, side_role(piece, left))]
    start = upper[-2]
    (begin,), (end,) = side_spots(piece, corner, left, (start,)), side_spots(piece, corner, left, lower[-1:], amount)
    shapes: list[Shape] = [
        path(side_spots(piece, corner, left, (start, line)), Role.OLD),
        path(side_spots(piece, corner, left, lower, amount), Role.OLD),
        Line(begin, end, Role.TRUED),
    ]
    if len(upper) > 2:
        shapes.append(path(side_spots(piece, corner, left, upper[:-1]), Role.CUT))
    return shapes
