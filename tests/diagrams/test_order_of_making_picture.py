"""The map of the steps: what waits stands lower, arrows run from box to box, and nothing runs through a box."""

from __future__ import annotations

import pytest
from diagrams.reading_svg import spots, words
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.order_of_making import OrderOfMaking, describe, draw
from sitegen.diagrams.order_map import Arrow, StepBox

TITLES = {1: "Cut out the cloth", 2: "Sew the sides", 3: "Make the straps", 4: "Hem the top", 5: "Press"}
BAG = OrderOfMaking(
    TITLES,
    (
        Arrow(1, 2, sure=True),
        Arrow(1, 3, sure=True),
        Arrow(1, 4, sure=True),
        Arrow(2, 4, sure=True),
        Arrow(3, 4, sure=False),
        Arrow(4, 5, sure=False),
    ),
    ((2, 3),),
)


def boxes(svg: str) -> list[list[tuple[float, float]]]:
    return spots(svg, "cut")


def test_every_step_has_a_box_with_its_number_and_title() -> None:
    svg = write_svg(draw(BAG), "p")
    assert len(boxes(svg)) == 5
    assert [each for each in words(svg) if each[0].isdigit()] == [f"{step}. {title}" for step, title in TITLES.items()]


def test_step_stands_below_all_that_it_waits_for_and_beside_what_can_be_done_with_it() -> None:
    placed = BAG.map.boxes
    for arrow in BAG.arrows:
        assert placed[arrow.after].top > placed[arrow.before].foot
    assert placed[2].top == placed[3].top
    assert placed[2].left + placed[2].width < placed[3].left
    assert "side by side: can be done at the same time" in words(write_svg(draw(BAG), "p"))


def test_arrow_heads_lie_on_the_boxes_of_the_later_steps() -> None:
    svg = write_svg(draw(BAG), "p")
    tips = [path[1] for path in spots(svg, "arrow")]
    sides = [(min(x for x, _ in box), min(y for _, y in box), max(x for x, _ in box)) for box in boxes(svg)]
    on_a_box = [tip for tip in tips if any(_touches(tip, side) for side in sides)]
    assert len(on_a_box) == len(BAG.arrows), "each arrow ends on a box; the rest are those of the key"


def _touches(tip: tuple[float, float], side: tuple[float, float, float]) -> bool:
    left, top, right = side
    return (tip[1] == pytest.approx(top) and left <= tip[0] <= right) or tip[0] == pytest.approx(left)


def test_what_only_keeps_the_order_is_dotted_and_explained() -> None:
    svg = write_svg(draw(BAG), "p")
    assert {"needs what was made", "keeps this order"} <= set(words(svg))
    assert len(spots(svg, "join")) == 3, "two arrows and the key"
    sure = OrderOfMaking(TITLES, (Arrow(1, 2, sure=True),))
    assert "keeps this order" not in words(write_svg(draw(sure), "p"))
    assert not spots(write_svg(draw(sure), "p"), "join")


def test_description_says_what_each_step_needs_and_what_goes_together() -> None:
    said = describe(BAG)
    assert "Step 4, Hem the top: needs steps 1 and 2 and follows step 3." in said
    assert "Steps 2 and 3 can be done at the same time." in said
    assert "Step 1, Cut out the cloth." in said


@settings(max_examples=100, deadline=None)
@given(st.integers(2, 25).flatmap(lambda count: st.tuples(
    st.just(count), st.sets(st.tuples(st.integers(1, count), st.integers(1, count), st.booleans()), max_size=40),
)))  # fmt: skip
def test_no_line_runs_through_a_box_and_no_boxes_overlap(drawn: tuple[int, set[tuple[int, int, bool]]]) -> None:
    count, links = drawn
    found = {(one, other): sure for one, other, sure in sorted(links) if one < other}
    arrows = tuple(Arrow(one, other, sure) for (one, other), sure in found.items())
    order = OrderOfMaking({step: f"Sew seam {step} of the garment" for step in range(1, count + 1)}, arrows)
    svg = write_svg(draw(order), "p")
    placed = list(order.map.boxes.values())
    for number, box in enumerate(placed):
        assert all(_apart(box, other) for other in placed[number + 1 :])
    for role in ("tick", "join", "arrow"):
        for line in spots(svg, role):
            assert not any(_inside(line[0], line[1], box) for box in placed)


def _apart(one: StepBox, other: StepBox) -> bool:
    across = one.left + one.width < other.left or other.left + other.width < one.left
    return across or one.foot < other.top or other.foot < one.top


def _inside(one: tuple[float, float], other: tuple[float, float], box: StepBox) -> bool:
    """Whether a line enters a box by more than a hair: any of many spots along it lies well inside."""
    for part in range(41):
        x, y = (a + (b - a) * part / 40 for a, b in zip(one, other, strict=True))
        if box.left + 1 < x < box.left + box.width - 1 and box.top + 1 < y < box.foot - 1:
            return True
    return False


def test_one_step_needs_no_map_and_too_many_have_none() -> None:
    for count in (1, 41):
        with pytest.raises(CannotDraw):
            OrderOfMaking(dict.fromkeys(range(1, count + 1), "Sew"), ())
