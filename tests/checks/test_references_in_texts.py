"""References in running text: what is said of them, and right texts of many wordings about which nothing is said."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

GARMENT = """
seam_allowance: 3/8 in
body: {waist: 28 in, hip: 38 in, head: 22 in}
fabrics:
  main: {name: sweatshirt fleece, structure: knit, stretch_across: 30%, width: 60 in, shrinkage: 5%, buy: 2 yd}
  rib: {name: ribbing, structure: knit, stretch_across: 80%, width: 40 in, shrinkage: 5%, buy: 1/2 yd}
pieces:
  front:
    called: front
    cut: 1 on fold
    fabric: main
    finished: {length: 25 in, width: 20 in}
    sides: {top: shoulder, bottom: hem, left: side, right: side}
    edges: {shoulder: 5 in, neckline: 12 in, armhole: 9 in, side: 15 in, hem: 20 in}
  back:
    called: back
    cut: 1 on fold
    fabric: main
    finished: {length: 26 in, width: 21 in}
    sides: {top: shoulder, bottom: hem, left: side, right: side}
    edges: {shoulder: 5 in, neckline: 8 in, armhole: 9 in, side: 15 in, hem: 21 in}
  pocket:
    called: pocket
    cut: "2"
    fabric: main
    finished: {length: 7 in, width: 6 in}
    sides: {top: top, bottom: lower, left: side, right: side}
    edges: {top: 6 in, lower: 6 in, side: 7 in}
  tie:
    called: tie
    cut: "2"
    fabric: main
    length: 40 in
    width: 2 in
    sides: {top: end, bottom: end, left: long, right: long}
    edges: {end: 2 in, long: 40 in}
bands:
  neckband:
    {opening: [front.neckline, back.neckline], ratio: 85%, finished_width: 1 in, fabric: rib, goes_over: head}
hems:
  lower: {edges: [front.hem, back.hem], turn: 1 in, stitch: twin needle, needle_gap: 4 mm}
  pocket_hem: {edges: [pocket.top], turn: 1 in, fold_under: 1/4 in, stitch: straight, stitch_line: 7/8 in}
elastics:
  waist_elastic: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in, fold_under: 1/4 in}
girths:
  hip_round: {edges: [front.hem, back.hem], body: hip}
changes:
  longer: {pieces: [front, back], line_at: 9 in from the bottom, lengthen_by: 2 in}
