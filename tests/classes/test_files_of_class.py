"""The table and the calendar of a class, read back by other libraries, and how they are written."""

from __future__ import annotations

import builtins
import csv
import io
import os
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from classes.class_folders import CLASS, whole_class
from content import EXAMPLE
from hypothesis import given
from hypothesis import strategies as st

from sitegen.checks import review_class
from sitegen.classes import (
    HEAD,
    ComputedClass,
    NoCalendar,
    NotWritten,
    as_csv,
    calendar_of,
    is_own,
    kit_of,
    kit_rows,
    safe,
    sealed_calendar,
    sealed_table,
    shown_twice,
    skipped,
    write_own,
)
from sitegen.quantities import System
from sitegen.reading import ContentFolder

icalendar = pytest.importorskip("icalendar")

NOW = datetime(2026, 11, 1, 9, 30, tzinfo=UTC)


def example(name: str) -> ComputedClass:
    cls, _ = review_class(ContentFolder(EXAMPLE, "content_example"), f"classes/{name}.yaml")
    assert cls is not None
    return cls


def table(cls: ComputedClass) -> str:
    return as_csv(kit_rows(kit_of(cls, System.CENTIMETRES), cls, System.CENTIMETRES))


def test_table_is_read_back_as_it_was_meant() -> None:
    cls = example("evening-tee")
    text = sealed_table(table(cls)).decode("utf-8-sig")
    rows = list(csv.DictReader(io.StringIO(text)))
    assert tuple(rows[0]) == HEAD
    bought = {row["item"]: row for row in rows if row["list"] == "to buy"}
    assert (bought["polyester sewing thread"]["amount"], bought["polyester sewing thread"]["unit"]) == ("9", "spools")
    total = sum(float(row["amount"]) * float(row["each"]) for row in bought.values())
    cost = next(row for row in rows if row["list"] == "cost of the kit")
    assert f"{total:.2f}" == cost["cost"]
    by_student = [row for row in rows if row["list"] == "cost by student"]
    assert [row["size"] for row in by_student] == ["S", "M", "L", "XL"]
    paid = sum(float(row["cost"]) * int(row["amount"]) for row in by_student)
    assert abs(paid - float(cost["cost"])) <= 0.005 * 8
    bags = {row["size"]: int(row["amount"]) for row in rows if row["list"] == "bags"}
    assert bags == {"S": 2, "M": 3, "L": 2, "XL": 1}
    sleeves = [row for row in rows if row["list"] == "cut before class" and row["item"] == "sleeve"]
    assert sum(int(row["amount"]) for row in sleeves) == 16
    assert "\r\n" in text


@given(st.text(max_size=20))
def test_no_cell_is_a_formula(cell: str) -> None:
    text = as_csv(((cell,) + ("",) * (len(HEAD) - 1),))
    read = list(csv.reader(io.StringIO(text, newline="")))[1][0]
    assert read == safe(cell)
    assert not read.startswith(("=", "+", "-", "@", "\t", "\r", "\n"))


def test_names_of_a_tutorial_are_no_formulas_in_the_table(tmp_path: Path) -> None:
    from classes.class_folders import TOTE

    cls = whole_class(tmp_path, tutorial=TOTE.replace("item: chalk", "item: '=1+1'"))
    cells = [cell for row in csv.reader(io.StringIO(table(cls))) for cell in row]
    assert "'=1+1" in cells
    assert "=1+1" not in cells


def events(data: bytes) -> list[Any]:
    return list(icalendar.Calendar.from_ical(data).walk("VEVENT"))


def test_calendar_is_read_back_with_local_times() -> None:
    cls = example("holiday-trousers")
    calendar = icalendar.Calendar.from_ical(sealed_calendar(calendar_of(cls, NOW)))
    assert str(calendar["version"]) == "2.0"
    assert [str(zone["tzid"]) for zone in calendar.walk("VTIMEZONE")] == ["Europe/London"]
    first, second = calendar.walk("VEVENT")
    begins = first["dtstart"].dt
    assert begins.replace(tzinfo=None) == datetime(2027, 4, 7, 9, 30)
    assert (
        begins.utcoffset() == timedelta(hours=1) == datetime(2027, 4, 7, tzinfo=ZoneInfo("Europe/London")).utcoffset()
    )
    assert first["dtstart"].params["TZID"] == "Europe/London"
    assert second["dtend"].dt - second["dtstart"].dt == timedelta(hours=3, minutes=15)
    assert first["summary"].startswith("Holiday class: trousers for a child, session 1 of 2")
    assert "Sew the side seams" in first["description"]
    assert "Bring: scissors, pins, tape measure" in first["description"]
    assert str(first["location"]) == "the Rushlight Landing Workroom"


