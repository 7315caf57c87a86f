"""The length that no layout can do without, against every arrangement there is of a few small rectangles."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.sewing.layout.bound import least
from sitegen.sewing.layout.dual import all_weights, without_weaker
from sitegen.sewing.layout.pack import packed
from sitegen.sewing.layout.proof import Item
from sitegen.sewing.layout.rectangles import Rectangle

WIDTH = 6
RECTANGLES = st.lists(
    st.builds(Rectangle, st.integers(1, 5), st.integers(1, 4), st.booleans(), st.just(False))
    | st.builds(Rectangle, st.integers(1, 5), st.integers(1, 4), st.just(False), st.booleans()),
    min_size=1,
    max_size=4,
)
STRIPS = st.sampled_from([1, 2])


def fits(rectangles: list[Rectangle], strips: int, length: int) -> bool:
    """Whether the rectangles lie on the strips, found by trying every place for one after the other."""

    def rest_fits(number: int, taken: list[int]) -> bool:
        if number == len(rectangles):
            return True
        one = rectangles[number]
        ways = {(one.across, one.along), (one.along, one.across)} if one.turns else {(one.across, one.along)}
        for strip in range(strips):
            for across, along in ways:
                for x in range(1 if one.at_fold else max(0, WIDTH - across + 1)):
                    row = ((1 << across) - 1) << x
                    for y in range(length - along + 1):
                        cells = sum(row << (WIDTH * (y + step)) for step in range(along))
                        if not taken[strip] & cells:
                            after = list(taken)
                            after[strip] |= cells
                            if rest_fits(number + 1, after):
                                return True
        return False

    return rest_fits(0, [0] * strips)


def shortest(rectangles: list[Rectangle], strips: int) -> int:
    """The least length on which they lie; it begins where their area would just do, the largest is placed first."""
    length = -(-sum(one.across * one.along for one in rectangles) // (WIDTH * strips))
    largest_first = sorted(rectangles, key=lambda one: one.across * one.along, reverse=True)
    while not fits(largest_first, strips, length):
        length += 1
    return length


def items(rectangles: list[Rectangle]) -> list[Item]:
    return [
        Item(one.across, one.along, 2 * one.across * one.along, True, one.along if one.at_fold else 0, one.turns)
        for one in rectangles
    ]


@settings(max_examples=100, deadline=None)
@given(RECTANGLES, STRIPS)
def test_least_is_never_more_than_the_shortest_arrangement_there_is(rectangles: list[Rectangle], strips: int) -> None:
    found = packed(rectangles, (WIDTH,) * strips, tries=400)
    best = shortest(rectangles, strips)
    assert least(items(rectangles), WIDTH, strips, found.length).length <= best <= found.length


@settings(max_examples=100, deadline=None)
@given(RECTANGLES, STRIPS)
def test_up_to_four_rectangles_are_laid_on_the_least_length_there_is(rectangles: list[Rectangle], strips: int) -> None:
    assert packed(rectangles, (WIDTH,) * strips, tries=2000).length == shortest(rectangles, strips)


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 30), st.data())
def test_sizes_that_fit_side_by_side_never_outweigh_the_room(room: int, data: st.DataObject) -> None:
    """The law of the weights, for the heaviest choice of sizes there is (any of them as often as one likes)."""
    sizes = data.draw(st.lists(st.integers(1, room), min_size=1, max_size=6, unique=True))
    for weights, whole in all_weights(sizes, room):
        heaviest = [0]
        for filled in range(1, room + 1):
            steps = zip(sizes, weights, strict=True)
            heaviest.append(
                max([heaviest[-1]] + [heaviest[filled - size] + weight for size, weight in steps if size <= filled])
            )
        assert heaviest[room] <= whole


@given(st.integers(2, 60), st.data())
def test_weights_left_out_show_nothing_more(room: int, data: st.DataObject) -> None:
    sizes = data.draw(st.lists(st.integers(1, room), min_size=1, max_size=6))
    every = all_weights(sizes, room)
    kept = without_weaker(every)
    assert set(kept) <= set(every)
    for weights, whole in every:
        assert any(
            all(more * whole >= less * room_ for more, less in zip(many, weights, strict=True)) for many, room_ in kept
        )
