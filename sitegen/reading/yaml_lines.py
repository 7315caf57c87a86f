"""How one line of a file is built: indentation, key, value. For the words about what went wrong in it."""

from __future__ import annotations

import re
from typing import NamedTuple

from sitegen.reading.offsets import Source

_LONGEST = 2_000
_LEAD = re.compile(r"""[ ]*(?:-[ ]+)*(?:(?:\w[^:#{}\[\]]*|"[^"]*"[ ]*|'[^']*'[ ]*):(?:[ ]+|$))?""")
_KEY = re.compile(r"""[ ]*(?:-[ ]+)*(?:\w[^:#{}\[\]]*|"[^"]*"[ ]*|'[^']*'[ ]*):(?:[ ]|$)""")
NO_SPACE = re.compile(r"[ ]*(?:-[ ]+)*(?P<key>[A-Za-z_][\w-]*):(?=[^\s:/])")
"""A key whose colon has no space behind it; an address with its two slashes is none."""
_LIKE_SPACES = "\t\x85\xa0\u202f\u2028\u2029"


def with_plain_spaces(text: str) -> str:
    """The text with a plain space for each tab and each sign that only looks like a space or is a word processor's
    line end; as long as before, so that offsets stay right."""
    for char in _LIKE_SPACES:
        text = text.replace(char, " ")
    return text


class Span(NamedTuple):
    """From an offset up to another."""

    start: int
    end: int


class Lines:
    """The lines of a file, with plain spaces."""

    def __init__(self, source: Source) -> None:
        self._source = source

    def number(self, offset: int) -> int:
        return self._source.line_number(offset)

    def start(self, number: int) -> int:
        return self._source.line_start(number)

    def text(self, number: int) -> str:
        """The line, cut where it gets too long to be worth looking at."""
        return with_plain_spaces(self._source.line(number)[:_LONGEST])

    def full(self, number: int) -> Span:
        """The line without its indentation and the blanks at its end."""
        line = with_plain_spaces(self._source.line(number))
        start = self._source.line_start(number)
        return Span(start + indentation(line) if line.strip() else start, start + len(line.rstrip()))

    def above(self, number: int) -> int:
        """The nearest line above with something on it that is no comment; 0 if there is none."""
        for other in range(number - 1, 0, -1):
            line = self.text(other).strip()
            if line and not line.startswith("#"):
                return other
        return 0

    def value(self, number: int) -> Span:
        """The value on this line: what stands behind dashes, a key and its colon, without a comment."""
        line = self.text(number)
        lead = _LEAD.match(line)
        start = lead.end() if lead else 0
        comment = line.find(" #", max(0, start - 1))
        if comment >= 0 and line[start] in "\"'" and line[:comment].rstrip()[-1:] not in ("'", '"'):
            comment = -1
        end = len(line[: comment if comment >= 0 else len(line)].rstrip())
        offset = self.start(number)
        return Span(offset + start, offset + max(start, end))

    def has_key(self, number: int) -> bool:
        """Whether the line starts with a key and its colon."""
        return _KEY.match(self.text(number)) is not None


def indentation(line: str) -> int:
    """How many spaces a line starts with."""
    return len(line) - len(line.lstrip(" "))


def spaces(count: int) -> str:
    """So many spaces, in words."""
    return {0: "no space", 1: "1 space"}.get(count, f"{count} spaces")


def in_quotes(text: str) -> str:
    """The text in quotes that it does not itself hold; one that is in quotes already is taken out of them first."""
    inner = text[1:-1] if len(text) > 1 and text[0] == text[-1] and text[0] in "\"'" else text
    if '"' in inner or "\\" in inner:
        return "'" + inner.replace("'", "''") + "'"
    return f'"{inner}"'
