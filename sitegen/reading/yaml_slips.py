"""Slips that YAML takes in silence and reads as something else than the author meant."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator

from sitegen.findings import Place
from sitegen.reading.nodes import Empty, Node, Scalar
from sitegen.reading.offsets import Source
from sitegen.reading.slip import Slip
from sitegen.reading.yaml_lines import NO_SPACE, Span, with_plain_spaces
from sitegen.reading.yaml_words_lines import NO_SPACE_MESSAGE

_TAB_LED = re.compile(r"(?:\A|(?<=[\n\r]))[ \xa0\u202f]*\t[ \t\xa0\u202f]*(?=[^\s#])")
_NUMBER = re.compile(r"[ \t\xa0\u202f]+(#\d[^\r\n]*)")
_COMMENT = (
    "What stands behind # is not read, because it is a comment. If it is part of the text, put all of the text in"
    ' quotes, such as "needle #10"; if not, put a space behind the #.'
)
_DASH = (
    "This line starts with a dash but further in than the list it may belong to, so it is read as part of the text"
    " above. Start it in the same column as the other items."
)


def tab_slip(source: Source, reached: int, long_texts: list[tuple[Span, int | None]]) -> Slip | None:
    """The first tab that indents a line, as far as the file could be read, unless it is part of a text.

    ``long_texts`` are the texts of several lines in quotes (blanks at their line starts do not count) and under
    ``|`` or ``>``, with their indentation: a tab behind that is the author's own.
    """
    if "\t" not in source.text:
        return None
    led = [
        match
        for match in _TAB_LED.finditer(source.text)
        if match.start() <= reached and not _in_text(source, match, long_texts)
    ]
    if not led:
        return None
    others = {1: "", 2: " So is 1 other line."}.get(len(led), f" So are {len(led) - 1} other lines.")
    start = source.text.index("\t", led[0].start())
    message = f"This line is indented with a tab. Use spaces, two for each level.{others}"
    return Slip("yaml-syntax", start, led[0].end(), message)


def _in_text(source: Source, match: re.Match[str], long_texts: list[tuple[Span, int | None]]) -> bool:
    line_start = match.start()
    before = bisect_left(long_texts, line_start, key=lambda text: text[0].start)
    if not before:
        return False
    span, indent = long_texts[before - 1]
    column = source.text.index("\t", line_start) - line_start
    return line_start < span.end and (indent is None or column >= indent)


def hidden_slips(doubtful: list[tuple[Scalar | None, Node]], source: Source) -> Iterator[Slip]:
    """A colon without a space, a list item that is too far in, and a number that is read as a comment.

    ``doubtful`` are texts without quotes, and values with their keys that stand in lines below them or are missing.
    """
    for key, value in doubtful:
        if key is not None:
            yield from _colons(key, value, source)
        if isinstance(value, Empty):
            yield from _number_sign(value.place, source)
        elif isinstance(value, Scalar) and key is None:
            yield from _dashes(value, source)
            yield from _number_sign(value.at(len(value.text)), source)


def _number_sign(end: Place, source: Source) -> Iterator[Slip]:
    """``needle #10``: a comment to YAML, though hardly to its author."""
    match = _NUMBER.match(source.text, source.line_start(end.line) + end.column - 1)
    if match:
        start = match.start(1)
        yield Slip("yaml-comment", start, start + len(match[1].rstrip()), _COMMENT, unread=False)


def _colons(key: Scalar, value: Node, source: Source) -> Iterator[Slip]:
    if isinstance(value, Empty):
        text = key
    elif isinstance(value, Scalar) and value.place.line > key.place.line:
        text = value
    else:
        return
    match = None if text.quoted else NO_SPACE.match(with_plain_spaces(text.text))
    if match is None:
        return
    end = re.compile(r"\s").search(text.text, match.end())
    word = text.text[: end.start() if end else len(text.text)]
    start = source.line_start(text.place.line) + text.place.column - 1
    fixed = f"{match['key']}: {word[match.end() :]}"
    yield Slip("yaml-syntax", start, start + len(word), NO_SPACE_MESSAGE, fixed, unread=False)


def _dashes(text: Scalar, source: Source) -> Iterator[Slip]:
    for offset in text.line_starts():
        if text.text.startswith("- ", offset):
            place = text.at(offset)
            start = source.line_start(place.line) + place.column - 1
            end = source.line_start(place.line) + len(source.line(place.line).rstrip())
            yield Slip("yaml-syntax", start, end, _DASH, unread=False)
