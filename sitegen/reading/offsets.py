"""From a character of a value back to the character of the file.

A value is rarely a plain slice of its file: quotation marks fall away, ``\\"`` becomes one character, the lines
of a long text lose their indentation or are joined. A list of runs keeps the way back.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from typing import NamedTuple

from sitegen.findings import Place

LINE_END = re.compile(r"\r\n|\n|\r")
_ESCAPE = re.compile(r"\\(?:x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)")
_DOUBLED = re.compile("''")
_BLANKS = " \t"


class Source:
    """The text of one file with its line ends, and the place of each character in it."""

    __slots__ = ("_starts", "shown", "text")

    def __init__(self, shown: str, text: str) -> None:
        self.shown = shown
        self.text = text
        self._starts = [0, *(match.end() for match in LINE_END.finditer(text))]

    def line_number(self, offset: int) -> int:
        """The line of a character, from 1."""
        return bisect_right(self._starts, offset)

    def line_start(self, number: int) -> int:
        """The offset of the first character of a line."""
        return self._starts[number - 1]

    def line(self, number: int) -> str:
        """The text of a line without its end; empty when there is no such line."""
        if not 1 <= number <= len(self._starts):
            return ""
        start = self._starts[number - 1]
        end = self._starts[number] if number < len(self._starts) else len(self.text)
        return self.text[start:end].rstrip("\r\n")

    def place(self, start: int, end: int | None = None) -> Place:
        """The place of the characters from ``start`` up to ``end``; its end is known only on one line."""
        line = self.line_number(start)
        first = self._starts[line - 1]
        one_line = end is not None and self.line_number(end) == line
        return Place(self.shown, line, start - first + 1, end - first + 1 if end is not None and one_line else 0)


class Run(NamedTuple):
    """``length`` characters of a value from offset ``text``, which stand in the file from offset ``source``.

    Where ``width`` (characters in the file) equals ``length`` they are a plain copy; else it is one character that
    is written otherwise in the file (an escape, a doubled quote), or a line break, which has no width.
    """

    text: int
    source: int
    length: int
    width: int


Runs = tuple[Run, ...]


def place_in(source: Source, runs: Runs, start: int, end: int) -> Place:
    """The place in the file of the characters ``start`` to ``end`` of a value that is made of these runs."""
    first = _start_of(runs, start)
    return source.place(first, max(first, _end_of(runs, end - 1)) if end > start else first)


def copied(runs: Runs, value: str, original: str) -> str:
    """The value with all characters that are plain copies taken afresh from the original text."""
    parts = (
        original[run.source : run.source + run.length]
        if run.length == run.width
        else value[run.text : run.text + run.length]
        for run in runs
    )
    return "".join(parts)


def flow_runs(text: str, start: int, end: int, quote: str) -> Runs:
    """The runs of a value without quotes (``quote`` empty) or inside quotes, between two offsets of the file.

    Lines are joined as YAML 1.1 says (section 7.4 of its text on flow folding): one line end becomes a space,
    each further one a line break; blanks around line ends fall away.
    """
    runs = _Runs()
    breaks: list[int] = []
    joined = False
    for line_start, line_end in _lines(text, start, end):
        first, last = line_start, line_end
        escaped = quote == '"' and line_end != end and _is_escaped(text, line_start, line_end)
        if line_start != start:
            first = _skip_blanks(text, first, last)
        if escaped:
            last -= 1
        elif line_end != end:
            last = _drop_blanks(text, first, last, quote)
        if first < last or line_end == end or escaped:
            runs.join(breaks, joined)
            runs.written(text, first, last, quote)
            breaks, joined = [], escaped
        breaks.append(line_end)
    return runs.done()


def block_runs(text: str, start: int, value: str, *, folded: bool) -> tuple[Runs, int]:
    """The runs of a text under ``|`` or ``>`` (folded), whose sign stands at ``start``; and its indentation."""
    header_end = LINE_END.search(text, start)
    if header_end is None or not value:
        return (), 0
    indent = _indent(text, header_end.end(), value)
    lines = _lines(text, header_end.end(), len(text))
    runs = _Runs()
    if folded and value.strip("\n"):
        runs.folded(text, lines, value, indent)
    else:
        runs.literal(lines, value, indent)
    return runs.done(), indent


def _start_of(runs: Runs, offset: int) -> int:
    if not runs:
        return 0
    run = runs[max(0, bisect_right(runs, offset, key=lambda item: item.text) - 1)]
    inside = offset - run.text
    if inside >= run.length:
        return run.source + run.width
    return run.source + (inside if run.length == run.width else 0)


def _end_of(runs: Runs, offset: int) -> int:
    run = runs[max(0, bisect_right(runs, offset, key=lambda item: item.text) - 1)] if runs else Run(0, 0, 0, 0)
    return run.source + (min(offset - run.text + 1, run.length) if run.length == run.width else run.width)


class _Runs:
    """Collects runs in the order of the value."""

    def __init__(self) -> None:
        self._runs: list[Run] = []
        self.length = 0

    def add(self, source: int, length: int, width: int) -> None:
        if length:
            self._runs.append(Run(self.length, source, length, width))
            self.length += length

    def done(self) -> Runs:
        return tuple(self._runs)

    def written(self, text: str, start: int, end: int, quote: str) -> None:
        """One line of a value, in which an escape or a doubled quote is one character."""
        pattern = {'"': _ESCAPE, "'": _DOUBLED}.get(quote)
        for match in pattern.finditer(text, start, end) if pattern else ():
            self.add(start, match.start() - start, match.start() - start)
            self.add(match.start(), 1, match.end() - match.start())
            start = match.end()
        self.add(start, end - start, end - start)

    def join(self, breaks: list[int], joined: bool) -> None:
        """The line ends between two lines; ``joined`` when a backslash takes the first one away."""
        if len(breaks) == 1 and not joined:
            self.add(breaks[0], 1, 0)
        for offset in breaks[1:]:
            self.add(offset, 1, 0)

    def literal(self, lines: Iterator[tuple[int, int]], value: str, indent: int) -> None:
        """The lines under ``|``: each is a line of the value."""
        for part, (line_start, line_end) in zip(value.split("\n"), lines, strict=False):
            self.add(line_start + indent, len(part), len(part))
            if self.length < len(value):
                self.add(line_end, 1, 0)

    def folded(self, text: str, lines: Iterator[tuple[int, int]], value: str, indent: int) -> None:
        """The lines under ``>``: the value tells which line ends became a space, a line break or nothing."""
        waiting: list[int] = []
        for line_start, line_end in lines:
            line = text[line_start:line_end]
            if line.strip(" ") and _spaces(line) < indent:
                break
            if len(line) > indent:
                self._breaks(waiting, value)
                length = min(len(line) - indent, len(value) - self.length)
                self.add(line_start + indent, length, length)
                waiting = []
            waiting.append(line_end)
        self._breaks(waiting, value)

    def _breaks(self, offsets: list[int], value: str) -> None:
        rest = value[self.length : self.length + len(offsets)]
        count = len(rest) - len(rest.lstrip("\n"))
        if not count and rest and self.length:
            self.add(offsets[0], 1, 0)
            return
        one_fell_away = self.length and self.length + count < len(value) and count == len(offsets) - 1
        for offset in offsets[1 if one_fell_away else 0 :][:count]:
            self.add(offset, 1, 0)


def _lines(text: str, start: int, end: int) -> Iterator[tuple[int, int]]:
    """Start and end (without the line end) of each line between two offsets."""
    for match in LINE_END.finditer(text, start, end):
        yield start, match.start()
        start = match.end()
    yield start, end


def _indent(text: str, start: int, value: str) -> int:
    """The indentation of a text under ``|`` or ``>``, seen from its first line with something on it."""
    empty = len(value) - len(value.lstrip("\n"))
    first_line = value[empty:].split("\n", 1)[0]
    for number, (line_start, line_end) in enumerate(_lines(text, start, len(text))):
        if number == empty:
            return _spaces(text[line_start:line_end]) - _spaces(first_line)
    return 0


def _spaces(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _is_escaped(text: str, start: int, end: int) -> bool:
    """Whether a backslash that is not itself escaped stands in front of this end."""
    before = end
    while before > start and text[before - 1] == "\\":
        before -= 1
    return (end - before) % 2 == 1


def _skip_blanks(text: str, start: int, end: int) -> int:
    while start < end and text[start] in _BLANKS:
        start += 1
    return start


def _drop_blanks(text: str, start: int, end: int, quote: str) -> int:
    last = end
    while last > start and text[last - 1] in _BLANKS:
        last -= 1
    return last + 1 if quote == '"' and last < end and _is_escaped(text, start, last) else last
