"""From the example's files to finished pages: everything is there, every link leads somewhere, nothing is foreign."""

from __future__ import annotations

import re
import shutil
import xml.etree.ElementTree as ET
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE

from sitegen.checks import review
from sitegen.publishing import Outcome, publish
from sitegen.reading import ContentFolder

TUTORIALS = ("bias-bound-placemats", "boxy-tee", "gathered-skirt", "pull-on-trousers", "two-cloth-tote")
VIEWS = ("gathered-skirt/without",)
"""Further pages of a tutorial, one for each choice but the first."""
CLASSES = ("evening-tee",)
"""The classes that are on the site."""


def published(target: Path, *, draft: bool = False) -> Outcome:
    return publish(ContentFolder(EXAMPLE, "content_example"), target, draft=draft, progress=lambda *_: None)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("out") / "site"
    outcome = published(target)
    assert outcome.front == target / "index.html"
    return target


def pages(site: Path) -> list[Path]:
    return sorted(site.rglob("*.html"))


def soup(page: Path) -> BeautifulSoup:
    return BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")


def test_example_has_no_finding_of_any_severity() -> None:
    assert [each.message for each in review(ContentFolder(EXAMPLE, "content_example")).findings] == []


def test_front_page_glossary_and_a_page_for_each_tutorial(site: Path) -> None:
    names = {page.relative_to(site).as_posix() for page in pages(site)}
    around = {"index.html", "glossary.html", "techniques.html", "search.html", "changes.html"}
    instead = {"offline.html", "404.html"}
    techniques = {name for name in names if name.startswith("techniques/")}
    classes = {f"classes/{key}/index.html" for key in CLASSES}
    tutorials = {f"tutorials/{key}/index.html" for key in (*TUTORIALS, *VIEWS)}
    assert names - techniques == around | instead | classes | tutorials
    assert len(techniques) > 10


def test_every_link_leads_to_a_file_and_an_anchor_that_exist(site: Path) -> None:
    ids = {page: {tag["id"] for tag in soup(page).find_all(id=True)} for page in pages(site)}
    seen = 0
    for page in pages(site):
        for tag in soup(page).find_all(["a", "img", "link", "script", "source"]):
            sources = [tag.get("href"), tag.get("src"), *(part.split()[0] for part in _srcset(tag))]
            for address in filter(None, sources):
                parts = urlsplit(address)
                if parts.scheme in ("http", "https", "mailto"):
                    assert tag.name == "a" or tag.get("rel") == ["canonical"], (
                        f"{page.name} loads {address} from elsewhere"
                    )
                    continue
                assert not parts.scheme, address
                # What is sent for any wrong address is read from no place of its own.
                assert address.startswith(("/", "#")) is (page.name == "404.html") or parts.path == "", address
                folder = site if page.name == "404.html" else page.parent
                target = (folder / unquote(parts.path).lstrip("/")).resolve() if parts.path else page
                assert target.is_file(), f"{page} → {address}"
                assert site in target.parents
                if parts.fragment:
                    assert unquote(parts.fragment) in ids[target], f"{page} → {address}"
                seen += 1
    assert seen > 300


def _srcset(tag: object) -> list[str]:
    value = tag.get("srcset") or ""  # type: ignore[attr-defined]
    return [part.strip() for part in value.split(",") if part.strip()]


def test_ids_are_unique_on_every_page(site: Path) -> None:
    for page in pages(site):
        ids = [tag["id"] for tag in soup(page).find_all(id=True)]
        assert len(ids) == len(set(ids)), page


@pytest.mark.parametrize("key", TUTORIALS)
def test_page_has_all_that_a_student_needs(key: str, site: Path) -> None:
    page = soup(site / "tutorials" / key / "index.html")
    steps = sorted((EXAMPLE / "tutorials" / key / "steps").iterdir())
    cards = page.select("article.card")
    assert len(cards) == len(steps) >= 8
    numbers = [card.select_one(".numeral").get_text(strip=True) for card in cards]
    assert numbers == [str(number) for number in range(1, len(steps) + 1)]
    for card in cards:
        assert card.select_one("h3").get_text(strip=True)
        assert re.search(r"\d+.(min|h)", card.select_one(".time").get_text())
        assert card.select_one(".prose").get_text(strip=True)
        assert card.select_one(".look"), "what to look for"
    headings = {heading.get_text(strip=True) for heading in page.find_all("h2")}
    assert {"Fabrics", "Supplies and tools", "Cutting list", "Steps", "Take care"} <= headings
    for image in page.select(".diagram img"):
        drawing = (site / "tutorials" / key / str(image["src"])).read_text(encoding="utf-8")
        assert image.find_parent("figure").figcaption.get_text().startswith(ET.fromstring(drawing)[0].text)
        assert image["alt"]
    assert page.select(".diagram img")
    assert page.select(".picture img[alt]")
    assert page.select("details.working, tr.how")


def test_no_reference_is_left_unfilled_in_any_page(site: Path) -> None:
    for page in pages(site):
        text = soup(page).get_text()
        assert not re.search(r"\{[a-z_.]+\}", text), page


def test_numbers_in_prose_are_shown_in_both_units(site: Path) -> None:
    page = soup(site / "tutorials" / "boxy-tee" / "index.html")
    width = page.select_one('.prose a[href="#w-neckband.cut_width"]')
    assert width.get_text().replace("\xa0", " ") == "2 1/4 in (5.7 cm)"


def test_working_of_a_number_in_prose_is_on_the_page(site: Path) -> None:
    page = soup(site / "tutorials" / "boxy-tee" / "index.html")
    result = page.find(id="w-neckband.cut_length")
    rows = [row.get_text(" ", strip=True).replace("\xa0", " ") for row in result.find_all_previous("tr")[:2]]
    assert rows[0].startswith("+ 2 seam allowances of 3/8 in ( 1 cm )")
    assert re.search(r"^= neckband finished length .* 16 1/2 42 ", rows[1])
    assert "17 1/4 in 44 cm" in result.get_text(" ", strip=True)


def test_site_says_that_its_data_are_invented(site: Path) -> None:
    for page in pages(site):
        assert "invented" in soup(page).find("footer").get_text(), page


def test_draft_mark_is_on_every_page(site: Path, tmp_path: Path) -> None:
    for page in pages(site):
        assert not soup(page).select(".draft"), page
    shutil.copytree(site, tmp_path / "site")
    published(tmp_path / "site", draft=True)
    for page in pages(tmp_path / "site"):
        assert "draft" in soup(page).find("body").get_text().lower(), page


def test_same_content_gives_the_same_site(site: Path, tmp_path: Path) -> None:
    published(tmp_path / "again")
    first = {path.relative_to(site): path.read_bytes() for path in site.rglob("*") if path.is_file()}
    second = {
        path.relative_to(tmp_path / "again"): path.read_bytes()
        for path in (tmp_path / "again").rglob("*")
        if path.is_file()
    }
    assert first == second


def test_weight_of_cloth_is_printed_as_the_trade_prints_it(site: Path) -> None:
    told = soup(site / "tutorials" / "boxy-tee" / "index.html").get_text().replace("\N{NO-BREAK SPACE}", " ")
    assert "190 g/m²" in told
    assert "g/m2" not in told
