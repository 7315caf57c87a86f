"""Numbers that remember how they were got, and the lines in which they tell it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sitegen.quantities import (
    Area,
    Length,
    Ratio,
    Rounding,
    Ruler,
    System,
    Term,
    Value,
    Worked,
    cm,
    given,
    inches,
    inputs_of,
    lines_of,
    minus,
    mm,
    over,
    plural,
    plus,
    rectangle,
    show_line,
    show_measured,
    show_number,
    show_ratio,
    show_value,
    show_working,
    times,
    work,
)

INCHES, METRIC = System.INCHES, System.CENTIMETRES
NOTE = " (shown rounded; worked with the exact numbers)"


def neckband() -> Worked:
    opening = work("opening", given("front neckline", inches(12)), plus(given("back neckline", inches(8))))
    finished = work("finished length", opening, times(given("ratio", Ratio.percent(85))))
    return work("cut length", finished, plus(given("seam allowance", inches("3/8")), 2))


def test_the_working_of_a_band_in_inches() -> None:
    assert show_working(neckband(), INCHES) == (
        "opening: front neckline 12 in + back neckline 8 in = 20 in",
        "finished length: opening 20 in × ratio 85% = 17 in",
        "cut length: finished length 17 in + 2 seam allowances of 3/8 in = 17 3/4 in",
    )


def test_the_same_working_in_centimetres_says_where_rounded_parts_do_not_add_up() -> None:
    assert show_working(neckband(), METRIC) == (
        "opening: front neckline 30.5 cm + back neckline 20.5 cm = 51 cm",
        "finished length: opening 51 cm × ratio 85% = 43 cm" + NOTE,
        "cut length: finished length 43 cm + 2 seam allowances of 1 cm = 45 cm",
    )


def test_the_value_is_the_exact_sum_whatever_is_shown() -> None:
    assert neckband().length == inches("17.75")


def test_a_length_can_be_taken_off_so_many_times() -> None:
    number = work("finished", given("cut length", cm(32)), minus(given("seam allowance", cm(1)), 2))
    assert number.length == cm(30)
    assert show_line(number, METRIC) == "finished: cut length 32 cm − 2 seam allowances of 1 cm = 30 cm"


def test_a_length_can_be_divided() -> None:
    number = work("quarter", given("opening", inches(21)), over(given("marks", 4)))
    assert number.length == inches("5.25")
    assert show_line(number, INCHES) == "quarter: opening 21 in ÷ marks 4 = 5 1/4 in"


def test_a_length_over_a_length_is_a_ratio() -> None:
    number = work("stretch", given("growth", inches(2)), over(given("rest", inches(4))))
    assert number.ratio == Ratio.percent(50)
    assert show_line(number, INCHES) == "stretch: growth 2 in ÷ rest 4 in = 50%"


def test_a_length_times_a_length_is_an_area() -> None:
    number = work("area", given("width", inches(4)), times(given("height", inches("2.5"))))
    assert number.value == rectangle(inches(4), inches("2.5"))
    assert show_line(number, INCHES) == "area: width 4 in × height 2 1/2 in = 10 sq in"
    assert show_line(number, METRIC) == "area: width 10 cm × height 6.4 cm = 65 cm²" + NOTE


def test_a_sum_may_begin_with_a_number_taken_several_times() -> None:
    seam = given("seam allowance", inches("3/8"))
    for first in (plus(seam, 2), Term("", 2, seam)):
        number = work("both", first, plus(given("hem", inches(1))))
        assert number.length == inches("1.75")
        assert show_line(number, INCHES) == "both: 2 seam allowances of 3/8 in + hem 1 in = 1 3/4 in"


@pytest.mark.parametrize("sign", ["−", "×", "÷", "by"])
def test_a_sum_cannot_begin_with_what_takes_away_or_multiplies(sign: str) -> None:
    with pytest.raises(ValueError, match=rf"^a sum begins with a number, not with {sign}$"):
        work("none", Term(sign, 1, given("hem", inches(1))), plus(given("seam allowance", inches(1))))


def test_adding_and_multiplying_in_one_sum_is_refused() -> None:
    hem, ratio = given("hem", inches(1)), given("ratio", Ratio.percent(50))
    message = r"^a sum reads from left to right: split sums and products into lines of their own$"
    for terms in ((plus(hem), times(ratio)), (times(ratio), minus(hem)), (over(ratio), plus(hem))):
        with pytest.raises(ValueError, match=message):
            work("none", hem, *terms)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (inches(1), Ratio.percent(50)),
        (inches(1), 2),
        (Ratio.percent(50), 1),
        (Area(Fraction(1)), inches(1)),
        (2, inches(1)),
    ],
)
def test_unlike_quantities_cannot_be_added_or_taken_off(first: Value, second: Value) -> None:
    for term in (plus(given("second", second)), minus(given("second", second))):
        with pytest.raises(TypeError, match=r"^only quantities of one kind can be added or taken off$"):
            work("none", given("first", first), term)


@pytest.mark.parametrize(
    ("first", "second"),
    [(2, inches(1)), (Ratio.percent(50), inches(1)), (inches(1), Area(Fraction(1)))],
)
def test_quantities_that_make_no_sense_together_cannot_be_multiplied_or_divided(first: Value, second: Value) -> None:
    for term in (times(given("second", second)), over(given("second", second))):
        with pytest.raises(TypeError, match=r"^these quantities cannot be multiplied or divided$"):
            work("none", given("first", first), term)


@pytest.mark.parametrize("nothing", [inches(0), 0, Fraction(0), Ratio(Fraction(0))])
def test_nothing_divides_no_length(nothing: Value) -> None:
    with pytest.raises(ZeroDivisionError):
        work("none", given("hem", inches(1)), over(given("nothing", nothing)))


RESULTS: list[tuple[Value, Term, Value]] = [
    (inches(3), plus(given("b", inches(1))), inches(4)),
    (inches(3), minus(given("b", inches(4))), inches(-1)),
    (inches(3), times(given("b", 2)), inches(6)),
    (inches(3), times(given("b", Fraction(1, 2))), inches("1.5")),
    (inches(3), over(given("b", Ratio.percent(50))), inches(6)),
    (Ratio.percent(80), plus(given("b", Ratio.percent(5))), Ratio.percent(85)),
    (Ratio.percent(80), minus(given("b", Ratio.percent(5)), 2), Ratio.percent(70)),
    (Ratio.percent(80), times(given("b", 2)), Ratio.percent(160)),
    (Ratio.percent(80), over(given("b", 2)), Ratio.percent(40)),
    (Ratio.percent(80), times(given("b", Ratio.percent(50))), Ratio.percent(40)),
    (Area(Fraction(6)), plus(given("b", Area(Fraction(1)))), Area(Fraction(7))),
    (Area(Fraction(6)), times(given("b", 2)), Area(Fraction(12))),
    (Area(Fraction(6)), over(given("b", 4)), Area(Fraction(3, 2))),
    (7, plus(given("b", 1), 3), 10),
    (7, over(given("b", 2)), Fraction(7, 2)),
    (7, times(given("b", Fraction(1, 2))), Fraction(7, 2)),
    (Fraction(1, 2), minus(given("b", 1)), Fraction(-1, 2)),
]


@pytest.mark.parametrize(("first", "term", "result"), RESULTS)
def test_each_kind_of_sum_has_its_exact_result(first: Value, term: Term, result: Value) -> None:
    assert work("result", given("a", first), term).value == result


def test_the_note_on_rounding_comes_when_shown_parts_do_not_make_the_shown_total() -> None:
    part = given("part", mm("101.2"))
    assert show_line(work("total", part, plus(part)), METRIC) == "total: part 10 cm + part 10 cm = 20 cm"
    part = given("part", mm("101.3"))
    assert show_line(work("total", part, plus(part)), METRIC) == "total: part 10 cm + part 10 cm = 20.5 cm" + NOTE


def test_a_total_that_is_itself_rounded_away_from_its_exact_parts_says_so() -> None:
    number = work("total", given("long", inches(4)), plus(given("short", inches("1/16"))))
    assert show_line(number, INCHES) == "total: long 4 in + short 1/16 in = 4 1/8 in" + NOTE


def test_a_product_of_shown_parts_that_rounds_to_the_shown_total_needs_no_note() -> None:
    number = work("band", given("opening", inches("20.125")), times(given("ratio", Ratio.percent(85))))
    assert show_line(number, INCHES) == "band: opening 20 1/8 in × ratio 85% = 17 1/8 in"


def test_a_ratio_that_is_shown_rounded_counts_as_a_rounded_part() -> None:
    third = given("ratio", Ratio(Fraction(1, 3)))
    number = work("share", given("whole", inches(300)), times(third))
    assert show_line(number, INCHES) == "share: whole 300 in × ratio 33.3% = 100 in" + NOTE
    number = work("all", third, plus(third))
    assert show_line(number, INCHES) == "all: ratio 33.3% + ratio 33.3% = 66.7%" + NOTE


def test_a_ratio_in_tenths_of_a_percent_is_shown_exactly() -> None:
    number = work("share", given("whole", inches(1000)), times(given("ratio", Ratio.percent("85.3"))))
    assert show_line(number, INCHES) == "share: whole 1000 in × ratio 85.3% = 853 in"


def test_areas_that_are_shown_rounded_count_as_rounded_parts() -> None:
    part = given("part", Area(Fraction(140)))
    assert show_line(work("both", part, plus(part)), METRIC) == "both: part 1 cm² + part 1 cm² = 3 cm²" + NOTE
    part = given("part", Area(Fraction(150)))
    assert show_line(work("both", part, plus(part)), METRIC) == "both: part 2 cm² + part 2 cm² = 3 cm²" + NOTE
    part = given("part", Area(Fraction(200)))
    assert show_line(work("both", part, plus(part)), METRIC) == "both: part 2 cm² + part 2 cm² = 4 cm²"
    part = given("part", rectangle(inches("0.3"), inches(1)))
    assert show_line(work("both", part, plus(part)), INCHES) == "both: part 0.3 sq in + part 0.3 sq in = 0.6 sq in"
    part = given("part", rectangle(inches("0.33"), inches(1)))
    assert (
        show_line(work("both", part, plus(part)), INCHES) == "both: part 0.3 sq in + part 0.3 sq in = 0.7 sq in" + NOTE
    )


def test_plain_numbers_that_are_shown_rounded_count_as_rounded_parts() -> None:
    part = given("part", Fraction(100, 901))
    assert show_line(work("nine", part, times(given("times", 9))), INCHES) == "nine: part 0.11 × times 9 = 1" + NOTE
    part = given("part", Fraction(1, 9))
    assert show_line(work("both", part, plus(part)), INCHES) == "both: part 0.11 + part 0.11 = 0.22"


def test_a_ratio_that_was_written_as_a_fraction_is_shown_so_and_is_exact() -> None:
    number = work("share", given("whole", inches(300)), times(given("ratio", Ratio(Fraction(1, 3), as_fraction=True))))
    assert show_line(number, INCHES) == "share: whole 300 in × ratio 1/3 = 100 in"


def test_a_tiny_ratio_does_not_stop_the_working() -> None:
    number = work("much", given("whole", mm(1)), over(given("ratio", Ratio(Fraction(1, 10_000)))))
    assert show_line(number, METRIC) == "much: whole 1 mm ÷ ratio 0% = 1000 cm"


def test_another_ruler_rounds_and_notes_by_its_own_marks() -> None:
    number = work("total", given("long", inches(4)), plus(given("short", inches("1/16"))))
    fine = Ruler(inch_long=inches("1/16"))
    assert show_line(number, INCHES, fine) == "total: long 4 in + short 1/16 in = 4 1/16 in"


def test_a_given_number_shows_its_value_and_its_note() -> None:
    assert show_line(given("ratio", Ratio.percent(85)), INCHES) == "ratio: 85%"
    assert show_line(given("hem", cm(2), "common practice"), METRIC) == "hem: 2 cm (common practice)"


def test_a_number_taken_over_as_it_is_needs_no_second_sight_of_its_value() -> None:
    hem = given("hem", cm(2))
    assert show_line(work("allowance", hem), METRIC) == "allowance: hem 2 cm"
    assert show_line(work("both allowances", plus(hem, 2)), METRIC) == "both allowances: 2 hems of 2 cm = 4 cm"


def test_a_note_stands_behind_the_result() -> None:
    number = work("cut", given("edge", cm(20)), plus(given("hem", cm(2))), note="edge measured on the seam line")
    assert show_line(number, METRIC) == "cut: edge 20 cm + hem 2 cm = 22 cm (edge measured on the seam line)"
    assert number.noted("by hand").note == "by hand"


def test_a_number_can_take_another_name_and_keeps_its_working() -> None:
    renamed = neckband().named("collar cut length")
    assert renamed.name == "collar cut length"
    assert (renamed.value, renamed.terms) == (neckband().value, neckband().terms)


def test_a_number_that_is_needed_twice_is_worked_out_once() -> None:
    opening = work("opening", given("front", inches(12)), plus(given("back", inches(8))))
    both = work("both", opening, plus(opening))
    assert lines_of(both) == (opening, both)
    assert show_working(both, INCHES) == (
        "opening: front 12 in + back 8 in = 20 in",
        "both: opening 20 in + opening 20 in = 40 in",
    )


def test_lines_that_read_alike_are_shown_once() -> None:
    twins = [work("opening", given("front", inches(12)), plus(given("back", inches(8)))) for _ in range(2)]
    assert len(show_working(work("both", twins[0], plus(twins[1])), INCHES)) == 2


def test_a_given_number_has_a_line_only_when_it_has_a_note_or_stands_alone() -> None:
    plain, noted = given("front", inches(12)), given("back", inches(8), "measured on the paper")
    total = work("opening", plain, plus(noted))
    assert lines_of(total) == (noted, total)
    assert lines_of(plain) == (plain,)


def test_the_inputs_are_the_given_numbers_as_often_as_they_are_used() -> None:
    assert [number.name for number in inputs_of(neckband())] == [
        "front neckline",
        "back neckline",
        "ratio",
        "seam allowance",
    ]
    hem = given("hem", inches(1))
    assert list(inputs_of(work("both", hem, plus(hem)))) == [hem, hem]
    assert list(inputs_of(hem)) == [hem]


def test_a_number_knows_what_it_is_not() -> None:
    ratio, width, count = given("ratio", Ratio.percent(85)), given("width", inches(1)), given("marks", 4)
    assert (width.length, ratio.ratio, count.number) == (inches(1), Ratio.percent(85), Fraction(4))
    with pytest.raises(TypeError, match=r"^ratio is not a length$"):
        _ = ratio.length
    with pytest.raises(TypeError, match=r"^width is not a ratio$"):
        _ = width.ratio
    with pytest.raises(TypeError, match=r"^width is not a plain number$"):
        _ = width.number


@pytest.mark.parametrize(
    ("value", "in_inches", "metric"),
    [
        (inches("17.75"), "17 3/4 in", "45 cm"),
        (Ratio.percent("12.5"), "12.5%", "12.5%"),
        (Ratio(Fraction(2, 3), as_fraction=True), "2/3", "2/3"),
        (Ratio(Fraction(4, 3), as_fraction=True), "1 1/3", "1 1/3"),
        (rectangle(inches(10), inches(10)), "100 sq in", "645 cm²"),
        (rectangle(inches("2.5"), inches("4.1")), "10.3 sq in", "66 cm²"),
        (Fraction(5, 8), "5/8", "5/8"),
        (Fraction(1, 9), "0.11", "0.11"),
        (4, "4", "4"),
        (Fraction(4, 3), "1 1/3", "1 1/3"),
        (Fraction(127, 25), "5.08", "5.08"),
        (Fraction(-3, 2), "−1 1/2", "−1 1/2"),
        (-2, "−2", "−2"),
    ],
)
def test_every_kind_of_value_has_its_words(value: Value, in_inches: str, metric: str) -> None:
    assert show_value(value, INCHES) == in_inches
    assert show_value(value, METRIC) == metric


@pytest.mark.parametrize(
    ("percent", "shown"), [("85", "85%"), ("0", "0%"), ("33.33", "33.3%"), ("66.66", "66.7%"), ("150", "150%")]
)
def test_a_ratio_in_percent_has_at_most_one_decimal(percent: str, shown: str) -> None:
    assert show_ratio(Ratio.percent(percent)) == shown


@pytest.mark.parametrize(
    ("name", "many"),
    [
        ("seam allowance", "seam allowances"),
        ("stitch", "stitches"),
        ("box", "boxes"),
        ("press", "presses"),
        ("brush", "brushes"),
        ("body", "bodies"),
        ("day", "days"),
        ("edge", "edges"),
        ("depth of the hem", "depths of the hem"),
    ],
)
def test_a_name_has_its_plural(name: str, many: str) -> None:
    assert plural(name) == many


def test_a_working_of_another_kind_than_a_sum_is_shown_without_a_note() -> None:
    """The long side of a right triangle is worked out elsewhere; the line shows what went in."""
    terms = (Term("", 1, given("height", cm(30))), Term("by", 1, given("run", cm(40))))
    slope = Worked("slope", Length(Fraction(500)), terms)
    assert show_line(slope, METRIC) == "slope: height 30 cm by run 40 cm = 50 cm"


def test_feet_of_machines_have_their_own_plural() -> None:
    assert (plural("zip foot"), plural("foot of a band")) == ("zip feet", "feet of a band")


# -- what must be enough ----------------------------------------------------------------------------


def need() -> Worked:
    laid = given("cutting layout", inches("58.3")).rounded(Rounding.ENOUGH)
    before = work("before washing", laid, over(given("what washing leaves", Ratio.percent(95)))).rounded(
        Rounding.ENOUGH
    )
    return work("main need", before, plus(given("straightening", inches(1)))).rounded(Rounding.SOLD)


def test_need_is_shown_as_shops_sell_it_and_measured_in_its_sum() -> None:
    assert show_working(need(), INCHES) == (
        "before washing: cutting layout 58 3/8 in ÷ what washing leaves 95% = 61 3/8 in" + NOTE,
        "main need: before washing 61 3/8 in + straightening 1 in = 62 3/8 in, sold as 1 3/4 yd",
    )
    assert [show_number(need(), system) for system in System] == ["1 3/4 yd", "1.6 m"]
    assert [show_measured(need(), system) for system in System] == ["62 3/8 in", "158.5 cm"]


def test_need_that_is_its_only_term_tells_its_result_where_it_reads_otherwise() -> None:
    cut = given("elastic", inches("25.04"))
    assert show_line(work("for the class", plus(cut)), INCHES) == "for the class: elastic 25 in"
    for_all = work("for the class", plus(cut)).rounded(Rounding.ENOUGH)
    assert show_line(for_all, INCHES) == "for the class: elastic 25 in = 25 1/8 in" + NOTE
    assert show_line(need().named("to buy").rounded(Rounding.ENOUGH), INCHES).endswith("= 62 3/8 in")


def test_need_that_was_given_tells_what_shops_sell() -> None:
    bought = given("main buy", cm(25)).rounded(Rounding.TOLD)
    assert show_line(bought, METRIC) == "main buy: 25 cm, sold as 0.25 m"
    assert show_line(bought.rounded(Rounding.SOLD), METRIC) == "main buy: 25 cm, sold as 0.3 m"
    assert bought.named("cotton").rounding is bought.noted("as said").rounding is Rounding.TOLD


def test_only_a_length_is_sold() -> None:
    with pytest.raises(TypeError, match="not a length"):
        show_number(given("ratio", Ratio.percent(50)).rounded(Rounding.SOLD), INCHES)
