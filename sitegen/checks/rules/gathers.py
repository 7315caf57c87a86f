"""Gathers: their ratio, and edges that are cut for one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from sitegen.checks.held import disagreements, in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, decimal, inches, plus, show_value, show_working, work
from sitegen.sewing import gather as gather_sums
from sitegen.tutorial import Claim, Computed, Fullness, Gather, edge_number, words_of

_SKIRT = (
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces:\n"
    "  skirt: {cut: 2, fabric: main, edges: {top: 28 in}}\n"
    "  waistband: {cut: 1, fabric: main, edges: {lower: 28 in}}\n"
)
_GATHER = "edges: [skirt.top, skirt.top], onto: [waistband.lower]"
_NEAREST_QUARTER = Fraction(1, 8)
_EDGE_TOLERANCE = inches("1/8")


@check(
    id="gather-ratio",
    area="gathers",
    severity=Severity.WRONG,
    looks_at=(Claim, Gather),
    title="Gathers whose ratio is not what is said, or unusual",
    why="Too little cloth looks like a mistake, too much does not fit into the seam, and no one can add cloth later.",
    source="Length before ÷ length after (arithmetic); from 1 1/4 to 1 up to 3 to 1: " + COMMON_PRACTICE,
    trips=_SKIRT + f"gathers: {{skirt_top: {{{_GATHER}, ratio: 1.5 to 1}}}}",
    passes=_SKIRT + f"gathers: {{skirt_top: {{{_GATHER}, ratio: 2 to 1, before: 56 in}}}}",
)
def gather_ratio(part: Claim | Gather, computed: Computed) -> Iterator[Finding]:
    """A written ratio of gathers must be the length before divided by the length after, to the nearest quarter in every
    size, and other written lengths the computed ones. Edges that are cut for a ratio must be so long. Below 1 1/4 to 1
    and above 3 to 1 gathers are doubtful."""
    if isinstance(part, Claim):
        if part.part == "gather":
            yield from disagreements("gather-ratio", part, computed)
        return
    for size in range(computed.tutorial.size_count):
        found = _of_gather(part, size, computed)
        if found is not None:
            yield found
            return


def _of_gather(gather: Gather, size: int, computed: Computed) -> Finding | None:
    """What is wrong with gathers in one size, the worst first."""
    ratio = computed.number(f"{gather.key}.ratio", size)
    if ratio is None:
        return None
    name, system, size_name = words_of(gather.key), computed.tutorial.first_system, computed.size_name(size)
    where = gather.ratio.place if gather.ratio else gather.place
    said = gather.ratio.text if gather.ratio else ""
    working = show_working(ratio, system)
    shown = f"{show_value(ratio.value, system)} to 1"
    if ratio.number <= 1:
        message = f"The {name} is no longer before it is gathered than after{in_size(size_name)}: {shown}."
        return Finding("gather-ratio", Severity.WRONG, where, message, said, "", working, size_name)
    if gather.cut_for_ratio:
        short = _cut_otherwise(gather, size, computed)
        if short is not None:
            return short
    elif gather.ratio and abs(gather.ratio.number - ratio.number) > _NEAREST_QUARTER:
        right = _right_ratio(gather, gather.ratio, computed)
        message = f"The {name} is gathered {shown}{in_size(size_name)}, not {said}."
        return Finding("gather-ratio", Severity.WRONG, where, message, said, right, working, size_name)
    if not gather_sums.USUAL_LEAST <= ratio.number <= gather_sums.USUAL_MOST:
        message = f"The {name} is gathered {shown}{in_size(size_name)}. Usual are 1 1/4 to 1 up to 3 to 1."
        return Finding("gather-ratio", Severity.DOUBTFUL, where, message, said, "", working, size_name)
    return None


def _cut_otherwise(gather: Gather, size: int, computed: Computed) -> Finding | None:
    """Edges that are not as long as the chosen ratio asks for."""
    need = computed.number(f"{gather.key}.before", size)
    edges = [computed.length(edge_number(edge, computed.tutorial), size) for edge in gather.edges]
    known = [edge for edge in edges if edge is not None]
    if need is None or len(known) != len(edges):
        return None
    cut = work("edges to gather", known[0], *(plus(edge) for edge in known[1:]))
    if abs(cut.length - need.length) <= _EDGE_TOLERANCE:
        return None
    system, size_name = computed.tutorial.first_system, computed.size_name(size)
    return Finding(
        "gather-ratio",
        Severity.WRONG,
        gather.edges[0].place,
        f"The edges of {words_of(gather.key)} are {RULER.show(cut.length, system)} long together{in_size(size_name)},"
        f" but its ratio asks for {RULER.show(need.length, system)}.",
        "",
        "",
        (*show_working(cut, system), *show_working(need, system)),
        size_name,
    )


def _right_ratio(gather: Gather, said: Fullness, computed: Computed) -> str:
    """The ratio that serves every size, in the words of the written one; empty when the sizes differ by too much."""
    sizes = range(computed.tutorial.size_count)
    known = [found.number for size in sizes if (found := computed.number(f"{gather.key}.ratio", size)) is not None]
    exact = (min(known) + max(known)) / 2
    if max(known) - min(known) > _NEAREST_QUARTER:
        return ""
    if "%" in said.text:
        return f"{decimal(exact * 100, 0)}%"
    ending = re.search(r"\s*(?:(?:to|:)\s*1|times)$", said.text)
    return decimal(exact, 1) + (ending.group() if ending else "")
