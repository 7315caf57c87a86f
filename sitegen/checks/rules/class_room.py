"""Who and what is in the room of a class, and which of its steps are done where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import handled
from sitegen.classes import ComputedClass, waits_for
from sitegen.findings import Finding, Severity, nearest
from sitegen.tutorial import Computed, Reference, Tutorial

_STEPS = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
    "pieces: {panel: {cut: 2, fabric: main, edges: {side: 10 in}}}\n"
    "--- steps/01-cut.yaml\ntitle: Cut out\ntext: Cut both panels.\nminutes: 40\ntools: [scissors]\n"
    "cautions: [scissors]\ncut: [panel]\n"
    "--- steps/02-sew.yaml\ntitle: Sew the sides\ntext: Sew both sides.\nminutes: 60\ntools: [sewing machine]\n"
    "cautions: [sewing machine]\n"
    "join: [{edges: [panel.side, panel.side], stitch: straight, press: open}]\nfinish: [panel.side]\n"
)
_CHANGE = (
    _STEPS.replace("fabric: main,", "fabric: main, length: 12 in,")
    .replace(
        "--- steps/02",
        "--- steps/00-longer.yaml\ntitle: Make it longer\ntext: Cut the paper across.\nminutes: 10\n"
        "tools: [scissors]\ncautions: [scissors]\ndiagrams: [longer]\n--- steps/02",
        1,
    )
    .replace(
        "--- steps/01",
        "changes: {longer: {piece: panel, line_at: 6 in from the top, lengthen_by: 1 in}}\n--- steps/01",
        1,
    )
)
_CLASS = (
    "--- classes/evening.yaml\ntitle: Evening class\ntutorial: example\nstudents: 4\n"
    "sessions: [{minutes: 120}]\nbrings: [scissors]\n"
)


@check(
    id="class-seats",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="More students than seats",
    why="Somebody has no place to work.",
    source="Arithmetic",
    trips=_STEPS + _CLASS + "room: {seats: 3, sewing machine: 4}\n",
    passes=_STEPS + _CLASS + "room: {seats: 4, sewing machine: 4}\n",
)
def class_seats(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """A class has no more students than the room has seats, where those are told."""
    seats = cls.written.seats
    if seats is None or cls.student_count <= seats.number:
        return
    yield Finding(
        "class-seats",
        Severity.WRONG,
        seats.place,
        f"The room has {seats.number} seats for {cls.student_count} students.",
        str(seats.number),
    )


@check(
    id="room-tool-none",
    area="classes",
    severity=Severity.DOUBTFUL,
    looks_at=ComputedClass,
    title="A tool of the steps that nobody has",
    why="The class stands still at the first step that needs it.",
    source="Follows from the tools of the steps",
    trips=_STEPS + _CLASS + "room: {seats: 4}\n",
    passes=_STEPS + _CLASS + "room: {seats: 4, sewing machine: 4}\n",
)
def room_tool_none(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """Every tool of a step that is done in class is in the room or brought by the students. Where the file says nothing
    of the room and of what students bring, it is taken to have all."""
    if not cls.written.room and not cls.written.brings:
        return
    there = {tool for tool, count in cls.written.room.items() if count.number}
    there |= {words.text for words in cls.written.brings}
    missing = dict.fromkeys(tool.text for step in cls.in_class() for tool in step.tools if tool.text not in there)
    if missing:
        yield Finding(
            "room-tool-none",
            Severity.DOUBTFUL,
            cls.written.place,
            f"The steps in class need what neither the room has nor the students bring: {', '.join(missing)}."
            f"{_almost(missing, there - _called(computed.tutorial))} Say how many there are, such as"
            f" room: {{{next(iter(missing))}: {cls.student_count}}}, or put it under brings.",
        )


def _tools(tutorial: Tutorial) -> set[str]:
    """The tools of a tutorial as it calls them."""
    return {tool.text for tool in tutorial.tools} | {tool.text for step in tutorial.steps for tool in step.tools}


def _called(tutorial: Tutorial) -> set[str]:
    """What can be brought, as the tutorial calls it."""
    return _tools(tutorial) | {supply.item.text for supply in tutorial.supplies} | set(tutorial.fabrics)


def _almost(missing: Iterable[str], unknown: set[str]) -> str:
    """What the class file may have misspelt."""
    near = [(found[0], tool) for tool in missing if (found := nearest(tool, sorted(unknown), most=1))]
    return "".join(f" Is “{said}” meant to be {tool}?" for said, tool in near)


@check(
    id="class-change-idle",
    area="classes",
    severity=Severity.HINT,
    looks_at=ComputedClass,
    title="A step in class that is only about a change which the class does not make",
    why="The class spends its minutes on it, and the kit and the numbers are those without the change.",
    source="Follows from the changes of the class, and from what the step does",
    trips=_CHANGE + _CLASS + "room: {scissors: 4, sewing machine: 4}\n",
    passes=_CHANGE + _CLASS + "room: {scissors: 4, sewing machine: 4}\nleft_out: [longer]\n",
)
def class_change_idle(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """A step in class that draws a change, and cuts, sews and turns nothing, is of a change that the class makes."""
    made = {change.name for change in cls.written.changes}
    for step in cls.in_class():
        drawn = [each.name for each in step.diagrams if each.name in computed.tutorial.changes]
        if not drawn or made & set(drawn) or step.cuts or any(handled(step, computed.tutorial)):
            continue
        name = step.file.rpartition("/")[2].partition("-")[2].rpartition(".")[0]
        yield Finding(
            "class-change-idle",
            Severity.HINT,
            cls.written.place,
            f"“{step.title}” is about a change, {drawn[0].replace('_', ' ')}, that this class does not make. Leave"
            f" the step out, left_out: [{name}], or make the change, changes: [{drawn[0]}]",
        )


@check(
    id="room-unused",
    area="classes",
    severity=Severity.DOUBTFUL,
    looks_at=ComputedClass,
    title="A tool of the room that no step calls by this name",
    why="Where a tool is called otherwise than in the steps, nobody waits for a turn at it in the plan.",
    source="Follows from the tools of the tutorial",
    trips=_STEPS + _CLASS + "room: {sewing machine: 4, machines: 2}\n",
    passes=_STEPS + _CLASS + "room: {sewing machine: 4, scissors: 2}\n",
)
def room_unused(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """The room lists tools as the tutorial's steps call them."""
    known = _tools(computed.tutorial)
    for name, count in cls.written.room.items():
        if name in known:
            continue
        near = nearest(name, sorted(known), most=1)
        hint = f" Nearest: {near[0]}." if near else f" They call their tools {', '.join(sorted(known))}."
        yield Finding(
            "room-unused", Severity.DOUBTFUL, count.place, f"No step of the tutorial names a tool “{name}”.{hint}"
        )


