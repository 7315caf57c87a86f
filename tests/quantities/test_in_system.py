"""What was typed, in the system that a reader chose."""

import pytest

from sitegen.quantities import System, in_system


@pytest.mark.parametrize(
    ("typed", "in_inches", "in_centimetres"),
    [
        ("1/4 in", "1/4 in", "6 mm"),
        ("10 in", "10 in", "25.5 cm"),
        ("2.5 cm", "1 in", "2.5 cm"),
        ("10 in (25 cm)", "10 in", "25 cm"),
        ("25 cm (10 in)", "10 in", "25 cm"),
        ("2.5 cm wide", "1 in wide", "2.5 cm wide"),
        ("80/12", "80/12", "80/12"),
        ("1", "1", "1"),
        ("2 spools", "2 spools", "2 spools"),
        ("1 to 2 in", "1 to 2 in", "1 to 2 in"),
        ("", "", ""),
    ],
)
def test_a_typed_length_is_told_in_each_system(typed: str, in_inches: str, in_centimetres: str) -> None:
    assert in_system(typed, System.INCHES) == in_inches
    assert in_system(typed, System.CENTIMETRES) == in_centimetres


def test_an_amount_is_never_less_in_the_other_system() -> None:
    assert in_system("80 in", System.CENTIMETRES, enough=True) == "203.5 cm"
    assert in_system("65 cm", System.INCHES, enough=True) == "25 5/8 in"
    assert in_system("1 yd", System.CENTIMETRES, enough=True) == "91.5 cm"
