"""Bands: their ratio to the opening, and the stretch that they need."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.quantities import Ratio, Worked, show_ratio, show_working
from sitegen.sewing import band as band_sums
from sitegen.tutorial import Band, Computed

_PIECES = (
    "seam_allowance: 3/8 in\nbody: {head: 22 in}\n"
    "fabrics:\n"
    "  main: {name: jersey, structure: knit, stretch_across: 30%}\n"
    "  rib: {name: rib, structure: knit, stretch_across: 80%}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {neckline: 12 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 8 in}}\n"
)


def _neckband(rest: str) -> str:
    return _PIECES + f"bands: {{neckband: {{opening: [front.neckline, back.neckline], finished_width: 1 in, {rest}}}}}"


@check(
    id="band-ratio",
    area="bands",
    severity=Severity.WRONG,
    looks_at=Band,
    title="A band that is not shorter than its opening, or unusually short",
    why="A band must be shorter than its opening to lie flat; only very stretchy rib goes much below two thirds.",
    source="Rib 2/3 to 3/4 of the opening: sewing.org, Using ribbing for a cuff or neckline opening; up to 95 % for"
    " loose hem bands: " + COMMON_PRACTICE,
    trips=_neckband("ratio: 105%, fabric: rib"),
    passes=_neckband("ratio: 80%, fabric: rib"),
)
def band_ratio(band: Band, computed: Computed) -> Iterator[Finding]:
    """A band's ratio must be below 100 %; outside 65 to 95 % it is doubtful."""
    ratio = band.ratio.ratio
    said = band.ratio.text
    if ratio.value >= 1:
        yield Finding(
            "band-ratio",
            Severity.WRONG,
            band.ratio.place,
            f"The {band.key.replace('_', ' ')} is {said} of its opening. A band must be shorter than the opening.",
            said,
        )
    elif not band_sums.USUAL_LEAST <= ratio <= band_sums.USUAL_MOST:
        least, most = show_ratio(band_sums.USUAL_LEAST), show_ratio(band_sums.USUAL_MOST)
        yield Finding(
            "band-ratio",
            Severity.DOUBTFUL,
            band.ratio.place,
            f"The {band.key.replace('_', ' ')} is {said} of its opening. Usual are {least} to {most}.",
            said,
        )


@check(
    id="band-stretch",
    area="bands",
    severity=Severity.WRONG,
    looks_at=Band,
    title="A band that cannot stretch far enough",
    why="A neckband that does not stretch over the head cannot be worn, and one that does not reach round its opening"
    " cannot be sewn on.",
    source="Stretch is (stretched − relaxed) ÷ relaxed: Purdue Univ. Cooperative Extension HE-452; test the loop over"
    " head or hand before sewing: sewing.org",
    trips=_neckband("ratio: 70%, fabric: main, goes_over: head"),
    passes=_neckband("ratio: 70%, fabric: rib, goes_over: head"),
)
def band_stretch(band: Band, computed: Computed) -> Iterator[Finding]:
    """A band's fabric must stretch across by as much as the band needs to be sewn on and to go over head, hand or
    foot, in every size."""
    name = band.key.replace("_", " ")
    fabric = computed.tutorial.fabrics.get(band.fabric.name)
    if fabric is None:
        return
    if fabric.stretch_across is None:
        yield Finding(
            "band-stretch",
            Severity.DOUBTFUL,
            band.fabric.place,
            f"Whether the {name} stretches far enough is not known: fabric {fabric.key} has no stretch_across.",
            band.fabric.name,
        )
        return
    has = fabric.stretch_across.ratio
    worst, purpose = _worst(band, computed)
    if worst is None or worst[1].ratio <= has:
        return
    size, need = worst
    size_name = computed.size_name(size)
    serves = _least_ratio(band, has, computed)
    yield Finding(
        "band-stretch",
        Severity.WRONG,
        band.ratio.place,
        f"The {name} must stretch by {show_ratio(need.ratio)} {purpose}"
        f"{f' in size {size_name}' if size_name else ''}, but {fabric.name} stretches by {show_ratio(has)}."
        + (f" A ratio of {serves} or more would serve." if serves else " No ratio below 100% would serve.")
        + ("" if serves else _again(band)),
        band.ratio.text,
        serves,
        show_working(need, computed.tutorial.first_system),
        size_name,
    )


def _again(band: Band) -> str:
    """A question about edges that stand in the opening more than once, where one of them may be another by a slip."""
    often = Counter(edge.name for edge in band.around)
    again = [name for name, count in often.items() if count > 1]
    stand = "stands" if len(again) == 1 else "stand"
    return f" {listed(again)} {stand} in its opening more than once: is another edge meant?" if again else ""


def _worst(band: Band, computed: Computed) -> tuple[tuple[int, Worked] | None, str]:
    """The size that needs most, its number, and for what."""
    found = [
        (size, number, purpose)
        for need, purpose in (("stretch_to_sew", "to be sewn to its opening"), ("stretch_to_wear", "to be put on"))
        for size in range(computed.tutorial.size_count)
        if (number := computed.number(f"{band.key}.{need}", size)) is not None
    ]
    if not found:
        return None, ""
    size, number, purpose = max(found, key=lambda each: each[1].ratio)
    return (size, number), purpose


def _least_ratio(band: Band, has: Ratio, computed: Computed) -> str:
    """The smallest whole percentage that serves in every size, empty when it would be no band any more."""
    least = Fraction(0)
    for size in range(computed.tutorial.size_count):
        opening = computed.number(f"{band.key}.opening_length", size)
        reach = computed.number(f"{band.key}.reach", size)
        for must_pass in (opening, reach):
            if opening is not None and must_pass is not None and opening.length:
                least = max(least, must_pass.length.over(opening.length) / (1 + has.value))
    percent = ceil(least * 100)
    return f"{percent}%" if 0 < percent < 100 else ""
