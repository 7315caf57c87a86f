"""The shapes of a drawing where they fall on the page, each spot rounded once to whole thousandths of a page unit.

Exact lengths end here: whoever places words and whoever writes lines reads the same whole numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.diagrams.drawing import HATCHED, Dimension, Label, Line, Path, Point, Shape, Turn, View
from sitegen.diagrams.geometry import SHORTEST, Segment, Spot, dimension_ends, half_circle, length_of
from sitegen.diagrams.text_boxes import UNIT, Box
from sitegen.quantities import Exact


@dataclass(frozen=True, slots=True)
class LineOnPage:
    """A straight line and its ends."""

    shape: Line
    ends: Segment

    @property
    def segments(self) -> tuple[Segment, ...]:
        """The straight pieces of which it is made."""
        return (self.ends,)


@dataclass(frozen=True, slots=True)
class PathOnPage:
    """A path, its first spot, and the spots after that with whether a half circle leads there, and which way round."""

    shape: Path
    start: Spot
    steps: tuple[tuple[Spot, Turn | None], ...]

    @property
    def segments(self) -> tuple[Segment, ...]:
        """The straight pieces of which it is made; a half circle counts as eight."""
        spots = [self.start]
        for spot, turn in self.steps:
            if turn is None:
                spots.append(spot)
            else:
                spots += half_circle(spots[-1], spot, clockwise=turn.clockwise)
        if self.shape.closed:
            spots.append(self.start)
        return tuple(pairwise(spots))

    @property
    def hatched(self) -> Box | None:
        """The box around an area that is told by hatching."""
        if self.shape.role not in HATCHED:
            return None
        xs, ys = zip(*(spot for segment in self.segments for spot in segment), strict=True)
        return Box(min(xs), min(ys), max(xs), max(ys))


@dataclass(frozen=True, slots=True)
class DimensionOnPage:
    """A dimension, its line, and the ticks or thin lines at its ends."""

    shape: Dimension
    line: Segment
    ends: tuple[Segment, Segment]

    @property
    def segments(self) -> tuple[Segment, ...]:
        """The straight pieces of which it is made."""
        return (self.line, *self.ends)


ShapeOnPage = LineOnPage | PathOnPage | DimensionOnPage


@dataclass(frozen=True, slots=True)
class ViewOnPage:
    """A view's shapes in place, and its labels with the spots that they name."""

    scale: Fraction
    shapes: tuple[ShapeOnPage, ...]
    labels: tuple[tuple[Label, Spot], ...]


def on_page(view: View) -> ViewOnPage:
    """A view in whole thousandths of a page unit. A dimension too short to see is left out, but not its label."""
    place = placing(view)
    shapes = tuple(found for shape in view.shapes if (found := _placed(shape, place)) is not None)
    return ViewOnPage(view.scale, shapes, tuple(_labels(view, place)))


def placing(view: View) -> Callable[[Point], Spot]:
    """What turns a spot of the view into its place on the page: the exact place, rounded once, halves to even."""
    top, bottom = (view.scale * UNIT).as_integer_ratio()
    origin = [(start * UNIT).as_integer_ratio() for start in (view.right, view.down)]

    def along(axis: int, cloth: Fraction, units: Exact) -> int:
        start, under = origin[axis]
        mm, mm_under = cloth.as_integer_ratio()
        aside, aside_under = units.as_integer_ratio()
        # One common denominator, never reduced: reducing costs more than all the rest.
        scaled_under = mm_under * bottom
        numerator = mm * top * under * aside_under + scaled_under * (start * aside_under + aside * UNIT * under)
        return _nearest(numerator, scaled_under * under * aside_under)

    return lambda point: (along(0, point.x.mm, point.right), along(1, point.y.mm, point.down))


def _nearest(numerator: int, denominator: int) -> int:
    """The whole number nearest to a fraction, halves to even, as ``round`` has it."""
    whole, rest = divmod(numerator, denominator)
    over = 2 * rest - denominator
    return whole + 1 if over > 0 or (over == 0 and whole % 2) else whole


def _placed(shape: Shape, place: Callable[[Point], Spot]) -> ShapeOnPage | None:
    if isinstance(shape, Line):
        return LineOnPage(shape, (place(shape.start), place(shape.end)))
    if isinstance(shape, Path):
        steps = tuple((place(step.to), step) if isinstance(step, Turn) else (place(step), None) for step in shape.steps)
        return PathOnPage(shape, place(shape.start), steps)
    if isinstance(shape, Dimension):
        aside = [end.moved(shape.right, shape.down) for end in (shape.start, shape.end)]
        line = place(aside[0]), place(aside[1])
        if length_of(line) >= SHORTEST:
            return DimensionOnPage(shape, line, dimension_ends((place(shape.start), place(shape.end)), line))
    return None


def _labels(view: View, place: Callable[[Point], Spot]) -> Iterator[tuple[Label, Spot]]:
    for shape in view.shapes:
        if isinstance(shape, Dimension | Label) and shape.text:
            label = shape.label if isinstance(shape, Dimension) else shape
            yield label, place(label.spot)
