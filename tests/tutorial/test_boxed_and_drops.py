"""Boxed corners, drops of cloth and the repeat of a print: numbers, and what is said of faults."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import System, inches, show_working
from sitegen.tutorial import Computed

BAG = (
    "seam_allowance: 1/2 in\n"
    "fabrics:\n"
    "  main: {name: canvas, structure: woven, width: 45 in}\n"
    "  print: {name: print, structure: woven, width: 54 in, selvage: 1/2 in, repeat: 12 in, shrinkage: 4%}\n"
    "  plain: {name: plain, structure: woven}\n"
    "pieces:\n"
    "  upper: {cut: 2, fabric: main, finished: {length: 10 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: seam, left: seam, right: seam}}\n"
    "  base: {cut: 2, fabric: main, finished: {length: 6 in, width: 15 in},\n"
    "    sides: {top: seam, bottom: seam, left: seam, right: seam}}\n"
    "  pouch: {cut: 1 on fold, fabric: main, finished: {length: 9 in, width: 8 in},\n"
    "    sides: {top: raw, bottom: fold, left: seam, right: seam}}\n"
    "  half: {cut: 2 on fold, fabric: main, finished: {length: 9 in, width: 8 in},\n"
    "    sides: {top: raw, bottom: seam, left: fold, right: seam}}\n"
    "  box: {cut: 2, fabric: main, finished: {length: '{chosen.panel_length}', width: '{chosen.panel_width}'},\n"
    "    sides: {top: raw, bottom: seam, left: seam, right: seam}}\n"
)
PARTS = (
    "boxed:\n"
    "  tote: {panel: [upper, base], square: 2 in, width: 11 in, height: 14 in}\n"
    "  folded: {panel: pouch, depth: 3 in, cut_out_width: 1 1/2 in, cut_out_height: 1 in}\n"
    "  whole: {panel: half, depth: 4 in, corner_allowance: 1/4 in, square: 2 1/4 in}\n"
    "  uncut: {panel: pouch, depth: 3 in}\n"
    "  chosen: {panel: box, depth: 4 in, cut_for: {width: 12 in, height: 14 in}, panel_width: 16 in}\n"
    "drops:\n"
    "  curtain: {width: 50 in, ratio: 2 to 1, length: 84 in, top: 3 in, hem: 6 in, side: 1 in, fabric: print, drops: 2}\n"
    "  cloth: {width: 40 in, length: 60 in, fabric: main, seam_allowance: 5/8 in}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("bags"), BAG + PARTS)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "length"),
    [
        ("tote.depth", "4"),
        ("tote.width", "11"),
        ("tote.height", "14"),
        ("tote.from_tip", "2"),
        ("tote.cut_out_height", "2"),
        ("folded.width", "5"),
        ("folded.height", "7.5"),
        ("folded.cut_out_width", "1.5"),
        ("folded.cut_out_height", "1"),
        ("uncut.width", "5"),
        ("uncut.from_tip", "1.5"),
        ("whole.width", "12"),
        ("whole.square", "2.25"),
        ("chosen.width", "12"),
        ("chosen.panel_width", "16"),
        ("chosen.panel_length", "16"),
        ("box.cut_width", "17"),
        ("box.cut_length", "16.5"),
        ("curtain.full_width", "102"),
        ("curtain.usable_width", "53"),
        ("curtain.cut_length", "93"),
        ("curtain.repeat_length", "96"),
        ("curtain.for_repeat", "3"),
        ("curtain.cloth", "200"),
        ("cloth.full_width", "40"),
        ("cloth.cloth", "60"),
    ],
)
def test_length(name: str, length: str, found: Computed) -> None:
    number = found.number(name, 0)
    assert number is not None
    assert number.length == inches(length)
    assert show_working(number, System.INCHES)


def test_corner_at_a_fold_has_no_square(found: Computed) -> None:
    assert found.number("folded.square", 0) is None


def test_corner_with_a_depth_alone_is_sewn_across_uncut(found: Computed) -> None:
    assert [name for name in found.names() if name.startswith("uncut.")] == [
        "uncut.corner_allowance", "uncut.depth", "uncut.from_tip", "uncut.width", "uncut.height",
    ]  # fmt: skip


def test_square_of_a_corner_that_is_not_cut_out_is_no_depth(tmp_path: Path) -> None:
    step = "title: Cut\ntext: Cut out a square of {uncut.square}, or {uncut.cut_out_width}.\n"
    found = messages(computed(tmp_path, BAG + PARTS, steps__01_dot_yaml=step)[1])
    assert [each.partition(" ")[2] for each in found] == [
        f"unknown-reference: There is no number “uncut.{field}”. With a depth alone the corner is sewn across uncut. If it"
        " is cut out, write square beside the depth, or cut_out_width and cut_out_height."
        for field in ("square", "cut_out_width")
    ]


def test_height_of_a_bag_shows_its_panels_and_half_of_the_depth(found: Computed) -> None:
    height = found.number("tote.height", 0)
    assert height is not None
    assert show_working(height, System.INCHES)[-1] == (
        "tote height: length of the panel 16 in − half depth 2 in = 14 in"
    )


def test_drops_that_are_needed_are_counted_with_their_seams(found: Computed) -> None:
    needed = [found.number(f"{name}.drops_needed", 0) for name in ("curtain", "cloth")]
    assert [each.number for each in needed if each] == [2, 1]


REPEAT = (
    "fabrics: {main: {name: print, structure: woven, width: 45 in, repeat: 6 in, MORE}}\n"
    "pieces:\n"
    "  panel: {cut: 2, fabric: main, length: 30 in, width: 40 in}\n"
    "  strip: {cut: 1, fabric: main, length: 4 in, width: 40 in}\n"
)


@pytest.mark.parametrize(("more", "added"), [("", "12"), ("match: [panel]", "6"), ("match: [strip]", "0")])
def test_cloth_for_a_repeat_follows_from_the_rows_that_are_matched(more: str, added: str, tmp_path: Path) -> None:
    plain, _ = computed(tmp_path / "plain", REPEAT.replace(", repeat: 6 in, MORE", ""))
    tutorial, findings = computed(tmp_path / "matched", REPEAT.replace(", MORE", f", {more}" if more else ""))
    assert messages(findings) == []
    numbers = [tutorial.number(f"main.{field}", 0) for field in ("for_repeat", "need")]
    without = plain.number("main.need", 0)
    assert without is not None
    assert [each.length for each in numbers if each] == [inches(added), without.length + inches(added)]


def test_too_little_bought_for_the_repeat_is_reported(tmp_path: Path) -> None:
    findings = reviewed(tmp_path, REPEAT.replace("MORE", "buy: 1 3/4 yd")).findings
    assert [each.check for each in findings] == ["fabric-short"]


@pytest.mark.parametrize(
    ("parts", "expected"),
    [
        ("boxed: {tote: {square: 2 in}}", ["key-missing: Boxed tote lacks panel. Example: bottom: {panel: bag, square: 2 in}"]),
        ("boxed: {tote: {panel: base}}",
         ["key-missing: Boxed tote needs the square that is cut out, or the depth. Example: bottom: {panel: bag,"
          " square: 2 in}"]),
        ("boxed: {tote: {panel: bass, square: 2 in}}", ["unknown-reference: There is no piece “bass”. Nearest: base."]),
        ("boxed: {tote: {panel: base, square: 2 in, width: 12 in}}",
         ["boxed-sum: The tote width does not agree: given 12 in, computed 11 in."]),
        ("boxed: {tote: {panel: base, square: 2 in, depth: 5 in}}",
         ["boxed-sum: The tote square does not agree: given 2 in, computed 2 1/2 in."]),
        ("boxed: {tote: {panel: base, square: 8 in}}",
         ["boxed-sum: The corners of tote take more than the panel has."]),
        ("boxed: {tote: {panel: pouch, square: 2 in}}",
         ["boxed-square: No square fits the corners of tote: 2 in is cut out in from the side and 1 1/2 in up from the"
          " lower edge, since they take different allowances. Write depth: 4 in, cut_out_width: 2 in, cut_out_height: 1 1/2 in instead of"
          " the square."]),
        ("boxed: {tote: {panel: base, depth: 4 in, cut_for: {width: 12 in}}}",
         ["key-missing: Cut_for of boxed tote lacks height. Example: cut_for: {width: 12 in, height: 14 in}"]),
        ("boxed: {tote: {panel: base, square: 1/4 in, corner_allowance: 1/4 in}}",
         ["impossible-sum: The tote from tip cannot be worked out: the seams leave nothing of tote square."]),
        ("drops: {curtain: {width: 50 in, length: 84 in}}",
         ["key-missing: Drop curtain lacks fabric. Example: fabric: main"]),
        ("drops: {curtain: {width: 50 in, length: 84 in, fabric: mian}}",
         ["unknown-reference: There is no fabric “mian”. Nearest: main."]),
        ("drops: {curtain: {width: 50 in, length: 84 in, fabric: plain}}",
         ["drops-count: How many drops curtain takes follows from the width of plain, which is not said. Add to fabric"
          " plain, for example, width: 54 in"]),
        ("drops: {curtain: {width: 100 in, length: 84 in, fabric: main, drops: 2}}",
         ["drops-count: Curtain needs 3 drops, not 2."]),
        ("drops: {curtain: {width: 50 in, length: 84 in, fabric: main, drops: 0}}",
         ["wrong-kind: Expected 1 drop or more, found “0”. Example: drops: 3"]),
        ("drops: {curtain: {width: 50 in, length: 84 in, hem: 6 in, fabric: main, cut_length: 84 in}}",
         ["drops-sum: The curtain cut length does not agree: given 84 in, computed 90 in."]),
        ("drops: {curtain: {width: 50 in, length: 84 in, fabric: main, repeat_length: 84 in}}",
         ["claim-unheld: The curtain repeat length cannot be worked out, so nothing is held against it. See that its"
          " fabric has a width, and a repeat where the print is matched, or take it out."]),
    ],
)  # fmt: skip
def test_fault_is_told(parts: str, expected: list[str], tmp_path: Path) -> None:
    bag = BAG.replace("'{chosen.panel_length}'", "16 in").replace("'{chosen.panel_width}'", "16 in")
    found = [each for each in reviewed(tmp_path, bag + parts + "\n").findings if each.check != "fabric-unused"]
    assert [f"{each.check}: {each.message}" for each in found] == expected


def test_pieces_to_match_without_a_repeat_are_reported(tmp_path: Path) -> None:
    text = REPEAT.replace(" repeat: 6 in, MORE", " match: [panel, bands]")
    assert [each.message for each in reviewed(tmp_path, text).findings] == [
        "Fabric main lacks repeat. Example: repeat: 6 in",
        "There is no piece of main “bands”. Known are: panel, strip.",
    ]


WASHED = "fabrics: {main: {name: cotton, structure: woven, washed: {before: 10 in, after: 9 1/2 in}MORE}}\n"


def test_shrinkage_is_worked_out_from_a_washed_swatch(tmp_path: Path) -> None:
    tutorial, findings = computed(tmp_path, WASHED.replace("MORE", ""))
    assert messages(findings) == []
    found = tutorial.number("main.washed_shrinkage", 0)
    assert found is not None
    assert show_working(found, System.INCHES) == (
        "lost in the wash: swatch before washing 10 in − swatch after washing 9 1/2 in = 1/2 in",
        "cotton washed shrinkage: lost in the wash 1/2 in ÷ swatch before washing 10 in = 5%",
    )


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (WASHED.replace("MORE", ", shrinkage: 4%"), []),
        (WASHED.replace("MORE", ", shrinkage: 3%"),
         ["shrinkage-claim: cotton is said to shrink by 3%, but its swatch shrinks by 5%."]),
        (WASHED.replace("MORE", ""),
         ["shrinkage-claim: The swatch of cotton shrinks by 5%. Write it down as shrinkage: 5%"]),
        (WASHED.replace("MORE", ", shrinkage: 5%").replace("after: 9 1/2", "after: 11"),
         ["shrinkage-claim: The swatch of cotton is longer after washing than before. Are the two lengths changed"
          " over?"]),
        (WASHED.replace("MORE", ", shrinkage: 5%").replace(", after: 9 1/2 in", ""),
         ["key-missing: Washed of fabric main lacks after. Example: washed: {before: 10 in, after: 9 1/2 in}"]),
    ],
)  # fmt: skip
def test_fault_of_a_shrinkage_is_told(text: str, expected: list[str], tmp_path: Path) -> None:
    assert [f"{each.check}: {each.message}" for each in reviewed(tmp_path, text).findings] == expected
