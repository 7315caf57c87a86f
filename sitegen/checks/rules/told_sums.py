"""Sums that a text tells in words, of lengths and of other amounts, and ranges written the wrong way round."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import pairwise

from sitegen.checks.registry import check
from sitegen.checks.said_lengths import surely_bound
from sitegen.findings import Finding, Severity
from sitegen.prose import TextFinding, find_mixed_sums, proofread
from sitegen.tutorial import Computed, Prose

_HEAD = "--- steps/01.yaml\ntitle: Cut\ntext: "


@check(
    id="told-sum",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Prose,
    title="A sum told in words that does not add up",
    why="Who follows the words cuts one thing, who reads the result another.",
    source="Arithmetic; the words that tie a result to its parts are plain English, common practice without a source",
    trips=_HEAD + "The neckline is 20 in. Cut the band at 80% of it, so 17 in.",
    passes=_HEAD + "The neckline is 20 in. Cut the band at 80% of it, so 16 in.",
)
def told_sum(part: Prose, computed: Computed) -> Iterator[Finding]:
    """Where a text states the parts and the result of a sum in words (plus, twice, half of, 80% of, divided by, in
    all), the result must be what the parts make, as people round. It is doubtful only, since words may mean another
    thing than a program reads in them."""
    yield from _found(part, computed, "told-sum", Severity.DOUBTFUL)


@check(
    id="told-amount",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Prose,
    title="A price, time, weight or count that does not add up",
    why="The wrong money is collected, or the wrong number of pieces cut.",
    source="Arithmetic; the words that tie a result to its parts are plain English, common practice without a source",
    trips=_HEAD + "Canvas was $9.00, lining $6.00, together $16.00.",
    passes=_HEAD + "Canvas was $9.00, lining $6.00, together $15.00.",
)
def told_amount(part: Prose, computed: Computed) -> Iterator[Finding]:
    """Where a text states prices, times, weights or counts and what they come to (so much at a price, a list and its
    total, what is left, the share of each, so many percent off, so many across and down), the result must be what the
    parts make, as people round. It is doubtful only, since words may mean another thing than a program reads in
    them."""
    yield from _found(part, computed, "told-amount", Severity.DOUBTFUL)


@check(
    id="range-order",
    area="units",
    severity=Severity.WRONG,
    looks_at=Prose,
    title="A range with its greater end first",
    why="One of the two numbers is a slip, and nobody knows which.",
    source="Arithmetic",
    trips=_HEAD + "It fits cloth of 45 to 36 in wide.",
    passes=_HEAD + "It fits cloth of 36 to 45 in wide.",
)
def range_order(part: Prose, computed: Computed) -> Iterator[Finding]:
    """A range of lengths in a text runs from the smaller to the greater, unless the words go down from one to the
    other (tapering, shortened, from … down to)."""
    yield from _found(part, computed, "range-order", Severity.WRONG)


@lru_cache(maxsize=2048)
def _errors(text: str) -> tuple[TextFinding, ...]:
    """What is wrong in a text; kept, since every view of a tutorial has most texts in common."""
    return proofread(text)


def _found(part: Prose, computed: Computed, check_id: str, severity: Severity) -> Iterator[Finding]:
    mixed = tuple(find_mixed_sums(part.text))
    alone = [
        each
        for each in _errors(part.text)
        if each.check == check_id and not any(one.holds_place(each.start) for one in mixed)
    ]
    if not alone:
        return
    before = _step_before(part, computed)
    behind = len(before)
    whole = {(each.start - behind, each.end - behind): each for each in _errors(before + part.text)} if before else {}
    known = surely_bound(part, computed)
    for each in alone:
        if (each.start, each.end) in known:
            continue  # its words name a number of the tutorial, which another check holds it against
        told = whole.get((each.start, each.end)) if before else each
        if told is not None and told.check == check_id:
            place = part.locate(each.start, each.end)
            yield Finding(check_id, severity, place, told.message, each.said, told.should_be, told.working)


def _step_before(part: Prose, computed: Computed) -> str:
    """The text of the step before that of a text: what a number there is may explain one that is told here."""
    steps = computed.tutorial.steps
    for before, step in pairwise(steps):
        if step.text is part and before.text is not None:
            return f"{before.text.text.rstrip()}\n"  # no empty line, over which no sum is read
    return ""
