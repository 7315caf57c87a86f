"""The PDF of a handout as outside libraries read it: sizes on paper, whole cards, fonts, tags, words, and one copy."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from handouts.sheets import DAY, EVENING, HOLIDAY, MM, Sheets, example
from pdfplumber.page import Page
from pypdf.generic import DictionaryObject

from sitegen.handouts import Copy, Paper, handout_pdf

CASES = {
    "A4": (EVENING, "", Paper.A4, Copy.STUDENT, False),
    "Letter, one size": (HOLIDAY, "104", Paper.LETTER, Copy.STUDENT, False),
    "teacher's copy": (EVENING, "", Paper.A4, Copy.TEACHER, False),
    "large print": (HOLIDAY, "98", Paper.A4, Copy.STUDENT, True),
}
TOLERANCE = 0.2
"""Millimetres: a hair on a ruler (common practice, no source)."""


@pytest.fixture(params=CASES, scope="module")
def sheets(request: pytest.FixtureRequest) -> Sheets:
    return example(*CASES[request.param])


def gauges(sheets: Sheets) -> list[Page]:
    title = sheets.made.handout.words["gauges"]
    first = max(number for number, text in enumerate(sheets.page_texts) if title in text)
    return sheets.pages[first:]


def mm(value: object) -> float:
    return float(str(value)) * MM


def test_paper_has_its_size(sheets: Sheets) -> None:
    # ISO 216: A4 is 210 × 297 mm; US Letter is 8.5 × 11 in.
    wide, high = (210, 297) if sheets.made.handout.wanted.paper is Paper.A4 else (8.5 * 25.4, 11 * 25.4)
    for page in sheets.pages:
        assert abs(mm(page.width) - wide) < 0.1
        assert abs(mm(page.height) - high) < 0.1


def test_squares_measure_five_centimetres_and_two_inches(sheets: Sheets) -> None:
    squares = [rect for page in gauges(sheets) for rect in page.rects if rect["stroke"] and not rect["fill"]]
    sides = sorted((mm(rect["width"]), mm(rect["height"])) for rect in squares)
    assert len(sides) == 2
    for (width, height), side in zip(sides, (50.0, 50.8), strict=True):
        assert abs(width - side) < TOLERANCE
        assert abs(height - side) < TOLERANCE


def test_bars_are_as_long_as_their_allowances(sheets: Sheets) -> None:
    bars = [rect for page in gauges(sheets) for rect in page.rects if rect["fill"] and 2 < mm(rect["height"]) < 12]
    asked = sheets.made.handout.gauges.allowances
    assert len(asked) > 1
    assert len(bars) >= len(asked)
    for mark, bar in zip(asked, bars, strict=False):
        assert abs(mm(bar["width"]) - float(mark.length)) < TOLERANCE, mark


def test_stretch_gauge_is_true(sheets: Sheets) -> None:
    """From the line to hold the cloth at, each tick is where the swatch reaches at that stretch."""
    computed = sheets.made.source.cls.computed
    knits = [key for key in computed.tutorial.fabrics if computed.number(f"{key}.stretch_across", 0) is not None]
    assert len(sheets.made.handout.gauges.pictures) == len(knits)
    found = 0
    for page in gauges(sheets):
        lines = [{key: mm(line[key]) for key in ("x0", "x1", "top", "bottom")} for line in page.lines]
        numbers = {word["text"]: word for word in page.extract_words()}
        for rest in (line for line in lines if abs(line["x1"] - line["x0"] - 80) < TOLERANCE):
            ticks = sorted(line["x0"] - rest["x0"] for line in lines if abs(line["bottom"] - rest["top"]) < 0.1)
            assert "100" in numbers
            for percent in (0, 10, 20, 25, 40, 50, 75, 100):
                assert any(abs(tick - 80 * (1 + percent / 100)) < TOLERANCE for tick in ticks), percent
            found += 1
    assert found == len(knits)


def test_no_card_is_cut_by_the_end_of_a_page(sheets: Sheets) -> None:
    """Every page between the first card and the marking sheet begins with a card, and each card ends where it began
    or goes on in a card of its own, which says so."""
    handout = sheets.made.handout
    texts = sheets.page_texts
    begin = next(index for index, text in enumerate(texts) if f" {handout.words['steps']} " in f" {text} ")
    end = next(index for index, text in enumerate(texts) if handout.words["marking_about"][:40] in text)
    assert begin < end
    done = handout.words["done"]
    heads = {card.number: re.compile(rf"\b{re.escape(' '.join(card.title.split()[:2]))}") for card in handout.cards}
    for text in texts[begin + 1 : end]:
        above = len(handout.class_title) + len(handout.mark) + 20
        assert any(head.search(text, 0, above + 40) for head in heads.values()), text[:160]
    whole = " ".join(texts[begin:end])
    assert whole.count(f" {done}") >= len(handout.cards)
    for text, following in zip(texts[begin:end], texts[begin + 1 : end], strict=False):
        last = max((match.start() for head in heads.values() for match in head.finditer(text)), default=-1)
        if last >= 0 and done not in text[last:]:
            assert f"({handout.words['continued']})" in following


def test_a_picture_stands_beside_the_foot_of_its_card_rather_than_on_a_page_of_its_own() -> None:
    sheets = example(*CASES["A4"])
    (number,) = (number for number, text in enumerate(sheets.page_texts) if "mark its quarters Session 1" in text)
    assert sheets.pages[number].images
    assert sheets.made.handout.words["done"] in sheets.page_texts[number]


def test_fonts_are_embedded_and_text_can_be_selected(sheets: Sheets) -> None:
    fonts = [font for page in sheets.reader.pages for font in _fonts(page["/Resources"])]
    assert fonts
    for font in fonts:
        descriptor = font["/FontDescriptor"]
        assert {"/FontFile2", "/FontFile3"} & set(descriptor), font["/BaseFont"]
        assert "/ToUnicode" in font or font.get("/Encoding"), font["/BaseFont"]
    for card in sheets.made.handout.cards:
        assert " ".join(card.title.split()) in sheets.text


def _fonts(resources: object) -> list[DictionaryObject]:
    found = []
    assert isinstance(resources, DictionaryObject)
    for each in resources.get("/Font", {}).values():
        font = each.get_object()
        below = font.get("/DescendantFonts")
        found.append(below[0].get_object() | {"/ToUnicode": font.get("/ToUnicode")} if below else font)
    for each in resources.get("/XObject", {}).values():
        inner = each.get_object()
        if "/Resources" in inner:
            found += _fonts(inner["/Resources"].get_object())
    return found


def test_tagged_with_language_and_title(sheets: Sheets) -> None:
    # PDF/UA-1 (ISO 14289-1): 7.1 tags and the title shown, 7.2 the language.
    root = sheets.reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] is True or root["/MarkInfo"]["/Marked"] == True  # noqa: E712  (pypdf's own boolean)
    assert "/StructTreeRoot" in root
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert sheets.reader.metadata is not None
    assert sheets.made.handout.title in str(sheets.reader.metadata.title)
    xmp = sheets.pdf.decode("latin-1")
    assert "<pdfuaid:part>1</pdfuaid:part>" in xmp
    assert "<pdfaid:part>3</pdfaid:part>" in xmp


def test_pages_are_numbered_and_carry_the_release_mark(sheets: Sheets) -> None:
    count = len(sheets.page_texts)
    for number, text in enumerate(sheets.page_texts, 1):
        assert f"page {number} of {count}" in text
        assert sheets.made.handout.mark in text
    assert sheets.made.handout.mark.startswith("2027-01-05 · ")


def test_same_handout_gives_the_same_bytes(sheets: Sheets) -> None:
    assert handout_pdf(sheets.made) == sheets.pdf
    assert DAY.strftime("D:%Y%m%d").encode() in sheets.pdf


def test_only_the_sizes_that_were_asked_for() -> None:
    one, all_sizes = example(*CASES["Letter, one size"]), example(HOLIDAY)
    assert one.made.handout.sizes == ("104",)
    assert all_sizes.made.handout.sizes == ("98", "104", "110", "116")
    assert all(table.head == ("", "104") for _, table in one.made.handout.tables)
    assert "by size" not in one.text
    assert "by size" in all_sizes.text


def test_large_print_is_large() -> None:
    """18 points and more, as clear-print guidance asks (from memory: 16 to 18); what is smaller are words in drawings
    that are as high as their page, and those of gauges, which are told below in large letters."""
    sheets = example(*CASES["large print"])
    letters = [char for page in sheets.pages for char in page.chars if char["text"].strip()]
    large = sum(1 for char in letters if char["size"] >= 18 - 0.01)
    assert large / len(letters) > 0.95
    assert large > 5000
    first_gauge = sheets.pages.index(gauges(sheets)[0])
    for page, text in zip(sheets.pages[:first_gauge], sheets.page_texts, strict=False):
        lines = [line["bottom"] - line["top"] for line in (*page.lines, *page.curves, *page.rects)]
        small = [char["size"] for char in page.chars if char["size"] < 18 - 0.01]
        assert not small or (min(small) > 12 and max(map(mm, lines)) > 60), text
    for picture in sheets.made.handout.gauges.pictures:
        assert picture.alt in sheets.text


@pytest.mark.parametrize("case", ["large print", "teacher's copy"])
def test_nothing_runs_into_the_foot_of_a_page(case: str) -> None:
    for page, text in zip(example(*CASES[case]).pages, example(*CASES[case]).page_texts, strict=True):
        foot = max(float(word["top"]) for word in page.extract_words() if word["text"] == "Release")
        assert all(each["bottom"] < foot or each["top"] >= foot - 1 for each in (*page.chars, *page.lines)), text


def test_how_amounts_were_got_is_a_sum_a_line_below_its_heading() -> None:
    sheets = example(*CASES["teacher's copy"])
    (page,) = (page for page in sheets.pages if "How the amounts were got" in page.extract_text())
    below = page.extract_text().partition("How the amounts were got\n")[2].split("\n")
    (group,) = (group for part in sheets.made.handout.parts for group in part.groups if group.workings)
    assert below[0].split() == group.workings[0].of.split()
    assert below[1].split()[:3] == group.workings[0].lines[0].split()[:3]
    assert below[2].split()[:3] == group.workings[0].lines[1].split()[:3]
    together = [working.of for working in group.workings]
    assert len(together) == len(set(together))


def test_layouts_for_the_class_name_their_fabrics_and_stand_beside_each_other() -> None:
    sheets = example(*CASES["teacher's copy"])
    (page,) = (page for page in sheets.pages if "Cutting layout for the whole class" in page.extract_text())
    words = page.extract_words(keep_blank_chars=True)
    jersey, rib = (
        next(word for word in words if word["text"].startswith(f"Cutting layout on {fabric}"))
        for fabric in ("cotton jersey", "1x1 cotton rib")
    )
    assert abs(jersey["top"] - rib["top"]) < 1
    assert jersey["x1"] < rib["x0"]


def test_no_size_of_a_piece_to_cut_is_broken_in_the_middle() -> None:
    sheets = example(*CASES["teacher's copy"])
    (page,) = (page for page in sheets.pages if "To cut before class" in page.extract_text())
    lines = page.extract_text().partition("To cut before class")[2].splitlines()[1:12]
    assert sum(line.count("×") for line in lines) == 20
    assert [line for line in lines if line.strip() and set(line.split()) <= {"cm"}] == []


def test_teachers_notes_stand_in_the_teachers_copy_alone() -> None:
    student, teacher = example(EVENING), example(*CASES["teacher's copy"])
    notes = [
        " ".join(step.teacher.text.split())[:40]
        for step in teacher.made.source.cls.computed.tutorial.steps
        if step.teacher is not None and step.number not in teacher.made.source.cls.left_out
    ]
    assert len(notes) > 3
    for note in notes:
        assert note in teacher.text
        assert note not in student.text
    for word in ("plan", "kit", "samples"):
        assert teacher.made.handout.words[word] in teacher.text
        assert teacher.made.handout.words[word] not in student.text
    assert "£" not in student.text


def test_drawings_are_black_on_white_and_told_in_words() -> None:
    for sheets in (example(EVENING), example(HOLIDAY)):
        pictures = [picture for card in sheets.made.handout.cards for picture in card.pictures]
        drawn = [picture for picture in pictures if "<image" not in picture.svg]
        assert drawn
        for picture in drawn:
            assert len(picture.alt) > 40
            assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", re.sub(r"url\(#[^)]*\)", "", picture.svg))) <= {"#000"}


def test_allowances_are_those_of_the_tutorial() -> None:
    handout = example(EVENING).made.handout
    lengths = {mark.length for mark in handout.gauges.allowances}
    assert Fraction("9.525") in lengths  # 3/8 in, as its seam_allowance says
    assert Fraction("25.4") in lengths  # the hem, 1 in
