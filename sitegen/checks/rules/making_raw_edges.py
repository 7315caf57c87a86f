"""Raw edges of woven cloth."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.checks.told import listed
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Join, Piece, Reference, Tutorial, seat_of

_TOP = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  front: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    "  back: {cut: 2, fabric: main, edges: {side: 15 in}}\n"
    "--- steps/01.yaml\ntitle: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"
)
_NO_FRAYING = re.compile(
    r"\b(?:felt|fleece|leather|suede|vinyl|oilcloth|laminated?|coated|plastic|cork|foam|tulle|net(?:ting)?)\b",
    re.IGNORECASE,
)
_LINED = re.compile(r"\blin(?:ed|ings?)\b", re.IGNORECASE)
_HIDES = re.compile(
    r"\b(?:facings?|bindings?|casings?|(?:waist|neck)?bands?|collars?|cuffs?|yokes?|plackets?)\b", re.IGNORECASE
)
"""Pieces between whose layers the raw edges of a seam disappear."""


@check(
    id="raw-edge",
    area="making",
    severity=Severity.DOUBTFUL,
    looks_at=Tutorial,
    title="A seam in woven cloth whose edges stay raw",
    why="A raw edge of woven cloth frays in wear and wash until the seam opens.",
    source="That seam finishes are left out is what learners complain of most in instructions (three learner articles);"
    " common practice, no source",
    trips=_TOP,
    passes=_TOP + "finish: [front.side, back.side]",
)
def raw_edge(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """Each joined edge of a woven cloth is finished in some step, or enclosed, or sewn with an overlock, or lies in a
    hem, a casing, a binding, a band's opening, or between the layers of a facing, cuff or the like. Nothing is said of
    a garment with a lining, nor of felt and other cloth that does not fray."""
    if _has_lining(tutorial):
        return
    hidden = _hidden(tutorial)
    raw: list[tuple[Reference, ...]] = []
    for join in (join for step in tutorial.steps for join in step.joins):
        edges = tuple(name for name in join.names() if name.name not in hidden and _frays(name, tutorial))
        if edges and not _basted(join):
            raw.append(edges)
    told = any(step.finishes for step in tutorial.steps) or any(
        join.enclosed for step in tutorial.steps for join in step.joins
    )
    for edges in raw if told else raw[:1]:
        names = list(dict.fromkeys(edge.name for edge in edges))
        more = "1 more seam is" if len(raw) == 2 else f"{len(raw) - 1} more seams are"
        others = f" No step finishes an edge; {more} like this." if not told and raw[1:] else ""
        yield Finding(
            "raw-edge",
            Severity.DOUBTFUL,
            edges[0].place,
            f"{listed(names)} {'are' if names[1:] else 'is'} woven and {'stay' if names[1:] else 'stays'} raw. Add to a"
            f" step finish: [{', '.join(names)}], or say in the join how the edges are hidden, such as enclosed: in a"
            f" French seam.{others}",
            edges[0].name,
        )


def _has_lining(tutorial: Tutorial) -> bool:
    names = [words for piece in tutorial.pieces.values() for words in _names(piece)]
    names += [words for fabric in tutorial.fabrics.values() for words in (fabric.key.replace("_", " "), fabric.name)]
    return any(_LINED.search(words) for words in names)


def _names(piece: Piece) -> tuple[str, str]:
    return piece.key.replace("_", " "), piece.called


def _hidden(tutorial: Tutorial) -> set[str]:
    """Every edge that some step finishes, or that lies inside something."""
    found = {name.name for step in tutorial.steps for chain in step.finishes for name in chain}
    found |= {edge.name for hem in tutorial.hems.values() for edge in hem.edges}
    found |= {edge.name for band in tutorial.bands.values() for edge in band.around}
    found |= {edge.name for binding in tutorial.bindings.values() for edge in binding.edges}
    found |= {edge for elastic in tutorial.elastics.values() for edge in seat_of(elastic, tutorial)}
    for join in (join for step in tutorial.steps for join in step.joins):
        if join.enclosed or (join.stitch and "overlock" in join.stitch.text) or _between_layers(join, tutorial):
            found |= {name.name for name in join.names()}
    return found


def _between_layers(join: Join, tutorial: Tutorial) -> bool:
    pieces = (tutorial.pieces.get(name.name.partition(".")[0]) for name in join.names())
    return any(_HIDES.search(words) for piece in pieces if piece is not None for words in _names(piece))


def _frays(name: Reference, tutorial: Tutorial) -> bool:
    piece = tutorial.pieces.get(name.name.partition(".")[0])
    fabric = tutorial.fabrics.get(piece.fabric.name) if piece is not None and piece.fabric else None
    return fabric is not None and not fabric.knit and not _NO_FRAYING.search(fabric.name)


def _basted(join: Join) -> bool:
    return join.stitch is not None and join.stitch.text == "basting"
