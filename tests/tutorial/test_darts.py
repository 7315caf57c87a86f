"""Darts: the numbers they make, the seams that they shorten, and what is said of faults."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import System, inches, show_working
from sitegen.tutorial import Computed

BODICE = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\nbody: {waist: '26, 28 in'}\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  front:\n"
    "    cut: 1 on fold\n"
    "    fabric: main\n"
    "    length: 20 in\n"
    "    edges: {side: {length: '16, 17 in', sewn: '15, 16 in'}, waist: '17, 18 in'}\n"
    "    darts: {DARTS}\n"
    "  back: {cut: 1 on fold, fabric: main, length: 20 in, edges: {side: '15, 16 in', waist: '14, 15 in'}}\n"
)
DARTS = (
    "bust: {edge: side, width: 1 in, length: 3 in, leg: 3 in}, "
    "waist: {edge: waist, meets: back.waist, count: 2, length: 4 in, width: 1 1/2 in, taken: 3 in}"
)
GIRTH = "girths: {waist: {edges: [front.waist, back.waist], body: waist}}\n"


def with_darts(darts: str = DARTS, more: str = "") -> str:
    return BODICE.replace("DARTS", darts) + more


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("darts"), with_darts(more=GIRTH))
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("front.side", "16", "17"),
        ("front.side.sewn", "15", "16"),
        ("front.bust.taken", "1", "1"),
        ("front.waist.width", "1.5", "1.5"),
        ("front.waist.taken", "3", "3"),
        ("front.waist.sewn", "14", "15"),
        ("waist.finished_girth", "28", "30"),
        ("waist.ease", "2", "2"),
    ],
)
def test_length_in_both_sizes(name: str, small: str, medium: str, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.length for number in numbers if number] == [inches(small), inches(medium)]


def test_leg_is_worked_out_from_half_of_the_width(found: Computed) -> None:
    leg = found.number("front.bust.other_leg", 0)
    assert leg is not None
    assert show_working(leg, System.CENTIMETRES) == (
        "half of the dart: front bust width 2.5 cm ÷ legs 2 = 1.3 cm",
        "front bust leg: front bust length 7.6 cm by half of the dart 1.3 cm = 7.7 cm (the long side of the right"
        " triangle)",
        "front bust other leg: front bust leg 7.7 cm",
    )


def test_two_darts_of_one_edge_are_both_taken_off_it(tmp_path: Path) -> None:
    darts = (
        "bust: {edge: side, width: 1/2 in, length: 3 in}, "
        "french: {edge: side, meets: back.side, length: 8 in, width: 1/2 in}"
    )
    tutorial, findings = computed(tmp_path, with_darts(darts))
    assert messages(findings) == []
    sewn = tutorial.number("front.side.sewn", 0)
    assert sewn is not None
    assert show_working(sewn, System.INCHES)[-1] == (
        "front side sewn: front side 16 in − front bust width 1/2 in − front french width 1/2 in = 15 in"
    )


SIDES = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"


def seam_match(root: Path, text: str) -> list[str]:
    findings = reviewed(root, text, steps__01_dot_yaml=SIDES).findings
    return [each.message for each in findings if each.check == "seam-match"]


def test_edge_meets_its_mate_with_its_dart_sewn(tmp_path: Path) -> None:
    assert seam_match(tmp_path, with_darts()) == []


def test_edges_that_are_equal_only_before_the_dart_is_sewn_do_not_match(tmp_path: Path) -> None:
    equal = with_darts().replace("side: '15, 16 in'", "side: '16, 17 in'")
    assert seam_match(tmp_path, equal) == [
        "back side is 1 in longer than front side sewn in size S, and no ease is stated."
    ]


def test_darted_edge_follows_a_change_that_crosses_it(tmp_path: Path) -> None:
    change = (
        "changes: {longer: {pieces: [front, back], line_at: 5 in from the top, lengthen_by: 2 in, crosses: [side]}}\n"
    )
    tutorial, findings = computed(tmp_path, with_darts(more=change))
    assert messages(findings) == []
    sewn = tutorial.number("longer.then.front.side.sewn", 0)
    assert sewn is not None
    assert sewn.length == inches(17)


@pytest.mark.parametrize(
    ("darts", "expected"),
    [
        ("bust: {edge: side, length: 3 in}",
         ["key-missing: Dart bust of piece front needs its width, or the edge that the sewn edge meets, from which it"
          " follows. Example: width: 1 in, or meets: back.side"]),
        ("bust: {edge: side, width: 1 in}",
         ["key-missing: Dart bust of piece front lacks length. Example: length: 3 in"]),
        ("bust: {width: 1 in, length: 3 in}",
         ["key-missing: Dart bust of piece front lacks edge. Example: edge: side"]),
        ("bust: {edge: sied, width: 1 in, length: 3 in}",
         ["unknown-reference: There is no edge of front “sied”. Nearest: side."]),
        ("bust: {edge: side, meets: back.sied, length: 3 in}",
         ["unknown-reference: There is no edge “back.sied”. Nearest: back.side, back.waist."]),
        ("bust: {edge: side, width: 1 in, length: 3 in, count: 0}",
         ["wrong-kind: Expected 1 dart or more, found “0”. Example: count: 2"]),
        ("bust: 1 in", ["wrong-kind: Expected the keys of bust, found “1 in”. Example: darts: {bust: {edge: side,"
                        " width: 1 in, length: 3 in}}"]),
        ("Bust: {edge: side, width: 1 in, length: 3 in}",
         ["bad-name: “Bust” cannot be the name of a dart. Example: bust"]),
        ("a: {edge: waist, meets: back.waist, length: 3 in}, b: {edge: waist, meets: back.waist, length: 3 in}",
         ["given-twice: The widths of a and b cannot both follow from the edge that front.waist meets. Give one of them"
          " its width, or write alike darts as one with a count."]),
        ("bust: {edge: side, width: 1 in, length: 3 in, leg: 4 in}",
         ["dart-legs: The front bust leg does not agree: given 4 in, computed 3 1/16 in."]),
        ("bust: {edge: side, width: 1 in, length: 3 in, other_leg: 3 1/2 in}",
         ["dart-legs: The front bust other leg does not agree: given 3 1/2 in, computed 3 1/16 in."]),
        ("bust: {edge: side, meets: back.side, length: 3 in, width: 2 in}",
         ["dart-sum: The front bust width does not agree: given 2 in, computed 1 in."]),
        ("bust: {edge: waist, width: 9 in, length: 3 in, count: 2}",
         ["dart-room: The dart front bust leaves nothing of front waist in size S."]),
        ("bust: {edge: side, meets: front.waist, length: 3 in}",
         ["dart-room: The dart front bust has nothing to take in: front side is no longer than what it meets in size"
          " S."]),
    ],
)  # fmt: skip
def test_fault_of_darts_is_told(darts: str, expected: list[str], tmp_path: Path) -> None:
    text = with_darts(darts).replace("{length: '16, 17 in', sewn: '15, 16 in'}", "'16, 17 in'")
    found = reviewed(tmp_path, text).findings
    assert [f"{each.check}: {each.message}" for each in found][: len(expected)] == expected


def test_sewn_length_of_an_edge_without_a_dart_is_no_key(tmp_path: Path) -> None:
    darts = "waist: {edge: waist, width: 1 in, length: 3 in}"
    assert [each.check for each in reviewed(tmp_path, with_darts(darts)).findings] == ["unknown-key"]
