"""Pieces put together to one block before the layout, where that takes less cloth than their boxes side by side.

Bias strips lie side by side along their 45° line. Tapered pieces, such as sleeves or gores, lie head to foot,
slid together until they touch, only where cloth and piece allow it. Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations, pairwise

from sitegen.sewing.layout import shape
from sitegen.sewing.layout.cut import Block, Member


def put_together(blocks: Sequence[Block], width: int, most: int) -> list[Block]:
    """The blocks, with bias pieces in groups and tapered pieces in rows of at most so many, none wider than the width.

    What remains single of the tapered pieces is paired with another piece that lets it save cloth.
    """
    alike: dict[tuple[object, ...], list[Block]] = {}
    for block in blocks:
        alike.setdefault(_likeness(block), []).append(block)
    done: list[Block] = []
    for group in alike.values():
        if group[0].bias_step:
            done += _bias_groups(group, width, most)
        elif _can_nest(group[0]):
            done += _rows(group, width, most)
        else:
            done += group
    return _paired(done, width)


def can_gain(blocks: Sequence[Block]) -> bool:
    """Whether there is anything that could be put together."""
    return sum(1 for block in blocks if block.bias_step or _can_nest(block)) > 1


def _likeness(block: Block) -> tuple[object, ...]:
    """What blocks have in common that may be put together in one group."""
    member = block.members[0]
    leaning = member.degrees if block.bias_step else 0
    return member.piece, member.layers, len(member.copies), member.whole_of_half, leaning, block.at_fold


def _can_nest(block: Block) -> bool:
    return block.may_turn and not block.is_box and not block.at_fold and not block.bias_step


def _shares(blocks: Sequence[Block], most: int) -> list[Sequence[Block]]:
    """The blocks in as few groups of at most so many as need be, as equal as can be."""
    groups = -(-len(blocks) // most)
    bounds = [len(blocks) * number // groups for number in range(groups + 1)]
    return [blocks[begin:end] for begin, end in pairwise(bounds)]


def _bias_groups(blocks: Sequence[Block], width: int, most: int) -> list[Block]:
    """Copies of one bias piece, side by side along the 45° line."""
    first = blocks[0]
    step = first.bias_step
    fitting = max(1, 1 + (width - first.across) // step)
    return [_along_bias(share, step) for share in _shares(blocks, min(fitting, most))]


def _along_bias(blocks: Sequence[Block], step: int) -> Block:
    leans_left = blocks[0].members[0].turned_over
    members: list[Member] = []
    for number, block in enumerate(blocks):
        before = len(blocks) - 1 - number if leans_left else number
        members += _moved(block.members, step * before, step * number)
    return replace(blocks[0], members=tuple(members))


def _rows(blocks: Sequence[Block], width: int, most: int) -> list[Block]:
    """Copies of one tapered piece in rows that fit the width, or one by one if a row saves nothing."""
    fitting = 1
    while fitting < min(len(blocks), most) and _row(blocks[: fitting + 1]).across <= width:
        fitting += 1
    rows = [_row(share) for share in _shares(blocks, fitting)]
    saves = sum(map(_box, rows)) < sum(map(_box, blocks))
    return rows if saves else list(blocks)


def _row(blocks: Sequence[Block]) -> Block:
    """The blocks side by side, every second one head to foot, each slid to the left until it touches."""
    row = blocks[0]
    for number, block in enumerate(blocks[1:], start=1):
        row = _beside(row, _turned(block) if number % 2 else block)
    return row


def _paired(blocks: Sequence[Block], width: int) -> list[Block]:
    """The blocks with different tapered pieces put together in pairs, the pair that saves most first."""
    single = [number for number, block in enumerate(blocks) if _can_nest(block) and len(block.members) == 1]
    pairs = []
    for one, other in combinations(single, 2):
        if blocks[one].members[0].piece != blocks[other].members[0].piece:
            pair = _best_pair(blocks[one], blocks[other])
            saved = _box(blocks[one]) + _box(blocks[other]) - _box(pair)
            if saved > 0 and pair.across <= width:
                pairs.append((-saved, one, other, pair))
    taken: dict[int, Block | None] = {}
    for _, one, other, pair in sorted(pairs, key=lambda found: found[:3]):
        if one not in taken and other not in taken:
            taken[one], taken[other] = pair, None
    kept = [taken.get(number, block) for number, block in enumerate(blocks)]
    return [block for block in kept if block is not None]


def _best_pair(one: Block, other: Block) -> Block:
    """Two pieces head to foot, their lower or their upper ends level, whichever takes least cloth."""
    turned = _turned(other)
    apart = one.along - turned.along
    lower = [_beside(one, turned), _beside(turned, one)]
    one_up = replace(one, members=_moved(one.members, 0, max(0, -apart)))
    other_up = replace(turned, members=_moved(turned.members, 0, max(0, apart)))
    upper = [_beside(one_up, other_up), _beside(other_up, one_up)] if apart else []
    return min(lower + upper, key=_box)


def _beside(left: Block, right: Block) -> Block:
    """Two blocks in one, the right one slid to the left until it touches."""
    gap = max(shape.slide(one.outline, other.outline) for one in left.members for other in right.members)
    return replace(
        left, members=(*left.members, *_moved(right.members, gap, 0)), turns=left.turns and right.turns, is_box=False
    )


def _turned(block: Block) -> Block:
    """A block of one piece, head to foot."""
    return replace(block, members=tuple(_head_to_foot(member) for member in block.members))


def _head_to_foot(member: Member) -> Member:
    return replace(member, outline=shape.head_to_foot(member.outline), degrees=(member.degrees + 180) % 360)


def _moved(members: Sequence[Member], across: int, along: int) -> tuple[Member, ...]:
    return tuple(replace(member, outline=shape.moved(member.outline, across, along)) for member in members)


def _box(block: Block) -> int:
    return block.across * block.along
