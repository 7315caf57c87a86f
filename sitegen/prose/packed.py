"""A text in which one sign stands for several of its file, as ``"`` for ``&quot;``, and its places in that file."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass
from itertools import accumulate

FILLER = "\ufdd0"
"""Stands behind a sign once for each further sign of the file that it stands for; itself it is no character."""
_FILLED = re.compile(FILLER + "+")


@dataclass(frozen=True, slots=True)
class Packed:
    """The text without its fillers; ``starts`` are where they were taken out, ``left_out`` how many up to there."""

    text: str
    starts: tuple[int, ...]
    left_out: tuple[int, ...]

    def place(self, offset: int) -> int:
        """The offset in the file; behind a sign that is behind all the signs of the file for which it stands."""
        return offset + self.left_out[bisect_right(self.starts, offset)]


def packed(text: str) -> Packed | None:
    """The text without its fillers, or None where it has none."""
    if FILLER not in text:
        return None
    sizes = [(match.start(), len(match.group())) for match in _FILLED.finditer(text)]
    sums = tuple(accumulate((size for _, size in sizes), initial=0))
    starts = tuple(start - before for (start, _), before in zip(sizes, sums, strict=False))
    return Packed(_FILLED.sub("", text), starts, sums)
