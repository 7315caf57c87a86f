"""Every page type of every theme in a real browser. Skipped where no browser is installed."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from publishing import sample_views as sample
from publishing.sites_of_releases import FIRST, SECOND, release
from publishing.whole_pages import CHROMIUM, chromium

from sitegen.publishing.render import render_front, render_glossary, render_tutorial
from sitegen.publishing.themes import shipped_theme, shipped_themes

browsers = pytest.importorskip("playwright.sync_api")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
WIDTHS = (320, 390, 640, 768, 1280)
"""In CSS pixels; 640 and 320 are what 1280 becomes when a page is shown at 200 and at 400 per cent (WCAG 2.2, 1.4.4 and
1.4.10)."""
FROM_A_CONTENT_FOLDER = (
    "index.html", "search.html", "search.html?q=band", "techniques.html", "techniques/zigzag-stitch.html", "changes.html",
    "offline.html", "tutorials/tee/index.html", "draft/index.html", "draft/tutorials/tee/index.html",
)  # fmt: skip
FROM_VIEWS = ("full/front.html", "full/glossary.html", "full/tutorial/index.html")
PAGES = FROM_A_CONTENT_FOLDER + FROM_VIEWS


@pytest.fixture(scope="module")
def browser() -> Iterator[browsers.Browser]:
    with chromium(browsers) as running:
        yield running


@pytest.fixture(scope="module", params=shipped_themes())
def site(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site with two releases, its draft, and pages with everything that a view can hold."""
    root: Path = tmp_path_factory.mktemp(request.param)
    release(root, FIRST, theme=request.param)
    release(root, SECOND, ratio="90%", theme=request.param)
    released = root / "site"
    release(root / "again", SECOND, draft=True, theme=request.param)
    shutil.copytree(root / "again" / "site", released / "draft")
    theme = shipped_theme(request.param)
    done = replace(sample.TUTORIAL, root="../../")
    for path, html in {
        "full/front.html": render_front(replace(sample.FRONT, root="../"), theme),
        "full/glossary.html": render_glossary(replace(sample.GLOSSARY, root="../"), theme),
        "full/tutorial/index.html": render_tutorial(done, theme),
    }.items():
        (released / path).parent.mkdir(parents=True, exist_ok=True)
        (released / path).write_text(html, encoding="utf-8")
    return released


def address(site: Path, path: str) -> str:
    file, mark, query = path.partition("?")
    return f"{(site / file).as_uri()}{mark}{query}"


def opened(page: browsers.Page, site: Path, path: str) -> None:
    page.goto(address(site, path))
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")


