"""Sums in plain statements, words that point back, and the seam allowance that a text names once."""

from __future__ import annotations

import pytest

from sitegen.prose import proofread


def found(text: str) -> list[tuple[str, str, tuple[str, ...]]]:
    return [(each.said, each.should_be, each.working) for each in proofread(text)]


@pytest.mark.parametrize(
    ("text", "said", "working"),
    [
        (
            "For the height: 15 in of bag, 2 in for half the bottom, 1/2 in for the bottom seam and 1/2 in for the top seam."
            " Total 17 1/2 in.",
            "17 1/2 in",
            "15 in + 2 in + 1/2 in + 1/2 in = 18 in",
        ),
        (
            "The hem has used 3 cm and the lower edge 1 cm, so of the 24 cm there remain 21 cm.",
            "21 cm",
            "24 cm − 3 cm − 1 cm = 20 cm",
        ),
        ("Two borders of 9 cm added to the 90 cm give a quilt 99 cm wide.", "99 cm", "2 × 9 cm + 90 cm = 108 cm"),
        ("Once around is 41 1/2 + 46, times two: 157 in.", "157 in", "2 × (41 1/2 + 46) = 175 in"),
        (
            "Take 18 in from 27 in, halve what is left, and there is 5 1/2 in at each side.",
            "5 1/2 in",
            "(27 in − 18 in) ÷ 2 = 4 1/2 in",
        ),
        (
            "Cut it 22 in long, overlap the ends by 1 in and you get a ring of 23 in.",
            "23 in",
            "22 in − 1 in = 21 in",
        ),
        ("Gather a 40 in ruffle to 20 in: a ratio of 3 to 1.", "40 in", "3 × 20 in = 60 in"),
        ("Gathering ratio 2.5 to 1: 40 cm of frill for 20 cm of edge.", "40 cm", "2.5 × 20 cm = 50 cm"),
        ('A 27" waist with 2" ease makes 30".', '30"', '27" + 2" = 29 in'),
        (
            "Start 6 mm from the edge. Sew 7 more rows, each 7 mm from the last. The last row is 6 cm from the edge.",
            "6 cm",
            "6 mm + 7 × 7 mm = 5.5 cm",
        ),
        (
            "At 90% of 74 cm, so 66.6 cm, and 2 cm to overlap: 68.6 cm in all. The leg is 95 cm long finished. Add a hem of"
            " 2 cm and a casing of 3.8 cm, so cut it 101.8 cm long.",
            "101.8 cm",
            "95 cm + 2 cm + 3.8 cm = 100.8 cm",
        ),
        ("The casing is 2.5 + 0.3 + 1 = 3.8 cm. Stretch: 10 cm goes to 15 cm, that is 40%.", "40%", "(15 cm − 10 cm) ÷ 10 cm = 50%"),
        ("A cut length of 232 cm. Three of those come to 464 cm.", "464 cm", "3 × 232 cm = 696 cm"),
        ("We want a base 4 in deep, so the square you cut is half of that, 4 in on a side.", "4 in", "4 in ÷ 2 = 2 in"),
    ],
)  # fmt: skip
def test_statement_is_done_again(text: str, said: str, working: str) -> None:
    assert [(each[0], each[2]) for each in found(text)] == [(said, (working,))]


@pytest.mark.parametrize(
    "given",
    [
        "Seams are 1/2 in throughout.",
        "Use a 1/2 in seam allowance.",
        "Seam allowance everywhere: 1/2 in.",
        "We sew half-inch seams.",
    ],
)
@pytest.mark.parametrize(
    "named",
    [
        "18 in plus a seam on both sides is {} square.",
        "18 in and an allowance at either end makes {}.",
        "18 in plus the two seam allowances comes to {}.",
        "18 in and, with the seams, {} to cut.",
    ],
)
def test_allowance_that_is_only_named_is_the_one_of_the_text(given: str, named: str) -> None:
    assert found(f"{given} {named.format('19 in')}") == []
    if "with" not in named:
        assert [each[:2] for each in found(f"{given} {named.format('18 1/2 in')}")] == [("18 1/2 in", "19 in")]


def test_of_two_allowances_none_is_meant() -> None:
    text = (
        "Side seams take a 1/2 in seam allowance, the hem seam 1 in seam allowance. 18 in plus a seam on both sides is"
    )
    assert found(f"{text} 18 1/2 in.") == []


@pytest.mark.parametrize(
    "text",
    [
        "The strip: 42 cm plus 1 cm at each end, 44 cm. Each of the ribbons for it is 45 cm long, and there are two.",
        "The first pass is a quarter inch and the second pass is three eighths so the two of them use up five eighths"
        " of an inch",
        "Mark the buttonholes 7 cm apart. With six of them the first and last are 35 cm apart.",
        "Stack eight of them, each 3 x 6 in, and you have a column 24 in tall.",
        "Two strips of 2 1/2 in sewn together with a 1/4 in seam make 4 1/2 in.",
    ],
)
def test_what_only_looks_like_a_statement_is_left_alone(text: str) -> None:
    assert found(text) == []


def test_what_a_sum_makes_is_told_exactly_and_its_rounding_is_right() -> None:
    text = "36 cm of front and 12 cm of depth, plus 1.2 cm on both sides: {} wide."
    assert found(text.format("50.4 cm")) == found(text.format("50.5 cm")) == []
    assert [each[:2] for each in found(text.format("49.2 cm"))] == [("49.2 cm", "50.4 cm")]


def test_stitch_settings_are_a_range_and_no_length() -> None:
    assert found("Turn up 3 cm, trim it to 1 cm. Needle 100, stitch length 3.5 to 4 mm. The leg is 82 cm.") == []


@pytest.mark.parametrize(
    "text",
    [
        "Mark flags 00 cm across the top. Ten of them, edge to edge, fill 3 m of tape.",
        "The hem is 4 cm, and 0 of those make 3 cm.",
        "Once around is 41 in + 46 in, times 0: 157 in. Half of that, 0 cm.",
    ],
)
def test_nothing_stops_at_a_length_of_nothing(text: str) -> None:
    assert len(proofread(text)) <= 1
