"""Slips with quotation marks, brackets and signs that mean something at the start of a value."""

from __future__ import annotations

import re

from sitegen.reading.offsets import LINE_END
from sitegen.reading.slip import Slip
from sitegen.reading.yaml_lines import Span, in_quotes, indentation
from sitegen.reading.yaml_trouble import NO_KEY, OR_BAR, SYNTAX, Trouble

_APOSTROPHE = 'put the text in double quotes, such as "the sleeve\'s hem".'
_INCH_IN_QUOTES = (
    "An inch mark inside double quotes closes them. Write 3/8 in, or put the text in single quotes, such as"
    " '3/8\" wide'."
)
_APOSTROPHE_IN_QUOTES = f"An apostrophe inside single quotes closes them: {_APOSTROPHE}"
_BEHIND_QUOTES = (
    "There is more behind the closing quotation mark. Put the whole text in quotes, such as 'the \"right\" side'."
)
_NEVER_CLOSED = (
    'The quotation mark that opens here is never closed. Close it at the end of the text, such as "12, 13 in".'
)
_BACKSLASH = (
    "A backslash inside double quotes has a special meaning. Put the text in single quotes, such as 'left\\right'."
)
_PERCENT_LINE = (
    'A line cannot start with %. If it is text, put it in quotes behind its key, such as note: "% of stretch".'
)
_LIST_BELOW = (
    "A list begins on the line below its key, each item behind a dash and a space."
    " On one line it is written in brackets, such as [pins, iron]."
)
_NEXT_KEY = re.compile(r",\s*(?P<key>[a-z][a-z0-9_]*)\s*:(?:\s|$)")
_BRACKETS = {
    "{": ("}", "a small table of keys and values", "{length: 9 in, width: 4 in}"),
    "[": ("]", "a list", "[pins, iron]"),
}


def bad_escape(text: str, start: int, end: int) -> Slip:
    """A backslash in double quotes that makes no character which can be shown.

    The cure is known where all of the text in its quotes stands between the two offsets, on one line.
    """
    part = text[start:end]
    whole = len(part) > 1 and part[0] == part[-1] == '"' and not LINE_END.search(part)
    return Slip(SYNTAX, start, end, _BACKSLASH, in_quotes(part) if whole else "")


def behind_quotes(t: Trouble) -> Slip | None:
    """``"3/8" wide"``, ``'don't'``, or a quotation mark that is closed by the next one lines below."""
    if t.quoted is None or not t.ends_here(t.quoted):
        return None
    opened = t.lines.number(t.quoted.start)
    if opened != t.line:
        message = (
            f"The quotation mark that opens here is closed only on line {t.line}, with more behind it."
            " Probably its closing mark is missing on this line."
        )
        return Slip(SYNTAX, t.quoted.start, t.lines.full(opened).end, message)
    quote = t.text[t.quoted.start]
    message, inside = _BEHIND_QUOTES, ""
    if quote == '"' and _inch_closes(t.text[t.quoted.start : t.lines.full(opened).end]):
        message, inside = _INCH_IN_QUOTES, quote
    elif quote == "'" and t.text[t.quoted.end : t.quoted.end + 1].isalpha():
        message, inside = _APOSTROPHE_IN_QUOTES, quote
    elif t.bracket is not None:
        return None  # between brackets a comma is missing
    return _value(t, t.quoted.start, t.quoted.end, message, inside=inside)


def open_quote(t: Trouble) -> Slip | None:
    """A quotation mark that is never closed."""
    if "quote" not in t.context or "unexpected" not in t.problem or t.since is None:
        return None
    line = t.lines.number(t.since)
    value = t.lines.value(line)
    if _inch_closes(t.text[value.start : value.end]):
        return _value(t, value.start, value.end, _INCH_IN_QUOTES, inside='"')
    message = _NEVER_CLOSED
    if t.text[t.since] == "'":
        message += f" If it is an apostrophe, {_APOSTROPHE}"
    return Slip(SYNTAX, t.since, max(t.since + 1, t.lines.full(line).end), message)


def escape(t: Trouble) -> Slip | None:
    r"""``"left\right"``: a backslash that makes no known character."""
    if "double-quoted" not in t.context or t.since is None:
        return None
    value = t.lines.value(t.lines.number(t.since))
    if value.start == t.since and t.at < value.end - 1 and t.text[value.end - 1] == '"':
        return bad_escape(t.text, *value)
    start = max(t.since, t.text.rfind("\\", t.since, t.at + 1))
    return bad_escape(t.text, start, min(len(t.text), max(start, t.at) + 1))


def percent_line(t: Trouble) -> Slip | None:
    """``%`` at the start of a line, which the parser takes for an order to itself."""
    if "directive" not in t.context and not t.wants("expected '<document start>'", "found incompatible"):
        return None
    for number in (t.line, t.lines.above(t.line)):
        if number and t.lines.text(number).startswith("%"):
            return Slip(SYNTAX, *t.lines.full(number), _PERCENT_LINE)
    return None


