"""Dual lengths: which pairs of an inch and a metric number are one length, and which are a slip.

Source of the pairs: the table of accepted pairs is arithmetic on what sewing handbooks print.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import RULER, Ruler, Typed, grain, inches, mm, pair_agrees, pair_for, parse_range


def both(text: str) -> tuple[Typed, Typed]:
    typed = parse_range(text)
    assert typed.pair is not None
    return typed, typed.pair


ACCEPTED = [
    "1/8 in (3 mm)", "1/4 in (6 mm)", "3/8 in (1 cm)", "1/2 in (1.3 cm)", "1/2 in (1.2 cm)", "5/8 in (1.5 cm)",
    "5/8 in (1.6 cm)", "3/4 in (1.9 cm)", "3/4 in (2 cm)", "1 in (2.5 cm)", "1 1/4 in (3.2 cm)",
    "1 1/2 in (3.8 cm)", "2 in (5 cm)", "2 in (5.1 cm)",
]  # fmt: skip


@pytest.mark.parametrize("text", ACCEPTED)
def test_an_accepted_pair_agrees_in_either_order(text: str) -> None:
    first, second = both(text)
    assert pair_agrees(first, second)
    assert pair_agrees(second, first)


ONE_BY_THREE = [
    ("3/8 in (1.0 cm)", True),
    ("12 in (30 cm)", True),
    ("10 in (25 cm)", True),
    ("18 in (46 cm)", True),
    ("12.3 cm (4 7/8 in)", True),
    ("1 in (2.54 cm)", True),
    ("1 in (25.4 mm)", True),
    ("17 3/8 in (44 cm)", True),
    ("4 5/8 in (11.5 cm)", True),
    ("1/3 yd (30.5 cm)", True),
    ("6 ft (1.8 m)", True),
    ("0 in (0 cm)", True),
    ("5/8 in (1 cm)", False),
    ("5/8 in (1.4 cm)", False),
    ("5/8 in (1.8 cm)", False),
    ("1/2 in (1.5 cm)", False),
    ("3/8 in (1.5 cm)", False),
    ("1/4 in (1 cm)", False),
    ("1/4 in (5 mm)", False),
    ("1 in (2.4 cm)", False),
    ("1 in (2.45 cm)", False),
    ("1 in (3 cm)", False),
    ("2 in (6 cm)", False),
    ("17 3/4 in (46 cm)", False),
    ("20 in (50 cm)", False),
    ("0 in (1 cm)", False),
]


@pytest.mark.parametrize(("text", "agrees"), ONE_BY_THREE)
def test_a_pair_agrees_exactly_when_the_rule_says_so(text: str, agrees: bool) -> None:
    first, second = both(text)
    assert pair_agrees(first, second) is agrees
    assert pair_agrees(second, first) is agrees


def test_short_length_agrees_with_the_nearest_millimetre_alone() -> None:
    """3/8 in is 9.525 mm: 10 mm is 0.475 off, less than half a millimetre, and 9 mm is more."""
    agreeing = [number for number in range(1, 30) if pair_agrees(*both(f"3/8 in ({number} mm)"))]
    assert agreeing == [10]


def test_inch_agrees_with_the_marks_on_both_sides_of_it() -> None:
    """1 in is 25.4 mm: the half centimetre 2.5 and, to the even millimetre, 2.6 are its roundings; 2.4 and 2.7 are not."""
    agreeing = [number for number in range(1, 60) if pair_agrees(*both(f"1 in ({number} mm)"))]
    assert agreeing == [25, 26]


def test_a_finer_ruler_makes_a_stricter_rule() -> None:
    fine = Ruler(inch_long=inches("1/16"), metric_long=mm(1))
    assert pair_agrees(*both("4 in (10.5 cm)"))
    assert not pair_agrees(*both("4 in (10.5 cm)"), ruler=fine)


@pytest.mark.parametrize(
    ("text", "agrees"),
    [
        ("1 3/8 yd (1.3 m)", True),
        ("1 yd (0.9 m)", True),
        ("1 yd (1 m)", True),
        ("1 yd (0.8 m)", False),
        ("1 yd (1.1 m)", False),
        ("2 1/4 yd (2.1 m)", True),
        ("1/2 yd (46 cm)", True),
        ("1/2 yd (50 cm)", False),
        ("1 yd (1.04 m)", False),
        ("125 yd (114.3 m)", True),
        ("125 yd (114.4 m)", False),
        ("125 1/8 yd (114.3 m)", False),
    ],
)
def test_cloth_by_the_yard_and_the_metre_agrees_when_one_need_gives_both(text: str, agrees: bool) -> None:
    first, second = both(text)
    assert pair_agrees(first, second) is agrees
    assert pair_agrees(second, first) is agrees


@pytest.mark.parametrize(
    ("text", "agrees"),
    [
        ("45 in (115 cm)", True),
        ("60 in (150 cm)", True),
        ("36 in (90 cm)", True),
        ("60 in (145 cm)", False),
        ("45 in (150 cm)", False),
    ],
)
def test_widths_on_the_bolt_are_nominal(text: str, agrees: bool) -> None:
    assert pair_agrees(*both(text), bolt=True) is agrees


def test_a_nominal_width_is_no_pair_for_anything_else() -> None:
    assert not pair_agrees(*both("36 in (90 cm)"))
    assert not pair_agrees(*both("60 in (150 cm)"))


def test_two_numbers_of_one_system_must_be_equal() -> None:
    assert pair_agrees(*both("10 mm (1 cm)"))
    assert pair_agrees(*both("1 yd (36 in)"))
    assert not pair_agrees(*both("10 mm (1.1 cm)"))
    assert not pair_agrees(*both("3/8 in (7/16 in)"))


def test_both_ends_of_a_range_must_agree() -> None:
    assert pair_agrees(*both("1 to 3 in (2.5 to 7.5 cm)"))
    assert not pair_agrees(*both("1 to 3 in (2.5 to 8 cm)"))
    assert not pair_agrees(*both("1 to 3 in (2 to 7.5 cm)"))
    assert not pair_agrees(*both("1 to 3 in (2.5 cm)"))
    assert not pair_agrees(*both("1 in (2.5 to 7.5 cm)"))


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("3/8 in", "1/8"),
        ("5/8 in", "1/8"),
        ("3 3/4 in", "1/4"),
        ("3/4 in", "1/8"),
        ("4 in", "1/4"),
        ("7 1/2 in", "1/4"),
        ("8 in", "1/2"),
        ("5/16 in", "1/16"),
        ("1/4 in", "1/16"),
        ("4 1/4 in", "1/4"),
        ("12 in", "1/2"),
        ("0.6 in", "1/10"),
        ("39.57 in", "1/100"),
    ],
)
def test_the_grain_of_inches_is_the_coarsest_mark_of_the_trade_on_which_they_sit(text: str, step: str) -> None:
    assert grain(parse_range(text)) == inches(step)


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("0 mm", "1"), ("9 mm", "1"), ("8 mm", "1"), ("1 cm", "2"), ("1.2 cm", "2"), ("1.3 cm", "1"), ("1.5 cm", "5"),
        ("9 cm", "5"), ("10 cm", "10"), ("71 cm", "10"), ("90 cm", "10"), ("1 m", "100"), ("1.59 cm", "0.1"),
        ("1/3 cm", "0.1"),
    ],
)  # fmt: skip
def test_the_grain_of_a_metric_length_is_the_coarsest_mark_of_the_trade_on_which_it_sits(text: str, step: str) -> None:
    assert grain(parse_range(text)) == mm(step)


def test_the_grain_of_yards_and_feet_is_an_eighth_and_a_whole() -> None:
    assert grain(parse_range("1 3/8 yd")) == inches("4.5")
    assert grain(parse_range("6 ft")) == inches(12)
    assert grain(parse_range("115 cm"), bolt=True) == mm(100)
    assert grain(parse_range("45 in"), bolt=True) == inches(2)


def test_the_one_in_brackets_is_rounded_to_the_ruler() -> None:
    assert pair_agrees(parse_range("7 mm"), parse_range("1/4 in"))
    assert not pair_agrees(parse_range("1/4 in"), parse_range("7 mm"))


@pytest.mark.parametrize(
    ("first", "unit", "says"),
    [
        ("5/8 in", "1 cm", "1.6 cm"),
        ("5/8 in", "1 mm", "16 mm"),
        ("1.5 cm", "1 in", "5/8 in"),
        ("17 3/4 in", "46 cm", "45 cm"),
        ("1 to 3 in", "2 to 8 cm", "2.5 to 7.6 cm"),
        ("1.55 cm", "1 in", "5/8 in"),
        ("1 3/8 yd", "1 m", "1.255 m"),
        ("12 in", "1 yd", "1/3 yd"),
        ("3/64 yd", "1 in", "1 11/16 in"),
        ("1 11/16 in", "1 ft", "9/64 ft"),
        ("1/8 cm", "1 mm", "1.25 mm"),
        ("1.3 m", "1 yd", "1 3/8 yd"),
        ("10 mm", "2 cm", "1 cm"),
    ],
)
def test_the_partner_is_what_the_second_should_say(first: str, unit: str, says: str) -> None:
    assert pair_for(parse_range(first), parse_range(unit)) == says


def test_a_partner_that_no_unit_can_print_is_still_a_text() -> None:
    assert pair_for(parse_range("999999 yd"), parse_range("1 mm")) == "914399085 mm"
    assert pair_for(parse_range("17 3/4 in"), parse_range("1 yd")) == "1/2 yd"


def test_the_step_of_printed_decimals_is_known() -> None:
    assert parse_range("1.59 cm").printed_step() == mm("0.1")
    assert parse_range("1,5 cm").printed_step() == mm(1)
    assert parse_range("0.250 in").printed_step() == inches("1/1000")
    assert parse_range("5/8 in").printed_step() is None


def test_every_mark_that_the_ruler_shows_agrees_with_what_it_shows_of_it() -> None:
    sixteenths = [*range(1, 16), *range(16, 200 * 16 + 1, 2)]
    for number in sixteenths:
        value = inches(Fraction(number, 16))
        assert pair_agrees(*both(RULER.show_both(value))), RULER.show_both(value)
