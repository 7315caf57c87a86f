"""The order of making: nothing is used before it is there, and nothing is done too late."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import by_title, handled, listed
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Reference, Step, Tutorial, part_of, seat_of

_TOP = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {shoulder: 5 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {shoulder: 5 in}}\n"
)
_CUT = "title: Cut out\ntext: Cut.\ncut: [front, back]\n"
_TAPE = "title: Tape the shoulder\ntext: Sew a tape to it.\nstabilise: [front.shoulder]\n"
_SHOULDERS = "title: Sew the shoulders\ntext: Sew.\njoin: [{edges: [front.shoulder, back.shoulder], stitch: zigzag}]\n"
_WAIST = (
    "seam_allowance: 3/8 in\nbody: {waist: 22 in}\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {front: {cut: 2, fabric: main, sides: {top: ring}, edges: {waist: 12 in}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}}\n"
)
_CASING = "title: Make the casing\ntext: Turn the top down and sew.\nfinish: [front.waist]\n"
_INSERT = "title: Put the elastic in\ntext: Pull it through.\ninsert: [ring]\n"
_HEM = (
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {pocket: {cut: 1, fabric: main, edges: {top: 6 in}}}\n"
    "hems: {pocket_hem: {edges: [pocket.top], turn: 1 in, fold_under: 1/4 in}}\n"
)
_TURN = "title: Hem the pocket\ntext: Turn the top down and sew.\nhem: [pocket_hem]\n"
_FINISH = "title: Finish the edges\ntext: Sew over the edge.\nfinish: [pocket.top]\n"


def _steps(*texts: str) -> str:
    return "".join(f"--- steps/{number:02}.yaml\n{text}" for number, text in enumerate(texts, 1))


@check(
    id="used-before-cut",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A piece that is sewn before it is cut",
    why="The student stands at the machine and has nothing to sew.",
    source="Follows from the steps",
    trips=_TOP + _steps(_SHOULDERS, _CUT),
    passes=_TOP + _steps(_CUT, _SHOULDERS),
)
def used_before_cut(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """A piece, band or elastic that a step lists under cut must not be sewn, turned or put in before that step."""
    cut_in: dict[str, Step] = {}
    for step in tutorial.steps:
        for name in step.cuts:
            cut_in.setdefault(name.name, step)
    reported: set[str] = set()
    for step in tutorial.steps:
        for name in handled(step, tutorial):
            part = part_of(name.name, tutorial)
            if part is None or part not in cut_in or part in reported or cut_in[part].number <= step.number:
                continue
            reported.add(part)
            yield Finding(
                "used-before-cut",
                Severity.WRONG,
                name.place,
                f"The {part.replace('_', ' ')} is used here but cut only in {by_title(cut_in[part])}.",
            )


@check(
    id="stabilise-late",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="An edge that is stabilised after it was sewn",
    why="It has stretched under the machine by then, and the tape holds it at the stretched length.",
    source=COMMON_PRACTICE,
    trips=_TOP + _steps(_SHOULDERS, _TAPE),
    passes=_TOP + _steps(_TAPE, _SHOULDERS),
)
def stabilise_late(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """An edge is stabilised in the step that joins it or in an earlier one. A tape over a sewn seam is a finish."""
    for step in tutorial.steps:
        for name in step.stabilises:
            joined = [each for each in tutorial.steps if any(edge.name == name.name for edge in _sewn(each))]
            # Sewn again here or later, it is another copy of the edge, such as the second shoulder.
            if joined and joined[-1].number < step.number:
                yield Finding(
                    "stabilise-late",
                    Severity.WRONG,
                    name.place,
                    f"{name.name} is stabilised here, but it was sewn already in {by_title(joined[0])}. Stabilise it"
                    f" before that. A tape that covers a sewn seam is written finish: [{name.name}].",
                    name.name,
                )


def _sewn(step: Step) -> Iterator[Reference]:
    yield from (name for join in step.joins for name in join.names())


@check(
    id="insert-before-casing",
    area="making",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Elastic or a cord that is put in before its casing is made",
    why="There is no tunnel yet to pull it through.",
    source="Follows from the steps",
    trips=_WAIST + _steps(_INSERT, _CASING),
    passes=_WAIST + _steps(_CASING, _INSERT),
)
def insert_before_casing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Elastic or a cord goes in after the first step that sews, turns or finishes an edge in whose casing it lies: of
    elastic the edge named like its measurement, on the pieces that have the elastic at a side, of a cord its edges.
    Without such an edge nothing is said."""
    for step in tutorial.steps:
        for name in step.inserts:
            seat = _casing_of(name.name, tutorial)
            making = [each for each in tutorial.steps if any(edge.name in seat for edge in _worked(each, tutorial))]
            if making and making[0].number > step.number:
                yield Finding(
                    "insert-before-casing",
                    Severity.WRONG,
                    name.place,
                    f"The {name.name.replace('_', ' ')} is put in here, but its casing at {listed(sorted(seat))} is"
                    f" made only in {by_title(making[0])}.",
                    name.name,
                )


def _casing_of(key: str, tutorial: Tutorial) -> set[str]:
    """The edges in whose casing elastic or a cord lies; what is sewn on along its edges needs none."""
    if key in tutorial.elastics:
        return set(seat_of(tutorial.elastics[key], tutorial))
    trim = tutorial.trims.get(key)
    return {edge.name for edge in trim.edges} if trim is not None and trim.kind == "cord" else set()


def _worked(step: Step, tutorial: Tutorial) -> Iterator[Reference]:
    """What a step works on besides what it puts in."""
    put_in = {name.place for name in step.inserts}
    yield from (name for name in handled(step, tutorial) if name.place not in put_in)


@check(
    id="finished-late",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="An edge that is finished after it was hidden",
    why="A raw edge inside a double-fold hem or an enclosed seam can no longer be reached.",
    source="Follows from the steps",
    trips=_HEM + _steps(_TURN, _FINISH),
    passes=_HEM + _steps(_FINISH, _TURN),
)
def finished_late(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """An edge that an earlier step hid in a double-fold hem or in a seam with enclosed is not finished any more."""
    hidden: dict[str, Step] = {}
    for step in tutorial.steps:
        for name in (name for chain in step.finishes for name in chain):
            if name.name in hidden:
                yield Finding(
                    "finished-late",
                    Severity.DOUBTFUL,
                    name.place,
                    f"{name.name} is finished here, but its raw edge was hidden already in"
                    f" {by_title(hidden[name.name])}. Finish it before that, or leave it out.",
                    name.name,
                )
        double = [tutorial.hems[hem.name] for hem in step.hems if hem.name in tutorial.hems]
        edges = [edge for hem in double if hem.fold_under for edge in hem.edges]
        edges += [name for join in step.joins if join.enclosed for name in join.names()]
        for edge in edges:
            hidden.setdefault(edge.name, step)
