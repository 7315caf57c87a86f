"""Girths of edges that are there twice and listed once."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

LEGS = (
    "body: {waist: 52 cm}\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 1 m}}\n"
    "pieces: {front: {cut: 2 mirrored, fabric: main, edges: {waist: 15 cm}},"
    " back: {cut: 2 mirrored, fabric: main, edges: {waist: 17 cm}}}\n"
    "girths: {waistline: {edges: [front.waist, back.waist], body: waist}}\n"
)


def found(root: Path, old: str, new: str) -> list[str]:
    findings = reviewed(root, LEGS.replace(old, new)).findings
    return [each.message for each in findings if each.check == "girth-half"]


def test_girth_of_half_the_garment_is_wrong(tmp_path: Path) -> None:
    assert found(tmp_path, "", "") == [
        "The waistline is 12 5/8 in, the body 20 1/2 in. List each edge as often as it goes round the garment:"
        " edges: [front.waist, front.waist, back.waist, back.waist]"
    ]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("[front.waist, back.waist]", "[front.waist, back.waist, front.waist, back.waist]"),
        ("2 mirrored", "1 on fold"),
        ("52 cm", "34 cm"),
        (", body: waist", ""),
        ("52 cm", "90 cm"),
    ],
    ids=["listed twice", "whole pieces", "it goes round the body", "no body", "nor do all copies"],
)
def test_other_girths_are_let_pass(old: str, new: str, tmp_path: Path) -> None:
    assert found(tmp_path, old, new) == []
