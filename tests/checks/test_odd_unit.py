"""A single length in the other unit."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

TRIPS = (
    "sizes: [S, M, L, XL]\nseam_allowance: 3/8 in\nbody: {bust: '33, 35, 37, 39 in', arm: '22, 23, 24, 25 in'}\n"
    "fabrics: {main: {name: linen, structure: woven, width: 60 in}}\n"
    "pieces: {sleeve: {cut: 2, fabric: main, edges: {hem: '10, 11, 12, 13 in', side: '15, 16, 17, 18 in'}}}\n"
    "hems: {cuff: {edges: [sleeve.hem], turn: TURN, stitch: straight}}\n"
)


def odd(root: Path, turn: str, text: str = TRIPS) -> list[str]:
    findings = reviewed(root, text.replace("TURN", turn)).findings
    return [each.message for each in findings if each.check == "odd-unit"]


def test_one_length_in_the_other_unit_is_told_in_both(tmp_path: Path) -> None:
    assert odd(tmp_path, "2 cm") == [
        "The cuff turn is given as 2 cm, which is 13/16 in. All else here is in inches. If it is right, write both"
        " units, 2 cm (13/16 in)."
    ]


@pytest.mark.parametrize("turn", ["3/4 in", "2 cm (13/16 in)", "20 mm", '"{seam_allowance}"'])
def test_length_that_may_be_so_is_left_alone(turn: str, tmp_path: Path) -> None:
    assert odd(tmp_path, turn) == []


def test_two_lengths_in_the_other_unit_are_no_slip(tmp_path: Path) -> None:
    assert odd(tmp_path, "2 cm", TRIPS.replace("allowance: 3/8 in", "allowance: 1 cm")) == []


def test_few_lengths_tell_no_habit(tmp_path: Path) -> None:
    assert odd(tmp_path, "", "body: {arm: 22 in}\nseam_allowance: 1 cm\n") == []
