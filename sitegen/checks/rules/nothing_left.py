"""Lengths and widths that come out at nothing or below: what causes it is pointed at, once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.checks.held import in_size
from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Place, Severity
from sitegen.quantities import RULER, ZERO, Worked, show_working
from sitegen.sewing import hem as hem_sums
from sitegen.tutorial import (
    Band,
    Change,
    Computed,
    Elastic,
    Hem,
    Lengths,
    Piece,
    Reference,
    Tutorial,
    words_of,
)

_MEASURES = frozenset({
    "cut_length", "cut_width", "finished_length", "finished_width", "finished_girth", "joined_length",
    "new_cut_length", "new_finished_length", "new_cut_width", "panel_length", "panel_width", "full_width",
    "strip_width", "stitch_line",
})  # fmt: skip
"""Numbers that are cloth to cut or to hold, or a way from an edge; allowances, ease and differences may be nothing."""
_AFTER_A_CHANGE = frozenset({"sewn", "width", "height"})
"""Before a change other checks look at them, of darts and of boxed corners."""
_PIECE = (
    "seam_allowance: 2 cm\nfabrics: {main: {name: linen, structure: woven, buy: 1 yd}}\n"
    "pieces: {loop: {cut: 1, fabric: main, length: LENGTH, sides: {top: seam, bottom: seam}}}\n"
)

_MORE = ". Write more than nothing."
_TAKEN = ": what its seams and hems take is more than it has. Make the piece larger, or the allowances smaller."
_CURVE = ": the seam allowance is deeper than the curve. Write a smaller allowance, or a longer edge."
_LESS = ". Take out less."
_WANT = ". Want a longer piece."
_AROUND = ", since what it goes round is no longer than that. Write how long that is."
_PARTS = ". One of its parts has no length, or seams take all of it. Make the parts longer."


@dataclass(frozen=True, slots=True)
class _Cause:
    """What the author wrote and what it leads to: where, its text if it was typed, and what to do instead."""

    place: Place
    said: str
    advice: str


@check(
    id="nothing-left",
    area="sums",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A length or width of which nothing is left",
    why="Nobody can cut or measure what is 0 long or less, and every sum that follows from it is wrong too.",
    source="Arithmetic: what is cut, and what is left of it once it is sewn, is longer than nothing; which numbers may"
    " not be nothing is " + COMMON_PRACTICE,
    trips=_PIECE.replace("LENGTH", "3 cm"),
    passes=_PIECE.replace("LENGTH", "13 cm"),
)
def nothing_left(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Cut, finished and new lengths and widths, edges that are computed, and the distance of stitches from
    a fold are above zero in every size, before and after each change."""
    names = [name for name in computed.numbers if _must_be_more(name, tutorial)]
    off = {name: found for name in names if (found := _first_off(name, computed)) is not None}
    seen: set[Place] = set()
    for name, (size, number) in off.items():
        inner = name.partition(".then.")[2]
        if inner in off:
            continue
        cause = _cause(name, size, computed)
        if cause is None or cause.place in seen:
            continue
        seen.add(cause.place)
        alike = computed.by_size(name)
        size_name = computed.size_name(size) if alike is None or alike.differs else ""
        yield Finding(
            "nothing-left",
            Severity.WRONG,
            cause.place,
            f"{_told(name, tutorial)} comes out at {RULER.show(number.length, tutorial.first_system)}"
            f"{in_size(size_name)}{cause.advice}",
            cause.said,
            "",
            show_working(number, tutorial.first_system),
            size_name,
        )


def _must_be_more(name: str, tutorial: Tutorial) -> bool:
    change, _, inner = name.rpartition(".then.")
    field = inner.rpartition(".")[2]
    return field in _MEASURES or _is_edge(inner, tutorial) or (bool(change) and field in _AFTER_A_CHANGE)


def _is_edge(name: str, tutorial: Tutorial) -> bool:
    piece, _, edge = name.partition(".")
    return piece in tutorial.pieces and edge in tutorial.pieces[piece].edges


def _first_off(name: str, computed: Computed) -> tuple[int, Worked] | None:
    """The first size in which a number is no more than nothing, and the number. An edge may be typed as nothing."""
    for size in range(computed.tutorial.size_count):
        number = computed.length(name, size)
        if number is None or number.length > ZERO:
            continue
        if number.terms or not _is_edge(name, computed.tutorial):
            return size, number
    return None


def _told(name: str, tutorial: Tutorial) -> str:
    """The number as the subject of a sentence: ``With shorter, the sleeve cut length``."""
    change, _, inner = name.rpartition(".then.")
    if change:
        return f"With {words_of(change)}, the {words_of(inner)}"
    owner, _, field = name.rpartition(".")
    for each in tutorial.changes.values():
        for key, piece in each.owners:
            if owner == key:
                return f"With {words_of(each.key)}, the {words_of(piece)} {words_of(field).removeprefix('new ')}"
    return f"The {words_of(name)}"


