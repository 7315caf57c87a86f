"""Names of numbers in words, as a person says them."""

from __future__ import annotations

import pytest

from sitegen.tutorial import body_words, words_of


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("neckband.cut_length", "neckband cut length"),
        ("seam_allowance", "seam allowance"),
        ("body.waist", "waist measurement"),
        ("body.upper_arm", "upper arm measurement"),
        ("longer_legs.new_cut_length", "new cut length with longer legs"),
        ("longer_legs.back.new_finished_length", "back new finished length with longer legs"),
        ("longer.new_cut_length", "new cut length once longer"),
        ("lengthened.new_cut_width", "new cut width once lengthened"),
        ("extra.new_cut_length", "new cut length with extra"),
        ("longer_legs.part_above", "longer legs part above"),
        ("longer_skirt.then.main.need", "main fabric needed with longer skirt"),
        ("longer.then.body.waist", "waist measurement once longer"),
        ("main.need", "main fabric needed"),
        ("main.buy", "main fabric to buy"),
        ("main.least", "main fabric at the least"),
        ("outer_fabric.for_repeat", "outer fabric for the repeat"),
        ("border.new_cut_length", "new cut length with border"),
        ("binding.needed", "binding needed"),
        ("body", "body"),
        ("new_front.side", "new front side"),
    ],
)
def test_words(name: str, words: str) -> None:
    assert words_of(name) == words


def test_words_where_all_is_of_the_body() -> None:
    assert body_words("body.upper_arm") == body_words("upper_arm") == "upper arm"
