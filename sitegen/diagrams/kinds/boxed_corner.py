"""A boxed corner: the square that is cut out, and the corner opened flat and sewn straight across."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

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
    at,
    fitting_scale,
    path,
)
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_SQUARE_ROOM = 110
_DEPTH_ROOM = 160
_GOES_ON = 48
_BEYOND_SEAM = 26
_LEFT = 120
_MIDDLE = 175
_NEXT_VIEW = 96


@dataclass(frozen=True, slots=True)
class CutOut:
    """What is cut out of the raw corner: so far in from the side, so far up from the lower edge."""

    width: Length
    height: Length


@dataclass(frozen=True)
class BoxedCorner:
    """How far from the tip the seam across lies, its allowance, and what is cut out of the corner before.

    Without a ``cut_out`` only the sewn corner is drawn. Its sides are those of the raw corner; what the seams at the
    side and at the bottom take follows from them. ``name`` is that of the corners in references. Raises ``CannotDraw``
    when no seam lies across the corner or the allowances leave nothing of it.
    """

    name: str
    called: str
    from_tip: Length
    allowance: Length
    cut_out: CutOut | None = None

    def __post_init__(self) -> None:
        if self.from_tip <= ZERO or self.allowance < ZERO:
            raise CannotDraw("the corner needs a seam across it")
        if self.cut_out is None:
            return
        if min(self.cut_out.width, self.cut_out.height) <= ZERO or min(self.side_takes, self.bottom_takes) < ZERO:
            raise CannotDraw("nothing can be cut out of the corner")
        if self.allowance >= self.from_tip:
            raise CannotDraw("the allowance is as large as the corner")

    @property
    def depth(self) -> Length:
        """How deep the bag becomes: the length of the seam across."""
        return self.from_tip * 2

    @property
    def side_takes(self) -> Length:
        """What the seam at the side takes."""
        return self._taken(self.cut_out.width) if self.cut_out else ZERO

    @property
    def bottom_takes(self) -> Length:
        """What the seam at the bottom takes; nothing where the panel is folded there."""
        return self._taken(self.cut_out.height) if self.cut_out else ZERO

    def _taken(self, cut: Length) -> Length:
        return cut - self.from_tip + self.allowance

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        depth = fitting_scale(self.depth, _DEPTH_ROOM)
        if self.cut_out is None:
            return depth
        return min(depth, fitting_scale(max(self.cut_out.width, self.cut_out.height), _SQUARE_ROOM))

    @cached_property
    def goes_on(self) -> int:
        """Page units of cloth that are shown beyond the corner: beyond its seam too."""
        return max(_GOES_ON, int(self.allowance.mm * self.scale) + _BEYOND_SEAM)


def describe(corner: BoxedCorner, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    parts = []
    if corner.cut_out is not None:
        width, height = corner.cut_out.width, corner.cut_out.height
        what = f"a square of {say(width)}" if width == height else f"{say(width)} in from the side and {say(height)} up"
        lower = "the fold" if not corner.bottom_takes else "the lower edge"
        parts.append(f"Cut out: {what}, measured from the raw side and {lower}, out of the corner of the panel.")
    parts.append(
        "Sewn across: the side seam lies on the bottom seam, and the corner lies flat. The stitches run straight"
        f" across, {say(corner.from_tip)} from the tip, where the two seams cross, and are {say(corner.depth)} long"
        " from fold to fold: so deep does the bag become."
    )
    if corner.cut_out is not None:
        parts.append(f"They lie {say(corner.allowance)} from the raw edge that the cut-out made.")
    return " ".join(parts)


def draw(corner: BoxedCorner, *, first: System = System.INCHES) -> Drawing:
    """The corner cut out, and below it the corner sewn across, to one scale."""
    views, down = [], Fraction(0)
    if corner.cut_out is not None:
        views.append(View(corner.scale, tuple(_cut_corner(corner, corner.cut_out, first)), right=_LEFT))
        down = corner.from_tip.mm * corner.scale + corner.goes_on + _NEXT_VIEW
    views.append(View(corner.scale, tuple(_sewn(corner, first)), right=_MIDDLE, down=down))
    how = "cut out and sewn across" if corner.cut_out is not None else "sewn across"
    return Drawing(capital(f"{corner.called}: {how}"), describe(corner, first=first), tuple(views))


def _cut_corner(corner: BoxedCorner, cut: CutOut, first: System) -> list[Shape]:
    """The lower left corner of a panel; spots are counted from its raw tip, to the right and up."""
    width, height, on = cut.width, cut.height, corner.goes_on
    inner, foot, wall = at(width, -height), at(width), at(y=-height)
    foot_end, wall_end, far = at(width, right=on), at(y=-height, down=-on), at(width, -height, on, -on)
    bottom, side = -corner.bottom_takes, corner.side_takes
    seam_up, seam_along = width + corner.allowance, -height - corner.allowance
    lower = Role.CUT if corner.bottom_takes else Role.FOLD
    text = f"{both_units(width, first)}", f"{both_units(height, first)}"
    shapes: list[Shape] = [
        Label("cut out", at(width / 2, -height, right=on // 2, down=-on), (Side.ABOVE,), 150, 8, True, False),
        path((wall, inner, foot, foot_end, far, wall_end), Role.RIGHT, closed=True),
        Line(wall_end, far, Role.BREAK),
        Line(foot_end, far, Role.BREAK),
        path((wall, at(), foot), Role.OLD),
        Line(wall, wall_end, Role.CUT),
        Line(foot, foot_end, lower),
        path((wall, inner, foot), Role.CUT),
    ]
    if corner.side_takes:
        shapes += [Line(at(side, bottom), at(side, -height), Role.JOIN)]
        shapes += [Line(at(side, -height), at(side, -height, down=-on), Role.SEAM)]
    if corner.bottom_takes:
        shapes += [Line(at(side, bottom), at(width, bottom), Role.JOIN)]
        shapes += [Line(at(width, bottom), at(width, bottom, right=on), Role.SEAM)]
    shapes += [
        path((at(side, seam_along), at(seam_up, seam_along), at(seam_up, bottom)), Role.STITCH),
        Dimension(at(), foot, Number(f"{corner.name}.cut_out_width", width), text[0], (Side.BELOW,), down=10),
        Dimension(
            at(), wall, Number(f"{corner.name}.cut_out_height", height), text[1], (Side.LEFT,), right=-10, width=74
        ),
        Label("side", wall_end, (Side.LEFT,), gap=6, leader=False),
        Label("lower edge" if corner.bottom_takes else "fold", foot_end, (Side.BELOW,), gap=6, leader=False),
        Label("stitches", at(seam_up, (seam_along + bottom) / 2), (Side.RIGHT,), width=80),
    ]
    return shapes


def _sewn(corner: BoxedCorner, first: System) -> list[Shape]:
    """The corner opened flat, its tip below; spots are counted from the tip, across and up."""
    reach, on = corner.from_tip, corner.goes_on
    raw = reach - corner.allowance if corner.cut_out is not None else ZERO
    tall = reach.mm * corner.scale
    left, right = at(-reach, -reach), at(reach, -reach)
    left_end, right_end = at(-reach, -reach, -on, -on), at(reach, -reach, on, -on)
    edge = (at(-raw, -raw), at(raw, -raw)) if raw else (at(),)
    depth = Number(f"{corner.name}.depth", corner.depth)
    shapes: list[Shape] = [
        Label("sewn across", at(y=-reach, down=-on), (Side.ABOVE,), 150, 8, True, False),
        path((*edge, right_end, left_end), Role.RIGHT, closed=True),
        Line(left_end, right_end, Role.BREAK),
        Line(edge[0], left_end, Role.FOLD),
        Line(edge[-1], right_end, Role.FOLD),
        Line(at(y=-raw), at(y=-reach, down=-on), Role.SEAM),
        Line(left, right, Role.STITCH),
    ]
    if raw:
        shapes += [Line(edge[0], edge[-1], Role.CUT), path((edge[0], at(), edge[-1]), Role.OLD)]
        if corner.allowance:
            number = Number(f"{corner.name}.corner_allowance", corner.allowance)
            words = f"allowance\n{both_units(corner.allowance, first)}"
            shapes.append(
                Dimension(at(-reach, -reach), at(-reach, -raw), number, words, (Side.LEFT,), right=-10, width=74)
            )
    tip = Number(f"{corner.name}.from_tip", reach)
    shapes += [
        _from_tip(right, tip, f"from the tip\n{both_units(reach, first)}"),
        Dimension(left, right, depth, f"depth {both_units(corner.depth, first)}", (Side.BELOW,), down=tall + 12),
        Label("side seam", at(y=-reach, down=-on // 2), (Side.RIGHT,), gap=4, leader=False),
    ]
    return shapes


def _from_tip(end: Point, number: Number, text: str) -> Dimension:
    """Measured at the right, from the level of the tip up to the stitches."""
    return Dimension(Point(end.x), end, number, text, (Side.RIGHT,), right=10, width=74)
