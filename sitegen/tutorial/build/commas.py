"""One text where a list may stand, ``tools: scissors, pins``: YAML reads it as a single entry with a comma in it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from sitegen.findings import Collector, Finding, Severity
from sitegen.reading import Mapping, Node, Scalar, Sequence

_BRACKETS = re.compile(r"\([^()]*\)")
_COMMA = re.compile(r",(?!\d)")
_PLAIN = re.compile(r"[^\s\[\]{}&*!|>'\"%@`#?:,-][^\[\]{},#:]*")
"""What stands in a YAML list without quotation marks."""


def entries(node: Node, collector: Collector) -> tuple[Node, ...]:
    """The names of a list, or the only one. Names with commas between them but no brackets are reported, and read."""
    if isinstance(node, Sequence):
        return node.items
    parts = tuple(_parts(node)) if isinstance(node, Scalar) else ()
    if not isinstance(node, Scalar) or len(parts) < 2:
        return (node,)
    collector.add(_without_brackets(node, parts, "wrong-kind", Severity.WRONG, "Expected one name, or a list of them"))
    return parts


def one_or_several(node: Node, collector: Collector) -> None:
    """Ask whether a text with commas is meant as a list, in each of its languages.

    It may be one thing, “the band, pinned at four marks”, so it is left as it is.
    """
    words = "This is read as one thing. Several stand in a list"
    for each in (entry.value for entry in node.entries) if isinstance(node, Mapping) else (node,):
        parts = tuple(_parts(each)) if isinstance(each, Scalar) else ()
        if isinstance(each, Scalar) and len(parts) > 1:
            collector.add(_without_brackets(each, parts, "list-without-brackets", Severity.DOUBTFUL, words))


def read_as_several(node: Node, collector: Collector) -> tuple[Node, ...]:
    """The names of a list, or the only one. A text with commas is doubtful, and read as a list: names of things seldom
    have one, and else each of them would be reported where it is asked for."""
    if isinstance(node, Sequence):
        return node.items
    parts = tuple(_parts(node)) if isinstance(node, Scalar) else ()
    if not isinstance(node, Scalar) or len(parts) < 2:
        one_or_several(node, collector)
        return (node,)
    words = "This is read as several things, which stand in a list"
    collector.add(_without_brackets(node, parts, "list-without-brackets", Severity.DOUBTFUL, words))
    return parts


def _parts(node: Scalar) -> Iterator[Scalar]:
    """What stands between the commas; those inside of round brackets or of a number part nothing."""
    covered = _BRACKETS.sub(lambda found: "_" * len(found[0]), node.text)
    start = 0
    for end in (*(found.start() for found in _COMMA.finditer(covered)), len(covered)):
        text = node.text[start:end]
        if text.strip():
            first = start + len(text) - len(text.lstrip())
            yield node.part(first, first + len(text.strip()))
        start = end + 1


def _without_brackets(node: Scalar, parts: tuple[Scalar, ...], check: str, severity: Severity, words: str) -> Finding:
    listed = f"[{', '.join(_in_list(part.text) for part in parts)}]"
    one = " If it is one, put it into brackets alone." if severity is not Severity.WRONG else ""
    in_one_line = not node.quoted and "\n" not in node.text and not node.line_starts()
    return Finding(
        check,
        severity,
        node.place,
        f"{words} in square brackets: {listed}.{one}",
        said=node.text if in_one_line else "",
        should_be=listed if in_one_line else "",
    )


def _in_list(text: str) -> str:
    flat = " ".join(text.split())
    return flat if _PLAIN.fullmatch(flat) else "'" + flat.replace("'", "''") + "'"
