"""The plan of a piece: cut length and width true, seam lines as far inside as the allowances reach."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from diagrams.reading_svg import named, parsed, spots, words
from diagrams.sewn_pictures import band

from sitegen.diagrams import CannotDraw, Edge, TaperedPiece, write_svg
from sitegen.diagrams.drawing import Role
from sitegen.diagrams.geometry import Segment, crosses, meet
from sitegen.diagrams.kinds.piece_plan import CutOff, Ends, PiecePlan, PlanSide, describe, draw
from sitegen.diagrams.labels import Layout, laid_out
from sitegen.diagrams.on_page import DimensionOnPage, LineOnPage
from sitegen.quantities import ZERO, Length, System, inches, mm

SEAM = PlanSide("side", Ends.SEAM, inches("1/2"), "single")
HEM = PlanSide("hem", Ends.TURNED, inches(2))
POCKET = PiecePlan(
    "pocket", "pocket", "1", TaperedPiece(inches(8), inches(8), inches(10), inches(10), Edge.STRAIGHT),
    {"top": HEM, "bottom": SEAM, "left": SEAM, "right": SEAM},
)  # fmt: skip
SLEEVE = PiecePlan(
    "sleeve", "sleeve", "2", TaperedPiece(inches(17), inches(9), inches(18), inches(18)),
    {"left": SEAM, "right": SEAM, "bottom": PlanSide("wrist", Ends.SEAM, inches("1/2"))},
)  # fmt: skip
HALF = PiecePlan(
    "front", "front", "1 on fold", TaperedPiece(inches(9), inches(9), inches(24), inches(24), Edge.FOLD),
    {"left": PlanSide("fold", Ends.FOLD), "right": SEAM}, halved=True,
)  # fmt: skip


def scale(svg: str) -> float:
    return float(parsed(svg).attrib["data-scale"])


def test_cut_length_and_width_are_measured_exactly() -> None:
    assert {name: line.mm for name, line in named(write_svg(draw(POCKET), "p")).items()} == {
        "pocket.cut_length": inches(10).mm,
        "pocket.cut_width": inches(8).mm,
    }


def test_half_on_the_fold_is_measured_as_half_of_the_cut_width() -> None:
    svg = write_svg(draw(HALF), "p")
    assert named(svg)["front.cut_width/2"].mm == inches(9).mm
    assert "fold" in words(svg)
    assert any(said.startswith("half of the cut width") for said in words(svg))
    assert len(spots(svg, "fold")) == 1
    assert "18 in (45.5 cm) wide" in describe(HALF)


def test_seam_lines_lie_one_allowance_inside_and_the_hem_is_drawn_otherwise() -> None:
    svg = write_svg(draw(POCKET), "p")
    corner = named(svg)["pocket.cut_length"].start[1]
    left = named(svg)["pocket.cut_width"].start[0]
    seams, (hem,) = spots(svg, "seam"), spots(svg, "old")
    assert len(seams) == 3
    assert (hem[0][1] - corner) / scale(svg) == pytest.approx(50.8, abs=0.01)
    uprights = sorted((line[0][0] - left) / scale(svg) for line in seams if line[0][0] == line[-1][0])
    assert uprights == pytest.approx([12.7, 203.2 - 12.7], abs=0.02)
    (lower,) = [line for line in seams if line[0][1] == line[-1][1]]
    assert (lower[0][1] - corner) / scale(svg) == pytest.approx(254 - 12.7, abs=0.02)


def test_seam_line_of_a_sloping_side_keeps_its_distance_square_to_the_side() -> None:
    svg = write_svg(draw(SLEEVE), "p")
    sides = [line for line in spots(svg, "cut") if line[0][1] != line[-1][1]]
    seams = [line for line in spots(svg, "seam") if line[0][1] != line[-1][1]]
    assert len(sides) == len(seams) == 2
    for (x1, y1), (x2, y2) in [(side[0], side[-1]) for side in sides]:
        near = min(_distance(seam[-1], (x1, y1), (x2, y2)) for seam in seams)
        assert near / scale(svg) == pytest.approx(12.7, rel=0.002)


def _distance(spot: tuple[float, float], one: tuple[float, float], other: tuple[float, float]) -> float:
    across, down = other[0] - one[0], other[1] - one[1]
    return abs(across * (spot[1] - one[1]) - down * (spot[0] - one[0])) / hypot(across, down)


def test_sides_are_named_with_what_they_take_and_their_notch() -> None:
    said = [each.replace("\u00a0", " ") for each in words(write_svg(draw(POCKET), "p"))]
    assert "hem 2 in (5.1 cm)" in said
    assert said.count("side ½ in (1.3 cm) single notch") == 2, "at the lower edge, and once for both sides"
    assert "right: side, takes 1/2 in (1.3 cm), single notch" in describe(POCKET)


def test_band_lies_across_with_its_fold_and_quarter_marks() -> None:
    plan = band(inches("65/4"), inches("9/4"))
    svg = write_svg(draw(plan), "p")
    lines = named(svg)
    assert lines["neckband.cut_length"].mm == inches("65/4").mm
    assert lines["neckband.cut_length"].start[1] == lines["neckband.cut_length"].end[1]
    assert lines["neckband.band_quarter"].mm == inches("31/8").mm
    begin = lines["neckband.cut_length"].start[0]
    marks = sorted({round((line[0][0] - begin) / scale(svg), 1) for line in spots(svg, "mark")})
    assert marks == pytest.approx([9.5, 107.9, 206.4, 304.8, 403.2], abs=0.06)
    (fold,) = spots(svg, "fold")
    assert fold[0][1] == pytest.approx((lines["neckband.cut_width"].start[1] + lines["neckband.cut_width"].end[1]) / 2)


def test_grain_line_of_a_bias_piece_is_at_45_degrees() -> None:
    bias = PiecePlan(
        "square", "square", "1", TaperedPiece(mm(300), mm(300), mm(300), mm(300), Edge.STRAIGHT), bias=True
    )
    ((one, other, *_),) = spots(write_svg(draw(bias), "p"), "grain")
    assert other[0] - one[0] == pytest.approx(one[1] - other[1])
    ((one, other, *_),) = spots(write_svg(draw(POCKET), "p"), "grain")
    assert one[0] == other[0]


def test_corners_that_are_cut_out_are_left_out_of_the_outline() -> None:
    shape = TaperedPiece(inches(16), inches(16), inches(7), inches(7), Edge.STRAIGHT)
    sides = dict.fromkeys(("top", "bottom", "left", "right"), SEAM)
    plan = PiecePlan("base", "base", "2", shape, sides, cut_off=CutOff(inches(2), inches("3/2")))
    svg = write_svg(draw(plan), "p")
    (outline,) = spots(svg, "cut")
    assert len(outline) == 8
    xs, ys = sorted({round(x, 1) for x, _ in outline}), sorted({round(y, 1) for _, y in outline})
    assert (xs[1] - xs[0]) / scale(svg) == pytest.approx(50.8, rel=0.01)
    assert (ys[2] - ys[1]) / scale(svg) == pytest.approx(38.1, rel=0.01)
    (lower,) = [line for line in spots(svg, "seam") if line[0][1] == line[-1][1] and line[0][1] > ys[1]]
    assert [round(x, 1) for x, _ in lower] == [xs[1], xs[2]], "no seam line where there is no cloth"
    assert all(max(y for _, y in line) <= ys[1] + 0.1 for line in spots(svg, "seam") if line[0][0] == line[-1][0])
    assert "2 in (5.1 cm) by 1 1/2 in (3.8 cm) are cut out of both lower corners." in describe(plan)


@pytest.mark.parametrize(
    ("width", "length", "taken", "cut"),
    [
        (mm(100), mm(100), mm(50), None),
        (mm(1), mm(100), ZERO, None),
        (mm(100), mm(100), ZERO, CutOff(mm(50), mm(10))),
        (mm(100), mm(100), ZERO, CutOff(mm(10), mm(100))),
    ],
)
def test_plan_of_which_nothing_is_left_cannot_be_drawn(
    width: Length, length: Length, taken: Length, cut: CutOff | None
) -> None:
    sides = dict.fromkeys(("left", "right"), PlanSide("side", Ends.SEAM, taken))
    with pytest.raises(CannotDraw):
        PiecePlan("p", "p", "1", TaperedPiece(width, width, length, length, Edge.STRAIGHT), sides, cut_off=cut)


@pytest.mark.parametrize("cut", [None, CutOff(inches(2), inches(2))])
@pytest.mark.parametrize("notch", ["", "double"])
def test_measure_of_a_low_piece_leaves_room_for_the_name_of_its_lower_edge(cut: CutOff | None, notch: str) -> None:
    """The name has its place at the edge, and no leader crosses a measure."""
    base = PiecePlan(
        "base", "base", "2", TaperedPiece(inches(16), inches(16), inches(7), inches(7), Edge.STRAIGHT),
        {which: PlanSide(which, Ends.SEAM, inches("1/2"), notch) for which in ("top", "bottom")}
        | dict.fromkeys(("left", "right"), SEAM),
        cut_off=cut,
    )  # fmt: skip
    found = laid_out(draw(base))
    measures = [
        line
        for view in found.views
        for shape in view.shapes
        if isinstance(shape, DimensionOnPage)
        for line in shape.segments
    ]
    (lower,) = [label for label in found.labels if label.label.text.startswith("bottom")]
    assert lower.leader is None
    assert not [label for label in found.labels for line in measures if label.leader and meet(label.leader, line)]
    assert not [label.label.text for label in found.labels for line in measures if crosses(line, label.box)]


def grain_lines(found: Layout) -> list[Segment]:
    return [
        line
        for view in found.views
        for shape in view.shapes
        if isinstance(shape, LineOnPage) and shape.shape.role is Role.GRAIN
        for line in shape.segments
    ]


@pytest.mark.parametrize("lower", ["base", "lower edge of the pocket"])
@pytest.mark.parametrize("first", list(System))
def test_grain_line_ends_above_a_name_that_stands_on_the_cloth(lower: str, first: System) -> None:
    low = {**POCKET.sides, "bottom": PlanSide(lower, Ends.SEAM, inches("1/2"))}
    found = laid_out(draw(replace(POCKET, sides=low), first=first))
    (name,) = [label for label in found.labels if label.label.text.startswith(lower)]
    grain = grain_lines(found)
    assert grain
    assert not [line for line in grain if crosses(line, name.box)]


def tapered_leg(width: int, bottom: int, lower: str, left: Edge, top: str = "waist") -> PiecePlan:
    shape = TaperedPiece(inches(width), inches(bottom), inches(28), inches(38), left)
    sides = {
        "top": PlanSide(top, Ends.TURNED, inches("9/8")),
        "bottom": PlanSide(lower, Ends.TURNED, inches(1)),
        "left": SEAM,
        "right": SEAM,
    }
    return PiecePlan("leg", "leg", "2 mirrored", shape, sides)


@pytest.mark.parametrize("left", [Edge.SLOPING, Edge.STRAIGHT])
@pytest.mark.parametrize("lower", ["leg hem", "hem at the lower edge of the leg"])
@pytest.mark.parametrize("width", [14, 20, 26])
@pytest.mark.parametrize("bottom", range(8, 22, 2))
def test_name_of_a_narrow_lower_edge_lies_on_no_grain_line(width: int, bottom: int, lower: str, left: Edge) -> None:
    """Nor does its leader cross other words; it stands beside the piece where the cloth has no room for it."""
    found = laid_out(draw(tapered_leg(width, bottom, lower, left)))
    grain = grain_lines(found)
    assert grain
    assert not [label.label.text for label in found.labels for line in grain if crosses(line, label.box)]
    crossed = [
        (label.label.text, other.label.text)
        for label in found.labels
        for other in found.labels
        if label.leader and label is not other and crosses(label.leader, other.box)
    ]
    assert not crossed


@pytest.mark.parametrize("top", ["waist", "a waist that is told in many words", "elastic at the waist of the leggings"])
def test_name_of_the_piece_stands_above_that_of_its_upper_edge(top: str) -> None:
    found = laid_out(draw(tapered_leg(20, 12, "leg hem", Edge.SLOPING, top)))
    (title,) = [label for label in found.labels if label.label.strong]
    (name,) = [label for label in found.labels if label.label.text.startswith(top)]
    assert title.box.bottom <= name.box.top
    assert name.leader is None


@pytest.mark.parametrize("bottom", [6, 10, 14])
def test_name_of_a_side_that_runs_in_keeps_off_it(bottom: int) -> None:
    found = laid_out(draw(tapered_leg(20, bottom, "leg hem", Edge.SLOPING)))
    (name,) = [label for label in found.labels if label.label.text.startswith("side")]
    near = name.box.grown(3000)
    drawn = [line for view in found.views for shape in view.shapes for line in shape.segments]
    assert not [line for line in drawn if crosses(line, near)]
