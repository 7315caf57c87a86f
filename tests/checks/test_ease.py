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
