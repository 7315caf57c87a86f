"""Seams, meeting edges and plans by the names that an author writes; layouts and orders of a whole tutorial."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import EXAMPLE, computed, messages, reviewed
from diagrams.reading_svg import named, words

from sitegen.diagrams import Drawn, diagram_of, layout_of, order_of
from sitegen.findings import Collector
from sitegen.quantities import System, inches
from sitegen.reading import ContentFolder
from sitegen.tutorial import Computed, compute, lacking, picture_names
from sitegen.tutorial.build import tutorial

PARTS = (
    "seam_allowance: 1/2 in\n"
    "sizes: [S, M]\n"
    "fabrics: {main: {name: linen, structure: woven, width: 60 in}, rib: {name: rib, structure: knit}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, length: 25 in, width: 20 in, edges: {side: '15, 16 in', hem: 19 in,\n"
    "    armhole: 8 in}, sides: {top: seam, bottom: lower, left: side, right: side}, notches: {side: single}}\n"
    "  back: {cut: 1 on fold, fabric: main, length: 25 in, width: 20 in, edges: {side: '15, 16 in', hem: 19 in,\n"
    "    armhole: 8 in}}\n"
    "  sleeve: {cut: 2, fabric: main, length: 20 in, width: 18 in, edges: {cap: 16 1/2 in, underarm: 17 in}}\n"
    "  yoke: {cut: 2, fabric: main, seam_allowance: 1 in, length: 6 in, width: 18 in, edges: {lower: 17 in}}\n"
    "  odd: {cut: 1, fabric: rib, edges: {side: 4 in}}\n"
    "bands: {cuffs: {opening: sleeve.underarm, ratio: 80%, finished_width: 2 in, fabric: rib, make: 2}}\n"
    "hems: {lower: {edges: [front.hem, back.hem], turn: 1 in, fold_under: 1/2 in, stitch_line: 7/8 in}}\n"
)
STEPS = {
    "steps__01_dot_yaml": "title: Cut\ntext: Cut.\ncut: [front, back, sleeve, yoke]\n",
    "steps__02_dot_yaml": "title: Sides\ntext: Sew.\nfinish: [front.side, back.side]\n"
    "join: [{edges: [front.side, back.side], stitch: basting}]\n",
    "steps__03_dot_yaml": "title: Sides again\ntext: Sew.\n"
    "join: [{edges: [front.side, back.side], stitch: zigzag, press: to the front}]\n",
    "steps__04_dot_yaml": "title: Sleeves\ntext: Sew.\njoin: [{edges: [sleeve.cap, front.armhole + back.armhole],"
    " stitch: overlock, ease: 1/2 in, press: towards the sleeve}]\n",
    "steps__05_dot_yaml": "title: Yoke\ntext: Sew.\njoin: [{edges: [yoke.lower, front.hem], stitch: straight,"
    " press: away from the yoke, enclosed: in a flat-felled seam},"
    " {edges: [back.hem, front.hem, sleeve.cap], stitch: straight},"
    " {edges: [cuffs, sleeve.underarm], stitch: zigzag}, {edges: [odd.side, yoke.lower], stitch: topstitch}]\n",
}


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    parts, findings = computed(tmp_path_factory.mktemp("sewn"), PARTS, **STEPS)
    assert messages(findings) == []
    return parts


def svg_of(drawn: Drawn | None) -> str:
    assert drawn is not None
    return f'<svg xmlns="http://www.w3.org/2000/svg">{drawn.svg}</svg>'


def drawn_as(name: str, tutorial: Computed, size: int = 0) -> str:
    return svg_of(diagram_of(name, tutorial, size, "p", System.INCHES))


def test_seam_is_that_which_is_sewn_not_that_which_is_basted(found: Computed) -> None:
    assert "zigzag stitches" in words(drawn_as("seam of front.side", found))
    assert "zigzag stitches" in words(drawn_as("seam of back.side and front.side", found))


def test_seam_has_the_allowances_of_its_edges(found: Computed) -> None:
    lines = named(drawn_as("seam of yoke.lower and front.hem", found))
    assert {name: line.mm for name, line in lines.items()} == {"front.hem.seam_allowance": inches("1/2").mm}
    for line in named(drawn_as("seam of front.side", found)).values():
        number = found.number(line.name, 0)
        assert number is not None
        assert line.mm == number.length.mm


def test_author_s_words_say_to_which_piece_a_seam_is_pressed(found: Computed) -> None:
    said = words(drawn_as("seam of front.side", found))
    assert said.index("back") < said.index("front"), "the piece it is pressed to stands on the right and is named last"
    assert "finished edges" in said
    said = words(drawn_as("seam of sleeve.cap", found))
    assert said.index("front and back") < said.index("sleeve")
    assert "overlock stitches" in said
    assert "flat-felled seam, not to scale" in words(drawn_as("seam of yoke.lower and front.hem", found))


def test_edges_finished_before_the_seam_are_finished_each_by_itself(tmp_path: Path, found: Computed) -> None:
    def description(tutorial: Computed) -> str:
        return drawn_as("seam of front.side", tutorial).partition("<desc")[2].partition("</desc>")[0]

    assert "finished each by itself" in description(found)
    later = STEPS | {"steps__02_dot_yaml": "title: Look\ntext: Look.\n"}
    later["steps__03_dot_yaml"] += "finish: [front.side, back.side]\n"
    parts, _ = computed(tmp_path, PARTS, **later)
    assert "finished together" in description(parts)


def test_meeting_has_both_lengths_and_the_stated_ease(found: Computed) -> None:
    lines = named(drawn_as("meeting of sleeve.cap", found))
    assert lines["sleeve.cap"].mm == inches("33/2").mm
    assert lines["front.armhole + back.armhole"].mm == inches(16).mm
    assert lines["difference"].mm == inches("1/2").mm


def test_plan_has_the_cut_sizes_of_its_piece_and_of_a_band(found: Computed) -> None:
    lines = named(drawn_as("plan of front", found))
    assert {name: line.mm for name, line in lines.items()} == {
        "front.cut_length": inches(25).mm,
        "front.cut_width/2": inches(10).mm,
    }
    for line in named(drawn_as("plan of cuffs", found)).values():
        number = found.number(line.name, 0)
        assert number is not None
        assert line.mm == number.length.mm


def test_plan_names_the_hem_that_lies_at_a_side(found: Computed) -> None:
    said = [each.replace("\u00a0", " ") for each in words(drawn_as("plan of front", found))]
    assert "lower 1½ in (3.8 cm)" in said
    assert "outer measures only" in said, "the armhole lies at none of its sides"


@pytest.mark.parametrize(
    ("name", "reason"),
    [
        ("seam of back.hem", "it joins 3 edges, and only a seam of two is drawn"),
        ("seam of cuffs", "a band has a picture of its own; write diagrams: [cuffs]"),
        ("seam of odd.side", "a topstitch holds layers that lie on each other"),
        ("meeting of front.side", "front.side and back.side are equally long"),
        ("plan of odd", "the odd cut length is not known"),
    ],
)
def test_picture_that_cannot_be_drawn_says_why(name: str, reason: str, found: Computed) -> None:
    assert lacking(picture_names(found.tutorial)[name], found, 0).startswith(reason)
    assert diagram_of(name, found, 0, "p", System.INCHES) is None


def test_unknown_and_undrawable_names_are_reported_where_they_stand(tmp_path: Path) -> None:
    asked = STEPS | {
        "steps__06_dot_yaml": "title: Look\ntext: Look.\ndiagrams:\n  - seam of front.sid\n  - plan of odd\n"
    }
    by_check = {
        each.check: (each.place.file, each.place.line, each.place.column, each.message, each.should_be)
        for each in reviewed(tmp_path, PARTS, **asked).findings
        if each.place.file.endswith("06.yaml")
    }
    file = "tutorials/tee/steps/06.yaml"
    path, line, column, message, put = by_check["unknown-reference"]
    assert path.endswith(file)
    assert (line, column, put) == (4, 5, "seam of front.side")
    assert "There is no seam to draw, by one of its edges, “seam of front.sid”. Nearest: seam of front.side" in message
    path, line, column, message, _ = by_check["picture-undrawable"]
    assert path.endswith(file)
    assert (line, column) == (5, 5)
    assert message == "The picture “plan of odd” cannot be drawn: the odd cut length is not known."


def test_layout_is_that_from_which_the_need_was_computed(found: Computed) -> None:
    lines = named(svg_of(layout_of(found, "main", 1, "p", System.INCHES)))
    need = found.number("main.need", 1)
    assert need is not None
    assert lines["main.laid"].mm == need.length.mm, "without shrinkage all that is needed is what is laid"
    assert layout_of(found, "rib", 0, "p", System.INCHES) is None
    assert layout_of(found, "nothing", 0, "p", System.INCHES) is None


def test_order_has_the_steps_of_the_tutorial(found: Computed) -> None:
    said = words(svg_of(order_of(found, "p")))
    assert [each for each in said if each[0].isdigit()] == [
        "1. Cut", "2. Sides", "3. Sides again", "4. Sleeves", "5. Yoke",
    ]  # fmt: skip


@pytest.mark.parametrize("key", sorted(path.name for path in (EXAMPLE / "tutorials").iterdir()))
def test_every_seam_plan_layout_and_order_of_the_example_is_drawn_or_says_why(key: str) -> None:
    parts = tutorial(ContentFolder(EXAMPLE, "content_example"), f"tutorials/{key}", Collector())
    assert parts is not None
    whole = compute(parts, Collector())
    for name, picture in picture_names(parts).items():
        for size in {0, parts.size_count - 1}:
            drawn = diagram_of(name, whole, size, "p", parts.first_system)
            assert (drawn is None) == bool(lacking(picture, whole, size)), name
    for fabric in parts.fabrics:
        assert layout_of(whole, fabric, 0, "p", parts.first_system) is not None
    assert order_of(whole, "p") is not None
