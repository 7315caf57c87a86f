"""Slips with colons and with the spaces at the start of a line."""

from __future__ import annotations

import re

from sitegen.reading.slip import Slip
from sitegen.reading.yaml_lines import NO_SPACE, Lines, in_quotes, indentation, spaces
from sitegen.reading.yaml_trouble import EXAMPLE, NO_KEY, OR_BAR, SYNTAX, Trouble

NO_SPACE_MESSAGE = "A space is missing behind the colon."
_LONGEST_KEY = 1_000
_COLON_IN_TEXT = f"A colon with a space behind it cannot stand inside text. {OR_BAR}"
_KEY_IN_LINE = re.compile(r"(?P<first>[^\s#].*?),\s*(?P<key>[a-z][a-z0-9_]*)")
_KEYLESS = (
    "This line has no key with a colon. If it belongs to the text above, indent it further;"
    f" otherwise write a key, a colon, a space and the value, such as {EXAMPLE}."
)
_TOO_DEEP = (
    "This line is further in than the line above, which has a value already."
    " Start it in the same column as the line above; if it goes on with that text, put the whole text in quotes."
)
_LONG_KEY = f"A key can have at most {_LONGEST_KEY:,} characters. Write a short one, such as {EXAMPLE}."
_LIST_AMONG_KEYS = (
    "An item of a list stands here, but the line above is a key with its value."
    " Put the list under a key of its own, such as needs: with nothing behind it."
)
_SECOND_DOCUMENT = (
    "A second document starts here. Keep one in a file: take out the line of dashes or dots between them."
)


def second_document(start: int, end: int) -> Slip:
    """A file that holds more than one document."""
    return Slip("many-documents", start, end, _SECOND_DOCUMENT)


def no_space(number: int, lines: Lines) -> Slip | None:
    """``title:Summer tee``, or None if the line is not like that."""
    line = lines.text(number)
    match = NO_SPACE.match(line)
    if match is None:
        return None
    start = lines.start(number) + match.start("key")
    return Slip(
        SYNTAX, start, lines.full(number).end, NO_SPACE_MESSAGE, f"{match['key']}: {line[match.end() :].rstrip()}"
    )


def missing_space(t: Trouble) -> Slip | None:
    """A key without a space behind its colon is read as text, which then goes on in the next line."""
    if not t.wants("could not find expected ':'", "mapping values are not allowed"):
        return None
    number = t.lines.number(t.since) if t.since is not None else t.lines.above(t.line)
    slip = no_space(number, t.lines) if number else None
    while slip is not None and (number := t.lines.above(number)) and (above := no_space(number, t.lines)) is not None:
        slip = above
    return slip


def colon_in_text(t: Trouble) -> Slip | None:
    """``note: Careful: pins``, or a key under a key that has its value already."""
    if not t.wants("mapping values are not allowed"):
        return None
    value = t.lines.value(t.line)
    if value.start <= t.at:
        two = _KEY_IN_LINE.fullmatch(t.text[value.start : t.at])
        if two is not None and t.lines.has_key(t.line):
            return Slip(SYNTAX, *value, _two_keys(two["key"]))
        cure = in_quotes(t.text[value.start : value.end]) if t.lines.has_key(t.line) else ""
        return Slip(SYNTAX, *value, _COLON_IN_TEXT, cure)
    here, above = t.lines.full(t.line), t.lines.above(t.line)
    if t.at - here.start > _LONGEST_KEY:
        return Slip(SYNTAX, here.start, here.start + 1, _LONG_KEY)
    if not above:
        return None
    if not t.lines.has_key(above):
        return Slip(SYNTAX, *t.lines.full(above), _KEYLESS)
    one_word = re.fullmatch(r"[\w-]+ *", t.text[here.start : t.at])
    return Slip(SYNTAX, *here, _TOO_DEEP if one_word else _COLON_IN_TEXT)


def _two_keys(key: str) -> str:
    return (
        f"A colon with a space behind it cannot stand inside text. If {key} is a key of its own, write it on a line of"
        " its own, below this one and in the same column; if it is text, put the whole text in quotes."
    )


def no_colon(t: Trouble) -> Slip | None:
    """A line in the place of a key that is none."""
    if not t.wants("could not find expected ':'") or t.since is None:
        return None
    number = t.lines.number(t.since)
    start, end = t.lines.full(number)
    above = t.lines.above(number)
    sign = re.search(r": *([|>])[-+1-9]* *$", t.lines.text(above)) if above else None
    if sign:
        message = f"The text under {sign[1]} must start further in than its key, by two spaces."
        return Slip(SYNTAX, start, end, message)
    if end - start > _LONGEST_KEY and ":" in t.text[start + _LONGEST_KEY : end]:
        return Slip(SYNTAX, start, start + 1, _LONG_KEY)
    return Slip(SYNTAX, start, end, _KEYLESS)


def wrong_start(t: Trouble) -> Slip | None:
    """A line that starts in a column where nothing above it does, or that does not fit what is there."""
    if not t.wants("expected <block end>", "expected '<document start>'"):
        return None
    above = t.lines.above(t.line)
    if above and t.lines.text(above).startswith("..."):
        return second_document(*t.lines.full(t.line))
    if t.char == ":":
        return Slip(SYNTAX, t.at, t.at + 1, NO_KEY)
    if not t.starts_line() or not above:
        return None
    here, there = (indentation(t.lines.text(number)) for number in (t.line, above))
    if here == there and t.char == "-":
        return Slip(SYNTAX, *t.lines.full(t.line), _LIST_AMONG_KEYS)
    if here == there:
        return Slip(SYNTAX, *t.lines.full(t.line), _KEYLESS)
    message = (
        f"This line starts with {spaces(here)}, the line above with {spaces(there)}, and it fits no line before."
        " Start all lines that belong together with the same number of spaces."
    )
    return Slip(SYNTAX, *t.lines.full(t.line), message)
