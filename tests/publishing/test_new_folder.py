"""A new folder is written whole or not at all, and never over another."""

from __future__ import annotations

import errno
import os
import signal
import sys
from itertools import count
from pathlib import Path

import pytest
from publishing.site_folders import folder_of_plain_user

from sitegen.publishing import NotBegun, write_new_folder

FILES = {"site.yaml": "title: Mine\n", "tutorials/tee/tutorial.yaml": "title: Tee ½\n"}


def refused(target: Path, files: dict[str, str] = FILES) -> str:
    with pytest.raises(NotBegun) as reason:
        write_new_folder(target, files)
    return reason.value.reason


def test_all_files_stand_with_plain_line_ends_and_usual_rights(tmp_path: Path) -> None:
    write_new_folder(tmp_path / "mine", FILES)
    assert {name: (tmp_path / "mine" / name).read_bytes() for name in FILES} == {
        name: text.encode() for name, text in FILES.items()
    }
    (tmp_path / "usual").mkdir()
    assert (tmp_path / "mine").stat().st_mode == (tmp_path / "usual").stat().st_mode
    assert {item.name for item in tmp_path.iterdir()} == {"mine", "usual"}


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda place: place.write_text("mine"), "is a file. Name a new folder."),
        (lambda place: place.symlink_to(place.parent), "is a link."),
        (lambda place: place.symlink_to(place.parent / "nothing"), "is a link."),
        (lambda place: (place / "photos").mkdir(parents=True), "holds something"),
    ],
)
def test_place_that_is_taken_is_left_as_it_is(make: object, message: str, tmp_path: Path) -> None:
    assert callable(make)
    place = tmp_path / "mine"
    make(place)
    before = sorted(os.walk(tmp_path))
    assert message in refused(place)
    assert sorted(os.walk(tmp_path)) == before


def test_place_in_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    assert "is not there. Make it first" in refused(tmp_path / "a" / "b")


def test_folder_in_which_the_author_stands_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert "is the folder that you are in" in refused(Path("."))


def test_path_that_no_disk_can_hold_is_refused(tmp_path: Path) -> None:
    assert "could not be written" in refused(tmp_path / "a\0b")
    assert "could not be written" in refused(tmp_path / ("a" * 300))


def test_what_stops_in_the_middle_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(one: object, other: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "rename", full)
    with pytest.raises(KeyboardInterrupt):
        write_new_folder(tmp_path / "mine", FILES)
    assert list(tmp_path.iterdir()) == []


def test_full_disk_leaves_the_empty_folder_of_the_author(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    (tmp_path / "mine").mkdir(mode=0o750)
    monkeypatch.setattr(Path, "write_text", full)
    assert refused(tmp_path / "mine").endswith("could not be written: there is no room left on the disk.")
    assert [(item.name, item.stat().st_mode & 0o777) for item in tmp_path.iterdir()] == [("mine", 0o750)]


def test_what_comes_into_the_empty_folder_meanwhile_is_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = tmp_path / "mine"
    place.mkdir()
    rename = os.rename

    def later(one: Path, other: Path) -> None:
        (place / "notes.txt").write_text("mine")
        rename(one, other)

    monkeypatch.setattr(os, "rename", later)
    assert "could not be written" in refused(place)
    assert [path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*")] == ["mine", "mine/notes.txt"]


@pytest.mark.skipif(sys.platform == "win32", reason="nothing can be killed there between two acts")
@pytest.mark.filterwarnings("ignore:This process .* is multi-threaded:DeprecationWarning")
@pytest.mark.parametrize("empty_before", [False, True])
def test_run_that_is_killed_leaves_the_folder_whole_or_as_it_was(empty_before: bool, tmp_path: Path) -> None:
    acts = {"open", "os.chmod", "os.mkdir", "os.rename", "os.rmdir"}
    killed = 0
    for step in count(1):
        place = tmp_path / str(step) / "mine"
        (place if empty_before else place.parent).mkdir(parents=True)
        number = os.fork()
        if number == 0:
            seen = count(1)
            sys.addaudithook(
                lambda event, _, seen=seen, step=step: (
                    os.kill(os.getpid(), signal.SIGKILL) if event in acts and next(seen) == step else None
                )
            )
            write_new_folder(place, FILES)
            os._exit(0)
        ended_well = not os.WIFSIGNALED(os.waitpid(number, 0)[1])
        found = {path.relative_to(place).as_posix() for path in place.rglob("*") if path.is_file()}
        assert found == (set(FILES) if ended_well else set())
        assert place.exists() == (ended_well or empty_before)
        if ended_well:
            break
        killed += 1
        write_new_folder(place, FILES)  # what was left beside it stands in nobody's way
    assert killed > 5


def test_path_that_some_disks_cannot_hold_is_refused(tmp_path: Path) -> None:
    assert "cannot be the path of a file" in refused(tmp_path / "mine", {"site.yaml": "", "tutorials/con/x.yaml": ""})
    assert "cannot be the path of a file" in refused(tmp_path / "mine", {"../site.yaml": ""})
    assert list(tmp_path.iterdir()) == []


def test_folder_that_may_not_be_written_is_refused_in_plain_words() -> None:
    with folder_of_plain_user() as root:
        root.chmod(0o500)
        assert "could not be written: there is no permission to do so." in refused(root / "mine")
        root.chmod(0o700)
