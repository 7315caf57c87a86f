"""Pages opened from disk in a real browser. Skipped where no browser is installed."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from publishing import sample_views as sample

from sitegen.publishing.markdown import render
from sitegen.publishing.number_views import number_view
from sitegen.publishing.packed import packed_page
from sitegen.publishing.render import render_front, render_glossary, render_tutorial
from sitegen.publishing.terms import PageTerms, Terms
from sitegen.publishing.themes import shipped_theme
from sitegen.publishing.view_choices import ViewChoice, ViewOption
from sitegen.publishing.views import TutorialView
from sitegen.quantities import given, parse_lengths

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
OTHER_VIEW = "tutorials/tidewater-tee/hood/index.html"
WIDTHS = (320, 360, 768, 1280)
TUTORIAL = "tutorials/tidewater-tee/index.html"
READ = "selector => document.querySelector(selector).innerText.replaceAll('\\u00a0', ' ')"


def with_terms_and_views(hood: bool = False) -> TutorialView:
    """The sample tutorial with a term in its last card, and two views."""
    terms = PageTerms(Terms(sample.GLOSSARY.entries))
    last = replace(sample.CARDS[3], prose=render("Press the calico. Then press calico again.", terms=terms.card()))
    here, there = ("../index.html", "index.html") if hood else ("index.html", "hood/index.html")
    options = (ViewOption("neckband", here, not hood), ViewOption("hood", there, hood))
    root = "../../../" if hood else "../../"
    return replace(
        sample.TUTORIAL,
        root=root,
        home=f"{root}tutorials/tidewater-tee/",
        cards=(*sample.CARDS[:3], last),
        views=(ViewChoice("neck", options),),
        terms=terms.used,
        names_differ=terms.names_differ,
    )


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("site")
    pages = {
        "index.html": render_front(sample.FRONT),
        "glossary.html": render_glossary(sample.GLOSSARY),
        TUTORIAL: packed_page(render_tutorial(with_terms_and_views())),
    }
    pages[OTHER_VIEW] = render_tutorial(with_terms_and_views(hood=True))
    for path, html in pages.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(html, encoding="utf-8")
    (folder / "theme").mkdir()
    for name, content in shipped_theme().files().items():
        (folder / "theme" / name).write_bytes(content)
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
    assert page.locator("#step-1 table thead th:visible").all_inner_texts() == ["M"]
    shown = page.locator("#step-1 tbody tr:not(.how) td:visible").all_inner_texts()
    assert [text.split() for text in shown] == [["17", "1/8", "in", "43.5", "cm"]]
    page.locator("#units-cm").check()
    assert number.inner_text().replace("\xa0", " ") == "43.5 cm"
    cell = page.locator("#step-1 tbody tr:not(.how) td").nth(2)
    assert cell.evaluate("cell => [getComputedStyle(cell).visibility, getComputedStyle(cell.children[0]).visibility]") == [
        "hidden", "visible",
    ]  # fmt: skip
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
    assert page.locator("#w-neckband\\.cut_length").is_visible()
    sums = page.locator(".cutting tr.how")
    assert not sums.first.is_visible()
    page.locator("#step-1 .prose a.n").first.click()
    assert sums.first.is_visible()
    page.goto((site / TUTORIAL).as_uri())
    page.locator(".cutting .sums input").check()
    assert sums.first.is_visible()
    assert not page.locator("#w-lower\\.turn").is_visible()
    page.locator("#step-3 .prose a.n").first.click()
    assert page.locator("#w-lower\\.turn").is_visible()
    page.close()


def test_working_of_the_chosen_size_is_shown_in_the_chosen_units(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto((site / TUTORIAL).as_uri() + "?size=M&units=both")
    page.locator("#w-chest").evaluate("one => { one.closest('details').open = true }")
    of_size = "#w-chest .each"
    assert page.evaluate(READ, of_size).split() == ["38", "1/2", "in", "98", "cm"]
    page.locator("#units-cm").evaluate("box => { box.checked = true }")
    assert page.evaluate(READ, of_size).split() == ["98", "cm"]
    page.locator("#size-all").evaluate("box => { box.checked = true }")
    assert page.evaluate(READ, of_size).split()[:6] == ["XS", "86.5", "cm", "S", "91.5", "cm"]
    page.close()


def test_address_holds_the_choice_and_brings_it_along(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri() + "?size=M&units=furlongs&other=1#step-2")
    assert page.locator("#size-3").is_checked()
    assert page.locator("#units-both").is_checked()
    assert page.url.endswith("?size=M&other=1#step-2")
    page.locator("#units-cm").check()
    assert "size=M&other=1&units=cm" in page.url
    hrefs = page.locator("a.choice").evaluate_all("links => links.map(link => link.href)")
    assert len(hrefs) == 2
    assert all("size=M" in href and "units=cm" in href for href in hrefs)
    # What a shared link says is not kept for the next visit, what was chosen by hand is.
    page.goto((site / TUTORIAL).as_uri())
    assert page.locator("#size-all").is_checked()
    assert page.locator("#units-cm").is_checked()
    page.locator("#size-2").check()
    page.goto((site / OTHER_VIEW).as_uri())
    assert page.locator("#size-2").is_checked()
    page.locator("#size-all").check()
    assert "size" not in page.url
    context.close()


def test_drawing_of_another_size_is_fetched_when_that_is_chosen(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    page.goto((site / TUTORIAL).as_uri())
    page.locator("#step-2 .diagram").scroll_into_view_if_needed()
    page.wait_for_timeout(300)
    assert [name for name in asked if name.startswith("band-") and name.endswith(".svg")] == ["band-M.svg"]
    page.locator("#size-5").check()
    page.locator("#step-2 .diagram").scroll_into_view_if_needed()
    page.wait_for_timeout(300)
    assert [name for name in asked if name.startswith("band-") and name.endswith(".svg")] == [
        "band-M.svg",
        "band-XL.svg",
    ]
    assert page.locator("#step-2 .drawn img:visible").get_attribute("src") == "drawings/band-XL.svg"
    context.close()


def cards_shown(page: browsers.Page) -> list[str]:
    return page.locator(".card:visible").evaluate_all("cards => cards.map(card => card.id)")


def test_one_step_at_a_time_works_without_a_script(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri())
    assert len(cards_shown(page)) == 4
    page.locator("#steps-one").check()
    assert cards_shown(page) == ["step-1"]
    page.locator("#step-1 .onward").click()
    assert cards_shown(page) == ["step-2"]
    assert page.locator("#step-2 .turn p").inner_text() == "step 2 of 4"
    page.emulate_media(media="print")
    assert len(cards_shown(page)) == 4
    context.close()


def test_arrow_keys_turn_the_steps_but_not_in_a_field(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri())
    page.keyboard.press("ArrowRight")
    assert not page.url.endswith("#step-2")
    page.locator("#steps-all").focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    assert page.locator("#steps-all").is_checked(), "chosen by the keys, the choice keeps them"
    page.locator("#steps-one").click()
    for key, card in (("ArrowRight", "step-2"), ("ArrowRight", "step-3"), ("End", "step-3"), ("ArrowLeft", "step-2")):
        page.keyboard.press(key)
        page.wait_for_function("card => document.querySelector('.now').id === card", arg=card)
        assert cards_shown(page) == [card]
    page.goto((site / TUTORIAL).as_uri())
    assert cards_shown(page) == ["step-2"]
    page.locator(".parts a").first.click()
    assert cards_shown(page) == ["step-2"]
    context.close()


def test_term_opens_its_meaning_by_key_and_names_change_without_a_script(browser: browsers.Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / TUTORIAL).as_uri())
    term = page.locator("#step-4 [popovertarget]")
    assert term.count() == 1
    meaning = page.locator("#t-term-calico")
    assert not meaning.is_visible()
    term.focus()
    page.keyboard.press("Enter")
    assert meaning.is_visible()
    assert "Plain unbleached cotton" in meaning.inner_text()
    assert meaning.locator("a").get_attribute("href") == "../../glossary.html#term-calico"
    page.keyboard.press("Escape")
    assert not meaning.is_visible()
    assert page.locator("#step-4 .prose").inner_text() == "Press the calico. Then press calico again."
    page.locator("#names-us").check()
    assert page.locator("#step-4 .prose").inner_text() == "Press the muslin. Then press muslin again."
    page.locator("#names-uk").check()
    assert page.locator("#step-4 .prose").inner_text() == "Press the calico. Then press calico again."
    context.close()


def test_targets_are_large_enough_for_a_thumb(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 800})
    page.goto((site / TUTORIAL).as_uri())
    small = page.locator(
        ".pick label, .choice, .share, .done, .turn a, .bar a, .contents a, summary, .sums"
    ).evaluate_all(
        "all => all.filter(one => one.offsetHeight && one.getBoundingClientRect().height < 43.9).map(one => one.outerHTML)"
    )
    assert small == []
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


def test_no_table_of_a_card_is_cut_by_its_edge_on_paper(browser: browsers.Browser, site: Path) -> None:
    """Seven rows with names of some length, in six sizes and of lengths of three figures: a card shows no overflow."""
    lengths = parse_lengths("101 1/4, 104 3/4, 108 1/2, 112 3/8, 116 5/8, 121 7/8 in")
    names = [f"right back leg piece, finished side length at line {row}" for row in range(7)]
    rows = tuple(number_view(name, name, lengths.map(lambda typed: given("side", typed.value))) for name in names)
    cards = (*(replace(card, numbers=rows) for card in sample.CARDS[:2]), *sample.CARDS[2:])
    path = site / TUTORIAL.replace("index", "long")
    path.write_text(render_tutorial(replace(sample.TUTORIAL, cards=cards)), encoding="utf-8")
    page = browser.new_page(viewport={"width": int(184 / 25.4 * 96), "height": 800})
    page.emulate_media(media="print")
    page.goto(path.as_uri())
    right = "one => one.getBoundingClientRect().right"
    for card in page.locator(".card").all()[:2]:
        table = card.locator(".recap table")
        assert table.locator("tbody tr").count() == 7
        assert table.evaluate(right) <= card.evaluate(right)
    page.close()


def test_letters_in_drawings_can_be_read_on_paper(browser: browsers.Browser, site: Path) -> None:
    """Seven points: a page of a drawing is 350 units wide, its letters are 13 high."""
    page = browser.new_page(viewport={"width": int(184 / 25.4 * 96), "height": 800})
    page.emulate_media(media="print")
    page.goto((site / TUTORIAL).as_uri())
    (site / TUTORIAL).with_name("tall.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 350 500" width="350" height="500"/>', encoding="utf-8"
    )
    widths = page.locator(".card .drawn:not(.true) > img:visible").evaluate_all(
        """async all => {
            for (const each of all) {
                Object.assign(each, { loading: "eager", width: 350, height: 500, src: "tall.svg" })
                await each.decode()
            }
            return all.map(each => each.getBoundingClientRect().width)
        }"""
    )
    assert widths
    assert min(widths) / 350 * 13 >= 7 * 96 / 72
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


def test_foot_of_a_printed_page_is_one_low_line(browser: browsers.Browser, site: Path) -> None:
    """On a phone it leaves room for the bar; on paper that room would be a sheet with nothing else on it."""
    page = browser.new_page()
    page.emulate_media(media="print")
    page.goto((site / TUTORIAL).as_uri())
    assert page.evaluate("document.querySelector('.foot').getBoundingClientRect().height") < 30
    page.close()


LEFT_ON_PAPER = """kept => {
  const cards = [...document.querySelectorAll('.card')];
  document.querySelectorAll('main > :not(.cards), .cards > :not(.card)').forEach(one => one.remove());
  cards.slice(0, -kept).forEach(one => one.remove());
  cards.slice(-kept).forEach(one => [...one.children].slice(1).forEach(part => part.remove()));
}"""
A4 = 273
"""Millimetres of an A4 sheet between its margins; the frame and the air above it take less than 10 of them."""


def sheets_of(page: browsers.Page) -> list[str]:
    pypdf = pytest.importorskip("pypdf")
    return [sheet.extract_text() for sheet in pypdf.PdfReader(BytesIO(page.pdf(format="A4"))).pages]


def test_foot_of_a_page_has_no_sheet_of_its_own(browser: browsers.Browser, site: Path) -> None:
    """The last card comes along, however much room the one before it leaves."""
    page = browser.new_page()
    page.goto((site / TUTORIAL).as_uri())
    page.evaluate(LEFT_ON_PAPER, 2)
    last = page.locator(".card h3").last.text_content() or ""
    lengths = set()
    for high in range(200, 252, 4):
        page.locator(".card > header").first.evaluate("(one, mm) => { one.style.height = mm + 'mm' }", high)
        sheets = sheets_of(page)
        lengths.add(len(sheets))
        assert last.split(": ")[-1] in sheets[-1], high
    assert lengths == {1, 2}
    page.close()


def test_frame_of_a_card_that_fills_a_sheet_is_not_closed_on_another(browser: browsers.Browser, site: Path) -> None:
    page = browser.new_page()
    page.goto((site / TUTORIAL).as_uri())
    page.evaluate(LEFT_ON_PAPER, 1)
    page.locator(".foot, .head").evaluate_all("all => all.forEach(one => one.remove())")
    for high in range(A4 - 16, A4 - 9):
        page.locator(".card > header").evaluate("(one, mm) => { one.style.height = mm + 'mm' }", high)
        assert len(sheets_of(page)) == 1, high
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
