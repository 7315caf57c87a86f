"""The picture of a hem: rows, turn, fold-under and catch at their true heights above the fold."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import SVG, named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.hem_section import HemSection, Stitch, describe, draw
from sitegen.quantities import ZERO, Length, inches, mm

TWIN = HemSection("lower", "lower hem", inches("3/4"), inches("1/2"), gap=mm(4))
DOUBLE = HemSection("lower", "lower hem", inches(1), inches("7/8"), fold_under=inches("1/4"))
MISSED = HemSection("lower", "lower hem", inches("1/2"), inches("1/2"), gap=mm(4))


def heights(hem: HemSection, role: str) -> list[float]:
    """Heights above the fold of the level lines of a role, in millimetres."""
    svg = write_svg(draw(hem), "p")
    fold = named(svg)["lower.turn"].end[1]
    unit = float(parsed(svg).attrib["data-scale"])
    level = [line for line in spots(svg, role) if line[0][1] == line[1][1]]
    return sorted({round((fold - line[0][1]) / unit, 2) for line in level})


def test_twin_needle_draws_every_number_of_the_hem() -> None:
    values = {name: line.mm for name, line in named(write_svg(draw(TWIN), "p")).items()}
    assert values == {
        "lower.turn": inches("3/4").mm,
        "lower.stitch_line": inches("1/2").mm,
        "lower.needle_gap": mm(4).mm,
        "lower.catch": (inches("1/4") - mm(4)).mm,
    }


def test_two_rows_stand_at_their_heights_outside_and_cut_through() -> None:
    assert heights(TWIN, "stitch") == [12.7, 16.7]
    assert [height for height in heights(TWIN, "thread") if height in (12.7, 16.7)] == [12.7, 16.7]


def test_single_row_has_no_needle_gap() -> None:
    plain = HemSection("lower", "lower hem", inches("3/4"), inches("5/8"))
    assert heights(plain, "stitch") == [15.88]
    assert "lower.needle_gap" not in named(write_svg(draw(plain), "p"))


def test_zigzag_row_swings_about_its_height() -> None:
    zigzag = HemSection("lower", "lower hem", inches("3/4"), inches("5/8"), stitch=Stitch.ZIGZAG)
    svg = write_svg(draw(zigzag), "p")
    (row,) = spots(svg, "zigzag")
    turn = named(svg)["lower.turn"]
    middle = turn.end[1] - 15.875 * turn.scale
    assert min(y for _, y in row) < middle < max(y for _, y in row)
    assert row[0][1] == pytest.approx(middle, abs=0.01)
    assert not spots(svg, "stitch")


def test_double_hem_shows_what_is_folded_under_and_a_third_layer() -> None:
    folded = named(write_svg(draw(DOUBLE), "p"))["lower.fold_under"]
    assert folded.mm == inches("1/4").mm
    assert folded.start[1] == named(write_svg(draw(DOUBLE), "p"))["lower.turn"].start[1]
    bends = [path.attrib["d"].count("A") for path in parsed(write_svg(draw(DOUBLE), "p")).iter(f"{SVG}path")]
    assert max(bends) == 4, "two bends there and two back"


def test_raw_edge_of_a_double_hem_lies_inside() -> None:
    svg = write_svg(draw(DOUBLE), "p")
    (raw,) = spots(svg, "raw")
    turn = named(svg)["lower.turn"]
    assert (turn.end[1] - raw[0][1]) / turn.scale == pytest.approx(19.05, abs=0.05)


def test_row_that_misses_the_turn_is_shown_to_miss() -> None:
    svg = write_svg(draw(MISSED), "p")
    assert named(svg)["lower.catch.missing"].mm == mm(4).mm
    assert any(said.startswith("misses by") for said in words(svg))
    assert "misses the turn" in describe(MISSED)
    through, outer = sorted(spots(svg, "thread"), key=lambda line: line[0][0] - line[1][0])[:2]
    assert through[1][0] - through[0][0] > outer[1][0] - outer[0][0]


def test_right_and_wrong_side_differ_by_hatching_and_are_explained() -> None:
    svg = write_svg(draw(TWIN), "p")
    assert {"right side of the cloth", "wrong side"} <= set(words(svg))
    hatched = [path for path in parsed(svg).iter(f"{SVG}path") if path.attrib.get("class") == "d-wrong"]
    assert {path.attrib["fill"] for path in hatched} == {"url(#p-wrong)"}
    assert parsed(svg).find(f".//{SVG}pattern[@id='p-wrong']") is not None


def test_description_says_every_number_and_what_is_not_to_scale() -> None:
    said = describe(TWIN)
    for part in ("3/4 in (1.9 cm)", "1/2 in (1.3 cm)", "3/16 in (4 mm)", "1/16 in (2 mm)"):
        assert part in said
    assert "the thickness of the cloth is not" in said
    assert "folded under by 1/4 in (6 mm)" in describe(DOUBLE)


@pytest.mark.parametrize(
    ("turn", "line", "under", "gap"),
    [
        (ZERO, mm(5), ZERO, ZERO),
        (mm(20), ZERO, ZERO, ZERO),
        (mm(20), mm(15), mm(-1), ZERO),
        (mm(20), mm(15), ZERO, mm(-1)),
        (mm(20), mm(15), mm(21), ZERO),
        (mm(20), mm(70), ZERO, ZERO),
        (mm(1000), mm(900), mm(2), ZERO),
    ],
)
def test_hem_that_makes_no_sense_cannot_be_drawn(turn: Length, line: Length, under: Length, gap: Length) -> None:
    with pytest.raises(CannotDraw):
        HemSection("lower", "lower hem", turn, line, under, gap)
