"""A number with a comma within braces, ``{width: 2,5 cm}``: YAML ends the value at the comma."""

from __future__ import annotations

import re
from dataclasses import replace

from sitegen.reading.nodes import Empty, Entry, Node, Scalar
from sitegen.reading.offsets import Source
from sitegen.reading.slip import Slip


def joined_again(before: Entry, key: Node, value: Node, source: Source) -> tuple[Entry, Slip] | None:
    """The entry before with all of its number, and what is wrong; None where there is no such comma.

    It stands right between two digits. In ``33, 35 cm`` a blank follows it, so a row of numbers may be meant.
    """
    if not isinstance(value, Empty) or not isinstance(key, Scalar) or not isinstance(before.value, Scalar):
        return None
    if key.quoted or before.value.quoted or not re.match(r"\d", key.text) or not re.search(r"\d$", before.value.text):
        return None
    start, end = (source.line_start(each.place.line) + each.place.column - 1 for each in (before.value, key))
    end += len(key.text)
    text = source.text[start:end]
    if text != f"{before.value.text},{key.text}":
        return None
    place = replace(before.value.place, end_column=before.value.place.column + len(text))
    message = f'Within braces a comma ends a value, so a number with a comma in it needs quotes: "{text}".'
    return Entry(before.key, Scalar(text, place)), Slip("yaml-syntax", start, end, message, f'"{text}"', unread=False)
