"""The sessions of a class: their days, and whether the steps fit into them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from itertools import pairwise

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.classes import (
    ComputedClass,
    class_steps,
    moment,
    plan_of,
    shown_twice,
    skipped,
    too_long,
    ways_to_fit,
    without_minutes,
)
from sitegen.findings import Finding, Severity
from sitegen.quantities import show_working
from sitegen.tutorial import Computed, Step

_STEPS = (
    "--- steps/01-cut.yaml\ntitle: Cut out\ntext: Cut the cloth.\nminutes: 40\n"
    "--- steps/02-sew.yaml\ntitle: Sew\ntext: Sew it.\nminutes: 60\n"
)
_CLASS = "--- classes/evening.yaml\ntitle: Evening class\ntutorial: example\nstudents: 4\n"
_DAYS = (
    _CLASS + "time_zone: Europe/London\nsessions:\n"
    '  - {date: 2027-01-12, begins: "18:30", ends: "20:30"}\n'
    '  - {date: DAY, begins: "19:30", ends: "21:30"}\n'
)


@check(
    id="session-overlap",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="Sessions that overlap, or are out of order",
    why="Nobody can be in two sessions at once, and steps follow each other from session to session.",
    source="Arithmetic of dates",
    trips=_STEPS + _DAYS.replace("DAY", "2027-01-12"),
    passes=_STEPS + _DAYS.replace("DAY", "2027-01-19"),
)
def session_overlap(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Each session with a date begins when the one before it has ended, or later."""
    dated = [session for session in cls.written.sessions if session.starts is not None]
    for before, session in pairwise(dated):
        if before.stops is None or session.starts is None:
            continue
        if moment(session.starts, session.zone) >= moment(before.stops, before.zone):
            continue
        yield Finding(
            "session-overlap",
            Severity.WRONG,
            session.place,
            f"Session {session.number} begins on {session.starts:%Y-%m-%d at %H:%M}, before session {before.number} has"
            f" ended on {before.stops:%Y-%m-%d at %H:%M}. Put sessions in the order in which they are held.",
        )


