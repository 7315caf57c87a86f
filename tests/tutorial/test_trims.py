"""Cords, tapes and zips whose lengths follow from edges."""

from __future__ import annotations

from pathlib import Path

import pytest
from classes.class_folders import CLASS, TOTE, whole_class
from content import computed, messages, reviewed

from sitegen.classes import kit_of
from sitegen.quantities import System, inches, show_working
from sitegen.tutorial import words_of

TOP = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
    "pieces: {bag: {cut: 2, fabric: main, edges: {casing: '11, 12 in', opening: '7, 8 in'}}}\n"
)
CORD = "trims: {bag_cord: {kind: cord, edges: [bag.casing, bag.casing], each_end: 6 in, supply: cotton cord}}\n"
ZIP = "trims: {side_zip: {kind: zip, edges: [bag.opening], supply: white zip}}\n"
TWO_ZIPS = ZIP.replace("}}", "}, top_zip: {kind: zip, edges: [bag.casing], supply: white zip}}")
CASED = TOTE.replace("side: '10, 12 in'", "side: '10, 12 in', casing: '11, 13 in'")


def told(root: Path, text: str) -> list[str]:
    found = reviewed(root, TOP + text).findings
    return messages(tuple(each for each in found if each.check != "thread-missing"))


def test_a_cord_is_its_edges_and_both_of_its_ends(tmp_path: Path) -> None:
    found, _ = computed(tmp_path, TOP + CORD + "supplies: [{item: cotton cord, amount: 2 yd}]\n")
    worked = found.number("bag_cord.length", 1)
    assert worked is not None
    assert worked.length == inches(36)
    assert show_working(worked, System.INCHES) == (
        "bag cord edge length: bag casing 12 in + bag casing 12 in = 24 in",
        "bag cord length: bag cord edge length 24 in + 2 ends of 6 in = 36 in",
    )


def test_a_zip_is_its_opening(tmp_path: Path) -> None:
    found, _ = computed(tmp_path, TOP + ZIP + "supplies: [{item: white zip, size: 8 in}]\n")
    assert [found.length("side_zip.length", size).length for size in (0, 1)] == [inches(7), inches(8)]  # type: ignore[union-attr]
    assert words_of("side_zip.length") == "side zip length"


@pytest.mark.parametrize(
    ("text", "findings"),
    [
        (CORD + "supplies: [{item: cotton cord, amount: 36 in}]\n", []),
        (CORD + "supplies: [{item: cotton cord}]\n", []),
        (
            CORD + "supplies: [{item: cotton cord, amount: 35 in}]\n",
            ["9:40 trim-short: 35 in of cotton cord is too little: 36 in are needed for size M."],
        ),
        (ZIP + "supplies: [{item: white zip, size: 9 in}]\n", []),
        (
            ZIP + "supplies: [{item: white zip, size: 7 in}]\n",
            ["9:36 trim-short: 7 in of white zip is too short: 8 in are needed for size M."],
        ),
        (
            CORD + "supplies: [{item: cotton cord, amount: '34, 36 in'}]\n",
            [
                "9:41 trim-unheld: How much cotton cord is bought cannot be read in its amount. Write one length that"
                " serves every size, such as amount: 36 in"
            ],
        ),
        (CORD + "supplies: [{item: cotton cord, amount: 2 packets}]\n", []),
        (
            ZIP + "supplies: [{item: white zip, amount: '1'}]\n",
            [
                "9:19 trim-unheld: How long the white zip is cannot be read in its size. Write one length that serves"
                " every size, such as size: 8 in"
            ],
        ),
        (
            ZIP + "supplies: [{item: white zip, size: '7, 8 in'}]\n",
            [
                "9:37 trim-unheld: How long the white zip is cannot be read in its size. Write one length that serves"
                " every size, such as size: 8 in"
            ],
        ),
        (
            TWO_ZIPS + "supplies: [{item: white zip, size: 12 in, amount: '1'}]\n",
            ["9:52 trim-short: 1 of white zip is too few: side zip and top zip are 2."],
        ),
        (TWO_ZIPS + "supplies: [{item: white zip, size: 12 in, amount: '2'}]\n", []),
        (
            TWO_ZIPS.replace("kind: zip, edges: [bag.casing]", "kind: tape, edges: [bag.casing]")
            + "supplies: [{item: white zip, size: 12 in, amount: 2 yd}]\n",
            [
                "8:124 trim-unheld: Nothing is cut from a zip, but “white zip” is the supply of the side zip and of the"
                " top zip, a tape. Give each a supply of its own."
            ],
        ),
        (
            CORD + "supplies: [{item: coton cord, amount: 36 in}]\n",
            ["8:89 unknown-reference: There is no supply “cotton cord”. Nearest: coton cord."],
        ),
        (
            ZIP.replace("opening", "openin") + "supplies: [{item: white zip, size: 7 in}]\n",
            ["8:39 unknown-reference: There is no edge “bag.openin”. Nearest: bag.opening, bag.casing."],
        ),
        (
            ZIP.replace(", supply: white zip", ""),
            ["8:19 key-missing: Trim side_zip lacks supply. Example: supply: cotton cord"],
        ),
        (
            CORD.replace("supply:", "length: '34, 36 in', supply:") + "supplies: [{item: cotton cord, amount: 1 yd}]\n",
            [],
        ),
        (
            CORD.replace("supply:", "length: '34, 35 in', supply:") + "supplies: [{item: cotton cord, amount: 1 yd}]\n",
            ["8:94 trim-sum: The bag cord length of size M is given as 35 in, computed it is 36 in."],
        ),
    ],
)
def test_it_is_held_against_what_is_bought(tmp_path: Path, text: str, findings: list[str]) -> None:
    assert told(tmp_path, text) == findings


