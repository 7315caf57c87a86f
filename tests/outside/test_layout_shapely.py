"""Cutting layouts held against polygons of another library (shapely): the cloth is laid flat again and looked at.

Every placement is unfolded to the shapes that the scissors leave on the flat cloth, one for each layer, and
shapely says whether they overlap, leave the cloth, or are not the piece that was wanted.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box, union_all
from shapely.affinity import rotate, scale, translate

from sitegen.quantities import Length, mm
from sitegen.sewing.layout import CannotLay, Cloth, Fold, FoldSide, Layout, LayoutPiece, Placement, lay_out

CLOSE = 1e-3
"""Square millimetres: what rounding of shapely's floats may leave of an overlap that is none."""


def sizes(least: int, most: int) -> st.SearchStrategy[Length]:
    """Lengths in eighths of an inch, or in half centimetres."""
    eighths = st.integers(least * 8 // 25, most * 8 // 25).map(lambda n: mm(Fraction(127 * (n + 1), 40)))
    return eighths | st.integers(least // 5, most // 5).map(lambda n: mm(5 * (n + 1)))


@st.composite
def outlines(draw: st.DrawFn, width: Length, length: Length, *, on_fold: bool) -> tuple[tuple[Length, Length], ...]:
    """A piece with two tapered ends, or half of one: four corners, none outside its box, left side at 0 if on the fold."""
    parts = [draw(st.fractions(0, Fraction(1, 3), max_denominator=9)) for _ in range(4)]
    left_low, left_high = (0, 0) if on_fold else parts[:2]
    return (
        (width * left_low, mm(0)),
        (width * (1 - parts[2]), mm(0)),
        (width * (1 - parts[3]), length),
        (width * left_high, length),
    )


@st.composite
def pieces(draw: st.DrawFn, name: str) -> LayoutPiece:
    on_fold = draw(st.booleans())
    mirrored = draw(st.booleans())
    width, length = draw(sizes(20, 330)), draw(sizes(20, 700))
    shaped = draw(st.integers(0, 2)) == 0
    return LayoutPiece(
        name,
        width,
        length,
        count=2 * draw(st.integers(1, 2)) if mirrored else draw(st.integers(1, 3)),
        on_fold=on_fold,
        mirrored=mirrored,
        bias=draw(st.integers(0, 5)) == 0,
        rotate=draw(st.booleans()),
        crosswise=draw(st.integers(0, 3)) == 0,
        outline=draw(outlines(width, length, on_fold=on_fold)) if shaped else None,
    )


garments = st.integers(1, 6).flatmap(
    lambda count: st.tuples(*(pieces(name) for name in ("back", "cuff", "front", "pocket", "sleeve", "yoke")[:count]))
)
cloths = st.builds(
    Cloth,
    width=sizes(700, 1600),
    folded=st.sampled_from([None, *Fold]),
    one_way=st.booleans(),
    selvage=st.sampled_from([mm(0), mm(10), mm("12.7")]),
)


def polygon(outline: tuple[tuple[Length, Length], ...]) -> Polygon:
    return Polygon([(float(x.mm), float(y.mm)) for x, y in outline])


def on_flat_cloth(placement: Placement, fold: Fold, cloth: Cloth) -> list[Polygon]:
    """What is cut from the cloth once it lies flat: one shape for each layer, both halves of a piece on the fold in one."""
    width = float(cloth.width.mm)
    shape = polygon(placement.outline)
    if fold is Fold.OPEN:
        return [shape]
    mirror = scale(shape, -1, 1, origin=(0, 0))
    if fold is Fold.LENGTHWISE:
        layers = [translate(shape, width / 2), translate(mirror, width / 2)]
    else:
        upper = width / 4 if shape.centroid.x < width / 4 else 3 * width / 4 + width / 2
        layers = [translate(shape, width / 4), translate(mirror, upper)]
    return [union_all(layers)] if placement.at_fold else layers


def paper(piece: LayoutPiece) -> Polygon:
    """The whole piece, unfolded if it is drawn as half."""
    half = polygon(piece.outline) if piece.outline else box(0, 0, float(piece.width.mm), float(piece.length.mm))
    return union_all([half, scale(half, -1, 1, origin=(0, 0))]) if piece.on_fold else half


def same(one: Polygon, other: Polygon) -> bool:
    """Whether two polygons are the same once both stand in the corner."""
    corner = [translate(each, -each.bounds[0], -each.bounds[1]) for each in (one, other)]
    return corner[0].symmetric_difference(corner[1]).area < 1e-4 * corner[0].area


@st.composite
def tapered(draw: st.DrawFn, name: str) -> LayoutPiece:
    """A piece for which lying head to foot pays."""
    width, length = draw(sizes(100, 400)), draw(sizes(200, 700))
    outline = draw(outlines(width, length, on_fold=False))
    return LayoutPiece(name, width, length, 2 * draw(st.integers(1, 3)), mirrored=draw(st.booleans()), outline=outline)


sleeves = st.integers(1, 3).flatmap(
    lambda count: st.tuples(*(tapered(name) for name in ("cap", "gore", "leg")[:count]))
)


@settings(max_examples=150, deadline=None)
@given(garments, cloths)
def test_pieces_neither_overlap_nor_leave_the_cloth_and_all_are_there(
    wanted: tuple[LayoutPiece, ...], cloth: Cloth
) -> None:
    found = lay_out(wanted, cloth)
    if isinstance(found, CannotLay):
        assert all(each.cloth_width > cloth.width for each in found.too_wide)
        return
    check_layout(found, {piece.name: piece for piece in wanted}, cloth)


@settings(max_examples=60, deadline=None)
@given(sleeves, cloths)
def test_tapered_pieces_slid_together_do_not_overlap(wanted: tuple[LayoutPiece, ...], cloth: Cloth) -> None:
    found = lay_out(wanted, cloth)
    assert isinstance(found, Layout)
    check_layout(found, {piece.name: piece for piece in wanted}, cloth)


def check_layout(found: Layout, wanted: dict[str, LayoutPiece], cloth: Cloth) -> None:
    shapes: list[Polygon] = []
    unused = 0.0
    for placement in found.placements:
        section = found.sections[placement.section]
        flat = on_flat_cloth(placement, section.fold, cloth)
        usable = box(
            float(cloth.selvage.mm),
            float(section.start.mm),
            float((cloth.width - cloth.selvage).mm),
            float((section.start + section.length).mm),
        )
        assert all(each.difference(usable).area < CLOSE for each in flat), "a piece leaves the cloth"
        shapes += flat
        unused += flat[0].area * (len(flat) - len(placement.copies))
        check_placement(placement, flat, section.fold, wanted[placement.piece], cloth)
    for number, one in enumerate(shapes):
        for other in shapes[number + 1 :]:
            assert one.intersection(other).area < CLOSE, "two pieces overlap"
    check_copies(found, wanted, cloth)
    check_length(found, sum(each.area for each in shapes) - unused, wanted, cloth)


def check_copies(found: Layout, wanted: dict[str, LayoutPiece], cloth: Cloth) -> None:
    copies = Counter((each.piece, copy) for each in found.placements for copy in each.copies)
    assert copies == Counter((piece.name, copy) for piece in wanted.values() for copy in range(1, piece.count + 1))
    for piece in wanted.values():
        placed = [each for each in found.placements if each.piece == piece.name and not piece.on_fold]
        if piece.mirrored:
            single = [each.turned_over for each in placed if len(each.copies) == 1]
            assert single.count(True) == single.count(False), "not as many left as right pieces"
        elif any(len(each.copies) == 2 for each in placed):
            other_face = scale(paper(piece), -1, 1)
            faces = [other_face, rotate(other_face, 180)] if piece.rotate and not cloth.one_way else [other_face]
            assert any(same(paper(piece), face) for face in faces), "the lower layer gives the other hand"


def check_placement(placement: Placement, flat: list[Polygon], fold: Fold, piece: LayoutPiece, cloth: Cloth) -> None:
    half = polygon(piece.outline) if piece.outline else box(0, 0, float(piece.width.mm), float(piece.length.mm))
    laid = paper(piece) if placement.opened else half
    over = scale(laid, -1, 1) if placement.turned_over else laid
    assert same(polygon(placement.outline), rotate(over, placement.turned)), "the outline is not the piece as turned"
    allowed = {45, 315} if piece.bias else {0}
    if piece.rotate and not cloth.one_way:
        allowed |= {(degrees + 180) % 360 for degrees in allowed}
    if piece.crosswise and not cloth.one_way and not piece.bias:
        allowed |= {(degrees + 90) % 360 for degrees in allowed}
    assert placement.turned in allowed, "turned against the grain or the nap"
    if piece.on_fold:
        assert placement.at_fold or placement.opened
        assert any(same(each, rotate(paper(piece), placement.turned)) for each in flat), "not the whole piece"
    if placement.at_fold:
        left, _, right, _ = polygon(placement.outline).bounds
        edge = left if placement.at_fold is FoldSide.LEFT else right - float(cloth.width.mm) / 2
        assert abs(edge) < 1e-9, "the fold side does not lie on the fold"
        assert len(flat) == len(placement.copies) == 1
    elif fold is not Fold.OPEN:
        assert placement.layers == len(placement.copies)
    else:
        assert placement.layers == len(placement.copies) == 1


def check_length(found: Layout, cut: float, wanted: dict[str, LayoutPiece], cloth: Cloth) -> None:
    reach = max(float(y.mm) for each in found.placements for _, y in each.outline)
    assert abs(reach - float(found.length.mm)) < 1e-6, "the length is not that of what lies on it"
    assert found.least <= found.length
    covered = sum(paper(piece).area * piece.count for piece in wanted.values())
    assert abs(cut - covered) < covered * 1e-5, "more or less cloth is cut than the pieces have"
    usable = float((cloth.width - cloth.selvage * 2).mm)
    assert float(found.length.mm) * usable >= covered * (1 - 1e-9), "shorter than the area of the pieces allows"
