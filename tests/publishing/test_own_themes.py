"""Themes in the content folder: what they take from others, and what is said when one cannot be used."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from content import EXAMPLE, folder, messages

from sitegen.checks import review
from sitegen.findings import Finding
from sitegen.publishing import Outcome, look_findings, publish

LINEN = "name: Linen\nbased_on: workroom\n"
STEP = "title: Pin\nminutes: 5\ntext: Match the marks.\n"


def lay_out(root: Path, files: Mapping[str, str | bytes], theme: str = "linen") -> Path:
    """A content folder with one tutorial and these files in ``themes``."""
    for name, text in files.items():
        path = root / "themes" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    folder(root, "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (root / "site.yaml").write_text(f"title: Test\nauthor: Nobody\ntheme: {theme}\n", encoding="utf-8")
    return root


def published(root: Path, *, draft: bool = False) -> Outcome:
    text = (root / "site.yaml").read_text(encoding="utf-8")
    content = folder(root, "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (root / "site.yaml").write_text(text, encoding="utf-8")
    return publish(content, root.parent / "site", draft=draft, progress=lambda *_: None)


def found_in(root: Path) -> tuple[Finding, ...]:
    text = (root / "site.yaml").read_text(encoding="utf-8")
    content = folder(root, "sizes: [S]\n", steps__01_dot_yaml=STEP)
    (root / "site.yaml").write_text(text, encoding="utf-8")
    return look_findings(review(content), content)


def test_own_theme_takes_what_it_lacks_from_another(tmp_path: Path) -> None:
    root = lay_out(
        tmp_path / "content",
        {
            "linen/theme.yaml": LINEN + 'colours: {light: {accent: "#7a2f5b"}}\n',
            "linen/templates/front.html": '{% extends "workroom/front.html" %}\n'
            "{% block about %}<p class=mine>{{ site.title }}</p>{% endblock %}\n",
            "linen/style/7-mine.css": ".mine { color: var(--accent) }\n",
            "linen/assets/cloth.png": b"\x89PNG",
        },
    )
    done = published(root)
    assert done.front is not None, messages(done.findings)
    site = tmp_path / "site"
    front = BeautifulSoup(done.front.read_text(encoding="utf-8"), "html.parser")
    assert [each.get_text() for each in front.select(".opening > .mine")] == ["Test"]
    assert front.select("#tutorials")
    sheet = (site / "theme" / "style.css").read_text(encoding="utf-8")
    assert sheet.endswith(".mine{color:var(--accent)}\n")
    assert "--accent:#7a2f5b" in sheet
    assert (site / "theme" / "cloth.png").read_bytes() == b"\x89PNG"
    assert (site / "theme" / "script.js").is_file()


def test_own_theme_may_be_based_on_another_of_ones_own(tmp_path: Path) -> None:
    files = {"linen/theme.yaml": LINEN, "linen/style/7-mine.css": ".mine { color: red }\n"}
    root = lay_out(tmp_path / "content", {**files, "wool/theme.yaml": "name: Wool\nbased_on: linen\n"}, "wool")
    assert published(root).front is not None
    assert ".mine{color:red}" in (tmp_path / "site" / "theme" / "style.css").read_text(encoding="utf-8")


def examples(path: Path, begin: str) -> list[str]:
    """The blocks of YAML in a guide that begin with this."""
    text = path.read_text(encoding="utf-8")
    return re.findall(rf"```yaml\n({re.escape(begin)}.*?)```", text, re.DOTALL)


def test_examples_of_the_guides_can_be_used(tmp_path: Path) -> None:
    top = Path(__file__).parents[2]
    (theme,) = examples(top / "themes" / "README.md", "name: Linen")
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": theme})
    (look,) = examples(top / "README.md", "look:")
    picture = next((EXAMPLE / "tutorials").rglob("*.png"))
    (root / "logo.png").write_bytes(picture.read_bytes())
    assert found_in(root) == ()
    (root / "site.yaml").write_text(f"title: Test\nauthor: Nobody\n{look}", encoding="utf-8")
    assert found_in(root) == ()


@pytest.mark.parametrize(
    ("files", "said"),
    [
        ({}, ["3:8 theme-unknown: There is no theme “linen”. Known are cutting-table, workroom. Example: theme: workroom"]),
        (
            {"lines/theme.yaml": LINEN},
            [
                "3:8 theme-unknown: There is no theme “linen”. Known are cutting-table, workroom, lines. "
                "Example: theme: workroom"
            ],
        ),
        (
            {"linen/style/a.css": "a { color: red }"},
            ["1:1 theme-broken: The theme linen has no theme.yaml. The file begins: name: Plain linen"],
        ),
        (
            {"linen/theme.yaml": "name: Linen\nbased_on: workrom\n"},
            [
                "2:11 theme-unknown: There is no theme “workrom”. Known are cutting-table, workroom, linen. "
                "Example: theme: workroom"
            ],
        ),
        (
            {"linen/theme.yaml": "name: Linen\nbased_on: wool\n", "wool/theme.yaml": "name: Wool\nbased_on: linen\n"},
            [
                "2:11 theme-broken: No theme can be based on itself: here linen on wool on linen. "
                "Base one of them on another theme."
            ],
        ),
        (
            {"linen/theme.yaml": LINEN + "colour: {}\n"},
            ["3:1 unknown-key: The theme linen has no key “colour”. Did you mean colours?"],
        ),
        (
            {"linen/theme.yaml": LINEN + "contrast: {text: [ink in paper, ink on papr]}\n"},
            [
                "3:19 wrong-kind: Expected two names with on between them, found “ink in paper”. Example: ink on paper",
                "3:33 theme-broken: The theme has no colour “papr” for light. It has paper, sheet, ink, soft, line, edge, "
                "accent, wash, shade, cloth.",
            ],
        ),
        (
            {"linen/theme.yaml": LINEN + 'colours: {light: {Deep Red: "#990000"}}\n'},
            [
                "3:30 bad-name: “Deep Red” cannot name a colour. Use small letters, digits and hyphens, a letter first: accent"
            ],
        ),
        (
            {"linen/theme.yaml": LINEN + 'colours: {light: {soft: "#bbbbbb"}}\n'},
            [
                "3:26 look-contrast: The contrast of soft #bbbbbb on paper #f6f1e7 on a light screen is 1.70 to 1; "
                "text needs 4.5 to 1 at least (WCAG 2.2). The nearest soft that would do is #6e6e6e."
            ],
        ),
        (
            {"linen/theme.yaml": LINEN + "contrast: {marks: [line on sheet]}\n"},
            [
                "3:20 look-contrast: The contrast of line #443c31 on sheet #211d18 on a dark screen is 1.54 to 1; lines and "
                "signs need 3 to 1 at least (WCAG 2.2). Both colours are those of the theme it is based on.",
                "3:20 look-contrast: The contrast of line #999999 on sheet #ffffff on paper is 2.84 to 1; lines and "
                "signs need 3 to 1 at least (WCAG 2.2). Both colours are those of the theme it is based on.",
                "3:20 look-contrast: The contrast of line #d8cebd on sheet #fffdf9 on a light screen is 1.53 to 1; lines and "
                "signs need 3 to 1 at least (WCAG 2.2). Both colours are those of the theme it is based on.",
            ],
        ),
        (
            {"linen/theme.yaml": LINEN, "linen/templates/front.html": "<p>\n{% if site.title %}\n"},
            [
                "2:1 theme-broken: This template cannot be read: Unexpected end of template. Jinja was looking for the "
                "following tags: 'elif' or 'else' or 'endif'. The innermost block that needs to be closed is 'if'. "
                "Expected what Jinja reads: {{ site.title }}"
            ],
        ),
        (
            {"linen/theme.yaml": LINEN, "linen/templates/front.html": '\n{% extends "bas.html" %}\n'},
            ["2:1 theme-broken: The theme has no template “bas.html”. Did you mean base.html?"],
        ),
        (
            {"linen/theme.yaml": LINEN, "linen/style/a.css": "/* } */\na { b: '}' }\nc {\n"},
            ["3:1 theme-broken: The { on this line is never closed. Expected a } behind it, such as a { color: red }."],
        ),
        (
            {"linen/theme.yaml": LINEN, "linen/style/a.css": "a { b: c } }\n"},
            ["1:1 theme-broken: This } closes nothing. Expected a { before it, such as a { color: red }."],
        ),
        (
            {"linen/theme.yaml": LINEN, "linen/style/a.css": '@import "b.css";\na { b: url(https://example.org/c.png) }\n'},
            [
                "1:1 theme-broken: Pages fetch nothing from elsewhere. Put the file into the folder assets of the theme.",
                "2:1 theme-broken: Pages fetch nothing from elsewhere. Put the file into the folder assets of the theme.",
            ],
        ),
    ],
)  # fmt: skip
def test_theme_that_cannot_be_used_is_told_with_file_line_and_what_was_expected(
    tmp_path: Path, files: Mapping[str, str], said: list[str]
) -> None:
    root = lay_out(tmp_path / "content", files)
    assert messages(found_in(root)) == said
    done = published(root)
    assert done.front is None
    assert not (tmp_path / "site").exists()


def test_theme_without_a_page_says_which_and_how_to_have_it(tmp_path: Path) -> None:
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": "name: Linen\nbased_on: none\n"})
    found = messages(found_in(root))
    assert len(found) == 9
    assert found[0].startswith("3:8 theme-broken: The theme linen has no templates/")
    assert "Write based_on: workroom in its theme.yaml" in found[0]


@pytest.mark.parametrize("draft", [False, True])
def test_template_that_fails_while_a_page_is_made_leaves_the_old_site(tmp_path: Path, draft: bool) -> None:
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": LINEN})
    assert published(root).front is not None
    before = (tmp_path / "site" / "index.html").read_bytes()
    template = root / "themes" / "linen" / "templates" / "glossary.html"
    template.parent.mkdir()
    template.with_name("front.html").write_text("<p>\n<p>\n{{ site.titel }}\n")
    done = published(root, draft=draft)
    assert done.front is None
    (one,) = done.findings
    assert (one.check, one.place.file, one.place.line) == (
        "theme-broken",
        "folder/themes/linen/templates/front.html",
        3,
    )
    assert "titel" in one.message
    assert (tmp_path / "site" / "index.html").read_bytes() == before


@pytest.mark.parametrize(
    "text",
    [
        "{{ ''.__class__.__mro__ }}",
        "{{ site.__class__ }}",
        "{{ amount.__globals__ }}",
        "{{ 1 / 0 }}",
        "{{ site.title() }}",
        "{% for each in range(100000000) %}{% endfor %}",
        "{% macro a() %}{{ a() }}{% endmacro %}{{ a() }}",
    ],
)
def test_template_reaches_nothing_but_what_it_is_given(tmp_path: Path, text: str) -> None:
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": LINEN, "linen/templates/front.html": text})
    done = published(root)
    assert done.front is None
    assert [each.check for each in done.findings] == ["theme-broken"]
    assert done.findings[0].place.file.endswith("templates/front.html")


def test_name_of_a_theme_that_comes_with_the_program_is_refused_for_ones_own(tmp_path: Path) -> None:
    root = lay_out(tmp_path / "content", {"workroom/theme.yaml": LINEN}, "workroom")
    (one,) = found_in(root)
    assert one.check == "theme-broken"
    assert "Give your folder themes/workroom another name" in one.message


@pytest.mark.parametrize("name", ["../../themes/linen", "themes/linen", ".", "linen/templates", "/etc"])
def test_theme_is_one_name_and_no_path(tmp_path: Path, name: str) -> None:
    lay_out(tmp_path, {"linen/theme.yaml": LINEN})
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": LINEN}, name)
    assert [each.check for each in found_in(root)] == ["theme-unknown"]


def test_no_file_outside_the_content_folder_is_read(tmp_path: Path) -> None:
    secret = tmp_path / "secret.css"
    secret.write_text(".secret { color: red }")
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside" / "theme.yaml").write_text(LINEN)
    root = lay_out(
        tmp_path / "content", {"linen/theme.yaml": LINEN, "linen/assets/a.txt": "a", "linen/style/a.css": ""}
    )
    (root / "themes" / "linen" / "style" / "b.css").symlink_to(secret)
    (root / "themes" / "linen" / "assets" / "b.txt").symlink_to(secret)
    (root / "themes" / "other").symlink_to(tmp_path / "outside")
    found = found_in(root)
    assert {each.check for each in found} == {"outside-folder", "theme-broken"}
    assert {each.place.file for each in found} == {
        "folder/themes/linen/style/b.css", "folder/themes/linen/assets/b.txt", "folder/themes/other",
    }  # fmt: skip
    assert published(root).front is None


def test_link_in_a_circle_comes_to_an_end(tmp_path: Path) -> None:
    root = lay_out(tmp_path / "content", {"linen/theme.yaml": LINEN, "linen/assets/a.txt": "a"})
    (root / "themes" / "linen" / "assets" / "again").symlink_to(root / "themes" / "linen" / "assets")
    assert found_in(root) == ()


@pytest.mark.parametrize("name", ["theme.yaml", "templates/front.html", "style/a.css", "assets/a.js", "drawing.css"])
def test_file_that_is_no_text_is_told(tmp_path: Path, name: str) -> None:
    files: dict[str, str | bytes] = {"linen/theme.yaml": LINEN, f"linen/{name}": b"\x00\xff\xfe\x9d" * 9}
    found = found_in(lay_out(tmp_path / "content", files))
    assert found
    assert {each.place.file for each in found} == {f"folder/themes/linen/{name}"}
    assert all(each.unread for each in found)
