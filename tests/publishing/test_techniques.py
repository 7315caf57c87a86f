"""A page for each technique: what it is, and every step that uses it with the settings used there."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE, folder
from publishing.sites_of_releases import words

from sitegen.publishing import publish
from sitegen.publishing.techniques.known import stitch
from sitegen.reading import ContentFolder

SKIRT = "tutorials/gathered-skirt/index.html"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("out") / "site"
    publish(ContentFolder(EXAMPLE, "content_example"), target, draft=False, progress=lambda *_: None)
    return target


def page(site: Path, path: str) -> BeautifulSoup:
    return BeautifulSoup((site / path).read_text(encoding="utf-8"), "html.parser")


def used(site: Path, name: str) -> dict[str, list[str]]:
    """The numbers of the steps of each tutorial that a technique lists."""
    return {
        words(section.h2.a): [str(item["value"]) for item in section.select(".used > li")]
        for section in page(site, f"techniques/{name}.html").select("main section")
        if section.h2 is not None
    }


def test_every_technique_of_the_example_has_a_page_and_is_listed(site: Path) -> None:
    listed = {str(link["href"]) for link in page(site, "techniques.html").select(".index a")}
    assert listed == {path.relative_to(site).as_posix() for path in (site / "techniques").iterdir()}
    names = {path.stem for path in (site / "techniques").iterdir()}
    assert {"straight-stitch", "zigzag-stitch", "twin-needle", "double-fold-hem", "single-fold-hem"} <= names
    assert {"band-on-an-opening", "gathers", "bias-binding", "boxed-corners", "elastic-in-a-casing"} <= names
    assert {"making-a-piece-longer-or-shorter", "inverted-box-pleats", "finishing-an-edge"} <= names


def test_steps_are_those_that_do_it(site: Path) -> None:
    assert used(site, "gathers") == {"A gathered skirt with an elastic waist": ["7", "8"]}
    assert list(used(site, "boxed-corners").values()) == [["8"]]
    assert list(used(site, "twin-needle").values()) == [["14"]]
    assert list(used(site, "stabilising-an-edge").values()) == [["8"]]


def test_step_of_two_views_counts_once(site: Path) -> None:
    """The skirt has a page with a pocket and one without: its hem is sewn once."""
    hrefs = [str(link["href"]) for link in page(site, "techniques/double-fold-hem.html").select(".used a")]
    assert f"../{SKIRT}#step-10" in hrefs
    assert not any("/without/" in href for href in hrefs)


def test_setting_is_the_one_of_the_card(site: Path) -> None:
    told = {
        str(item["value"]): words(item) for item in page(site, "techniques/zigzag-stitch.html").select(".used > li")
    }
    assert "width 2 mm length 2.5 mm, about 10 stitches to the inch press down, towards the body" in told["10"]
    assert "allowance 3/8 in (1 cm)" in told["10"]
    hem = words(page(site, "techniques/single-fold-hem.html").select_one(".used > li"))
    assert "turn 1 in (2.5 cm) stitch line 5/8 in (1.6 cm) needle gap 3/16 in (4 mm)" in hem


def test_meaning_is_that_of_the_glossary_and_none_is_made_up(site: Path) -> None:
    shown = page(site, "techniques/gathers.html")
    assert words(shown.select_one(".lead")) == "To draw a long edge together on threads until it fits a shorter one."
    link = shown.select_one('.facts a[href^="../glossary.html#"]')
    assert link is not None
    assert page(site, "glossary.html").find(id=str(link["href"]).partition("#")[2]) is not None
    assert page(site, "techniques/band-on-an-opening.html").select(".lead") == []


def test_level_of_each_tutorial_is_told(site: Path) -> None:
    heading = page(site, "techniques/gathers.html").select_one("section h2 small")
    assert words(heading) == "a beginner who has sewn straight seams before"


def test_stitch_on_a_card_leads_to_its_page(site: Path) -> None:
    links = {
        link.get_text(): str(link["href"]) for link in page(site, "tutorials/boxy-tee/index.html").select(".seam dd a")
    }
    assert links["zigzag"] == "../../techniques/zigzag-stitch.html"
    assert links["twin needle"] == "../../techniques/twin-needle.html"
    deeper = page(site, "tutorials/gathered-skirt/without/index.html").select_one(".seam dd a")
    assert deeper is not None
    assert deeper["href"] == "../../../techniques/straight-stitch.html"


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("straight", "straight stitch"),
        ("Zigzag", "zigzag stitch"),
        ("stretch stitch", "stretch stitch"),
        ("twin  needle", "twin needle"),
        ("topstitch", "topstitch"),
        ("three-thread overlock", "three-thread overlock"),
        ("blind hem", "blind hem"),
        ("straight, then a zigzag over both edges", None),
        ("as you like it best for this cloth", None),
        ("", None),
        ("301", None),
    ],
)
def test_stitch_has_a_page_by_its_name_and_a_remark_has_none(said: str, name: str | None) -> None:
    found = stitch(said)
    assert (found.name if found is not None else None) == name


def test_darts_changes_and_other_ways_are_found(tmp_path: Path) -> None:
    parts = (
        "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
        "pieces: {front: {cut: 1, fabric: main, length: 20 in, width: 10 in, edges: {side: {length: 16 in, sewn: 15 in}, hem: 10 in},"
        " darts: {bust: {edge: side, width: 1 in, length: 3 in}}}, back: {cut: 1, fabric: main, edges: {side: 15 in}}}\n"
        "hems: {lower: {edges: [front.hem], turn: 1 in, stitch: straight}}\n"
        "changes: {longer: {piece: front, line_at: 2/3 from the top, lengthen_by: 2 in}}\n"
    )
    first = "title: Dart\ntext: Lengthen by {longer.amount}, then sew the dart.\ndarts: [front.bust]\n"
    second = (
        "title: Hem\ntext: Hem.\nhem: [lower]\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"
        "other_way: {when: If you have one., text: Sew it otherwise., join: [{edges: [front.side, back.side], stitch: overlock}]}\n"
    )
    content = folder(tmp_path / "content", parts, steps__01_dot_yaml=first, steps__02_dot_yaml=second)
    done = publish(content, tmp_path / "site", draft=True, progress=lambda *_: None)
    assert done.front is not None
    site = tmp_path / "site"
    assert used(site, "darts") == {"Test tee": ["1"]}
    assert "width 1 in (2.5 cm) length 3 in (7.6 cm)" in words(page(site, "techniques/darts.html").main)
    assert used(site, "making-a-piece-longer-or-shorter") == {"Test tee": ["1"]}
    assert used(site, "overlock") == {"Test tee": ["2"]}
    assert used(site, "single-fold-hem") == {"Test tee": ["2"]}


def test_site_without_steps_has_no_page_of_techniques(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", "sizes: [S]\n")
    publish(content, tmp_path / "site", draft=True, progress=lambda *_: None)
    site = tmp_path / "site"
    assert not (site / "techniques.html").exists()
    assert page(site, "index.html").select('nav a[href="techniques.html"]') == []


@pytest.mark.parametrize(
    "says", ["text: Cut {bag_cord.length} of cord and draw it through.", "text: Draw it through.\ninsert: [bag_cord]"]
)
def test_a_cord_is_a_technique_of_the_step_that_tells_its_length_or_puts_it_in(tmp_path: Path, says: str) -> None:
    text = (
        "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
        "pieces: {bag: {cut: 1, fabric: main, edges: {casing: 11 in}}}\n"
        "trims: {bag_cord: {kind: cord, edges: [bag.casing], each_end: 6 in, supply: cord}}\n"
        "supplies: [{item: cord, amount: 1 yd}]\n"
    )
    step = f"title: Thread\n{says}\n"
    made = folder(tmp_path / "content", text, steps__01_dot_yaml=step)
    publish(made, tmp_path / "site", draft=True, progress=lambda *_: None)
    assert used(tmp_path / "site", "cord-in-a-casing") == {"Test tee": ["1"]}
