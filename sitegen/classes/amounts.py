"""Reads how much of a supply one student needs out of the words of the tutorial."""

from __future__ import annotations

import re

from sitegen.quantities import Length, NotUnderstood, Rounding, Worked, given, parse_length
from sitegen.tutorial import Supply

_COUNTED = re.compile(r"(\d{1,4})\b\s*(.*)")


def amount_of(supply: Supply) -> tuple[Worked | None, str]:
    """How much of a supply one student needs, a length or a count, and what is counted: ``2`` and ``spools``.

    No amount when the tutorial says none: one serves all, of needles one each machine.
    """
    if supply.amount is None:
        return None, ""
    text, name = supply.amount.text, f"{supply.item.text} for one"
    try:
        return given(name, parse_length(text).value).rounded(Rounding.ENOUGH), ""
    except NotUnderstood:
        pass
    match = _COUNTED.fullmatch(text)
    if match is None or match[1] == "0":
        return given(name, 1, f"the tutorial says: {text}"), ""
    return given(name, int(match[1])), match[2]


def sold_by_length(supply: Supply) -> bool:
    """Whether the tutorial gives its amount as a length."""
    amount, _ = amount_of(supply)
    return amount is not None and isinstance(amount.value, Length)
