"""Darts and boxed corners among the steps: none forgotten, none sewn twice, each at the time when it can be sewn."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import by_title, listed, tells
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Boxed, Computed, Dart, Reference, Step, Tutorial, corner_edges, words_of

_TOP = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven}}\npieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {side: 16 in},\n"
    "    darts: {bust: {edge: side, width: 1 in, length: 3 in}}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in}}\n"
)
_DARTS = "title: Sew the darts\ntext: Fold and sew.\ndarts: [front.bust]\n"
_SIDES = "title: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side]}]\n"
_BAG = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven}}\npieces:\n"
    "  bag: {cut: 2, fabric: main, finished: {length: 16 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: lower, left: side, right: side}, edges: {side: 14 in, lower: 11 in}}\n"
    "boxed: {corners: {panel: bag, square: 2 in}}\n"
)
_SEAMS = "title: Sew the seams\ntext: Sew.\njoin: [{edges: [bag.side, bag.side]}, {edges: [bag.lower, bag.lower]}]\n"
_BOX = "title: Box the corners\ntext: Sew across.\nbox: [corners]\n"
_ON_PURPOSE = re.compile(r"\b(?:other|second|remaining|again|twice|reinforc\w*|bast\w*)\b", re.IGNORECASE)


def _steps(*texts: str) -> str:
    return "".join(f"--- steps/{number:02}.yaml\n{text}" for number, text in enumerate(texts, 1))


@check(
    id="dart-never-sewn",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Dart,
    title="A dart that no step sews",
    why="The edge stays longer than the one to which it is sewn, or a step does not say what it sews.",
    source="Follows from the steps",
    trips=_TOP + _steps(_SIDES),
    passes=_TOP + _steps(_DARTS, _SIDES),
)
def dart_never_sewn(dart: Dart, computed: Computed) -> Iterator[Finding]:
    """Every dart is sewn in some step, if any step says what it sews."""
    tutorial = computed.tutorial
    if tells(tutorial) and not any(name.name == dart.name for step in tutorial.steps for name in step.darts):
        yield Finding(
            "dart-never-sewn",
            Severity.DOUBTFUL,
            dart.place,
            f"No step sews the dart {words_of(dart.name)}. Add to its step darts: [{dart.name}]",
        )


@check(
    id="corners-never-boxed",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Boxed,
    title="Boxed corners that no step sews",
    why="The bag stays flat, or a step does not say what it sews.",
    source="Follows from the steps",
    trips=_BAG + _steps(_SEAMS),
    passes=_BAG + _steps(_SEAMS, _BOX),
)
def corners_never_boxed(boxed: Boxed, computed: Computed) -> Iterator[Finding]:
    """Boxed corners are sewn across in some step, if any step says what it sews."""
    tutorial = computed.tutorial
    if tells(tutorial) and not any(name.name == boxed.key for step in tutorial.steps for name in step.boxes):
        yield Finding(
            "corners-never-boxed",
            Severity.DOUBTFUL,
            boxed.place,
            f"No step sews across the {words_of(boxed.key)}. Add to its step box: [{boxed.key}]",
        )


@check(
    id="dart-late",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A dart that is sewn after its edge",
    why="The edge was joined at its full length and did not fit, and the seam is now in the way of the dart.",
    source="Darts are sewn before the seams that cross them: " + COMMON_PRACTICE,
    trips=_TOP + _steps(_SIDES, _DARTS),
    passes=_TOP + _steps(_DARTS, _SIDES),
)
def dart_late(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A dart is sewn in the step that joins or turns its edge, or in an earlier one. Where the edge is joined again
    later, it is another copy, and nothing is said."""
    edges = {dart.name: dart.edge_name for piece in tutorial.pieces.values() for dart in piece.darts.values()}
    for step in tutorial.steps:
        for name in step.darts:
            sewn = [each for each in tutorial.steps if edges.get(name.name) in _sewn(each, tutorial)]
            if sewn and sewn[-1].number < step.number:
                yield Finding(
                    "dart-late",
                    Severity.WRONG,
                    name.place,
                    f"The dart {words_of(name.name)} is sewn here, but its edge {edges[name.name]} was sewn already in"
                    f" {by_title(sewn[0])}. Sew the dart before that.",
                    name.name,
                )


@check(
    id="boxed-early",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Corners that are boxed before their seams are sewn",
    why="There are no seams yet to lay on each other.",
    source="The side seam is laid on the bottom seam and sewn across: " + COMMON_PRACTICE,
    trips=_BAG + _steps(_BOX, _SEAMS),
    passes=_BAG + _steps(_SEAMS, _BOX),
)
def boxed_early(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Corners are boxed in the step that joins the sides and the bottom of their piece, or in a later one. Edges that
    no step joins are passed over."""
    for step in tutorial.steps:
        for name in step.boxes:
            boxed = tutorial.boxed.get(name.name)
            edges = corner_edges(boxed, tutorial) if boxed is not None else ()
            joining = {edge: [each for each in tutorial.steps if edge in _sewn(each, tutorial)] for edge in edges}
            late = [edge for edge, steps in joining.items() if steps and steps[0].number > step.number]
            if late:
                yield Finding(
                    "boxed-early",
                    Severity.WRONG,
                    name.place,
                    f"The {words_of(name.name)} are boxed here, but {listed(late)} {'are' if len(late) > 1 else 'is'}"
                    f" sewn only in {by_title(joining[late[0]][0])}.",
                    name.name,
                )


@check(
    id="taken-in-twice",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A dart or boxed corner that two steps sew",
    why="Nearly always a line was copied from another step and its name was not changed.",
    source="Follows from the steps",
    trips=_TOP + _steps(_DARTS, _DARTS.replace("the darts", "the dart"), _SIDES),
    passes=_TOP + _steps(_DARTS, _DARTS.replace("the darts", "the other dart"), _SIDES),
)
def taken_in_twice(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A name stands for every copy, left and right, so one step sews it. Nothing is said where a text speaks of the
    other or the second one, or of sewing once more."""
    earlier: dict[str, Step] = {}
    for step in tutorial.steps:
        for name in (*step.darts, *step.boxes):
            before = earlier.setdefault(name.name, step)
            if before is not step and not any(_says_why(each) for each in (before, step)):
                yield _twice(name, before)


def _twice(name: Reference, before: Step) -> Finding:
    message = f"{name.name} is sewn here, and was already in {by_title(before)}. If this is the other one, say so in"
    return Finding("taken-in-twice", Severity.DOUBTFUL, name.place, f"{message} the text.", name.name)


def _says_why(step: Step) -> bool:
    return bool(_ON_PURPOSE.search(f"{step.title}\n{step.text.text if step.text else ''}"))


def _sewn(step: Step, tutorial: Tutorial) -> set[str]:
    """The edges that a step joins or turns."""
    hems = [tutorial.hems[name.name] for name in step.hems if name.name in tutorial.hems]
    turned = {edge.name for hem in hems for edge in hem.edges}
    return turned | {name.name for join in step.joins for name in join.names()}
