"""Which value of a run of sizes stands out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.quantities import inches
from sitegen.sewing import Break, breaks

ASTM_D5585_BUST = "31.125 31.75 33 34.125 35.25 36.25 37.25 38.75 40.375 42.125 44 46"
ASTM_D5585_HEAD = "21.25 21.25 21.5 21.5 21.75 21.75 22 22 22.25 22.25 22.5 22.5"
ASTM_D5585_WAIST = "25.375 26.125 26.875 27.625 28.5 29.5 30.5 32.25 34 36 38.25 40.5"


def run(text: str) -> list:
    return [inches(number) for number in text.split()]


@pytest.mark.parametrize("row", [ASTM_D5585_BUST, ASTM_D5585_HEAD, ASTM_D5585_WAIST])
def test_published_grades_have_no_break(row: str) -> None:
    """Rows of ASTM D5585-11e1 as shown by ASTM International: uneven, and yet right."""
    assert breaks(run(row)) == ()


def test_lone_value_off_an_even_run_is_found_with_what_it_should_be() -> None:
    assert breaks(run("12.5 12.875 13.25 13.5 14 14.375")) == (Break(3, inches("13.625")),)


def test_slip_beside_a_change_of_step_is_found() -> None:
    assert breaks(run("30 31 32.5 33 35 37 39")) == (Break(2, inches(32)),)


def test_change_of_step_is_no_break() -> None:
    assert breaks(run("30 31 32 33 35 37 39")) == ()


def test_slip_in_the_second_value_is_found() -> None:
    assert breaks(run("30 31.5 32 33 34")) == (Break(1, inches(31)),)


def test_swapped_columns_turn_back() -> None:
    found = breaks(run("30 32 31 33.5 36 38"))
    assert [each.index for each in found] == [2] or [each.index for each in found] == [1]


def test_run_that_falls_evenly_is_no_break() -> None:
    assert breaks(run("39 38 37 36 35")) == ()


def test_too_short_runs_are_left_alone() -> None:
    assert breaks(run("30 29")) == ()
    assert breaks(run("30")) == ()


@given(st.integers(1, 400), st.integers(1, 20), st.integers(4, 12))
def test_even_runs_never_break(first: int, step: int, count: int) -> None:
    values = [inches(1) * first / 8 + inches(1) * step * index / 8 for index in range(count)]
    assert breaks(values) == ()


@given(st.integers(100, 400), st.integers(2, 20), st.integers(5, 12), st.data())
def test_any_inner_slip_in_an_even_run_is_put_right(first: int, step: int, count: int, data: st.DataObject) -> None:
    index = data.draw(st.integers(1, count - 2))
    slip = data.draw(st.sampled_from([-1, 1]))
    values = [inches(1) * (first + step * i) / 8 for i in range(count)]
    right = values[index]
    values[index] = right + inches(1) * slip / 8
    assert Break(index, right) in breaks(values)
