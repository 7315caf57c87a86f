"""A piece lengthened or shortened across several lines: before with its lines, and after with paper or folds."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

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
from sitegen.diagrams.piece_shapes import across, area, ends, grain_line, on, side, side_role, side_spots
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_HEIGHT = 230
_MORE_FOR_EACH_LINE = 50
_PAPER_OVER = 5
_LEFTWARD = (Side.LEFT,)
_RIGHTWARD = (Side.RIGHT,)


@dataclass(frozen=True, slots=True)
class LineAcross:
    """How far a line is from the top of the uncut piece, and what to add there, or to take out if negative."""

    at: Length
    amount: Length

    @property
    def fold(self) -> Length:
        """The depth of the fold that shortens; nothing where cloth is added."""
        return max(ZERO, -self.amount) / 2

    @property
    def resume(self) -> Length:
        """Where the piece goes on below the line: at the line, or below what is folded away."""
        return max(self.at, self.at - self.amount)


@dataclass(frozen=True, slots=True)
class Part:
    """What lies between two lines of the uncut piece, and how far down it has moved."""

    upper: Length
    lower: Length
    shift: Length


@dataclass(frozen=True)
class SlashAtLines:
    """A piece and the lines across it, from the top down.

    ``name`` is that of the change in references. Raises ``CannotDraw`` when a line misses the piece, the lines do not
    follow each other downwards, or there is not enough between them to fold away.
    """

    name: str
    called: str
    piece: TaperedPiece
    lines: tuple[LineAcross, ...]

    def __post_init__(self) -> None:
        if not self.lines or not all(line.amount for line in self.lines):
            raise CannotDraw("there is nothing to add or take out")
        reached = ZERO
        for line in self.lines:
            if not reached < line.at < self.piece.cut_length:
                raise CannotDraw("the lines do not cross the piece one below the other")
            if line.at - line.fold < reached:
                raise CannotDraw("there is not enough of the piece to fold away at a line")
            reached = line.resume
        if reached >= self.piece.cut_length:
            raise CannotDraw("there is not enough of the piece to fold away at a line")

    @cached_property
    def amount(self) -> Length:
        """What all lines add together."""
        return sum((line.amount for line in self.lines), start=ZERO)

    @property
    def new_length(self) -> Length:
        """The cut length afterwards."""
        return self.piece.cut_length + self.amount

    @cached_property
    def shown(self) -> TaperedPiece:
        """The piece as it is drawn: a line through a cap would cut a mere sketch, so there is no cap then."""
        return self.piece if self.lines[0].at >= self.piece.start else replace(self.piece, cap=False)

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """What the lines leave of the piece, from the top down."""
        found, upper, shift = [], ZERO, ZERO
        for line in self.lines:
            found.append(Part(upper, line.at, shift))
            upper, shift = line.resume, shift + line.amount
        return (*found, Part(upper, self.piece.cut_length, shift))

    def step(self, line: LineAcross) -> Length:
        """How far the two parts at a line miss each other: amount × slope; nothing above the taper."""
        return abs(line.amount * self.piece.slope) if line.at >= self.piece.start else ZERO

    @cached_property
    def slopes(self) -> bool:
        """Whether the sides slope at any of the lines."""
        return any(self.step(line) for line in self.lines)


def describe(change: SlashAtLines, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    above, *between, below = _distances(change)
    places = [f"line 1 {say(above)} from the top"]
    places += [f"line {number} {say(distance)} below line {number - 1}" for number, distance in enumerate(between, 2)]
    done = [_done(number, line, first) for number, line in enumerate(change.lines, 1)]
    parts = [
        f"Before: the {change.called}, {say(change.piece.cut_length)} long, with {len(change.lines)} lines across it:"
        f" {', '.join(places)}, which leaves {say(below)} below.",
        f"After: {'; '.join(done)}; now {say(change.new_length)} long.",
    ]
    if change.slopes:
        steps = [
            f"{say(change.step(line))} at line {number}"
            for number, line in enumerate(change.lines, 1)
            if change.step(line)
        ]
        parts.append(
            f"At each sloping edge the parts miss each other by {', '.join(steps)}; the new edge is one straight line"
            " from the upper end of the slope to its lower end."
        )
    parts.append("The grain line runs straight on through all parts.")
    return " ".join(parts)


def _done(number: int, line: LineAcross, first: System) -> str:
    if line.amount > ZERO:
        return f"cut apart at line {number} and spread by {plain_both_units(line.amount, first)}"
    fold, whole = plain_both_units(line.fold, first), plain_both_units(-line.amount, first)
    return f"folded at line {number}, the fold {fold} deep, half of the {whole} to take out"


def _distances(change: SlashAtLines) -> list[Length]:
    """From the top to the first line, from line to line, and from the last one to the lower edge."""
    levels = [ZERO, *(line.at for line in change.lines), change.piece.cut_length]
    return [lower - upper for upper, lower in pairwise(levels)]


def draw(change: SlashAtLines, *, first: System = System.INCHES) -> Drawing:
    """The piece before and after, to one scale."""
    longest = max(change.piece.cut_length, change.new_length)
    placed = placing_of(change.piece, longest, _HEIGHT + _MORE_FOR_EACH_LINE * (len(change.lines) - 1))
    shapes = (*_before(change, placed.before, first), *_after(change, placed.after, first))
    verb = "lengthened" if change.amount > ZERO else "shortened" if change.amount < ZERO else "changed"
    title = capital(f"{change.called} {verb} at {len(change.lines)} lines")
    return Drawing(title, describe(change, first=first), (View(placed.scale, shapes),))


def _before(change: SlashAtLines, corner: Point, first: System) -> list[Shape]:
    piece, foot = change.shown, change.piece.cut_length
    shapes: list[Shape] = [area(piece, corner, ZERO, foot)]
    for line in change.lines:
        if line.amount < ZERO:
            shapes.append(area(piece, corner, line.at, line.resume, role=Role.PAPER))
            shapes.append(across(piece, corner, line.resume, Role.SEAM))
    shapes += [
        *ends(piece, corner),
        *(side(piece, corner, left) for left in (True, False)),
        *(across(piece, corner, line.at, Role.SEAM) for line in change.lines),
        grain_line(piece, corner, foot),
        *(
            Label(f"line {number}", word_spot(piece, corner, line.at), (Side.ABOVE, Side.BELOW), gap=2)
            for number, line in enumerate(change.lines, 1)
        ),
        *_places(change, corner, first),
    ]
    heading, length = captions(piece, corner, "before", foot, f"cut length\n{both_units(foot, first)}")
    return [heading, *shapes, length]


def _places(change: SlashAtLines, corner: Point, first: System) -> list[Shape]:
    """Where the lines lie, measured at the left."""
    count = len(change.lines)
    names = ["line_1.part_above", *(f"line_{number}.from_line_{number - 1}" for number in range(2, count + 1))]
    words = ["above", *("between" for _ in range(1, count)), "below"]
    found: list[Shape] = []
    upper = ZERO
    for name, word, distance in zip([*names, f"line_{count}.part_below"], words, _distances(change), strict=True):
        begin, end = on(corner, ZERO, upper), on(corner, ZERO, upper + distance)
        number = Number(f"{change.name}.{name}", distance)
        found.append(Dimension(begin, end, number, f"{word}\n{both_units(distance, first)}", _LEFTWARD, -8, width=74))
        upper += distance
    return found


def _after(change: SlashAtLines, corner: Point, first: System) -> list[Shape]:
    piece, foot = change.shown, change.new_length
    shapes: list[Shape] = [area(piece, corner, part.upper, part.lower, part.shift) for part in change.parts]
    shapes += ends(piece, corner, change.amount)
    for left in (True, False):
        shapes += _new_side(change, corner, left)
    for number, (line, part) in enumerate(zip(change.lines, change.parts, strict=False), 1):
        at_line = f"{change.name}.line_{number}"
        done = _spread if line.amount > ZERO else _folded
        shapes += done(piece, corner, line, part.shift, at_line, first)
    number_of_length = Number(f"{change.name}.new_cut_length", foot)
    shapes.append(Dimension(on(corner, ZERO, ZERO), on(corner, ZERO, foot), number_of_length, right=-11))
    shapes.append(grain_line(piece, corner, foot))
    heading, length = captions(piece, corner, "after", foot, f"new length\n{both_units(foot, first)}")
    return [heading, *shapes, length]


def _spread(
    piece: TaperedPiece, corner: Point, line: LineAcross, shift: Length, name: str, first: System
) -> list[Shape]:
    upper, lower = line.at + shift, line.at + shift + line.amount
    beyond = _PAPER_OVER if piece.left is not Edge.FOLD else 0
    paper = rectangle(
        on(corner, piece.left_at(line.at), upper).moved(right=-beyond),
        on(corner, piece.right_at(line.at), lower).moved(right=_PAPER_OVER),
        Role.PAPER,
    )
    number, text = Number(f"{name}.amount", line.amount), f"paper\n{both_units(line.amount, first)}"
    begin, end = on(corner, piece.width, upper), on(corner, piece.width, lower)
    return [
        paper,
        across(piece, corner, line.at, Role.CUT, shift),
        across(piece, corner, line.at, Role.CUT, shift + line.amount),
        Dimension(begin, end, number, text, _RIGHTWARD, right=9, width=66),
    ]


def _folded(
    piece: TaperedPiece, corner: Point, line: LineAcross, shift: Length, name: str, first: System
) -> list[Shape]:
    hidden = line.at - line.fold
    begin, end = on(corner, piece.width, hidden + shift), on(corner, piece.width, line.at + shift)
    number, text = Number(f"{name}.fold", line.fold), f"fold\n{both_units(line.fold, first)}\ndeep"
    return [
        area(piece, corner, hidden, line.at, shift, Role.PAPER),
        across(piece, corner, line.at, Role.FOLD, shift),
        across(piece, corner, hidden, Role.JOIN, shift),
        Dimension(begin, end, number, text, _RIGHTWARD, right=9, width=66),
    ]


def _new_side(change: SlashAtLines, corner: Point, left: bool) -> list[Shape]:
    """One side afterwards: where it slopes at a line, the old edges and the straight new one."""
    piece, start = change.shown, change.piece.start
    if (left and piece.left is not Edge.SLOPING) or not change.slopes:
        spots = [
            spot
            for part in change.parts
            for spot in side_spots(piece, corner, left, piece.levels(part.upper, part.lower), part.shift)
        ]
        return [path(spots, side_role(piece, left))]
    tapered = [part for part in change.parts if part.lower > start]
    old = [side_spots(piece, corner, left, (max(part.upper, start), part.lower), part.shift) for part in tapered]
    straight = [
        spot
        for part in change.parts
        if part.upper < start and not piece.has_cap
        for spot in side_spots(piece, corner, left, (part.upper, min(part.lower, start)), part.shift)
    ]
    shapes: list[Shape] = [path(spots, Role.OLD) for spots in old]
    shapes.append(Line(old[0][0], old[-1][-1], Role.TRUED))
    if straight:
        shapes.append(path(straight, Role.CUT))
    return shapes