"""
IDS = (
    "reference-part",
    "reference-words",
    "reference-twice",
    "reference-unspoken",
    "reference-noun",
    "reference-nothing",
)


def said(root: Path, text: str, garment: str = GARMENT, *, title: str = "Work", keys: str = "") -> list[str]:
    """What the checks of references find in the text of a card, as check and found name."""
    lines = "".join(f"  {line}\n" for line in text.split("\n"))
    found = reviewed(root, garment, steps__01_dot_yaml=f"title: {title}\ntext: |\n{lines}{keys}")
    assert not [each for each in found.findings if each.check == "unknown-reference"]
    return [f"{each.check} {each.said} → {each.should_be}" for each in found.findings if each.check in IDS]


@pytest.mark.parametrize(
    "text",
    [
        "Cut two ties, each {tie.cut_length} by {tie.cut_width}.",
        "For each tie you need a strip {tie.cut_width} wide and {tie.cut_length} long.",
        "The pocket measures {pocket.cut_width} across and {pocket.cut_length} from top to bottom.",
        "Turned sideways, the panel is {front.cut_length} wide and {front.cut_width} tall.",
        "Front: {front.cut_length}. Back: {back.cut_length}.",
        "The front is {front.finished_length} long, and the back {back.finished_length}.",
        "The back comes out {back.finished_width} wide once the sides are sewn, while the front has {front.finished_width}.",
        "Pin the pocket to the front, {pocket.side} up from the lower edge.",
        "Fold {pocket.seam_allowance} under on three sides of the pocket and press.",
        "Turn {pocket_hem.fold_under} to the wrong side, press, and turn {pocket_hem.turn} once more.",
        "The top of the pocket needs {pocket_hem.allowance} for its hem. Stitch {pocket_hem.stitch_line} below the fold.",
        "Stitch the hem; {lower.catch} of cloth stays outside the second row, {lower.far_row} from the fold.",
        "With the needles {lower.needle_gap} apart, the two rows run side by side.",
        "The neckband is {neckband.ratio} of the neck opening, so it must stretch by {neckband.stretch_to_sew}.",
        "Quarter the neckband. Pins sit {neckband.band_quarter} apart on it and {neckband.opening_quarter} on the neck.",
        "Each side mark lies {neckband.quarter_from_shoulder} ahead of its shoulder seam.",
        "The band has to pass over a head of {neckband.reach}.",
        "Take {waist_elastic.cut_length} of elastic. Lap its ends by {waist_elastic.overlap}.",
        "The elastic measures {waist_elastic.finished_length} when it is closed to a ring.",
        "The elastic is {waist_elastic.width} wide and gets {waist_elastic.room} of play in its tunnel.",
        "Fold the upper edge down by {waist_elastic.casing} to form the casing.",
        "Your hips may measure up to {body.hip}; the finished hem is {hip_round.finished_girth} around.",
        "That leaves {hip_round.ease} of ease at the hip.",
        "For a waist of {body.waist} and a hip of {body.hip} take this size.",
        "Slash the paper {longer.part_below} above the hem and spread it by {longer.amount}.",
        "After the change the front is {longer.new_cut_length} long on the cutting line, {longer.new_finished_length} when sewn.",
        "Sew the shoulders, {seam_allowance} from the edge. Each is {front.shoulder} long.",
        "From the shoulder measure {front.armhole} down the side.",
        "Neckline of the front {front.neckline}, neckline of the back {back.neckline}.",
        "The fleece shrinks by {main.shrinkage} in the wash, and so does the ribbing, by {rib.shrinkage}.",
        "The cloth is {main.width} wide. Lay it out in one layer.",
        "Fleece that stretches by {main.stretch_across} is enough; the rib needs {rib.stretch_across}.",
        "| piece | length | width |\n| --- | --- | --- |\n| front | {front.cut_length} | {front.cut_width} |\n"
        "| tie | {tie.cut_length} | {tie.cut_width} |",
        "| part | cut | finished |\n| --- | --- | --- |\n| pocket | {pocket.cut_length} | {pocket.finished_length} |",
        "Snip {seam_allowance} deep. Trim the allowance to half of {seam_allowance}.",
        "Mark {front.side} from the hem upwards on both pieces. It is where the armhole ends.",
        "Lay the front on the back. The sides are {front.side} long on both.",
        "The band is sewn to the neck; cut it {neckband.cut_length} long, which is {neckband.finished_length} plus two"
        " allowances of {neckband.seam_allowance}.",
    ],
)  # fmt: skip
def test_nothing_is_said_about_a_right_text(text: str, tmp_path: Path) -> None:
    assert said(tmp_path, text) == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Cut a pocket, {pocket.cut_length} long and {pocket.cut_length} wide.", "reference-words pocket.cut_length → pocket.cut_width"),
        ("Cut the tie, {pocket.cut_length} long.", "reference-part pocket.cut_length → tie.cut_length"),
        ("For a waist of {body.hip} take this size.", "reference-noun body.hip → body.waist"),
        ("The ends overlap by {waist_elastic.casing}.", "reference-words waist_elastic.casing → waist_elastic.overlap"),
        ("The hem takes {pocket_hem.stitch_line}.", "reference-words pocket_hem.stitch_line → pocket_hem.allowance"),
        ("The back hangs {neckband.band_quarter} lower.", "reference-unspoken neckband.band_quarter → "),
        ("The front neckline {front.armhole} is curved.", "reference-noun front.armhole → front.neckline"),
        ("Sew with {neckband.cut_width} allowance.", "reference-words neckband.cut_width → neckband.seam_allowance"),
        ("It is {front.side} at the side and {front.side} at the top.", "reference-twice front.side → "),
        ("| piece | cut length |\n| --- | --- |\n| tie | {tie.cut_width} |", "reference-words tie.cut_width → tie.cut_length"),
        ("| piece | cut length |\n| --- | --- |\n| tie | {front.cut_length} |", "reference-part front.cut_length → tie.cut_length"),
    ],
)  # fmt: skip
def test_reference_to_another_number_is_found(text: str, expected: str, tmp_path: Path) -> None:
    assert expected in said(tmp_path, text)


def test_hem_of_another_card_is_found(tmp_path: Path) -> None:
    text = "Turn the lower edge up by {pocket_hem.turn} and press."
    keys = "hem: [lower]\n"
    found = reviewed(
        tmp_path,
        GARMENT.replace("turn: 1 in, stitch: twin", "turn: 3/4 in, stitch: twin"),
        steps__01_dot_yaml=f"title: Hem\ntext: {text}\n{keys}",
    )
    assert [each.should_be for each in found.findings if each.check == "reference-part"] == ["lower.turn"]


def test_number_of_equal_value_is_never_reported(tmp_path: Path) -> None:
    assert said(tmp_path, "The shoulder of the back is {front.shoulder} long.") == []


BANDS = GARMENT.replace(
    "hems:\n",
    "  front_band: {opening: [front.neckline], ratio: 90%, finished_width: 1 in, fabric: rib, goes_over: nothing}\n"
    "  back_band: {opening: [back.neckline], ratio: 90%, finished_width: 1 in, fabric: rib, goes_over: nothing}\n"
    "hems:\n",
    1,
)


@pytest.mark.parametrize(
    "text",
    [
        "Cut the back band {back_band.cut_length} long, {front_band.cut_width} wide.",
        "Cut the front band {front_band.cut_length} and the back band {back_band.cut_length} long, {front_band.cut_width} wide.",
        "The back band is {back_band.cut_length} long, the back {back.cut_length}.",
    ],
)
def test_longest_name_is_the_one_that_is_spoken_of_and_equal_numbers_are_left_alone(text: str, tmp_path: Path) -> None:
    assert said(tmp_path, text, BANDS) == []


def test_another_band_is_advised_and_never_the_piece_whose_name_it_holds(tmp_path: Path) -> None:
    text = "Cut the back band {front_band.cut_length} long."
    assert said(tmp_path, text, BANDS) == ["reference-part front_band.cut_length → back_band.cut_length"]
