"""Units, conversions and printed pairs, held against published sources and against another program's units."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest

from sitegen.quantities import (
    RULER,
    FabricWeight,
    System,
    Unit,
    decimal,
    inches,
    length,
    pair_agrees,
    parse_length,
    parse_range,
    parse_weight,
    rectangle,
)

OTHER_PROGRAM = pint.UnitRegistry(non_int_type=Fraction)
ITS_NAMES = {
    Unit.MM: "millimetre",
    Unit.CM: "centimetre",
    Unit.M: "metre",
    Unit.IN: "inch",
    Unit.FT: "foot",
    Unit.YD: "yard",
}
NUMBERS = [Fraction(1), Fraction(3, 8), Fraction(71, 4), Fraction(1, 3), Fraction("39.57")]


def agrees(text: str) -> bool:
    typed = parse_range(text)
    assert typed.pair is not None
    return pair_agrees(typed, typed.pair)


def test_the_yard_of_1959_and_what_hangs_on_it() -> None:
    """National Bureau of Standards, Addendum to Circular 572 (1960): 1 yd = 0.9144 m exactly, 1 in = 25.4 mm."""
    assert length(1, Unit.YD).in_unit(Unit.M) == Fraction("0.9144")
    assert inches(1).in_unit(Unit.MM) == Fraction("25.4")
    assert inches(1).in_unit(Unit.CM) == Fraction("2.54")
    assert length(1, Unit.FT).in_unit(Unit.M) == Fraction("0.3048")


def test_the_ounce_of_1959() -> None:
    """National Bureau of Standards, Addendum to Circular 572 (1960): 1 lb = 0.45359237 kg exactly; 16 oz to the lb."""
    one_yard = rectangle(length(1, Unit.YD), length(1, Unit.YD))
    assert FabricWeight.ounces_per_square_yard(16).grams(one_yard) == Fraction("453.59237")


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize("given", Unit)
@pytest.mark.parametrize("wanted", Unit)
def test_every_conversion_of_length_is_that_of_another_program(number: Fraction, given: Unit, wanted: Unit) -> None:
    """pint with exact fractions: every unit into every unit."""
    its = OTHER_PROGRAM.Quantity(number, ITS_NAMES[given]).to(ITS_NAMES[wanted]).magnitude
    assert length(number, given).in_unit(wanted) == its


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize("unit", Unit)
def test_every_conversion_of_area_is_that_of_another_program(number: Fraction, unit: Unit) -> None:
    """pint with exact fractions: square units into square millimetres."""
    its = OTHER_PROGRAM.Quantity(number, f"{ITS_NAMES[unit]} ** 2").to("millimetre ** 2").magnitude
    assert rectangle(length(number, unit), length(1, unit)).mm2 == its


@pytest.mark.parametrize("text", ["1 oz/yd2", "4.5 oz/yd2", "10 1/2 oz/yd2", "180 g/m2"])
def test_cloth_weights_are_those_of_another_program(text: str) -> None:
    """pint with exact fractions: ounces per square yard into grams per square metre and back."""
    number, unit = text.rsplit(" ", 1)
    names = {"oz/yd2": "ounce / yard ** 2", "g/m2": "gram / metre ** 2"}
    its = OTHER_PROGRAM.Quantity(sum(map(Fraction, number.split())), names[unit])
    weight = parse_weight(text)
    assert weight.gsm == its.to(names["g/m2"]).magnitude
    assert weight.in_ounces_per_square_yard() == its.to(names["oz/yd2"]).magnitude


def test_a_converted_length_is_rounded_to_the_precision_of_the_original() -> None:
    """NIST SP 811, Appendix B.7.2: 36 ft is 10.9728 m, which becomes 11.0 m."""
    original = parse_length("36 ft").value
    assert original.in_unit(Unit.M) == Fraction("10.9728")
    assert decimal(original.in_unit(Unit.M), 1) == "11"
    assert agrees("36 ft (11.0 m)")
    assert not agrees("36 ft (11.1 m)")


def test_whole_inches_become_whole_centimetres() -> None:
    """NIST Metric Style Guide, LC 1137: 36 in is 91 cm, not 91.44 cm."""
    original = parse_length("36 in").value
    assert original.in_unit(Unit.CM) == Fraction("91.44")
    assert decimal(original.in_unit(Unit.CM), 0) == "91"
    assert agrees("36 in (91 cm)")


def test_tenths_of_an_inch_become_tenths_of_a_centimetre() -> None:
    """NIST Metric Style Guide, LC 1137: 40.1 in is 101.9 cm, not 101.854 cm."""
    original = parse_length("40.1 in").value
    assert original.in_unit(Unit.CM) == Fraction("101.854")
    assert decimal(original.in_unit(Unit.CM), 1) == "101.9"
    assert agrees("40.1 in (101.9 cm)")
    assert not agrees("40.1 in (101.7 cm)")


HANDBOOK = [
    "1/4 in (6 mm)", "1/2 in (1.3 cm)", "1 in (2.5 cm)", "2 1/2 in (6.5 cm)", "4 in (10 cm)", "28 in (71 cm)",
    "60 in (152.5 cm)", "1 to 3 in (2.5 to 7.5 cm)",
]  # fmt: skip


@pytest.mark.parametrize("text", HANDBOOK)
def test_a_pair_of_the_handbooks_agrees(text: str) -> None:
    """Sewing handbooks, and an extension leaflet on hems (publisher not visible, believed Oregon State Univ.)."""
    assert agrees(text)


@pytest.mark.parametrize(
    ("text", "metric"), [("1/4 in", "6 mm"), ("1/2 in", "1.3 cm"), ("1 in", "2.5 cm"), ("4 in", "10 cm"),
                         ("28 in", "71 cm"), ("60 in", "152.5 cm")]
)  # fmt: skip
def test_the_ruler_shows_what_the_handbooks_print(text: str, metric: str) -> None:
    """Sewing handbooks, as above; they print 2 1/2 in as 6.5 cm, where the ruler says 6.4 (6.35 exactly)."""
    assert RULER.show(parse_length(text).value, System.CENTIMETRES) == metric


@pytest.mark.parametrize(("text", "centimetres"), [("5/8 in (1.59 cm)", "1.59"), ("1/4 in (.64 cm)", "0.64")])
def test_a_pair_of_the_professional_standard_agrees(text: str, centimetres: str) -> None:
    """Association of Sewing and Design Professionals, quality standards, section 19."""
    assert agrees(text)
    assert decimal(parse_length(text).value.in_unit(Unit.CM), 2) == centimetres


def test_of_two_pairs_in_the_regulation_on_sleepwear_one_agrees() -> None:
    """16 CFR 1615.1(c): 40 cm (15.75 in) is 40.005 cm; 64.8 cm (25.75 in) is 65.405 cm, 6 mm more."""
    assert parse_length("15.75 in").value.in_unit(Unit.CM) == Fraction("40.005")
    assert parse_length("25.75 in").value.in_unit(Unit.CM) == Fraction("65.405")
    assert agrees("40 cm (15.75 in)")
    assert not agrees("64.8 cm (25.75 in)")


@pytest.mark.parametrize(
    "text",
    ["1/4 in (0.25 cm)", "1 m (39.57 in)", "60 cm (24 in)", "36 in (90 cm)", "1/4 in = 0.25 cm", "1 m = 39.57 in"],
)
def test_a_wrong_value_seen_in_print_does_not_agree(text: str) -> None:
    """A conversion chart and a teaching page (names withheld); truly 0.635 cm, 39.37 in, 23.62 in and 91.44 cm."""
    assert not agrees(text)


@pytest.mark.parametrize(("yards", "centimetres"), [("1/8", "11.4"), ("1/4", "22.9"), ("1/2", "45.7"), ("1", "91.4")])
def test_parts_of_a_yard_in_centimetres(yards: str, centimetres: str) -> None:
    """Arithmetic on the yard of 1959: an eighth of a yard is 4 1/2 in, which is 11.43 cm."""
    assert decimal(length(yards, Unit.YD).in_unit(Unit.CM), 1) == centimetres
