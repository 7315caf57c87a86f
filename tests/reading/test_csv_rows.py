"""Spreadsheet files of all sorts give the same cells, each with its place."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.findings import Collector, Place
from sitegen.reading import Scalar, Table
from sitegen.reading.csv_rows import read_csv
from sitegen.reading.offsets import Source

CELL = st.text(alphabet="ab ½3/,;\"\t'é😀\n", max_size=8)


def read(text: str) -> Table:
    collector = Collector()
    table = read_csv(Source("s.csv", text), collector)
    assert table is not None, collector.findings
    assert collector.findings == ()
    return table


def texts(table: Table) -> list[list[str]]:
    return [[cell.text for cell in row] for row in (table.header, *table.rows)]


@pytest.mark.parametrize(
    "text",
    [
        'measure,XS,S\nbust,"33 1/2""",35\nhip,36,38\n',
        'measure;XS;S\r\nbust;"33 1/2""";35\r\nhip;36;38\r\n',
        'measure\tXS\tS\rbust\t33 1/2"\t35\rhip\t36\t38',
        'sep=;\r\nmeasure;XS;S\r\nbust;33 1/2";35\r\n\r\nhip;36;38;;\r\n',
        '\n"measure", XS ,"S",\n,,\n bust , "33 1/2""" ,35\nhip,36,38,,\n',
    ],
    ids=["commas", "semicolons", "tabs", "named separator", "untidy"],
)
def test_all_ways_to_save_a_table_give_the_same_cells(text: str) -> None:
    assert texts(read(text)) == [["measure", "XS", "S"], ["bust", '33 1/2"', "35"], ["hip", "36", "38"]]


def test_a_decimal_comma_is_kept_where_semicolons_part_the_cells() -> None:
    assert texts(read("Maß;XS, S\nbust;85,5\n")) == [["Maß", "XS, S"], ["bust", "85,5"]]


def test_every_cell_has_its_place() -> None:
    table = read('measure,XS\nbust,"33 1/2"", wide"\n  hip ,\n')
    assert table.place == Place("s.csv", 1, 1, 8)
    assert table.header[1] == Scalar("XS", Place("s.csv", 1, 9, 11))
    bust, hip = table.rows
    assert bust[1] == Scalar('33 1/2", wide', Place("s.csv", 2, 7, 21), True)
    assert bust[1].at(6, 7) == Place("s.csv", 2, 13, 15)
    assert bust[1].at(9) == Place("s.csv", 2, 17, 21)
    assert hip[0] == Scalar("hip", Place("s.csv", 3, 3, 6))
    assert hip[1] == Scalar("", Place("s.csv", 3, 8, 8))


def test_a_cell_may_hold_line_ends() -> None:
    table = read('measure,note\r\nbust,"one\r\ntwo"\r\nhip,x\r\n')
    assert table.rows[0][1].text == "one\ntwo"
    assert table.rows[0][1].at(4, 7) == Place("s.csv", 3, 1, 4)
    assert table.rows[1][0].place == Place("s.csv", 4, 1, 4)


def test_a_cell_that_is_missing_is_empty_at_the_end_of_its_row() -> None:
    collector = Collector()
    table = read_csv(Source("s.csv", "measure,XS,S\nbust,33\n"), collector)
    assert table is not None
    assert table.rows[0][2] == Scalar("", Place("s.csv", 2, 8, 8))
    assert [finding.check for finding in collector.findings] == ["csv-row-short"]


def test_a_table_without_rows_is_a_table() -> None:
    assert texts(read("measure,XS\n")) == [["measure", "XS"]]


@given(
    rows=st.lists(st.lists(CELL, min_size=3, max_size=3), max_size=6),
    delimiter=st.sampled_from(",;\t"),
    line_end=st.sampled_from(["\n", "\r\n", "\r"]),
    quoting=st.sampled_from([csv.QUOTE_ALL, csv.QUOTE_MINIMAL]),
)
def test_what_the_standard_writer_writes_is_read_again(
    rows: list[list[str]], delimiter: str, line_end: str, quoting: int
) -> None:
    """The reference is the csv module of Python; it would keep blanks around cells without quotes."""
    written = io.StringIO(newline="")
    writer = csv.writer(written, delimiter=delimiter, lineterminator=line_end, quoting=quoting)  # type: ignore[arg-type]
    writer.writerow(["measure", "XS", "S"])
    if quoting == csv.QUOTE_MINIMAL:
        rows = [[cell.replace("\n", " ").strip(" \t") for cell in row] for row in rows]
    writer.writerows(rows)
    table = read(written.getvalue())
    assert [[cell.text for cell in row] for row in table.rows] == [row for row in rows if any(row)]
    source = Source("s.csv", written.getvalue())
    for row in table.rows:
        for cell in row:
            for index, char in enumerate(cell.text):
                place = cell.at(index, index + 1)
                assert source.line(place.line)[place.column - 1 : place.end_column - 1] in (char, '""', "")
                assert (place.end_column == place.column) == (char == "\n")
