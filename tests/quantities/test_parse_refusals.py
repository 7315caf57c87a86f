"""What is refused: the whole message, and where the trouble starts and how long it is."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sitegen.quantities import (
    NotUnderstood,
    Unit,
    parse_length,
    parse_lengths,
    parse_number,
    parse_range,
    parse_ratio,
    parse_weight,
)

EXAMPLE = ", such as 3/8 in, 1 1/2 in, 0.6 cm or 5/8 in (1.5 cm)"
SIZES = ", such as 31, 33 1/2, 35 in"
A_LENGTH = "expected a length" + EXAMPLE
A_UNIT = "expected a unit after the number" + EXAMPLE
NOTHING_MORE = "expected one length and nothing behind it" + EXAMPLE
NOT_A_RANGE = "expected one length, not a range" + EXAMPLE
ON_A_RULER = "expected halves, quarters, eighths or sixteenths of an inch, as on a ruler, such as 3/8 in"
NO_QUOTATION = "expected a number first, without a quotation mark before it, such as 3/8 in"
NO_MINUS = "expected a number without a minus sign before it, such as 3/8 in"
NO_SPACES = "expected no spaces around the line of a fraction, such as 3/8 in"
NO_THOUSANDS = "expected no comma between thousands, and a point before three decimals, such as 1234 or 1.234"
TOO_LONG = "expected a number of at most six digits, and six behind its point, such as 1234.5"
ONE_POINT = "expected a number with one point or comma, such as 1234.5"
SAME_UNIT = "expected the same unit at both ends of a range, such as 1/4 to 3/8 in"
SMALLER_FIRST = "expected the smaller end of a range first, such as 1/4 to 3/8 in"
BELOW_THE_LINE = "expected a fraction with something below the line, such as 3/8"
SMALLER_THAN_1 = "expected a fraction smaller than 1 after a whole number, such as 1 1/2"
CLOSING = "expected a closing bracket, such as 5/8 in (1.5 cm)"


def refusal(read: Callable[[str], object], text: str) -> tuple[str, int, int]:
    with pytest.raises(NotUnderstood) as caught:
        read(text)
    return str(caught.value), caught.value.offset, caught.value.size


LENGTHS = [
    ("", A_LENGTH, 0, 0),
    ("   ", A_LENGTH, 3, 0),
    ("in", A_LENGTH, 0, 2),
    ("a bit", A_LENGTH, 0, 5),
    (" two in ", A_LENGTH, 1, 6),
    ("nan", A_LENGTH, 0, 3),
    ("² in", A_LENGTH, 0, 4),
    ("1 1/2", A_UNIT, 0, 5),
    (" 7", A_UNIT, 1, 1),
    ("1 1 in", A_UNIT, 0, 1),
    ("1e5 in", A_UNIT, 0, 1),
    ("1_000 in", A_UNIT, 0, 1),
    ("0x10 in", A_UNIT, 0, 1),
    ("1. cm", A_UNIT, 0, 1),
    ("3 ın", A_UNIT, 0, 1),
    ("3 İn", A_UNIT, 0, 1),
    ("5'2\"", A_UNIT, 0, 1),
    ("3 yardſ", NOTHING_MORE, 6, 1),
    ("5/8 in seam allowance", NOTHING_MORE, 7, 14),
    ("1 in 1/2", NOTHING_MORE, 5, 3),
    ("1 ft 2 in", NOTHING_MORE, 5, 4),
    ("3/8 in,", NOTHING_MORE, 6, 1),
    ("10 m2", NOTHING_MORE, 4, 1),
    ("5/8 in (about)", NOTHING_MORE, 7, 7),
    ("5/8 in (1.5 cm) (2 cm)", NOTHING_MORE, 16, 6),
    ("½½ in", A_UNIT, 0, 1),
    ("1/4-3/8 in", NOT_A_RANGE, 0, 7),
    ("1/4 to 3/8 in", NOT_A_RANGE, 0, 10),
    ("1 - 1/2 in", NOT_A_RANGE, 0, 7),
    ("1–1/2 in", NOT_A_RANGE, 0, 5),
    ("5/8 in (1 to 2 cm)", NOT_A_RANGE, 8, 6),
    ("1/3 in", ON_A_RULER, 0, 3),
    ("⅓ in", ON_A_RULER, 0, 1),
    ("2 1/10 in", ON_A_RULER, 0, 6),
    ("1 cm (2/5 in)", ON_A_RULER, 6, 3),
    ("“3/8”", NO_QUOTATION, 0, 5),
    ('"3/8 in"', NO_QUOTATION, 0, 8),
    ("‘3/8 in’", NO_QUOTATION, 0, 8),
    ("-1 in", NO_MINUS, 0, 5),
    ("- 1/2 in", NO_MINUS, 0, 8),
    ("−1 in", NO_MINUS, 0, 5),
    ("-½ in", NO_MINUS, 0, 5),
    ("1 / 2 in", NO_SPACES, 0, 8),
    (" 3/ 8 in", NO_SPACES, 1, 7),
    ("3 /8 in", NO_SPACES, 0, 7),
    ("1,500 mm", NO_THOUSANDS, 0, 8),
    ("31,335 in", NO_THOUSANDS, 0, 9),
    ("1234567 in", TOO_LONG, 0, 10),
    ("1234567", TOO_LONG, 0, 7),
    ("0.1234567 in", TOO_LONG, 0, 12),
    (".1234567 in", TOO_LONG, 0, 11),
    ("9" * 5000, TOO_LONG, 0, 5000),
    ("1.5.2 cm", ONE_POINT, 0, 8),
    ("1,234.5 in", NO_THOUSANDS, 0, 10),
    ("31,33,35 in", ONE_POINT, 0, 11),
    ("1/2/3 in", A_LENGTH, 0, 8),
    ("1/0 in", BELOW_THE_LINE, 0, 3),
    ("2 1/0 in", BELOW_THE_LINE, 0, 5),
    ("1 9/8 in", SMALLER_THAN_1, 0, 5),
    ("0 8/8 in", SMALLER_THAN_1, 0, 5),
    ("5/8 in (1.5)", A_UNIT, 8, 3),
    ("5/8 in (1.5 cm", CLOSING, 8, 6),
    ("5/8 in (1.5 cm or so)", CLOSING, 8, 13),
    ("5/8 in (15 mm (2 cm))", CLOSING, 8, 13),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), LENGTHS)
def test_a_length_that_is_none_is_refused_with_words_place_and_size(
    text: str, message: str, offset: int, size: int
) -> None:
    assert refusal(parse_length, text) == (message, offset, size)


@pytest.mark.parametrize("text", ["3 / 8 in", "1 - 2 in", "1 1", "1_0", "1 = 2"])
def test_a_default_unit_does_not_turn_half_a_text_into_a_length(text: str) -> None:
    with pytest.raises(NotUnderstood):
        parse_length(text, Unit.IN)


RANGES = [
    ("1 to", A_UNIT, 0, 1),
    ("1 to 2", A_UNIT, 0, 6),
    ("3/8 to 1/4 in", SMALLER_FIRST, 0, 13),
    (" 1 to 1 in", SMALLER_FIRST, 1, 9),
    ("1 - 1/2 in", SMALLER_FIRST, 0, 10),
    ("1/4 in to 1 cm", SAME_UNIT, 0, 14),
    (" 1/4 in to 1 cm or so", SAME_UNIT, 1, 14),
    ("1/4 to 1/3 in", ON_A_RULER, 7, 3),
    ("1/3 to 1/2 in", ON_A_RULER, 0, 3),
    ("1 to 2/0 in", BELOW_THE_LINE, 5, 3),
    ("1 to 3 in (2.5 to 7.5)", A_UNIT, 11, 10),
    ("1 to 3 in wide", NOTHING_MORE, 10, 4),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), RANGES)
def test_a_range_that_is_none_is_refused(text: str, message: str, offset: int, size: int) -> None:
    assert refusal(parse_range, text) == (message, offset, size)


A_SPACE = "expected a space after each comma between sizes" + SIZES
A_SPACE_OR_POINT = (
    "expected a space after a comma between sizes, or a point before decimals, such as 31, 33 in or 31.3 in"
)
BOTH_SIDES = "expected a length before and after each comma" + SIZES
UNIT_FOR_ALL = "expected a unit after each length, or one after the last that serves all" + SIZES
LISTS = [
    ("", A_LENGTH, 0, 0),
    ("31, 33, 35", A_UNIT, 8, 2),
    ("31, 33, 35 foo", A_UNIT, 8, 2),
    ("31, x, 35 in", A_LENGTH, 4, 1),
    ("31, 33 1/3, 35 in", ON_A_RULER, 4, 6),
    ("31, 33 in seam, 35 in", NOTHING_MORE, 10, 4),
    ("31, -33, 35 in", NO_MINUS, 4, 3),
    ("31, 32 to 33, 35 in", NOT_A_RANGE, 4, 8),
    ("31 to 32 in", NOT_A_RANGE, 0, 8),
    (",", BOTH_SIDES, 0, 1),
    ("31 in,", BOTH_SIDES, 5, 1),
    ("31, , 35 in", BOTH_SIDES, 2, 1),
    (", 31 in", BOTH_SIDES, 0, 1),
    ("31,33,35 in", A_SPACE, 0, 11),
    (" 30, 31,33 1/2 in", A_SPACE, 5, 12),
    ("31,33 in", A_SPACE_OR_POINT, 0, 5),
    ("30, 31,33 in", A_SPACE_OR_POINT, 4, 5),
    ("79,84 cm", A_SPACE_OR_POINT, 0, 5),
    ("31 in, 33, 35 cm", UNIT_FOR_ALL, 7, 2),
    ("31, 33 cm, 35 in", UNIT_FOR_ALL, 0, 2),
    ("31 33 35 in", A_UNIT, 0, 2),
    ("31\n33\n35", A_UNIT, 0, 2),
    ("(31, 33, 35) in", A_LENGTH, 0, 15),
    ("31, 33 (in", A_UNIT, 4, 2),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), LISTS)
def test_a_list_by_size_that_is_none_is_refused(text: str, message: str, offset: int, size: int) -> None:
    assert refusal(parse_lengths, text) == (message, offset, size)


def test_a_unit_on_the_first_length_only_is_refused_rather_than_mixed_with_the_default() -> None:
    assert refusal(lambda text: parse_lengths(text, Unit.CM), "31 in, 33, 35") == (UNIT_FOR_ALL, 7, 2)


A_NUMBER = "expected a number, such as 1 1/2 or 1.5"
NUMBERS = [
    ("", A_NUMBER, 0, 0),
    (" x ", A_NUMBER, 1, 1),
    ("2 mm", A_NUMBER, 0, 4),
    ("1-2", A_NUMBER, 0, 3),
    ("1e3", A_NUMBER, 0, 3),
    ("1.5,", A_NUMBER, 0, 4),
    ("-1", NO_MINUS, 0, 2),
    ("1,234", NO_THOUSANDS, 0, 5),
    (" 1/0", BELOW_THE_LINE, 1, 3),
    ("1 9/8", SMALLER_THAN_1, 0, 5),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), NUMBERS)
def test_a_number_that_is_none_is_refused(text: str, message: str, offset: int, size: int) -> None:
    assert refusal(parse_number, text) == (message, offset, size)


A_RATIO = "expected a number, such as 80% or 4/5"
RATIOS = [
    ("", A_RATIO, 0, 0),
    ("%", A_RATIO, 0, 0),
    ("  x%", A_RATIO, 2, 1),
    ("80%%", A_RATIO, 0, 3),
    ("3:4", A_RATIO, 0, 3),
    ("eighty percent", A_RATIO, 0, 6),
    ("80 % of it", A_RATIO, 0, 10),
    ("-5%", NO_MINUS, 0, 2),
    (" 80 ", "expected a percent sign after the number, such as 80%", 1, 2),
    ("5.01", "expected a percent sign after the number, such as 80%", 0, 4),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), RATIOS)
def test_a_ratio_that_is_none_is_refused(text: str, message: str, offset: int, size: int) -> None:
    assert refusal(parse_ratio, text) == (message, offset, size)


A_WEIGHT = "expected a weight of cloth, such as 180 g/m2 or 5 oz/yd2"
WEIGHTS = [
    ("", A_WEIGHT, 0, 0),
    (" 180 ", A_WEIGHT, 1, 3),
    ("gsm", A_WEIGHT, 0, 3),
    ("180 kg", A_WEIGHT, 0, 6),
    ("180 g/m2 or so", A_WEIGHT, 0, 14),
    ("  x gsm", "expected a number, such as 180 g/m2", 2, 1),
    ("150-180 gsm", "expected a number, such as 180 g/m2", 0, 7),
]


@pytest.mark.parametrize(("text", "message", "offset", "size"), WEIGHTS)
def test_a_weight_that_is_none_is_refused(text: str, message: str, offset: int, size: int) -> None:
    assert refusal(parse_weight, text) == (message, offset, size)


def test_trouble_in_a_part_of_a_text_can_be_moved_to_its_place_in_the_whole() -> None:
    with pytest.raises(NotUnderstood) as caught:
        parse_length("x")
    moved = caught.value.moved(7)
    assert (str(moved), moved.offset, moved.size) == (str(caught.value), 7, 1)
    assert (NotUnderstood("a length", "1 in").offset, NotUnderstood("a length", "1 in").size) == (0, 0)
    assert (moved.expected, moved.example) == (caught.value.expected, caught.value.example)
