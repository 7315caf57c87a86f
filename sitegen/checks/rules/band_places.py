"""Bands by where they are: the ratio that is usual there, and what they must go over."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import show_ratio
from sitegen.sewing import band as band_sums
from sitegen.tutorial import Band, Computed

_RIB = "seam_allowance: 3/8 in\nfabrics: {rib: {name: rib, structure: knit, stretch_across: 100%, buy: 1 yd}}\n"
_CUFFS = _RIB + "pieces: {sleeve: {cut: 2, fabric: rib, edges: {wrist: 9 in}}}\nbody: {hand: 7 in}\n"
_HEAD = _RIB + "wearer: child\npieces: {front: {cut: 2, fabric: rib, edges: {neckline: 9 in}}}\n"
_NECKBAND = (
    "bands: {neckband: {opening: [front.neckline], ratio: 80%, finished_width: 1 in, fabric: rib, goes_over: head}}"
)
_BY_BODY = {"head": "neckband", "hand": "cuff"}
_EXAMPLES = {"head": "20 in", "hand": "8 in", "foot": "12 in"}
"""Measured round the head, round the hand without its thumb, round heel and instep."""
_BY_EDGE = (
    ("neckband", re.compile(r"neck")),
    ("cuff", re.compile(r"wrist|cuff")),
    ("hem band", re.compile(r"hem|lower|bottom|waist")),
)
_LIMB = re.compile(r"sleeve|leg|trouser|pant")
"""A hem of these is a cuff or an ankle, not the hem of a garment."""


def _cuffs(ratio: str) -> str:
    return (
        f"{_CUFFS}bands: {{cuffs: {{opening: [sleeve.wrist], ratio: {ratio}, finished_width: 2 in, fabric: rib,"
        " goes_over: hand, make: 2}}"
    )


@check(
    id="ratio-position",
    area="bands",
    severity=Severity.DOUBTFUL,
    looks_at=Band,
    title="A ratio that is unusual where the band is",
    why="A neckband that is too short puckers the neck, a loose cuff slides over the hand, a tight hem band rides up.",
    source="Neckband 75 to 90 %, cuff 65 to 85 %, hem band 80 to 95 % of the opening: " + COMMON_PRACTICE,
    trips=_cuffs("92%"),
    passes=_cuffs("75%"),
)
def ratio_position(band: Band, computed: Computed) -> Iterator[Finding]:
    """A neckband is 75 to 90 % of its opening, a cuff 65 to 85 %, a hem band 80 to 95 %. What a band is follows from
    what it goes over, or from the names of the edges of its opening. Ratios that are unusual anywhere are another
    check's."""
    position = _position(band)
    ratio = band.ratio.ratio
    if position is None or not band_sums.USUAL_LEAST <= ratio <= band_sums.USUAL_MOST:
        return
    least, most = band_sums.USUAL_AT[position]
    if not least <= ratio <= most:
        said = band.ratio.text or show_ratio(ratio)
        yield Finding(
            "ratio-position",
            Severity.DOUBTFUL,
            band.ratio.place,
            f"The ratio of the {_words(band.key)}, {said}, is unusual for a {position}. Usual are {show_ratio(least)}"
            f" to {show_ratio(most)}.",
            band.ratio.text,
        )


def _position(band: Band) -> str | None:
    """Where a band is; None when its author's words do not tell."""
    over = band.goes_over.text.removeprefix("body.") if band.goes_over else ""
    if over in _BY_BODY:
        return _BY_BODY[over]
    found = {_of_edge(edge.name) for edge in band.around}
    return found.pop() if len(found) == 1 else None


def _of_edge(name: str) -> str | None:
    piece, _, edge = name.partition(".")
    position = next((position for position, pattern in _BY_EDGE if pattern.search(edge)), None)
    return None if position == "hem band" and _LIMB.search(piece) else position


@check(
    id="reach-missing",
    area="bands",
    severity=Severity.DOUBTFUL,
    looks_at=Band,
    title="A band that must go over something whose size is not known",
    why="Nobody can say whether a child's head goes through, and heads of children are large for their size.",
    source="Head circumference by age: WHO Child Growth Standards; only adult heads and hands have a default (US Army"
    " ANSUR II, 2014)",
    trips=_HEAD + _NECKBAND,
    passes=_HEAD + "body: {head: 9 in}\n" + _NECKBAND,
)
def reach_missing(band: Band, computed: Computed) -> Iterator[Finding]:
    """Where a band goes over head, hand or foot, the tutorial gives that measurement of the body, unless it is the head
    or hand of an adult."""
    over = band.goes_over.text if band.goes_over else "nothing"
    if (
        band.goes_over is None
        or over == "nothing"
        or over.startswith("body.")
        or f"{band.key}.reach" in computed.numbers
    ):
        return
    yield Finding(
        "reach-missing",
        Severity.DOUBTFUL,
        band.goes_over.place,
        f"Whether the {_words(band.key)} goes over the {over} cannot be worked out, because body does not give the"
        f" {over}. Add it for every size, such as body: {{{over}: {_EXAMPLES.get(over, '30 in')}}}",
        over,
    )


def _words(key: str) -> str:
    return key.replace("_", " ")
