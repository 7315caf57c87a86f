"""Cutting layouts on paper: which size and which fabric each shows, and how much cloth every size takes."""

from __future__ import annotations

from pathlib import Path

import pytest
from classes.class_folders import STEPS, TOTE, class_folder
from handouts.sheets import Sheets, sheets_of

LINED = (
    (
        TOTE.replace("width: '16, 18 in',", "width: '16, 30 in',").replace("buy: 1 yd", "buy: '1, 2 yd'")
        + "  # a second cloth\n"
    )
    .replace("pocket: {cut: '1', fabric: denim}", "pocket: {cut: 2, fabric: lining, length: 8 in, width: 7 in}")
    .replace(
        "  denim: {name: denim, structure: woven, buy: '1/2, 3/4 yd'}",
        "  lining: {name: striped lining, structure: woven, width: 40 in, buy: '1/4, 1/2 yd'}",
    )
)
CUT = {**STEPS, "steps__01-cut_dot_yaml": STEPS["steps__01-cut_dot_yaml"].replace("[panel]", "[panel, pocket]")}


def plain(text: str) -> str:
    return " ".join(text.split())


def lined(root: Path, size: str = "", **options: object) -> Sheets:
    return sheets_of(class_folder(root, tutorial=LINED, **CUT), "evening", size=size, **options)  # type: ignore[arg-type]


def test_cloth_is_told_for_every_size_and_not_in_the_drawing_of_one(tmp_path: Path) -> None:
    handout = lined(tmp_path).made.handout
    assert handout.cloth is not None
    assert handout.cloth.head == ("", "S", "L")
    rows = [tuple(plain(cell) for cell in row) for row in handout.cloth.rows]
    assert rows[0] == ("cotton canvas", "", "")
    assert ("Buy", "1 m (1 yd)", "1.9 m (2 yd)") in rows
    assert ("striped lining", "", "") in rows
    assert ("Buy", "0.3 m (1/4 yd)", "0.5 m (1/2 yd)") in rows
    assert all("Buy" not in each.svg and "Buy" not in each.alt for each in handout.layouts)


def test_one_size_has_its_cloth_in_the_drawing(tmp_path: Path) -> None:
    handout = lined(tmp_path, size="S").made.handout
    assert handout.cloth is None
    assert all("Buy" in each.svg for each in handout.layouts)


@pytest.mark.parametrize("large_print", [False, True])
def test_each_layout_names_its_fabric_and_its_size(tmp_path: Path, large_print: bool) -> None:
    sheets = lined(tmp_path, large_print=large_print)
    for fabric in ("cotton canvas", "striped lining"):
        (page,) = (text for text in sheets.page_texts if f"Cutting layout on {fabric}" in text)
        assert "Drawn in size L." in page.partition(f"Cutting layout on {fabric}")[2]
    assert (
        "Drawn in size" not in lined(tmp_path / "one", size="S", large_print=large_print).text.partition("Step by")[0]
    )


@pytest.mark.parametrize("size", ["", "S"])
def test_heading_of_the_layouts_stands_on_the_page_of_the_first(tmp_path: Path, size: str) -> None:
    for page in lined(tmp_path, size=size).page_texts:
        _, found, below = page.partition(" Cutting layout ")
        assert not found or "Cutting layout on" in below or "Needed" in below, page
