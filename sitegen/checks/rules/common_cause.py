"""Several numbers that do not agree, and the one given number that would put them right."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePosixPath

from sitegen.checks.causes import Cause, Statement, causes
from sitegen.checks.held import instead, off_in
from sitegen.checks.registry import check
from sitegen.checks.rules.seams import seam_allowance, unequal_in
from sitegen.checks.said_lengths import names_that_fit, said_lengths, sizes_of
from sitegen.findings import Finding, Place, Severity
from sitegen.prose import Bound
from sitegen.quantities import Length, Ratio, show_ratio
from sitegen.tutorial import Amount, Claim, Computed, Join, Prose, Reference, Share, Tutorial, edge_number, words_of

_TRIPS = (
    "seam_allowance: ALLOWANCE\nfabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces:\n"
    "  panel: {cut: 2, fabric: main, length: 16 in, sides: {top: seam, bottom: seam}, finished_length: 15 in}\n"
    "  strap: {cut: 2, fabric: main, length: 21 in, sides: {top: seam, bottom: seam}, finished_length: 20 in}\n"
)


@check(
    id="common-cause",
    area="sums",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="One number that would put several others right",
    why="A mistyped allowance makes every length wrong that was written down with the right one. Putting those right"
    " one by one would carry the slip into all of them.",
    source="Derived: the value of a given number for which what follows from it is what was written",
    trips=_TRIPS.replace("ALLOWANCE", "3/8 in"),
    passes=_TRIPS.replace("ALLOWANCE", "1/2 in"),
)
def common_cause(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Where several written numbers, seams or texts do not agree, a given number may be what is wrong: one for which
    all of them that follow from it would be right, and none would be wrong that is right now."""
    for cause in causes(tuple(_statements(tutorial, computed)), computed):
        yield _finding(cause, computed)


def _finding(cause: Cause, computed: Computed) -> Finding:
    name = words_of(cause.given.name)
    first, *more = sorted(cause.instead)
    typed = cause.given.at(first)
    by_size = len(cause.given.typed) > 1
    in_size = f" of size {computed.size_name(first)}" if by_size else ""
    wanted = _put(typed, cause.instead[first])
    others = ", and other sizes as below" if by_size and more else ""
    single = not (by_size and more)
    return Finding(
        "common-cause",
        Severity.DOUBTFUL,
        typed.place,
        f"If the {name}{in_size} were {wanted}{others}, {len(cause.mended)} numbers that do not agree would all be"
        " right. Look here first.",
        _text(typed),
        wanted if single else "",
        (*_by_size(cause, computed), f"right then: {', '.join(each.words for each in cause.mended)}"),
        computed.size_name(first) if by_size and single else "",
    )


def _by_size(cause: Cause, computed: Computed) -> Iterator[str]:
    if len(cause.given.typed) == 1 or len(cause.instead) == 1:
        return
    for size, value in sorted(cause.instead.items()):
        typed = cause.given.at(size)
        yield f"size {computed.size_name(size)}: {_put(typed, value)} instead of {_text(typed)}"


def _put(typed: Amount | Share, value: Length | Ratio) -> str:
    if isinstance(typed, Amount) and isinstance(value, Length):
        return instead(typed.typed, value)
    return show_ratio(value) if isinstance(value, Ratio) else ""


def _text(typed: Amount | Share) -> str:
    return typed.typed.text.strip() if isinstance(typed, Amount) else typed.text


def _statements(tutorial: Tutorial, computed: Computed) -> Iterator[Statement]:
    """What the author wrote although it follows from other numbers: claims, seams that meet, lengths in texts."""
    yield from (_of_claim(claim) for claim in tutorial.claims if not isinstance(claim.lengths.source, Reference))
    for step in tutorial.steps:
        for join in step.every_join():
            yield _of_seam(join, tutorial)
            yield from _of_allowance(join)
    for prose, bound in said_lengths(tutorial, computed):
        if bound.sure and not bound.less:
            yield _of_text(prose, bound)


def _of_claim(claim: Claim) -> Statement:
    def said(size: int) -> Length | None:
        amount = claim.lengths.amount_at(size)
        return amount.typed.value if amount is not None else None

    def wrong_in(computed: Computed) -> frozenset[int]:
        return frozenset(size for size, _, _ in off_in(claim, computed))

    return Statement(words_of(claim.lengths.name), (claim.lengths.name,), wrong_in, said)


def _of_seam(join: Join, tutorial: Tutorial) -> Statement:
    names = tuple(edge_number(name, tutorial) for chain in join.chains for name in chain)
    words = " and ".join(words_of(chain[0].name) for chain in join.chains if chain)

    def wrong_in(computed: Computed) -> frozenset[int]:
        return frozenset(size for size in _sizes(computed) if unequal_in(join, size, computed) is not None)

    return Statement(f"the seam of {words}", names, wrong_in, lambda size: None)


def _of_allowance(join: Join) -> Iterator[Statement]:
    """The allowance that a step states for a seam, where it does."""
    amount = join.seam_allowance.amount_at(0) if join.seam_allowance is not None else None
    edges = [name.name for chain in join.chains for name in chain]
    if amount is not None and edges:
        yield Statement(
            f"{amount.typed.text.strip()} {_where(amount.place)}",
            tuple(f"{edge}.seam_allowance" for edge in edges),
            lambda computed: frozenset(_sizes(computed) if any(seam_allowance(join, computed)) else ()),
            lambda size: amount.typed.value,
        )


def _of_text(prose: Prose, bound: Bound) -> Statement:
    found = bound.measurement

    def wrong_in(computed: Computed) -> frozenset[int]:
        return frozenset(() if names_that_fit(bound, computed) else sizes_of(bound, computed.tutorial))

    where = _where(prose.locate(found.start, found.end))
    return Statement(f"“{found.text}” {where}", bound.names, wrong_in, lambda size: found.length)


def _where(place: Place) -> str:
    return f"({PurePosixPath(place.file).name}, line {place.line})"


def _sizes(computed: Computed) -> range:
    return range(computed.tutorial.size_count)
