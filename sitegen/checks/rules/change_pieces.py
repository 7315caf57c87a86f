"""Changes of several pieces: numbers that are not the same for all of them, and seams that stay level."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.held import in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, Length, Worked, inches, show_working
from sitegen.tutorial import Change, Computed, Prose, Reference, Tutorial, words_of

LEVEL_TOLERANCE = inches("1/8")
_PIECES = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven, buy: 3 yd}}\npieces:\n"
    "  front: {cut: 2, fabric: main, length: 24 in, sides: {top: seam, bottom: seam}, edges: {side: 15 in}}\n"
    "  back: {cut: 2, fabric: main, length: 27 in, sides: {top: seam, bottom: seam}, edges: {side: 15 in}}\n"
    "changes:\n  longer: {pieces: [front, back], LINE, crosses: [side]}\n"
)
_SHARE = _PIECES.replace("LINE", "line_at: 2/3 from the top, lengthen_by: 2 in")
_BOTTOM = _PIECES.replace("LINE", "line_at: 6 in from the bottom, lengthen_by: 2 in")
_STEP = "--- steps/01.yaml\ntitle: Lengthen it\ntext: Cut across NUMBER from the top.\n"
_JOIN = (
    "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"
)


@check(
    id="piece-not-named",
    area="changes",
    severity=Severity.WRONG,
    looks_at=(Prose, Tutorial),
    title="A number of a change that is another for each of its pieces",
    why="The number is that of the first piece; on the others the line would be drawn at the wrong place.",
    source="The content format of this program: a change over several pieces has numbers for each of them",
    trips=_SHARE + _STEP.replace("NUMBER", "{longer.part_above}"),
    passes=_SHARE + _STEP.replace("NUMBER", "{longer.front.part_above} and {longer.back.part_above}"),
)
def piece_not_named(part: Prose | Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where the pieces of a change differ in a number, whatever refers to that number says of which piece it is. A
    paragraph that speaks of the first piece alone may leave it out."""
    if isinstance(part, Prose):
        for reference in part.references:
            change = _change_of(reference.name, computed)
            if change is not None and not _speaks_of_first(part, reference, change, computed.tutorial):
                yield from _of_all(reference, change, computed)
        return
    for lengths in part.referred:
        change = _change_of(lengths.source.name, computed) if isinstance(lengths.source, Reference) else None
        if change is not None and isinstance(lengths.source, Reference):
            yield from _of_all(lengths.source, change, computed)


def _change_of(name: str, computed: Computed) -> Change | None:
    """The change over several pieces to which a number belongs."""
    change = computed.tutorial.changes.get(name.partition(".")[0])
    return change if change is not None and len(change.owners) > 1 else None


def _speaks_of_first(prose: Prose, reference: Reference, change: Change, tutorial: Tutorial) -> bool:
    """Whether every paragraph with this reference names the first piece of the change, and no other of its pieces."""
    written = f"{{{reference.name}}}"
    paragraphs = [each for each in re.split(r"\n\s*\n", prose.text) if written in each.replace(" ", "")]
    own, *others = (_names(name.name, tutorial) for name in change.pieces)
    return all(
        _any_in(own, paragraph) and not any(_any_in(other, paragraph) for other in others) for paragraph in paragraphs
    )


def _names(piece: str, tutorial: Tutorial) -> set[str]:
    found = tutorial.pieces.get(piece)
    return {words_of(piece), found.called.lower()} if found is not None else {words_of(piece)}


def _any_in(names: set[str], text: str) -> bool:
    return any(re.search(rf"(?<![a-z]){re.escape(name)}(?![a-z])", text.lower()) for name in names)


def _of_all(reference: Reference, change: Change, computed: Computed) -> Iterator[Finding]:
    field = reference.name.partition(".")[2]
    for size in range(computed.tutorial.size_count):
        found = [(owner, piece, computed.length(f"{owner}.{field}", size)) for owner, piece in change.owners[1:]]
        known = [(owner, piece, number) for owner, piece, number in found if number is not None]
        system, size_name = computed.tutorial.first_system, computed.size_name(size)
        if len({RULER.show(number.length, system) for _, _, number in known}) < 2:
            continue
        values = ", ".join(
            f"{RULER.show(number.length, system)} for the {words_of(piece)}" for _, piece, number in known
        )
        names = " or ".join(f"{{{owner}.{field}}}" for owner, _, _ in known)
        yield Finding(
            "piece-not-named",
            Severity.WRONG,
            reference.place,
            f"The {words_of(reference.name)} is {values}{in_size(size_name)}. Say of which piece: {names}.",
            reference.name,
            f"{known[0][0]}.{field}",
            tuple(dict.fromkeys(line for _, _, number in known for line in show_working(number, system))),
            size_name,
        )
        return


