"""From the events of a YAML parser to nodes with places. Texts stay texts: nothing is typed.

The events are taken one by one, so that depth, copies and tags are refused before they cost anything.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from sitegen.findings import Place
from sitegen.reading import yaml_refused as refused
from sitegen.reading.decode import NEVER_TYPED
from sitegen.reading.nodes import Empty, Entry, Mapping, Node, Scalar, Sequence
from sitegen.reading.offsets import Runs, Source, block_runs, copied, flow_runs, place_in
from sitegen.reading.slip import MOST_SLIPS, Slip, too_many
from sitegen.reading.yaml_commas import joined_again
from sitegen.reading.yaml_lines import Lines, Span, with_plain_spaces
from sitegen.reading.yaml_trouble import Trouble
from sitegen.reading.yaml_words import explain
from sitegen.reading.yaml_words_lines import second_document
from sitegen.reading.yaml_words_signs import bad_escape

DEEPEST = 20
MOST_NODES = 100_000
"""No file that somebody wrote comes near these; common practice, no source."""

_FAILURES = (yaml.YAMLError, ValueError, OverflowError, LookupError, RecursionError)
"""What the two parsers raise: beside its own errors the one in Python raises others for numbers that are too large."""

_QUOTES = ("'", '"')
_QUESTION = "\ue000"
"""Stands for ``?`` while parsing. It is only ever part of a text here, but Python's parser stops at one in brackets."""
_NOT_MEANT = re.compile(f"{NEVER_TYPED}|[\t\r\x85\u2028\u2029]")
r"""What a backslash makes of a letter although nobody meant it, as in "left\right"; only a line break may be meant."""
_HEADER = re.compile(r"[|>](?:[-+]?[1-9]?|[1-9][-+])(?: .*)?(?=[\r\n]|\Z)")
_DEEP = f"This is nested more than {DEEPEST} levels deep. Take some of the brackets or of the indentation away."
_MANY = f"There are more than {MOST_NODES:,} values in this file. Split it."


@dataclass(slots=True)
class _Open:
    """A list or table that is not read to its end."""

    start: Any
    table: bool
    flow: bool
    items: list[Node] = field(default_factory=list)
    entries: dict[str, Entry] = field(default_factory=dict)
    key: Node | None = None


class _Stop(Exception):  # noqa: N818 - an end of reading, not a program's fault
    def __init__(self, slip: Slip) -> None:
        super().__init__(slip.message)
        self.slip = slip


