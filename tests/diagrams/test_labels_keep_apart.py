"""Where words go: apart from each other, off the lines, inside a picture that grows for them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.diagrams.drawing import PAGE_WIDTH, Dimension, Drawing, Label, Line, Number, Role, Side, View, at
from sitegen.diagrams.geometry import crosses, meet
from sitegen.diagrams.labels import Layout, laid_out
from sitegen.diagrams.text_boxes import UNIT, Box, text_width, wrapped
from sitegen.diagrams.words import both_units
from sitegen.quantities import Length, System, cm, inches, mm, parse_length

ALL_SIDES = tuple(Side)


def layout(*shapes: Label | Line | Dimension) -> Layout:
    return laid_out(Drawing("t", "d", (View(Fraction(1), shapes),)))


def apart(found: Layout) -> bool:
    boxes = [label.box for label in found.labels]
    return not any(one.overlaps(other) for place, one in enumerate(boxes) for other in boxes[place + 1 :])


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.text(alphabet="abcd WMi¾(5)\n", min_size=1, max_size=40).filter(str.strip),
            st.integers(-50, 400), st.integers(-50, 400), st.permutations(ALL_SIDES), st.integers(20, 300),
        ),
        min_size=1,
        max_size=25,
    )
)  # fmt: skip
def test_any_labels_find_places_apart_and_inside(wanted: list[tuple[str, int, int, list[Side], int]]) -> None:
    found = layout(*(Label(text, at(right=x, down=y), tuple(sides), width) for text, x, y, sides, width in wanted))
    assert len(found.labels) == len(wanted)
    assert apart(found)
    for label in found.labels:
        assert found.window.left <= label.box.left
        assert label.box.right <= found.window.right
        assert found.window.top <= label.box.top
        assert label.box.bottom <= found.window.bottom


def test_many_labels_at_one_spot_all_find_places() -> None:
    found = layout(*(Label(f"label {count}", at(right=100, down=100), (Side.CENTRE,)) for count in range(40)))
    assert len(found.labels) == 40
    assert apart(found)


def test_label_prefers_a_place_without_a_line() -> None:
    line = Line(at(right=50, down=88), at(right=150, down=88), Role.CUT)
    found = layout(line, Label("word", at(right=100, down=100), (Side.ABOVE, Side.BELOW)))
    assert found.labels[0].box.top > 100 * UNIT


def test_label_that_had_to_move_away_has_a_leader_to_its_spot() -> None:
    spot = at(right=100, down=100)
    found = layout(*(Label("word", spot, (Side.RIGHT,)) for _ in range(2)))
    near, far = found.labels
    assert near.leader is None
    assert far.leader is not None
    assert far.leader[0] == (100 * UNIT, 100 * UNIT)


def heading(words: str) -> Label:
    return Label(words, at(right=100), (Side.ABOVE,), width=300, gap=12, strong=True, leader=False)


@pytest.mark.parametrize("lines", [1, 4, 9])
def test_view_makes_room_for_its_heading_below_the_words_of_the_one_above(lines: int) -> None:
    """However many lines those have, which is another number in each language."""
    shapes = (
        Line(at(right=50), at(right=150), Role.CUT),
        Label("\n".join(["word"] * lines), at(right=100), (Side.BELOW,), gap=12),
    )
    below = (heading("the edge at the line, enlarged"), Line(at(right=50), at(right=150), Role.CUT))
    found = laid_out(Drawing("t", "d", (View(Fraction(1), shapes), View(Fraction(1), below, down=60))))
    words, head = found.labels
    top = found.views[1].shapes[0].segments[0][0][1]
    assert words.box.bottom < head.box.top
    assert head.box.bottom <= top - 12 * UNIT
    assert (top == 60 * UNIT) == (lines == 1)


def test_view_beside_another_stays_where_it_is() -> None:
    upright = Line(at(right=50), at(right=50, down=90), Role.CUT)
    views = (
        View(Fraction(1), (upright, Label("word\n" * 5 + "word", at(right=100), (Side.BELOW,), gap=12))),
        View(Fraction(1), (heading("head"), upright), down=10),
    )
    found = laid_out(Drawing("t", "d", views))
    assert found.views[1].shapes[0].segments[0][0][1] == 10 * UNIT


def test_word_wider_than_the_picture_widens_it() -> None:
    found = layout(Label("W" * 40, at(right=100), (Side.BELOW,)))
    assert found.window.right - found.window.left > PAGE_WIDTH * UNIT
    assert found.labels[0].box.right <= found.window.right


def test_lines_wrap_at_spaces_but_not_inside_a_measurement() -> None:
    said = both_units(inches("71/4"), System.INCHES)
    assert wrapped(said, 10) == ("17¾\u00a0in", "(45\u00a0cm)")
    assert wrapped("one two\nthree", 300) == ("one two", "three")


def test_strong_words_are_taken_to_be_wider() -> None:
    assert text_width("before", strong=True) > text_width("before")


@pytest.mark.parametrize(
    ("length", "first", "said"),
    [
        (inches("71/4"), System.INCHES, "17¾\u00a0in (45\u00a0cm)"),
        (inches("3/8"), System.INCHES, "⅜\u00a0in (1\u00a0cm)"),
        (mm(4), System.CENTIMETRES, "4\u00a0mm (³⁄₁₆\u00a0in)"),
        (inches(20), System.CENTIMETRES, "51\u00a0cm (20\u00a0in)"),
    ],
)
def test_lengths_are_set_with_true_fractions_in_both_units(length: Length, first: System, said: str) -> None:
    assert both_units(length, first) == said


@pytest.mark.parametrize(
    ("line", "through"),
    [
        (((0, 5), (10, 5)), True),
        (((5, 0), (5, 10)), True),
        (((3, 3), (4, 4)), True),
        (((0, 0), (1, 1)), False),
        (((0, 6), (4, 12)), False),
        (((2, 0), (2, 10)), False),
    ],
)
def test_line_through_a_box_is_told_from_one_beside_it(
    line: tuple[tuple[int, int], tuple[int, int]], through: bool
) -> None:
    assert crosses(line, Box(2, 2, 8, 8)) is through


def test_leader_goes_round_a_measure_where_it_can() -> None:
    """Beside the spot there is no room before the measure, and behind it a leader would cross it; below lines are in
    the way, which cost more than the way to the other side, but less than to be read as a part of the measure."""
    tall = Dimension(at(right=120), at(y=mm(300), right=120), Number("n", mm(300)))
    below = [Line(at(right=20, down=down), at(right=118, down=down), Role.CUT) for down in (92, 97)]
    word = Label("some words", at(right=100, down=80), (Side.RIGHT, Side.BELOW))
    (found,) = layout(*below, tall, word).labels
    assert found.flush is Side.BELOW
    assert found.box.right < 120 * UNIT
    (free,) = layout(*below, Line(tall.start, tall.end, Role.CUT), word).labels
    assert free.leader is not None
    assert meet(free.leader, ((120 * UNIT, 0), (120 * UNIT, 300 * UNIT)))


@given(st.lists(st.tuples(st.integers(-9, 9), st.integers(-9, 9)), min_size=4, max_size=4))
def test_two_lines_meet_where_their_ways_cross_between_their_ends(spots: list[tuple[int, int]]) -> None:
    (x1, y1), (x2, y2), (x3, y3), (x4, y4) = spots
    across = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
    inside = False
    if across:
        one = Fraction((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3), across)
        other = Fraction((x3 - x1) * (y2 - y1) - (y3 - y1) * (x2 - x1), across)
        inside = 0 < one < 1 and 0 < other < 1
    assert meet((spots[0], spots[1]), (spots[2], spots[3])) is inside


def test_a_length_written_to_the_millimetre_is_told_so_whatever_was_told_before() -> None:
    plain, fine = cm("41.7"), parse_length("41.7 cm").value
    assert plain == fine
    assert [both_units(each, System.CENTIMETRES).split(" (")[0] for each in (plain, fine, plain)] == [
        "41.5\u00a0cm",
        "41.7\u00a0cm",
        "41.5\u00a0cm",
    ]
