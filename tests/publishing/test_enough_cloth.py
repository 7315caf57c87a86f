"""What is needed of cloth is nowhere shown as less than it is: pages, drawings, kits, tables, handouts, findings.

A panel of 30 in that shrinks by 3 % and whose ends take 1 in needs 31.93 in (81.1 cm): the nearest marks, 31 7/8 in and
81 cm, would be too little.
"""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from classes.class_folders import CLASS, class_folder, whole_class
from content import computed, reviewed
from handouts.sheets import sheets_of
from publishing.whole_pages import lay_out

from sitegen.classes import as_csv, kit_of, kit_rows
from sitegen.cli import main
from sitegen.publishing import kit_view, samples_view
from sitegen.quantities import System, show_number

BAG = (
    "sizes: [S, L]\nseam_allowance: 1/2 in\nbody: {hip: '36.63, 40 in'}\n"
    "fabrics:\n"
    "  main: {name: canvas, structure: woven, width: 45 in, shrinkage: 3%, straighten: 1 in, buy: BUY}\n"
    "  print: {name: print, structure: woven, width: 50 in, shrinkage: 3%, buy: 3 yd}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: 30 in, width: 20 in, edges: {side: 30 in}}}\n"
    "drops: {curtain: {width: 40 in, length: 21 in, top: 3 in, hem: 6 in, fabric: print, drops: 3, CLAIM}}\n"
    "elastics: {top: {around: body.hip, ratio: 90%, overlap: 1 in, width: 1 in, room: 1/8 in}}\n"
    "changes: {taller: {piece: panel, line_at: 5 in from the top, lengthen_by: 2 in}}\n"
    "supplies: [{item: polyester thread, amount: 1 spool}, {item: cotton tape, amount: 50 cm}, ELASTIC]\n"
)
PLAIN = BAG.replace("BUY", "1 yd").replace(", CLAIM", "").replace("ELASTIC", "{item: elastic, amount: 1 1/8 yd}")
STEPS = {
    "steps__01_dot_yaml": "title: Cut\nminutes: 20\ncut: [panel]\ntext: |\n  Canvas: {main.need}; taller"
    " {taller.then.main.need}. Curtain: {curtain.cloth}.\nteacher: Each needs {main.need}.\n"
}
IN_CLASS = CLASS.replace("students: {S: 3, L: 2}", "students: {S: 3}\nspare: {lengths: 0%}")
BEFORE_CLASS = IN_CLASS + "before_class: [01]\n"


def plain(text: str) -> str:
    return " ".join(text.split())


def test_page_and_its_drawing(tmp_path: Path) -> None:
    page, found = lay_out(tmp_path, PLAIN, steps=STEPS)
    need = found.length("main.need", 0)
    assert need is not None
    assert need.length.mm > 81 * 10, "more than the nearest mark says"
    text = plain(BeautifulSoup(page.read_text("utf-8"), "html.parser").get_text(" "))
    assert "Canvas: 1 yd ( 0.9 m ) ; taller 1 yd ( 0.9 m ) . Curtain: 2 5/8 yd ( 2.4 m ) ." in text
    assert "before washing 31 in + main straighten 1 in = 32 in, sold as 1 yd" in text
    assert "before washing 79 cm + main straighten 2.5 cm = 81.5 cm, sold as 0.9 m" in text
    assert "Needed in all: 32 in (81.5 cm)." in text
    assert "They take 30 in (76.5 cm) of its length." in text
    assert "31 7/8 in" not in text


