"""Worked numbers as pages show them."""

from sitegen.publishing.number_views import number_view, without_repeats, working_lines
from sitegen.publishing.views import Both
from sitegen.quantities import BySize, Ratio, Rounding, Worked, given, inches, minus, plus, times, work

ALLOWANCE = given("seam allowance", inches(1))


def finished(opening: int) -> Worked:
    length = work("finished length", given("opening", inches(opening)), times(given("ratio", Ratio.percent(50))))
    return work("cut length", length, plus(ALLOWANCE, 2))


def test_every_size_is_shown_in_both_systems() -> None:
    view = number_view("band.cut_length", "band cut length", BySize((finished(20), finished(24))))
    assert view.values == (Both("12 in", "30.5 cm"), Both("14 in", "35.5 cm"))
    assert view.by_size


def test_smallest_and_largest_are_found_whatever_their_order() -> None:
    view = number_view("a.b", "b", BySize((finished(22), finished(20), finished(24))))
    assert (view.low, view.high) == (1, 2)


def test_working_is_left_out_where_no_place_is_given_for_it() -> None:
    assert number_view("a.b", "b", BySize((finished(22),))).working == ()


def test_working_has_a_line_for_each_sum() -> None:
    view = number_view("a.b", "b", BySize((finished(20), finished(24))), anchor="w-b")
    assert [(line.gives, line.texts[1].inches) for line in view.working] == [
        ("finished length", "opening 24 in × ratio 50% = 12 in"),
        ("cut length", "finished length 12 in + 2 seam allowances of 1 in = 14 in"),
    ]
    assert view.working[0].texts[0].metric.startswith("opening 51 cm × ratio 50% = 25.5 cm")


def test_line_that_reads_alike_in_every_size_comes_once() -> None:
    depth = work("casing", ALLOWANCE, plus(ALLOWANCE))
    lines = working_lines(BySize(tuple(work("cut", given("side", inches(side)), plus(depth)) for side in (3, 4))))
    assert [len(line.texts) for line in lines] == [1, 2]


def test_size_whose_sum_is_another_keeps_its_own_lines() -> None:
    longer = work("new length", given("length", inches(20)), plus(given("lengthen by", inches(2))))
    same = given("new length", inches(20), "nothing to change")
    first, second = working_lines(BySize((work("wanted", longer, minus(ALLOWANCE)), same)))[:2]
    assert first.texts[0].inches == "length 20 in + lengthen by 2 in = 22 in"
    assert first.texts[1].inches == "20 in (nothing to change)"
    assert second.texts[1] == Both("", "")


def test_two_lines_of_one_name_are_both_told() -> None:
    inner = work("part", given("a", inches(1)), plus(given("b", inches(1))))
    outer = work("part", inner, plus(given("c", inches(1))))
    (line,) = working_lines(BySize((outer,)))
    assert line.texts[0].inches == "a 1 in + b 1 in = 2 in; part 2 in + c 1 in = 3 in"


def test_line_that_was_told_before_only_leads_there() -> None:
    first = number_view(
        "band.cut_length", "band cut length", BySize((finished(20),)), anchor="w-cut", place="on card 1"
    )
    longer = BySize((work("quarter", finished(20), times(given("a quarter", Ratio.percent(25)))),))
    second = number_view("band.quarter", "quarter", longer, anchor="w-quarter")
    shorter = without_repeats(second, dict.fromkeys(first.working, first))
    assert [(line.gives, line.told, line.place) for line in shorter.working] == [
        ("finished length", "w-cut", "on card 1"),
        ("cut length", "w-cut", "on card 1"),
        ("quarter", "", ""),
    ]
    assert [line.texts for line in shorter.working[:2]] == [(), ()]
    assert shorter.working[2] == second.working[2]


def test_number_always_tells_its_own_line() -> None:
    view = number_view("band.cut_length", "band cut length", BySize((finished(20),)), anchor="w-cut")
    again = without_repeats(view, dict.fromkeys(view.working, view))
    assert again.working[-1] == view.working[-1]


def test_number_without_working_repeats_nothing() -> None:
    view = number_view("band.cut_length", "band cut length", BySize((finished(20),)))
    assert without_repeats(view, {}) == view


def test_fabric_is_shown_as_shops_sell_it() -> None:
    view = number_view("main.buy", "main", BySize((given("main", inches(48)).rounded(Rounding.TOLD),)))
    assert view.values == (Both("1 1/3 yd", "1.3 m"),)


def test_number_that_is_alike_by_sums_that_are_not_tells_each_sum() -> None:
    def ease(girth: int, body: int) -> Worked:
        return work("ease", given("girth", inches(girth)), minus(given("bust", inches(body))))

    every = BySize((ease(38, 34), ease(40, 36)))
    view = number_view("round.ease", "ease", BySize(every.values[:1]), anchor="w", every=every)
    assert [each.inches for each in view.values] == ["4 in"]
    (line,) = view.working
    assert [each.inches for each in line.texts] == [
        "girth 38 in − bust 34 in = 4 in",
        "girth 40 in − bust 36 in = 4 in",
    ]
