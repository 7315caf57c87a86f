"""A typed distance from the edge is held against the allowance of the seam that its step sews."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

TOP = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  front: {cut: 1, fabric: main, edges: {side: 9 in, shoulder: {length: 4 in, seam_allowance: 3/8 in}}}\n"
    "  back: {cut: 1, fabric: main, edges: {side: 9 in, shoulder: {length: 4 in, seam_allowance: 3/8 in}}}\n"
)
SIDE = "[front.side, back.side]"
SHOULDER = "[front.shoulder, back.shoulder]"


def told(root: Path, text: str, *joins: str) -> list[tuple[str, str]]:
    sewn = ", ".join(f"{{edges: {each}, stitch: straight}}" for each in joins)
    step = f"title: Sew\ntext: |\n  {text}\njoin: [{sewn}]\n"
    found = reviewed(root, TOP, steps__01_dot_yaml=step).findings
    return [(each.said, each.should_be) for each in found if each.check == "said-otherwise"]


@pytest.mark.parametrize(
    ("text", "said", "right"),
    [
        ("Sew the side 3/8 in from the edge.", "3/8 in", "1/2 in"),
        ("Pin across. Sew with a straight stitch, 2.5 mm long and 1/4 in from the raw edge.", "1/4 in", "1/2 in"),
        ("Stitch them 3/8 in (1 cm) from the edges.", "3/8 in (1 cm)", "1/2 in (1.3 cm)"),
        ("Pin. Sew 2 cm from the edge. Press.", "2 cm", "1.3 cm"),
    ],
)
def test_another_distance_is_doubtful(tmp_path: Path, text: str, said: str, right: str) -> None:
    assert told(tmp_path, text, SIDE) == [(said, right)]


@pytest.mark.parametrize(
    "text",
    [
        "Sew the side 1/2 in from the edge.",
        "Sew the side 1.3 cm from the edge.",
        "Sew the side {seam_allowance} from the edge.",
        "Pin it 1/4 in from the edge. Sew.",
        "Sew two gathering rows 1/4 in from the edge.",
        "Topstitch 1/4 in from the edge.",
        "Sew it, then edge-stitch 1/8 in from the edge.",
        "Sew 3/8 in from the edge, and the long one 5/8 in from the edge.",
        "Sew 3/8 in from the fold.",
    ],
)
def test_what_agrees_or_may_be_another_line_is_silent(tmp_path: Path, text: str) -> None:
    assert told(tmp_path, text, SIDE) == []


def test_a_step_with_seams_of_several_allowances_is_not_judged(tmp_path: Path) -> None:
    assert told(tmp_path, "Sew 1/4 in from the edge.", SIDE, SHOULDER) == []
    assert told(tmp_path, "Sew 1/4 in from the edge.", SHOULDER) == [("1/4 in", "3/8 in")]
