"""The sessions of a class as a calendar (RFC 5545, iCalendar). Needs the package ``icalendar``."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import TYPE_CHECKING
from uuid import NAMESPACE_URL, uuid5
from zoneinfo import ZoneInfo

from sitegen.classes.clocks import clock_times
from sitegen.classes.model import ComputedClass, Session
from sitegen.classes.plan import SessionPlan, plan_of

if TYPE_CHECKING:
    from icalendar import Event, Timezone

_PRODUCT = "-//sitegen//classes//EN"


class NoCalendar(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why there is no calendar, in words."""


def calendar_of(cls: ComputedClass, now: datetime) -> bytes:
    """The sessions as a calendar that a program can import; importing a later one again updates the same events.

    Times are those of clocks at the place, with the rules of their time zone. ``now`` says when the calendar was made,
    by which a program tells the later one of two (RFC 5546, 2.1.5). Raises NoCalendar when the package is not
    installed, a session has no date, or there is nothing to write.
    """
    try:
        from icalendar import Calendar
    except ImportError:
        raise NoCalendar(
            "A calendar needs the package icalendar. Install it with: pip install 'sitegen[classes]'"
        ) from None
    undated = [session.number for session in cls.written.sessions if session.starts is None]
    if undated or not cls.written.sessions:
        which = f"Session {undated[0]} has no date" if undated else "The class has no sessions"
        raise NoCalendar(f'{which}, so it cannot stand in a calendar. Example: {{date: 2027-01-12, begins: "18:30"}}')
    calendar = Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    plan = plan_of(cls)
    for planned in plan.sessions:
        calendar.add_component(_event(planned, cls, now))
    days = [session.day for session in cls.written.sessions if session.day is not None]
    for name in sorted(calendar.get_missing_tzids()):
        calendar.add_component(_zone(name, min(days).year, max(days).year))
    return bytes(calendar.to_ical())


def event_id(cls: ComputedClass, session: Session) -> str:
    """The name of a session in every calendar, always the same: made of the site, the class and its number."""
    home = cls.written.address or "sitegen"
    return str(uuid5(NAMESPACE_URL, f"{home}/classes/{cls.written.key}/session-{session.number}"))


def _zone(name: str, first_year: int, last_year: int) -> Timezone:
    """The rules of a time zone for these years, one component for each change of the clocks.

    They are worked out here: icalendar 7 lets summer time begin an hour late.
    """
    from icalendar import Timezone, TimezoneDaylight, TimezoneStandard

    zone = Timezone()
    zone.add("tzid", name)
    first, last = datetime(first_year, 1, 1, tzinfo=UTC), datetime(last_year + 1, 1, 1, tzinfo=UTC)
    for each in clock_times(ZoneInfo(name), first, last):
        rules = TimezoneDaylight() if each.summer else TimezoneStandard()
        rules.add("dtstart", each.begins)
        rules.add("tzoffsetfrom", each.offset_before)
        rules.add("tzoffsetto", each.offset)
        rules.add("tzname", each.name)
        zone.add_component(rules)
    return zone


def _event(planned: SessionPlan, cls: ComputedClass, now: datetime) -> Event:
    from icalendar import Event

    session, zone = planned.session, ZoneInfo(cls.written.time_zone)
    if session.starts is None or session.stops is None:
        raise NoCalendar(f"Session {session.number} has no date.")
    event = Event()
    event.add("uid", event_id(cls, session))
    event.add("dtstamp", now)
    event.add("dtstart", session.starts.replace(tzinfo=zone))
    event.add("dtend", _end(session.stops.replace(tzinfo=zone)))
    event.add("summary", f"{cls.written.title}, session {session.number} of {len(cls.written.sessions)}")
    if cls.written.where:
        event.add("location", cls.written.where)
    event.add("description", "\n".join(_words(planned, cls)))
    return event


def _end(stops: datetime) -> datetime:
    """When a session ends, in UTC where clocks show that time for the second time.

    A local time that is shown twice means the first of the two (RFC 5545, 3.3.5), and an event that begins by clocks of
    a time zone may end by UTC (3.8.2.2).
    """
    return stops.astimezone(UTC) if stops.fold else stops


def _words(planned: SessionPlan, cls: ComputedClass) -> list[str]:
    lines = [placed.work.step.title for placed in planned.placed]
    if planned.homework:
        lines.append(f"Homework: {', '.join(step.title for step in planned.homework)}")
    if cls.written.brings:
        lines.append(f"Bring: {', '.join(words.text for words in cls.written.brings)}")
    return lines
