"""Every character of a value is found again in its file."""

import re
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from sitegen.findings import Collector, Place
from sitegen.reading import Mapping, Scalar
from sitegen.reading.offsets import Source
from sitegen.reading.yaml_file import FAST_LOADER, PYTHON_LOADER, read_yaml

LOADERS = pytest.mark.parametrize("loader", [FAST_LOADER, PYTHON_LOADER], ids=["fast", "python"])
LINE_ENDS = st.sampled_from(["\n", "\r\n", "\r"])
WORDS = st.text(alphabet="ab⅜½é😀\"'#:-{}\\,.", min_size=1, max_size=6)
SAFE_WORDS = st.text(alphabet="ab⅜½é😀\"'\\.", min_size=1, max_size=6).filter(lambda word: word[0] not in "\"'")
BETWEEN = st.sampled_from([" ", "  ", "\t", "\n", "\n\n", " \n  ", "\n ", "\\\n"])
BLANK = st.sampled_from([" ", "  ", "\t", "\xa0"])


def read(text: str, loader: Any) -> tuple[Mapping, Source]:
    collector = Collector()
    source = Source("f.yaml", text)
    mapping = read_yaml(source, collector, loader)
    assert mapping is not None, collector.findings
    assert not collector.findings
    return mapping, source


def scalar_of(mapping: Mapping, key: str = "key") -> Scalar:
    entry = mapping.get(key)
    assert entry is not None
    assert isinstance(entry.value, Scalar)
    return entry.value


def written_at(source: Source, place: Place) -> str:
    """What stands between the two ends of a place; nothing for a line end."""
    assert place.end_column >= place.column
    assert place.end_column <= len(source.line(place.line)) + 1
    return source.line(place.line)[place.column - 1 : place.end_column - 1]


def assert_every_character_is_found(scalar: Scalar, source: Source) -> None:
    """The source at the place of each character is that character, or the way it is written there."""
    for index, char in enumerate(scalar.text):
        place = scalar.at(index, index + 1)
        written = written_at(source, place)
        if not written:
            assert char in " \n"
            assert not source.line(place.line)[place.column - 1 :].strip(" \t\\")
        elif written != char:
            assert written in (char * 2, f"\\{char}")
    if scalar.text:
        whole = scalar.at()
        first, last = scalar.at(0, 1), scalar.at(len(scalar.text) - 1, len(scalar.text))
        assert (whole.line, whole.column) == (first.line, first.column)
        assert whole.end_column == (last.end_column if first.line == last.line else 0)
        assert (scalar.place.line, scalar.place.column) == (whole.line, whole.column)


def test_a_plain_value_is_found() -> None:
    mapping, _ = read("a: 1\nkey:   3/8 in  # wide\n", FAST_LOADER)
    value = scalar_of(mapping)
    assert value.text == "3/8 in"
    assert value.place == Place("f.yaml", 2, 8, 14)
    assert value.at(4, 6) == Place("f.yaml", 2, 12, 14)
    assert value.at(6) == Place("f.yaml", 2, 14, 14)
    assert value.at(-5, 99) == value.place
    assert not value.quoted


def test_a_value_in_quotes_begins_inside_them() -> None:
    mapping, _ = read('key: "12 1/2, 13 in"\n', FAST_LOADER)
    value = scalar_of(mapping)
    assert value.place == Place("f.yaml", 1, 7, 20)
    assert value.at(8, 13) == Place("f.yaml", 1, 15, 20)
    assert value.quoted


def test_an_escape_and_a_doubled_quote_are_one_character() -> None:
    mapping, _ = read("key: \"a\\u00bd\\\"b\"\nother: 'it''s'\n", FAST_LOADER)
    value, other = scalar_of(mapping), scalar_of(mapping, "other")
    assert value.text == 'a½"b'
    assert [value.at(i, i + 1).column for i in range(4)] == [7, 8, 14, 16]
    assert value.at(1, 3).end_column == 16
    assert other.text == "it's"
    assert other.at(2, 3) == Place("f.yaml", 2, 11, 13)
    assert other.at(3, 4) == Place("f.yaml", 2, 13, 14)


def test_a_text_under_a_bar_begins_on_its_own_line() -> None:
    mapping, _ = read("key: |\n    Cut the band.\n\n      Sew it 3/8 in\n    wide.\n", FAST_LOADER)
    value = scalar_of(mapping)
    assert value.text == "Cut the band.\n\n  Sew it 3/8 in\nwide.\n"
    assert value.place == Place("f.yaml", 2, 5, 0)
    start = value.text.index("3/8")
    assert value.at(start, start + 6) == Place("f.yaml", 4, 14, 20)
    assert value.at(value.text.index("wide")) == Place("f.yaml", 5, 5, 10)