def test_explained_on_the_screen(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    class_folder(tmp_path, tutorial=PLAIN, **STEPS)
    assert main(["explain", str(tmp_path / "tutorials" / "tee"), "main.need"]) == 0
    told = capsys.readouterr().out
    assert told.startswith("main.need: 1 yd (0.9 m)\n")
    assert told.endswith("= 32 in, sold as 1 yd\n")
    assert main(["explain", str(tmp_path / "tutorials" / "tee")]) == 0
    assert "main.need                     1 yd" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("system", "needed", "one", "bag", "tape"),
    [
        (System.INCHES, "95 7/8 in", "1 yd", "32 in", "19 3/4 in"),
        (System.CENTIMETRES, "243.5 cm", "0.9 m", "81.5 cm", "50 cm"),
    ],
)
def test_kit_of_lengths_for_each(tmp_path: Path, system: System, needed: str, one: str, bag: str, tape: str) -> None:
    kit = kit_view(whole_class(tmp_path, IN_CLASS, tutorial=PLAIN, **STEPS), system)
    canvas = next(item for group in kit.groups for item in group.items if item.key == "main")
    assert (canvas.needed, canvas.for_one[0].text) == (needed, one)
    assert canvas.notes == (f"a length for each student, cut out in class: S {one}",)
    assert canvas.buy.working[-1].endswith(f", sold as {canvas.buy.text}")
    packed = {thing.name.partition(",")[0]: thing.amount for thing in kit.bags[0].things}
    assert (packed["canvas"], packed["cotton tape"]) == (bag, tape)


def test_kit_of_cloth_laid_for_all(tmp_path: Path) -> None:
    kit = kit_view(whole_class(tmp_path, BEFORE_CLASS, tutorial=PLAIN, **STEPS), System.CENTIMETRES)
    canvas = next(item for group in kit.groups for item in group.items if item.key == "main")
    assert canvas.needed == "238.5 cm", "3 layers of 76.2 cm ÷ 97 % and 2.54 cm: 238.2 cm"
    assert canvas.notes[0].startswith(
        "laid for the whole class, the cloth folded lengthwise, selvage on selvage: 229 cm;"
    )
    assert canvas.notes[1].endswith("they would need 243.5 cm together"), "3 × 81.1 cm"
    (layout,) = (each for each in kit.layouts if each.key == "main")
    assert layout.length == "229 cm"


def test_spreadsheet(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, IN_CLASS, tutorial=PLAIN, **STEPS)
    rows = list(csv.DictReader(io.StringIO(as_csv(kit_rows(kit_of(cls, System.INCHES), cls, System.INCHES)))))
    amounts = {(row["list"], row["item"]): (row["amount"], row["unit"]) for row in rows}
    assert amounts["to buy", "canvas"] == ("2.75", "yd")
    assert amounts["in each bag", "canvas"] == ("32", "in")
    assert amounts["in each bag", "cotton tape"] == ("19.75", "in")
    assert amounts["in each bag", "elastic"] == ("33.967", "in"), "what is cut comes as exactly as before"


def test_handout_and_notes_of_the_teacher(tmp_path: Path) -> None:
    folder = class_folder(tmp_path, CLASS, tutorial=PLAIN, **STEPS)
    handout = sheets_of(folder, "evening").made.handout
    assert handout.cloth is not None
    assert ("Needed", "0.9 m (1 yd)", "0.9 m (1 yd)") in [tuple(map(plain, row)) for row in handout.cloth.rows]
    one = sheets_of(folder, "evening", size="S").made.handout
    assert any("Needed in all: 81.5 cm (32 in)" in plain(each.alt) for each in one.layouts)


def test_samples_of_a_class(tmp_path: Path) -> None:
    found = samples_view(whole_class(tmp_path, IN_CLASS, tutorial=PLAIN, **STEPS), System.INCHES)
    amounts = [total.amount for total in found.totals if total.amount is not None]
    assert amounts
    assert all(each.text.endswith(" yd") and each.working[-1].endswith(f"sold as {each.text}") for each in amounts)


