"""Only a folder that sitegen made, an empty one or none is ever replaced."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from publishing.site_folders import NEW, OLD, as_bytes, beside, content, files_in, folder_of_plain_user, publish

from sitegen.publishing.write import NotReplaced, SiteWriter


def refusal(target: Path, forbidden: tuple[Path, ...] = ()) -> str:
    """The words of the refusal to publish."""
    with pytest.raises(NotReplaced) as caught:
        publish(target, NEW, forbidden)
    return caught.value.reason


def test_folder_that_sitegen_did_not_make_is_not_replaced(tmp_path: Path) -> None:
    target = tmp_path / "holiday"
    (target / "photos").mkdir(parents=True)
    (target / "photos/a.jpg").write_bytes(b"precious")
    before = content(tmp_path)
    assert refusal(target) == (
        f"{target} was not made by sitegen (there is no .sitegen.json in it), so it is not replaced. "
        "Name a new or an empty folder, or move away what is in this one."
    )
    assert content(tmp_path) == before


def test_folder_that_cannot_be_replaced_is_told_before_the_pages_are_made(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    writer = SiteWriter(tmp_path)
    with pytest.raises(NotReplaced, match="was not made by sitegen"):
        writer.__enter__()


def test_folder_that_fills_while_the_pages_are_made_is_not_replaced(tmp_path: Path) -> None:
    target = tmp_path / "site"

    def fill(_: SiteWriter) -> None:
        target.mkdir()
        (target / "letter.txt").write_text("mine")

    with pytest.raises(NotReplaced, match="was not made by sitegen"):
        publish(target, NEW, then=fill)
    assert content(target) == {"letter.txt": b"mine"}
    assert beside(target) == set()


def test_file_that_appears_while_the_pages_are_made_is_not_replaced(tmp_path: Path) -> None:
    target = tmp_path / "site"
    with pytest.raises(NotReplaced, match="no longer a folder"):
        publish(target, NEW, then=lambda _: target.write_text("mine"))
    assert target.read_text() == "mine"
    assert beside(target) == set()


def test_file_is_not_replaced(tmp_path: Path) -> None:
    target = tmp_path / "site"
    target.write_text("mine")
    assert refusal(target) == f"{target} is a file. Name a folder for the site."
    assert target.read_text() == "mine"


@pytest.mark.parametrize("leads_to", ["real", "empty", "nowhere"])
def test_link_is_not_written_through(tmp_path: Path, leads_to: str) -> None:
    publish(tmp_path / "real", OLD)
    (tmp_path / "empty").mkdir()
    target = tmp_path / "site"
    target.symlink_to(leads_to)
    assert refusal(target) == (
        f"{target} is a link to {leads_to}. A site is never written through a link: "
        "name the folder that it leads to, or another place."
    )
    assert files_in(tmp_path / "real") == as_bytes(OLD)
    assert beside(tmp_path / "real") == {"empty", "site"}


def test_links_on_the_way_to_the_folder_are_followed(tmp_path: Path) -> None:
    (tmp_path / "disk").mkdir()
    (tmp_path / "link").symlink_to("disk")
    publish(tmp_path / "link/site", NEW)
    assert files_in(tmp_path / "disk/site") == as_bytes(NEW)


def test_folder_named_by_dots_is_the_folder_itself(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "site/inside").mkdir(parents=True)
    (tmp_path / "site/inside").rmdir()
    monkeypatch.chdir(tmp_path / "site")
    publish(Path("."), NEW)
    monkeypatch.chdir(tmp_path / "site/a")
    publish(Path(".."), OLD)
    monkeypatch.chdir(tmp_path)
    assert files_in(tmp_path / "site") == as_bytes(OLD)


def test_root_of_the_disk_is_refused() -> None:
    assert refusal(Path(Path.cwd().anchor)).endswith("this is the root of the disk.")


def test_home_and_what_is_around_it_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    home = tmp_path / "people/author"
    home.mkdir(parents=True)
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setenv("USERPROFILE", str(home))
    for target in (home, home.parent):
        assert "your home folder is there" in refusal(target)
    publish(home / "site", NEW)
    assert files_in(home / "site") == as_bytes(NEW)


def test_content_folder_and_what_is_in_or_around_it_are_refused(tmp_path: Path) -> None:
    source = tmp_path / "work/content"
    source.mkdir(parents=True)
    (tmp_path / "link").symlink_to("work/content")
    for target, how in (
        (source, "is the same folder"),
        (source / "site", "is a folder around it"),
        (tmp_path / "work", "lies inside it"),
        (tmp_path / "link/site", "is a folder around it"),
    ):
        for forbidden in (source, tmp_path / "link"):
            assert f"{source}, from which it is made, {how}." in refusal(target, (tmp_path / "other", forbidden))
    assert list(source.iterdir()) == []
    publish(tmp_path / "work/site", NEW, (source,))
    publish(tmp_path / "work/content2", NEW, (source,))
    assert beside(source) == {"site", "content2"}


def test_link_in_a_circle_is_refused(tmp_path: Path) -> None:
    (tmp_path / "one").symlink_to("other")
    (tmp_path / "other").symlink_to("one")
    assert "a link" in refusal(tmp_path / "one/site")
    assert "is a link to other" in refusal(tmp_path / "one")


def test_forbidden_folder_is_known_by_another_spelling_of_its_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "Content").mkdir()
    # As on a disk that makes no difference between capitals and small letters.
    monkeypatch.setattr(os.path, "samefile", lambda one, other: str(one).casefold() == str(other).casefold())
    assert "is the same folder" in refusal(tmp_path / "content", (tmp_path / "Content",))
    assert "is a folder around it" in refusal(tmp_path / "Content/site", (tmp_path / "content",))


def test_missing_parent_is_named(tmp_path: Path) -> None:
    assert refusal(tmp_path / "missing/site") == (
        f"The site cannot be written to {tmp_path / 'missing/site'}: the folder {tmp_path / 'missing'} is not there. "
        "Make it first, or name another place."
    )


def test_parent_that_is_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    assert "a part of the path is a file" in refusal(tmp_path / "file/site")


@pytest.mark.parametrize("name", ["a\0b", "x" * 300])
def test_unusable_name_is_refused(tmp_path: Path, name: str) -> None:
    assert refusal(tmp_path / name).isprintable()
    assert list(tmp_path.iterdir()) == []


def test_folder_without_permission_is_refused() -> None:
    with folder_of_plain_user() as folder:
        target = folder / "site"
        publish(target, OLD)
        folder.chmod(0o555)
        assert refusal(target) == (
            f"The site cannot be written to {target}: no lock file can be made in {folder}: "
            "there is no permission to do so."
        )
        assert files_in(target) == as_bytes(OLD)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "is damaged"),
        ("{", "is damaged"),
        ("[" * 100_000, "is damaged"),
        ("[]", "was not written by sitegen"),
        ('{"made_by": "another"}', "was not written by sitegen"),
        ('{"made_by": "sitegen", "format": 2}', "was written by another version of sitegen"),
        ('{"made_by": "sitegen", "format": 1}', "is damaged"),
        ('{"made_by": "sitegen", "format": 1, "complete": true, "files": {"a": 1}, "carried": []}', "is damaged"),
        ('{"made_by": "sitegen", "format": 1, "complete": true, "files": {}, "carried": [1]}', "is damaged"),
        ('{"made_by": "sitegen", "format": 1, "complete": 1, "files": {}, "carried": []}', "is damaged"),
    ],
)
def test_list_of_files_that_cannot_be_understood_protects_the_folder(tmp_path: Path, text: str, why: str) -> None:
    target = tmp_path / "site"
    target.mkdir()
    (target / ".sitegen.json").write_text(text)
    (target / "index.html").write_text("mine")
    assert refusal(target).startswith(f"{target} was not replaced: the list of its files, .sitegen.json, {why}")
    assert files_in(target) == {"index.html": b"mine"}
    assert beside(target) == set()


def test_list_of_files_that_is_a_link_protects_the_folder(tmp_path: Path) -> None:
    publish(tmp_path / "other", OLD)
    target = tmp_path / "site"
    target.mkdir()
    (target / ".sitegen.json").symlink_to(tmp_path / "other/.sitegen.json")
    assert ".sitegen.json, is not a plain file" in refusal(target)


def test_unfinished_folder_moved_to_the_place_of_the_site_is_not_replaced(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    listing = json.loads((target / ".sitegen.json").read_text())
    (target / ".sitegen.json").write_text(json.dumps({**listing, "complete": False}))
    assert "unfinished work of a run that was stopped" in refusal(target)
    assert files_in(target) == as_bytes(OLD)


def test_nothing_but_the_site_is_touched(tmp_path: Path) -> None:
    target = tmp_path / "work/site"
    neighbours = tmp_path / "work/site2"
    neighbours.mkdir(parents=True)
    (neighbours / "a.txt").write_text("mine")
    (tmp_path / "work/.site.building-notes").write_text("mine")
    (tmp_path / "work/.site2.lock").write_text("")
    publish(target, OLD)
    before = {item: item.lstat().st_mtime_ns for item in tmp_path.rglob("*") if "site/" not in f"{item}/"}
    publish(target, NEW)
    after = {item: item.lstat().st_mtime_ns for item in tmp_path.rglob("*") if "site/" not in f"{item}/"}
    del before[tmp_path / "work"], after[tmp_path / "work"]
    assert after == before
