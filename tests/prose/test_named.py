"""Lengths that are given once and then only named in a sum, and names that stand for none."""

from __future__ import annotations

import pytest

from sitegen.prose import proofread
from sitegen.prose.arithmetic.named import named_lengths
from sitegen.prose.find import reading_of


def names(text: str) -> list[tuple[str, str]]:
    """Each name with the length that it stands for, both as they are written."""
    reading = reading_of(text)
    starts, ends = reading.tokens.starts, reading.tokens.ends
    return [
        (text[starts[at] : ends[name.behind - 1]], text[slice(*reading.span(name.length))])
        for at, name in named_lengths(reading).items()
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("A strip of felt, 30 cm wide. 174 cm less the felt is grey.", [("felt", "30 cm")]),
        (
            "It is 35 cm long and 25 cm wide. Twice the length plus twice the width.",
            [("length", "35 cm"), ("width", "25 cm")],
        ),
        ("Finished width 52 cm, cut width 55 cm. The finished width plus 3 cm.", [("width", "52 cm")]),
        ("The length of the cape is 75 cm. Half the length of the cape.", [("length", "75 cm")]),
        ("Hip: 98 cm. Add 4 cm of ease to the hip.", [("hip", "98 cm")]),
        ("The curtain is 205 cm long. 3 cm shorter than the curtain.", [("curtain", "205 cm")]),
        ("Waist 70 cm. Take your waist measurement and add 5 cm.", [("waist measurement", "70 cm")]),
        ("30 in around the mouth. It goes once around the mouth.", [("mouth", "30 in")]),
    ],
)
def test_a_name_is_the_one_length_that_was_given_to_it(text: str, expected: list[tuple[str, str]]) -> None:
    assert names(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "It is 25 cm wide. Twice the length.",
        "The lid is 20 cm wide and the box 30 cm wide. Twice the width.",
        "Cut width 55 cm. Half the finished width.",
        "The net is 40 cm wide. The net covers the face.",
        "The width is 40 cm plus 2 cm. Twice the width.",
        "A waist of about 70 cm. Twice the waist.",
        "Twice the width. It is 25 cm wide.",
        "It is 12 cm deep. Plus half the depth (6 cm).",
        "It is 12 cm deep. 6 cm for half the depth.",
        "The chest is 92 cm. The chest plus the ease plus 2 cm.",
        "Cotton 150 cm wide. Half the width.",
        "The bag is 40 cm wide. Half the width of the pocket.",
    ],
)
def test_a_name_of_several_lengths_or_of_none_stays_a_word(text: str) -> None:
    assert names(text) == []


@pytest.mark.parametrize(
    ("text", "said", "working"),
    [
        ("The foam is 9 cm thick. The height is 9 cm. Half the height is 4 cm.", "4 cm", "1/2 × 9 cm = 4.5 cm"),
        ("Seams 1 cm. The panel is 40 cm wide; with both seam allowances 41 cm.", "41 cm", "40 cm + 2 × 1 cm = 42 cm"),
        ("The edge is 150 × 3.14 = 417 cm. The side is 30 cm.", "417 cm", "150 × 3.14 = 471 cm"),
        (
            "Finished cushion 45 cm square; seams 1.5 cm. Each panel is cut 46.5 cm square.",
            "46.5 cm",
            "45 cm + 2 × 1.5 cm = 48 cm",
        ),
    ],
)
def test_what_a_named_length_makes_is_done_again(text: str, said: str, working: str) -> None:
    assert [(each.said, each.working) for each in proofread(text)] == [(said, (working,))]
