"""What stands in a handout: the author's text as data, numbers in the sizes and units asked for, marks, tolerances."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, TOTE, class_folder
from handouts.sheets import EVENING, example, sheets_of

import sitegen.handouts
from sitegen.handouts import Copy, NoPdf
from sitegen.publishing import Block, Span, printed_line, printed_text, unstyled
from sitegen.publishing.themes import shipped_theme
from sitegen.quantities import System, given, inches
from sitegen.sewing import tolerance

HOSTILE = '*hand* #evil $x$ #import "x" #set page(width: 1cm) @ref <tag> `code` \\ [b] // no comment = title'


def numbers(name: str) -> str | None:
    return {"band.cut_length": "17 3/4 in"}.get(name)


def test_markdown_becomes_blocks_and_spans() -> None:
    text = (
        "**Pin** the _band_ at {band.cut_length}.\n\n3. First\n4. Then [look](https://example.org/x) `so`\n\n> Aside\n"
    )
    paragraph, steps, quote = printed_text(text, numbers)
    assert paragraph.kind == "paragraph"
    assert paragraph.spans[0] == Span("Pin", strong=True)
    assert Span("band", emphasis=True) in paragraph.spans
    assert Span("17 3/4 in", number=True) in paragraph.spans
    assert (steps.kind, steps.start, len(steps.items)) == ("list", 3, 2)
    assert Span("look", link="https://example.org/x") in steps.items[1][0].spans
    assert Span("so", code=True) in steps.items[1][0].spans
    assert quote == Block("quote", items=((Block("paragraph", (Span("Aside"),)),),))


def test_tables_headings_rules_and_code_are_kept() -> None:
    text = "# Head\n\n| a | b |\n| - | - |\n| 1 | {band.cut_length} |\n\n---\n\n```\nas *is*\n```\n"
    head, table, rule, code = printed_text(text, numbers)
    assert (head.kind, unstyled(head.spans)) == ("heading", "Head")
    assert [[unstyled(cell) for cell in row] for row in table.rows] == [["a", "b"], ["1", "17 3/4 in"]]
    assert (rule.kind, code.kind, unstyled(code.spans)) == ("rule", "code", "as *is*")


def test_what_names_nothing_stays_as_typed_and_a_site_link_gives_its_words() -> None:
    spans = printed_line("See {no.such} [here](../x.html) <b>bold</b>\nand ![a pin](pin.jpg)", numbers)
    assert unstyled(spans) == "See {no.such} here <b>bold</b> and a pin"
    assert not any(span.link or span.number for span in spans)


def test_text_of_the_author_is_never_read_as_markup(tmp_path: Path) -> None:
    tricky = {**STEPS, "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"] + f"look_for: |\n  {HOSTILE}\n"}
    sheets = sheets_of(class_folder(tmp_path, **tricky), "evening")
    for part in ("hand #evil $x$ #import", "#set page(width: 1cm) @ref <tag>", "// no comment = title"):
        assert part in sheets.text, part
    assert all(abs(float(page.width) - 595.3) < 1 for page in sheets.pages)


def test_letter_without_a_font_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    odd = {
        **STEPS,
        "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"] + "look_for: Smile \U000e0100\U0001f9f5\U0010fffd.\n",
    }
    with pytest.raises(NoPdf, match="for which there is no font"):
        sheets_of(class_folder(tmp_path, **odd), "evening")


def test_one_unit_or_both(tmp_path: Path) -> None:
    folder = class_folder(tmp_path)
    both, metric = (
        sheets_of(folder, "evening", units=units)
        for units in ((System.INCHES, System.CENTIMETRES), (System.CENTIMETRES,))
    )
    rows = [dict(sheets.made.handout.tables)["What is cut"].rows for sheets in (both, metric)]
    assert ("panel cut length", "12 in (30.5 cm)", "14 in (35.5 cm)") in [
        tuple(" ".join(cell.split()) for cell in row) for row in rows[0]
    ]
    assert ("panel cut length", "30.5 cm", "35.5 cm") in [
        tuple(" ".join(cell.split()) for cell in row) for row in rows[1]
    ]


def test_a_text_that_tells_of_a_change_keeps_the_numbers_of_its_author(tmp_path: Path) -> None:
    """The class makes the change: cutting goes by the new length, the card that changes the paper by the old one."""
    steps = {
        **STEPS,
        "steps__01-cut_dot_yaml": "title: Cut out\nminutes: 40\ntools: [scissors]\ncut: [panel]\n"
        "text: The panel is {panel.cut_length}. Add {taller.amount}, so it becomes {taller.new_cut_length}.\n"
        "look_for: The panel is {panel.cut_length} long.\n",
    }
    sheets = sheets_of(
        class_folder(tmp_path, CLASS + "changes: [taller]\n", **steps), "evening", size="S", units=(System.INCHES,)
    )
    card = sheets.made.handout.cards[0]
    assert unstyled(card.text[0].spans).replace("\u00a0", " ") == "The panel is 12 in. Add 2 in, so it becomes 14 in."
    assert unstyled(card.look_for[0].spans).replace("\u00a0", " ") == "The panel is 14 in long."


def test_steps_before_class_are_the_teachers_and_sessions_are_named(tmp_path: Path) -> None:
    text = (
        CLASS.replace("[{minutes: 200}]", "[{minutes: 100}, {minutes: 100}]")
        + "before_class: [cut]\nhomework: [press]\n"
    )
    folder = class_folder(tmp_path, text)
    student, teacher = (sheets_of(folder, "evening", copy=copy).made.handout for copy in Copy)
    assert [(card.title, card.when) for card in student.cards] == [
        ("Sew the sides", "Session 1"),
        ("Press the bag", "at home"),
    ]
    assert (teacher.cards[0].title, teacher.cards[0].when) == ("Cut out", "before class")
    assert student.cover.done_before == ("Cut out",)
    assert not student.parts
    assert [part.title for part in teacher.parts] == [
        "Plan of the sessions",
        "What to buy and to pack",
        "Samples and swatches to prepare",
    ]


@pytest.mark.parametrize(
    ("length", "allowed"),
    [
        ("3/8", "1/16"),  # rows of stitches ± 1/16 in: Commercial Item Description A-A-55095A, MIL-L-24778
        ("5/8", "1/16"),
        ("1", "1/16"),
        ("9/8", "1/8"),  # common practice, no source, from here on
        ("12", "1/8"),
        ("97/8", "1/4"),
        ("60", "1/4"),
    ],
)
def test_tolerance(length: str, allowed: str) -> None:
    assert tolerance.of_length("tolerance", given("seam", inches(length))).length == inches(allowed)


def test_tolerance_is_of_lengths_only() -> None:
    with pytest.raises(TypeError):
        tolerance.of_length("tolerance", given("count", Fraction(3)))


def test_marking_sheet_asks_for_each_point_and_measures_between_two_lengths(tmp_path: Path) -> None:
    steps = {
        **STEPS,
        "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"]
        + "look_for: |\n  The side is {panel.side} long. No pin is left. The waist is {body.waist}.\n",
    }
    sheets = sheets_of(class_folder(tmp_path, **steps), "evening", size="S", units=(System.INCHES,))
    (marking,) = sheets.made.handout.marking
    assert [unstyled(point).replace("\u00a0", " ") for point in marking.points] == [
        "The side is 10 in long.",
        "No pin is left.",
        "The waist is 30 in.",
    ]
    told = [(each.what, each.should_be, each.from_to) for each in marking.measured]
    plain = [tuple(text.replace("\u00a0", " ") for text in row) for row in told]
    assert plain == [("seam allowance", "1/2 in", "7/16 to 9/16 in"), ("panel side", "10 in", "9 7/8 to 10 1/8 in")]
    assert "No pin is left." in sheets.text


def test_range_of_what_will_do_is_never_told_wider_than_it_is(tmp_path: Path) -> None:
    """1/16 in either way of 1 cm is 8.4 to 11.6 mm."""
    tote = TOTE.replace("seam_allowance: 1/2 in", "seam_allowance: 1 cm")
    steps = {**STEPS, "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"] + "look_for: No pin is left.\n"}
    for number, (system, told) in enumerate(
        ((System.CENTIMETRES, "9 mm to 1.1 cm"), (System.INCHES, "3/8 to 7/16 in"))
    ):
        folder = class_folder(tmp_path / str(number), tutorial=tote, **steps)
        (marking,) = sheets_of(folder, "evening", size="S", units=(system,)).made.handout.marking
        assert [each.from_to.replace("\u00a0", " ") for each in marking.measured] == [told]


def test_hem_is_sewn_with_a_hem_allowance() -> None:
    settings = [sewn for card in example(EVENING).made.handout.cards for sewn in card.sewn]
    hems = [each for each in settings if each.what.startswith("hem of")]
    assert hems
    for each in settings:
        told = " ".join(each.settings)
        assert ("hem allowance" in told) == (each in hems)
        assert ("seam allowance" in told) <= (each not in hems)


def test_every_word_of_the_sheets_is_asked_for_and_there_is_no_other() -> None:
    folder = Path(sitegen.handouts.__file__).parent
    typst = "".join(path.read_text(encoding="utf-8") for path in (folder / "sheets").glob("*.typ"))
    python = "".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    asked = set(re.findall(r"\bwords\.([a-z_]+)\b", typst)) | set(
        re.findall(r"\bwords\(\s*[\"']([a-z_]+)[\"']", python)
    )
    there = {key.partition(".")[2] for key in shipped_theme().words["en"] if key.startswith("handout.")}
    assert asked == there


def test_spanish(tmp_path: Path) -> None:
    folder = class_folder(tmp_path)
    (tmp_path / "site.yaml").write_text("title: Taller\nauthor: Nadie\nlanguage: es\n", encoding="utf-8")
    sheets = sheets_of(folder, "evening", copy=Copy.TEACHER)
    assert sheets.reader.trailer["/Root"]["/Lang"] == "es"
    for words in ("Hoja de revisión", "página 1 de", "Reglas a tamaño real", "30,5 cm", "Plan de las sesiones"):
        assert words in sheets.text.replace("\u00a0", " "), words
    for english in ("Check your work", "seam allowance", "page 1 of", "Bring with you"):
        assert english not in sheets.text, english


def test_example_says_whose_numbers_they_are() -> None:
    cover = example(EVENING).made.handout.cover
    assert "invented" in " ".join(unstyled(block.spans) for block in cover.before)
    assert cover.address.endswith("tutorials/boxy-tee/index.html")
    assert cover.code.startswith("<svg")


@pytest.mark.parametrize("large_print", [False, True])
@pytest.mark.parametrize("copy", Copy)
def test_students_who_cut_themselves_get_the_layout_in_every_copy(
    tmp_path: Path, copy: Copy, large_print: bool
) -> None:
    sheets = sheets_of(class_folder(tmp_path), "evening", copy=copy, large_print=large_print)
    (layout,) = sheets.made.handout.layouts
    assert "cotton canvas" in layout.title
    assert "Cutting layout" in sheets.text


def test_tutorial_without_sizes(tmp_path: Path) -> None:
    plain = "fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\npieces: {panel: {cut: 2, fabric: main}}\n"
    text = "title: Evening class\ntutorial: tee\nstudents: 7\nsessions: [{minutes: 90}]\n"
    steps = {"steps__01-cut_dot_yaml": "title: Cut out\ntext: Cut both panels.\nminutes: 40\ncut: [panel]\n"}
    sheets = sheets_of(class_folder(tmp_path, text, tutorial=plain, **steps), "evening")
    assert sheets.made.handout.sizes == ()
    assert "Cut both panels." in sheets.text
