"""The picture of a band and its opening: marks, seams and numbers where they truly fall."""

from __future__ import annotations

from fractions import Fraction

import pytest
from diagrams.reading_svg import measured, named, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.band_on_opening import BandOnOpening, FrontAndBack, describe, draw
from sitegen.quantities import ZERO, Length, System, cm, inches

FRONT, BACK, BAND = inches("25/2"), inches("15/2"), inches(17)
TEE = BandOnOpening("neckband", "neckband", "neckline", FrontAndBack(FRONT, BACK), BAND)
CUFF = BandOnOpening("cuff", "cuff", "wrist", inches(9), inches("27/4"))


def levels(svg: str, role: str, view_scale: float) -> list[float]:
    """Levels of the level lines of a role, in millimetres from the upper end of the opening."""
    top = named(svg)[f"{'cuff' if 'cuff' in svg else 'neckband'}.opening_length"].start[1]
    return sorted({round((line[0][1] - top) / view_scale, 1) for line in spots(svg, role)})


def scale(svg: str) -> float:
    return measured(svg)[0].scale


def test_every_number_of_the_band_is_drawn_with_its_exact_value() -> None:
    lines = named(write_svg(draw(TEE), "p"))
    assert {name: line.mm for name, line in lines.items()} == {
        "neckband.opening_length": inches(20).mm,
        "neckband.front_opening": FRONT.mm,
        "neckband.back_opening/2": BACK.mm / 2,
        "neckband.quarter_from_shoulder": inches("5/4").mm,
        "neckband.finished_length": BAND.mm,
        "neckband.opening_quarter": inches(5).mm,
        "neckband.band_quarter": inches("17/4").mm,
    }


def test_marks_stand_at_the_quarters_of_opening_and_band() -> None:
    svg = write_svg(draw(TEE), "p")
    opening = [Fraction(508, 4) * count for count in range(5)]
    overhang = (inches(20) - BAND).mm / 2
    band = [overhang + BAND.mm / 4 * count for count in range(5)]
    assert levels(svg, "mark", scale(svg)) == pytest.approx(sorted(map(float, {*opening, *band})), abs=0.2)


def test_shoulder_seams_stand_half_the_back_from_the_centre_back() -> None:
    svg = write_svg(draw(TEE), "p")
    seams = [line for line in spots(svg, "seam") if abs(line[0][0] - line[1][0]) > 50]
    top = named(svg)["neckband.opening_length"].start[1]
    found = sorted((line[0][1] - top) / scale(svg) for line in seams)
    assert found == pytest.approx([95.25, 508 - 95.25], abs=0.1)


def test_side_quarter_falls_towards_the_front_when_the_front_is_longer() -> None:
    line = named(write_svg(draw(TEE), "p"))["neckband.quarter_from_shoulder"]
    front = named(write_svg(draw(TEE), "p"))["neckband.front_opening"]
    assert line.start[1] == front.start[1]
    assert line.end[1] > line.start[1]
    assert any("in front of the shoulder seam" in said for said in words(write_svg(draw(TEE), "p")))


def test_side_quarter_falls_behind_the_seam_when_the_back_is_longer() -> None:
    svg = write_svg(draw(BandOnOpening("neckband", "neckband", "neckline", FrontAndBack(BACK, FRONT), BAND)), "p")
    line, front = named(svg)["neckband.quarter_from_shoulder"], named(svg)["neckband.front_opening"]
    assert line.end[1] == front.start[1]
    assert any("behind the shoulder seam" in said for said in words(svg))


def test_equal_front_and_back_put_the_marks_on_the_seams() -> None:
    svg = write_svg(draw(BandOnOpening("b", "band", "waist", FrontAndBack(FRONT, FRONT), BAND)), "p")
    assert "b.quarter_from_shoulder" not in named(svg)
    assert any("on the shoulder seams" in said for said in words(svg))


def test_distance_too_small_to_see_is_said_but_not_drawn() -> None:
    nearly = FrontAndBack(FRONT, FRONT + Length(Fraction(1, 10)))
    drawing = draw(BandOnOpening("b", "band", "waist", nearly, BAND))
    assert "b.quarter_from_shoulder" not in named(write_svg(drawing, "p"))
    assert any("behind the shoulder seam" in said for said in words(write_svg(drawing, "p")))


def test_joining_lines_run_from_each_mark_to_its_fellow() -> None:
    svg = write_svg(draw(TEE), "p")
    edge = named(svg)["neckband.opening_length"].start[0]
    joins = sorted(line for line in spots(svg, "join") if line[0][0] == edge)
    top, unit = named(svg)["neckband.opening_length"].start[1], scale(svg)
    assert len(joins) == 5
    for count, (start, end) in enumerate(joins):
        assert (start[1] - top) / unit == pytest.approx(127 * count, abs=0.1)
        assert (end[1] - top) / unit == pytest.approx(38.1 + 107.95 * count, abs=0.1)


def test_single_edge_has_no_shoulder_seams() -> None:
    svg = write_svg(draw(CUFF), "p")
    assert not any("shoulder" in said for said in words(svg))
    assert not [line for line in spots(svg, "seam") if abs(line[0][0] - line[1][0]) > 50]
    assert {"seam", "quarter", "half way"} <= set(words(svg))


def test_band_with_allowances_shows_the_length_to_cut() -> None:
    with_allowance = BandOnOpening("b", "band", "neckline", FrontAndBack(FRONT, BACK), BAND, inches("3/8"))
    svg = write_svg(draw(with_allowance), "p")
    assert named(svg)["b.cut_length"].mm == inches("71/4").mm
    assert len(spots(svg, "raw")) == 2
    assert any("17¾\u00a0in (45\u00a0cm)" in said for said in words(svg))


def test_units_come_in_the_order_asked_for() -> None:
    metric = write_svg(draw(TEE, first=System.CENTIMETRES), "p")
    assert any("51\u00a0cm (20\u00a0in)" in said for said in words(metric))
    assert any("20\u00a0in (51\u00a0cm)" in said for said in words(write_svg(draw(TEE), "p")))


def test_description_says_every_number() -> None:
    said = describe(TEE)
    for part in ("20 in (51 cm)", "17 in (43 cm)", "12 1/2 in (32 cm)", "7 1/2 in (19 cm)", "5 in (12.5 cm)",
                 "4 1/4 in (11 cm)", "1 1/4 in (3.2 cm) in front of the shoulder seam"):  # fmt: skip
        assert part in said


@pytest.mark.parametrize("band", [ZERO, cm(-3)])
def test_band_of_no_length_cannot_be_drawn(band: Length) -> None:
    with pytest.raises(CannotDraw, match="lengths above nothing"):
        BandOnOpening("b", "band", "neckline", FRONT, band)
