"""A band and its opening: both laid out flat to one scale, and mark joined to mark.

A round opening is cut open at the centre back, so the front lies whole in the middle.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from sitegen.diagrams.drawing import (
    CannotDraw,
    Dimension,
    Drawing,
    Label,
    Line,
    Number,
    Role,
    Shape,
    Side,
    View,
    at,
    fitting_scale,
    rectangle,
)
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System

_ROOM = 356
_LEFT = 112
_EDGE = 70
_BAND = _EDGE + 38
_BAND_EDGE = _BAND + 18
_TICK = 14
_MARK = 9
_ABOVE = (Side.ABOVE,)


@dataclass(frozen=True, slots=True)
class FrontAndBack:
    """The two edges of a round opening, each from shoulder seam to shoulder seam, along the seam line."""

    front: Length
    back: Length


@dataclass(frozen=True, slots=True)
class BandOnOpening:
    """What the picture needs: the opening, the band's finished length, and what both are called.

    ``name`` is the band's own name in references. With an allowance the band is drawn with its two seam
    allowances. Raises ``CannotDraw`` for lengths of nothing or less.
    """

    name: str
    band_called: str
    opening_called: str
    opening: FrontAndBack | Length
    band: Length
    allowance: Length = ZERO

    def __post_init__(self) -> None:
        if min(self.band, *self.edges) <= ZERO or self.allowance < ZERO:
            raise CannotDraw("an opening and its band need lengths above nothing")

    @property
    def edges(self) -> tuple[Length, ...]:
        """The edges of the opening, front first."""
        whole = self.opening
        return (whole,) if isinstance(whole, Length) else (whole.front, whole.back)

    @property
    def around(self) -> Length:
        """The whole opening."""
        return sum(self.edges, ZERO)

    @property
    def cut(self) -> Length:
        """The band with its two allowances."""
        return self.band + self.allowance * 2

    @property
    def marks(self) -> tuple[str, ...]:
        """What the five marks are called, from end to end."""
        if isinstance(self.opening, Length):
            return ("seam", "quarter", "half way", "quarter", "seam")
        return ("centre back", "side quarter", "centre front", "side quarter", "centre back")


def describe(band: BandOnOpening, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    parts = [
        f"The {band.opening_called} opening, {say(band.around)} in all, laid out flat, and beside it, to the same "
        f"scale, the {band.band_called}, {say(band.band)} when finished.",
        f"A quarter of the opening is {say(band.around / 4)}, a quarter of the band {say(band.band / 4)}.",
        "Dotted lines join each mark of the opening to the same mark of the band, which is stretched evenly to it.",
    ]
    if isinstance(band.opening, FrontAndBack):
        whole = band.opening
        parts.insert(1, f"The front edge is {say(whole.front)}, the back edge {say(whole.back)}.")
        apart = (whole.front - whole.back) / 4
        where = f"{say(abs(apart))} {_way(whole)} the shoulder seam" if apart else "on the shoulder seam"
        parts.append(f"Each side quarter mark of the opening falls {where}.")
    if band.allowance:
        parts.append(
            f"With a seam allowance of {say(band.allowance)} at both ends, the band is cut {say(band.cut)} long."
        )
    return " ".join(parts)


def draw(band: BandOnOpening, *, first: System = System.INCHES) -> Drawing:
    """The opening upright on the left, the band on the right, with the quarter marks of both."""
    longest = max(band.around, band.cut)
    opening_top, band_top = (longest - band.around) / 2, (longest - band.band) / 2
    shapes = (
        *_opening(band, opening_top, first),
        *_band(band, band_top, first),
        *_joins(band, opening_top, band_top),
        *_quarters(band, opening_top, band_top, first),
    )
    view = View(fitting_scale(longest, _ROOM), shapes, right=_LEFT)
    title = capital(f"{band.band_called} on the {band.opening_called} opening")
    return Drawing(title, describe(band, first=first), (view,))


def _opening(band: BandOnOpening, top: Length, first: System) -> list[Shape]:
    foot = top + band.around
    called = f"{band.opening_called} opening\n{both_units(band.around, first)}"
    shapes: list[Shape] = [
        rectangle(at(y=top), at(y=foot, right=_EDGE), Role.RIGHT),
        Line(at(y=top), at(y=foot), Role.BREAK),
        Line(at(y=top), at(y=top, right=_EDGE), Role.OLD),
        Line(at(y=foot), at(y=foot, right=_EDGE), Role.OLD),
        _edge(top, band.around, f"{band.name}.opening_length"),
        Label(called, at(y=top, right=_EDGE // 3), _ABOVE, width=150, leader=False),
    ]
    if isinstance(band.opening, FrontAndBack):
        shapes += _front_and_back(band, band.opening, top, first)
    return shapes


def _front_and_back(band: BandOnOpening, whole: FrontAndBack, top: Length, first: System) -> list[Shape]:
    half, half_back = whole.back / 2, f"{band.name}.back_opening/2"
    seam, other_seam = top + half, top + half + whole.front
    inside = (Side.CENTRE, Side.LEFT)
    back = f"half back\n{both_units(half, first)}"
    middle = _EDGE // 2
    shapes: list[Shape] = [
        Line(at(y=seam, right=-12), at(y=seam, right=_EDGE), Role.SEAM),
        Line(at(y=other_seam, right=-12), at(y=other_seam, right=_EDGE), Role.SEAM),
        _edge(top, half, half_back),
        _edge(seam, whole.front, f"{band.name}.front_opening"),
        _edge(other_seam, half, half_back),
        Label(back, at(y=top + half / 2, right=middle), inside, width=68),
        Label(f"front\n{both_units(whole.front, first)}", at(y=seam + whole.front / 2, right=middle), inside, width=68),
        Label(back, at(y=other_seam + half / 2, right=middle), inside, width=68),
    ]
    quarter, other_quarter = top + band.around / 4, top + band.around * 3 / 4
    for y in (quarter, other_quarter):
        shapes.append(Line(at(y=y, right=-9), at(y=y, right=_EDGE), Role.JOIN))
    if quarter == seam:
        shapes.append(Label("side quarter marks on the shoulder seams", at(y=seam, right=-12), (Side.LEFT,), width=88))
    else:
        ends = sorted((seam, quarter))
        number = Number(f"{band.name}.quarter_from_shoulder", ends[1] - ends[0])
        text = f"{both_units(number.value, first)}\n{_way(whole)} the shoulder seam"
        shapes.append(Dimension(at(y=ends[0]), at(y=ends[1]), number, text, (Side.LEFT,), right=-9, width=90))
        shapes.append(Label("shoulder seam", at(y=other_seam, right=-12), (Side.LEFT,), width=88))
    return shapes


def _way(whole: FrontAndBack) -> str:
    return "in front of" if whole.front > whole.back else "behind"


def _joins(band: BandOnOpening, opening_top: Length, band_top: Length) -> list[Shape]:
    shapes: list[Shape] = []
    for count, name in enumerate(band.marks):
        here, there = opening_top + band.around * count / 4, band_top + band.band * count / 4
        shapes.append(Line(at(y=here, right=_EDGE), at(y=there, right=_BAND), Role.JOIN))
        edge, band_edge = at(y=here, right=_EDGE), at(y=there, right=_BAND)
        shapes.append(Line(edge.moved(right=-_MARK), edge, Role.MARK))
        shapes.append(Line(band_edge, band_edge.moved(right=_MARK), Role.MARK))
        outer = at(y=there, right=_BAND_EDGE)
        shapes.append(Line(outer.moved(right=3), outer.moved(right=_TICK), Role.TICK))
        shapes.append(Label(name, outer.moved(right=_TICK), (Side.RIGHT,), width=86, gap=3))
    return shapes


def _quarters(band: BandOnOpening, opening_top: Length, band_top: Length, first: System) -> list[Shape]:
    """One quarter of the opening and, across from it, the same quarter of the band."""
    whole, part = band.around / 4, band.band / 4
    start, other_start = opening_top + whole * 2, band_top + part * 2
    one, other = Number(f"{band.name}.opening_quarter", whole), Number(f"{band.name}.band_quarter", part)
    text, other_text = f"quarter\n{both_units(whole, first)}", both_units(part, first)
    foot, other_foot = at(y=start), at(y=other_start, right=_BAND_EDGE)
    return [
        Dimension(foot, at(y=start + whole), one, text, (Side.LEFT,), right=-9, width=88),
        Dimension(
            other_foot, replace(other_foot, y=other_start + part), other, other_text,
            (Side.RIGHT,), right=9, width=76,
        ),
    ]  # fmt: skip


def _band(band: BandOnOpening, top: Length, first: System) -> list[Shape]:
    foot = top + band.band
    start, end = top - band.allowance, foot + band.allowance
    finished = Number(f"{band.name}.finished_length", band.band)
    whole = Number(f"{band.name}.cut_length", band.cut) if band.allowance else finished
    shapes: list[Shape] = [
        rectangle(at(y=start, right=_BAND), at(y=end, right=_BAND_EDGE), Role.RIGHT),
        Line(at(y=start, right=_BAND), at(y=end, right=_BAND), Role.CUT, whole),
        Line(at(y=top, right=_BAND_EDGE), at(y=foot, right=_BAND_EDGE), Role.CUT, finished),
    ]
    text = f"{band.band_called}\n{both_units(band.band, first)}"
    shapes.append(Label(text, at(y=start, right=(_BAND + _BAND_EDGE) // 2), _ABOVE, width=120, leader=False))
    for y in (top, foot):
        shapes.append(Line(at(y=y, right=_BAND), at(y=y, right=_BAND_EDGE), Role.SEAM))
    if band.allowance:
        for y in (start, end):
            shapes.append(Line(at(y=y, right=_BAND), at(y=y, right=_BAND_EDGE), Role.RAW))
        text = f"cut {both_units(band.cut, first)}\nwith two seam allowances"
        shapes.append(Label(text, at(y=end, right=(_BAND + _BAND_EDGE) // 2), (Side.BELOW,), width=160, leader=False))
    return shapes


def _edge(top: Length, value: Length, name: str) -> Line:
    return Line(at(y=top, right=_EDGE), at(y=top + value, right=_EDGE), Role.CUT, Number(name, value))
