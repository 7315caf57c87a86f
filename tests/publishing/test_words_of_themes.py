"""The words of templates: files, places, plurals, overrides, and that no template holds words of its own."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from bs4.element import PreformattedString
from content import folder, messages
from markupsafe import Markup
from publishing.sample_views import FRONT, GLOSSARY, TUTORIAL

from sitegen.findings import Collector
from sitegen.publishing import publish
from sitegen.publishing.languages import Text, Words, asked_in, fits, places_of, words_are_there, words_in
from sitegen.publishing.render import environment_of, render_front, render_glossary, render_offline, render_tutorial
from sitegen.publishing.themes import Theme, shipped_theme, shipped_themes
from sitegen.reading import ContentFolder

THEMES = tuple(shipped_theme(key) for key in shipped_themes())
BY_SCRIPT = ("searching", "sharing", "finder", "handout")
"""Groups that are handed on as a whole: to scripts, and to printed sheets (see ``tests/handouts``)."""
MARK = "⸢⸣"
LETTERS = re.compile(r"[^\W\d_]{2,}")


def templates(theme: Theme) -> dict[str, tuple[str, object]]:
    return {name: (each.text, each.place) for name, each in theme.below("templates").items()}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.key)
def test_every_text_that_templates_ask_for_is_there(theme: Theme) -> None:
    collector = Collector()
    words_are_there(asked_in(templates(theme), environment_of(theme)), theme.words["en"], collector)
    assert not collector.findings, [f"{each.place}: {each.message}" for each in collector.findings]


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.key)
def test_every_text_is_asked_for(theme: Theme) -> None:
    asked = {each.key for each in asked_in(templates(theme), environment_of(theme))}
    never = {
        key for key in theme.words["en"]
        if key not in asked and key.partition(".")[0] not in BY_SCRIPT and key not in ("pictures.arrow", "pictures.circle")
    }  # fmt: skip
    assert not never


def test_spanish_has_every_text_with_the_same_places_and_forms() -> None:
    english, spanish = (shipped_theme().words[code] for code in ("en", "es"))
    assert set(english) == set(spanish)
    for key, text in english.items():
        assert spanish[key].places == text.places, key
        assert (spanish[key].one != spanish[key].other) or text.one == text.other or key == "finder.found", key


def test_text_fills_its_places_and_escapes_them() -> None:
    words = words_in(shipped_theme().words, "en")
    assert words("site.by", author="<b>") == "by &lt;b&gt;"
    assert words("site.by", author=Markup("<b>A</b>")) == "by <b>A</b>"
    assert words("facts.steps", count=1) == "1 step"
    assert words("facts.steps", count=0) == "0 steps"
    with pytest.raises(KeyError, match="author"):
        words("site.by")
    with pytest.raises(KeyError, match=r"site\.nothing"):
        words("site.nothing")


def test_language_that_is_not_there_is_said_in_english_and_marked() -> None:
    words = words_in(shipped_theme().words, "fr")
    assert "en" in words("site.search")
    assert words("site.search") != "Search"
    assert words_in(shipped_theme().words, "es-MX")("site.search") == "Buscar"
    assert words_in(shipped_theme().words, "en-GB")("site.search") == "Search"


def test_unknown_text_and_place_are_told_with_file_and_line(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", "", steps__01_dot_yaml="title: Pin\ntext: Pin it.\n")
    (tmp_path / "content" / "words.yaml").write_text(
        'front:\n  lern: You practise\nsite:\n  by: "by {writer}"\n', encoding="utf-8"
    )
    found = publish(content, tmp_path / "site", draft=False, progress=lambda *_: None).findings
    told = [each for each in messages(found) if "theme-words" in each]
    assert told == [
        "2:9 theme-words: No page has a text called front.lern. Did you mean front.learn?",
        "4:8 theme-words: The text site.by has no place {writer}; there is {author}.",
    ]
    assert {each.place.file for each in found if each.check == "theme-words"} == {"folder/words.yaml"}


def test_template_of_an_author_that_asks_for_what_is_not_there_is_told(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", "", steps__01_dot_yaml="title: Pin\ntext: Pin it.\n")
    home = tmp_path / "content"
    (home / "site.yaml").write_text("title: Test site\nauthor: Nobody\ntheme: linen\n", encoding="utf-8")
    (home / "themes" / "linen" / "templates").mkdir(parents=True)
    (home / "themes" / "linen" / "theme.yaml").write_text("name: Linen\nbased_on: workroom\n", encoding="utf-8")
    (home / "themes" / "linen" / "templates" / "offline.html").write_text(
        '<h1>{{ t("offline.heding") }}</h1>\n<p>{{ t("site.by") }}</p>\n', encoding="utf-8"
    )
    found = publish(content, tmp_path / "site", draft=False, progress=lambda *_: None).findings
    assert [each for each in messages(found) if "theme-words" in each] == [
        "1:1 theme-words: The theme has no text called offline.heding. Nearest: offline.heading.",
        "2:1 theme-words: The text site.by has {author}, which is not given here.",
    ]


def test_theme_takes_the_words_that_it_lacks_from_its_base(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", "", steps__01_dot_yaml="title: Pin\ntext: Pin it.\n")
    home = tmp_path / "content"
    (home / "site.yaml").write_text("title: Test site\nauthor: Nobody\ntheme: linen\n", encoding="utf-8")
    (home / "themes" / "linen" / "words").mkdir(parents=True)
    (home / "themes" / "linen" / "theme.yaml").write_text("name: Linen\nbased_on: workroom\n", encoding="utf-8")
    (home / "themes" / "linen" / "words" / "en.yaml").write_text("site: {search: Look for}\n", encoding="utf-8")
    outcome = publish(ContentFolder(home, "folder"), tmp_path / "site", draft=False, progress=lambda *_: None)
    assert outcome.front is not None, outcome.findings
    page = BeautifulSoup(outcome.front.read_text(encoding="utf-8"), "html.parser")
    links = [link.get_text() for link in page.select("header nav a")]
    assert "Look for" in links
    assert "Tutorials" in links
    assert content.exists("site.yaml")


def test_author_puts_a_text_instead(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", "", steps__01_dot_yaml="title: Pin\ntext: Pin it.\n")
    (tmp_path / "content" / "words.yaml").write_text("site: {tutorials: Patterns}\n", encoding="utf-8")
    outcome = publish(content, tmp_path / "site", draft=False, progress=lambda *_: None)
    assert outcome.front is not None, outcome.findings
    page = BeautifulSoup(outcome.front.read_text(encoding="utf-8"), "html.parser")
    assert page.select_one("#tutorials").get_text() == "Patterns"  # type: ignore[union-attr]


def marked(theme: Theme) -> Theme:
    """The theme with texts of which nothing is left but marks and places."""

    def only_marks(text: str) -> str:
        return MARK + "".join(f" {{{name}}} " for name in places_of(text)) + MARK

    words = {
        key: Text(only_marks(text.other), only_marks(text.one), text.place)
        for key, text in theme.words["en"].items()
    }  # fmt: skip
    return replace(theme, words={"en": words})


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.key)
def test_no_template_holds_words_of_its_own(theme: Theme) -> None:
    """What is left of the text of a template without its tags and expressions has no letters."""
    for name, each in theme.below("templates").items():
        text = re.sub(r"\{#.*?#\}|\{% block kind %\}.*?\{% endblock %\}", "", each.text, flags=re.DOTALL)
        text = re.sub(r"\{%.*?%\}|\{\{.*?\}\}", "", text, flags=re.DOTALL)
        page = BeautifulSoup(text, "html.parser")
        seen = [part for part in page.find_all(string=True) if not isinstance(part, PreformattedString)]
        attributes = [
            str(value)
            for element in page.find_all(True)
            for attribute, value in element.attrs.items()
            if attribute in ("aria-label", "alt", "title", "placeholder")
        ]
        left = [word for part in (*seen, *attributes) for word in LETTERS.findall(part)]
        assert not left, f"{name}: {left}"
        quoted = re.findall(r'"([A-Z][a-z]+(?: [a-z]+)*)" (?:if|else)|else "([a-z A-Z]+)"', each.text)
        assert not [each for each in quoted if "summary" not in each], f"{name}: {quoted}"


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.key)
def test_page_of_marked_words_says_nothing_else_but_its_data(theme: Theme) -> None:
    """Words of the page that stand in no data of the sample come out of a template."""
    plain, without = shipped_theme(theme.key), marked(theme)
    pages = (
        (render_front, FRONT),
        (render_tutorial, TUTORIAL),
        (render_glossary, GLOSSARY),
        (render_offline, TUTORIAL.site),
    )
    for render, view in pages:
        told = set(LETTERS.findall(text_of(render(view, without))))  # type: ignore[operator]
        known = set(LETTERS.findall(repr(view))) | {"in", "cm", "mm", "min"}
        assert told <= known, sorted(told - known)
        assert MARK in render(view, without)  # type: ignore[operator]
        assert MARK not in render(view, plain)  # type: ignore[operator]


def text_of(html: str) -> str:
    page = BeautifulSoup(html, "html.parser")
    for element in page.find_all(["script", "style"]):
        element.extract()
    return page.get_text(" ")


def test_words_are_held_against_the_english_ones() -> None:
    english = {"a.b": Text("{count} steps", "{count} step", replace_place())}
    collector = Collector()
    fits({"a.b": Text("{number} pasos", "{number} paso", replace_place())}, english, collector)
    assert [each.said for each in collector.findings] == ["{number}"]
    assert Words(english, english, "en", "en")("a.b", count=1) == "1 step"


def replace_place() -> object:
    return next(iter(shipped_theme().words["en"].values())).place
