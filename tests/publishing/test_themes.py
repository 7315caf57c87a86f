"""Finding a theme, what it may and may not do, and what a page of it weighs."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from jinja2 import UndefinedError
from markupsafe import Markup
from publishing import sample_views as sample

from sitegen.publishing import render as rendering
from sitegen.publishing.render import (
    DEFAULT_THEME,
    ThemeNotFoundError,
    duration,
    render_glossary,
    render_tutorial,
    theme_assets,
    theme_folder,
    themes,
)
from sitegen.publishing.views import StepCard


def test_theme_is_found_beside_the_package_in_a_checkout() -> None:
    assert themes()[DEFAULT_THEME] == Path(rendering.__file__).parents[2] / "themes" / DEFAULT_THEME


def test_theme_inside_an_installed_package_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for place in ("inside", "beside"):
        (tmp_path / place / "plain" / "templates").mkdir(parents=True)
    monkeypatch.setattr(rendering, "_PLACES", (tmp_path / "inside", tmp_path / "beside"))
    assert theme_folder("plain") == tmp_path / "inside" / "plain"


@pytest.mark.parametrize("name", ["nothing", "", "..", "../themes/workroom", "workroom/templates", "/etc"])
def test_theme_that_is_no_folder_of_themes_is_refused_with_the_names_there_are(name: str) -> None:
    with pytest.raises(ThemeNotFoundError, match="there is workroom"):
        theme_folder(name)


def test_name_that_the_view_lacks_is_an_error_in_a_template(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "odd" / "templates"
    folder.mkdir(parents=True)
    (folder / "glossary.html").write_text("{{ view.nothing_such }}")
    monkeypatch.setattr(rendering, "_PLACES", (tmp_path,))
    with pytest.raises(UndefinedError):
        render_glossary(sample.GLOSSARY, "odd")


def test_assets_are_one_stylesheet_one_script_and_an_icon() -> None:
    assert sorted(theme_assets()) == ["icon.svg", "script.js", "style.css"]
    assert all(path.is_file() for path in theme_assets().values())


def test_stylesheet_fetches_nothing() -> None:
    assert "url(" not in _stylesheet()
    assert "@import" not in _stylesheet()


def test_script_fetches_nothing_and_writes_no_html() -> None:
    script = theme_assets()["script.js"].read_text(encoding="utf-8")
    assert not re.search(r"fetch|XMLHttpRequest|import|innerHTML|eval|document\.write", script)


def test_same_view_gives_the_same_page() -> None:
    assert render_tutorial(sample.TUTORIAL) == render_tutorial(sample.TUTORIAL)


@pytest.mark.parametrize(("minutes", "shown"), [(0, "0 min"), (45, "45 min"), (60, "1 h"), (200, "3 h 20 min")])
def test_time_is_said_in_hours_and_minutes(minutes: int, shown: str) -> None:
    assert duration(minutes) == shown.replace(" ", "\xa0")


def test_twenty_cards_in_six_sizes_weigh_less_than_a_quarter_megabyte() -> None:
    cards = tuple(_numbered(sample.CARDS[number % 4], number) for number in range(1, 21))
    view = replace(sample.TUTORIAL, cards=cards, cautions=())
    weight = len(render_tutorial(view).encode()) + sum(path.stat().st_size for path in theme_assets().values())
    assert weight < 250_000


def _numbered(card: StepCard, number: int) -> StepCard:
    """The card again, with one drawing and a working of its own."""
    drawn = tuple(
        replace(diagram, drawings=(Markup(str(diagram.drawings[0]).replace("d-band", f"d-{number}")),))
        for diagram in card.diagrams
    )
    told = tuple(replace(view, anchor=f"{view.anchor}-{number}") for view in card.working)
    return replace(card, number=number, anchor=f"step-{number}", working=told, diagrams=drawn)


def _stylesheet() -> str:
    return theme_assets()["style.css"].read_text(encoding="utf-8")
