"""Cloth to buy against what the pieces need after a change or a swap: what is said, and what is let pass."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

from sitegen.findings import Finding, Severity

SKIRT = (
    "sizes: [S, M, L]\n"
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: BUY}}\n"
    "pieces: {panel: {cut: 1, fabric: main, length: '26, 27, 30 in', width: 30 in}}\n"
    "changes:\n"
    "  longer: {piece: panel, line_at: 12 in from the top, lengthen_by: 3 in}\n"
)
TOLD = {"steps__01_dot_yaml": "title: Longer\ntext: A longer one needs {longer.then.main.need} of cloth.\n"}


def of_changes(root: Path, text: str, **files: str) -> list[Finding]:
    return [each for each in reviewed(root, text, **files).findings if each.check == "change-cloth"]


def test_change_that_needs_more_than_is_bought_is_wrong_and_tells_every_size(tmp_path: Path) -> None:
    (found,) = of_changes(tmp_path, SKIRT.replace("BUY", "[3/4 yd, 3/4 yd, 7/8 yd]"))
    assert found.severity is Severity.WRONG
    assert (found.place.line, found.place.column) == (9, 11)
    assert found.message == (
        "With longer the pieces need more cotton than is bought: 7/8 yd in sizes S and M, 1 yd in size L. Buy that"
        " much for everybody, or tell it in the text that describes the change: {longer.then.main.need}"
    )


def test_one_size_that_is_short_is_named_alone(tmp_path: Path) -> None:
    (found,) = of_changes(tmp_path, SKIRT.replace("BUY", "[7/8 yd, 7/8 yd, 7/8 yd]"))
    assert found.message.startswith("With longer the pieces need more cotton than is bought: 1 yd in size L. Buy")
    assert found.size == "L"


def test_cloth_that_is_enough_after_the_change_is_let_pass(tmp_path: Path) -> None:
    assert of_changes(tmp_path, SKIRT.replace("BUY", "1 yd")) == []


def test_change_whose_need_a_text_tells_is_let_pass(tmp_path: Path) -> None:
    assert of_changes(tmp_path, SKIRT.replace("BUY", "7/8 yd"), **TOLD) == []


def test_cloth_that_is_too_little_without_the_change_is_said_once(tmp_path: Path) -> None:
    found = reviewed(tmp_path, SKIRT.replace("BUY", "1/2 yd")).findings
    assert {each.check for each in found if "buy" in each.message or "little" in each.message} == {"fabric-short"}


def test_need_that_another_layout_might_save_is_doubted(tmp_path: Path) -> None:
    text = SKIRT.replace("BUY", "1 yd").replace("45 in", "45 in, straighten: 4 in")
    (found,) = of_changes(tmp_path, text)
    assert found.severity is Severity.DOUBTFUL


def test_piece_that_no_longer_fits_on_the_cloth_is_wrong(tmp_path: Path) -> None:
    text = SKIRT.replace("BUY", "4 yd").replace("line_at: 12 in from the top, lengthen_by: 3 in", "widen_by: 16 in")
    (found,) = of_changes(tmp_path, text)
    assert found.severity is Severity.WRONG
    assert found.message.startswith("With longer: panel takes 46 in across")


def test_swap_that_takes_more_of_the_other_cloth_is_wrong(tmp_path: Path) -> None:
    text = (
        "seam_allowance: 1/2 in\n"
        "fabrics:\n"
        "  main: {name: jersey, structure: knit, stretch_across: 100%, width: 60 in, laid: open, buy: 3/4 yd}\n"
        "  rib: {name: rib, structure: knit, stretch_across: 100%, width: 40 in, buy: 1/4 yd}\n"
        "pieces: {panel: {cut: 1, fabric: main, length: 26 in, width: 50 in, edges: {hem: 48 in}}}\n"
        "bands: {trim: {opening: [panel.hem], ratio: 80%, finished_width: 2 in, fabric: rib}}\n"
        "swaps: {plain_trim: {band: trim, fabric: main, ratio: 90%}}\n"
    )
    (found,) = of_changes(tmp_path, text)
    assert found.message.startswith("With plain trim the pieces need more jersey than is bought: 7/8 yd. Buy")
