"""Whole pages: what stands on them, that they need nothing from elsewhere, and that author text stays text."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from publishing import sample_views as sample
from publishing.whole_pages import lay_out

from sitegen.publishing.render import (
    render_front,
    render_glossary,
    render_tutorial,
)
from sitegen.publishing.themes import shipped_theme
from sitegen.publishing.views import (
    MOST_SIZES,
    Both,
    NumberTable,
    NumberView,
    SiteView,
)
from sitegen.quantities import System

PAGES: dict[str, Callable[[SiteView], str]] = {
    "front": lambda site: render_front(replace(sample.FRONT, site=site)),
    "front without tutorials": lambda site: render_front(replace(sample.FRONT, site=site, tutorials=())),
    "tutorial": lambda site: render_tutorial(replace(sample.TUTORIAL, site=site)),
    "tutorial of one size": lambda site: render_tutorial(replace(sample.SINGLE, site=site)),
    "glossary": lambda site: render_glossary(replace(sample.GLOSSARY, site=site)),
    "glossary without terms": lambda site: render_glossary(replace(sample.GLOSSARY, site=site, entries=())),
}


@pytest.fixture(params=sorted(PAGES))
def page(request: pytest.FixtureRequest) -> BeautifulSoup:
    return soup(PAGES[request.param](sample.SITE))


@pytest.fixture(scope="module")
def tutorial() -> BeautifulSoup:
    return soup(render_tutorial(sample.TUTORIAL))


def soup(html: str) -> BeautifulSoup:
    return BeautifulSoup(html, "html.parser")


def words(tag: Tag | None) -> str:
    assert tag is not None
    return " ".join(tag.get_text(" ").split())


# Every page


@pytest.mark.parametrize("name", sorted(PAGES))
def test_every_tag_that_is_opened_is_closed(name: str) -> None:
    class Balance(HTMLParser):
        def __init__(self) -> None:
            super().__init__()
            self.open: list[str] = []

        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            if tag not in {"meta", "link", "input", "img", "source", "br", "hr"}:
                self.open.append(tag)

        def handle_endtag(self, tag: str) -> None:
            assert self.open.pop() == tag

        def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            pass

    balance = Balance()
    balance.feed(PAGES[name](replace(sample.SITE, draft=True)))
    assert balance.open == []


def test_page_loads_nothing_from_elsewhere(page: BeautifulSoup) -> None:
    loaded = [str(tag.get("src") or tag.get("href")) for tag in page.find_all(["script", "link", "img", "iframe"])]
    loaded += [part.split()[0] for tag in page.find_all(srcset=True) for part in str(tag["srcset"]).split(",")]
    assert loaded
    assert [url for url in loaded if url.startswith("/") or ":" in url] == []


def test_policy_lets_in_only_files_of_the_site(page: BeautifulSoup) -> None:
    meta = page.find("meta", attrs={"http-equiv": "Content-Security-Policy"})
    assert meta is not None
    rules = dict(part.strip().split(" ", 1) for part in str(meta["content"]).split(";"))
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == rules["style-src"] == rules["img-src"] == "'self'"
    assert rules["base-uri"] == rules["form-action"] == "'none'"


def test_nothing_stands_on_the_page_that_the_policy_would_block(page: BeautifulSoup) -> None:
    assert page.find(style=True) is None
    assert page.find("style") is None
    assert [script for script in page.find_all("script") if not script.get("src") or script.get("type")] == []
    assert [name for tag in page.find_all(True) for name in tag.attrs if name.startswith("on")] == []


def test_ids_are_said_once(page: BeautifulSoup) -> None:
    ids = [tag["id"] for tag in page.find_all(id=True)]
    assert len(ids) == len(set(ids))


def test_links_within_the_page_arrive(page: BeautifulSoup) -> None:
    ids = {tag["id"] for tag in page.find_all(id=True)}
    within = [str(tag["href"])[1:] for tag in page.find_all(href=True) if str(tag["href"]).startswith("#")]
    assert [target for target in within if target not in ids] == []
    named = [name for tag in page.find_all(True) for name in str(tag.get("aria-labelledby") or "").split()]
    assert [target for target in named if target not in ids] == []


def test_headings_leave_no_level_out(page: BeautifulSoup) -> None:
    levels = [int(tag.name[1]) for tag in page.find_all(re.compile(r"h[1-6]"))]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_page_says_language_title_author_and_note(page: BeautifulSoup) -> None:
    assert page.html is not None
    assert page.html["lang"] == "en"
    assert "The Sewing Table" in words(page.title)
    assert (
        words(page.footer)
        == "The Sewing Table, by Robin Example Invented sample content. Measure your own body before you cut."
    )


@pytest.mark.parametrize("name", sorted(PAGES))
def test_draft_mark_stands_on_every_page_on_screen_and_on_paper(name: str) -> None:
    drafted = soup(PAGES[name](replace(sample.SITE, draft=True)))
    assert words(drafted.select_one(".draft")).startswith("Draft Not released yet")
    assert words(drafted.select_one(".draft-print")) == "Draft"
    assert words(drafted.title).startswith("Draft: ")
    assert drafted.find("meta", attrs={"name": "robots", "content": "noindex"})


def test_released_page_bears_no_draft_mark(page: BeautifulSoup) -> None:
    assert page.select(".draft, .draft-print") == []
    assert "Draft" not in words(page.title)


def test_paper_shows_the_draft_mark_on_each_page() -> None:
    printed = _stylesheet("draft.css").partition("@media print")[2]
    assert re.search(r"\.draft-print\{[^}]*position:fixed", printed)
    released, drafted = (
        render_tutorial(replace(sample.TUTORIAL, site=replace(sample.SITE, draft=draft))) for draft in (False, True)
    )
    assert "theme/draft.css" in drafted
    assert "theme/draft.css" not in released


# The tutorial


def test_cards_stand_in_order_with_number_title_and_time(tutorial: BeautifulSoup) -> None:
    heads = [
        (words(card.select_one(".numeral")), words(card.h3), words(card.select_one("header")))
        for card in tutorial.select(".card")
    ]
    assert [head[0] for head in heads] == ["1", "2", "3", "4"]
    assert heads[1][1] == "Step 2: Sew on the neckband"
    assert "about 1 h 20 min" in heads[1][2]
    assert "about" not in heads[3][2]


def test_cards_lead_to_the_one_before_and_the_one_after(tutorial: BeautifulSoup) -> None:
    turns = [[link["href"] for link in card.select(".turn a")] for card in tutorial.select(".card")]
    assert turns == [["#step-2"], ["#step-1", "#step-3"], ["#step-2", "#step-4"], ["#step-3"]]


def test_only_card_leads_nowhere() -> None:
    assert soup(render_tutorial(sample.SINGLE)).select(".turn") == []


def test_card_holds_everything_it_was_given(tutorial: BeautifulSoup) -> None:
    card = words(tutorial.select_one("#step-2"))
    for text in (
        "the neckband from card 1",
        "ballpoint needle 80/12",
        "Iron. Rest it on its heel",
        "narrow zigzag",
        "2.5 mm, about 10 to the inch",
        "down, towards the top",
        "The band is stretched to the neckline, evenly",
        "in the video at 14:20",
        "The band is shorter than the neckline",
        "(Drawn, not photographed.)",
        "What to look for The band lies flat",
        "If it went wrong Ripples",
    ):
        assert text in card


def test_other_way_of_a_step_stands_on_its_card_with_when_and_how(tutorial: BeautifulSoup) -> None:
    (other,) = tutorial.select(".other")
    assert other.find_parent("article") == tutorial.select_one("#step-3")
    assert words(other).startswith("Another way If you have no twin needle. Sew 3/4 in ( 1.9 cm ) from the fold with")
    assert words(other.select_one(".seam")) == "Lower hem stitch zigzag press flat"


def test_card_has_a_box_to_tick_with_a_name_of_its_own(tutorial: BeautifulSoup) -> None:
    names = [words(box.find_parent("label")) for box in tutorial.select(".done input")]
    assert names[0] == "Done : step 1"
    assert len(set(names)) == 4


def test_number_in_prose_leads_to_its_working(tutorial: BeautifulSoup) -> None:
    link = tutorial.select_one("#step-2 .prose a.n")
    assert link is not None
    target = tutorial.find(id=str(link["href"])[1:])
    assert isinstance(target, Tag)
    assert target.find_parent("table") is not None
    sums = [words(row) for row in target.find_parent("tbody").select("tr.how")]
    assert "× neckband ratio 80%" in sums
    assert sums[-1] == "× a quarter 25%"


def test_working_is_told_on_one_card_and_named_on_the_others(tutorial: BeautifulSoup) -> None:
    told = words(tutorial.select_one("#step-1 .working"))
    assert told == ("How this number was got neckband cut width worked out with the cutting list")
    row = tutorial.select_one("#step-1 tbody th a")
    assert (row["href"], words(row)) == ("#w-neckband.cut_length", "neckband cut length")


def test_line_of_working_comes_for_every_size_in_both_systems(tutorial: BeautifulSoup) -> None:
    result = tutorial.select_one("#w-neckband\\.cut_length")
    rows = [row for row in reversed(result.find_previous_siblings("tr")) if "how" in row.get("class", [])]
    assert [[words(cell) for cell in row.select("th, td")][:2] for row in rows] == [
        ["front neckline", "11 3/4 30"],
        ["+ back neckline", "7 1/4 18.5"],
        ["= neckband opening", "19 48.5"],
        ["× neckband ratio 80%"],
        ["= neckband finished length", "15 1/4 38.5*"],
        ["+ 2 seam allowances of 3/8 in ( 1 cm )"],
    ]
    assert [len(row.select("td")) for row in rows] == [6, 6, 6, 1, 6, 1]
    assert words(result).startswith("=* neckband cut length 16 in 40.5 cm")


def test_table_of_a_card_lists_only_what_differs_by_size(tutorial: BeautifulSoup) -> None:
    rows = [words(row.th) for row in tutorial.select("#step-1 table tbody tr")]
    assert rows == ["neckband cut length"]


def test_tables_have_a_column_for_each_size(tutorial: BeautifulSoup) -> None:
    for table in tutorial.select("table.sizes"):
        heads = [words(head) for head in table.select("thead th")]
        assert heads == list(sample.SIZES)
        for row in table.select("tbody:not(.how) tr:not(.piece, .how)"):
            assert sum(int(str(cell.get("colspan", 1))) for cell in row.select("td")) == len(sample.SIZES)


def test_number_alike_in_all_sizes_says_so_in_the_table(tutorial: BeautifulSoup) -> None:
    assert "height 66 1/8 in ( 168 cm ) for every size" in words(tutorial.select_one("#sizes").find_parent("section"))


def test_column_of_a_size_can_be_shown_alone(tutorial: BeautifulSoup) -> None:
    """The stylesheet counts the cells of a row: as many as there are sizes, or one that is always shown."""
    for table in tutorial.select("table.sizes"):
        assert words(table.select("thead th")[2]) == "M"
        for row in table.select("tbody tr"):
            cells = row.find_all("td", recursive=False)
            assert len(cells) == len(sample.SIZES) or all(cell.has_attr("colspan") for cell in cells)


def test_choice_of_size_and_units_is_offered_with_labels(tutorial: BeautifulSoup) -> None:
    groups = {
        words(group.legend): [words(label) for label in group.select("label")] for group in tutorial.select("fieldset")
    }
    assert groups == {
        "Size": ["All", *sample.SIZES],
        "Units": ["Both", "Inches", "Centimetres"],
        "Show": ["All steps", "One at a time"],
    }
    assert [box["id"] for box in tutorial.select("fieldset input[checked]")] == ["size-all", "units-both", "steps-all"]


def test_units_of_the_site_come_first() -> None:
    page = soup(render_tutorial(replace(sample.TUTORIAL, site=replace(sample.SITE, units_first=System.CENTIMETRES))))
    assert [box["id"] for box in page.select('input[name="units"]')] == ["units-both", "units-cm", "units-in"]
    assert words(page.select_one(".sizes tbody td")) == "78.5 cm 31 in"


def test_project_of_one_size_offers_no_size() -> None:
    page = soup(render_tutorial(sample.SINGLE))
    assert page.select('input[name="size"]') == []
    assert page.select('input[name="units"]') != []
    assert page.select(".printed") == []


def test_more_sizes_than_the_stylesheet_knows_are_all_shown_without_a_choice() -> None:
    names = tuple(f"size{number}" for number in range(MOST_SIZES + 1))
    many = NumberView("body.bust", "bust", tuple(Both(f"{number} in", f"{number} cm") for number in range(len(names))))
    page = soup(render_tutorial(replace(sample.SINGLE, sizes=names, chart=NumberTable((many,)))))
    assert page.select('input[name="size"]') == []
    assert len(page.select("table.sizes tbody td")) == len(names)


def test_stylesheet_knows_every_size_that_can_be_chosen() -> None:
    few, many = _stylesheet(), _stylesheet("many-sizes.css")
    for number in range(1, MOST_SIZES + 1):
        of_size = (
            f"body:has(#size-{number}:checked) :is([hidden]>b,.each>*,.sizes thead th,.sizes tbody td)"
            f":not([colspan],:nth-of-type({number}))"
        )
        shared = re.search(rf"{re.escape(of_size)}(?:,[^{{}}]+)?{{([^{{}}]+)}}", few if number <= 8 else many)
        assert shared is not None
        assert shared[1] == "display:none"


@pytest.mark.parametrize(("sizes", "sheets"), [(8, ["style.css"]), (9, ["many-sizes.css", "style.css"])])
def test_page_of_more_than_eight_sizes_asks_for_the_sheet_that_knows_them(sizes: int, sheets: list[str]) -> None:
    names = tuple(f"size{number}" for number in range(sizes))
    page = soup(render_tutorial(replace(sample.SINGLE, sizes=names)))
    assert [str(link["href"]).rpartition("/")[2] for link in page.select('link[rel="stylesheet"]')] == sheets


def test_drawing_by_size_shows_one_for_all_and_keeps_the_others_ready(tutorial: BeautifulSoup) -> None:
    drawings = tutorial.select("#step-2 .drawn.each img")
    assert [drawing.has_attr("hidden") for drawing in drawings] == [True, True, False, True, True, True]
    assert {(image["loading"], image["width"], image["height"]) for image in drawings} == {("lazy", "340", "210")}
    assert drawings[5]["alt"] == "size XXL"
    assert drawings[5]["src"] == "drawings/band-XXL.svg"
    caption = tutorial.select_one("#step-2 .diagram figcaption").get_text().replace("\N{NO-BREAK SPACE}", " ")
    assert caption == "The neckband and its quarter marks, to scale, drawn for size M"
    told = tutorial.select_one("#step-2 .diagram details")
    assert [each.get_text() for each in told.select("[hidden] b")] == ["16", "17", "18", "18", "19", "19"]


def test_picture_offers_its_widths_keeps_its_place_and_is_described(tutorial: BeautifulSoup) -> None:
    image = tutorial.select_one("#step-2 img")
    assert image is not None
    assert image["alt"] == sample.PHOTO.alt
    assert (image["width"], image["height"]) == ("960", "640")
    assert image["src"] == sample.PHOTO.src
    source = tutorial.select_one("#step-2 source")
    assert source is not None
    assert source["type"] == "image/webp"
    assert source["srcset"] == sample.PHOTO.sources[0].srcset
    assert not image.has_attr("srcset"), "a browser that reads no other format gets one width"
    alone = replace(sample.PHOTO, sources=())
    shown = soup(render_tutorial(replace(sample.TUTORIAL, picture=alone))).select_one(".cover img")
    assert shown["srcset"] == alone.srcset


def test_cautions_are_gathered_and_lead_to_their_cards(tutorial: BeautifulSoup) -> None:
    gathered = tutorial.select_one("#care").find_parent("section")
    assert [(link["href"], words(link)) for link in gathered.select("a")] == [
        ("#step-1", "1"),
        ("#step-2", "2"),
        ("#step-2", "2"),
        ("#step-3", "3"),
        ("#step-1", "1"),
    ]


def test_whole_tutorial_is_there(tutorial: BeautifulSoup) -> None:
    text = words(tutorial.main)
    for part in (
        "Cut jersey on the fold without stretching it.",
        "40% across, 15% down",
        "60 in ( 152.5 cm )",
        "Choose one that springs back",
        "Ballpoint needle , 80/12, 1 for sewing the jersey",
        "A longer front",
        "Front cut 1 on fold, main",
        "about 2 h 25 min",
    ):
        assert part in text


def test_contents_lead_to_every_part_that_is_there(tutorial: BeautifulSoup) -> None:
    assert [link["href"] for link in tutorial.select(".parts a")] == [
        "#before",
        "#sizes",
        "#fabrics",
        "#supplies",
        "#care",
        "#changes",
        "#cutting",
    ]
    assert soup(render_tutorial(sample.SINGLE)).select(".parts") == []


def test_cautions_lead_to_their_steps_in_the_plural_where_there_are_several() -> None:
    page = soup(render_tutorial(sample.TUTORIAL))
    ends = {
        len(caution.select("a")): re.search(r"(Steps?)\u00a0([\d, ]+)\.$", caution.get_text().strip())
        for caution in page.select("[aria-labelledby] > .cautions > li")
    }
    assert set(ends) >= {1, 2}
    for count, found in ends.items():
        assert found is not None
        assert found[1] == ("Step" if count == 1 else "Steps")
        assert len(found[2].split(",")) == count


# Front page and glossary


def test_front_page_lists_tutorials_in_order() -> None:
    page = soup(render_front(sample.FRONT))
    assert [(words(link), link["href"]) for link in page.select(".shelf h3 a")] == [
        ("Tidewater tee", "tutorials/tidewater-tee/index.html"),
        ("Harvest bag", "tutorials/harvest-bag/index.html"),
    ]
    assert "sizes XS to XXL" in words(page.select_one(".shelf li"))
    assert "first summer of sewing" in words(page.select_one(".lead"))


@pytest.mark.parametrize(
    ("techniques", "terms", "said"),
    [
        (2, 3, "2 tutorials in 5 steps, with 2 techniques and 3 words explained."),
        (1, 1, "2 tutorials in 5 steps, with 1 technique and 1 word explained."),
        (0, 2, "2 tutorials in 5 steps, with 2 words explained."),
        (2, 0, "2 tutorials in 5 steps, with 2 techniques."),
        (0, 0, "2 tutorials in 5 steps."),
    ],
)
def test_front_page_tells_in_one_sentence_what_there_is(techniques: int, terms: int, said: str) -> None:
    site = replace(sample.SITE, techniques=True, glossary=True, searchable=False)
    page = soup(render_front(replace(sample.FRONT, site=site, techniques=techniques, terms=terms)))
    counts = page.select_one(".counts")
    assert counts is not None
    assert counts.get_text().strip() == said


def test_glossary_gives_meaning_and_both_names() -> None:
    page = soup(render_glossary(sample.GLOSSARY))
    assert words(page.select_one("#term-calico")) == (
        "Calico Plain unbleached cotton, used to try out a garment. in the US: muslin , in the UK: calico"
    )
    assert page.select("#term-ease .names") == []


def test_site_without_terms_leads_to_no_glossary() -> None:
    page = soup(render_front(replace(sample.FRONT, site=replace(sample.SITE, glossary=False))))
    assert page.find("a", href="glossary.html") is None


def _stylesheet(name: str = "style.css") -> str:
    return shipped_theme().files()[name].decode("utf-8")


def test_sum_of_a_number_that_is_alike_is_that_of_the_size_that_is_chosen(tmp_path: Path) -> None:
    """The ease is 4 in in every size, but not of the same girth: each size has its own sum."""
    page, _ = lay_out(tmp_path)
    soup = BeautifulSoup(page.read_text(encoding="utf-8"), "html.parser")
    (own,) = soup.find_all(id="w-round.ease")
    assert [cell.get_text(" ", strip=True) for cell in own.select("td b.in")] == ["4\xa0in"]
    # The end tags of rows and cells are left out, so that what follows stands inside of them here.
    body, girth = own.find_all_previous("tr", class_="how", limit=2)
    assert [row.th.find(string=True).strip() for row in (girth, body)] == ["round finished girth", "− bust measurement"]
    told = [[cell.find(string=True).strip() for cell in row.find_all("td", limit=3)] for row in (girth, body)]
    assert told == [["38", "40", "42"], ["34", "36", "38"]]
