"""Ease of woven garments: what is said, and of what nothing is said."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

SHIRT = (
    "sizes: [S, M]\nbody: {bust: '36, 38 in', waist: 28 in}\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces: {front: {cut: 2, fabric: main, edges: {chest: '19, 19 1/2 in', waist: 15 in}}}\n"
    "girths: {chest_round: {edges: [front.chest, front.chest], body: bust}}\n"
)


def ease_findings(root: Path, text: str) -> list[str]:
    return [each.message for each in reviewed(root, text).findings if each.check == "ease-unusual"]


def test_ease_below_every_published_range_is_told_with_all_of_them(tmp_path: Path) -> None:
    assert ease_findings(tmp_path, SHIRT) == [
        "The ease at the bust is 1 in in size M. Published for wovens, and not agreed upon: 3 to 4 in (New Mexico State"
        " Univ. Guide C-228); 2 1/2 to 4 in (US clothing-construction textbook); 1 1/2 to 2 in (Central Washington"
        " Univ., costume construction text, chapter 16)."
    ]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("19 1/2 in", "19 3/4 in"),
        ("19 1/2 in", "30 in"),
        ("structure: woven", "structure: knit"),
        ("structure: woven", "structure: woven, stretch_across: 15%"),
        ("sizes:", "wearer: child\nsizes:"),
        (", body: bust", ""),
        ("bust", "chest"),
    ],
    ids=["enough", "roomy", "knit", "stretch woven", "child", "no body", "place of which no source speaks"],
)
def test_nothing_is_said_of(old: str, new: str, tmp_path: Path) -> None:
    assert ease_findings(tmp_path, SHIRT.replace(old, new)) == []


HAT = (
    "sizes: [S, M]\nbody: {head: '54, 50 cm'}\n"
    "pieces: {side: {cut: 2, edges: {head: '25.7, 26.7 cm'}}}\n"
    "girths: {opening: {edges: [side.head, side.head], body: head, ease: '1.4, 1.4 cm'}}\n"
)


def test_ease_that_is_less_than_nothing_in_one_size_alone_is_told_with_its_sign(tmp_path: Path) -> None:
    (found,) = [each for each in reviewed(tmp_path, HAT).findings if each.check == "girth-sum"]
    assert found.message == (
        "The opening ease comes out at −2.6 cm, 3.4 cm: in size S the garment is smaller than the body, in the others"
        " larger. Look at the body measurements and the edges; a written ease cannot say both."
    )
    assert found.should_be == ""
    assert found.working[-1].endswith("opening finished girth 51.4 cm − head measurement 54 cm = −2.6 cm")


def test_ease_that_is_less_than_nothing_in_every_size_is_written_without_its_sign(tmp_path: Path) -> None:
    text = HAT.replace("54, 50 cm", "54, 56 cm").replace("1.4, 1.4 cm", "2.6, 2.6 cm")
    assert not [each for each in reviewed(tmp_path, text).findings if each.check == "girth-sum"]


SMALL = (
    "wearer: child\nbody: {head: 54 cm}\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {side: {cut: 2, fabric: main, edges: {head: 25.7 cm}}}\n"
    "girths: {opening: {edges: [side.head, side.head], body: head, ease: 2.6 cm}}\n"
)


def test_woven_hat_that_is_smaller_than_the_head_is_told(tmp_path: Path) -> None:
    (found,) = [each for each in reviewed(tmp_path, SMALL).findings if each.check == "ease-missing"]
    assert found.message == (
        "Round the head the garment is 1 in smaller than the body, and its cloth does not stretch. Look at the edges"
        " and at the measurement."
    )


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("25.7", "27.1"),
        ("25.7", "27"),
        ("structure: woven", "structure: knit"),
        ("structure: woven", "structure: woven, stretch_across: 15%"),
        ("cut: 2,", "cut: 2, bias: true,"),
    ],
    ids=["larger", "just as large", "knit", "stretch woven", "bias"],
)
def test_no_ease_is_missed_in(old: str, new: str, tmp_path: Path) -> None:
    assert not [each for each in reviewed(tmp_path, SMALL.replace(old, new)).findings if each.check == "ease-missing"]
