"""Numbers that can be, but hardly are: cloth for three, cloth that shrinks by half, a hem sewn far from its edge."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.held import instead, show_bought
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, Length, cm, inches, show_in_unit, show_ratio, show_to_buy, show_working
from sitegen.sewing import hem as hem_sums
from sitegen.tutorial import Computed, Fabric, Hem, Reference, Share

MOST_SHRINKAGE = Fraction(15, 100)
STRETCH = (Fraction(5, 100), Fraction(2))
BOLTS = (cm(30), cm(330))
SPARE, TIMES = cm(70), Fraction(3, 2)
"""What may be bought beyond the need: half as much again and a good half metre, for prints, mistakes and scraps."""
FAR_INSIDE = inches("3/8")
_BARE = "0123456789.,"
_CLOTH = "fabrics: {main: {name: jersey, structure: knit, width: 60 in, SHARE}}"
_PIECE = (
    "fabrics: {main: {name: poplin, structure: woven, width: 45 in, buy: BUY}}\nseam_allowance: 1/2 in\n"
    "pieces: {panel: {cut: 1, fabric: main, length: 20 in, width: 20 in}}\n"
)
_HEM = (
    "fabrics: {main: {name: poplin, structure: woven}}\npieces: {panel: {cut: 1, fabric: main, edges: {hem: 18 in}}}\n"
    "hems: {lower: {edges: [panel.hem], turn: 1 in, fold_under: 1/4 in, stitch: straight, stitch_line: LINE}}"
)


@check(
    id="fabric-plenty",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Fabric,
    title="Far more cloth to buy than is needed",
    why="The student pays for cloth that is never cut; mostly a point or a digit slipped.",
    source="Some cloth to spare is usual, several times the need is not: " + COMMON_PRACTICE,
    trips=_PIECE.replace("BUY", "6 yd"),
    passes=_PIECE.replace("BUY", "3/4 yd"),
)
def fabric_plenty(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """What is bought of a cloth is not more than half as much again as its cutting layout needs, and 70 cm."""
    if fabric.buy is None or isinstance(fabric.buy.source, Reference):
        return
    for size in range(computed.tutorial.size_count):
        need, amount = computed.number(f"{fabric.key}.need", size), fabric.buy.amount_at(size)
        if need is None or amount is None or amount.typed.value <= need.length * TIMES + SPARE:
            continue
        system = amount.typed.unit.system
        name = computed.size_name(size)
        yield Finding(
            "fabric-plenty",
            Severity.DOUBTFUL,
            amount.place,
            f"Of {fabric.name} {show_in_unit(amount.typed.value, amount.typed.unit)} are bought"
            f"{f' for size {name}' if name else ''}, the layout needs {show_to_buy(need.length, system)}.",
            amount.typed.text.strip(),
            show_bought(amount.typed, need.length),
            show_working(need, system),
            name if fabric.buy.source.differs else "",
        )
        return


@check(
    id="fabric-unusual",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Fabric,
    title="Cloth that hardly exists",
    why="A digit too many here moves what is bought and how long a band becomes.",
    source="Cotton knits shrink by up to about 10 %; ranges beyond it: " + COMMON_PRACTICE,
    trips=_CLOTH.replace("SHARE", "shrinkage: 50%"),
    passes=_CLOTH.replace("SHARE", "shrinkage: 5%"),
)
def fabric_unusual(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """A cloth shrinks by no more than 15 %, a knit stretches by 5 to 200 % and not twice as much down as
    across, and cloth lies 30 to 330 cm wide."""
    shrinks = fabric.shrinkage
    if shrinks is not None and shrinks.ratio.value > MOST_SHRINKAGE:
        said = f"{fabric.name} is said to shrink by {shrinks.text}. More than 15% is very unusual."
        yield Finding("fabric-unusual", Severity.DOUBTFUL, shrinks.place, said, shrinks.text)
    for stretch in (fabric.stretch_across, fabric.stretch_down):
        if fabric.knit and stretch is not None and not STRETCH[0] <= stretch.ratio.value <= STRETCH[1]:
            said = f"{fabric.name} is said to stretch by {stretch.text}. Knits stretch by 5% to 200%."
            yield Finding("fabric-unusual", Severity.DOUBTFUL, stretch.place, said, stretch.text)
    across, down = fabric.stretch_across, fabric.stretch_down
    if across is not None and down is not None and down.ratio.value > across.ratio.value * 2:
        said = f"{fabric.name} is said to stretch by {down.text} down, but across only by {across.text}."
        yield Finding("fabric-unusual", Severity.DOUBTFUL, down.place, said, down.text)
    width = fabric.width.amount_at(0) if fabric.width is not None else None
    if width is not None and not BOLTS[0] <= width.typed.value <= BOLTS[1]:
        said = f"{fabric.name} is said to be {width.typed.text.strip()} wide. Cloth is sold about 90 to 300 cm wide."
        yield Finding("fabric-unusual", Severity.DOUBTFUL, width.place, said, width.typed.text.strip())


@check(
    id="share-unclear",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Fabric,
    title="A share of a fabric without its percent sign",
    why="0.05 is five hundredths for one reader and five hundredths of a percent for another.",
    source=COMMON_PRACTICE,
    trips=_CLOTH.replace("SHARE", "shrinkage: 0.05"),
    passes=_CLOTH.replace("SHARE", "shrinkage: 5%"),
)
def share_unclear(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """Shrinkage and stretch are written in percent, or as a fraction such as 1/20. A bare number is a share of the
    whole: 0.05 is read as 5%."""
    for field in ("shrinkage", "stretch_across", "stretch_down"):
        share: Share | None = getattr(fabric, field)
        if share is not None and not share.ratio.as_fraction and share.text.strip(_BARE) == "":
            read = show_ratio(share.ratio)
            yield Finding(
                "share-unclear",
                Severity.DOUBTFUL,
                share.place,
                f"The {field.replace('_', ' ')} of {fabric.name} is written {share.text}, which is read as {read}."
                " Write the percent sign.",
                share.text,
                read,
            )


@check(
    id="hem-far-inside",
    area="hems",
    severity=Severity.DOUBTFUL,
    looks_at=Hem,
    title="Stitches far from the turned edge of a hem",
    why="The turned edge stands loose beyond the stitches, and a toe or a finger catches in it.",
    source="A hem is stitched close to its turned edge, within 1/4 in (6 mm): " + COMMON_PRACTICE,
    trips=_HEM.replace("LINE", "3/8 in"),
    passes=_HEM.replace("LINE", "7/8 in"),
)
def hem_far_inside(hem: Hem, computed: Computed) -> Iterator[Finding]:
    """Where the line of stitches of a hem is given, no more than 3/8 in (1 cm) of cloth lies beyond the furthest row;
    in a double hem, whose inner fold is caught by the stitches, no more than half of that."""
    most = FAR_INSIDE / 2 if hem.fold_under is not None else FAR_INSIDE
    if hem.stitch_line is None:
        return
    for size in range(computed.tutorial.size_count):
        beyond, amount = computed.number(f"{hem.key}.catch", size), hem.stitch_line.amount_at(size)
        if beyond is None or amount is None or beyond.length <= most:
            continue
        best = _best(hem, computed, size)
        system = amount.typed.unit.system
        yield Finding(
            "hem-far-inside",
            Severity.DOUBTFUL,
            amount.place,
            f"Beyond the stitches of hem {hem.key.replace('_', ' ')} {RULER.show(beyond.length, system)} of cloth stand"
            " loose. Stitch nearer to the turned edge.",
            amount.typed.text.strip(),
            instead(amount.typed, best),
            show_working(beyond, system),
        )
        return


def _best(hem: Hem, computed: Computed, size: int) -> Length:
    """The line at which the furthest row still catches the turned edge."""
    turn, gap = computed.numbers.at(f"{hem.key}.turn", size), computed.number(f"{hem.key}.needle_gap", size)
    return hem_sums.stitch_line("stitch line that catches", turn, gap).length
