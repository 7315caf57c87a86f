"""Long texts take time in proportion to their length: a pattern that tries everything again would not."""

from __future__ import annotations

import time
from collections.abc import Callable
from contextlib import suppress

import pytest

from sitegen.quantities import (
    NotUnderstood,
    length_at,
    parse_length,
    parse_lengths,
    parse_number,
    parse_range,
    parse_ratio,
    parse_weight,
)

READERS: list[Callable[[str], object]] = [
    parse_length,
    parse_lengths,
    parse_range,
    parse_number,
    parse_ratio,
    parse_weight,
    lambda text: length_at(text, 0),
]
TEXTS: dict[str, Callable[[int], str]] = {
    "digits": lambda size: "1" * size,
    "points": lambda size: "1." * (size // 2),
    "blanks before": lambda size: " " * size + "x",
    "blanks behind": lambda size: "1" + " " * size + "x",
    "blanks and a unit": lambda size: "1" + " " * size + "gsm",
    "blanks and a percent sign": lambda size: "1" + " " * size + "x%",
    "blanks between": lambda size: "1 " + " " * size + "1/2 " + " " * size + "in (" + " " * size,
    "range words": lambda size: "1 to " * (size // 5),
    "commas": lambda size: "1, " * (size // 3),
    "close commas": lambda size: "1," * (size // 2),
    "pairs": lambda size: "1in(" * (size // 4),
    "equals": lambda size: "1 in = " * (size // 7),
    "brackets": lambda size: "(" * size,
    "slashes": lambda size: "1/2" * (size // 3),
    "halves": lambda size: "½" * size,
    "hyphens": lambda size: "1" + "-" * size,
    "pluses": lambda size: "1" + " +" * (size // 2),
}


def effort(read: Callable[[str], object], text: str) -> float:
    """The processor's time, the best of three, so that a busy machine counts as little as possible."""
    times = []
    for _ in range(3):
        begun = time.process_time()
        with suppress(NotUnderstood):
            read(text)
        times.append(time.process_time() - begun)
    return min(times)


@pytest.mark.parametrize("kind", TEXTS)
def test_a_text_eight_times_as_long_takes_about_eight_times_as_long(kind: str) -> None:
    """Sixty-four times would be the mark of trying everything again; a millisecond is the clock's own unrest."""
    short, long = TEXTS[kind](4_000), TEXTS[kind](32_000)
    for read in READERS:
        assert effort(read, long) <= 24 * effort(read, short) + 0.001


@pytest.mark.parametrize("kind", TEXTS)
def test_a_text_of_a_hundred_thousand_characters_is_refused_within_itself(kind: str) -> None:
    text = TEXTS[kind](100_000)
    for read in READERS[:-1]:
        with pytest.raises(NotUnderstood) as caught:
            read(text + "?")
        assert 0 <= caught.value.offset <= caught.value.offset + caught.value.size <= len(text) + 1
