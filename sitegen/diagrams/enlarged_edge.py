"""The sloping edge at the line, enlarged: how the two parts miss each other, and the one straight new edge."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from sitegen.diagrams.drawing import (
    MARGIN,
    PAGE_WIDTH,
    Dimension,
    Label,
    Line,
    Number,
    Path,
    Role,
    Shape,
    Side,
    View,
    at,
    fitting_scale,
    path,
    rectangle,
)
from sitegen.diagrams.tapered_piece import TaperedPiece
from sitegen.diagrams.words import both_units
from sitegen.quantities import ZERO, Length, System

_AMOUNT_ROOM = 64
_STEP_ROOM = 90
_AROUND = 36
_RUN_ROOM = 40
_INSIDE = 96
_OUTSIDE = 16
_LABELS = 84
_TITLE = "the edge at the line, enlarged"


@dataclass(frozen=True)
class EnlargedEdge:
    """The place where the line meets the right side of the piece, once the parts are spread or folded.

    Levels are counted down from the line, distances across from the corner of the upper part.
    """

    piece: TaperedPiece
    line: Length
    amount: Length
    name: str

    @cached_property
    def step(self) -> Length:
        """How far the two parts miss each other: amount × slope, to either side."""
        return abs(self.amount * self.piece.slope)

    @cached_property
    def gap(self) -> Length:
        """The height of the paper between the parts."""
        return max(ZERO, self.amount)

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre here."""
        steep = abs(self.piece.slope)
        return fitting_scale(abs(self.amount), min(Fraction(_AMOUNT_ROOM), _STEP_ROOM / steep))

    @cached_property
    def around(self) -> Length:
        """How much is shown above and below."""
        return Length(min(Fraction(_AROUND), _RUN_ROOM / abs(self.piece.slope)) / self.scale)

    @cached_property
    def above(self) -> Length:
        """How much of the upper part is shown."""
        return min(self.around, self.line)

    @cached_property
    def bend(self) -> Length:
        """The level at which the edge starts to slope."""
        return self.piece.start - self.line

    @cached_property
    def foot(self) -> Length:
        """The lowest level that is shown."""
        return self.gap + min(self.around, self.piece.cut_length + self.amount - self.line - self.gap)

    @cached_property
    def _corner(self) -> Length:
        """The corner of the upper part, seen on the piece."""
        return self.piece.right_at(self.line)

    @cached_property
    def _taper_start(self) -> Length:
        """Where the edge of the upper part starts to slope."""
        return self.upper(self.bend)

    @cached_property
    def _trued_slope(self) -> Fraction:
        """By how much the new edge runs out for each unit of height."""
        end = self.piece.cut_length + self.amount - self.line
        return (self.lower(end) - self._taper_start).over(end - self.bend)

    def upper(self, level: Length) -> Length:
        """Where the edge of the upper part is."""
        return self.piece.right_at(self.line + level) - self._corner

    def lower(self, level: Length) -> Length:
        """Where the edge of the lower part is, once it has moved."""
        return self.piece.right_at(self.line + level - self.amount) - self._corner

    def trued(self, level: Length) -> Length:
        """Where the new edge is: straight from the upper end of the taper to its lower end."""
        return self._taper_start + (level - self.bend) * self._trued_slope

    @cached_property
    def sides(self) -> tuple[Length, Length]:
        """How far the picture reaches to the left and to the right."""
        ahead = -self.gap * self.piece.slope
        edges = [self.upper(-self.above), ZERO, ahead, self.lower(self.gap), self.lower(self.foot)]
        unit = Length(1 / self.scale)
        return min(min(edges) - unit * 30, -unit * _INSIDE), max(edges) + unit * _OUTSIDE


