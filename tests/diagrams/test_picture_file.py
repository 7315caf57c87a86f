"""A drawing as a file: whole, with its style, and the same lines as in a page."""

from __future__ import annotations

import xml.etree.ElementTree as ET

from diagrams.reading_svg import SVG, measured, parsed

from sitegen.diagrams import STYLE_SHEET, picture_file, write_svg
from sitegen.diagrams.kinds.hem_section import HemSection, draw
from sitegen.quantities import inches, mm

HEM = draw(HemSection("lower", "lower hem & more", inches("3/4"), inches("1/2"), gap=mm(4)))
INLINE = write_svg(HEM, "d", standalone=False)


def test_file_carries_its_style_and_the_colours_it_was_given() -> None:
    (style,) = parsed(picture_file(INLINE, ":root{--d-ink:#123}").text).iter(f"{SVG}style")
    assert style.text is not None
    assert style.text.startswith(STYLE_SHEET)
    assert style.text.endswith(":root{--d-ink:#123}")


def test_file_says_its_size_and_what_it_shows() -> None:
    file = picture_file(INLINE)
    _, _, width, height = (float(part) for part in parsed(INLINE).attrib["viewBox"].split())
    assert (file.title, file.description) == (HEM.title, HEM.description)
    assert 0 <= file.width - width < 1
    assert 0 <= file.height - height < 1
    assert not file.true_size


def test_file_draws_what_the_page_would() -> None:
    file = parsed(picture_file(INLINE).text)
    for style in list(file.iter(f"{SVG}style")):
        file.remove(style)
    inline = parsed(INLINE)
    assert [ET.tostring(each).strip() for each in file] == [ET.tostring(each).strip() for each in inline]
    assert measured(picture_file(INLINE).text) == measured(INLINE)
