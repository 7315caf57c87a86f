"""The picture of pleats: fold and placement lines twice a depth apart, and a folded pleat that hides what it takes."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from diagrams.reading_svg import SVG, named, parsed, spots, spots_of, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.pleat_folds import PleatFolds, describe, draw
from sitegen.quantities import ZERO, Length, System, cm, given, inches
from sitegen.sewing import pleats as pleating

Pleat = pleating.Pleat
POCKET = PleatFolds("pocket_pleat", "pocket pleat", Pleat.INVERTED, 1, cm(1), cm(9), cm(13), cm(9))
KNIFE = PleatFolds("skirt", "skirt pleats", Pleat.KNIFE, 6, inches(1), inches(2), inches(24), inches(12))
BOX = PleatFolds("skirt", "skirt pleats", Pleat.BOX, 4, inches(1), inches(5))
TUCKS = PleatFolds("tucks", "pin tucks", Pleat.TUCK, 8, cm("0.3"), cm(2))
EVERY = pytest.mark.parametrize("pleats", [POCKET, KNIFE, BOX, TUCKS])


def level(svg: str, role: str) -> list[float]:
    """How far across the page the upright lines of a role are."""
    return [line[0][0] for line in spots(svg, role) if len(line) == 2 and line[0][0] == line[1][0]]


@EVERY
def test_flat_pleat_takes_what_the_sum_says(pleats: PleatFolds) -> None:
    taken = pleating.take_up("take up", given("depth", pleats.depth), pleats.kind)
    assert pleats.take_up == taken.length
    svg = write_svg(draw(pleats), "p")
    arrows = [
        spots_of(path.attrib["d"])[:2]
        for path in parsed(svg).iter(f"{SVG}path")
        if path.attrib.get("class") == "d-arrow"
    ]
    unit = float(parsed(svg).attrib["data-scale"])
    assert len(arrows) == pleats.kind.folds * len(pleats.shown)
    for start, end in arrows:
        assert (abs(end[0] - start[0]) + 8) / unit == pytest.approx(float(pleats.depth.mm) * 2, abs=0.05)


def test_inverted_pleat_brings_both_folds_to_the_line_between() -> None:
    svg = write_svg(draw(POCKET), "p")
    left, right = level(svg, "fold")
    (middle,) = level(svg, "seam")
    assert middle - left == pytest.approx(right - middle, abs=0.01)
    assert named(svg)["pocket_pleat.take_up/2"].mm == 20


def test_box_pleat_turns_its_folds_away_from_each_other() -> None:
    svg = write_svg(draw(BOX), "p")
    folds, places = level(svg, "fold"), level(svg, "seam")
    assert places[0] < folds[0] < folds[1] < places[1]
    assert named(svg)["skirt.between"].mm == inches(3).mm


def test_two_neighbours_lie_what_is_seen_apart() -> None:
    svg = write_svg(draw(KNIFE), "p")
    places = level(svg, "seam")
    unit = float(parsed(svg).attrib["data-scale"])
    assert (places[1] - places[0]) / unit == pytest.approx(25.4 * 4, abs=0.05), "seen, and taken up"
    assert named(svg)["skirt.visible"].mm == inches(2).mm


def test_tuck_is_folded_midway_between_its_stitching_lines_and_sewn() -> None:
    svg = write_svg(draw(TUCKS), "p")
    fold, (first, second, *_) = level(svg, "fold")[0], level(svg, "stitch")
    assert fold - first == pytest.approx(second - fold, abs=0.01)
    assert spots(svg, "thread")
    assert {"stitch", "stitches"} <= set(words(svg))


@EVERY
def test_folded_cloth_is_as_long_as_what_is_seen_and_taken_up(pleats: PleatFolds) -> None:
    """Along the drawn line, bends counted by how far they reach, the hidden cloth is the take-up."""
    svg = write_svg(draw(pleats), "p")
    (course,) = [path.attrib["d"] for path in parsed(svg).iter(f"{SVG}path") if path.attrib.get("class") == "d-trued"]
    unit = named(svg)[f"{pleats.name}.depth"].scale
    ends = spots_of(course)
    runs = [abs(end[0] - start[0]) for start, end in pairwise(ends) if start[1] == end[1]]
    bends = len(re.findall("A", course)) * 2 * 6
    apart = 0 if pleats.kind.folds == 1 else 4
    shown = ends[-1][0] - ends[0][0]
    assert (sum(runs) + bends + apart - shown) / unit == pytest.approx(float(pleats.take_up.mm), abs=0.05)


@EVERY
def test_depth_is_measured_between_the_folds_of_the_folded_cloth(pleats: PleatFolds) -> None:
    svg = write_svg(draw(pleats), "p")
    depth = named(svg)[f"{pleats.name}.depth"]
    (course,) = [path.attrib["d"] for path in parsed(svg).iter(f"{SVG}path") if path.attrib.get("class") == "d-trued"]
    bends = [spots_of(course)[place] for place, step in enumerate(re.findall("[MLA]", course)) if step == "A"]
    assert depth.mm == pleats.depth.mm
    for edge in (depth.start[0], depth.end[0]):
        assert any(abs(abs(bend[0] - edge) - 6) <= 1.01 for bend in bends), "a bend reaches 6 page units to its fold"


def test_description_tells_what_to_do_and_every_number() -> None:
    told = describe(POCKET, first=System.CENTIMETRES)
    for part in (
        "two fold lines are brought to the placement line between them, 2 cm",
        "Each takes up 4 cm",
        "each fold is 1 cm",
        "13 cm (5 1/8 in) flat and 9 cm (3 9/16 in) folded",
        "the thickness of the cloth is not",
    ):
        assert part in told


def test_pleats_too_small_beside_what_is_seen_are_shown_alone() -> None:
    shallow = PleatFolds("skirt", "skirt pleats", Pleat.KNIFE, 2, cm("0.3"), cm(40))
    assert len(shallow.shown) == 1
    assert len(KNIFE.shown) == 2


@pytest.mark.parametrize(
    ("kind", "count", "depth", "seen"),
    [(Pleat.KNIFE, 0, cm(1), cm(3)), (Pleat.KNIFE, 3, ZERO, cm(3)), (Pleat.BOX, 3, cm(2), cm(3))],
)
def test_pleats_that_make_no_sense_cannot_be_drawn(kind: Pleat, count: int, depth: Length, seen: Length) -> None:
    with pytest.raises(CannotDraw):
        PleatFolds("pleats", "pleats", kind, count, depth, seen)
