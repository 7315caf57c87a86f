"""Supplies and tools against the steps: what is said, where, and what to put instead."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding

TEE = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: cotton jersey, structure: knit, stretch_across: 40%, buy: 1 yd}}\n"
    "pieces: {front: {cut: 1 on fold, fabric: main, edges: {hem: 18 in, side: 15 in}}}\n"
    "hems: {lower: {edges: [front.hem], turn: 1 in, stitch: twin needle, needle_gap: 4 mm, stitch_line: 5/8 in}}\n"
)
HEMMED = "title: Hem\ntext: TEXT\nhem: [lower]\nneeds: [NEED]\n"
WAIST = (
    "sizes: [S, M]\nbody: {waist: '28, 30 in'}\n"
    "elastics: {waistband: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in}}\n"
)


def of(check: str, root: Path, text: str, **files: str) -> list[Finding]:
    return [each for each in reviewed(root, text, **files).findings if each.check == check]


def said(found: list[Finding]) -> list[str]:
    return [
        f"{each.place.file.rpartition('/')[2]}:{each.place.line}:{each.place.column} {each.message}" for each in found
    ]


# -- the gap of a twin needle -------------------------------------------------------------------------------


def test_twin_needle_of_another_gap_is_reported_at_its_label(tmp_path: Path) -> None:
    (found,) = of("twin-needle-gap", tmp_path, TEE + "supplies: [{item: stretch twin needle, size: 3.0/75}]")
    assert said([found]) == [
        "tutorial.yaml:8:46 The needles of the twin needle in the supplies, 3.0/75, are 3 mm apart, but hem lower is sewn"
        " with a gap of 4 mm. Change the needle, or the needle_gap of the hem."
    ]
    assert (found.said, found.should_be, found.severity.value) == ("3.0/75", "4.0/75", "wrong")
    assert found.working == ("3.0/75 is the gap in millimetres, then the size of the needle",)


@pytest.mark.parametrize("size", ["4.0/75", "4/75", "4,0/75", "4 mm/75", "4.0 / 90"])
def test_twin_needle_of_the_gap_of_the_hem_is_not_reported(size: str, tmp_path: Path) -> None:
    assert of("twin-needle-gap", tmp_path, TEE + f"supplies: [{{item: stretch twin needle, size: '{size}'}}]") == []


@pytest.mark.parametrize(
    ("size", "right"), [("3/75", "4/75"), ("2.5/75", "4.0/75"), ("3.0/75, 2 of them", "4.0/75, 2 of them")]
)
def test_correction_keeps_the_writing_of_the_label(size: str, right: str, tmp_path: Path) -> None:
    (found,) = of("twin-needle-gap", tmp_path, TEE + f"supplies: [{{item: twin needle, size: '{size}'}}]")
    assert found.should_be == right


def test_label_that_stands_in_the_name_of_the_supply_counts(tmp_path: Path) -> None:
    (found,) = of("twin-needle-gap", tmp_path, TEE + "supplies: [stretch twin needle 3.0/75]")
    assert found.should_be == "stretch twin needle 4.0/75"


def test_second_twin_needle_for_another_use_is_not_reported(tmp_path: Path) -> None:
    supplies = "supplies: [{item: twin needle, size: 4.0/75}, {item: twin needle, size: 2.0/75, for: the pocket}]"
    assert of("twin-needle-gap", tmp_path, TEE + supplies) == []


def test_hem_without_a_needle_of_its_gap_is_reported_at_the_hem(tmp_path: Path) -> None:
    two = TEE.replace(
        "hems: {", "hems: {sleeve_hem: {edges: [front.side], turn: 1 in, stitch: twin needle, needle_gap: 2.5 mm}, "
    )
    found = of("twin-needle-gap", tmp_path, two + "supplies: [{item: twin needle, size: 4.0/75}]")
    assert said(found) == [
        "tutorial.yaml:7:87 Hem sleeve hem is sewn with a gap of 2.5 mm, but no twin needle in the supplies has it."
        " They have 4.0/75."
    ]


def test_label_on_the_card_that_sews_the_hem_is_held_against_it(tmp_path: Path) -> None:
    card = HEMMED.replace("NEED", "a stretch twin needle 3.0/75").replace("TEXT", "Put in the twin needle, 4.0/75.")
    found = of(
        "twin-needle-gap", tmp_path, TEE, steps__01_dot_yaml=card.replace("4.0/75", "2.0/75").replace("3.0", "4.0")
    )
    assert found == [], "one of two labels agrees, so the other may be for something else"
    found = of("twin-needle-gap", tmp_path, TEE, steps__01_dot_yaml=card.replace(", 4.0/75", ""))
    assert said(found) == [
        "01.yaml:4:9 The needles of the twin needle on this card, 3.0/75, are 3 mm apart, but hem lower is sewn with a gap"
        " of 4 mm. Change the needle, or the needle_gap of the hem."
    ]
    assert found[0].should_be == "a stretch twin needle 4.0/75"


def test_label_in_running_text_is_put_right_where_it_stands(tmp_path: Path) -> None:
    card = HEMMED.replace("NEED", "the top").replace("TEXT", "Put in the twin needle (3.0/75).")
    (found,) = of("twin-needle-gap", tmp_path, TEE, steps__01_dot_yaml=card)
    assert (found.place.line, found.place.column, found.said, found.should_be) == (2, 31, "3.0/75", "4.0/75")


# -- needles and thread ---------------------------------------------------------------------------------------


def test_twin_needle_that_is_not_in_the_supplies_is_reported_with_its_label(tmp_path: Path) -> None:
    found = of("twin-needle-missing", tmp_path, TEE + "supplies: [{item: stretch needle, size: 75/11}]")
    assert said(found) == [
        "tutorial.yaml:7:56 Hem lower is sewn with a twin needle, and none is in the supplies. Add one, such as"
        " {item: stretch twin needle, size: 4.0/75}"
    ]


def test_nothing_is_said_of_supplies_that_are_not_listed(tmp_path: Path) -> None:
    seam = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, front.side], stitch: zigzag}]\nhem: [lower]\n"
    found = reviewed(tmp_path, TEE, steps__01_dot_yaml=seam).findings
    assert not {each.check for each in found} & {"twin-needle-missing", "needle-for-knit", "thread-missing"}


@pytest.mark.parametrize("stitch", ["zigzag", "stretch stitch"])
def test_knit_sewn_with_a_sharp_needle_is_doubted(stitch: str, tmp_path: Path) -> None:
    seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: [front.side, front.side], stitch: {stitch}}}]\n"
    supplies = "supplies: [{item: universal needle, size: 80/12}, {item: stretch twin needle, size: 4.0/75}]"
    found = of("needle-for-knit", tmp_path, TEE + supplies, steps__01_dot_yaml=seam)
    assert said(found) == [
        "tutorial.yaml:8:19 Cotton jersey is a knit, but no ballpoint, stretch or jersey needle is in the supplies. Add one,"
        " such as {item: ballpoint needle, size: 80/12}"
    ]


@pytest.mark.parametrize("needle", ["ballpoint needle", "Ball point needles", "jersey needle", "stretch needle"])
def test_needle_for_knits_is_known_by_any_of_its_names(needle: str, tmp_path: Path) -> None:
    seam = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, front.side], stitch: zigzag}]\n"
    assert of("needle-for-knit", tmp_path, TEE + f"supplies: [{needle}]", steps__01_dot_yaml=seam) == []


def test_knit_sewn_on_an_overlock_needs_no_needle_of_the_list(tmp_path: Path) -> None:
    seam = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, front.side], stitch: overlock}]\n"
    assert of("needle-for-knit", tmp_path, TEE + "supplies: [cones of thread]", steps__01_dot_yaml=seam) == []


def test_universal_twin_needle_on_a_knit_is_doubted(tmp_path: Path) -> None:
    (found,) = of("needle-for-knit", tmp_path, TEE + "supplies: [{item: universal twin needle, size: 4.0/75}]")
    assert found.message == "A universal twin needle skips stitches in a knit. A stretch twin needle does not."
    assert (found.said, found.should_be) == ("universal twin needle", "stretch twin needle")


@pytest.mark.parametrize(
    ("size", "right", "message"),
    [
        ("80/14", "", "80/14 is no usual size of a needle. Usual are 80/12 and 90/14."),
        ("57/11", "75/11", "57/11 is no usual size of a needle. Usual is 75/11."),
        ("75/10 or finer", "", "75/10 is no usual size of a needle. Usual are 70/10 and 75/11."),
        ("57/13 or finer", "85/13 or finer", "57/13 is no usual size of a needle. Usual is 85/13."),
        ("4.0/57", "", "4.0/57 is no usual size of a needle."),
    ],
)
def test_size_of_a_needle_that_does_not_exist_is_doubted(size: str, right: str, message: str, tmp_path: Path) -> None:
    (found,) = of("needle-size", tmp_path, f"supplies: [{{item: needle, size: {size}}}]")
    assert (found.message, found.said, found.should_be) == (message, size, right)


def test_size_of_a_needle_on_a_card_is_put_right_where_it_stands(tmp_path: Path) -> None:
    card = "title: A\ntext: Put in a stretch needle, size 57/11. Keep the edge 5/8 in from the needle.\n"
    (found,) = of("needle-size", tmp_path, "", steps__01_dot_yaml=card)
    assert (found.place.line, found.place.column, found.said, found.should_be) == (2, 37, "57/11", "75/11")


@pytest.mark.parametrize(
    "text",
    ["Sew with the needle 1/16 in from it.", "A needle 75/11 or a twin needle 4.0/75.", "From the needle 15/16 inch."],
)
def test_lengths_beside_a_needle_are_no_sizes(text: str, tmp_path: Path) -> None:
    assert of("needle-size", tmp_path, "", steps__01_dot_yaml=f"title: A\ntext: {text}\n") == []


@pytest.mark.parametrize(
    ("stitch", "right"), [("straigt", "straight"), ("straigt stitch", "straight"), ("twin nedle", "twin needle")]
)
def test_misspelt_stitch_is_put_right(stitch: str, right: str, tmp_path: Path) -> None:
    seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: [front.side, front.side], stitch: {stitch}}}]\n"
    (found,) = of("stitch-misspelt", tmp_path, TEE, steps__01_dot_yaml=seam)
    assert found.message == (
        f"“{stitch}” is almost the name of a stitch. Write {right}, so that the seam can be checked."
    )
    assert (found.said, found.should_be) == (stitch, right)


@pytest.mark.parametrize(
    "stitch", ["straight stitch", "Straight Stitch", "Zigzag", "zig-zag stitch", "twin needle stitch", "back stitch"]
)
def test_stitch_that_is_called_otherwise_is_known(stitch: str, tmp_path: Path) -> None:
    seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: [front.side, front.side], stitch: {stitch}}}]\n"
    assert of("stitch-misspelt", tmp_path, TEE, steps__01_dot_yaml=seam) == []


def test_straight_stitch_on_a_knit_is_doubted_by_either_name(tmp_path: Path) -> None:
    for number, stitch in enumerate(("straight", "straight stitch")):
        seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: [front.side, front.side], stitch: {stitch}}}]\n"
        assert of("stretch-stitch", tmp_path / str(number), TEE, steps__01_dot_yaml=seam)


@pytest.mark.parametrize("stitch", ["blanket stitch", "lightning stitch", "flatlock", "hand stitch"])
def test_stitch_of_another_name_is_left_alone(stitch: str, tmp_path: Path) -> None:
    seam = f"title: Sew\ntext: Sew.\njoin: [{{edges: [front.side, front.side], stitch: {stitch}}}]\n"
    assert of("stitch-misspelt", tmp_path, TEE, steps__01_dot_yaml=seam) == []


# -- elastic ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "right"),
    [
        ("1 in wide", "3/4 in wide"),
        ("2.5 cm wide, soft", "1.9 cm wide, soft"),
        ("1 in (2.5 cm) wide", "3/4 in (1.9 cm) wide"),
        ("3/4 cm", "3/4 in"),
    ],
)
def test_elastic_of_another_width_is_put_right_in_its_own_unit(size: str, right: str, tmp_path: Path) -> None:
    (found,) = of("elastic-width", tmp_path, WAIST + f"supplies: [{{item: elastic, size: '{size}'}}]")
    assert (found.said, found.should_be, found.severity.value) == (size, right, "wrong")


def test_message_of_elastic_of_another_width(tmp_path: Path) -> None:
    found = of("elastic-width", tmp_path, WAIST + "supplies: [{item: soft elastic, size: 1 in wide}]")
    assert said(found) == [
        "tutorial.yaml:7:39 The supplies have elastic 1 in wide, but waistband is planned for elastic 3/4 in wide."
    ]


def test_elastic_whose_name_says_another_width_is_put_right_there(tmp_path: Path) -> None:
    (found,) = of("elastic-width", tmp_path, WAIST + "supplies: [{item: elastic 1 in wide, amount: 1 yd}]")
    assert (found.said, found.should_be) == ("elastic 1 in wide", "elastic 3/4 in wide")


@pytest.mark.parametrize(
    "supply",
    [
        "{item: elastic 3/4 in wide}",
        "{item: 30 in of elastic}",
        "{item: elastic, size: 2 cm}",
        "{item: elastic, size: 3/4 in (2 cm) wide}",
        "{item: elastic, size: 1/2 to 1 in wide}",
        "{item: elastic, size: soft}",
        "{item: clear elastic, size: 1/4 in wide}",
        "{item: elastic thread, size: 1 mm}",
        "{item: elastic, size: 3/4 in wide}, {item: elastic, size: 1 in wide, for: the bag}",
        "{item: cotton elastane jersey, size: 60 in wide}",
    ],
)
def test_elastic_that_may_be_right_is_left_alone(supply: str, tmp_path: Path) -> None:
    assert of("elastic-width", tmp_path, WAIST + f"supplies: [{supply}]") == []


@pytest.mark.parametrize(
    ("amount", "right"),
    [("26 in", "28 in"), ("70 cm", "71.5 cm"), ("3/4 yd", "7/8 yd"), ("0.7 m", "0.8 m")],
)
def test_too_little_elastic_is_put_right_for_the_largest_size(amount: str, right: str, tmp_path: Path) -> None:
    (found,) = of("elastic-short", tmp_path, WAIST + f"supplies: [{{item: elastic, amount: {amount}}}]")
    assert (found.said, found.should_be, found.size) == (amount, right, "M")


def test_message_of_too_little_elastic_has_its_working(tmp_path: Path) -> None:
    (found,) = of("elastic-short", tmp_path, WAIST + "supplies: [{item: elastic, amount: 26 in}]")
    assert found.message == "26 in of elastic is too little: 28 in are needed for size M."
    assert found.working == (
        "waistband finished length: waist measurement 30 in × ratio 90% = 27 in",
        "waistband cut length: waistband finished length 27 in + waistband overlap 1 in = 28 in",
    )


@pytest.mark.parametrize("amount", ["28 in", "1 yd", "80 cm", "2 packets", '"1"'])
def test_enough_elastic_or_an_amount_that_is_no_length_is_left_alone(amount: str, tmp_path: Path) -> None:
    assert of("elastic-short", tmp_path, WAIST + f"supplies: [{{item: elastic, amount: {amount}}}]") == []


def test_elastics_of_one_width_are_cut_from_one_supply(tmp_path: Path) -> None:
    two = WAIST.replace("body: {", "body: {wrist: '7, 8 in', ").replace(
        "elastics: {",
        "elastics: {cuff: {around: body.wrist, ratio: 100%, overlap: 1 in, width: 3/4 in, room: 1/8 in}, ",
    )
    (found,) = of("elastic-short", tmp_path, two + "supplies: [{item: elastic, size: 3/4 in wide, amount: 1 yd}]")
    assert found.should_be == "1 1/8 yd"
    assert found.working[-1] == "elastic to cut: cuff cut length 9 in + waistband cut length 28 in = 37 in"


# -- fabrics and tools ----------------------------------------------------------------------------------------


def test_fabric_of_which_nothing_is_cut_is_named(tmp_path: Path) -> None:
    lining = TEE.replace("fabrics: {", "fabrics: {lining: {name: poplin, structure: woven, buy: 1 yd}, ")
    assert said(of("fabric-unused", tmp_path, lining)) == [
        "tutorial.yaml:5:19 No piece and no band is cut from the fabric lining (poplin). Take it out, or name it where it is"
        " used."
    ]


def test_fabric_of_a_swap_is_used(tmp_path: Path) -> None:
    swap = TEE.replace("fabrics: {", "fabrics: {rib: {name: rib, structure: knit, stretch_across: 80%, buy: 1 yd}, ")
    swap += (
        "bands: {lower_band: {opening: [front.hem], ratio: 85%, finished_width: 1 in, fabric: main}}\n"
        "swaps: {rib_band: {band: lower_band, fabric: rib, ratio: 85%}}\n"
    )
    assert of("fabric-unused", tmp_path, swap) == []


def test_fabric_without_an_amount_is_doubted_once_there_are_steps(tmp_path: Path) -> None:
    unbought = TEE.replace(", buy: 1 yd", "")
    assert of("fabric-unbought", tmp_path, unbought) == []
    (found,) = of("fabric-unbought", tmp_path, unbought, steps__01_dot_yaml="title: Cut\ntext: Cut.\n")
    assert found.message.startswith("How much cotton jersey to buy is not said. Add to fabric main, for example, buy: ")


@pytest.mark.parametrize("tool", ["pins", "Pin", "ruler", "tailor’s chalk", "stretch needle"])
def test_tool_that_is_listed_in_other_words_is_left_alone(tool: str, tmp_path: Path) -> None:
    listed = "tools: [pins, long ruler, tailor's chalk]\nsupplies: [thread, stretch needle]\n"
    assert of("tool-unlisted", tmp_path, listed, steps__01_dot_yaml=f"title: A\ntext: B.\ntools: [{tool}]\n") == []


def test_tool_that_is_not_listed_is_named_with_the_nearest(tmp_path: Path) -> None:
    card = "title: A\ntext: B.\ntools: [pins, ironing bord]\n"
    found = of("tool-unlisted", tmp_path, "tools: [pins, ironing board]\n", steps__01_dot_yaml=card)
    assert said(found) == [
        "01.yaml:3:15 The tools of this tutorial do not have “ironing bord”. Add it to tools in tutorial.yaml, or write"
        " ironing board, as there."
    ]


def test_gap_that_no_twin_needle_has_is_not_put_on_a_label(tmp_path: Path) -> None:
    wide = TEE.replace("needle_gap: 4 mm", "needle_gap: 4 cm")
    assert wide != TEE
    (found,) = of("twin-needle-gap", tmp_path, wide + "supplies: [{item: stretch twin needle, size: 4.0/75}]")
    assert found.should_be == ""


CLOTH = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven, width: 45 in, buy: BUY}}\n"
    "pieces: {panel: {cut: 2, fabric: main, length: '30, 40 in', width: 30 in}}\n"
)


def test_one_amount_of_cloth_that_is_too_little_for_several_sizes_is_told_once(tmp_path: Path) -> None:
    (found,) = of("fabric-short", tmp_path, CLOTH.replace("BUY", "1 yd"))
    assert (found.message, found.should_be, found.size) == (
        "1 yd of cotton is too little for sizes S and M: the pieces need up to 2 1/4 yd.",
        "2 1/4 yd",
        "S, M",
    )


def test_amounts_of_cloth_by_size_are_told_one_by_one(tmp_path: Path) -> None:
    found = of("fabric-short", tmp_path, CLOTH.replace("BUY", "'1, 1 1/4 yd'"))
    assert [(each.size, each.should_be) for each in found] == [("S", "1 3/4"), ("M", "2 1/4 yd")]