@check(
    id="class-order",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="A step that is done before what it needs",
    why="The teacher would sew a seam whose pieces are cut in class, or students miss a piece that nobody cut.",
    source="Follows from what each step cuts, sews and uses",
    trips=_STEPS + _CLASS + "room: {sewing machine: 4}\nbefore_class: [sew]\n",
    passes=_STEPS + _CLASS + "room: {sewing machine: 4}\nbefore_class: [cut]\n",
)
def class_order(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """What is done before class needs nothing that is done in class or at home, and nothing that is done needs a step
    that is left out. Only what a step surely uses counts."""
    titles = {step.number: step.title for step in computed.tutorial.steps}
    later = {step.number for step in cls.in_class()} | cls.at_home
    for name in cls.written.before_class:
        number = cls.steps[name.name].number
        needs = next((link for link in cls.links if link.after == number and link.before in later and link.sure), None)
        if needs is not None:
            yield _needs(name, titles[needs.before], needs.through, "is not done before class")
    for name in cls.written.left_out:
        number = cls.steps[name.name].number
        used = next(
            (link for link in cls.links if link.before == number and link.after not in cls.left_out and link.sure), None
        )
        if used is not None:
            yield Finding(
                "class-order",
                Severity.WRONG,
                name.place,
                f"“{titles[number]}” is left out, but “{titles[used.after]}” uses {', '.join(used.through)} of it.",
                name.name,
            )


def _needs(name: Reference, before: str, through: tuple[str, ...], where: str) -> Finding:
    return Finding(
        "class-order",
        Severity.WRONG,
        name.place,
        f"This step uses {', '.join(through)} of “{before}”, which {where}. Do both before class, or neither.",
        name.name,
    )


@check(
    id="class-together",
    area="classes",
    severity=Severity.WRONG,
    looks_at=ComputedClass,
    title="Steps kept together that cannot be",
    why="Homework lies between two sessions, so what waits for it cannot be in the session of what it waits for.",
    source="Follows from the order of making; " + COMMON_PRACTICE,
    trips=_STEPS + "--- steps/03-wear.yaml\ntitle: Turn it\ntext: Turn both panels.\nminutes: 5\n"
    + _CLASS + "room: {sewing machine: 4}\nhomework: [sew]\ntogether: [[cut, wear]]\n",
    passes=_STEPS + "--- steps/03-wear.yaml\ntitle: Turn it\ntext: Turn both panels.\nminutes: 5\n"
    + _CLASS + "room: {sewing machine: 4}\ntogether: [[sew, wear]]\n",
)  # fmt: skip
def class_together(cls: ComputedClass, computed: Computed) -> Iterator[Finding]:
    """No homework comes between steps that are kept together in one session, and all of them are done in class."""
    after = waits_for(cls)
    titles = {step.number: step.title for step in computed.tutorial.steps}
    in_class = {step.number for step in cls.in_class()}
    for names in cls.written.together:
        numbers = sorted(cls.numbers_of(names))
        elsewhere = [number for number in numbers if number not in in_class]
        between = [
            home
            for home in sorted(cls.at_home)
            if any(home in after[number] and other in after[home] for number in numbers for other in numbers)
        ]
        if elsewhere or between:
            what = "is not done in class" if elsewhere else "is homework that comes between them"
            yield Finding(
                "class-together",
                Severity.WRONG,
                names[0].place,
                f"These steps cannot stay in one session: “{titles[(elsewhere or between)[0]]}” {what}.",
                names[0].name,
            )
