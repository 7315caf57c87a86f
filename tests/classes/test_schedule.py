"""The list schedule of a class against networkx, a library of graphs, and against sums worked by hand."""

from __future__ import annotations

from itertools import combinations, pairwise
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, whole_class
from content import EXAMPLE
from hypothesis import given
from hypothesis import strategies as st

from sitegen.checks import review_class
from sitegen.classes import Job, Schedule, class_steps, jobs_of, leaves_pins, plan_of, scheduled, waits_for
from sitegen.quantities import Ratio, System, show_working
from sitegen.quantities import given as given_number
from sitegen.reading import ContentFolder
from sitegen.sewing import class_sums

nx = pytest.importorskip("networkx")

Waits = dict[int, frozenset[int]]


@st.composite
def classes(draw: st.DrawFn) -> tuple[list[Job], Waits, list[int]]:
    """Jobs, what each waits for (at once or by way of others), and the minutes of the sessions."""
    count = draw(st.integers(0, 12))
    jobs = []
    for step in range(1, count + 1):
        minutes = draw(st.integers(1, 60))
        waiting = draw(st.integers(0, minutes))
        home = draw(st.integers(0, 5)) == 0
        fills = draw(st.booleans()) and waiting == 0
        jobs.append(Job(step, minutes, waiting, fills, joined=draw(st.integers(0, 6)) == 0 and not home, at_home=home))
    pairs = list(combinations(range(1, count + 1), 2))
    chosen = draw(st.lists(st.sampled_from(pairs), unique=True, max_size=20)) if pairs else []
    graph = nx.DiGraph(chosen)
    graph.add_nodes_from(range(1, count + 1))
    waits = {step: frozenset(nx.ancestors(graph, step)) for step in range(1, count + 1)}
    return jobs, waits, draw(st.lists(st.integers(10, 200), max_size=4))


def order_of(schedule: Schedule) -> dict[int, tuple[int, int, int]]:
    """When each step is done: slot (home before a session, then the session), place in it, and whether meanwhile."""
    when = {}
    for slot, home in enumerate(schedule.at_home):
        for place, step in enumerate(home):
            when[step] = (2 * slot, place, 0)
    for slot, session in enumerate(schedule.sessions):
        for place, laid in enumerate(session):
            when[laid.step] = (2 * slot + 1, place, 0)
            for other in laid.meanwhile:
                when[other] = (2 * slot + 1, place, 1)
    return when


@given(classes())
def test_order_is_kept_and_sessions_hold_what_is_in_them(case: tuple[list[Job], Waits, list[int]]) -> None:
    jobs, waits, minutes = case
    schedule = scheduled(jobs, waits, minutes)
    when, by_step = order_of(schedule), {job.step: job for job in jobs}
    assert sorted([*when, *schedule.left]) == sorted(by_step)
    for step, place in when.items():
        for before in waits[step]:
            assert before in when, "a step is done though one that it waits for is not"
            assert when[before] < place
            if place[2]:
                assert when[before][:2] < place[:2], "a step done meanwhile waits for the one at the tool"
    for session, capacity in zip(schedule.sessions, minutes, strict=True):
        assert sum(by_step[laid.step].minutes for laid in session) <= capacity
        for laid in session:
            filled = [by_step[step] for step in laid.meanwhile]
            assert sum(job.minutes for job in filled) <= by_step[laid.step].waiting
            assert all(job.fills for job in filled)
        if session:
            assert session[-1].may_stop
    assert scheduled(jobs, waits, minutes) == schedule


@given(classes())
def test_joined_steps_are_in_one_session_one_after_the_other(case: tuple[list[Job], Waits, list[int]]) -> None:
    jobs, waits, minutes = case
    schedule = scheduled(jobs, waits, minutes)
    when = order_of(schedule)
    in_class = [job for job in jobs if not job.at_home]
    for job, following in pairwise(in_class):
        if job.joined and job.step in when:
            slot, place, _ = when[job.step]
            assert when[following.step] == (slot, place + 1, 0)


