"""The choice of level or time on a front page of many tutorials, which needs no script."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup
from publishing import sample_views as sample
from publishing.whole_pages import CHROMIUM, chromium

from sitegen.publishing.render import render_front
from sitegen.publishing.themes import shipped_theme, shipped_themes
from sitegen.publishing.views import FrontView

browsers = pytest.importorskip("playwright.sync_api")
SHELF = (
    ("Beginner", 60), ("Beginner", 120), ("Practised", 121), ("Practised", 300), ("Beginner", 301), ("", None), ("Practised", 45),
)  # fmt: skip
"""Level and minutes of each tutorial."""


def front(shelf: tuple[tuple[str, int | None], ...] = SHELF) -> FrontView:
    cards = (
        replace(
            sample.FRONT.tutorials[1], key=f"t{at}", title=f"T{at}", href=f"t{at}/index.html", level=level, minutes=time
        )
        for at, (level, time) in enumerate(shelf)
    )
    return replace(sample.FRONT, tutorials=tuple(cards))


def test_choice_offers_each_level_and_each_time_that_there_is() -> None:
    soup = BeautifulSoup(render_front(front()), "html.parser")
    offered = [label.get_text().replace("\N{NO-BREAK SPACE}", " ") for label in soup.select(".filter label")]
    assert offered == ["All", "Beginner", "Practised", "up to 2 h", "2 h to 5 h", "over 5 h"]
    ids = [str(field["id"]) for field in soup.select(".filter input")]
    kinds = {name for item in soup.select(".shelf > li") for name in item["class"]}
    assert set(ids) - {"every-kind"} == kinds, "no choice is empty"
    short = BeautifulSoup(render_front(front((("Beginner", 30),) * 7)), "html.parser")
    assert [label.get_text() for label in short.select(".filter label")] == [
        "All",
        "Beginner",
        "up to 2\N{NO-BREAK SPACE}h",
    ]


def test_handful_of_tutorials_needs_no_choice() -> None:
    soup = BeautifulSoup(render_front(front(SHELF[:6])), "html.parser")
    assert soup.select(".filter") == []
    assert len(soup.select(".shelf > li")) == 6


def test_style_sheet_knows_every_kind() -> None:
    many = front(tuple((f"level {number}", 30) for number in range(9)))
    soup = BeautifulSoup(render_front(many), "html.parser")
    sheet = shipped_theme().files()["around.css"].decode()
    known = set(re.findall(r"#((?:level|time)-\d):checked", sheet))
    assert known == {f"level-{number}" for number in range(1, 7)} | {f"time-{number}" for number in (1, 2, 3)}
    assert {str(field["id"]) for field in soup.select(".filter input")} <= known | {"every-kind"}


@pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
@pytest.mark.parametrize("key", shipped_themes())
def test_choice_leaves_what_was_asked_for_without_a_script(tmp_path: Path, key: str) -> None:
    theme = shipped_theme(key)
    (tmp_path / "theme").mkdir()
    for name, content in theme.files().items():
        (tmp_path / "theme" / name).write_bytes(content)
    (tmp_path / "index.html").write_text(render_front(front(), theme), encoding="utf-8")
    with chromium(browsers) as browser:
        page: Any = browser.new_context(java_script_enabled=False).new_page()
        page.goto((tmp_path / "index.html").as_uri())

        def shown() -> list[str]:
            return [str(text) for text in page.locator(".shelf h3:visible").all_inner_texts()]

        assert shown() == ["T0", "T1", "T2", "T3", "T4", "T5", "T6"]
        for choice, left in (
            ("level-2", ["T2", "T3", "T6"]),
            ("time-1", ["T0", "T1", "T6"]),
            ("time-2", ["T2", "T3"]),
            ("time-3", ["T4"]),
            ("every-kind", ["T0", "T1", "T2", "T3", "T4", "T5", "T6"]),
        ):
            page.locator(f"#{choice}").check(force=True)
            assert shown() == left
        page.locator("#time-3").check(force=True)
        page.emulate_media(media="print")
        assert len(shown()) == 7, "paper shows all"
        assert not page.locator(".filter").is_visible()


@pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
@pytest.mark.parametrize("colours", ["light", "dark"])
@pytest.mark.parametrize("key", shipped_themes())
def test_choice_is_accessible_and_can_be_made_with_the_keyboard(tmp_path: Path, key: str, colours: str) -> None:
    """WCAG 2.2 A and AA as axe-core tests them."""
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    theme = shipped_theme(key)
    (tmp_path / "theme").mkdir()
    for name, content in theme.files().items():
        (tmp_path / "theme" / name).write_bytes(content)
    (tmp_path / "index.html").write_text(render_front(front(), theme), encoding="utf-8")
    with chromium(browsers) as browser:
        page: Any = browser.new_page(color_scheme=colours, viewport={"width": 390, "height": 844})
        page.goto((tmp_path / "index.html").as_uri())
        assert [each["id"] for each in axe.run(page).response["violations"]] == []
        page.locator("#every-kind").focus()
        page.keyboard.press("ArrowRight")
        assert page.locator(".shelf h3:visible").count() == 3
        assert [each["id"] for each in axe.run(page).response["violations"]] == []
