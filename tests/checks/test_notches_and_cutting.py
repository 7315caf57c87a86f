"""Notches and how many to cut: what is said, where, and what to put instead."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding

PIECES = (
    "fabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\n"
    "pieces:\n"
    "  front: {cut: CUT, fabric: main, edges: {side: 15 in, armhole: 9 in}, notches: {FRONT}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in, armhole: 9 in}, notches: {BACK}}\n"
    "  sleeve: {cut: 2 mirrored, fabric: main, edges: {cap: 18 in, underarm: 17 in}}\n"
)
SIDES = "title: Sew the sides\ntext: Sew.\njoin: [{edges: [EDGES], stitch: straight}]\n"
SLEEVES = SIDES.replace("EDGES", "sleeve.cap, front.armhole + back.armhole")


def of(check: str, root: Path, front: str, back: str, *, cut: str = "2 mirrored", joined: str = "") -> list[Finding]:
    text = PIECES.replace("CUT", cut).replace("FRONT", front).replace("BACK", back)
    files = {"steps__01_dot_yaml": SIDES.replace("EDGES", joined)} if joined else {}
    return [each for each in reviewed(root, text, **files).findings if each.check == check]


def put(found: list[Finding]) -> list[tuple[int, str, str]]:
    return [(each.place.line, each.said, each.should_be) for each in found]


def test_notch_at_an_edge_that_is_not_there_is_reported_at_its_name(tmp_path: Path) -> None:
    (found,) = of("notch-edge", tmp_path, "arm_hole: single", "")
    assert found.message == "The front has no edge “arm_hole”. Nearest: armhole."
    assert (found.severity.value, put([found])) == ("wrong", [(6, "arm_hole", "armhole")])
    (found,) = of("notch-edge", tmp_path, "waist: single", "")
    assert found.message == "The front has no edge “waist”. Its edges are side, armhole."


def test_edges_sewn_together_with_other_notches_are_doubted(tmp_path: Path) -> None:
    (found,) = of("notch-match", tmp_path, "side: single", "side: double", joined="front.side, back.side")
    assert found.message == (
        "front.side has a single notch and back.side, to which it is sewn, has a double notch. Give both the same."
    )
    assert put([found]) == [(7, "double", "")]


def test_notch_without_its_mate_is_doubted(tmp_path: Path) -> None:
    (found,) = of("notch-match", tmp_path, "side: single", "", joined="front.side, back.side")
    assert found.message == (
        "front.side has a single notch and back.side, to which it is sewn, has no notch. Give both the same."
    )
    assert found.place.line == 6


@pytest.mark.parametrize(
    ("front", "back", "joined"),
    [
        ("side: single", "side: single", "front.side, back.side"),
        ("armhole: single", "armhole: double", "sleeve.cap, front.armhole + back.armhole"),
        ("side: single", "side: single", "front.side + sleeve.underarm, back.side + sleeve.underarm"),
        ("armhole: single", "armhole: double", "front.armhole + back.armhole, front.armhole + back.armhole"),
        ("side: single", "", ""),
    ],
)
def test_notches_that_may_be_right_are_left_alone(front: str, back: str, joined: str, tmp_path: Path) -> None:
    assert of("notch-match", tmp_path, front, back, joined=joined) == []
    assert of("notch-front-back", tmp_path / "again", front, back, joined=joined) == []


def test_notches_of_front_and_back_the_other_way_round_are_doubted_at_both(tmp_path: Path) -> None:
    joined = "sleeve.cap, front.armhole + back.armhole"
    found = of("notch-front-back", tmp_path, "armhole: double", "armhole: single", joined=joined)
    assert [each.message for each in found] == [
        "front.armhole has a double notch. Usual is one notch for the front and two for the back.",
        "back.armhole has a single notch. Usual is one notch for the front and two for the back.",
    ]
    assert put(found) == [(6, "double", "single"), (7, "single", "double")]


def test_front_and_back_that_are_sewn_to_each_other_have_no_way_round(tmp_path: Path) -> None:
    assert of("notch-front-back", tmp_path, "side: double", "side: single", joined="front.side, back.side") == []


@pytest.mark.parametrize("cut", ["1", "2", "1 on fold", "2 on the fold", "4 mirrored"])
def test_number_and_how_are_clear(cut: str, tmp_path: Path) -> None:
    assert of("cut-count", tmp_path, "", "", cut=f'"{cut}"') == []


@pytest.mark.parametrize(
    ("cut", "right"),
    [
        ("two mirrored", "2 mirrored"),
        ("cut two on the fold", "2 on the fold"),
        ("1 pair", "2 mirrored"),
        ("two mirrored pairs", "4 mirrored"),
        ("on fold", ""),
        ("2 of cloth and 1 of lining", ""),
    ],
)
def test_unclear_number_is_put_right_where_it_can_be(cut: str, right: str, tmp_path: Path) -> None:
    (found,) = of("cut-count", tmp_path, "", "", cut=cut)
    assert found.message == (
        f"How many of the front to cut is not clear from “{cut}”. Write a number, and on fold or mirrored where it"
        " applies, such as 1 on fold."
    )
    assert put([found]) == [(6, cut, right)]


@pytest.mark.parametrize("cut", ["2, mirrored", "1, on fold", "1 on the fold"])
def test_number_with_a_comma_behind_it_is_clear(cut: str, tmp_path: Path) -> None:
    assert of("cut-count", tmp_path, "", "", cut=f'"{cut}"') == []


@pytest.mark.parametrize(
    ("cut", "message"),
    [
        ("0", "Of the front none is cut. Write how many, or take the piece out."),
        ("3 mirrored", "3 of the front cannot be mirrored: mirrored pieces come in pairs."),
    ],
)
def test_number_that_cannot_be_is_doubted(cut: str, message: str, tmp_path: Path) -> None:
    assert [each.message for each in of("cut-count", tmp_path, "", "", cut=f'"{cut}"')] == [message]


def test_side_on_the_fold_of_a_piece_that_is_not_cut_on_it_is_doubted(tmp_path: Path) -> None:
    (found,) = of("cut-count", tmp_path, "", "", cut='"2", sides: {left: fold, right: side}')
    assert found.message == "The left of the front lies on the fold, but it is cut 2, not on the fold."
    assert put([found]) == [(6, "2", "2 on fold")]


def test_seam_without_any_edge_breaks_no_check(tmp_path: Path) -> None:
    card = "title: Sew\ntext: Sew.\njoin: [{edges: [], stitch: straight}]\n"
    assert "notch-match" not in {each.check for each in reviewed(tmp_path, "", steps__01_dot_yaml=card).findings}
