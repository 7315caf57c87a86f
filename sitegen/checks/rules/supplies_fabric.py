"""Fabrics that are listed, used and bought, and thread."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import show_to_buy
from sitegen.tutorial import Computed, Fabric, Tutorial

_TWO = (
    "fabrics:\n"
    "  main: {name: canvas, structure: woven, buy: 1 yd}\n"
    "  lining: {name: poplin, structure: woven, buy: 1 yd}\n"
)
_STEP = "--- steps/01.yaml\ntitle: Cut out\ntext: Cut both panels.\n"
_PANEL = "pieces: {panel: {cut: 2, fabric: main}, inner: {cut: 2, fabric: INNER}}"


@check(
    id="fabric-unused",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Fabric,
    title="A fabric of which nothing is cut",
    why="The student buys cloth that is not needed, or a piece names the wrong fabric.",
    source="Follows from the pieces and bands",
    trips=_TWO + _PANEL.replace("INNER", "main"),
    passes=_TWO + _PANEL.replace("INNER", "lining"),
)
def fabric_unused(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """Every fabric is that of a piece, a band, a swap or of drops. Where a tutorial has bindings or circles, whose
    fabric is not said, nothing is known."""
    tutorial = computed.tutorial
    swapped = {swap.fabric.name for swap in tutorial.swaps.values()}
    if tutorial.bindings or tutorial.circles or fabric.key in _in_use(tutorial) | swapped:
        return
    if not (tutorial.pieces or tutorial.bands or tutorial.drops):
        return
    view = " Say to which choice it belongs, with only_in." if tutorial.views else ""
    yield Finding(
        "fabric-unused",
        Severity.DOUBTFUL,
        fabric.place,
        f"No piece and no band is cut from the fabric {fabric.key} ({fabric.name}). Take it out, or name it where it"
        f" is used.{view}",
    )


@check(
    id="fabric-unbought",
    area="supplies",
    severity=Severity.DOUBTFUL,
    looks_at=Fabric,
    title="A fabric without an amount to buy",
    why="How much to buy is the first thing that a student needs to know.",
    source="The materials of a project with their amounts: Univ. of Kentucky 4-H 4JD-01PB; rounding up to what shops"
    " sell: " + COMMON_PRACTICE,
    trips="fabrics: {main: {name: canvas, structure: woven}}\npieces: {panel: {cut: 2, fabric: main}}\n" + _STEP,
    passes="fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\npieces: {panel: {cut: 2, fabric: main}}\n"
    + _STEP,
)
def fabric_unbought(fabric: Fabric, computed: Computed) -> Iterator[Finding]:
    """Once a tutorial has steps, every fabric from which a piece, a band or a drop is cut says how much to buy."""
    tutorial = computed.tutorial
    if fabric.buy is not None or not tutorial.steps or fabric.key not in _in_use(tutorial):
        return
    yield Finding(
        "fabric-unbought",
        Severity.DOUBTFUL,
        fabric.place,
        f"How much {fabric.name} to buy is not said. Add to fabric {fabric.key}, for example,"
        f" {_example(fabric, computed)}",
    )


@check(
    id="thread-missing",
    area="supplies",
    severity=Severity.HINT,
    looks_at=Tutorial,
    title="Supplies without thread",
    why="Beginners buy what is on the list.",
    source="Fabric and thread are among the materials of every project: Univ. of Kentucky 4-H 4JD-01PB, page 4",
    trips="supplies: [{item: bias tape, amount: 1 yd}]",
    passes="supplies: [{item: bias tape, amount: 1 yd}, {item: polyester thread, amount: 1 spool}]",
)
def thread_missing(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where supplies are listed, thread is among them."""
    if tutorial.supplies and not any(re.search("thread", supply.item.text, re.I) for supply in tutorial.supplies):
        yield Finding(
            "thread-missing",
            Severity.HINT,
            tutorial.supplies[0].place,
            "No thread is in the supplies. Add it, such as {item: polyester sewing thread, amount: 1 spool}",
        )


def _in_use(tutorial: Tutorial) -> set[str]:
    pieces = {piece.fabric.name for piece in tutorial.pieces.values() if piece.fabric is not None}
    bands = {band.fabric.name for band in tutorial.bands.values()}
    return pieces | bands | {drops.fabric.name for drops in tutorial.drops.values()}


def _example(fabric: Fabric, computed: Computed) -> str:
    """What to write: the need of the cutting layout where it is known, else an amount for its shape."""
    system = computed.tutorial.first_system
    needs = [computed.number(f"{fabric.key}.need", size) for size in range(computed.tutorial.size_count)]
    shown = [show_to_buy(need.length, system) for need in needs if need is not None]
    if not shown or len(shown) != len(needs):
        return "buy: 1 1/2 yd"
    return f"buy: {shown[0] if len(set(shown)) == 1 else ', '.join(shown)}"
