"""The pages of a class in a real browser: widths, barriers, paper. Skipped where no browser is installed."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from content import EXAMPLE

from sitegen.checks import review_class
from sitegen.findings import Collector
from sitegen.publishing import publish, teacher_page
from sitegen.quantities import System
from sitegen.reading import ContentFolder
from sitegen.tutorial.build import site

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
STUDENTS, TEACHER = "site/classes/evening-tee/index.html", "teacher.html"
PAGES = (STUDENTS, TEACHER)
WIDTHS = (320, 390, 768, 1280)
SHEETS = {"A4": (794, 1123), "Letter": (816, 1056)}
"""Width and height at 96 pixels to the inch (ISO 216; ANSI/ASME Y14.1)."""


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example's site, and the page for the teacher of its evening class."""
    root = tmp_path_factory.mktemp("class")
    folder = ContentFolder(EXAMPLE, "content_example")
    publish(folder, root / "site", draft=False, progress=lambda *_: None)
    cls, _ = review_class(folder, "classes/evening-tee.yaml")
    assert cls is not None
    page = teacher_page(cls, site(folder, Collector()), folder, System.CENTIMETRES)
    assert page is not None
    (root / TEACHER).write_text(page, encoding="utf-8")
    return root


@pytest.fixture(scope="module")
def browser() -> Iterator[browsers.Browser]:
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield running
        running.close()


@pytest.mark.parametrize("path", PAGES)
def test_page_from_disk_breaks_no_policy_and_scrolls_only_down(
    browser: browsers.Browser, made: Path, path: str
) -> None:
    page = browser.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("request", lambda request: asked.append(request.url))
    page.add_init_script("addEventListener('securitypolicyviolation', (event) => console.log(event.violatedDirective))")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        page.goto((made / path).as_uri())
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        assert page.evaluate("document.documentElement.scrollWidth") == width
    assert said == []
    assert [url for url in asked if not url.startswith("file:")] == []
    page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", PAGES)
def test_page_has_no_known_barrier(browser: browsers.Browser, made: Path, path: str, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page = browser.new_page(color_scheme=scheme, viewport={"width": 390, "height": 800})
    page.goto((made / path).as_uri())
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    found = axe.run(page).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
    page.close()


@pytest.mark.parametrize("sheet", list(SHEETS))
def test_samples_fit_on_one_sheet_and_nothing_is_cut_off(browser: browsers.Browser, made: Path, sheet: str) -> None:
    """Measured at the width of the sheet between its margins of 13 mm; a sheet has 12 mm above and below."""
    wide, high = SHEETS[sheet]
    page = browser.new_page(viewport={"width": wide - round(26 / 25.4 * 96), "height": 900}, color_scheme="dark")
    page.goto((made / TEACHER).as_uri())
    page.emulate_media(media="print")
    style = page.evaluate("[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]")
    assert style == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    assert page.locator("section.samples").bounding_box()["height"] <= high - 24 / 25.4 * 96
    for drawing in page.locator(".sheets svg").all():
        assert drawing.bounding_box()["height"] <= high - 24 / 25.4 * 96
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.close()


def test_working_is_printed_where_it_is_open(browser: browsers.Browser, made: Path) -> None:
    page = browser.new_page()
    page.goto((made / TEACHER).as_uri())
    first, second = page.locator("details.how").nth(0), page.locator("details.how").nth(1)
    first.locator("summary").click()
    page.emulate_media(media="print")
    assert first.locator("p").first.is_visible()
    assert not second.is_visible()
    page.close()
