"""The page lists the numbers of each line and piece of a change, of darts, boxed corners, drops and repeats."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import computed, folder
from publishing.whole_pages import view_of

from sitegen.publishing import publish
from sitegen.publishing.change_numbers import change_names
from sitegen.publishing.drawings import DrawingFiles
from sitegen.publishing.themes import shipped_theme
from sitegen.publishing.views import Both, TutorialView

PARTS = (
    "seam_allowance: 1/2 in\n"
    "fabrics:\n"
    "  main: {name: linen, structure: woven, width: 54 in, buy: 9 yd}\n"
    "  print: {name: cotton print, structure: woven, width: 54 in, repeat: 12 in, buy: 8 yd}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, length: 40 in, width: 20 in, edges: {side: {length: 38 in, sewn: 37 in}},\n"
    "    darts: {bust: {edge: side, width: 1 in, length: 3 in}}}\n"
    "  back: {cut: 1 on fold, fabric: main, length: 41 in, width: 20 in, edges: {side: 37 in}}\n"
    "  bag: {cut: 2, fabric: main, finished: {length: 16 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: seam, left: seam, right: seam}}\n"
    "  pouch: {cut: 1 on fold, fabric: main, finished: {length: 9 in, width: 8 in},\n"
    "    sides: {top: raw, bottom: fold, left: seam, right: seam}}\n"
    "boxed:\n"
    "  corners: {panel: bag, square: 2 in}\n"
    "  folded: {panel: pouch, depth: 3 in, cut_out_width: 1 1/2 in}\n"
    "  uncut: {panel: pouch, depth: 2 in}\n"
    "drops: {curtain: {width: 50 in, ratio: 2 to 1, length: 84 in, top: 3 in, hem: 6 in, fabric: print, drops: 2}}\n"
    "changes:\n"
    "  longer: {pieces: [front, back], crosses: [side], lines: [{line_at: 8 in from the top, lengthen_by: 1/2 in},\n"
    "    {line_at: 2/3 from the top, lengthen_by: 1 in}]}\n"
    "  shorter: {piece: front, line_at: 8 in from the top, shorten_by: 1 in, crosses: [side]}\n"
    "  wider: {pieces: [front, back], widen_by: 2 in}\n"
)


@pytest.fixture(scope="module")
def text(tmp_path_factory: pytest.TempPathFactory) -> str:
    root = tmp_path_factory.mktemp("parts")
    outcome = publish(
        folder(root / "content", PARTS), root / "site", draft=False, progress=lambda done, total, now: None
    )
    assert outcome.front is not None, [each.message for each in outcome.findings]
    page = (root / "site" / "tutorials" / "tee" / "index.html").read_text(encoding="utf-8")
    words = BeautifulSoup(page, "html.parser").get_text(" ", strip=True).replace("\N{NO-BREAK SPACE}", " ")
    return " ".join(words.split())


@pytest.mark.parametrize(
    "words",
    [
        "front bust width 1 in",
        "front bust length 3 in",
        "front bust leg 3 1/16 in",
        "corners cut out of the lower corners of each bag, linen corners square 2 in",
        "folded cut out of the lower corners of each pouch, linen folded cut out width 1 1/2 in",
        "folded cut out height 1 in",
        "corners depth 4 in",
        "curtain cut 2 drops, cotton print curtain cut length 93 in",
        "curtain fabric for the repeat 3 in",
        "curtain repeat length 96 in",
        "curtain full width 100 in",
        "longer back line 2 from line 1",
        "longer back line 2 part above",
    ],
)
def test_number_is_on_the_page(words: str, text: str) -> None:
    assert words in text


def test_corner_that_is_sewn_across_uncut_is_in_no_cutting_list(text: str) -> None:
    assert "uncut depth 2 in" in text
    assert "uncut cut out" not in text
    assert "uncut square" not in text


def test_numbers_of_lines_stand_in_the_order_of_the_work_and_of_each_piece_where_they_differ(tmp_path: Path) -> None:
    found, _ = computed(tmp_path, PARTS)
    changes = found.tutorial.changes
    assert change_names(changes["longer"], found) == (
        "longer.amount",
        "longer.line_1.amount",
        "longer.line_1.part_above",
        "longer.front.line_1.part_below",
        "longer.back.line_1.part_below",
        "longer.line_2.amount",
        "longer.front.line_2.part_above",
        "longer.back.line_2.part_above",
        "longer.front.line_2.from_line_1",
        "longer.back.line_2.from_line_1",
        "longer.front.line_2.part_below",
        "longer.back.line_2.part_below",
        "longer.front.new_cut_length",
        "longer.back.new_cut_length",
    )
    assert change_names(changes["shorter"], found) == (
        "shorter.amount",
        "shorter.part_above",
        "shorter.part_below",
        "shorter.fold",
        "shorter.new_cut_length",
    )
    assert change_names(changes["wider"], found) == ("wider.amount", "wider.each_edge", "wider.new_cut_width")


SKIRT = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: '3/4, 7/8 yd'}}\n"
    "pieces: {panel: {cut: 1, fabric: main, length: '26, 27 in', width: 30 in}}\n"
    "changes:\n"
    "  longer: {piece: panel, line_at: 12 in from the top, lengthen_by: 3 in}\n"
    "  little_longer: {piece: panel, line_at: 12 in from the top, lengthen_by: 1/2 in}\n"
)


def page_of(root: Path, text: str) -> TutorialView:
    found, _ = computed(root, text)
    return view_of(found, DrawingFiles(shipped_theme().drawing_rules()))


def test_change_that_needs_more_cloth_tells_how_much_to_buy_with_it(tmp_path: Path) -> None:
    page = page_of(tmp_path, SKIRT)
    longer, little_longer = page.changes
    assert [(each.fabric, [value.inches for value in each.buy.values]) for each in longer.bought] == [
        ("cotton", ["7/8 yd", "7/8 yd"])
    ]
    assert longer.numbers.rows[-1].name == "longer.then.main.need"
    assert little_longer.bought == ()


def test_amount_to_buy_with_a_change_is_never_less_than_without_it(tmp_path: Path) -> None:
    page = page_of(tmp_path, SKIRT.replace("'3/4, 7/8 yd'", "'3/4, 2 yd'"))
    assert [value.inches for value in page.changes[0].bought[0].buy.values] == ["7/8 yd", "2 yd"]


def test_lengths_of_supplies_are_told_in_both_systems(tmp_path: Path) -> None:
    text = "supplies: [{item: cotton cord, size: 1/4 in, amount: 80 in}, {item: universal needle, size: 80/12}]\n"
    found, _ = computed(tmp_path, text)
    cord, needle = view_of(found, DrawingFiles(shipped_theme().drawing_rules())).supplies
    assert (cord.size, cord.amount) == (Both("1/4 in", "6 mm"), Both("80 in", "203.5 cm"))
    assert (needle.size, needle.amount) == (Both("80/12", "80/12"), None)
