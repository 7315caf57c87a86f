"""A site is written whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
import sys
from pathlib import Path

import pytest
from publishing.site_folders import NEW, OLD, as_bytes, beside, content, files_in, listed, publish

from sitegen.publishing import exchange, write
from sitegen.publishing.write import NotReplaced, SiteWriter


class StoppedError(Exception):
    """Something went wrong while the pages were made."""


def stop(_: SiteWriter) -> None:
    """Let something go wrong."""
    raise StoppedError


def test_new_site_holds_what_was_written_and_lists_it(tmp_path: Path) -> None:
    target = tmp_path / "site"
    assert publish(target, NEW) == []
    assert files_in(target) == as_bytes(NEW)
    assert set(listed(target)) == set(NEW)
    assert beside(target) == set()


def test_text_is_written_as_utf_8_with_its_own_line_ends(tmp_path: Path) -> None:
    publish(tmp_path / "site", {"a.txt": "⅜ in\nnext\r\n"})
    assert (tmp_path / "site/a.txt").read_bytes() == "⅜ in\nnext\r\n".encode()


def test_old_site_is_replaced_and_nothing_is_left_of_it(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    publish(target, NEW)
    assert files_in(target) == as_bytes(NEW)
    assert "a/deep" not in content(target)
    assert set(listed(target)) == set(NEW)
    assert beside(target) == set()


def test_existing_empty_folder_is_filled(tmp_path: Path) -> None:
    target = tmp_path / "site"
    target.mkdir()
    publish(target, NEW)
    assert files_in(target) == as_bytes(NEW)
    assert beside(target) == set()


def test_same_content_gives_the_same_bytes_down_to_the_list(tmp_path: Path) -> None:
    publish(tmp_path / "one", NEW)
    publish(tmp_path / "two", OLD)
    publish(tmp_path / "two", dict(reversed(NEW.items())))
    assert (tmp_path / "one/.sitegen.json").read_bytes() == (tmp_path / "two/.sitegen.json").read_bytes()


def test_exception_in_the_body_leaves_the_old_site(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    before = content(target)
    with pytest.raises(StoppedError):
        publish(target, NEW, then=stop)
    assert content(target) == before
    assert beside(target) == set()


def test_exception_in_the_body_leaves_nothing_where_nothing_was(tmp_path: Path) -> None:
    with pytest.raises(StoppedError):
        publish(tmp_path / "site", NEW, then=stop)
    assert list(tmp_path.iterdir()) == []


def test_stop_by_the_keyboard_while_replacing_leaves_the_old_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "site"
    publish(target, OLD)

    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(write, "put_in_place", interrupt)
    with pytest.raises(KeyboardInterrupt):
        publish(target, NEW)
    assert files_in(target) == as_bytes(OLD)
    assert beside(target) == set()


def test_refusal_that_the_caller_swallowed_still_stops_the_site(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, OLD)

    def swallow(writer: SiteWriter) -> None:
        with pytest.raises(NotReplaced):
            writer.write("../outside.html", "no")

    with pytest.raises(NotReplaced, match="cannot be the path"):
        publish(target, NEW, then=swallow)
    assert files_in(target) == as_bytes(OLD)


def test_writing_outside_the_with_statement_is_a_fault_of_the_program(tmp_path: Path) -> None:
    writer = SiteWriter(tmp_path / "site")
    with pytest.raises(RuntimeError):
        writer.write("index.html", "too early")
    with writer:
        writer.write("index.html", "in time")
    with pytest.raises(RuntimeError):
        writer.write("late.html", "too late")


@pytest.mark.parametrize(
    "path",
    [
        "",
        ".",
        "..",
        "/etc/passwd",
        "../outside",
        "a/../../outside",
        "a/..",
        "a//b",
        "a/",
        "./a",
        "a\\b",
        "C:a",
        "C:/a",
        "a?b",
        "a*b",
        'a"b',
        "a|b",
        "a<b",
        "a\x00b",
        "a\nb",
        "a\x7fb",
        " a",
        "a ",
        "a.",
        "a./b",
        "con",
        "CON.html",
        "a/Nul.txt",
        "lpt1",
        "aux .css",
        "n" * 256,
        "é" * 128,
        "lone\udc80",
        ".sitegen.json",
        ".SITEGEN.json",
        ".sitegen.json.part",
        ".sitegen.json/a",
    ],
)
def test_odd_path_is_refused(tmp_path: Path, path: str) -> None:
    with pytest.raises(NotReplaced) as caught, SiteWriter(tmp_path / "site") as writer:
        writer.write(path, "x")
    assert "cannot be the path of a file of the site" in caught.value.reason
    assert caught.value.reason.isprintable()
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "path", ["a", "a/b/c.html", ".nojekyll", ".well-known/x", "Größe/⅜.html", "console", "n" * 255]
)
def test_plain_path_is_taken(tmp_path: Path, path: str) -> None:
    publish(tmp_path / "site", {path: "x"})
    assert (tmp_path / "site" / path).read_bytes() == b"x"


@pytest.mark.parametrize(("first", "second"), [("a.html", "a.html"), ("a.html", "A.html"), ("é", "é")])
def test_path_written_twice_is_refused(tmp_path: Path, first: str, second: str) -> None:
    with pytest.raises(NotReplaced, match="Two files of the site want the same path"):
        publish(tmp_path / "site", {first: "1"}, then=lambda writer: writer.write(second, "2"))
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(("first", "second"), [("a", "a/b"), ("a/b", "a"), ("A/b", "a"), ("a/b", "a/b/c/d")])
def test_file_and_folder_at_one_path_are_refused(tmp_path: Path, first: str, second: str) -> None:
    with pytest.raises(NotReplaced, match="a file and a folder at the same path"):
        publish(tmp_path / "site", {first: "1"}, then=lambda writer: writer.write(second, "2"))


def test_text_with_half_a_character_is_refused(tmp_path: Path) -> None:
    with pytest.raises(NotReplaced, match=r"index\.html holds characters"):
        publish(tmp_path / "site", {"index.html": "\ud83d"})


def test_copied_file_has_the_content_but_not_the_rights_of_its_source(tmp_path: Path) -> None:
    source = tmp_path / "source.bin"
    source.write_bytes(os.urandom(3_000_000))
    source.chmod(0o400)
    with SiteWriter(tmp_path / "site") as writer:
        writer.copy("files/pattern.bin", source)
    copied = tmp_path / "site/files/pattern.bin"
    assert copied.read_bytes() == source.read_bytes()
    assert set(listed(tmp_path / "site")) == {"files/pattern.bin"}
    assert stat.S_IMODE(copied.stat().st_mode) & stat.S_IWUSR


@pytest.mark.parametrize("kind", ["missing", "folder", "pipe"])
def test_source_that_is_no_file_is_refused_by_name(tmp_path: Path, kind: str) -> None:
    source = tmp_path / "source.bin"
    if kind == "folder":
        source.mkdir()
    elif kind == "pipe":
        if sys.platform == "win32":
            pytest.skip("no named pipes in folders")
        os.mkfifo(source)
    with pytest.raises(NotReplaced, match=r"source\.bin"), SiteWriter(tmp_path / "site") as writer:
        writer.copy("a.bin", source)
    assert not (tmp_path / "site").exists()


@pytest.mark.skipif(sys.platform == "win32", reason="rights are of another kind there")
def test_rights_of_the_site_folder_are_kept_and_those_of_new_files_are_the_usual_ones(tmp_path: Path) -> None:
    target = tmp_path / "site"
    usual = os.umask(0o027)
    try:
        publish(target, OLD)
        assert stat.S_IMODE(target.stat().st_mode) == 0o750
        assert stat.S_IMODE((target / "index.html").stat().st_mode) == 0o640
        target.chmod(0o2775)
        publish(target, NEW)
    finally:
        os.umask(usual)
    assert stat.S_IMODE(target.stat().st_mode) == 0o2775


@pytest.mark.skipif(sys.platform == "win32", reason="needs a limit on the size of files")
def test_disk_that_takes_no_more_leaves_the_old_site(tmp_path: Path) -> None:
    import resource

    target = tmp_path / "site"
    publish(target, OLD)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100_000, hard))
    try:
        with pytest.raises(NotReplaced) as caught:
            publish(target, {"small.html": "fits", "large.bin": bytes(200_000)})
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert caught.value.reason == (
        f"The site could not be written to {target}: the file is larger than this disk or this account allows. "
        "What stood there is as it was."
    )
    assert files_in(target) == as_bytes(OLD)
    assert beside(target) == set()


@pytest.mark.parametrize("act", ["write_manifest", "put_in_place", "carry_over"])
def test_full_disk_at_the_last_moment_leaves_the_old_site(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, act: str
) -> None:
    target = tmp_path / "site"
    publish(target, OLD)

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with pytest.raises(NotReplaced, match="there is no room left on the disk"):
        publish(target, NEW, then=lambda _: monkeypatch.setattr(write, act, full))
    assert files_in(target) == as_bytes(OLD)
    assert beside(target) == set()


def test_old_site_that_cannot_be_taken_away_is_told_and_taken_by_the_next_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "site"
    publish(target, OLD)

    def fail(*_: object) -> None:
        raise OSError(errno.EIO, "Input/output error")

    with monkeypatch.context() as patch:
        patch.setattr(write, "remove_old", fail)
        notes = publish(target, NEW)
    (left,) = beside(target)
    assert notes == [f"The old site could not be taken away from {tmp_path / left}: Input/output error."]
    assert files_in(target) == as_bytes(NEW)
    assert publish(target, OLD) == []
    assert files_in(target) == as_bytes(OLD)
    assert beside(target) == set()


def test_site_is_replaced_where_the_system_cannot_exchange_folders(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exchange, "_exchange", lambda one, other: errno.EINVAL)
    target = tmp_path / "site"
    for files in (OLD, NEW):
        publish(target, files)
        assert files_in(target) == as_bytes(files)
        assert beside(target) == set()


def test_old_site_steps_back_when_the_new_one_cannot_take_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    monkeypatch.setattr(exchange, "_exchange", lambda one, other: errno.ENOSYS)
    rename = os.rename

    def only_aside(source: str | Path, place: str | Path) -> None:
        if ".building-" in str(source):
            raise PermissionError(errno.EACCES, "Permission denied")
        rename(source, place)

    monkeypatch.setattr(os, "rename", only_aside)
    with pytest.raises(NotReplaced, match="no permission"):
        publish(target, NEW)
    assert files_in(target) == as_bytes(OLD)
    assert beside(target) == set()


@pytest.mark.skipif(sys.platform not in ("linux", "darwin"), reason="the system cannot exchange folders")
def test_two_folders_change_places_in_one_act(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    (tmp_path / "b").mkdir()
    (tmp_path / "a/mark").touch()
    assert exchange.exchanged(tmp_path / "a", tmp_path / "b")
    assert (tmp_path / "b/mark").exists()
    with pytest.raises(FileNotFoundError):
        exchange.exchanged(tmp_path / "a", tmp_path / "missing")
