"""Cutting layouts on open cloth against the best that another packing library (rectpack) finds."""

from __future__ import annotations

from fractions import Fraction
from random import Random
from statistics import median

import pytest

from sitegen.quantities import mm
from sitegen.sewing.layout import Cloth, Fold, Layout, LayoutPiece, lay_out

rectpack = pytest.importorskip("rectpack")

ALGORITHMS = ("MaxRectsBl", "MaxRectsBssf", "MaxRectsBaf", "MaxRectsBlsf", "SkylineBl", "SkylineMwf")
SORTS = ("SORT_AREA", "SORT_LSIDE", "SORT_SSIDE", "SORT_PERI")
NEVER_LONGER_BY = Fraction(3, 100)
"""Measured on 270 sets of 8 to 40 rectangles: longer in 3 of them, by 1.1 % at most; in the median 4 % shorter."""
WIDTHS = (900, 1140, 1400, 1500)

Sizes = list[tuple[int, int]]


def their_length(sizes: Sizes, width: int) -> int:
    """The shortest strip of all their algorithms and all their orders."""
    lengths = []
    for algorithm in ALGORITHMS:
        for order in SORTS:
            packer = rectpack.newPacker(
                rotation=False, pack_algo=getattr(rectpack, algorithm), sort_algo=getattr(rectpack, order)
            )
            packer.add_bin(width, sum(height for _, height in sizes))
            for size in sizes:
                packer.add_rect(*size)
            packer.pack()
            placed = packer.rect_list()
            assert len(placed) == len(sizes)
            lengths.append(max(y + height for _, _, y, _, height, _ in placed))
    return min(lengths)


def our_length(sizes: Sizes, width: int) -> Fraction:
    pieces = [LayoutPiece(f"piece {number}", mm(across), mm(along)) for number, (across, along) in enumerate(sizes)]
    found = lay_out(pieces, Cloth(mm(width), Fold.OPEN))
    assert isinstance(found, Layout)
    return found.length.mm


def ratios(count: int, least: int, most: int) -> list[Fraction]:
    """Our length over theirs, on twelve widths of cloth and as many sets of rectangles."""
    chance = Random(count)
    found = []
    for _ in range(12):
        width = chance.choice(WIDTHS)
        sizes = [(chance.randint(least, most), chance.randint(least, most)) for _ in range(count)]
        found.append(our_length(sizes, width) / their_length(sizes, width))
    return found


@pytest.mark.parametrize("count", [8, 14, 20])
def test_layout_is_hardly_ever_longer_and_mostly_shorter_than_the_best_of_rectpack(count: int) -> None:
    found = ratios(count, 60, 600)
    assert max(found) <= 1 + NEVER_LONGER_BY
    assert median(found) < 1
