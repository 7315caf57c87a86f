"""Changes over several pieces: the numbers of each, and texts that must say of which piece they speak."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import inches

PIECES = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  front: {called: front panel, cut: 2, fabric: main, length: 24 in, width: 20 in, sides: {top: seam, bottom: seam},\n"
    "    edges: {side: 15 in}}\n"
    "  back: {cut: 2, fabric: main, length: 27 in, width: 22 in, sides: {top: seam, bottom: seam}, edges: {side: 15 in}}\n"
    "changes:\n"
)
LONGER = "  longer: {pieces: [front, back], line_at: 6 in from the bottom, lengthen_by: 2 in, crosses: [side], MORE}\n"
SIDES = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"


@pytest.mark.parametrize(
    ("name", "length"),
    [
        ("longer.part_above", "18"),
        ("longer.front.part_above", "18"),
        ("longer.back.part_above", "21"),
        ("longer.back.part_below", "6"),
        ("longer.back.new_cut_length", "29"),
        ("longer.back.new_finished_length", "28"),
        ("wider.front.new_cut_width", "21"),
        ("wider.back.new_cut_width", "23"),
        ("wider.each_edge", "0.5"),
    ],
)
def test_each_piece_has_its_own_number(name: str, length: str, tmp_path: Path) -> None:
    text = PIECES + LONGER.replace(", MORE", "") + "  wider: {pieces: [front, back], widen_by: 2 in}\n"
    tutorial, findings = computed(tmp_path, text)
    assert messages(findings) == []
    number = tutorial.number(name, 0)
    assert number is not None
    assert number.length == inches(length)


def test_change_of_one_piece_has_plain_names_only(tmp_path: Path) -> None:
    tutorial, _ = computed(tmp_path, PIECES + "  longer: {piece: front, lengthen_by: 2 in}\n")
    assert not [name for name in tutorial.names() if name.startswith("longer.front")]


def test_written_number_of_each_piece_is_held_against_its_own(tmp_path: Path) -> None:
    more = "each: {front: {part_above: 18 in}, back: {part_above: 20 in, new_cut_length: 29 in}}"
    findings = reviewed(tmp_path, PIECES + LONGER.replace("MORE", more)).findings
    assert [f"{each.check}: {each.message}" for each in findings] == [
        "line-place: The longer back part above does not agree: given 20 in, computed 21 in."
    ]


def test_written_number_of_a_line_of_each_piece_is_held_against_its_own(tmp_path: Path) -> None:
    change = (
        "  longer: {pieces: [front, back], lines: [{line_at: 6 in from the top, lengthen_by: 1 in}],\n"
        "    each: {back: {line_1: {part_below: 20 in}}}}\n"
    )
    findings = reviewed(tmp_path, PIECES + change).findings
    assert [f"{each.check}: {each.message}" for each in findings] == [
        "line-place: The longer back line 1 part below does not agree: given 20 in, computed 21 in."
    ]


@pytest.mark.parametrize(
    ("more", "expected"),
    [
        ("each: {sleeve: {part_above: 1 in}}",
         ["unknown-key: Each of change longer has no key “sleeve”. Known are: back, front."]),
        ("each: {front: 18 in}",
         ["wrong-kind: Expected keys with values, found “18 in”. Example: each: {front: {part_above: 15 in},"
          " back: {part_above: 16 in}}"]),
        ("each: {front: {amount: 2 in}}", ["unknown-key: The front in change longer has no key “amount”."]),
    ],
)  # fmt: skip
def test_fault_in_the_numbers_of_each_piece_is_told(more: str, expected: list[str], tmp_path: Path) -> None:
    found = reviewed(tmp_path, PIECES + LONGER.replace("MORE", more)).findings
    assert [
        f"{each.check}: {each.message}"[: len(start)] for each, start in zip(found, expected, strict=True)
    ] == expected


def told_of(root: Path, text: str) -> list[str]:
    step = f"title: Lengthen\ntext: |\n  {text}\n"
    findings = reviewed(root, PIECES + LONGER.replace(", MORE", ""), steps__01_dot_yaml=step).findings
    return [each.message for each in findings if each.check == "piece-not-named"]


def test_text_that_does_not_say_of_which_piece_is_reported(tmp_path: Path) -> None:
    assert told_of(tmp_path, "Cut across {longer.part_above} from the top.") == [
        "The longer part above is 18 in for the front, 21 in for the back. Say of which piece:"
        " {longer.front.part_above} or {longer.back.part_above}."
    ]


@pytest.mark.parametrize(
    "text",
    [
        "Cut across {longer.back.part_above} from the top.",
        "Cut across {longer.part_below} from the bottom.",
        "Cut the front panel across, {longer.part_above} from the top.",
    ],
)
def test_text_that_leaves_no_doubt_passes(text: str, tmp_path: Path) -> None:
    assert told_of(tmp_path, text) == []


def test_text_that_names_both_pieces_must_say_which_number_it_means(tmp_path: Path) -> None:
    assert len(told_of(tmp_path, "Cut front and back across, {longer.part_above} from the top.")) == 1


def test_length_taken_from_a_number_that_differs_is_reported(tmp_path: Path) -> None:
    text = PIECES + LONGER.replace(", MORE", "") + "spacings: {marks: {length: '{longer.part_above}', marks: 3}}\n"
    assert [each.check for each in reviewed(tmp_path, text).findings] == ["piece-not-named"]


def test_piece_that_misses_the_wanted_length_is_a_hint(tmp_path: Path) -> None:
    change = "  longer: {pieces: [front, back], line_at: 6 in from the bottom, wanted: 25 in finished}\n"
    assert [f"{each.check}: {each.message}" for each in reviewed(tmp_path, PIECES + change).findings] == [
        "wanted-missed: With longer the back becomes 28 in, not the wanted 25 in: the amount is that of the front."
    ]


def test_line_at_a_share_of_unequal_mates_is_doubted(tmp_path: Path) -> None:
    change = LONGER.replace(", MORE", "").replace("6 in from the bottom", "2/3 from the top")
    findings = reviewed(tmp_path, PIECES + change, steps__01_dot_yaml=SIDES).findings
    assert [each.message for each in findings if each.check == "mate-level"] == [
        "The line of longer lies 8 in from the bottom of the front and 9 in from the bottom of the back, which are sewn"
        " together. Measure it from the same end on both, such as 6 in from the bottom."
    ]


@pytest.mark.parametrize("line", ["6 in from the bottom", "6 in from the top"])
def test_line_at_one_level_of_both_mates_passes(line: str, tmp_path: Path) -> None:
    change = LONGER.replace(", MORE", "").replace("6 in from the bottom", line)
    findings = reviewed(tmp_path, PIECES + change, steps__01_dot_yaml=SIDES).findings
    assert [each for each in findings if each.check == "mate-level"] == []
