"""Lengths by size in one text."""

from __future__ import annotations

import pytest

from sitegen.quantities import Length, Unit, cm, inches, parse_lengths


def read(text: str, default: Unit | None = None) -> tuple[Length, ...]:
    return parse_lengths(text, default).map(lambda typed: typed.value).values


@pytest.mark.parametrize(
    "text",
    ["31, 33 1/2, 35 in", "31 in, 33 1/2 in, 35 in", "31; 33 1/2; 35 in", '31", 33½", 35"', "31 ,33 ½ , 35.0 in"],
)
def test_a_list_gives_one_length_a_size(text: str) -> None:
    assert read(text) == (inches(31), inches("33.5"), inches(35))


def test_a_bare_list_takes_the_default_unit() -> None:
    assert read("31, 33 1/2, 35", Unit.IN) == (inches(31), inches("33.5"), inches(35))


def test_the_unit_at_the_end_wins_over_the_default() -> None:
    assert read("79, 84 cm", Unit.IN) == (cm(79), cm(84))


def test_lengths_with_units_of_their_own_may_differ_in_unit() -> None:
    assert read("9 mm, 1 cm, 1.1 cm") == (cm("0.9"), cm(1), cm("1.1"))


def test_one_length_serves_all_sizes() -> None:
    found = parse_lengths("3/8 in")
    assert not found.differs
    assert found.at(4).value == inches("3/8")


def test_a_comma_before_a_digit_is_a_decimal_comma() -> None:
    assert read("31, 33,5, 35 cm") == (cm(31), cm("33.5"), cm(35))
    assert read("1,5;2 cm") == (cm("1.5"), cm(2))
    assert read("0,635 cm") == (cm("0.635"),)
    assert read("12,75 in") == (inches("12.75"),)


def test_each_length_may_have_its_pair() -> None:
    found = parse_lengths("31 in (79 cm), 33 in (84 cm)")
    assert [typed.pair and typed.pair.value for typed in found] == [cm(79), cm(84)]


def test_every_length_and_pair_knows_its_place_in_the_whole_text() -> None:
    text = " 31 in (79 cm), 33 1/2 in (85 cm) "
    for typed, whole, pair in zip(
        parse_lengths(text), ("31 in (79 cm)", "33 1/2 in (85 cm)"), ("79 cm", "85 cm"), strict=True
    ):
        assert typed.text == text[typed.start : typed.end] == whole
        assert typed.pair is not None
        assert typed.pair.text == text[typed.pair.start : typed.pair.end] == pair


def test_a_list_of_five_sizes_from_a_size_table() -> None:
    assert read("12 1/2, 12 3/4, 13, 13 3/8, 13 3/4 in") == tuple(
        inches(number) for number in ("12.5", "12.75", "13", "13.375", "13.75")
    )
