"""Round pieces, and whether they are as wide as their rims make them."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import folder

from sitegen.checks import review

TOP = "seam_allowance: 1 cm\nfabrics: {main: {name: canvas, structure: woven}}\nmeasured_in: centimetres\n"
HEAD = "title: Bolster\nsummary: A bolster.\n"


def told(root: Path, piece: str) -> list[str]:
    text = f"{HEAD}{TOP}pieces: {{tip: {{cut: 2, fabric: main, {piece}}}}}\n"
    return [each.message for each in review(folder(root, text, head="")).findings if each.check == "round-rim"]


def test_one_that_is_cut_without_its_allowance_is_told_of(tmp_path: Path) -> None:
    (message,) = told(tmp_path, "length: 18 cm, width: 18 cm, edges: {rim: {radius: 9 cm, turn: 360 outward}}")
    assert message == "The width of a circle with this cut edge is 20 cm, but the tip cut width is 18 cm."


@pytest.mark.parametrize(
    "piece",
    [
        "length: 20 cm, width: 20 cm, edges: {rim: {radius: 9 cm, turn: 360 outward}}",
        "length: 20 cm, width: 20 cm, edges: {rim: {length: 56.5 cm, turn: 360 outward}}",
        "width: 20 cm, edges: {rim: {length: 62.8 cm, turn: 360 outward, measured_on: cut edge}}",
        "finished: {length: 18 cm, width: 18 cm}, edges: {rim: {radius: 9 cm, shape: full circle outward}}",
        "edges: {rim: {length: 62.8 cm, turn: 360 outward}}",
    ],
)
def test_one_that_fits_its_rim_is_silent(tmp_path: Path, piece: str) -> None:
    assert told(tmp_path, piece) == []


@pytest.mark.parametrize(
    "piece",
    [
        "length: 20 cm, width: 30 cm, edges: {rim: {length: 75 cm, turn: 360 outward}}",
        "length: 20 cm, width: 20 cm, edges: {outer: {length: 75 cm, turn: 360 outward}}",
        "length: 20 cm, width: 20 cm, edges: {rim: {length: 75 cm}}",
        "length: 20 cm, width: 20 cm, edges: {armhole: {radius: 9 cm, turn: 180 outward}}",
    ],
)
def test_what_may_be_no_circle_is_left_alone(tmp_path: Path, piece: str) -> None:
    assert told(tmp_path, piece) == []


@pytest.mark.parametrize(
    ("piece", "wide", "cut"),
    [
        (
            "length: 20 cm, width: 20 cm, edges: {rim: {length: 62.8 cm, turn: 360 outward}}",
            "22 cm",
            "cut width is 20 cm",
        ),
        (
            "finished: {length: 18 cm, width: 18 cm}, edges: {rim: {radius: 10 cm, shape: full circle outward}}",
            "20 cm",
            "finished width is 18 cm",
        ),
        ("length: 24 cm, edges: {rim: {length: 56.5 cm, turn: 360 outward}}", "20 cm", "cut length is 24 cm"),
    ],
)
def test_one_that_does_not_fit_its_rim_is_told_of(tmp_path: Path, piece: str, wide: str, cut: str) -> None:
    (message,) = told(tmp_path, piece)
    assert f"edge is {wide}, but" in message
    assert message.endswith(f"the tip {cut}.")