@given(classes())
def test_nothing_that_would_fit_is_left_while_minutes_are_free(case: tuple[list[Job], Waits, list[int]]) -> None:
    jobs, waits, minutes = case
    schedule = scheduled(jobs, waits, minutes)
    if not minutes:
        return
    by_step = {job.step: job for job in jobs}
    in_class = [job for job in jobs if not job.at_home]
    joined_to = {following.step for job, following in pairwise(in_class) if job.joined}
    free = minutes[-1] - sum(by_step[laid.step].minutes for laid in schedule.sessions[-1])
    after_last = set(schedule.at_home[-1])
    for step in schedule.left:
        job = by_step[step]
        alone = not job.joined and step not in joined_to and not job.at_home
        if alone and not waits[step] & {*schedule.left, *after_last}:
            assert job.minutes > free


def test_list_schedule_by_hand() -> None:
    """2 waits for 1, 3 for nothing. In 60 minutes: 1 (40), then 3 (15) since 2 (30) does not fit; then 2."""
    jobs = [Job(1, 40), Job(2, 30), Job(3, 15)]
    waits = {1: frozenset[int](), 2: frozenset({1}), 3: frozenset[int]()}
    schedule = scheduled(jobs, waits, [60, 30])
    assert [[laid.step for laid in session] for session in schedule.sessions] == [[1, 3], [2]]


def test_waiting_is_filled_with_what_needs_no_scarce_tool() -> None:
    """At the machine 20 of 40 minutes are waiting: step 3 (15 minutes) is done in them, step 4 (10) no longer fits."""
    jobs = [Job(1, 40, waiting=20), Job(2, 30, waiting=10), Job(3, 15, fills=True), Job(4, 10, fills=True)]
    waits = {1: frozenset[int](), 2: frozenset({1, 3}), 3: frozenset[int](), 4: frozenset({3})}
    (session,) = scheduled(jobs, waits, [100]).sessions
    assert [(laid.step, laid.meanwhile) for laid in session] == [(1, (3,)), (2, (4,))]


def test_minutes_in_class_by_hand() -> None:
    """8 students at 5 machines take 2 turns: of 25 minutes 12 1/2 away, 2 × 12 1/2 at the machine, rounded up to 38."""
    students, tools = given_number("students", 8), given_number("machines", 5)
    turns = class_sums.turns("turns", students, tools)
    assert turns.value == 2
    minutes = class_sums.minutes_in_class(
        "minutes in class", given_number("minutes", 25), given_number("share", Ratio.percent(50)), turns
    )
    assert minutes.value == 38
    assert show_working(minutes, System.INCHES)[-1] == (
        "minutes in class: minutes away from the tool 12 1/2 and minutes of all turns 25 = 38"
        " (rounded up to a whole minute)"
    )


@given(st.integers(1, 40), st.integers(1, 40), st.integers(1, 240), st.integers(0, 100))
def test_turns_never_shorten_a_step(students: int, tools: int, minutes: int, percent: int) -> None:
    turns = class_sums.turns("turns", given_number("students", students), given_number("tools", tools))
    assert (turns.number - 1) * tools < students <= turns.number * tools
    share = given_number("share", Ratio.percent(percent))
    found = class_sums.minutes_in_class("class", given_number("minutes", minutes), share, turns)
    exact = minutes + minutes * share.ratio.value * (turns.number - 1)
    assert exact <= found.number < exact + 1


def test_no_tool_is_no_turn() -> None:
    with pytest.raises(ValueError, match="machines must be at least 1"):
        class_sums.turns("turns", given_number("students", 8), given_number("machines", 0))


