"""A finding and its place: data first, words on a screen later."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Severity(Enum):
    """How bad it is. Only ``wrong`` stops a release."""

    WRONG = "wrong"
    DOUBTFUL = "doubtful"
    HINT = "hint"

    @property
    def rank(self) -> int:
        """0 for the worst."""
        return list(Severity).index(self)


@dataclass(frozen=True, order=True, slots=True)
class Place:
    """A place in a file, as an editor counts: lines and columns from 1, columns in characters.

    ``end_column`` is the column behind the last character, on the same line; 0 when the end is not known.
    """

    file: str
    line: int = 1
    column: int = 1
    end_column: int = 0

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check has to say about one place.

    ``said`` is the text found there, as it stands in the file; ``should_be`` is the exact text to put
    instead of it, empty when nobody can know. ``working`` holds the sum behind ``should_be``, a line each.
    ``unread`` marks a file that could not be read at all, so that nothing else is known of it.
    """

    check: str
    severity: Severity
    place: Place
    message: str
    said: str = ""
    should_be: str = ""
    working: tuple[str, ...] = ()
    size: str = ""
    unread: bool = False
