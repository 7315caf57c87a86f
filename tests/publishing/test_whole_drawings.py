"""The drawings of a tutorial as a whole on its page: where they stand, what leads where, and their size on paper."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from content import computed
from publishing.whole_pages import CHROMIUM, STEPS, chromium, lay_out, view_of

from sitegen.publishing.drawings import DrawingFiles
from sitegen.quantities import RULER, System
from sitegen.sewing.layout import Layout
from sitegen.tutorial import making_of

PLAIN = "pieces: {front: {cut: 1, length: 6 in, width: 6 in}}\n"


def soup_of(page: Path) -> BeautifulSoup:
    return BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")


def test_every_drawing_stands_in_its_section_as_a_file(tmp_path: Path) -> None:
    page, _ = lay_out(tmp_path)
    soup = soup_of(page)
    where = {
        "section[aria-labelledby=sizes] > figure img": 3,
        "section[aria-labelledby=fabrics] .gauge img": 1,
        "section[aria-labelledby=cutting] .layouts img": 3,
        "section[aria-labelledby=steps] .order img": 1,
    }
    assert {select: len(soup.select(select)) for select in where} == where
    for image in (image for select in where for image in soup.select(select)):
        drawing = ET.parse(page.parent / image["src"]).getroot()
        assert drawing[0].text == image.find_parent("figure").figcaption.get_text().partition(", drawn for size ")[0]
    assert soup.select("svg :is(line, text, desc)") == []


def test_what_cannot_be_known_leaves_nothing_behind(tmp_path: Path) -> None:
    page, _ = lay_out(tmp_path, PLAIN, steps={"steps__01_dot_yaml": "title: Cut\ntext: Cut.\n"})
    soup = soup_of(page)
    assert soup.select(".order, .gauge, .layouts, #layouts, #finder, .by-hand, figure") == []
    found, _ = computed(tmp_path / "again", PLAIN)
    whole = view_of(found, DrawingFiles("")).whole
    assert (whole.chart, dict(whole.gauges), dict(whole.layouts), whole.order) == (None, {}, {}, None)


def test_layout_is_told_by_size_with_what_to_buy(tmp_path: Path) -> None:
    page, found = lay_out(tmp_path)
    soup = soup_of(page)
    (layout,) = soup.select(".layouts > div")
    assert " ".join(layout.p.get_text().split()) == "jersey: buy 2 yd (1.9 m)"
    (words,) = layout.select("details p")
    for size in range(3):
        laid = found.laid("main", size)
        assert isinstance(laid, Layout)
        assert f"They take {RULER.show(laid.length, System.INCHES)} (" in words.get_text().replace(
            "\N{NO-BREAK SPACE}", " "
        )
    assert "front on the fold" in words.get_text().lower()
    assert layout.figcaption.get_text() == "Cutting layout on jersey, drawn for size M"
    assert [image["alt"] for image in layout.select("img")] == ["size S", "size M", "size L"]
    assert [image.has_attr("hidden") for image in layout.select("img")] == [True, False, True]


def test_list_beside_the_map_leads_to_every_card_and_says_what_waits(tmp_path: Path) -> None:
    page, found = lay_out(tmp_path)
    soup = soup_of(page)
    entries = soup.select(".order li")
    cards = [card["id"] for card in soup.select(".card")]
    assert [entry.a["href"].removeprefix("#") for entry in entries] == cards
    assert making_of(found.tutorial).can_be_done_together() == ((2, 3),)
    waits = [entry.find("small", recursive=False) for entry in entries]
    assert [each.get_text() if each else "" for each in waits] == [
        "",
        "after 1; at the same time as 3",
        "after 1; at the same time as 2",
    ]
    text = " ".join(soup.select_one(".order > p").get_text().replace("\N{NO-BREAK SPACE}", " ").split())
    assert text.endswith(
        "Alone you need about 1 h; the longest row of steps that wait for each other takes about 50 min."
    )


def test_order_in_which_each_step_waits_says_so(tmp_path: Path) -> None:
    later = {**STEPS, "steps__03_dot_yaml": "title: Look\nminutes: 10\ntext: Look at all of it.\n"}
    page, _ = lay_out(tmp_path, steps=later)
    text = soup_of(page).select_one(".order > p").get_text()
    assert text.startswith("Each step waits for the one before it")


browsers = pytest.importorskip("playwright.sync_api")
in_browser = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
OPEN = "document.querySelectorAll('.order, .gauge').forEach(each => { each.open = true })"


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    with chromium(browsers) as running:
        yield running


@in_browser
@pytest.mark.parametrize("width", [320, 390, 1280])
def test_gauge_keeps_its_true_size_and_scrolls_within_itself(tmp_path: Path, browser: Any, width: int) -> None:
    page, _ = lay_out(tmp_path)
    tab = browser.new_page(viewport={"width": width, "height": 800})
    tab.goto(page.as_uri())
    tab.evaluate(OPEN)
    image = tab.locator(".gauge img")
    drawing = ET.parse(page.parent / str(image.get_attribute("src"))).getroot()
    true = float(drawing.attrib["width"].removesuffix("mm")) / 25.4 * 96
    image.scroll_into_view_if_needed()
    tab.wait_for_function("document.querySelector('.gauge img').complete")
    assert image.bounding_box()["width"] == pytest.approx(true, abs=0.05)
    assert tab.evaluate("document.documentElement.scrollWidth") == width
    scrolls = tab.evaluate("(box => box.scrollWidth > box.clientWidth)(document.querySelector('.gauge .drawn'))")
    assert scrolls == (width < true)
    tab.close()


@in_browser
@pytest.mark.parametrize("wide", [184, 189.9], ids=["A4", "Letter"])
def test_printed_gauge_is_as_large_as_the_cloth(tmp_path: Path, browser: Any, wide: float) -> None:
    """The printed part of a sheet (in mm, ISO 216 A4 and US Letter less the margins of the page) holds it whole, so
    that nothing is made smaller to fit."""
    page, _ = lay_out(tmp_path)
    tab = browser.new_page(viewport={"width": int(wide / 25.4 * 96), "height": 800})
    tab.goto(page.as_uri())
    assert not tab.locator(".gauge").get_attribute("open")
    tab.emulate_media(media="print")
    assert not tab.locator(".gauge").is_visible()
    tab.evaluate(OPEN)
    assert tab.locator(".gauge img").is_visible()
    image = tab.locator(".gauge img")
    drawing = ET.parse(page.parent / str(image.get_attribute("src"))).getroot()
    box = image.bounding_box()
    assert box["width"] == pytest.approx(float(drawing.attrib["width"].removesuffix("mm")) / 25.4 * 96, abs=0.05)
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= wide / 25.4 * 96
    tab.close()


@in_browser
def test_entry_of_the_map_leads_to_its_card(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = browser.new_page()
    tab.goto(page.as_uri())
    tab.locator(".order summary").click()
    tab.get_by_role("link", name="Neaten the pocket").last.click()
    assert tab.url.endswith("#step-3")
    tab.close()


@in_browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_drawings_raise_no_barrier(tmp_path: Path, browser: Any, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page, _ = lay_out(tmp_path)
    tab = browser.new_page(color_scheme=scheme, viewport={"width": 360, "height": 800})
    tab.goto(page.as_uri())
    tab.evaluate("document.querySelectorAll('details').forEach(each => { each.open = true })")
    found = axe.run(tab).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
    small = tab.locator(
        ".order li a, .order summary, .gauge summary, #finder :is(summary, button, input)"
    ).evaluate_all("all => all.filter(one => one.offsetHeight && one.offsetHeight < 24).map(one => one.outerHTML)")
    assert small == []
    tab.close()


@in_browser
def test_size_chart_follows_the_choice_of_a_system(tmp_path: Path, browser: Any) -> None:
    page, _ = lay_out(tmp_path)
    tab = browser.new_page()
    tab.goto(page.as_uri())
    images = tab.locator("section[aria-labelledby=sizes] > .diagram img")
    for choice, shown, said, unsaid in (
        ("both", 0, "in (86.5", ""),
        ("in", 1, "34\u00a0in", "cm"),
        ("cm", 2, "86.5\u00a0cm", "in"),
    ):
        tab.locator(f"#units-{choice}").check(force=True)
        assert [image.is_visible() for image in images.all()] == [place == shown for place in range(3)]
        drawing = ET.parse(page.parent / str(images.nth(shown).get_attribute("src"))).getroot()
        text = "".join(drawing.itertext()).replace(" ", "\u00a0")
        assert said.replace(" ", "\u00a0") in text
        assert not unsaid or not re.search(rf"\d\u00a0{unsaid}\b", text)