def _cause(name: str, size: int, computed: Computed) -> _Cause | None:
    """What leads to a number; None where it follows from another of these numbers, which is told already."""
    tutorial, key = computed.tutorial, name.partition(".")[0]
    if key in tutorial.changes:
        return _of_change(tutorial.changes[key], size)
    if key in tutorial.pieces:
        return _of_piece(tutorial.pieces[key], name, size, computed)
    if key in tutorial.bands:
        band = tutorial.bands[key]
        across = name.endswith("_width")
        return _typed(band.finished_width, size, _MORE, computed) if across else _of_ring(band, size, computed)
    if key in tutorial.elastics:
        return _of_ring(tutorial.elastics[key], size, computed)
    if key in tutorial.hems:
        return _of_hem(tutorial.hems[key], size, computed)
    if key in tutorial.bindings:
        return _typed(tutorial.bindings[key].finished_width, size, _MORE, computed)
    if key in tutorial.drops:
        drops = tutorial.drops[key]
        return _typed(drops.length if name.endswith("_length") else drops.width, size, _MORE, computed)
    others = (tutorial.joined, tutorial.girths, tutorial.boxed)
    return next((_Cause(parts[key].place, "", _PARTS) for parts in others if key in parts), None)


def _typed(lengths: Lengths, size: int, advice: str, computed: Computed) -> _Cause | None:
    """A length that the author gave; None where it is taken from another number that is nothing itself."""
    amount = lengths.amount_at(size)
    if amount is not None:
        return _Cause(amount.place, amount.typed.text.strip(), advice)
    if isinstance(lengths.source, Reference):
        other = computed.length(lengths.source.name, size)
        if other is not None and other.length <= ZERO and _must_be_more(lengths.source.name, computed.tutorial):
            return None
    return _Cause(lengths.place, "", advice)


def _of_piece(piece: Piece, name: str, size: int, computed: Computed) -> _Cause | None:
    field = name.rpartition(".")[2]
    edge = piece.edges.get(field)
    if edge is not None:
        given = edge.lengths if edge.arc is None else edge.arc.radius
        return _typed(given, size, _CURVE if edge.turn is not None else _MORE, computed) if given is not None else None
    lengths = piece.length if field.endswith("_length") else piece.width
    if lengths is None:
        return None
    own = computed.length(
        f"{piece.key}.{'finished' if piece.finished_given else 'cut'}_{field.partition('_')[2]}", size
    )
    return _typed(lengths, size, _TAKEN if own is not None and own.length > ZERO else _MORE, computed)


def _of_change(change: Change, size: int) -> _Cause:
    if change.wanted is not None:
        lengths, advice = change.wanted, _WANT
    elif change.amount is not None:
        lengths, advice = change.amount, _LESS
    else:
        most = max(
            (line.amount for line in change.lines if line.amount is not None and line.shortens),
            key=lambda each: amount.typed.value if (amount := each.amount_at(size)) is not None else ZERO,
            default=None,
        )
        if most is None:
            return _Cause(change.place, "", _LESS)
        lengths, advice = most, _LESS
    amount = lengths.amount_at(size)
    return _Cause(amount.place if amount else lengths.place, amount.typed.text.strip() if amount else "", advice)


def _of_ring(ring: Band | Elastic, size: int, computed: Computed) -> _Cause | None:
    """A band or an elastic: what it goes round has no length."""
    around = ring.around if isinstance(ring, Band) else (ring.around,)
    given = {lengths.name: lengths for lengths in computed.tutorial.typed}
    for name in around:
        number = computed.length(name.name, size)
        if number is not None and number.length <= ZERO:
            if _must_be_more(name.name, computed.tutorial) and number.terms:
                return None
            return (
                _typed(given[name.name], size, _AROUND, computed)
                if name.name in given
                else _Cause(name.place, "", _AROUND)
            )
    return _Cause(around[0].place, "", _AROUND)


def _of_hem(hem: Hem, size: int, computed: Computed) -> _Cause | None:
    if hem.stitch_line is not None:
        return _typed(hem.stitch_line, size, ". Stitch farther from the fold.", computed)
    system = computed.tutorial.first_system
    gap = computed.length(f"{hem.key}.needle_gap", size)
    apart = f", and the needles stand {RULER.show(gap.length, system)} apart" if gap is not None else ""
    margin = RULER.show(hem_sums.MARGIN.length, system)
    advice = f": the stitches need {margin} of the turned cloth beyond them{apart}. Turn up more, or write stitch_line."
    return _typed(hem.turn, size, advice, computed)
