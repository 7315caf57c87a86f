"""Rows of lengths by size that lack the comma and the space between them."""

from __future__ import annotations

import pytest

from sitegen.quantities import Unit, row_without_commas


@pytest.mark.parametrize(
    ("text", "sizes", "row"),
    [
        ("52 54 57 cm", 3, "52, 54, 57 cm"),
        ("52 54 57 cm", 4, "52, 54, 57 cm"),
        (" 31 33 1/2 35 in", 3, "31, 33 1/2, 35 in"),
        ("31 33½ 35", 3, "31, 33½, 35"),
        ("52 cm 54 cm 57 cm", 3, "52 cm, 54 cm, 57 cm"),
        ("52,54,57 cm", 3, "52, 54, 57 cm"),
        ("52,54.5,57 cm", 3, "52, 54.5, 57 cm"),
        ("52 / 54 / 57 cm", 3, "52, 54, 57 cm"),
        ("52 - 54 - 57 cm", 3, "52, 54, 57 cm"),
        ("52 cm and 54 cm", 2, "52 cm, 54 cm"),
        ("52 54 cm", 2, "52, 54 cm"),
    ],
)
def test_a_row_is_found(text: str, sizes: int, row: str) -> None:
    assert ", ".join(text[start:end] for start, end in row_without_commas(text, sizes, Unit.CM)) == row


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("33 1/2 in", 2), ("33 1/2 in", 3), ("52 cm", 3), ("52 54 cm", 3), ("52 elbows 54 57 cm", 3), ("", 3), ("abc", 3),
        ("3 / 8 in", 3), ("31,33 in", 3), ("1/4 to 3/8 in", 2), ("52 cm (20 1/2 in)", 3), ("1/4 - 3/8 in", 3),
    ],
)  # fmt: skip
def test_what_may_be_one_length_is_left(text: str, sizes: int) -> None:
    assert row_without_commas(text, sizes, Unit.CM) == ()
