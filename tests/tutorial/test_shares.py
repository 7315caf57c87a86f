"""Shares that cannot be: told where they stand, with an example, and never a fault of the program."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import messages, reviewed

from sitegen.cli import main

TEE = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {rib: {name: rib, structure: knit, width: 40 in, buy: 1 yd, stretch_across: 100%, shrinkage: SHRINKAGE}}\n"
    "pieces: {panel: {cut: 1, fabric: rib, length: 20 in, width: 30 in, edges: {hem: HEM}}}\n"
    "bands: {trim: {opening: [panel.hem], ratio: RATIO, finished_width: 2 in, fabric: rib, goes_over: nothing}}\n"
)
CLASS = "title: Class\ntutorial: tee\nstudents: 2\nsessions: [{minutes: 60}]\n"


def said(root: Path, *, shrinkage: str = "5%", ratio: str = "85%", hem: str = "29 in") -> list[str]:
    text = TEE.replace("SHRINKAGE", shrinkage).replace("RATIO", ratio).replace("HEM", hem)
    return messages(reviewed(root, text).findings)


def test_usual_shares_are_let_pass(tmp_path: Path) -> None:
    assert said(tmp_path) == []


@pytest.mark.parametrize("shrinkage", ["100%", "120%", "1"])
def test_shrinkage_that_leaves_nothing_is_refused_where_it_stands(shrinkage: str, tmp_path: Path) -> None:
    (tmp_path / "classes").mkdir(parents=True)
    (tmp_path / "classes" / "evening.yaml").write_text(CLASS, encoding="utf-8")
    assert said(tmp_path, shrinkage=shrinkage) == [
        f"5:103 wrong-kind: Expected a percentage below 100%, found “{shrinkage}”. Example: shrinkage: 5%"
    ]
    assert main(["check", str(tmp_path)]) == 1


@pytest.mark.parametrize(("written", "read"), [("0.05", "5%"), ("0,05", "5%"), (".03", "3%")])
def test_shrinkage_without_its_percent_sign_is_told_as_it_is_read(written: str, read: str, tmp_path: Path) -> None:
    assert said(tmp_path, shrinkage=f'"{written}"') == [
        f"5:104 share-unclear: The shrinkage of rib is written {written}, which is read as {read}. Write the percent sign."
    ]


@pytest.mark.parametrize("written", ["1/20", "5 percent"])
def test_share_that_nobody_misreads_is_let_pass(written: str, tmp_path: Path) -> None:
    assert said(tmp_path, shrinkage=written) == []


def test_ratio_of_nothing_is_refused_where_it_stands(tmp_path: Path) -> None:
    assert said(tmp_path, ratio="0%") == [
        "7:45 wrong-kind: Expected a percentage above 0%, found “0%”. Example: ratio: 80%"
    ]


@pytest.mark.parametrize("swaps", ["", "swaps: {plain_trim: {band: trim, fabric: rib}}\n"])
def test_band_round_nothing_is_told_once_and_where_the_nothing_stands(swaps: str, tmp_path: Path) -> None:
    text = TEE.replace("SHRINKAGE", "5%").replace("RATIO", "85%").replace("HEM", "0 in").replace("nothing", "hand")
    (told,) = messages(reviewed(tmp_path, text + swaps).findings)
    assert told.partition(" ")[2] == (
        "nothing-left: The trim finished length comes out at 0 in, since what it goes round is no longer than that. Write"
        " how long that is."
    )


def test_number_that_divides_by_nothing_is_told_at_its_part_and_what_follows_is_not(tmp_path: Path) -> None:
    text = (
        "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven}}\n"
        "pieces:\n  leg: {cut: 2, fabric: main, length: 40 in, edges: {side: 39 in},\n"
        "    taper: {top: 12 in, bottom: 8 in, over: 0 in, edges: 1}}\n"
        "changes: {longer: {piece: leg, line_at: 8 in from the bottom, lengthen_by: 2 in, crosses: [side]}}\n"
    )
    told = [each for each in messages(reviewed(tmp_path, text).findings) if "zero-length" in each]
    assert told == ["7:8 zero-length: leg.slope cannot be worked out: it divides by a length of nothing."]


def test_picture_of_a_band_that_could_not_be_read_is_no_further_finding(tmp_path: Path) -> None:
    text = TEE.replace("SHRINKAGE", "5%").replace("RATIO", "0%").replace("HEM", "29 in")
    step = "title: Sew\ntext: Sew.\ndiagrams: [plan of trim, seam of panel.him]\n"
    found = reviewed(tmp_path, text, steps__01_dot_yaml=step).findings
    assert [each.said for each in found if each.check == "unknown-reference"] == ["seam of panel.him"]