@check(
    id="wanted-missed",
    area="changes",
    severity=Severity.HINT,
    looks_at=Change,
    title="A wanted length that only the first piece reaches",
    why="Mating pieces change by the same amount, so that pieces that differ before differ afterwards too.",
    source="Mates are changed by the same amount: " + COMMON_PRACTICE,
    trips=_PIECES.replace("LINE", "line_at: 6 in from the bottom, wanted: 26 in cut"),
    passes=_PIECES.replace("LINE", "line_at: 6 in from the bottom, wanted: 26 in cut").replace("27 in", "24 in"),
)
def wanted_missed(change: Change, computed: Computed) -> Iterator[Finding]:
    """Where a change says the length that is wanted, each of its pieces comes out at that length, in every size."""
    if change.wanted is None:
        return
    field = f"new_{'finished' if change.wanted_finished else 'cut'}_length"
    for size in range(computed.tutorial.size_count):
        wanted = computed.length(f"{change.key}.wanted", size)
        for owner, piece in change.owners[1:]:
            number = computed.length(f"{owner}.{field}", size)
            system, size_name = computed.tutorial.first_system, computed.size_name(size)
            if number is None or wanted is None or RULER.agrees(wanted.length, number.length, system):
                continue
            yield Finding(
                "wanted-missed",
                Severity.HINT,
                change.wanted.place,
                f"With {words_of(change.key)} the {words_of(piece)} becomes {RULER.show(number.length, system)}"
                f"{in_size(size_name)}, not the wanted {RULER.show(wanted.length, system)}: the amount is that of the"
                f" {words_of(change.pieces[0].name)}.",
                "",
                "",
                show_working(number, system),
                size_name,
            )
            return


@check(
    id="mate-level",
    area="changes",
    severity=Severity.DOUBTFUL,
    looks_at=Change,
    title="Pieces that are sewn together and lengthened at different levels",
    why="The two halves of the seam are equally long, but their notches and slopes no longer lie on each other.",
    source="Mates are changed by the same amount at the same level: " + COMMON_PRACTICE,
    trips=_SHARE + _JOIN,
    passes=_BOTTOM + _JOIN,
)
def mate_level(change: Change, computed: Computed) -> Iterator[Finding]:
    """Where two pieces of a change are sewn together along edges that a line crosses, the line lies as far from the
    top, or as far from the bottom, of both, in every size."""
    for one, other in _sewn_together(change, computed):
        for line, place in _lines(change, one, other):
            for size in range(computed.tutorial.size_count):
                ends = [
                    tuple(computed.length(f"{change.key}.{piece}.{line}{part}", size) for piece in (one, other))
                    for part in ("part_above", "part_below")
                ]
                apart = [_apart(*end) for end in ends]
                if any(each is None or each <= LEVEL_TOLERANCE for each in apart):
                    continue
                yield _not_level(change, place, (one, other), ends[1], size, computed)
                return


def _lines(change: Change, one: str, other: str) -> Iterator[tuple[str, Place]]:
    """The lines that cross edges of both pieces: the name under which their numbers stand, and their place."""
    if change.line_at is not None:
        yield "", change.line_at.place
    for number, line in enumerate(change.lines, 1):
        named = [name.name for name in line.crosses]
        if all(any("." not in name or name.startswith(f"{piece}.") for name in named) for piece in (one, other)):
            yield f"line_{number}.", line.at.place


def _sewn_together(change: Change, computed: Computed) -> Iterator[tuple[str, str]]:
    """Every two pieces of a change that are joined along crossed edges, each pair once."""
    changed = {name.name for name in change.pieces}
    crossed = {
        edge.name if "." in edge.name else f"{piece}.{edge.name}" for edge in change.crosses for piece in changed
    }
    seen = set()
    for step in computed.tutorial.steps:
        for join in step.every_join():
            sides = [[name.name.partition(".")[0] for name in chain if name.name in crossed] for chain in join.chains]
            pairs = [(a, b) for i, side in enumerate(sides) for a in side for rest in sides[i + 1 :] for b in rest]
            for one, other in pairs:
                pair = frozenset((one, other))
                if one != other and pair not in seen:
                    seen.add(pair)
                    yield one, other


def _apart(one: Worked | None, other: Worked | None) -> Length | None:
    return abs(one.length - other.length) if one is not None and other is not None else None


def _not_level(
    change: Change,
    place: Place,
    pieces: tuple[str, str],
    below: tuple[Worked | None, ...],
    size: int,
    computed: Computed,
) -> Finding:
    system, size_name = computed.tutorial.first_system, computed.size_name(size)
    where = " and ".join(
        f"{RULER.show(number.length, system)} from the bottom of the {words_of(piece)}"
        for piece, number in zip(pieces, below, strict=True)
        if number is not None
    )
    return Finding(
        "mate-level",
        Severity.DOUBTFUL,
        place,
        f"The line of {words_of(change.key)} lies {where}{in_size(size_name)}, which are sewn together. Measure it from"
        " the same end on both, such as 6 in from the bottom.",
        "",
        "",
        tuple(line for number in below if number is not None for line in show_working(number, system)),
        size_name,
    )
