"""Minutes of the steps, and pressing between them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import by_title
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Joining, Seam, Step, Tutorial, neighbours, seams_of

_CUT = "--- steps/01.yaml\ntitle: Cut out\ntext: Cut.\nminutes: 40\n"
_SEW = "--- steps/02.yaml\ntitle: Sew\ntext: Sew.\n"
_TOP = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  upper: {cut: 2, fabric: main, edges: {lower: 15 in, side: 10 in}}\n"
    "  base: {cut: 2, fabric: main, edges: {top: 15 in, side: 4 in}}\n"
    "--- steps/01.yaml\ntitle: Join the base\ntext: Sew.\nfinish: [upper.lower, base.top]\n"
    "join: [{edges: [upper.lower, base.top], stitch: straight, PRESS}]\n"
    "--- steps/02.yaml\ntitle: Sew the sides\ntext: Sew.\nfinish: [upper.side, base.side]\n"
    "join: [{edges: [upper.side + base.side, upper.side + base.side], stitch: straight}]\n"
)
_PRESSED = re.compile(r"\b(?:finger[- ])?press(?:es|ed|ing)?\b|\biron(?:s|ed|ing)?\b|\bsteam", re.IGNORECASE)


@check(
    id="minutes-missing",
    area="making",
    severity=Severity.HINT,
    looks_at=Tutorial,
    title="A step without its minutes",
    why="The time of the whole tutorial comes out too short, and a class that is planned by it runs over.",
    source="Arithmetic",
    trips=_CUT + _SEW,
    passes=_CUT + _SEW + "minutes: 30\n",
)
def minutes_missing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Once any step says how many minutes it takes, every step does. Minutes that could not be read are another
    finding."""
    if all(step.minutes is None for step in tutorial.steps):
        return
    for step in tutorial.steps:
        if step.minutes is None and step.minutes_place == step.place:
            yield Finding(
                "minutes-missing",
                Severity.HINT,
                step.place,
                f"“{step.title}” has no minutes, so the time of the whole tutorial comes out too short."
                " Example: minutes: 30",
            )


@check(
    id="press-missing",
    area="making",
    severity=Severity.HINT,
    looks_at=Tutorial,
    title="A seam that is crossed before it is pressed",
    why="Once another seam runs across it, its allowances can no longer be laid flat at the crossing.",
    source="Press each seam before another crosses it: " + COMMON_PRACTICE,
    trips=_TOP.replace(", PRESS", ""),
    passes=_TOP.replace("PRESS", "press: towards the base"),
)
def press_missing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A seam across which a later seam is sewn says how it is pressed, or a text between the two speaks of pressing."""
    seams = seams_of(tutorial)
    joining = Joining(seams)
    reported: list[Seam] = []
    for crossing in seams:
        step = _step(crossing.step, tutorial)
        for seam in _crossed(crossing, joining, tutorial):
            between = [each for each in tutorial.steps if seam.step <= each.number <= step.number]
            if seam in reported or seam.join.press or any(_presses(each) for each in between):
                continue
            reported.append(seam)
            yield Finding(
                "press-missing",
                Severity.HINT,
                seam.join.place,
                f"In {by_title(step)} another seam is sewn across this one. Say how it is pressed before that, such as"
                " press: to one side",
            )


def _crossed(crossing: Seam, joining: Joining, tutorial: Tutorial) -> Iterator[Seam]:
    """The seams of earlier steps by which the edges of a chain run on from piece to piece."""
    pairs = [pair[2:] for chain in crossing.join.chains for pair in neighbours(chain, tutorial)]
    for part, beyond in dict.fromkeys(pairs):
        way = joining.way(part, beyond) or ()
        if all(seam.step < crossing.step for seam in way):
            yield from way


def _step(number: int, tutorial: Tutorial) -> Step:
    return next(step for step in tutorial.steps if step.number == number)


def _presses(step: Step) -> bool:
    return any(_PRESSED.search(text.text) for text in step.prose())
