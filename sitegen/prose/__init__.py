"""Measurements in running text, and what they say. Knows nothing of pages or of the rules of checks."""

from sitegen.prose.pairs import find_pairs
from sitegen.prose.sums import WrittenSum, find_sums

__all__ = ["WrittenSum", "find_pairs", "find_sums"]
