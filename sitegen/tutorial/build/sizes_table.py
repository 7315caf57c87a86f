"""The size table that an author keeps in a spreadsheet: a row a number, a column a size, or the other way round."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.findings import Collector, meant, nearest
from sitegen.reading import Entry, Scalar, Sequence, Table


class SizeTable:
    """Rows by the full name of their number; each is taken once by the part that it belongs to."""

    def __init__(self, row: str = "row") -> None:
        self._row = row
        self._rows: dict[str, Entry] = {}
        self._taken: set[str] = set()
        self._refused: set[str] = set()

    def add(self, name: str, row: Entry) -> None:
        """Keep a row."""
        self._rows[name] = row

    def refuse(self, name: str, row: Entry) -> None:
        """Keep the name of a row whose values were already reported as unusable."""
        self._rows[name] = row
        self._refused.add(name)

    @property
    def refused(self) -> frozenset[str]:
        """The names of rows that are there and were not read."""
        return frozenset(self._refused)

    def __contains__(self, name: str) -> bool:
        return name in self._rows

    def take(self, name: str) -> Entry | None:
        """The row of this name, as a key with a list of texts."""
        if name in self._rows:
            self._taken.add(name)
        return None if name in self._refused else self._rows.get(name)

    def names_under(self, prefix: str) -> Iterator[str]:
        """What follows the prefix in the names of rows not yet taken, such as the edges of a piece."""
        for name in self._rows:
            rest = name.removeprefix(prefix)
            if rest != name and "." not in rest and name not in self._taken:
                yield rest

    def report_left_over(self, known: tuple[str, ...], collector: Collector) -> None:
        """Report the rows that belong to nothing."""
        for name, row in self._rows.items():
            if name not in self._taken | self._refused:
                near = meant(name, known)
                collector.wrong(
                    "unknown-row",
                    row.key.place,
                    f"The size table has a {self._row} “{name}” that belongs to nothing in the tutorial."
                    + (f" Did you mean {near}?" if near else ""),
                    said=name,
                    should_be=near,
                )


@dataclass(frozen=True, slots=True)
class _Way:
    """Which way round a table is: what a number is in it, and what a size."""

    number: str
    size: str


_USUAL = _Way("row", "column")
_TURNED = _Way("column", "row")


def size_table(table: Table, sizes: tuple[str, ...], collector: Collector) -> SizeTable:
    """The numbers of a spreadsheet: a row each, below the names of the sizes, or a column each, beside them."""
    way = _TURNED if _is_turned(table, sizes) else _USUAL
    table = _turned(table) if way is _TURNED else table
    found = SizeTable(way.number)
    columns = _columns(table, sizes, way, collector)
    for row in table.rows:
        key = row[0]
        name = key.text.strip()
        if not name:
            continue
        if name in found:
            collector.wrong("key-twice", key.place, f"The size table has two {way.number}s “{name}”.", said=name)
            continue
        cells: list[Scalar] = [row[column] for column in columns.values() if column < len(row)]
        missing = [size for size, column in columns.items() if _blank(row, column)]
        if missing:
            collector.wrong(
                "size-count",
                key.place,
                f"The {way.number} “{name}” of the size table has no value for {', '.join(missing)}.",
                said=name,
            )
        if missing or len(columns) < len(sizes):
            found.refuse(name, Entry(key, Sequence((), key.place)))
            continue
        found.add(name, Entry(key, Sequence(tuple(cells), key.place)))
    return found


def _is_turned(table: Table, sizes: tuple[str, ...]) -> bool:
    """Whether the sizes stand below each other: more of them are in the first column than in the first row."""
    beside = {cell.text.strip() for cell in table.header[1:]}
    below = {row[0].text.strip() for row in table.rows}
    return len(below.intersection(sizes)) > len(beside.intersection(sizes))


def _turned(table: Table) -> Table:
    """The table with a row for each of its columns."""
    header, *rows = zip(table.header, *table.rows, strict=True)
    return Table(tuple(header), tuple(rows), table.place)


def _blank(row: tuple[Scalar, ...], column: int) -> bool:
    return column >= len(row) or not row[column].text.strip()


def _columns(table: Table, sizes: tuple[str, ...], way: _Way, collector: Collector) -> dict[str, int]:
    """The column of each size that has one, by its heading; a missing or foreign heading is reported."""
    headings = {cell.text.strip(): index for index, cell in enumerate(table.header) if index}
    for heading, index in headings.items():
        if heading and heading not in sizes:
            near = nearest(heading, sizes, most=1)
            collector.wrong(
                "size-count",
                table.header[index].place,
                f"The size table has a {way.size} “{heading}” but the tutorial has no such size ({', '.join(sizes)}).",
                said=heading,
                should_be=near[0] if near else "",
            )
    for size in sizes:
        if size not in headings:
            message = f"The size table has no {way.size} for size {size}."
            collector.wrong("size-count", table.place, message, should_be=size)
    return {size: headings[size] for size in sizes if size in headings}
