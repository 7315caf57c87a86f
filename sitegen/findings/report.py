"""Findings as text for a person and as data for a program."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import groupby
from textwrap import wrap
from unicodedata import category, east_asian_width

from sitegen.findings.finding import Finding, Place, Severity

SourceLine = Callable[[str, int], str]
"""Gives the text of one line of one file, empty when it is not to be had."""

Shown = Callable[[Finding], tuple[str, int, int] | None]
"""Gives a line to show instead of that of the file, and between which offsets of it the place lies; or None."""

_COLOURS = {Severity.WRONG: "31", Severity.DOUBTFUL: "33", Severity.HINT: "36"}
_WIDEST_SOURCE = 100
_FEW = 6
"""So many places at most are told one by one where the same is to be said of all of them."""


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


def as_text(
    findings: Sequence[Finding], source_line: SourceLine, *, colour: bool = False, shown: Shown = lambda _: None
) -> str:
    """The findings grouped by file: place, message, source line with a marker, what to put, the working.

    What is said of many places in the same words, and stops nothing, comes once behind all files, with every place.
    """

    def paint(text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if colour else text

    alike = _many_alike(findings)
    single = [finding for finding in findings if _saying(finding) not in alike]
    lines: list[str] = []
    for file, group in groupby(single, key=lambda finding: finding.place.file):
        lines.append(paint(_printable(file), "1"))
        for finding in group:
            place = f"{finding.place.line}:{finding.place.column}"
            size = f", size {_printable(finding.size)}" if finding.size else ""
            severity = paint(finding.severity.value, _COLOURS[finding.severity])
            lines.append(f"  {place}  {severity}  {finding.check}{size}")
            lines.extend(f"      {_printable(line)}" for line in finding.message.splitlines())
            lines.extend(f"      {line}" for line in _marked(finding, source_line, shown))
            put = (paint(_printable(line), "32") for line in finding.should_be.splitlines())
            lines.extend(f"      {line}" for line in _labelled("put:", put))
            lines.extend(f"      {line}" for line in _labelled("how:", map(_printable, finding.working)))
        lines.append("")
    for (check, grade, message), places in alike.items():
        lines.append(f"{paint(grade.value, _COLOURS[grade])}  {check}, {len(places)} times")
        lines.extend(f"      {_printable(line)}" for line in message.splitlines())
        for file, of_file in groupby(places, key=lambda place: place.file):
            at = [place.line for place in of_file]
            lines.append(f"  {paint(_printable(file), '1')}, {'once' if len(at) == 1 else f'{len(at)} times'}")
            lines.extend(_listed(tuple(dict.fromkeys(at))))
        lines.append("")
    return "\n".join(lines)


_Saying = tuple[str, Severity, str]


def _saying(finding: Finding) -> _Saying:
    return finding.check, finding.severity, finding.message


def _many_alike(findings: Iterable[Finding]) -> dict[_Saying, list[Place]]:
    """What is said of so many places that it buries the rest; not what is wrong or can be put right."""
    groups: dict[_Saying, list[Place]] = {}
    for finding in findings:
        if finding.severity is not Severity.WRONG and not (finding.should_be or finding.working or finding.size):
            groups.setdefault(_saying(finding), []).append(finding.place)
    return {saying: places for saying, places in groups.items() if len(places) > _FEW}


def _listed(numbers: Sequence[int]) -> list[str]:
    words = f"{'line' if len(numbers) == 1 else 'lines'} {', '.join(map(str, numbers))}"
    return wrap(words, _WIDEST_SOURCE, initial_indent=" " * 6, subsequent_indent=" " * 12)


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


def _marked(finding: Finding, source_line: SourceLine, shown: Shown) -> list[str]:
    """The line of the file, cut to a readable width around the place, with carets under what was said."""
    line = shown(finding) or _line_of_file(finding, source_line)
    text = line[0].rstrip()
    if not text:
        return []
    column = min(max(0, line[1]), len(text))
    start = len(text) - len(text.lstrip())
    if len(text) - start > _WIDEST_SOURCE:
        start = max(start, column - _WIDEST_SOURCE * 2 // 3)
    start = min(start, column)
    stop = min(len(text), start + _WIDEST_SOURCE)
    end = min(max(column + 1, line[2]), max(stop, column + 1))
    before = "… " if text[:start].strip() else ""
    behind = " …" if stop < len(text) else ""
    carets = "^" * max(1, _columns(text[column:end]))
    return [
        f"said: {before}{_printable(text[start:stop])}{behind}",
        f"      {' ' * _columns(before + text[start:column])}{carets}",
    ]


def _line_of_file(finding: Finding, source_line: SourceLine) -> tuple[str, int, int]:
    """The line where a place begins, and where in it the place begins and ends: at its end, if the place goes on."""
    text, column = source_line(finding.place.file, finding.place.line), finding.place.column - 1
    if finding.place.end_column:
        return text, column, finding.place.end_column - 1
    rest = " ".join(text[column:].split())
    said = " ".join(finding.said.split())
    goes_on = rest and said.startswith(rest) and said != rest
    return text, column, len(text.rstrip()) if goes_on else column + 1


def _printable(text: str) -> str:
    """The text with a blank for each character that a terminal might obey or not show."""
    return "".join(char if char.isprintable() else " " for char in text)


def _columns(text: str) -> int:
    """How many columns a text takes on a terminal: two for a wide letter, none for a mark on the letter before it."""
    return sum(
        0 if category(char) in ("Mn", "Me") else 2 if east_asian_width(char) in ("W", "F") else 1 for char in text
    )
