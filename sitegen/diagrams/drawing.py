"""The shapes of a diagram: what grows with the cloth in exact lengths, what does not in page units.

A page unit is one pixel on a phone of the width ``PAGE_WIDTH``. Nothing here is rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from sitegen.quantities import ZERO, Exact, Length

PAGE_WIDTH = 350
"""Page units across a picture: as many as a narrow phone has pixels beside its margins."""

TRUE_SCALE = Fraction(480, 127)
"""Page units to the millimetre at which a picture prints as large as the cloth: a CSS pixel is 1/96 in (CSS Values and
Units Module Level 4, W3C), and 1 in is 25.4 mm."""

MARGIN = 8
"""Page units kept free of everything at each edge of a picture."""

TEXT_SIZE = 13
"""Page units from line to line of text, less the space between lines."""


class CannotDraw(ValueError):  # noqa: N818 - reads as what happened, not as a program's fault
    """Numbers of which no true picture can be made, and why, in plain words."""


class Role(Enum):
    """What a shape is. The value names its class in the SVG; colour alone never tells two roles apart."""

    CUT = "cut"
    FOLD = "fold"
    SEAM = "seam"
    STITCH = "stitch"
    ZIGZAG = "zigzag"
    THREAD = "thread"
    RAW = "raw"
    BREAK = "break"
    GRAIN = "grain"
    ARROW = "arrow"
    MARK = "mark"
    JOIN = "join"
    OLD = "old"
    TRUED = "trued"
    RIGHT = "right"
    WRONG = "wrong"
    PAPER = "paper"
    TICK = "tick"


HATCHED = (Role.WRONG, Role.PAPER)
"""Areas that are told by hatching."""


class Side(Enum):
    """Where a label may stand, seen from the spot that it names."""

    CENTRE = "centre"
    ABOVE = "above"
    BELOW = "below"
    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Point:
    """A spot: so far across and down the cloth, then so many page units right and down, whatever the scale."""

    x: Length = ZERO
    y: Length = ZERO
    right: Exact = 0
    down: Exact = 0

    def moved(self, right: Exact = 0, down: Exact = 0) -> Point:
        """The spot so many page units further right and down."""
        return Point(self.x, self.y, self.right + right, self.down + down)


def at(x: Length = ZERO, y: Length = ZERO, right: Exact = 0, down: Exact = 0) -> Point:
    """A spot on the cloth, set off by page units."""
    return Point(x, y, right, down)


@dataclass(frozen=True, slots=True)
class Number:
    """A number of the tutorial that a drawn length stands for, by its reference name."""

    name: str
    value: Length


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line. With a number it must be exactly as long as the number; ValueError otherwise."""

    start: Point
    end: Point
    role: Role
    number: Number | None = None

    def __post_init__(self) -> None:
        _must_be_true(self.start, self.end, self.number)


@dataclass(frozen=True, slots=True)
class Turn:
    """A half circle from the spot before to this one: a fold seen from its edge."""

    to: Point
    clockwise: bool


@dataclass(frozen=True, slots=True)
class Path:
    """A line through several spots, or an area when it is closed."""

    start: Point
    steps: tuple[Point | Turn, ...]
    role: Role
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a spot. ``places`` are the sides to try, best first; ``width`` in page units is where lines wrap.

    A line break in the text is kept. Words that cannot be mistaken need no leader when they stand far off.
    """

    text: str
    spot: Point
    places: tuple[Side, ...]
    width: int = 120
    gap: int = 5
    strong: bool = False
    leader: bool = True


@dataclass(frozen=True, slots=True)
class Dimension:
    """A measured distance: a line beside it, set off by page units, with ticks, and a label unless it has no text.

    It must be exactly as long as its number; ValueError otherwise.
    """

    start: Point
    end: Point
    number: Number
    text: str = ""
    places: tuple[Side, ...] = ()
    right: Exact = 0
    down: Exact = 0
    width: int = 120

    def __post_init__(self) -> None:
        _must_be_true(self.start, self.end, self.number)

    @property
    def label(self) -> Label:
        """The words of the dimension, at the middle of its line."""
        first, last = self.start, self.end
        right, down = Fraction(first.right + last.right) / 2, Fraction(first.down + last.down) / 2
        middle = Point((first.x + last.x) / 2, (first.y + last.y) / 2, right + self.right, down + self.down)
        return Label(self.text, middle, self.places, self.width, gap=7)


Shape = Line | Path | Label | Dimension


@dataclass(frozen=True, slots=True)
class View:
    """Shapes drawn at one scale, in page units to the millimetre of cloth, and where their origin stands."""

    scale: Fraction
    shapes: tuple[Shape, ...]
    right: Exact = 0
    down: Exact = 0


@dataclass(frozen=True, slots=True)
class Drawing:
    """A picture: its title, what it shows in words, and its views, the main one first.

    ``width`` is in page units. One of ``true_size`` keeps its size on paper; its main view must be at ``TRUE_SCALE``,
    ValueError otherwise.
    """

    title: str
    description: str
    views: tuple[View, ...]
    width: int = PAGE_WIDTH
    true_size: bool = False

    def __post_init__(self) -> None:
        if self.true_size and self.views[0].scale != TRUE_SCALE:
            raise ValueError("a picture of true size needs the true scale")


def path(points: Sequence[Point | Turn], role: Role, *, closed: bool = False) -> Path:
    """A line through these spots, in order."""
    start, *steps = points
    if not isinstance(start, Point):
        raise TypeError("a path starts at a spot, not with a turn")
    return Path(start, tuple(steps), role, closed)


def rectangle(corner: Point, opposite: Point, role: Role) -> Path:
    """An upright rectangle between two opposite corners."""
    across = Point(opposite.x, corner.y, opposite.right, corner.down)
    down = Point(corner.x, opposite.y, corner.right, opposite.down)
    return path((corner, across, opposite, down), role, closed=True)


def fitting_scale(extent: Length, room: Exact) -> Fraction:
    """Page units to the millimetre so that the extent fits the room, to four true digits, rounded down.

    Raises ``CannotDraw`` when there is nothing to fit.
    """
    if extent <= ZERO:
        raise CannotDraw("there is no length to draw")
    top, bottom = (Fraction(room) / extent.mm).as_integer_ratio()
    tens = 1
    while top * tens < 1000 * bottom:
        tens *= 10
    return Fraction(top * tens // bottom, tens)


def _must_be_true(start: Point, end: Point, number: Number | None) -> None:
    if number is None:
        return
    across, along = end.x - start.x, end.y - start.y
    level = (start.right, start.down) == (end.right, end.down)
    # Most lines are upright or level; squares of exact numbers are slow.
    if across and along:
        true = across.mm**2 + along.mm**2 == number.value.mm**2
    else:
        true = abs(across or along) == abs(number.value)
    if not (level and true):
        raise ValueError(f"the line drawn for {number.name} is not as long as its number")
