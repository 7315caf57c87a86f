"""The themes that come with the program: what they hold, what one takes from another, what they may not do."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from publishing import sample_views as sample

from sitegen.publishing.packed import packed_page, packed_script, packed_styles
from sitegen.publishing.render import duration, render_front, render_tutorial
from sitegen.publishing.themes import (
    DEFAULT_THEME,
    SCHEMES,
    Theme,
    ThemeNotFoundError,
    folders,
    shipped_theme,
    shipped_themes,
    weak_pairs,
)

THEMES = Path(folders.__file__).parents[3] / "themes"
VARIABLE = re.compile(r"var\(--([a-z-]+)")
SET = re.compile(r"--([a-z-]+):")
CLASS = re.compile(r"\.([a-z][a-z-]*)")


@pytest.fixture(params=shipped_themes())
def theme(request: pytest.FixtureRequest) -> Theme:
    return shipped_theme(request.param)


def sheet(theme: Theme) -> str:
    return theme.files()["style.css"].decode("utf-8")


def test_each_folder_of_themes_is_a_theme() -> None:
    assert shipped_themes() == tuple(sorted(path.name for path in THEMES.iterdir() if path.is_dir()))
    assert {DEFAULT_THEME, "cutting-table"} <= set(shipped_themes())


def test_theme_inside_an_installed_package_comes_first(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for place in ("inside", "beside"):
        (tmp_path / place / "plain").mkdir(parents=True)
        (tmp_path / place / "plain" / "theme.yaml").write_text(f"name: Plain {place}\n")
    monkeypatch.setattr(folders, "_PLACES", (tmp_path / "inside", tmp_path / "beside"))
    assert shipped_theme("plain").name == "Plain inside"


@pytest.mark.parametrize("name", ["nothing", "", "..", "../themes/workroom", "workroom/templates", "/etc"])
def test_theme_that_is_no_folder_of_themes_is_refused_with_the_names_there_are(name: str) -> None:
    with pytest.raises(ThemeNotFoundError, match="there is cutting-table, workroom"):
        shipped_theme(name)


def test_theme_says_what_it_is(theme: Theme) -> None:
    assert theme.name
    assert theme.about.endswith(".")
    assert not theme.own_colours


def test_pages_ask_for_a_style_sheet_scripts_and_an_icon(theme: Theme) -> None:
    assert {"icon.svg", "script.js", "search.js", "style.css"} <= set(theme.files())
    assert {Path(name).suffix for name in theme.files()} == {".svg", ".js", ".css"}
    assert all(theme.files().values())


def test_style_sheet_fetches_nothing(theme: Theme) -> None:
    for text in (sheet(theme), theme.drawing_rules()):
        assert "url(" not in text
        assert "@import" not in text
        assert "@font-face" not in text


def test_style_sheet_uses_no_property_that_is_not_set(theme: Theme) -> None:
    assert set(VARIABLE.findall(sheet(theme))) <= set(SET.findall(sheet(theme)))
    drawing = theme.drawing_rules()
    assert set(VARIABLE.findall(drawing)) <= set(SET.findall(drawing))


def test_script_fetches_nothing_and_writes_no_html(theme: Theme) -> None:
    script = theme.files()["script.js"].decode("utf-8")
    assert not re.search(r"\bfetch\(|XMLHttpRequest|import|innerHTML|eval|document\.write", script)


def test_colours_can_be_read_on_what_they_stand_on(theme: Theme) -> None:
    assert len(theme.pairs) >= 13
    for scheme in SCHEMES:
        named = theme.colours_of(scheme)
        assert {name for pair in theme.pairs for name in (pair.above, pair.ground)} <= named.keys()
        assert [(scheme, pair, round(found, 2)) for pair, found in weak_pairs(theme, scheme)] == []


def test_theme_names_every_colour_for_the_dark_too(theme: Theme) -> None:
    assert set(theme.colours["dark"]) == set(theme.colours["light"])


def test_paper_is_black_on_white(theme: Theme) -> None:
    printed = {name: colour.value for name, colour in theme.colours_of("print").items()}
    assert (printed["ink"], printed["paper"], printed["sheet"]) == ("#000000", "#ffffff", "#ffffff")


def test_drawings_have_the_colours_of_the_page_in_light_in_the_dark_and_on_paper(theme: Theme) -> None:
    rules = theme.drawing_rules()
    for name in ("ink", "cloth"):
        assert re.findall(rf"--{name}:(#\w+)", rules) == [theme.colours_of(scheme)[name].value for scheme in SCHEMES]
        assert f"--d-{name}:var(--{name})" in rules
    assert rules.index("prefers-color-scheme:dark") < rules.index("@media print")
    assert "--paper" not in rules


def test_home_screen_has_the_colour_of_the_paper(theme: Theme) -> None:
    paper = theme.colours_of("light")["paper"].value
    assert theme.phone_colours() == {"background_color": paper, "theme_color": paper}


def test_theme_takes_what_it_lacks_from_that_it_is_based_on() -> None:
    base, other = shipped_theme("workroom"), shipped_theme("cutting-table")
    own = {path.relative_to(THEMES / "cutting-table").as_posix() for path in (THEMES / "cutting-table").rglob("*.*")}
    assert "templates/tutorial.html" not in own
    assert other.texts["templates/tutorial.html"] is base.texts["templates/tutorial.html"]
    assert other.texts["style/4-chosen.css"] is base.texts["style/4-chosen.css"]
    assert other.texts["templates/front.html"] is not base.texts["templates/front.html"]
    assert other.texts["templates/workroom/front.html"] is base.texts["templates/front.html"]
    assert other.assets["icon.svg"] != base.assets["icon.svg"]
    assert other.colours_of("dark")["shade"] == base.colours_of("dark")["shade"]
    assert other.colours_of("dark")["paper"] != base.colours_of("dark")["paper"]


def test_theme_that_is_based_on_another_writes_nothing_twice() -> None:
    base, other = THEMES / "workroom", THEMES / "cutting-table"
    for path in other.rglob("*.*"):
        twin = base / path.relative_to(other)
        assert not twin.exists() or twin.read_bytes() != path.read_bytes(), path


def test_theme_dresses_every_class_that_the_theme_it_is_based_on_dresses() -> None:
    """A sheet that stands for another may not leave out what that one gave a layout of its own."""
    base, other = (set(CLASS.findall(sheet(shipped_theme(name)))) for name in ("workroom", "cutting-table"))
    assert len(base) > 80
    assert base - other == set()


def test_cutting_table_shows_the_tutorials_before_what_the_site_says_of_itself() -> None:
    page = BeautifulSoup(render_front(sample.FRONT, shipped_theme("cutting-table")), "html.parser")
    assert page.main is not None
    assert [" ".join(child.get("class") or [child.name]) for child in page.main.find_all(recursive=False)] == [
        "opening", "section", "about",
    ]  # fmt: skip
    (plain,) = BeautifulSoup(render_front(sample.FRONT), "html.parser").select(".opening > .prose")
    assert page.select_one(".about > .prose") == plain


def test_same_view_gives_the_same_page(theme: Theme) -> None:
    assert render_tutorial(sample.TUTORIAL, theme) == render_tutorial(sample.TUTORIAL, theme)


@pytest.mark.parametrize(("minutes", "shown"), [(0, "0 min"), (45, "45 min"), (60, "1 h"), (200, "3 h 20 min")])
def test_time_is_said_in_hours_and_minutes(minutes: int, shown: str) -> None:
    assert duration(minutes) == shown.replace(" ", "\xa0")


def test_packing_takes_nothing_that_is_read() -> None:
    styles = 'a::after { content: " · { /x "; color: red; }\n/* a remark */\n@media (min-width: 2em) and (max-height: 3em) {\n  b > i:has(+ a) ~ b { margin: calc(1em + 2px) 0 }\n}\n'
    assert packed_styles([styles]) == (
        'a::after{content:" · { /x ";color:red}@media (min-width:2em) and (max-height:3em){b>i:has(+a)~b{margin:calc(1em + 2px) 0}}\n'
    )
    assert packed_script('// remark\n(function () {\n  var a = "//no remark"; // stays\n\n})();\n') == (
        '(function () {\nvar a = "//no remark"; // stays\n})();\n'
    )
    table = "<table><tr><th>a</th><td>b</td></tr>\n<tr><td>c</td></tr></table>\n\n\n<pre>x\n\n\n&lt;y</pre>"
    assert packed_page(table) == "<table><tr><th>a<td>b<tr><td>c</tr></table><pre>x\n\n\n&lt;y</pre>"
    working = '<div><p>a</p>\n<ul class="each"><li>b</li></ul><p>c</p>\n<ol><li>d</li></ol></div>'
    assert packed_page(working) == "<div><p>a<ul class=each><li>b</ul><p>c</p><ol><li>d</ol></div>"
    words = "<div>\n<p>a</p>\n<p>b</p>\n<b>c</b>\n<ul>\n<li><p>d</p></li>\n</ul>\n<p>e</p>\n</div>"
    assert packed_page(words) == "<div><p>a</p><p>b</p><b>c</b><ul><li><p>d</ul><p>e</div>"
    photo = '<b>a</b>\n<picture>\n<source srcset="a.avif">\n<img src="a.jpg" alt="">\n</picture>\n<b>c</b>'
    assert packed_page(photo) == '<b>a</b>\n<picture><source srcset=a.avif><img src=a.jpg alt=""></picture>\n<b>c</b>'
