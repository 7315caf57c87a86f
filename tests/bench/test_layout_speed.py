"""How long cutting layouts take, as a multiple of a bare loop on the same machine at the same time."""

from __future__ import annotations

from time import process_time

from sitegen.quantities import inches
from sitegen.sewing.layout import Cloth, Layout, LayoutPiece, lay_out

STEPS = 1_000_000
MOST_LOOPS = 60
"""Measured: 24 layouts of a garment of 8 pieces, each laid in three ways, take as long as 17 such loops."""


def garment(size: int) -> list[LayoutPiece]:
    """Eight pieces that grow by half an inch from size to size."""

    def piece(name: str, width: int, length: int, count: int = 1, **how: bool) -> LayoutPiece:
        return LayoutPiece(
            name, inches(width) + inches("1/4") * size, inches(length) + inches("1/2") * size, count, **how
        )

    return [
        piece("front", 9, 25, on_fold=True),
        piece("back", 9, 26, on_fold=True),
        piece("sleeve", 14, 22, 2, mirrored=True),
        piece("cuff", 9, 4, 2, crosswise=True),
        piece("collar", 7, 3, 2, on_fold=True),
        piece("facing", 6, 10, 2, mirrored=True),
        piece("pocket", 6, 7),
        piece("loop", 3, 9),
    ]


def seconds_for_layouts() -> float:
    begin = process_time()
    for width in (45, 60):
        for size in range(12):
            assert isinstance(lay_out(garment(size), Cloth(inches(width))), Layout)
    return process_time() - begin


def seconds_for_bare_loop() -> float:
    begin = process_time()
    total = 0
    for step in range(STEPS):
        total += step
    assert total
    return process_time() - begin


def test_layouts_of_twelve_sizes_on_two_widths_take_a_few_bare_loops() -> None:
    measured = [(seconds_for_layouts(), seconds_for_bare_loop()) for _ in range(3)]
    assert min(layouts for layouts, _ in measured) < MOST_LOOPS * min(loop for _, loop in measured)
