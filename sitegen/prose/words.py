"""Word lists of the grammar."""

from __future__ import annotations


def words(text: str) -> frozenset[str]:
    """The words of a line, as a set to look them up in."""
    return frozenset(text.split())


MONEY = words("dollar dollars bucks buck quid euro euros cents pence penny")
"""Money in words; ``pounds`` may be a weight."""
PAYING = words("cost costs price priced paid pay pays sell sells charge charges spent profit")
"""Words that speak of money."""
