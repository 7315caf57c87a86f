"""Nothing that sitegen did not write is ever deleted."""

from __future__ import annotations

import errno
import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from publishing.site_folders import NEW, OLD, as_bytes, beside, content, files_in, folder_of_plain_user, listed, publish

from sitegen.publishing import write
from sitegen.publishing.write import NotReplaced


@pytest.fixture
def target(tmp_path: Path) -> Path:
    """A published site."""
    publish(tmp_path / "site", OLD)
    return tmp_path / "site"


def refusal(target: Path) -> str:
    """The words of the refusal to publish, after a look that nothing has changed."""
    before = content(target.parent)
    with pytest.raises(NotReplaced) as caught:
        publish(target, NEW)
    assert content(target.parent) == before
    return caught.value.reason


def put(target: Path, path: str, text: str = "by hand") -> Path:
    """Put a file into the site by hand."""
    place = target / path
    place.parent.mkdir(parents=True, exist_ok=True)
    place.write_text(text)
    return place


def no_links(*_: object) -> None:
    """A disk that cannot give a file a second name."""
    raise OSError(errno.EPERM, "Operation not permitted")


@pytest.mark.parametrize("disk", ["second names", "copies only"])
def test_what_was_put_there_by_hand_is_kept_with_its_metadata(
    target: Path, monkeypatch: pytest.MonkeyPatch, disk: str
) -> None:
    if disk == "copies only":
        monkeypatch.setattr(os, "link", no_links)
    cname = put(target, "CNAME", "example.org")
    cname.chmod(0o640)
    script = put(target, "tools/run/me.sh")
    script.chmod(0o755)
    put(target, "a/deep/note.txt")
    put(target, "b/beside-a-new-page.txt")
    (target / "empty/inner").mkdir(parents=True)
    for place, seconds in ((cname, 1_000), (script, 2_000), (target / "tools/run", 3_000), (target / "tools", 4_000)):
        os.utime(place, (seconds, seconds))
    by_hand = {path: held for path, held in content(target).items() if path not in OLD and path != "a/deep/er"}

    for files in (NEW, OLD, NEW):
        assert publish(target, files) == []
        kept = content(target)
        assert {path: kept[path] for path in by_hand} == by_hand
        assert set(listed(target)) == set(files)
    assert {path for path, held in content(target).items() if held != "folder"} == {
        *NEW,
        "CNAME",
        "tools/run/me.sh",
        "a/deep/note.txt",
        "b/beside-a-new-page.txt",
    }
    assert (target / "CNAME").stat().st_mode & 0o777 == 0o640
    assert script.stat().st_mode & 0o777 == 0o755
    assert [(target / p).stat().st_mtime for p in ("CNAME", "tools/run/me.sh", "tools/run", "tools")] == [
        1_000, 2_000, 3_000, 4_000
    ]  # fmt: skip
    assert beside(target) == set()


def test_links_are_kept_as_links_and_what_they_lead_to_is_not_touched(target: Path) -> None:
    outside = target.parent / "outside"
    put(outside, "film.mp4")
    links = {"films": "../outside", "film": "../outside/film.mp4", "dangling": "nowhere", "home": "index.html"}
    for name, place in links.items():
        (target / name).symlink_to(place)
    for files in (NEW, OLD, NEW):
        publish(target, files)
        assert {name: os.readlink(target / name) for name in links} == links
    assert content(outside) == {"film.mp4": b"by hand"}


def test_write_protected_things_are_kept_and_their_old_place_is_cleared() -> None:
    with folder_of_plain_user() as folder:
        target = folder / "site"
        publish(target, OLD)
        protected = put(target, "kept/inner/file.txt")
        for place, mode in ((protected, 0o444), (protected.parent, 0o555), (protected.parent.parent, 0o555)):
            place.chmod(mode)
        publish(target, NEW)
        publish(target, OLD)
        assert protected.read_text() == "by hand"
        assert protected.stat().st_mode & 0o777 == 0o444
        assert protected.parent.stat().st_mode & 0o777 == 0o555
        assert beside(target) == set()


