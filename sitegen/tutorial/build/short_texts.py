"""Short texts that are none: what only holds the place of one, and marks that only a word processor makes."""

from __future__ import annotations

import re

from sitegen.findings import Collector, Finding, Severity
from sitegen.reading import Scalar

_TO_BE_WRITTEN = re.compile(r"to be written(?=[.:…]|\s*\Z)", re.IGNORECASE)
_TYPOGRAPHIC = re.compile(r"[“„‘](?P<inside>[^“”„‘’\"]+)[”“’]")


def report_unwritten(node: Scalar, collector: Collector) -> None:
    """Report what only holds the place of a text, as the files of a new folder do."""
    found = _TO_BE_WRITTEN.match(node.text)
    if found is not None:
        collector.wrong(
            "text-unwritten",
            node.at(*found.span()),
            "This only stands in for a text that is still to be written. Put your own words in its place.",
            said=found.group(),
        )


def report_typographic_quotes(node: Scalar, collector: Collector) -> None:
    """Report a short text in marks that word processors make of straight ones: they are a part of it."""
    found = None if node.quoted else _TYPOGRAPHIC.fullmatch(node.text.strip())
    if found is not None:
        message = (
            f"The marks around {node.text.strip()} are those of a word processor: they count as part of the text,"
            " and students see them. Write straight ones, or none."
        )
        put = f'"{found["inside"]}"'
        collector.add(Finding("typographic-quotes", Severity.DOUBTFUL, node.place, message, node.text, put))
