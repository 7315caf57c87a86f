"""What clocks at a place show, by the rules of its time zone: times that they skip or show twice, how long it is from
one time to another, and when they are changed.

A time that clocks show twice is the first of the two unless its ``fold`` says otherwise (PEP 495; RFC 5545, 3.3.5).
"""

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
    known = _known(zone)
    if known is None:
        return False
    back = local.replace(tzinfo=known).astimezone(UTC).astimezone(known)
    return back.replace(tzinfo=None) != local


def shown_twice(local: datetime, zone: str) -> bool:
    """Whether clocks of a time zone show this time of this day twice, since they are put back over it.

    False for a zone that is not known.
    """
    known = _known(zone)
    if known is None or skipped(local, zone):
        return False
    first, second = (local.replace(tzinfo=known, fold=fold).utcoffset() for fold in (0, 1))
    return first != second


def moment(local: datetime, zone: str) -> datetime:
    """The moment at which clocks of a time zone show this, in UTC; as if they were UTC for a zone that is not known."""
    return local.replace(tzinfo=_known(zone) or UTC).astimezone(UTC)


def passed(begins: datetime, ends: datetime, zone: str) -> timedelta:
    """The time that passes between two times that clocks show, whether they are changed meanwhile or not."""
    return moment(ends, zone) - moment(begins, zone)


def later(local: datetime, time: timedelta, zone: str) -> datetime:
    """What clocks show when this time has passed; where they show it for the second time, its ``fold`` says so."""
    return (moment(local, zone) + time).astimezone(_known(zone) or UTC).replace(tzinfo=None)


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


def _known(zone: str) -> ZoneInfo | None:
    try:
        return ZoneInfo(zone)
    except (ZoneInfoNotFoundError, ValueError):
        return None


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
