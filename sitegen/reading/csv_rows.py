"""Spreadsheet files to cells with places, as spreadsheets of any language save them (RFC 4180 and its relatives).

Cells are parted by commas, semicolons or tabs. A cell in quotes may hold any of these and line ends; a quotation mark
in it is written twice.
"""

from __future__ import annotations

import re

from sitegen.findings import Collector
from sitegen.reading.nodes import Scalar, Table
from sitegen.reading.offsets import LINE_END, Run, Source
from sitegen.reading.slip import MOST_SLIPS, Slip, tell, too_many

MOST_ROWS = 2_000
MOST_CELLS = 200
"""A size table is far smaller; common practice, no source."""

_DELIMITERS = {",": "comma", ";": "semicolon", "\t": "tab"}
_QUOTED = re.compile(r'"[^"]*+(?:""[^"]*+)*+(?P<close>"?)')
_SEPARATOR_LINE = re.compile(r"sep=([,;\t])(?:\r\n|\n|\r|\Z)", re.IGNORECASE)
_INSIDE = re.compile(r'""|\r\n|\r|\n')
_BLANKS = " \xa0\u202f"
_TWICE = 'Inside quotes every inch or quotation mark is written twice, such as "33 1/2""".'


def read_csv(source: Source, collector: Collector) -> Table | None:
    """The header and the rows that have something in them, or None if the file cannot be used."""
    reader = _Reader(source)
    rows = [row for row in reader.rows() if any(cell.text for cell in row)]
    slips = reader.slips
    if not rows and not slips:
        slips = [Slip("file-empty", 0, 0, "There is nothing in this file.")]
    table = None
    if rows and not reader.header_lost:
        table, more = _table(rows, source, _DELIMITERS[reader.delimiter])
        slips = [*slips, *more]
    if len(slips) > MOST_SLIPS + 1:
        slips[MOST_SLIPS:] = [too_many(slips[MOST_SLIPS])]
    for slip in slips:
        tell(slip, source, collector)
    return None if any(slip.unread for slip in slips) else table


class _TooMuch(Exception):  # noqa: N818 - an end of reading, not a program's fault
    pass


class _Reader:
    """Goes through the text once, row by row."""

    def __init__(self, source: Source) -> None:
        self.slips: list[Slip] = []
        self._source = source
        self._text = source.text
        named = _SEPARATOR_LINE.match(self._text)
        self._at = named.end() if named else 0
        self.delimiter = named[1] if named else _delimiter(self._text)
        self.header_lost = False
        stop = re.escape(self.delimiter)
        self._plain = re.compile(rf"[^{stop}\r\n]*")

    def rows(self) -> list[list[Scalar]]:
        """All rows that can be read; stops where there is too much."""
        rows: list[list[Scalar]] = []
        try:
            while self._at < len(self._text):
                if len(rows) > MOST_ROWS:
                    self._too_much(f"{MOST_ROWS:,} rows")
                known = len(self.slips)
                row = self._row()
                if len(self.slips) == known:
                    rows.append(row)
                elif not any(cell.text for earlier in rows for cell in earlier):
                    self.header_lost = True
        except _TooMuch:
            self.header_lost = True
        return rows

    def _row(self) -> list[Scalar]:
        cells: list[Scalar] = []
        while True:
            if len(cells) == MOST_CELLS:
                self._too_much(f"{MOST_CELLS} cells in a row")
            cells.append(self._cell())
            if self._text.startswith(self.delimiter, self._at):
                self._at += 1
                continue
            end = LINE_END.match(self._text, self._at)
            self._at = end.end() if end else len(self._text)
            return cells

    def _cell(self) -> Scalar:
        start = self._skip_blanks(self._at)
        if self._text.startswith('"', start):
            return self._quoted(start)
        match = self._plain.match(self._text, start)
        end = match.end() if match else start
        self._at = end
        text = self._text[start:end].rstrip(_BLANKS + "\t")
        return _scalar(self._source, text, start, (Run(0, start, len(text), len(text)),) if text else (), quoted=False)

    def _quoted(self, start: int) -> Scalar:
        match = _QUOTED.match(self._text, start)
        line = self._source.line_number(start)
        if match is None or not match["close"]:
            message = f"The quotation mark that opens here is never closed. {_TWICE}"
            return self._skip_line(Slip("csv-quote-open", start, self._line_end(start), message))
        end = self._skip_blanks(match.end())
        if end < len(self._text) and self._text[end] not in (self.delimiter, "\r", "\n"):
            if self._source.line_number(end) == line:
                message = f"There is more behind the closing quotation mark. {_TWICE}"
            else:
                message = (
                    "The quotation mark that opens here is closed only on line"
                    f" {self._source.line_number(end)}, with more behind it. {_TWICE}"
                )
            return self._skip_line(Slip("csv-quote-behind", start, self._line_end(start), message))
        self._at = end
        text, runs = _inside(self._text, start + 1, match.end() - 1)
        return _scalar(self._source, text, start + 1, runs, quoted=True)

    def _skip_line(self, slip: Slip) -> Scalar:
        """Says what is wrong and goes on behind the line on which the trouble began."""
        if len(self.slips) == MOST_SLIPS:
            self.slips.append(too_many(slip))
            raise _TooMuch
        self.slips.append(slip)
        self._at = self._line_end(slip.start)
        return _scalar(self._source, "?", slip.start, (), quoted=True)

    def _line_end(self, start: int) -> int:
        match = LINE_END.search(self._text, start)
        return match.start() if match else len(self._text)

    def _skip_blanks(self, at: int) -> int:
        while at < len(self._text) and self._text[at] in _BLANKS:
            at += 1
        return at

    def _too_much(self, what: str) -> None:
        message = f"There are more than {what} in this file, more than any size table has. Save only the table."
        self.slips.append(Slip("csv-too-large", self._at, self._at, message))
        raise _TooMuch