LONGER = (
    "changes: {longer: {piece: bag, line_at: 3 in from the top, lengthen_by: 2 in, crosses: [opening]}}\n"
    "supplies: [{item: white zip, size: 8 in}]\n"
)


def test_a_zip_is_long_enough_after_a_change_too_or_a_text_tells_how_long_it_then_is(tmp_path: Path) -> None:
    text = TOP.replace("fabric: main,", "fabric: main, length: 14 in,") + ZIP + LONGER
    found = reviewed(tmp_path, text).findings
    assert [(each.message, each.should_be) for each in found if each.check == "trim-short"] == [
        ("With longer: 8 in of white zip is too short: 10 in are needed for size M.", "10 in")
    ]
    step = "title: Longer\ntext: For it buy a zip of {longer.then.side_zip.length}.\n"
    assert "trim-short" not in [
        each.check for each in reviewed(tmp_path / "told", text, steps__01_dot_yaml=step).findings
    ]


def test_the_kit_of_a_class_counts_a_cord_by_size(tmp_path: Path) -> None:
    """Three students of size S take 22 in and two ends of 6 in each, two of size L take 26 in and two ends."""
    cord = CORD.replace("bag.", "panel.")
    supplied = CASED.replace("supplies:\n", f"{cord}supplies:\n  - {{item: cotton cord, amount: 40 in}}\n")
    cls = whole_class(tmp_path, CLASS + "prices: {cotton cord: 2 EUR / m}\n", tutorial=supplied)
    (line,) = (each for each in kit_of(cls, System.INCHES).lines if each.name == "cotton cord")
    assert line.needed.length == inches(3 * 34 + 2 * 38)
    assert [number.length for _, number in line.for_one] == [inches(34), inches(38)]
    assert line.price is not None


@pytest.mark.parametrize(("amount", "bought"), [("", 6), (", amount: '1'", 6), (", amount: '2'", 11)])
def test_the_kit_of_a_class_has_a_zip_for_each_student(tmp_path: Path, amount: str, bought: int) -> None:
    """Five students, and a spare of a tenth; one zip does not serve them all, as chalk does."""
    zips = ZIP.replace("bag.opening", "panel.casing")
    supplied = CASED.replace("supplies:\n", f"{zips}supplies:\n  - {{item: white zip, size: 13 in{amount}}}\n")
    cls = whole_class(tmp_path, CLASS, tutorial=supplied)
    (line,) = (each for each in kit_of(cls, System.INCHES).lines if each.name == "white zip")
    assert line.buy.number == bought


CHILD = "wearer: child\n" + TOP.replace("casing:", "neckline:")
AT_NECK = CORD.replace("casing", "neckline")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (CHILD + AT_NECK, ["bag.neckline"]),
        (CHILD.replace("child", "adult") + AT_NECK, []),
        (CHILD + AT_NECK.replace("kind: cord", "kind: tape"), ["bag.neckline"]),
        (CHILD + AT_NECK.replace("kind: cord", "kind: tape").replace("cord", "tape"), []),
        (CHILD + AT_NECK.replace("bag_cord", "neck_ties").replace("neckline", "opening"), ["cotton cord"]),
        ("before_you_start: A cord lies at the collar.\n" + CHILD + AT_NECK, ["bag.neckline", "cord"]),
    ],
)
def test_a_cord_at_the_neck_of_a_child_is_told_of_where_the_trim_says_so(
    tmp_path: Path, text: str, said: list[str]
) -> None:
    """Also where a sentence speaks of one too, which may be accepted for itself."""
    found = reviewed(tmp_path, text + "supplies: [{item: cotton cord, amount: 2 yd}]\n").findings
    assert sorted(each.said for each in found if each.check == "cord-at-neck") == sorted(said)
