"""Sums that are written out in a text, in words or with signs, done again."""

from sitegen.prose.arithmetic.find_wrong import WrongResult, wrong_results

__all__ = ["WrongResult", "wrong_results"]
