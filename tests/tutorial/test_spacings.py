"""Marks at even distances: from the file to every position, and what is said of faults."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import System, Worked, inches, show_working
from sitegen.sewing import spacing
from sitegen.tutorial import Computed

TOP = (
    "sizes: [S, M]\nbody: {hip: '36, 38 in'}\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {front: {cut: 2, fabric: main, edges: {placket: '20, 21 in'}}}\n"
)
LAST_OF_TOP = 7
"""In the file, behind its head of three lines. Other checks look at what stands up to there."""
SPACINGS = TOP + (
    "spacings:\n"
    "  buttons: {along: front.placket, marks: 5, first_margin: 1/2 in, last_margin: 1 in,\n"
    "    button: {diameter: 1/2 in, thickness: 1/8 in}}\n"
    "  tapes: {along: [front.placket], marks: 3, spread: inside}\n"
    "  loops: {along: body.hip, greatest_gap: 7 in, spread: round, start: 2 in}\n"
    "  snaps: {length: 24 in, greatest_gap: 5 in}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("marks"), SPACINGS)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("buttons.length", "20", "21"),
        ("buttons.span", "18.5", "19.5"),
        ("buttons.gap", "4.625", "4.875"),
        ("buttons.position_1", "0.5", "0.5"),
        ("buttons.position_2", "5.125", "5.375"),
        ("buttons.position_5", "19", "20"),
        ("buttons.buttonhole", "0.625", "0.625"),
        ("tapes.gap", "5", "5.25"),
        ("tapes.position_1", "5", "5.25"),
        ("tapes.position_3", "15", "15.75"),
        ("loops.gap", "6", "19/3"),
        ("loops.position_1", "2", "2"),
        ("loops.position_6", "32", "101/3"),
        ("snaps.gap", "4.8", "4.8"),
        ("snaps.position_6", "24", "24"),
    ],
)
def test_mark_in_both_sizes(name: str, small: str, medium: str, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.length for number in numbers if number] == [inches(small), inches(medium)]


@pytest.mark.parametrize(
    ("name", "counts"), [("buttons.marks", [5, 5]), ("loops.marks", [6, 6]), ("snaps.marks", [6, 6])]
)
def test_count_of_marks(name: str, counts: list[int], found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.value for number in numbers if number] == counts


def test_working_takes_every_mark_from_the_whole_length(found: Computed) -> None:
    number = found.number("buttons.position_3", 0)
    assert number is not None
    assert show_working(number, System.INCHES) == (
        "buttons length: front placket 20 in",
        "buttons span: buttons length 20 in − buttons first margin 1/2 in − buttons last margin 1 in = 18 1/2 in",
        "buttons position 3 from buttons first margin: buttons span 18 1/2 in × gaps before it 2 ÷ gaps 4 = 9 1/4 in",
        "buttons position 3: buttons first margin 1/2 in + buttons position 3 from buttons first margin 9 1/4 in"
        " = 9 3/4 in",
    )


def test_every_number_of_marks_can_be_worked_out(found: Computed) -> None:
    ours = ("buttons.", "tapes.", "loops.", "snaps.")
    assert [name for name in found.numbers if name.startswith(ours) and name not in found.names()] == []


def test_size_with_fewer_marks_lacks_the_last_ones(tmp_path: Path) -> None:
    text = TOP + "spacings: {loops: {along: body.hip, greatest_gap: 6 in, spread: round}}\n"
    loops, findings = computed(tmp_path, text)
    assert messages(findings) == []
    assert [number.value for size in range(2) if (number := loops.number("loops.marks", size))] == [6, 7]
    assert loops.number("loops.position_7", 0) is None
    last = loops.number("loops.position_7", 1)
    assert last is not None
    assert last.length == inches(38) * 6 / 7


def test_short_length_may_need_no_mark_inside(tmp_path: Path) -> None:
    marks, findings = computed(tmp_path, "spacings: {ties: {length: 3 in, greatest_gap: 4 in, spread: inside}}\n")
    assert messages(findings) == []
    assert [marks.number(f"ties.{name}", 0) is None for name in ("marks", "gap", "position_1")] == [False, True, True]


def test_marks_may_lie_along_a_band(tmp_path: Path) -> None:
    text = TOP + (
        "seam_allowance: 1/2 in\n"
        "bands: {waistband: {opening: [front.placket], ratio: 80%, finished_width: 1 in, fabric: main}}\n"
        "spacings: {loops: {along: waistband, marks: 4, spread: round}}\n"
    )
    loops, findings = computed(tmp_path, text)
    assert messages(findings) == []
    gap = loops.number("loops.gap", 0)
    assert gap is not None
    assert gap.length == inches(4)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "buttons: {marks: 5}",
            ["9:12 key-missing: Spacing buttons needs one of along or length. Example: buttons: {along: front.placket,"
             " marks: 5, first_margin: 1/2 in, last_margin: 1 in}"],
        ),
        (
            "buttons: {along: front.placket, length: 20 in, marks: 5}",
            ["9:12 given-twice: Spacing buttons needs one of along or length. Example: buttons: {along: front.placket,"
             " marks: 5, first_margin: 1/2 in, last_margin: 1 in}"],
        ),
        (
            "buttons: {length: 20 in}",
            ["9:12 key-missing: Spacing buttons needs marks or greatest_gap. Example: marks: 5"],
        ),
        (
            "buttons: {length: 20 in, marks: 1}",
            ["9:35 wrong-kind: Expected 2 marks or more, found “1”. Example: marks: 5"],
        ),
        (
            "buttons: {length: 20 in, marks: 5, spread: both}",
            ["9:46 wrong-kind: Expected both ends, inside or round, found “both”. Example: spread: both ends"],
        ),
        (
            "buttons: {along: front.plackt, marks: 5}",
            ["9:20 unknown-reference: There is no edge or number “front.plackt”. Nearest: front.placket, front.placket.seam_allowance."],
        ),
        (
            "buttons: {along: tapes.marks, marks: 5}\n  tapes: {length: 9 in, marks: 3}",
            ['9:20 reference-kind: A length is needed here, and tapes.marks is none. Example: "{back.side}"'],
        ),
        (
            "buttons: {length: 2 in, marks: 3, first_margin: 1 in, last_margin: 1 in}",
            ["9:12 impossible-sum: The buttons span cannot be worked out in size S: nothing is left between the first"
             " mark and the last."],
        ),
        (
            "buttons: {length: 900 in, greatest_gap: 1/8 in}",
            ["9:12 impossible-sum: The buttons marks cannot be worked out in size S: more than 200 marks would be"
             " needed."],
        ),
        (
            "buttons: {length: 20 in, marks: 5, button: {diameter: 1/2 in}}",
            ["9:46 key-missing: Button of spacing buttons lacks thickness. Example: button: {diameter: 1/2 in,"
             " thickness: 1/8 in}"],
        ),
        (
            "buttons: {length: 20 in, marks: 5, gap: 4 in}",
            ["9:43 mark-spacing: The buttons gap does not agree: given 4 in, computed 5 in."],
        ),
        (
            "buttons: {along: front.placket, marks: 5, position_2: '5, 5 1/8 in'}",
            ["9:61 mark-spacing: The buttons position 2 of size M is given as 5 1/8 in, computed it is 5 1/4 in."],
        ),
        (
            "buttons: {length: 20 in, marks: 5, position_6: 24 in}",
            ["9:50 mark-spacing: There is no mark 6: buttons has 5 marks."],
        ),
        (
            "buttons: {along: front.placket, marks: 5, greatest_gap: 4 in}",
            ["9:42 mark-spacing: With 5 marks the gap of buttons is 5 1/4 in in size M, more than the greatest gap."
             " It takes 7 marks."],
        ),
        (
            "buttons: {length: 20 in, marks: 5, spread: round, first_margin: 1 in}",
            ["9:53 unknown-key: Spacing buttons has no key “first_margin”. Known are: along, button, buttonhole, gap,"
             " greatest_gap, length, marks, only_in, span, spread, start."],
        ),
    ],
)  # fmt: skip
def test_fault_of_marks_is_told(text: str, expected: list[str], tmp_path: Path) -> None:
    findings = reviewed(tmp_path, f"{TOP}spacings:\n  {text}\n").findings
    assert messages(tuple(each for each in findings if each.place.line > LAST_OF_TOP)) == expected


def test_each_position_is_worked_out_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """So that twice as many marks cost twice as much, not four times."""
    worked = []
    real = spacing.work

    def counted(name: str, *terms: Any) -> Worked:
        worked.append(name)
        return real(name, *terms)

    monkeypatch.setattr(spacing, "work", counted)
    text = TOP + "spacings: {loops: {along: [front.placket], spread: inside, marks: 50}}\n"
    found, findings = computed(tmp_path, text)
    assert findings == ()
    assert found.length("loops.position_50", 0) is not None
    assert [found.length(f"loops.position_{mark}", 0) is not None for mark in range(1, 51)] == [True] * 50
    assert len([name for name in worked if "position" in name]) == 50 * len(found.tutorial.sizes)
