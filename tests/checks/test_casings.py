"""Casings for which no piece is cut longer, and those that lie elsewhere."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

HEAD = (
    "seam_allowance: 1 cm\nbody: {waist: 60 cm}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 2 m}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 2 cm, width: 2.5 cm, room: 5 mm, fold_under: 1 cm}}\n"
)
LEG = "{cut: 2, fabric: main, finished: {length: 50 cm}, sides: {top: TOP, bottom: raw}, edges: {waist: 40 cm}}"
STEP = "title: Sew\ntext: Sew.\n"


def found(root: Path, rest: str) -> list[str]:
    text, step, work = rest.partition(STEP)
    steps = {"steps__01_dot_yaml": step + work} if step else {}
    return [each.message for each in reviewed(root, HEAD + text, **steps).findings if each.check == "casing-nowhere"]


def leg(top: str) -> str:
    return LEG.replace("TOP", top)


def test_casing_that_no_piece_has_is_wrong(tmp_path: Path) -> None:
    assert found(tmp_path, f"pieces: {{front: {leg('waist')}, back: {leg('waist')}}}\n") == [
        "No piece has room for the casing of ring, 1 9/16 in deep: cut sizes are worked out as if nothing were turned there."
        " Name the elastic at that side of front and back: sides: {top: ring}"
    ]


@pytest.mark.parametrize(
    "more",
    [
        "girths: {round: {edges: [front.waist, front.waist], body: waist}}\n",
        f"{STEP}finish: [front.waist]\n",
        f"{STEP}insert: [ring]\n",
        f"{STEP}join: [{{edges: [front.waist, front.waist], stitch: zigzag}}]\n",
        "hems: {top: {edges: [front.waist], turn: 1 cm}}\n",
    ],
    ids=["girth", "finish", "insert", "sewn to itself", "hem too narrow"],
)
def test_no_other_word_of_the_edge_makes_room(more: str, tmp_path: Path) -> None:
    assert len(found(tmp_path, f"pieces: {{front: {leg('waist')}}}\n{more}")) == 1


def test_edge_of_another_name_is_known_by_its_girth(tmp_path: Path) -> None:
    piece = leg("upper").replace("{waist:", "{upper:")
    more = "girths: {round: {edges: [front.upper, front.upper], body: waist}}\n"
    assert found(tmp_path, f"pieces: {{front: {piece}}}\n{more}")[0].endswith("of front: sides: {top: ring}")


def test_piece_that_alone_has_no_room_is_named(tmp_path: Path) -> None:
    rest = f"pieces: {{front: {leg('ring')}, back: {leg('waist')}}}\n{STEP}finish: [front.waist]\n"
    assert found(tmp_path, rest) == [
        "The back has no room for the casing of ring, 1 9/16 in deep: cut sizes are worked out as if nothing were turned"
        " there. Name the elastic at that side of back: sides: {top: ring}"
    ]


def test_elastic_without_an_edge_of_its_name_must_lie_somewhere(tmp_path: Path) -> None:
    piece = leg("upper").replace("{waist:", "{upper:")
    assert found(tmp_path, f"pieces: {{front: {piece}}}\n") == [
        "No piece has room for the casing of ring, 1 9/16 in deep: cut sizes are worked out as if nothing were turned there."
        " Name the elastic at that side of the piece in which it runs: sides: {top: ring}"
    ]
    assert not found(tmp_path, f"pieces: {{front: {piece}}}\nhems: {{top: {{edges: [front.upper], turn: 3 cm}}}}\n")


@pytest.mark.parametrize(
    "rest",
    [
        f"pieces: {{front: {leg('ring')}}}\n",
        "pieces: {front: {cut: 2, fabric: main, length: 50 cm, edges: {waist: 40 cm}}}\n",
        f"pieces: {{front: {leg('waist')}}}\nhems: {{top: {{edges: [front.waist], turn: 3 cm, fold_under: 1 cm}}}}\n",
        f"pieces: {{front: {leg('waist')}}}\n"
        "bands: {top: {opening: [front.waist], ratio: 80%, finished_width: 3 cm, fabric: main}}\n",
        f"pieces: {{front: {leg('waist')}, top: {{cut: 1, fabric: main, edges: {{lower: 80 cm}}}}}}\n"
        f"{STEP}join: [{{edges: [top.lower, front.waist, front.waist], stitch: zigzag}}]\n",
    ],
    ids=["at its side", "nothing worked out", "in a hem", "in a band", "in a waistband of its own"],
)
def test_casing_that_has_its_room_is_let_pass(rest: str, tmp_path: Path) -> None:
    assert found(tmp_path, rest) == []
