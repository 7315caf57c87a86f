"""Allowances, elastics and hems that are hardly meant, and those of which nothing is said."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

SKIRT = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: poplin, structure: woven}}\n"
    "pieces: {skirt: {cut: 2, fabric: main, length: 20 in, sides: {top: seam, bottom: SIDE},"
    " edges: {lower: 30 in}}}\n"
    "hems: {deep: {edges: [skirt.lower], turn: 1 in, fold_under: 1/4 in, stitch: straight}}\n"
)
WAIST = (
    "body: {waist: 28 in}\n"
    "elastics: {waistband: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}}\n"
)


def said(root: Path, text: str, check: str) -> list[str]:
    return [each.message for each in reviewed(root, text).findings if each.check == check]


def test_allowance_without_a_unit_is_told_with_the_unit_in_which_it_is_read(tmp_path: Path) -> None:
    (message,) = said(tmp_path, "seam_allowance: 10", "allowance-unusual")
    assert message == (
        "The seam allowance is read as 10 in, since a number without a unit is in inches. Hardly any seam has more than"
        " 2 in (5 cm). Is its unit the right one?"
    )


@pytest.mark.parametrize("allowance", ["2 in", "5 cm", "2 in (5 cm)", "3/8 in", "0 in"])
def test_allowance_that_occurs_is_passed_over(allowance: str, tmp_path: Path) -> None:
    assert said(tmp_path, f"seam_allowance: {allowance}", "allowance-unusual") == []


def test_casing_without_room_is_told(tmp_path: Path) -> None:
    (message,) = said(tmp_path, WAIST.replace("room: 1/8 in", "room: 0 in"), "elastic-loose")
    assert message.startswith("The casing of the waistband has no room")


@pytest.mark.parametrize("side", ["deep", "lower", "seam"])
def test_hem_whose_side_is_named_or_not_raw_is_passed_over(side: str, tmp_path: Path) -> None:
    assert said(tmp_path, SKIRT.replace("SIDE", side), "hem-nowhere") == []


def test_hem_beside_a_raw_side_of_which_nothing_is_worked_out_is_passed_over(tmp_path: Path) -> None:
    text = SKIRT.replace("length: 20 in", "width: 20 in").replace("SIDE", "raw")
    assert said(tmp_path, text, "hem-nowhere") == []
