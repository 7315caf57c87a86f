"""By what a finished picture is known again."""

from __future__ import annotations

from pathlib import Path

import pytest
from pictures.made_pictures import file_of, photo, put

from sitegen.pictures import recipe as rules
from sitegen.pictures import recipe_of


def test_same_file_has_the_same_recipe_under_any_name(tmp_path: Path) -> None:
    data = file_of(photo(40, 30), "JPEG")
    assert recipe_of(put(tmp_path, data, "one.jpg")) == recipe_of(put(tmp_path, data, "two.jpg"))


@pytest.mark.parametrize("what", ["file", "widths", "settings", "code"])
def test_recipe_changes_with_all_that_decides_on_the_bytes(
    what: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = put(tmp_path, file_of(photo(40, 30), "JPEG"), "one.jpg")
    before = recipe_of(path)
    widths = (20,) if what == "widths" else (480, 960, 1600)
    if what == "file":
        put(tmp_path, file_of(photo(41, 30), "JPEG"), "one.jpg")
    elif what == "settings":
        monkeypatch.setattr(rules, "SETTINGS", "other")
    elif what == "code":
        monkeypatch.setattr(rules, "_CODE", 999)
    assert recipe_of(path, widths) != before


def test_file_that_cannot_be_used_has_no_recipe(tmp_path: Path) -> None:
    assert recipe_of(tmp_path / "missing.jpg") is None
