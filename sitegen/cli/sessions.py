"""``sitegen sessions CLASS [--ics FILE]``"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from datetime import UTC, datetime
from textwrap import fill

from sitegen.classes import NoCalendar, calendar_of, sealed_calendar, without_minutes
from sitegen.cli.one_class import Found, add_class, heading, one_class, say_written, units_of, write
from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG
from sitegen.publishing import PlanStep, PlanView, SessionView, StepName, plan_view

_WIDTH = 100


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Lays the steps of a tutorial into the sessions of a class, by their minutes, by what waits for"
        " what, and by the tools that students share."
    )
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 something could not be read or written."
    add_class(command)
    command.add_argument("--working", action="store_true", help="show how the minutes of every step were got")
    command.add_argument("--ics", metavar="FILE", help="write the sessions as a calendar (iCalendar)")


def run(options: argparse.Namespace) -> int:
    """Plan, print, write the calendar."""
    found = one_class(options)
    if isinstance(found, int):
        return found
    if without_minutes(found.cls):
        return found.code
    plan = plan_view(found.cls, units_of(options, found.cls))
    written = NOTHING_WRONG, ""
    if options.ics is not None:
        written = _calendar(found, options.ics)
    print("\n".join(_told(plan, working=options.working)))
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


def _told(plan: PlanView, *, working: bool) -> Iterator[str]:
    yield heading(plan.head)
    for head, steps in (
        ("Before class, by the teacher", plan.before),
        ("At home, before the first session", plan.homework_before),
    ):
        if steps:
            yield from ("", f"{head}: {_titles(steps)}")
    for session in plan.sessions:
        yield from _session(session, working=working)
    if plan.left:
        yield from ("", f"Left over: {_titles(plan.left)}")
    yield ""
    yield from (fill(sentence, _WIDTH) for sentence in plan.rule)


def _session(session: SessionView, *, working: bool) -> Iterator[str]:
    yield from ("", f"Session {session.number}: {session.when}")
    for step in session.steps:
        yield from _placed(step, working=working)
    yield f"  {session.free} minutes are left."
    if session.homework:
        yield f"  Homework: {_titles(session.homework)}"


def _placed(placed: PlanStep, *, working: bool) -> Iterator[str]:
    turns = f"  ({placed.turns})" if placed.turns else ""
    yield f"  {placed.begins:>5}  {placed.minutes:>3} min  {placed.step.title}{turns}"
    if placed.meanwhile:
        yield f"                   while waiting: {_titles(placed.meanwhile)}"
    if not placed.may_stop:
        yield "                   go on at once; do not stop here"
    if working:
        yield from (f"                   {line}" for line in placed.working)
    if placed.pause:
        yield f"  {placed.pause_begins:>5}  {placed.pause:>3} min  break"


def _titles(steps: tuple[StepName, ...]) -> str:
    return ", ".join(f"“{step.title}”" for step in steps)
