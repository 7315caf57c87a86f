"""Word lists of the grammar."""

from __future__ import annotations


def words(text: str) -> frozenset[str]:
    """The words of a line, as a set to look them up in."""
    return frozenset(text.split())
