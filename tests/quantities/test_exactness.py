"""Lengths are exact: what they can do, and that no float enters."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sitegen.quantities import (
    RULER,
    ZERO,
    Area,
    BySize,
    FabricWeight,
    Length,
    Ratio,
    System,
    Unit,
    cm,
    given,
    inches,
    length,
    mm,
    parse_length,
    plus,
)


def test_an_inch_is_25_4_millimetres_exactly() -> None:
    assert inches(1) == mm("25.4") == Length(Fraction(127, 5))


def test_the_units_of_a_system_hang_together() -> None:
    assert length(1, Unit.YD) == length(3, Unit.FT) == inches(36)
    assert length(1, Unit.M) == cm(100) == mm(1000)
    assert [unit.system for unit in Unit] == [System.CENTIMETRES] * 3 + [System.INCHES] * 3


def test_a_text_is_read_as_a_fraction_or_a_decimal() -> None:
    assert inches("3/8") == inches("0.375") == inches(Fraction(3, 8))


def test_lengths_can_be_reckoned_with() -> None:
    assert inches(2) + inches(3) == inches(5)
    assert inches(2) - inches(3) == -inches(1) == inches(-1)
    assert abs(inches(-1)) == inches(1)
    assert inches(2) * 3 == 3 * inches(2) == inches(6)
    assert inches(2) * Fraction(1, 3) == inches("2/3")
    assert inches(2) / 3 == inches("2/3")
    assert inches(3).over(inches(2)) == Fraction(3, 2)
    assert inches(1).in_unit(Unit.CM) == Fraction("2.54")


def test_only_nothing_is_false() -> None:
    assert not ZERO
    assert mm(Fraction(1, 10**9))
    assert inches(-1)


def test_lengths_are_ordered_and_can_be_looked_up() -> None:
    assert sorted([cm(3), inches(1), mm(4)]) == [mm(4), inches(1), cm(3)]
    assert {inches(1): "an inch"}[mm("25.4")] == "an inch"


def test_a_length_sits_on_a_mark_when_it_is_a_whole_number_of_steps() -> None:
    assert inches("5/8").sits_on(inches("1/8"))
    assert not inches("5/8").sits_on(inches("1/4"))
    assert not inches("5/8").sits_on(mm(1))
    assert ZERO.sits_on(mm(1))
    assert inches("-1/8").sits_on(inches("1/8"))


def test_nothing_goes_into_no_length() -> None:
    with pytest.raises(ZeroDivisionError):
        inches(1).over(ZERO)


INEXACT: list[tuple[Callable[[], Any], str]] = [
    (lambda: inches(0.1), "int or Fraction or str, got float 0.1"),  # type: ignore[arg-type]
    (lambda: cm(2.5), "int or Fraction or str, got float 2.5"),  # type: ignore[arg-type]
    (lambda: length(Decimal("2.5"), Unit.M), "int or Fraction or str, got Decimal Decimal('2.5')"),  # type: ignore[arg-type]
    (lambda: Length(0.5), "Fraction, got float 0.5"),  # type: ignore[arg-type]
    (lambda: Length(5), "Fraction, got int 5"),  # type: ignore[arg-type]
    (lambda: inches(1) * 0.5, "Fraction, got float 12.7"),  # type: ignore[operator]
    (lambda: inches(1) / 2.0, "Fraction, got float 12.7"),  # type: ignore[operator]
    (lambda: Ratio(0.85), "Fraction, got float 0.85"),  # type: ignore[arg-type]
    (lambda: Ratio.percent(12.5), "int or Fraction or str, got float 12.5"),  # type: ignore[arg-type]
    (lambda: Area(2.0), "Fraction, got float 2.0"),  # type: ignore[arg-type]
    (lambda: FabricWeight(180.0), "Fraction, got float 180.0"),  # type: ignore[arg-type]
    (lambda: FabricWeight.ounces_per_square_yard(4.5), "int or Fraction or str, got float 4.5"),  # type: ignore[arg-type]
    (lambda: given("ratio", 0.85), "Length or Ratio or Area or int or Fraction, got float 0.85"),  # type: ignore[arg-type]
]


@pytest.mark.parametrize(("make", "message"), INEXACT)
def test_no_float_can_enter(make: Callable[[], Any], message: str) -> None:
    with pytest.raises(TypeError) as caught:
        make()
    assert str(caught.value) == f"numbers are exact here: expected {message}"


def test_a_text_that_is_no_number_is_an_error() -> None:
    with pytest.raises(ValueError, match="Invalid literal for Fraction: 'a bit'"):
        inches("a bit")


EXACT = [
    (inches(1), "mm"),
    (Ratio.percent(85), "value"),
    (Area(Fraction(1)), "mm2"),
    (FabricWeight(Fraction(180)), "gsm"),
    (BySize((1, 2)), "values"),
    (parse_length("1 in"), "value"),
    (given("hem", inches(1)), "value"),
    (plus(given("hem", inches(1))), "count"),
    (RULER, "inch_long"),
]


@pytest.mark.parametrize(("thing", "field"), EXACT)
def test_nothing_exact_can_be_changed_afterwards(thing: object, field: str) -> None:
    with pytest.raises(AttributeError):
        setattr(thing, field, getattr(thing, field))


def test_measures_are_ordered_by_size() -> None:
    assert Ratio.percent(80) < Ratio.percent(85)
    assert Area(Fraction(1)) < Area(Fraction(2))
    assert FabricWeight(Fraction(150)) < FabricWeight(Fraction(180))
