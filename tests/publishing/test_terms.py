"""Terms of the glossary in prose: which words are meant, what opens, and the names by choice."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup
from markupsafe import Markup

from sitegen.publishing.amounts import Filled
from sitegen.publishing.markdown import render
from sitegen.publishing.terms import PageTerms, Terms
from sitegen.publishing.views import GlossaryEntry

ENTRIES = (
    GlossaryEntry("selvage", "selvage", "The woven edge.", "selvage", "selvedge"),
    GlossaryEntry("seam", "seam", "A line of stitches."),
    GlossaryEntry("seam allowance", "seam-allowance", "The strip beside the stitches."),
    GlossaryEntry("turn", "turn", "The depth of a hem."),
    GlossaryEntry("baste", "baste", "To sew with long stitches.", "baste", "tack"),
    GlossaryEntry("toile", "toile", "A trial garment.", "muslin", "toile"),
    GlossaryEntry("trial cloth", "trial-cloth", "Plain cotton.", "muslin", "calico"),
)


def opened(text: str) -> list[str]:
    """The words of a text that open a meaning, with the term that they open."""
    page = BeautifulSoup(render(text, _no_number, terms=PageTerms(Terms(ENTRIES)).card()), "html.parser")
    return [
        f"{' '.join((each.select_one('.as') or each).get_text().split())} > {each['popovertarget']}"
        for each in page.select("button")
    ]


def _no_number(name: str) -> Filled:
    return Filled(Markup("<b>seam</b>"), Markup("<b>seam</b>"))


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Cut off the selvages.", ["selvages > t-selvage"]),
        ("Cut off the selvedge.", ["selvedge > t-selvage"]),
        ("Trim each seam\nallowance, then the seams.", ["seam allowance > t-seam-allowance", "seams > t-seam"]),
        ("A wide **seam** and a seam.", ["seam > t-seam"]),
        ("The turn is deep.", ["turn > t-turn"]),
        ("Turn the band up. Then turn it over and turn the ring.", []),
        ("Tack the hem.", ["Tack > t-baste"]),
        ("Sew a tack there.", []),
        ("Sew it in muslin.", []),
        ("Sew the trial cloth.", ["trial cloth > t-trial-cloth"]),
        ("See [the seam](page.html), `seam`, {a.b} and seamless or one-seam work.", []),
        ("### The seam\n\nNothing.", []),
    ],
)
def test_only_words_that_are_meant_open_a_meaning(text: str, found: list[str]) -> None:
    assert opened(text) == found


def test_term_opens_once_on_each_card_and_its_meaning_is_on_the_page_once() -> None:
    page = PageTerms(Terms(ENTRIES))
    first, second = page.card(), page.card()
    texts = [str(render("The seam and the seam.", terms=card)) for card in (first, first, second)]
    assert [text.count("popovertarget") for text in texts] == [1, 0, 1]
    assert [entry.term for entry in page.used] == ["seam"]
    assert not page.names_differ


def test_stop_behind_a_term_is_kept_with_it() -> None:
    html = str(render("A seam. Two turns (or a turn), then toile.", terms=PageTerms(Terms(ENTRIES)).card()))
    assert BeautifulSoup(html, "html.parser").get_text().startswith("A seam. Two turns (or a turn), then")
    assert html.startswith('<p>A <span><button popovertarget="t-seam">seam</button>.</span> Two ')


def test_names_keep_number_and_capital() -> None:
    page = PageTerms(Terms(ENTRIES))
    html = render("Two selvages. Tack the hem.", terms=page.card())
    assert page.names_differ
    soup = BeautifulSoup(html, "html.parser")
    shown = [
        [(span["class"], span.get_text(), span.has_attr("hidden")) for span in button.select("span")]
        for button in soup.select("button")
    ]
    assert shown == [
        [(["as", "us"], "selvages", False), (["uk"], "selvedges", True)],
        [(["as", "uk"], "Tack", False), (["us"], "Baste", True)],
    ]


def test_site_without_glossary_marks_nothing() -> None:
    assert render("A seam.", terms=PageTerms(Terms(())).card()) == "<p>A seam.</p>\n"


def test_text_of_a_term_is_escaped() -> None:
    entries = (GlossaryEntry("a<b", "a-b", "Odd.", "a<b", "c&d"),)
    html = str(render("Take the a<b home.", terms=PageTerms(Terms(entries)).card()))
    assert "a&lt;b" in html
    assert "c&amp;d" in html
    assert "<b" not in html.replace("<button", "")
