"""From a piece or a band of a computed tutorial to its shape, and to the plan by which it is cut."""

from __future__ import annotations

from dataclasses import replace

from sitegen.diagrams.drawing import Drawing
from sitegen.diagrams.kinds import piece_plan
from sitegen.diagrams.kinds.piece_plan import CutOff, Ends, PiecePlan, PlanSide
from sitegen.diagrams.tapered_piece import Edge, TaperedPiece
from sitegen.quantities import ZERO, Length, System
from sitegen.tutorial import SIDES, Band, Computed, Piece, taken_at, words_of

_FOLD = "fold"
_LEAST_CAP = 10
"""A cap is a curve only where it rises by more than this part of the width; else its edge is straight."""


def tapered(piece: Piece, computed: Computed, size: int) -> TaperedPiece | None:
    """The piece as it is cut, with its taper if it has one; of a piece on the fold the half that is drawn."""
    cut = _length(computed, f"{piece.key}.cut_length", size)
    if cut is None:
        return None
    top, bottom, over = (_length(computed, f"{piece.key}.taper_{end}", size) for end in ("top", "bottom", "over"))
    if piece.taper is not None and top is not None and bottom is not None and over is not None:
        left = Edge.SLOPING if piece.taper.edges == 2 else Edge.FOLD if piece.on_fold else Edge.STRAIGHT
        return TaperedPiece(top, bottom, over, cut, left, cap="cap" in piece.edges)
    width = _length(computed, f"{piece.key}.cut_width", size)
    if width is None:
        return None
    drawn = width / 2 if drawn_as_half(piece) else width
    return TaperedPiece(drawn, drawn, cut, cut, Edge.FOLD if piece.on_fold else Edge.STRAIGHT)


def drawn_as_half(piece: Piece) -> bool:
    """Whether its cut width is that of the whole, and half of it is drawn; one side that is the fold has the half."""
    return piece.on_fold and all(side.name != _FOLD for side in piece.sides.values())


def plan_drawing(part: str, computed: Computed, size: int, first: System) -> Drawing | None:
    """The plan of a piece or band; None when its cut length and width are not known."""
    tutorial = computed.tutorial
    if part in tutorial.pieces:
        plan = _plan_of_piece(tutorial.pieces[part], computed, size)
    elif part in tutorial.bands:
        plan = _plan_of_band(tutorial.bands[part], computed, size)
    else:
        return None
    return piece_plan.draw(plan, first=first) if plan is not None else None


def _plan_of_piece(piece: Piece, computed: Computed, size: int) -> PiecePlan | None:
    shape = tapered(piece, computed, size)
    width = _length(computed, f"{piece.key}.cut_width", size)
    if shape is None or width is None:
        return None
    half = drawn_as_half(piece) and shape.left is Edge.FOLD
    drawn = width / 2 if half else width
    if piece.taper is not None and drawn >= shape.width:
        # A taper is measured between the seam lines; the allowances lie outside it, all the way down.
        more = drawn - shape.width
        shape = replace(shape, top=shape.top + more, bottom=shape.bottom + more)
    if shape.start * _LEAST_CAP < shape.width:
        shape = replace(shape, cap=False)
    sides = {side: _side(piece, side, computed, size) for side in SIDES if side in piece.sides}
    if shape.left is Edge.FOLD:
        sides["left"] = PlanSide(_FOLD, Ends.FOLD)
    cut_off = _cut_off(piece, computed, size)
    named = {reference.name for reference in piece.sides.values()}
    return PiecePlan(
        name=piece.key,
        called=piece.called or words_of(piece.key),
        cut=piece.cut.text if piece.cut is not None else "",
        shape=shape,
        sides=sides,
        halved=half,
        bias=piece.bias,
        cut_off=cut_off,
        outer_only=cut_off is None and any(edge not in named for edge in piece.edges),
    )


def _side(piece: Piece, side: str, computed: Computed, size: int) -> PlanSide:
    name = piece.sides[side].name
    tutorial = computed.tutorial
    if name in ("fold", "raw"):
        return PlanSide(name, Ends.FOLD if name == _FOLD else Ends.RAW)
    taken = taken_at(piece, side, computed, size)
    width = taken.length if taken is not None else ZERO
    full = f"{piece.key}.{name}"
    hemmed = name in tutorial.hems or any(edge.name == full for hem in tutorial.hems.values() for edge in hem.edges)
    ends = Ends.TURNED if hemmed or name in tutorial.elastics else Ends.SEAM
    notch = piece.notches.get(name)
    return PlanSide(words_of(name), ends, width, notch.kind.text if notch is not None else "")


def _cut_off(piece: Piece, computed: Computed, size: int) -> CutOff | None:
    """What is cut out of both lower corners of a piece that is boxed."""
    for boxed in computed.tutorial.boxed.values():
        if boxed.pieces[-1].name == piece.key:
            width, height = (_length(computed, f"{boxed.key}.cut_out_{axis}", size) for axis in ("width", "height"))
            return CutOff(width, height) if width is not None and height is not None else None
    return None


def _plan_of_band(band: Band, computed: Computed, size: int) -> PiecePlan | None:
    """A band lies with its length across, since it stretches that way."""
    key = band.key
    length, width, quarter = (
        _length(computed, f"{key}.{name}", size) for name in ("cut_length", "cut_width", "band_quarter")
    )
    allowance = _length(computed, f"{key}.seam_allowance", size)
    if length is None or width is None:
        return None
    seam = PlanSide("seam", Ends.SEAM, allowance or ZERO)
    return PiecePlan(
        name=key,
        called=words_of(key),
        cut=str(band.make),
        shape=TaperedPiece(length, length, width, width, Edge.STRAIGHT),
        sides=dict.fromkeys(SIDES, seam),
        lengthwise=True,
        folded=band.folded,
        quarter=quarter,
    )


def _length(computed: Computed, name: str, size: int) -> Length | None:
    number = computed.length(name, size)
    return number.length if number is not None else None
