"""The pictures as a browser sets them, with its own fonts: words apart and inside, lengths true."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from importlib.util import find_spec

import pytest
from diagrams import sewn_pictures

from sitegen.diagrams import (
    STYLE_SHEET,
    Drawing,
    Edge,
    TaperedPiece,
    band_on_opening,
    bias_strip,
    boxed_corner,
    dart_fold,
    gathers,
    hem_section,
    pleat_folds,
    size_chart,
    slash_and_spread,
    slash_at_lines,
    spaced_marks,
)
from sitegen.diagrams import write_svg as written
from sitegen.quantities import System, cm, given, inches, mm
from sitegen.sewing import bias
from sitegen.sewing.pleats import Pleat

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or "/usr/bin/chromium"
HERE = os.path.exists(CHROMIUM) and find_spec("playwright") is not None
pytestmark = pytest.mark.skipif(not HERE and "CI" not in os.environ, reason="needs chromium and playwright")

MEASURE = """
() => [...document.querySelectorAll('svg')].map(svg => {
  const plain = box => [box.x, box.y, box.x + box.width, box.y + box.height];
  const view = svg.viewBox.baseVal;
  return {
    window: plain(view),
    texts: [...svg.querySelectorAll('text')].map(text => [text.textContent, plain(text.getBBox())]),
    lines: [...svg.querySelectorAll('[data-mm]')].map(line => [
      line.dataset.name, line.dataset.mm, line.getTotalLength() / line.closest('[data-scale]').dataset.scale]),
    drawn: plain(svg.getBBox()),
    wide: svg.getBoundingClientRect().width,
  };
})
"""


def drawings() -> Iterator[Drawing]:
    """Usual and extreme proportions, each in both systems."""
    halves = ((inches("25/2"), inches("15/2")), (inches(20), inches(4)), (inches(9), inches(9)))
    openings = [*(band_on_opening.FrontAndBack(*pair) for pair in halves), inches(9), mm(1)]
    sleeve = TaperedPiece(inches(15), inches(9), inches(18), inches(24), cap=True)
    skirt = TaperedPiece(inches(20), inches(40), inches(20), inches(20), Edge.FOLD)
    leg = TaperedPiece(inches(12), inches(8), inches(30), inches(44), Edge.STRAIGHT)
    for first in System:
        for opening in openings:
            for band in (inches(17), inches(5)):
                allowance = inches("3/8")
                pinned = band_on_opening.BandOnOpening("band", "neckband", "neckline", opening, band, allowance)
                yield band_on_opening.draw(pinned, first=first)
        for piece in (sleeve, skirt, leg):
            for amount in (inches("1/4"), inches(3), inches("-5/2")):
                change = slash_and_spread.SlashAndSpread("change", "piece", "sleeve", piece, inches(12), amount)
                yield slash_and_spread.draw(change, first=first)
        for turn in (inches("3/8"), inches("3/4"), inches("5/2")):
            for under in (mm(0), inches("1/4")):
                for gap in (mm(0), mm(4)):
                    hem = hem_section.HemSection("lower", "lower hem", turn, turn - mm(6), under, gap)
                    yield hem_section.draw(hem, first=first)
        yield from at_several_lines(leg, first)
        yield from darts_and_corners(first)
        yield from sewn_pictures.fixed(first)
        yield from bias_strips(first)
        yield from marks_and_gathers(first)
        yield from folded_pleats(first)
        yield from charts(first)


def at_several_lines(leg: TaperedPiece, first: System) -> Iterator[Drawing]:
    for amounts in (("1/2", "1"), ("-1", "-2"), ("1", "-3/2", "2")):
        lines = (slash_at_lines.LineAcross(inches(8 + 11 * row), inches(by)) for row, by in enumerate(amounts))
        yield slash_at_lines.draw(slash_at_lines.SlashAtLines("change", "leg", leg, tuple(lines)), first=first)


def darts_and_corners(first: System) -> Iterator[Drawing]:
    for width, length, leg in (("1", "3", "3.04"), ("1/2", "9", "9"), ("4", "2", "2.83")):
        dart = dart_fold.DartFold(
            "front.bust", "front bust dart", "front side", inches(width), inches(length), inches(leg), 2
        )
        yield dart_fold.draw(dart, first=first)
    for tip in (inches("3/4"), inches(2), inches(6)):
        for cut in (boxed_corner.CutOut(tip, tip), boxed_corner.CutOut(tip, tip - inches("1/2")), None):
            corner = boxed_corner.BoxedCorner("corners", "corners", tip, inches("1/2"), cut)
            yield boxed_corner.draw(corner, first=first)


def bias_strips(first: System) -> Iterator[Drawing]:
    for side, width in ((cm(30), cm("4.5")), (inches(10), inches("5/4")), (inches(36), inches(1)), (cm(15), cm(10))):
        square, strip, allowance = given("square", side), given("strip", width), given("allowance", inches("1/4"))
        picture = bias_strip.BiasStrip(
            "edging",
            "edging",
            side,
            width,
            bias.diagonal("strip", bias.joined_side("joined", square, allowance)).length,
            int(bias.whole_strips("strips", square, strip, allowance).number),
            bias.left_over("left over", square, strip, allowance).length,
            bias.sewn_length("sewn", square, strip, allowance).length,
        )
        yield bias_strip.draw(picture, first=first)


def marks_and_gathers(first: System) -> Iterator[Drawing]:
    for count, gap, before, ring in (
        (7, cm(4), cm(4), False),
        (5, inches("37/8"), mm(0), True),
        (48, cm(2), cm(1), False),
    ):
        places = tuple(before + gap * mark for mark in range(count))
        marks = spaced_marks.SpacedMarks("buttons", "front buttons", places[-1] + gap, places, gap, ring)
        yield spaced_marks.draw(marks, first=first)
    rows = (inches("1/4"), inches("3/8"))
    for before, after in ((inches(60), inches(40)), (inches(20), inches(19)), (inches(100), inches(10))):
        for known in ((), rows[:1], rows, (*rows, inches("3/4"))):
            top = gathers.Gathers("top", "front top and back top", "waistband", before, after, known, inches("1/2"))
            yield gathers.draw(top, first=first)


def folded_pleats(first: System) -> Iterator[Drawing]:
    for kind in Pleat:
        for count, depth, seen in ((1, cm(1), cm(9)), (6, inches(1), inches(3)), (8, mm(3), cm(12))):
            pleats = pleat_folds.PleatFolds("pleats", "front pleats", kind, count, depth, seen, cm(95), cm(60))
            yield pleat_folds.draw(pleats, first=first)


def charts(first: System) -> Iterator[Drawing]:
    sizes = ("XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL")
    bust = tuple(map(inches, (31, 33, "71/2", 38, 41, 43, 46, 49)))
    for apart in (inches(5), inches("-5/2"), mm(0)):
        round_bust = size_chart.Measure("body.bust", "bust", bust, "bust_round", tuple(each + apart for each in bust))
        head = size_chart.Measure("body.head", "head", tuple(inches("43/2") + mm(3 * size) for size in range(8)))
        yield size_chart.draw(size_chart.SizeChart("Lantern tee", sizes, (round_bust, head)), first=first)


@pytest.fixture(scope="module", params=["system-ui", "DejaVu Sans", "serif"])
def seen(request: pytest.FixtureRequest) -> list[dict[str, list]]:
    from playwright.sync_api import sync_playwright

    body = "".join(written(drawing, f"d{count}", standalone=False) for count, drawing in enumerate(drawings()))
    style = f"<style>:root{{--d-font:{request.param!r},sans-serif}}body{{margin:10px}}{STYLE_SHEET}</style>"
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page(viewport={"width": 360, "height": 640})
        page.set_content(f"<!doctype html><title>d</title>{style}{body}")
        found = page.evaluate(MEASURE)
        overflow = page.evaluate("document.documentElement.scrollWidth")
        browser.close()
    assert overflow <= 360
    return found


def test_words_stand_apart_as_the_browser_sets_them(seen: list[dict[str, list]]) -> None:
    assert len(seen) == len(list(drawings()))
    for picture in seen:
        texts = picture["texts"]
        for place, (said, box) in enumerate(texts):
            for other_said, other in texts[place + 1 :]:
                across = min(box[2], other[2]) - max(box[0], other[0])
                down = min(box[3], other[3]) - max(box[1], other[1])
                assert across <= 0 or down <= 0, (said, other_said)


def test_everything_stays_inside_as_the_browser_sets_it(seen: list[dict[str, list]]) -> None:
    for picture in seen:
        edge = picture["window"]
        for said, box in [*picture["texts"], ["all that is drawn", picture["drawn"]]]:
            assert edge[0] <= box[0], said
            assert box[2] <= edge[2], said
            assert edge[1] <= box[1], said
            assert box[3] <= edge[3], said


def test_lengths_are_true_as_the_browser_measures_them(seen: list[dict[str, list]]) -> None:
    for picture in seen:
        for name, said, drawn in picture["lines"]:
            top, _, bottom = said.partition("/")
            assert drawn == pytest.approx(float(top) / float(bottom or 1), rel=0.005), name
