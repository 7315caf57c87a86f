"""Every notation in which people type a length, a number, a ratio or a weight."""

from __future__ import annotations

import unicodedata
from fractions import Fraction

import pytest

from sitegen.quantities import (
    FRACTION_SIGNS,
    UNIT_NAMES,
    FabricWeight,
    Ratio,
    Typed,
    Unit,
    cm,
    inches,
    length,
    length_at,
    parse_length,
    parse_number,
    parse_range,
    parse_ratio,
    parse_weight,
)

NOTATIONS = [
    ("3/8 in", "3/8", Unit.IN),
    ('3/8"', "3/8", Unit.IN),
    ("3/8″", "3/8", Unit.IN),
    ("3/8”", "3/8", Unit.IN),
    ("3/8''", "3/8", Unit.IN),
    ('3/8" ', "3/8", Unit.IN),
    ('⅜"', "3/8", Unit.IN),
    ("⅜ in", "3/8", Unit.IN),
    ("1 1/2 in", "3/2", Unit.IN),
    ('1-1/2"', "3/2", Unit.IN),
    ("1‑1/2 in", "3/2", Unit.IN),
    ("1 and 1/2 in", "3/2", Unit.IN),
    ("1 + 1/2 in", "3/2", Unit.IN),
    ("1½ in", "3/2", Unit.IN),
    ("1 ½ in", "3/2", Unit.IN),
    ("1-½ in", "3/2", Unit.IN),
    ("2⅝", "21/8", None),
    ("1\t1/2 in", "3/2", Unit.IN),
    ("1\u00a01/2\u00a0in", "3/2", Unit.IN),
    ("1\u20091/2\u202fin", "3/2", Unit.IN),
    ("1/2 in", "1/2", Unit.IN),
    ("1⁄2 in", "1/2", Unit.IN),
    ("1 1⁄2 in", "3/2", Unit.IN),
    ("1\u200b1⁄2 in", "3/2", Unit.IN),
    ("11⁄2 in", "11/2", Unit.IN),
    (".5 in", "1/2", Unit.IN),
    ("0.5 in", "1/2", Unit.IN),
    ("0.6 cm", "3/5", Unit.CM),
    ("0,6 cm", "3/5", Unit.CM),
    ("1,5 cm", "3/2", Unit.CM),
    ("0,125 in", "1/8", Unit.IN),
    ("1.125 in", "9/8", Unit.IN),
    ("6mm", "6", Unit.MM),
    ("6-mm", "6", Unit.MM),
    ("2 1/4 yd", "9/4", Unit.YD),
    ("2¼ yds", "9/4", Unit.YD),
    ("1/3 yd", "1/3", Unit.YD),
    ("1.5 m", "3/2", Unit.M),
    ("1 M", "1", Unit.M),
    ("6 feet", "6", Unit.FT),
    ("5/8 inch", "5/8", Unit.IN),
    ("5/8-inch", "5/8", Unit.IN),
    ("5/8 INCHES", "5/8", Unit.IN),
    ("3/8 in.", "3/8", Unit.IN),
    ("9/8 in", "9/8", Unit.IN),
    ("0 in", "0", Unit.IN),
    ("123456 mm", "123456", Unit.MM),
    ("0.123456 m", "0.123456", Unit.M),
    ("\ufeff 3/8 in\n", "3/8", Unit.IN),
]


@pytest.mark.parametrize(("text", "number", "unit"), NOTATIONS)
def test_a_notation_gives_its_exact_length(text: str, number: str, unit: Unit | None) -> None:
    typed = parse_length(text, Unit.IN)
    assert typed.value == length(number, unit or Unit.IN)
    assert typed.unit is (unit or Unit.IN)
    assert typed.text == text.strip().lstrip("\ufeff ") == text[typed.start : typed.end]


@pytest.mark.parametrize("name", UNIT_NAMES)
def test_every_unit_name_is_read_in_small_and_capital_letters(name: str) -> None:
    assert parse_length(f"2 {name}").value == length(2, UNIT_NAMES[name])
    assert parse_length(f"2{name.upper()}").value == length(2, UNIT_NAMES[name])


@pytest.mark.parametrize("sign", FRACTION_SIGNS)
def test_every_fraction_sign_has_the_value_that_unicode_gives_it(sign: str) -> None:
    """The Unicode Standard: the compatibility decomposition of a fraction sign is its digits and a fraction slash."""
    assert FRACTION_SIGNS[sign] == Fraction(unicodedata.normalize("NFKC", sign).replace("⁄", "/"))


def test_an_eighth_behind_a_whole_number_is_not_read_as_the_normalised_text_would_be() -> None:
    """The NFKC form of 2⅝ is 25⁄8, which is 3.125: the sign is read as it stands. Source: Unicode, NFKC."""
    assert parse_length("2⅝ in").value == inches("2.625")


def test_a_bare_number_takes_the_default_unit() -> None:
    assert parse_length("33 1/2", Unit.IN) == Typed(inches("33.5"), Unit.IN, "33 1/2", 0, 6, number="33 1/2")
    assert parse_length("33.5", Unit.CM).value == cm("33.5")


def test_a_unit_that_was_typed_wins_over_the_default() -> None:
    assert parse_length("6 mm", Unit.IN).unit is Unit.MM