def edge_view(edge: EnlargedEdge, first: System, down: int) -> View:
    """The enlarged edge, so many page units down the page, at a scale of its own."""
    left, right = edge.sides
    width = (right - left).mm * edge.scale
    start = min(Fraction(MARGIN + _LABELS), (PAGE_WIDTH - width) / 2)
    top = edge.above.mm * edge.scale
    middle = at((left + right) / 2, -edge.above)
    shapes: tuple[Shape, ...] = (
        Label(_TITLE, middle, (Side.ABOVE,), width=300, gap=12, strong=True, leader=False),
        *_parts(edge, left),
        *_edges(edge),
        *_breaks(edge, left),
        *_words(edge),
        *_numbers(edge, left, first),
    )
    return View(edge.scale, shapes, right=start - left.mm * edge.scale, down=down + top)


def _parts(edge: EnlargedEdge, left: Length) -> list[Path]:
    top, gap, foot = -edge.above, edge.gap, edge.foot
    bend = edge.bend
    bends = (at(edge.upper(bend), bend),) if bend > top else ()
    upper = (at(left, top), at(edge.upper(top), top), *bends, at(), at(left))
    lower = (at(left, gap), at(edge.lower(gap), gap), at(edge.lower(foot), foot), at(left, foot))
    parts = [path(upper, Role.RIGHT, closed=True), path(lower, Role.RIGHT, closed=True)]
    if gap:
        reach = max(ZERO, edge.trued(ZERO), edge.trued(gap))
        parts.append(rectangle(at(left), at(reach, gap, right=8), Role.PAPER))
    return parts


def _breaks(edge: EnlargedEdge, left: Length) -> list[Line]:
    """Where the picture ends and the piece goes on."""
    top, gap, foot = -edge.above, edge.gap, edge.foot
    return [
        Line(at(left, top), at(edge.upper(top), top), Role.BREAK),
        Line(at(left, foot), at(edge.lower(foot), foot), Role.BREAK),
        Line(at(left, top), at(left), Role.BREAK),
        Line(at(left, gap), at(left, foot), Role.BREAK),
    ]


def _edges(edge: EnlargedEdge) -> list[Line]:
    top, gap, foot = -edge.above, edge.gap, edge.foot
    start = max(top, edge.bend)
    lines = [
        Line(at(edge.upper(start), start), at(), Role.OLD),
        Line(at(edge.lower(gap), gap), at(edge.lower(foot), foot), Role.OLD),
        Line(at(edge.trued(start), start), at(edge.trued(foot), foot), Role.TRUED),
    ]
    if gap:
        lines.append(Line(at(), at(-gap * edge.piece.slope, gap), Role.JOIN))
    return lines


def _numbers(edge: EnlargedEdge, left: Length, first: System) -> list[Shape]:
    gap, slope = edge.gap, edge.piece.slope
    ends = sorted((-gap * slope, edge.lower(gap))) if gap else sorted((ZERO, edge.lower(ZERO)))
    step = Number(f"{edge.name}.taper_step", edge.step)
    shapes: list[Shape] = [
        Dimension(at(ends[0], gap), at(ends[1], gap), step, f"step {both_units(edge.step, first)}",
                  (Side.RIGHT, Side.BELOW), down=10, width=100),
    ]  # fmt: skip
    if gap:
        number = Number(f"{edge.name}.amount", gap)
        text = f"paper\n{both_units(gap, first)}"
        shapes.append(Dimension(at(left), at(left, gap), number, text, (Side.LEFT,), right=-8, width=70))
        shapes += [Line(at(left), at(), Role.CUT), Line(at(left, gap), at(edge.lower(gap), gap), Role.CUT)]
    else:
        shapes.append(Line(at(left), at(), Role.FOLD))
        shapes.append(Label("fold", at(left), (Side.LEFT,), width=70))
    return shapes


def _words(edge: EnlargedEdge) -> list[Label]:
    level = -edge.above / 2
    old, new = edge.upper(level), edge.trued(level)
    inward, outward = (Side.LEFT, Side.BELOW), (Side.RIGHT, Side.BELOW)
    return [
        Label("old edge", at(old, level), inward if old < new else outward, width=84),
        Label("new edge", at(new, level), outward if old < new else inward, width=84),
    ]
