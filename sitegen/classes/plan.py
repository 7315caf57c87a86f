"""The sessions of a class: which steps are done in each, how long they take with shared tools, and where one may stop.

A step that needs a tool of which there are fewer than students is done in turns; see ``class_sums`` of the sums.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from sitegen.classes.kit import students_of
from sitegen.classes.model import ComputedClass, Session
from sitegen.classes.schedule import Job, Laid, Schedule, scheduled
from sitegen.quantities import Worked, given
from sitegen.sewing import class_sums
from sitegen.tutorial import LongestPath, Step, longest_path

_PINS = re.compile(
    r"\b(?:pin(?:s|ned|ning)?\b|clip(?:s|ped|ping)?\b|alfiler|prend|sujet|pinza)",
    re.IGNORECASE,
)
"""Words of pinning, in the languages in which texts of authors are read."""
_SEWS = re.compile(r"machine|overlock|serger|\bneedles?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ClassStep:
    """A step as it is done in class: its minutes there, and the scarcest of its tools, empty when none is scarce."""

    step: Step
    minutes: Worked
    tool: str
    turns: int

    @property
    def takes(self) -> int:
        """Its minutes in class."""
        return int(self.minutes.number)

    @property
    def waiting(self) -> int:
        """The minutes of these in which each student waits for a turn."""
        return self.takes - (self.step.minutes or 0)


@dataclass(frozen=True, slots=True)
class Placed:
    """A step in a session. ``begins`` counts the minutes since the session began, its break included if it is over.

    ``pause_after``: the break comes behind it.
    """

    work: ClassStep
    begins: int
    meanwhile: tuple[Step, ...]
    may_stop: bool
    pause_after: bool


@dataclass(frozen=True, slots=True)
class SessionPlan:
    """One session: its steps, the minutes left over, and the homework after it."""

    session: Session
    placed: tuple[Placed, ...]
    free: int
    homework: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Plan:
    """All sessions, what is done before the first, and what does not fit.

    ``longest`` are the steps of the class that wait for each other longest: no room however well equipped is faster.
    """

    sessions: tuple[SessionPlan, ...]
    before: tuple[Step, ...]
    homework_before: tuple[Step, ...]
    left: tuple[ClassStep, ...]
    left_at_home: tuple[Step, ...]
    longest: LongestPath

    @property
    def fits(self) -> bool:
        """Whether every step has its place."""
        return not self.left and not self.left_at_home

    @property
    def works(self) -> tuple[ClassStep, ...]:
        """The steps done in class, session by session, without those done while others wait."""
        return tuple(placed.work for session in self.sessions for placed in session.placed)


def without_minutes(cls: ComputedClass) -> tuple[Step, ...]:
    """The steps done in class of which the tutorial does not say how long they take, so that nothing can be planned."""
    return tuple(step for step in cls.in_class() if step.minutes is None)


def class_steps(cls: ComputedClass) -> tuple[ClassStep, ...]:
    """Every step that is done in class, with its minutes there. Raises ValueError for a step without minutes."""
    return tuple(_class_step(step, cls) for step in cls.in_class())


def tools_of(step: Step, cls: ComputedClass) -> tuple[str, ...]:
    """The tools of a step that the room has, each student's own left out."""
    own = {words.text for words in cls.written.brings}
    return tuple(dict.fromkeys(t.text for t in step.tools if t.text in cls.written.room and t.text not in own))


def _class_step(step: Step, cls: ComputedClass) -> ClassStep:
    if step.minutes is None:
        raise ValueError(f"{step.title} has no minutes")
    counts = {tool: cls.written.room[tool].number for tool in tools_of(step, cls)}
    scarce = {tool: count for tool, count in counts.items() if 0 < count < cls.student_count}
    minutes = given("minutes of the step", step.minutes)
    if not scarce:
        return ClassStep(step, minutes.named("minutes in class"), "", 1)
    tool = min(scarce, key=lambda name: scarce[name])
    in_turn = class_sums.turns(f"turns at the {tool}", students_of(cls), given(f"number of the {tool}", scarce[tool]))
    at_tool = given("share of a step at the tool", cls.written.at_tool)
    in_class = class_sums.minutes_in_class("minutes in class", minutes, at_tool, in_turn)
    return ClassStep(step, in_class, tool, int(in_turn.number))


