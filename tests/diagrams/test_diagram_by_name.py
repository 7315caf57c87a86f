"""A part of a tutorial is drawn by its name: changes at several lines, darts and boxed corners among them."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed
from diagrams.reading_svg import named

from sitegen.diagrams import diagram_of
from sitegen.quantities import System, inches
from sitegen.tutorial import Computed, lacking_of_part

PARTS = (
    "seam_allowance: 1/2 in\n"
    "fabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n"
    "  leg: {cut: 2 mirrored, fabric: main, length: 44 in, width: 12 in, edges: {side: 43 in, thigh: 12 in, hem: 8 in},\n"
    "    taper: {top: 12 in, bottom: 8 in, over: 30 in, edges: 1},\n"
    "    darts: {hip: {edge: side, width: 1 in, length: 3 in}, flat: {edge: hem, width: 0 in, length: 3 in}}}\n"
    "  bag: {cut: 2, fabric: main, finished: {length: 16 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: seam, left: seam, right: seam}}\n"
    "  open: {cut: 2, fabric: main, length: 16 in, width: 15 in}\n"
    "boxed:\n"
    "  corners: {panel: bag, square: 2 in}\n"
    "  uncut: {panel: open, depth: 4 in}\n"
    "  unknown: {panel: open, square: 2 in}\n"
    "changes:\n"
    "  longer: {piece: leg, crosses: [side], lines: [{line_at: 8 in from the top, lengthen_by: 1/2 in},\n"
    "    {line_at: 14 in from the bottom, lengthen_by: 1 in}]}\n"
    "  tangled: {piece: leg, crosses: [side], lines: [{line_at: 20 in from the top, lengthen_by: 1 in},\n"
    "    {line_at: 10 in from the top, lengthen_by: 1 in}]}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("drawn"), PARTS)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "title", "number", "length"),
    [
        ("longer", "Leg lengthened at 2 lines", "longer.line_2.from_line_1", "22"),
        ("leg.hip", "Leg hip dart: how it is marked and folded", "leg.hip.width", "1"),
        ("corners", "Corners: cut out and sewn across", "corners.cut_out_width", "2"),
        ("uncut", "Uncut: sewn across", "uncut.depth", "4"),
    ],
)
def test_part_is_drawn_with_the_numbers_of_its_tutorial(
    name: str, title: str, number: str, length: str, found: Computed
) -> None:
    drawn = diagram_of(name, found, 0, "p", System.INCHES)
    assert drawn is not None
    assert drawn.title == title
    lines = named(f'<svg xmlns="http://www.w3.org/2000/svg">{drawn.svg}</svg>')
    assert lines[number].mm == inches(length).mm


def test_every_line_that_stands_for_a_number_of_the_tutorial_is_as_long_as_that_number(found: Computed) -> None:
    for name in ("longer", "leg.hip", "corners", "uncut"):
        drawn = diagram_of(name, found, 0, "p", System.INCHES)
        assert drawn is not None
        for line in named(f'<svg xmlns="http://www.w3.org/2000/svg">{drawn.svg}</svg>').values():
            whole, _, halved = line.name.partition("/")
            number = found.number(whole, 0)
            assert number is not None, line.name
            assert line.mm == number.length.mm / int(halved or 1), line.name


@pytest.mark.parametrize("name", ["tangled", "leg.flat", "unknown", "nothing"])
def test_part_that_cannot_be_drawn_has_no_diagram(name: str, found: Computed) -> None:
    assert diagram_of(name, found, 0, "p", System.INCHES) is None


@pytest.mark.parametrize("below", [2, 4, 5, 8, 10, 12, 20, 30, 38, 40, 43])
@pytest.mark.parametrize("amount", [-30, -16, -10, -8, 1, 6])
@pytest.mark.parametrize("more", ["", "{line_at: 6 in from the top, shorten_by: 4 in}, "])
def test_change_is_drawn_or_it_is_told_why_not(below: int, amount: int, more: str, tmp_path: Path) -> None:
    way = f"{'lengthen' if amount > 0 else 'shorten'}_by: {abs(amount)} in"
    line = f"line_at: {below} in from the bottom, {way}"
    made = f"lines: [{more}{{{line}}}]" if more else line
    text = f"{PARTS.partition('changes:')[0]}changes: {{longer: {{piece: leg, {made}}}}}\n"
    found, _ = computed(tmp_path, text)
    drawn = diagram_of("longer", found, 0, "p", System.INCHES)
    assert (drawn is None) is bool(lacking_of_part("longer", found, 0))


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ("piece: leg, widen_by: 1 in, seam_edges: 4", "a change of width has no line across the piece, and only what is"
         " done at lines is drawn"),
        ("piece: leg, line_at: 3 in from the bottom, shorten_by: 4 in", "the fold hides all that lies below its line"),
        ("piece: leg, line_at: 2/3 from the top, lengthen_by: 0 in", "there is nothing to add or take out"),
    ],
)  # fmt: skip
def test_change_that_has_no_picture_is_reported_where_it_is_asked_for(change: str, reason: str, tmp_path: Path) -> None:
    text = f"{PARTS.partition('changes:')[0]}changes: {{other: {{{change}}}}}\n"
    review = reviewed(tmp_path, text, steps__01_dot_yaml="title: Change\ntext: Change it.\ndiagrams: [other]\n")
    said = [each for each in messages(review.findings) if "picture-undrawable" in each]
    assert said == [f"3:12 picture-undrawable: The picture “other” cannot be drawn: {reason}."]
