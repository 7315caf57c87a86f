"""What an author types is shown on the page and never acts on it."""

from __future__ import annotations

from dataclasses import replace

from bs4 import BeautifulSoup, Tag
from publishing import sample_views as sample

from sitegen.publishing.render import render_glossary, render_tutorial
from sitegen.publishing.views import Both, Caution, Fabric, GlossaryEntry, Supply

EVIL = "<script>alert(1)</script>\"'><img src=x onerror=y> {{ 7*7 }} {% raw %}"


def test_text_of_an_author_is_shown_and_never_run() -> None:
    site = replace(sample.SITE, title=EVIL, author=EVIL, note=EVIL)
    card = replace(
        sample.CARDS[1],
        title=EVIL,
        needs=(EVIL,),
        tools=(EVIL,),
        cautions=(Caution(EVIL, EVIL),),
        stitching=tuple(
            replace(seam, what=EVIL, stitch=EVIL, press=EVIL, notes=(EVIL,)) for seam in sample.CARDS[1].stitching
        ),
        pictures=(replace(sample.PHOTO, alt=EVIL, caption=EVIL),),
        prose=sample.prose(EVIL),
    )
    view = replace(
        sample.TUTORIAL,
        site=site,
        title=EVIL,
        level=EVIL,
        learn=(EVIL,),
        sizes=(EVIL, *sample.SIZES[1:]),
        supplies=(Supply(EVIL, Both(EVIL, EVIL), Both(EVIL, EVIL), EVIL),),
        fabrics=(Fabric(EVIL, EVIL, EVIL, EVIL, advice=EVIL),),
        cards=(card,),
        cautions=(),
    )
    clean = _soup(render_tutorial(replace(sample.TUTORIAL, cards=(sample.CARDS[1],), cautions=())))
    page = _soup(render_tutorial(view))
    assert len(page.find_all("script")) == len(clean.find_all("script"))
    assert len(page.find_all("img")) == len(clean.find_all("img"))
    assert "49" not in _words(page.select_one("#step-2 h3"))
    assert "{% raw %}" in _words(page.h1)
    assert [name for tag in page.find_all(True) for name in tag.attrs if name.startswith("on")] == []
    image = page.select_one("#step-2 img")
    assert image is not None
    assert image["alt"] == EVIL


def test_term_of_an_author_is_shown_and_never_run() -> None:
    page = _soup(render_glossary(replace(sample.GLOSSARY, entries=(GlossaryEntry(EVIL, "term-x", EVIL, EVIL, EVIL),))))
    assert page.select_one("#term-x dt").get_text() == EVIL
    assert len(page.find_all("script")) == 1


def _soup(html: str) -> BeautifulSoup:
    return BeautifulSoup(html, "html.parser")


def _words(tag: Tag | None) -> str:
    assert tag is not None
    return " ".join(tag.get_text(" ").split())
