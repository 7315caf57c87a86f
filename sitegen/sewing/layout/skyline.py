"""The upper edge of what already lies on the cloth, as a row of level stretches, in whole numbers.

One row of stretches stands for one strip of cloth; a cloth with both selvages folded to the middle has two.
Cloth under the edge that no piece covers is lost for good, which is what keeps the search short.
"""

from __future__ import annotations

Level = tuple[int, int, int]
"""A level stretch of the upper edge: where it begins across the strip, how wide it is, how far along it lies."""
Skyline = tuple[Level, ...]
BEYOND = 1 << 200
"""Farther along than any piece reaches: what stands at the sides of a strip."""


def empty(width: int) -> Skyline:
    """The upper edge of a strip on which nothing lies yet."""
    return ((0, width, 0),)


def lowest(skylines: tuple[Skyline, ...]) -> tuple[int, int]:
    """The level stretch nearest to the start of the cloth: its strip, and its index there."""
    found, least = (0, 0), BEYOND
    for strip, skyline in enumerate(skylines):
        for index, level in enumerate(skyline):
            if level[2] < least:
                found, least = (strip, index), level[2]
    return found


def sides(skyline: Skyline, index: int) -> tuple[int, int]:
    """How far along the stretches before and behind this one lie; the sides of the strip lie beyond everything."""
    before = skyline[index - 1][2] if index else BEYOND
    behind = skyline[index + 1][2] if index + 1 < len(skyline) else BEYOND
    return before, behind


def with_piece(skyline: Skyline, index: int, across: int, along: int, *, at_end: bool) -> Skyline:
    """The edge once a piece lies at the begin or at the end of a stretch that is wide enough for it."""
    start, width, low = skyline[index]
    rest = width - across
    if not rest:
        return _joined(skyline, index, ((start, width, low + along),))
    if at_end:
        return _joined(skyline, index, ((start, rest, low), (start + rest, across, low + along)))
    return _joined(skyline, index, ((start, across, low + along), (start + across, rest, low)))


def given_up(skyline: Skyline, index: int, level: int) -> Skyline:
    """The edge once a stretch stays empty up to a level."""
    start, width, _ = skyline[index]
    return _joined(skyline, index, ((start, width, level),))


def _joined(skyline: Skyline, index: int, new: Skyline) -> Skyline:
    """The edge with one stretch replaced; neighbours on one level become one stretch."""
    first, behind = index, index + 1
    if index:
        start, width, along = skyline[index - 1]
        if along == new[0][2]:
            first = index - 1
            new = ((start, width + new[0][1], along), *new[1:])
    if behind < len(skyline):
        _, width, along = skyline[behind]
        if along == new[-1][2]:
            behind += 1
            new = (*new[:-1], (new[-1][0], new[-1][1] + width, along))
    return skyline[:first] + new + skyline[behind:]
