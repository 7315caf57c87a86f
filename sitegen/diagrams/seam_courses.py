"""How the two layers of a seam run where it is cut through, once it is sewn and pressed.

Every course begins at the seam line, nothing across, and the layers lie below one another, the outside of the
garment above. Widths of allowances are true; what holds the layers apart is not.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.cloth_course import DOWN, LEFT, RIGHT, UP, Spot, course, flat, quarter
from sitegen.diagrams.drawing import Line, Point, Role, Shape, Turn, at, path
from sitegen.diagrams.folded_cloth import PITCH, THICKNESS
from sitegen.quantities import ZERO, Exact, Length

_HALF = Fraction(PITCH, 2)
_APART = Fraction(PITCH + THICKNESS + 3, 2)
_BEYOND = 9
_HOOK = Fraction(PITCH, 2)
BESIDE = 92
_BESIDE_OPEN = 82
"""Page units of cloth to either side of the seam line."""


@dataclass(frozen=True, slots=True)
class Courses:
    """The shapes of a seam cut through, the middle of each raw edge, how far the picture reaches down and beyond."""

    shapes: tuple[Shape, ...]
    raw: tuple[Point, ...]
    foot: Exact
    reach: Length = ZERO
    """How much cloth is shown beyond ``BESIDE`` to the right."""


def unpressed(one: Length, other: Length) -> Courses:
    """Right sides together: the second lies above, its wrong side up."""
    begin, raw = -BESIDE, (at(other), at(one, down=PITCH))
    above = course(flat(at(right=begin), raw[0], DOWN))
    below = course(flat(at(right=begin, down=PITCH), raw[1], UP))
    return Courses((*above, *below, *thread(at(), at(down=PITCH))), raw, PITCH + _HALF)


def pressed_open(one: Length, other: Length) -> Courses:
    """Each allowance lies under its own piece."""
    reach = max(one, other)
    shapes: list[Shape] = []
    raw = at(-one, down=PITCH), at(other, down=PITCH)
    for end, way, sign in ((raw[0], LEFT, -1), (raw[1], RIGHT, 1)):
        bend = at(right=sign * _APART, down=_HALF)
        inward = RIGHT if way is LEFT else LEFT
        spots = [
            *flat(at(reach * sign, right=sign * _BESIDE_OPEN), at(right=sign * _APART), UP),
            *quarter(bend, _HALF, UP, inward, right_side_out=True),
            *quarter(bend, _HALF, inward, DOWN, right_side_out=True),
            *flat(at(right=sign * _APART, down=PITCH), end, DOWN),
        ]
        shapes += course(spots)
    across = at(right=-_APART, down=_HALF), at(right=_APART, down=_HALF)
    return Courses((*shapes, *thread(*across)), raw, PITCH + _HALF, reach)


def pressed_aside(one: Length, other: Length) -> Courses:
    """Both allowances lie under the second piece, which is on the right."""
    bend = at(down=_HALF)
    raw = at(one, down=2 * PITCH), at(other, down=PITCH)
    second = [
        *flat(at(max(one, other), right=BESIDE), at(), UP),
        *quarter(bend, _HALF, UP, LEFT, right_side_out=True),
        *quarter(bend, _HALF, LEFT, DOWN, right_side_out=True),
        *flat(at(down=PITCH), raw[1], DOWN),
    ]
    shapes = (*course(_under(bend, _HALF, 3 * _HALF, raw[0])), *course(second))
    seam = thread(at(down=PITCH), at(down=2 * PITCH))
    return Courses((*shapes, *seam), raw, 2 * PITCH + _HALF, max(one, other))


def _under(centre: Point, rise: Exact, radius: Exact, end: Point) -> list[Spot]:
    """The first piece: level with the second, down along its bend, and under it to this end."""
    crest = centre.moved(-radius - rise)
    return [
        *flat(at(right=-BESIDE), crest.moved(down=-rise), UP),
        *quarter(crest, rise, UP, RIGHT, right_side_out=True),
        *quarter(centre, radius, LEFT, DOWN, right_side_out=False),
        *flat(centre.moved(down=radius), end, UP),
    ]


def french(width: int) -> Courses:
    """Both raw edges closed in between two rows of stitches; its widths are not known, so it is not to scale."""
    raw = tuple(at(right=16, down=PITCH * level) for level in (1, 2))
    shapes: list[Shape] = []
    for level, inner, side, other in ((0, 1, DOWN, UP), (3, 2, UP, DOWN)):
        centre = at(right=width, down=Fraction(PITCH * (level + inner), 2))
        first = UP if level == 0 else DOWN
        last = DOWN if level == 0 else UP
        shapes += course([
            *flat(at(right=-BESIDE, down=PITCH * level), at(right=width, down=PITCH * level), side),
            *quarter(centre, _HALF, first, RIGHT, right_side_out=False),
            *quarter(centre, _HALF, RIGHT, last, right_side_out=False),
            *flat(at(right=width, down=PITCH * inner), raw[inner - 1], other),
        ])  # fmt: skip
    rows = (
        *thread(at(), at(down=3 * PITCH)),
        *thread(at(right=width - 14, down=PITCH), at(right=width - 14, down=2 * PITCH)),
    )
    return Courses((*shapes, *rows), raw, 3 * PITCH + _HALF)


def felled(width: int) -> Courses:
    """One allowance folded round the other and sewn down; its widths are not known, so it is not to scale."""
    raw = at(right=width - 26, down=2 * PITCH), at(right=22, down=PITCH)
    bend = at(down=PITCH)
    second = [
        *flat(at(right=width + BESIDE), at(), UP),
        *quarter(bend, PITCH, UP, LEFT, right_side_out=True),
        *quarter(bend, PITCH, LEFT, DOWN, right_side_out=True),
        *flat(at(down=2 * PITCH), raw[0], DOWN),
    ]
    fold = at(right=width - 17, down=2 * PITCH)
    first = [
        *_under(bend, PITCH, 2 * PITCH, at(right=width - 17, down=3 * PITCH)),
        *quarter(fold, PITCH, DOWN, RIGHT, right_side_out=False),
        *quarter(fold, PITCH, RIGHT, UP, right_side_out=False),
        *flat(at(right=width - 17, down=PITCH), raw[1], DOWN),
    ]
    rows = (
        *thread(at(down=2 * PITCH), at(down=3 * PITCH)),
        *thread(at(right=width - 20), at(right=width - 20, down=3 * PITCH)),
    )
    return Courses((*course(first), *course(second), *rows), raw, 3 * PITCH + _HALF, ZERO)


def thread(start: Point, end: Point) -> list[Shape]:
    """A stitch through all layers between the middles of the first and the last, with its ends on the cloth."""
    upright = start.down != end.down
    right, down = (0, _BEYOND) if upright else (_BEYOND, 0)
    begin, finish = start.moved(-right, -down), end.moved(right, down)
    bar = (3, 0) if upright else (0, 3)
    return [
        Line(begin, finish, Role.THREAD),
        *(Line(spot.moved(-bar[0], -bar[1]), spot.moved(*bar), Role.THREAD) for spot in (begin, finish)),
    ]


def overcast(first: Point, last: Point, depth: int, *, way: int = 1) -> Shape:
    """Thread round the raw edges of all layers from the first to the last, so many page units into the cloth.

    ``way`` is 1 for edges that look right, -1 for edges that look left.
    """
    upper, lower = first.moved(4 * way, -_HOOK), last.moved(4 * way, _HOOK)
    into = -(depth + 4) * way
    turn = Turn(lower, clockwise=way > 0)
    return path((upper.moved(into), upper, turn, lower.moved(into)), Role.THREAD)
