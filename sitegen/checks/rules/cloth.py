"""Cloth to buy, against the cutting layout."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import show_bought
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import Worked, show_working
from sitegen.tutorial import Amount, Computed, Fabric, Reference

_PIECES = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: BUY}}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: 40 in, width: 30 in}}\n"
)


@check(
    id="fabric-short",
    area="cloth",
    severity=Severity.WRONG,
    looks_at=Fabric,
    title="Less fabric to buy than the pieces need",
    why="The shop may have no more of it when the student finds out.",
    source="The cutting layout of this program, and need ÷ (1 − shrinkage); rounding up to what shops sell: "
    + COMMON_PRACTICE,
    trips=_PIECES.replace("BUY", "1 1/2 yd"),
    passes=_PIECES.replace("BUY", "2 1/4 yd"),
)
def fabric_short(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """The fabric to buy must be enough for a cutting layout of all its pieces and bands, shrinkage and the
    straightening of its ends included, in every size. That a shorter layout exists by hand cannot be ruled out where
    less than the least possible is not asked for: then it is doubtful."""
    if fabric.buy is None:
        return
    short: list[tuple[int, Amount, Worked, bool]] = []
    for size in range(computed.tutorial.size_count):
        amount = fabric.buy.amount_at(size)
        need, least = (computed.number(f"{fabric.key}.{field}", size) for field in ("need", "least"))
        if amount is None or need is None or least is None or amount.typed.value >= need.length:
            continue
        short.append((size, amount, need, amount.typed.value < least.length))
    if len(short) > 1 and (isinstance(fabric.buy.source, Reference) or not fabric.buy.source.differs):
        yield _too_little(fabric, short, computed)
    else:
        yield from (_too_little(fabric, [each], computed) for each in short)


def _too_little(fabric: Fabric, short: list[tuple[int, Amount, Worked, bool]], computed: Computed) -> Finding:
    """One finding for sizes that all buy the same, by that which needs most."""
    _, amount, need, _ = max(short, key=lambda each: each[2].length)
    names = [name for size, *_ in short if (name := computed.size_name(size))]
    sizes = f" for {'size' if len(names) == 1 else 'sizes'} {listed(names)}" if names else ""
    all_bought = {show_bought(amount.typed, each.length) for _, _, each, _ in short}
    right = show_bought(amount.typed, need.length)
    return Finding(
        "fabric-short",
        Severity.WRONG if any(surely for *_, surely in short) else Severity.DOUBTFUL,
        amount.place,
        f"{amount.typed.text.strip()} of {fabric.name} is too little{sizes}: the pieces need"
        f" {'up to ' if len(all_bought) > 1 else ''}{right}.",
        amount.typed.text.strip(),
        right,
        show_working(need, amount.typed.unit.system),
        ", ".join(names),
    )


@check(
    id="piece-too-wide",
    area="cloth",
    severity=Severity.WRONG,
    looks_at=Fabric,
    title="A piece that does not fit on the cloth",
    why="It cannot be cut from this width at all.",
    source="Arithmetic: the piece as it lies against the usable width",
    trips=_PIECES.replace("BUY", "3 yd").replace("width: 30 in", "width: 50 in"),
    passes=_PIECES.replace("BUY", "3 yd"),
)
def piece_too_wide(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """Every piece and band must fit on the width of its fabric as it is laid, in every size."""
    if fabric.width is None:
        return
    for size in range(computed.tutorial.size_count):
        reason = computed.cannot_lay(fabric.key, size)
        if reason:
            size_name = computed.size_name(size)
            yield Finding(
                "piece-too-wide",
                Severity.WRONG,
                fabric.width.place,
                f"{reason}{f' (size {size_name})' if size_name else ''}.",
                "",
                "",
                (),
                size_name,
            )
            return
