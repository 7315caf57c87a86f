"""Names that are close to a misspelt one."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, known: Iterable[str], most: int = 3) -> tuple[str, ...]:
    """The known words most like this one, best first; letter case does not count."""
    by_fold = {name.casefold(): name for name in known}
    close = get_close_matches(word.casefold()[:100], by_fold, n=most, cutoff=0.6)
    return tuple(by_fold[name] for name in close)