def test_a_folded_text_is_found_line_by_line() -> None:
    mapping, _ = read("key: >-\n  Cut\n  the band.\n\n  Sew\n   3/8\n  in\nother: 1\n", FAST_LOADER)
    value = scalar_of(mapping)
    assert value.text == "Cut the band.\nSew\n 3/8\nin"
    for word, line, column in (("the", 3, 3), ("Sew", 5, 3), ("3/8", 6, 4), ("in", 7, 3)):
        start = value.text.index(word)
        assert value.at(start, start + len(word)) == Place("f.yaml", line, column, column + len(word))


def test_a_scalar_made_by_hand_counts_from_its_place() -> None:
    assert Scalar("3/8 in", Place("f", 4, 10, 16)).at(4, 6) == Place("f", 4, 14, 16)


def test_an_empty_text_in_quotes_has_a_place_inside_them() -> None:
    mapping, _ = read('key: ""\n', FAST_LOADER)
    assert scalar_of(mapping).at() == Place("f.yaml", 1, 7, 7)


@LOADERS
@given(words=st.lists(SAFE_WORDS, min_size=1, max_size=5), blank=BLANK, end=LINE_ENDS)
def test_plain_values_on_one_line(loader: Any, words: list[str], blank: str, end: str) -> None:
    text = blank.join(words)
    mapping, source = read(f"a: 1{end}key: {text}{end}", loader)
    assert scalar_of(mapping).text == text
    assert_every_character_is_found(scalar_of(mapping), source)


@LOADERS
@given(lines=st.lists(st.lists(SAFE_WORDS, max_size=3), min_size=1, max_size=6), end=LINE_ENDS, data=st.data())
def test_plain_values_on_many_lines(loader: Any, lines: list[list[str]], end: str, data: st.DataObject) -> None:
    pad = st.sampled_from(["", " ", "   "])
    written = end.join("  " + data.draw(pad) + " ".join(line) + data.draw(pad) for line in [["x"], *lines])
    mapping, source = read(f"a: 1{end}key:{end}{written}{end}b: 2{end}", loader)
    scalar = scalar_of(mapping)
    assert scalar.text.split() == [word for line in [["x"], *lines] for word in line]
    assert_every_character_is_found(scalar, source)


@LOADERS
@given(
    parts=st.lists(st.one_of(WORDS, BETWEEN), max_size=12),
    quote=st.sampled_from("\"'"),
    end=LINE_ENDS,
)
def test_values_in_quotes(loader: Any, parts: list[str], quote: str, end: str) -> None:
    if quote == "'":
        inner = "".join(part.replace("'", "''") for part in parts)
    else:
        inner = "".join(part if part == "\\\n" else part.replace("\\", "\\\\").replace('"', '\\"') for part in parts)
    inner = re.sub(r"\n[ \t]*", "\n  ", inner).replace("\n", end)
    text = f"a: 1{end}key: {quote}{inner}{quote}{end}b: 2{end}"
    mapping, source = read(text, loader)
    scalar = scalar_of(mapping)
    if "\t" not in inner and "\xa0" not in inner:
        assert scalar.text == yaml.safe_load(text)["key"]
    assert scalar.quoted
    assert_every_character_is_found(scalar, source)


@LOADERS
@given(
    lines=st.lists(st.one_of(st.just(""), st.text(alphabet="ab ½😀\t#-:'", max_size=6)), max_size=8),
    style=st.sampled_from(["|", "|-", "|+", ">", ">-", ">+"]),
    indent=st.integers(min_value=1, max_value=4),
    explicit=st.booleans(),
    end=LINE_ENDS,
    more=st.booleans(),
)
def test_texts_under_a_bar(
    loader: Any, lines: list[str], style: str, indent: int, explicit: bool, end: str, more: bool
) -> None:
    lead = next((line for line in lines if line.strip()), "")
    if lead[:1] in (" ", "\t") or any(line and not line.strip() for line in lines):
        explicit = True
    header = style[0] + (str(indent) if explicit else "") + style[1:]
    body = end.join(" " * indent + line if line else "" for line in lines)
    text = f"a: 1{end}key: {header}{end}{body}{end}" + (f"b: 2{end}" if more else "")
    mapping, source = read(text, loader)
    entry = mapping.get("key")
    assert entry is not None
    scalar = scalar_of(mapping)
    spaced = text.replace("\t", " ")
    assert scalar.text.replace("\t", " ") == yaml.safe_load(spaced)["key"]
    assert scalar.text.count("\t") == "".join(lines).count("\t")
    assert_every_character_is_found(scalar, source)


def test_a_text_knows_where_its_lines_begin() -> None:
    mapping, _ = read("key: one\n  two\n\n  three\n", FAST_LOADER)
    value = scalar_of(mapping)
    assert value.text == "one two\nthree"
    assert value.line_starts() == (4, 8)
