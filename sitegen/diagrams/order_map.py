"""Where the steps of an order of making stand on a map: rows of boxes, and lanes beside them for arrows that pass rows.

Page units only: nothing here is cloth.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sitegen.diagrams.drawing import MARGIN, PAGE_WIDTH
from sitegen.diagrams.text_boxes import UNIT, block_size, wrapped

MOST_BESIDE = 3
_WIDEST = 300
_BESIDE = 10
_LANE = 13
_PAD = 8
_GAP = 30


@dataclass(frozen=True, slots=True)
class Arrow:
    """One step before another; ``sure`` where the later one uses what the earlier one made."""

    before: int
    after: int
    sure: bool


@dataclass(frozen=True, slots=True)
class StepBox:
    """The box of a step: its left upper corner and size, and whether nothing stands on its left."""

    left: int
    top: int
    width: int
    height: int
    first: bool

    @property
    def middle(self) -> int:
        """Half way across."""
        return self.left + self.width // 2

    @property
    def foot(self) -> int:
        """Its lower edge."""
        return self.top + self.height


@dataclass(frozen=True, slots=True)
class Lane:
    """What leads from one step down past others to the steps that wait for it: how far across, and to which."""

    before: int
    afters: tuple[int, ...]
    sure: bool
    across: int


@dataclass(frozen=True, slots=True)
class OrderMap:
    """The boxes by step, the arrows from row to row, and the lanes of all others."""

    boxes: Mapping[int, StepBox]
    short: tuple[Arrow, ...]
    lanes: tuple[Lane, ...]
    foot: int


def order_map(titles: Mapping[int, str], arrows: Sequence[Arrow]) -> OrderMap:
    """Each step in the first row below all those for which it waits; at most three beside each other."""
    rows = _rows(titles, arrows)
    row_of = {step: number for number, row in enumerate(rows) for step in row}
    short = tuple(arrow for arrow in arrows if row_of[arrow.after] - row_of[arrow.before] == 1)
    lanes = _lanes([arrow for arrow in arrows if arrow not in short], row_of)
    used = 1 + max((place for _, place in lanes), default=-1)
    left = MARGIN + (used * _LANE + _PAD if used else 0)
    boxes = _boxes(rows, titles, left)
    placed = tuple(
        Lane(before, afters, sure, left - _PAD - _LANE * place) for (before, afters, sure), place in lanes
    )  # fmt: skip
    return OrderMap(boxes, short, placed, max(box.foot for box in boxes.values()))


def _rows(titles: Mapping[int, str], arrows: Sequence[Arrow]) -> list[list[int]]:
    rows: list[list[int]] = []
    row_of: dict[int, int] = {}
    for step in sorted(titles):
        row = 1 + max((row_of[arrow.before] for arrow in arrows if arrow.after == step), default=-1)
        while row < len(rows) and len(rows[row]) == MOST_BESIDE:
            row += 1
        rows += [[] for _ in range(row + 1 - len(rows))]
        rows[row].append(step)
        row_of[step] = row
    return rows


_Led = tuple[int, tuple[int, ...], bool]


def _lanes(arrows: Sequence[Arrow], row_of: Mapping[int, int]) -> list[tuple[_Led, int]]:
    """The arrows from each step in one lane, and its place counted from the boxes outwards, so that none overlap."""
    led: dict[tuple[int, bool], list[int]] = {}
    for arrow in sorted(arrows, key=lambda arrow: (arrow.before, arrow.after)):
        led.setdefault((arrow.before, arrow.sure), []).append(arrow.after)
    ends: list[int] = []
    found = []
    for (before, sure), afters in sorted(led.items(), key=lambda item: (row_of[item[0][0]], item[1])):
        begin, end = row_of[before], max(row_of[after] for after in afters)
        free = next((place for place, taken in enumerate(ends) if taken < begin), len(ends))
        ends[free : free + 1] = [end]
        found.append(((before, tuple(afters), sure), free))
    return found


def _boxes(rows: Sequence[Sequence[int]], titles: Mapping[int, str], left: int) -> dict[int, StepBox]:
    room = PAGE_WIDTH - MARGIN - left
    boxes: dict[int, StepBox] = {}
    top = 0
    for row in rows:
        width = min(_WIDEST, (room - _BESIDE * (len(row) - 1)) // len(row))
        height = max(_height(titles[step], width) for step in row)
        for place, step in enumerate(row):
            boxes[step] = StepBox(left + place * (width + _BESIDE), top, width, height, place == 0)
        top += height + _GAP
    return boxes


def text_room(width: int) -> int:
    """Page units for the words of a box so wide."""
    return width - 2 * _PAD


def _height(title: str, width: int) -> int:
    return block_size(wrapped(title, text_room(width)))[1] // UNIT + 2 * _PAD
