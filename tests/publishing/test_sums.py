"""Sums written below each other: what stands in which row, and which numbers cannot be written so."""

from __future__ import annotations

from publishing import sample_views as sample

from sitegen.publishing.aligned import aligned
from sitegen.publishing.number_views import number_view
from sitegen.publishing.sums import has_star, sum_rows, summed, terms_of
from sitegen.publishing.views import Both, NumberView, SumRow
from sitegen.quantities import BySize, Ratio, System, Worked, given, inches, minus, plus, times, work

ALLOWANCE = given("seam allowance", inches("3/8"))


def band(opening: int) -> Worked:
    finished = work("finished length", given("opening", inches(opening)), times(given("ratio", Ratio.percent(80))))
    return work("cut length", finished, plus(ALLOWANCE, 2))


def view(*each: Worked) -> NumberView:
    return number_view("band.cut_length", "cut length", BySize(each), anchor="w-cut")


def read(row: SumRow) -> tuple[str, ...]:
    return (row.words.striptags(), *(cell.inches for cell in row.cells))


def test_every_term_and_result_has_a_row_and_what_is_alike_spans_all_sizes() -> None:
    rows = sum_rows(view(band(20), band(25)), System.INCHES)
    assert rows is not None
    assert [read(row) for row in rows] == [
        ("opening", "20 in", "25 in"),
        ("× ratio 80%",),
        ("= finished length", "16 in", "20 in"),
        ("+ 2 seam allowances of 3/8 in (1 cm)",),
        ("=", "16 3/4 in", "20 3/4 in"),
    ]


def test_terms_leave_the_unit_to_the_result() -> None:
    assert read(terms_of(view(band(20), band(25)), System.INCHES)[0]) == ("opening", "20", "25")


def test_term_that_a_row_above_has_said_is_named_only() -> None:
    def less(opening: int) -> Worked:
        whole = work("whole", given("a", inches(opening)), plus(ALLOWANCE))
        half = work("half", whole, times(given("share", Ratio.percent(50))))
        return work("rest", half, minus(whole))

    rows = sum_rows(number_view("a.rest", "rest", BySize((less(3), less(5))), anchor="w"), System.INCHES)
    assert rows is not None
    assert [row.words.striptags() for row in rows] == [
        "a", "+ seam allowance 3/8 in (1 cm)", "= whole", "× share 50%", "= half", "− whole", "=",
    ]  # fmt: skip
    assert [len(row.cells) for row in rows] == [2, 0, 2, 0, 2, 0, 2]


def test_sizes_with_other_sums_have_no_common_rows() -> None:
    odd = given("cut length", inches(9), "as typed")
    assert sum_rows(view(band(20), odd), System.INCHES) is None
    assert terms_of(view(band(20), odd), System.INCHES) == ()


def test_number_that_is_alike_in_all_sizes_tells_its_sum_elsewhere() -> None:
    alike, differs = view(band(20)), view(band(20), band(25))
    assert terms_of(alike, System.INCHES) == ()
    assert summed((alike, differs), (alike, differs)) == (differs,)
    assert summed((differs,), ()) == ()


def test_star_stands_where_the_shown_parts_do_not_make_the_result() -> None:
    band_view = sample.NUMBERS["neckband.cut_length"]
    assert has_star([band_view])
    rows = sum_rows(band_view, System.INCHES)
    assert rows is not None
    finished = next(row for row in rows if row.words == "= neckband finished length")
    assert finished.cells[0] == Both("15 1/4 in", "38.5 cm*")
    assert not has_star([view(given("cut length", inches(1)))])


def test_texts_are_aligned_by_their_amounts_with_units() -> None:
    found = aligned(("a 1 1/2 in and 8 mm", "a 2 in and 1.2 cm"))
    assert found is not None
    assert found.words == ("a ", " and ", "")
    assert found.amounts == (("1 1/2 in", "2 in"), ("8 mm", "1.2 cm"))
    assert aligned(("1 in up", "1 in down")) is None
    pair = aligned(("turn 1 in (2.5 cm) up", "turn 2 in (5.1 cm) up"))
    assert pair is not None
    assert pair.amounts == (("1 in (2.5 cm)", "2 in (5.1 cm)"),)
