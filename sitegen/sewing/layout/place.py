"""From spots on strips, in whole numbers, back to the cloth: every piece by itself, in lengths."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sitegen.quantities import ZERO, Length
from sitegen.sewing.layout import shape
from sitegen.sewing.layout.cut import Block, Member
from sitegen.sewing.layout.parts import Cloth, Fold
from sitegen.sewing.layout.rectangles import Spot
from sitegen.sewing.layout.result import FoldSide, Layout, Placement, Section
from sitegen.sewing.layout.shape import Grid
from sitegen.sewing.layout.way import Way


def layout_of(way: Way, fold: Fold, cloth: Cloth, grid: Grid) -> Layout:
    """The layout, its placements in the order in which they lie. Cloth of which nothing lies folded is said to be open.

    What open cloth cannot do without, no fold can: whatever lies on folded cloth can be opened out with it.
    """
    sections: list[Section] = []
    placements: list[Placement] = []
    start = ZERO
    for number, part in enumerate(way.parts):
        lies = fold if part.folded else Fold.OPEN
        section = Section(lies, start, grid.length(part.packed.length), cloth.as_it_lies(lies))
        for spot in part.packed.spots:
            placements += _placements(part.blocks[spot.number], spot, number, section, cloth, grid)
        sections.append(section)
        start += section.length
    placements.sort(key=lambda each: (each.section, each.y, each.x, each.piece, each.copies))
    return Layout(
        fold=sections[0].fold,
        sections=tuple(sections),
        placements=tuple(placements),
        length=start,
        least=grid.length(way.least.length),
        reason=way.least.reason,
        least_holds_for=None if fold is Fold.OPEN else fold,
    )


def _placements(
    block: Block, spot: Spot, number: int, section: Section, cloth: Cloth, grid: Grid
) -> Iterator[Placement]:
    """The pieces of one block where they lie on the cloth."""
    members = block.members
    across = block.across
    if spot.turned:
        members = tuple(_quarter_turned(member, block.along) for member in members)
        across = block.along
    side = FoldSide.RIGHT if spot.strip else FoldSide.LEFT
    if block.at_fold and side is FoldSide.RIGHT:
        members = tuple(
            replace(member, outline=shape.turned_over(member.outline), turned_over=True) for member in members
        )
    left = grid.length(spot.x)
    if section.fold is Fold.OPEN:
        left += cloth.selvage
    elif spot.strip:
        left = section.width - grid.length(spot.x + across)
    low = section.start + grid.length(spot.y)
    for member in members:
        yield _placement(member, number, side if block.at_fold else None, left, low, grid)


def _placement(
    member: Member, number: int, at_fold: FoldSide | None, left: Length, low: Length, grid: Grid
) -> Placement:
    outline = tuple((left + grid.length(x), low + grid.length(y)) for x, y in member.outline)
    x, y = min(across for across, _ in outline), min(along for _, along in outline)
    return Placement(
        piece=member.piece,
        copies=member.copies,
        section=number,
        x=x,
        y=y,
        width=max(across for across, _ in outline) - x,
        height=max(along for _, along in outline) - y,
        turned=member.degrees,
        turned_over=member.turned_over,
        layers=member.layers,
        at_fold=at_fold,
        opened=member.whole_of_half,
        outline=outline,
    )


def _quarter_turned(member: Member, block_along: int) -> Member:
    """A piece once its block has been turned by 90°, anticlockwise."""
    outline = tuple((block_along - y, x) for x, y in member.outline)
    return replace(member, outline=outline, degrees=(member.degrees + 90) % 360)
