"""Builds the sessions of a class: days, times and minutes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from zoneinfo import available_timezones

from sitegen.classes.clocks import passed
from sitegen.classes.model import Session
from sitegen.findings import nearest
from sitegen.reading import Node, Scalar
from sitegen.tutorial.build import Fields

SESSION_EXAMPLE = 'sessions: [{date: 2027-01-12, begins: "18:30", ends: "21:00", break: 15}]'
_MOST_MINUTES = 24 * 60
_TIME = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")
_YEARS = range(1970, 2200)
"""Years for which the rules of time zones are known, or may be taken to go on as they are."""
_ZONE_EXAMPLE = "time_zone: Europe/London"


def sessions(fields: Fields) -> tuple[tuple[Session, ...], bool]:
    """The sessions in the order in which they were written, none when they are missing (reported), and whether one of
    them was not understood (reported too)."""
    fields.required("sessions", SESSION_EXAMPLE)
    nodes = fields.mappings("sessions", SESSION_EXAMPLE)
    read = [_session(number, Fields(fields.builder, node, f"session {number}")) for number, node in enumerate(nodes, 1)]
    found = tuple(session for session in read if session is not None)
    return found, len(found) < len(nodes)


def time_zone(fields: Fields, found: tuple[Session, ...]) -> str:
    """The time zone by its name in the IANA database; needed as soon as a session has a date."""
    dated = any(session.day is not None for session in found)
    node = fields.required("time_zone", _ZONE_EXAMPLE) if dated else fields.get("time_zone")
    words = fields.builder.words(node, "the name of a time zone", _ZONE_EXAMPLE) if node is not None else None
    known = available_timezones()
    # Some systems bring no list of time zones; then nothing can be said against a name.
    if words is None or not known or words.text in known:
        return words.text if words is not None else ""
    if isinstance(node, Scalar):
        near = nearest(words.text, known, most=1)
        hint = f" Nearest: {near[0]}." if near else f" Example: {_ZONE_EXAMPLE}"
        fields.builder.wrong(
            "unknown-reference",
            words.place,
            f"There is no time zone “{words.text}” in the IANA database.{hint}",
            said=words.text,
            should_be=near[0] if near else "",
        )
    return ""


def by_clocks(found: Iterable[Session], zone: str) -> tuple[Session, ...]:
    """The sessions by the clocks of their time zone: where these are changed between begin and end, an hour more or
    less passes than they show."""
    return tuple(_by_clocks(session, zone) for session in found)


def _by_clocks(session: Session, zone: str) -> Session:
    own = replace(session, zone=zone)
    starts, stops = own.starts, own.said_to_stop
    minutes = passed(starts, stops, zone) // timedelta(minutes=1) if starts is not None and stops is not None else 0
    # None pass to a time that clocks skip; such a session is wrong, and goes on as it was written.
    return replace(own, minutes=minutes) if minutes > 0 else own


def _session(number: int, fields: Fields) -> Session | None:
    builder = fields.builder
    day_node, begins_node, ends_node = fields.get("date"), fields.get("begins"), fields.get("ends")
    minutes_node, break_node = fields.get("minutes"), fields.get("break")
    day = _day(fields, day_node) if day_node is not None else None
    begins = _time(fields, begins_node, 'begins: "18:30"') if begins_node is not None else None
    ends = _time(fields, ends_node, 'ends: "21:00"') if ends_node is not None else None
    pause = builder.whole_number(break_node, "break: 15", most=_MOST_MINUTES) if break_node is not None else 0
    minutes = (
        builder.whole_number(minutes_node, "minutes: 150", most=_MOST_MINUTES) if minutes_node is not None else None
    )
    fields.finish()
    if day_node is not None and begins_node is None:
        fields.required("begins", 'begins: "18:30"')
    if (ends_node is None) == (minutes_node is None):
        _one_of_two(fields, both=ends_node is not None)
        return None
    if ends_node is not None and begins_node is None:
        fields.required("begins", 'begins: "18:30"')
        return None
    if ends is not None and begins is not None:
        minutes = _between(begins, ends)
        if minutes <= 0 and isinstance(ends_node, Scalar):
            builder.wrong(
                "session-backwards",
                ends_node.place,
                f"Session {number} ends at {ends:%H:%M}, but it begins at {begins:%H:%M}. A session ends on the day on"
                " which it begins.",
                said=ends_node.text.strip(),
            )
            return None
    if minutes is None or (pause or 0) >= minutes:
        if minutes is not None and break_node is not None:
            builder.not_this(break_node, f"a break shorter than the session of {minutes} minutes", "break: 15")
        return None
    return Session(number, fields.node.place, day, begins, ends, minutes, pause or 0)


def _one_of_two(fields: Fields, *, both: bool) -> None:
    what = "has both ends and minutes. Keep one of them" if both else "lacks ends or minutes"
    fields.builder.wrong(
        "given-twice" if both else "key-missing",
        fields.node.place,
        f"{fields.what.capitalize()} {what}. Example: {SESSION_EXAMPLE}",
    )


def _between(begins: time, ends: time) -> int:
    some_day = date(2000, 1, 1)
    return (datetime.combine(some_day, ends) - datetime.combine(some_day, begins)) // timedelta(minutes=1)


def _day(fields: Fields, node: Node) -> date | None:
    if isinstance(node, Scalar) and re.fullmatch(r"\d{4}-\d{2}-\d{2}", node.text.strip()):
        try:
            day = date.fromisoformat(node.text.strip())
        except ValueError:
            fields.builder.not_this(node, "a day that exists", "date: 2027-01-12")
            return None
        if day.year in _YEARS:
            return day
        years = f"a day from the year {_YEARS[0]} to {_YEARS[-1]}"
        fields.builder.not_this(node, years, "date: 2027-01-12")
        return None
    fields.builder.not_this(node, "a day as year, month and day", "date: 2027-01-12")
    return None


def _time(fields: Fields, node: Node, example: str) -> time | None:
    match = _TIME.fullmatch(node.text.strip()) if isinstance(node, Scalar) else None
    if match is not None:
        return time(int(match[1]), int(match[2]))
    fields.builder.not_this(node, "a time of the day from 0:00 to 23:59", example)
    return None
