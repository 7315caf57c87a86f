"""Darts and boxed corners among the steps: how their keys are read, and what waits for what."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages

from sitegen.tutorial import Making, corner_edges, making_of

PARTS = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven}}\npieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {side: 16 in, hem: 12 in},\n"
    "    darts: {bust: {edge: side, width: 1 in, length: 3 in}}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in}}\n"
    "  upper: {cut: 2, fabric: main, edges: {lower: 15 in, side: 10 in}}\n"
    "  base: {cut: 2, fabric: main, finished: {length: 6 in, width: 15 in},\n"
    "    sides: {top: top, bottom: bottom, left: side, right: side}, edges: {top: 15 in, side: 4 in, bottom: 11 in}}\n"
    "  pouch: {cut: 1 on fold, fabric: main, finished: {length: 6 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: fold, left: side, right: seam}, edges: {side: 4 in}}\n"
    "boxed:\n"
    "  corners: {panel: [upper, base], square: 2 in}\n"
    "  pouch_corners: {panel: pouch, depth: 3 in}\n"
)
DARTS = "title: Fold\ntext: Sew.\ndarts: [front.bust]\n"
SIDES = "title: Long seams\ntext: Sew.\njoin: [{edges: [front.side, back.side]}]\n"
BOTTOM = "title: Low\ntext: Sew.\njoin: [{edges: [base.bottom, base.bottom]}]\n"
BOX = "title: Depth\ntext: Sew.\nbox: [corners]\n"


def making(root: Path, *steps: str) -> Making:
    files = {f"steps__{number:02}_dot_yaml": text for number, text in enumerate(steps, 1)}
    found, findings = computed(root, PARTS, **files)
    assert messages(findings) == []
    return making_of(found.tutorial)


def test_edge_waits_for_the_darts_in_it(tmp_path: Path) -> None:
    made = making(tmp_path, DARTS, SIDES)
    assert made.works[0].uses == {"front", "front.side"}
    assert made.works[0].makes == {"front.bust", "front.side"}
    assert made.must_come_before(2) == (1,)


def test_corners_wait_for_the_seams_that_meet_there(tmp_path: Path) -> None:
    made = making(tmp_path, BOTTOM, BOX)
    assert made.works[1].uses == {"upper", "base", "base.side", "base.bottom"}
    assert made.works[1].makes == {"corners"}
    assert made.must_come_before(2) == (1,)


def test_bag_and_bodice_can_be_made_together(tmp_path: Path) -> None:
    assert making(tmp_path, DARTS, BOTTOM, BOX).can_be_done_together() == ((1, 2), (1, 3))


def test_edges_at_a_corner_are_those_with_a_name(tmp_path: Path) -> None:
    tutorial = computed(tmp_path, PARTS)[0].tutorial
    assert corner_edges(tutorial.boxed["corners"], tutorial) == ("base.side", "base.bottom")
    assert corner_edges(tutorial.boxed["pouch_corners"], tutorial) == ("pouch.side",)


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ("darts: [front.bost]\n", "3:9 unknown-reference: There is no dart “front.bost”. Nearest: front.bust."),
        (
            "box: [corner]\n",
            "3:7 unknown-reference: There are no boxed corners “corner”. Nearest: corners, pouch_corners.",
        ),
        (
            "diagrams: [front.side]\n",
            "3:12 unknown-reference: There is no band, hem, change, dart, boxed corners, spacing, gather, pleats or binding"
            " to draw “front.side”. Nearest: front.bust.",
        ),
    ],
)
def test_name_that_is_not_there_is_reported_where_it_stands(keys: str, expected: str, tmp_path: Path) -> None:
    assert messages(computed(tmp_path, PARTS, steps__01_dot_yaml="title: Sew\ntext: Sew.\n" + keys)[1]) == [expected]
