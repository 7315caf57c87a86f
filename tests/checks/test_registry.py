"""The registry of checks, and every check on its own two examples."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest
from checks.example_folder import lay_out

import sitegen
from sitegen.checks import OF_THE_PLAN, Check, all_checks, review
from sitegen.checks.registry import check, found_while_reading
from sitegen.findings import Finding, Severity
from sitegen.publishing import publish
from sitegen.reading import ContentFolder

REQUIRED = {
    "unit-pair", "unknown-reference", "size-count", "size-run", "allowance-sum", "finished-length", "added-length",
    "line-place", "band-ratio", "band-cut", "band-stretch", "quarter-marks", "hem-catch", "stretch-stitch",
    "picture-missing", "picture-undescribed", "caution-missing",
}  # fmt: skip


def findings(one: Check, example: str, root: Path) -> tuple[Finding, ...]:
    """What a check of the folder finds, or a publication where only that can find it."""
    folder = ContentFolder(lay_out(example, root / "content"), "folder")
    if one.area == "publishing":
        return publish(folder, root / "site", draft=False, progress=lambda done, total, now: None).findings
    return review(folder).findings


def ids(found: tuple[Finding, ...]) -> list[str]:
    return [each.check for each in found]


def test_what_holds_back_no_handout_is_the_name_of_a_check() -> None:
    """A check that is renamed would hold back every handout of a class whose plan does not fit."""
    assert {each.id for each in all_checks()} >= OF_THE_PLAN


def test_all_checks_of_the_first_set_are_there() -> None:
    assert {each.id for each in all_checks()} >= REQUIRED


@pytest.mark.parametrize("one", all_checks(), ids=lambda one: one.id)
def test_tripping_example_yields_its_own_finding(one: Check, tmp_path: Path) -> None:
    found = [each for each in findings(one, one.trips, tmp_path) if each.check == one.id]
    assert found, f"{one.id} is silent on its own example"
    assert all(each.place.line >= 1 and each.place.column >= 1 and each.message.strip() for each in found)


@pytest.mark.parametrize("one", all_checks(), ids=lambda one: one.id)
def test_passing_example_is_silent(one: Check, tmp_path: Path) -> None:
    found = findings(one, one.passes, tmp_path)
    assert one.id not in ids(found)
    assert not [each for each in found if each.severity is Severity.WRONG], ids(found)


@pytest.mark.parametrize("one", all_checks(), ids=lambda one: one.id)
def test_putting_the_correction_in_silences_the_check(one: Check, tmp_path: Path) -> None:
    folder = lay_out(one.trips, tmp_path / "before")
    found = [each for each in review(ContentFolder(folder, "folder")).findings if each.check == one.id]
    fixable = [each for each in found if each.said and each.should_be and each.place.end_column]
    if not fixable:
        pytest.skip("nobody can know the correction")
    one_fix = fixable[0]
    path = folder / one_fix.place.file.removeprefix("folder/")
    lines = path.read_text(encoding="utf-8").split("\n")
    line = lines[one_fix.place.line - 1]
    start, end = one_fix.place.column - 1, one_fix.place.end_column - 1
    assert line[start:end] == one_fix.said
    lines[one_fix.place.line - 1] = line[:start] + one_fix.should_be + line[end:]
    path.write_text("\n".join(lines), encoding="utf-8")
    again = review(ContentFolder(folder, "folder")).findings
    assert not [each for each in again if each.check == one.id and each.place.line == one_fix.place.line]


@pytest.mark.parametrize("one", all_checks(), ids=lambda one: one.id)
def test_check_is_described_in_plain_words(one: Check) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", one.id)
    assert one.what.endswith(".")
    assert one.why.endswith(".")
    assert len(one.source) > 8
    assert one.trips != one.passes


def test_second_use_of_an_id_is_refused() -> None:
    with pytest.raises(ValueError, match="two checks are called unit-pair"):
        found_while_reading(id="unit-pair", title="a", what="b", why="c", trips="d", passes="e")


def test_check_without_a_source_is_refused() -> None:
    keep = check(
        id="no-source", area="a", severity=Severity.HINT, looks_at=object, title="t", why="w", source=" ",
        trips="x", passes="y",
    )  # fmt: skip
    with pytest.raises(ValueError, match="check no-source has no source"):

        @keep
        def find(part: object, computed: object) -> object:
            """Looks for nothing."""


def test_every_finding_that_the_program_can_make_is_in_the_registry() -> None:
    """Ids stand in the code as the first text of a call that makes a finding, or of a rule of the reading room."""
    package = Path(sitegen.__file__).parent
    known = {each.id for each in all_checks()}
    made = set()
    for path in package.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant):
                name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
                text = node.args[0].value
                if name in ("wrong", "_wrong", "Finding", "Slip") and re.fullmatch(r"[a-z]+(-[a-z]+)+", str(text)):
                    made.add(text)
    assert len(made) > 30
    assert made <= known, made - known
