"""Pieces of which only the finished size is known, and references to a cut size that cannot be worked out."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

HEAD = "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
STEP = "title: Cut\ntext: Cut the panels {panel.NAME} long.\n"
FINISHED = "finished: {length: 8 in, width: 9 in}"


def found(root: Path, panel: str, checks: set[str], step: str = "") -> list[str]:
    steps = {"steps__01_dot_yaml": step} if step else {}
    findings = reviewed(root, f"{HEAD}pieces: {{panel: {{cut: 2, fabric: main, {panel}}}}}\n", **steps).findings
    return [
        f"{each.severity.value} {each.message} {each.should_be}".strip() for each in findings if each.check in checks
    ]


@pytest.mark.parametrize(
    ("panel", "said"),
    [
        (
            f"{FINISHED}, cut_length: 3 in, cut_width: 99 in",
            "The cut length and width of the panel cannot be worked out. Say what lies at its top, bottom, left and"
            " right, such as sides: {top: seam, bottom: seam, left: seam, right: seam}",
        ),
        (
            f"{FINISHED}, sides: {{left: fold, right: seam, top: raw}}",
            "The cut length of the panel cannot be worked out. Say what lies at its bottom, such as"
            " sides: {top: raw, bottom: seam, left: fold, right: seam}",
        ),
    ],
    ids=["no sides", "one side"],
)
def test_finished_size_without_its_sides_is_wrong(panel: str, said: str, tmp_path: Path) -> None:
    assert found(tmp_path, panel, {"cut-size-unknown", "claim-unheld"}) == [
        f"wrong {said}: a seam, an edge by its name, a hem, an elastic, fold or raw."
    ]


def test_written_finished_size_that_nothing_is_held_against_is_doubted(tmp_path: Path) -> None:
    panel = "length: 8 in, finished_length: 7 1/2 in"
    assert found(tmp_path, panel, {"cut-size-unknown", "claim-unheld"}) == [
        "doubtful The panel finished length cannot be worked out, so nothing is held against it. See that the piece has"
        " that length or width, as cut or finished, and its sides say what lies at both ends of it, or take it out."
    ]


@pytest.mark.parametrize(("known", "asked"), [("finished: {length: 8 in}", "cut"), ("length: 8 in", "finished")])
def test_finished_is_never_put_for_cut_nor_the_other_way_round(known: str, asked: str, tmp_path: Path) -> None:
    step = STEP.replace("NAME", f"{asked}_length")
    assert found(tmp_path, known, {"unknown-reference"}, step) == [
        f"wrong There is no number “panel.{asked}_length”. It follows from what lies at each end of the length:"
        " sides: {top: seam, bottom: seam}."
    ]
    step = STEP.replace("NAME", f"{asked}_lenght")
    assert "Nearest" not in found(tmp_path, known, {"unknown-reference"}, step)[0]
