"""The stretch gauge: every reach at its share of the swatch, and as large on paper as the cloth."""

from __future__ import annotations

import io
import os
import shutil
from fractions import Fraction
from importlib.util import find_spec
from itertools import pairwise

import pytest
from diagrams.reading_svg import named, parsed, words

from sitegen.diagrams import STYLE_SHEET, CannotDraw, write_svg
from sitegen.diagrams.drawing import TRUE_SCALE, Drawing, View
from sitegen.diagrams.kinds.stretch_gauge import StretchGauge, describe, draw
from sitegen.quantities import ZERO, Length, System, cm, inches, mm

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or "/usr/bin/chromium"
HERE = os.path.exists(CHROMIUM) and find_spec("playwright") is not None
in_a_browser = pytest.mark.skipif(not HERE and "CI" not in os.environ, reason="needs chromium and playwright")

JERSEY = StretchGauge("main", "cotton jersey with a little elastane", inches(3), Fraction(2, 5))
RIB = StretchGauge("rib", "rib", cm(8), Fraction(4, 5))
SWIMWEAR = StretchGauge("main", "swimwear knit", inches(2), Fraction(133, 100))


def test_every_reach_lies_at_its_share_of_the_swatch_beyond_its_end() -> None:
    lines = named(write_svg(draw(JERSEY), "p"))
    start = lines["main.rest"].start[0]
    ends = {
        name.rpartition("_")[2]: (line.end[0] - start) / line.scale for name, line in lines.items() if "from_" in name
    }
    assert list(ends) == ["10", "20", "25", "40", "50", "75", "100"]
    for percent, reach in ends.items():
        assert reach == pytest.approx(76.2 * (1 + int(percent) / 100), abs=0.01)


def test_own_stretch_has_a_mark_and_says_which_cloth() -> None:
    svg = write_svg(draw(RIB), "p")
    assert named(svg)["rib.from_75_to_80"].mm == Fraction(4)
    assert "80%: rib" in words(svg)
    assert "the 80% of the rib" in describe(RIB)
    assert "80% at 14.5 cm" in describe(RIB, first=System.CENTIMETRES)


@pytest.mark.parametrize("gauge", [JERSEY, RIB, SWIMWEAR])
def test_check_bars_are_five_centimetres_and_two_inches(gauge: StretchGauge) -> None:
    lines = named(write_svg(draw(gauge), "p"))
    assert lines["check.5_cm"].mm == 50
    assert lines["check.2_in"].mm == Fraction("50.8")
    assert lines["check.5_cm"].drawn_mm == pytest.approx(50, abs=0.001)


@pytest.mark.parametrize("gauge", [JERSEY, RIB, SWIMWEAR])
def test_picture_carries_its_size_on_paper_and_its_window_in_css_pixels(gauge: StretchGauge) -> None:
    root = parsed(write_svg(draw(gauge), "p"))
    wide, high = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    _, _, across, down = map(float, root.attrib["viewBox"].split())
    assert wide == pytest.approx(across * 25.4 / 96, abs=0.001)
    assert high == pytest.approx(down * 25.4 / 96, abs=0.001)
    assert wide < 184, "the room on A4 between margins of 13 mm"


def test_figures_stand_above_their_own_marks() -> None:
    for gauge in (JERSEY, RIB, SWIMWEAR):
        lines = named(write_svg(draw(gauge), "p"))
        texts = parsed(write_svg(draw(gauge), "p")).iter("{http://www.w3.org/2000/svg}text")
        places = {text[0].text: float(text[0].attrib["x"]) for text in texts if text.attrib["text-anchor"] == "middle"}
        for name, line in lines.items():
            if "from_" in name:
                assert places[name.rpartition("_")[2]] == pytest.approx(line.end[0], abs=1), name


@in_a_browser
def test_browser_shows_and_prints_it_as_large_as_the_cloth() -> None:
    from playwright.sync_api import sync_playwright

    theme = "@page{margin:12mm}@media print{.diagram svg{max-height:30mm;width:auto}}"
    pictures = "".join(write_svg(draw(gauge), f"d{row}", standalone=False) for row, gauge in enumerate((JERSEY, RIB)))
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page(viewport={"width": 390, "height": 700})
        page.set_content(f"<!doctype html><style>{theme}{STYLE_SHEET}</style><div class=diagram>{pictures}</div>")
        across = page.evaluate(
            "[...document.querySelectorAll('[data-mm]')].map(line => [line.dataset.name,"
            " line.getBoundingClientRect().width * 25.4 / 96])"
        )
        apart = page.evaluate(
            "[...document.querySelectorAll('svg')].map(svg => [...svg.querySelectorAll('text')].map(text =>"
            " {const box = text.getBBox(); return [box.x, box.y, box.x + box.width, box.y + box.height]}))"
        )
        printed = page.pdf(format="A4", prefer_css_page_size=False)
        browser.close()
    shown = dict(across)
    assert shown["main.rest"] == pytest.approx(76.2, abs=0.05)
    assert shown["check.5_cm"] == pytest.approx(50, abs=0.05)
    for texts in apart:
        for place, (left, top, right, bottom) in enumerate(texts):
            for other in texts[place + 1 :]:
                assert right <= other[0] or other[2] <= left or bottom <= other[1] or other[3] <= top
    lengths = _level_lines_mm(printed)
    for wanted in (50, 50.8, 76.2 * 0.25, 76.2 * 0.15, 80 * 0.25, 80 * 0.05):
        assert any(abs(length - wanted) < 0.05 for length in lengths), wanted


def _level_lines_mm(pdf: bytes) -> list[float]:
    """The length on paper of every level line of a PDF; a dashed line is written as its dashes."""
    from pypdf import PdfReader

    spots: list[tuple[bytes, float, float]] = []

    def see(operator: bytes, operands: list[float], matrix: list[float], _: object) -> None:
        if operator in (b"m", b"l"):
            x, y = (float(each) for each in operands)
            spots.append(
                (operator, matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5])
            )

    for sheet in PdfReader(io.BytesIO(pdf)).pages:
        sheet.extract_text(visitor_operand_before=see)
    return [
        abs(x2 - x1) * 25.4 / 72
        for (_, x1, y1), (operator, x2, y2) in pairwise(spots)
        if operator == b"l" and abs(y1 - y2) < 0.01
    ]


@pytest.mark.parametrize(
    ("rest", "own"),
    [(ZERO, Fraction(1, 2)), (inches(3), Fraction(0)), (inches(4), Fraction(1, 2)), (mm(60), Fraction(2))],
)
def test_gauge_of_nothing_or_longer_than_paper_cannot_be_drawn(rest: Length, own: Fraction) -> None:
    with pytest.raises(CannotDraw):
        StretchGauge("main", "jersey", rest, own)


def test_picture_of_true_size_needs_the_true_scale() -> None:
    with pytest.raises(ValueError, match="true scale"):
        Drawing("t", "d", (View(TRUE_SCALE * 2, ()),), true_size=True)