@pytest.mark.parametrize("name", ["evening-tee", "holiday-trousers"])
def test_example_classes_against_networkx(name: str) -> None:
    cls, _ = review_class(ContentFolder(EXAMPLE, "content_example"), f"classes/{name}.yaml")
    assert cls is not None
    graph = nx.DiGraph((link.before, link.after) for link in cls.links)
    graph.add_nodes_from(step.number for step in cls.computed.tutorial.steps)
    assert waits_for(cls) == {step: frozenset(nx.ancestors(graph, step)) for step in graph}
    plan = plan_of(cls)
    assert plan.fits
    works = {work.step.number: work for work in class_steps(cls)}
    own = nx.transitive_closure_dag(graph).subgraph(works)
    weighted = nx.DiGraph()
    weighted.add_node("end")
    for step, work in works.items():
        weighted.add_edge(step, "end", minutes=work.takes)
        weighted.add_edges_from(((step, after) for after in own.successors(step)), minutes=work.takes)
    assert nx.dag_longest_path_length(weighted, weight="minutes") == plan.longest.minutes
    assert sum(works[step].takes for step in plan.longest.steps) == plan.longest.minutes
    done = [placed.work.step.number for session in plan.sessions for placed in session.placed]
    place = {step: index for index, step in enumerate(done)}
    assert all(place[before] < place[after] for before, after in own.edges)
    booked = sum(session.session.working for session in plan.sessions)
    assert sum(work.takes for work in plan.works) + sum(session.free for session in plan.sessions) == booked


def test_scarce_tools_make_a_step_longer(tmp_path: Path) -> None:
    text = CLASS + "room: {sewing machine: 2, iron: 5, scissors: 5}\nat_tool: 60%\n"
    works = {work.step.file: work for work in class_steps(whole_class(tmp_path, text))}
    sew, press = works["02-sew.yaml"], works["03-press.yaml"]
    assert (sew.tool, sew.turns, sew.takes, sew.waiting) == ("sewing machine", 3, 12 + 3 * 18, 36)
    assert (press.tool, press.turns, press.takes, press.waiting) == ("", 1, 20, 0)


def test_pins_are_not_left_in_the_work(tmp_path: Path) -> None:
    steps = {
        **STEPS,
        "steps__02-a-pin_dot_yaml": "title: Pin the sides\ntext: Pin the panels.\nminutes: 10\ntools: [pins]\n",
    }
    cls = whole_class(tmp_path, CLASS.replace("[{minutes: 200}]", "[{minutes: 55}, {minutes: 60}]"), **steps)
    pin = next(step for step in cls.in_class() if step.title == "Pin the sides")
    assert leaves_pins(pin)
    assert [job.joined for job in jobs_of(cls)] == [False, True, False, False]
    first, second = plan_of(cls).sessions
    assert [placed.work.step.title for placed in first.placed] == ["Cut out"]
    assert [(placed.work.step.title, placed.may_stop) for placed in second.placed] == [
        ("Pin the sides", False), ("Sew the sides", True), ("Press the bag", True),
    ]  # fmt: skip


def test_pins_that_pin_nothing_keep_no_session_from_ending(tmp_path: Path) -> None:
    steps = {
        **STEPS,
        "steps__01-a-test_dot_yaml": "title: Test the stretch\ntext: Mark 10 cm and pull.\nminutes: 10\ntools: [pins]\n",
    }
    cls = whole_class(tmp_path, **steps)
    assert not leaves_pins(next(step for step in cls.in_class() if step.title == "Test the stretch"))


def test_steps_kept_together_and_homework(tmp_path: Path) -> None:
    text = CLASS.replace("[{minutes: 200}]", "[{minutes: 60}, {minutes: 60}]")
    apart = plan_of(whole_class(tmp_path / "a", text + "together: [[sew, press]]\n"))
    assert [[placed.work.step.number for placed in session.placed] for session in apart.sessions] == [[1], [2, 3]]
    home = plan_of(whole_class(tmp_path / "b", text + "homework: [sew]\n"))
    assert [step.title for step in home.sessions[0].homework] == ["Sew the sides"]
    assert [placed.work.step.title for placed in home.sessions[1].placed] == ["Press the bag"]
    first = plan_of(whole_class(tmp_path / "c", text + "homework: [cut]\n"))
    assert [step.title for step in first.homework_before] == ["Cut out"]


def test_break_comes_between_steps_and_moves_what_follows(tmp_path: Path) -> None:
    text = CLASS.replace("minutes: 200", 'begins: "18:00", minutes: 115, break: 15')
    (session,) = plan_of(whole_class(tmp_path, text)).sessions
    assert [(placed.begins, placed.pause_after) for placed in session.placed] == [(0, False), (40, True), (85, False)]
    assert session.free == 100 - 90
