"""From the pieces wanted to the blocks that are laid: what one cut through one or two layers gives.

From doubled cloth one cut gives a left and a right piece, or two that are alike if the other face of the piece
is the same. A single piece is cut from one layer: as a rule where the cloth lies open, after the folded part;
on the folded part the layer under it stays unused. A piece on the fold is laid out whole on open cloth.
Source: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from sitegen.sewing.layout import shape
from sitegen.sewing.layout.parts import Cloth, LayoutPiece
from sitegen.sewing.layout.shape import Grid, Shape


@dataclass(frozen=True, slots=True)
class Member:
    """One paper piece as it lies within a block, and how it got there: first turned over, then by so many degrees.

    ``copies`` are the numbers of the pieces of cloth that it gives. Degrees are anticlockwise.
    """

    piece: str
    copies: tuple[int, ...]
    outline: Shape
    layers: int = 1
    degrees: int = 0
    turned_over: bool = False
    whole_of_half: bool = False


@dataclass(frozen=True, slots=True)
class Block:
    """What is laid as one rectangle: one piece, or several that were put together before.

    ``may_turn``: head to foot is allowed; ``turns``: so is a quarter turn. ``is_box``: the piece fills its rectangle.
    ``bias_step``: how far across and along a further copy of a bias piece lies beside this one, nothing for others.
    """

    members: tuple[Member, ...]
    at_fold: bool = False
    may_turn: bool = False
    turns: bool = False
    bias_step: int = 0
    is_box: bool = True

    @property
    def across(self) -> int:
        """The width of the rectangle."""
        return max(x for member in self.members for x, _ in member.outline)

    @property
    def along(self) -> int:
        """The length of the rectangle."""
        return max(y for member in self.members for _, y in member.outline)

    @property
    def twice_area(self) -> int:
        """Twice the area that the pieces cover."""
        return sum(shape.twice_area(shape.to_corner(member.outline)) for member in self.members)


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut from folded cloth, None if the fold cannot give it, and what stands for it on open cloth.

    ``single``: on folded cloth it would leave a layer unused.
    """

    folded: Block | None
    opened: tuple[Block, ...]
    single: bool = False


def cuts_of(piece: LayoutPiece, cloth: Cloth, grid: Grid) -> list[Cut]:
    """All the cuts that give the wanted number of a piece."""
    half = grid.shape(piece)
    may_turn = piece.rotate and not cloth.one_way
    block = Block(
        members=(),
        may_turn=may_turn,
        turns=piece.crosswise and not cloth.one_way and not piece.bias,
        bias_step=shape.on_diagonal(shape.box(half)[0] * (2 if piece.on_fold else 1)) if piece.bias else 0,
        is_box=piece.outline is None and not piece.bias,
    )
    if piece.on_fold:
        return [_on_fold(piece, block, half, number) for number in range(1, piece.count + 1)]
    alike = shape.same_turned_over(half, head_to_foot_allowed=may_turn)
    pairs = piece.count // 2 if piece.mirrored or alike else 0
    cuts = [_pair(piece, block, half, 2 * number) for number in range(1, pairs + 1)]
    for number in range(2 * pairs + 1, piece.count + 1):
        single = replace(block, members=(_member(piece, (number,), half),))
        cuts.append(Cut(single, (single,), single=True))
    return cuts


def _on_fold(piece: LayoutPiece, block: Block, half: Shape, number: int) -> Cut:
    """One whole piece, cut as half on the fold. The fold runs with the grain, so a bias piece is laid out whole."""
    whole = _member(piece, (number,), shape.unfolded(half), whole_of_half=True)
    opened = (replace(block, members=(whole,)),)
    if piece.bias:
        return Cut(None, opened)
    on_fold = Member(piece.name, (number,), half, layers=2)
    return Cut(replace(block, members=(on_fold,), at_fold=True, turns=False), opened)


def _pair(piece: LayoutPiece, block: Block, half: Shape, last: int) -> Cut:
    """Two pieces at one cut; on open cloth two cuts, the second with the paper turned over if they are mirrored."""
    first = _member(piece, (last - 1,), half)
    second = _member(piece, (last,), half, turned_over=piece.mirrored)
    both = replace(first, copies=(last - 1, last), layers=2)
    return Cut(replace(block, members=(both,)), tuple(replace(block, members=(one,)) for one in (first, second)))


def _member(
    piece: LayoutPiece,
    copies: tuple[int, ...],
    outline: Shape,
    *,
    turned_over: bool = False,
    whole_of_half: bool = False,
) -> Member:
    """A piece in one layer. On the bias a piece that is turned over leans to the other side, as a mirror shows it."""
    laid = shape.on_bias(outline) if piece.bias else outline
    degrees = (315 if turned_over else 45) if piece.bias else 0
    return Member(
        piece.name,
        copies,
        shape.turned_over(laid) if turned_over else laid,
        degrees=degrees,
        turned_over=turned_over,
        whole_of_half=whole_of_half,
    )
