"""Edges that are longer than their piece is wide: halves that are taken for wholes, and what is let pass."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

HEAD = "sizes: [S, M]\nseam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven, buy: 3 yd}}\n"


def doubted(root: Path, piece: str) -> list[str]:
    found = reviewed(root, f"{HEAD}pieces: {{part: {piece}}}\n").findings
    return [each.message for each in found if each.check == "edge-too-long"]


def test_half_width_beside_a_whole_hem_is_doubted_in_the_first_size_that_shows_it(tmp_path: Path) -> None:
    piece = "{cut: 1 on fold, fabric: main, length: 10 in, width: '8, 5 1/4 in', edges: {hem: 10 in, side: 7 in}}"
    assert doubted(tmp_path, piece) == [
        "part.hem is 10 in long in size M, but the whole part is cut only 5 1/4 in wide. Is one of the two half of what"
        " is meant? On the fold, width is that of the whole piece, opened out."
    ]


@pytest.mark.parametrize(
    "piece",
    [
        "{cut: 2, fabric: main, length: 24 in, width: 19 in, edges: {hem: 22 in, side: 23 in}}",
        "{cut: 1 on fold, fabric: main, length: 10 in, width: 5 1/4 in, sides: {left: fold, right: side},"
        " edges: {hem: 10 in, side: 7 in}}",
        "{cut: 1, fabric: main, length: 40 in, width: 6 in, edges: {hem: 40 in, side: 6 in}}",
        "{cut: 1, fabric: main, length: 40 in, width: 3 in, edges: {top: 38 in}}",
        "{cut: 1, fabric: main, length: 20 in, width: 5 in, edges: {neckline: 12 in, side: 15 in}}",
        "{cut: 1, fabric: main, length: 30 in, width: 5 in, sides: {left: top, right: side, top: raw, bottom: raw},"
        " edges: {top: 29 in, side: 29 in}}",
    ],
    ids=["curved hem", "half with its fold", "frill along the grain", "band", "neckline", "top at the side"],
)
def test_edge_that_may_be_so_long_is_let_pass(piece: str, tmp_path: Path) -> None:
    assert doubted(tmp_path, piece) == []
