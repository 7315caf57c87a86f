"""Results that all the numbers before them make, whatever the words say: only ever doubtful."""

from __future__ import annotations

import pytest

from sitegen.findings import Severity
from sitegen.prose import proofread

DOUBTFUL = [
    ("I sewed twelve zip pulls at 8 in of tape a piece and used up 108 in.", "12 × 8 in", "96 in"),
    ("Sleeve of the pattern 23 1/4 in, her arm 21 1/2 in. Take out 1 1/4 in at the line.", "23 1/4 in − 21 1/2 in",
     "1 3/4 in"),
    ("The jersey pulls in by 10%; the piece of 52 cm that was washed measured only 41.5 cm.", "52 cm − 10%", "47 cm"),
    ("Four chairs: seat 1.3 m and back 0.9 m for each. They amount to 8.6 m.", "4 × (1.3 m + 0.9 m)", "8.8 m"),
    ("The roll holds 25 m. Hoops of 2.6 m and 3 m, together 5.6 m, which leaves 20.4 m on it.", "25 m − 5.6 m", "19.4 m"),
    ("From nape to waist is 41 cm, and the skirt hangs 49 cm below that. The dress, then, is 80 cm down the back.",
     "41 cm + 49 cm", "90 cm"),
]  # fmt: skip
SILENT = [
    "I sewed twelve zip pulls at 8 in of tape a piece and used up 96 in.",
    "The drop is 11 in, each strap is cut 28 in, and the top of the bag is 15 in around.",
    "Five eyelets, 3 in apart. From the first to the last is 12 in.",
    "Cut four squares of 6 1/2 in and join them in a row with 1/4 in seams. The row measures 24 1/2 in.",
    "The cloth is 44 in wide, not 60 in, so you will need 3 yd.",
    "The rod is 40 in, so at twice the fullness take 80 in of cloth, which is two widths of 45 in.",
    "The scarf is about 60 in and the hat takes 20 in, so 75 in.",
    "The waist was 58 cm and the band 56 cm; that is almost 97%. I cut it again at 49 cm.",
    "0 strips of 3 in make 4 in.",
]


@pytest.mark.parametrize(("text", "working", "should_be"), DOUBTFUL, ids=[text[:30] for text, _, _ in DOUBTFUL])
def test_a_near_miss_of_all_numbers_is_doubtful(text: str, working: str, should_be: str) -> None:
    (found,) = proofread(text)
    assert found.severity is Severity.DOUBTFUL
    assert found.should_be == should_be
    assert found.working == (f"{working} = {should_be}",)


@pytest.mark.parametrize("text", SILENT, ids=[text[:30] for text in SILENT])
def test_what_any_simple_sum_makes_or_nothing_is_left_alone(text: str) -> None:
    assert proofread(text) == ()
