"""Plausible slips in the example content, one at a time: what share of each kind the checks catch."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from content import EXAMPLE
from slips.find import passed_over
from slips.floors import FLOORS, SAMPLE, SEED
from slips.harness import Bench, Outcome, bench, edited, mended
from slips.numbers import number, slips_of_number
from slips.report import BEGIN, END, percent, put_between, tables
from slips.slip import Edit, Pick, Slip, sample

from sitegen.findings import Finding, Place, Severity


@pytest.fixture(scope="module")
def one() -> Iterator[Bench]:
    with bench(EXAMPLE) as made:
        yield made


@pytest.fixture(scope="module")
def slips(one: Bench) -> tuple[Slip, ...]:
    return one.slips(Pick(SEED))


@pytest.fixture(scope="module")
def outcomes(one: Bench, slips: tuple[Slip, ...]) -> list[Outcome]:
    return [one.outcome(each) for each in sample(slips, SAMPLE, SEED)]


def test_untouched_example_raises_no_false_alarm(one: Bench) -> None:
    assert [f"{each.place} {each.message}" for each in one.false_alarms()] == []


@pytest.mark.parametrize("kind", [kind for kind, least in FLOORS.items() if least])
def test_share_caught_is_no_less_than_measured_before(kind: str, outcomes: list[Outcome]) -> None:
    tried = [each for each in outcomes if each.slip.kind == kind]
    missed = "\n".join(str(each.slip) for each in tried if not each.caught)
    assert percent(tried) >= FLOORS[kind], f"not caught any more, or never:\n{missed}"


def test_every_kind_of_slip_has_a_floor(slips: tuple[Slip, ...]) -> None:
    assert {each.kind for each in slips} == set(FLOORS)


def test_no_slip_breaks_the_checks(outcomes: list[Outcome]) -> None:
    assert [f"{each.slip}: {each.broke}" for each in outcomes if each.broke] == []


def test_every_tutorial_and_every_place_is_slipped_in(slips: tuple[Slip, ...]) -> None:
    places: dict[str, set[str]] = defaultdict(set)
    for each in slips:
        places[each.tutorial].add(each.where)
    assert set(places) == {path.name for path in (EXAMPLE / "tutorials").iterdir()}
    assert len(set().union(*places.values())) > 15
    assert len(slips) > 3_000


@pytest.mark.parametrize("name", [path.name for path in sorted((EXAMPLE / "tutorials").iterdir())])
def test_no_value_with_a_digit_is_passed_over(name: str) -> None:
    assert passed_over(EXAMPLE, name) == ()


def test_slips_are_the_same_on_every_run(one: Bench, slips: tuple[Slip, ...]) -> None:
    assert one.slips(Pick(SEED)) == slips
    assert one.slips(Pick(SEED + 1)) != slips


def test_every_slip_changes_its_file_and_is_taken_back(tmp_path: Path) -> None:
    made = Bench(EXAMPLE, tmp_path / "copy")
    for each in {each.kind: each for each in made.slips(Pick(SEED))}.values():
        text = (EXAMPLE / each.file).read_text(encoding="utf-8")
        assert each.renamed or edited(text, each.edits) != text, str(each)
        made.outcome(each)
    after = {path.relative_to(tmp_path / "copy"): path.read_bytes() for path in tmp_path.rglob("*") if path.is_file()}
    before = {path.relative_to(EXAMPLE): path.read_bytes() for path in EXAMPLE.rglob("*") if path.is_file()}
    assert after == before


def test_claim_slip_is_caught_at_its_place_and_put_right(one: Bench, slips: tuple[Slip, ...]) -> None:
    claim = next(each for each in slips if each.path == "bands.neckband.cut_width" and each.kind == "digits transposed")
    found = one.outcome(claim)
    assert (found.caught, found.points, found.restores, found.used) == (True, True, True, True)


def test_minutes_are_no_number_that_the_student_uses(one: Bench, slips: tuple[Slip, ...]) -> None:
    assert not one.outcome(next(each for each in slips if each.kind == "minutes")).used


@pytest.mark.parametrize(
    ("text", "unit", "slipped"),
    [
        ("24 5/8", "in", {"24", "24 3/4", "24 11/16", "24 3/8", "24 5/16", "42 5/8", "25 5/8", "23 5/8"}),
        ("5 3/8", "in", {"3 5/8", "5 3/4"}),
        ("52.5", "cm", {"52", "53", "52.6", "25.5", "55.2", "525", "5.25", "53.5"}),
        ("0.8", "m", {"8", "0.9", "1.8"}),
        ("2/3", "in", {"1/3"}),
        ("4", "mm", {"5", "3", "40", "0.4"}),
    ],
)
def test_number_slips_as_hands_and_eyes_do(text: str, unit: str, slipped: set[str]) -> None:
    made = [new for _, new in slips_of_number(text, unit)]
    assert slipped <= set(made)
    assert len(made) == len(set(made))
    assert all(number(new) not in (None, Fraction(0), number(text)) for new in made)


def test_correction_is_put_where_the_finding_stands() -> None:
    finding = Finding("a-check", Severity.WRONG, Place("content/a.yaml", 2, 4), "No.", "17 in", "16 in")
    assert mended("a: 17 in\nb: 17 in\n", finding) == "a: 17 in\nb: 16 in\n"
    assert mended("a: 17 in\nb: 18 in\n", finding) == "a: 17 in\nb: 18 in\n"
    assert edited("one two", (Edit(4, 7, "2"), Edit(0, 3, "1"))) == "1 2"


def test_tables_stand_between_their_markers(outcomes: list[Outcome]) -> None:
    text = tables(outcomes)
    assert put_between(f"# Notes\n{BEGIN}\nold\n{END}\nmore\n", text) == f"# Notes\n{BEGIN}\n{text}\n{END}\nmore\n"
    assert put_between("# Notes\n", text) is None
    assert f"{len(outcomes)} slips" in text
