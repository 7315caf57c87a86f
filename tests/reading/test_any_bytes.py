"""Whatever bytes a file holds, reading it ends, raises nothing, and finds the same with either parser."""

import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from sitegen.findings import Collector, Finding, as_text
from sitegen.reading import ContentFolder, Empty, Mapping, Node, Scalar, Sequence
from sitegen.reading.csv_rows import read_csv
from sitegen.reading.decode import MOST_BYTES, decode
from sitegen.reading.yaml_file import FAST_LOADER, PYTHON_LOADER, read_yaml
from sitegen.reading.yaml_nodes import DEEPEST

TUTORIAL = """\
title: Summer tee   # invented
sizes: [XS, S, "M", 'L']
body: {bust: "31, 33 1/2 in", head: 22 in}
pieces:
  front:
    cut: "1 on fold"
    notches: {armhole: single}
text: |
  Cut the band {neckband.cut_length} long:

    - then *sew* it.
about: >-
  A folded
  text.
needs:
  - pins
  - 3/8" elastic
"""
SIZES = 'measure,XS,S\nbust,"33 1/2""",35\n\n"hip; wide",1,2,\n'
JARGON = ("mapping", "scalar", "token", "sequence", "block", "flow", "parser", "anchor", "alias", "directive", "stream")
SIGNS = ["\n", "\n  ", "\t", " ", ": ", ":", "- ", "-", '"', "'", "{", "}", "[", "]", ",", "|", ">", "|+\n", "&a "]
SIGNS += ["*a", "!", "!!x ", "%", "@", "`", "#", " #", "?", "? ", "---\n", "...\n", "<<: ", "\\", "\\x41"]
SIGNS += ["\r", "\r\n", "\x85", "\u2028", "\xa0", "\ufeff", "a", "key: ", "½", "😀", "\x00", '3/8"', "|2\n", ">1-\n"]
SIGNS += ["\\UFFFFFFFF", "~", "%YAML 1.1\n", "%TAG ! t\n", "\ue000"]
PIECES = st.sampled_from(SIGNS)
MANY = settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def mutated(draw: st.DrawFn, text: str) -> str:
    """A right file with a few pieces put in or taken out."""
    for _ in range(draw(st.integers(min_value=1, max_value=4))):
        at = draw(st.integers(min_value=0, max_value=len(text)))
        gone = draw(st.integers(min_value=0, max_value=4))
        text = text[:at] + draw(st.one_of(PIECES, st.just(""))) + text[at + gone :]
    return text


def read(data: bytes, loader: Any = FAST_LOADER) -> tuple[Mapping | None, tuple[Finding, ...]]:
    collector = Collector()
    source, usable = decode(data, "f.yaml", collector)
    mapping = read_yaml(source, collector, loader) if usable else None
    for finding in collector.findings:
        assert finding.place.line >= 1
        assert 1 <= finding.place.column <= len(source.line(finding.place.line)) + 1
        assert finding.place.end_column <= len(source.line(finding.place.line)) + 1
        if finding.should_be and finding.said:
            assert source.line(finding.place.line)[finding.place.column - 1 :].startswith(finding.said)
        words = finding.message.lower().split()
        assert not [word for word in JARGON if word in words]
    assert as_text(collector.findings, lambda _, line: source.line(line)).count("f.yaml") <= 1
    assert (mapping is None) == collector.any_unread
    return mapping, collector.findings


def walk(node: Node) -> None:
    match node:
        case Scalar():
            for index in range(len(node.text) + 1):
                node.at(index, index + 1)
        case Sequence():
            for item in node.items:
                walk(item)
        case Mapping():
            assert len(set(node.keys)) == len(node.entries)
            for entry in node.entries:
                walk(entry.key)
                walk(entry.value)
        case Empty():
            pass


def assert_both_read_the_same(text: str) -> None:
    data = text.encode("utf-8", "surrogatepass")
    fast, python = read(data, FAST_LOADER), read(data, PYTHON_LOADER)
    assert fast == python
    if fast[0] is not None:
        walk(fast[0])


@MANY
@given(st.binary(max_size=200))
@example(b"\xff\xfea\x00:\x00 \x001\x00")
@example(b"\xef\xbb\xbf")
@example(b"a: \xbd in")
@example(b"a: x\x00")
def test_any_bytes_can_be_read(data: bytes) -> None:
    fast, python = read(data, FAST_LOADER), read(data, PYTHON_LOADER)
    assert fast == python


@MANY
@given(st.text(max_size=100))
def test_any_text_can_be_read(text: str) -> None:
    assert_both_read_the_same(text)


