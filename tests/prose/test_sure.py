"""What is told as wrong, and what only as doubtful. The texts are invented; every sum can be done again by hand."""

from __future__ import annotations

import pytest

from sitegen.findings import Severity
from sitegen.prose import TextFinding, marked_text, pieces_of, proofread, read


def only(text: str) -> TextFinding:
    (found,) = proofread(text)
    return found


@pytest.mark.parametrize(
    "text",
    [
        "Cut 16 in plus two 1/2 in seam allowances, so 16 1/2 in.",  # one allowance forgotten: made of the parts alone
        "80% of 20 in is 17 in.",
        "A bag of 30 cm plus 2 cm makes 34 cm.",
        "Fold the 9 in strip in half, so it is 4 in wide.",
        "Cut 16 in (43 cm).",
        "6 in + 3 in = 10 in",
    ],
)
def test_firm_words_and_slips_that_nothing_else_explains_are_wrong(text: str) -> None:
    assert only(text).severity is Severity.WRONG


HIPS = "Hip 100 cm, a quarter 25 cm. Front one centimetre more, back one less: 26 cm and 24 cm. Together 50 cm."


@pytest.mark.parametrize(
    ("text", "should_be"),
    [
        (HIPS, "51 cm"),  # half of 100 cm
        ("Cut it at 22 cm with 18 cm of zip and 4 cm below, so 26 cm and 44 cm in all.", "48 cm"),  # 18 and 26; 2 × 22
        # loose words only: 90 cm is another length
        ("The cloth is 140 cm wide, so four 35 cm strips come off it. Each is 90 cm long plus 3 cm.", "105 cm"),
    ],
)
def test_what_other_numbers_explain_or_loose_words_tie_is_doubtful(text: str, should_be: str) -> None:
    found = only(text)
    assert (found.severity, found.should_be) == (Severity.DOUBTFUL, should_be)


def test_what_is_doubtful_says_on_what_it_depends() -> None:
    found = only(HIPS)
    assert found.message == "If 50 cm is meant to be one centimetre + 26 cm + 24 cm, it should be 51 cm."
    assert found.working == ("one centimetre + 26 cm + 24 cm = 51 cm",)


def test_a_question_mark_is_put_to_what_is_doubtful() -> None:
    text = f"{HIPS} Cut 16 in plus 1 in, so 18 in."
    marked = marked_text(pieces_of(text, read(text), proofread(text)))
    assert marked.endswith("Together ⟦[50 cm] → 51 cm?⟧. Cut [16 in] plus [1 in], so ⟦[18 in] → 17 in⟧.")
