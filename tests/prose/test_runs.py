"""Amounts that no set phrase ties to a result, taken whole. The texts are invented; every sum can be done by hand."""

from __future__ import annotations

import pytest

from sitegen.findings import Severity
from sitegen.prose import proofread


@pytest.mark.parametrize(
    ("right", "slipped", "words"),
    [
        ("£18.40", "£18.60", "£23.00 less 20%"),
        ("£76.50", "£75.50", "£90.00 less 15%"),
        ("£32.00", "£33.00", "four at £7.25 + £3.00"),
        ("$66", "$56", "30% of $220"),
        ("£17.00", "£16.00", "85 at 20p"),
        ("27", "26", "12 + 6 + 9"),
        ("7 hours", "8 hours", "35 minutes × A dozen"),
    ],
)
def test_all_numbers_before_a_result_make_it(right: str, slipped: str, words: str) -> None:
    texts = {
        "£23.00 less 20%": "Shears, list price £23.00. The school gets 20% off, so put {} on the form.",
        "£90.00 less 15%": "Sale: 15% off all covers. The double, normally £90.00, is {} until Sunday.",
        "four at £7.25 + £3.00": "Can you do it for less? I had four ends at £7.25 apiece, and a £3.00 zip made it {} all told.",
        "30% of $220": "Booking: a plain dress is $220 and I take 30% up front. That's {} to hold your place.",
        "85 at 20p": "20p from each bear goes to the fund. 85 bears since June, so there should be {} in the tin.",
        "12 + 6 + 9": "Group A has 12, group B 6 and group C 9. Each needs shears, so have {} ready.",
        "35 minutes × A dozen": "Totes made in a batch take 35 minutes each. A dozen is {}, with the radio on.",
    }
    text = texts[words]
    assert proofread(text.format(right)) == ()
    (found,) = proofread(text.format(slipped))
    assert (found.severity, found.said, found.working[0].rsplit(" = ", 1)[0]) == (Severity.DOUBTFUL, slipped, words)


@pytest.mark.parametrize(
    "text",
    [
        "Plain hem $24. Cuffed hem $32. Two plain and one cuffed in the pile: $80, ready at 3.",  # the one stands in a word
        "Had 8 coasters, made 5 more, melted 2 with the iron. So 11.",  # one taken off
        "Cloth was £48 for 10 m at £4.80 a metre. With the tape that's £64.50.",  # of which nobody knows the price
        "Fabric £13.50, cord £4.80 and filling £11.70, so £30.00. The one in the shop was £54.",  # a total and its parts
        "Rail 2.4 m, so 4.8 m gathered; 4.8 ÷ 1.4 is about 3.4 so I need four widths.",
    ],
)
def test_what_may_be_right_in_another_way_is_left_alone(text: str) -> None:
    assert proofread(text) == ()
