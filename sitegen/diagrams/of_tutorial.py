"""From a part of a computed tutorial to its diagram, for one size."""

from __future__ import annotations

from sitegen.diagrams.drawing import CannotDraw, Drawing
from sitegen.diagrams.drawn import Drawn, drawn
from sitegen.diagrams.kinds import (
    band_on_opening,
    boxed_corner,
    dart_fold,
    hem_section,
    slash_and_spread,
    slash_at_lines,
)
from sitegen.diagrams.of_piece import plan_drawing, tapered
from sitegen.diagrams.of_seam import meeting_drawing, seam_drawing
from sitegen.diagrams.of_worked_parts import worked_drawing
from sitegen.quantities import ENGLISH, ZERO, English, Length, System
from sitegen.tutorial import (
    Asked,
    Band,
    Boxed,
    Change,
    Computed,
    Dart,
    Hem,
    PictureOf,
    lacking,
    picture_names,
    words_of,
)


def diagram_of(
    name: str, computed: Computed, size: int, prefix: str, first: System, language: English = ENGLISH
) -> Drawn | None:
    """The diagram of the band, hem, change, dart, boxed corners, marks, gathers, pleats or binding of this name, or of
    ``seam of``, ``meeting of`` or ``plan of`` something.

    None when its numbers are not all known or not drawable.
    ``prefix`` starts every id in it.
    """
    tutorial = computed.tutorial
    darts = {dart.name: dart for piece in tutorial.pieces.values() for dart in piece.darts.values()}
    try:
        if name in tutorial.bands:
            drawing = _band(tutorial.bands[name], computed, size, first)
        elif name in tutorial.hems:
            drawing = _hem(tutorial.hems[name], computed, size, first)
        elif name in tutorial.changes:
            drawing = _change(tutorial.changes[name], computed, size, first)
        elif name in tutorial.boxed:
            drawing = _boxed(tutorial.boxed[name], computed, size, first)
        elif name in darts:
            drawing = _dart(darts[name], computed, size, first)
        elif (asked := picture_names(tutorial).get(name)) is not None:
            drawing = _asked(asked, computed, size, first)
        else:
            drawing = worked_drawing(name, computed, size, first)
    except CannotDraw:
        return None
    return drawn(drawing, prefix, language) if drawing is not None else None


def _asked(picture: PictureOf, computed: Computed, size: int, first: System) -> Drawing | None:
    """A seam, two edges that meet, or the plan of what is cut, by a name such as ``seam of front.side``."""
    if lacking(picture, computed, size):
        return None
    if picture.join is None:
        return plan_drawing(picture.part, computed, size, first)
    draw = seam_drawing if picture.asked is Asked.SEAM else meeting_drawing
    return draw(picture.join, computed, size, first)


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
    opening: band_on_opening.FrontAndBack | Length = whole
    if band.on_neck and front is not None and back is not None:
        opening = band_on_opening.FrontAndBack(front, back)
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
    shape = tapered(piece, computed, size)
    if shape is None:
        return None
    if change.lines:
        lines = _lines(change, computed, size)
        if lines is None:
            return None
        several = slash_at_lines.SlashAtLines(change.key, piece.called, shape, lines)
        return slash_at_lines.draw(several, first=first)
    line = _length(computed, f"{change.key}.part_above", size)
    amount = _length(computed, f"{change.key}.amount", size)
    if line is None or amount is None:
        return None
    picture = slash_and_spread.SlashAndSpread(change.key, piece.key, piece.called, shape, line, amount)
    return slash_and_spread.draw(picture, first=first)


def _lines(change: Change, computed: Computed, size: int) -> tuple[slash_at_lines.LineAcross, ...] | None:
    found = []
    for number in range(1, len(change.lines) + 1):
        level, amount = (
            _length(computed, f"{change.key}.line_{number}.{field}", size) for field in ("part_above", "amount")
        )
        if level is None or amount is None:
            return None
        found.append(slash_at_lines.LineAcross(level, amount))
    return tuple(found)


def _dart(dart: Dart, computed: Computed, size: int, first: System) -> Drawing | None:
    width, length, leg = (_length(computed, f"{dart.name}.{field}", size) for field in ("width", "length", "leg"))
    if width is None or length is None or leg is None:
        return None
    called = words_of(dart.name)
    called = called if called.endswith("dart") else f"{called} dart"
    picture = dart_fold.DartFold(dart.name, called, words_of(dart.edge_name), width, length, leg, dart.count)
    return dart_fold.draw(picture, first=first)


def _boxed(boxed: Boxed, computed: Computed, size: int, first: System) -> Drawing | None:
    tip, allowance = (_length(computed, f"{boxed.key}.{field}", size) for field in ("from_tip", "corner_allowance"))
    if tip is None:
        return None
    width, height = (_length(computed, f"{boxed.key}.cut_out_{axis}", size) for axis in ("width", "height"))
    cut = boxed_corner.CutOut(width, height) if width is not None and height is not None else None
    picture = boxed_corner.BoxedCorner(boxed.key, words_of(boxed.key), tip, allowance or ZERO, cut)
    return boxed_corner.draw(picture, first=first)


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
