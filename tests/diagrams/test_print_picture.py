"""A drawing for paper: the same lines in black, told in CSS that any SVG program knows, in its true size."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from diagrams.reading_svg import SVG, measured, parsed

from sitegen.diagrams import picture_file, print_picture, write_svg
from sitegen.diagrams.drawing import Role
from sitegen.diagrams.kinds import stretch_gauge
from sitegen.diagrams.kinds.hem_section import HemSection, draw
from sitegen.diagrams.style import STYLE_SHEET, print_sheet
from sitegen.quantities import cm, inches, mm

HEM = write_svg(draw(HemSection("lower", "lower hem", inches("3/4"), inches("1/2"), gap=mm(4))), "d", standalone=False)
GAUGE = stretch_gauge.draw(stretch_gauge.StretchGauge("rib", "cotton rib", cm(8), Fraction(4, 5)))


def test_sheet_asks_for_nothing_that_only_browsers_know() -> None:
    sheet = print_sheet("Some Serif")
    for trick in ("var(", ":where", ":not", "calc(", "@media", "--d-"):
        assert trick in STYLE_SHEET
        assert trick not in sheet
    assert 'font-family:"Some Serif"' in sheet
    assert set(re.findall(r"#[0-9a-f]+", sheet)) == {"#000"}


@pytest.mark.parametrize(
    "role", [role for role in Role if f".d-{role.value}{{" in STYLE_SHEET], ids=lambda role: role.value
)
def test_every_role_looks_as_on_a_page(role: Role) -> None:
    rules = [
        [rule for rule in re.findall(rf"\.d-{role.value}\{{([^}}]*)\}}", sheet) if "fill" not in rule]
        for sheet in (STYLE_SHEET, print_sheet("Any"))
    ]
    assert rules[0] == rules[1]


def test_lines_and_numbers_are_those_of_the_page() -> None:
    printed = print_picture(HEM, "Any")
    assert measured(printed.svg) == measured(HEM)
    assert parsed(printed.svg).attrib["fill"] == "none"
    assert len(list(parsed(printed.svg).iter(f"{SVG}style"))) == 1
    assert printed.title == parsed(HEM)[0].text
    assert printed.description == parsed(HEM)[1].text


def test_a_file_is_printed_like_its_picture() -> None:
    assert print_picture(picture_file(HEM, ":root{--d-ink:#123}").text, "Any") == print_picture(HEM, "Any")


def test_size_is_exact_where_it_is_true_and_natural_elsewhere() -> None:
    # CSS Values 3, 5.2: a page unit is 1/96 in.
    _, _, width, height = (Decimal(part) for part in parsed(HEM).attrib["viewBox"].split())
    hem = print_picture(HEM, "Any")
    assert not hem.true_size
    for printed, units in ((hem.width, width), (hem.height, height)):
        assert abs(printed - units * Decimal("25.4") / 96) < Decimal("1e-20")
    svg = write_svg(GAUGE, "d", standalone=False)
    gauge = print_picture(svg, "Any")
    assert gauge.true_size
    assert f"{gauge.width}mm" == parsed(svg).attrib["width"]
    units = Decimal(parsed(svg).attrib["viewBox"].split()[2])
    assert abs(gauge.width - units * Decimal("25.4") / 96) < Decimal("0.001")
