"""Measurements of the body in the other unit, and elastic longer than what it gathers."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.held import in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.rules.casings import seats_of
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, Worked, plus, show_working, work
from sitegen.tutorial import Amount, Computed, Elastic, Tutorial, pieces_cut

ROUND = ("bust", "chest", "waist", "hip", "hips")
"""Measurements round the body that are held against each other."""
_OTHER_UNIT = Fraction(254, 100)
_LEAST, _MOST = Fraction(3, 5), Fraction(5, 3)
"""How many times another one such measurement round the body may be: wide enough for a body of any shape."""
_TABLE = "body: {waist: 'WAIST', hip: 56 cm}\n"
_LEG = (
    "seam_allowance: 1 cm\nbody: {waist: WAIST}\nfabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces: {leg: {cut: 2, fabric: main, sides: {top: ring}, edges: {waist: 40 cm}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 2 cm, width: 2 cm, room: 5 mm}}\n"
)


@check(
    id="body-unit",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="Two measurements of the body of which one seems to be in the other unit",
    why="Inches among centimetres are two and a half times too much, in every number that follows from them.",
    source=COMMON_PRACTICE,
    trips=_TABLE.replace("WAIST", "52 in"),
    passes=_TABLE.replace("WAIST", "52 cm"),
)
def body_unit(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Of bust or chest, waist and hip none is less than 3/5 of another, where in the other unit it would not be."""
    for size in range(tutorial.size_count):
        typed = {
            name: amount
            for name in ROUND
            if name in tutorial.body and (amount := tutorial.body[name].amount_at(size)) is not None
        }
        pairs = [(one, other) for one in typed for other in typed if _is_off(typed[one], typed[other])]
        if pairs:
            yield _of_units(pairs, typed, size, computed)
            return


def _is_off(one: Amount, other: Amount) -> bool:
    """Whether the first is too large beside the second, and in the other unit would not be."""
    ratio = one.typed.value.over(other.typed.value) if other.typed.value else Fraction(0)
    return ratio > _MOST and _LEAST <= ratio / _OTHER_UNIT <= _MOST


def _of_units(pairs: list[tuple[str, str]], typed: dict[str, Amount], size: int, computed: Computed) -> Finding:
    """What is said of the one that is off most often, or that is typed in another unit than the tutorial's."""
    system = computed.tutorial.first_system
    names = [name for pair in pairs for name in pair]
    said = max(names, key=lambda name: (names.count(name), typed[name].typed.unit.system is not system))
    beside = dict.fromkeys(name for pair in pairs if said in pair for name in pair if name != said)
    told = listed(f"the {name} of {typed[name].typed.with_unit}" for name in beside)
    size_name = computed.size_name(size)
    return Finding(
        "body-unit",
        Severity.DOUBTFUL,
        typed[said].place,
        f"A {said} of {RULER.show(typed[said].typed.value, typed[said].typed.unit.system)} does not go with {told}"
        f"{in_size(size_name)}. Is one of them in the other unit?",
        typed[said].typed.text.strip(),
        "",
        (),
        size_name,
    )


@check(
    id="elastic-long",
    area="elastic",
    severity=Severity.WRONG,
    looks_at=Elastic,
    title="Elastic that is longer than what it gathers",
    why="It holds nothing: the garment falls down.",
    source="Arithmetic: all copies of the edges in whose casing it lies",
    trips=_LEG.replace("WAIST", "52 in"),
    passes=_LEG.replace("WAIST", "60 cm"),
)
def elastic_long(elastic: Elastic, computed: Computed) -> Iterator[Finding]:
    """A finished elastic is not longer than the edges in whose casing it lies, in all their copies, in every size. All
    pieces that have it at a side must have such an edge; if not, nothing is said."""
    for size in range(computed.tutorial.size_count):
        ring = computed.length(f"{elastic.key}.finished_length", size)
        whole = _all_copies(elastic, size, computed)
        if ring is None or whole is None or ring.length <= whole.length:
            continue
        system, size_name = computed.tutorial.first_system, computed.size_name(size)
        yield Finding(
            "elastic-long",
            Severity.WRONG,
            elastic.around.place,
            f"The finished {elastic.key.replace('_', ' ')} is {RULER.show(ring.length, system)} long"
            f"{in_size(size_name)}, but what it gathers only {RULER.show(whole.length, system)}. See what it goes"
            " round, and in which unit that is.",
            elastic.around.name,
            "",
            (*show_working(ring, system), *show_working(whole, system)),
            size_name,
        )
        return


def _all_copies(elastic: Elastic, size: int, computed: Computed) -> Worked | None:
    """All copies of the edges round which it goes; None where not all of them are known."""
    tutorial = computed.tutorial
    seats = sorted(seats_of(elastic, tutorial))
    owners = {name.partition(".")[0] for name in seats}
    carriers = {
        piece.key for piece in tutorial.pieces.values() if elastic.key in {side.name for side in piece.sides.values()}
    }
    if not carriers or not carriers <= owners:
        return None
    listed_in = [edge.name for girth in tutorial.girths.values() for edge in girth.edges]
    counts = {name: pieces_cut(tutorial.pieces[name.partition(".")[0]]) for name in seats}
    # An edge may be there twice on each piece, left and right: then a girth lists it as often.
    found = [(computed.length(name, size), n and max(n, listed_in.count(name))) for name, n in counts.items()]
    known = [(length, copies) for length, copies in found if length is not None and copies]
    if len(known) != len(found):
        return None
    terms = [length for length, copies in known for _ in range(copies)]
    return work("all edges that it gathers", terms[0], *(plus(term) for term in terms[1:]))
