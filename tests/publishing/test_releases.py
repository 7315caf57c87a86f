"""What moved since the last releases: told where the student reads it, and kept as plain data."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from publishing.sites_of_releases import FIRST, SECOND, TEE, THIRD, files, release, soup, stored, words

from sitegen.publishing import compare_records
from sitegen.publishing.releases import (
    PublishedNumber,
    PublishedPage,
    Record,
    SizeChange,
    Status,
    next_record,
    read_record,
    record_text,
)
from sitegen.publishing.releases.release import KEPT_RELEASES
from sitegen.publishing.views import Both

PAGE = "tutorials/tee/index.html"


def both(text: str) -> Both:
    return Both(f"{text} in", f"{text} cm")


def page(numbers: dict[str, tuple[str, ...]], sizes: tuple[str, ...] = ("S", "M")) -> PublishedPage:
    told = {name: PublishedNumber(name, tuple(map(both, values))) for name, values in numbers.items()}
    return PublishedPage("tee", "", "Tee", sizes, told, json.dumps(numbers), FIRST, FIRST)


def record(numbers: dict[str, tuple[str, ...]], sizes: tuple[str, ...] = ("S", "M")) -> Record:
    return Record(FIRST, {PAGE: page(numbers, sizes)})


def test_first_release_tells_no_change_and_keeps_every_number_of_the_page(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    assert soup(tmp_path, PAGE).select(".changed") == []
    assert "No number has moved since the release of 3 May 2026" in words(soup(tmp_path, "changes.html").main)
    kept = stored(tmp_path)["pages"][PAGE]
    assert kept["published"] == kept["updated"] == "2026-05-03"
    # 80% of 20 in and of 22 in, and 2 allowances of 3/8 in: 16 3/4 in and 18 3/8 in; 18 3/8 in are 46.7 cm.
    assert kept["numbers"]["neckband.cut_length"]["values"] == [["16 3/4 in", "42.5 cm"], ["18 3/8 in", "46.5 cm"]]


def test_moved_number_is_told_from_and_to_for_each_size(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    release(tmp_path, SECOND, ratio="90%")
    told = soup(tmp_path, PAGE).select_one("details.changed")
    assert told is not None
    assert not told.has_attr("open")
    assert told.find_previous("h1") is not None
    assert told.find_next(id="contents") is not None
    assert words(told.summary).startswith("Changed since 3 May 2026: ")
    # 90% of 20 in is 18 in, and 3/4 in of allowances make 18 3/4 in; 90% of 22 in is 19 8/10 in, and 3/4 in: 20 1/2 in on a ruler.
    assert (
        "neckband cut length S 16 3/4 in (42.5 cm) 18 3/4 in (47.5 cm) M 18 3/8 in (46.5 cm) 20 1/2 in (52 cm)"
        in words(told)
    )
    assert "neckband ratio every size 80% 90%" in words(told)
    everything = soup(tmp_path, "changes.html")
    assert words(everything.h2) == "14 June 2026 compared with 3 May 2026"
    link = everything.select_one("table.moved a")
    assert link is not None
    path, _, anchor = str(link["href"]).partition("#")
    assert soup(tmp_path, path).find(id=anchor) is not None


def test_number_that_came_or_went_is_named(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    release(tmp_path, SECOND, text=TEE.replace("RATIO", "80%") + "girths: {hem_round: {edges: [front.hem]}}\n")
    assert "New number: hem round finished girth." in words(soup(tmp_path, PAGE).select_one(".changed"))
    release(tmp_path, THIRD)
    told = words(soup(tmp_path, PAGE).select_one(".changed"))
    assert "Changed since 3 May 2026" in told
    assert "Changed on 29 November 2026 No longer told: hem round finished girth." in told
    assert "Changed on 14 June 2026 New number" in told


def test_publishing_again_without_a_change_gives_the_same_bytes_on_another_day(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    release(tmp_path, SECOND, ratio="90%")
    before = files(tmp_path)
    release(tmp_path, THIRD, ratio="90%")
    assert files(tmp_path) == before


def test_changed_words_give_a_new_day_but_no_moved_number(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    release(tmp_path, SECOND, word="the lower edge")
    kept = stored(tmp_path)
    assert (kept["released"], kept["releases"]) == ("2026-06-14", [])
    assert (kept["pages"][PAGE]["published"], kept["pages"][PAGE]["updated"]) == ("2026-05-03", "2026-06-14")
    assert soup(tmp_path, PAGE).select(".changed") == []


def test_draft_shows_what_would_move_and_is_no_release(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    kept = stored(tmp_path)
    release(tmp_path, SECOND, ratio="90%", draft=True)
    assert stored(tmp_path) == kept
    assert soup(tmp_path, PAGE).select_one(".changed") is not None
    release(tmp_path, THIRD, ratio="90%")
    assert words(soup(tmp_path, "changes.html").h2) == "29 November 2026 compared with 3 May 2026"


def test_draft_into_an_empty_folder_keeps_no_record(tmp_path: Path) -> None:
    release(tmp_path, FIRST, draft=True)
    assert "numbers.json" not in files(tmp_path)
    release(tmp_path, SECOND)
    assert stored(tmp_path)["pages"][PAGE]["published"] == "2026-06-14"


def test_page_of_a_tutorial_that_is_gone_is_told_without_a_link(tmp_path: Path) -> None:
    release(tmp_path, FIRST)
    (tmp_path / "content" / "tutorials" / "tee").rename(tmp_path / "content" / "tutorials" / "old")
    release(tmp_path, SECOND)
    for path in (tmp_path / "content" / "tutorials" / "old").rglob("*.yaml"):
        path.unlink()
    (tmp_path / "content" / "tutorials" / "old" / "steps").rmdir()
    (tmp_path / "content" / "tutorials" / "old").rmdir()
    release(tmp_path, THIRD)
    parts = soup(tmp_path, "changes.html").select(".release")
    assert "No longer on this site." in words(parts[0])
    assert parts[0].select("a") == []
    assert "A new page." in words(parts[1])


@pytest.mark.parametrize("content", ["no json {", "[1, 2]", '{"made_by": "another", "format": 1}', "[" * 100_000])
def test_foreign_file_is_left_alone_and_told(content: str, tmp_path: Path) -> None:
    site = tmp_path / "site"
    release(tmp_path, FIRST, draft=True)
    (site / "numbers.json").write_text(content)
    done = release(tmp_path, SECOND)
    assert (site / "numbers.json").read_text() == content
    assert len(done.notes) == 1
    assert "numbers.json in the folder of the site" in done.notes[0]
    assert "Move the file away" in done.notes[0]
    assert soup(tmp_path, PAGE).select(".changed") == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"format": 99}, "the format of another version"),
        ({"released": "yesterday"}, "is damaged"),
        ({"pages": {PAGE: {"tutorial": "tee"}}}, "is damaged"),
        ({"pages": [1]}, "is damaged"),
        ({"releases": [{"day": "2026-05-03", "since": 7}]}, "is damaged"),
        ({"releases": None}, "is damaged"),
    ],
)
def test_record_that_cannot_be_understood_is_a_note(change: dict[str, object], said: str, tmp_path: Path) -> None:
    data = json.loads(record_text(record({"a": ("1",)}))) | change
    (tmp_path / "numbers.json").write_text(json.dumps(data))
    found = read_record(tmp_path)
    assert (found.record, found.foreign) == (None, False)
    assert said in found.note
    assert "counts as the first one" in found.note


def test_record_with_neither_one_value_nor_one_for_each_size_is_damaged(tmp_path: Path) -> None:
    data = json.loads(record_text(record({"a": ("1", "2")})))
    data["pages"][PAGE]["sizes"] = ["S", "M", "L"]
    (tmp_path / "numbers.json").write_text(json.dumps(data))
    assert "is damaged" in read_record(tmp_path).note


def test_folder_without_a_record_has_nothing_to_say(tmp_path: Path) -> None:
    assert read_record(tmp_path) == read_record(tmp_path / "nowhere")
    assert read_record(tmp_path).note == ""


def test_record_is_read_back_as_it_was_written(tmp_path: Path) -> None:
    new = next_record(record({"a": ("1",), "b": ("1", "2")}), {PAGE: page({"a": ("3",), "c": ("1",)})}, SECOND)
    assert new.releases
    (tmp_path / "numbers.json").write_text(record_text(new), encoding="utf-8")
    assert read_record(tmp_path).record == new


def test_two_records_are_compared_size_by_size() -> None:
    old = record({"same": ("1",), "moved": ("1", "2"), "all": ("1", "2"), "gone": ("5",)})
    new = record({"same": ("1", "1"), "moved": ("1", "3"), "all": ("7",), "new": ("5",)})
    (changes,) = compare_records(old, new)
    told = {number.name: (number.status, number.sizes) for number in changes.numbers}
    assert told == {
        "all": (Status.CHANGED, (SizeChange("S", both("1"), both("7")), SizeChange("M", both("2"), both("7")))),
        "gone": (Status.GONE, (SizeChange("", both("5"), None),)),
        "moved": (Status.CHANGED, (SizeChange("M", both("2"), both("3")),)),
        "new": (Status.NEW, (SizeChange("", None, both("5")),)),
    }


def test_new_size_is_told_once_and_not_for_every_number() -> None:
    old = record({"a": ("1", "2"), "b": ("1", "1")})
    new = record({"a": ("1", "2", "3"), "b": ("1", "9", "1")}, ("S", "M", "L"))
    (changes,) = compare_records(old, new)
    assert (changes.new_sizes, changes.gone_sizes) == (("L",), ())
    assert [(each.name, each.sizes) for each in changes.numbers] == [("b", (SizeChange("M", both("1"), both("9")),))]
    (back,) = compare_records(new, old)
    assert (back.new_sizes, back.gone_sizes) == ((), ("L",))


def test_equal_records_have_no_changes() -> None:
    assert compare_records(record({"a": ("1",)}), record({"a": ("1",)})) == ()


def test_only_the_last_few_releases_are_kept() -> None:
    found = record({"a": ("0",)})
    for day in range(1, KEPT_RELEASES + 4):
        found = next_record(found, {PAGE: page({"a": (str(day),)})}, date(2026, 6, day))
    assert len(found.releases) == KEPT_RELEASES
    assert [release.day.day for release in found.releases] == list(range(KEPT_RELEASES + 3, 3, -1))
    assert found.pages[PAGE].published == FIRST
    assert all(release.since == date(2026, 6, release.day.day - 1) for release in found.releases)


def test_page_that_did_not_change_keeps_its_days_when_another_did() -> None:
    other = "tutorials/bag/index.html"
    old = Record(FIRST, {PAGE: page({"a": ("1",)}), other: replace(page({"a": ("1",)}), tutorial="bag")})
    today = {
        PAGE: replace(page({"a": ("1",)}), published=SECOND, updated=SECOND),
        other: replace(page({"a": ("2",)}), tutorial="bag", published=SECOND, updated=SECOND),
    }
    new = next_record(old, today, SECOND)
    assert (new.pages[PAGE].updated, new.pages[other].updated) == (FIRST, SECOND)
    assert [changes.address for changes in new.releases[0].pages] == [other]