def test_file_by_hand_that_cannot_be_read_is_named() -> None:
    with folder_of_plain_user() as folder:
        target = folder / "site"
        publish(target, OLD)
        put(target, "notes/secret.txt").chmod(0)
        with pytest.raises(NotReplaced, match=r"no permission to do so \(notes/secret\.txt\)"):
            publish(target, NEW)
        assert set(content(target.parent / "site/a")) == {"index.html", "deep", "deep/er", "deep/er/page.html"}
        assert beside(target) == set()


@pytest.mark.skipif(sys.platform != "linux", reason="file names are always text there")
def test_file_name_that_is_no_text_is_kept(target: Path) -> None:
    name = os.fsdecode(b"caf\xe9.txt")
    put(target, name)
    publish(target, NEW)
    assert (target / name).read_text() == "by hand"
    assert beside(target) == set()


@pytest.mark.skipif(sys.platform == "win32", reason="no named pipes in folders")
def test_pipe_is_refused_by_name(target: Path) -> None:
    os.mkfifo(target / "pipe")
    with pytest.raises(NotReplaced, match="pipe in it is no file, folder or link that could be kept"):
        publish(target, NEW)
    assert (target / "pipe").is_fifo()
    assert (target / "index.html").read_text() == OLD["index.html"]


@pytest.mark.parametrize(
    "path",
    [
        "photo.webp",
        "Photo.WebP",
        "b",
        "B",
        "photo.webp/inside.txt",
        "b/index.html",
        "b/index.html/x/y",
        ".sitegen.json.part",
        ".Sitegen.json",
    ],
)
def test_file_by_hand_where_the_new_site_wants_one_is_named(target: Path, path: str) -> None:
    put(target, path)
    reason = refusal(target)
    assert reason.startswith(f"{target} was not replaced: the new site needs the place of what was put there by hand: ")
    assert path in reason


def test_same_content_by_hand_where_the_new_site_wants_it_is_still_refused(target: Path) -> None:
    (target / "photo.webp").write_bytes(as_bytes(NEW)["photo.webp"])
    assert "by hand: photo.webp. Move it away" in refusal(target)


def test_link_by_hand_where_the_new_site_wants_a_folder_is_refused(target: Path) -> None:
    outside = target.parent / "outside"
    outside.mkdir()
    (target / "b").symlink_to(outside)
    assert "by hand: b. Move it away" in refusal(target)
    assert list(outside.iterdir()) == []


def test_folder_by_hand_is_joined_with_one_of_the_new_site(target: Path) -> None:
    put(target, "b/by-hand.txt")
    publish(target, NEW)
    assert set(content(target / "b")) == {"by-hand.txt", "index.html"}


def test_edited_file_of_the_site_is_named(target: Path) -> None:
    (target / "a/index.html").write_text("improved by hand")
    assert refusal(target) == (
        f"{target} was not replaced: of the files that sitegen wrote there, some were edited since, and the "
        "edits would be lost: a/index.html. Move them away, or delete them, then publish again."
    )


def test_up_to_five_edited_files_are_named_and_the_others_counted(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, {f"{n}.html": "old" for n in range(9)})
    for n in range(7):
        (target / f"{n}.html").write_text("edited")
    assert "lost: 0.html, 1.html, 2.html, 3.html, 4.html and 2 more. Move them away" in refusal(target)


@pytest.mark.parametrize("same", [False, True])
def test_file_of_the_site_replaced_by_a_link_counts_as_edited(target: Path, same: bool) -> None:
    (target / "gone.css").unlink()
    (target / "gone.css").symlink_to("../style.css")
    (target.parent / "style.css").write_text(OLD["gone.css"] if same else "other")
    assert "lost: gone.css. Move them away" in refusal(target)


def test_file_of_the_site_deleted_by_hand_is_no_loss(target: Path) -> None:
    (target / "gone.css").unlink()
    (target / "a/deep/er/page.html").unlink()
    publish(target, NEW)
    assert files_in(target) == as_bytes(NEW)


