"""The keys of a step that tell its making: what is cut, stabilised, put in, enclosed, and the other way of it."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

TOP = (
    "seam_allowance: 3/8 in\nbody: {waist: 30 in}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 60%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {side: 14 in, neckline: 20 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {side: BACK}}\n"
    "bands: {neckband: {opening: [front.neckline], ratio: 80%, finished_width: 1 in, fabric: main}}\n"
    "hems: {lower: {edges: [front.side], turn: 1 in}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 1 in, width: 1 in, room: 1/8 in}}\n"
)
TEXT = TOP.replace("BACK", "14 in")
STEP = "title: Sew\ntext: Sew.\n"
SIDES = "join: [{edges: [front.side, back.side], stitch: zigzag, enclosed: in a French seam}]\n"
OTHER = (
    "other_way:\n"
    "  when: If you have an overlock machine.\n"
    "  text: Sew {front.side} in one go.\n"
    "  join: [{edges: [front.side, back.side], stitch: overlock}]\n"
    "  hem: [lower]\n"
    "  finish: [front.side]\n"
)


def test_keys_are_read_with_their_places(tmp_path: Path) -> None:
    step = STEP + "cut: [front, neckband, ring]\nstabilise: [front.side]\ninsert: [ring]\n" + SIDES + OTHER
    found, findings = computed(tmp_path, TEXT, steps__01_dot_yaml=step)
    assert messages(findings) == []
    (one,) = found.tutorial.steps
    assert [name.name for name in one.cuts] == ["front", "neckband", "ring"]
    assert [(name.name, name.place.line, name.place.column) for name in one.stabilises] == [("front.side", 4, 13)]
    assert [name.name for name in one.inserts] == ["ring"]
    assert one.joins[0].enclosed is not None
    assert one.joins[0].enclosed.text == "in a French seam"
    way = one.other_way
    assert way is not None
    assert (way.when and way.when.text, way.text and way.text.text) == (
        "If you have an overlock machine.",
        "Sew {front.side} in one go.",
    )
    assert [join.stitch.text for join in way.joins if join.stitch] == ["overlock"]
    assert [name.name for name in way.hems] == ["lower"]
    assert [[name.name for name in chain] for chain in way.finishes] == [["front.side"]]
    assert [join.stitch.text for join in one.every_join() if join.stitch] == ["zigzag", "overlock"]


@pytest.mark.parametrize(
    ("keys", "expected"),
    [
        ("cut: [frunt]\n", ["3:7 unknown-reference: There is no piece, band, elastic, binding, circle or trim to cut “frunt”. Nearest: front."]),
        ("stabilise: [front.sid]\n", ["3:13 unknown-reference: There is no edge “front.sid”. Nearest: front.side, front.neckline."]),
        ("stabilise: [ring]\n", ["3:13 unknown-reference: There is no edge “ring”. Known are: back.side, front.neckline, front.side."]),
        ("insert: [rng]\n", ["3:10 unknown-reference: There is no elastic or trim “rng”. Nearest: ring."]),
        (OTHER.replace("back.side", "bakc.side"), ["6:31 unknown-reference: There is no edge “bakc.side”. Nearest: back.side."]),
        (OTHER.replace("[lower]", "[lowr]"), ["7:9 unknown-reference: There is no hem “lowr”. Nearest: lower."]),
        (OTHER.replace("finish: [front", "finish: [fornt"), ["8:12 unknown-reference: There is no edge “fornt.side”. Nearest: front.side."]),
        (OTHER.replace("{front.side}", "{front.sde}"), ["5:14 unknown-reference: There is no number “front.sde”. Nearest: front.side, front.neckline."]),
        (OTHER + "  press: down\n", ["9:3 unknown-key: Other_way of step 1 has no key “press”. Known are: finish, hem, join, text, when."]),
        ("other_way: sew it flat\n", ["3:12 wrong-kind: Expected keys with values, found “sew it flat”."
         " Example: other_way: {when: If you have an overlock machine., text: Sew the side with it.}"]),
        ("other_way: {text: Sew it flat.}\n", ["3:12 key-missing: Other_way of step 1 lacks when."
         " Example: other_way: {when: If you have an overlock machine., text: Sew the side with it.}"]),
        *((SIDES.replace("in a French seam", said), [f"3:67 wrong-kind: Expected in what the raw edges are hidden, or no such key where"
           f" they are not, found “{said}”. Example: enclosed: inside the lining"]) for said in ("yes", "no", "true", "Off")),
        ("join: [{edges: [front.side, back.side], enclosd: yes}]\n", ["3:41 unknown-key: Join of step 1 has no key “enclosd”. Did you mean enclosed?"]),
    ],
)  # fmt: skip
def test_fault_in_a_new_key_is_reported_where_it_stands(keys: str, expected: list[str], tmp_path: Path) -> None:
    assert messages(computed(tmp_path, TEXT, steps__01_dot_yaml=STEP + keys)[1]) == expected


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("Sew {front.side} in one go.", "Take 5/8 in (1 cm).", "unit-pair"),
        ("overlock machine.", "overlock machine, 5/8 in (1 cm) wide.", "unit-pair"),
        ("stitch: overlock", "stitch: straight", "stretch-stitch"),
        ("stitch: overlock", "stitch: overlock, seam_allowance: 5/8 in", "seam-allowance"),
        ("Sew {front.side} in one go.", "Press it with the iron.", "caution-missing"),
    ],
)
def test_other_way_is_checked_like_the_first(old: str, new: str, expected: str, tmp_path: Path) -> None:
    before = reviewed(tmp_path / "a", TEXT, steps__01_dot_yaml=STEP + SIDES + OTHER).findings
    after = reviewed(tmp_path / "b", TEXT, steps__01_dot_yaml=STEP + SIDES + OTHER.replace(old, new)).findings
    assert expected not in {each.check for each in before}
    assert expected in {each.check for each in after}


def test_seam_of_the_other_way_must_match_as_well(tmp_path: Path) -> None:
    found = reviewed(tmp_path, TOP.replace("BACK", "16 in"), steps__01_dot_yaml=STEP + OTHER).findings
    assert [each.place.line for each in found if each.check == "seam-match"] == [6]


def test_mate_in_the_other_way_must_be_lengthened_too(tmp_path: Path) -> None:
    text = TEXT.replace("front: {", "front: {length: 20 in, ") + (
        "changes: {longer: {piece: front, line_at: 2/3 from the top, lengthen_by: 1 in, crosses: [side]}}\n"
    )
    found = reviewed(tmp_path, text, steps__01_dot_yaml=STEP + OTHER).findings
    assert "mate-unchanged" in {each.check for each in found}