class Builder:
    """Makes nodes of events and remembers what was read last, for the words about what comes next."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self.text = with_plain_spaces(source.text)
        self.root: Node | None = None
        self.slips: list[Slip] = []
        self.long_texts: list[tuple[Span, int | None]] = []
        self.doubtful: list[tuple[Scalar | None, Node]] = []
        self.reached = 0
        self._parsed = self.text.replace("?", _QUESTION)
        self._changed = self._parsed != source.text
        self._numbers = re.search(r"#\d", self.text) is not None
        self._open: list[_Open] = []
        self._quoted: Span | None = None
        self._bracketed: Span | None = None
        self._nodes = 0
        self._documents = 0

    def read(self, loader: Any) -> Slip | None:
        """Reads the whole file; gives back why that was not possible."""
        events = yaml.parse(self._parsed, Loader=loader)
        try:
            while (event := self._next(events)) is not None:
                self._take(event)
        except _Stop as stop:
            return stop.slip
        self.reached = len(self.text)
        return None

    def _next(self, events: Iterator[Any]) -> Any:
        try:
            return next(events, None)
        except _FAILURES as error:
            raise _Stop(self._explained(error)) from error

    def _take(self, event: Any) -> None:
        kind = type(event)
        if kind is ScalarEvent:
            self._refuse(event)
            node = self._scalar(event)
            self.reached = event.end_mark.index
            self._put(node)
        elif kind is MappingStartEvent or kind is SequenceStartEvent:
            self._refuse(event)
            if len(self._open) >= DEEPEST:
                raise _Stop(Slip("yaml-deep", *_span(event), _DEEP))
            self._open.append(_Open(event.start_mark, kind is MappingStartEvent, bool(event.flow_style)))
        elif kind is MappingEndEvent or kind is SequenceEndEvent:
            self._close(event)
        elif kind is AliasEvent:
            self._wrong(refused.alias(str(event.anchor), *_span(event)))
            self._put(self._stand_in(event))
        elif kind is DocumentStartEvent:
            self._documents += 1
            if self._documents > 1:
                raise _Stop(second_document(*_span(event)))

    def _refuse(self, event: Any) -> None:
        """A name for a value, and a tag."""
        if event.anchor is not None or event.tag is not None:
            for slip in refused.properties(self.text, event.start_mark.index, event.anchor, event.tag):
                self._wrong(slip)

    def _wrong(self, slip: Slip) -> None:
        if len(self.slips) >= MOST_SLIPS:
            raise _Stop(too_many(slip))
        self.slips.append(slip)

    def _put(self, node: Node) -> None:
        self._nodes += 1
        if self._nodes > MOST_NODES:
            raise _Stop(Slip("yaml-too-many", 0, 0, _MANY))
        if not self._open:
            self.root = node
            return
        parent = self._open[-1]
        if not parent.table:
            parent.items.append(node)
        elif parent.key is None:
            parent.key = node
        else:
            key, parent.key = parent.key, None
            self._entry(parent, key, node)

    def _entry(self, parent: _Open, key: Node, value: Node) -> None:
        if not isinstance(key, Scalar) or (key.text == "<<" and not key.quoted):
            self._wrong(refused.odd_key(key, self.source))
            return
        if parent.flow and parent.entries and self._joined(parent, key, value):
            return
        first = parent.entries.setdefault(key.text, Entry(key, value))
        if first.key is not key:
            self._wrong(refused.second_key(key, first.key, self.source))
        if isinstance(value, Empty) or (isinstance(value, Scalar) and value.place.line > key.place.line):
            self.doubtful.append((key, value))

    def _joined(self, parent: _Open, key: Scalar, value: Node) -> bool:
        """Whether it was the rest of a number with a comma, and was put back to the value before."""
        last = next(reversed(parent.entries.values()))
        found = joined_again(last, key, value, self.source)
        if found is None:
            return False
        entry, slip = found
        if self.slips and self.slips[-1].start == slip.start:
            self.slips.pop()
        self._wrong(slip)
        parent.entries[last.key.text] = entry
        return True

    def _close(self, event: Any) -> None:
        closed = self._open.pop()
        start, end = closed.start, event.end_mark
        if closed.flow:
            self.reached = end.index
        if self._in_brackets(closed):
            self._bracketed = Span(start.index, end.index)
        end_column = end.column + 1 if closed.flow and start.line == end.line else 0
        place = Place(self.source.shown, start.line + 1, start.column + 1, end_column)
        if closed.table:
            self._put(Mapping(tuple(closed.entries.values()), place))
        else:
            self._put(Sequence(tuple(closed.items), place))

    def _scalar(self, event: Any) -> Scalar | Empty:
        value, style = event.value, event.style or ""
        first, last = event.start_mark, event.end_mark
        start, end, column = first.index, last.index, first.column + 1
        if style in _QUOTES:
            self._quoted = Span(start, end)
            start, end, column = start + 1, end - 1, column + 1
        elif not style and not value:
            return self._empty(event)
        if event.anchor is not None or event.tag is not None:
            return self._stand_in(event)
        if end - start == len(value) and first.line == last.line:
            if self._changed:
                value = self.source.text[start:end]
            scalar = Scalar(value, Place(self.source.shown, first.line + 1, column, column + len(value)), bool(style))
        else:
            runs = self._runs(event, start, end)
            if style == '"' and _NOT_MEANT.search(value):
                raise _Stop(bad_escape(self.text, start - 1, end + 1))
            if self._changed:
                value = copied(runs, value, self.source.text)
            place = place_in(self.source, runs, 0, len(value)) if runs else self.source.place(start, end)
            scalar = Scalar(value, place, bool(style), self.source, runs)
        if not style and (self._numbers or first.line != last.line):
            self.doubtful.append((None, scalar))
        return scalar

    def _runs(self, event: Any, start: int, end: int) -> Runs:
        value, style = event.value, event.style or ""
        if style in ("|", ">"):
            if not _HEADER.match(self.text, start):
                # The parser in C lets a comment follow without a space; the one in Python will say what is wrong.
                raise _Stop(Slip("yaml-syntax", start, start + 1, "Nothing may stand behind this sign."))
            runs, indent = block_runs(self.text, start, value, folded=style == ">")
            self.long_texts.append((Span(start, end), indent))
            return runs
        if style and event.start_mark.line != event.end_mark.line:
            self.long_texts.append((Span(start, end), None))
        return flow_runs(self.text, start, end, style)

    def _stand_in(self, event: Any) -> Scalar:
        """For a value that is refused, so that the rest of the file can still be looked at."""
        start, end = _span(event)
        return Scalar(self.text[start:end], self.source.place(start, end), True)

    def _empty(self, event: Any) -> Empty:
        """Nothing: right behind the colon of its key, or where the parser has it."""
        start = event.start_mark.index
        colon = self.text.find(":", self.reached, start)
        return Empty(self.source.place(start if colon < 0 else colon + 1))

    def _explained(self, error: Exception) -> Slip:
        if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
            large = re.compile(r"\\U[0-9A-Fa-f]{8}").search(self.text, self.reached)
            if large is not None:
                return bad_escape(self.text, *large.span())
            return explain(Trouble(self.text, Lines(self.source), "", "", min(self.reached, len(self.text))))
        since = error.context_mark
        self.reached = min(error.problem_mark.index, len(self.text))
        return explain(
            Trouble(
                self.text,
                Lines(self.source),
                problem=error.problem or "",
                context=error.context or "",
                at=self.reached,
                since=since.index if since is not None else None,
                quoted=self._quoted,
                bracketed=self._bracketed,
                bracket=next((part.start.index for part in reversed(self._open) if self._in_brackets(part)), None),
            )
        )

    def _in_brackets(self, part: _Open) -> bool:
        """Whether brackets are around it; a single pair inside a list, as in ``[a: b]``, has none of its own."""
        return part.flow and self.text[part.start.index] in "[{"


def _span(event: Any) -> Span:
    return Span(event.start_mark.index, event.end_mark.index)