@pytest.mark.parametrize(
    "text", ["5/8 in (1.5 cm)", "5/8 in [1.5 cm]", "5/8 in / 1.5 cm", "5/8 in/1.5 cm", "5/8 in = 1.5 cm"]
)
def test_a_dual_length_keeps_both(text: str) -> None:
    typed = parse_length(text)
    assert typed.value == inches("5/8")
    assert typed.text == text
    assert typed.end == len(text)
    assert typed.pair is not None
    assert typed.pair.value == cm("1.5")
    assert text[typed.pair.start : typed.pair.end] == typed.pair.text == "1.5 cm"


def test_the_first_of_a_dual_length_may_take_the_default_unit() -> None:
    typed = parse_length("3/8 (1 cm)", Unit.IN)
    assert (typed.value, typed.pair and typed.pair.value) == (inches("3/8"), cm(1))


RANGES = [
    ("1/4 to 3/8 in", "1/4", "3/8"),
    ("1/4 TO 3/8 in", "1/4", "3/8"),
    ("1/4-3/8 in", "1/4", "3/8"),
    ("1/4 - 3/8 in", "1/4", "3/8"),
    ("1/4–3/8 in", "1/4", "3/8"),
    ("1/4 in to 3/8 in", "1/4", "3/8"),
    ('1/4" to 3/8"', "1/4", "3/8"),
    ("1/4 in to 3/8", "1/4", "3/8"),
    ("¼-⅜ in", "1/4", "3/8"),
    ("1-2 in", "1", "2"),
    ("8—10 in", "8", "10"),
    ("1-1/2-2 in", "3/2", "2"),
    ("1 1/2-1 3/4 in", "3/2", "7/4"),
    ("1½-1¾ in", "3/2", "7/4"),
    ("5-1/2 to 6-1/2 in", "11/2", "13/2"),
]


@pytest.mark.parametrize(("text", "low", "high"), RANGES)
def test_a_range_keeps_both_ends(text: str, low: str, high: str) -> None:
    typed = parse_range(text)
    assert (typed.value, typed.high, typed.unit) == (inches(low), inches(high), Unit.IN)
    assert typed.text == text


def test_a_hyphen_between_a_whole_number_and_a_fraction_glues_them() -> None:
    typed = parse_range("1-1/2 in")
    assert (typed.value, typed.high) == (inches("1.5"), None)


def test_a_range_takes_the_default_unit() -> None:
    typed = parse_range("2.5 to 7.5", Unit.CM)
    assert (typed.value, typed.high) == (cm("2.5"), cm("7.5"))


def test_a_range_has_a_range_as_its_pair() -> None:
    typed = parse_range("1 to 3 in (2.5 to 7.5 cm)")
    assert typed.pair is not None
    assert (typed.pair.value, typed.pair.high) == (cm("2.5"), cm("7.5"))
    assert (typed.pair.number, typed.pair.high_number) == ("2.5", "7.5")


def test_a_length_is_read_from_the_middle_of_a_sentence() -> None:
    sentence = "Sew with a 5/8 in (1.5 cm) seam, then trim."
    typed = length_at(sentence, sentence.index("5/8"))
    assert (typed.value, typed.pair and typed.pair.value) == (inches("5/8"), cm("1.5"))
    assert sentence[typed.start : typed.end] == typed.text == "5/8 in (1.5 cm)"


@pytest.mark.parametrize(
    "behind", [" (see the drawing)", " (2 layers)", " (1.5 cm at the hem)", " (1 in)", " = 1 in", " / 2", " (1.5"]
)
def test_a_bracket_in_prose_that_holds_no_other_length_is_left_alone(behind: str) -> None:
    typed = length_at(f"5/8 in{behind}", 0)
    assert (typed.text, typed.pair) == ("5/8 in", None)


NUMBERS = [
    ("1", "1"),
    (" 1.5 ", "3/2"),
    ("1,5", "3/2"),
    (".5", "1/2"),
    ("1 1/2", "3/2"),
    ("1-1/2", "3/2"),
    ("½", "1/2"),
    ("2 ⅔", "8/3"),
    ("1/3", "1/3"),
]


@pytest.mark.parametrize(("text", "number"), NUMBERS)
def test_a_bare_number_is_exact(text: str, number: str) -> None:
    assert parse_number(text) == Fraction(number)


RATIOS = [
    ("80%", "4/5", False),
    ("80 %", "4/5", False),
    (" 85 percent ", "17/20", False),
    ("85 PER CENT", "17/20", False),
    ("12,5%", "1/8", False),
    ("33 1/3%", "1/3", False),
    ("0%", "0", False),
    ("150%", "3/2", False),
    ("0.8", "4/5", False),
    ("5", "5", False),
    ("4/5", "4/5", True),
    ("2⁄3", "2/3", True),
    ("⅔", "2/3", True),
]


@pytest.mark.parametrize(("text", "value", "as_fraction"), RATIOS)
def test_a_ratio_is_exact_and_remembers_whether_it_was_a_fraction(text: str, value: str, as_fraction: bool) -> None:
    ratio = parse_ratio(text)
    assert ratio == Ratio(Fraction(value))
    assert ratio.as_fraction is as_fraction


@pytest.mark.parametrize("text", ["180 g/m2", "180 g/m²", "180g/m2", " 180 gsm ", "180 GSM", "180\ngsm"])
def test_metric_cloth_weight_is_read(text: str) -> None:
    assert parse_weight(text) == FabricWeight(Fraction(180))


@pytest.mark.parametrize("text", ["4 1/2 oz/yd2", "4.5 oz/yd²", "4½oz", "4,5 OZ"])
def test_cloth_weight_in_ounces_is_read(text: str) -> None:
    assert parse_weight(text) == FabricWeight.ounces_per_square_yard("4.5")
