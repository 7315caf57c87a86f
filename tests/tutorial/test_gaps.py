"""What is not understood is told where it stands, and what may follow from it only in one line."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

TOP = (
    "sizes: [S, M, L]\nseam_allowance: 3/8 in\n"
    "fabrics: {main: {name: linen, structure: woven, width: 45 in, buy: 1 yd}}\n"
    "pieces:\n"
    "  leg:\n"
    "    cut: 2\n"
    "    fabric: main\n"
    "    length: 30, 31, 32 in\n"
    "    width: 9 in\n"
    "    sides: {top: seam, bottom: leg_hem}\n"
    "    finished_length: 28 5/8, 29 5/8, 30 5/8 in\n"
    "    edges: {hem: 8 in}\n"
    "hems: {leg_hem: {edges: [leg.hem], turn: 1 in}}\n"
    "changes: {longer: {pieces: [leg], line_at: 12 in from the top, lengthen_by: 1 in, part_above: 12 in}}\n"
)
STEP = (
    "title: Cut\ntext: Cut {leg.cut_length}, {longer.part_below} below, {seam_allowance} at {leg.hem}.\n"
    "diagrams: [longer]\n"
)


def told(root: Path, before: str, after: str) -> dict[str, list[str]]:
    assert before in TOP
    found: dict[str, list[str]] = {}
    for each in reviewed(root, TOP.replace(before, after), steps__01_dot_yaml=STEP).findings:
        found.setdefault(each.check, []).append(each.message)
    return found


@pytest.mark.parametrize(
    ("before", "after", "check"),
    [
        ("length: 30, 31, 32 in", "length: 30, 31 elbows, 32 in", "not-a-length"),
        ("length: 30, 31, 32 in", "length: {S: 30 in, M: 31 in}", "size-count"),
        ("length: 30, 31, 32 in", "lenght: 30, 31, 32 in", "unknown-key"),
        ("length: 30, 31, 32 in", "lenght: 30, 31, 32 in\n    cut_length: 30, 31, 32 in", "unknown-key"),
        ("length: 30, 31, 32 in", "cut_length: 30, 31, 32 in", "key-missing"),
        ("length: 30, 31, 32 in\n    width: 9 in", "finished: {S: 28 in, M: 29 in, L: 30 in}", "unknown-key"),
        ("edges: {hem: 8 in}", "edges: {hem: {S: 8 in, M: 9 in}}", "size-count"),
    ],
)
def test_one_cause_is_told_alone(tmp_path: Path, before: str, after: str, check: str) -> None:
    found = told(tmp_path, before, after)
    assert len(found.pop(check)) == 1
    assert set(found) <= {"not-checked"}


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("seam_allowance: 3/8 in", "seam allowance: 3/8 in"),
        ("seam_allowance: 3/8 in", "Seam-Allowance: 3/8 in"),
        ("line_at:", "line at:"),
        ("lengthen_by:", "lengthen by:"),
    ],
)
def test_a_key_with_a_space_is_told_and_read(tmp_path: Path, before: str, after: str) -> None:
    found = told(tmp_path, before, after)
    assert list(found) == ["unknown-key"]
    assert found["unknown-key"][0].endswith(f"It is read as {before.partition(':')[0]}, which is how it is written.")


def test_what_was_not_told_is_counted(tmp_path: Path) -> None:
    (hint,) = told(tmp_path, "    length: 30, 31, 32 in\n", "    lenght: 30, 31, 32 in\n")["not-checked"]
    assert hint == (
        "Not checked until leg is put right: 2 references, 2 written numbers and 1 picture that cannot be worked out,"
        " perhaps because of this."
    )


def test_all_sizes_that_a_row_lacks_are_told_at_once(tmp_path: Path) -> None:
    found = told(tmp_path, "length: 30, 31, 32 in", "length: {S: 30 in}")
    assert found["size-count"] == ["leg.length has no value for sizes M, L."]


def test_an_edge_may_have_its_length_by_the_names_of_sizes(tmp_path: Path) -> None:
    assert told(tmp_path, "{hem: 8 in}", "{hem: {S: 8 in, M: 9 in, L: 10 in}}") == {}


def test_sizes_below_a_part_are_told_once_with_an_example(tmp_path: Path) -> None:
    found = told(tmp_path, "length: 30, 31, 32 in\n    width: 9 in", "finished: {S: 28 in, M: 29 in}")
    assert found["unknown-key"] == [
        "Finished of piece leg has no such keys: S, M are names of sizes. Values by size stand below the number that"
        " they are of. Example: length: {S: 12 in, …}"
    ]


def test_a_name_that_no_part_could_have_is_told_all_the_same(tmp_path: Path) -> None:
    text = TOP.replace("length: 30, 31, 32 in", "lenght: 30, 31, 32 in", 1)
    found = reviewed(tmp_path, text, steps__01_dot_yaml="title: Cut\ntext: Cut {leg.girth}.\n").findings
    assert "unknown-reference" in {each.check for each in found}


@pytest.mark.parametrize("row", ["30 31 32 in", "30,31,32 in", "30 in 31 in 32 in", "30 / 31 / 32 in"])
def test_a_row_without_commas_is_told_with_them_and_read(tmp_path: Path, row: str) -> None:
    found = reviewed(tmp_path, TOP.replace("length: 30, 31, 32 in", f"length: {row}", 1), steps__01_dot_yaml=STEP)
    (one,) = found.findings
    assert one.message.startswith("Put a comma and a space between the values of the sizes: 30")
    assert one.said == row
    assert one.should_be == one.message.partition("sizes: ")[2]