def test_no_page_is_wider_than_the_screen_or_breaks_its_policy(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    too_wide = []
    for path in PAGES:
        opened(page, site, path)
        for width in WIDTHS:
            page.set_viewport_size({"width": width, "height": 800})
            if page.evaluate("document.documentElement.scrollWidth") != width:
                too_wide.append((path, width))
    assert too_wide == []
    assert [text for text in said if "ERR_FILE_NOT_FOUND" not in text] == []
    page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_page_has_a_known_barrier(browser: browsers.Browser, site: Path, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page = browser.new_page(color_scheme=scheme, viewport={"width": 390, "height": 800})
    found = []
    for path in PAGES:
        opened(page, site, path)
        for one in axe.run(page).response["violations"]:
            found += [(path, one["id"], node["html"]) for node in one["nodes"]]
    assert found == []
    page.close()


def test_board_that_is_done_has_no_known_barrier(browser: browsers.Browser, site: Path) -> None:
    """What a choice changes is looked at too: a size chosen, a step ticked off, one step at a time, on a wide screen."""
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page = browser.new_page(viewport={"width": 1280, "height": 800})
    opened(page, site, "full/tutorial/index.html")
    page.locator("#size-2").check()
    page.locator("#step-1 .done input").check()
    page.locator("#steps-one").check()
    found = axe.run(page).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
    assert page.locator(".card:visible").count() == 1
    page.close()


def test_parts_of_a_step_do_not_lie_on_each_other(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        opened(page, site, "full/tutorial/index.html")
        overlapping = page.evaluate(
            """() => [...document.querySelectorAll('.card')].flatMap(card => {
              const parts = [...card.querySelectorAll(':scope > header, .side, .way, .shown, .other, .turn, .working')]
                .map(one => [one.className || one.tagName, one.getBoundingClientRect()]).filter(([, box]) => box.height);
              return parts.flatMap(([name, a], at) => parts.slice(at + 1)
                .filter(([, b]) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1)
                .map(([other]) => `${card.id}: ${name} on ${other}`));
            })"""
        )
        # What is needed floats beside the text that flows round it; its box lies in that of the text.
        assert [each for each in overlapping if ": side on " not in each] == [], width
    page.close()


def test_letters_are_large_enough_to_be_read_beside_a_machine(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 800})
    opened(page, site, "full/tutorial/index.html")
    size = "selector => parseFloat(getComputedStyle(document.querySelector(selector)).fontSize)"
    assert page.evaluate(size, "#step-2 .prose") >= 18
    assert page.evaluate(size, "#step-2 h3") >= 24
    assert page.evaluate(size, "#step-2 .numeral") >= 48
    page.close()


def test_words_in_drawings_can_be_read_on_a_phone(browser: browsers.Browser, site: Path) -> None:
    """They are 13 units high; a drawing goes to the edges of its card, and never past those of the page."""
    page = browser.new_page(viewport={"width": 360, "height": 800})
    opened(page, site, "full/tutorial/index.html")
    seen = page.evaluate(
        """() => [...document.querySelectorAll('.card .drawn:not(.true) > img')].map(one => [one, one.getBoundingClientRect()])
        .filter(([, box]) => box.width).map(([one, box]) => [13 * box.width / one.getAttribute('width'), box.left, box.right])"""
    )
    assert seen
    assert min(high for high, _, _ in seen) >= 11.5
    assert min(left for _, left, _ in seen) >= 0
    assert max(right for _, _, right in seen) <= 360
    page.close()


def test_number_for_every_size_is_read_on_a_phone_without_scrolling_its_table(
    browser: browsers.Browser, site: Path
) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 800})
    opened(page, site, "full/tutorial/index.html")
    ends = page.evaluate(
        """() => [...document.querySelectorAll('.sizes tr:not(.how) > [colspan] > .all')].map(one => {
          const words = document.createRange();
          words.selectNodeContents(one);
          return words.getBoundingClientRect().right - one.closest('.scroll').getBoundingClientRect().right;
        })"""
    )
    assert ends
    assert max(ends) <= 0
    page.close()


@pytest.mark.parametrize(("wide", "high"), [(184, 273), (189.9, 255.4)], ids=["A4", "Letter"])
def test_no_card_is_cut_by_the_end_of_a_sheet(browser: browsers.Browser, site: Path, wide: float, high: float) -> None:
    """Each card is lower than the printed part of a sheet (in mm), black on white also from a dark screen."""
    page = browser.new_page(viewport={"width": int(wide / 25.4 * 96), "height": 800}, color_scheme="dark")
    page.emulate_media(media="print")
    page.goto(address(site, "full/tutorial/index.html"))
    cards = page.locator(".card")
    heights = [box["height"] for place in range(cards.count()) if (box := cards.nth(place).bounding_box())]
    assert len(heights) == len(sample.CARDS)
    assert max(heights) < high / 25.4 * 96
    read = "one => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor]"
    assert page.locator("body").evaluate(read) == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    for place in (".numeral", ".cautions li", ".card h3", ".opening h1"):
        assert page.locator(place).first.evaluate("one => getComputedStyle(one).color") == "rgb(0, 0, 0)"
    page.close()