@MANY
@given(st.lists(PIECES, max_size=25).map("".join))
@example('a: "\\UFFFFFFFF"')
@example('a: "\\ud800"')
@example("%YAML 1." + "9" * 5000 + "\n---\na: 1")
def test_any_pieces_of_yaml_can_be_read(text: str) -> None:
    assert_both_read_the_same(text)


@MANY
@given(mutated(TUTORIAL))
def test_a_right_file_with_slips_can_be_read(text: str) -> None:
    assert_both_read_the_same(text)


@MANY
@given(
    st.one_of(
        st.binary(max_size=200),
        mutated(SIZES).map(str.encode),
        st.text(alphabet='a1",;\t\r\n ½', max_size=60).map(str.encode),
    )
)
def test_any_spreadsheet_file_can_be_read(data: bytes) -> None:
    collector = Collector()
    source, usable = decode(data, "s.csv", collector, spreadsheet=True)
    table = read_csv(source, collector) if usable else None
    assert (table is None) == collector.any_unread
    for finding in collector.findings:
        assert 1 <= finding.place.column <= len(source.line(finding.place.line)) + 1
    if table is not None:
        assert all(len(row) == len(table.header) for row in table.rows)
        for row in (table.header, *table.rows):
            for cell in row:
                walk(cell)


@pytest.mark.parametrize("loader", [FAST_LOADER, PYTHON_LOADER], ids=["fast", "python"])
@pytest.mark.parametrize(
    "text",
    [
        "[" * 5_000,
        "{a: " * 5_000,
        "- " * 5_000,
        "a: " + "[" * 5_000 + "]" * 5_000,
        "".join(" " * level + "a:\n" for level in range(1_000)),
    ],
    ids=["lists", "tables", "dashes", "closed lists", "indented keys"],
)
def test_deep_nesting_is_refused_at_once(loader: Any, text: str) -> None:
    start = time.process_time()
    mapping, findings = read(text.encode(), loader)
    assert mapping is None
    assert [finding.check for finding in findings] == ["yaml-deep"]
    assert time.process_time() - start < 2


def test_the_deepest_nesting_allowed_is_read() -> None:
    inner = DEEPEST - 1
    assert read(("a: " + "[" * inner + "]" * inner).encode())[0] is not None
    assert read(("a: " + "[" * (inner + 1) + "]" * (inner + 1)).encode())[0] is None


def test_copies_of_copies_cost_nothing() -> None:
    lines = ["a0: &a0 [x, x]", *(f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 20))]
    start = time.process_time()
    mapping, findings = read("\n".join(lines).encode())
    assert mapping is None
    assert {finding.check for finding in findings} == {"yaml-alias"}
    assert time.process_time() - start < 1


@pytest.mark.parametrize(
    "piece",
    [
        *("x", "[", "{"),
        *("- ", '"', "'", "? ", "&a ", "!", "%", "*a ", "a: ", "a:\n", "a: |\n", " ", "\t", "\n\t", "\\"),
        *("a: |\n\tb\n", ",", ":", "a - ", "a\n- ", "x,", "a:1\n", "- a\n", "[],", "'' ", "#", "k: 'a'\n"),
    ],
)
@pytest.mark.parametrize("start", ["", "a: ", 'a: "', "a: |\n  ", "a: ["])
def test_a_huge_file_is_read_or_refused_in_time(start: str, piece: str) -> None:
    data = (start + piece * ((MOST_BYTES // 40 - len(start)) // len(piece))).encode()
    begin = time.process_time()
    read(data)
    assert time.process_time() - begin < 5


@pytest.mark.parametrize("piece", ['"', '""', 'a,"', '"a\n', ",", "a,b\n", '"""\n', " ", '"x"y\n', "\n"])
def test_a_huge_spreadsheet_file_is_read_or_refused_in_time(piece: str) -> None:
    data = (piece * (MOST_BYTES // 10 // len(piece))).encode()
    collector = Collector()
    source, usable = decode(data, "s.csv", collector)
    assert usable
    begin = time.process_time()
    read_csv(source, collector)
    assert time.process_time() - begin < 5


def test_one_broken_file_does_not_hide_the_others(tmp_path: Path) -> None:
    (tmp_path / "a.yaml").write_text('a: "x\n')
    (tmp_path / "b.yaml").write_text("a: @x\n")
    (tmp_path / "c.yaml").write_text("a: x\n")
    collector = Collector()
    folder = ContentFolder(tmp_path, "c")
    read_files = [folder.yaml(name, collector) for name in folder.list("", collector)]
    assert [mapping is not None for mapping in read_files] == [False, False, True]
    assert [finding.place.file for finding in collector.findings] == ["c/a.yaml", "c/b.yaml"]
