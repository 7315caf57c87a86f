"""The picture of a boxed corner: the square, the seam lines, and the seam across as far from the tip as it is deep."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.boxed_corner import BoxedCorner, CutOut, describe, draw
from sitegen.quantities import ZERO, inches

HALF, TIP = inches("1/2"), inches(2)
TOTE = BoxedCorner("corners", "corners", TIP, HALF, CutOut(inches(2), inches(2)))
FOLDED = BoxedCorner("corners", "corners", TIP, HALF, CutOut(inches(2), inches("3/2")))
WHOLE = BoxedCorner("corners", "corners", TIP, HALF)


def scale(svg: str) -> float:
    return float(parsed(svg).attrib["data-scale"])


def test_every_number_of_the_corner_is_drawn_with_its_exact_value() -> None:
    assert {name: line.mm for name, line in named(write_svg(draw(TOTE), "p")).items()} == {
        "corners.cut_out_width": inches(2).mm,
        "corners.cut_out_height": inches(2).mm,
        "corners.corner_allowance": HALF.mm,
        "corners.from_tip": inches(2).mm,
        "corners.depth": inches(4).mm,
    }


def test_seam_across_lies_as_far_from_the_seam_lines_as_from_the_tip() -> None:
    """In the corner that is cut out, the stitches run one allowance inside its edges."""
    svg = write_svg(draw(TOTE), "p")
    square, stitches = named(svg)["corners.cut_out_width"], spots(svg, "stitch")[0]
    assert (stitches[1][0] - square.end[0]) / scale(svg) == pytest.approx(12.7, abs=0.05)
    side_seam = spots(svg, "seam")[0]
    assert (side_seam[0][0] - square.start[0]) / scale(svg) == pytest.approx(12.7, abs=0.05)
    assert (stitches[1][0] - side_seam[0][0]) / scale(svg) == pytest.approx(50.8, abs=0.05)


def test_raw_edge_of_the_sewn_corner_is_as_long_as_the_open_edges_of_the_square() -> None:
    svg = write_svg(draw(TOTE), "p")
    edge = spots(svg, "cut")[-1]
    assert (edge[1][0] - edge[0][0]) / scale(svg) == pytest.approx(2 * (50.8 - 12.7), abs=0.05)
    stitches = spots(svg, "stitch")[-1]
    assert (edge[0][1] - stitches[0][1]) / scale(svg) == pytest.approx(12.7, abs=0.05)


def test_folded_bottom_has_no_seam_and_is_drawn_as_a_fold() -> None:
    svg = write_svg(draw(FOLDED), "p")
    assert "fold" in words(svg)
    assert "lower edge" not in words(svg)
    assert len(spots(svg, "seam")) == len(spots(write_svg(draw(TOTE), "p"), "seam")) - 1


def test_corner_that_is_not_cut_runs_to_its_tip() -> None:
    svg = write_svg(draw(WHOLE), "p")
    assert set(named(svg)) == {"corners.from_tip", "corners.depth"}
    assert not spots(svg, "cut")
    left, right = spots(svg, "fold")
    assert left[0] == right[0]
    assert draw(WHOLE).title == "Corners: sewn across"


def test_description_says_every_number() -> None:
    said = describe(TOTE)
    for part in ("a square of 2 in (5.1 cm)", "2 in (5.1 cm) from the tip", "4 in (10 cm) long", "1/2 in (1.3 cm)"):
        assert part in said
    assert "2 in (5.1 cm) in from the side and 1 1/2 in (3.8 cm) up" in describe(FOLDED)
    assert "Cut out" not in describe(WHOLE)


@pytest.mark.parametrize(
    ("tip", "allowance", "cut", "why"),
    [
        ("0", "1/2", None, "seam across"),
        ("2", "-1/2", None, "seam across"),
        ("2", "1/2", ("0", "2"), "nothing can be cut"),
        ("2", "1/2", ("2", "1"), "nothing can be cut"),
        ("1/2", "1/2", ("1/2", "1/2"), "as large as the corner"),
    ],
)
def test_corner_of_which_nothing_is_left_cannot_be_drawn(
    tip: str, allowance: str, cut: tuple[str, str] | None, why: str
) -> None:
    with pytest.raises(CannotDraw, match=why):
        BoxedCorner(
            "corners", "corners", inches(tip), inches(allowance), CutOut(*map(inches, cut)) if cut is not None else None
        )


def test_corner_without_an_allowance_has_no_such_dimension() -> None:
    bare = BoxedCorner("corners", "corners", TIP, ZERO, CutOut(TIP, TIP))
    assert "corners.corner_allowance" not in named(write_svg(draw(bare), "p"))
