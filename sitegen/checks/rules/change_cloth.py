"""Cloth to buy, against what the pieces need once a change or a swap is made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from sitegen.checks.held import system_of
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import Worked, show_to_buy, show_working
from sitegen.tutorial import Change, Computed, Fabric, Swap, more_cloth, words_of

_SKIRT = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: BUY}}\n"
    "pieces: {panel: {cut: 1, fabric: main, length: 26 in, width: 30 in}}\n"
    "changes: {longer: {piece: panel, line_at: 12 in from the top, lengthen_by: 3 in}}\n"
)


@check(
    id="change-cloth",
    area="changes",
    severity=Severity.WRONG,
    looks_at=(Change, Swap),
    title="A change that needs more cloth than is bought",
    why="Who makes the change has bought the cloth by then, and the longer piece no longer fits on it.",
    source="The cutting layout of this program, and need ÷ (1 − shrinkage); rounding up to what shops sell: "
    + COMMON_PRACTICE,
    trips=_SKIRT.replace("BUY", "3/4 yd"),
    passes=_SKIRT.replace("BUY", "7/8 yd"),
)
def change_cloth(part: Change | Swap, computed: Computed) -> Iterator[Finding]:
    """The fabric to buy is enough for the pieces as they are after each change and swap too, or a text tells what that
    needs, by the number CHANGE.then.FABRIC.need. Where a shorter layout by hand cannot be ruled out, it is doubtful. A
    piece that fits on the width of the cloth fits on it after the change. A fabric that is too little without the
    change is another check's."""
    for fabric in computed.tutorial.fabrics.values():
        yield from _does_not_fit(part, fabric, computed)
        short = {
            size: need
            for size, need in more_cloth(part.key, fabric.key, computed).items()
            if not _short_before(fabric, size, computed)
        }
        if short and f"{part.key}.then.{fabric.key}" not in _told(computed):
            yield _too_little(part, fabric, short, computed)


def _short_before(fabric: Fabric, size: int, computed: Computed) -> bool:
    need, bought = (computed.length(f"{fabric.key}.{field}", size) for field in ("need", "buy"))
    return need is not None and bought is not None and need.length > bought.length


def _told(computed: Computed) -> set[str]:
    """After which changes a text tells what is needed of which fabric: ``longer.then.main``."""
    names = (reference.name for text in computed.tutorial.prose() for reference in text.references)
    return {name.removesuffix(".need") for name in names if name.endswith(".need")}


def _too_little(part: Change | Swap, fabric: Fabric, short: Mapping[int, Worked], computed: Computed) -> Finding:
    sizes_by_amount: dict[str, list[str]] = {}
    for size, need in short.items():
        sizes_by_amount.setdefault(_to_buy(fabric, need, size, computed), []).append(computed.size_name(size))
    amounts = (f"{amount}{_in_sizes(names)}" for amount, names in sizes_by_amount.items())
    sure = any(_less_than_possible(part, fabric, size, computed) for size in short)
    first = next(iter(short))
    number = f"{part.key}.then.{fabric.key}.need"
    return Finding(
        "change-cloth",
        Severity.WRONG if sure else Severity.DOUBTFUL,
        part.place,
        f"With {words_of(part.key)} the pieces need more {fabric.name} than is bought: {', '.join(amounts)}. Buy that"
        f" much for everybody, or tell it in the text that describes the change: {{{number}}}",
        "",
        "",
        show_working(short[first], computed.tutorial.first_system),
        computed.size_name(first) if len(short) == 1 else "",
    )


def _in_sizes(names: list[str]) -> str:
    return f" in {'sizes' if names[1:] else 'size'} {listed(names)}" if any(names) else ""


def _less_than_possible(part: Change | Swap, fabric: Fabric, size: int, computed: Computed) -> bool:
    """Whether no layout at all could do with what is bought."""
    least = computed.length(f"{part.key}.then.{fabric.key}.least", size)
    bought = computed.length(f"{fabric.key}.buy", size)
    return least is not None and bought is not None and bought.length < least.length


def _to_buy(fabric: Fabric, need: Worked, size: int, computed: Computed) -> str:
    amount = fabric.buy.amount_at(size) if fabric.buy is not None else None
    return show_to_buy(need.length, system_of(amount.typed) if amount else computed.tutorial.first_system)


def _does_not_fit(part: Change | Swap, fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    changed = computed.changed.get(part.key)
    if changed is None:
        return
    for size in range(computed.tutorial.size_count):
        reason = changed.cannot_lay(fabric.key, size)
        if reason and not computed.cannot_lay(fabric.key, size):
            size_name = computed.size_name(size)
            yield Finding(
                "change-cloth",
                Severity.WRONG,
                part.place,
                f"With {words_of(part.key)}: {reason}{f' (size {size_name})' if size_name else ''}.",
                "",
                "",
                (),
                size_name,
            )
            return
