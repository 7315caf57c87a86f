"""The pictures as a browser sets them, with its own fonts: words apart and inside, lengths true."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from importlib.util import find_spec

import pytest

from sitegen.diagrams import (
    STYLE_SHEET,
    Drawing,
    Edge,
    TaperedPiece,
    band_on_opening,
    boxed_corner,
    dart_fold,
    hem_section,
    slash_and_spread,
    slash_at_lines,
)
from sitegen.diagrams import write_svg as written
from sitegen.quantities import System, inches, mm

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
