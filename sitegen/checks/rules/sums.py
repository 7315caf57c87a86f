"""Sums that an author wrote out in a text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.prose import MixedSum, WrittenSum, find_mixed_sums, find_sums, sizes_around
from sitegen.quantities import RULER, UNIT_NAMES, Length, show_in_unit, vulgar
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
    id="sum-with-references",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Prose,
    title="A sum with references in a text that does not add up",
    why="References show the right numbers, and what was typed between or behind them slipped: who follows the sum cuts"
    " one thing, who reads the result another.",
    source="Arithmetic",
    trips=_PANEL + "{panel.finished_width} + 1/2 in + {seam_allowance} = 15 1/2 in wide.",
    passes=_PANEL + "{panel.finished_width} + 1/2 in + {seam_allowance} = 16 in wide.",
)
def sum_with_references(part: Prose, computed: Computed) -> Iterator[Finding]:
    """A sum that is written out with signs and has references among its terms must make the result behind its equals
    sign, “is” or “makes” in every size, or in that which its sentence names, of several in one: exactly where all of
    its numbers lie on marks of a ruler, else to one mark."""
    for each in find_mixed_sums(part.text):
        named = sizes_around(part.text, each.start, each.end, computed.tutorial)
        sizes = named or range(computed.tutorial.size_count)
        wrong = {size: off for size in sizes if (off := _off(each, size, computed)) is not None}
        if not wrong or (named and len(wrong) < len(named)):
            continue
        rights = {off.right for off in wrong.values()}
        everywhere = len(rights) == 1 and len(wrong) == len(sizes)
        size, off = next(iter(wrong.items()))
        name = "" if everywhere and not named else computed.size_name(size)
        terms = " ".join(each.terms.split())
        typed = "{" not in each.result
        yield Finding(
            "sum-with-references",
            Severity.WRONG,
            part.locate(each.result_start, each.end),
            f"{terms} makes {off.right}{f' in size {name}' if name else ''}, not {each.result}. Mend the result, or the"
            " term that slipped.",
            each.result if typed else "",
            off.right if typed and everywhere else "",
            tuple(f"{_in_size(index, computed)}{off.filled}" for index, off in wrong.items()),
            name,
        )


def _in_size(size: int, computed: Computed) -> str:
    name = computed.size_name(size)
    return f"size {name}: " if name else ""


def _off(found: MixedSum, size: int, computed: Computed) -> WrittenSum | None:
    """The sum in this size, if it does not hold there."""
    done = found.done(lambda name: computed.number(name, size), computed.tutorial.unit)
    if done is None or done.holds:
        return None
    said, makes = done.result.value, done.makes
    if isinstance(said, Length) and isinstance(makes, Length) and done.result.unit is not None:
        system = done.result.unit.system
        lengths = [term.value for term in (*done.terms, done.result) if isinstance(term.value, Length)]
        rounded = not all(length.sits_on(RULER.finest(system)) for length in lengths)
        if rounded and abs(said - makes) <= RULER.step(makes, system):
            return None
    return done


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
    mixed = tuple(find_mixed_sums(part.text))
    for match in _BEFORE_NUMBER.finditer(part.text):
        if any(each.holds_place(match.start()) for each in mixed):
            continue
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
