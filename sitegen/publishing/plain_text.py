"""The words of a piece of HTML, as they are read while nothing is chosen: without markup and without what is hidden."""

from __future__ import annotations

from functools import lru_cache
from html.parser import HTMLParser

_HEADINGS = frozenset({"h1", "h2", "h3", "h4", "h5", "h6"})
_TABLE = frozenset({"table", "tr", "td", "th"})
_BREAKS = _HEADINGS | _TABLE | {"p", "li", "ul", "ol", "div", "dl", "dt", "dd", "blockquote", "pre", "br", "hr"}
_EMPTY = frozenset({"br", "hr", "img", "input", "wbr"})


@lru_cache(maxsize=4096)
def plain_text(html: str) -> str:
    """The text in one line. Blocks are parted by a space."""
    reader = _Words()
    reader.feed(html)
    reader.close()
    return " ".join("".join(reader.words).split())


class _Words(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.words: list[str] = []
        self._hidden = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in _BREAKS:
            self.words.append(" ")
        if tag not in _EMPTY and (self._hidden or any(name == "hidden" for name, _ in attrs)):
            self._hidden += 1

    def handle_endtag(self, tag: str) -> None:
        if tag in _BREAKS:
            self.words.append(" ")
        if self._hidden and tag not in _EMPTY:
            self._hidden -= 1

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self.words.append(data)
