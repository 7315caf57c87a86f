"""Tutorials that lie where none is looked for: the folder that was found is told, and the name that was expected."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import HEAD, folder, messages

from sitegen.checks import review
from sitegen.reading import ContentFolder

STEP = "title: Cut\ntext: Cut.\n"


def moved(root: Path, to: str) -> list[str]:
    """What is said of the folder when ``tutorials`` lies at another place in it."""
    content = folder(root / "content", "", steps__01_dot_yaml=STEP)
    (root / "content" / "tutorials").rename(root / "between")
    (root / "content" / to).parent.mkdir(parents=True, exist_ok=True)
    (root / "between").rename(root / "content" / to)
    return [f"{each.place.file} {text}" for each in review(content).findings for text in messages((each,))]


@pytest.mark.parametrize("name", ["tutorial", "Tutorials", "lessons"])
def test_a_folder_of_another_name_is_told(tmp_path: Path, name: str) -> None:
    if name.casefold() == "tutorials" and (tmp_path / "TEST").mkdir() is None and (tmp_path / "test").exists():
        pytest.skip("here the two names are one")
    assert moved(tmp_path, name) == [
        f"folder/{name} 1:1 no-tutorials: There is no tutorial here: they are read from a folder tutorials. There is a"
        f" folder {name}: call it tutorials. Example: tutorials/lantern-tee/tutorial.yaml"
    ]


def test_a_tutorial_beside_the_folder_is_told(tmp_path: Path) -> None:
    home = tmp_path / "tee"
    (home / "steps").mkdir(parents=True)
    (tmp_path / "site.yaml").write_text("title: Test site\nauthor: Nobody\n", encoding="utf-8")
    (home / "tutorial.yaml").write_text(HEAD, encoding="utf-8")
    (home / "steps" / "01.yaml").write_text(STEP, encoding="utf-8")
    assert messages(review(ContentFolder(tmp_path, "folder")).findings) == [
        "1:1 no-tutorials: There is no tutorial here: they are read from a folder tutorials. Move tee into it."
        " Example: tutorials/lantern-tee/tutorial.yaml"
    ]


def test_other_folders_are_not_told(tmp_path: Path) -> None:
    (tmp_path / "photos").mkdir()
    (tmp_path / "site.yaml").write_text("title: Test site\nauthor: Nobody\n", encoding="utf-8")
    assert messages(review(ContentFolder(tmp_path, "folder")).findings) == [
        "1:1 no-tutorials: There is no tutorial in this folder. Example: tutorials/lantern-tee/tutorial.yaml"
    ]
