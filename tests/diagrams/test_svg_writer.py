"""The writer: escaped, deterministic, compact, many to a page, and nothing told by colour alone."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from diagrams.reading_svg import SVG, parsed

from sitegen.diagrams import STYLE_SHEET, write_svg
from sitegen.diagrams.drawing import Drawing, Label, Line, Number, Role, Side, View, at, fitting_scale, rectangle
from sitegen.diagrams.kinds.hem_section import HemSection, draw
from sitegen.quantities import Length, inches, mm

HEM = draw(HemSection("lower", "lower hem", inches("3/4"), inches("1/2"), gap=mm(4)))


def picture(*shapes: Line | Label) -> Drawing:
    return Drawing("A title", "A description", (View(Fraction(1, 2), shapes),))


def test_same_drawing_gives_the_same_bytes() -> None:
    assert write_svg(HEM, "p") == write_svg(HEM, "p")


def test_author_words_are_escaped() -> None:
    nasty = "<script>\"&'</title>"
    drawing = Drawing(nasty, nasty, (View(Fraction(1), (Label(nasty, at(), (Side.BELOW,)),)),))
    root = parsed(write_svg(drawing, 'a"b'))
    assert [root[0].text, root[1].text] == [nasty, nasty]
    assert not list(root.iter(f"{SVG}script"))
    assert root[0].attrib["id"] == 'a"b-title'


def test_number_names_are_escaped() -> None:
    line = Line(at(), at(mm(10)), Role.CUT, Number('a"<b', mm(10)))
    (found,) = parsed(write_svg(picture(line), "p")).iter(f"{SVG}line")
    assert found.attrib["data-name"] == 'a"<b'


def test_two_pictures_share_no_id() -> None:
    one, two = (
        {element.attrib["id"] for element in parsed(write_svg(HEM, prefix)).iter() if "id" in element.attrib}
        for prefix in ("one", "two")
    )
    assert one
    assert not one & two


def test_pattern_references_find_their_pattern() -> None:
    svg = write_svg(HEM, "one")
    ids = {element.attrib["id"] for element in parsed(svg).iter() if "id" in element.attrib}
    assert set(re.findall(r"url\(#([^)]+)\)", svg)) <= ids


def test_coordinates_have_at_most_three_decimals() -> None:
    svg = re.sub(r' data-(mm|scale)="[^"]*"', "", write_svg(HEM, "p", standalone=False))
    assert not re.findall(r"\d\.\d{4,}", svg)


def test_picture_fits_any_width() -> None:
    root = parsed(write_svg(HEM, "p"))
    assert root.attrib["width"] == "100%"
    assert "height" not in root.attrib
    assert float(root.attrib["viewBox"].split()[2]) <= 360


def test_style_sheet_comes_along_only_when_the_picture_stands_alone() -> None:
    assert list(parsed(write_svg(HEM, "p")).iter(f"{SVG}style"))
    assert not list(parsed(write_svg(HEM, "p", standalone=False)).iter(f"{SVG}style"))


def test_exact_length_without_an_end_is_written_as_a_fraction() -> None:
    third = Length(Fraction(100, 3))
    (found,) = parsed(write_svg(picture(Line(at(), at(third), Role.CUT, Number("a", third))), "p")).iter(f"{SVG}line")
    assert found.attrib["data-mm"] == "100/3"


def test_line_that_is_not_as_long_as_its_number_is_refused() -> None:
    with pytest.raises(ValueError, match="not as long"):
        Line(at(), at(mm(10)), Role.CUT, Number("a", mm(11)))
    with pytest.raises(ValueError, match="not as long"):
        Line(at(), at(mm(10), right=3), Role.CUT, Number("a", mm(10)))


def test_only_the_ink_and_the_cloth_are_coloured_and_both_by_the_page() -> None:
    assert not re.search(r"#[0-9a-fA-F]{3}|rgb|hsl", STYLE_SHEET)
    colours = set(re.findall(r"(?:fill|stroke|color):([^;}]+)", STYLE_SHEET))
    assert colours == {"currentColor", "none", "var(--d-ink,currentColor)", "var(--d-cloth,currentColor)"}


def test_every_role_is_told_by_line_or_pattern() -> None:
    """Each line role has its own stroke width, dashes or shape; areas differ by hatching."""
    looks = {}
    for role in Role:
        found = re.search(rf"\.d-{role.value}\{{([^}}]*)\}}", STYLE_SHEET)
        shape = write_svg(picture(Line(at(), at(mm(100)), role)), "p", standalone=False)
        outline = re.search(r'<path class="d-\w+" d="([^"]+)"', shape)
        area = write_svg(Drawing("t", "d", (View(Fraction(1), (rectangle(at(), at(mm(9), mm(9)), role),)),)), "p")
        hatching = re.search(r"<pattern.*?</pattern>", area)
        looks[role] = (found and found[1], outline and outline[1], hatching and hatching[0])
    assert len(set(looks.values())) == len(Role)


def test_no_line_is_too_thin_for_a_phone() -> None:
    widths = [float(width) for width in re.findall(r"stroke-width:([\d.]+)", STYLE_SHEET.split(".d-hatch")[0])]
    assert min(widths) >= 1.4


def test_scale_is_a_short_decimal_that_fits() -> None:
    for extent, room in ((mm(508), 300), (inches("1/3"), 200), (mm(9999), 80)):
        scale = fitting_scale(extent, room)
        assert room * Fraction(99, 100) < scale * extent.mm <= room
        assert 10**9 % scale.denominator == 0
