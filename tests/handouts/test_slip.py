"""A slip tells what moved since a handout was printed, from what lies in the PDF itself."""

from __future__ import annotations

import json
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pdfplumber
import pytest
from classes.class_folders import CLASS, STEPS, TOTE, class_folder
from handouts.sheets import DAY, MM, Sheets, sheets_of
from PIL import Image
from pypdf import PdfReader, PdfWriter

from sitegen.handouts import NotPrintedHere, Paper, Slip, read_printed, slip_for, slip_pdf
from sitegen.quantities import System

TELLS = {
    **STEPS,
    "steps__01-cut_dot_yaml": "title: Cut out\ntext: Cut both panels {panel.cut_length} long.\nminutes: 40\n"
    "tools: [scissors]\ncut: [panel]\n",
}
OTHER_TUTORIAL = TOTE.replace("length: '12, 14 in'", "length: '12, 15 in'")


def before(root: Path, **options: object) -> Sheets:
    return sheets_of(class_folder(root / "a", **TELLS), "evening", **options)  # type: ignore[arg-type]


def slip(old: Sheets, new: Sheets) -> Slip:
    return slip_for(read_printed(old.pdf), new.made)


def test_pdf_carries_what_it_was_printed_with(tmp_path: Path) -> None:
    sheets = before(tmp_path)
    printed = read_printed(sheets.pdf)
    assert printed == sheets.made.printed
    assert printed.class_key == "evening"
    assert printed.page.sizes == ("S", "L")
    assert [value.inches for value in printed.page.numbers["panel.cut_length"].values] == ["12 in", "14 in"]
    data = json.loads(PdfReader(BytesIO(sheets.pdf)).attachments["numbers.json"][0])
    assert data["made_by"] == "sitegen"


def test_nothing_moved_gives_an_empty_slip(tmp_path: Path) -> None:
    sheets = before(tmp_path)
    assert slip(sheets, sheets).empty


def test_number_that_moved_is_told_for_the_sizes_in_which_it_did_with_its_cards(tmp_path: Path) -> None:
    old, new = before(tmp_path), sheets_of(class_folder(tmp_path / "b", tutorial=OTHER_TUTORIAL, **TELLS), "evening")
    found = slip(old, new)
    told = {each.what: each for each in found.corrections}
    assert [tuple(text.replace("\u00a0", " ") for text in row) for row in told["panel cut length"].sizes] == [
        ("L", "35.5 cm (14 in)", "38 cm (15 in)")
    ]
    assert told["panel cut length"].cards == "1"
    assert not found.reworded
    small = slip(
        before(tmp_path / "c", size="S"),
        sheets_of(class_folder(tmp_path / "d", tutorial=OTHER_TUTORIAL, **TELLS), "evening", size="S"),
    )
    assert small.empty


def test_seam_allowance_that_moved_is_told_once_and_not_for_each_edge_of_its_card(tmp_path: Path) -> None:
    sewn = {
        **TELLS,
        "steps__02-sew_dot_yaml": "title: Sew the sides\ntext: Sew with {seam_allowance}.\nminutes: 30\n"
        "tools: [sewing machine]\njoin: [{edges: [panel.side, panel.side], stitch: straight}]\n",
    }
    wider = TOTE.replace("seam_allowance: 1/2 in", "seam_allowance: 3/8 in")
    old = sheets_of(class_folder(tmp_path / "a", **sewn), "evening")
    new = sheets_of(class_folder(tmp_path / "b", tutorial=wider, **sewn), "evening")
    told = {each.what: each.cards for each in slip(old, new).corrections}
    assert told["seam allowance"] == "2"
    assert not [what for what in told if what.endswith("seam allowance") and what != "seam allowance"]
    own = TOTE.replace("edges: {side: '10, 12 in'}", "edges: {side: {length: '10, 12 in', seam_allowance: 3/8 in}}")
    other = sheets_of(class_folder(tmp_path / "c", tutorial=own, **sewn), "evening")
    assert [each.what for each in slip(old, other).corrections] == ["panel side seam allowance (new)"]


def test_words_that_changed_are_told_by_their_card(tmp_path: Path) -> None:
    steps = {
        **TELLS,
        "steps__03-press_dot_yaml": TELLS["steps__03-press_dot_yaml"].replace(
            "Press the panels", "Press the seams open"
        ),
    }
    found = slip(before(tmp_path), sheets_of(class_folder(tmp_path / "b", **steps), "evening"))
    assert found.reworded == ("3 Press the bag",)
    assert not found.corrections


NEW = "title: Wash the cloth\ntext: Wash it.\nminutes: 5\n"
MEASURED = TELLS["steps__02-sew_dot_yaml"].replace("text: Sew", "text: |\n  A panel is {panel.cut_length} long. Sew")


