"""Arithmetic errors in plain English: what is caught, what is right, and what nobody can know."""

from __future__ import annotations

import time

import pytest

from sitegen.prose import proof, proofread, read, said_in_markdown

WRONG = [
    ("The hem is 5/8 in (1 cm).", "unit-pair", "5/8 in (1.6 cm)"),
    ("Use a quarter inch or 16 millimeters.", "unit-pair", "a quarter inch or 6 mm"),
    ("It fits cloth of 45 to 36 in wide.", "range-order", "36 to 45 in"),
    ("16 in + 1/2 in + 1/2 in = 16 1/2 in", "written-sum", "17 in"),
    ("20 in × 80% = 17 in", "written-sum", "16 in"),
    ("16 in plus two 1/2 in seam allowances makes 16 1/2 in.", "told-sum", "17 in"),
    ("16 in plus 3/8 in at both ends, so 16 3/8 in.", "told-sum", "16 3/4 in"),
    ("Add 1 in to 16 in to get 18 in.", "told-sum", "17 in"),
    ("Take 1 in from 20 in and 18 in is left.", "told-sum", "19 in"),
    ("20 in less 1/2 in leaves 19 in.", "told-sum", "19 1/2 in"),
    ("80% of 20 in is 17 in.", "told-sum", "16 in"),
    ("Two thirds of 24 in is 18 in.", "told-sum", "16 in"),
    ("Twice 3/8 in is 5/8 in.", "told-sum", "3/4 in"),
    ("Half of 9 in is 4 in.", "told-sum", "4 1/2 in"),
    ("Divide 20 in by 4 to get 6 in.", "told-sum", "5 in"),
    ("8 students need 1/2 yd each, so buy 5 yd.", "told-sum", "4 yd"),
    ("The neckline is 20 in. Cut the band at 80% of it, 17 in.", "told-sum", "16 in"),
    ("Fold the 9 in strip in half; it is now 4 in wide.", "told-sum", "4 1/2 in"),
    ("Crown 62 cm, bow 28 cm, tails 36 cm: 116 cm.", "told-sum", "126 cm"),
    ("The cloth stretches from 4 in to 5 in, so its stretch is 20%.", "told-sum", "25%"),
    ("The cover is 45 x 32 cm. Add 1 cm all round and cut 47 x 33 cm.", "told-sum", "34 cm"),
    ("The quilt is 36in x 48in (91cm x 132cm).", "unit-pair", "122 cm"),
    ("Four handles of 22 in each and two of 10 in each: buy 118 in altogether.", "told-sum", "108 in"),
    ("The neckline is 20 in. Make the band 3 in shorter, plus two 1/2 in seams: 17 in.", "told-sum", "18 in"),
    ("Half the crown is 11 7/8 in, so the full crown measures 22 3/4 in.", "told-sum", "23 3/4 in"),
    ("The strap finishes at 2 1/2 in. Fold it double: cut it 4 1/2 in wide.", "told-sum", "5 in"),
    ("The scarf is 33 in long; its middle lies 16 1/4 in from either end.", "told-sum", "16 1/2 in"),
    ("Eight people, two napkins each, 70 in of hem per napkin: 1020 in.", "told-sum", "1120 in"),
    ("from 41 take away five inches and that leaves us with 35", "told-sum", "36 in"),
    ("Use 5/8 in, which in metric is 1 cm.", "unit-pair", "5/8 in, which in metric is 1.6 cm"),
    ("Pull the elastic to fit waists 36 in - 28 in.", "range-order", "28 to 36 in"),
    ("front twenty inches and back twenty one inches make forty two inches", "told-sum", "41 in"),
]
RIGHT = [
    "The hem is 5/8 in (1.5 cm), the seam 3/8 in (1 cm), the casing 1 in (2.5 cm).",
    "16 in plus two 1/2 in seam allowances makes 17 in.",
    "85% of 23 1/2 in is 20 in.",
    "It is slightly less than an inch (2.5 cm).",
    "About 80% of 20 1/4 in is about 16 in.",
    "The cuff is 9 in. Sew a 1/2 in seam, then cut the bias 2 in wide.",
    "Taper the leg from 20 in down to 16 in, and shorten it from 24 in to 22 in.",
    "Cut two sleeves 20 in long, hem them by 1 in, and set them into the 18 in armhole.",
    "Needle 80/12, size 12, 5 yards at $4 a yard is $20.",
    "Space 5 buttons over 16 in, so they are 4 in apart.",
    "12 in (30 cm) and 45 in (115 cm) wide cloth.",
    "The cloth stretches from 4 in to 5 in, so its stretch is 25%.",
    "The cover is 45 x 32 cm. Add 1 cm all round and cut 47 x 34 cm.",
    "The quilt is 36in x 48in (91cm x 122cm).",
    "Four handles of 22 in each and two of 10 in each: buy 108 in altogether.",
    "The neckline is 20 in. Make the band 3 in shorter, plus two 1/2 in seams: 18 in.",
    "Half the crown is 11 7/8 in, so the full crown measures 23 3/4 in.",
    "Two pieces, 34 cm each, use 68 cm of the 70 cm.",
    "five buttons three inches apart from the first to the last that's twelve inches",
    "A fat quarter is 18 in x 22 in, so you can get nine 6 in squares and a 4 in strip.",
]


