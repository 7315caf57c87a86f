"""Every kind of page of both themes before a validator of HTML and CSS, which knows the HTML Living Standard.

The validator is vnu, the one of the W3C, from the package ``vnu-jar``; it needs Java. It is skipped where it is not
installed, but not in CI. It starts slowly, so it is asked once about all pages.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from content import EXAMPLE
from publishing import sample_views as sample
from publishing.sites_of_releases import FIRST, SECOND, release

from sitegen.publishing import publish
from sitegen.publishing.packed import packed_page
from sitegen.publishing.render import render_front, render_glossary, render_tutorial
from sitegen.publishing.themes import shipped_theme, shipped_themes
from sitegen.reading import ContentFolder

VNU = shutil.which("vnu") or shutil.which("vnu", path=str(Path(sys.executable).parent))
HERE = VNU is not None and shutil.which("java") is not None
pytestmark = pytest.mark.skipif(not HERE and "CI" not in os.environ, reason="needs vnu and java")

PASSED_OVER = "|".join(
    [
        # Pages from a disk have no origin that 'self' could be; and data in a script element is never run.
        ".*Content Security Policy.*",
        # CSS Anchor Positioning Module Level 1 (W3C, working draft), inside of @supports.
        ".*“position-(area|try-fallbacks)”.*",
    ]
)


def of_example(root: Path, theme: str, languages: str, *, draft: bool) -> None:
    """The site of the example with another theme, in these languages."""
    content = root / f"content of {theme}"
    shutil.copytree(EXAMPLE, content)
    text = (content / "site.yaml").read_text(encoding="utf-8")
    text, changed = re.subn(r"(?m)^theme: .*$", f"theme: {theme}", text)
    text, changed_too = re.subn(r"(?m)^language: en$", f"languages: [{languages}]", text)
    assert (changed, changed_too) == (1, 1)
    (content / "site.yaml").write_text(text, encoding="utf-8")
    folder = ContentFolder(content, "content_example")
    done = publish(folder, root / "pages" / theme, draft=draft, progress=lambda *_: None)
    assert done.front is not None, [each.message for each in done.findings]


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Released and draft, English and Spanish, with a change since a release, and with all that a view can hold."""
    root: Path = tmp_path_factory.mktemp("valid")
    (root / "pages").mkdir()
    of_example(root, "workroom", "en, es", draft=False)
    of_example(root, "cutting-table", "en", draft=True)
    for key in shipped_themes():
        release(root / key, FIRST, theme=key)
        release(root / key, SECOND, ratio="90%", theme=key)
        shutil.copytree(root / key / "site", root / "pages" / "released" / key)
        theme = shipped_theme(key)
        whole = {
            "front.html": render_front(sample.FRONT, theme),
            "many.html": render_front(replace(sample.FRONT, tutorials=sample.FRONT.tutorials * 4), theme),
            "glossary.html": render_glossary(sample.GLOSSARY, theme),
            "tutorial.html": render_tutorial(replace(sample.TUTORIAL, root="../"), theme),
        }
        for name, html in whole.items():
            for folder, text in (("full", html), ("packed", packed_page(html))):
                path = root / "pages" / f"{folder} {key}" / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
    return root / "pages"


def validated(*arguments: str) -> list[str]:
    """What the validator says, a line each; nothing when all is well."""
    assert VNU is not None, "npm install --global vnu-jar"
    found = subprocess.run([VNU, *arguments], capture_output=True, text=True, encoding="utf-8", check=False)
    said = (found.stdout + found.stderr).splitlines()
    assert found.returncode == (1 if any(": error: " in line for line in said) else 0), said
    return said


def test_no_page_and_no_sheet_has_an_error_or_a_warning(pages: Path) -> None:
    found = list(pages.rglob("*.html"))
    assert len(found) > 100
    assert {path.relative_to(pages).parts[0] for path in found} >= {*shipped_themes(), "released"}
    assert any("/es/" in path.as_posix() for path in found)
    said = validated("--also-check-css", "--filterpattern", PASSED_OVER, "--skip-non-html", str(pages))
    assert [line.replace(f"file:{pages.as_posix()}/", "") for line in said] == []


def test_no_drawing_has_an_error(pages: Path) -> None:
    drawings = sorted((pages / "workroom" / "drawings").glob("*.svg"))
    assert len(drawings) > 100
    assert validated("--svg", *map(str, drawings)) == []


def test_validator_finds_what_is_wrong(tmp_path: Path) -> None:
    """A caption in the middle of its figure, a table without an end, an attribute twice, a rule that is none."""
    (tmp_path / "wrong.html").write_text(
        "<!DOCTYPE html><html lang=en><title>Wrong</title><figure><p>One</p><figcaption>It</figcaption><p>Two</p></figure>"
        "<p id=a id=b>Three</p><table><tr><td>Four",
        encoding="utf-8",
    )
    (tmp_path / "wrong.css").write_text("p { colour: red }", encoding="utf-8")
    said = " ".join(validated("--also-check-css", "--filterpattern", PASSED_OVER, "--skip-non-html", str(tmp_path)))
    for words in ("child of element “figure”", "Duplicate attribute", "open elements", "colour"):
        assert words in said
