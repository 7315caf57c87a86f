"""Texts that say the same with other amounts, laid upon each other: their words once, their amounts side by side."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

_ONE = (
    r"(?:(?<== )−)?(?<![\w.])\d+(?: \d+/\d+|/\d+|[.,]\d+)?"  # 17, 17 3/4, 3/4, 1.9 or 1,9; −2 as a result
    r"(?:%| (?:sq in|in²|in|yd|mm|cm²|cm|m)(?![\w²]))?\*?"
)
_AMOUNT = re.compile(rf"({_ONE}(?: \({_ONE}\))?)")


@dataclass(frozen=True, slots=True)
class Aligned:
    """What the texts share and where they differ; there is one text more in ``words`` than there are amounts."""

    words: tuple[str, ...]
    """Before, between and after the amounts."""
    amounts: tuple[tuple[str, ...], ...]
    """At each place the amount of every text, with its unit; one with another in brackets behind it is one amount."""


def aligned(texts: Sequence[str]) -> Aligned | None:
    """The texts laid upon each other; None when they differ in more than their amounts."""
    parts = [_AMOUNT.split(text) for text in texts]
    if len({tuple(each[::2]) for each in parts}) != 1:
        return None
    return Aligned(tuple(parts[0][::2]), tuple(zip(*(each[1::2] for each in parts), strict=True)))
