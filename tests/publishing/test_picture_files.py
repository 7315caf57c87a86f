"""A picture that the old site has is taken from there, but only as it was written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from pictures.made_pictures import file_of, photo, put

from sitegen.pictures import Prepared
from sitegen.publishing import picture_files
from sitegen.publishing.picture_files import LIST_OF_PICTURES, PictureFiles


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return put(tmp_path, file_of(photo(900, 600), "JPEG"), "band.jpg")


@pytest.fixture
def site(tmp_path: Path, path: Path) -> Path:
    pictures = PictureFiles(tmp_path / "nothing")
    pictures.prepared(path)
    for name, content in pictures.files().items():
        (tmp_path / "site" / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "site" / name).write_bytes(content)
    return tmp_path / "site"


def made_anew(site: Path, path: Path, monkeypatch: pytest.MonkeyPatch) -> bool:
    """Whether the picture was prepared again; either way it must come out the same."""
    calls = []
    real = picture_files.prepare

    def counted(each: Path, *, stem: str) -> object:
        calls.append(each)
        return real(each, stem=stem)

    monkeypatch.setattr(picture_files, "prepare", counted)
    again = PictureFiles(site).prepared(path)
    assert isinstance(again, Prepared)
    assert again == real(path, stem=path.stem)
    return bool(calls)


def test_picture_of_the_old_site_is_used_again(site: Path, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert not made_anew(site, path, monkeypatch)


def test_picture_that_was_changed_in_the_site_is_made_again(
    site: Path, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    next((site / "pictures").glob("band-*")).write_bytes(b"something else")
    assert made_anew(site, path, monkeypatch)


def test_picture_whose_file_is_gone_is_made_again(site: Path, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    next((site / "pictures").glob("band-*")).unlink()
    assert made_anew(site, path, monkeypatch)


@pytest.mark.parametrize("text", ["", "[]", "{", json.dumps({"a": [["b"]]}), json.dumps({"a": 1})])
def test_broken_list_is_as_good_as_none(text: str, site: Path, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (site / LIST_OF_PICTURES).write_text(text, encoding="utf-8")
    assert made_anew(site, path, monkeypatch)


def test_other_photo_of_the_same_name_is_made(site: Path, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    put(path.parent, file_of(photo(901, 600), "JPEG"), path.name)
    assert made_anew(site, path, monkeypatch)
