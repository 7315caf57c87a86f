"""Bias strips: how wide, how long, out of how much cloth.

Strips run at 45° to the grain. Sources: common practice, no source; geometry of squares and strips.
"""

from __future__ import annotations

from enum import Enum

from sitegen.quantities import Length, Rounding, Term, Worked, given, minus, over, plus, rectangle, times, work
from sitegen.sewing import counting, geometry

TWO_HALVES = given("halves of the diagonal", 2)


class Binding(Enum):
    """A kind of binding, by its plain name and how often its finished width goes into the strip."""

    SINGLE_FOLD = ("single-fold", 2)
    """Both raw edges folded in to the middle; lies on one side, as a facing."""
    DOUBLE_FOLD = ("double-fold", 4)
    """The same folded once more, to wrap an edge."""
    FRENCH = ("double-layer", 6)
    """Folded in half first and sewn on in two layers."""

    def __init__(self, word: str, widths: int) -> None:
        self.word = word
        self.widths = widths


def strip_width(name: str, finished: Worked, binding: Binding, turn_of_cloth: Worked | None = None) -> Worked:
    """The width to cut: 2, 4 or 6 times the finished width, and what thick cloth takes to go round an edge."""
    widths = work(f"{binding.word} strip", finished, times(given("widths in the strip", binding.widths)))
    return work(name, widths, plus(turn_of_cloth)) if turn_of_cloth else widths.named(name)


def area(name: str, length: Worked, width: Worked) -> Worked:
    """The cloth in a strip: length × width."""
    return work(name, length, times(width))


def square_side(name: str, length: Worked, width: Worked) -> Worked:
    """The side of the square with as much cloth as the strip: the root of length × width.

    Right to a millionth of a millimetre. It allows nothing for joins, nor for a narrower strip left over.
    """
    side = Length(geometry.root(rectangle(length.length, width.length).mm2))
    terms = (Term("the square root of", 1, length), Term("×", 1, width))
    return Worked(name, side, terms, "joins and a last narrow strip not counted", Rounding.ENOUGH)


def strip_length(name: str, side: Worked, width: Worked) -> Worked:
    """The length of strip that a square of cloth makes, by area: side × side ÷ width.

    More than one gets in practice: see ``sewn_length``. Raises ValueError when the width is not above zero.
    """
    if width.length.mm <= 0:
        raise ValueError(f"{width.name} must be wider than nothing")
    cloth = area("cloth in the square", side, side)
    length = rectangle(side.length, side.length).along(width.length)
    terms = (Term("", 1, cloth), Term(counting.DIVIDED_BY, 1, width))
    return Worked(name, length, terms, "by area; joins and a last narrow strip not counted")


def diagonal(name: str, side: Worked) -> Worked:
    """The length of a 45° line across a square of this side or a strip of this width: the slanted end of a strip."""
    return geometry.slant(name, side, side)


def joined_side(name: str, side: Worked, allowance: Worked) -> Worked:
    """The side of the square to which the parallelogram answers once the two triangles are joined: side less allowance.

    Cut a square from corner to corner, join two straight sides so that the edges cross at the seam line: the
    bias edges then lie (side − allowance) ÷ √2 apart and are (side − allowance) × √2 long.
    Raises ValueError when the allowance leaves nothing.
    """
    joined = work(name, side, minus(allowance))
    if joined.length.mm <= 0:
        raise ValueError(f"{allowance.name} leaves nothing of {side.name}")
    return joined


def whole_strips(name: str, side: Worked, width: Worked, allowance: Worked) -> Worked:
    """How many strips of full width lie side by side in a square that was cut across and joined to a parallelogram.

    Raises ValueError when the width is not above zero.
    """
    return counting.fitting(name, _across(side, allowance), width)


def left_over(name: str, side: Worked, width: Worked, allowance: Worked) -> Worked:
    """The width of the last strip, too narrow to use. Raises ValueError when the width is not above zero."""
    strips = whole_strips("whole strips", side, width, allowance)
    return work(name, _across(side, allowance), minus(work("width of the whole strips", width, times(strips))))


def sewn_length(name: str, side: Worked, width: Worked, allowance: Worked) -> Worked:
    """The length of joined strip that a square makes in practice: whole strips end to end, less what every join takes.

    Nothing when the square is too small for one strip. Raises ValueError when the width is not above zero.
    """
    strips = whole_strips("whole strips", side, width, allowance)
    each = diagonal("one strip", joined_side("square once joined", side, allowance))
    if not strips.number:
        return work(name, each, times(strips))
    laid = work("strips end to end", each, times(strips))
    joins = work("joins", strips, minus(given("strip at the end", 1)))
    return work(name, laid, minus(work("taken by the joins", slanted_join("join", allowance), times(joins))))


def slanted_join(name: str, allowance: Worked) -> Worked:
    """What a join of two slanted ends takes from the length: both allowances, measured along the strip at 45°."""
    return work(name, diagonal("allowance along the strip", allowance), times(given("ends in a join", 2)))


def square_join(name: str, width: Worked) -> Worked:
    """What a join of two square ends takes, laid at right angles and sewn across the corner: the width of the strip."""
    return width.named(name).noted("half of the width from each end")


def strips_needed(name: str, need: Worked, each: Worked, join: Worked) -> Worked:
    """How many strips to join for a length: the first whole, each further one less what its join takes.

    Raises ValueError when one strip is too short and gains nothing by a join.
    """
    if need.length <= each.length:
        return given(name, 1, "one strip is long enough")
    gained = work("gained by each strip", each, minus(join))
    return counting.enough(name, work("length needed, and one join", need, minus(join)), gained)


def binding_length(name: str, edge: Worked, overlap: Worked, join: Worked | None = None, joins: int = 0) -> Worked:
    """The strip to cut in all for an edge: the edge, the overlap of its ends and what the joins, if any, take.

    Raises ValueError for fewer joins than none.
    """
    taken = [plus(join, joins)] if counting.at_least(0, "joins", joins) and join is not None else []
    return work(name, edge, plus(overlap), *taken)


def _across(side: Worked, allowance: Worked) -> Worked:
    joined = joined_side("square once joined", side, allowance)
    return work("distance between the bias edges", diagonal("diagonal of the joined square", joined), over(TWO_HALVES))
