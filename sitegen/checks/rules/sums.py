"""Sums that an author wrote out in a text."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.prose import WrittenSum, find_sums
from sitegen.quantities import Length, Ratio, show_in_unit, show_ratio, vulgar
from sitegen.tutorial import Computed, Prose

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
        said, right = part.text[start:end], _right(each)
        terms = " ".join(part.text[each.terms[0].start : each.terms[-1].end].split())
        yield Finding(
            "written-sum",
            Severity.WRONG,
            part.locate(start, end),
            f"{terms} makes {right}, not {said}. Mend the result, or the term that slipped.",
            said,
            right,
            (f"{terms} = {right}",),
        )


def _right(each: WrittenSum) -> str:
    """What the terms make, in the unit of the written result; exact if a vulgar fraction or decimal can say it."""
    if isinstance(each.makes, Ratio):
        return show_ratio(each.makes)
    unit = each.result.unit
    if unit is None or not isinstance(each.makes, Length):
        raise TypeError("a sum of lengths has a length as its result")
    number = each.makes.in_unit(unit)
    return (
        f"{vulgar(number)} {unit.symbol}"
        if number.denominator in (1, 2, 4, 8, 16) and unit.symbol == "in"
        else (show_in_unit(each.makes, unit))
    )
