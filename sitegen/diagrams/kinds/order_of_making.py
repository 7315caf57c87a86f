"""A map of the steps: what must come before what, and what can be done at the same time."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from sitegen.diagrams.drawing import CannotDraw, Drawing, Label, Line, Point, Role, Shape, Side, View, at, rectangle
from sitegen.diagrams.order_map import Arrow, Lane, OrderMap, StepBox, order_map, text_room

_TIP = 9
_KEY = 22
_KEY_ROW = 20
_FEWEST = 2
_MOST = 40


@dataclass(frozen=True)
class OrderOfMaking:
    """The titles of the steps by their numbers, the arrows between them, and which can be done at the same time.

    Raises ``CannotDraw`` for fewer than two steps or more than forty.
    """

    titles: Mapping[int, str]
    arrows: tuple[Arrow, ...]
    together: tuple[tuple[int, int], ...] = ()

    def __post_init__(self) -> None:
        if not can_show(len(self.titles)):
            raise CannotDraw(f"a map of steps shows from {_FEWEST} to {_MOST} of them")

    @cached_property
    def words(self) -> dict[int, str]:
        """What stands in each box."""
        return {number: f"{number}. {title}" for number, title in self.titles.items()}

    @cached_property
    def map(self) -> OrderMap:
        """Where everything stands."""
        return order_map(self.words, self.arrows)


def can_show(steps: int) -> bool:
    """Whether a map can show so many steps."""
    return _FEWEST <= steps <= _MOST


def describe(order: OrderOfMaking) -> str:
    """The map in words."""
    parts = ["The steps from first to last, with an arrow from each to those that wait for it."]
    for step in sorted(order.titles):
        needs = sorted(arrow.before for arrow in order.arrows if arrow.after == step and arrow.sure)
        follows = sorted(arrow.before for arrow in order.arrows if arrow.after == step and not arrow.sure)
        waits = [f"needs {_listed(needs)}"] if needs else []
        waits += [f"follows {_listed(follows)}"] if follows else []
        parts.append(f"Step {step}, {order.titles[step]}{': ' + ' and '.join(waits) if waits else ''}.")
    parts += [f"Steps {one} and {other} can be done at the same time." for one, other in order.together]
    return " ".join(parts)


def draw(order: OrderOfMaking) -> Drawing:
    """The steps in rows, what can be done at the same time beside each other."""
    found = order.map
    shapes: list[Shape] = []
    for lane in found.lanes:
        shapes += _lane(lane, found)
    for arrow in found.short:
        shapes += _short(arrow, order)
    shapes += [_box(box) for box in found.boxes.values()]
    shapes += [_words(order.words[step], box) for step, box in found.boxes.items()]
    shapes += _key(order)
    return Drawing("The order of making", describe(order), (View(Fraction(1), tuple(shapes)),))


def _listed(steps: list[int]) -> str:
    return f"step{'s' if len(steps) > 1 else ''} {' and '.join(map(str, steps))}"


def _box(box: StepBox) -> Shape:
    return rectangle(at(right=box.left, down=box.top), at(right=box.left + box.width, down=box.foot), Role.CUT)


def _words(words: str, box: StepBox) -> Label:
    spot = at(right=box.middle, down=Fraction(box.top + box.foot, 2))
    return Label(words, spot, (Side.CENTRE,), width=text_room(box.width), leader=False)


def _shaft(start: Point, end: Point, sure: bool) -> Line:
    return Line(start, end, Role.TICK if sure else Role.JOIN)


def _arrow(start: Point, end: Point, sure: bool) -> list[Shape]:
    """A line with a head at its end, dotted before the head where only the author's order is kept."""
    if sure:
        return [Line(start, end, Role.ARROW)]
    right, down = end.right - start.right, end.down - start.down
    part = 1 - Fraction(_TIP) / max(abs(Fraction(right)), abs(Fraction(down)))
    neck = start.moved(right * part, down * part)
    return [_shaft(start, neck, sure), Line(neck, end, Role.ARROW)]


def _short(arrow: Arrow, order: OrderOfMaking) -> list[Shape]:
    """From the lower edge of a box to the upper edge of one in the next row, arrows side by side where they meet."""
    boxes, short = order.map.boxes, order.map.short
    out = sorted((each.after for each in short if each.before == arrow.before), key=lambda step: boxes[step].left)
    into = sorted((each.before for each in short if each.after == arrow.after), key=lambda step: boxes[step].left)
    one, other = boxes[arrow.before], boxes[arrow.after]
    start = at(right=_share(one, out.index(arrow.after), len(out)), down=one.foot)
    end = at(right=_share(other, into.index(arrow.before), len(into)), down=other.top)
    return _arrow(start, end, arrow.sure)


def _share(box: StepBox, place: int, count: int) -> Fraction:
    return box.left + Fraction(box.width * (place + 1), count + 1)


def _lane(lane: Lane, found: OrderMap) -> list[Shape]:
    """Out of the left side of a box, or under it where another stands there, down beside the rows, and in again."""
    one = found.boxes[lane.before]
    leave = at(right=lane.across, down=_exit_level(one))
    shapes: list[Shape] = []
    if one.first:
        shapes.append(_shaft(at(right=one.left, down=leave.down), leave, lane.sure))
    else:
        corner = at(right=one.left + one.width // 4, down=one.foot)
        shapes += [_shaft(corner, at(right=corner.right, down=leave.down), lane.sure),
                   _shaft(at(right=corner.right, down=leave.down), leave, lane.sure)]  # fmt: skip
    lowest = leave.down
    for after in lane.afters:
        other = found.boxes[after]
        level = _entry_level(other)
        turn = at(right=lane.across, down=level)
        lowest = max(lowest, level)
        if other.first:
            shapes += _arrow(turn, at(right=other.left, down=level), lane.sure)
        else:
            over = at(right=other.left + other.width // 4, down=level)
            shapes += [_shaft(turn, over, lane.sure), *_arrow(over, at(right=over.right, down=other.top), lane.sure)]
    shapes.append(_shaft(leave, at(right=lane.across, down=lowest), lane.sure))
    return shapes


def _exit_level(box: StepBox) -> int:
    return box.top + box.height * 3 // 4 if box.first else box.foot + 10


def _entry_level(box: StepBox) -> int:
    return box.top + box.height // 4 if box.first else box.top - 14


def _key(order: OrderOfMaking) -> list[Shape]:
    """What the two kinds of arrows mean, as far as they are there."""
    kinds = {arrow.sure for arrow in order.arrows}
    words = {True: "needs what was made", False: "keeps this order"}
    shapes: list[Shape] = []
    level = order.map.foot + _KEY
    for sure in (True, False):
        if sure in kinds:
            begin, end = at(right=12, down=level), at(right=44, down=level)
            shapes += [*_arrow(begin, end, sure), Label(words[sure], end, (Side.RIGHT,), width=280, leader=False)]
            level += _KEY_ROW
    if any(not box.first for box in order.map.boxes.values()):
        words_beside = "side by side: can be done at the same time"
        shapes.append(Label(words_beside, at(right=12, down=level), (Side.RIGHT,), width=320, gap=0, leader=False))
    return shapes
