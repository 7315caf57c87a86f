"""Ease, size choice and grading against tables and examples that were printed elsewhere.

ASTM D5585-11e1, misses body table, as shown by ASTM International: a few rows as a spot check. EN 420 (now EN ISO
21420) glove scale, as two guides to protective gloves give it. Ease: as named at each test.
"""

from __future__ import annotations

import pytest

from sitegen.quantities import Length, Worked, given, inches, mm
from sitegen.sewing import breaks, ease, gather, grading, size_choice
from sitegen.sewing.size_choice import Choice, Fit, Row

SIZES = ("00", "0", "2", "4", "6", "8", "10", "12", "14", "16", "18", "20")
HEAD = "21.25 21.25 21.5 21.5 21.75 21.75 22 22 22.25 22.25 22.5 22.5"
BUST = "31.125 31.75 33 34.125 35.25 36.25 37.25 38.75 40.375 42.125 44 46"
WAIST = "25.375 26.125 26.875 27.625 28.5 29.5 30.5 32.25 34 36 38.25 40.5"
CURVY_WAIST = "23.875 24.625 25.375 26.125 27 28 29 30.75 32.5 34.5 36.75 39"

HAND_ROUND = (152, 178, 203, 229, 254, 279)
HAND_LENGTH = (160, 171, 182, 192, 204, 215)
FIRST_GLOVE = 6


def length(value: Length, name: str = "given") -> Worked:
    return given(name, value)


def row(measure: str, numbers: str) -> Row:
    return Row(
        measure, tuple(given(f"{measure} of {s}", inches(n)) for s, n in zip(SIZES, numbers.split(), strict=True))
    )


def choice(of: Row, number: str, *, stretches: bool = False) -> Choice:
    return size_choice.choose(of, length(inches(number)), length(inches("1/4")), stretches=stretches)


@pytest.mark.parametrize(("measure", "numbers"), [("bust", BUST), ("waist", WAIST), ("waist", CURVY_WAIST)])
def test_body_of_each_published_size_gets_that_size(measure: str, numbers: str) -> None:
    for index, number in enumerate(numbers.split()):
        found = choice(row(measure, numbers), number)
        assert (found.index, found.fit) == (index, Fit.IN_A_SIZE)


def test_head_that_two_published_sizes_share_gets_the_smaller_of_them() -> None:
    found = [SIZES[choice(row("head", HEAD), number).index] for number in ("21.5", "22", "22.5")]
    assert found == ["2", "10", "18"]


@pytest.mark.parametrize(
    ("bust", "stretches", "size"),
    [("36.75", False, "10"), ("36.5", False, "10"), ("36.5", True, "8"), ("36.125", False, "8"), ("40.5", True, "14")],
)
def test_bust_between_published_sizes(bust: str, stretches: bool, size: str) -> None:
    """With a tolerance of 1/4 in; the rule itself is common practice, no source."""
    assert SIZES[choice(row("bust", BUST), bust, stretches=stretches).index] == size


def test_straight_and_curvy_waist_of_one_person_are_two_sizes_apart() -> None:
    """The curvy row runs 1 1/2 in under the straight one, two of its own steps of 3/4 in below size 6."""
    assert SIZES[choice(row("waist", WAIST), "25.375").index] == "00"
    assert SIZES[choice(row("waist", CURVY_WAIST), "25.375").index] == "2"


def test_bust_beyond_the_published_table_is_told() -> None:
    assert choice(row("bust", BUST), "48").fit is Fit.ABOVE
    assert choice(row("bust", BUST), "30").fit is Fit.BELOW


def test_uneven_bust_steps_of_the_published_grade() -> None:
    """Derived from the row: 5/8, 1 1/4, 1 1/8, 1 1/8, 1, 1, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2."""
    printed = ["5/8", "5/4", "9/8", "9/8", "1", "1", "3/2", "13/8", "7/4", "15/8", "2"]
    found = [step.length for step in grading.steps(row("bust", BUST).bodies)]
    assert found == [inches(number) for number in printed]
    assert breaks([body.length for body in row("bust", BUST).bodies]) == ()


def test_waist_hint_for_a_bust_half_way_between_two_published_sizes() -> None:
    """Half way from 10 (37 1/4) to 12 (38 3/4) the straight waist lies half way from 30 1/2 to 32 1/4."""
    bodies, values = row("bust", BUST).bodies, row("waist", WAIST).bodies
    assert grading.for_body("waist", length(inches(38)), bodies, values).length == inches("31.375")


@pytest.mark.parametrize(
    ("round_mm", "length_mm", "size"), [(152, 160, 6), (178, 171, 7), (220, 190, 9), (254, 204, 10)]
)
def test_glove_of_the_european_scale(round_mm: int, length_mm: int, size: int) -> None:
    """EN 420: hand round 152 to 279 mm and hand length 160 to 215 mm are sizes 6 to 11."""
    rows = [
        Row("hand round", tuple(length(mm(number)) for number in HAND_ROUND)),
        Row("hand length", tuple(length(mm(number)) for number in HAND_LENGTH)),
    ]
    person = {"hand round": length(mm(round_mm)), "hand length": length(mm(length_mm))}
    found = size_choice.choose_all(rows, person, length(mm(2)), stretches=False)
    assert (found.index + FIRST_GLOVE, found.agreed) == (size, True)


def test_one_inch_over_two_side_seams_is_a_quarter_at_each_of_four_edges() -> None:
    """Rule: Central Washington Univ., costume construction text, chapter 17; example derived in the notes."""
    assert ease.per_edge("edge", length(inches(1)), 4).length == inches("1/4")


@pytest.mark.parametrize(
    ("where", "number", "sources"),
    [
        ("bust", "3.5", ("Guide C-228", "textbook")),
        ("bust", "2.5", ("textbook",)),
        ("bust", "1.75", ("chapter 16",)),
        ("bust", "2.25", ()),
        ("waist", "1", ("textbook", "chapter 16")),
        ("waist", "0.5", ("chapter 16",)),
        ("hip", "2.25", ("textbook", "chapter 16")),
        ("hip", "2.75", ("chapter 16",)),
    ],
)
def test_published_wearing_ease_keeps_each_source_apart(where: str, number: str, sources: tuple[str, ...]) -> None:
    """New Mexico State Univ. Guide C-228; US textbook; Central Washington Univ. chapter 16: they differ."""
    found = [each for each in ease.published(where) if each.least <= inches(number) <= each.most]
    assert len(found) == len(sources)
    assert all(source in each.source for source, each in zip(sources, found, strict=True))


def test_older_guide_runs_two_rows_a_quarter_inch_apart() -> None:
    """4-H bulletin, "It's Fun to Sew a Cotton School Dress"; first row as in a clothing textbook of 2012, p. 459."""
    rows = gather.rows("row", length(inches("1/4")), length(inches("1/4")), 2)
    assert [row.length for row in rows] == [inches("1/4"), inches("1/2")]
