"""Cutting layouts on cloth of ever other width against a published table of yardage by width.

The table: two web reprints, names withheld, usually credited to Rutgers Cooperative Extension; its twelve rows
all fall or stay level as the cloth gets wider. Garments here are invented.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import Length, inches
from sitegen.sewing import fabric_need
from sitegen.sewing.layout import Cloth, Fold, Layout, LayoutPiece, lay_out

WIDTHS = (35, 39, 41, 44, 50, 54, 60, 66)
"""Inches; of a column headed by two widths the one that most cloth has."""
TABLE = """
1.75 1.5 1.5 1.375 1.25 1.125 1 0.875
2 1.75 1.75 1.625 1.5 1.375 1.25 1.125
2.25 2 2 1.75 1.625 1.5 1.375 1.25
2.5 2.25 2.25 2.125 1.75 1.75 1.625 1.5
2.875 2.5 2.5 2.25 2 1.875 1.75 1.625
3.125 2.75 2.75 2.5 2.25 2 1.875 1.75
3.375 3 2.875 2.75 2.375 2.25 2 1.875
3.75 3.25 3.125 2.875 2.625 2.375 2.25 2.125
4.25 3.5 3.375 3.125 2.75 2.625 2.375 2.25
4.5 3.75 3.625 3.375 3 2.75 2.625 2.5
4.75 4 3.875 3.625 3.25 2.875 2.75 2.625
5 4.25 4.125 3.875 3.375 3.125 2.875 2.75
"""
ROWS = [[Fraction(cell) for cell in line.split()] for line in TABLE.strip().splitlines()]


def piece(name: str, width: str, length: str, count: int = 1, **how: bool) -> LayoutPiece:
    return LayoutPiece(name, inches(width), inches(length), count, **how)


BLOUSE = [
    piece("front", "12", "26", 2, mirrored=True),
    piece("back", "11", "26", on_fold=True),
    piece("sleeve", "15", "22", 2, mirrored=True),
    piece("collar", "8", "3", 2, on_fold=True),
    piece("cuff", "10", "4", 2),
    piece("facing", "3", "26", 2, mirrored=True),
]
DRESS = [
    piece("bodice front", "11", "17", on_fold=True),
    piece("bodice back", "11", "17", 2, mirrored=True),
    piece("skirt front", "15", "28", on_fold=True),
    piece("skirt back", "15", "28", 2, mirrored=True),
    piece("sleeve", "14", "12", 2, mirrored=True),
    piece("neck facing", "6", "4", 2, on_fold=True),
]
TROUSERS = [
    piece("front", "13", "42", 2, mirrored=True),
    piece("back", "16", "43", 2, mirrored=True),
    piece("pocket", "7", "12", 4, mirrored=True),
    piece("waistband", "4", "32", crosswise=True),
]
GARMENTS = {"blouse": BLOUSE, "dress": DRESS, "trousers": TROUSERS}


def needs(pieces: list[LayoutPiece], fold: Fold | None = None) -> list[Length]:
    layouts = [lay_out(pieces, Cloth(inches(width), fold)) for width in WIDTHS]
    return [found.length for found in layouts if isinstance(found, Layout)]


def test_rows_of_the_table_fall_or_stay_level() -> None:
    assert all(fabric_need.rises([inches(cell) for cell in row]) == () for row in ROWS)


@pytest.mark.parametrize("name", GARMENTS)
@pytest.mark.parametrize("fold", [None, Fold.OPEN, Fold.LENGTHWISE])
def test_need_falls_or_stays_level_as_the_cloth_gets_wider(name: str, fold: Fold | None) -> None:
    found = needs(GARMENTS[name], fold)
    assert len(found) >= 6
    assert fabric_need.rises(found) == ()


@pytest.mark.parametrize("name", GARMENTS)
def test_saving_of_the_widest_cloth_is_that_of_the_table(name: str) -> None:
    """The table goes down to 50 to 60 % of the narrowest width's yardage, and so do the layouts, within a tenth."""
    published = [row[-1] / row[0] for row in ROWS]
    found = needs(GARMENTS[name])
    ours = found[-1].over(found[0])
    assert min(published) - Fraction(1, 10) <= ours <= max(published) + Fraction(1, 10)
