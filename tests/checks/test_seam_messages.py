"""Edges of a seam as authors write them: an edge that lies there twice, a list in the list."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

HAT = (
    "seam_allowance: 1 cm\nfabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {tip: {cut: 1, fabric: main, edges: {rim: 51.4 cm}},"
    " side: {cut: 2, fabric: main, edges: {top: 25.7 cm}}}\n"
)


def found(root: Path, edges: str, check: str) -> list[str]:
    seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: {edges}, stitch: straight}}]\n"
    result = reviewed(root, HAT, steps__01_dot_yaml=seam)
    return [each.message for each in result.findings if each.check == check]


def test_edge_of_which_two_would_meet_the_other_is_told_how_to_write_them(tmp_path: Path) -> None:
    (message,) = found(tmp_path, "[tip.rim, side.top, side.top]", "seam-match")
    assert message.endswith(
        "longer than side top, and no ease is stated. If two of them lie along it end to end, write side.top + side.top."
    )


def test_edge_of_which_two_would_not_meet_the_other_is_not(tmp_path: Path) -> None:
    (message,) = found(tmp_path, "[tip.rim, side.top + side.top + side.top]", "seam-match")
    assert message.endswith("and no ease is stated.")


def test_list_of_edges_that_lie_end_to_end_is_told_how_to_write_it(tmp_path: Path) -> None:
    assert found(tmp_path, "[tip.rim, [side.top, side.top]]", "wrong-kind") == [
        "Expected an edge, found a list. Edges that lie end to end have a + between them: side.top + side.top"
    ]


def test_reference_to_no_number_is_told_once(tmp_path: Path) -> None:
    text = HAT + "before_you_start: The tip is a circle {tip.width} across.\n"
    checks = [
        each.check for each in reviewed(tmp_path, text).findings if each.check.endswith(("reference", "unspoken"))
    ]
    assert checks == ["unknown-reference"]
