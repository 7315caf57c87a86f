"""Lengths of which nothing is left, and folds for which a piece has no room: what is said, and where."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding, Severity

HEAD = "title: Test\nsummary: A test.\nmeasured_in: centimetres\n"
CLOTH = "seam_allowance: 2 cm\nfabrics: {main: {name: cotton, structure: woven, buy: 3 m}}\n"
PIECE = CLOTH + (
    "pieces: {sl: {cut: 2, fabric: main, length: LENGTH, width: 40 cm,"
    " sides: {top: seam, bottom: BOTTOM, left: seam, right: seam}, edges: {lower: 36 cm, side: 9 cm}}}\n"
)


def piece(length: str = "50 cm", bottom: str = "seam") -> str:
    return PIECE.replace("LENGTH", length).replace("BOTTOM", bottom)


def of(check: str, root: Path, text: str) -> list[Finding]:
    return [each for each in reviewed(root, text, head=HEAD).findings if each.check == check]


def said(found: list[Finding]) -> list[str]:
    return [f"{each.place.line}:{each.place.column} {each.said}: {each.message}" for each in found]


def nothing_left(root: Path, text: str) -> list[str]:
    found = of("nothing-left", root, text)
    assert all(each.severity is Severity.WRONG and each.working for each in found)
    return said(found)


def test_more_taken_out_than_a_piece_has_points_at_the_amount(tmp_path: Path) -> None:
    text = piece() + "changes: {shorter: {piece: sl, shorten_by: 60 cm, line_at: 2/3 from the top}}\n"
    assert nothing_left(tmp_path, text) == [
        "7:44 60 cm: With shorter, the sl cut length comes out at −10 cm. Take out less."
    ]
    assert of("fold-room", tmp_path, text) == []


def test_what_is_left_may_be_less_than_the_seams_take(tmp_path: Path) -> None:
    text = piece() + "changes: {shorter: {piece: sl, wanted: 3 cm cut, line_at: 2/3 from the top}}\n"
    assert nothing_left(tmp_path, text) == [
        "7:40 3 cm: With shorter, the sl finished length comes out at −1 cm. Want a longer piece."
    ]


def test_two_allowances_longer_than_their_piece(tmp_path: Path) -> None:
    assert nothing_left(tmp_path, piece("3 cm")) == [
        "6:45 3 cm: The sl finished length comes out at −1 cm: what its seams and hems take is more than it has."
        " Make the piece larger, or the allowances smaller."
    ]


def test_piece_as_long_as_its_allowances_is_wrong_and_one_that_is_longer_is_not(tmp_path: Path) -> None:
    assert [each.partition(" comes out at ")[2][:4] for each in nothing_left(tmp_path, piece("4 cm"))] == ["0 mm"]
    assert nothing_left(tmp_path, piece("4.1 cm")) == []


def test_casing_that_takes_more_than_the_piece_has(tmp_path: Path) -> None:
    text = piece("4 cm", "e") + (
        "body: {waist: 70 cm}\nelastics: {e: {around: body.waist, ratio: 90%, overlap: 1 cm, width: 2 cm, room: 1 cm}}\n"
    )
    assert [each.partition(":")[0] for each in nothing_left(tmp_path, text)] == ["6"]


@pytest.mark.parametrize(
    ("hem", "expected"),
    [
        (
            "turn: 1 mm, stitch: twin needle, needle_gap: 4 mm",
            ["7:37 1 mm: The h stitch line comes out at −6 mm: the stitches need 3 mm of the turned cloth beyond them,"
             " and the needles stand 4 mm apart. Turn up more, or write stitch_line."],
        ),
        (
            "turn: 3 mm, fold_under: 3 mm",
            ["7:37 3 mm: The h stitch line comes out at −0.18 mm: the stitches need 3 mm of the turned cloth beyond them."
             " Turn up more, or write stitch_line."],
        ),
        ("turn: 10 mm, stitch_line: 0 mm", ["7:57 0 mm: The h stitch line comes out at 0 mm. Stitch farther from the fold."]),
    ],
)  # fmt: skip
def test_row_of_stitches_lies_inside_the_fold(tmp_path: Path, hem: str, expected: list[str]) -> None:
    assert nothing_left(tmp_path, piece() + f"hems: {{h: {{edges: [sl.lower], {hem}}}}}\n") == expected


def test_elastic_around_nothing_points_at_the_measurement(tmp_path: Path) -> None:
    text = piece() + (
        "body: {waist: 0 cm}\nelastics: {e: {around: body.waist, ratio: 90%, overlap: 1 cm, width: 2 cm, room: 1 cm}}\n"
    )
    assert nothing_left(tmp_path, text) == [
        "7:15 0 cm: The e finished length comes out at 0 mm, since what it goes round is no longer than that."
        " Write how long that is."
    ]


def test_crossed_edge_that_a_change_uses_up(tmp_path: Path) -> None:
    text = piece() + (
        "changes: {shorter: {piece: sl, shorten_by: 10 cm, line_at: 2/3 from the top, crosses: [side]}}\n"
    )
    assert nothing_left(tmp_path, text) == ["7:44 10 cm: With shorter, the sl side comes out at −1 cm. Take out less."]


def test_only_the_size_in_which_it_is_so(tmp_path: Path) -> None:
    found = of("nothing-left", tmp_path, "sizes: [S, M]\n" + piece("'50, 4 cm'"))
    assert [(each.size, each.said, "in size M" in each.message) for each in found] == [("M", "4 cm", True)]


def test_no_size_is_named_where_all_are_alike(tmp_path: Path) -> None:
    found = of("nothing-left", tmp_path, "sizes: [S, M]\n" + piece("3 cm"))
    assert [(each.size, "in size" in each.message) for each in found] == [("", False)]


def test_length_taken_from_another_is_not_told_twice(tmp_path: Path) -> None:
    text = piece("3 cm") + "  # further\n"
    text = text.replace("pieces: {", "pieces: {facing: {cut: 1, fabric: main, length: '{sl.finished_length}'}, ")
    assert len(nothing_left(tmp_path, text)) == 1


def test_what_may_be_nothing_or_below_is_left_alone(tmp_path: Path) -> None:
    text = (
        "seam_allowance: 0 cm\nfabrics: {main: {name: felt, structure: woven, buy: 1 m}}\nbody: {chest: 40 cm}\n"
        "pieces: {sl: {cut: 2, fabric: main, length: 5 cm, width: 5 cm,"
        " sides: {top: seam, bottom: raw, left: seam, right: fold}, edges: {side: 30 cm, notch: 0 cm}}}\n"
        "girths: {round: {edges: [sl.side], body: body.chest}}\n"
        "changes: {shorter: {piece: sl, shorten_by: 1 cm, line_at: 2/3 from the top}}\n"
    )
    assert nothing_left(tmp_path, text) == []
    assert of("fold-room", tmp_path, text) == []


# -- folds ------------------------------------------------------------------------------------------------------


def folded(line: str, amount: str = "20 cm") -> str:
    return piece() + f"changes: {{shorter: {{piece: sl, shorten_by: {amount}, line_at: {line}}}}}\n"


def test_fold_as_deep_as_the_part_above_or_below(tmp_path: Path) -> None:
    assert said(of("fold-room", tmp_path, folded("8 cm from the top"))) == [
        "7:44 20 cm: Shorter folds 10 cm away on either side of its line, but above it the sl has only 8 cm."
        " Take out less, or move the line."
    ]
    assert [each.message.partition("but ")[2][:8] for each in of("fold-room", tmp_path, folded("8 cm from the bottom"))] == [
        "below it"
    ]  # fmt: skip
    assert of("fold-room", tmp_path, folded("12 cm from the top")) == []


def test_two_folds_share_what_lies_between_their_lines(tmp_path: Path) -> None:
    lines = "[{line_at: 20 cm from the top}, {line_at: WHERE from the top}]"
    text = piece() + f"changes: {{shorter: {{piece: sl, shorten_by: 20 cm, lines: {lines}}}}}\n"
    found = of("fold-room", tmp_path, text.replace("WHERE", "29 cm"))
    assert said(found) == [
        "7:44 20 cm: Shorter folds 5 cm and 5 cm away on either side of lines 1 and 2, but between them the sl has only 9 cm."
        " Take out less, or move the lines apart."
    ]
    (found_beyond,) = of("fold-room", tmp_path, text.replace("WHERE", "31 cm"))
    assert found_beyond.severity is Severity.DOUBTFUL, "one lies over the other"
    assert of("fold-room", tmp_path, text.replace("WHERE", "35 cm")) == []


def test_line_with_an_amount_of_its_own_is_pointed_at(tmp_path: Path) -> None:
    lines = "[{line_at: 20 cm from the top, lengthen_by: 2 cm}, {line_at: 6 cm from the bottom, shorten_by: 14 cm}]"
    found = of("fold-room", tmp_path, piece() + f"changes:\n  shorter:\n    piece: sl\n    lines: {lines}\n")
    assert [(each.place.line, each.said) for each in found] == [(10, "14 cm")]


@pytest.mark.parametrize(
    ("line", "amount", "told"),
    [
        ("15 cm from the bottom", "20 cm", "the fold hides all that lies below its line"),
        ("20 cm from the bottom", "20 cm", "the fold hides all that lies below its line"),
        ("20.5 cm from the bottom", "20 cm", ""),
        ("12 cm from the top", "20 cm", ""),
    ],
)
def test_fold_that_leaves_nothing_to_be_seen_below_is_doubted(
    line: str, amount: str, told: str, tmp_path: Path
) -> None:
    found = of("fold-room", tmp_path, folded(line, amount))
    assert all(each.severity is Severity.DOUBTFUL for each in found)
    advice = "so it has no picture. Take out less, or move the line up, or cut it off at the lower edge."
    assert said(found) == ([f"7:44 {amount}: With shorter {told}, {advice}"] if told else [])


def test_folds_that_reach_over_each_other_are_doubted(tmp_path: Path) -> None:
    lines = "[{line_at: 20 cm from the top}, {line_at: WHERE from the top}]"
    text = piece() + f"changes: {{shorter: {{piece: sl, shorten_by: 20 cm, lines: {lines}}}}}\n"
    messages = [of("fold-room", tmp_path, text.replace("WHERE", where)) for where in ("30.5 cm", "34 cm", "35 cm")]
    assert [[each.message.partition(", so ")[0] for each in found] for found in messages] == [
        ["With shorter the fold at line 2 reaches up over line 1"],
        ["With shorter the fold at line 2 reaches up over line 1"],
        [],
    ]
    lengthened = lines.replace("}]", ", lengthen_by: 2 cm}]").replace("top},", "top, shorten_by: 14 cm},", 1)
    text = piece() + f"changes: {{other: {{piece: sl, lines: {lengthened}}}}}\n"
    assert [
        each.message.partition(", so ")[0] for each in of("fold-room", tmp_path, text.replace("WHERE", "30 cm"))
    ] == ["With other the fold at line 1 hides all down to line 2"]


def test_size_with_too_little_room_goes_before_one_whose_fold_does_not_lie_flat(tmp_path: Path) -> None:
    text = "sizes: [S, M]\n" + folded("LINE", "20 cm").replace("LINE", "[15 cm, 8 cm] from the bottom")
    found = of("fold-room", tmp_path, "sizes: [S, M]\n" + folded("15 cm from the bottom", "[16 cm, 40 cm]"))
    assert [(each.severity, each.size) for each in found] == [(Severity.WRONG, "M")], text
