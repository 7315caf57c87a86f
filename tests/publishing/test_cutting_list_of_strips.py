"""The cutting list names circles, bindings and cords by the numbers that they are cut by."""

from __future__ import annotations

from pathlib import Path

from bs4 import BeautifulSoup
from content import folder

from sitegen.publishing import publish

PARTS = (
    "body: {waist: 28 in}\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "circles: {skirt: {waist: body.waist, share: half, length: 20 in, fabric: main}}\n"
    "bindings: {hem_tape: {edges: [skirt.hem_edge], kind: double fold, finished_width: 1/2 in, overlap: 1 in}}\n"
    "pieces: {pocket: {cut: 1, fabric: main, length: 9 in, width: 8 in, edges: {opening: 7 in}}}\n"
    "trims:\n"
    "  hem_cord: {kind: cord, edges: [skirt.hem_edge], each_end: 6 in, supply: cotton cord}\n"
    "  pocket_zip: {kind: zip, edges: [pocket.opening], supply: white zip}\n"
    "supplies: [{item: cotton cord, amount: 3 yd}, {item: white zip, size: 7 in}]\n"
)


def test_circle_and_binding_are_in_the_cutting_list(tmp_path: Path) -> None:
    outcome = publish(
        folder(tmp_path / "content", PARTS), tmp_path / "site", draft=False, progress=lambda done, total, now: None
    )
    assert outcome.front is not None, [each.message for each in outcome.findings]
    page = (tmp_path / "site" / "tutorials" / "tee" / "index.html").read_text(encoding="utf-8")
    text = " ".join(
        BeautifulSoup(page, "html.parser").get_text(" ", strip=True).replace("\N{NO-BREAK SPACE}", " ").split()
    )
    for words in (
        "skirt cut 1/2 of a circle, cotton skirt cut radius 8 3/8 in",
        "skirt hem radius 28 7/8 in",
        "hem tape cut on the bias hem tape length 91 7/8 in",
        "hem tape strip width 2 in",
        "hem cord cut 1 hem cord length 102 7/8 in",
    ):
        assert words in text


def test_a_zip_is_bought_and_not_cut(tmp_path: Path) -> None:
    publish(folder(tmp_path / "content", PARTS), tmp_path / "site", draft=False, progress=lambda *_: None)
    page = (tmp_path / "site" / "tutorials" / "tee" / "index.html").read_text(encoding="utf-8")
    assert "pocket zip" not in page.replace("\N{NO-BREAK SPACE}", " ")
    assert "white zip" in page
