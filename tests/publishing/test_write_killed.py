"""A run that is killed at any moment leaves a whole site, and the next run clears up."""

from __future__ import annotations

import errno
import os
import signal
import sys
import time
from collections.abc import Callable
from itertools import count
from pathlib import Path

import pytest
from publishing.site_folders import NEW, OLD, as_bytes, beside, content, files_in, listed, publish

from sitegen.publishing import exchange, leftovers, write
from sitegen.publishing.write import NotReplaced, SiteWriter

pytestmark = [
    pytest.mark.skipif(sys.platform == "win32", reason="nothing can be killed there between two acts"),
    pytest.mark.filterwarnings("ignore:This process .* is multi-threaded:DeprecationWarning"),
]

ACTS = {
    "open", "os.chmod", "os.link", "os.listdir", "os.mkdir", "os.remove", "os.rename", "os.rmdir", "os.scandir",
    "os.symlink", "os.utime", "ctypes.dlopen", "ctypes.dlsym",
}  # fmt: skip
"""What Python announces before it acts on the disk; the last two come just before two folders change places."""

BY_HAND: dict[str, str | bytes] = {
    "CNAME": b"example.org", "a/films": "-> ../../films", "notes": "folder", "notes/n": b"n"
}  # fmt: skip
THIRD = {"index.html": "third"}


def child(act: Callable[[], object]) -> int:
    """Run something in a process of its own; gives back the number of that process."""
    number = os.fork()
    if number == 0:
        try:
            act()
        except BaseException:
            os._exit(1)
        os._exit(0)
    return number


def ended(number: int) -> bool:
    """Wait for a process; whether it ended by itself and well, False when it was killed."""
    _, status = os.waitpid(number, 0)
    if os.WIFSIGNALED(status):
        assert os.WTERMSIG(status) == signal.SIGKILL
        return False
    assert os.WEXITSTATUS(status) == 0
    return True


def ended_before(step: int, act: Callable[[], object]) -> bool:
    """Run something that is killed before its act of this number on the disk; whether it ended before that."""

    def killed() -> None:
        numbers = count(1)

        def hook(event: str, _: object) -> None:
            if event in ACTS and next(numbers) == step:
                os.kill(os.getpid(), signal.SIGKILL)

        sys.addaudithook(hook)
        act()

    return ended(child(killed))


def put_by_hand(target: Path) -> None:
    """Put a file, a link and a folder into a site."""
    (target / "CNAME").write_bytes(b"example.org")
    (target / "a/films").symlink_to("../../films")
    (target / "notes").mkdir()
    (target / "notes/n").write_bytes(b"n")


def assert_whole(target: Path, *sites: dict[str, str | bytes], by_hand: dict[str, str | bytes]) -> None:
    """One of these sites stands there, each file as its list says, with all that was put there by hand."""
    names = set(listed(target))
    (files,) = [site for site in sites if set(site) == names]
    held = {path: what for path, what in content(target).items() if what != "folder" or path in by_hand}
    assert held == {**as_bytes(files), **by_hand}


def assert_next_run_clears_up(target: Path, by_hand: dict[str, str | bytes]) -> None:
    """The next run publishes, and leaves nothing beside the site."""
    assert publish(target, THIRD) == []
    assert_whole(target, THIRD, by_hand=by_hand)
    assert beside(target) == set()


def test_killed_before_any_act_of_replacing_a_site(tmp_path: Path) -> None:
    seen = set()
    for step in count(1):
        target = tmp_path / str(step) / "site"
        target.parent.mkdir()
        publish(target, OLD)
        put_by_hand(target)
        is_done = ended_before(step, lambda target=target: publish(target, NEW))
        assert_whole(target, OLD, NEW, by_hand=BY_HAND)
        seen.add("new" if "b/index.html" in listed(target) else "old")
        assert_next_run_clears_up(target, BY_HAND)
        if is_done:
            break
    assert step > 50
    assert seen == {"old", "new"}


def test_killed_before_any_act_of_the_first_publishing(tmp_path: Path) -> None:
    for step in count(1):
        target = tmp_path / str(step) / "site"
        target.parent.mkdir()
        is_done = ended_before(step, lambda target=target: publish(target, NEW))
        if target.exists():
            assert_whole(target, NEW, by_hand={})
        assert publish(target, THIRD) == []
        assert_whole(target, THIRD, by_hand={})
        assert beside(target) == set()
        if is_done:
            break
    assert step > 10


