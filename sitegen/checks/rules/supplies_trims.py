"""Cords, tapes and zips in the supplies, against those of the garment."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sitegen.checks.held import disagreements
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.supplied_lengths import length_said, too_little
from sitegen.findings import Finding, Severity
from sitegen.prose import Kind, read
from sitegen.quantities import Rounding, Worked, inches, show_in_unit
from sitegen.tutorial import Claim, Computed, Supply, Trim, Tutorial, Words, length_from, trim_supplies, words_of

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
    source="Arithmetic: edges and twice what is beyond them at each end",
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
    for the longest opening, in every size, and after each change and swap too, unless a text tells how long it then is,
    by the number CHANGE.then.TRIM.length. Zips that are counted are as many as the garment has."""
    told = {reference.name for text in tutorial.prose() for reference in text.references}
    for supply, trims in trim_supplies(tutorial):
        short = list(_too_short(supply, trims, computed))
        yield from short or _too_few(supply, trims)
        for key, changed in computed.changed.items() if not short else ():
            if told.isdisjoint(f"{key}.then.{trim.key}.length" for trim in trims):
                for each in _too_short(supply, trims, changed):
                    yield replace(each, message=f"With {words_of(key)}: {each.message}")


def _too_short(supply: Supply, trims: tuple[Trim, ...], computed: Computed) -> Iterator[Finding]:
    if all(trim.is_zip for trim in trims):
        said, lacks, rounding = supply.size, "short", Rounding.ENOUGH
    else:
        said, lacks, rounding = supply.amount, "little", Rounding.SOLD
    needed = _needed(trims, computed)
    yield from too_little("trim-short", said, supply.item.text, needed, computed, lacks=lacks, rounding=rounding)


def _needed(trims: tuple[Trim, ...], computed: Computed) -> list[tuple[int, Worked]]:
    lengths = ((size, length_from(trims, size, computed)) for size in range(computed.tutorial.size_count))
    return [(size, length) for size, length in lengths if length is not None]


def _too_few(supply: Supply, trims: tuple[Trim, ...]) -> Iterator[Finding]:
    """Fewer zips in the supplies than the garment has."""
    amount, count = supply.amount, len(trims)
    if amount is None or not all(trim.is_zip for trim in trims) or not amount.text.isdecimal():
        return
    if int(amount.text) < count:
        yield Finding(
            "trim-short",
            Severity.WRONG,
            amount.place,
            f"{amount.text} of {supply.item.text} is too few: {' and '.join(words_of(trim.key) for trim in trims)} are"
            f" {count}.",
            amount.text,
            str(count),
        )


@check(
    id="cord-no-ends",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Trim,
    title="A cord that is no longer than its casing",
    why="Nothing hangs out to pull or to knot, and the cord slips into its casing.",
    source=COMMON_PRACTICE,
    trips=_HOOD.replace("CLAIM", "").replace("each_end: 8 in, ", "") + "supplies: [{item: cotton cord, amount: 1 yd}]",
    passes=_HOOD.replace("CLAIM", "") + "supplies: [{item: cotton cord, amount: 1 1/4 yd}]",
)
def cord_no_ends(trim: Trim, computed: Computed) -> Iterator[Finding]:
    """A cord says how much of it hangs out at each end."""
    if trim.kind == "cord" and trim.each_end is None:
        yield Finding(
            "cord-no-ends",
            Severity.DOUBTFUL,
            trim.place,
            f"The {words_of(trim.key)} is as long as its casing, and nothing hangs out of it. Add what does, such as"
            " each_end: 8 in",
        )


@check(
    id="trim-unheld",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A cord, tape or zip in the supplies that cannot be held against the garment",
    why="Nobody can tell whether it is long enough, so that one which is too short would be published.",
    source="The content format of this program: what can be computed and is written is held against the computed one",
    trips=_HOOD.replace("CLAIM", "") + "supplies: [{item: cotton cord, amount: about 1 1/4 yd}]",
    passes=_HOOD.replace("CLAIM", "") + "supplies: [{item: cotton cord, amount: 1 1/4 yd}]",
)
def trim_unheld(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The amount of a cord or tape, where it is a length, is one length and nothing else, so is the size of a zip, and
    no zip is of a supply from which something is cut."""
    for supply, trims in trim_supplies(tutorial):
        zips = [trim for trim in trims if trim.is_zip]
        name = supply.item.text
        if zips and len(zips) < len(trims):
            other = next(trim for trim in trims if not trim.is_zip)
            yield _unheld(
                Words(other.supply.name, other.supply.place),
                f"Nothing is cut from a zip, but “{name}” is the supply of the {words_of(zips[0].key)} and of the"
                f" {words_of(other.key)}, a {other.kind}. Give each a supply of its own.",
            )
        elif zips and length_said(supply.size) is None:
            yield _unheld(
                supply.size or supply.item,
                f"How long the {name} is cannot be read in its size. Write one length that serves every size, such as"
                f" size: {_enough(trims, computed, Rounding.ENOUGH)}",
            )
        elif not zips and length_said(supply.amount) is None and _has_length(supply.amount):
            yield _unheld(
                supply.amount or supply.item,
                f"How much {name} is bought cannot be read in its amount. Write one length that serves every size, such"
                f" as amount: {_enough(trims, computed, Rounding.SOLD)}",
            )


def _unheld(said: Words, message: str) -> Finding:
    return Finding("trim-unheld", Severity.DOUBTFUL, said.place, message, said.text)


def _has_length(words: Words | None) -> bool:
    return words is not None and any(each.kind is Kind.LENGTH for each in read(words.text))


def _enough(trims: tuple[Trim, ...], computed: Computed, rounding: Rounding) -> str:
    """What is needed in the size that needs most, in the units of the tutorial; an example where nobody knows it."""
    most = max((length.length for _, length in _needed(trims, computed)), default=inches(10))
    return show_in_unit(most, computed.tutorial.unit, rounding=rounding)