@pytest.mark.parametrize(
    ("zone", "day"),
    [
        ("Europe/London", "2027-03-28"),
        ("America/New_York", "2027-03-14"),
        ("Africa/Casablanca", "2027-03-14"),
        ("Australia/Lord_Howe", "2027-10-03"),
        ("America/St_Johns", "2027-11-07"),
        ("Asia/Kolkata", "2027-06-01"),
    ],
)
def test_another_library_reads_the_clock_changes_to_the_minute(zone: str, day: str, tmp_path: Path) -> None:
    """RFC 5545, 3.6.5: clocks are changed at a local time of the way in which they went until then."""
    tzical = pytest.importorskip("dateutil.tz").tzical
    dated = f'time_zone: {zone}\nsessions: [{{date: {day}, begins: "18:30", minutes: 150}}]\n'
    cls = whole_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    data = sealed_calendar(calendar_of(cls, NOW)).decode()
    theirs = tzical(io.StringIO(data.replace("\r\n", "\n"))).get(zone)
    local = datetime.fromisoformat(f"{day}T00:00")
    for minute in range(0, 60 * 24, 10):
        moment = local + timedelta(minutes=minute)
        if not skipped(moment, zone):
            assert theirs.utcoffset(moment) == moment.replace(tzinfo=ZoneInfo(zone)).utcoffset(), moment
    onsets = [rules["dtstart"].dt for rules in icalendar.Calendar.from_ical(data).walk("DAYLIGHT")]
    if zone == "Europe/London":
        assert onsets == [datetime(2027, 3, 28, 1, 0)]


def test_zone_without_changes_of_clocks_needs_no_rules(tmp_path: Path) -> None:
    dated = 'time_zone: UTC\nsessions: [{date: 2027-01-12, begins: "18:30", minutes: 150}]\n'
    cls = whole_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    data = calendar_of(cls, NOW)
    assert b"DTSTART:20270112T183000Z" in data
    assert b"VTIMEZONE" not in data


@pytest.mark.parametrize(
    ("zone", "evening"),
    [
        ("Europe/London", "2027-03-27"),
        ("Europe/London", "2027-10-30"),
        ("America/New_York", "2027-03-13"),
        ("America/New_York", "2027-11-06"),
        ("Australia/Lord_Howe", "2027-10-02"),
        ("Australia/Lord_Howe", "2027-04-03"),
        ("Asia/Kolkata", "2027-06-01"),
    ],
)
def test_events_last_as_long_as_the_sessions_whenever_clocks_are_changed(
    zone: str, evening: str, tmp_path: Path
) -> None:
    """RFC 5545, 3.8.2.2 and 3.3.5: an event lasts from the one moment to the other."""
    first = datetime.fromisoformat(f"{evening}T20:00")
    begins = [first + timedelta(minutes=20 * step) for step in range(30)]
    sessions = "".join(f'  - {{date: {each:%Y-%m-%d}, begins: "{each:%H:%M}", minutes: 150}}\n' for each in begins)
    text = CLASS.replace("sessions: [{minutes: 200}]\n", f"time_zone: {zone}\nsessions:\n{sessions}")
    found = events(calendar_of(whole_class(tmp_path, text), NOW))
    assert len(found) == len(begins)
    for event, local in zip(found, begins, strict=True):
        lasts = event["dtend"].dt.astimezone(UTC) - event["dtstart"].dt.astimezone(UTC)
        assert lasts == timedelta(minutes=150), local
        assert event["dtstart"].dt.replace(tzinfo=None) == local


def test_hour_that_comes_twice_ends_by_utc(tmp_path: Path) -> None:
    dated = 'time_zone: Europe/London\nsessions: [{date: 2027-10-31, begins: "0:30", minutes: 120}]\n'
    data = calendar_of(whole_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated)), NOW)
    assert b"DTSTART;TZID=Europe/London:20271031T003000\r\n" in data
    assert b"DTEND:20271031T013000Z\r\n" in data