def test_killed_before_any_act_where_folders_cannot_be_exchanged(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(exchange, "_exchange", lambda one, other: errno.ENOSYS)
    was_missing = 0
    for step in count(1):
        target = tmp_path / str(step) / "site"
        target.parent.mkdir()
        publish(target, OLD)
        put_by_hand(target)
        is_done = ended_before(step, lambda target=target: publish(target, NEW))
        if not target.exists():  # killed between the two renames: any next run puts the old site back, whatever it does
            was_missing += 1
            with pytest.raises(NotReplaced), SiteWriter(target) as writer:
                writer.write("../x", "refused")
            assert_whole(target, OLD, by_hand=BY_HAND)
        assert_whole(target, OLD, NEW, by_hand=BY_HAND)
        assert_next_run_clears_up(target, BY_HAND)
        if is_done:
            break
    assert was_missing == 1


def test_killed_while_clearing_up_after_a_killed_run(tmp_path: Path) -> None:
    for step in count(1):
        target = tmp_path / str(step) / "site"
        target.parent.mkdir()
        publish(target, OLD)
        put_by_hand(target)
        assert not ended(child(lambda target=target: killed_at_the_swap(target, after=True)))
        assert len(beside(target)) == 2
        is_done = ended_before(step, lambda target=target: publish(target, THIRD))
        assert_whole(target, NEW, THIRD, by_hand=BY_HAND)
        assert_next_run_clears_up(target, BY_HAND)
        if is_done:
            break
    assert step > 50


def killed_at_the_swap(target: Path, *, after: bool) -> None:
    """Publish and be killed just before or just after the two sites change places."""
    put_in_place = write.put_in_place

    def killed(*places: Path) -> None:
        if after:
            put_in_place(*places)
        os.kill(os.getpid(), signal.SIGKILL)

    write.put_in_place = killed  # type: ignore[assignment]  # in a process that ends here
    publish(target, NEW)


@pytest.mark.parametrize("after", [False, True])
def test_killed_on_either_side_of_the_swap(tmp_path: Path, after: bool) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    put_by_hand(target)
    assert not ended(child(lambda: killed_at_the_swap(target, after=after)))
    assert_whole(target, NEW if after else OLD, by_hand=BY_HAND)
    assert len(beside(target)) == 2
    assert_next_run_clears_up(target, BY_HAND)


@pytest.mark.parametrize("after", [False, True])
def test_file_changed_or_deleted_after_a_killed_run_stays_so(tmp_path: Path, after: bool) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    put_by_hand(target)
    assert not ended(child(lambda: killed_at_the_swap(target, after=after)))
    (target / "CNAME").unlink()
    (target / "CNAME").write_text("example.net")
    (target / "notes/n").unlink()
    assert publish(target, THIRD) == []
    kept: dict[str, str | bytes] = {"CNAME": b"example.net", "a/films": "-> ../../films", "notes": "folder"}
    assert_whole(target, THIRD, by_hand=kept)
    assert beside(target) == set()


def test_killed_after_any_time(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {f"{n % 7}/{n}.html": f"new page {n} " * 500 for n in range(250)}
    target = tmp_path / "site"
    publish(target, OLD)
    put_by_hand(target)
    started = time.monotonic()
    assert ended(child(lambda: publish(target, files)))
    whole_time = time.monotonic() - started
    for step in range(14):
        publish(target, OLD)
        number = child(lambda: publish(target, files))
        time.sleep(whole_time * step / 12)
        os.kill(number, signal.SIGKILL)
        os.waitpid(number, 0)
        assert_whole(target, OLD, files, by_hand=BY_HAND)
    assert_next_run_clears_up(target, BY_HAND)


def test_second_run_is_told_that_another_is_publishing(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(target, OLD)
    with SiteWriter(target) as writer:
        writer.write("index.html", "from the first run")
        with pytest.raises(NotReplaced) as caught:
            publish(target, NEW)
    assert caught.value.reason == (f"Another run is publishing to {target}. Wait until it is done, then publish again.")
    assert files_in(target) == {"index.html": b"from the first run"}
    assert beside(target) == set()


def test_lock_of_another_process_holds_until_it_is_killed(tmp_path: Path) -> None:
    target = tmp_path / "site"
    ready, is_ready = os.pipe()

    def hold() -> None:
        with SiteWriter(target):
            os.write(is_ready, b"x")
            time.sleep(60)

    number = child(hold)
    try:
        assert os.read(ready, 1) == b"x"
        with pytest.raises(NotReplaced, match="Another run is publishing"):
            publish(target, NEW)
        assert len(beside(target)) == 2
    finally:
        os.kill(number, signal.SIGKILL)
        os.waitpid(number, 0)
        os.close(ready)
        os.close(is_ready)
    publish(target, NEW)
    assert files_in(target) == as_bytes(NEW)
    assert beside(target) == set()


@pytest.mark.parametrize("kind", ["file", "folder", "link"])
def test_foreign_thing_where_the_lock_file_should_be_is_not_touched(tmp_path: Path, kind: str) -> None:
    lock = tmp_path / ".site.lock"
    if kind == "file":
        lock.write_text("mine")
    elif kind == "folder":
        lock.mkdir()
    else:
        (tmp_path / "mine").touch()
        lock.symlink_to("mine")
    before = content(tmp_path)
    with pytest.raises(NotReplaced, match=r"lock"):
        publish(tmp_path / "site", NEW)
    assert content(tmp_path) == before


def test_leftover_of_another_maker_is_not_touched(tmp_path: Path) -> None:
    target = tmp_path / "site"
    name = ".site.building-0123456789abcdef"
    (tmp_path / name).mkdir()
    (tmp_path / name / "mine.txt").write_text("mine")
    publish(tmp_path / "elsewhere", OLD)
    (tmp_path / ".site.before-0123456789abcdef").symlink_to("elsewhere")
    damaged = tmp_path / ".site.building-00000000deadbeef"
    damaged.mkdir()
    (damaged / ".sitegen.json").write_text("{")
    before = content(tmp_path)
    notes = publish(target, NEW)
    after = content(tmp_path)
    assert {path: after[path] for path in before} == before
    assert len(notes) == 1
    assert str(damaged) in notes[0]


@pytest.mark.parametrize("holds", [[], [".sitegen.json.part"]])
def test_leftover_of_a_run_that_had_just_begun_is_taken_away(tmp_path: Path, holds: list[str]) -> None:
    left = leftovers.fresh_name(tmp_path / "site", leftovers.Beside.BUILDING)
    left.mkdir()
    for name in holds:
        (left / name).write_text("{")
    publish(tmp_path / "site", NEW)
    assert beside(tmp_path / "site") == set()
