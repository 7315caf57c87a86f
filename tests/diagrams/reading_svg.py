"""Reads a written picture back, as a person with a ruler would: lines, lengths, words, window."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass
from fractions import Fraction
from math import hypot

from hypothesis import strategies as st

from sitegen.diagrams import (
    CannotDraw,
    Drawing,
    Edge,
    TaperedPiece,
    band_on_opening,
    bias_strip,
    boxed_corner,
    dart_fold,
    gathers,
    hem_section,
    pleat_folds,
    size_chart,
    slash_and_spread,
    slash_at_lines,
    spaced_marks,
    stretch_gauge,
)
from sitegen.diagrams.text_boxes import DROP, RISE, UNIT, Box, text_width
from sitegen.quantities import ZERO, Length, System, given
from sitegen.sewing import bias
from sitegen.sewing.pleats import Pleat

SVG = "{http://www.w3.org/2000/svg}"
_PAIR = re.compile(r"(-?[\d.]+) (-?[\d.]+)")


@dataclass(frozen=True)
class Measured:
    """A line that stands for a number: its ends on the page, its true length, and the scale of its view."""

    name: str
    mm: Fraction
    start: tuple[float, float]
    end: tuple[float, float]
    scale: float

    @property
    def drawn_mm(self) -> float:
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1]) / self.scale


def parsed(svg: str) -> ET.Element:
    return ET.fromstring(svg)


def measured(svg: str) -> list[Measured]:
    """Every line with a true length, of every view."""
    found = []
    for view in parsed(svg).iter(f"{SVG}g"):
        if "data-scale" not in view.attrib:
            continue
        for line in view.iter(f"{SVG}line"):
            start, end = ((float(line.attrib[f"x{n}"]), float(line.attrib[f"y{n}"])) for n in (1, 2))
            mm, scale = Fraction(line.attrib["data-mm"]), float(view.attrib["data-scale"])
            found.append(Measured(line.attrib["data-name"], mm, start, end, scale))
    return found


def named(svg: str) -> dict[str, Measured]:
    return {line.name: line for line in measured(svg)}


def spots(svg: str, role: str) -> list[list[tuple[float, float]]]:
    """The spots of every path of a role, in order."""
    paths = parsed(svg).iter(f"{SVG}path")
    return [spots_of(path.attrib["d"]) for path in paths if path.attrib.get("class") == f"d-{role}"]


def spots_of(drawn: str) -> list[tuple[float, float]]:
    """The spots through which a path runs; those of an arc are its ends."""
    ends = re.sub(r"A\S+ \S+ 0 0 [01] ", "L", drawn)
    return [(float(x), float(y)) for x, y in _PAIR.findall(ends)]


def window(svg: str) -> Box:
    left, top, width, height = (round(float(part) * UNIT) for part in parsed(svg).attrib["viewBox"].split())
    return Box(left, top, left + width, top + height)


def words(svg: str) -> list[str]:
    texts = parsed(svg).iter(f"{SVG}text")
    return [" ".join(line.text or "" for line in text.iter(f"{SVG}tspan")) for text in texts]


def text_boxes(svg: str) -> list[tuple[str, Box]]:
    """For every text the box that its lines take at most, from where they are written."""
    return [_text_box(text) for text in parsed(svg).iter(f"{SVG}text")]


def _text_box(text: ET.Element) -> tuple[str, Box]:
    strong, anchor = "d-strong" in text.attrib["class"], text.attrib["text-anchor"]
    boxes, said = [], []
    for line in text.iter(f"{SVG}tspan"):
        width = text_width(line.text or "", strong=strong)
        x, y = (round(float(line.attrib[axis]) * UNIT) for axis in "xy")
        left = {"start": x, "middle": x - width // 2, "end": x - width}[anchor]
        boxes.append(Box(left, y - RISE, left + width, y + DROP))
        said.append(line.text or "")
    return " ".join(said), Box(
        min(box.left for box in boxes), boxes[0].top, max(box.right for box in boxes), boxes[-1].bottom
    )


def lengths(least: int, most: int) -> st.SearchStrategy[Length]:
    """Lengths between two numbers of millimetres: round in inches, round in millimetres, or neither."""
    parts = st.sampled_from((Fraction(127, 40), Fraction(1), Fraction(1, 3)))
    return parts.flatmap(
        lambda part: st.integers(int(least / part) + 1, int(most / part)).map(lambda count: Length(part * count))
    )


systems = st.sampled_from(System)


@st.composite
def bands(draw: st.DrawFn) -> Drawing:
    front, back = draw(lengths(30, 900)), draw(lengths(30, 900))
    opening = draw(st.sampled_from((band_on_opening.FrontAndBack(front, back), front)))
    allowance = draw(st.sampled_from((ZERO, Length(Fraction("9.525")), Length(Fraction(6)))))
    called = draw(st.sampled_from(("neckband", "leg cuff", "hem band of the skirt")))
    band = band_on_opening.BandOnOpening("band", called, "neckline", opening, draw(lengths(30, 1200)), allowance)
    return band_on_opening.draw(band, first=draw(systems))


@st.composite
def changes(draw: st.DrawFn) -> Drawing:
    while True:
        piece = (draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(90, 1200)))
        amount = draw(lengths(3, 300)) * draw(st.sampled_from((1, -1)))
        left, cap, line = draw(st.sampled_from(Edge)), draw(st.booleans()), draw(lengths(10, 1100))
        try:
            tapered = TaperedPiece(*piece, left, cap)
            change = slash_and_spread.SlashAndSpread("change", "sleeve", "sleeve", tapered, line, amount)
        except CannotDraw:
            continue
        return slash_and_spread.draw(change, first=draw(systems))


@st.composite
def hems(draw: st.DrawFn) -> Drawing:
    while True:
        turn, stitch_line = draw(lengths(6, 120)), draw(lengths(3, 120))
        fold_under = draw(st.one_of(st.just(ZERO), lengths(3, 40)))
        gap = draw(st.one_of(st.just(ZERO), lengths(1, 6)))
        try:
            hem = hem_section.HemSection(
                "lower", "lower hem", turn, stitch_line, fold_under, gap, draw(st.sampled_from(hem_section.Stitch))
            )
        except CannotDraw:
            continue
        return hem_section.draw(hem, first=draw(systems))


@st.composite
def changes_at_lines(draw: st.DrawFn) -> Drawing:
    while True:
        piece = (draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(60, 900)), draw(lengths(300, 1200)))
        left, cap = draw(st.sampled_from(Edge)), draw(st.booleans())
        levels = sorted(draw(st.lists(lengths(10, 1100), min_size=1, max_size=4, unique=True)))
        amounts = draw(st.lists(lengths(3, 60), min_size=len(levels), max_size=len(levels)))
        signs = draw(st.lists(st.sampled_from((1, -1)), min_size=len(levels), max_size=len(levels)))
        lines = [
            slash_at_lines.LineAcross(level, amount * sign)
            for level, amount, sign in zip(levels, amounts, signs, strict=True)
        ]
        try:
            change = slash_at_lines.SlashAtLines("change", "leg", TaperedPiece(*piece, left, cap), tuple(lines))
        except CannotDraw:
            continue
        return slash_at_lines.draw(change, first=draw(systems))


@st.composite
def darts(draw: st.DrawFn) -> Drawing:
    while True:
        width, length, leg = draw(lengths(5, 120)), draw(lengths(10, 300)), draw(lengths(10, 320))
        called, edge = draw(st.sampled_from((("bust dart", "front side"), ("back waist dart", "back shoulder blade"))))
        try:
            dart = dart_fold.DartFold("front.bust", called, edge, width, length, leg, draw(st.integers(1, 3)))
        except CannotDraw:
            continue
        return dart_fold.draw(dart, first=draw(systems))


@st.composite
def corners(draw: st.DrawFn) -> Drawing:
    while True:
        tip, allowance = draw(lengths(10, 200)), draw(st.one_of(st.just(ZERO), lengths(5, 25)))
        side, bottom = (draw(st.one_of(st.just(ZERO), lengths(5, 25))) for _ in range(2))
        cut = boxed_corner.CutOut(tip + side - allowance, tip + bottom - allowance)
        try:
            corner = boxed_corner.BoxedCorner(
                "corners", "corners of the pouch", tip, allowance, draw(st.sampled_from((cut, None)))
            )
        except CannotDraw:
            continue
        return boxed_corner.draw(corner, first=draw(systems))


@st.composite
def gauges(draw: st.DrawFn) -> Drawing:
    while True:
        cloth = draw(st.sampled_from(("rib", "cotton jersey with a little elastane", "swimwear knit")))
        own = Fraction(draw(st.integers(1, 150)), 100)
        try:
            gauge = stretch_gauge.StretchGauge("main", cloth, draw(lengths(20, 85)), own)
        except CannotDraw:
            continue
        return stretch_gauge.draw(gauge, first=draw(systems))


@st.composite
def strips(draw: st.DrawFn) -> Drawing:
    while True:
        side, width, allowance = (given("length", draw(lengths(*ends))) for ends in ((40, 1200), (5, 120), (3, 20)))
        try:
            strip = bias.diagonal("strip", bias.joined_side("joined", side, allowance))
            picture = bias_strip.BiasStrip(
                "edging",
                draw(st.sampled_from(("edging", "binding of the armholes"))),
                side.length,
                width.length,
                strip.length,
                int(bias.whole_strips("strips", side, width, allowance).number),
                bias.left_over("left over", side, width, allowance).length,
                bias.sewn_length("sewn", side, width, allowance).length,
            )
        except ValueError:
            continue
        return bias_strip.draw(picture, first=draw(systems))


@st.composite
def marks(draw: st.DrawFn) -> Drawing:
    count, gap, ring = draw(st.integers(1, 60)), draw(lengths(5, 200)), draw(st.booleans())
    before, after = (draw(st.one_of(st.just(ZERO), lengths(3, 200))) for _ in range(2))
    places = tuple(before + gap * mark for mark in range(count))
    whole = places[-1] + (gap if ring or count == 1 else after)
    called = draw(st.sampled_from(("buttons", "snaps of the crotch seam")))
    picture = spaced_marks.SpacedMarks("buttons", called, whole, places, gap, ring)
    return spaced_marks.draw(picture, first=draw(systems))


@st.composite
def gathered(draw: st.DrawFn) -> Drawing:
    while True:
        rows = tuple(sorted(draw(st.lists(lengths(3, 25), max_size=3, unique=True))))
        longer = draw(st.sampled_from(("front top and back top", "ruffle")))
        allowance = draw(st.one_of(st.just(ZERO), lengths(5, 25))) if rows else ZERO
        try:
            picture = gathers.Gathers(
                "top", longer, "waistband lower", draw(lengths(60, 3000)), draw(lengths(50, 1200)), rows, allowance
            )
        except CannotDraw:
            continue
        return gathers.draw(picture, first=draw(systems))


@st.composite
def pleated(draw: st.DrawFn) -> Drawing:
    while True:
        depth, seen, count = draw(lengths(2, 90)), draw(st.one_of(st.none(), lengths(2, 400))), draw(st.integers(1, 12))
        whole = draw(st.sampled_from(((None, None), (depth * 40, depth * 20))))
        try:
            picture = pleat_folds.PleatFolds(
                "pleats", "front pleats", draw(st.sampled_from(Pleat)), count, depth, seen, *whole
            )
        except CannotDraw:
            continue
        return pleat_folds.draw(picture, first=draw(systems))


@st.composite
def charts(draw: st.DrawFn) -> Drawing:
    sizes = ("XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL")[: draw(st.integers(2, 8))]

    def row() -> tuple[Length, ...]:
        return tuple(draw(lengths(150, 1800)) for _ in sizes)

    names = ("bust", "full hip", "back waist length")[: draw(st.integers(1, 3))]
    measures = tuple(
        size_chart.Measure(f"body.{name}", name, row(), *draw(st.sampled_from((("round", row()), ()))))
        for name in names
    )
    return size_chart.draw(size_chart.SizeChart("Lantern tee", sizes, measures), first=draw(systems))


worked_pictures = st.one_of(gauges(), strips(), marks(), gathered(), pleated(), charts())
pictures = st.one_of(worked_pictures, bands(), changes(), hems(), changes_at_lines(), darts(), corners())
