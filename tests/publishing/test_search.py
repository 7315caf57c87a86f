"""The search: everything can be found, and its data stay small."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE
from publishing import sample_views as sample
from publishing.sites_of_releases import words

from sitegen.publishing import publish
from sitegen.publishing.search_page import Entry, EntryKind, search_data, search_view
from sitegen.reading import ContentFolder

MOST_BYTES_A_STEP = 2_000
"""What search.html has to load for each step of the site, its share of everything else included, before packing."""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("out") / "site"
    publish(ContentFolder(EXAMPLE, "content_example"), target, draft=False, progress=lambda *_: None)
    return target


def page(site: Path, path: str) -> BeautifulSoup:
    return BeautifulSoup((site / path).read_text(encoding="utf-8"), "html.parser")


def data(site: Path) -> dict[str, Any]:
    """The data, read as the JSON that stands behind the name."""
    text = (site / "search-data.js").read_text(encoding="utf-8")
    assert text.startswith("var searchData=")
    assert text.endswith(";\n")
    found: dict[str, Any] = json.loads(text[len("var searchData=") : -2])
    return found


def addresses(site: Path) -> dict[str, list[str]]:
    """Where the data lead, by kind."""
    found = data(site)
    by_kind: dict[str, list[str]] = {kind: [] for kind in found["kinds"]}
    for kind, _, anchor, at, _ in found["entries"]:
        by_kind[found["kinds"][kind]].append(f"{found['pages'][at][1]}{anchor}")
    return by_kind


def test_everything_can_be_found(site: Path) -> None:
    found = addresses(site)
    steps = sum(1 for _ in EXAMPLE.glob("tutorials/*/steps/*.yaml"))
    assert len(found["tutorial"]) == 5
    assert len(found["step"]) == len(set(found["step"])) == steps
    assert len(found["technique"]) == sum(1 for _ in (site / "techniques").iterdir())
    assert len(found["word"]) == len(page(site, "glossary.html").select(".terms dt"))
    assert len(found["supply"]) > 30


def test_every_entry_leads_to_a_place_that_is_there(site: Path) -> None:
    ids: dict[str, set[str]] = {}
    for address in (each for kind in addresses(site).values() for each in kind):
        path, _, anchor = address.partition("#")
        if path not in ids:
            ids[path] = {str(tag["id"]) for tag in page(site, path).find_all(id=True)}
        assert not anchor or anchor in ids[path], address


def test_data_are_small_for_each_step(site: Path) -> None:
    size = (site / "search-data.js").stat().st_size
    assert size / len(addresses(site)["step"]) < MOST_BYTES_A_STEP


def test_texts_hold_what_is_read_and_no_markup(site: Path) -> None:
    found = data(site)
    texts = {title: text for _, title, _, _, text in found["entries"]}
    assert (
        "neckband to front and back neckline, zigzag, 2 mm, 2.5 mm, about 10 stitches" in texts["Sew on the neckband"]
    )
    assert not any("<" in text or "{" in text or "  " in text for text in texts.values())
    assert texts["baste (tack)"].startswith("To sew with long, loose stitches")


def test_page_lists_everything_without_a_script(site: Path) -> None:
    shown = page(site, "search.html")
    links = {str(link["href"]) for link in shown.select("#everything .index a")}
    assert links == {each for kind in addresses(site).values() for each in kind}
    assert shown.select_one("#everything")
    assert not shown.select_one("#everything").has_attr("hidden")
    assert shown.select_one("form.search").has_attr("hidden"), "a field that does nothing is not shown"
    letters = [words(link) for link in shown.select(".letters a")]
    assert letters == sorted(letters)
    for link in shown.select(".letters a"):
        assert shown.find(id=str(link["href"])[1:]) is not None


def test_number_of_results_is_announced(site: Path) -> None:
    said = page(site, "search.html").select_one("[role=status]")
    assert said is not None
    assert said["aria-live"] == "polite"


def test_search_is_reached_from_the_head_of_every_page(site: Path) -> None:
    for path in site.rglob("*.html"):
        (link,) = [
            link
            for link in page(site, path.relative_to(site).as_posix()).select("header.head nav a")
            if link.get_text() == "Search"
        ]
        address = str(link["href"])
        # What a server gives for any address that is not there can only lead from the root.
        assert address.startswith("/") is (path.name == "404.html")
        assert (path.parent / address.removeprefix("/")).resolve() == site / "search.html"


def test_alphabet_passes_over_accents_and_signs() -> None:
    titles = ("zip", "\u00c9toile", "Elastic", "“Fold”", "1x1 rib")
    view = search_view(sample.SITE, (Entry(EntryKind.TERM, title, "glossary.html") for title in titles))
    assert [(letter, [entry.title for entry in entries]) for letter, entries in view.letters] == [
        ("0–9", ["1x1 rib"]),
        ("E", ["Elastic", "\u00c9toile"]),
        ("F", ["“Fold”"]),
        ("Z", ["zip"]),
    ]


def test_a_title_counts_more_than_a_step_and_a_step_more_than_a_text() -> None:
    entries = [Entry(kind, "x", "x.html") for kind in EntryKind]
    found = json.loads(search_data(entries).removeprefix("var searchData=").removesuffix(";\n"))
    weights = dict(zip(found["kinds"], found["weights"], strict=True))
    assert weights["tutorial"] > weights["technique"] == weights["word"] > weights["step"] > weights["supply"] > 2
