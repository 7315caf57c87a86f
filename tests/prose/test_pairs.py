"""Pairs of units in running text: which are found, and which sums are left alone."""

from __future__ import annotations

import pytest

from sitegen.prose import find_pairs


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Sew with 3/8 in (1 cm) seams.", ["3/8 in (1 cm)"]),
        ("Cut it **3 cm (1 1/4 in)** deep.", ["3 cm (1 1/4 in)"]),
        ("- 6 mm (1/4 in) is enough.\n- 5/8\" (1.5 cm) is more.", ["6 mm (1/4 in)", '5/8" (1.5 cm)']),
        ("* 6 mm (1/4 in) is enough.", ["6 mm (1/4 in)"]),
        ("cloth 28\" to 60\" (71 cm) wide", []),
        ("cloth 28\" to 60\" (80 cm) wide", ['28" to 60" (80 cm)']),
        ("1 1/4 in + 1/2 in = 1 3/4 in", []),
        ("1 1/4 in + 1/2 in (1.3 cm)", ["1/2 in (1.3 cm)"]),
        ("1 1/4 in + 1/2 in (4.5 cm)", []),
        ("18 in (M) or 20 in (L)", []),
        ("needle 80/12 (2 of them)", []),
        ("2 in (two fingers)", []),
        ("5 cm (12.5 cm) deep", ["5 cm (12.5 cm)"]),
        ("18 in (20 in) for the larger sizes", []),
        ("18 in (20 in, 22 in)", []),
        ("a 5-in-1 tool (3 cm)", []),
    ],
)  # fmt: skip
def test_pairs_are_found_and_sums_are_not(text: str, found: list[str]) -> None:
    pairs = list(find_pairs(text))
    assert [text[pair.start : pair.end] for pair in pairs] == found


@pytest.mark.parametrize(
    ("text", "agrees"),
    [
        ("cloth 60 in (150 cm) wide", True),
        ("60 in (150 cm)-wide cloth", True),
        ("a width of 60 in (150 cm)", True),
        ("60 in (150 cm) long", False),
        ("a 16 in (40 cm) zip", True),
        ("a strip 10 cm (3 in) wide", False),
    ],
)
def test_what_is_sold_in_nominal_sizes_is_known_by_its_words(text: str, agrees: bool) -> None:
    assert [pair.agrees for pair in find_pairs(text)] == [agrees]


@pytest.mark.parametrize(
    ("text", "agrees"),
    [
        ("Buy 1/2 yd (50 cm) of rib.", [True]),
        ("Buy 1 1/4 yd (1.2 m) of lawn.", [True]),
        ("Buy 1 yd (50 cm) of lawn.", [False]),
        ("Sew with 1 cm seams, or 5/8 in if your pattern has them.", []),
        ("Sew with 1 cm seams, or 5/8 in.", [False]),
    ],
)
def test_cloth_to_buy_is_rounded_as_shops_cut_it_and_a_choice_is_no_pair(text: str, agrees: list[bool]) -> None:
    assert [pair.agrees for pair in find_pairs(text)] == agrees


def test_a_place_in_the_next_sentence_joins_no_pair() -> None:
    assert not list(find_pairs("Buy 4 m of piping, 35 mm. In the states that's 1/4 in of seam."))
