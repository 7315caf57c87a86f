"""A piece as it is cut: its edges by name, the seam lines inside them, fold, grain line, cut length and width."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from fractions import Fraction
from functools import cached_property
from math import ceil

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
from sitegen.diagrams.piece_shapes import area, ends, grain_line, on, side
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.diagrams.text_boxes import UNIT, block_size, wrapped
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System
from sitegen.sewing import geometry

_WIDTH, _HEIGHT = 150, 236
_CENTRE = 175
_MARK = 9
_NAME_WIDTH, _NAME_GAP = 130, 6
_SIDE_WIDTH = 76
_TITLE_GAP = 50
_PLAIN = ("seam", "raw")
_INSIDE = 120
"""Page units of height from which the names of the upper and lower edge stand inside the piece."""


class Ends(Enum):
    """What becomes of a side, and the line that is drawn inside it."""

    SEAM = Role.SEAM
    TURNED = Role.OLD
    FOLD = Role.FOLD
    RAW = Role.CUT


@dataclass(frozen=True, slots=True)
class PlanSide:
    """One side: its name, what becomes of it, what that takes off the piece, and how its notch is marked."""

    called: str
    ends: Ends
    taken: Length = ZERO
    notch: str = ""


@dataclass(frozen=True, slots=True)
class CutOff:
    """What is cut out of both lower corners, across and along the piece."""

    width: Length
    height: Length


@dataclass(frozen=True)
class PiecePlan:
    """A piece, its sides by ``top``, ``bottom``, ``left`` and ``right``, and what is marked on it.

    ``shape`` is what is drawn: half of the piece when it is ``halved`` at the fold on its left. ``lengthwise``: its
    length runs across, as that of a band does, which may be ``folded`` along its middle and have ``quarter`` marks.
    ``outer_only``: the piece has edges that lie at none of its sides and are not drawn.
    """

    name: str
    called: str
    cut: str
    shape: TaperedPiece
    sides: Mapping[str, PlanSide] = field(default_factory=dict)
    halved: bool = False
    lengthwise: bool = False
    bias: bool = False
    folded: bool = False
    quarter: Length | None = None
    cut_off: CutOff | None = None
    outer_only: bool = False

    def __post_init__(self) -> None:
        across = self.taken("left") + self.taken("right")
        down = self.taken("top") + self.taken("bottom")
        if across >= min(self.shape.top, self.shape.bottom) or down >= self.shape.cut_length:
            raise CannotDraw("the allowances leave nothing of the piece")
        if self.cut_off and (
            self.cut_off.width * 2 >= self.shape.bottom or self.cut_off.height >= self.shape.cut_length
        ):
            raise CannotDraw("the corners that are cut out leave nothing of the piece")
        if max(self.shape.width, self.shape.cut_length) > min(self.shape.width, self.shape.cut_length) * 60:
            raise CannotDraw("length and width of the piece differ too much to be drawn to one scale")

    def taken(self, which: str) -> Length:
        """What becomes of a side takes so much off the piece."""
        return self.sides[which].taken if which in self.sides else ZERO

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        return min(fitting_scale(self.shape.width, _WIDTH), fitting_scale(self.shape.cut_length, _HEIGHT))

    @property
    def across(self) -> Number:
        """The number of the whole width that is drawn."""
        name = "cut_length" if self.lengthwise else "cut_width"
        return Number(f"{self.name}.{name}{'/2' if self.halved else ''}", self.shape.width)

    @property
    def along(self) -> Number:
        """The number of the whole height that is drawn."""
        return Number(f"{self.name}.{'cut_width' if self.lengthwise else 'cut_length'}", self.shape.cut_length)

    def inner(self, which: str, level: Length) -> Length:
        """Where the line inside the left or right side is at a level, as far in as it takes, square to the side."""
        taken = self.taken(which)
        steep = self.shape.slope if self.shape.start < level else Fraction(0)
        if which == "left":
            steep = steep if self.shape.left is Edge.SLOPING else Fraction(0)
            return self.shape.left_at(level) + taken * _slant(steep)
        return self.shape.right_at(level) - taken * _slant(steep)


def describe(plan: PiecePlan, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    whole = plan.shape.width * (2 if plan.halved else 1)
    long, wide = (whole, plan.shape.cut_length) if plan.lengthwise else (plan.shape.cut_length, whole)
    times = f" Cut {plan.cut}." if plan.cut else ""
    parts = [f"The {plan.called} as it is cut, {say(long)} long and {say(wide)} wide.{times}"]
    if plan.halved:
        parts.append(f"Half of it is drawn, {say(plan.shape.width)} wide, with the fold on the left.")
    if plan.sides:
        sides = "; ".join(f"{which}: {_side_words(side, say(side.taken))}" for which, side in plan.sides.items())
        parts.append(f"{capital(sides)}.")
    if plan.cut_off is not None:
        parts.append(f"{say(plan.cut_off.width)} by {say(plan.cut_off.height)} are cut out of both lower corners.")
    if plan.folded:
        parts.append("A fold line runs along its middle.")
    if plan.quarter is not None:
        parts.append(f"Both long edges are marked every {say(plan.quarter)} from seam line to seam line.")
    parts.append(f"The grain line runs {_GRAIN[plan.bias]}.")
    if plan.shape.has_cap:
        parts.append("The curve of its cap is only sketched.")
    if plan.outer_only:
        parts.append("Only its outer measures are drawn.")
    return " ".join(parts)


_GRAIN = {False: "upright, along the selvage", True: "at 45 degrees, since the piece is cut on the bias"}


def draw(plan: PiecePlan, *, first: System = System.INCHES) -> Drawing:
    """The piece with its seam lines, names and measures."""
    width = plan.shape.width.mm * plan.scale
    shapes = (*_cloth(plan), *_inside(plan), *_marks(plan, first), *_measures(plan, first), *_names(plan, first))
    view = View(plan.scale, shapes, right=_CENTRE - width / 2)
    return Drawing(capital(f"{plan.called}: how it is cut"), describe(plan, first=first), (view,))


def _side_words(side: PlanSide, taken: str) -> str:
    if side.ends in (Ends.FOLD, Ends.RAW):
        return "on the fold" if side.ends is Ends.FOLD else "a raw edge"
    notch = f", {side.notch} notch" if side.notch else ""
    return f"{side.called}, takes {taken}{notch}" if side.taken else f"{side.called}{notch}"


def _slant(slope: Fraction) -> Fraction:
    """How much longer a level line between two sloping ones is than the way square to them: √(1 + slope²)."""
    return geometry.root(1 + slope * slope) if slope else Fraction(1)


def _cloth(plan: PiecePlan) -> list[Shape]:
    shape, corner, foot = plan.shape, at(), plan.shape.cut_length
    if plan.cut_off is not None:
        outline = _with_corners(plan, plan.cut_off)
        return [path(outline, Role.RIGHT, closed=True), path(outline, Role.CUT, closed=True)]
    return [
        area(shape, corner, ZERO, foot),
        *ends(shape, corner),
        *(side(shape, corner, left) for left in (True, False)),
    ]


def _with_corners(plan: PiecePlan, cut: CutOff) -> list[Point]:
    """The outline of a piece from whose lower corners a rectangle is cut; from one where the left is the fold."""
    shape, foot = plan.shape, plan.shape.cut_length
    step = foot - cut.height
    right = [
        at(shape.right_at(step), step), at(shape.right_at(step) - cut.width, step),
        at(shape.right_at(step) - cut.width, foot),
    ]  # fmt: skip
    left = [
        at(shape.left_at(step) + cut.width, foot), at(shape.left_at(step) + cut.width, step),
        at(shape.left_at(step), step),
    ]  # fmt: skip
    if shape.left is Edge.FOLD:
        left = [at(ZERO, foot)]
    return [*(at(x, y) for x, y in shape.top_edge), *right, *left]


def _inside(plan: PiecePlan) -> list[Shape]:
    """The seam lines, and the lines at which hems and casings are turned; none where corners are cut out."""
    shape, cut = plan.shape, plan.cut_off
    top, foot = plan.taken("top"), shape.cut_length - plan.taken("bottom")
    start = shape.start if shape.has_cap else top
    end = min(foot, shape.cut_length - cut.height) if cut is not None else foot
    levels = (start, *((shape.start,) if start < shape.start < end else ()), end)
    shapes: list[Shape] = []
    for which in ("left", "right"):
        if plan.taken(which):
            role = plan.sides[which].ends.value
            shapes.append(path([at(plan.inner(which, level), level) for level in levels], role))
    for which, level in (("top", top), ("bottom", foot)):
        if plan.taken(which) and not (which == "top" and shape.has_cap):
            begin, finish = plan.inner("left", level), plan.inner("right", level)
            if cut is not None and which == "bottom":
                finish = shape.right_at(level) - cut.width
                begin = begin if shape.left is Edge.FOLD else shape.left_at(level) + cut.width
            shapes.append(Line(at(begin, level), at(finish, level), plan.sides[which].ends.value))
    return shapes


def _marks(plan: PiecePlan, first: System) -> list[Shape]:
    """The grain line, the fold along the middle of a band, and its quarter marks."""
    shape, foot = plan.shape, plan.shape.cut_length
    shapes: list[Shape] = [_grain(plan, first)]
    if plan.folded:
        shapes.append(Line(at(y=foot / 2), at(shape.width, foot / 2), Role.FOLD))
        shapes.append(Label("fold", at(shape.width, foot / 2), (Side.RIGHT,), gap=6))
    if plan.quarter is not None:
        begin = plan.taken("left")
        for count in range(5):
            x = begin + plan.quarter * count
            shapes += [
                Line(at(x), at(x, down=_MARK), Role.MARK),
                Line(at(x, foot, down=-_MARK), at(x, foot), Role.MARK),
            ]
        number = Number(f"{plan.name}.band_quarter", plan.quarter)
        words = f"quarter {both_units(plan.quarter, first)}"
        shapes.append(Dimension(at(begin), at(begin + plan.quarter), number, words, (Side.ABOVE,), down=-10, width=140))
    return shapes


def _grain(plan: PiecePlan, first: System) -> Line:
    """Along the selvage; at 45° to it where the piece is cut on the bias."""
    shape, foot = plan.shape, plan.shape.cut_length
    if not plan.bias:
        return grain_line(shape, at(), foot - _name_inside(plan, first))
    middle = at(shape.width * Fraction(3, 10), foot / 2)
    reach = min(shape.width, foot) * Fraction(1, 5)
    return Line(on(at(), middle.x - reach, middle.y + reach), on(at(), middle.x + reach, middle.y - reach), Role.GRAIN)


def _measures(plan: PiecePlan, first: System) -> list[Shape]:
    """Cut length and cut width, below the piece and on its left."""
    shape, foot = plan.shape, plan.shape.cut_length
    across, along = plan.across, plan.along
    aside = _room_below(plan, first) + 14
    down, left = ("cut length", "cut width") if plan.lengthwise else ("cut width", "cut length")
    down = f"half of the {down}" if plan.halved else down
    below = f"{down}\n{both_units(across.value, first)}"
    beside = f"{left}\n{both_units(along.value, first)}"
    return [
        Dimension(at(), at(y=foot), along, beside, (Side.LEFT,), right=-14, width=78),
        Dimension(at(y=foot), at(shape.width, foot), across, below, (Side.BELOW,), down=aside, width=170),
    ]


def _room_below(plan: PiecePlan, first: System) -> int:
    """Page units that the name of the lower edge takes between it and its measure, so that no leader crosses that."""
    named = _named(plan).get("bottom")
    if named is None or _is_tall(plan):
        return 0
    return _NAME_GAP + _size(named, first)[1]


def _name_inside(plan: PiecePlan, first: System) -> Length:
    """The cloth above the lower edge on which its name stands; none where it stands below or beside the piece."""
    named = _named(plan).get("bottom")
    if named is None or not _is_tall(plan):
        return ZERO
    across, high = _size(named, first)
    found = plan.taken("bottom") + _cloth_of(plan, high + 2 * _NAME_GAP)
    levels = (plan.shape.cut_length - found, plan.shape.cut_length)
    narrowest = min(plan.inner("right", level) - plan.inner("left", level) for level in levels)
    room = narrowest >= _cloth_of(plan, across + 2 * _NAME_GAP)
    return found if room and found * 2 < plan.shape.cut_length else ZERO


def _cloth_of(plan: PiecePlan, units: int) -> Length:
    return Length(Fraction(units) / plan.scale)


def _size(named: PlanSide, first: System, most: int = _NAME_WIDTH) -> tuple[int, int]:
    """Width and height in page units of what is told of a side."""
    across, high = block_size(wrapped(_label(named, first), most))
    return ceil(Fraction(across, UNIT)), ceil(Fraction(high, UNIT))


def _is_tall(plan: PiecePlan) -> bool:
    return plan.shape.cut_length.mm * plan.scale >= _INSIDE


def _named(plan: PiecePlan) -> dict[str, PlanSide]:
    """The sides whose names are told; what becomes of all sides alike is said once."""
    found: dict[str, PlanSide] = {}
    for which in ("right", "left", "top", "bottom"):
        side = plan.sides.get(which)
        again = side in found.values() and (which in ("left", "right") or (side and side.called in _PLAIN))
        if side is not None and not again:
            found[which] = side
    return found


def _names(plan: PiecePlan, first: System) -> list[Shape]:
    """What the piece is called, and its sides."""
    shape, foot = plan.shape, plan.shape.cut_length
    middle, level = shape.width / 2, foot / 2
    words = f"{plan.called}: cut {plan.cut}" if plan.cut else plan.called
    shapes: list[Shape] = []
    spots = {
        "right": (at(shape.right_at(level), level), (Side.RIGHT,)),
        "left": (at(shape.left_at(level), level), (Side.LEFT,)),
        "top": (at(middle), (Side.ABOVE,)),
        "bottom": _at_the_foot(plan, first),
    }
    for which, named in _named(plan).items():
        spot, places = spots[which]
        beside = which in ("left", "right")
        width, gap = (_SIDE_WIDTH, _gap_beside(plan, named, first)) if beside else (_NAME_WIDTH, _NAME_GAP)
        shapes.append(Label(_label(named, first), spot, places, width=width, gap=gap))
    cut = plan.cut_off
    if cut is not None:
        corner = at(shape.right_at(foot) - cut.width / 2, foot - cut.height / 2)
        across, up = both_units(cut.width, first), both_units(cut.height, first)
        size = f"square of {across} cut out" if cut.width == cut.height else f"cut out {across} across, {up} up"
        shapes.append(Label(size, corner, (Side.RIGHT, Side.BELOW), width=90))
    if plan.outer_only:
        spot = at(middle, foot, down=30)
        shapes.append(Label("outer measures only", spot, (Side.BELOW,), width=200, leader=False))
    # Last, since the name of the upper edge has more lines in some languages: then this goes up, and not that over it.
    return [*shapes, Label(words, at(middle), (Side.ABOVE,), width=320, gap=_TITLE_GAP, strong=True, leader=False)]


def _gap_beside(plan: PiecePlan, named: PlanSide, first: System) -> int:
    """Page units between a side and its name, so that a side that runs in does not touch the upper corner of that."""
    high = _size(named, first, _SIDE_WIDTH)[1]
    return _NAME_GAP + max(0, ceil(plan.shape.slope * high / 2))


def _at_the_foot(plan: PiecePlan, first: System) -> tuple[Point, tuple[Side, ...]]:
    """Where the lower edge is named: on the cloth, else below; beside a tall piece that is too narrow there for it."""
    shape, foot = plan.shape, plan.shape.cut_length
    if not _is_tall(plan):
        return at(shape.width / 2, foot), (Side.BELOW,)
    if _name_inside(plan, first):
        return at(shape.width / 2, foot), (Side.ABOVE, Side.BELOW)
    level = foot - plan.taken("bottom") / 2
    return at(shape.right_at(level), level, right=-_MARK), (Side.RIGHT,)


def _label(side: PlanSide, first: System) -> str:
    if side.ends is Ends.FOLD:
        return "fold"
    if side.ends is Ends.RAW:
        return "raw edge"
    notch = f"\n{side.notch} notch" if side.notch else ""
    return f"{side.called}\n{both_units(side.taken, first)}{notch}" if side.taken else f"{side.called}{notch}"
