"""Room between body and garment."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, drawn_percent, told, worked

from sitegen.quantities import Ratio, Worked, inches
from sitegen.sewing import ease


@given(drawn(), drawn(-160, 160))
def test_garment_for_an_ease_has_that_ease(body: Worked, wanted: Worked) -> None:
    finished = ease.finished_for("finished", body, wanted)
    assert ease.ease("ease", finished, body).length == wanted.length


@given(drawn(), drawn_percent(-20, 20))
def test_share_of_the_body_comes_back(body: Worked, share: Worked) -> None:
    room = ease.from_share("ease", body, share)
    assert ease.share_of_body("share", room, body).ratio == share.ratio


@given(drawn(), drawn(-160, 160), drawn())
def test_change_brings_the_present_width_to_body_and_ease(body: Worked, wanted: Worked, present: Worked) -> None:
    change = ease.change_needed("change", body, wanted, present)
    assert present.length + change.length == body.length + wanted.length


@given(drawn(), st.integers(1, 12))
def test_edges_together_take_the_whole_change(change: Worked, edges: int) -> None:
    assert ease.per_edge("edge", change, edges).length * edges == change.length


@given(drawn(), st.integers(1, 12))
def test_folds_take_up_the_whole_excess(excess: Worked, folds: int) -> None:
    assert ease.fold_of_excess("fold", excess, folds).length * 2 * folds == excess.length


def test_knit_smaller_than_the_body_has_negative_ease() -> None:
    room = ease.ease("ease", worked("38"), worked("40"))
    assert room.length == -inches(2)
    assert ease.share_of_body("share", room, worked("40")).ratio == Ratio.percent(-5)


def test_no_edges_and_no_folds_are_refused() -> None:
    with pytest.raises(ValueError, match="seam edges: at least 1"):
        ease.per_edge("edge", worked(1), 0)
    with pytest.raises(ValueError, match="folds: at least 1"):
        ease.fold_of_excess("fold", worked(1), 0)


def test_every_published_range_has_a_source_and_runs_upward() -> None:
    assert all(each.source and each.least <= each.most for each in ease.WEARING_EASE)


def test_place_that_no_source_speaks_of_has_no_range() -> None:
    assert ease.published("elbow") == ()
    assert ease.ranges_holding("elbow", inches(1)) == ()


def test_both_ends_of_a_range_belong_to_it() -> None:
    (only,) = ease.ranges_holding("waist", inches("1/2"))
    assert only.garment == "skirts"
    assert len(ease.ranges_holding("waist", inches("3/4"))) == 2


def test_working_of_a_change_adds_the_ease_first() -> None:
    change = ease.change_needed("to add", worked(34, "bust"), worked(3, "ease"), worked(36, "pattern"))
    assert told(change)[:2] == [
        "body and ease: bust 34 in + ease 3 in = 37 in",
        "to add: body and ease 37 in − pattern 36 in = 1 in",
    ]
