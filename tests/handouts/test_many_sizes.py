"""Tables by size, from one size to twenty: no cell runs into the next one, no table leaves its page."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from classes.class_folders import class_folder
from handouts.sheets import Sheets, sheets_of
from pdfplumber.page import Page

from sitegen.handouts import Paper

STEPS = {
    "steps__01-cut_dot_yaml": "title: Cut out\nminutes: 40\ncut: [panel]\ntext: |\n"
    "  Cut {panel.cut_length} long and {panel.cut_width} wide.\n",
    "steps__02-sew_dot_yaml": "title: Sew the sides\nminutes: 30\ndiagrams: [plan of panel]\n"
    "text: The side is {panel.side}, the panel {panel.cut_length} long and {panel.cut_width} wide.\n",
}


def sized(root: Path, count: int, paper: Paper, large_print: bool) -> Sheets:
    names = [f"{each}-{each + 1} years" if count > 10 else f"{each}X" for each in range(1, count + 1)]

    def each(first: int, step: str) -> str:
        return ", ".join(f"{first + at} {step}" for at in range(count)) + " in"

    tutorial = (
        f"sizes: [{', '.join(names)}]\nseam_allowance: 1/2 in\nbody: {{waist: '{each(30, '1/2')}'}}\n"
        "fabrics: {canvas: {name: striped cotton canvas, structure: woven, width: 60 in, buy: 4 yd}}\n"
        f"pieces:\n  panel: {{cut: 2, fabric: canvas, length: '{each(12, '5/8')}', width: '{each(16, '3/8')}',"
        f" edges: {{side: '{each(12, '5/8')}'}}}}\n"
    )
    cls = f"title: Evening class\ntutorial: tee\nstudents: {{{', '.join(f'{name}: 1' for name in names)}}}\n"
    folder = class_folder(root, cls + "sessions: [{minutes: 200}]\n", tutorial=tutorial, **STEPS)
    return sheets_of(folder, "evening", paper=paper, large_print=large_print)


def overlapping(page: Page) -> Iterator[str]:
    """Letters that begin before the one in front of them on their line has ended."""
    lines: dict[int, list[dict[str, object]]] = {}
    for char in page.chars:
        if str(char["text"]).strip():
            lines.setdefault(round(float(char["bottom"])), []).append(char)
    for line in lines.values():
        line.sort(key=lambda char: float(str(char["x0"])))
        for one, other in pairwise(line):
            if float(str(other["x0"])) < float(str(one["x1"])) - 0.2 * float(str(one["size"])):
                yield "".join(str(char["text"]) for char in line)


@pytest.mark.parametrize(
    ("count", "paper", "large_print"),
    [
        (1, Paper.A4, False),
        (6, Paper.A4, False),
        (8, Paper.LETTER, False),
        (13, Paper.A4, True),
        (20, Paper.A4, False),
        (20, Paper.LETTER, True),
    ],
)
def test_every_number_of_every_size_can_be_read(tmp_path: Path, count: int, paper: Paper, large_print: bool) -> None:
    sheets = sized(tmp_path, count, paper, large_print)
    for page, text in zip(sheets.pages, sheets.page_texts, strict=True):
        assert not list(overlapping(page)), text
        foot = max(float(word["top"]) for word in page.extract_words() if word["text"] == "Release")
        for char in page.chars:
            assert float(char["x1"]) < float(page.width) - 40, text
            assert float(char["bottom"]) < foot or float(char["top"]) > foot - 2, text
    handout = sheets.made.handout
    (card,) = (each for each in handout.cards if each.pictures)
    assert (card.numbers is None) == (count == 1)
    flat = sheets.text.replace("\N{NO-BREAK SPACE}", " ")
    for table in [each for _, each in handout.tables] + [each.numbers for each in handout.cards if each.numbers]:
        for cell in (cell for row in table.rows for cell in row):
            assert cell.replace("\N{NO-BREAK SPACE}", " ").replace(" (", " (") in flat, cell
