"""Two edges of different length that are sewn together: both to one scale, with the marks at which they meet."""

from __future__ import annotations

from collections import Counter
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
    Role,
    Shape,
    Side,
    View,
    at,
    fitting_scale,
    rectangle,
)
from sitegen.diagrams.text_boxes import UNIT, block_size
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, Ratio, System, show_ratio

_ROOM = 318
_LEFT = 16
_CLOTH = 46
_APART = 48
_LOWER = _CLOTH + _APART
_FOOT = _LOWER + _CLOTH
_MARK = 9
_KEY = 66
_LEAST_MARKED = 34
"""Page units between two marks below which only the ends and the middle are joined."""


class Way(Enum):
    """How the longer edge comes to lie on the shorter one: what is done, and what the difference is called."""

    EASE = ("eased in", "to ease in")
    GATHER = ("gathered", "to gather in")
    PLEAT = ("pleated", "to fold away")
    STRETCH = ("stretched", "to stretch")

    def __init__(self, done: str, difference: str) -> None:
        self.done = done
        self.difference = difference


@dataclass(frozen=True, slots=True)
class EdgePart:
    """One edge: what it is called, the name of its number, its length."""

    called: str
    name: str
    length: Length


@dataclass(frozen=True)
class EdgeChain:
    """The edges of one side of a seam, one behind the other."""

    parts: tuple[EdgePart, ...]

    @cached_property
    def length(self) -> Length:
        """All together."""
        return sum((part.length for part in self.parts), ZERO)

    @property
    def name(self) -> str:
        """The names of its numbers, as a sum."""
        return " + ".join(part.name for part in self.parts)

    @property
    def called(self) -> str:
        """What its edges are called, each once."""
        counted = Counter(part.called for part in self.parts)
        return " and ".join(f"{count} × {called}" if count > 1 else called for called, count in counted.items())


@dataclass(frozen=True)
class EdgesMeeting:
    """The longer and the shorter side, and how they are brought together. Raises ``CannotDraw`` when they are alike."""

    longer: EdgeChain
    shorter: EdgeChain
    way: Way

    def __post_init__(self) -> None:
        if self.shorter.length <= ZERO or self.difference <= ZERO:
            raise CannotDraw("two edges of different length are needed")

    @property
    def difference(self) -> Length:
        """By how much the longer side is longer."""
        return self.longer.length - self.shorter.length

    @cached_property
    def share(self) -> str:
        """The difference as a share of the shorter side, in percent."""
        return show_ratio(Ratio(self.difference.over(self.shorter.length)))

    @cached_property
    def scale(self) -> Fraction:
        """Page units to the millimetre."""
        return fitting_scale(self.longer.length, _ROOM)

    @cached_property
    def marks(self) -> tuple[Fraction, ...]:
        """The marks that are joined, as shares of either side."""
        every = 1 if self.shorter.length.mm * self.scale >= 4 * _LEAST_MARKED else 2
        return tuple(Fraction(count, 4) for count in range(0, 5, every))

    @property
    def joined(self) -> str:
        """What the joined marks are called."""
        return "quarter marks" if len(self.marks) > 3 else "middle"