def _delimiter(text: str) -> str:
    """What parts the cells of the first line with something on it; a decimal comma there stands in quotes."""
    first = next((line for line in LINE_END.split(text[:100_000]) if line.strip()), "")
    bare = re.sub(r'"[^"]*"', "", first)
    if not any(delimiter in bare for delimiter in _DELIMITERS):
        return ","
    return max(reversed(_DELIMITERS), key=bare.count)  # where it is even, the comma is part of a cell


def _inside(text: str, start: int, end: int) -> tuple[str, tuple[Run, ...]]:
    """What stands between two quotation marks: a doubled mark is one, and each line end is a line break."""
    parts: list[str] = []
    runs: list[Run] = []
    size = 0

    def add(part: str, at: int, width: int) -> None:
        nonlocal size
        if part:
            parts.append(part)
            runs.append(Run(size, at, len(part), width))
            size += len(part)

    for match in _INSIDE.finditer(text, start, end):
        add(text[start : match.start()], start, match.start() - start)
        if match[0] == '""':
            add('"', match.start(), 2)
        else:
            add("\n", match.start(), 0)
        start = match.end()
    add(text[start:end], start, end - start)
    return "".join(parts), tuple(runs)


def _scalar(source: Source, text: str, start: int, runs: tuple[Run, ...], *, quoted: bool) -> Scalar:
    cell = Scalar(text, source.place(start, start), quoted, source, runs)
    return Scalar(text, cell.at(), quoted, source, runs)


def _table(rows: list[list[Scalar]], source: Source, separator: str) -> tuple[Table, list[Slip]]:
    widest = max(len(_without_empty_end(row)) for row in rows[1:]) if rows[1:] else 0
    width = max(len(_without_empty_end(rows[0])), min(len(rows[0]), widest))
    header = rows[0][:width]
    slips = _header_slips(header, rows[1:], source)
    body = []
    for row in rows[1:]:
        slips += _row_slips(row, width, source, separator)
        end = row[-1].at(len(row[-1].text))
        body.append((*row[:width], *(Scalar("", end) for _ in range(width - len(row)))))
    return Table(tuple(header), tuple(body), rows[0][0].place), slips


def _header_slips(header: list[Scalar], rows: list[list[Scalar]], source: Source) -> list[Slip]:
    slips = []
    seen: dict[str, Scalar] = {}
    for column, cell in enumerate(header):
        if not cell.text.strip():
            if column and any(len(row) > column and row[column].text for row in rows):
                message = "This column has values but no name. Write its name in the first row."
                slips.append(_slip("csv-header-empty", cell, source, message))
            continue
        first = seen.setdefault(cell.text, cell)
        if first is not cell:
            message = f"There are two columns with the name {cell.text}. Keep one of them, or give each its own name."
            slips.append(_slip("csv-header-twice", cell, source, message))
    return slips


def _row_slips(row: list[Scalar], width: int, source: Source, separator: str) -> list[Slip]:
    columns = _count(width, "column")
    cells = len(_without_empty_end(row))
    if cells > width:
        message = (
            f"This row has {_count(cells, 'cell')}, but the first row names {columns}."
            f" A cell that holds a {separator} itself must be in quotes."
        )
        return [_slip("csv-row-long", row[width], source, message)]
    if len(row) < width:
        message = (
            f"This row has {_count(len(row), 'cell')}, but the first row names {columns}."
            f" Write a {separator} for each cell that is missing, also where it stays empty."
        )
        return [_slip("csv-row-short", row[-1], source, message)]
    return []


def _slip(check: str, cell: Scalar, source: Source, message: str) -> Slip:
    start = source.line_start(cell.place.line) + cell.place.column - 1
    return Slip(check, start, start + max(0, cell.place.end_column - cell.place.column), message, unread=False)


def _without_empty_end(row: list[Scalar]) -> list[Scalar]:
    size = len(row)
    while size and not row[size - 1].text:
        size -= 1
    return row[:size]


def _count(number: int, name: str) -> str:
    return f"{number} {name}" if number == 1 else f"{number} {name}s"
