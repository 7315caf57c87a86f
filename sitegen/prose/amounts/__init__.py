"""Wrong results of sums in prices, times, weights and counts; lengths are only factors here and judged elsewhere."""

from sitegen.prose.amounts.find_wrong import WrongAmount, wrong_amounts

__all__ = ["WrongAmount", "wrong_amounts"]