def describe(edges: EdgesMeeting, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    longer, shorter = edges.longer, edges.shorter
    parts = [
        f"Above: {_with_parts(longer, first)}. Below, to the same scale: {_with_parts(shorter, first)}.",
        f"The difference is {say(edges.difference)}, {edges.share} of the shorter side; the {_done(edges)}.",
        f"Dotted lines join the {edges.joined} and the ends of both.",
        "The width of the cloth is not to scale.",
    ]
    return " ".join(parts)


def draw(edges: EdgesMeeting, *, first: System = System.INCHES) -> Drawing:
    """The longer side above, the shorter below it, both from the same end on."""
    key = Label(
        f"Dotted: {edges.joined} and ends meet.", at(down=_FOOT + _KEY), (Side.RIGHT,), width=_ROOM, gap=0,
        leader=False,
    )  # fmt: skip
    shapes = (*_joins(edges), *_difference(edges, first), *_sides(edges, first), key)
    view = View(edges.scale, shapes, right=_LEFT)
    one, other = edges.longer.parts[0].called, edges.shorter.parts[0].called
    title = f"How the {one} meets the {other}" if one != other else f"How the edges of the {one} meet"
    return Drawing(capital(title), describe(edges, first=first), (view,))


def _done(edges: EdgesMeeting) -> str:
    if edges.way is Way.STRETCH:
        return f"{edges.shorter.called} is stretched to it while it is sewn, evenly from mark to mark"
    return f"{edges.longer.called} is {edges.way.done}, evenly from mark to mark"


def _with_parts(chain: EdgeChain, first: System) -> str:
    whole = f"the {chain.called}, {plain_both_units(chain.length, first)}"
    if len(chain.parts) == 1:
        return whole
    parts = ", ".join(f"{part.called} {plain_both_units(part.length, first)}" for part in chain.parts)
    return f"{whole} in all ({parts})"


def _sides(edges: EdgesMeeting, first: System) -> list[Shape]:
    shapes: list[Shape] = []
    for chain, top, edge, outer, side, way in (
        (edges.longer, 0, _CLOTH, 0, Side.ABOVE, -1),
        (edges.shorter, _LOWER, _LOWER, _FOOT, Side.BELOW, 1),
    ):
        whole = Number(chain.name, chain.length)
        words = f"{chain.called}\n{both_units(chain.length, first)}"
        shapes += [
            rectangle(at(down=top), at(chain.length, down=top + _CLOTH), Role.RIGHT),
            Line(at(down=edge), at(chain.length, down=edge), Role.CUT, whole),
            Line(at(down=outer), at(chain.length, down=outer), Role.BREAK),
            Line(at(down=top), at(down=top + _CLOTH), Role.SEAM),
            Line(at(chain.length, down=top), at(chain.length, down=top + _CLOTH), Role.SEAM),
            *_parts(chain, top, edges.scale, first),
            Dimension(
                at(down=outer), at(chain.length, down=outer), whole, words, (side,), down=12 * way, width=_ROOM,
            ),
        ]  # fmt: skip
    return shapes


def _parts(chain: EdgeChain, top: int, scale: Fraction, first: System) -> list[Shape]:
    """Where one edge of a side ends and the next begins, with the length of each where it has room."""
    if len(chain.parts) == 1:
        return []
    shapes: list[Shape] = []
    start = ZERO
    middle = top + (_CLOTH - _MARK) // 2 + (_MARK if top else 0)
    for part in chain.parts:
        end = start + part.length
        if start:
            shapes.append(Line(at(start, down=top), at(start, down=top + _CLOTH), Role.SEAM))
        words = f"{part.called}\n{both_units(part.length, first)}"
        if part.length.mm * scale * UNIT >= block_size(tuple(words.split("\n")))[0] + 6 * UNIT:
            spot = at((start + end) / 2, down=middle)
            shapes.append(Label(words, spot, (Side.CENTRE,), width=_ROOM, leader=False))
        start = end
    return shapes


def _joins(edges: EdgesMeeting) -> list[Shape]:
    shapes: list[Shape] = []
    for share in edges.marks:
        here, there = at(edges.longer.length * share, down=_CLOTH), at(edges.shorter.length * share, down=_LOWER)
        shapes += [
            Line(here, there, Role.JOIN),
            Line(here.moved(down=-_MARK), here, Role.MARK),
            Line(there, there.moved(down=_MARK), Role.MARK),
        ]
    return shapes


def _difference(edges: EdgesMeeting, first: System) -> list[Shape]:
    """How much further the longer side reaches, at the level of the shorter."""
    number = Number("difference", edges.difference)
    begin, end = at(edges.shorter.length, down=_FOOT), at(edges.longer.length, down=_FOOT)
    words = f"{edges.way.difference}\n{both_units(edges.difference, first)}, {edges.share}"
    return [
        Line(at(edges.longer.length, down=_CLOTH + 3), end.moved(down=12), Role.OLD),
        Dimension(begin, end, number, words, (Side.BELOW,), down=12, width=200),
    ]
