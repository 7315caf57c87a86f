"""Marks on a photo in a real browser: measured on the screen, at phone and desk widths. Skipped without a browser."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from checks.example_folder import lay_out
from PIL import Image

from sitegen.publishing import publish
from sitegen.reading import ContentFolder

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
WIDTHS = (390, 768, 1280)
GREY = (128, 128, 128)
STEP = """--- photos/band.png (a picture)
--- steps/01.yaml
title: Pin the band
text: Match the quarter marks.
photo:
  file: band.png
  shows: The band pinned at its quarter marks
  marks:
    - {number: 1, text: The shoulder seam, at: [25%, 60%]}
    - {circle: dart, at: [60%, 70%], across: 12%}
    - {arrow: notch, from: [30%, 20%], to: [70%, 20%]}
"""


@pytest.fixture(scope="module")
def page_of_step(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A published page with one marked picture, all of it grey, so that every other pixel is of a mark."""
    folder = tmp_path_factory.mktemp("marked")
    lay_out(STEP, folder / "content")
    Image.new("RGB", (1600, 1200), GREY).save(folder / "content/tutorials/example/photos/band.png")
    made = publish(
        ContentFolder(folder / "content", "content"),
        folder / "site",
        draft=False,
        progress=lambda done, total, now: None,
    )
    assert made.front is not None, made.findings
    return folder / "site/tutorials/example/index.html"


@pytest.fixture(scope="module")
def browser() -> Iterator[browsers.Browser]:
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        yield running
        running.close()


def opened(browser: browsers.Browser, path: Path, width: int, **how: str) -> browsers.Page:
    page = browser.new_page(viewport={"width": width, "height": 900}, **how)
    page.goto(path.as_uri())
    page.locator(".marked").scroll_into_view_if_needed()
    page.wait_for_function("[...document.querySelectorAll('.marked img')].every(each => each.complete && each.width)")
    return page


def screenshot(page: browsers.Page) -> Image.Image:
    return Image.open(BytesIO(page.locator(".marked").screenshot())).convert("L")


def box_of(image: Image.Image, within: tuple[float, float, float, float]) -> tuple[float, float, float, float]:
    """Left, top, right, bottom in pixels of all that is no longer grey, in a part of the picture given in percent."""
    width, height = image.size
    left, top, right, bottom = (
        round(share / 100 * size) for share, size in zip(within, (width, height) * 2, strict=True)
    )
    found = image.crop((left, top, right, bottom)).point(lambda value: 255 if abs(value - 128) > 40 else 0).getbbox()
    assert found is not None, "nothing is marked there"
    return found[0] + left, found[1] + top, found[2] + left, found[3] + top


def luminance(grey: int) -> float:
    """Relative luminance of a grey of sRGB, as WCAG 2.2 defines it."""
    value = grey / 255
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def box_on_page(page: browsers.Page, selector: str) -> dict[str, float]:
    found = page.locator(selector).bounding_box()
    assert found is not None
    return dict(found)


@pytest.mark.parametrize("width", WIDTHS)
def test_marks_stand_at_their_place_of_the_picture(browser: browsers.Browser, page_of_step: Path, width: int) -> None:
    page = opened(browser, page_of_step, width)
    assert box_on_page(page, ".marked > .marks") == box_on_page(page, ".marked picture img")
    image = screenshot(page)
    left, top, right, bottom = box_of(image, (10, 45, 40, 75))
    assert (left + right) / 2 == pytest.approx(0.25 * image.width, abs=1.5)
    assert (top + bottom) / 2 == pytest.approx(0.60 * image.height, abs=1.5)
    left, top, _, bottom = box_of(image, (50, 50, 60, 90))  # its left half: at the right are its words
    halo = 0.25 * 15
    assert left == pytest.approx((0.60 - 0.06) * image.width - halo, abs=1.5)
    assert (top + bottom) / 2 == pytest.approx(0.70 * image.height, abs=1.5)
    assert bottom - top == pytest.approx(0.12 * image.width + 2 * halo, abs=2)
    left, top, right, bottom = box_of(image, (60, 5, 99, 40))
    assert (top + bottom) / 2 == pytest.approx(0.20 * image.height, abs=1.5)
    assert right == pytest.approx(0.70 * image.width + 4, abs=2)
    page.close()


def test_lines_numbers_and_words_have_one_size_at_every_width(browser: browsers.Browser, page_of_step: Path) -> None:
    sizes = []
    for width in WIDTHS:
        page = opened(browser, page_of_step, width)
        image = screenshot(page)
        left, top, right, bottom = box_of(image, (10, 45, 40, 75))
        _, line_top, _, line_bottom = box_of(image, (45, 10, 55, 30))
        dark = image.crop((image.width // 2, 0, image.width // 2 + 1, round(image.height * 0.4)))
        thick = sum(value < 60 for value in dark.tobytes())
        sizes.append((right - left, bottom - top, line_bottom - line_top, thick))
        page.close()
    assert min(sizes)[0] > 22
    for each in sizes:
        assert each == pytest.approx(sizes[0], abs=1.1)


@pytest.mark.parametrize("how", [{"color_scheme": "light"}, {"color_scheme": "dark"}])
@pytest.mark.parametrize("cloth", [0, 60, 128, 200, 255])
def test_marks_show_on_any_cloth(
    browser: browsers.Browser, page_of_step: Path, how: dict[str, str], cloth: int
) -> None:
    """A mark has parts that differ from what lies under it by 3 to 1 at least (WCAG 2.2, success criterion 1.4.11)."""
    page = opened(browser, page_of_step, 390, **how)
    image = screenshot(page)
    across_the_line = image.crop((image.width // 2, 0, image.width // 2 + 1, round(image.height * 0.4))).tobytes()
    under = luminance(cloth)
    shown = [luminance(value) for value in across_the_line if value != GREY[0]]
    assert max((max(each, under) + 0.05) / (min(each, under) + 0.05) for each in shown) >= 3
    page.close()


def test_each_text_is_read_once_and_no_fault_of_access_is_found(browser: browsers.Browser, page_of_step: Path) -> None:
    page = opened(browser, page_of_step, 390)
    tree = page.locator(".card .picture").aria_snapshot()
    for text in ("The shoulder seam", "Circle: dart", "Arrow: notch", "The band pinned at its quarter marks"):
        assert tree.count(text) == 1, tree
    assert tree.count("img") == 1
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    assert [each["id"] for each in axe.run(page).response["violations"]] == []
    page.close()


def test_marks_lie_on_the_picture_on_paper_too(browser: browsers.Browser, page_of_step: Path) -> None:
    page = opened(browser, page_of_step, 700)
    page.emulate_media(media="print")
    mark, picture = (box_on_page(page, selector) for selector in (".marked > .marks", ".marked picture img"))
    assert mark == pytest.approx(picture, abs=0.1)
    image = screenshot(page)
    left, top, right, bottom = box_of(image, (10, 45, 40, 75))
    assert (left + right) / 2 == pytest.approx(0.25 * image.width, abs=1.5)
    assert (top + bottom) / 2 == pytest.approx(0.60 * image.height, abs=1.5)
    page.close()
