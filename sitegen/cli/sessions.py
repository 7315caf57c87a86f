"""``sitegen sessions CLASS [--ics FILE]``"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from textwrap import fill
from typing import Any

from sitegen.classes import (
    RULE,
    ComputedClass,
    NoCalendar,
    Placed,
    Plan,
    SessionPlan,
    calendar_of,
    plan_of,
    sealed_calendar,
    without_minutes,
)
from sitegen.cli.one_class import Found, add_class, heading, one_class, say_written, units_of, write
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG
from sitegen.quantities import System, show_working
from sitegen.tutorial import Step

_WIDTH = 100


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    command = commands.add_parser(
        "sessions",
        help="spread the steps of a tutorial over the sessions of a class",
        description="Lays the steps of a tutorial into the sessions of a class, by their minutes, by what waits for"
        " what, and by the tools that students share.",
        epilog="Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written.",
    )
    add_class(command)
    command.add_argument("--working", action="store_true", help="show how the minutes of every step were got")
    command.add_argument("--ics", metavar="FILE", help="write the sessions as a calendar (iCalendar)")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Plan, print, write the calendar."""
    found = one_class(options)
    if isinstance(found, int):
        return found
    if without_minutes(found.cls):
        return found.code
    plan = plan_of(found.cls)
    written = NOTHING_WRONG, ""
    if options.ics is not None:
        written = _calendar(found, options.ics)
    print("\n".join(_told(plan, found.cls, units_of(options, found.cls), working=options.working)))
    return say_written(*written) or found.code


def _calendar(found: Found, file: str) -> tuple[int, str]:
    """Write the calendar; the exit code, and what to say of it."""
    what = "The calendar of the sessions"
    if found.any_wrong:
        return write(file, b"", found, what)
    try:
        data = calendar_of(found.cls, datetime.now(UTC).replace(microsecond=0))
    except NoCalendar as reason:
        return COULD_NOT, f"sitegen: nothing was written. {reason}"
    return write(file, sealed_calendar(data), found, what)


def _told(plan: Plan, cls: ComputedClass, system: System, *, working: bool) -> Iterator[str]:
    yield heading(cls)
    for head, steps in (
        ("Before class, by the teacher", plan.before),
        ("At home, before the first session", plan.homework_before),
    ):
        if steps:
            yield from ("", f"{head}: {_titles(steps)}")
    for session in plan.sessions:
        yield from _session(session, system, working=working)
    left = (*(work.step for work in plan.left), *plan.left_at_home)
    if left:
        yield from ("", f"Left over: {_titles(left)}")
    yield ""
    yield from (fill(sentence, _WIDTH) for sentence in RULE)
    taking_turns = any(work.tool for work in (*plan.works, *plan.left))
    if taking_turns:
        share = f"{cls.written.at_tool.value * 100}%"
        yield fill(
            f"Where there are fewer tools than students, a step takes its minutes away from the tool, and its minutes"
            f" at the tool once for each turn; {share} of a step are taken to be at the tool (common practice, no"
            " source).",
            _WIDTH,
        )


def _session(planned: SessionPlan, system: System, *, working: bool) -> Iterator[str]:
    session = planned.session
    if session.starts is not None and session.stops is not None:
        day = f"{session.starts:%A} {session.starts.day} {session.starts:%B %Y}"
        head = f"{day}, {session.starts:%H:%M} to {session.stops:%H:%M}"
    else:
        head = f"{session.minutes} minutes"
    yield from ("", f"Session {session.number}: {head}")
    for placed in planned.placed:
        yield from _placed(placed, planned, system, working=working)
    yield f"  {planned.free} minutes are left."
    if planned.homework:
        yield f"  Homework: {_titles(planned.homework)}"


def _placed(placed: Placed, planned: SessionPlan, system: System, *, working: bool) -> Iterator[str]:
    work = placed.work
    turns = f"  ({work.turns} turns at the {work.tool}; each waits {work.waiting} min)" if work.tool else ""
    yield f"  {_clock(planned, placed.begins)}  {work.takes:>3} min  {work.step.title}{turns}"
    if placed.meanwhile:
        yield f"                   while waiting: {_titles(placed.meanwhile)}"
    if not placed.may_stop:
        yield "                   go on at once; do not stop here"
    if working:
        yield from (f"                   {line}" for line in show_working(work.minutes, system))
    if placed.pause_after:
        yield f"  {_clock(planned, placed.begins + work.takes)}  {planned.session.pause:>3} min  break"


def _clock(planned: SessionPlan, minutes: int) -> str:
    """The time of the day, or the minutes since the session began where that is not known."""
    starts = planned.session.starts
    return f"{starts + timedelta(minutes=minutes):%H:%M}" if starts is not None else f"{minutes:>4}′"


def _titles(steps: tuple[Step, ...]) -> str:
    return ", ".join(f"“{step.title}”" for step in steps)
