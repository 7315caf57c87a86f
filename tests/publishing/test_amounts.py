"""The HTML of a number: each size and each system is there, and what is read without a choice makes sense."""

from bs4 import BeautifulSoup
from markupsafe import Markup

from sitegen.publishing.amounts import (
    amount,
    cells,
    number,
    sentences,
    size_name,
    spread,
    unbroken,
    unit_of_all,
    with_squares,
)
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
    for hidden in page.select("[hidden]"):
        own = hidden.select("b")
        if size:
            hidden.replace_with(own[size - 1].get_text())
        else:
            hidden.decompose()
    for gone in page.select(".all") if size else []:
        gone.decompose()
    if units:
        for gone in page.select(f".{'cm' if units == 'in' else 'in'}, i"):
            gone.decompose()
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
    assert cells((Both("80%", "80%"),), System.INCHES) == "<td>80%</td>"
    view = NumberView("a.b", "b", (Both("80%", "80%"), Both("85%", "85%")))
    assert read(number(view, System.INCHES).plain) == "80% to 85%, by size"
    assert read(number(view, System.INCHES).plain, size=2, units="cm") == "85%"


def test_cell_holds_the_system_of_the_site_bare_and_the_other_in_an_element() -> None:
    assert cells(SAME.values * 2, System.CENTIMETRES) == "<td>5.7 cm<p>2 1/4 in</p></td>" * 2
    assert cells(SAME.values, System.INCHES) == "<td>2 1/4 in<p>5.7 cm</p></td>"


def test_unit_that_all_sizes_share_is_written_once() -> None:
    html = number(DIFFERS, System.INCHES).plain
    assert [each.get_text() for each in BeautifulSoup(html, "html.parser").select(".in [hidden] b")] == [
        "17 1/8",
        "16",
        "19 3/8",
    ]
    assert unit_of_all(["17 1/8 in", "16 in"]) == " in"
    assert unit_of_all(["8 mm", "1.2 cm"]) == unit_of_all(["80%", "85%"]) == unit_of_all(["17 1/8", "17 1/8"]) == ""


def test_number_whose_unit_changes_with_the_size_says_each() -> None:
    view = NumberView("a.b", "b", (Both("5/16 in", "8 mm"), Both("1/2 in", "1.2 cm")))
    assert read(number(view, System.CENTIMETRES).plain) == "8 mm to 1.2 cm (5/16 to 1/2 in, by size)"
    assert read(number(view, System.CENTIMETRES).plain, size=1) == "8 mm (5/16 in)"
    assert read(number(view, System.CENTIMETRES).plain, size=2, units="cm") == "1.2 cm"


def test_amounts_that_agree_for_all_sizes_are_written_once() -> None:
    view = NumberView("a.b", "b", (Both("1/4 in", "6 mm"), Both("1/4 in", "7 mm")))
    html = number(view, System.INCHES).plain
    assert html.count("1/4") == 1
    assert read(html, size=2) == "1/4 in (7 mm)"


SENTENCES = ("A turn of 1 in (2.5 cm), sewn 7/8 in (2.2 cm) up.", "A turn of 1 in (2.5 cm), sewn 3/4 in (1.9 cm) up.")


def test_sentences_by_size_share_their_words() -> None:
    html = sentences(SENTENCES, 1)
    assert html.count("A turn of") == html.count("2.5") == 1
    assert read(html) == SENTENCES[1]
    assert [read(html, size=size) for size in (1, 2)] == list(SENTENCES)


def test_sentences_with_other_words_stand_whole() -> None:
    other = (SENTENCES[0], "Nothing to turn, 1 in.")
    html = sentences(other, 0)
    assert read(html) == other[0]
    assert [read(html, size=size) for size in (1, 2)] == list(other)
    assert read(sentences(SENTENCES[:1], 0)) == SENTENCES[0]


def test_range_says_its_unit_once_if_it_is_the_same() -> None:
    assert spread("16 1/4 in", "21 in") == "16 1/4 to 21 in"
    assert spread("8 mm", "1.2 cm") == "8 mm to 1.2 cm"
    assert spread("80%", "90%") == "80% to 90%"


def test_number_and_unit_stay_on_one_line() -> None:
    assert unbroken("17 3/4 in") == "17\xa03/4\xa0in"
    assert unbroken("16 to 21 in") == "16\xa0to\xa021\xa0in"
    assert unbroken("neckband opening 20 in × 80%") == "neckband opening 20\xa0in × 80%"


def test_the_weight_of_cloth_has_its_2_raised() -> None:
    text = "180 g/m2, 5 oz/yd2, 90g/m2 and 90 g/m²; drill g/m2x and 8 g/m20"
    assert with_squares(text) == "180 g/m², 5 oz/yd², 90g/m² and 90 g/m²; drill g/m2x and 8 g/m20"


def test_text_of_an_amount_is_escaped() -> None:
    assert amount(Both("<b>", "<i>"), System.INCHES) == (
        '<b class="in">&lt;b&gt;</b><i> (</i><b class="cm">&lt;i&gt;</b><i>)</i>'
    )


def test_size_name_is_the_range_until_one_is_chosen() -> None:
    assert read(size_name(("XS", "S", "M")).plain) == "XS to M"
    assert read(size_name(("XS", "S", "M")).plain, size=2) == "S"
    assert read(size_name(("M",)).plain) == "M"
    assert read(size_name(()).plain) == "one size"
