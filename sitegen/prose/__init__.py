"""Measurements in running text, and what they say. Knows nothing of pages or of the rules of checks."""

from sitegen.prose.pairs import find_pairs

__all__ = ["find_pairs"]
