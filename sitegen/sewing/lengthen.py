"""Lengthening and shortening a piece across a line.

Sources: spread by the full amount, fold out half of it, true the edges, keep the grain line straight
(Central Washington Univ., costume construction text, chapter 17; New Mexico State Univ. Guide C-228). Where
no line is printed: at two thirds of a sleeve from the top (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.quantities import ZERO, Worked, given, minus, over, plus, times, work
from sitegen.sewing import counting, geometry

TWO_LAYERS = given("layers in a fold", 2)


def amount(name: str, wanted: Worked, present: Worked) -> Worked:
    """How much to add: wanted less present length, both finished or both cut; to take out if negative."""
    return work(name, wanted, minus(present))


def part_above(name: str, cut: Worked, share: Worked) -> Worked:
    """The part above a line that lies at a share of the cut length from the top."""
    return work(name, cut, times(share))


def other_part(name: str, cut: Worked, part: Worked) -> Worked:
    """The part on the other side of the line."""
    return work(name, cut, minus(part))


def new_length(name: str, present: Worked, change: Worked) -> Worked:
    """The length afterwards."""
    return work(name, present, plus(change))


def fold_depth(name: str, change: Worked) -> Worked:
    """The depth of the fold that shortens: half of the amount, since a fold takes up cloth twice."""
    positive = given("amount to take out", abs(change.length))
    return work(name, positive, over(TWO_LAYERS))


def shared(name: str, change: Worked, share: Worked) -> Worked:
    """What one of several lines takes of the whole amount: amount × its share.

    Source: above and below the elbow or the knee when much is added: common practice, no source.
    """
    return work(name, change, times(share))


def shared_equally(name: str, change: Worked, lines: int) -> Worked:
    """What each line takes of the whole amount when all take alike: amount ÷ lines.

    Source: common practice, no source. Raises ValueError for no lines.
    """
    return work(name, change, over(given("lines", counting.at_least(1, "lines", lines))))


def together(name: str, changes: Sequence[Worked]) -> Worked:
    """The whole amount of a change at several lines: the sum of the amounts at each; nothing where there is none.

    Source: arithmetic, every line adds its own amount to the same length.
    """
    if not changes:
        return given(name, ZERO)
    first, *others = changes
    return work(name, first, *(plus(other) for other in others)) if others else first.named(name)


def between(name: str, lower: Worked, upper: Worked) -> Worked:
    """How far one line lies below another: the part above the lower one less the part above the upper one.

    Source: arithmetic of the parts of the uncut piece.
    """
    return work(name, lower, minus(upper))


def slope(name: str, top: Worked, bottom: Worked, height: Worked, edges: int) -> Worked:
    """By how much one edge runs in for each unit of height: (top − bottom) ÷ sloping edges ÷ height."""
    return work(name, _run(top, bottom, edges), over(height))


def taper_step(name: str, change: Worked, edge_slope: Worked) -> Worked:
    """How far the two parts of a sloping edge miss each other once spread: amount × slope."""
    return work(name, change, times(edge_slope))


def trued_edge(name: str, top: Worked, bottom: Worked, height: Worked, edges: int, change: Worked) -> Worked:
    """The length of the new straight edge from the top of the taper to its bottom, after the change."""
    return geometry.slant(name, work("new height of the slope", height, plus(change)), _run(top, bottom, edges))


def edge_growth(top: Worked, bottom: Worked, height: Worked, edges: int, change: Worked) -> Worked:
    """How much longer a sloping edge becomes: the new straight edge less the old one."""
    run = _run(top, bottom, edges)
    old = geometry.slant("the slope before", height, run)
    new = geometry.slant("the slope afterwards", work("new height of the slope", height, plus(change)), run)
    return work("growth of the edge", new, minus(old))


def share_of_each(change: Worked, pieces: int) -> Worked:
    """What a widening adds to each of the pieces that it is spread over."""
    return work("added to each piece", change, over(given("pieces", pieces)))


def _run(top: Worked, bottom: Worked, edges: int) -> Worked:
    narrowing = work("narrowing", top, minus(bottom))
    return narrowing if edges == 1 else work("narrowing at each edge", narrowing, over(given("sloping edges", edges)))
