"""Which edges the line of a change crosses, and whether a sloping edge is as long as its slope says."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.held import instead
from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.quantities import RULER, Length, inches
from sitegen.sewing import geometry
from sitegen.tutorial import Change, Computed, Lengths, Piece, Reference

_LEG = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\npieces:\n"
    "  leg: {cut: 2 mirrored, fabric: main, length: 30 in,\n"
    "    sides: {top: seam, bottom: hem, left: side, right: inseam},\n"
    "    edges: {side: 28 in, inseam: 24 in, hem: 9 in}}\n"
    "changes: {longer: {piece: leg, line_at: 9 in from the bottom, lengthen_by: 2 in, crosses: [CROSSED]}}"
)
NEAR = inches("1/8")
_SLEEVE = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 2 yd}}\n"
    "pieces:\n  sleeve: {cut: 2 on fold, fabric: main, length: 13 in,\n"
    "    sides: {top: cap, bottom: wrist, left: under, right: under},\n"
    "    edges: {cap: 16 in, wrist: 8 in, under: UNDER}, taper: {top: 16 in, bottom: 8 in, over: 12 in, edges: 2}}\n"
)


@check(
    id="crossed-edges",
    area="changes",
    severity=Severity.DOUBTFUL,
    looks_at=Change,
    title="A line of a change that crosses other edges than its piece has at its sides",
    why="The crossed edges grow or shrink; one that was named wrong no longer meets its partner in the seam.",
    source="Follows from the sides of the piece: a line across runs from its left side to its right side",
    trips=_LEG.replace("CROSSED", "leg.side, leg.hem"),
    passes=_LEG.replace("CROSSED", "leg.side, leg.inseam"),
)
def crossed_edges(change: Change, computed: Computed) -> Iterator[Finding]:
    """The edges that the line of a change of length crosses are those at the left and right of every piece that it
    changes, no other and none left out. Pieces whose sides have no edges are passed over."""
    pieces = [computed.tutorial.pieces.get(piece.name) for piece in change.pieces]
    named = [piece for piece in pieces if piece is not None]
    if change.widens or not change.crosses or len(named) != len(pieces) or not all(map(_sides, named)):
        return
    at_sides = {f"{piece.key}.{edge}" for piece in named for edge in _sides(piece)}
    said = [name.name if "." in name.name else f"{named[0].key}.{name.name}" for name in change.crosses]
    missing = sorted(at_sides - set(said))
    seen: set[str] = set()
    for name, full in zip(change.crosses, said, strict=True):
        odd = full not in at_sides or full in seen
        seen.add(full)
        if odd:
            right = missing[0] if len(missing) == 1 else ""
            yield Finding(
                "crossed-edges",
                Severity.DOUBTFUL,
                name.place,
                f"{name.name} is {'named twice' if full in at_sides else 'no edge at the left or right'} where"
                f" {_words(change.key)} crosses its pieces." + (f" Is {right} meant?" if right else ""),
                name.name,
                (right if "." in name.name else right.partition(".")[2]) if right else "",
            )
            return
    if missing:
        yield Finding(
            "crossed-edges",
            Severity.DOUBTFUL,
            change.crosses[0].place,
            f"The line of {_words(change.key)} crosses {' and '.join(missing)} too. Add it to crosses.",
        )


def _sides(piece: Piece) -> frozenset[str]:
    """The edges at the left and right of a piece."""
    names = [piece.sides[side].name for side in ("left", "right") if side in piece.sides]
    return frozenset(name for name in names if name in piece.edges)


def _words(key: str) -> str:
    return key.replace("_", " ")


@check(
    id="slanting-edge",
    area="pieces",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="A sloping edge that is not as long as its slope",
    why="The edge is drawn from mark to mark; if it comes out longer than was said, the seam does not meet.",
    source="Geometry: the long side of a right triangle",
    trips=_SLEEVE.replace("UNDER", "12 in"),
    passes=_SLEEVE.replace("UNDER", "12 5/8 in"),
)
def slanting_edge(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """Where a piece tapers, one of its side edges is as long as the slope, √(over² + run²), within 1/8 in (3 mm), if
    one comes within a tenth of it at all: a side with a straight part above the taper is longer."""
    taper = piece.taper
    if taper is None or not _sides(piece):
        return
    for size in range(computed.tutorial.size_count):
        top, bottom, over = (_taken(each, size, computed) for each in (taper.top, taper.bottom, taper.over))
        if top is None or bottom is None or over is None:
            return
        run = (top.mm - bottom.mm) / taper.edges
        slope = Length(geometry.root(over.mm**2 + run**2))
        lengths = {name: worked.length for name in sorted(_sides(piece))
                   if (worked := computed.number(f"{piece.key}.{name}", size)) is not None}  # fmt: skip
        apart = {name: abs(length.mm - slope.mm) for name, length in lengths.items()}
        nearest = min(apart, key=lambda name: apart[name], default="")
        if not nearest or apart[nearest] <= NEAR.mm or apart[nearest] > slope.mm / 10:
            continue
        given = piece.edges[nearest].lengths
        amount = given.amount_at(size) if given is not None else None
        system = computed.tutorial.first_system
        yield Finding(
            "slanting-edge",
            Severity.DOUBTFUL,
            amount.place if amount is not None else taper.place,
            f"{piece.key}.{nearest} is {RULER.show(lengths[nearest], system)}, but from mark to mark the slope measures"
            f" {RULER.show(slope, system)}{f' in size {name}' if (name := computed.size_name(size)) else ''}.",
            amount.typed.text.strip() if amount is not None else "",
            instead(amount.typed, slope) if amount is not None else "",
        )
        return


def _taken(lengths: Lengths, size: int, computed: Computed) -> Length | None:
    """A length as it was typed, or the number to which it refers."""
    if isinstance(lengths.source, Reference):
        worked = computed.length(lengths.source.name, size)
        return worked.length if worked is not None else None
    amount = lengths.amount_at(size)
    return amount.typed.value if amount is not None else None
