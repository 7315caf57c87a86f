"""Ratios, areas, weights of cloth, and values by size."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import Area, BySize, FabricWeight, Ratio, Unit, cm, inches, length, mm, rectangle


def test_a_ratio_takes_its_share_of_a_length() -> None:
    assert Ratio.percent(85).of(inches(20)) == inches(17)
    assert Ratio.percent("12.5").of(cm(10)) == mm("12.5")


def test_ratios_add_and_take_off() -> None:
    assert Ratio.percent(40) + Ratio.percent(15) == Ratio(Fraction(11, 20))
    assert Ratio.percent(40) - Ratio.percent(15) == Ratio.percent(25)


def test_how_a_ratio_was_written_does_not_make_it_another_ratio() -> None:
    assert Ratio(Fraction(2, 3), as_fraction=True) == Ratio(Fraction(2, 3))
    assert hash(Ratio(Fraction(2, 3), as_fraction=True)) == hash(Ratio(Fraction(2, 3)))


def test_ratios_are_ordered_by_their_value() -> None:
    assert sorted([Ratio.percent(90), Ratio.percent(80)]) == [Ratio.percent(80), Ratio.percent(90)]


def test_an_area_is_width_times_height() -> None:
    area = rectangle(inches(2), inches(3))
    assert area.in_square(Unit.IN) == 6
    assert area.in_square(Unit.CM) == Fraction("38.7096")
    assert area.along(inches(2)) == inches(3)


def test_areas_add_take_off_multiply_and_divide() -> None:
    square = rectangle(cm(10), cm(10))
    assert square + square == square * 2 == Area(Fraction(20_000))
    assert square - square == Area(Fraction(0))
    assert (square * 3).over(square) == 3


def test_a_side_of_nothing_has_no_other_side() -> None:
    with pytest.raises(ZeroDivisionError):
        rectangle(inches(2), inches(3)).along(inches(0))


def test_cloth_weighs_its_weight_per_area_times_its_area() -> None:
    jersey = FabricWeight(Fraction(180))
    assert jersey.grams(rectangle(length(1, Unit.M), length("1.5", Unit.M))) == 270


def test_ounces_per_square_yard_go_there_and_back_exactly() -> None:
    assert FabricWeight.ounces_per_square_yard("4.5").in_ounces_per_square_yard() == Fraction(9, 2)


def test_one_value_serves_every_size() -> None:
    same = BySize((inches(1),))
    assert not same.differs
    assert [same.at(index) for index in range(3)] == [inches(1)] * 3


def test_each_size_has_its_own_value() -> None:
    run = BySize((31, 33, 35))
    assert run.differs
    assert [run.at(index) for index in range(3)] == [31, 33, 35]
    assert list(run) == [31, 33, 35]


def test_a_run_that_is_too_short_is_an_error() -> None:
    with pytest.raises(IndexError):
        BySize((31, 33)).at(2)


def test_every_value_of_a_run_is_changed() -> None:
    assert BySize((31, 33)).map(inches) == BySize((inches(31), inches(33)))
