"""The cutting layout: every piece where the layout has put it, to scale, with folds, selvages and grain."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagrams.reading_svg import named, parsed, spots, words

from sitegen.diagrams import CannotDraw, write_svg
from sitegen.diagrams.kinds.cutting_layout import CuttingLayout, describe, draw
from sitegen.quantities import Length, inches, mm
from sitegen.sewing import layout

PIECES = (
    layout.LayoutPiece("front", inches(9), inches(25), 1, on_fold=True),
    layout.LayoutPiece("sleeve", inches(16), inches(18), 2),
    layout.LayoutPiece("pocket", inches(2), inches(2), 1),
)
CALLED = {"front": "front", "sleeve": "sleeve", "pocket": "coin pocket"}


def cutting(fold: layout.Fold, need: Length | None = None) -> CuttingLayout:
    laid = layout.lay_out(PIECES, layout.Cloth(inches(60), fold))
    assert isinstance(laid, layout.Layout)
    return CuttingLayout("main", "cotton jersey", laid, inches(60), CALLED, need, need)


def test_width_and_length_are_measured_exactly() -> None:
    open_cloth = cutting(layout.Fold.OPEN)
    assert {name: line.mm for name, line in named(write_svg(draw(open_cloth), "p")).items()} == {
        "main.width": inches(60).mm,
        "main.laid": open_cloth.laid.length.mm,
    }
    folded = named(write_svg(draw(cutting(layout.Fold.LENGTHWISE)), "p"))
    assert folded["main.width/2"].mm == inches(30).mm


@pytest.mark.parametrize("fold", list(layout.Fold))
def test_every_piece_lies_where_the_layout_has_it(fold: layout.Fold) -> None:
    picture = cutting(fold)
    svg = write_svg(draw(picture), "p")
    scale = float(parsed(svg).attrib["data-scale"])
    left, top = named(svg)["main.laid"].start[0] + 14, named(svg)["main.laid"].start[1]
    drawn = sorted(
        [(round((x - left) / scale), round((y - top) / scale)) for x, y in sorted(outline)]
        for outline in spots(svg, "right")
    )
    wanted = sorted(
        [(round(x.mm), round(y.mm)) for x, y in sorted(placed.outline)] for placed in picture.laid.placements
    )
    assert len(drawn) == len(wanted)
    for piece, other in zip(drawn, wanted, strict=True):
        for spot, right in zip(piece, other, strict=True):
            assert spot == pytest.approx(right, abs=1.01), "a millimetre of cloth is a sixth of a pixel"


def test_piece_on_the_fold_has_its_fold_drawn_along_that_of_the_cloth() -> None:
    svg = write_svg(draw(cutting(layout.Fold.LENGTHWISE)), "p")
    folds = spots(svg, "fold")
    assert len(folds) == 2, "the fold of the cloth, and that of the front"
    assert {round(x, 2) for line in folds for x, _ in line} == {round(folds[0][0][0], 2)}
    assert {"fold", "selvages"} <= set(words(svg))


def test_cloth_folded_to_the_middle_has_two_folds_and_selvages_between() -> None:
    svg = write_svg(draw(cutting(layout.Fold.DOUBLE)), "p")
    assert [words(svg).count(name) for name in ("fold", "selvages")] == [2, 1]


def test_open_cloth_has_two_selvages_and_no_fold_of_its_own() -> None:
    svg = write_svg(draw(cutting(layout.Fold.OPEN)), "p")
    assert words(svg).count("selvage") == 2
    assert not spots(svg, "fold")


def test_grain_runs_along_the_cloth_and_across_a_piece_that_lies_a_quarter_turned() -> None:
    strip = layout.LayoutPiece("strip", inches(10), inches(50), 1, crosswise=True)
    for cloth, upright in ((layout.Cloth(inches(60), layout.Fold.OPEN), False), (layout.Cloth(inches(45)), True)):
        laid = layout.lay_out((strip,), cloth)
        assert isinstance(laid, layout.Layout)
        picture = CuttingLayout("main", "poplin", laid, cloth.width, {"strip": "strip"})
        (grain,) = spots(write_svg(draw(picture), "p"), "grain")
        assert (grain[0][0] == grain[1][0]) is upright


def test_piece_too_small_for_its_name_has_a_letter_with_a_key() -> None:
    svg = write_svg(draw(cutting(layout.Fold.OPEN)), "p")
    assert words(svg).count("A") == 2, "two sleeves"
    assert words(svg).count("B") == 1
    assert "A: sleeve B: coin pocket" in words(svg)
    assert "front" in words(svg)


def test_piece_whose_name_would_touch_its_outline_has_a_letter_too() -> None:
    """A brim of 39 by 16 cm on cloth 110 cm wide: its name in two lines is hardly lower than the piece."""
    brim = layout.LayoutPiece("brim", mm(390), mm(160), 2)
    laid = layout.lay_out((brim,), layout.Cloth(mm(1100), layout.Fold.OPEN))
    assert isinstance(laid, layout.Layout)
    for called, letters in (("brim", {}), ("lining brim", {"brim": "A"})):
        assert CuttingLayout("main", "cotton", laid, mm(1100), {"brim": called}).letters == letters


def test_what_is_needed_and_what_to_buy_are_said() -> None:
    picture = cutting(layout.Fold.OPEN, inches(54))
    said = [each.replace("\u00a0", " ") for each in words(write_svg(draw(picture), "p"))]
    assert "Needed in all: 54 in (137.5 cm) Buy 1½ yd" in said
    assert "Buy 1½ yd" in describe(picture).replace("\u00a0", " ")
    needed = replace(picture, need=inches("50.3"), buy=None)
    assert "Needed in all: 50⅜ in (128 cm). Buy 1½ yd." in describe(needed).replace("\u00a0", " ")
    told = replace(needed, buy=inches(51))
    assert describe(told).replace("\u00a0", " ").endswith("Buy 51 in."), "as it is told"
    assert not any("Buy" in each for each in words(write_svg(draw(cutting(layout.Fold.OPEN)), "p")))


def test_description_says_how_the_cloth_lies_and_where_each_piece_begins() -> None:
    said = describe(cutting(layout.Fold.LENGTHWISE))
    assert "60 in (152.5 cm) wide" in said
    assert "folded lengthwise, selvage on selvage" in said
    assert "ront on the fold at 0 in" in said
    assert "leeve at" in said


def test_layout_of_nothing_cannot_be_drawn() -> None:
    whole = cutting(layout.Fold.OPEN).laid
    empty = layout.Layout(
        whole.fold, whole.sections, (), whole.length, whole.least, whole.reason, whole.least_holds_for
    )  # fmt: skip
    with pytest.raises(CannotDraw):
        CuttingLayout("main", "jersey", empty, inches(60), {})


def test_more_small_pieces_than_letters_have_names_of_their_own() -> None:
    pieces = tuple(layout.LayoutPiece(f"part {number}", inches(2), inches(2), 1) for number in range(60))
    laid = layout.lay_out(pieces, layout.Cloth(inches(60), layout.Fold.OPEN))
    assert isinstance(laid, layout.Layout)
    called = {piece.name: f"facing of the {piece.name}" for piece in pieces}
    found = CuttingLayout("main", "cotton", laid, inches(60), called)
    assert len(set(found.letters.values())) == 60
    assert {"A", "Z", "A2", "Z2", "A3", "H3"} <= set(found.letters.values())
    told = " ".join(words(write_svg(draw(found), "p")))
    assert all(f"{letter}: facing of the {piece}" in told for piece, letter in found.letters.items())
