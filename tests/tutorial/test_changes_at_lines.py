"""Changes at several lines: amounts, places, steps, what follows, and what is said of faults."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import System, inches, show_working
from sitegen.tutorial import Computed

LEGS = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, length: '40, 42 in', sides: {top: seam, bottom: seam},\n"
    "    taper: {top: 14 in, bottom: 8 in, over: 12 in, edges: 1}, edges: {side: '38, 40 in', inseam: 13 in}}\n"
    "  back: {cut: 2 mirrored, fabric: main, length: '41, 43 in', sides: {top: seam, bottom: seam},\n"
    "    taper: {top: 14 in, bottom: 8 in, over: 12 in, edges: 1}, edges: {side: '38, 40 in', inseam: 13 in}}\n"
    "changes:\n"
)
OWN = (
    "  longer: {pieces: [front, back], crosses: [side], lines: [\n"
    "    {line_at: 8 in from the top, lengthen_by: 1/2 in},\n"
    "    {line_at: 6 in from the bottom, lengthen_by: 1 in, crosses: [side, inseam]}]}\n"
)
SHARED = (
    "  equal: {piece: front, wanted: '41 1/2, 43 1/2 in finished', lines: [\n"
    "    {line_at: 1/3 from the top}, {line_at: 2/3 from the top}]}\n"
    "  thirds: {piece: front, shorten_by: 3 in, lines: [\n"
    "    {line_at: 8 in from the top, share: 1/3}, {line_at: 6 in from the bottom, share: 2/3, fold: 1 in}]}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("lines"), LEGS + OWN + SHARED)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("longer.amount", "1.5", "1.5"),
        ("longer.line_1.amount", "0.5", "0.5"),
        ("longer.line_2.amount", "1", "1"),
        ("longer.line_1.part_above", "8", "8"),
        ("longer.line_1.part_below", "32", "34"),
        ("longer.line_2.part_above", "34", "36"),
        ("longer.back.line_2.part_above", "35", "37"),
        ("longer.line_2.from_line_1", "26", "28"),
        ("longer.back.line_2.from_line_1", "27", "29"),
        ("longer.line_1.taper_step", "0", "0"),
        ("longer.line_2.taper_step", "0.5", "0.5"),
        ("longer.new_cut_length", "41.5", "43.5"),
        ("longer.back.new_finished_length", "41.5", "43.5"),
        ("longer.then.front.finished_length", "40.5", "42.5"),
        ("equal.amount", "2.5", "2.5"),
        ("equal.line_1.amount", "1.25", "1.25"),
        ("equal.line_2.amount", "1.25", "1.25"),
        ("equal.line_2.part_above", "80/3", "28"),
        ("thirds.line_1.amount", "-1", "-1"),
        ("thirds.line_2.amount", "-2", "-2"),
        ("thirds.line_2.fold", "1", "1"),
        ("thirds.new_cut_length", "37", "39"),
    ],
)
def test_length_in_both_sizes(name: str, small: str, medium: str, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.length for number in numbers if number] == [inches(small), inches(medium)]


def test_whole_amount_is_shown_as_the_sum_of_the_lines(found: Computed) -> None:
    amount = found.number("longer.amount", 0)
    assert amount is not None
    assert show_working(amount, System.INCHES) == (
        "longer amount: longer line 1 amount 1/2 in + longer line 2 amount 1 in = 1 1/2 in",
    )


def test_edge_above_the_taper_grows_by_the_amount_and_below_by_a_little_more(found: Computed) -> None:
    side, inseam = (found.number(f"longer.then.front.{edge}", 0) for edge in ("side", "inseam"))
    assert side is not None
    assert inseam is not None
    slant = inches("0.9")  # √(13² + 6²) − √(12² + 6²) is 0.90 in
    assert abs(inseam.length - inches(13) - slant) < inches("0.01")
    assert abs(side.length - inches("38.5") - slant) < inches("0.01")


def test_edge_is_trued_over_what_was_added_where_it_slopes(found: Computed) -> None:
    trued = found.number("longer.trued_edge", 0)
    assert trued is not None
    assert abs(trued.length - inches("14.318")) < inches("0.001")


def test_plain_taper_step_is_left_out_where_every_line_has_its_own(found: Computed) -> None:
    assert found.number("longer.taper_step", 0) is None


def test_number_of_every_line_can_be_explained(found: Computed) -> None:
    for name in found.names():
        if ".line_" in name:
            number = found.number(name, 0)
            assert number is not None
            assert show_working(number, System.INCHES)


JOIN = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"


def test_mates_crossed_by_the_same_lines_stay_equal(tmp_path: Path) -> None:
    findings = reviewed(tmp_path, LEGS + OWN, steps__01_dot_yaml=JOIN).findings
    assert [each for each in findings if each.check == "seam-match"] == []


def test_mate_that_one_line_misses_is_reported(tmp_path: Path) -> None:
    text = LEGS + OWN.replace("lengthen_by: 1/2 in}", "lengthen_by: 1/2 in, crosses: [front.side]}")
    findings = reviewed(tmp_path, text, steps__01_dot_yaml=JOIN).findings
    assert [each.message for each in findings if each.check == "seam-match"] == [
        "With longer: front side is 1/2 in longer than back side in size S, and no ease is stated."
    ]


@pytest.mark.parametrize(
    ("change", "expected"),
    [
        (
            "{piece: front, lengthen_by: 1 in, line_at: 8 in from the top, lines: [{line_at: 8 in from the top}]}",
            ["given-twice: Change longer has lines and line_at. Keep one of them."],
        ),
        (
            "{piece: front, widen_by: 1 in, lines: [{line_at: 8 in from the top}]}",
            ["given-twice: Change longer has lines and widen_by. Keep one of them."],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 8 in from the top, lengthen_by: 1 in}]}",
            ["given-twice: Change longer has amounts at its lines and one for all of them. Keep the one or the others;"
             " the sum of the lines may be written as amount."],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top}]}",
            ["key-missing: Change longer needs an amount at each of its lines, or one to share. Example: lines:"
             " [{line_at: 8 in from the top, lengthen_by: 1/2 in}, {line_at: 2/3 from the top, lengthen_by: 1 in}]"],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top, lengthen_by: 1 in}, {line_at: 9 in from the top}]}",
            ["key-missing: Change longer has lengthen_by or shorten_by at other lines, and none at line 2."
             " Example: lengthen_by: 1 in"],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 8 in from the top, share: 1/2},"
            " {line_at: 9 in from the top}]}",
            ["key-missing: Change longer has share at other lines, and none at line 2. Example: share: 1/2"],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 8 in from the top, share: 1/2},"
            " {line_at: 9 in from the top, share: 2/3}]}",
            ["line-shares: The shares of the lines of change longer make 1/2 + 2/3, which is not the whole amount."
             " Leave them out to share it equally."],
        ),
        (
            "{piece: front, lines: [{lengthen_by: 1 in}]}",
            ["key-missing: Line 1 of change longer lacks line_at. Example: line_at: 8 in from the top"],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top, lengthen_by: 1 in, shorten_by: 1 in}]}",
            ["given-twice: Line 1 of change longer needs one of lengthen_by, shorten_by or share at most."],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: []}",
            ["wrong-kind: Expected a list of lines, found a list. Example: lines: [{line_at: 8 in from the top,"
             " lengthen_by: 1/2 in}, {line_at: 2/3 from the top, lengthen_by: 1 in}]"],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top, lengthen_by: 1 in}], amount: 2 in}",
            ["added-length: The longer amount does not agree: given 2 in, computed 1 in."],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top, lengthen_by: 1 in, part_below: '31, 34 in'}]}",
            ["line-place: The longer line 1 part below of size S is given as 31, computed it is 32."],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 8 in from the top, amount: 1 in},"
            " {line_at: 6 in from the bottom, taper_step: 1 in}]}",
            ["added-length: The longer line 1 amount does not agree: given 1 in, computed 1/2 in.",
             "taper-step: The longer line 2 taper step does not agree: given 1 in, computed 1/4 in."],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 6 in from the bottom}, {line_at: 8 in from the top}]}",
            ["lines-apart: Line 2 of longer does not lie below line 1 on the front in size S. Write the lines"
             " from the top down."],
        ),
        (
            "{piece: front, lengthen_by: 1 in, lines: [{line_at: 50 in from the top}]}",
            ["lines-apart: Line 1 of longer lies outside the front in size S."],
        ),
        (
            "{piece: front, lines: [{line_at: 8 in from the top, lengthen_by: 4 in}]}",
            ["line-large: Line 1 of longer takes 4 in in size S. Beyond 3 in a piece keeps its shape better with one"
             " line more."],
        ),
    ],
)  # fmt: skip
def test_fault_of_lines_is_told(change: str, expected: list[str], tmp_path: Path) -> None:
    findings = reviewed(tmp_path, f"{LEGS}  longer: {change}\n").findings
    assert [f"{each.check}: {each.message}" for each in findings] == expected


def test_amount_in_the_size_table_is_a_claim(tmp_path: Path) -> None:
    table = "number,S,M\nequal.amount,2 1/2 in,2 1/2 in\nequal.line_1.amount,1 in,1 1/4 in\n"
    findings = reviewed(tmp_path, LEGS + SHARED, sizes_dot_csv=table).findings
    assert [f"{each.check}: {each.message}" for each in findings] == [
        "added-length: The equal line 1 amount of size S is given as 1 in, computed it is 1 1/4 in."
    ]


def test_line_says_whether_it_lengthens_or_shortens(tmp_path: Path) -> None:
    text = f"{LEGS}  longer: {{piece: front, lines: [{{line_at: 8 in from the top, by: 1 in}}]}}\n"
    found = [f"{each.check}: {each.message}" for each in reviewed(tmp_path, text).findings]
    assert len(found) == 2
    assert found[0].startswith("key-missing: Change longer needs an amount at each of its lines")
    assert found[1].startswith("unknown-key: Line 1 of change longer has no key “by”.")
