"""The sentences of a text, and the sizes that one of them speaks of."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from sitegen.tutorial import Tutorial

_END = re.compile(r"[.!?](?=\s)|\n\s*\n|\n\s*(?=[-*|]\s|\d{1,2}[.)]\s)")


_REACH = 400
"""Characters before and behind a number within which its sentence is looked at, however long it is."""


def sentence_ends(text: str) -> tuple[int, ...]:
    """Where the sentences of a text begin and end, its own begin and end included."""
    return (0, *(match.end() for match in _END.finditer(text)), len(text))


def sentence_around(ends: Sequence[int], start: int, end: int) -> tuple[int, int]:
    """From where to where the sentence reaches that holds what stands from one offset to another, as far as it is near.

    ``ends`` are those of ``sentence_ends``.
    """
    first, last = ends[bisect_right(ends, start) - 1], ends[bisect_left(ends, end)]
    return max(first, start - _REACH), min(last, end + _REACH)


def sizes_named(sentence: str, tutorial: Tutorial) -> tuple[int, ...]:
    """The sizes that a sentence names, ``in size M``, by their index; none where it speaks of all."""
    return tuple(
        index
        for index, size in enumerate(tutorial.sizes)
        if re.search(rf"\bsize {re.escape(size)}(?![\w-])", sentence, re.IGNORECASE)
    )


def sizes_around(text: str, start: int, end: int, tutorial: Tutorial) -> tuple[int, ...]:
    """The sizes that the sentence names which holds what stands from one offset of a text to another."""
    first, last = sentence_around(sentence_ends(text), start, end)
    return sizes_named(text[first:last], tutorial)
