"""What would make a class fit that does not: more minutes, more tools, homework, or one more session.

Each is tried by planning again, so that what is said is what the plan would do.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from sitegen.classes.kit import counted
from sitegen.classes.model import ComputedClass, Count
from sitegen.classes.plan import ClassStep, Plan, class_steps, jobs_of, plan_of, tools_of, waits_for, with_sessions
from sitegen.classes.schedule import scheduled
from sitegen.quantities import plural
from sitegen.tutorial import Reference, Step

_STEP = 5
"""Minutes are added in steps of five, as sessions are booked (common practice, no source)."""
_MOST_SESSIONS = 10


def ways_to_fit(cls: ComputedClass, plan: Plan) -> tuple[str, ...]:
    """What would make the class fit, each in words that follow “It fits”; none when nothing of this kind does."""
    if not cls.written.sessions:
        return ()
    return (
        tuple(_more_minutes(cls, plan)) + tuple(_more_tools(cls)) + tuple(_homework(cls)) + tuple(_more_sessions(cls))
    )


def too_long(cls: ComputedClass) -> tuple[tuple[tuple[Step, ...], int], ...]:
    """Steps that follow each other in one session, alone or several, that are longer than every session."""
    longest = max((session.working for session in cls.written.sessions), default=0)
    steps = {step.number: step for step in cls.in_class()}
    found, block, minutes = [], list[Step](), 0
    for job in jobs_of(cls):
        if job.at_home:
            continue
        block.append(steps[job.step])
        minutes += job.minutes
        if not job.joined:
            if minutes > longest:
                found.append((tuple(block), minutes))
            block, minutes = [], 0
    return tuple(found)


def _more_minutes(cls: ComputedClass, plan: Plan) -> Iterator[str]:
    """The fewest minutes more in the last session."""
    jobs, after = jobs_of(cls), waits_for(cls)
    minutes = [session.working for session in cls.written.sessions]
    enough = sum(work.takes for work in plan.left)
    for more in range(_STEP, (ceil(enough / _STEP) + 1) * _STEP, _STEP):
        if not scheduled(jobs, after, [*minutes[:-1], minutes[-1] + more]).left:
            yield f"with {more} more minutes in session {len(minutes)}"
            return


def _more_tools(cls: ComputedClass) -> Iterator[str]:
    """For each scarce tool the smallest number that would do, all else as it is; else one of each for everyone."""
    scarce = {work.tool: None for work in class_steps(cls) if work.tool}
    helped = False
    for tool in scarce:
        present = cls.written.room[tool].number
        for count in range(present + 1, cls.student_count + 1):
            if plan_of(_with_tools(cls, {tool: count})).fits:
                yield f"with {counted(count, tool)} instead of {present}"
                helped = True
                break
    if len(scarce) > 1 and not helped:
        everyone = dict.fromkeys(_all_scarce(cls), cls.student_count)
        if plan_of(_with_tools(cls, everyone)).fits:
            yield f"with as many {' and '.join(map(_several, everyone))} as students"


def _several(tool: str) -> str:
    return tool if tool.endswith("s") else plural(tool)


def _all_scarce(cls: ComputedClass) -> list[str]:
    tools = dict.fromkeys(tool for step in cls.in_class() for tool in tools_of(step, cls))
    return [tool for tool in tools if cls.written.room[tool].number < cls.student_count]


def _with_tools(cls: ComputedClass, counts: dict[str, int]) -> ComputedClass:
    room = {tool: Count(counts.get(tool, count.number), count.place) for tool, count in cls.written.room.items()}
    return replace(cls, written=replace(cls.written, room=room))


def _homework(cls: ComputedClass) -> Iterator[str]:
    """The fewest steps that need no tool of the room, first of all the last ones, done at home."""
    moved: list[ClassStep] = []
    for work in reversed(class_steps(cls)):
        if tools_of(work.step, cls):
            continue
        moved.insert(0, work)
        if plan_of(_at_home(cls, moved)).fits:
            titles = " and ".join(f"“{each.step.title}”" for each in moved)
            yield f"with {titles} as homework"
            return


def _at_home(cls: ComputedClass, works: list[ClassStep]) -> ComputedClass:
    names = {step.number: name for name, step in cls.steps.items()}
    more = tuple(Reference(names[work.step.number], cls.written.place) for work in works)
    return replace(cls, written=replace(cls.written, homework=cls.written.homework + more))


def _more_sessions(cls: ComputedClass) -> Iterator[str]:
    """The fewest further sessions as long as the last."""
    sessions = cls.written.sessions
    for more in range(1, _MOST_SESSIONS + 1):
        if plan_of(with_sessions(cls, sessions + (sessions[-1],) * more)).fits:
            yield f"with {more} more session{'' if more == 1 else 's'} of {sessions[-1].minutes} minutes"
            return
