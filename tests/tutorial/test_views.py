"""Views: every combination is worked out and checked by itself, with the parts and steps that belong to it."""

from __future__ import annotations

from pathlib import Path

from bs4 import BeautifulSoup
from content import folder, messages, reviewed

from sitegen.publishing import publish
from sitegen.quantities import inches

TEE = (
    "seam_allowance: 3/8 in\n"
    "views: {hem: [band, turned], pocket: [without, with]}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 1 yd}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, length: 20 in, sides: {top: seam, bottom: hem}, edges: {hem: 20 in}}\n"
    "  pocket: {cut: 1, fabric: main, length: 6 in, only_in: {pocket: with}}\n"
    "bands:\n"
    "  hem_band: {opening: [front.hem], ratio: 90%, finished_width: 2 in, fabric: main, only_in: {hem: band}}\n"
    "hems:\n"
    "  lower: {edges: [front.hem], turn: 1 in, only_in: {hem: turned}}\n"
    "supplies: [{item: twin needle, only_in: {hem: turned}}, {item: ballpoint needle}, {item: thread}]\n"
)
STEPS = {
    "steps__01_dot_yaml": "title: Band\ntext: Cut the band {hem_band.cut_length} long.\nonly_in: {hem: band}\n",
    "steps__02_dot_yaml": "title: Hem\ntext: Turn up {lower.turn}.\nhem: [lower]\nonly_in: {hem: turned}\n",
    "steps__03_dot_yaml": "title: Finish\ntext: Done.\n",
}


def test_each_combination_has_its_own_parts_numbers_and_steps(tmp_path: Path) -> None:
    found = reviewed(tmp_path, TEE, **STEPS)
    assert found.findings == ()
    combinations = {tuple(choice for _, choice in each.tutorial.chosen): each for each in found.tutorials}
    assert list(combinations) == [("band", "without"), ("band", "with"), ("turned", "without"), ("turned", "with")]
    banded, turned = combinations["band", "with"], combinations["turned", "without"]
    lengths = [each.number("front.finished_length", 0) for each in (banded, turned)]
    assert [number.length for number in lengths if number] == [inches("21.25"), inches("18.625")]
    assert ("pocket" in banded.tutorial.pieces, "pocket" in turned.tutorial.pieces) == (True, False)
    assert [step.title for step in turned.tutorial.steps] == ["Hem", "Finish"]
    assert [step.number for step in turned.tutorial.steps] == [1, 2]
    assert [supply.item.text for supply in banded.tutorial.supplies] == ["ballpoint needle", "thread"]


def test_finding_that_only_one_view_has_names_it(tmp_path: Path) -> None:
    steps = {**STEPS, "steps__03_dot_yaml": "title: Finish\ntext: Turn up {lower.turn} again.\n"}
    found = reviewed(tmp_path, TEE, **steps)
    (message,) = messages(found.findings)
    assert message.startswith("2:16 unknown-reference: With hem band: There is no number “lower.turn”.")


def test_unknown_view_and_choice_are_reported(tmp_path: Path) -> None:
    text = TEE.replace("only_in: {hem: turned}}, {item", "only_in: {hm: turned}}, {item").replace(
        "{pocket: with}", "{pocket: wiht}"
    )
    found = [each for each in messages(reviewed(tmp_path, text, **STEPS).findings) if "unknown" in each]
    assert found == [
        "9:66 unknown-reference: There is no choice “wiht”. Nearest: with.",
        "14:42 unknown-reference: There is no view “hm”. Nearest: hem.",
    ]


def test_every_combination_has_a_page_and_the_choices_lead_to_each_other(tmp_path: Path) -> None:
    outcome = publish(
        folder(tmp_path / "content", TEE, **STEPS), tmp_path / "site", draft=False, progress=lambda *_: None
    )
    assert outcome.front is not None
    home = tmp_path / "site" / "tutorials" / "tee"
    assert {path.relative_to(home).as_posix() for path in home.rglob("*.html")} == {
        "index.html", "band-with/index.html", "turned-without/index.html", "turned-with/index.html",
    }  # fmt: skip
    page = BeautifulSoup((home / "turned-with" / "index.html").read_text(encoding="utf-8"), "html.parser")
    assert page.find("a", href="../turned-without/index.html")
    assert page.find("a", href="../band-with/index.html")


def test_boxed_corners_and_drops_belong_to_the_choices_they_name(tmp_path: Path) -> None:
    parts = (
        "boxed: {corners: {panel: pocket, depth: 1 in, only_in: {pocket: with}}}\n"
        "drops: {curtain: {width: 40 in, length: 30 in, fabric: main, only_in: {hem: band}}}\n"
    )
    found = {
        tuple(choice for _, choice in each.tutorial.chosen): each for each in reviewed(tmp_path, TEE + parts).tutorials
    }
    assert [list(found["band", each].tutorial.boxed) for each in ("without", "with")] == [[], ["corners"]]
    assert [list(found[each, "with"].tutorial.drops) for each in ("band", "turned")] == [["curtain"], []]
