"""The author's Markdown as a small tree: blocks of spans, with computed numbers in place of references."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from markdown_it.token import Token

from sitegen.publishing.markdown import parsed

Fill = Callable[[str], str | None]
"""Gives the words that stand for a reference, or None when it names nothing: then it stays as typed."""
Kind = Literal["paragraph", "heading", "list", "code", "quote", "table", "rule"]


@dataclass(frozen=True, slots=True)
class Span:
    """Words in one style. ``number`` marks what was computed; ``link`` is an address of the web."""

    text: str
    strong: bool = False
    emphasis: bool = False
    code: bool = False
    number: bool = False
    link: str = ""


@dataclass(frozen=True, slots=True)
class Block:
    """One block: ``spans`` of a paragraph, heading or code; ``items`` of a list or a quote, each of blocks; ``rows`` of
    a table, its head first, each cell of spans. ``start`` is the first number of an ordered list."""

    kind: Kind
    spans: tuple[Span, ...] = ()
    items: tuple[tuple[Block, ...], ...] = ()
    rows: tuple[tuple[tuple[Span, ...], ...], ...] = ()
    start: int | None = None


def printed_text(text: str, fill: Fill) -> tuple[Block, ...]:
    """Prose as blocks. A picture in the text gives its description; a link that leads into the site gives its words."""
    return tuple(_blocks(_Tokens(parsed(text)), fill))


def printed_line(text: str, fill: Fill) -> tuple[Span, ...]:
    """Prose that stands in one line: the spans of its blocks one behind the other."""
    return tuple(span for block in printed_text(text, fill) for span in _all_spans(block))


def unstyled(spans: Sequence[Span]) -> str:
    """The words of spans without their style."""
    return "".join(span.text for span in spans)


def _all_spans(block: Block) -> Iterator[Span]:
    yield from block.spans
    for item in block.items:
        for inner in item:
            yield from _all_spans(inner)


class _Tokens:
    """Tokens, read one after the other."""

    def __init__(self, tokens: Sequence[Token]) -> None:
        self._tokens = tokens
        self._next = 0

    def take(self) -> Token | None:
        if self._next == len(self._tokens):
            return None
        self._next += 1
        return self._tokens[self._next - 1]


_HOLDERS: dict[str, Kind] = {"bullet_list_open": "list", "ordered_list_open": "list", "blockquote_open": "quote"}
_LINES: dict[str, Kind] = {"paragraph_open": "paragraph", "heading_open": "heading"}


def _blocks(tokens: _Tokens, fill: Fill, until: str = "") -> Iterator[Block]:
    """The blocks up to the token of this type, which is taken too."""
    while (token := tokens.take()) is not None and token.type != until:
        if token.type in _LINES:
            inline = tokens.take()
            yield Block(_LINES[token.type], spans=_spans(inline, fill) if inline is not None else ())
        elif token.type in _HOLDERS:
            yield _holder(token, tokens, fill)
        elif token.type == "table_open":
            yield Block("table", rows=tuple(_rows(tokens, fill)))
        elif token.type in ("fence", "code_block"):
            yield Block("code", spans=(Span(token.content.rstrip("\n"), code=True),))
        elif token.type == "hr":
            yield Block("rule")


def _holder(token: Token, tokens: _Tokens, fill: Fill) -> Block:
    if token.type == "blockquote_open":
        return Block("quote", items=(tuple(_blocks(tokens, fill, "blockquote_close")),))
    end = token.type.replace("open", "close")
    items = []
    while (item := tokens.take()) is not None and item.type != end:
        items.append(tuple(_blocks(tokens, fill, "list_item_close")))
    start = int(token.attrGet("start") or 1) if token.type == "ordered_list_open" else None
    return Block("list", items=tuple(items), start=start)


def _rows(tokens: _Tokens, fill: Fill) -> Iterator[tuple[tuple[Span, ...], ...]]:
    row: list[tuple[Span, ...]] = []
    while (token := tokens.take()) is not None and token.type != "table_close":
        if token.type == "tr_open":
            row = []
        elif token.type == "inline":
            row.append(_spans(token, fill))
        elif token.type == "tr_close":
            yield tuple(row)


def _spans(inline: Token, fill: Fill) -> tuple[Span, ...]:
    found: list[Span] = []
    strong = emphasis = 0
    link = ""
    for token in inline.children or ():
        style = Span("", strong > 0, emphasis > 0, link=link)
        if token.type in ("strong_open", "strong_close"):
            strong += 1 if token.type == "strong_open" else -1
        elif token.type in ("em_open", "em_close"):
            emphasis += 1 if token.type == "em_open" else -1
        elif token.type == "link_open":
            href = str(token.attrGet("href"))
            link = href if href.startswith(("http://", "https://", "mailto:")) else ""
        elif token.type == "link_close":
            link = ""
        elif token.type == "reference":
            filled = fill(token.content)
            found.append(replace(style, text=token.markup if filled is None else filled, number=filled is not None))
        elif token.type in ("softbreak", "hardbreak"):
            found.append(replace(style, text=" "))
        elif token.type == "code_inline":
            found.append(replace(style, text=token.content, code=True))
        elif token.type == "image":
            found.append(replace(style, text=unstyled(_spans(token, fill))))
        elif token.content:
            found.append(replace(style, text=token.content))
    return tuple(found)
