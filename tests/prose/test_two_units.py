"""Lengths told in two units, as people print and say them; a line feed inside a text is written ``\\n``.

Each text is invented. That two printed lengths are one follows from the exact inch of 25.4 mm (the international yard
and pound agreement of 1959) and from how coarsely sewing books round it (common practice, no source).
"""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest

from sitegen.prose import TextFinding, find_pairs, proofread

HERE = Path(__file__).parent / "two_units"
_MARK = re.compile(r"\{([^|{}]*)\|([^{}|]*)\}")


def _lines(name: str) -> list[str]:
    """The texts of a file, one on a line."""
    return [line.replace("\\n", "\n") for line in (HERE / name).read_text(encoding="utf-8").splitlines()]


def _wrong_pairs(text: str) -> list[TextFinding]:
    return [found for found in proofread(text) if found.check == "unit-pair"]


def _slipped() -> list[tuple[str, int, int]]:
    """Each text of ``both.txt`` with one of its marks ``{right|slip}`` slipped, and where the slip is."""
    texts = []
    for line in _lines("both.txt"):
        for mark in _MARK.finditer(line):
            before = _MARK.sub(r"\1", line[: mark.start()])
            text = before + mark.group(2) + _MARK.sub(r"\1", line[mark.end() :])
            texts.append((text, len(before), len(before) + len(mark.group(2))))
    return texts


@pytest.mark.parametrize("line", _lines("both.txt"))
def test_pairs_that_are_right_are_left_alone(line: str) -> None:
    assert _wrong_pairs(_MARK.sub(r"\1", line)) == []


@pytest.mark.parametrize(("text", "start", "end"), _slipped())
def test_a_pair_that_slipped_is_found_at_its_place(text: str, start: int, end: int) -> None:
    assert any(found.start < end and start < found.end for found in _wrong_pairs(text))


@pytest.mark.parametrize("text", _lines("wrong.txt"))
def test_two_lengths_that_cannot_be_one_are_found(text: str) -> None:
    assert _wrong_pairs(text)


@pytest.mark.parametrize("text", _lines("right.txt"))
def test_two_lengths_that_are_two_or_agree_are_left_alone(text: str) -> None:
    assert _wrong_pairs(text) == []


@pytest.mark.parametrize(
    ("text", "pairs"),
    [
        ("Half an inch, call it 1.3 cm.", [("Half an inch", "1.3 cm", True)]),
        ("5/8 in *(1.5 cm)* seams", [("5/8 in", "1.5 cm", True)]),
        ("What is half an inch? Call it 2.3 cm.", [("half an inch", "2.3 cm", False)]),
        ("A half inch each side, so that's 2.5 cm in all.", []),
        ("Four of 25 cm, that comes to 1 m.", []),
        ("696 cm, call it 7 m.", []),
        ("It is 60 in wide, so 2 m is enough.", []),
        ("It is 2 in wide (40 cm long).", []),
        ("the way in is 80 cm and the other way it's 60 so that's 63 centimetres", []),
    ],
)
def test_what_is_a_pair_and_what_is_none(text: str, pairs: list[tuple[str, str, bool]]) -> None:
    assert [(pair.first.text.strip(), pair.second.text.strip(), pair.agrees) for pair in find_pairs(text)] == pairs


def test_the_columns_of_a_table_are_pairs_unless_their_headings_tell_two_measures() -> None:
    row = "|---|---|---|\n| Strap | 5 in | 14 cm |\n"
    assert _wrong_pairs("| Piece | Inches | Metric |\n" + row)
    assert not _wrong_pairs("| Piece | Width | Length |\n" + row)
    assert not _wrong_pairs("| Piece | Width in | Length cm |\n" + row)


@pytest.mark.parametrize("heading", ["", "| Size | Waist | Waist cm | Band |\n|---|---|---|---|\n"])
def test_a_cell_of_a_table_is_no_pair_of_the_next_where_the_one_before_gave_it_already(heading: str) -> None:
    assert not _wrong_pairs(heading + '| S | 28" | 71 cm | 22 1/2" |')
    assert not _wrong_pairs('| S | 71 cm | 22 1/2" |')


@pytest.mark.parametrize(
    "names", ["Waist in | Waist cm", "Waist | Waist", "Waist (inches) | cm", 'Waist (") | Waist (cm)']
)
def test_a_wrong_pair_in_a_table_is_told_once(names: str) -> None:
    table = (
        f'| Size | {names} | Band |\n|---|---|---|---|\n| S | 28" | 71 cm | 22 1/2" |\n| L | 32" | 91 cm | 25 1/2" |'
    )
    (found,) = _wrong_pairs(table)
    assert (found.line, found.said) == (4, '32" | 91 cm')


def test_the_headings_of_a_long_table_are_found_in_time_that_grows_with_it() -> None:
    """Eight times the rows may take about eight times as long: twenty would show a square in it."""

    def seconds(rows: int) -> float:
        text = "| No | Band | Hip |\n|---|---|---|\n" + '| 5 | 28" | 95 cm |\n' * rows
        runs = []
        for _ in range(2):
            begun = time.process_time()
            assert not any(pair.agrees for pair in find_pairs(text))
            runs.append(time.process_time() - begun)
        return min(runs)

    assert seconds(1200) < 20 * seconds(150)


def test_sides_without_a_unit_have_the_unit_of_the_first_of_their_row() -> None:
    table = "| Size, cm | Size, in |\n|---|---|\n| 48 × 33 | 18⅞ × {} |\n"
    others = "\nSeams are 1.5 cm (⅝ in), hems 4 cm and the zip is 45 cm long.\n"
    assert not _wrong_pairs(table.format("13") + others)
