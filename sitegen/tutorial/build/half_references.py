"""Finds references in running text of which one brace is missing."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_WHOLE = re.compile(r"\{\{|\}\}|\{[^{}\n]{0,80}\}")
_NAME = r"[a-z][a-z0-9_]*(?:\.[a-z0-9_]+)*"
_HALF = re.compile(rf"\{{[ ]*(?P<opened>{_NAME})|(?<![\w.])(?P<closed>{_NAME})[ ]*\}}")


@dataclass(frozen=True, slots=True)
class HalfReference:
    """What stands of it, from ``start`` to ``end`` in characters of the text, and what should."""

    start: int
    end: int
    lacks: str
    should_be: str


def half_references(text: str) -> Iterator[HalfReference]:
    """Each name with a brace on one side alone. Whole references and doubled braces, which stand for one, are none.

    A name without a dot is taken for one only behind an opening brace: a closing one may end an aside.
    """
    rest = _WHOLE.sub(lambda match: " " * len(match.group()), text)
    for match in _HALF.finditer(rest):
        name = match["opened"] or match["closed"]
        if match["opened"] or "." in name:
            lacks = "the closing" if match["opened"] else "the opening"
            yield HalfReference(match.start(), match.end(), lacks, "{" + name + "}")