def waits_for(cls: ComputedClass) -> Mapping[int, frozenset[int]]:
    """For each step all steps that come before it, at once or by way of others; what is not certain keeps its order."""
    earlier: dict[int, set[int]] = {step.number: set() for step in cls.computed.tutorial.steps}
    for step in sorted(earlier):
        for link in cls.links:
            if link.after == step:
                earlier[step] |= {link.before} | earlier[link.before]
    return {step: frozenset(before) for step, before in earlier.items()}


def jobs_of(cls: ComputedClass) -> tuple[Job, ...]:
    """The jobs of a class in the tutorial's order. Raises ValueError for a step without minutes."""
    works = {work.step.number: work for work in class_steps(cls)}
    joined = _joined(cls)
    jobs = []
    for step in cls.computed.tutorial.steps:
        if step.number in works:
            work = works[step.number]
            fills = not work.tool
            jobs.append(Job(step.number, work.takes, work.waiting, fills=fills, joined=step.number in joined))
        elif step.number in cls.at_home:
            jobs.append(Job(step.number, 0, at_home=True))
    return tuple(jobs)


def _joined(cls: ComputedClass) -> frozenset[int]:
    """The steps behind which a session must not end: those that the teacher keeps together with the next ones, and
    those that leave pins in the work for the next step that goes on with it."""
    order = [step.number for step in cls.in_class()]
    spans = [sorted(cls.numbers_of(names) & set(order)) for names in cls.written.together]
    for step in cls.in_class():
        follower = next((link.after for link in cls.links if link.before == step.number and link.after in order), None)
        if leaves_pins(step) and follower is not None:
            spans.append([step.number, follower])
    found: set[int] = set()
    for span in spans:
        if span:
            found |= set(order[order.index(span[0]) : order.index(span[-1])])
    return frozenset(found)


def leaves_pins(step: Step) -> bool:
    """Whether a step pins and sews nothing, so that its pins stay in the work (common practice, no source).

    A swatch that is held by pins while it is pulled leaves nothing pinned: a step whose words speak of no pinning.
    """
    pins = any(tool.text.casefold() in ("pins", "clips") for tool in step.tools)
    speaks = step.text is None or _PINS.search(f"{step.title} {step.text.text}") is not None
    return pins and speaks and not step.cuts and not any(_SEWS.search(tool.text) for tool in step.tools)


def plan_of(cls: ComputedClass) -> Plan:
    """The plan of a class. Raises ValueError for a step without minutes."""
    jobs, after = jobs_of(cls), waits_for(cls)
    minutes = [session.working for session in cls.written.sessions]
    return _plan(cls, scheduled(jobs, after, minutes), after)


def _plan(cls: ComputedClass, schedule: Schedule, after: Mapping[int, frozenset[int]]) -> Plan:
    steps = {step.number: step for step in cls.computed.tutorial.steps}
    works = {work.step.number: work for work in class_steps(cls)}
    sessions = tuple(
        _session(session, laid, tuple(steps[number] for number in home), works)
        for session, laid, home in zip(cls.written.sessions, schedule.sessions, schedule.at_home[1:], strict=True)
    )
    pairs = {(before, step) for step in works for before in after[step] if before in works}
    return Plan(
        sessions=sessions,
        before=tuple(step for number, step in steps.items() if number in cls.before_class),
        homework_before=tuple(steps[number] for number in schedule.at_home[0]),
        left=tuple(works[number] for number in schedule.left if number in works),
        left_at_home=tuple(steps[number] for number in schedule.left if number not in works),
        longest=longest_path({number: work.takes for number, work in works.items()}, pairs),
    )


def _session(
    session: Session, laid: tuple[Laid, ...], homework: tuple[Step, ...], works: Mapping[int, ClassStep]
) -> SessionPlan:
    """When each step begins. The break comes behind the first step that ends in the second half, if more follow."""
    placed: list[Placed] = []
    worked = paused = 0
    for index, each in enumerate(laid):
        work = works[each.step]
        begins, worked = worked + paused, worked + work.takes
        pauses = bool(session.pause and not paused and worked * 2 >= session.working and index < len(laid) - 1)
        meanwhile = tuple(works[number].step for number in each.meanwhile)
        placed.append(Placed(work, begins, meanwhile, each.may_stop, pauses))
        if pauses:
            paused = session.pause
    return SessionPlan(session, tuple(placed), session.working - worked, homework)


def with_sessions(cls: ComputedClass, sessions: tuple[Session, ...]) -> ComputedClass:
    """The class with other sessions."""
    return replace(cls, written=replace(cls.written, sessions=sessions))