@pytest.mark.parametrize(
    ("buy", "right"),
    [
        ("31 7/8 in", "1 yd"),
        ("31.9", "36"),
        ("81 cm", "90 cm"),
        ("0.81 m", "0.9 m"),
        ("7/8 yd", "1 yd"),
        ("0.88 yd", "1 yd"),
        ("32 in", None),
        ("31.95 in", None),
        ("81.2 cm", None),
        ("0.9 yd", None),
    ],
)
def test_what_is_written_is_held_against_the_exact_need(tmp_path: Path, buy: str, right: str | None) -> None:
    text = PLAIN.replace("buy: 1 yd", f"buy: {buy}")
    found = [each for each in reviewed(tmp_path, text, **STEPS).findings if each.check == "fabric-short"]
    assert [each.should_be for each in found] == ([] if right is None else [right]), "once for all sizes"
    for each in found[:1]:
        assert right is not None
        mended = reviewed(tmp_path, text.replace(f"buy: {buy}", f"buy: {right}"), **STEPS)
        assert "fabric-short" not in {one.check for one in mended.findings}
        assert f"the pieces need {right}." in each.message


@pytest.mark.parametrize(
    ("cloth", "right"),
    [
        ("92 3/4 in", "92 7/8 in"),
        ("235.5 cm", "236 cm"),
        ("2 1/2 yd", "2 5/8 yd"),
        ("2 5/8 yd", None),
        ("92 7/8 in", None),
    ],
)
def test_cloth_that_was_written_for_drops_is_enough(tmp_path: Path, cloth: str, right: str | None) -> None:
    """3 drops of 30 in ÷ 97 % are 92.78 in (235.7 cm)."""
    text = BAG.replace("BUY", "1 yd").replace("CLAIM", f"cloth: {cloth}").replace(", ELASTIC", "")
    found = [each for each in reviewed(tmp_path, text, **STEPS).findings if each.check.startswith("drops")]
    assert [each.should_be for each in found] == ([] if right is None else [right])


def test_too_little_cloth_for_drops_tells_enough(tmp_path: Path) -> None:
    text = PLAIN.replace("buy: 3 yd", "buy: 92 3/4 in")
    (found,) = (each for each in reviewed(tmp_path, text, **STEPS).findings if each.check == "drops-cloth")
    assert found.message == "92 7/8 in of print are needed in size S, but only 92 3/4 in bought. Buy 2 5/8 yd."


@pytest.mark.parametrize(("amount", "needed"), [("36 in", "37 in"), ("93.5 cm", "94 cm"), ("1 yd", "1 1/8 yd")])
def test_too_little_elastic_tells_enough(tmp_path: Path, amount: str, needed: str) -> None:
    text = PLAIN.replace("{item: elastic, amount: 1 1/8 yd}", f"{{item: elastic, amount: {amount}}}")
    (found,) = (each for each in reviewed(tmp_path, text, **STEPS).findings if each.check == "elastic-short")
    assert found.message == f"{amount} of elastic is too little: {needed} are needed for size L."
    assert found.should_be == needed


def test_square_of_a_binding_is_not_told_smaller_than_its_strip_is(tmp_path: Path) -> None:
    found, _ = computed(
        tmp_path,
        "seam_allowance: 1/2 in\nfabrics: {main: {name: poplin, structure: woven}}\n"
        "pieces: {panel: {cut: 1, fabric: main, edges: {top: 40 in}}}\n"
        "bindings: {edging: {edges: [panel.top], kind: double fold, finished_width: 3/8 in, overlap: 1 in}}\n",
        steps__01_dot_yaml="title: Cut\ntext: A square of {edging.square_side}.\n",
    )
    side = found.length("edging.square_side", 0)
    assert side is not None
    assert 7.84 * 25.4 < side.length.mm < 7.85 * 25.4, "the root of 41 in × 1 1/2 in"


def test_reference_to_what_is_bought_is_a_plain_length_elsewhere(tmp_path: Path) -> None:
    found, _ = computed(tmp_path, PLAIN.replace("length: 21 in", 'length: "{main.buy}"'), **STEPS)
    worked = found.number("curtain.length", 0)
    assert worked is not None
    assert show_number(worked, System.INCHES) == "36 in"
