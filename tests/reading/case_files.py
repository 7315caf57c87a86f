"""Reads cases written in Markdown: a heading, a file in a fence, and what is found in it in a second fence."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from sitegen.findings import Finding

_CASE = re.compile(r"^## (?P<title>[^\n]+)\n\n~~~\w+\n(?P<file>.*?)^~~~\n~~~findings\n(?P<found>.*?)^~~~$", re.M | re.S)
SHOWN = {"⇥": "\t", "⍽": "\xa0", "␀": "\0", "␇": "\a"}
"""Signs that stand for characters which nobody can see."""


@dataclass(frozen=True, slots=True)
class Case:
    """One case; ``found`` is what ``as_case`` makes of the findings."""

    title: str
    line: int
    file: str
    found: str


def cases(path: Path) -> Iterator[Case]:
    """The cases of a file, in order."""
    text = path.read_text(encoding="utf-8")
    for match in _CASE.finditer(text):
        line = text.count("\n", 0, match.start()) + 1
        yield Case(match["title"], line, _real(match["file"]), _real(match["found"]))


def _real(text: str) -> str:
    for sign, char in SHOWN.items():
        text = text.replace(sign, char)
    return text


def headings(path: Path) -> int:
    """How many cases there should be."""
    return len(re.findall("^## ", path.read_text(encoding="utf-8"), re.M))


def as_case(findings: tuple[Finding, ...]) -> str:
    """Findings as a case shows them: place and id, whether the file is lost, message, what was said, what to put."""
    lines = []
    for finding in findings:
        place = finding.place
        lost = ", file not read" if finding.unread else ""
        lines.append(f"{place.line}:{place.column}-{place.end_column} {finding.check}{lost}")
        lines.append(f"  {finding.message}")
        if finding.said:
            lines.append(f"  said: {finding.said}")
        if finding.should_be:
            lines.append(f"  put:  {finding.should_be}")
    return "".join(f"{line}\n" for line in lines) or "nothing wrong\n"
