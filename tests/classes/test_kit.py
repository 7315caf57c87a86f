"""The kit of a class against sums that are done here by themselves, with nothing but fractions."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from pathlib import Path

import pytest
from classes.class_folders import CLASS, TOTE, whole_class
from content import EXAMPLE

from sitegen.checks import review_class
from sitegen.classes import ComputedClass, Kind, KitLine, bags_of, costs_of, kit_of, unpriced
from sitegen.quantities import SHOP_STEPS, Ratio, System, given, inputs_of, show_working
from sitegen.reading import ContentFolder
from sitegen.sewing import class_sums
from sitegen.sewing.layout import Layout

INCH = Fraction("25.4")
YARD_EIGHTH = Fraction("914.4") / 8


def lines(cls: ComputedClass, system: System = System.INCHES) -> dict[str, KitLine]:
    return {line.key: line for line in kit_of(cls, system).lines}


def test_totals_against_a_small_calculation(tmp_path: Path) -> None:
    """3 students in S and 2 in L; 5 % of lengths and 10 % of counted things to spare; shops sell 1/8 yd."""
    found = lines(whole_class(tmp_path))
    elastic = 3 * (30 * Fraction(9, 10) + 1) + 2 * (40 * Fraction(9, 10) + 1)
    assert found["top"].needed.length.mm == elastic * INCH
    assert found["top"].buy.length.mm == ceil(elastic * INCH * Fraction(21, 20) / YARD_EIGHTH) * YARD_EIGHTH
    assert (found["polyester thread"].needed.value, found["polyester thread"].buy.value) == (10, 11)
    assert found["polyester thread"].amount == "11 spools"
    assert (found["universal needle"].buy.value, found["universal needle"].size) == (6, "80/12")
    assert found["universal needle"].kind is Kind.NEEDLES
    assert found["cotton tape"].buy.length.mm == ceil(5 * 10 * INCH * Fraction(21, 20) / YARD_EIGHTH) * YARD_EIGHTH
    assert (found["chalk"].needed.value, found["chalk"].for_one) == (1, ())
    assert "soft elastic" not in found


def test_the_size_of_a_supply_is_told_in_the_units_of_the_class(tmp_path: Path) -> None:
    cord = "  - {item: cord, size: 1/4 in, amount: 80 in}\n"
    cls = whole_class(tmp_path, tutorial=TOTE.replace("tools:", f"{cord}tools:"))
    assert lines(cls)["cord"].size == "1/4 in"
    assert lines(cls, System.CENTIMETRES)["cord"].size == "6 mm"


def test_elastic_whose_name_says_how_wide_it_is_does_not_say_it_twice(tmp_path: Path) -> None:
    named = TOTE.replace("{item: soft elastic, size: 1 in wide,", "{item: soft elastic 1 in wide,")
    cls = whole_class(tmp_path, tutorial=named)
    assert (lines(cls)["top"].name, lines(cls)["top"].size) == ("soft elastic 1 in wide", "")


def test_cloth_without_a_layout_is_what_each_student_buys(tmp_path: Path) -> None:
    found = lines(whole_class(tmp_path))["denim"]
    need = (3 * Fraction(1, 2) + 2 * Fraction(3, 4)) * Fraction("914.4")
    assert found.needed.length.mm == need
    assert found.buy.length.mm == ceil(need * Fraction(21, 20) / YARD_EIGHTH) * YARD_EIGHTH
    assert found.cloth[0].laid is None


def test_cloth_that_is_cut_in_class_is_a_length_for_each(tmp_path: Path) -> None:
    """Panels of 16 and 18 in, two of each: beside each other on 45 in, so a length takes 12 in, or 14 in."""
    found = lines(whole_class(tmp_path))["canvas"]
    assert found.needed.length.mm == (3 * 12 + 2 * 14) * INCH / Fraction(9, 10)
    assert found.cloth[0].laid is None


def test_cloth_that_is_cut_before_class_is_laid_at_once(tmp_path: Path) -> None:
    found = lines(whole_class(tmp_path, CLASS + "before_class: [cut]\n"))["canvas"]
    laid = found.cloth[0].laid
    assert isinstance(laid, Layout)
    area = 3 * 2 * 12 * 16 + 2 * 2 * 14 * 18
    assert laid.length.mm >= Fraction(area, 45) * INCH
    assert found.needed.length.mm == laid.length.mm / Fraction(9, 10)
    assert sum(len(placed.copies) for placed in laid.placements) == 10


def test_a_number_of_the_tutorial_changes_the_kit(tmp_path: Path) -> None:
    before = lines(whole_class(tmp_path / "a"))
    after = lines(whole_class(tmp_path / "b", tutorial=TOTE.replace("30, 40 in", "31, 40 in")))
    assert after["top"].needed.length.mm - before["top"].needed.length.mm == 3 * Fraction(9, 10) * INCH
    more = lines(whole_class(tmp_path / "c", CLASS.replace("S: 3", "S: 4")))
    assert more["polyester thread"].needed.value == 12


def test_shared_spare_and_brought(tmp_path: Path) -> None:
    text = CLASS + "shared: {polyester thread: 2}\nspare: {lengths: 0%, counted: 50%}\nbrings: [canvas, soft elastic]\n"
    cls = whole_class(tmp_path, text)
    found = lines(cls)
    assert (found["polyester thread"].needed.value, found["polyester thread"].spare.value) == (6, 3)
    assert not {"canvas", "top", "soft elastic"} & set(found)
    assert found["cotton tape"].spare.length.mm == 0
    assert kit_of(cls, System.INCHES).brought == ("canvas", "soft elastic")


@pytest.mark.parametrize(
    ("more", "needed", "shared_by", "in_bag"),
    [
        ("room: {sewing machine: 3}\n", 3, 0, False),
        ("room: {Sewing machines: 3}\n", 3, 0, False),
        ("room: {sewing machine: 9}\n", 5, 0, False),
        ("room: {iron: 1}\n", 5, 1, True),
        ("room: {sewing machine: 3}\nbrings: [sewing machine]\n", 5, 1, True),
        ("room: {sewing machine: 3}\nshared: {twin needle: 2}\n", 3, 2, False),
    ],
)
def test_needles_without_an_amount_are_one_for_each_machine_at_work(
    tmp_path: Path, more: str, needed: int, shared_by: int, *, in_bag: bool
) -> None:
    """Five students: as many as there are machines in the room, or one each where each has a machine; groups if told."""
    tote = TOTE.replace("  - {item: chalk}", "  - {item: twin needle, size: 4.0/75}\n  - {item: chalk}")
    found = lines(whole_class(tmp_path, CLASS + more, tutorial=tote))["twin needle"]
    assert (found.needed.value, found.shared_by, bool(found.for_one)) == (needed, shared_by, in_bag)
    assert found.for_machine is (shared_by == 0)
    assert found.buy.value == needed + 1


def test_a_supply_without_an_amount_is_one_for_all_or_for_each_group(tmp_path: Path) -> None:
    found = lines(whole_class(tmp_path, CLASS + "shared: {chalk: 2}\n"))["chalk"]
    assert (found.needed.value, found.shared_by) == (3, 2)


def test_every_total_has_its_working_down_to_what_was_given(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, CLASS + "before_class: [cut]\n")
    for line in kit_of(cls, System.INCHES).lines:
        working = show_working(line.buy, System.INCHES)
        assert working[-1].startswith("to buy: ")
        names = {each.name for each in inputs_of(line.buy)}
        assert names & {"share to spare", "one step"}
        assert len(working) >= 3


def test_money_is_shared_out_to_the_last_fraction(tmp_path: Path) -> None:
    prices = "prices: {canvas: £9.99 a yard, denim: £7 a metre, polyester thread: £1.10, universal needle: £0.35}\n"
    cls = whole_class(tmp_path, CLASS + prices)
    kit = kit_of(cls, System.INCHES)
    costs = costs_of(kit, cls)
    assert costs is not None
    by_key = {line.key: line for line in kit.lines}
    assert by_key["denim"].system is System.CENTIMETRES
    expected = (
        by_key["canvas"].buy.length.mm / Fraction("914.4") * Fraction("9.99")
        + by_key["denim"].buy.length.mm / 1000 * 7
        + 11 * Fraction("1.10")
        + 6 * Fraction("0.35")
    )
    assert costs.total.amount == expected
    assert sum(student.count * student.total.amount for student in costs.students) == expected
    assert set(costs.without_price) == {"soft elastic", "cotton tape", "chalk"} == set(unpriced(cls))
    small, large = costs.students
    assert small.total.amount < large.total.amount


def test_prices_in_two_currencies_give_no_cost(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, CLASS + "prices: {canvas: £9 a metre, polyester thread: 1 EUR}\n")
    assert costs_of(kit_of(cls, System.INCHES), cls) is None


def test_bags_hold_what_is_cut_and_what_each_student_needs(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, CLASS + "before_class: [cut]\nshared: {polyester thread: 5}\n")
    small, large = bags_of(kit_of(cls, System.INCHES), cls)
    assert (small.count, large.count) == (3, 2)
    (part,) = large.cut
    assert (part.name, part.how_many, part.how) == ("panel", 2, "2")
    assert part.length is not None
    assert part.length.length.mm == 14 * INCH
    assert [line.key for line, _ in small.lengths] == ["denim"]
    assert [line.key for line, _ in small.things] == ["top", "universal needle", "cotton tape"]


def test_other_widths_are_laid_too(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, CLASS + "before_class: [cut]\nwidths: {canvas: [60 in, 45 in, 19 in]}\n")
    wide, own, narrow = lines(cls)["canvas"].cloth
    assert wide.needed is not None
    assert own.needed is not None
    assert narrow.needed is not None
    assert wide.needed.length < own.needed.length < narrow.needed.length


@pytest.mark.parametrize(("need", "share", "spare"), [(8, 10, 1), (10, 10, 1), (11, 10, 2), (7, 0, 0), (3, 100, 3)])
def test_spares_of_counted_things(need: int, share: int, spare: int) -> None:
    """Worked by hand: a tenth of 8 is 0.8, so 1; a tenth of 11 is 1.1, so 2."""
    found = class_sums.spare_counted("spare", given("need", need), given("share", Ratio.percent(share)))
    assert found.value == spare


def test_evening_class_of_the_example_by_hand() -> None:
    """8 tees with a 22 in sleeve: thread 2 spools for every two, 8 needles, tape 20 in each, all with their spares."""
    cls, _ = review_class(ContentFolder(EXAMPLE, "content_example"), "classes/evening-tee.yaml")
    assert cls is not None
    found = lines(cls, System.CENTIMETRES)
    assert [found[key].amount for key in ("polyester sewing thread", "stretch needle", "stretch twin needle")] == [
        "9 spools", "9", "5",
    ]  # fmt: skip
    assert found["cotton tape"].buy.length.mm == ceil(8 * 20 * INCH * Fraction(21, 20) / 100) * 100
    sleeve = {part.name: part for part in bags_of(kit_of(cls, System.CENTIMETRES), cls)[0].cut}["sleeve"]
    assert sleeve.length is not None
    assert sleeve.length.length.mm == Fraction("20.25") * INCH
    step = SHOP_STEPS[System.CENTIMETRES]
    cloth = found["main"]
    assert cloth.buy.length.mm % step.mm == 0
    assert cloth.buy.length.mm - step.mm < cloth.needed.length.mm * Fraction(21, 20) <= cloth.buy.length.mm


def test_things_of_one_kind_stand_together_in_whatever_order_they_are_written(tmp_path: Path) -> None:
    needle = "  - {item: twin needle, amount: '1'}\n"
    cls = whole_class(tmp_path, tutorial=TOTE.replace("tools:", f"{needle}tools:"))
    kinds = [line.kind for line in kit_of(cls, System.INCHES).lines]
    order = tuple(Kind)
    assert kinds == sorted(kinds, key=order.index)
