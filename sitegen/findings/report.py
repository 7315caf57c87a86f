"""Findings as text for a person and as data for a program."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import groupby

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
        lines.append(paint(file, "1"))
        for finding in group:
            place = f"{finding.place.line}:{finding.place.column}"
            size = f", size {finding.size}" if finding.size else ""
            severity = paint(finding.severity.value, _COLOURS[finding.severity])
            lines.append(f"  {place}  {severity}  {finding.check}{size}")
            lines.append(f"      {finding.message}")
            lines.extend(f"      {line}" for line in _marked(finding, source_line))
            if finding.should_be:
                lines.append(f"      put:  {paint(finding.should_be, '32')}")
            lines.extend(f"      {'how:' if first else '    '}  {line}" for first, line in _flagged(finding.working))
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


def _flagged(lines: Sequence[str]) -> list[tuple[bool, str]]:
    return [(index == 0, line) for index, line in enumerate(lines)]


def _marked(finding: Finding, source_line: SourceLine) -> list[str]:
    """The line of the file, cut to a readable width around the place, with carets under what was said."""
    text = source_line(finding.place.file, finding.place.line)
    if not text.strip():
        return []
    column = min(finding.place.column - 1, len(text))
    length = max(1, finding.place.end_column - finding.place.column)
    start = max(0, column - _WIDEST_SOURCE * 2 // 3) if len(text) > _WIDEST_SOURCE else 0
    if start == 0:
        start = len(text) - len(text.lstrip()) if column >= len(text) - len(text.lstrip()) else 0
    shown = "".join(char if char.isprintable() else " " for char in text[start : start + _WIDEST_SOURCE])
    length = max(1, min(length, len(shown) - (column - start)))
    return [f"said: {shown}", f"      {' ' * (column - start)}{'^' * length}"]
