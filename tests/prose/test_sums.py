"""Sums written out with signs: which are found, and which of them hold."""

from __future__ import annotations

import pytest

from sitegen.prose import find_sums


@pytest.mark.parametrize(
    ("text", "holds"),
    [
        ("is 6 in + 1/2 in + 1/2 in = 7 in, and", [True]),
        ("is 6 in + 1/2 in = 7 in, and", [False]),
        ("12 1/4 in + 7 in − 1/2 in − 1/2 in = 18 1/4 in", [True]),
        ("32 cm − 4 cm\n− 4 cm = 24 cm", [True]),
        ("60 cm × 90% = 54 cm", [True]),
        ("60 cm × 85% = 54 cm", [False]),
        ("32 cm ÷ 8 = 4 cm", [True]),
        ("42 in × 1.5 = 63 in of cloth", [True]),
        ("4 × 1 cm + 5 mm = 4.5 cm", [True]),
        ("2 in ÷ 5 in = 40%", [True]),
        ("2 in ÷ 5 in = 45%", [False]),
        ("because 5 in × 80% = 4 in, and 5 in + 4 in = 8 in", [True, False]),
        ("1 + 40 + 1 cm = 42 cm", [True]),
        ("1 + 40 + 1 cm = 41 cm", [False]),
        ("20 3/8 in × 80% = 16 1/4 in", [True]),
        ("a 5-in-1 tool, 80/12 needles, 2 − 3 pins", []),
        ("18 in or 20 in = the same to us", []),
        ("1 in = 2.5 cm", []),
        ("take 7 in\n- 6 in + 1 in = 7 in", [True]),
        ("6 in - 1 in = 4 in", [False]),
        ("8 in + {seam_allowance} = 9 in", []),
        ("27 − 2 × 1 = 25 cm", [True]),
        ("27 cm − 2 × 1 = 24 cm", [False]),
        ("12 × 3 = 38 cm", [False]),
        ("so 16 × 3.14 = 50 in of piping", [True]),
        ("(36 in + 2 in) ÷ 4 = 9 1/2 in", [True]),
        ("(36 + 2) ÷ 4 = 9 in", [False]),
        ("(18 in + 54 in) × 2 = 140 in", [False]),
        ("(18 in + 54 in) ÷ 0 = 140 in", []),
        ('36"/4 = 9"', [True]),
        ('36"/4 = 8"', [False]),
        ("90cm/4=25cm", [False]),
        ("1 in/2.5 cm x 4 = 4 in", []),
        ("8 x 6 = 48 squares, 8 × 5 = 40%", []),
    ],
)
def test_sum_is_done_again(text: str, holds: list[bool]) -> None:
    assert [each.holds for each in find_sums(text)] == holds