def test_file_of_the_site_replaced_by_a_folder_keeps_what_is_in_it(target: Path) -> None:
    (target / "gone.css").unlink()
    put(target, "gone.css/by-hand.txt")
    publish(target, NEW)
    assert (target / "gone.css/by-hand.txt").read_text() == "by hand"


def test_names_of_files_put_there_by_hand_are_not_told_to_the_web(target: Path) -> None:
    put(target, "secret-draft/plan.txt")
    publish(target, NEW)
    assert b"secret-draft" not in (target / ".sitegen.json").read_bytes()


def publish_with(target: Path, monkeypatch: pytest.MonkeyPatch, meanwhile: Callable[[], object]) -> list[str]:
    """Publish while somebody changes the old site in the very moment before the two sites change places."""
    put_in_place = write.put_in_place

    def late(*places: Path) -> Path | None:
        meanwhile()
        return put_in_place(*places)

    with monkeypatch.context() as patch:
        patch.setattr(write, "put_in_place", late)
        return publish(target, NEW)


@pytest.mark.parametrize("path", ["late.txt", "x/y/late.txt", "b/late.txt"])
def test_file_put_there_at_the_last_moment_moves_into_the_new_site(
    target: Path, monkeypatch: pytest.MonkeyPatch, path: str
) -> None:
    assert publish_with(target, monkeypatch, lambda: put(target, path, "late")) == []
    assert files_in(target) == {**as_bytes(NEW), path: b"late"}
    assert beside(target) == set()


@pytest.mark.parametrize("disk", ["second names", "copies only"])
@pytest.mark.parametrize("way", ["in place", "as a new file"])
def test_file_by_hand_that_is_saved_at_the_last_moment_is_kept_as_saved(
    target: Path, monkeypatch: pytest.MonkeyPatch, disk: str, way: str
) -> None:
    if disk == "copies only":
        monkeypatch.setattr(os, "link", no_links)
    put(target, "CNAME", "example.org")

    def save() -> None:
        if way == "in place":
            put(target, "CNAME", "example.net, saved late")
        else:
            put(target, "CNAME.new", "example.net, saved late").replace(target / "CNAME")

    assert publish_with(target, monkeypatch, save) == []
    assert (target / "CNAME").read_text() == "example.net, saved late"
    assert beside(target) == set()
    publish(target, OLD)
    assert (target / "CNAME").read_text() == "example.net, saved late"


def test_file_of_the_site_that_is_edited_at_the_last_moment_is_kept_beside_and_told(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    notes = publish_with(target, monkeypatch, lambda: put(target, "index.html", "edited late"))
    (left,) = beside(target)
    note = (
        f"{target.parent / left} holds what could not be taken away, or what changed while the site was being "
        "published: index.html. Look at it, keep what you need, then delete the folder."
    )
    assert notes == [note]
    assert files_in(target) == as_bytes(NEW)
    assert content(target.parent / left) == {"index.html": b"edited late"}
    assert publish(target, OLD) == [note]
    assert content(target.parent / left) == {"index.html": b"edited late"}


def test_file_put_late_into_a_folder_that_is_a_link_now_is_kept_beside(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    outside = target.parent / "outside"
    outside.mkdir()
    (target / "films").symlink_to(outside)

    def swap_link_for_folder() -> None:
        (target / "films").unlink()
        put(target, "films/late.txt", "late")

    publish_with(target, monkeypatch, swap_link_for_folder)
    assert list(outside.iterdir()) == []
    (left,) = beside(target) - {"outside"}
    assert content(target.parent / left) == {"films": "folder", "films/late.txt": b"late"}


def test_empty_folder_that_fills_at_the_last_moment_keeps_what_came(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "site"
    target.mkdir()
    publish_with(target, monkeypatch, lambda: put(target, "letter.txt", "late"))
    assert files_in(target) == {**as_bytes(NEW), "letter.txt": b"late"}
    assert beside(target) == set()
