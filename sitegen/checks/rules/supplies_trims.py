"""Cords, tapes and zips in the supplies, against those of the garment."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, instead
from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, NotUnderstood, Rounding, Typed, parse_length, show_in_unit, show_working
from sitegen.tutorial import Claim, Computed, Tutorial, Words, length_from, trim_supplies

_HOOD = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, buy: 1 yd}}\n"
    "pieces: {hood: {cut: 2 mirrored, fabric: main, edges: {casing: 14 in}}}\n"
    "trims: {hood_cord: {kind: cord, edges: [hood.casing, hood.casing], each_end: 8 in, supply: cotton cord CLAIM}}\n"
)


@check(
    id="trim-sum",
    area="supplies",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="A cord, tape or zip of another length than its edges make",
    why="A cord that is too short slips into its casing, a zip that is too short leaves no opening.",
    source="Arithmetic: edges and twice what hangs out at each end",
    trips=_HOOD.replace("CLAIM", ", length: 36 in") + "supplies: [{item: cotton cord, amount: 2 yd}]",
    passes=_HOOD.replace("CLAIM", ", length: 44 in") + "supplies: [{item: cotton cord, amount: 2 yd}]",
)
def trim_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """Written lengths of a cord, tape or zip must be the computed ones."""
    if claim.part == "trim":
        yield from disagreements("trim-sum", claim, computed)


@check(
    id="trim-short",
    area="supplies",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A cord, tape or zip in the supplies that is too short",
    why="The student has a cord that does not come out of its casing, or a zip that is shorter than its opening.",
    source="Arithmetic: all that is cut from it, in the size that needs most",
    trips=_HOOD.replace("CLAIM", "") + "supplies: [{item: cotton cord, amount: 1 yd}]",
    passes=_HOOD.replace("CLAIM", "") + "supplies: [{item: cotton cord, amount: 1 1/4 yd}]",
)
def trim_short(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The amount of a cord or tape in the supplies must be enough for all that is cut from it, and the size of a zip
    for the longest opening, in every size."""
    for supply, trims in trim_supplies(tutorial):
        zips = all(trim.is_zip for trim in trims)
        said = supply.size if zips else supply.amount
        typed = _typed(said) if said is not None else None
        lengths = [
            (size, length)
            for size in range(tutorial.size_count)
            if (length := length_from(trims, size, computed)) is not None
        ]
        if said is None or typed is None or not lengths:
            continue
        size, need = max(lengths, key=lambda each: each[1].length)
        if typed.value >= need.length or RULER.agrees(typed.value, need.length, typed.unit.system):
            continue
        differ = len({length.length for _, length in lengths}) > 1
        size_name = computed.size_name(size) if differ else ""
        rounding, lacks = (Rounding.ENOUGH, "short") if zips else (Rounding.SOLD, "little")
        needed = show_in_unit(need.length, typed.unit, rounding=rounding)
        yield Finding(
            "trim-short",
            Severity.WRONG,
            said.place,
            f"{typed.text.strip()} of {supply.item.text} is too {lacks}: {needed} are needed"
            f"{f' for size {size_name}' if size_name else ''}.",
            said.text,
            said.text.replace(typed.text.strip(), instead(typed, need.length, rounding)),
            show_working(need, typed.unit.system),
            size_name,
        )


def _typed(words: Words) -> Typed | None:
    try:
        return parse_length(words.text)
    except NotUnderstood:
        return None
