"""Names that are close to a misspelt one."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """The known words most like this one, best first; letter case does not count."""
    by_fold = {name.casefold(): name for name in known}
    close = get_close_matches(word.casefold()[:100], by_fold, n=most, cutoff=0.6)
    return tuple(by_fold[name] for name in close)


def meant(word: str, known: Iterable[str]) -> str:
    """The known name of which this one is a misspelling, to be put instead of it; empty where none is near enough.

    A name of several parts, ``front.side`` or ``plan of front``, has as many as the known one, and each is near in
    spelling to its own: ``front.cut_width`` is no misspelling of ``cuff.cut_width``.
    """
    parts = _PARTS.split(word.casefold()[:100])
    for name in nearest(word, known):
        others = _PARTS.split(name.casefold())
        if len(others) == len(parts) and all(map(_is_near, parts, others)):
            return name
    return ""


_PARTS = re.compile(r"[.\s]+")


def _is_near(one: str, other: str) -> bool:
    """Whether at most every fourth letter is wrong, missing, too much, or has changed places with the next."""
    return _slips(one, other) <= max(1, max(len(one), len(other)) // 4)


def _slips(one: str, other: str) -> int:
    """How many such letters there are: the optimal string alignment distance."""
    before: list[int] = []
    row = list(range(len(other) + 1))
    for at, letter in enumerate(one, start=1):
        before, above, row = row, before, [at]
        for to, wanted in enumerate(other, start=1):
            least = min(before[to] + 1, row[to - 1] + 1, before[to - 1] + (letter != wanted))
            if above and to > 1 and letter == other[to - 2] and one[at - 2] == wanted:
                least = min(least, above[to - 2] + 1)
            row.append(least)
    return row[-1]


def either(choices: Iterable[str]) -> str:
    """What could stand there, in words: ``knife, box or tuck``; nothing where there is no choice."""
    *others, last = tuple(choices) or ("nothing",)
    return f"{', '.join(others)} or {last}" if others else last
