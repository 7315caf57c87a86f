"""Room between body and garment."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sewing.lengths import drawn, worked

from sitegen.quantities import Worked, inches
from sitegen.sewing import ease


@given(drawn(), drawn(-160, 160))
def test_garment_for_an_ease_has_that_ease(body: Worked, wanted: Worked) -> None:
    finished = ease.finished_for("finished", body, wanted)
    assert ease.ease("ease", finished, body).length == wanted.length


@given(drawn(), st.integers(1, 12))
def test_edges_together_take_the_whole_change(change: Worked, edges: int) -> None:
    assert ease.per_edge("edge", change, edges).length * edges == change.length


def test_knit_smaller_than_the_body_has_negative_ease() -> None:
    room = ease.ease("ease", worked("38"), worked("40"))
    assert room.length == -inches(2)


def test_no_edges_are_refused() -> None:
    with pytest.raises(ValueError, match="seam edges: at least 1"):
        ease.per_edge("edge", worked(1), 0)


def test_every_published_range_has_a_source_and_runs_upward() -> None:
    assert all(each.source and each.least <= each.most for each in ease.WEARING_EASE)


def test_place_that_no_source_speaks_of_has_no_range() -> None:
    assert ease.published("elbow") == ()
