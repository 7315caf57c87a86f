"""Texts that end in their midst, as drafts and captions do: behind every number, or begin behind it."""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from labelled_passages import passages

from sitegen.prose import proofread

_NUMBER = re.compile(r"\d[\d.,/]*|\b(?:half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\b")


@pytest.mark.parametrize("name", ["seen", "seen_tenth", "seen_lake"])
def test_a_text_may_end_or_begin_anywhere(name: str) -> None:
    for passage in passages(name):
        for number in _NUMBER.finditer(passage.text):
            for text in (passage.text[: number.end()], passage.text[number.start() :], passage.text[number.end() :]):
                for found in proofread(text):
                    assert text[found.start : found.end].split() == found.said.split()


def test_a_bare_count_may_be_the_last_word() -> None:
    assert proofread("1 yd – 5/8. 10") == ()


def test_a_bare_decimal_may_be_the_last_word() -> None:
    text = "A quarter of the hip, 92 cm, gives 24 cm before ease. Reinforce the corners with a triangle, 0.8"
    assert [found.should_be for found in proofread(text)] == ["23 cm"]
