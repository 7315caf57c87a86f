"""A plain list schedule: jobs with minutes, laid into sessions one after the other.

Knows nothing of sewing. The rule, as a teacher reads it, is ``RULE``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

RULE = (
    "In each session comes the next step of the tutorial that waits for nothing and fits into the minutes left; if"
    " there is none, the session ends.",
    "While students wait for their turn at a tool, they do the next step that waits for nothing and needs no tool of"
    " which there are too few, if it fits into the waiting.",
)
"""How steps are laid into sessions, in two sentences. Source: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Job:
    """A step: the minutes that it takes in class, and those of them in which each student waits for a turn.

    ``fills``: it can be done while others wait. ``joined``: the next job follows at once, in the same session.
    ``at_home``: it takes no time in class and is done between sessions.
    """

    step: int
    minutes: int
    waiting: int = 0
    fills: bool = False
    joined: bool = False
    at_home: bool = False


@dataclass(frozen=True, slots=True)
class Laid:
    """A job in a session, the jobs done while students wait for a turn at it, and whether one may stop after it."""

    step: int
    meanwhile: tuple[int, ...]
    may_stop: bool


@dataclass(frozen=True, slots=True)
class Schedule:
    """The jobs of each session, those done at home before the first and after each, and those that do not fit."""

    sessions: tuple[tuple[Laid, ...], ...]
    at_home: tuple[tuple[int, ...], ...]
    """Before the first session, then after each."""
    left: tuple[int, ...]


@dataclass
class _State:
    """What is done so far. Jobs are looked through in their own order, so that the same jobs give the same schedule."""

    blocks: list[tuple[Job, ...]]
    home: list[Job]
    after: Mapping[int, frozenset[int]]
    all_steps: frozenset[int]
    done: set[int] = field(default_factory=set)

    def is_ready(self, block: Sequence[Job]) -> bool:
        own = {job.step for job in block}
        return all((self.after.get(job.step, frozenset()) & self.all_steps) - own <= self.done for job in block)


def scheduled(jobs: Sequence[Job], after: Mapping[int, frozenset[int]], minutes: Sequence[int]) -> Schedule:
    """Jobs in their order laid into sessions of so many minutes, by ``RULE``.

    ``after`` gives the steps that each step waits for; those that are no jobs count as done. A job lies in one session
    as a whole, and so do jobs that are joined.
    """
    in_class = [job for job in jobs if not job.at_home]
    state = _State(_blocks(in_class), [job for job in jobs if job.at_home], after, frozenset(job.step for job in jobs))
    at_home = [_done_at_home(state)]
    sessions = []
    for capacity in minutes:
        sessions.append(_one_session(state, capacity))
        at_home.append(_done_at_home(state))
    left = [job.step for job in jobs if job.step not in state.done]
    return Schedule(tuple(sessions), tuple(at_home), tuple(left))


def _blocks(jobs: Sequence[Job]) -> list[tuple[Job, ...]]:
    """Jobs that follow each other in one session, put together."""
    found: list[tuple[Job, ...]] = []
    open_block: list[Job] = []
    for index, job in enumerate(jobs):
        open_block.append(job)
        if not job.joined or index == len(jobs) - 1:
            found.append(tuple(open_block))
            open_block = []
    return found


def _one_session(state: _State, capacity: int) -> tuple[Laid, ...]:
    laid: list[Laid] = []
    free = capacity
    while True:
        block = next((each for each in state.blocks if _minutes(each) <= free and state.is_ready(each)), None)
        if block is None:
            return tuple(laid)
        state.blocks.remove(block)
        free -= _minutes(block)
        for job in block:
            meanwhile = _meanwhile(state, job)
            state.done |= {job.step, *meanwhile}
            laid.append(Laid(job.step, meanwhile, may_stop=job is block[-1]))


def _meanwhile(state: _State, busy: Job) -> tuple[int, ...]:
    """The steps done while students wait for their turn at this one. None of them waits for another of them."""
    waiting = busy.waiting
    found = []
    for block in list(state.blocks):
        job = block[0]
        if len(block) == 1 and job.fills and job.minutes <= waiting and state.is_ready(block):
            state.blocks.remove(block)
            waiting -= job.minutes
            found.append(job.step)
    return tuple(found)


def _done_at_home(state: _State) -> tuple[int, ...]:
    found: list[int] = []
    while ready := next((job for job in state.home if state.is_ready((job,))), None):
        state.home.remove(ready)
        state.done.add(ready.step)
        found.append(ready.step)
    return tuple(found)


def _minutes(block: Sequence[Job]) -> int:
    return sum(job.minutes for job in block)
