"""The cutting layouts of whole classes against polygons of another library (shapely), an area bound, and another
packing library (rectpack)."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from classes.class_folders import CLASS, TOTE, whole_class
from content import EXAMPLE
from outside.test_layout_rectpack import their_length
from outside.test_layout_shapely import CLOSE, on_flat_cloth, paper, same
from shapely import union_all

from sitegen.checks import review_class
from sitegen.classes import ComputedClass, kit_of, pieces_of_class
from sitegen.quantities import System, mm
from sitegen.reading import ContentFolder
from sitegen.sewing.layout import Cloth, Fold, Layout

EXAMPLES = [("evening-tee", "main"), ("evening-tee", "rib"), ("holiday-trousers", "main")]
NEVER_LONGER_BY = Fraction(3, 100)
"""The bound to which single garments are held too; see tests/outside."""


def example(name: str) -> ComputedClass:
    cls, _ = review_class(ContentFolder(EXAMPLE, "content_example"), f"classes/{name}.yaml")
    assert cls is not None
    return cls


def laid_in_every_width(cls: ComputedClass, fabric: str) -> list[tuple[Layout, Cloth]]:
    line = next(line for line in kit_of(cls, System.CENTIMETRES).lines if line.key == fabric)
    found = []
    for cloth in line.cloth:
        assert cloth.laid is not None
        assert cloth.width is not None
        found.append((cloth.laid, Cloth(cloth.width.length)))
    return found


def check_on_flat_cloth(cls: ComputedClass, fabric: str) -> None:
    """Nothing overlaps, leaves the cloth or turns off the grain, and every student's pieces are there in their shape."""
    wanted = {piece.paper.name: piece.paper for piece in pieces_of_class(fabric, cls)}
    for laid, cloth in laid_in_every_width(cls, fabric):
        cut = []
        for placed in laid.placements:
            fold = laid.sections[placed.section].fold
            shapes = on_flat_cloth(placed, fold, cloth)
            piece = wanted[placed.piece]
            assert piece.bias or placed.turned % 180 == 0, f"{placed.piece} is off the grain"
            assert any(same(shape, paper(piece)) for shape in shapes)
            cut += shapes[: len(placed.copies)]
            low, high = min(shape.bounds[0] for shape in shapes), max(shape.bounds[2] for shape in shapes)
            assert low >= -CLOSE
            assert high <= float(cloth.width.mm) + CLOSE
            assert max(shape.bounds[3] for shape in shapes) <= float(laid.length.mm) + CLOSE
        assert len(cut) == sum(piece.count for piece in wanted.values())
        assert sum(shape.area for shape in cut) - union_all(cut).area < CLOSE
        area = sum(paper(piece).area * piece.count for piece in wanted.values())
        assert float(laid.length.mm) >= area / float(cloth.width.mm) - CLOSE
        assert laid.least <= laid.length


@pytest.mark.parametrize(("name", "fabric"), EXAMPLES)
def test_layouts_of_the_example_classes(name: str, fabric: str) -> None:
    check_on_flat_cloth(example(name), fabric)


@pytest.mark.parametrize("students", ["{S: 1}", "{S: 5, L: 4}", "{L: 12}"])
def test_layouts_of_other_classes(students: str, tmp_path: Path) -> None:
    text = CLASS.replace("{S: 3, L: 2}", students) + "before_class: [cut]\nwidths: {canvas: [45 in, 60 in, 19 in]}\n"
    check_on_flat_cloth(whole_class(tmp_path, text, tutorial=TOTE), "canvas")


@pytest.mark.parametrize(("name", "fabric"), EXAMPLES)
def test_layouts_are_as_short_as_those_of_another_packer(name: str, fabric: str) -> None:
    pytest.importorskip("rectpack")
    cls = example(name)
    sizes = []
    for piece in (each.paper for each in pieces_of_class(fabric, cls)):
        across = piece.width * 2 if piece.on_fold else piece.width
        sizes += [(across.mm, piece.length.mm)] * piece.count
    for laid, cloth in laid_in_every_width(cls, fabric):
        scale = 1
        for value in [cloth.width.mm, *(side for size in sizes for side in size)]:
            scale = scale * value.denominator // _gcd(scale, value.denominator)
        whole = [(int(across * scale), int(along * scale)) for across, along in sizes]
        theirs = Fraction(their_length(whole, int(cloth.width.mm * scale)), scale)
        assert laid.length <= mm(theirs * (1 + NEVER_LONGER_BY))


def _gcd(one: int, other: int) -> int:
    return one if not other else _gcd(other, one % other)


def test_laid_at_once_takes_no_more_than_one_by_one() -> None:
    for name, fabric in EXAMPLES:
        cls = example(name)
        line = next(line for line in kit_of(cls, System.CENTIMETRES).lines if line.key == fabric)
        first = line.cloth[0]
        assert first.needed is not None
        assert first.one_by_one is not None
        assert first.needed.length <= first.one_by_one.length
        assert first.laid is not None
        assert first.laid.fold in Fold


PLAID = (
    "seam_allowance: 1/2 in\nsizes: ['ONE', 'OTHER']\n"
    "fabrics: {canvas: {name: plaid, structure: woven, width: 45 in, repeat: 6 in, buy: 5 yd}}\n"
    "pieces:\n  front: {cut: 2, fabric: canvas, length: '30, 31 in', width: 20 in}\n"
    "  back_yoke: {called: yoke, cut: 2, fabric: canvas, length: '30, 31 in', width: 20 in, edges: {side: 9 in}}\n"
)
CUTTING = {"steps__01-cut_dot_yaml": "title: Cut out\ntext: Cut.\nminutes: 40\ncut: [front, back_yoke]\n"}


def plaid(root: Path, one: str, other: str) -> ComputedClass:
    students = f"{{'{one}': 3, '{other}': 2}}"
    text = CLASS.replace("{S: 3, L: 2}", students) + "before_class: [cut]\n"
    return whole_class(root, text, tutorial=PLAID.replace("ONE", one).replace("OTHER", other), **CUTTING)


@pytest.mark.parametrize("names", [("Age 4", "Age 6"), ("4 to 5", "6"), ("front", "back_yoke"), ("4", "front 4")])
def test_matched_cloth_does_not_depend_on_what_sizes_are_called(names: tuple[str, str], tmp_path: Path) -> None:
    plain, other = plaid(tmp_path / "a", "S", "L"), plaid(tmp_path / "b", *names)
    needs = [kit_of(cls, System.INCHES).lines[0].cloth[0].needed for cls in (plain, other)]
    assert needs[0] is not None
    assert needs[1] is not None
    assert needs[0].length == needs[1].length
    pieces = [[(piece.key, piece.size) for piece in pieces_of_class("canvas", cls)] for cls in (plain, other)]
    assert pieces[0] == pieces[1] == [("front", 0), ("back_yoke", 0), ("front", 1), ("back_yoke", 1)]
