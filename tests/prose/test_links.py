"""What joins a length to the next one: every pattern of the table joins its own example."""

from __future__ import annotations

import pytest

from sitegen.prose import Kind, proofread
from sitegen.prose.find import reading_of
from sitegen.prose.links import BY_SIGNS, IN_WORDS, Way, link_between


@pytest.mark.parametrize("way", [*BY_SIGNS, *IN_WORDS], ids=lambda way: str(way.example))
def test_each_example_is_joined_as_its_pattern_says(way: Way) -> None:
    reading = reading_of(way.example)
    one, other = (each for each in reading.numbers if each.kind is Kind.LENGTH)
    link = link_between(reading, one, other)
    assert link is not None
    assert link.farthest == way.farthest


@pytest.mark.parametrize("way", [*BY_SIGNS, *IN_WORDS], ids=lambda way: str(way.example))
def test_no_example_is_wrong(way: Way) -> None:
    assert proofread(way.example) == ()


@pytest.mark.parametrize(
    "text",
    [
        "Cut it 10 in and the hems, call it 30 cm.",
        "Mark half of 10 in, 12 cm.",
        "Cut it 22 in (cut the other 60 cm).",
        "Cut it 10 in, then 30 cm, and stack them.",
    ],
)
def test_two_lengths_are_not_one(text: str) -> None:
    reading = reading_of(text)
    one, other = (each for each in reading.numbers if each.kind is Kind.LENGTH)
    assert link_between(reading, one, other) is None
