"""Hems: whether the stitches catch the cloth."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import instead
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, ZERO, BySize, show_in_unit, show_working
from sitegen.sewing import hem as hem_sums
from sitegen.tutorial import Computed, Hem

_PIECE = (
    "fabrics: {main: {name: jersey, structure: knit}}\npieces: {front: {cut: 1, fabric: main, edges: {hem: 18 in}}}\n"
)


@check(
    id="hem-catch",
    area="hems",
    severity=Severity.WRONG,
    looks_at=Hem,
    title="Stitches that miss the turned edge of a hem",
    why="The hem falls open where the stitches run beside the cloth that was turned up.",
    source="The far row lies inside the turn by at least 1/8 in (3 mm): " + COMMON_PRACTICE,
    trips=_PIECE + "hems: {lower: {edges: [front.hem], turn: 3/4 in, stitch: twin needle, needle_gap: 4 mm,"
    " stitch_line: 5/8 in}}",
    passes=_PIECE + "hems: {lower: {edges: [front.hem], turn: 3/4 in, stitch: twin needle, needle_gap: 4 mm,"
    " stitch_line: 3/8 in}}",
)
def hem_catch(hem: Hem, computed: Computed) -> Iterator[Finding]:
    """The row of stitches furthest from the fold must lie inside the turn: outside it is wrong, within the margin of
    1/8 in (3 mm) doubtful. A twin needle adds its gap."""
    for size in range(computed.tutorial.size_count):
        beyond = computed.number(f"{hem.key}.catch", size)
        if beyond is None or beyond.length >= hem_sums.MARGIN.length:
            continue
        missed = beyond.length <= ZERO
        at = hem.stitch_line or hem.turn
        amount = at.amount_at(size)
        if amount is None:
            return
        best = hem_sums.stitch_line(
            "stitch line that catches",
            computed.numbers.at(f"{hem.key}.turn", size),
            computed.number(f"{hem.key}.needle_gap", size),
        )
        system = amount.typed.unit.system
        fits = hem.stitch_line is not None and best.length > ZERO
        how = "misses the turned cloth" if missed else f"lies only {RULER.show(beyond.length, system)} inside the turn"
        yield Finding(
            "hem-catch",
            Severity.WRONG if missed else Severity.DOUBTFUL,
            amount.place,
            f"The row of stitches furthest from the fold {how} at hem {hem.key.replace('_', ' ')}."
            + (f" Stitch at {show_in_unit(best.length, amount.typed.unit)} from the fold." if fits else ""),
            amount.typed.text.strip(),
            instead(amount.typed, best.length) if fits else "",
            (*show_working(beyond, system), *(show_working(best, system) if fits else ())),
            computed.size_name(size) if isinstance(at.source, BySize) and at.source.differs else "",
        )
        return


@check(
    id="needle-gap-missing",
    area="hems",
    severity=Severity.DOUBTFUL,
    looks_at=Hem,
    title="A twin needle without its gap",
    why="The second row runs beside the first by the gap of the needle; without it nobody can say whether it catches.",
    source="Twin needles are labelled gap / size, such as 2.5/80; the range of gaps is " + COMMON_PRACTICE,
    trips=_PIECE + "hems: {lower: {edges: [front.hem], turn: 3/4 in, stitch: twin needle}}",
    passes=_PIECE + "hems: {lower: {edges: [front.hem], turn: 3/4 in, stitch: twin needle, needle_gap: 2.5 mm}}",
)
def needle_gap_missing(hem: Hem, computed: Computed) -> Iterator[Finding]:
    """A hem stitched with a twin needle says how far its needles are apart."""
    if hem.stitch and hem.stitch.text == "twin needle" and hem.needle_gap is None:
        yield Finding(
            "needle-gap-missing",
            Severity.DOUBTFUL,
            hem.stitch.place,
            f"Hem {hem.key.replace('_', ' ')} is sewn with a twin needle. Add its gap, such as needle_gap: 4 mm.",
            hem.stitch.text,
        )