def behind_brackets(t: Trouble) -> Slip | None:
    """``{neckband.cut_length} long``: a text that starts with a bracket."""
    if t.bracketed is None or not t.ends_here(t.bracketed):
        return None
    sign = t.text[t.bracketed.start]
    if next_key := _NEXT_KEY.match(t.text[t.at : t.lines.full(t.line).end]):
        message = (
            f"The {_BRACKETS[sign][0]} in front of this closes the value, and more stands behind it. If"
            f" {next_key['key']} is a key of its own, write it on a line of its own, in the same column as the key of"
            " this line."
        )
        return Slip(SYNTAX, t.at, t.lines.full(t.line).end, message)
    message = f"A value that starts with {sign} is read as {_BRACKETS[sign][1]}. {OR_BAR}"
    return _value(t, t.bracketed.start, max(t.at, t.bracketed.end), message)


def bar(t: Trouble) -> Slip | None:
    """``> 3 in`` or ``| text``: nothing may follow these signs on their line."""
    if t.context != "while scanning a block scalar" or t.since is None:
        return None
    sign = t.text[t.since]
    message = (
        f"Behind {sign} the text begins on the next line, indented by two spaces."
        f' If the {sign} is itself part of the text, put all of it in quotes, such as "{sign} 3/8 in".'
    )
    return Slip(SYNTAX, t.since, max(t.since + 1, t.lines.full(t.lines.number(t.since)).end), message)


def dash(t: Trouble) -> Slip | None:
    """``needs: - pins``, or a value that is only a dash."""
    if not t.wants("sequence entries are not allowed"):
        return None
    end = t.lines.value(t.line).end
    if end <= t.at + 1:
        return Slip(SYNTAX, t.at, t.at + 1, 'A value that is only a dash must be in quotes: "-".', '"-"')
    return Slip(SYNTAX, t.at, end, _LIST_BELOW)


def first_sign(t: Trouble) -> Slip | None:
    """A sign at the start of a value that means something else there."""
    at, check = t.at, SYNTAX
    if t.since is not None and t.context in ("while scanning an alias", "while scanning an anchor"):
        at = t.since
    elif t.since is not None and ("tag" in t.context or "tag handle" in t.problem):
        at, check = t.since, "yaml-tag"
    elif not (t.wants("found character") or (t.wants("expected the node content") and t.char in ("}", "]", ","))):
        return None
    char = t.text[at : at + 1]
    if t.bracket is not None and char == ",":
        return Slip(SYNTAX, at, at + 1, "There is nothing in front of this comma. Write it as in [pins, iron].")
    if t.bracket is not None and char in ("]", "}"):
        return in_brackets(t)
    message = f'A value that starts with {char} must be in quotes, such as "{char} 3/8 in".'
    return _value(t, at, at + 1, message, check)


def in_brackets(t: Trouble) -> Slip | None:
    """A bracket that is never closed, or a comma that is missing between two."""
    start = t.since if t.context in ("while parsing a flow mapping", "while parsing a flow sequence") else t.bracket
    if start is None:
        return None
    sign = t.text[start]
    close, _, example = _BRACKETS[sign]
    opened = t.lines.number(start)
    left = indentation(t.lines.text(t.line)) <= indentation(t.lines.text(opened))
    if "stream end" in t.problem or (t.line > opened and left and t.lines.has_key(t.line)):
        message = f"The {sign} that opens here is never closed. Close it with {close}, such as {example}."
        return Slip(SYNTAX, start, max(start + 1, t.lines.full(opened).end), message)
    if t.char in ("]", "}"):
        return Slip(SYNTAX, t.at, t.at + 1, f"Here {close} is needed instead of {t.char}. Write it as in {example}.")
    if t.char == ":" and t.text[start : t.at].rstrip()[-1:] in (sign, ","):
        return Slip(SYNTAX, t.at, t.at + 1, NO_KEY)
    at = t.at
    while t.char == ":" and at > start + 1 and (t.text[at - 1].isalnum() or t.text[at - 1] in "_-."):
        at -= 1
    message = (
        "A comma is missing in front of this."
        f" Between {sign} and {close} a comma parts one thing from the next, such as {example}."
    )
    return Slip(SYNTAX, at, max(at + 1, t.at), message)


def _value(t: Trouble, start: int, end: int, message: str, check: str = SYNTAX, *, inside: str = "") -> Slip:
    """A slip in the value that starts here: all of it with its cure, if it is all that the line holds.

    ``inside`` is the quotation mark around the value, where the author meant it to be around all of it.
    """
    value = t.lines.value(t.lines.number(start))
    if value.start != start or value.end < end:
        return Slip(check, *Span(start, end), message)
    text = t.text[value.start : value.end]
    if inside and not text[1:].endswith(inside):
        text += inside
    return Slip(check, *value, message, in_quotes(text))


def _inch_closes(text: str) -> bool:
    """Whether a text in double quotes has one mark too many, and one of them right behind a figure."""
    return text.count('"') > 2 and text.count('"') % 2 == 1 and re.match(r'"[^"]*\d"', text) is not None
