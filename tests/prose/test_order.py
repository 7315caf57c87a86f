"""Lengths in the wrong order: what should grow and does not, and a least above the most."""

from __future__ import annotations

import pytest

from sitegen.prose import proofread


@pytest.mark.parametrize(
    ("text", "put"),
    [
        ("The straps shorten from 40 to 95 cm once the sack is full.", "95 to 40 cm"),
        ("The belt lengthens from 11 to 6 in.", "6 to 11 in"),
        ("The opening closes from four to eleven inches.", "11 to 4 in"),
        ("Elastic no narrower than 20 mm and no wider than 15 mm.", "15 mm and no wider than 20 mm"),
        ("It is at its shortest 60 cm, at its longest 45 cm.", "45 cm, at its longest 60 cm"),
        ("Topstitch 6 to 3 mm in from the fold.", "3 to 6 mm"),  # the fold is a place, and halves nothing
        ("Gather the skirt. Leave a hem of 3 in to 2 in.", "2 to 3 in"),
        ("Trim a seam of 5/8 in to 3/8 in.", "3/8 to 5/8 in"),
        ("Trim the canvas back by 5 to 3 mm.", "3 to 5 mm"),
        ("Grade the seam and clip every 20 to 15 mm.", "15 to 20 mm"),
        ("Allow for ease 4 in to 2 in.", "2 to 4 in"),
        ("For topstitching go 3/8 to 1/8 in from the edge.", "1/8 to 3/8 in"),
    ],
)
def test_lengths_in_the_wrong_order_are_told(text: str, put: str) -> None:
    found = proofread(text)
    assert [(each.check, each.should_be) for each in found] == [("range-order", put)]
    assert text[found[0].start : found[0].end]


@pytest.mark.parametrize(
    "text",
    [
        'The ratio of ruffle to edge is 2:1, 40" to 20".',
        "The straps shorten from 95 to 40 cm once the sack is full.",
        "The belt lengthens from 6 to 11 in.",
        "Shorten the hem. The belt goes from 6 to 11 in.",
        "The elastic gathers and stretches from 40 to 95 cm.",
        "Elastic no narrower than 15 mm and no wider than 20 mm.",
        "Measure from 6 to 11 in below the waist.",
        "The belt lengthens from 6",
        "Fold the strip from 6 to 3 cm.",
        "Folded in half it goes from 6 to 3 cm.",
        "Then go from 3/8 to 1/8 in at the point.",
        'Gather 40" to 20".',
        'Trim 5/8" to 1/4".',
        'Pull 40" to 20" – it is tight.',
        'Ease 14" to 13".',
        "Match the notches, then ease 14 in to 13 in.",
        "Grade the layers 10 mm to 5 mm.",
        'Content-Type: text/plain; charset="iso-8859-1"',
    ],
)
def test_lengths_in_order_are_left_alone(text: str) -> None:
    assert proofread(text) == ()
