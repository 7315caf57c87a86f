"""The page that a server sends where there is none: found at any depth, in every language, in the look of the site."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import urljoin, urlsplit

import pytest
from bs4 import BeautifulSoup
from publishing.sites_of_releases import FIRST, release, soup, words
from publishing.test_languages import SITE, laid, published

WRONG = ("nothing", "tutorials/nothing/", "tutorials/tee/a/b/c.html")


def targets(page: BeautifulSoup) -> list[str]:
    found = [
        str(tag.get("href") or tag.get("src")) for tag in page.select("a[href], link[href], script[src], img[src]")
    ]
    return [each for each in found if not each.startswith("#")]


@pytest.mark.parametrize(
    ("address", "home"),
    [
        ("https://example.org", "/"),
        ("https://example.org/sewing", "/sewing/"),
        ("https://example.org/näh/a%20b/", "/n%C3%A4h/a%20b/"),
    ],
)
def test_every_link_leads_to_a_file_of_the_site_from_any_wrong_address(tmp_path: Path, address: str, home: str) -> None:
    release(tmp_path, FIRST, address=address)
    found = targets(soup(tmp_path, "404.html"))
    assert f"{home}index.html" in found
    for wrong in WRONG:
        for each in found:
            path = urlsplit(urljoin(f"https://example.org{home}{wrong}", each)).path
            assert path.startswith(home)
            assert (tmp_path / "site" / path.removeprefix(home)).is_file(), each


def test_the_page_says_what_is_the_matter_and_is_told_to_nobody(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    page = soup(tmp_path, "404.html")
    assert words(page.h1) == "There is no such page here"
    assert "404.html" not in (tmp_path / "site" / "sitemap.xml").read_text(encoding="utf-8")
    assert "404.html" not in (tmp_path / "site" / "search-data.js").read_text(encoding="utf-8")
    assert not page.select('link[rel="canonical"]')


@pytest.mark.parametrize(("address", "draft"), [("", False), ("https://example.org", True)])
def test_without_an_address_or_in_a_draft_there_is_none(tmp_path: Path, address: str, draft: bool) -> None:
    done = release(tmp_path, FIRST, address=address, draft=draft)
    assert not (tmp_path / "site" / "404.html").exists()
    assert any("404.html" in note for note in done.notes) is not draft


def test_it_speaks_every_language_of_the_site_and_leads_to_each(tmp_path: Path) -> None:
    published(laid(tmp_path / "content"), tmp_path / "site")
    assert "languages: [en, es]" in SITE["site.yaml"]
    page = soup(tmp_path, "404.html")
    spanish = page.select_one('main [lang="es"]')
    assert spanish is not None
    assert words(spanish).startswith("Aquí no hay ninguna página así.")
    links = [(words(link), link["href"]) for link in page.select("main a")]
    assert links == [("To the front page", "/sewing/index.html"), ("A la portada", "/sewing/es/index.html")]
    assert not (tmp_path / "site" / "es" / "404.html").exists()
