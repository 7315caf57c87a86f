"""The sessions of a class as they are read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sitegen.classes import RULE, ComputedClass, Placed, Plan, Session, SessionPlan, plan_of
from sitegen.publishing.class_views.days import day_of_week
from sitegen.publishing.class_views.head import class_head, step_name
from sitegen.publishing.class_views.parts import PlanStep, PlanView, SessionView, StepName
from sitegen.publishing.class_views.worked import working_of
from sitegen.quantities import ENGLISH, English, System
from sitegen.tutorial import Step


def plan_view(cls: ComputedClass, system: System, language: English = ENGLISH) -> PlanView:
    """The plan of a class. Raises ValueError for a class with a step without minutes."""
    plan = plan_of(cls)

    def names(steps: Iterable[Step]) -> tuple[StepName, ...]:
        return tuple(step_name(step, cls, system, language) for step in steps)

    return PlanView(
        head=class_head(cls, language),
        before=names(plan.before),
        homework_before=names(plan.homework_before),
        sessions=tuple(_session(planned, cls, system, language) for planned in plan.sessions),
        left=names((*(work.step for work in plan.left), *plan.left_at_home)),
        rule=tuple(language.sentences(sentence) for sentence in _rule(plan, cls)),
    )


def _rule(plan: Plan, cls: ComputedClass) -> Iterator[str]:
    yield from RULE
    if any(work.tool for work in (*plan.works, *plan.left)):
        share = f"{cls.written.at_tool.value * 100}%"
        yield (
            "Where there are fewer tools than students, a step takes its minutes away from the tool, and its minutes at"
            f" the tool once for each turn; {share} of a step are taken to be at the tool (common practice, no source)."
        )


def _session(planned: SessionPlan, cls: ComputedClass, system: System, language: English) -> SessionView:
    session = planned.session
    starts, stops = session.starts, session.stops
    return SessionView(
        number=session.number,
        day=day_of_week(starts.date(), language) if starts is not None else "",
        begins=f"{starts:%H:%M}" if starts is not None else "",
        ends=f"{stops:%H:%M}" if stops is not None else "",
        minutes=session.minutes,
        steps=tuple(_placed(placed, planned, cls, system, language) for placed in planned.placed),
        free=planned.free,
        homework=tuple(step_name(step, cls, system, language) for step in planned.homework),
    )


def _placed(placed: Placed, planned: SessionPlan, cls: ComputedClass, system: System, language: English) -> PlanStep:
    work, session = placed.work, planned.session
    turns = f"{work.turns} turns at the {work.tool}; each waits {work.waiting} min" if work.tool else ""
    return PlanStep(
        step=step_name(work.step, cls, system, language),
        begins=_clock(session, placed.begins),
        minutes=work.takes,
        turns=language.say(turns),
        meanwhile=tuple(step_name(step, cls, system, language) for step in placed.meanwhile),
        may_stop=placed.may_stop,
        working=working_of(work.minutes, system, language),
        pause=session.pause if placed.pause_after else 0,
        pause_begins=_clock(session, placed.begins + work.takes) if placed.pause_after else "",
    )


def _clock(session: Session, minutes: int) -> str:
    """The time of the day, or the minutes since the session began where that is not known."""
    shown = session.clock(minutes)
    return f"{shown:%H:%M}" if shown is not None else f"{minutes}′"
