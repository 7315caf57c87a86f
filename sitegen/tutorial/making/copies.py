"""How often an edge or a band is there."""

from __future__ import annotations

import re

from sitegen.tutorial.model import Piece, Tutorial


def copies_of(name: str, tutorial: Tutorial) -> int | None:
    """How many edges or bands of this name the garment has; None when it cannot be known.

    Known are: a band, by how often it is made; an edge of a band's opening, which the band goes round once (two
    wrists for two cuffs); and an edge that lies at one side of a piece that is not cut on the fold, once for each
    piece. Any other edge may be there twice on each piece, left and right.
    """
    if name in tutorial.bands:
        return tutorial.bands[name].make
    key, _, edge = name.partition(".")
    piece = tutorial.pieces.get(key)
    pieces = pieces_cut(piece) if piece is not None else None
    if piece is None or pieces is None:
        return None
    openings = [(band.make, sum(each.name == name for each in band.around)) for band in tutorial.bands.values()]
    round_bands = sum(make * times for make, times in openings)
    if round_bands:
        return round_bands if round_bands % pieces == 0 else None
    return pieces if not piece.on_fold and _at_one_side(edge, piece) else None


def pieces_cut(piece: Piece) -> int | None:
    """How many of a piece are cut, one on the fold being one; None when that is not clear."""
    match = re.match(r"\d+", piece.cut.text) if piece.cut is not None else None
    return int(match.group()) or None if match else None


def _at_one_side(edge: str, piece: Piece) -> bool:
    """Whether an edge is the whole left or the whole right side of a piece, and nothing else."""
    sides = {side: reference.name for side, reference in piece.sides.items()}
    upright = [sides.get("left"), sides.get("right")]
    return None not in upright and upright.count(edge) == 1 and edge not in (sides.get("top"), sides.get("bottom"))
