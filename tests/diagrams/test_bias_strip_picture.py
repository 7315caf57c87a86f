"""The picture of bias strips: the square, the joined halves that lean at 45°, and every strip at its width."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagrams.reading_svg import measured, named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.bias_strip import BiasStrip, describe, draw
from sitegen.quantities import ZERO, System, cm, given
from sitegen.sewing import bias

SIDE, WIDTH, ALLOWANCE = given("square", cm(30)), given("strip", cm("4.5")), given("allowance", cm(1))
EDGING = BiasStrip(
    "edging",
    "edging",
    SIDE.length,
    WIDTH.length,
    bias.diagonal("strip", bias.joined_side("joined", SIDE, ALLOWANCE)).length,
    int(bias.whole_strips("strips", SIDE, WIDTH, ALLOWANCE).number),
    bias.left_over("left over", SIDE, WIDTH, ALLOWANCE).length,
    bias.sewn_length("sewn", SIDE, WIDTH, ALLOWANCE).length,
)


def scale(svg: str) -> float:
    return float(parsed(svg).attrib["data-scale"])


def test_square_strip_and_its_width_have_their_exact_lengths() -> None:
    values = {line.name: line.mm for line in measured(write_svg(draw(EDGING), "p"))}
    assert values == {"edging.square": 300, "edging.strip_width": 45, "edging.strip": EDGING.strip.mm}


def test_cut_runs_from_corner_to_corner_at_45_degrees() -> None:
    svg = write_svg(draw(EDGING), "p")
    (cut,) = spots(svg, "trued")
    across, down = (cut[1][axis] - cut[0][axis] for axis in (0, 1))
    assert (across, down) == pytest.approx((300 * scale(svg), 300 * scale(svg)), abs=0.01)


def test_strip_lines_lie_a_strip_width_apart_and_lean_by_as_much() -> None:
    svg = write_svg(draw(EDGING), "p")
    top = named(svg)["edging.strip_width"].start
    level = [line for line in spots(svg, "tick") if len(line) == 2 and line[0][1] == line[1][1]]
    assert len(level) == EDGING.count == 4
    for strip, line in enumerate(sorted(level, key=lambda each: each[0][1]), 1):
        assert line[0][1] - top[1] == pytest.approx(45 * strip * scale(svg), abs=0.01)
        assert line[0][0] - top[0] - 9 == pytest.approx(45 * strip * scale(svg), abs=0.01), "9 units beside the cloth"
        assert line[1][0] - line[0][0] == pytest.approx(float(EDGING.strip.mm) * scale(svg), abs=0.01)


def test_joined_halves_have_the_cloth_of_the_square_less_what_the_join_takes() -> None:
    """Plane geometry: a parallelogram of height h over L has the area h × L, which is (side − allowance)²."""
    assert float(EDGING.height.mm * EDGING.strip.mm) == pytest.approx(290**2, rel=1e-6)


def test_left_over_is_hatched_and_absent_when_nothing_is_left() -> None:
    svg = write_svg(draw(EDGING), "p")
    (rest,) = spots(svg, "paper")
    assert rest[2][1] - rest[0][1] == pytest.approx(float(EDGING.left_over.mm) * scale(svg), abs=0.01)
    assert any(said.startswith("left over") for said in words(svg))
    even = write_svg(draw(replace(EDGING, left_over=ZERO)), "p")
    assert not spots(even, "paper")
    assert not any(said.startswith("left over") for said in words(even))


def test_words_say_the_number_of_strips_and_how_long_they_are_together() -> None:
    said = words(write_svg(draw(EDGING, first=System.CENTIMETRES), "p"))
    assert "each of 4 strips 41\u00a0cm (16⅛\u00a0in)" in said
    assert "sewn end to end 155.5\u00a0cm (61¼\u00a0in)" in said
    told = describe(EDGING, first=System.CENTIMETRES)
    for part in ("a square of 30 cm", "4.5 cm (1 3/4 in) apart, mark 4 strips, and 2.5 cm", "155.5 cm"):
        assert part in told


@pytest.mark.parametrize(
    "change", [{"count": 0}, {"width": ZERO}, {"left_over": cm(-1)}, {"width": cm("0.1"), "count": 205}]
)
def test_no_strip_or_too_many_cannot_be_drawn(change: dict) -> None:
    with pytest.raises(CannotDraw):
        replace(EDGING, **change)
