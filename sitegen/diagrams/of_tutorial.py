"""From a part of a computed tutorial to its diagram, for one size."""

from __future__ import annotations

from dataclasses import dataclass

from sitegen.diagrams.drawing import CannotDraw, Drawing
from sitegen.diagrams.kinds import band_on_opening, hem_section, slash_and_spread
from sitegen.diagrams.svg import write_svg
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.quantities import ZERO, Length, System
from sitegen.tutorial import Band, Change, Computed, Hem, words_of


@dataclass(frozen=True, slots=True)
class Drawn:
    """A diagram as a page carries it."""

    title: str
    svg: str


def diagram_of(name: str, computed: Computed, size: int, prefix: str, first: System) -> Drawn | None:
    """The diagram of the band, hem or change of this name; None when its numbers are not all known or not drawable.

    ``prefix`` starts every id in it.
    """
    tutorial = computed.tutorial
    try:
        if name in tutorial.bands:
            drawing = _band(tutorial.bands[name], computed, size, first)
        elif name in tutorial.hems:
            drawing = _hem(tutorial.hems[name], computed, size, first)
        elif name in tutorial.changes:
            drawing = _change(tutorial.changes[name], computed, size, first)
        else:
            return None
    except CannotDraw:
        return None
    if drawing is None:
        return None
    return Drawn(drawing.title, write_svg(drawing, prefix, standalone=False))


def _length(computed: Computed, name: str, size: int) -> Length | None:
    number = computed.number(name, size)
    return number.length if number is not None else None


def _band(band: Band, computed: Computed, size: int, first: System) -> Drawing | None:
    key = band.key
    front, back = (_length(computed, f"{key}.{half}_opening", size) for half in ("front", "back"))
    whole = _length(computed, f"{key}.opening_length", size)
    finished = _length(computed, f"{key}.finished_length", size)
    if whole is None or finished is None:
        return None
    opening = band_on_opening.FrontAndBack(front, back) if front is not None and back is not None else whole
    allowance = _length(computed, f"{key}.seam_allowance", size)
    picture = band_on_opening.BandOnOpening(
        key, words_of(key), _opening_words(band), opening, finished, allowance or ZERO
    )
    return band_on_opening.draw(picture, first=first)


def _opening_words(band: Band) -> str:
    """What the opening is called: the edge that all its pieces share, ``neckline``."""
    edges = dict.fromkeys(edge.name.rpartition(".")[2] for edge in band.around)
    return words_of(" and ".join(edges))


def _change(change: Change, computed: Computed, size: int, first: System) -> Drawing | None:
    piece = computed.tutorial.pieces.get(change.pieces[0].name)
    if piece is None:
        return None
    cut = _length(computed, f"{piece.key}.cut_length", size)
    line = _length(computed, f"{change.key}.part_above", size)
    amount = _length(computed, f"{change.key}.amount", size)
    if cut is None or line is None or amount is None:
        return None
    top, bottom, over = (_length(computed, f"{piece.key}.taper_{end}", size) for end in ("top", "bottom", "over"))
    if piece.taper is not None and top is not None and bottom is not None and over is not None:
        left = Edge.SLOPING if piece.taper.edges == 2 else Edge.FOLD if piece.on_fold else Edge.STRAIGHT
        tapered = TaperedPiece(top, bottom, over, cut, left, cap="cap" in piece.edges)
    else:
        width = _length(computed, f"{piece.key}.cut_width", size)
        if width is None:
            return None
        half = width / 2 if piece.on_fold else width
        tapered = TaperedPiece(half, half, cut, cut, Edge.FOLD if piece.on_fold else Edge.STRAIGHT)
    picture = slash_and_spread.SlashAndSpread(change.key, piece.key, piece.called, tapered, line, amount)
    return slash_and_spread.draw(picture, first=first)


def _hem(hem: Hem, computed: Computed, size: int, first: System) -> Drawing | None:
    turn, line = (_length(computed, f"{hem.key}.{name}", size) for name in ("turn", "stitch_line"))
    if turn is None or line is None:
        return None
    under = _length(computed, f"{hem.key}.fold_under", size)
    gap = _length(computed, f"{hem.key}.needle_gap", size)
    stitch = hem_section.Stitch.ZIGZAG if hem.stitch and "zigzag" in hem.stitch.text else hem_section.Stitch.STRAIGHT
    picture = hem_section.HemSection(
        hem.key, words_of(hem.key), turn, line, fold_under=under or ZERO, gap=gap or ZERO, stitch=stitch
    )
    return hem_section.draw(picture, first=first)
