"""Pages opened from disk in a real browser. Skipped where no browser is installed."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from publishing import sample_views as sample

from sitegen.publishing.render import render_front, render_glossary, render_tutorial, theme_assets

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
WIDTHS = (320, 360, 768, 1280)
TUTORIAL = "tutorials/tidewater-tee/index.html"
READ = "selector => document.querySelector(selector).innerText.replaceAll('\\u00a0', ' ')"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    pages = {
        "index.html": render_front(sample.FRONT),
        "glossary.html": render_glossary(sample.GLOSSARY),
        TUTORIAL: render_tutorial(sample.TUTORIAL),
    }
    for path, html in pages.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(html, encoding="utf-8")
    (folder / "theme").mkdir()
    for name, file in theme_assets().items():
        shutil.copy(file, folder / "theme" / name)
    return folder


@pytest.fixture(scope="module")
def browser() -> Iterator[browsers.Browser]:
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield running
        running.close()


@pytest.mark.parametrize("path", ["index.html", "glossary.html", TUTORIAL])
def test_page_from_disk_breaks_no_policy_and_scrolls_only_down(
    browser: browsers.Browser, site: Path, path: str
) -> None:
    page = browser.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        page.goto((site / path).as_uri())
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        assert page.evaluate("document.documentElement.scrollWidth") == width
    assert [text for text in said if "ERR_FILE_NOT_FOUND" not in text] == []
    page.close()


def test_choice_of_size_and_unit_works_without_a_script(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri())
    number = page.locator("#step-1 .prose a.n").first
    assert number.inner_text().replace("\xa0", " ") == "16 to 19 3/8 in (40.5 to 49 cm, by size)"
    page.locator("#size-3").check()
    assert number.inner_text().replace("\xa0", " ") == "17 1/8 in (43.5 cm)"
    assert page.locator("#step-1 table thead th:visible").all_inner_texts() == ["Size", "M"]
    page.locator("#units-cm").check()
    assert number.inner_text().replace("\xa0", " ") == "43.5 cm"
    context.close()


def test_choice_and_ticks_are_remembered(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri())
    page.locator("#size-2").check()
    page.locator("#units-in").check()
    page.locator("#step-2 .done input").check()
    page.reload()
    assert page.locator("#size-2").is_checked()
    assert page.locator("#units-in").is_checked()
    assert page.locator("#step-2 .done input").is_checked()
    assert not page.locator("#step-3 .done input").is_checked()
    assert page.locator(".steps li.is-done").count() == 1
    context.close()


def test_number_opens_its_working(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto((site / TUTORIAL).as_uri())
    assert not page.locator("#w-neckband\\.cut_length").is_visible()
    page.locator("#step-1 .prose a.n").first.click()
    assert page.locator("#w-neckband\\.cut_length").is_visible()
    page.close()


@pytest.mark.parametrize(("wide", "high"), [(184, 273), (189.9, 255.4)], ids=["A4", "Letter"])
def test_no_card_is_cut_by_the_end_of_a_sheet(browser: browsers.Browser, site: Path, wide: float, high: float) -> None:
    """Each card is lower than the printed part of a sheet (in mm), so that the rule to keep it whole can be kept."""
    page = browser.new_page(viewport={"width": int(wide / 25.4 * 96), "height": 800})
    page.emulate_media(media="print")
    page.goto((site / TUTORIAL).as_uri())
    cards = page.locator(".card")
    for place in range(cards.count()):
        box = cards.nth(place).bounding_box()
        assert box is not None
        assert box["height"] < high / 25.4 * 96
        assert cards.nth(place).evaluate("card => getComputedStyle(card).breakInside") == "avoid"
    page.close()


def test_paper_is_black_on_white_in_both_systems_even_from_a_dark_screen(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page(color_scheme="dark")
    page.emulate_media(media="print")
    page.goto((site / TUTORIAL).as_uri())
    page.locator("#units-in").evaluate("box => { box.checked = true }")
    style = page.evaluate("[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]")
    assert style == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    assert "5.7 cm" in page.evaluate(READ, "#step-1 .prose")
    assert not page.locator("#step-1 .working").is_visible()
    assert page.locator(".printed").is_visible()
    page.close()


def test_draft_mark_is_printed_on_every_sheet(browser: browsers.Browser, site: Path, tmp_path: Path) -> None:
    pypdf = pytest.importorskip("pypdf")
    drafted = replace(sample.TUTORIAL, site=replace(sample.SITE, draft=True))
    path = site / TUTORIAL.replace("index", "draft")
    path.write_text(render_tutorial(drafted), encoding="utf-8")
    page = browser.new_page()
    page.goto(path.as_uri())
    page.pdf(path=str(tmp_path / "draft.pdf"), format="A4")
    page.close()
    sheets = pypdf.PdfReader(tmp_path / "draft.pdf").pages
    assert len(sheets) > 2
    assert ["DRAFT" in sheet.extract_text() for sheet in sheets] == [True] * len(sheets)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", ["index.html", "glossary.html", TUTORIAL])
def test_page_has_no_known_barrier(browser: browsers.Browser, site: Path, path: str, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page = browser.new_page(color_scheme=scheme, viewport={"width": 360, "height": 800})
    page.goto((site / path).as_uri())
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    found = axe.run(page).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
    page.close()
