"""The chapters of a video: what they say, and that any reader of WebVTT reads them so."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import webvtt
from bs4 import BeautifulSoup
from content import EXAMPLE, computed, folder

from sitegen.publishing import publish
from sitegen.publishing.chapters import chapters
from sitegen.reading import ContentFolder

TIMING = re.compile(r"\d\d:[0-5]\d:[0-5]\d\.\d{3} --> \d\d:[0-5]\d:[0-5]\d\.\d{3}")
TITLE = re.compile(r"(?:[^\r\n&<]|&(?:amp|lt|gt);)+")


def cards(*steps: str) -> dict[str, str]:
    return {f"steps__{at:02}_dot_yaml": f"text: Sew.\n{step}\n" for at, step in enumerate(steps, 1)}


def made(root: Path, text: str, *steps: str) -> str:
    found, _ = computed(root, text, **cards(*steps))
    return chapters(found.tutorial)


def by_the_grammar(text: str) -> list[tuple[int, int, str]]:
    """Chapters in seconds, each held against section 4.1 of the recommendation of the W3C: a head, an empty line before each
    cue, a timing line whose end lies after its beginning, one line of title without an arrow or bare signs of mark-up,
    beginnings in order."""
    head, *cues = text.split("\n\n")
    assert head == "WEBVTT"
    found = []
    for cue in cues:
        timing, title = cue.rstrip("\n").split("\n")
        assert TIMING.fullmatch(timing)
        assert TITLE.fullmatch(title)
        assert "-->" not in title
        begins, ends = (
            sum(int(part) * 60**power for power, part in enumerate(reversed(time[:8].split(":"))))
            for time in timing.split(" --> ")
        )
        assert begins < ends
        found.append((begins, ends, title))
    assert found == sorted(found)
    return found


def test_chapter_is_the_title_of_a_card_and_ends_where_the_next_begins(tmp_path: Path) -> None:
    text = made(
        tmp_path,
        'video_length: "1:02:10"',
        'title: Pin the band\nvideo: "0:40"',
        "title: Rest",
        'title: Sew it\nvideo: "1:00:05"',
    )
    assert text == ("WEBVTT\n\n00:00:40.000 --> 01:00:05.000\nPin the band\n\n01:00:05.000 --> 01:02:10.000\nSew it\n")


@pytest.mark.parametrize(("minutes", "ends"), [("minutes: 30\n", 40 + 30 * 60), ("", 100), ("minutes: 0\n", 100)])
def test_last_chapter_of_a_video_of_unknown_length_lasts_as_long_as_its_card(
    minutes: str, ends: int, tmp_path: Path
) -> None:
    assert by_the_grammar(made(tmp_path, "", f'title: Pin\n{minutes}video: "0:40"')) == [(40, ends, "Pin")]


def test_cards_with_one_time_are_one_chapter(tmp_path: Path) -> None:
    text = made(tmp_path, "", 'title: Pin\nvideo: "0:40"', 'title: Sew\nvideo: "0:40"', 'title: Press\nvideo: "1:40"')
    assert [title for _, _, title in by_the_grammar(text)] == ["Pin; Sew", "Press"]


def test_signs_of_mark_up_in_a_title_stand_for_themselves(tmp_path: Path) -> None:
    text = made(tmp_path, "", 'title: "Turn --> press <b> & sew"\nvideo: "0:40"')
    ((_, _, title),) = by_the_grammar(text)
    assert title == "Turn --&gt; press &lt;b&gt; &amp; sew"


def test_times_that_are_none_make_no_chapters(tmp_path: Path) -> None:
    assert made(tmp_path, "", "title: Pin", 'title: Sew\nvideo: "14.20"') == ""


def test_times_out_of_order_are_put_in_order(tmp_path: Path) -> None:
    text = made(tmp_path, 'video_length: "0:10"', 'title: Pin\nvideo: "3:00"', 'title: Sew\nvideo: "1:00"')
    assert by_the_grammar(text) == [(60, 180, "Sew"), (180, 240, "Pin")]


def test_every_chapter_of_the_example_is_read_by_the_library(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(ContentFolder(EXAMPLE, "example"), target, draft=True, progress=lambda done, total, now: None)
    files = sorted(target.rglob("chapters.vtt"))
    assert files
    for file in files:
        text = file.read_text(encoding="utf-8")
        titles = [title for _, _, title in by_the_grammar(text)]
        assert [each.raw_text for each in webvtt.read(file)] == titles
        page = BeautifulSoup((file.parent / "index.html").read_text(encoding="utf-8"), "html.parser")
        assert len(page.find_all("a", href="chapters.vtt")) == 1


def test_tutorial_without_times_has_no_chapters(tmp_path: Path) -> None:
    target = tmp_path / "site"
    publish(
        folder(tmp_path / "mine", "", **cards("title: Pin")),
        target,
        draft=False,
        progress=lambda done, total, now: None,
    )
    assert not list(target.rglob("*.vtt"))
    assert "chapters" not in (target / "tutorials/tee/index.html").read_text(encoding="utf-8")


def test_every_view_has_the_chapters_of_its_own_cards(tmp_path: Path) -> None:
    target = tmp_path / "site"
    steps = cards('title: Pin\nvideo: "0:40"', 'title: Hood\nonly_in: {neck: hood}\nvideo: "1:40"')
    publish(
        folder(tmp_path / "mine", "views: {neck: [band, hood]}\n", **steps),
        target,
        draft=False,
        progress=lambda done, total, now: None,
    )
    assert "Hood" not in (target / "tutorials/tee/chapters.vtt").read_text(encoding="utf-8")
    assert "Hood" in (target / "tutorials/tee/hood/chapters.vtt").read_text(encoding="utf-8")
