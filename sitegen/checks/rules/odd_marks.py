"""A single value of a list that lies on a finer mark than all others, and a single one in the other unit."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.rules.body_units import ROUND
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, System, Unit, inches, mm
from sitegen.tutorial import Amount, Computed, Lengths, Reference, Tutorial, words_of

_FEWEST = 4
_MARKS = {System.INCHES: inches("1/8"), System.CENTIMETRES: mm(5)}
_FEWEST_AROUND = 8
"""So many lengths in one unit make a single one in the other unit odd."""
_SOLD_BY_SIZE = frozenset(("buy", "repeat"))
"""Fields of a fabric that shops tell in a unit of their own."""
_HELD_ELSEWHERE = frozenset(f"body.{name}" for name in ROUND)
_LIST = "sizes: [S, M, L, XL]\nbody: {bust: 'BUST in'}"
_TWO_LISTS = "sizes: [S, M, L, XL]\nbody: {bust: '33, 35, 37, 39 in', hip: '36, 38, 40, 42 in'}\n"


@check(
    id="odd-mark",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Lengths,
    title="One size on a finer mark than the others",
    why="Sizes grow by round steps; one value between the marks is mostly a slip of the eye on the ruler.",
    source="Grading in steps of 1/8 in or 5 mm: " + COMMON_PRACTICE,
    trips=_LIST.replace("BUST", "33, 35 1/16, 37, 39"),
    passes=_LIST.replace("BUST", "33, 35, 37, 39"),
)
def odd_mark(part: Lengths, computed: Computed) -> Iterator[Finding]:
    """In a list of four sizes or more of which all values but one lie on 1/8 in or 5 mm, that one does too. What is
    computed is rounded as it comes, and is passed over."""
    source = part.source
    if isinstance(source, Reference) or len(source.values) < _FEWEST:
        return
    if any(claim.lengths is part for claim in computed.tutorial.claims):
        return
    off = [each for each in source.values if not each.typed.value.sits_on(_MARKS[each.typed.unit.system])]
    if len(off) == 1:
        said = off[0].typed.text.strip()
        mark = "1/8 in" if off[0].typed.unit.system is System.INCHES else "5 mm"
        message = f"{said} is the only value of this list that does not lie on a mark of {mark}. Is it right?"
        yield Finding("odd-mark", Severity.DOUBTFUL, off[0].place, message, said)


@check(
    id="odd-unit",
    area="sizes",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="One length in the other unit",
    why="2 in where 2 cm is meant is two and a half times too much, and so is all that follows from it.",
    source=COMMON_PRACTICE,
    trips=_TWO_LISTS + "seam_allowance: 1 cm",
    passes=_TWO_LISTS + "seam_allowance: 1 cm (3/8 in)",
)
def odd_unit(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where eight lengths or more are typed in one unit, no single one is in the other, unless it is given in both.
    Millimetres, which settings of machines have everywhere, cloth and the width of elastic, which are sold by their
    size, do not count, nor do measurements of the body that are held against each other (body-unit)."""
    home, strange = 0, []
    for name, amounts in _typed(tutorial):
        other = [each for each in amounts if each.typed.unit.system is not tutorial.first_system]
        home += len(amounts) - len(other)
        if (
            name not in _HELD_ELSEWHERE
            and other
            and not any(each.typed.pair is not None or each.typed.unit is Unit.MM for each in other)
        ):
            strange.append((name, other[0]))
    if home < _FEWEST_AROUND or len(strange) != 1:
        return
    name, amount = strange[0]
    in_other = RULER.show(amount.typed.value, tutorial.first_system)
    yield Finding(
        "odd-unit",
        Severity.DOUBTFUL,
        amount.place,
        f"The {words_of(name)} is given as {amount.typed.with_unit}, which is {in_other}. All else here is in"
        f" {tutorial.first_system.value}. If it is right, write both units, {amount.typed.with_unit} ({in_other}).",
        amount.typed.text.strip(),
    )


def _typed(tutorial: Tutorial) -> Iterator[tuple[str, list[Amount]]]:
    """Every length that was typed, by its name, with all its values."""
    for each in tutorial.typed:
        part, _, field = each.name.rpartition(".")
        sold = each.bolt or field in _SOLD_BY_SIZE or (part in tutorial.elastics and field == "width")
        if not isinstance(each.source, Reference) and not sold:
            yield each.name, list(each.source.values)
