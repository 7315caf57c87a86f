"""The picture of gathers: both edges to one scale, quarter to quarter, and the rows at their distances."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagrams.reading_svg import named, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.gathers import Gathers, describe, draw
from sitegen.quantities import inches, mm

ROWS = (inches("1/4"), inches("3/8"))
TOP = Gathers("skirt_top", "front top and back top", "waistband lower", inches(60), inches(40), ROWS, inches("1/2"))
PLAIN = replace(TOP, rows=(), allowance=mm(0))


def test_both_edges_and_a_quarter_of_each_are_drawn_to_one_scale() -> None:
    lines = named(write_svg(draw(PLAIN), "p"))
    assert {name: line.mm for name, line in lines.items()} == {
        "skirt_top.before": inches(60).mm,
        "skirt_top.after": inches(40).mm,
        "skirt_top.before/4": inches(15).mm,
        "skirt_top.after/4": inches(10).mm,
    }
    assert len({line.scale for line in lines.values()}) == 1


def test_dotted_lines_join_each_quarter_to_the_same_quarter() -> None:
    svg = write_svg(draw(PLAIN), "p")
    short, long = named(svg)["skirt_top.after"], named(svg)["skirt_top.before"]
    joins = spots(svg, "join")
    assert len(joins) == 5
    for quarter, (above, below) in enumerate(joins):
        for spot, edge in ((above, short), (below, long)):
            along = edge.start[0] + (edge.end[0] - edge.start[0]) * quarter / 4
            assert spot == pytest.approx((along, edge.start[1]), abs=0.01)


def test_rows_and_seam_line_are_enlarged_at_their_distances_from_the_raw_edge() -> None:
    svg = write_svg(draw(TOP), "p")
    lines = named(svg)
    rows, seam = spots(svg, "stitch"), spots(svg, "seam")
    edge, unit = lines["skirt_top.row_1"].start[1], lines["skirt_top.row_1"].scale
    assert [(row[0][1] - edge) / unit for row in rows] == pytest.approx([6.35, 9.525], abs=0.02)
    assert (seam[0][0][1] - edge) / unit == pytest.approx(12.7, abs=0.02)
    assert unit > lines["skirt_top.before"].scale


def test_without_known_rows_none_are_shown() -> None:
    svg = write_svg(draw(PLAIN), "p")
    assert not spots(svg, "stitch")
    assert "stitches" not in describe(PLAIN)


def test_words_say_the_ratio_and_the_rows() -> None:
    said = words(write_svg(draw(TOP), "p"))
    assert "1.5 to 1" in said
    assert "row 2: ⅜\u00a0in (1\u00a0cm)" in said
    told = describe(TOP)
    for part in ("60 in (152.5 cm) before it is gathered: 1.5 to 1", "15 in (38 cm)", "2 rows of gathering stitches"):
        assert part in told
    assert "The seam line lies 1/2 in (1.3 cm) from it." in told


@pytest.mark.parametrize(
    "change",
    [
        {"before": inches(40)},
        {"after": inches(0)},
        {"before": inches(600)},
        {"rows": ROWS[::-1]},
        {"rows": (mm(0), mm(5))},
    ],
)
def test_gathers_that_make_no_sense_cannot_be_drawn(change: dict) -> None:
    with pytest.raises(CannotDraw):
        replace(TOP, **change)