@pytest.mark.parametrize(("text", "check", "should_be"), WRONG, ids=[text[:40] for text, _, _ in WRONG])
def test_wrong_result_is_found_and_put_right(text: str, check: str, should_be: str) -> None:
    (found,) = proofread(text)
    assert (found.check, found.should_be) == (check, should_be)
    assert text[found.start : found.end] == found.said


@pytest.mark.parametrize("text", RIGHT, ids=[text[:40] for text in RIGHT])
def test_right_text_is_left_alone(text: str) -> None:
    assert proofread(text) == ()


def test_a_sum_tells_its_working() -> None:
    (found,) = proofread("16 in plus two 1/2 in seam allowances makes 16 1/2 in.")
    assert found.working == ("16 in + 2 × 1/2 in = 17 in",)
    assert found.message == "16 in + 2 × 1/2 in makes 17 in, not 16 1/2 in."


def test_a_text_may_end_with_a_count() -> None:
    """Nothing stands behind the count: it is neither a factor nor a result."""
    assert proofread("1 yd – 5/8. 10") == ()


def test_a_text_may_end_with_a_share() -> None:
    assert proofread("30 – three metres ½") == ()


def test_a_text_may_end_with_a_hyphen() -> None:
    assert proofread("two mm times 16: half 2.5 yd off % fold-") == ()


def test_sums_do_not_reach_over_an_empty_line() -> None:
    assert proofread("The neckline is 20 in.\n\nCut the band at 80% of it, 17 in.") == ()


@pytest.mark.parametrize(
    "piece",
    ["1 in + ", "1 in, ", "16 in plus 1 in makes 17 in and ", " - 1 in", "each 2 ", "1 in (2 cm) ", "half ", '"2" ',
     "1,", "$1,", "{", "one hundred and ", "1-", "cut 16 in so ", "'2", "a'", "3 of 5 cm and 4 of 7 cm each total 40 cm ",
     "Cut 3 strips of 5 cm each, 2 cm at both ends, so 30 cm. ", "add 3 in and 4 in to the ", "2 in on each side and ",
     "18 in plus a seam ", "1/2 in seam allowance. ", "half of that 3 in ", "three of those ", "2 × (3 in + 4 in) = ",
     "twelve pulls at 8 in use up 108 in. ", "and so then, it is "],
)  # fmt: skip
def test_time_grows_with_the_text_and_no_faster(piece: str) -> None:
    """Sixteen times the text may take about sixteen times as long: forty would show a square in it."""

    def seconds(times: int) -> float:
        text = piece * times
        best = 1e9
        for _ in range(2):
            start = time.process_time()
            proofread(text)
            best = min(best, time.process_time() - start)
        return best

    few = seconds(60)
    assert seconds(960) < 40 * few + 0.05


def test_what_is_taken_off_a_reference_is_taken_off_nothing_else() -> None:
    text = (
        "Press 1 cm to the wrong side, then {a.casing} less 1 cm again. Sew close to the fold and leave a gap of 5 cm.\n"
        "Draw the elastic in with a safety pin, lap its ends by 3 cm and sew them."
    )
    assert proofread(text) == ()


def test_working_of_a_pair_tells_the_exact_length_and_the_mark_of_a_ruler() -> None:
    (found,) = proofread("Hem 2 cm (1 in).")
    assert found.message == "2 cm is 3/4 in, not 1 in."
    assert found.working == ("2 cm = 0.787 in, on a ruler 3/4 in",)


@pytest.mark.parametrize(
    "file", ["Cut 16 in plus 1 in, so 18 in.", "Cut 16&quot; plus **1&quot;**,\nso 18&quot; (30 cm)."]
)
def test_both_of_one_reading_are_what_each_is_alone(file: str) -> None:
    text = said_in_markdown(file)
    both = proof(text, lines_of=file)
    assert both.measurements == read(text, lines_of=file)
    assert both.findings == proofread(text, lines_of=file)
    assert both.findings
    for each in both.findings:
        assert file[each.start : each.end] == each.said
