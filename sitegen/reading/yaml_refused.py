"""What YAML knows and these files do without: names for values, copies, tags, and keys that are no plain text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.reading.nodes import Empty, Mapping, Scalar, Sequence
from sitegen.reading.offsets import Source
from sitegen.reading.slip import Slip
from sitegen.reading.yaml_lines import Span
from sitegen.reading.yaml_trouble import NO_KEY

_TAG = re.compile(r"!<[^>\s]*>|![^\s,\[\]{}]*")
_MERGE = "<< copies the lines of another part. Write those lines themselves here."
_BRACKET_KEY = (
    "A list or table stands where a key must be. If these brackets are part of a text, put all of it in quotes, such"
    ' as "{{size}}".'
)


def alias(name: str, start: int, end: int) -> Slip:
    """A value that stands for another one."""
    message = (
        f"*{name} stands for a value that is written elsewhere. Write the value itself here;"
        ' if it is text, put it in quotes, such as "*bold*".'
    )
    return Slip("yaml-alias", start, end, message)


def properties(text: str, start: int, anchor: str | None, tag: str | None) -> Iterator[Slip]:
    """A name for a value and a tag, in front of the value that starts at this offset."""
    if anchor is not None:
        at = max(start, text.find(f"&{anchor}", start))
        message = (
            f"&{anchor} gives a name to a value, to use it again. Take it out, and write the value wherever it is"
            ' needed; if it is text, put it in quotes, such as "& more".'
        )
        yield Slip("yaml-alias", at, at + 1 + len(anchor), message)
    if tag is not None:
        found = _TAG.search(text, start)
        span = Span(*found.span()) if found else Span(start, start)
        name = text[span.start : span.end]
        yield Slip("yaml-tag", *span, f'Take {name} out; if it is text, put it in quotes, such as "! 3/8 in".')


def odd_key(key: Scalar | Sequence | Mapping | Empty, source: Source) -> Slip:
    """A key that copies another part, or that is no text."""
    start = source.line_start(key.place.line) + key.place.column - 1
    if isinstance(key, Scalar):
        return Slip("yaml-alias", start, start + 2, _MERGE)
    if isinstance(key, Empty):
        return Slip("key-not-text", start, start, NO_KEY, unread=False)
    return Slip("key-not-text", start, start + 1, _BRACKET_KEY, unread=False)


def second_key(key: Scalar, first: Scalar, source: Source) -> Slip:
    """A key that is in the same table twice."""
    place = key.at()
    start = source.line_start(place.line) + place.column - 1
    message = f"The key {key.text} is here a second time; the first is on line {first.place.line}. Keep one of the two."
    return Slip("key-twice", start, start + max(0, place.end_column - place.column), message, unread=False)
