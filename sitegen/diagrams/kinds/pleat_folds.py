"""Pleats: their fold and placement lines on the flat cloth, and one of them folded, seen from the edge."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from sitegen.diagrams.drawing import (
    PAGE_WIDTH,
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
from sitegen.diagrams.pleat_lines import LINES, PITCH, PleatLines, folded
from sitegen.diagrams.words import both_units, capital, plain_both_units
from sitegen.quantities import ZERO, Length, System
from sitegen.sewing import pleats as pleating

_ROOM = 250
_MOVE_ROOM = 88
_LEAST_MOVE = 26
_BESIDE = 36
_TALL = 96
_BELOW = 196
_DEPTH_ROOM = 66
_SEEN = 56


@dataclass(frozen=True, slots=True)
class PleatFolds:
    """Equal pleats in a row: their kind, how many, how deep each fold is, and what is seen of each once folded.

    ``seen`` is the width that one pleat covers of the finished width, ``before`` and ``after`` the whole width flat and
    folded; None where they are not known. ``name`` is that of the pleats in references. Raises ``CannotDraw`` for no
    pleats or folds of no depth, and for box pleats that would lie over each other.
    """

    name: str
    called: str
    kind: pleating.Pleat
    count: int
    depth: Length
    seen: Length | None = None
    before: Length | None = None
    after: Length | None = None

    def __post_init__(self) -> None:
        if self.count < 1 or self.depth <= ZERO:
            raise CannotDraw("pleats need a number and a depth above nothing")
        if self.seen is not None and self.seen < self.depth * self.lines.hidden_between:
            raise CannotDraw("the box pleats would lie over each other")

    @property
    def lines(self) -> PleatLines:
        """The lines of one pleat."""
        return LINES[self.kind]

    @property
    def move(self) -> Length:
        """From a line to the one that it is brought to."""
        return self.depth * 2

    @property
    def take_up(self) -> Length:
        """What one pleat hides."""
        return self.move * self.kind.folds

    @property
    def between(self) -> Length | None:
        """From the last line of one pleat to the first line of the next on the flat cloth; None for a single pleat."""
        if self.count == 1 or self.seen is None:
            return None
        return self.seen - self.depth * self.lines.hidden_between

    @property
    def shown(self) -> tuple[Length, ...]:
        """Where each pleat begins that is shown on the flat cloth: two neighbours, or one where two cannot be seen."""
        extent = self.depth * self.lines.extent
        if self.between is None or fitting_scale(extent * 2 + self.between, _ROOM) * self.move.mm < _LEAST_MOVE:
            return (ZERO,)
        return (ZERO, extent + self.between)

    @property
    def across(self) -> Length:
        """The flat cloth from the first line that is shown to the last one."""
        return self.shown[-1] + self.depth * self.lines.extent


def describe(pleats: PleatFolds, *, first: System = System.INCHES) -> str:
    """The picture in words, with its numbers."""

    def say(value: Length) -> str:
        return plain_both_units(value, first)

    many = f"{pleats.count} {pleats.kind.word}s" if pleats.count > 1 else f"A {pleats.kind.word}"
    parts = [
        f"{many} on the flat cloth: {_how(pleats)}, {say(pleats.move)} away.",
        f"Each takes up {say(pleats.take_up)}.",
    ]
    if pleats.between is not None:
        parts.append(f"Between the lines of two pleats lie {say(pleats.between)}.")
    parts.append(f"Folded, seen from the edge and enlarged: each fold is {say(pleats.depth)} deep.")
    if pleats.before is not None and pleats.after is not None:
        parts.append(f"The whole width is {say(pleats.before)} flat and {say(pleats.after)} folded.")
    parts.append("Widths are to scale; the thickness of the cloth is not.")
    return " ".join(parts)


def _how(pleats: PleatFolds) -> str:
    return {
        pleating.Pleat.KNIFE: "the fold line is brought to the placement line",
        pleating.Pleat.BOX: "two fold lines are brought to the placement lines on either side",
        pleating.Pleat.INVERTED: "two fold lines are brought to the placement line between them",
        pleating.Pleat.TUCK: "the cloth is folded along the middle and the two stitching lines are sewn together",
    }[pleats.kind]


def draw(pleats: PleatFolds, *, first: System = System.INCHES) -> Drawing:
    """The flat cloth with its lines above, and one pleat folded below, enlarged."""
    scale = min(fitting_scale(pleats.across, _ROOM), fitting_scale(pleats.move, _MOVE_ROOM))
    left = (PAGE_WIDTH - pleats.across.mm * scale) / 2
    flat = View(scale, tuple(_flat(pleats, first)), right=left)
    title = capital(f"{pleats.called}: marked and folded")
    return Drawing(title, describe(pleats, first=first), (flat, _section(pleats, first)))


def _flat(pleats: PleatFolds, first: System) -> list[Shape]:
    """The cloth with the lines of the pleats that are shown, and an arrow for every move."""
    begin, end = at(right=-_BESIDE), at(pleats.across, right=_BESIDE)
    low_begin, low_end = begin.moved(down=_TALL), end.moved(down=_TALL)
    middle = pleats.across / 2
    shapes: list[Shape] = [
        Label("marked on the flat cloth", at(middle), (Side.ABOVE,), 300, 40, True, leader=False),
        rectangle(begin, low_end, Role.RIGHT),
        Line(begin, end, Role.CUT),
        Line(low_begin, low_end, Role.BREAK),
        Line(begin, low_begin, Role.BREAK),
        Line(end, low_end, Role.BREAK),
    ]
    for start in pleats.shown:
        shapes += _lines(pleats, start, named=start == ZERO)
    shapes += _measures(pleats, first)
    return shapes


def _lines(pleats: PleatFolds, start: Length, *, named: bool) -> list[Shape]:
    lines, depth = pleats.lines, pleats.depth
    place, role = ("stitch", Role.STITCH) if pleats.kind is pleating.Pleat.TUCK else ("place", Role.SEAM)
    shapes: list[Shape] = []
    for steps, words, kind in ((lines.folds, "fold", Role.FOLD), (lines.places, place, role)):
        for step in steps:
            x = start + depth * step
            shapes.append(Line(at(x), at(x, down=_TALL), kind))
            if named:
                shapes.append(Label(words, at(x), (Side.ABOVE,), gap=4))
    for here, there in lines.moves:
        ahead = 4 if there > here else -4
        shapes.append(
            Line(
                at(start + depth * here, right=ahead, down=_TALL // 2),
                at(start + depth * there, right=-ahead, down=_TALL // 2),
                Role.ARROW,
            )
        )
    return shapes


def _measures(pleats: PleatFolds, first: System) -> list[Shape]:
    """One move, what lies between two pleats, and what each takes up."""
    here, there = sorted(pleats.lines.moves[0])
    halves = "/2" if pleats.kind.folds == 2 else ""
    move = Number(f"{pleats.name}.take_up{halves}", pleats.move)
    begin, end = (at(pleats.depth * step, down=_TALL) for step in (here, there))
    below = (Side.BELOW,)
    shapes: list[Shape] = [
        Dimension(begin, end, move, f"twice the depth\n{both_units(pleats.move, first)}", below, down=10, width=120)
    ]
    if pleats.between and len(pleats.shown) > 1:
        name = f"{pleats.name}.between" if pleats.lines.hidden_between else f"{pleats.name}.visible"
        stop = pleats.shown[1]
        shapes.append(
            Dimension(
                at(stop - pleats.between, down=_TALL), at(stop, down=_TALL), Number(name, pleats.between),
                f"between\n{both_units(pleats.between, first)}", below, down=10, width=100,
            )
        )  # fmt: skip
    text = f"each of {pleats.count} takes up" if pleats.count > 1 else "it takes up"
    whole = f"{text} {both_units(pleats.take_up, first)}"
    spot = at(pleats.across / 2, down=_TALL + 52)
    return [*shapes, Label(whole, spot, below, 320, 0, True, leader=False)]


def _section(pleats: PleatFolds, first: System) -> View:
    """One pleat folded: a line for the cloth, its layers a little apart."""
    wide = pleats.depth * (1 if pleats.kind.folds == 1 else 2)
    middle, foot = wide / 2, 2 * PITCH
    scale = fitting_scale(pleats.depth, _DEPTH_ROOM)
    shapes: list[Shape] = [
        Label("folded, seen from the edge, enlarged", at(middle), (Side.ABOVE,), 300, 48, True, leader=False),
        folded(pleats.kind, pleats.depth, _SEEN),
        Dimension(
            at(), at(pleats.depth), Number(f"{pleats.name}.depth", pleats.depth),
            f"depth {both_units(pleats.depth, first)}", (Side.ABOVE,), down=-14, width=150,
        ),
        Label("right side of the cloth above", at(middle, down=foot), (Side.BELOW,), 300, 10, leader=False),
    ]  # fmt: skip
    if pleats.kind is pleating.Pleat.TUCK:
        stitches = at(pleats.depth, right=-PITCH // 2)
        shapes.append(Line(stitches.moved(down=-5), stitches.moved(down=PITCH + 5), Role.THREAD))
        shapes.append(Label("stitches", at(pleats.depth, down=PITCH + 2), (Side.RIGHT,), gap=8, leader=False))
    if pleats.before is not None and pleats.after is not None:
        text = f"{both_units(pleats.before, first)} flat, {both_units(pleats.after, first)} folded"
        shapes.append(Label(text, at(middle, down=foot), (Side.BELOW,), 320, 32, True, leader=False))
    return View(scale, tuple(shapes), right=(Fraction(PAGE_WIDTH) - wide.mm * scale) / 2, down=_BELOW + 60)
