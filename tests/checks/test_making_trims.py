"""Where cords, tapes and zips are cut, put in and spoken of in the steps."""

from __future__ import annotations

from pathlib import Path

import pytest
from checks.test_making_messages import found
from content import computed, reviewed

from sitegen.tutorial.making import works_of

TOP = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit}}\n"
    "pieces: {front: {cut: 2 mirrored, fabric: main, edges: {centre: 20 in, side: 14 in, hem: 10 in}}}\n"
    "hems: {casing: {edges: [front.hem], turn: 1 in}}\n"
    "trims:\n"
    "  front_zip: {kind: zip, edges: [front.centre], supply: white zip}\n"
    "  hem_cord: {kind: cord, edges: [front.hem, front.hem], each_end: 8 in, supply: cotton cord}\n"
    "supplies: [{item: white zip, size: 20 in}, {item: cotton cord, amount: 1 yd}, thread]\n"
)
CUT = "title: Cut out\ntext: Cut all.\ncut: [front, hem_cord]\n"
SIDES = "title: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, front.side], stitch: zigzag}]\n"
ZIP = "title: Sew in the zip\ntext: Sew in the zip, {front_zip.length} long.\ninsert: [front_zip]\n"
CASING = "title: Sew the casing\ntext: Turn and sew.\nhem: [casing]\n"
CORD = "title: Draw in the cord\ntext: Draw in the cord.\ninsert: [hem_cord]\n"


def test_trims_are_put_in_by_their_names(tmp_path: Path) -> None:
    """A zip is not cut, and its edge is sewn where it is put in."""
    assert found(tmp_path, TOP, CUT, SIDES, ZIP, CASING, CORD) == []


@pytest.mark.parametrize(
    ("steps", "findings"),
    [
        (
            (CUT, SIDES, ZIP, CORD, CASING),
            [
                "steps/04.yaml:3:10 wrong insert-before-casing: The hem cord is put in here, but its casing at front.hem"
                " is made only in the step “Sew the casing”."
            ],
        ),
        (
            (CUT.replace(", hem_cord", ""), SIDES, ZIP, CASING, CORD),
            [
                "tutorial.yaml:10:13 doubtful never-cut: No step cuts the hem cord. Add it to a step, such as"
                " cut: [hem_cord]"
            ],
        ),
        (
            (CUT, SIDES, CASING, CORD),
            [
                "tutorial.yaml:6:65 doubtful edge-never-sewn: front.centre is in no seam, band, hem or finish of any"
                " step. Add it to the step that sews it. Where the front zip is sewn in, that is"
                " insert: [front_zip]."
            ],
        ),
        (
            (SIDES, ZIP, CORD, CUT, CASING),
            [
                "steps/01.yaml:3:17 wrong used-before-cut: The front is used here but cut only in the step “Cut out”.",
                "steps/03.yaml:3:10 wrong used-before-cut: The hem cord is used here but cut only in the step “Cut"
                " out”.",
                "steps/03.yaml:3:10 wrong insert-before-casing: The hem cord is put in here, but its casing at front.hem"
                " is made only in the step “Sew the casing”.",
            ],
        ),
    ],
)
def test_trims_take_their_place_in_the_making(tmp_path: Path, steps: tuple[str, ...], findings: list[str]) -> None:
    assert sorted(found(tmp_path, TOP, *steps)) == sorted(findings)


def test_the_order_of_making_knows_of_trims(tmp_path: Path) -> None:
    files = {f"steps__{number:02}_dot_yaml": step for number, step in enumerate((CUT, SIDES, ZIP, CASING, CORD), 1)}
    works = works_of(computed(tmp_path, TOP, **files)[0].tutorial)
    assert {"front_zip", "front.centre"} <= works[2].uses
    assert "hem_cord" in works[4].makes


def test_the_length_of_another_trim_than_the_text_names_is_told_of(tmp_path: Path) -> None:
    text = ZIP.replace("front_zip.length", "hem_cord.length")
    told = reviewed(tmp_path, TOP, steps__01_dot_yaml=text).findings
    assert [each.check for each in told if each.said == "hem_cord.length"] == ["reference-part"]
