"""Names that no site can hold are told by a check, with their place, not first when the site is written."""

from __future__ import annotations

from pathlib import Path

import pytest
from classes.class_folders import TOTE, class_folder
from content import EXAMPLE, folder
from publishing.test_class_pages import ON_SITE, WITH_NOTE

from sitegen.checks import review
from sitegen.publishing import look_findings, publish
from sitegen.reading import ContentFolder


def told(content: ContentFolder, target: Path) -> list[tuple[str, str]]:
    """Check and file of what is told of paths, which stops a publication too."""
    findings = look_findings(review(content), content)
    done = publish(content, target, draft=False, progress=lambda *_: None)
    assert done.front is None
    assert set(findings) <= set(done.findings)
    return [(each.check, each.place.file) for each in findings]


def test_tutorial_folder_that_some_systems_keep_for_a_device_is_told(tmp_path: Path) -> None:
    content = folder(tmp_path / "in", "", steps__01_dot_yaml="title: Sew\nminutes: 5\ntext: Sew.\n")
    (tmp_path / "in" / "tutorials" / "tee").rename(tmp_path / "in" / "tutorials" / "con")
    assert told(content, tmp_path / "site") == [("bad-name", "folder/tutorials/con/tutorial.yaml")]


@pytest.mark.parametrize("name", ["evening.yml", "Evening.yaml"])
def test_two_classes_of_one_page_are_told(tmp_path: Path, name: str) -> None:
    content = class_folder(tmp_path / "in", ON_SITE, tutorial=TOTE, **WITH_NOTE)
    (tmp_path / "in" / "classes" / name).write_text(ON_SITE.replace("Evening", "Late"), encoding="utf-8")
    ((check, file),) = told(content, tmp_path / "site")
    assert check == "name-twice"
    assert file in ("folder/classes/evening.yaml", f"folder/classes/{name}")


def test_file_of_a_theme_that_no_site_can_hold_is_told(tmp_path: Path) -> None:
    content = folder(tmp_path / "in", "", steps__01_dot_yaml="title: Sew\nminutes: 5\ntext: Sew.\n")
    assets = tmp_path / "in" / "themes" / "linen" / "assets"
    assets.mkdir(parents=True)
    (assets / "a?b.woff2").write_bytes(b"font")
    (assets.parent / "theme.yaml").write_text("name: Linen\nbased_on: workroom\n", encoding="utf-8")
    with (tmp_path / "in" / "site.yaml").open("a", encoding="utf-8") as file:
        file.write("theme: linen\n")
    assert told(content, tmp_path / "site") == [("theme-broken", "folder/themes/linen")]


def test_nothing_is_told_of_the_example() -> None:
    content = ContentFolder(EXAMPLE, "content_example")
    assert look_findings(review(content), content) == ()
