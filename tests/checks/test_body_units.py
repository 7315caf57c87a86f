"""Measurements of the body in the other unit, and what follows from them for elastic."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

LEGS = (
    "seam_allowance: 1 cm\nbody: {BODY}\nfabrics: {main: {name: cotton, structure: woven, buy: 1 m}}\n"
    "pieces: {front: {cut: 2 mirrored, fabric: main, sides: {top: ring}, edges: {waist: 15 cm}},"
    " back: {cut: 2 mirrored, fabric: main, sides: {top: ring}, edges: {waist: 17 cm}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 2 cm, width: 2 cm, room: 5 mm}}\n"
)


def found(root: Path, body: str, old: str = "", new: str = "") -> list[str]:
    findings = reviewed(root, LEGS.replace("BODY", body).replace(old, new)).findings
    return [each.message for each in findings if each.check in ("body-unit", "elastic-long")]


def test_waist_in_inches_among_centimetres_is_told_with_its_elastic(tmp_path: Path) -> None:
    assert found(tmp_path, "hip: 56 cm, bust: 54 cm, waist: 52 in") == [
        "A waist of 52 in does not go with the bust of 54 cm and the hip of 56 cm. Is one of them in the other unit?",
        "The finished ring is 46 3/4 in long, but what it gathers only 25 1/4 in. See what it goes round, and in which"
        " unit that is.",
    ]


@pytest.mark.parametrize(
    "body",
    ["hip: 56 cm, waist: 52 cm", "hip: 36 in, bust: 31 in, waist: 24 in", "hip: 40 in, waist: 48 in", "waist: 24 in"],
)
def test_bodies_that_may_be_are_let_pass(body: str, tmp_path: Path) -> None:
    assert [each for each in found(tmp_path, body) if "other unit?" in each] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [("waist: 17 cm", "top: 17 cm"), ("cut: 2 mirrored", "cut: two"), ("top: ring", "top: raw")],
    ids=["edge of another name", "count not clear", "not at a side"],
)
def test_elastic_is_not_compared_where_not_all_that_it_gathers_is_known(old: str, new: str, tmp_path: Path) -> None:
    assert found(tmp_path, "waist: 52 in", old, new) == []
