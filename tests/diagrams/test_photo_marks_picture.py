"""Marks on a photo, read back from their SVG: at their places, their words inside and clear of each other."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from fractions import Fraction
from itertools import combinations

import pytest

from sitegen.diagrams import mark_places, mark_troubles, marks_svg
from sitegen.diagrams.text_boxes import TEXT_SIZE, UNIT, text_width
from sitegen.findings import Place
from sitegen.tutorial import ArrowMark, CircleMark, Mark, NumberMark, Prose, Spot

PLACE = Place("steps/01.yaml", 1, 1)
SVG = "{http://www.w3.org/2000/svg}"


def prose(text: str) -> Prose:
    return Prose(text, PLACE, (), lambda start, end: PLACE)


def spot(across: float, down: float) -> Spot:
    return Spot(Fraction(across), Fraction(down))


def arrow(text: str, tail: tuple[float, float], tip: tuple[float, float]) -> ArrowMark:
    return ArrowMark(PLACE, prose(text), spot(*tail), spot(*tip))


def circle(text: str, at: tuple[float, float], across: float) -> CircleMark:
    return CircleMark(PLACE, prose(text), spot(*at), Fraction(across))


def number(which: int, at: tuple[float, float]) -> NumberMark:
    return NumberMark(PLACE, prose("The seam"), which, spot(*at))


def boxes(svg: str, width_em: float, height_em: float) -> list[tuple[float, float, float, float]]:
    """Left, top, right and bottom in em of the words in a picture so many em wide, line by line, from the SVG alone."""
    found = []
    for words in ET.fromstring(svg).iter(f"{SVG}text"):
        back = {"start": 0.0, "middle": 0.5, "end": 1.0}[words.attrib["text-anchor"]]
        for line in words.iter(f"{SVG}tspan"):
            width = text_width(line.text or "", strong=True) / UNIT / TEXT_SIZE
            x, y = (float(line.attrib[key].rstrip("%")) / 100 for key in "xy")
            dx, dy = (float(line.attrib[key].removesuffix("em")) for key in ("dx", "dy"))
            left, foot = x * width_em + dx - back * width, y * height_em + dy
            found.append((left, foot - 0.8, left + width, foot + 0.2))
    return found


def test_each_mark_stands_at_its_percentages() -> None:
    marks = (arrow("notch", (20, 30), (45.5, 50)), circle("dot", (60, 40), 12), number(1, (30, 70)))
    root = ET.fromstring(marks_svg(marks, 800, 600))
    lines = [{key: line.get(key) for key in ("x1", "y1", "x2", "y2")} for line in root.iter(f"{SVG}line")]
    assert lines == [{"x1": "20%", "y1": "30%", "x2": "45.5%", "y2": "50%"}] * 2  # once for the halo
    circles = [(each.get("cx"), each.get("cy")) for each in root.iter(f"{SVG}circle")]
    assert circles == [("60%", "40%")] * 2 + [("30%", "70%")]
    # 12% of 800 is 96 across; the diagonal of 800 × 600 is 1000, so the radius 48 is 48 ÷ (1000 ÷ √2) = 6.79%.
    assert {each.get("r") for each in root.iter(f"{SVG}circle")} == {"6.79%", "0.85em"}
    assert [text.text for text in root.iter(f"{SVG}text") if text.text] == ["1"]


def test_file_of_marks_says_all_in_attributes_that_a_strict_page_allows() -> None:
    svg = marks_svg((arrow("a < b & c", (20, 30), (45, 50)),), 800, 600)
    assert " style=" not in svg
    assert "<script" not in svg
    assert "href" not in svg
    assert " ".join(line.text or "" for line in ET.fromstring(svg).iter(f"{SVG}tspan")) == "a < b & c"


EDGES = [(x, y) for x in (4, 25, 50, 75, 96) for y in (5, 30, 50, 70, 95)]


@pytest.mark.parametrize("size", [(1600, 1200), (1200, 1600), (1600, 900), (800, 800)])
@pytest.mark.parametrize("text", ["notch", "side seam on bottom seam"])
def test_words_stay_inside_at_every_width_or_are_told_of(size: tuple[int, int], text: str) -> None:
    placed = 0
    for tail in EDGES:
        marks = (arrow(text, tail, (50, 38)), circle("dart", (62, 62), 9))
        if mark_troubles(marks, *size):
            continue
        placed += 1
        svg = marks_svg(marks, *size)
        for width in (18.7, 24, 33, 42):
            height = width * size[1] / size[0]
            for left, top, right, bottom in boxes(svg, width, height):
                assert left >= 0, (tail, width)
                assert top >= 0, (tail, width)
                assert right <= width, (tail, width)
                assert bottom <= height, (tail, width)
    assert placed > len(EDGES) / 2


def test_words_of_several_marks_keep_clear_of_each_other_and_of_numbers() -> None:
    marks = (
        arrow("notch", (50, 30), (70, 30)), arrow("fold", (50, 36), (70, 50)), number(1, (40, 30)),
        circle("dart", (40, 60), 10), circle("pin", (60, 64), 10),
    )  # fmt: skip
    assert mark_troubles(marks, 800, 600) == ()
    svg = marks_svg(marks, 800, 600)
    for width in (18.7, 30, 42):
        height = width * 0.75
        disc = (0.4 * width - 0.85, 0.3 * height - 0.85, 0.4 * width + 0.85, 0.3 * height + 0.85)
        found = [*boxes(svg, width, height), disc]
        assert len(found) == 5
        for one, other in combinations(found, 2):
            apart = one[0] >= other[2] or other[0] >= one[2] or one[1] >= other[3] or other[1] >= one[3]
            assert apart, (one, other, width)


def test_words_stand_behind_the_arrow_where_there_is_room() -> None:
    for tail, tip, anchor in (
        ((30, 50), (50, 50), "end"),
        ((70, 50), (50, 50), "start"),
        ((50, 20), (50, 50), "middle"),
    ):
        (words,) = ET.fromstring(marks_svg((arrow("notch", tail, tip),), 800, 600)).iter(f"{SVG}text")
        assert words.get("text-anchor") == anchor


TROUBLES: list[tuple[tuple[Mark, ...], str, bool]] = [
    ((arrow("notch", (20, 30), (24, 30)),), "The arrow “notch” is 4% of the picture's width long", False),
    ((circle("dart", (50, 50), 3),), "The circle “dart” is 3% of the picture's width across", False),
    ((circle("dart", (3, 50), 10),), "is cut off by the edge", False),
    ((number(4, (50, 99)),), "Number 4 is cut off by the edge", False),
    ((number(1, (50, 50)), number(2, (55, 50))), "Number 2 lies on number 1", True),
    ((circle("dart", (50, 50), 20), circle("pin", (51, 50), 20)), "The circle “pin” lies on the circle “dart”", True),
    ((arrow("notch", (20, 30), (50, 50)), arrow("pin", (80, 30), (50, 50))), "The arrow “pin” lies on", True),
    ((arrow("an unreasonablylongwordthatfitsnowhere", (20, 30), (50, 50)),), "no room in the picture", False),
]


@pytest.mark.parametrize(("marks", "words", "covered"), TROUBLES)
def test_mark_that_cannot_be_seen_is_told(marks: tuple[Mark, ...], words: str, covered: bool) -> None:
    (trouble,) = mark_troubles(marks, 800, 600)
    assert words in trouble.message
    assert trouble.covered == covered
    assert trouble.mark == marks[-1]


def test_least_length_that_a_message_names_is_enough() -> None:
    (trouble,) = mark_troubles((arrow("notch", (20, 50), (24, 50)),), 800, 600)
    least = re.search(r"Make it (\d+)% long", trouble.message)
    assert least is not None
    assert mark_troubles((arrow("notch", (20, 50), (20 + int(least[1]), 50)),), 800, 600) == ()
    assert int(least[1]) < 100 * mark_places.NARROWEST / 1500
