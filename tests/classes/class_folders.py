"""Small content folders with a class, and the class with what was found in it."""

from __future__ import annotations

from pathlib import Path

from content import folder

from sitegen.checks import review_class
from sitegen.classes import ComputedClass
from sitegen.findings import Finding
from sitegen.reading import ContentFolder

TOTE = (
    "sizes: [S, L]\nseam_allowance: 1/2 in\nbody: {waist: '30, 40 in'}\n"
    "fabrics:\n"
    "  canvas: {name: cotton canvas, structure: woven, width: 45 in, shrinkage: 10%, buy: 1 yd}\n"
    "  denim: {name: denim, structure: woven, buy: '1/2, 3/4 yd'}\n"
    "pieces:\n"
    "  panel: {cut: 2, fabric: canvas, length: '12, 14 in', width: '16, 18 in', edges: {side: '10, 12 in'}}\n"
    "  pocket: {cut: '1', fabric: denim}\n"
    "elastics: {top: {around: body.waist, ratio: 90%, overlap: 1 in, width: 1 in, room: 1/8 in}}\n"
    "changes: {taller: {piece: panel, line_at: 5 in from the top, lengthen_by: 2 in}}\n"
    "supplies:\n"
    "  - {item: polyester thread, amount: 2 spools}\n"
    "  - {item: universal needle, size: 80/12, amount: '1'}\n"
    "  - {item: soft elastic, size: 1 in wide, amount: 40 in}\n"
    "  - {item: cotton tape, amount: 10 in}\n"
    "  - {item: chalk}\n"
    "tools: [sewing machine, iron, scissors]\n"
)
STEPS = {
    "steps__01-cut_dot_yaml": "title: Cut out\ntext: Cut both panels.\nminutes: 40\ntools: [scissors]\ncut: [panel]\n",
    "steps__02-sew_dot_yaml": "title: Sew the sides\ntext: Sew the panels.\nminutes: 30\ntools: [sewing machine]\n"
    "join: [{edges: [panel.side, panel.side], stitch: straight}]\n",
    "steps__03-press_dot_yaml": "title: Press the bag\ntext: Press the panels.\nminutes: 20\ntools: [iron]\n",
}
CLASS = "title: Evening class\ntutorial: tee\nstudents: {S: 3, L: 2}\nsessions: [{minutes: 200}]\n"


def class_folder(root: Path, text: str = CLASS, *, tutorial: str = TOTE, **files: str) -> ContentFolder:
    """A folder with the tutorial ``tee`` and the class ``evening``."""
    made = folder(root, tutorial, **(files or STEPS))
    (root / "classes").mkdir(exist_ok=True)
    (root / "classes" / "evening.yaml").write_text(text, encoding="utf-8")
    return made


def read_class(
    root: Path, text: str = CLASS, *, tutorial: str = TOTE, **files: str
) -> tuple[ComputedClass | None, tuple[Finding, ...]]:
    """The class and the findings in its own file."""
    found, collector = review_class(class_folder(root, text, tutorial=tutorial, **files), "classes/evening.yaml")
    return found, tuple(each for each in collector.findings if each.place.file == "folder/classes/evening.yaml")


def whole_class(root: Path, text: str = CLASS, *, tutorial: str = TOTE, **files: str) -> ComputedClass:
    """The class, known to be read without a word."""
    found, findings = read_class(root, text, tutorial=tutorial, **files)
    assert found is not None, [each.message for each in findings]
    return found
