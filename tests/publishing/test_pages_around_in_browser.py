"""The pages around the tutorials, opened from disk in a real browser. Skipped where no browser is installed."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from content import EXAMPLE
from publishing.sites_of_releases import FIRST, SECOND, release

from sitegen.publishing import publish
from sitegen.reading import ContentFolder

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
WIDTHS = (320, 390, 768, 1280)
TEE = "tutorials/tee/index.html"
PAGES = (
    "index.html", "search.html", "search.html?q=band", "techniques.html", "techniques/zigzag-stitch.html", "changes.html",
    "offline.html", TEE,
)  # fmt: skip


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small site with two releases, so that there is something that changed."""
    root = tmp_path_factory.mktemp("small")
    release(root, FIRST)
    release(root, SECOND, ratio="90%")
    return root / "site"


@pytest.fixture(scope="module")
def example(tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("example") / "site"
    publish(ContentFolder(EXAMPLE, "content_example"), target, draft=False, progress=lambda *_: None)
    return target


@pytest.fixture(scope="module")
def browser() -> Iterator[browsers.Browser]:
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield running
        running.close()


def address(site: Path, path: str) -> str:
    file, mark, query = path.partition("?")
    return f"{(site / file).as_uri()}{mark}{query}"


@pytest.mark.parametrize("path", PAGES)
def test_page_from_disk_breaks_no_policy_and_scrolls_only_down(
    browser: browsers.Browser, site: Path, path: str
) -> None:
    """The data of JSON-LD stand in a script element, and the policy of the page lets no script stand in it: they are
    not run, so nothing is said about them."""
    page = browser.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.add_init_script("addEventListener('securitypolicyviolation', (event) => console.log(event.violatedDirective))")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        page.goto(address(site, path))
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        assert page.evaluate("document.documentElement.scrollWidth") == width
    assert said == []
    page.close()


def test_tutorial_holds_data_that_the_policy_does_not_touch(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto(address(site, TEE))
    found = page.evaluate("JSON.parse(document.querySelector('script[type=\"application/ld+json\"]').textContent)")
    assert found["@type"] == "HowTo"
    page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", PAGES)
def test_page_has_no_known_barrier(browser: browsers.Browser, site: Path, path: str, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    page = browser.new_page(color_scheme=scheme, viewport={"width": 390, "height": 800})
    page.goto(address(site, path))
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    found = axe.run(page).response["violations"]
    assert [(one["id"], [node["html"] for node in one["nodes"]]) for one in found] == []
    page.close()


@pytest.mark.parametrize("path", PAGES)
def test_page_is_printed_black_on_white_with_all_its_text(browser: browsers.Browser, site: Path, path: str) -> None:
    page = browser.new_page(color_scheme="dark")
    page.goto(address(site, path))
    heading = page.locator("h1").inner_text()
    page.emulate_media(media="print")
    style = page.evaluate("[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]")
    assert style == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    assert page.locator("h1").is_visible()
    assert page.locator("h1").inner_text() == heading
    page.close()


def test_choice_of_a_size_finds_what_changed_in_it(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto(address(site, TEE))
    page.locator(".changed summary").click()
    rows = page.locator(".changed .each tr:visible th")
    assert rows.all_inner_texts() == ["S", "M"]
    page.locator("#size-2").check(force=True)
    assert rows.all_inner_texts() == ["M"]
    lengths = page.locator(".changed .each tr:visible td :is(.in, .cm)")
    assert lengths.count() == 4
    assert all(each.is_visible() for each in lengths.all())
    page.close()


def results(browser: browsers.Browser, site: Path, query: str) -> list[list[str]]:
    """Title and kind of each result."""
    page = browser.new_page()
    page.goto(f"{(site / 'search.html').as_uri()}?q={query}")
    found = page.evaluate(
        "Array.from(document.querySelectorAll('#results li'), (item) => "
        "[item.querySelector('a').textContent, item.querySelector('span').textContent])"
    )
    page.close()
    return [list(map(str, each)) for each in found]


def test_titles_come_before_steps_and_steps_before_texts(browser: browsers.Browser, example: Path) -> None:
    found = results(browser, example, "skirt")
    kinds = [kind.partition(",")[0] for _, kind in found]
    titled = ["skirt" in title.lower() for title, _ in found]
    assert titled == sorted(titled, reverse=True), "what has the word in its title comes first"
    assert kinds[0] == "tutorial"
    steps = [place for place, (kind, own) in enumerate(zip(kinds, titled, strict=True)) if kind == "step" and own]
    texts = [place for place, own in enumerate(titled) if not own]
    assert 0 < max(steps) < min(texts)


@pytest.mark.parametrize(
    ("query", "first"),
    [
        ("hems", "hem"),
        ("gathers", "Gathers"),
        ("gath", "A gathered skirt with an elastic waist"),
        ("TOTE", "A two-cloth tote with boxed corners"),
        ("unpicker", "seam ripper (unpicker, quick unpick)"),
        ("double fold hem", "Double-fold hem"),
        ("neckb%C3%A0nd sew", "Sew on the neckband"),
        ("batting", "wadding (batting)"),
        ("ballpoint", None),
    ],
)
def test_word_is_found_by_its_beginning_its_plural_and_its_other_name(
    browser: browsers.Browser, example: Path, query: str, first: str | None
) -> None:
    found = [title for title, _ in results(browser, example, query)]
    assert (found[0] if found else None) == first


def test_results_are_counted_marked_and_walked_through_by_keys(browser: browsers.Browser, example: Path) -> None:
    page = browser.new_page()
    page.goto((example / "search.html").as_uri())
    field = page.locator("#q")
    assert page.evaluate("document.activeElement.id") == "q"
    assert page.locator("#everything").is_visible()
    field.type("casing")
    page.locator("#results li").first.wait_for()
    count = page.locator("#results li").count()
    assert page.locator(".found").inner_text() == f"{count} results for “casing”"
    assert count > 3
    assert not page.locator("#everything").is_visible()
    marks = {text.lower() for text in page.locator("#results mark").all_inner_texts()}
    assert {"casing"} <= marks <= {"casing", "casings"}
    assert all(item.locator("mark").count() for item in page.locator("#results li").all())
    assert page.evaluate("location.search") == "?q=casing"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    assert page.evaluate("document.activeElement.href") == page.locator("#results a").nth(1).evaluate(
        "link => link.href"
    )
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    assert page.evaluate("document.activeElement.id") == "q"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url(lambda url: "search.html" not in url)
    page.close()


def test_words_that_stand_nowhere_leave_the_list_of_everything(browser: browsers.Browser, example: Path) -> None:
    page = browser.new_page()
    page.goto(f"{(example / 'search.html').as_uri()}?q=xyzzy")
    assert page.locator(".found").inner_text() == "Nothing found for “xyzzy”. Below is everything."
    assert page.locator("#everything").is_visible()
    page.goto(f"{(example / 'search.html').as_uri()}?q=xyzzy+casing")
    assert page.locator(".found").inner_text().startswith("Nothing has all of these words. Some of them: ")
    page.close()


def test_what_is_asked_for_is_text_and_never_markup(browser: browsers.Browser, example: Path) -> None:
    page = browser.new_page()
    page.goto(f"{(example / 'search.html').as_uri()}?q=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E%20hem")
    assert page.locator("img").count() == 0
    assert "<img src=x onerror=alert(1)> hem" in page.locator(".found").inner_text()
    page.close()


def test_without_a_script_the_page_is_a_list_of_everything(browser: browsers.Browser, example: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{(example / 'search.html').as_uri()}?q=hem")
    assert not page.locator("form.search").is_visible()
    assert page.locator("#everything .index a").first.is_visible()
    page.locator(".letters a").nth(3).click()
    assert page.url.endswith("#letter-4")
    context.close()
