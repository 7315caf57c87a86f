"""Marks, gathers, pleats and bindings are drawn by name; a gauge and a size chart for a whole tutorial."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed
from diagrams.reading_svg import measured, words

from sitegen.diagrams import Drawn, diagram_of, size_chart_of, stretch_gauge_of
from sitegen.quantities import System, cm, inches
from sitegen.tutorial import Computed

PARTS = (
    "seam_allowance: 1/2 in\n"
    "sizes: [S, M]\n"
    "body: {waist: '28, 30 in', hip: '36, 38 in'}\n"
    "fabrics:\n"
    "  main: {name: cotton lawn, structure: woven}\n"
    "  rib: {name: ribbed knit, structure: knit, stretch_across: 80%}\n"
    "  elastic: {name: power net, structure: knit, stretch_across: 1500%}\n"
    "pieces:\n"
    "  front: {cut: 1, fabric: main, edges: {top: '28 1/2, 30 in', placket: 18 in}}\n"
    "  back: {cut: 1, fabric: main, edges: {top: '28 1/2, 30 in'}}\n"
    "  waistband: {cut: 2, fabric: main, edges: {lower: '19, 20 in'}}\n"
    "girths:\n"
    "  band_round: {edges: [waistband.lower, waistband.lower], body: hip}\n"
    "gathers:\n"
    "  skirt_top: {edges: [front.top, back.top], onto: [waistband.lower, waistband.lower],\n"
    "    rows: {first: 1/4 in, apart: 1/8 in, count: 2}}\n"
    "  stretched: {edges: [waistband.lower], onto: [front.top]}\n"
    "spacings:\n"
    "  buttons: {along: front.placket, marks: 5, first_margin: 1/2 in, last_margin: 1 in}\n"
    "  band_marks: {along: [waistband.lower, waistband.lower], marks: 8, spread: round}\n"
    "  channels: {length: 12 in, greatest_gap: 3 in, spread: inside}\n"
    "  beads: {length: 60 in, marks: 61}\n"
    "pleats:\n"
    "  front_pleats: {kind: knife, count: 6, depth: 1 in, finished: 12 in}\n"
    "  overlapping: {kind: box, count: 6, depth: 2 in, finished: 12 in}\n"
    "bindings:\n"
    "  edging: {edges: [front.placket], kind: double fold, finished_width: 1/2 in, overlap: 1 in, square: 14 in}\n"
    "  bought: {edges: [front.placket], kind: double fold, finished_width: 1/2 in, overlap: 1 in}\n"
    "  scrap: {edges: [front.placket], kind: double fold, finished_width: 2 in, overlap: 1 in, square: 4 in}\n"
)
STEP = "title: Sew\ntext: Sew.\ndiagrams: [{}]\n"
DRAWN = ("skirt_top", "buttons", "band_marks", "channels", "front_pleats", "edging")
NOT_COMPUTED = {"buttons.after_last", "band_marks.after_last", "channels.after_last", "skirt_top.allowance"}
"""What is left after the last mark, and an allowance under the name of a gather, are said by the picture alone."""


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("drawn"), PARTS)
    assert messages(findings) == []
    return tutorial


def drawn(name: str, found: Computed, size: int = 0) -> Drawn:
    picture = diagram_of(name, found, size, "p", System.INCHES)
    assert picture is not None
    return picture


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("skirt_top", "Front top and back top gathered onto the waistband lower"),
        ("buttons", "Buttons: where the marks lie"),
        ("front_pleats", "Front pleats: marked and folded"),
        ("edging", "Edging: bias strips out of a square"),
    ],
)
def test_part_is_drawn_under_its_own_title(name: str, title: str, found: Computed) -> None:
    assert drawn(name, found).title == title


@pytest.mark.parametrize("name", DRAWN)
@pytest.mark.parametrize("size", [0, 1])
def test_every_line_is_as_long_as_the_number_of_the_tutorial_that_it_stands_for(
    name: str, size: int, found: Computed
) -> None:
    for line in measured(_whole(drawn(name, found, size))):
        if line.name in NOT_COMPUTED:
            continue
        whole, _, parts = line.name.partition("/")
        number = found.number(whole, size)
        assert number is not None, line.name
        assert line.mm == number.length.mm / int(parts or 1), line.name


def test_rows_and_the_allowance_of_the_gathered_edge_are_those_of_the_tutorial(found: Computed) -> None:
    lines = {line.name: line.mm for line in measured(_whole(drawn("skirt_top", found)))}
    assert lines["skirt_top.row_1"] == inches("1/4").mm
    assert lines["skirt_top.row_2"] == inches("3/8").mm
    assert lines["skirt_top.allowance"] == inches("1/2").mm
    other = {line.name: line.mm for line in measured(_whole(drawn("skirt_top", found, 1)))}
    assert other["skirt_top.before"] == inches(60).mm


def _whole(picture: Drawn) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg">{picture.svg}</svg>'


@pytest.mark.parametrize(
    ("name", "reason"),
    [
        ("bought", "only strips out of a square are drawn, and it has no square. Example: square: 12 in"),
        ("scrap", "the square is too small for a whole strip"),
        ("stretched", "what is gathered is not longer than what it is gathered onto"),
        ("beads", "there are more than 60 marks, too many to be told apart"),
        ("overlapping", "the box pleats would lie over each other"),
    ],
)
def test_part_that_cannot_be_drawn_is_reported_where_it_is_asked_for(
    name: str, reason: str, found: Computed, tmp_path: Path
) -> None:
    assert diagram_of(name, found, 0, "p", System.INCHES) is None
    review = reviewed(tmp_path, PARTS, steps__01_dot_yaml=STEP.format(name))
    said = [each for each in messages(review.findings) if "picture-undrawable" in each]
    assert said == [f"3:12 picture-undrawable: The picture “{name}” cannot be drawn: {reason}."]


@pytest.mark.parametrize("name", DRAWN)
def test_part_that_can_be_drawn_is_not_reported(name: str, tmp_path: Path) -> None:
    review = reviewed(tmp_path, PARTS, steps__01_dot_yaml=STEP.format(name))
    ids = {each.check for each in review.findings}
    assert not ids & {"picture-undrawable", "unknown-reference"}


def test_misspelt_name_is_reported_with_the_nearest(tmp_path: Path) -> None:
    (said,) = messages(computed(tmp_path, PARTS, steps__01_dot_yaml=STEP.format("buttens"))[1])
    assert said.startswith("3:12 unknown-reference: There is no band, hem,")
    assert said.endswith("to draw “buttens”. Nearest: buttons.")


def test_gauge_shows_the_stretch_of_the_fabric_on_a_swatch_of_the_units_that_come_first(found: Computed) -> None:
    for first, rest in ((System.INCHES, inches(3)), (System.CENTIMETRES, cm(8))):
        gauge = stretch_gauge_of(found, "rib", "p", first)
        assert gauge is not None
        assert gauge.title == "Stretch gauge for ribbed knit, of true size"
        lines = {line.name: line.mm for line in measured(_whole(gauge))}
        assert lines["rib.rest"] == rest.mm
        assert "80%: ribbed knit" in words(_whole(gauge))


@pytest.mark.parametrize("fabric", ["main", "nothing", "elastic"])
def test_fabric_without_a_stretch_that_paper_can_show_has_no_gauge(fabric: str, found: Computed) -> None:
    assert stretch_gauge_of(found, fabric, "p", System.INCHES) is None


def test_chart_shows_every_measurement_and_the_garment_where_a_girth_goes_round_it(found: Computed) -> None:
    chart = size_chart_of(found, "p", System.INCHES)
    assert chart is not None
    lines = [(line.name, line.mm / inches(1).mm) for line in measured(_whole(chart))]
    assert lines == [
        ("body.waist", 28),
        ("body.waist", 30),
        ("body.hip", 36),
        ("band_round.ease", 2),
        ("body.hip", 38),
        ("band_round.ease", 2),
    ]


def test_tutorial_of_one_size_has_no_chart(tmp_path: Path) -> None:
    alone = computed(tmp_path, "body: {waist: 28 in}\n")[0]
    assert size_chart_of(alone, "p", System.INCHES) is None
