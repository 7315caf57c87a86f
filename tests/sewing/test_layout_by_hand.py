"""Cutting layouts small enough to be laid by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given as for_all
from hypothesis import settings
from hypothesis import strategies as st

from sitegen.quantities import Length, Ratio, System, Unit, cm, given, inches, mm, show_to_buy, show_working
from sitegen.sewing.layout import (
    CannotLay,
    Cloth,
    Fold,
    FoldSide,
    Layout,
    LayoutPiece,
    Reason,
    cloth_needed,
    each_way,
    lay_out,
)


def piece(name: str, width: int, length: int, count: int = 1, **how: bool) -> LayoutPiece:
    return LayoutPiece(name, cm(width), cm(length), count, **how)


def tapered(name: str, top: int, bottom: int, length: int, count: int = 1, **how: bool) -> LayoutPiece:
    """A piece that is as wide as its lower end and narrows evenly to its upper end, in centimetres."""
    side = Fraction(bottom - top, 2)
    outline = ((cm(0), cm(0)), (cm(bottom), cm(0)), (cm(bottom - side), cm(length)), (cm(side), cm(length)))
    return LayoutPiece(name, cm(bottom), cm(length), count, outline=outline, **how)


def laid(pieces: list[LayoutPiece], width: int, fold: Fold | None = None, **cloth: object) -> Layout:
    found = lay_out(pieces, Cloth(cm(width), fold, **cloth))
    assert isinstance(found, Layout), found
    return found


def test_pieces_side_by_side_take_the_longer_of_them() -> None:
    found = laid([piece("front", 50, 70), piece("back", 50, 60)], 100, Fold.OPEN)
    assert (found.length, found.least, found.reason) == (cm(70), cm(70), Reason.LONGEST)
    assert sorted(each.x for each in found.placements) == [cm(0), cm(50)]


def test_pieces_wider_than_half_the_cloth_lie_one_after_the_other() -> None:
    found = laid([piece("front", 51, 70), piece("back", 50, 60)], 100, Fold.OPEN)
    assert (found.length, found.least, found.reason) == (cm(130), cm(130), Reason.BESIDE)


def test_pieces_on_the_one_fold_lie_one_after_the_other() -> None:
    pieces = [piece("front", 30, 70, on_fold=True), piece("back", 30, 60, on_fold=True)]
    found = laid(pieces, 140, Fold.LENGTHWISE)
    assert (found.length, found.least, found.reason) == (cm(130), cm(130), Reason.FOLD)
    assert all(each.x == cm(0) and each.layers == 2 for each in found.placements)


def test_selvages_to_the_middle_give_a_fold_for_front_and_back() -> None:
    pieces = [piece("front", 30, 70, on_fold=True), piece("back", 30, 60, on_fold=True)]
    found = laid(pieces, 140, Fold.DOUBLE)
    assert found.length == cm(70)
    sides = {each.at_fold: each for each in found.placements}
    assert sides[FoldSide.LEFT].x == cm(0)
    assert sides[FoldSide.RIGHT].x + sides[FoldSide.RIGHT].width == cm(70)
    assert sides[FoldSide.RIGHT].turned_over


def test_piece_on_the_fold_is_laid_out_whole_on_open_cloth() -> None:
    found = laid([piece("front", 30, 70, on_fold=True)], 140, Fold.OPEN)
    (only,) = found.placements
    assert (only.width, only.opened, only.at_fold, only.layers) == (cm(60), True, None, 1)


def test_mirrored_pair_is_one_cut_of_folded_cloth_and_two_of_open_cloth() -> None:
    trousers = [piece("leg", 40, 90, 2, mirrored=True)]
    (once,) = laid(trousers, 100, Fold.LENGTHWISE).placements
    assert (once.copies, once.layers) == ((1, 2), 2)
    one, other = laid(trousers, 100, Fold.OPEN).placements
    assert (one.copies, one.turned_over, other.copies, other.turned_over) == ((1,), False, (2,), True)


def test_piece_too_wide_for_doubled_cloth_is_cut_from_the_open_part_behind_the_folded_one() -> None:
    found = laid([piece("front", 45, 60, 2), piece("yoke", 80, 30)], 100, Fold.LENGTHWISE)
    assert [(part.fold, part.start, part.length) for part in found.sections] == [
        (Fold.LENGTHWISE, cm(0), cm(60)),
        (Fold.OPEN, cm(60), cm(30)),
    ]
    assert (found.length, found.least, found.reason) == (cm(90), cm(90), Reason.PARTS)
    assert [each.y for each in found.placements if each.piece == "yoke"] == [cm(60)]


def test_single_pieces_go_to_the_open_part_where_that_is_shorter() -> None:
    found = laid([piece("front", 45, 60, 2), piece("yoke", 40, 30), piece("facing", 40, 30)], 100, Fold.LENGTHWISE)
    assert found.length == cm(90)
    assert [part.fold for part in found.sections] == [Fold.LENGTHWISE, Fold.OPEN]


def test_single_piece_in_a_gap_of_the_folded_part_wastes_a_layer_rather_than_length() -> None:
    found = laid([piece("front", 30, 60, 2), piece("pocket", 20, 40)], 100, Fold.LENGTHWISE)
    pocket = next(each for each in found.placements if each.piece == "pocket")
    assert (found.length, len(found.sections), pocket.layers, pocket.copies) == (cm(60), 1, 1, (1,))


def test_odd_number_of_alike_pieces_is_pairs_and_one_single() -> None:
    found = laid([piece("tab", 20, 30, 3)], 100, Fold.LENGTHWISE)
    assert sorted(each.copies for each in found.placements) == [(1, 2), (3,)]


def test_two_slanted_pieces_of_one_hand_are_never_cut_from_both_layers() -> None:
    """The lower layer would give the other hand; a piece that is the same on its other face may."""
    slanted = LayoutPiece(
        "flap", cm(20), cm(30), 2, rotate=False, outline=((cm(0), cm(0)), (cm(20), cm(0)), (cm(0), cm(30)))
    )
    assert all(each.layers == 1 for each in laid([slanted], 100, Fold.LENGTHWISE).placements)
    even = tapered("gore", 10, 20, 30, 2)
    assert [each.layers for each in laid([even], 100, Fold.LENGTHWISE).placements] == [2]


def test_piece_cut_on_no_fold_leaves_cloth_said_to_be_folded_open() -> None:
    found = laid([piece("yoke", 80, 30)], 100, Fold.LENGTHWISE)
    assert (found.fold, [part.fold for part in found.sections]) == (Fold.OPEN, [Fold.OPEN])


def test_crosswise_piece_is_turned_where_that_is_shorter() -> None:
    band = piece("waistband", 10, 90, crosswise=True)
    (only,) = laid([band], 100, Fold.OPEN).placements
    assert (only.width, only.height, only.turned) == (cm(90), cm(10), 90)


def test_nothing_is_turned_across_on_one_way_cloth() -> None:
    band = piece("waistband", 10, 90, crosswise=True)
    (only,) = laid([band], 100, Fold.OPEN, one_way=True).placements
    assert (only.width, only.height, only.turned) == (cm(10), cm(90), 0)


def test_tapered_sleeves_lie_head_to_foot() -> None:
    """40 cm narrowing to 20: head to foot the second begins 30 cm beside the first, so 70 cm do instead of 80."""
    found = laid([tapered("sleeve", 20, 40, 50, 2)], 70, Fold.OPEN)
    assert found.length == cm(50)
    assert sorted((each.x, each.turned) for each in found.placements) == [(cm(0), 0), (cm(30), 180)]


@pytest.mark.parametrize("refused", ["nap", "piece"])
def test_tapered_sleeves_keep_their_heads_up_where_they_must(refused: str) -> None:
    sleeve = tapered("sleeve", 20, 40, 50, 2, rotate=refused != "piece")
    found = laid([sleeve], 70, Fold.OPEN, one_way=refused == "nap")
    assert found.length == cm(100)
    assert {each.turned for each in found.placements} == {0}


def test_different_tapered_pieces_are_paired_head_to_foot() -> None:
    """Legs of 40 and 44 cm at the wide end, 20 cm at the other: head to foot the back begins at 30 cm, not at 40."""
    front, back = tapered("front leg", 20, 40, 100), tapered("back leg", 20, 44, 100)
    assert laid([front, back], 74, Fold.OPEN).length == cm(100)
    assert laid([front, back], 73, Fold.OPEN).length == cm(200)


def test_row_of_gores_saves_at_each_of_them() -> None:
    """Six gores of 20 cm narrowing to 10: 20 + 5 × 15 = 95 cm, where 120 cm were needed side by side."""
    assert laid([tapered("gore", 10, 20, 60, 6)], 95, Fold.OPEN).length == cm(60)


def test_bias_piece_takes_width_and_length_together_over_the_root_of_two() -> None:
    (only,) = laid([piece("strip", 4, 80, bias=True)], 100, Fold.OPEN).placements
    assert float(only.width.in_unit(Unit.CM)) == pytest.approx(84 / 2**0.5, abs=1e-4)
    assert only.width == only.height
    assert only.turned == 45


def test_bias_strips_lie_side_by_side() -> None:
    found = laid([piece("strip", 4, 80, 4, bias=True)], 100, Fold.OPEN)
    assert float(found.length.in_unit(Unit.CM)) == pytest.approx((4 * 4 + 80) / 2**0.5, abs=1e-4)


def test_mirrored_bias_pieces_lean_to_both_sides() -> None:
    found = laid([piece("front", 30, 60, 2, bias=True, mirrored=True)], 140, Fold.OPEN)
    assert sorted((each.turned, each.turned_over) for each in found.placements) == [(45, False), (315, True)]


def test_selvage_is_left_free_on_both_sides() -> None:
    found = laid([piece("front", 50, 70), piece("back", 50, 60)], 102, Fold.OPEN, selvage=cm(1))
    assert found.length == cm(70)
    assert min(each.x for each in found.placements) == cm(1)
    assert max(each.x + each.width for each in found.placements) == cm(101)


def test_piece_too_wide_is_named_with_the_width_that_does() -> None:
    found = lay_out([piece("skirt", 70, 90), piece("pocket", 10, 10)], Cloth(cm(60), Fold.OPEN, selvage=cm(1)))
    assert isinstance(found, CannotLay)
    assert [(each.piece, each.across, each.cloth_width) for each in found.too_wide] == [("skirt", cm(70), cm(72))]
    assert found.in_words(System.CENTIMETRES) == (
        "skirt takes 70 cm across, which needs a cloth 72 cm wide; this one is 60 cm wide, laid open in one layer"
    )


def test_piece_too_wide_for_folded_cloth_says_whether_the_cloth_is_opened_out_for_it() -> None:
    found = lay_out([piece("skirt", 70, 90)], Cloth(cm(60), Fold.LENGTHWISE))
    assert isinstance(found, CannotLay)
    assert found.in_words(System.CENTIMETRES).startswith(
        "skirt takes 70 cm across, which needs a cloth 70 cm wide even when it is opened out; this one is 60 cm wide,"
    )


def test_piece_too_wide_measures_what_a_ruler_shows_of_it_and_the_cloth_is_never_too_narrow() -> None:
    wide = LayoutPiece("yoke", inches("28.8"), inches(8), 1)
    found = lay_out([wide], Cloth(inches(20), Fold.OPEN))
    assert isinstance(found, CannotLay)
    assert found.in_words(System.INCHES).startswith(
        "yoke takes 28 3/4 in across, which needs a cloth 28 7/8 in wide; this one is 20 in wide"
    )


@pytest.mark.parametrize(("fold", "does"), [(Fold.LENGTHWISE, 82), (Fold.DOUBLE, 164)])
def test_half_piece_too_wide_for_a_folded_cloth_needs_it_twice_or_four_times(fold: Fold, does: int) -> None:
    found = lay_out([piece("front", 40, 60, on_fold=True)], Cloth(cm(80), fold, selvage=cm(1)))
    assert isinstance(found, CannotLay)
    assert found.width_that_does == cm(does)
    assert isinstance(lay_out([piece("front", 40, 60, on_fold=True)], Cloth(cm(does), fold, selvage=cm(1))), Layout)


def test_every_piece_too_wide_is_named_at_once() -> None:
    found = lay_out([piece("skirt", 70, 90), piece("yoke", 65, 20)], Cloth(cm(60)))
    assert isinstance(found, CannotLay)
    assert [each.piece for each in found.too_wide] == ["skirt", "yoke"]
    assert found.width_that_does == cm(70)


def test_shortest_of_all_ways_is_chosen_and_its_least_holds_for_all() -> None:
    pieces = [piece("front", 30, 70, on_fold=True), piece("back", 30, 60, on_fold=True)]
    lengths = [one.length for one in each_way(pieces, Cloth(cm(140))) if isinstance(one, Layout)]
    assert lengths == [cm(130), cm(70), cm(70)]
    found = laid(pieces, 140)
    assert (found.fold, found.length, found.least) == (Fold.DOUBLE, cm(70), cm(70))


def test_of_equal_ways_the_simplest_to_cut_is_chosen() -> None:
    assert laid([piece("leg", 40, 90, 2, mirrored=True)], 100).fold is Fold.LENGTHWISE


def test_layout_says_what_it_needs_and_what_none_can_do_without() -> None:
    found = laid([tapered("sleeve", 20, 40, 50, 2, rotate=False)], 70, Fold.OPEN)
    assert (found.length, found.efficiency, found.is_shortest) == (cm(100), Ratio.percent(50), False)
    assert found.in_words(System.CENTIMETRES) == (
        "needs 100 cm of cloth laid open in one layer; no layout can need less than 50 cm (the longest piece takes as much)"
    )


def test_least_of_a_fold_that_the_author_chose_is_said_to_be_for_that_fold() -> None:
    pieces = [piece("front", 30, 70, on_fold=True), piece("back", 30, 60, on_fold=True)]
    assert laid(pieces, 140, Fold.LENGTHWISE).in_words(System.CENTIMETRES) == (
        "needs 130 cm of cloth folded lengthwise, selvage on selvage; no layout on cloth folded lengthwise, selvage on "
        "selvage can need less (the pieces on the fold lie one after the other)"
    )
    assert "no layout can need less" in laid(pieces, 140).in_words(System.CENTIMETRES)


def test_words_never_promise_a_mark_too_little() -> None:
    found = laid([LayoutPiece("a", cm(60), mm("701.2"))], 100, Fold.OPEN)
    assert found.in_words(System.CENTIMETRES).startswith(
        "needs 70.5 cm of cloth laid open in one layer; no layout can need less ("
    )


def test_need_allows_for_shrinkage_and_for_straightening() -> None:
    """100 cm at 5 % is 105.3 cm (derived: need ÷ (1 − shrinkage)), and 5 cm for the ends."""
    found = laid([piece("front", 80, 100)], 100, Fold.OPEN)
    shrinkage, ends = given("shrinkage", Ratio.percent(5)), given("straightening the ends", cm(5))
    need = cloth_needed("jersey", found, shrinkage=shrinkage, straightening=ends)
    assert need.length == cm(100) * Fraction(20, 19) + cm(5)
    assert show_working(need, System.CENTIMETRES) == (
        "cutting layout: 100 cm (laid open in one layer)",
        "what washing leaves: whole cloth 100% − shrinkage 5% = 95%",
        "before washing: cutting layout 100 cm ÷ what washing leaves 95% = 105.5 cm",
        "jersey: before washing 105.5 cm + straightening the ends 5 cm = 110.5 cm",
    )
    assert show_to_buy(need.length, System.CENTIMETRES) == "1.2 m"


def test_need_without_shrinkage_is_the_layout() -> None:
    found = laid([piece("front", 80, 100)], 100, Fold.OPEN)
    assert cloth_needed("canvas", found).length == found.length


@pytest.mark.parametrize(
    ("wrong", "says"),
    [
        ({"width": cm(0)}, "a width and a length above nothing"),
        ({"count": 0}, "at least once"),
        ({"count": 3, "mirrored": True}, "come in pairs"),
        ({"outline": ((cm(0), cm(0)), (cm(20), cm(0)))}, "three corners"),
        ({"outline": ((cm(0), cm(0)), (cm(21), cm(0)), (cm(0), cm(30)))}, "inside the width and the length"),
        ({"outline": ((cm(0), cm(0)), (cm(20), cm(0)), (cm(9), cm(30))), "on_fold": True}, "one edge at the fold"),
    ],
)
def test_piece_that_cannot_be_is_refused(wrong: dict[str, object], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        replace(LayoutPiece("flap", cm(20), cm(30)), **wrong)


def test_cloth_without_usable_width_is_refused() -> None:
    with pytest.raises(ValueError, match="wider than its selvages"):
        Cloth(cm(4), selvage=cm(1))


def test_pieces_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="a name of its own"):
        lay_out([piece("front", 10, 10), piece("front", 20, 20)], Cloth(cm(100)))


SIZES = st.integers(8, 60)
PIECES = st.lists(st.tuples(SIZES, SIZES, st.integers(1, 3), st.booleans(), st.booleans()), min_size=1, max_size=6)


def made(drawn: list[tuple[int, int, int, bool, bool]], unit: Length) -> list[LayoutPiece]:
    return [
        LayoutPiece(f"piece {number}", unit * width, unit * length, count, on_fold=on_fold, crosswise=crosswise)
        for number, (width, length, count, on_fold, crosswise) in enumerate(drawn)
    ]


@settings(max_examples=40, deadline=None)
@for_all(PIECES, st.sampled_from(list(Fold)), st.randoms(use_true_random=False))
def test_order_of_the_pieces_does_not_matter(drawn: list, fold: Fold, chance: object) -> None:
    pieces = made(drawn, cm(1))
    shuffled = list(pieces)
    chance.shuffle(shuffled)
    assert lay_out(shuffled, Cloth(cm(140), fold)) == lay_out(pieces, Cloth(cm(140), fold))


@settings(max_examples=40, deadline=None)
@for_all(PIECES, st.sampled_from(list(Fold)))
def test_layout_in_inches_is_the_layout_in_centimetres_grown(drawn: list, fold: Fold) -> None:
    small = lay_out(made(drawn, cm(1)), Cloth(cm(140), fold))
    large = lay_out(made(drawn, inches(1)), Cloth(inches(140), fold))
    if isinstance(small, Layout) and isinstance(large, Layout):
        assert large.length == small.length * Fraction("2.54")
        assert [each.x for each in large.placements] == [each.x * Fraction("2.54") for each in small.placements]
    else:
        assert type(small) is type(large)


@settings(max_examples=40, deadline=None)
@for_all(PIECES)
def test_folded_cloth_never_beats_the_least_of_open_cloth(drawn: list) -> None:
    """Whatever lies on folded cloth can be opened out, so what open cloth cannot do without, no fold can."""
    least = [one.least for one in each_way(made(drawn, cm(1)), Cloth(cm(140), Fold.OPEN)) if isinstance(one, Layout)]
    for one in each_way(made(drawn, cm(1)), Cloth(cm(140))):
        if isinstance(one, Layout):
            assert one.length >= least[0]
