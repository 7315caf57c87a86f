"""Two edges that meet: both at their true length, marks at true shares, the difference exact."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.edges_meeting import EdgeChain, EdgePart, EdgesMeeting, Way, describe, draw
from sitegen.quantities import inches

CAP = EdgeChain((EdgePart("sleeve cap", "sleeve.cap", inches(17)),))
ARMHOLE = EdgeChain(
    (EdgePart("front armhole", "front.armhole", inches(8)), EdgePart("back armhole", "back.armhole", inches("17/2")))
)
EASED = EdgesMeeting(CAP, ARMHOLE, Way.EASE)
RUFFLE = EdgesMeeting(
    EdgeChain((EdgePart("ruffle", "ruffle.top", inches(60)),)), EdgeChain((EdgePart("hem", "skirt.hem", inches(20)),)),
    Way.GATHER,
)  # fmt: skip


def test_both_sides_and_their_difference_are_measured() -> None:
    assert {name: line.mm for name, line in named(write_svg(draw(EASED), "p")).items()} == {
        "sleeve.cap": inches(17).mm,
        "front.armhole + back.armhole": inches("33/2").mm,
        "difference": inches("1/2").mm,
    }


def test_difference_begins_where_the_shorter_side_ends() -> None:
    lines = named(write_svg(draw(EASED), "p"))
    assert lines["difference"].start[0] == lines["front.armhole + back.armhole"].end[0]
    assert lines["difference"].end[0] == lines["sleeve.cap"].end[0]


def test_every_quarter_of_the_one_is_joined_to_the_same_quarter_of_the_other() -> None:
    svg = write_svg(draw(EASED), "p")
    lines = named(svg)
    begin, longer = lines["sleeve.cap"].start[0], lines["sleeve.cap"]
    shorter = lines["front.armhole + back.armhole"]
    joins = sorted(spots(svg, "join"))
    assert len(joins) == 5
    for quarter, ((x, _), (other, _)) in enumerate(joins):
        assert x - begin == pytest.approx((longer.end[0] - begin) * quarter / 4, abs=0.01)
        assert other - begin == pytest.approx((shorter.end[0] - begin) * quarter / 4, abs=0.01)
    assert len(spots(svg, "mark")) == 10


def test_only_the_middle_is_joined_where_quarters_would_stand_too_close() -> None:
    svg = write_svg(draw(RUFFLE), "p")
    assert len(spots(svg, "join")) == 3
    assert "Dotted: middle and ends meet." in words(svg)


def test_seams_between_the_edges_of_one_side_stand_at_their_true_place() -> None:
    svg = write_svg(draw(EASED), "p")
    scale = float(parsed(svg).attrib["data-scale"])
    start = named(svg)["sleeve.cap"].start[0]
    across = {round((line[0][0] - start) / scale, 1) for line in spots(svg, "seam")}
    assert 203.2 in across, "8 in from the end"


@pytest.mark.parametrize(
    ("way", "difference", "done"),
    [
        (Way.EASE, "to ease in ½ in (1.3 cm), 3%", "sleeve cap is eased in"),
        (Way.GATHER, "to gather in ½ in (1.3 cm), 3%", "sleeve cap is gathered"),
        (Way.PLEAT, "to fold away ½ in (1.3 cm), 3%", "sleeve cap is pleated"),
        (Way.STRETCH, "to stretch ½ in (1.3 cm), 3%", "front armhole and back armhole is stretched"),
    ],
)
def test_difference_is_called_what_is_done(way: Way, difference: str, done: str) -> None:
    edges = EdgesMeeting(CAP, ARMHOLE, way)
    assert difference in [said.replace("\u00a0", " ") for said in words(write_svg(draw(edges), "p"))]
    assert done in describe(edges)


def test_description_says_all_lengths_and_the_share() -> None:
    """½ ÷ 16½ is 3.03 %."""
    said = describe(EASED)
    for part in ("17 in (43 cm)", "16 1/2 in (42 cm)", "8 in (20.5 cm)", "1/2 in (1.3 cm), 3%", "quarter marks"):
        assert part in said


def test_the_same_edge_twice_is_counted() -> None:
    twice = EdgeChain((EdgePart("waistband lower", "w", inches(19)),) * 2)
    assert twice.called == "2 × waistband lower"


def test_edges_of_the_same_length_have_no_picture() -> None:
    with pytest.raises(CannotDraw):
        EdgesMeeting(CAP, CAP, Way.EASE)
    with pytest.raises(CannotDraw):
        EdgesMeeting(ARMHOLE, CAP, Way.EASE)
