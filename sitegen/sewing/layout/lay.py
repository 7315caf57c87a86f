"""The cutting layout: how long a piece of cloth the pieces need, and where each of them lies."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from sitegen.sewing.layout.cut import Block, Cut, cuts_of
from sitegen.sewing.layout.parts import Cloth, Fold, LayoutPiece
from sitegen.sewing.layout.place import layout_of
from sitegen.sewing.layout.result import CannotLay, Layout, TooWide
from sitegen.sewing.layout.shape import Grid
from sitegen.sewing.layout.way import folded_way, open_way

TRIES = 2000
"""How many arrangements are begun for each part of a layout, unless the caller wants more."""


def lay_out(pieces: Sequence[LayoutPiece], cloth: Cloth, *, tries: int = TRIES) -> Layout | CannotLay:
    """The shortest layout found of all the ways in which the cloth may lie; of equal ones the simplest to cut.

    The pieces keep their grain, and on cloth with one way their head up. Same pieces, same layout, whatever the order
    they come in. ``least`` of the result holds for every way tried. If a piece is too wide for the cloth, says so and
    what width would do. Raises ValueError for two pieces of one name, or none at all.
    """
    found = each_way(pieces, cloth, tries=tries)
    layouts = [one for one in found if isinstance(one, Layout)]
    if not layouts:
        return min((one for one in found if isinstance(one, CannotLay)), key=lambda one: one.width_that_does)
    best = min(layouts, key=lambda one: one.length)
    lowest = min(layouts, key=lambda one: one.least)
    if cloth.folded is not None:
        return best
    return replace(best, least=lowest.least, reason=lowest.reason, least_holds_for=None)


def each_way(pieces: Sequence[LayoutPiece], cloth: Cloth, *, tries: int = TRIES) -> tuple[Layout | CannotLay, ...]:
    """The layout of every way in which the cloth may lie, the simplest first, each with its own bound."""
    names = [piece.name for piece in pieces]
    if not pieces or len(set(names)) < len(names):
        raise ValueError("a layout is of at least one piece, each with a name of its own")
    grid = Grid.of(pieces, cloth)
    cuts = [cut for piece in sorted(pieces, key=lambda one: one.name) for cut in cuts_of(piece, cloth, grid)]
    folds = tuple(Fold) if cloth.folded is None else (cloth.folded,)
    return tuple(_one_way(cuts, fold, cloth, grid, tries) for fold in folds)


def _one_way(cuts: Sequence[Cut], fold: Fold, cloth: Cloth, grid: Grid, tries: int) -> Layout | CannotLay:
    too_wide = _too_wide(cuts, fold, cloth, grid)
    if too_wide:
        return CannotLay(fold, cloth.width, too_wide)
    width = grid.whole(cloth.layer(Fold.OPEN))
    if fold is Fold.OPEN:
        return layout_of(open_way(cuts, width, tries), fold, cloth, grid)
    strips = (grid.whole(cloth.layer(fold)),) * (2 if fold is Fold.DOUBLE else 1)
    return layout_of(folded_way(cuts, strips, width, tries), fold, cloth, grid)


def _too_wide(cuts: Sequence[Cut], fold: Fold, cloth: Cloth, grid: Grid) -> tuple[TooWide, ...]:
    """The pieces that do not fit the cloth, each once, with the width that would do."""
    found: dict[str, TooWide] = {}
    for cut in cuts:
        block, lies = _widest(cut, fold)
        across = grid.length(min(block.across, block.along) if block.turns else block.across)
        if across > cloth.layer(lies):
            name = block.members[0].piece
            opened = lies is Fold.OPEN and fold is not Fold.OPEN
            found[name] = TooWide(name, across, cloth.wide_enough(across, lies), opened)
    return tuple(found.values())


def _widest(cut: Cut, fold: Fold) -> tuple[Block, Fold]:
    """Where a piece needs its width: on the fold if it must lie there, else on the open cloth."""
    if fold is not Fold.OPEN and cut.folded and cut.folded.at_fold:
        return cut.folded, fold
    return cut.opened[0], Fold.OPEN
