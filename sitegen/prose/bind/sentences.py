"""The sentences of a text, and the sizes that one of them speaks of."""

from __future__ import annotations

import re

from sitegen.tutorial import Tutorial

_END = re.compile(r"[.!?](?=\s)|\n\s*\n|\n\s*(?=[-*|]\s|\d{1,2}[.)]\s)")


def sentence_ends(text: str) -> tuple[int, ...]:
    """Where the sentences of a text begin and end, its own begin and end included."""
    return (0, *(match.end() for match in _END.finditer(text)), len(text))


def sizes_named(sentence: str, tutorial: Tutorial) -> tuple[int, ...]:
    """The sizes that a sentence names, ``in size M``, by their index; none where it speaks of all."""
    return tuple(
        index
        for index, size in enumerate(tutorial.sizes)
        if re.search(rf"\bsize {re.escape(size)}(?![\w-])", sentence, re.IGNORECASE)
    )


def sizes_around(text: str, start: int, end: int, tutorial: Tutorial) -> tuple[int, ...]:
    """The sizes that the sentence names which holds what stands from one offset of a text to another."""
    ends = sentence_ends(text)
    first = max(each for each in ends if each <= start)
    return sizes_named(text[first : min(each for each in ends if each >= end)], tutorial)
