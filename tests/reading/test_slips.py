"""Every distinct failure, with its place and the whole of its words: see the cases beside this file."""

import re
from pathlib import Path
from typing import Any

import pytest
from reading.case_files import Case, as_case, cases, headings

import sitegen.reading
from sitegen.findings import Collector
from sitegen.reading.csv_rows import MOST_CELLS, MOST_ROWS, read_csv
from sitegen.reading.decode import decode
from sitegen.reading.slip import MOST_SLIPS
from sitegen.reading.yaml_file import FAST_LOADER, PYTHON_LOADER, read_yaml
from sitegen.reading.yaml_nodes import MOST_NODES

YAML_CASES = Path(__file__).parent / "cases" / "yaml-slips.md"
CSV_CASES = Path(__file__).parent / "cases" / "csv-slips.md"


def named(case: Case) -> str:
    return f"line {case.line}, {case.title}"


def found_in_yaml(file: str, loader: Any) -> str:
    collector = Collector()
    source, usable = decode(file.encode(), "f.yaml", collector)
    if usable:
        read_yaml(source, collector, loader)
    return as_case(collector.findings)


def found_in_csv(file: str) -> str:
    collector = Collector()
    source, usable = decode(file.encode(), "f.csv", collector, spreadsheet=True)
    if usable:
        read_csv(source, collector)
    return as_case(collector.findings)


@pytest.mark.parametrize("loader", [FAST_LOADER, PYTHON_LOADER], ids=["fast", "python"])
@pytest.mark.parametrize("case", list(cases(YAML_CASES)), ids=named)
def test_what_is_found_in_a_yaml_file(case: Case, loader: Any) -> None:
    assert found_in_yaml(case.file, loader) == case.found


@pytest.mark.parametrize("case", list(cases(CSV_CASES)), ids=named)
def test_what_is_found_in_a_spreadsheet_file(case: Case) -> None:
    assert found_in_csv(case.file) == case.found


@pytest.mark.parametrize("path", [YAML_CASES, CSV_CASES], ids=["yaml", "csv"])
def test_no_case_is_passed_over(path: Path) -> None:
    assert len(list(cases(path))) == headings(path) > 10


@pytest.mark.parametrize("line_end", ["\r\n", "\r"], ids=["CRLF", "CR"])
@pytest.mark.parametrize("case", list(cases(YAML_CASES)), ids=named)
def test_line_ends_change_nothing(case: Case, line_end: str) -> None:
    assert found_in_yaml(case.file.replace("\n", line_end), FAST_LOADER) == case.found


@pytest.mark.parametrize("case", list(cases(YAML_CASES)), ids=named)
def test_putting_what_is_proposed_mends_the_line(case: Case) -> None:
    """A finding with a cure is gone once the cure stands in the place of what was said."""
    collector = Collector()
    source, usable = decode(case.file.encode(), "f.yaml", collector)
    if usable:
        read_yaml(source, collector)
    for finding in collector.findings:
        if finding.should_be:
            start = source.line_start(finding.place.line) + finding.place.column - 1
            assert source.text[start:].startswith(finding.said)
            mended = source.text[:start] + finding.should_be + source.text[start + len(finding.said) :]
            place = f"{finding.place.line}:{finding.place.column}-"
            assert place not in found_in_yaml(mended, FAST_LOADER)


def test_too_many_values_are_refused() -> None:
    assert found_in_yaml("a: [" + "x," * MOST_NODES + "]", FAST_LOADER) == (
        "1:1-1 yaml-too-many, file not read\n  There are more than 100,000 values in this file. Split it.\n"
    )


def test_a_key_longer_than_yaml_allows_is_refused() -> None:
    expected = (
        "yaml-syntax, file not read\n"
        "  A key can have at most 1,000 characters. Write a short one, such as title: Summer tee.\n"
        "  said: x\n"
    )
    assert found_in_yaml("x" * 1_100 + ": 1\n", FAST_LOADER) == f"1:1-2 {expected}"
    assert found_in_yaml("a: 1\n" + "x" * 1_100 + ": 1\n", FAST_LOADER) == f"2:1-2 {expected}"


def test_more_rows_than_any_size_table_has_are_refused() -> None:
    words = "more than any size table has. Save only the table.\n"
    assert found_in_csv("a,b\n" + "1,2\n" * MOST_ROWS) == "nothing wrong\n"
    assert found_in_csv("a,b\n" + "1,2\n" * (MOST_ROWS + 1)) == (
        f"2002:1-1 csv-too-large, file not read\n  There are more than 2,000 rows in this file, {words}"
    )
    assert found_in_csv("a,b\n" + "," * (MOST_CELLS - 1)) == "nothing wrong\n"
    assert found_in_csv("a,b\n" + "," * MOST_CELLS) == (
        f"2:201-201 csv-too-large, file not read\n  There are more than 200 cells in a row in this file, {words}"
    )


@pytest.mark.parametrize(
    "file",
    ["".join("a: 1\n" for _ in range(300)), "".join(f"a{n}: *b\n" for n in range(300)), "a: x\n" + "  - y\n" * 300],
    ids=["a key again and again", "names for values", "items too far in"],
)
def test_a_file_full_of_slips_is_not_listed_to_its_end(file: str) -> None:
    collector = Collector()
    source, _ = decode(file.encode(), "f.yaml", collector)
    assert read_yaml(source, collector) is None
    assert len(collector.findings) == MOST_SLIPS + 1
    assert {finding.check for finding in collector.findings} > {"too-many-slips"}
    assert collector.findings[-1].message == (
        "There are more than 200 slips in this file. Mend these first; the rest was not looked at."
    )


@pytest.mark.parametrize("row", ['"1" 2\n', "1,2,3\n"], ids=["quotes", "long rows"])
def test_a_spreadsheet_file_full_of_slips_is_not_listed_to_its_end(row: str) -> None:
    collector = Collector()
    source, _ = decode(("a,b\n" + row * 300).encode(), "f.csv", collector)
    assert read_csv(source, collector) is None
    assert len(collector.findings) == MOST_SLIPS + 1
    assert collector.findings[-1].check == "too-many-slips"


def test_every_id_in_the_room_has_a_case() -> None:
    """A failure nobody has seen in a test does not exist: ids are read from the source, and looked for in the tests."""
    room = Path(sitegen.reading.__file__).parent
    ids = {
        name
        for path in room.glob("*.py")
        for name in re.findall(r'(?:Slip|_slip|_wrong)\(\s*"([a-z]+(?:-[a-z0-9]+)+)"', path.read_text(encoding="utf-8"))
    }
    assert len(ids) > 20
    here = Path(__file__).parent
    tests = "".join(path.read_text(encoding="utf-8") for path in [*here.glob("*.py"), *here.glob("cases/*.md")])
    assert sorted(name for name in ids if name not in tests) == []
