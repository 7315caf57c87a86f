"""What clocks at a place show, by the rules of its time zone: times that they skip, and when they are changed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

_DAY, _SECOND = timedelta(days=1), timedelta(seconds=1)


@dataclass(frozen=True, slots=True)
class ClockTime:
    """How clocks go for a while: from when on, by the clocks as they went until then, how far they were and are ahead
    of UTC, what the time is called, and whether it is summer time."""

    begins: datetime
    offset_before: timedelta
    offset: timedelta
    name: str
    summer: bool


def skipped(local: datetime, zone: str) -> bool:
    """Whether clocks of a time zone never show this time of this day, since they are put forward over it.

    Source: such a time, taken to UTC and back, comes back as another one (PEP 495). False for a zone that is not known.
    """
    try:
        known = ZoneInfo(zone)
    except (ZoneInfoNotFoundError, ValueError):
        return False
    back = local.replace(tzinfo=known).astimezone(UTC).astimezone(known)
    return back.replace(tzinfo=None) != local


def clock_times(zone: ZoneInfo, first: datetime, last: datetime) -> Iterator[ClockTime]:
    """How clocks go from the one moment to the other, both in UTC, each way from when it begins.

    RFC 5545, 3.6.5: a way of going begins at a local time of the way that it follows.
    """
    offset = _as_it_goes(zone, first)[0]
    yield _clock_time(zone, first, offset)
    moment = first
    while moment < last:
        following = moment + _DAY
        if _as_it_goes(zone, following) != _as_it_goes(zone, moment):
            begins = _change_between(zone, moment, following)
            yield _clock_time(zone, begins, _as_it_goes(zone, moment)[0])
        moment = following


def _clock_time(zone: ZoneInfo, begins: datetime, offset_before: timedelta) -> ClockTime:
    offset, name, summer = _as_it_goes(zone, begins)
    return ClockTime((begins + offset_before).replace(tzinfo=None), offset_before, offset, name, summer)


def _as_it_goes(zone: ZoneInfo, moment: datetime) -> tuple[timedelta, str, bool]:
    local = moment.astimezone(zone)
    return local.utcoffset() or timedelta(0), local.tzname() or "", bool(local.dst())


def _change_between(zone: ZoneInfo, early: datetime, late: datetime) -> datetime:
    """The moment of the one change between two moments, to the second."""
    before = _as_it_goes(zone, early)
    while late - early > _SECOND:
        middle = early + (late - early) // _SECOND // 2 * _SECOND
        early, late = (middle, late) if _as_it_goes(zone, middle) == before else (early, middle)
    return late
