"""Notches: at edges that are there, and the same at edges that are sewn together."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity, nearest
from sitegen.tutorial import Computed, Join, Notch, Piece, Tutorial

_PIECES = (
    "fabrics: {main: {name: linen, structure: woven, buy: 2 yd}}\npieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {side: 15 in, armhole: 9 in}, notches: {FRONT}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in, armhole: 9 in}, notches: {BACK}}\n"
    "  sleeve: {cut: 2 mirrored, fabric: main, edges: {cap: 18 in}}\n"
)
_SIDES = (
    "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]"
)
_SLEEVES = (
    "--- steps/01.yaml\ntitle: Sew on the sleeves\ntext: Sew.\n"
    "join: [{edges: [sleeve.cap, front.armhole + back.armhole], stitch: straight}]"
)


def _pieces(front: str, back: str) -> str:
    return _PIECES.replace("FRONT", front).replace("BACK", back)


@check(
    id="notch-edge",
    area="notches",
    severity=Severity.WRONG,
    looks_at=Piece,
    title="A notch at an edge that the piece does not have",
    why="It would be marked nowhere, or at the wrong edge.",
    source="Follows from the edges of the piece",
    trips=_pieces("sides: single", "side: single"),
    passes=_pieces("side: single", "side: single"),
)
def notch_edge(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """Every notch is at one of the edges of its piece."""
    for notch in piece.notches.values():
        if notch.edge.name in piece.edges:
            continue
        near = nearest(notch.edge.name, piece.edges, most=1)
        known = f" Its edges are {', '.join(piece.edges)}." if piece.edges else " It has no edges."
        yield Finding(
            "notch-edge",
            Severity.WRONG,
            notch.edge.place,
            f"The {piece.called} has no edge “{notch.edge.name}”.{f' Nearest: {near[0]}.' if near else known}",
            notch.edge.name,
            near[0] if near else "",
        )


@check(
    id="notch-match",
    area="notches",
    severity=Severity.DOUBTFUL,
    looks_at=Join,
    title="Edges that are sewn together and do not carry the same notches",
    why="The student looks for the other notch and doubts the piece.",
    source="Notches are matched, one to one and two to two: costume-technology terminology text (theatre education)",
    trips=_pieces("side: single", "side: double") + _SIDES,
    passes=_pieces("side: single", "side: single") + _SIDES,
)
def notch_match(join: Join, computed: Computed) -> Iterator[Finding]:
    """Two edges that are sewn to each other carry the same notches. Where one edge is sewn to several others, nothing
    is known."""
    for other in join.chains[1:]:
        first = join.chains[0]
        if len(other) != len(first):
            continue
        for one, two in zip(first, other, strict=True):
            pair = (_notch(one.name, computed.tutorial), _notch(two.name, computed.tutorial))
            if not (_is_edge(one.name, computed.tutorial) and _is_edge(two.name, computed.tutorial)):
                continue
            kinds = [notch.kind.text if notch is not None else "no" for notch in pair]
            has = pair[1] or pair[0]
            if has is None or kinds[0] == kinds[1]:
                continue
            said = [f"a {kind} notch" if kind != "no" else "no notch" for kind in kinds]
            yield Finding(
                "notch-match",
                Severity.DOUBTFUL,
                has.kind.place,
                f"{one.name} has {said[0]} and {two.name}, to which it is sewn, has {said[1]}. Give both the same.",
                has.kind.text,
            )


@check(
    id="notch-front-back",
    area="notches",
    severity=Severity.DOUBTFUL,
    looks_at=Piece,
    title="Notches of front and back the other way round",
    why="Whoever has learnt that one notch is the front and two are the back sews the piece in the wrong way round.",
    source="One notch is the front, two are the back: costume-technology terminology text (theatre education)",
    trips=_pieces("armhole: double", "armhole: single") + _SLEEVES,
    passes=_pieces("armhole: single", "armhole: double") + _SLEEVES,
)
def notch_front_back(piece: Piece, computed: Computed) -> Iterator[Finding]:
    """Where the same edge of front and back is sewn to something else, the front does not have two notches and the
    back one. Edges of front and back that are sewn to each other carry the same notches and do not count."""
    tutorial = computed.tutorial
    back = tutorial.pieces.get(piece.key.replace("front", "back", 1)) if piece.key.startswith("front") else None
    if back is None:
        return
    for key, notch in piece.notches.items():
        other = back.notches.get(key)
        if other is None or (notch.kind.text, other.kind.text) != ("double", "single"):
            continue
        names = (f"{piece.key}.{key}", f"{back.key}.{key}")
        if not _each_sewn_elsewhere(names, tutorial):
            continue
        for name, wrong, right in ((names[0], notch, "single"), (names[1], other, "double")):
            yield Finding(
                "notch-front-back",
                Severity.DOUBTFUL,
                wrong.kind.place,
                f"{name} has a {wrong.kind.text} notch. Usual is one notch for the front and two for the back.",
                wrong.kind.text,
                right,
            )


def _is_edge(name: str, tutorial: Tutorial) -> bool:
    piece, _, edge = name.partition(".")
    return piece in tutorial.pieces and edge in tutorial.pieces[piece].edges


def _notch(name: str, tutorial: Tutorial) -> Notch | None:
    piece, _, edge = name.partition(".")
    return tutorial.pieces[piece].notches.get(edge) if piece in tutorial.pieces else None


def _each_sewn_elsewhere(names: tuple[str, str], tutorial: Tutorial) -> bool:
    """Whether both edges are sewn in some step, and nowhere to each other."""
    joins = [join for step in tutorial.steps for join in step.every_join()]
    sewn = {name.name for join in joins for name in join.names()}
    return sewn.issuperset(names) and not any(_meet(names, join) for join in joins)


def _meet(names: tuple[str, str], join: Join) -> bool:
    """Whether a seam sews these edges to each other: at one place of chains that are equally long, or anywhere."""
    chains = [[name.name for name in chain] for chain in join.chains]
    if len({len(chain) for chain in chains}) == 1:
        return any(set(names) <= set(at) for at in zip(*chains, strict=True))
    return any(names[0] in one and names[1] in other for one in chains for other in chains if one is not other)
