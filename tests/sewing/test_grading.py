"""Steps from size to size, and values between sizes."""

from __future__ import annotations

from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, percent, told, worked

from sitegen.quantities import ZERO, Worked, inches
from sitegen.sewing import grading

BUSTS = [worked(33, "bust of S"), worked(36, "bust of M"), worked(40, "bust of L")]
CHESTS = [worked(36, "chest of S"), worked(40, "chest of M"), worked(45, "chest of L")]


def run(steps: list[int]) -> list[Worked]:
    return [worked(number, f"size {number}") for number in accumulate(steps)]


@given(st.lists(drawn(-1600), min_size=1, max_size=12))
def test_steps_lead_from_the_first_size_to_the_last(values: list[Worked]) -> None:
    total = sum((step.length for step in grading.steps(values)), ZERO)
    assert values[0].length + total == values[-1].length


def test_half_way_between_two_sizes() -> None:
    assert grading.between("half size", CHESTS[1], CHESTS[2], percent(50)).length == inches("42.5")


@given(st.lists(st.integers(1, 9), min_size=2, max_size=9), st.data())
def test_body_of_a_size_gives_the_value_of_that_size(steps: list[int], data: st.DataObject) -> None:
    bodies = run(steps)
    values = [worked(number) for number in data.draw(st.permutations(range(len(steps))))]
    for body, value in zip(bodies, values, strict=True):
        assert grading.for_body("value", body, bodies, values).length == value.length


@given(st.lists(st.integers(1, 9), min_size=2, max_size=9), st.data())
def test_values_that_go_with_the_body_are_met_exactly_between_sizes(steps: list[int], data: st.DataObject) -> None:
    bodies = run(steps)
    values = [worked(each.length.mm * 2, "twice the body") for each in bodies]
    body = grading.between("body", bodies[-2], bodies[-1], percent(data.draw(st.integers(0, 100))))
    assert grading.for_body("value", body, bodies, values).length == inches(body.length.mm * 2)


def test_value_between_sizes_says_that_it_is_a_hint() -> None:
    value = grading.for_body("chest", worked(38, "bust"), BUSTS, CHESTS)
    assert value.length == inches("42.5")
    assert told(value)[-1].endswith("(between sizes, a hint only)")


@pytest.mark.parametrize("bust", ["32.9", "40.1"])
def test_body_outside_the_sizes_is_refused(bust: str) -> None:
    with pytest.raises(ValueError, match="outside the sizes"):
        grading.for_body("chest", worked(bust, "bust"), BUSTS, CHESTS)


def test_bodies_that_do_not_rise_are_refused() -> None:
    with pytest.raises(ValueError, match="must rise"):
        grading.for_body("chest", worked(34), [worked(34), worked(34)], CHESTS[:2])


def test_unequal_counts_are_refused() -> None:
    with pytest.raises(ValueError, match="one body measurement and one value"):
        grading.for_body("chest", worked(34), BUSTS, CHESTS[:2])
    with pytest.raises(ValueError, match="one body measurement and one value"):
        grading.for_body("chest", worked(34), [], [])
