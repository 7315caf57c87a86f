"""The HTML of a number: each size and each system is there, and what is read without a choice makes sense."""

from bs4 import BeautifulSoup
from markupsafe import Markup

from sitegen.publishing.amounts import amount, cell, number, size_name, spread, unbroken
from sitegen.publishing.views import Both, NumberView
from sitegen.quantities import System

SAME = NumberView("band.cut_width", "band cut width", (Both("2 1/4 in", "5.7 cm"),), anchor="w-width")
DIFFERS = NumberView(
    "band.cut_length",
    "band cut length",
    (Both("17 1/8 in", "43.5 cm"), Both("16 in", "40.5 cm"), Both("19 3/8 in", "49 cm")),
    low=1,
    high=2,
    anchor="w-length",
)


def read(html: Markup, *, size: int = 0, units: str = "") -> str:
    """What a person reads when the stylesheet has done what was chosen, non-breaking spaces as spaces."""
    page = BeautifulSoup(html, "html.parser")
    for span in page.find_all("span"):
        if span.decomposed:
            continue
        names = span.get("class") or []
        own_size = [name for name in names if name[0] == "z" and name[1:].isdigit()]
        gone = (
            (bool(own_size) and own_size != [f"z{size}"])
            or ("all" in names and size)
            or ("br" in names and units)
            or ("in" in names and units == "cm")
            or ("cm" in names and units == "in")
        )
        if gone:
            span.decompose()
    return page.get_text().replace("\xa0", " ")


def test_number_alike_in_every_size_is_said_in_both_systems() -> None:
    assert read(number(SAME, System.INCHES).linked) == "2 1/4 in (5.7 cm)"
    assert read(number(SAME, System.CENTIMETRES).linked) == "5.7 cm (2 1/4 in)"


def test_number_in_one_system_has_no_brackets_left() -> None:
    for first in System:
        assert read(number(SAME, first).linked, units="in") == "2 1/4 in"
        assert read(number(SAME, first).linked, units="cm") == "5.7 cm"


def test_number_by_size_is_a_range_until_a_size_is_chosen() -> None:
    assert read(number(DIFFERS, System.INCHES).linked) == "16 to 19 3/8 in (40.5 to 49 cm, by size)"
    assert read(number(DIFFERS, System.INCHES).linked, units="cm") == "40.5 to 49 cm, by size"


def test_number_of_the_chosen_size_is_read_alone() -> None:
    assert read(number(DIFFERS, System.INCHES).linked, size=3) == "19 3/8 in (49 cm)"
    assert read(number(DIFFERS, System.CENTIMETRES).linked, size=1, units="cm") == "43.5 cm"


def test_sizes_are_hidden_for_who_has_no_stylesheet() -> None:
    page = BeautifulSoup(number(DIFFERS, System.INCHES).linked, "html.parser")
    for span in page.find_all(hidden=True):
        span.decompose()
    assert page.get_text().replace("\xa0", " ") == "16 to 19 3/8 in (40.5 to 49 cm, by size)"


def test_number_links_to_its_working() -> None:
    page = BeautifulSoup(number(DIFFERS, System.INCHES).linked, "html.parser")
    assert page.a["href"] == "#w-length"
    assert "<a" not in number(DIFFERS, System.INCHES).plain


def test_number_without_working_links_nowhere() -> None:
    assert "<a" not in number(NumberView("a.b", "b", SAME.values), System.INCHES).linked


def test_values_that_read_alike_are_not_told_apart() -> None:
    view = NumberView("a.b", "b", (Both("2 in", "5 cm"), Both("2 in", "5 cm")))
    assert read(number(view, System.INCHES).plain) == "2 in (5 cm)"


def test_value_without_unit_is_said_once() -> None:
    assert amount(Both("80%", "80%"), System.INCHES) == "80%"
    assert cell(Both("80%", "80%"), System.INCHES) == "80%"
    view = NumberView("a.b", "b", (Both("80%", "80%"), Both("85%", "85%")))
    assert read(number(view, System.INCHES).plain) == "80% to 85%, by size"
    assert read(number(view, System.INCHES).plain, size=2, units="cm") == "85%"


def test_cell_parts_the_systems_without_brackets() -> None:
    assert read(cell(SAME.values[0], System.CENTIMETRES)) == "5.7 cm 2 1/4 in"


def test_range_says_its_unit_once_if_it_is_the_same() -> None:
    assert spread("16 1/4 in", "21 in") == "16 1/4 to 21 in"
    assert spread("8 mm", "1.2 cm") == "8 mm to 1.2 cm"
    assert spread("80%", "90%") == "80% to 90%"


def test_number_and_unit_stay_on_one_line() -> None:
    assert unbroken("17 3/4 in") == "17\xa03/4\xa0in"
    assert unbroken("16 to 21 in") == "16\xa0to\xa021\xa0in"
    assert unbroken("neckband opening 20 in × 80%") == "neckband opening 20\xa0in × 80%"


def test_text_of_an_amount_is_escaped() -> None:
    assert amount(Both("<b>", "<i>"), System.INCHES) == (
        '<span class="in">&lt;b&gt;</span><span class="br"> (</span><span class="cm">&lt;i&gt;</span>'
        '<span class="br">)</span>'
    )


def test_size_name_is_the_range_until_one_is_chosen() -> None:
    assert read(size_name(("XS", "S", "M")).plain) == "XS to M"
    assert read(size_name(("XS", "S", "M")).plain, size=2) == "S"
    assert read(size_name(("M",)).plain) == "M"
    assert read(size_name(()).plain) == "one size"
