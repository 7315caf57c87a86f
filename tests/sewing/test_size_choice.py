"""Which size a measurement asks for, and which one several measurements agree on."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from sewing.lengths import told, worked

from sitegen.quantities import Worked, inches
from sitegen.sewing import size_choice
from sitegen.sewing.size_choice import Choice, Fit, Row

HALF_INCH = worked("1/2", "tolerance")


def row(measure: str, bodies: Sequence[int], finished: Sequence[int] = (), least: Worked | None = None) -> Row:
    return Row(
        measure,
        tuple(worked(number, f"{measure} of size {size}") for size, number in enumerate(bodies, start=1)),
        tuple(worked(number, f"garment {size}") for size, number in enumerate(finished, start=1)),
        least,
    )


BUST = row("bust", [32, 34, 36, 40])
WAIST = row("waist", [25, 27, 29, 33])


def choice(number: int | str, *, stretches: bool = False, of: Row = BUST) -> Choice:
    return size_choice.choose(of, worked(number, of.measure), HALF_INCH, stretches=stretches)


RUNS = st.lists(st.integers(0, 48), min_size=1, max_size=9).map(
    lambda steps: Row("bust", tuple(worked(f"{400 + sum(steps[: size + 1])}/16") for size in range(len(steps))))
)
PERSONS = st.integers(300, 1100).map(lambda marks: worked(f"{marks}/16"))
TOLERANCES = st.integers(0, 32).map(lambda marks: worked(f"{marks}/16"))


@given(RUNS, PERSONS, PERSONS, TOLERANCES, st.booleans())
def test_larger_person_never_gets_a_smaller_size(
    sizes: Row, one: Worked, other: Worked, tolerance: Worked, stretches: bool
) -> None:
    small, large = sorted((one, other), key=lambda person: person.length)
    first = size_choice.choose(sizes, small, tolerance, stretches=stretches)
    second = size_choice.choose(sizes, large, tolerance, stretches=stretches)
    assert first.index <= second.index


@given(RUNS, PERSONS, TOLERANCES)
def test_firm_cloth_is_never_smaller_than_the_person_unless_no_size_is(
    sizes: Row, person: Worked, tolerance: Worked
) -> None:
    found = size_choice.choose(sizes, person, tolerance, stretches=False)
    assert sizes.bodies[found.index].length >= person.length or found.index == len(sizes.bodies) - 1


@given(RUNS, PERSONS, TOLERANCES)
def test_cloth_that_stretches_is_smaller_than_the_person_by_the_tolerance_at_most(
    sizes: Row, person: Worked, tolerance: Worked
) -> None:
    found = size_choice.choose(sizes, person, tolerance, stretches=True)
    assume(found.fit is not Fit.ABOVE)
    assert person.length - sizes.bodies[found.index].length <= tolerance.length


@given(RUNS, TOLERANCES)
def test_measurement_of_a_size_gets_that_size(sizes: Row, tolerance: Worked) -> None:
    for body in sizes.bodies:
        found = size_choice.choose(sizes, body, worked(0), stretches=False)
        assert sizes.bodies[found.index].length == body.length
        assert found.fit is Fit.IN_A_SIZE


@given(RUNS, PERSONS, TOLERANCES, st.booleans())
def test_every_choice_tells_a_reason(sizes: Row, person: Worked, tolerance: Worked, stretches: bool) -> None:
    found = size_choice.choose(sizes, person, tolerance, stretches=stretches)
    assert found.reason.note
    assert told(found.reason)
    assert (found.between is not None) == (found.fit is Fit.BETWEEN)


def test_smallest_size_that_is_no_less_is_chosen() -> None:
    found = choice("34.75")
    assert (found.index, found.fit) == (2, Fit.IN_A_SIZE)
    assert told(found.reason)[0] == (
        "bust of the size less the person's: bust of size 3 36 in − bust 34 3/4 in = 1 1/4 in"
        " (the smallest size that is no less than the person)"
    )


def test_little_over_a_size_is_between_two() -> None:
    found = choice("34.5")
    assert (found.index, found.fit, found.between) == (2, Fit.BETWEEN, (1, 2))
    assert found.reason.length == inches("1/2")
    assert "the larger one" in found.reason.note


def test_between_sizes_cloth_that_stretches_takes_the_smaller() -> None:
    found = choice("34.5", stretches=True)
    assert (found.index, found.fit, found.between) == (1, Fit.BETWEEN, (1, 2))
    assert "stretches" in found.reason.note


@pytest.mark.parametrize(("least", "index"), [("3.5", 1), ("3.75", 2)])
def test_between_sizes_the_smaller_serves_where_it_leaves_the_ease_wanted(least: str, index: int) -> None:
    roomy = row("bust", [32, 34, 36, 40], [36, 38, 40, 44], worked(least))
    found = choice("34.5", of=roomy)
    assert (found.index, found.fit) == (index, Fit.BETWEEN)


def test_ease_in_the_size_chosen_is_told_where_the_garment_is_known() -> None:
    roomy = row("bust", [32, 34, 36, 40], [36, 38, 40, 44])
    found = choice("34.75", of=roomy)
    assert found.ease is not None
    assert found.ease.length == inches("5.25")
    assert choice("34.75").ease is None


def test_person_below_the_smallest_size_is_told() -> None:
    found = choice("31.25")
    assert (found.index, found.fit) == (0, Fit.BELOW)
    assert found.reason.length == inches("3/4")
    assert "below the range" in found.reason.note


def test_person_above_the_largest_size_is_told() -> None:
    found = choice("42")
    assert (found.index, found.fit) == (3, Fit.ABOVE)
    assert found.reason.length == inches(2)
    assert "above the range" in found.reason.note


@pytest.mark.parametrize(("number", "index"), [("31.5", 0), ("40.5", 3)])
def test_tolerance_reaches_past_both_ends_of_the_range(number: str, index: int) -> None:
    found = choice(number)
    assert (found.index, found.fit) == (index, Fit.IN_A_SIZE)


def recommended(bust: str, waist: str, matters_most: str | None = None) -> size_choice.Recommendation:
    person = {"bust": worked(bust, "bust"), "waist": worked(waist, "waist"), "foot": worked(9, "foot")}
    return size_choice.choose_all([BUST, WAIST], person, HALF_INCH, stretches=False, matters_most=matters_most)


def test_measurements_that_agree_say_so() -> None:
    found = recommended("34", "27")
    assert (found.index, found.agreed, found.reason) == (1, True, "every measurement asks for this size")


def test_largest_size_asked_for_decides() -> None:
    found = recommended("34", "29")
    assert (found.index, found.decided_by.measure, found.agreed) == (2, "waist", False)
    assert found.reason == (
        "by the waist: none asks for a larger size, and cloth is more easily taken in than let out;"
        " the bust asks for 1 size smaller"
    )


def test_measurement_that_matters_most_decides() -> None:
    found = recommended("34", "32", "bust")
    assert (found.index, found.decided_by.measure) == (1, "bust")
    assert found.reason == ("by the bust, which matters most in this garment; the waist asks for 2 sizes larger")


def test_measurement_that_matters_most_but_was_not_taken_does_not_decide() -> None:
    assert recommended("34", "32", "hip").decided_by.measure == "waist"


def test_measurement_outside_every_size_is_told_and_nothing_agrees() -> None:
    found = recommended("39", "36")
    assert (found.index, found.decided_by.measure, found.agreed) == (3, "waist", False)
    assert found.reason.endswith("; the waist is above the largest size")


def test_single_measurement_is_enough() -> None:
    found = size_choice.choose_all([BUST, WAIST], {"bust": worked(36)}, HALF_INCH, stretches=False)
    assert (found.index, found.reason) == (2, "by the bust, the only measurement given")


def test_no_measurement_in_common_is_refused() -> None:
    with pytest.raises(ValueError, match="no measurement of the person"):
        size_choice.choose_all([BUST], {"waist": worked(30)}, HALF_INCH, stretches=False)


@pytest.mark.parametrize(
    ("bodies", "finished", "said"),
    [([], [], "no sizes"), ([34, 32], [], "from the smallest"), ([32, 34], [36], "one finished measurement")],
)
def test_size_table_that_makes_no_sense_is_refused(bodies: list[int], finished: list[int], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        row("bust", bodies, finished)
