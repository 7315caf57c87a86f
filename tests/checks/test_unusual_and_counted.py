"""Stitch settings, counts in texts, crossed edges, hems, cloth and sums: what is found, and what is left alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

LEGS = """
seam_allowance: 1/2 in
fabrics: {main: {name: poplin, structure: woven, width: 45 in, shrinkage: SHRINK, buy: BUY}}
pieces:
  front:
    called: front leg
    cut: 2 mirrored
    fabric: main
    length: 20 in
    width: 9 in
    sides: {top: seam, bottom: hem, left: side, right: inseam}
    edges: {side: 17 in, inseam: 12 in, hem: 8 in}
  strap:
    called: strap strip
    cut: "4"
    fabric: main
    length: 20 in
    width: 3 in
    sides: {top: raw, bottom: raw, left: long, right: long}
    edges: {long: 20 in}
hems: {leg_hem: {edges: [front.hem], turn: 1 in, fold_under: 1/4 in, stitch: straight, stitch_line: LINE}}
changes: {longer: {piece: front, line_at: 6 in from the bottom, lengthen_by: 1 in, crosses: [CROSSED]}}
"""


def found(root: Path, check: str, step: str = "title: Work\ntext: Work.\n", **slips: str) -> list[tuple[str, str]]:
    """What a check finds and proposes."""
    text = LEGS
    right = {"SHRINK": "5%", "BUY": "1 1/4 yd", "LINE": "7/8 in", "CROSSED": "front.side, front.inseam"}
    for name, value in (right | slips).items():
        text = text.replace(name, value)
    findings = reviewed(root, text, steps__01_dot_yaml=step).findings
    return [(each.said, each.should_be) for each in findings if each.check == check]


@pytest.mark.parametrize(
    ("check", "slip", "expected"),
    [
        ("fabric-plenty", {"BUY": "12 1/4 yd"}, "12 1/4 yd"),
        ("fabric-unusual", {"SHRINK": "50%"}, "50%"),
        ("hem-far-inside", {"LINE": "3/8 in"}, "3/8 in"),
        ("crossed-edges", {"CROSSED": "front.side, front.hem"}, "front.hem"),
        ("crossed-edges", {"CROSSED": "front.side, front.side"}, "front.side"),
    ],
)
def test_unusual_value_is_found_and_usual_one_is_not(
    check: str, slip: dict[str, str], expected: str, tmp_path: Path
) -> None:
    assert [said for said, _ in found(tmp_path / "slip", check, **slip)] == [expected]
    assert found(tmp_path / "right", check) == []


def test_crossed_edge_left_out_is_named(tmp_path: Path) -> None:
    assert len(found(tmp_path, "crossed-edges", CROSSED="front.side")) == 1


@pytest.mark.parametrize(
    "text",
    [
        "You have two front legs and four strap strips.",
        "Sew each strap strip to a front leg.",
        "Take one front leg and two strap strips.",
        "Pin four strap strips. Lay two front leg edges together.",
        "Each of the two front legs gets two strap strips.",
    ],
)
def test_right_counts_are_left_alone(text: str, tmp_path: Path) -> None:
    assert found(tmp_path, "count-in-text", f"title: Cut\ntext: {text}\ncut: [front, strap]\n") == []


@pytest.mark.parametrize("text", ["You have two front legs and three strap strips.", "You have five pieces."])
def test_wrong_count_is_found(text: str, tmp_path: Path) -> None:
    assert len(found(tmp_path, "count-in-text", f"title: Cut\ntext: {text}\ncut: [front, strap]\n")) == 1


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Sew with a straight stitch, 3 mm long.", ["3"]),
        ("Sew with a straight stitch, 2.5 mm long.", []),
        ("Cut a strip 20 mm wide and sew it on.", []),
        ("Lay a cord 8 cm long on the seam.", []),
    ],
)
def test_setting_in_a_text_is_held_against_the_seam(text: str, said: list[str], tmp_path: Path) -> None:
    join = "join: [{edges: [front.inseam, front.inseam], stitch: straight, stitch_length: 2.5}]\n"
    assert [each for each, _ in found(tmp_path, "stitch-in-text", f"title: Sew\ntext: {text}\n{join}")] == said


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("It is 18 in long. So 18 1/4 in − 1/2 in = 17 3/4 in.", [("18 in", "18 1/4 in")]),
        ("It is 18 1/4 in long. So 18 1/4 in − 1/2 in = 17 3/4 in.", []),
        ("Leave a gap of 3 in. So 18 1/4 in − 1/2 in = 17 3/4 in.", []),
    ],
)
def test_length_beside_a_sum(text: str, expected: list[tuple[str, str]], tmp_path: Path) -> None:
    assert found(tmp_path, "length-beside-sum", f"title: Cut\ntext: {text}\n") == expected


def test_pair_in_what_a_card_needs_is_held(tmp_path: Path) -> None:
    step = "title: Cut\ntext: Cut.\nneeds: ['two strips, 8 in (25 cm) long', 'a cord of 4 in (10 cm)']\n"
    assert found(tmp_path, "unit-pair", step) == [("two strips, 8 in (25 cm) long", "two strips, 8 in (20.5 cm) long")]
