"""Widths of cloth side by side, such as curtains, and prints whose repeats must meet."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import disagreements, in_size, show_bought
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import Rounding, Worked, plus, show_measured, show_working, work
from sitegen.tutorial import Claim, Computed, Drops, Fabric, Tutorial, words_of

_CLOTH = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton print, structure: woven, width: 54 in, repeat: 12 in, BUY}}\n"
)
_CURTAIN = "drops: {curtain: {width: 50 in, ratio: 2 to 1, length: 84 in, top: 3 in, hem: 6 in, fabric: main, CLAIM}}"


def _curtain(claim: str = "drops: 2", buy: str = "buy: 5 3/8 yd") -> str:
    return (_CLOTH + _CURTAIN).replace("BUY", buy).replace("CLAIM", claim)


@check(
    id="drops-sum",
    area="drops",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="Drops cut to another length than their hems and repeats make",
    why="A drop that is cut too short cannot be put back, and one cut between two repeats matches nothing.",
    source="Arithmetic of hems and allowances; each drop is cut in whole repeats, so that all begin at the same place"
    " of the print: " + COMMON_PRACTICE,
    trips=_curtain("cut_length: 90 in"),
    passes=_curtain("full_width: 100 in, cut_length: 93 in, repeat_length: 96 in, for_repeat: 3 in, cloth: 192 in"),
)
def drops_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """The written width to make up, the length of each drop, with its hems and with whole repeats, and the cloth for
    all drops must be as computed."""
    if claim.part == "drops":
        yield from disagreements("drops-sum", claim, computed)


@check(
    id="drops-count",
    area="drops",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Too few drops for the width, or a width that nobody can know",
    why="A drop that is missing shows only when all others are sewn together.",
    source="Width to make up ÷ what each drop adds, rounded up: arithmetic of allowances",
    trips=_curtain("drops: 1"),
    passes=_curtain("drops: 2"),
)
def drops_count(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The written number of drops makes up the width with its fullness and its seams, in every size, and the fabric
    says how wide it is."""
    for drops in tutorial.drops.values():
        fabric = tutorial.fabrics.get(drops.fabric.name)
        if fabric is not None and fabric.width is None:
            yield Finding(
                "drops-count",
                Severity.WRONG,
                drops.fabric.place,
                f"How many drops {words_of(drops.key)} takes follows from the width of {fabric.name}, which is not"
                f" said. Add to fabric {fabric.key}, for example, width: 54 in",
                drops.fabric.name,
            )
        elif drops.count is not None:
            yield from _too_few(drops, drops.count, computed)


def _too_few(drops: Drops, count: int, computed: Computed) -> Iterator[Finding]:
    for size in range(computed.tutorial.size_count):
        needed = computed.number(f"{drops.key}.drops_needed", size)
        if needed is None or needed.number <= count:
            continue
        size_name = computed.size_name(size)
        yield Finding(
            "drops-count",
            Severity.WRONG,
            drops.count_place,
            f"{words_of(drops.key).capitalize()} needs {needed.number} drops{in_size(size_name)}, not {count}.",
            str(count),
            str(needed.number),
            show_working(needed, computed.tutorial.first_system),
            size_name,
        )
        return


@check(
    id="drops-cloth",
    area="drops",
    severity=Severity.WRONG,
    looks_at=Fabric,
    title="Too little cloth for the drops that are cut from it",
    why="The same print may be sold out when the last drop is missing.",
    source="Drops are cut one after the other along the cloth: " + COMMON_PRACTICE,
    trips=_curtain(buy="buy: 5 yd"),
    passes=_curtain(buy="buy: 5 3/8 yd"),
)
def drops_cloth(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """What is bought of a fabric is enough for all drops cut from it, and for the pieces laid on it, in every size."""
    if fabric.buy is None:
        return
    names = [f"{each.key}.cloth" for each in computed.tutorial.drops.values() if each.fabric.name == fabric.key]
    for size in range(computed.tutorial.size_count):
        amount = fabric.buy.amount_at(size)
        found = [computed.length(name, size) for name in (*names, f"{fabric.key}.need")] if names else []
        total = _together([each for each in found if each is not None])
        if amount is None or total is None or amount.typed.value >= total.length:
            continue
        right, size_name = show_bought(amount.typed, total.length), computed.size_name(size)
        yield Finding(
            "drops-cloth",
            Severity.WRONG,
            amount.place,
            f"{show_measured(total, computed.tutorial.first_system)} of {fabric.name} are"
            f" needed{in_size(size_name)}, but only {amount.typed.text.strip()} bought. Buy {right}.",
            amount.typed.text.strip(),
            right,
            show_working(total, computed.tutorial.first_system),
            size_name,
        )
        return


def _together(lengths: list[Worked]) -> Worked | None:
    if len(lengths) < 2:
        return lengths[0] if lengths else None
    return work("cloth for all of it", lengths[0], *(plus(each) for each in lengths[1:])).rounded(Rounding.SOLD)


@check(
    id="repeat-sum",
    area="cloth",
    severity=Severity.WRONG,
    looks_at=Claim,
    title="Too much or too little cloth added for a print to match",
    why="Too little, and the last piece cannot be moved to where its print meets that of its neighbour.",
    source="Each row of matched pieces but the first is moved on by less than one repeat: derived",
    trips="fabrics: {main: {name: print, structure: woven, width: 45 in, repeat: 6 in, for_repeat: 12 in}}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: 30 in, width: 40 in}}",
    passes="fabrics: {main: {name: print, structure: woven, width: 45 in, repeat: 6 in, for_repeat: 6 in}}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: 30 in, width: 40 in}}",
)
def repeat_sum(claim: Claim, computed: Computed) -> Iterator[Finding]:
    """What is written to be added for the repeat of a print must be one repeat for every row of matched pieces in the
    cutting layout but the first."""
    if claim.part == "fabric":
        yield from disagreements("repeat-sum", claim, computed)