@check(
    id="session-skipped",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A session at a time that clocks skip",
    why="When clocks are put forward, an hour of that night is never shown, and every calendar moves it another way.",
    source="The time zone database of IANA",
    trips=_STEPS + _DAYS.replace("DAY", "2027-03-28").replace("19:30", "1:30").replace("21:30", "4:00"),
    passes=_STEPS + _DAYS.replace("DAY", "2027-03-28").replace("19:30", "10:30").replace("21:30", "12:30"),
)
def session_skipped(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Each session with a date begins and ends at a time that clocks in its time zone show on that day."""
    for session in cls.written.sessions:
        for verb, local in (("begins", session.starts), ("ends", session.said_to_stop)):
            if local is None or not skipped(local, session.zone):
                continue
            yield Finding(
                "session-skipped",
                Severity.WRONG,
                session.place,
                f"Session {session.number} {verb} at {local:%H:%M} on {local:%Y-%m-%d}, a time that clocks in"
                f" {session.zone} skip, since they are put forward. Write another time.",
            )


@check(
    id="session-clocks",
    area="classes",
    severity=Severity.DOUBTFUL,
    looks_at=ComputedClass,
    title="A session while clocks are changed, or at a time that they show twice",
    why="An hour more or less passes than clocks show, and who comes at a time that they show twice may come an hour"
    " late.",
    source="The time zone database of IANA; which of two alike times is meant: RFC 5545, 3.3.5",
    trips=_STEPS + _DAYS.replace("DAY", "2027-10-31").replace("19:30", "0:30").replace("21:30", "3:00"),
    passes=_STEPS + _DAYS.replace("DAY", "2027-10-31").replace("19:30", "10:30").replace("21:30", "12:30"),
)
def session_clocks(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """No session with a date begins or ends at a time that clocks in its time zone show twice on that day, or is held
    while they are changed. Its minutes are those that pass."""
    for session in cls.written.sessions:
        starts, stops = session.starts, session.stops
        if starts is None or stops is None or skipped(starts, session.zone):
            continue
        told = [
            f"Session {session.number} {verb} at {local:%H:%M} on {local:%Y-%m-%d}, a time that clocks in"
            f" {session.zone} show twice, since they are put back. The {'second' if local.fold else 'first'} of the two"
            f" is taken."
            for verb, local in (("begins", starts), ("ends", stops))
            if shown_twice(local, session.zone)
        ]
        shown, passing = stops - starts, timedelta(minutes=session.minutes)
        if shown != passing and not told:
            told = [
                f"While session {session.number} is held, clocks in {session.zone} are put"
                f" {'back' if shown < passing else 'forward'}: {session.minutes} minutes pass from {starts:%H:%M} on"
                f" {starts:%Y-%m-%d} to {stops:%H:%M}."
            ]
        yield from (Finding("session-clocks", Severity.DOUBTFUL, session.place, words) for words in told)


@check(
    id="class-minutes",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A class with a step whose minutes are not known",
    why="No plan can be made without them.",
    source="Arithmetic",
    trips=_STEPS.replace("minutes: 60\n", "") + _CLASS + "sessions: [{minutes: 120}]\n",
    passes=_STEPS + _CLASS + "sessions: [{minutes: 120}]\n",
)
def class_minutes(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Every step that is done in class says how many minutes it takes."""
    for step in without_minutes(cls):
        yield Finding(
            "class-minutes",
            Severity.WRONG,
            cls.written.tutorial.place,
            f"“{step.title}” of the tutorial has no minutes, so this class cannot be planned. Add minutes to the step,"
            " such as minutes: 30, or leave it out of the class.",
            cls.written.tutorial.text,
        )


@check(
    id="class-step-long",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A step that is longer than every session",
    why="A step is not broken off in the middle, so it has no place in the class.",
    source="A session ends between two steps: " + COMMON_PRACTICE,
    trips=_STEPS + _CLASS + "sessions: [{minutes: 50}, {minutes: 50}, {minutes: 50}]\n",
    passes=_STEPS + _CLASS + "sessions: [{minutes: 50}, {minutes: 60}]\n",
)
def class_step_long(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """A step, with its turns at shared tools, fits into some session; so do steps that must follow each other."""
    if not _sessions_known(cls) or without_minutes(cls):
        return
    longest = max(session.working for session in cls.written.sessions)
    for steps, minutes in too_long(cls):
        yield Finding(
            "class-step-long",
            Severity.WRONG,
            cls.written.sessions[0].place,
            f"{_titles(steps)} {'takes' if len(steps) == 1 else 'follow each other and take'} {minutes} minutes in this"
            f" class, and no session has more than {longest}{_without_break(cls)}.",
            working=_working(steps[0], cls) if len(steps) == 1 else (),
        )


@check(
    id="class-time",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A class whose steps do not fit into its sessions",
    why="Students go home with half a garment.",
    source="A plain list schedule; turns at shared tools are derived, that half of a step is at its tool is "
    + COMMON_PRACTICE,
    trips=_STEPS + _CLASS + "sessions: [{minutes: 45}, {minutes: 30}, {minutes: 30}]\n",
    passes=_STEPS + _CLASS + "sessions: [{minutes: 45}, {minutes: 60}]\n",
)
def class_time(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Every step has its place in a session, at home or before class. What would make the rest fit is tried."""
    if not _sessions_known(cls) or without_minutes(cls):
        return
    plan = plan_of(cls)
    if plan.fits:
        return
    left = [work.step for work in plan.left]
    needed = sum(work.takes for work in (*plan.works, *plan.left))
    booked = sum(session.working for session in cls.written.sessions)
    ways = ways_to_fit(cls, plan)
    how = f" It fits {', or '.join(ways)}." if ways else " No more minutes, tools or homework alone make it fit."
    over = (*left, *plan.left_at_home)
    whole = ", but no step is broken off at the end of one" if needed <= booked else ""
    yield Finding(
        "class-time",
        Severity.WRONG,
        cls.written.sessions[-1].place,
        f"The steps take {needed} minutes in this class, the sessions have {booked}{_without_break(cls)}{whole}."
        f" {_titles(over)} {'is' if len(over) == 1 else 'are'} left over.{how}",
        working=tuple(f"{work.step.title}: {work.takes} minutes{_turns(work.tool, work.turns)}" for work in plan.left),
    )


def _sessions_known(cls: ComputedClass) -> bool:
    """Whether there are sessions, and none that was not understood: what fits could follow from that."""
    return bool(cls.written.sessions) and not cls.written.sessions_unread


def _turns(tool: str, turns: int) -> str:
    return f", {turns} turns at the {tool}" if tool else ""


def _without_break(cls: ComputedClass) -> str:
    return " without breaks" if any(session.pause for session in cls.written.sessions) else ""


def _titles(steps: tuple[Step, ...]) -> str:
    titles = [f"“{step.title}”" for step in steps]
    return titles[0] if len(titles) == 1 else f"{', '.join(titles[:-1])} and {titles[-1]}"


def _working(step: Step, cls: ComputedClass) -> tuple[str, ...]:
    work = next(work for work in class_steps(cls) if work.step.number == step.number)
    return show_working(work.minutes, cls.first_system)
