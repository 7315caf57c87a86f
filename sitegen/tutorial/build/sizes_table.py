"""The size table that an author keeps in a spreadsheet: a row a number, a column a size."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.findings import Collector, meant, nearest
from sitegen.reading import Entry, Scalar, Sequence, Table


class SizeTable:
    """Rows by the full name of their number; each is taken once by the part that it belongs to."""

    def __init__(self) -> None:
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
                    f"The size table has a row “{name}” that belongs to nothing in the tutorial."
                    + (f" Did you mean {near}?" if near else ""),
                    said=name,
                    should_be=near,
                )


def size_table(table: Table, sizes: tuple[str, ...], collector: Collector) -> SizeTable:
    """The rows of a spreadsheet whose first column holds names and whose other columns are the sizes."""
    found = SizeTable()
    columns = _columns(table, sizes, collector)
    for row in table.rows:
        key = row[0]
        name = key.text.strip()
        if not name:
            continue
        if name in found:
            collector.wrong("key-twice", key.place, f"The size table has two rows “{name}”.", said=name)
            continue
        cells: list[Scalar] = [row[column] for column in columns if column < len(row)]
        missing = [size for size, column in zip(sizes, columns, strict=True) if _blank(row, column)]
        if missing:
            collector.wrong(
                "size-count",
                key.place,
                f"The row “{name}” of the size table has no value for {', '.join(missing)}.",
                said=name,
            )
            found.refuse(name, Entry(key, Sequence((), key.place)))
            continue
        found.add(name, Entry(key, Sequence(tuple(cells), key.place)))
    return found


def _blank(row: tuple[Scalar, ...], column: int) -> bool:
    return column >= len(row) or not row[column].text.strip()


def _columns(table: Table, sizes: tuple[str, ...], collector: Collector) -> list[int]:
    """The column of each size, by its heading; a missing or foreign heading is reported."""
    headings = {cell.text.strip(): index for index, cell in enumerate(table.header) if index}
    for heading, index in headings.items():
        if heading not in sizes:
            near = nearest(heading, sizes, most=1)
            collector.wrong(
                "size-count",
                table.header[index].place,
                f"The size table has a column “{heading}” but the tutorial has no such size ({', '.join(sizes)}).",
                said=heading,
                should_be=near[0] if near else "",
            )
    for size in sizes:
        if size not in headings:
            collector.wrong("size-count", table.place, f"The size table has no column for size {size}.", should_be=size)
    return [headings.get(size, len(table.header) + 1_000) for size in sizes]