def moved(old: dict[str, str], new: dict[str, str], root: Path, tutorial: str = OTHER_TUTORIAL) -> Slip:
    return slip(
        sheets_of(class_folder(root / "a", **old), "evening"),
        sheets_of(class_folder(root / "b", tutorial=tutorial, **new), "evening"),
    )


def test_card_put_in_first_is_the_only_one_to_print_and_others_keep_the_number_on_their_paper(tmp_path: Path) -> None:
    steps = {**TELLS, "steps__02-sew_dot_yaml": MEASURED}
    found = moved(steps, {"steps__00-wash_dot_yaml": NEW, **steps}, tmp_path)
    assert found.reworded == ("1 Wash the cloth (new)",)
    assert found.gone == ()
    told = {each.what: each.cards for each in found.corrections}
    assert told["panel cut length"] == "1 (now 2), 2 (now 3)"


def test_card_that_was_taken_out_is_named_and_no_other(tmp_path: Path) -> None:
    steps = {**TELLS, "steps__00-wash_dot_yaml": NEW + "look_for: It is {panel.cut_length} long.\n"}
    steps = dict(sorted(steps.items()))
    found = moved(steps, TELLS, tmp_path)
    assert found.gone == ("1 Wash the cloth",)
    assert found.reworded == ()
    assert {each.what: each.cards for each in found.corrections} == {
        "canvas fabric needed": "tables",
        "panel cut length": "1 (gone), 2 (now 1)",
    }


def test_card_with_another_title_is_known_by_its_file(tmp_path: Path) -> None:
    renamed = {**TELLS, "steps__09-press_dot_yaml": TELLS["steps__03-press_dot_yaml"].replace("Press the bag", "Iron")}
    del renamed["steps__03-press_dot_yaml"]
    assert moved(TELLS, renamed, tmp_path, TOTE).reworded == ("3 Press the bag (now Iron)",)
    other = {**renamed, "steps__09-iron_dot_yaml": renamed["steps__09-press_dot_yaml"]}
    del other["steps__09-press_dot_yaml"]
    found = moved(TELLS, other, tmp_path / "other", TOTE)
    assert (found.reworded, found.gone) == (("3 Iron (new)",), ("3 Press the bag",))


def test_cards_of_one_title_belong_together_by_their_files(tmp_path: Path) -> None:
    steps = {
        **TELLS,
        "steps__02-first-press_dot_yaml": "title: Press\ntext: Press it open.\nminutes: 5\n",
        "steps__04-last-press_dot_yaml": "title: Press\ntext: Press it flat.\nminutes: 5\n",
    }
    fewer = {key: text for key, text in steps.items() if "first" not in key}
    assert moved(steps, fewer, tmp_path, TOTE).gone == ("2 Press",)


def test_numbers_on_a_photo_and_in_a_drawing_are_on_its_card(tmp_path: Path) -> None:
    pictured = (
        TELLS["steps__03-press_dot_yaml"]
        + "photo: {file: side.png, shows: A panel, marks: [{number: 1, at: [50%, 50%], text: 'It is {panel.cut_length}.'}]}\n"
    )
    steps = {
        **TELLS,
        "steps__03-press_dot_yaml": pictured,
        "steps__02-sew_dot_yaml": TELLS["steps__02-sew_dot_yaml"] + "diagrams: [plan of panel]\n",
    }
    made = []
    for name, tutorial in (("a", TOTE), ("b", OTHER_TUTORIAL)):
        folder = class_folder(tmp_path / name, tutorial=tutorial, **steps)
        photos = tmp_path / name / "tutorials" / "tee" / "photos"
        photos.mkdir()
        Image.new("RGB", (300, 200), "white").save(photos / "side.png")
        made.append(sheets_of(folder, "evening"))
    assert {each.what: each.cards for each in slip(*made).corrections}["panel cut length"] == "1, 2, 3"


def test_print_of_an_older_version_is_read_and_tells_no_number_as_new(tmp_path: Path) -> None:
    old = before(tmp_path)
    data = json.loads(PdfReader(BytesIO(old.pdf)).attachments["numbers.json"][0])
    data["cards"] = {number: card[:2] for number, card in data["cards"].items()}
    del data["record"]["pages"][old.made.source.page.path]["numbers"]["body.waist"]
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    writer.add_attachment("numbers.json", json.dumps(data).encode())
    file = BytesIO()
    writer.write(file)
    new = sheets_of(class_folder(tmp_path / "b", tutorial=OTHER_TUTORIAL, **TELLS), "evening")
    found = slip_for(read_printed(file.getvalue()), new.made)
    assert {each.what: each.cards for each in found.corrections} == {
        "canvas fabric needed": "tables",
        "panel cut length": "1",
    }
    assert (found.reworded, found.gone) == ((), ())


