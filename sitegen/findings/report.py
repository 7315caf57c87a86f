"""Findings as text for a person and as data for a program."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import groupby
from unicodedata import category, east_asian_width

from sitegen.findings.finding import Finding, Severity

SourceLine = Callable[[str, int], str]
"""Gives the text of one line of one file, empty when it is not to be had."""

_COLOURS = {Severity.WRONG: "31", Severity.DOUBTFUL: "33", Severity.HINT: "36"}
_WIDEST_SOURCE = 100


def as_data(findings: Iterable[Finding]) -> list[dict[str, object]]:
    """One flat object a finding; these keys are stable."""
    return [
        {
            "check": finding.check,
            "severity": finding.severity.value,
            "file": finding.place.file,
            "line": finding.place.line,
            "column": finding.place.column,
            "size": finding.size or None,
            "said": finding.said or None,
            "should_be": finding.should_be or None,
            "working": list(finding.working),
            "message": finding.message,
        }
        for finding in findings
    ]


def as_text(findings: Sequence[Finding], source_line: SourceLine, *, colour: bool = False) -> str:
    """The findings grouped by file: place, message, source line with a marker, what to put, the working."""

    def paint(text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if colour else text

    lines: list[str] = []
    for file, group in groupby(findings, key=lambda finding: finding.place.file):
        lines.append(paint(_printable(file), "1"))
        for finding in group:
            place = f"{finding.place.line}:{finding.place.column}"
            size = f", size {_printable(finding.size)}" if finding.size else ""
            severity = paint(finding.severity.value, _COLOURS[finding.severity])
            lines.append(f"  {place}  {severity}  {finding.check}{size}")
            lines.extend(f"      {_printable(line)}" for line in finding.message.splitlines())
            lines.extend(f"      {line}" for line in _marked(finding, source_line))
            put = (paint(_printable(line), "32") for line in finding.should_be.splitlines())
            lines.extend(f"      {line}" for line in _labelled("put:", put))
            lines.extend(f"      {line}" for line in _labelled("how:", map(_printable, finding.working)))
        lines.append("")
    return "\n".join(lines)


def count_line(findings: Sequence[Finding], *, looked_at: str) -> str:
    """The last line: how many findings of each severity, in how much text."""
    counts = [
        f"{number} {severity.value}{'s' if severity is Severity.HINT and number != 1 else ''}"
        for severity in Severity
        if (number := sum(1 for finding in findings if finding.severity is severity))
    ]
    return f"{looked_at}: {', '.join(counts) if counts else 'nothing wrong'}"


def _labelled(label: str, lines: Iterable[str]) -> list[str]:
    """Lines under one label, which stands before the first."""
    return [f"{label if index == 0 else ' ' * len(label)}  {line}" for index, line in enumerate(lines)]


def _marked(finding: Finding, source_line: SourceLine) -> list[str]:
    """The line of the file, cut to a readable width around the place, with carets under what was said."""
    text = source_line(finding.place.file, finding.place.line).rstrip()
    if not text:
        return []
    column = min(max(0, finding.place.column - 1), len(text))
    start = len(text) - len(text.lstrip())
    if len(text) - start > _WIDEST_SOURCE:
        start = max(start, column - _WIDEST_SOURCE * 2 // 3)
    start = min(start, column)
    stop = min(len(text), start + _WIDEST_SOURCE)
    end = min(max(column + 1, finding.place.end_column - 1), max(stop, column + 1))
    before = "… " if text[:start].strip() else ""
    behind = " …" if stop < len(text) else ""
    carets = "^" * max(1, _columns(text[column:end]))
    return [
        f"said: {before}{_printable(text[start:stop])}{behind}",
        f"      {' ' * _columns(before + text[start:column])}{carets}",
    ]


def _printable(text: str) -> str:
    """The text with a blank for each character that a terminal might obey or not show."""
    return "".join(char if char.isprintable() else " " for char in text)


def _columns(text: str) -> int:
    """How many columns a text takes on a terminal: two for a wide letter, none for a mark on the letter before it."""
    return sum(
        0 if category(char) in ("Mn", "Me") else 2 if east_asian_width(char) in ("W", "F") else 1 for char in text
    )
