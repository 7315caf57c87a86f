"""A finished picture is kept and used again, and only if it is as it was written."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from pictures.made_pictures import file_of, made, photo, trouble

from sitegen.pictures import Prepared, prepare, store


@pytest.fixture
def data() -> bytes:
    """A photo."""
    return file_of(photo(700, 500), "JPEG")


def no_decoding(monkeypatch: pytest.MonkeyPatch) -> None:
    """From here on no picture can be read."""

    def fail(*_: object) -> None:
        raise AssertionError("the picture was made again")

    monkeypatch.setattr("sitegen.pictures.photo.pixels", fail)


def test_kept_picture_is_the_same_and_is_not_made_again(
    tmp_path: Path, data: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache = tmp_path / "deep/cache"
    fresh = made(tmp_path, data)
    assert made(tmp_path, data, cache=cache) == fresh
    assert len(list(cache.iterdir())) == 1
    no_decoding(monkeypatch)
    assert made(tmp_path, data, cache=cache) == fresh


def test_another_name_uses_the_same_kept_picture(tmp_path: Path, data: bytes, monkeypatch: pytest.MonkeyPatch) -> None:
    made(tmp_path, data, cache=tmp_path / "cache")
    no_decoding(monkeypatch)
    other = prepare(tmp_path / "photo.jpg", stem="cuff", cache=tmp_path / "cache")
    assert isinstance(other, Prepared)
    assert all(source.name.startswith("cuff-") for source in other.sources)


@pytest.mark.parametrize("change", ["source", "widths", "settings", "code", "library"])
def test_picture_is_made_again_when_anything_that_decides_on_it_changes(
    tmp_path: Path, data: bytes, monkeypatch: pytest.MonkeyPatch, change: str
) -> None:
    cache = tmp_path / "cache"
    made(tmp_path, data, cache=cache)
    widths = (480, 960, 1600)
    if change == "source":
        data = file_of(photo(700, 501), "JPEG")
    elif change == "widths":
        widths = (480, 960)
    elif change == "settings":
        monkeypatch.setattr(store, "SETTINGS", "other")
    elif change == "code":
        monkeypatch.setattr(store, "_CODE", 999)
    else:
        monkeypatch.setattr("PIL.__version__", "999")
    made(tmp_path, data, cache=cache, widths=widths)
    assert len(list(cache.iterdir())) == 2


@pytest.mark.parametrize("fault", ["empty", "cut", "longer", "one bit", "garbage", "other entry"])
def test_broken_entry_is_made_again(tmp_path: Path, data: bytes, fault: str) -> None:
    cache = tmp_path / "cache"
    fresh = made(tmp_path, data, cache=cache)
    (entry,) = cache.iterdir()
    whole = entry.read_bytes()
    middle = len(whole) // 2
    entry.write_bytes(
        {
            "empty": b"",
            "cut": whole[:middle],
            "longer": whole + b"x",
            "one bit": whole[:middle] + bytes([whole[middle] ^ 1]) + whole[middle + 1 :],
            "garbage": b"x" * 5000,
            "other entry": whole[32:],
        }[fault]
    )
    assert made(tmp_path, data, cache=cache) == fresh
    assert entry.read_bytes() == whole


def test_folder_where_an_entry_should_be_only_makes_it_slow(tmp_path: Path, data: bytes) -> None:
    cache = tmp_path / "cache"
    fresh = made(tmp_path, data, cache=cache)
    (entry,) = cache.iterdir()
    entry.unlink()
    (entry / "inside").mkdir(parents=True)
    assert made(tmp_path, data, cache=cache) == fresh
    assert [item.name for item in cache.iterdir()] == [entry.name]


def test_cache_that_cannot_be_written_only_makes_it_slow(tmp_path: Path, data: bytes) -> None:
    (tmp_path / "cache").write_text("a file")
    assert made(tmp_path, data, cache=tmp_path / "cache") == made(tmp_path, data)
    assert (tmp_path / "cache").read_text() == "a file"


def test_run_that_stops_while_keeping_leaves_no_half_entry(
    tmp_path: Path, data: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "replace", stop)
    with pytest.raises(KeyboardInterrupt):
        made(tmp_path, data, cache=tmp_path / "cache")
    assert list((tmp_path / "cache").iterdir()) == []


def test_file_that_cannot_be_used_is_not_kept(tmp_path: Path) -> None:
    (tmp_path / "cache").mkdir()
    (tmp_path / "photo.jpg").write_bytes(b"no picture")
    prepare(tmp_path / "photo.jpg", stem="x", cache=tmp_path / "cache")
    assert list((tmp_path / "cache").iterdir()) == []
    assert trouble(tmp_path, b"no picture")
