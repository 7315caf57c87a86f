"""What a ruler shows of a length, and what a shop sells of a need."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import (
    RULER,
    ZERO,
    Length,
    Rounding,
    Ruler,
    System,
    Unit,
    cm,
    decimal,
    inches,
    length,
    mm,
    parse_length,
    show_in_unit,
    show_to_buy,
    show_told_to_buy,
    to_buy,
    vulgar,
)

INCHES, METRIC = System.INCHES, System.CENTIMETRES


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        ("1/16", "1/16 in"),
        ("3/8", "3/8 in"),
        ("0.4", "3/8 in"),
        ("0.44", "7/16 in"),
        ("31/32", "1 in"),
        ("0.96", "15/16 in"),
        ("1", "1 in"),
        ("17/16", "1 1/16 in"),
        ("63/16", "3 15/16 in"),
        ("65/16", "4 1/8 in"),
        ("1.06", "1 1/16 in"),
        ("17.75", "17 3/4 in"),
        ("17.7", "17 3/4 in"),
        ("17.68", "17 5/8 in"),
        ("200", "200 in"),
    ],
)
def test_inches_go_to_sixteenths_below_four_and_to_eighths_from_four(number: str, shown: str) -> None:
    assert RULER.show(inches(number), INCHES) == shown


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        ("0.9", "1 mm"),
        ("6.35", "6 mm"),
        ("9.4", "9 mm"),
        ("2.5", "2.5 mm"),
        ("2.4", "2 mm"),
        ("9.525", "1 cm"),
        ("15.875", "1.6 cm"),
        ("99.4", "9.9 cm"),
        ("99.5", "10 cm"),
        ("100", "10 cm"),
        ("102.4", "10 cm"),
        ("102.5", "10.5 cm"),
        ("450.85", "45 cm"),
        ("1524", "152.5 cm"),
    ],
)
def test_metric_goes_to_millimetres_below_ten_centimetres_and_to_half_centimetres_from_ten(
    number: str, shown: str
) -> None:
    assert RULER.show(mm(number), METRIC) == shown


@pytest.mark.parametrize(
    ("number", "system", "shown"),
    [
        ("61.01", INCHES, "61 1/8 in"),
        ("61", INCHES, "61 in"),
        ("3.01", INCHES, "3 1/16 in"),
        ("3.99", INCHES, "4 in"),
        ("0.01", INCHES, "1/16 in"),
        ("0", INCHES, "0 in"),
        ("30", METRIC, "76.5 cm"),
        ("3.9", METRIC, "10 cm"),
        ("0.3", METRIC, "8 mm"),
    ],
)
def test_what_must_be_enough_goes_up_to_the_next_mark(number: str, system: System, shown: str) -> None:
    assert RULER.show(inches(number), system, Rounding.ENOUGH) == shown
    assert RULER.show(inches(number), system, Rounding.SOLD) == shown, "in a sum, inches stay inches"


@pytest.mark.parametrize(
    ("said", "exact", "rounding", "right"),
    [
        ("61", "61.01", Rounding.NEAREST, True),
        ("61", "61.01", Rounding.ENOUGH, False),
        ("61.125", "61.01", Rounding.ENOUGH, True),
        ("61.25", "61.01", Rounding.ENOUGH, False),
        ("61.0625", "61.01", Rounding.ENOUGH, True),
        ("61.02", "61.01", Rounding.ENOUGH, False),
        ("63", "61.01", Rounding.ENOUGH, False),
        ("63", "61.01", Rounding.SOLD, True),
        ("67.5", "61.01", Rounding.SOLD, False),
    ],
)
def test_what_was_written_of_a_need_is_never_less_and_less_than_a_mark_more(
    said: str, exact: str, rounding: Rounding, right: bool
) -> None:
    assert RULER.agrees(inches(said), inches(exact), INCHES, rounding) is right


def test_need_in_the_unit_that_was_typed() -> None:
    need = inches("61.01")
    shown = [show_in_unit(need, unit, rounding=Rounding.SOLD) for unit in (Unit.IN, Unit.CM, Unit.YD, Unit.M)]
    assert shown == ["61 1/8 in", "155 cm", "1 3/4 yd", "1.6 m"]


def test_a_tie_goes_away_from_nothing() -> None:
    assert RULER.rounded(inches("1/32"), INCHES) == inches("1/16")
    assert RULER.rounded(inches("-1/32"), INCHES) == inches("-1/16")
    assert RULER.rounded(mm("2.5"), METRIC) == mm(3)
    assert RULER.rounded(mm("-2.5"), METRIC) == mm(-3)


def test_a_negative_length_shows_as_its_opposite_with_a_minus_sign() -> None:
    assert RULER.show(inches("-17.75"), INCHES) == "−17 3/4 in"
    assert RULER.show(inches("-17.75"), METRIC) == "−45 cm"
    assert RULER.show(mm(-6), METRIC) == "−6 mm"


def test_nothing_shows_as_nothing() -> None:
    assert RULER.show(ZERO, INCHES) == "0 in"
    assert RULER.show(ZERO, METRIC) == "0 mm"


@pytest.mark.parametrize(
    ("value", "in_inches", "metric"),
    [
        (mm("0.4"), "0.02 in", "0.4 mm"),
        (mm("0.635"), "0.03 in", "1 mm"),
        (mm("0.0001"), "0.000004 in", "0.0001 mm"),
        (mm("-0.4"), "−0.02 in", "−0.4 mm"),
        (mm("0.0016"), "0.0001 in", "0.002 mm"),
        (inches("1/64"), "1/64 in", "0.4 mm"),
    ],
)
def test_a_length_below_the_first_mark_is_never_shown_as_nothing(value: Length, in_inches: str, metric: str) -> None:
    assert RULER.show(value, INCHES) == in_inches
    assert RULER.show(value, METRIC) == metric


def test_both_systems_come_in_either_order() -> None:
    assert RULER.show_both(inches("17.75")) == "17 3/4 in (45 cm)"
    assert RULER.show_both(inches("17.75"), METRIC) == "45 cm (17 3/4 in)"


def test_an_author_can_choose_other_marks() -> None:
    quilter = Ruler(inch_long=inches("1/16"), metric_long=mm(1))
    assert quilter.show(inches("6.0625"), INCHES) == "6 1/16 in"
    assert quilter.show(mm(154), METRIC) == "15.4 cm"
    tailor = Ruler(inch_turn=inches(10), metric_turn=cm(50), metric_short=mm(2))
    assert tailor.show(inches("6.0625"), INCHES) == "6 1/16 in"
    assert tailor.show(mm(153), METRIC) == "15.4 cm"
    decimals = Ruler(inch_short=inches("1/10"), inch_long=inches("1/10"))
    assert decimals.show(inches("0.32"), INCHES) == "0.3 in"


@pytest.mark.parametrize(
    ("said", "exact", "system", "agrees"),
    [
        (inches("17.75"), inches("17.7"), INCHES, True),
        (inches("17.625"), inches("17.7"), INCHES, False),
        (inches("17.625"), inches("17.6875"), INCHES, True),
        (inches("17.6875"), inches("17.75"), INCHES, False),
        (inches("17.6875"), inches("17.7"), INCHES, True),
        (inches("17.7"), inches("17.75"), INCHES, True),
        (inches("17.6"), inches("17.75"), INCHES, False),
        (inches("17.71"), inches("17.75"), INCHES, False),
        (inches("1/3"), inches("1/3"), INCHES, True),
        (inches("1/3"), inches("3/8"), INCHES, False),
        (inches(1), inches("0.99"), INCHES, True),
        (inches(1), inches("15/16"), INCHES, False),
        (cm(45), mm("450.85"), METRIC, True),
        (cm("45.5"), mm("450.85"), METRIC, False),
        (cm("45.1"), mm("450.85"), METRIC, True),
        (cm("45.2"), mm("450.85"), METRIC, False),
        (cm("45.09"), mm("450.85"), METRIC, True),
        (cm("45.08"), mm("450.85"), METRIC, True),
        (cm("45.06"), mm("450.85"), METRIC, False),
        (mm("9.5"), mm("9.525"), METRIC, True),
        (mm("9.4"), mm("9.525"), METRIC, False),
        (mm("9.525"), mm("9.525"), METRIC, True),
    ],
)
def test_a_written_length_agrees_when_it_is_right_to_half_of_the_mark_on_which_it_sits(
    said: Length, exact: Length, system: System, agrees: bool
) -> None:
    assert RULER.agrees(said, exact, system) is agrees


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        (Fraction(0), "0"),
        (Fraction(3), "3"),
        (Fraction(3, 8), "3/8"),
        (Fraction(71, 4), "17 3/4"),
        (Fraction(1, 64), "1/64"),
        (Fraction(-3, 2), "−1 1/2"),
        (Fraction(-3, 8), "−3/8"),
        (Fraction(-2), "−2"),
        (Fraction(1, 100), "0.01"),
        (Fraction(-301, 100), "−3.01"),
    ],
)
def test_a_vulgar_fraction_is_whole_and_part(number: Fraction, shown: str) -> None:
    assert vulgar(number) == shown


@pytest.mark.parametrize(
    ("number", "places", "shown"),
    [
        ("0", 2, "0"),
        ("2.50", 2, "2.5"),
        ("0.125", 2, "0.13"),
        ("0.124", 2, "0.12"),
        ("-0.125", 2, "−0.13"),
        ("-0.001", 2, "0"),
        ("9.999", 2, "10"),
        ("2.5", 0, "3"),
        ("100", 0, "100"),
        ("1/3", 4, "0.3333"),
    ],
)
def test_a_decimal_has_no_needless_zeros_and_a_zero_before_the_point(number: str, places: int, shown: str) -> None:
    assert decimal(Fraction(number), places) == shown


@pytest.mark.parametrize(
    ("need", "yards", "metres"),
    [
        (ZERO, "0 yd", "0 m"),
        (mm(1), "1/8 yd", "0.1 m"),
        (length("1/8", Unit.YD), "1/8 yd", "0.2 m"),
        (length(1, Unit.YD), "1 yd", "1 m"),
        (length(1, Unit.YD) + mm("0.001"), "1 1/8 yd", "1 m"),
        (length("1.3", Unit.M), "1 1/2 yd", "1.3 m"),
        (length("1.3001", Unit.M), "1 1/2 yd", "1.4 m"),
        (length("1.21", Unit.M), "1 3/8 yd", "1.3 m"),
    ],
)
def test_cloth_to_buy_is_rounded_up_to_what_shops_sell(need: Length, yards: str, metres: str) -> None:
    assert show_to_buy(need, INCHES) == yards
    assert show_to_buy(need, METRIC) == metres
    assert to_buy(need, INCHES) >= need
    assert to_buy(need, METRIC) >= need


@pytest.mark.parametrize(
    ("told", "yards", "metres"),
    [
        (cm(25), "3/8 yd", "0.25 m"),
        (cm("57.5"), "3/4 yd", "0.575 m"),
        (length("1.3", Unit.M), "1 1/2 yd", "1.3 m"),
        (inches(36), "1 yd", "1 m"),
        (inches(12), "1/3 yd", "0.4 m"),
        (inches(10), "10 in", "0.3 m"),
        (inches("10.3"), "3/8 yd", "0.3 m"),
        (length("5/8", Unit.YD), "5/8 yd", "0.6 m"),
    ],
)
def test_cloth_that_an_author_tells_to_buy_is_not_rounded_to_something_else(
    told: Length, yards: str, metres: str
) -> None:
    assert show_told_to_buy(told, INCHES) == yards
    assert show_told_to_buy(told, METRIC) == metres


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (mm("15.875"), Unit.CM, "1.6 cm"),
        (mm("15.875"), Unit.MM, "16 mm"),
        (mm("450.85"), Unit.CM, "45 cm"),
        (mm("450.85"), Unit.M, "0.45 m"),
        (mm(16), Unit.IN, "5/8 in"),
        (mm("0.635"), Unit.IN, "0.03 in"),
        (inches("17.75"), Unit.YD, "0.49 yd"),
        (length("1/8", Unit.YD), Unit.YD, "1/8 yd"),
        (cm(152), Unit.FT, "4.99 ft"),
        (cm("152.4"), Unit.FT, "5 ft"),
        (inches(-1), Unit.IN, "−1 in"),
    ],
)
def test_a_length_is_shown_in_a_wanted_unit(value: Length, unit: Unit, shown: str) -> None:
    assert show_in_unit(value, unit) == shown


@pytest.mark.parametrize(
    ("typed", "metric", "in_inches"),
    [
        ("25.7 cm", "25.7 cm", "10 1/8 in"),
        ("184 mm", "18.4 cm", "7 1/4 in"),
        ("25.5 cm", "25.5 cm", "10 in"),
        ("10 in", "25.5 cm", "10 in"),
        ("1.2 m", "120 cm", "47 1/4 in"),
    ],
)
def test_what_was_written_to_the_millimetre_is_shown_so(typed: str, metric: str, in_inches: str) -> None:
    value = parse_length(typed).value
    assert RULER.show(value, System.CENTIMETRES) == metric
    assert RULER.show(value, System.INCHES) == in_inches


def test_what_follows_from_a_length_to_the_millimetre_is_shown_so() -> None:
    side, allowance = parse_length("25.7 cm").value, parse_length("1 cm").value
    assert RULER.show(side + allowance * 2, System.CENTIMETRES) == "27.7 cm"
    assert RULER.show(side * 2 - cm(10), System.CENTIMETRES) == "41.4 cm"
    assert RULER.show(-(side / 2), System.CENTIMETRES) == "−12.9 cm"


def test_lengths_that_differ_only_in_how_finely_they_were_written_are_the_same() -> None:
    assert parse_length("25.7 cm").value == cm("25.7")
    assert hash(parse_length("25.7 cm").value) == hash(cm("25.7"))


def test_what_must_be_enough_goes_up_to_the_next_mark_however_finely_it_was_written() -> None:
    assert RULER.show(parse_length("106.2 cm").value, System.CENTIMETRES, Rounding.ENOUGH) == "106.5 cm"