def test_times_that_clocks_skip_and_times_that_they_show_twice() -> None:
    assert skipped(datetime(2027, 3, 28, 1, 30), "Europe/London")
    assert not skipped(datetime(2027, 3, 28, 2, 0), "Europe/London")
    assert not skipped(datetime(2027, 3, 28, 0, 59), "Europe/London")
    assert not skipped(datetime(2027, 10, 31, 1, 30), "Europe/London")
    assert not skipped(datetime(2027, 3, 28, 1, 30), "")
    assert shown_twice(datetime(2027, 10, 31, 1, 30), "Europe/London")
    assert not shown_twice(datetime(2027, 10, 31, 2, 0), "Europe/London")
    assert not shown_twice(datetime(2027, 3, 28, 1, 30), "Europe/London")
    assert not shown_twice(datetime(2027, 10, 31, 1, 30), "")


def test_importing_again_updates_the_same_events(tmp_path: Path) -> None:
    dated = 'time_zone: Europe/Berlin\nsessions: [{date: 2027-01-12, begins: "18:30", minutes: 150}]\n'
    text = CLASS.replace("sessions: [{minutes: 200}]\n", dated)
    before, later = (
        whole_class(tmp_path / name, text.replace("18:30", begins)) for name, begins in (("a", "18:30"), ("b", "19:00"))
    )
    (old,), (new,) = events(calendar_of(before, NOW)), events(calendar_of(later, NOW + timedelta(days=1)))
    assert old["uid"] == new["uid"]
    assert new["dtstamp"].dt > old["dtstamp"].dt
    assert (new["dtstart"].dt - old["dtstart"].dt) == timedelta(minutes=30)
    ids = [
        event["uid"]
        for name in ("evening-tee", "holiday-trousers")
        for event in events(calendar_of(example(name), NOW))
    ]
    assert len(set(ids)) == 5


def test_same_class_same_bytes() -> None:
    assert calendar_of(example("evening-tee"), NOW) == calendar_of(example("evening-tee"), NOW)


def test_no_calendar_without_dates(tmp_path: Path) -> None:
    with pytest.raises(NoCalendar, match="Session 1 has no date, so it cannot stand in a calendar"):
        calendar_of(whole_class(tmp_path), NOW)


def test_missing_package_is_told_with_its_cure(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def without(name: str, *args: Any, **kwargs: Any) -> Any:
        if name == "icalendar":
            raise ImportError(name)
        return real(name, *args, **kwargs)

    cls = example("evening-tee")
    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(NoCalendar, match=r"Install it with: pip install 'sitegen\[classes\]'"):
        calendar_of(cls, NOW)


def test_own_files_are_known_by_their_seal() -> None:
    cls = example("evening-tee")
    for data in (sealed_table(table(cls)), sealed_calendar(calendar_of(cls, NOW))):
        assert is_own(data)
        assert not is_own(data + b"x")
        assert not is_own(data.replace(b"class", b"Class", 1))
    assert not is_own(b"")
    assert not is_own(table(cls).encode())


def test_own_file_is_replaced_and_no_other(tmp_path: Path) -> None:
    target = tmp_path / "kit.csv"
    first, second = sealed_table("a,b\r\n"), sealed_table("c,d\r\n")
    write_own(target, first)
    write_own(target, second)
    assert target.read_bytes() == second
    changed = second.replace(b"c,d", b"c,e")
    target.write_bytes(changed)
    with pytest.raises(NotWritten, match="was not written by this program or was changed since"):
        write_own(target, first)
    assert target.read_bytes() == changed
    assert os.listdir(tmp_path) == ["kit.csv"]


def test_places_that_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    (tmp_path / "link.csv").symlink_to(tmp_path / "elsewhere.csv")
    for name, message in (
        ("folder", "is a folder. Name a file in it."),
        ("link.csv", "is a link."),
        ("nowhere/kit.csv", "could not be written: no such file or directory"),
        ("kit\0.csv", "could not be written: this is not a usable path"),
    ):
        with pytest.raises(NotWritten, match=message):
            write_own(tmp_path / name, sealed_table("a\r\n"))
    assert sorted(os.listdir(tmp_path)) == ["folder", "link.csv"]


def test_a_write_that_breaks_off_leaves_the_old_file_and_no_other(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "kit.csv"
    write_own(target, sealed_table("a\r\n"))
    before = target.read_bytes()

    def full(*names: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(NotWritten, match="no space left on device"):
        write_own(target, sealed_table("b\r\n"))
    assert target.read_bytes() == before
    assert os.listdir(tmp_path) == ["kit.csv"]
