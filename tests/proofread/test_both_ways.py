"""Texts that are told twice: with every result right, and with one of them wrong.

Each line of ``both_ways.txt`` is a text of which ``{17 in|16 in}`` gives the right result and a slip; `` / `` parts the
lines of captions. The right texts are chosen for what may be misread: lengths that have nothing to do with each other,
allowances that are counted already, seams between pieces, cloth that is bought with some to spare, two directions of one
piece. They must all be left alone. That a slip is missed is no fault of the same kind, so those are only counted.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from sitegen.prose import proofread

LINES = (Path(__file__).parent / "both_ways.txt").read_text(encoding="utf-8").splitlines()
_RESULT = re.compile(r"\{([^|}]*)\|([^}]*)\}")


def right_text(line: str) -> str:
    return _RESULT.sub(r"\1", line).replace(" / ", "\n")


def wrong_texts(line: str) -> Iterator[str]:
    """The text once for each of its results, with that one wrong."""
    for wrong in _RESULT.finditer(line):
        text = line[: wrong.start()] + wrong.group(2) + line[wrong.end() :]
        yield right_text(text)


def test_there_are_many_of_both() -> None:
    assert len(LINES) >= 190
    assert sum(1 for line in LINES for _ in wrong_texts(line)) >= 100


@pytest.mark.parametrize("line", LINES)
def test_right_text_is_left_alone(line: str) -> None:
    assert proofread(right_text(line)) == ()


def test_most_slips_are_found() -> None:
    wrong = [text for line in LINES for text in wrong_texts(line)]
    found = sum(1 for text in wrong if proofread(text))
    assert found >= 0.64 * len(wrong)
