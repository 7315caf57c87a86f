"""One way of laying the cloth: the folded part first, then what is cut from one layer where the cloth lies open.

What cannot be cut from doubled cloth, because it is too wide for it or has no partner, goes to the part in one
layer. Where that makes the whole shorter, a single piece lies on the folded part all the same and the layer
under it stays unused. Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.sewing.layout import shape
from sitegen.sewing.layout.bound import Least, Reason, least
from sitegen.sewing.layout.cut import Block, Cut
from sitegen.sewing.layout.nest import can_gain, put_together
from sitegen.sewing.layout.pack import packed
from sitegen.sewing.layout.proof import Item
from sitegen.sewing.layout.rectangles import Packed, Rectangle

_MOST_SPLITS = 8
"""How many ways to share the single pieces between the two parts are compared."""
_TOGETHER = (2, 1000)
"""Most pieces put together in one block: pairs, and as many as fit the width."""
_TRACE = 1_000_000
"""Pieces turned 45° are taken larger than in truth by less than this part; for a bound they are taken smaller by it."""


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of cloth with the blocks on it and their spots; ``folded`` if the cloth lies folded there."""

    folded: bool
    blocks: tuple[Block, ...]
    packed: Packed
    least: Least


@dataclass(frozen=True, slots=True)
class Way:
    """A laid cloth: its parts in order, and the length that no layout of this way can do without."""

    parts: tuple[Part, ...]
    least: Least

    @property
    def length(self) -> int:
        """The length of all parts together."""
        return sum(part.packed.length for part in self.parts)


def open_way(cuts: Sequence[Cut], width: int, tries: int) -> Way:
    """Everything in one layer. Every block must fit the width."""
    part = _part(_opened(cuts), (width,), tries, folded=False)
    return Way((part,), part.least)


def folded_way(cuts: Sequence[Cut], strips: tuple[int, ...], width: int, tries: int) -> Way:
    """The folded part on these strips, and the part in one layer on the whole width.

    Pieces on the fold must fit the strips, all others the width.
    """
    fits = [cut.folded is not None and _fits(cut.folded, strips[0]) for cut in cuts]
    doubled = [cut for cut, does in zip(cuts, fits, strict=True) if does and not cut.single]
    singles = [cut for cut, does in zip(cuts, fits, strict=True) if does and cut.single]
    singles.sort(key=lambda cut: -cut.opened[0].twice_area)
    only_open = [cut for cut, does in zip(cuts, fits, strict=True) if not does]
    step = max(1, -(-len(singles) // _MOST_SPLITS))
    splits = [
        (doubled + singles[count:], only_open + singles[:count])
        for count in sorted({*range(0, len(singles), step), len(singles)}, reverse=True)
    ]
    folded, opened = min(splits, key=lambda split: _quick(split, strips, width)) if len(splits) > 1 else splits[0]
    parts = (
        _part(_folded(folded), strips, tries, folded=True),
        _part(_opened(opened), (width,), tries, folded=False),
    )
    way = Way(tuple(part for part in parts if part.blocks), parts[0].least)
    bounds = [_bound_of_parts(parts, doubled, only_open, strips, width)]
    if opened or singles:
        bounds.append(least(_items(_opened(cuts), width), width, 1, way.length))
    return Way(way.parts, max(bounds, key=lambda bound: bound.length))


def _bound_of_parts(
    parts: tuple[Part, Part], doubled: Sequence[Cut], only_open: Sequence[Cut], strips: tuple[int, ...], width: int
) -> Least:
    """What the pieces that must lie on the folded part need there, and those that must not, behind it."""
    folded, opened = (part.packed.length for part in parts)
    first = least(_items(_folded(doubled), strips[0]), strips[0], len(strips), folded)
    second = least(_items(_opened(only_open), width), width, 1, opened)
    if not first.length or not second.length:
        return first if first.length else second
    return Least(first.length + second.length, Reason.PARTS)


def _quick(split: tuple[Sequence[Cut], Sequence[Cut]], strips: tuple[int, ...], width: int) -> int:
    """The length of both parts, found with few tries."""
    parts = ((_folded(split[0]), strips), (_opened(split[1]), (width,)))
    return sum(
        min(packed(_rectangles(variant), across, tries=0).length for variant in _variants(blocks, across[0]))
        for blocks, across in parts
    )


def _part(blocks: list[Block], strips: tuple[int, ...], tries: int, *, folded: bool) -> Part:
    """The shortest arrangement found, of the blocks as they are or put together."""
    variants = _variants(blocks, strips[0])
    found = [(packed(_rectangles(variant), strips, tries=0), variant) for variant in variants]
    used = min(arrangement.length for arrangement, _ in found)
    bound = least(_items(blocks, strips[0]), strips[0], len(strips), used)
    if used > bound.length:
        share = tries // len(variants)
        found += [
            (packed(_rectangles(variant), strips, tries=share, least=bound.length), variant) for variant in variants
        ]
    best, laid = min(found, key=lambda each: each[0].length)
    return Part(folded, tuple(laid), best, bound)


def _variants(blocks: list[Block], width: int) -> list[list[Block]]:
    """The blocks as they are, and put together in pairs and in rows where that could save cloth."""
    if not can_gain(blocks):
        return [blocks]
    return [blocks, *(put_together(blocks, width, most) for most in _TOGETHER)]


def _folded(cuts: Sequence[Cut]) -> list[Block]:
    return [cut.folded for cut in cuts if cut.folded]


def _opened(cuts: Sequence[Cut]) -> list[Block]:
    return [block for cut in cuts for block in cut.opened]


def _fits(block: Block, width: int) -> bool:
    return block.across <= width or (block.turns and block.along <= width)


def _rectangles(blocks: Sequence[Block]) -> list[Rectangle]:
    return [Rectangle(block.across, block.along, block.at_fold, block.turns) for block in blocks]


def _items(blocks: Sequence[Block], width: int) -> list[Item]:
    """The blocks as the bound sees them; one that fits the width only a quarter turned is seen so."""
    items = []
    for block in blocks:
        across, along = block.across, block.along
        if across > width:
            across, along = along, across
        if block.bias_step:
            across, along = (side - side // _TRACE - 1 for side in (across, along))
        on_fold = shape.fold_edge(block.members[0].outline) if block.at_fold else 0
        items.append(Item(across, along, block.twice_area, block.is_box, on_fold, block.turns))
    return items
