"""Results that stand apart from their parts: told by the words of a sentence or two, and excused in doubt."""

from __future__ import annotations

import pytest

from sitegen.prose import proofread

WRONG = [
    # a count and one length
    ("Each D-ring tab takes 2 1/2 in. Cut six of them from 16 in.", None),
    ("Eight equal gores, hem 3.2 m all round. Each gore therefore measures 45 cm.", "40 cm"),
    ("Ten children, 40 cm of ribbon each, and 1 m for the teacher: 4 m in all.", None),
    ("Ribbon at 30 cm apiece makes 1.6 m for six bows.", "1.8 m"),
    # halves and doubles that no number names
    ("Fold the collar strip, 5 1/2 in wide, along its centre line. It is then 2 1/4 in wide.", "2 3/4 in"),
    ("Find the middle of the pelmet, which is 37 in long, by measuring 19 1/2 in in from one end.", "18 1/2 in"),
    ("One strap is 13 1/2 in, so for both that's 26 in of webbing.", "27 in"),
    ("It is cut on the fold. The piece is 24 cm, so the whole front is 46 cm.", "48 cm"),
    # shares
    ("The godet takes up one third of the panel. On a panel of 27 in, it starts 8 in above the hem.", "9 in"),
    ("Reduce the 60 cm band to 90%, that is 56 cm.", "54 cm"),
    # sums and differences of several lengths
    ("Drop 135 cm, heading 5 cm, hem 15 cm, so cut 160 cm.", "155 cm"),
    ("Its loops are 6 cm high with 1 cm turned in at each end, so they are cut 7 cm.", "8 cm"),
    ("Waist 30 in, ease 1 in, underlap 1 1/2 in, two seams of 5/8 in: cut 33 in.", "33 3/4 in"),
]  # fmt: skip
RIGHT = [
    # not a result, but a thing
    "Fold the 7 in strip in half. Stitch the long edge at 1/4 in, leaving a 4-inch opening.",
    "Cut eight squares at 7 in each from a 60 in strip.",
    "Wool flannel, 60\"-wide: lay two 29 in pieces side by side.",
    # two directions
    "The bag is 30 cm wide and 36 cm tall, with a 10 cm flap. The handles are 60 cm long.",
    "Window: 36 in wide, 48 in tall.",
    # what is said twice
    "The opening is 22 in. 85% of it is 18.7 in; add 1/2 in for the two 1/4 in seams and cut 19.2 in.",
    "Felt 6 cm, binding 2 cm, strip 4 cm. The three side by side have 12 cm.",
    "Six buttons make five spaces over 17 1/2 in, so one every 3 1/2 in.",
    # room left on purpose, and what a shop sells
    "For six pupils at 45 cm each you need 2.7 m, so buy 3 m.",
    "Cut the lining 10 cm shorter, i.e. 174 cm. For three drops 5.3 m is enough.",
    "The bench is 120 cm long. Three cushions of 39 cm leave a little play.",
    # a reference stands for a number that nobody knows here
    "It is 8 in long and 7 in wide. From {pocket.cut_length} you took 1 3/8 in at the top.",
    # seams between pieces
    "Two widths of 137 cm, joined with a 1.5 cm seam, are 271 cm across.",
    "Cut eight 5 in squares and sew them in a row with 1/4 in seams: the row measures 36 1/2 in.",
    "The bodice is 16 in and the skirt 24 in, joined with 1/2 in seams, so the dress is 39 in long.",
    # goes on as before
    "I cut it 18 in tall, the hem eats up 1 1/2 in and the seam another 1/2 in, so it ends up 16 in.",
    "For a runner of 137 cm, with a 4 cm hem and a 3 cm tuck at each end, cut 151 cm.",
]  # fmt: skip


@pytest.mark.parametrize(("text", "should_be"), WRONG, ids=[text[:50] for text, _ in WRONG])
def test_contradicted_result_is_found(text: str, should_be: str | None) -> None:
    found = proofread(text)
    assert found
    if should_be is not None:
        assert [each.should_be for each in found] == [should_be]


@pytest.mark.parametrize("text", RIGHT, ids=[text[:50] for text in RIGHT])
def test_result_in_doubt_is_left_alone(text: str) -> None:
    assert proofread(text) == ()


@pytest.mark.parametrize("ending", ["both", "each", "total", "half", "left"])
def test_a_relation_that_holds_is_never_reported(ending: str) -> None:
    texts = {
        "both": "One cuff is 9 in, so both are 18 in.",
        "each": "A 20 in strip makes four loops of 5 in each.",
        "total": "Yoke 7 in, tier 12 in, flounce 9 in, 28 in in total.",
        "half": "The scarf is 33 in long; its middle lies 16 1/2 in from either end.",
        "left": "From 3 yd I used 2 1/4 yd, so 3/4 yd is left.",
    }
    assert proofread(texts[ending]) == ()
