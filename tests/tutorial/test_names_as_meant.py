"""A name that cannot be one is told once, and all else goes by the name that is to be put."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Severity

LEG = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\n"
    "pieces: {leg: {cut: 2 mirrored, fabric: main, edges: {inner_side: 28 in, ankle: 14 in}}}\n"
    "hems: {leg_hem: {edges: [leg.ankle], turn: 1 in, fold_under: 1/4 in, stitch: straight}}\n"
)
STEP = (
    "title: Sew\ntext: Turn up {leg_hem.turn} and sew the sides of {leg.inner_side}.\ncut: [leg]\nhem: [leg_hem]\n"
    "join: [{edges: [leg.inner_side, leg.inner_side], stitch: straight, enclosed: in a French seam}]\n"
)


@pytest.mark.parametrize(
    ("name", "written"),
    [("leg:", "Leg:"), ("leg_hem:", "leg-hem:"), ("inner_side:", "inner side:"), ("inner_side:", "Inner-Side:")],
)
def test_name_that_cannot_be_one_is_told_once(name: str, written: str, tmp_path: Path) -> None:
    found = reviewed(tmp_path, LEG.replace(name, written, 1), steps__01_dot_yaml=STEP).findings
    wrong = [(each.check, each.said, each.should_be) for each in found if each.severity is Severity.WRONG]
    assert wrong == [("bad-name", written.removesuffix(":"), name.removesuffix(":"))]


def test_name_that_another_part_has_is_left_as_it_is(tmp_path: Path) -> None:
    two = LEG.replace("pieces: {leg:", "pieces: {Leg: {cut: 1, fabric: main}, leg:")
    found = reviewed(tmp_path, two, steps__01_dot_yaml=STEP).findings
    assert [each.check for each in found if each.severity is Severity.WRONG] == ["bad-name"]


@pytest.mark.parametrize(("line", "put"), [("wearer: kid", "child"), ("wearer: chlid", "child")])
def test_word_for_one_of_a_few_is_put_right(line: str, put: str, tmp_path: Path) -> None:
    (found,) = [each for each in reviewed(tmp_path, f"{line}\n").findings if each.check == "wrong-kind"]
    assert found.should_be == put


def test_change_that_says_twice_by_how_much_is_told_with_both(tmp_path: Path) -> None:
    text = LEG.replace("cut: 2 mirrored,", "cut: 2 mirrored, length: 30 in,") + (
        "changes: {longer: {piece: leg, line_at: 10 in from the top, lengthen_by: 1 in, wanted: 31 in finished}}\n"
    )
    (found,) = [each for each in reviewed(tmp_path, text).findings if each.check == "given-twice"]
    assert found.message == "Change longer says more than once by how much: wanted and lengthen_by. Keep one of them."


def test_picture_named_with_its_folder_is_told_without(tmp_path: Path) -> None:
    photo = "photo: {file: photos/band.jpg, shows: The band pinned at its marks}\n"
    (found,) = [each for each in reviewed(tmp_path, photo).findings if each.check == "picture-missing"]
    assert (found.said, found.should_be) == ("photos/band.jpg", "band.jpg")


def test_amount_of_a_change_that_cannot_be_read_is_told_once(tmp_path: Path) -> None:
    text = LEG.replace("cut: 2 mirrored,", "cut: 2 mirrored, length: 30 in,") + (
        "changes: {longer: {piece: leg, line_at: 10 in from the top, lengthen_by: -1 in}}\n"
    )
    wrong = [each.check for each in reviewed(tmp_path, text).findings if each.severity is Severity.WRONG]
    assert wrong == ["not-a-length"]
