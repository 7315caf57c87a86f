"""A seam as it is sewn and, below it at the same widths, cut through: how it is pressed, what becomes of its edges."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
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
    rectangle,
)
from sitegen.diagrams.legend import legend_of_sides
from sitegen.diagrams.seam_courses import (
    BESIDE,
    Courses,
    felled,
    french,
    overcast,
    pressed_aside,
    pressed_open,
    unpressed,
)
from sitegen.diagrams.text_boxes import LINE_STEP, UNIT, wrapped
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Exact, Length, System

_ROOM = 80
_FACE = 72
_CENTRE, _CENTRE_OPEN = 152, 175
_BETWEEN = 96
_HOOK, _ROUND_BOTH = 12, 8
_ROW_STEPS = 6
_BESIDE_EDGE = (Side.RIGHT, Side.BELOW)
_EDGE_WORDS = 78
_CLOSED_MIDDLE = 25
_LEGEND = 66
_CAPTION, _NAME, _NAMES = 330, 124, 72


class Row(Enum):
    """What a row of stitches looks like."""

    STRAIGHT = "straight"
    ZIGZAG = "zigzag"
    OVERLOCK = "overlock"


class Pressed(Enum):
    """How the allowances lie afterwards."""

    NOT = "as it is sewn"
    OPEN = "open"
    ASIDE = "to one side"


class Closed(Enum):
    """A seam in which the raw edges are closed in by a second row of stitches."""

    FRENCH = "French seam"
    FELLED = "flat-felled seam"


@dataclass(frozen=True, slots=True)
class Layer:
    """One of the pieces: what it is called, the edge by its name in references, its allowance, its raw edge."""

    called: str
    edge: str
    allowance: Length
    finished: bool = False


@dataclass(frozen=True)
class SeamSection:
    """Two layers and how they are sewn and pressed; ``second`` is the piece to which both allowances are pressed.

    ``stitch`` and ``press`` are the author's words, ``hidden`` what hides the raw edges, which may be finished
    ``together``, by one row of stitches round both. Raises ``CannotDraw`` for an
    allowance of nothing or less, or two that differ too much.
    """

    called: str
    first: Layer
    second: Layer
    stitch: str
    row: Row
    pressed: Pressed
    press: str = ""
    hidden: str = ""
    closed: Closed | None = None
    together: bool = False

    def __post_init__(self) -> None:
        if min(self.allowances) <= ZERO:
            raise CannotDraw("a seam needs an allowance above nothing on both sides")
        if max(self.allowances) > min(self.allowances) * 6:
            raise CannotDraw("the two allowances differ too much to be drawn to one scale")

    @property
    def allowances(self) -> tuple[Length, Length]:
        """The allowance of either layer."""
        return self.first.allowance, self.second.allowance

    @property
    def even(self) -> bool:
        """Whether both allowances are alike."""
        return self.first.allowance == self.second.allowance

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        return fitting_scale(max(self.allowances), _ROOM)

    @cached_property
    def courses(self) -> Courses:
        """How the layers run where the seam is cut through."""
        if self.closed is not None:
            return french(_ROOM + 10) if self.closed is Closed.FRENCH else felled(_ROOM + 10)
        if self.pressed is Pressed.OPEN:
            return pressed_open(*self.allowances)
        return (pressed_aside if self.pressed is Pressed.ASIDE else unpressed)(*self.allowances)

    @property
    def centre(self) -> int:
        """Where the seam line stands, in page units from the left."""
        return _CENTRE_OPEN if self.pressed is Pressed.OPEN and self.closed is None else _CENTRE

    @property
    def finished(self) -> bool:
        """Whether some step finishes both raw edges."""
        by_itself = self.closed is not None or self.row is Row.OVERLOCK
        return self.first.finished and self.second.finished and not by_itself


def describe(seam: SeamSection, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    one, other = seam.first, seam.second
    wide = (
        f"The seam allowance is {say(one.allowance)}."
        if seam.even
        else f"The allowance of the {one.called} is {say(one.allowance)}, that of the {other.called}"
        f" {say(other.allowance)}."
    )
    sewn = "" if _outside(seam) else f" and are sewn with {_row_words(seam)}, measured from the raw edge"
    parts = [f"Above: {_pair(seam)} lie {_together(seam).replace('first, ', '')} sides together{sewn}. {wide}"]
    if _outside(seam):
        parts.append("Two rows of stitches take it up; the seam line is that of the finished seam.")
    if seam.closed is not None:
        parts.append(f"Below, cut through: the finished {seam.closed.value}, in which both raw edges are closed in.")
    elif seam.pressed is Pressed.OPEN:
        parts.append("Below, cut through: the allowances are pressed open, each under its own piece.")
    elif seam.pressed is Pressed.ASIDE:
        parts.append(f"Below, cut through: both allowances are pressed {seam.press}, under the piece on the right.")
    else:
        parts.append("Below: the same, cut through.")
    if seam.row is Row.OVERLOCK:
        parts.append("The overlock stitch runs round the raw edges.")
    elif seam.finished:
        how = "together, by one row of stitches" if seam.together else "each by itself"
        parts.append(f"The raw edges are finished {how}, so that they do not fray.")
    if seam.hidden and seam.closed is None:
        parts.append(f"The raw edges disappear {seam.hidden}.")
    true = "The allowance is to scale" if seam.closed is not None else "Widths are to scale"
    parts.append(f"{true}; the thickness of the cloth is not.")
    return " ".join(parts)


def draw(seam: SeamSection, *, first: System = System.INCHES) -> Drawing:
    """The seam from above and cut through, at one scale; a closed seam is cut through at no scale."""
    face = View(seam.scale, tuple(_face(seam, first)), right=seam.centre)
    section = View(
        seam.scale, tuple(_section(seam, first)), right=seam.centre, down=_FACE + _BETWEEN + _more_lines(seam)
    )
    return Drawing(capital(f"{seam.called}: {_title(seam)}"), describe(seam, first=first), (face, section))


def _title(seam: SeamSection) -> str:
    if seam.closed is not None:
        return seam.closed.value
    pressed = f", pressed {seam.press}" if seam.pressed is not Pressed.NOT else ""
    return f"how it is sewn{pressed}"


def _pair(seam: SeamSection) -> str:
    one, other = seam.first.called, seam.second.called
    return f"two of the {one}" if one == other else f"the {one} and the {other}"


def _row_words(seam: SeamSection) -> str:
    return f"a row of {seam.stitch} stitches" if seam.stitch else "a row of stitches"


def _outside(seam: SeamSection) -> bool:
    """Whether the first row is sewn from the outside: how far inside the seam line is not known then."""
    return seam.closed is Closed.FRENCH


def _together(seam: SeamSection) -> str:
    return "first, wrong" if _outside(seam) else "right"


def _row_label(seam: SeamSection) -> str:
    if _outside(seam):
        return "finished seam line"
    return f"{seam.stitch} stitches" if seam.stitch else "stitches"


def _face(seam: SeamSection, first: System) -> list[Shape]:
    """Both layers from above, the wrong side of the upper one in sight, its raw edge on the right."""
    wide, reach = seam.second.allowance, max(seam.allowances)
    left = -BESIDE
    shapes: list[Shape] = [
        Label(f"{_together(seam)} sides together", at(), (Side.ABOVE,), gap=38, width=240, strong=True, leader=False),
    ]
    if reach > wide:
        shapes += [
            rectangle(at(wide), at(reach, down=_FACE), Role.RIGHT),
            Line(at(reach), at(reach, down=_FACE), Role.RAW),
        ]
    shapes += [
        rectangle(at(right=left), at(wide, down=_FACE), Role.RIGHT if _outside(seam) else Role.WRONG),
        Line(at(wide), at(wide, down=_FACE), Role.RAW),
        Line(at(right=left), at(right=left, down=_FACE), Role.BREAK),
        Line(at(right=left), at(reach), Role.BREAK),
        Line(at(right=left, down=_FACE), at(reach, down=_FACE), Role.BREAK),
        *_row(seam),
        _allowance(seam.second, at(), at(wide), first, (Side.ABOVE,), down=-9),
        Label(_row_label(seam), at(down=_FACE), (Side.BELOW,), gap=6, width=220, leader=False),
        Label("raw edges", at(wide, down=_FACE // 2), (Side.RIGHT,), width=70, gap=8),
    ]  # fmt: skip
    return shapes


def _row(seam: SeamSection) -> list[Shape]:
    """The row of stitches along the seam line, and the loops of an overlock up to the edge."""
    begin, end = at(down=2), at(down=_FACE - 2)
    if _outside(seam):
        return [Line(begin, end, Role.SEAM)]
    if seam.row is Row.ZIGZAG:
        return [Line(begin, end, Role.ZIGZAG)]
    row: list[Shape] = [Line(begin, end, Role.STITCH)]
    if seam.row is Row.OVERLOCK:
        wide = seam.second.allowance
        step = Fraction(_FACE - 8, 2 * _ROW_STEPS)
        loops = [
            at(wide if turn % 2 else ZERO, right=2 if turn % 2 else 0, down=4 + step * turn)
            for turn in range(2 * _ROW_STEPS + 1)
        ]
        row.append(path(loops, Role.ZIGZAG))
    return row


def _allowance(
    layer: Layer, start: Point, end: Point, first: System, places: tuple[Side, ...], *, down: Exact
) -> Dimension:
    number = Number(f"{layer.edge}.seam_allowance", layer.allowance)
    words = both_units(layer.allowance, first) if places else ""
    return Dimension(start, end, number, words, places, down=down, width=150)


def _section(seam: SeamSection, first: System) -> list[Shape]:
    courses = seam.courses
    shapes: list[Shape] = [_caption(seam), *courses.shapes, *_edges(seam)]
    shapes += _names(seam)
    foot = courses.foot
    if seam.closed is None:
        shapes += _widths(seam, first)
    shapes += legend_of_sides(
        at(right=14 - seam.centre, down=foot + (_LEGEND if seam.closed is None else _LEGEND // 2))
    )
    return shapes


def _more_lines(seam: SeamSection) -> Fraction:
    """Room for the words above the section that do not fit on one line, in page units."""
    caption = wrapped(_caption_words(seam), _CAPTION, strong=True)
    return Fraction(LINE_STEP, UNIT) * (len(caption) + _name_lines(seam) - 2)


def _name_lines(seam: SeamSection) -> int:
    names = (seam.first.called, seam.second.called)
    return max(len(wrapped(name, _NAME)) for name in names) if _names_above(seam) else 1


def _names_above(seam: SeamSection) -> bool:
    return seam.pressed is not Pressed.NOT and seam.closed is not Closed.FRENCH


def _caption(seam: SeamSection) -> Label:
    gap = 36 + LINE_STEP * (_name_lines(seam) - 1) // UNIT
    return Label(_caption_words(seam), at(), (Side.ABOVE,), gap=gap, width=_CAPTION, strong=True, leader=False)


def _caption_words(seam: SeamSection) -> str:
    if seam.closed is not None:
        return f"{seam.closed.value}, not to scale"
    return "cut through" if seam.pressed is Pressed.NOT else f"cut through, pressed {seam.press}"


def _names(seam: SeamSection) -> list[Shape]:
    """Which piece is which, above the cloth to either side of the seam line, or beside the layers that lie flat."""
    if not _names_above(seam):
        level = seam.courses.foot - Fraction(17, 2)
        return [
            Label(seam.second.called, at(right=-BESIDE), (Side.LEFT,), width=66, gap=4, leader=False),
            Label(seam.first.called, at(right=-BESIDE, down=level), (Side.LEFT,), width=66, gap=4, leader=False),
        ]
    spots = (seam.first.called, at(right=-_NAMES, down=-7)), (seam.second.called, at(right=_NAMES, down=-7))
    return [Label(called, spot, (Side.ABOVE,), width=_NAME, gap=4, leader=False) for called, spot in spots]


def _edges(seam: SeamSection) -> list[Shape]:
    """What is sewn round the raw edges, and what they are called."""
    raw = seam.courses.raw
    level = Fraction(raw[0].down + raw[1].down) / 2
    end = at(max(seam.allowances), right=_HOOK, down=level)
    if seam.row is Row.OVERLOCK:
        upper, lower = sorted(raw, key=lambda spot: spot.down)
        around = [overcast(upper, lower, 40)] if seam.even and seam.pressed is not Pressed.OPEN else []
        return [*around, Label("overlock stitches", end.moved(_ROUND_BOTH), _BESIDE_EDGE, width=_EDGE_WORDS)]
    words = "raw edges"
    shapes: list[Shape] = []
    if seam.finished:
        words = "finished edges"
        if seam.together and seam.pressed is not Pressed.OPEN and seam.even:
            upper, lower = sorted(raw, key=lambda spot: spot.down)
            label = Label(words, end.moved(_ROUND_BOTH), _BESIDE_EDGE, width=_EDGE_WORDS)
            return [overcast(upper, lower, _HOOK), label]
        ways = (-1, 1) if seam.pressed is Pressed.OPEN else (1, 1)
        shapes += [overcast(spot, spot, _HOOK, way=way) for spot, way in zip(raw, ways, strict=True)]
    if seam.closed is not None:
        beside = at(right=_ROOM + 31, down=_CLOSED_MIDDLE)
        words = f"raw edges {'closed' if seam.closed is Closed.FRENCH else 'folded'} in"
        return [Label(words, beside, (Side.RIGHT,), width=_EDGE_WORDS, gap=0, leader=False)]
    return [*shapes, Label(words, end, _BESIDE_EDGE, width=_EDGE_WORDS)]


def _widths(seam: SeamSection, first: System) -> list[Shape]:
    """The allowances from the stitches to the raw edges, under the lowest layer; two that are alike are said once."""
    foot = seam.courses.foot
    level = at(down=foot)
    one, other = at(seam.first.allowance, down=foot), at(seam.second.allowance, down=foot)
    below = (Side.BELOW,)
    if seam.pressed is Pressed.OPEN:
        left = at(-seam.first.allowance, down=foot)
        return [
            _allowance(seam.first, left, level, first, below, down=10),
            _allowance(seam.second, level, other, first, below if not seam.even else (), down=10),
        ]
    widths = [_allowance(seam.first, level, one, first, below if seam.even else (Side.LEFT,), down=10)]
    if not seam.even:
        widths.append(_allowance(seam.second, level, other, first, below, down=38))
    return list(widths)