def test_note_for_the_teacher_is_no_change_for_students(tmp_path: Path) -> None:
    steps = {**TELLS, "steps__03-press_dot_yaml": TELLS["steps__03-press_dot_yaml"] + "teacher: Show it first.\n"}
    assert slip(before(tmp_path), sheets_of(class_folder(tmp_path / "b", **steps), "evening")).empty


@pytest.mark.parametrize(("paper", "size"), [(Paper.A4, (210, 297)), (Paper.LETTER, (8.5 * 25.4, 11 * 25.4))])
def test_slip_is_printed_twice_on_a_sheet(tmp_path: Path, paper: Paper, size: tuple[float, float]) -> None:
    old, new = (
        sheets_of(class_folder(tmp_path / name, tutorial=tutorial, **TELLS), "evening", paper=paper)
        for name, tutorial in (("a", TOTE), ("b", OTHER_TUTORIAL))
    )
    with pdfplumber.open(BytesIO(slip_pdf(slip(old, new), DAY))) as pdf:
        (page,) = pdf.pages
        assert abs(float(page.width) * MM - size[0]) < 0.1
        heads = [word for word in page.extract_words() if word["text"] == "Corrections:"]
        assert len(heads) == 2
        cut = next(
            line
            for line in page.lines
            if line["x1"] - line["x0"] > 400 and abs(line["top"] - float(page.height) / 2) < 30
        )
        assert heads[0]["top"] < cut["top"] < heads[1]["top"]
        text = page.extract_text()
        assert text.count("5 January 2027") == 2
        assert "38 cm (15 in)".replace(" ", "") in text.replace("\u00a0", "").replace(" ", "")


@pytest.mark.parametrize("name", ["18 months to 2 years", "134-140 tall", "extra-extra-large"])
def test_name_of_a_size_stays_whole(tmp_path: Path, name: str) -> None:
    renamed = [text.replace("[S, L]", f"[S, {name}]") for text in (TOTE, OTHER_TUTORIAL)]
    cls = CLASS.replace("L:", f"{name}:")
    old, new = (
        sheets_of(class_folder(tmp_path / str(at), cls, tutorial=text, **TELLS), "evening")
        for at, text in enumerate(renamed)
    )
    with pdfplumber.open(BytesIO(slip_pdf(slip(old, new), DAY))) as pdf:
        lines = [line["text"].replace("\u00a0", " ") for line in pdf.pages[0].extract_text_lines()]
    assert len([line for line in lines if name in line and "38 cm" in line]) == 2, lines


def test_a_long_slip_goes_on_over_whole_pages(tmp_path: Path) -> None:
    old = before(tmp_path)
    found = slip(old, sheets_of(class_folder(tmp_path / "b", tutorial=OTHER_TUTORIAL, **TELLS), "evening"))
    long = replace(found, corrections=found.corrections * 120)
    with pdfplumber.open(BytesIO(slip_pdf(long, DAY))) as pdf:
        assert len(pdf.pages) > 1
        assert pdf.pages[0].extract_text().count("Corrections:") == 1


def test_other_files_are_told_apart(tmp_path: Path) -> None:
    writer = PdfWriter()
    writer.add_blank_page(100, 100)
    plain = BytesIO()
    writer.write(plain)
    writer.add_attachment("numbers.json", b'{"made_by": "sitegen", "format": 99, "record": {}}')
    other = BytesIO()
    writer.write(other)
    pdf = before(tmp_path).pdf
    for data, why in (
        (b"", "no PDF"),
        (b"junk", "no PDF"),
        (b"%PDF-1.7\nnothing more", "damaged PDF"),
        (plain.getvalue(), "no numbers"),
        (other.getvalue(), "another version"),
    ):
        with pytest.raises(NotPrintedHere, match=why):
            read_printed(data)
    assert read_printed(pdf + b"\r\n%more\r\n").class_key == "evening"


def test_units_of_the_print_are_kept(tmp_path: Path) -> None:
    old = before(tmp_path, units=(System.INCHES,))
    new = sheets_of(
        class_folder(tmp_path / "b", CLASS, tutorial=OTHER_TUTORIAL, **TELLS), "evening", units=(System.INCHES,)
    )
    assert read_printed(old.pdf).units == (System.INCHES,)
    assert {
        text.replace("\u00a0", " ") for each in slip(old, new).corrections for _, *both in each.sizes for text in both
    } >= {"14 in", "15 in"}
