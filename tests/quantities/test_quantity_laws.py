"""Laws that hold for every quantity, tried on many."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given as examples
from hypothesis import settings
from hypothesis import strategies as st

from sitegen.quantities import (
    FRACTION_SIGNS,
    RULER,
    UNIT_NAMES,
    Length,
    NotUnderstood,
    Ratio,
    Rounding,
    Ruler,
    System,
    Term,
    Typed,
    Unit,
    Worked,
    cm,
    decimal,
    given,
    inches,
    inputs_of,
    length,
    length_at,
    minus,
    mm,
    over,
    pair_agrees,
    pair_for,
    parse_length,
    parse_lengths,
    parse_number,
    parse_range,
    parse_ratio,
    parse_weight,
    plus,
    show_in_unit,
    show_line,
    show_to_buy,
    times,
    to_buy,
    vulgar,
    work,
)

modest = settings(max_examples=100, deadline=None)
systems = st.sampled_from(System)
parts = st.sampled_from([1, 2, 3, 7, 16, 64, 100, 999])
fractions = st.builds(Fraction, st.integers(-999_999, 999_999), parts)
lengths = fractions.map(mm)
needs = fractions.map(abs).map(mm)
sewn = st.one_of(
    st.integers(1588, 5_080_000).map(lambda count: mm(Fraction(count, 1000))),
    st.integers(64, 200 * 1000).map(lambda count: inches(Fraction(count, 1000))),
)
"""Lengths from 1/16 in to 200 in, on no mark of any ruler."""
inch_marks = st.integers(1, 200 * 16).map(lambda count: inches(Fraction(count, 16)))
metric_marks = st.integers(1, 5000).map(mm)

READERS: list[Callable[[str], object]] = [
    parse_length,
    parse_lengths,
    parse_range,
    parse_number,
    parse_ratio,
    parse_weight,
    lambda text: parse_length(text, Unit.IN),
    lambda text: parse_lengths(text, Unit.CM),
    lambda text: parse_range(text, Unit.YD),
    lambda text: length_at(text, len(text) // 2, Unit.IN),
]
tokens = st.sampled_from(
    [
        *UNIT_NAMES, *FRACTION_SIGNS, *"0123456789", "1/2", "3⁄8", "1,5", ".5", "1234567", "31, 33", "1/0", "9/8",
        "%", "percent", "gsm", "oz/yd2", " ", "  ", "\u00a0", "\u200b", ",", ", ", ";", "(", ")", "[", "]", "/", "=",
        "+", "-", "–", "−", "to", "and", "“", "”", "٣", "１", "²", "ı", "ſ", "\n", "x",
    ]
)  # fmt: skip


# -- reading ----------------------------------------------------------------------------------------


def only_refuses(text: str) -> None:
    for read in READERS:
        try:
            read(text)
        except NotUnderstood as trouble:
            assert 0 <= trouble.offset <= trouble.offset + trouble.size <= len(text)  # noqa: PT017


@modest
@examples(st.text())
def test_any_text_is_read_or_refused_within_itself(text: str) -> None:
    only_refuses(text)


@settings(max_examples=300, deadline=None)
@examples(st.lists(tokens, max_size=12).map("".join))
def test_any_text_that_looks_like_lengths_is_read_or_refused_within_itself(text: str) -> None:
    only_refuses(text)


@modest
@examples(st.lists(tokens, max_size=8).map("".join), st.sampled_from(Unit))
def test_a_typed_length_knows_where_it_stands_and_is_not_negative(text: str, unit: Unit) -> None:
    try:
        found = parse_lengths(text, unit).values
    except NotUnderstood:
        return
    for typed in found:
        assert typed.text == text[typed.start : typed.end]
        assert typed.value >= mm(0)


@modest
@examples(st.integers(0, 999_999), st.integers(0, 999_999), st.sampled_from(".,"), st.sampled_from(Unit))
def test_a_decimal_is_read_exactly(whole: int, part: int, mark: str, unit: Unit) -> None:
    number = f"{whole}{mark}{part:06d}"
    assert parse_length(f"{number} {unit.symbol}").value == length(number.replace(",", "."), unit)


glue = st.sampled_from([" ", "-", "  ", "\u00a0", "\u2009", "\u200b", " and ", " + ", "‑"])


@modest
@examples(st.integers(0, 999), st.sampled_from([2, 4, 8, 16, 32, 64]), st.data(), glue, st.sampled_from("/⁄"))
def test_a_mixed_number_is_read_exactly_however_it_is_glued(
    whole: int, below: int, data: st.DataObject, between: str, line: str
) -> None:
    top = data.draw(st.integers(0, below - 1))
    typed = parse_length(f"{whole}{between}{top}{line}{below} in")
    assert typed.value == inches(whole + Fraction(top, below))


@modest
@examples(st.integers(0, 999), st.sampled_from(sorted(FRACTION_SIGNS)), st.sampled_from(["", " ", "-", "\u200b"]))
def test_a_fraction_sign_is_read_exactly(whole: int, sign: str, between: str) -> None:
    assert parse_number(f"{whole}{between}{sign}") == whole + FRACTION_SIGNS[sign]


@modest
@examples(st.lists(inch_marks, min_size=1, max_size=12))
def test_a_list_by_size_is_read_as_it_was_written(sizes: list[Length]) -> None:
    text = ", ".join(vulgar(value.in_unit(Unit.IN)) for value in sizes) + " in"
    assert parse_lengths(text).map(lambda typed: typed.value).values == tuple(sizes)


# -- showing and reading again ----------------------------------------------------------------------


def steps(short: Length, turn: int, long: Length, most: int) -> list[Length]:
    return [short * count for count in range(turn)] + [long * count for count in range(most)]


def test_every_mark_of_the_ruler_is_read_again_as_it_is_shown() -> None:
    for value in steps(inches("1/16"), 16, inches("1/8"), 200 * 8):
        shown = RULER.rounded(value, System.INCHES)
        assert parse_length(RULER.show(value, System.INCHES)).value == shown
    for value in steps(mm(1), 100, mm(5), 1000):
        shown = RULER.rounded(value, System.CENTIMETRES)
        assert parse_length(RULER.show(value, System.CENTIMETRES)).value == shown


@pytest.mark.parametrize(
    ("unit", "step"),
    [
        (Unit.MM, mm(1)),
        (Unit.CM, mm(5)),
        (Unit.M, cm(1)),
        (Unit.IN, inches("1/8")),
        (Unit.FT, inches(1)),
        (Unit.YD, inches("4.5")),
    ],
)
def test_every_mark_is_read_again_in_every_unit(unit: Unit, step: Length) -> None:
    for count in range(1, 500):
        value = RULER.rounded(step * count, unit.system)
        typed = parse_length(show_in_unit(value, unit))
        assert (typed.value, typed.unit) == (value, unit)


@modest
@examples(lengths, systems)
def test_a_shown_length_is_a_mark_no_further_away_than_half_a_step(value: Length, system: System) -> None:
    shown = RULER.rounded(value, system)
    step = RULER.step(value, system)
    assert shown == value or shown.sits_on(step)
    assert abs(shown - value) * 2 <= step
    assert RULER.rounded(-value, system) == -shown
    assert RULER.rounded(shown, system) == shown
    assert bool(shown) is bool(value)


@modest
@examples(lengths, systems)
def test_what_is_shown_is_on_a_mark_of_the_ruler_or_finer_and_stays_there(value: Length, system: System) -> None:
    shown = RULER.shown(value, system)
    assert shown == value or shown.sits_on(RULER.finest(system))
    assert abs(shown - value) <= abs(RULER.rounded(value, system) - value)
    assert RULER.shown(-value, system) == -shown
    assert RULER.shown(shown, system) == shown
    assert bool(shown) is bool(value)


@modest
@examples(lengths, lengths, systems)
def test_a_longer_length_is_never_shown_shorter(one: Length, other: Length, system: System) -> None:
    shorter, longer = sorted([one, other])
    first = RULER.finest(system)
    if abs(shorter) >= first and abs(longer) >= first:
        assert RULER.rounded(shorter, system) <= RULER.rounded(longer, system)
        assert RULER.shown(shorter, system) <= RULER.shown(longer, system)


@modest
@examples(sewn, systems)
def test_what_the_ruler_shows_agrees_with_what_it_shows_it_of(value: Length, system: System) -> None:
    assert RULER.agrees(RULER.rounded(value, system), value, system)
    assert RULER.agrees(value, value, system)


@modest
@examples(st.one_of(inch_marks, metric_marks), st.one_of(inch_marks, metric_marks), systems)
def test_two_marks_of_one_step_agree_both_ways_or_neither(one: Length, other: Length, system: System) -> None:
    step = RULER.step(one, system)
    if RULER.step(other, system) == step and one.sits_on(step) and other.sits_on(step):
        assert RULER.agrees(one, other, system) is RULER.agrees(other, one, system) is (one == other)


@modest
@examples(needs, systems)
def test_what_is_shown_of_a_need_is_never_less_and_less_than_a_mark_more(need: Length, system: System) -> None:
    shown = RULER.shown(need, system, Rounding.ENOUGH)
    assert need <= shown < need + RULER.step(need, system)
    assert RULER.shown(shown, system, Rounding.ENOUGH) == RULER.shown(shown, system) == shown
    assert RULER.agrees(shown, need, system, Rounding.ENOUGH)


@modest
@examples(needs, systems)
def test_cloth_to_buy_is_never_less_than_the_need_nor_a_whole_step_more(need: Length, system: System) -> None:
    bought = to_buy(need, system)
    step = length("1/8", Unit.YD) if system is System.INCHES else cm(10)
    assert need <= bought < need + step
    assert to_buy(bought, system) == bought
    assert parse_length(show_to_buy(need, system)).value == bought


@modest
@examples(fractions)
def test_vulgar_and_decimal_read_again_as_the_number(number: Fraction) -> None:
    text = vulgar(abs(number))
    assert abs(parse_number(text) - abs(number)) <= (0 if number.denominator <= 64 else Fraction(1, 200))
    assert abs(parse_number(decimal(abs(number))) - abs(number)) <= Fraction(1, 200)


# -- sums -------------------------------------------------------------------------------------------


@modest
@examples(fractions, fractions, fractions)
def test_sums_are_exact_in_any_order(a: Fraction, b: Fraction, c: Fraction) -> None:
    one, two, three = inches(a), cm(b), mm(c)
    assert (one + two) + three == one + (two + three) == three + two + one
    assert one - one == two - two
    assert (one + two) - two == one
    assert (one + two) * 3 == one * 3 + two * 3
    assert (one * 7) / 7 == one


@modest
@examples(fractions)
def test_inches_and_centimetres_convert_exactly(number: Fraction) -> None:
    assert inches(number).in_unit(Unit.CM) == number * Fraction(254, 100)
    assert cm(inches(number).in_unit(Unit.CM)).in_unit(Unit.IN) == number
    for unit in Unit:
        assert length(number, unit).in_unit(unit) == number


@modest
@examples(fractions, fractions.filter(bool))
def test_a_ratio_and_its_length_give_each_other_back(whole: Fraction, share: Fraction) -> None:
    part = Ratio(share).of(inches(whole))
    assert part / share == inches(whole)


def kept_sum(values: list[tuple[str, int, Length]]) -> Worked:
    signs = {"+": plus, "−": minus}
    (_, count, first), *rest = values
    start = Term("", count, given("part", first))
    return work("total", start, *(signs[sign](given("part", value), times) for sign, times, value in rest))


sum_parts = st.lists(st.tuples(st.sampled_from("+−"), st.integers(1, 4), sewn), min_size=1, max_size=5)
PRINTED = re.compile(r"(?P<sign>[+−] )?(?:(?P<count>\d) parts of |part )(?P<number>\S+(?: \d\S*)?) (?P<unit>in|cm|mm)")


def added_up(parts: str) -> Length:
    """What a reader gets who adds up the printed parts."""
    total = mm(0)
    for part in PRINTED.finditer(parts):
        value = length(parse_number(part["number"]), UNIT_NAMES[part["unit"]]) * int(part["count"] or 1)
        total += -value if part["sign"] == "− " else value
    return total


@settings(max_examples=200, deadline=None)
@examples(sum_parts, systems)
def test_a_sum_equals_its_parts_and_its_line_adds_up_or_says_that_it_does_not(
    values: list[tuple[str, int, Length]], system: System
) -> None:
    number = kept_sum(values)
    exact = [value * count * (-1 if sign == "−" else 1) for sign, count, value in values[1:]]
    assert number.length == sum(exact, start=values[0][2] * values[0][1])
    line = show_line(number, system)
    if len(values) == 1 and values[0][1] == 1:
        assert line == f"total: part {RULER.show(values[0][2], system)}"
        return
    parts, result = line.removeprefix("total: ").split(" = ")
    assert len(list(inputs_of(number))) == len(values) == len(list(PRINTED.finditer(parts)))
    shown = RULER.shown(number.length, system)
    assert result.split(" (")[0] == RULER.show(number.length, system)
    assert ("(shown rounded" in result) is (added_up(parts) != shown)


@modest
@examples(sewn, st.integers(1, 200), systems)
def test_a_product_says_that_it_is_rounded_exactly_when_the_shown_one_is_another(
    value: Length, percent: int, system: System
) -> None:
    line = show_line(work("band", given("opening", value), times(given("ratio", Ratio.percent(percent)))), system)
    shown = RULER.shown(value, system) * Fraction(percent, 100)
    exact = value * Fraction(percent, 100)
    assert ("(shown rounded" in line) is (RULER.shown(shown, system) != RULER.shown(exact, system))


@modest
@examples(sewn, st.integers(1, 12))
def test_so_many_parts_make_the_whole_again(value: Length, count: int) -> None:
    part = work("part", given("whole", value), over(given("parts", count)))
    assert part.length * count == value


# -- pairs ------------------------------------------------------------------------------------------


def typed_both(text: str) -> tuple[Typed, Typed]:
    typed = parse_length(text)
    assert typed.pair is not None
    return typed, typed.pair


@settings(max_examples=400, deadline=None)
@examples(sewn, systems)
def test_a_length_that_the_ruler_can_show_agrees_with_its_own_pair(value: Length, first: System) -> None:
    """A short length is brought to a mark first: on no mark at all, both of its printed forms are rounded."""
    shown = value if value >= mm(110) else RULER.rounded(value, first)
    assert pair_agrees(*typed_both(RULER.show_both(shown, first)))


@modest
@examples(sewn, st.sampled_from([Ruler(inch_long=inches("1/16"), metric_long=mm(1)), Ruler(inch_turn=inches(10))]))
def test_a_long_length_shown_by_another_ruler_agrees_by_that_ruler(value: Length, ruler: Ruler) -> None:
    long = value + mm(110)
    assert pair_agrees(*typed_both(ruler.show_both(long)), ruler=ruler)


@modest
@examples(needs)
def test_cloth_to_buy_agrees_in_yards_and_metres(need: Length) -> None:
    both = f"{show_to_buy(need, System.INCHES)} ({show_to_buy(need, System.CENTIMETRES)})"
    assert pair_agrees(*typed_both(both))


units = st.sampled_from(Unit)
printed = st.one_of(
    st.integers(0, 400).map(lambda count: vulgar(Fraction(count, 16))),
    st.integers(0, 4000).map(lambda count: decimal(Fraction(count, 20))),
)


@settings(max_examples=200, deadline=None)
@examples(printed, units, printed, units, st.booleans())
def test_whether_a_pair_agrees_depends_on_its_order_only_where_one_is_rounded_to_the_other(
    one: str, its: Unit, other: str, others: Unit, bolt: bool
) -> None:
    """7 mm is 1/4 in on a ruler with sixteenths, but 1/4 in is 6 mm."""
    first, second = parse_length(f"{one} {its.symbol}"), parse_length(f"{other} {others.symbol}")
    if pair_agrees(first, second, bolt=bolt) is not pair_agrees(second, first, bolt=bolt):
        greater = max(first.value, second.value)
        assert its.system is not others.system
        assert abs(first.value - second.value) * 2 <= max(RULER.step(greater, unit.system) for unit in (its, others))


@settings(max_examples=200, deadline=None)
@examples(st.one_of(inch_marks, metric_marks), units, units)
def test_what_the_second_should_say_agrees_with_the_first(value: Length, its: Unit, others: Unit) -> None:
    """Also where the first has decimals that no ruler has, such as 1.59 cm."""
    number = value.in_unit(its)
    text = vulgar(number) if its.system is System.INCHES else decimal(number, 4 if its is Unit.M else 2)
    first = parse_length(f"{text} {its.symbol}")
    second = parse_length(pair_for(first, parse_length(f"1 {others.symbol}")))
    if its.system is not others.system:
        assert pair_agrees(first, second)
