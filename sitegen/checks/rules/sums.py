"""Sums that an author wrote out in a text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.prose import find_sums
from sitegen.quantities import UNIT_NAMES, Length, show_in_unit, vulgar
from sitegen.tutorial import Computed, Prose

_BEFORE_NUMBER = re.compile(
    r"(?P<sum>\d[\d./ ]*(?:\s?(?:in|cm|mm))?"
    r"(?:\s+[+−×÷]\s+\d[\d./ ]*?(?:\s?(?P<unit>in|cm|mm))?)+)"
    r"(?:\s+(?:wide|long|in all))?(?:,?\s+(?:which|that)\s+(?:is|makes)|\s+=)\s+\{(?P<name>[a-z][\w.]*)\}"
)
_PANEL = (
    "fabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\nseam_allowance: 1/2 in\n"
    "pieces: {panel: {called: panel, cut: 2, fabric: main, finished: {width: 15 in},\n"
    "  sides: {left: seam, right: seam}}}\n"
    "--- steps/01.yaml\ntitle: Cut\ntext: Cut it "
)
_HEAD = "--- steps/01.yaml\ntitle: Cut\ntext: The panel is "


@check(
    id="written-sum",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Prose,
    title="A sum in a text that does not add up",
    why="Who follows the sum cuts one thing, who reads the result another.",
    source="Arithmetic",
    trips=_HEAD + "15 in + 1/2 in + 1/2 in = 15 1/2 in wide.",
    passes=_HEAD + "15 in + 1/2 in + 1/2 in = 16 in wide.",
)
def written_sum(part: Prose, computed: Computed) -> Iterator[Finding]:
    """A sum, product or division of lengths that is written out with signs must make the result behind its equals
    sign: exactly where lengths of one unit are added and taken off, to the mark of a ruler elsewhere."""
    for each in find_sums(part.text):
        if each.holds:
            continue
        start, end = each.result.start, each.result.end
        said, right = part.text[start:end], each.right
        terms = each.shown(part.text)
        yield Finding(
            "written-sum",
            Severity.WRONG,
            part.locate(start, end),
            f"{terms} makes {right}, not {said.rstrip('.')}. Mend the result, or the term that slipped.",
            said,
            right,
            (f"{terms} = {right}",),
        )


@check(
    id="sum-before-number",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Prose,
    title="A sum in a text that does not make the number behind it",
    why="Who does the sum gets another length than the one that stands behind it.",
    source="Arithmetic",
    trips=_PANEL + "15 in + 1/2 in wide, which is {panel.cut_width}.",
    passes=_PANEL + "15 in + 1/2 in + 1/2 in wide, which is {panel.cut_width}.",
)
def sum_before_number(part: Prose, computed: Computed) -> Iterator[Finding]:
    """A sum without a result, behind which stands “, which is” or an equals sign and a reference to a number that is
    the same in every size, must make that number."""
    for match in _BEFORE_NUMBER.finditer(part.text):
        worked = computed.by_size(match["name"])
        values = {each.value for each in worked} if worked is not None else set()
        right = next(iter(values)) if len(values) == 1 else None
        if not isinstance(right, Length):
            continue
        said = " ".join(match["sum"].split())
        shown = vulgar(right.in_unit(UNIT_NAMES[match["unit"]]))
        for each in find_sums(f"{said} = {shown} {match['unit']}"):
            if not each.holds and isinstance(each.makes, Length):
                makes = show_in_unit(each.makes, UNIT_NAMES[match["unit"]])
                yield Finding(
                    "sum-before-number",
                    Severity.WRONG,
                    part.locate(*match.span("sum")),
                    f"{said} makes {makes}, but {match['name']} is {show_in_unit(right, UNIT_NAMES[match['unit']])}.",
                )
