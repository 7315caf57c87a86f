"""What the checks of the making say, word for word, and where they stay silent because the author may be right."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

KNIT = "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 60%}}\n"
WOVEN = "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven}}\n"
TEE = (
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {neckline: 12 in, shoulder: 5 in, side: 14 in, hem: 20 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 8 in, shoulder: 5 in, side: 14 in, hem: 20 in}}\n"
    "bands: {neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: main}}\n"
    "hems: {lower: {edges: [front.hem, back.hem], turn: 1 in}}\n"
)
SHOULDERS = (
    "title: Sew the shoulders\ntext: Sew.\n"
    "join: [{edges: [front.shoulder, back.shoulder], stitch: zigzag, press: to the back}]\n"
)
SIDES = "title: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: zigzag}]\n"
NECKBAND = "title: Sew on the neckband\ntext: Sew.\njoin: [{edges: [neckband, front.neckline + back.neckline]}]\n"
HEM = "title: Hem\ntext: Turn and sew.\nhem: [lower]\n"
ALL = (SHOULDERS, NECKBAND, SIDES, HEM)
MAKING = {
    "chain-unjoined", "used-before-cut", "stabilise-late", "insert-before-casing", "finished-late", "sewn-twice",
    "band-never-sewn", "hem-never-turned", "elastic-never-inserted", "edge-never-sewn", "never-cut", "raw-edge",
    "minutes-missing", "press-missing",
}  # fmt: skip


def found(root: Path, text: str, *steps: str) -> list[str]:
    """What the checks of the making say: file, place, severity, check and message of each finding."""
    files = {f"steps__{number:02}_dot_yaml": step for number, step in enumerate(steps, 1)}
    findings = [each for each in reviewed(root, text, **files).findings if each.check in MAKING]
    return [
        f"{each.place.file.removeprefix('folder/tutorials/tee/')}:{each.place.line}:{each.place.column}"
        f" {each.severity.value} {each.check}: {each.message}"
        for each in findings
    ]


def test_garment_made_in_order_has_no_finding(tmp_path: Path) -> None:
    assert found(tmp_path, KNIT + TEE, *ALL) == []


# -- edges sewn as one ----------------------------------------------------------------------------------------


def test_neckline_sewn_before_any_shoulder_is_reported(tmp_path: Path) -> None:
    assert found(tmp_path, KNIT + TEE, NECKBAND, SHOULDERS, SIDES, HEM) == [
        "steps/01.yaml:3:44 wrong chain-unjoined: front.neckline and back.neckline are sewn here as one edge, but front"
        " and back are joined only in the step “Sew the shoulders”. That step must come before this one."
    ]


def test_seam_that_comes_too_late_in_its_own_step_is_to_be_put_first(tmp_path: Path) -> None:
    both = (
        "title: Neck\ntext: Sew.\njoin:\n- {edges: [neckband, front.neckline + back.neckline]}\n"
        "- {edges: [front.shoulder, back.shoulder]}\n"
    )
    (message,) = found(tmp_path, KNIT + TEE, both, SIDES, HEM)
    assert message == (
        "steps/01.yaml:4:39 wrong chain-unjoined: front.neckline and back.neckline are sewn here as one edge, but front"
        " and back are joined only after that. Put that join first."
    )


def test_pieces_that_no_step_joins_are_doubtful_because_a_join_may_only_be_unsaid(tmp_path: Path) -> None:
    text = KNIT + TEE.replace("hems: {lower: {edges: [front.hem, back.hem], turn: 1 in}}\n", "")
    chained = [each for each in found(tmp_path, text, NECKBAND) if "chain-unjoined" in each]
    assert chained == [
        "steps/01.yaml:3:44 doubtful chain-unjoined: front.neckline and back.neckline are sewn here as one edge, but no"
        " step joins front and back. Add the join to the step that sews it."
    ]


def test_seams_of_another_way_are_checked_like_those_of_the_first(tmp_path: Path) -> None:
    other = (
        "other_way:\n  when: If you like.\n  text: Sew.\n"
        "  join: [{edges: [neckband, front.neckline + back.neckline]}]\n"
    )
    (message,) = found(tmp_path, KNIT + TEE, SHOULDERS + other, NECKBAND, SIDES, HEM)
    assert message.startswith("steps/01.yaml:7:46 wrong chain-unjoined: front.neckline and back.neckline")
    flat = other.replace("join: [", "join: [{edges: [front.shoulder, back.shoulder]}, ")
    assert found(tmp_path, KNIT + TEE, SHOULDERS + flat, NECKBAND, SIDES, HEM) == []


def test_hem_over_pieces_that_are_joined_later_is_doubtful(tmp_path: Path) -> None:
    text = KNIT + TEE.replace("neckline: 12 in, shoulder: 5 in, ", "").replace("neckline: 8 in, shoulder: 5 in, ", "")
    text = "\n".join(line for line in text.split("\n") if not line.startswith("bands"))
    assert found(tmp_path, text, HEM, SIDES) == [
        "steps/01.yaml:3:7 doubtful chain-unjoined: This hem runs over front.hem and back.hem, which are joined only in"
        " the step “Sew the sides”. Turn it after that step, or give each piece a hem of its own."
    ]


def test_hem_of_parts_that_are_never_joined_is_left_alone(tmp_path: Path) -> None:
    text = KNIT + (
        "pieces:\n"
        "  left_pocket: {cut: 1, fabric: main, edges: {top: 5 in}}\n"
        "  right_pocket: {cut: 1, fabric: main, edges: {top: 5 in}}\n"
        "hems: {pockets: {edges: [left_pocket.top, right_pocket.top], turn: 1 in}}\n"
    )
    assert found(tmp_path, text, HEM.replace("lower", "pockets")) == []


# -- too early, too late --------------------------------------------------------------------------------------


def test_band_that_is_cut_after_it_was_sewn_is_reported_once(tmp_path: Path) -> None:
    cut = "title: Cut the band\ntext: Cut.\ncut: [neckband]\n"
    messages = found(tmp_path, KNIT + TEE, SHOULDERS, NECKBAND, cut, SIDES, HEM)
    assert [each for each in messages if "used-before-cut" in each] == [
        "steps/02.yaml:3:17 wrong used-before-cut: The neckband is used here but cut only in the step “Cut the band”."
    ]


def test_pieces_that_are_sewn_and_missing_from_every_cut_are_named(tmp_path: Path) -> None:
    cut = "title: Cut\ntext: Cut.\ncut: [front, neckband]\n"
    assert found(tmp_path, KNIT + TEE, cut, *ALL) == [
        "tutorial.yaml:8:9 doubtful never-cut: No step cuts the back. Add it to a step, such as cut: [back]"
    ]


def test_nothing_is_said_of_cutting_where_no_step_uses_the_key(tmp_path: Path) -> None:
    assert not [each for each in found(tmp_path, KNIT + TEE, *ALL) if "cut" in each]


def test_tape_that_comes_after_the_seam_is_reported(tmp_path: Path) -> None:
    tape = "title: Tape\ntext: Sew a tape to it.\nstabilise: [front.shoulder]\n"
    assert found(tmp_path / "a", KNIT + TEE, SHOULDERS, tape, NECKBAND, SIDES, HEM) == [
        "steps/02.yaml:3:13 wrong stabilise-late: front.shoulder is stabilised here, but it was sewn already in the"
        " step “Sew the shoulders”. Stabilise it before that. A tape that covers a sewn seam is written finish:"
        " [front.shoulder]."
    ]
    assert found(tmp_path / "b", KNIT + TEE, tape, *ALL) == []
    one, other = (
        SHOULDERS.replace("the shoulders", f"the {which} shoulder") + "stabilise: [front.shoulder]\n"
        for which in ("right", "left")
    )
    assert found(tmp_path / "c", KNIT + TEE, one, NECKBAND, other, SIDES, HEM) == []


def test_straight_stitch_in_a_knit_is_fine_on_an_edge_that_a_step_stabilises(tmp_path: Path) -> None:
    tape = "title: Tape\ntext: Sew a tape to it.\nstabilise: [front.shoulder]\n"
    straight = SHOULDERS.replace("zigzag", "straight")
    with_tape = reviewed(tmp_path / "a", KNIT + TEE, steps__01_dot_yaml=tape, steps__02_dot_yaml=straight)
    without = reviewed(tmp_path / "b", KNIT + TEE, steps__02_dot_yaml=straight)
    assert "stretch-stitch" not in {each.check for each in with_tape.findings}
    assert "stretch-stitch" in {each.check for each in without.findings}


SKIRT = (
    "body: {waist: 30 in}\n"
    "pieces: {skirt: {cut: 1, fabric: main, sides: {top: ring}, edges: {waist: 36 in, seam: 20 in}}}\n"
    "elastics: {ring: {around: body.waist, ratio: 90%, overlap: 1 in, width: 1 in, room: 1/8 in}}\n"
)
SEAM = "title: Seam\ntext: Sew.\njoin: [{edges: [skirt.seam, skirt.seam]}]\n"
CASING = "title: Make the casing\ntext: Sew.\nfinish: [skirt.waist]\n"
ELASTIC = "title: Put the elastic in\ntext: Pull.\ninsert: [ring]\n"


def test_elastic_before_its_casing_is_reported(tmp_path: Path) -> None:
    assert found(tmp_path, KNIT + SKIRT, SEAM, ELASTIC, CASING) == [
        "steps/02.yaml:3:10 wrong insert-before-casing: The ring is put in here, but its casing at skirt.waist is made"
        " only in the step “Make the casing”."
    ]


def test_nothing_is_said_of_a_casing_that_the_author_does_not_place(tmp_path: Path) -> None:
    text = KNIT + SKIRT.replace("sides: {top: ring}, ", "")
    assert found(tmp_path, text, SEAM, ELASTIC, CASING) == []


def test_elastic_that_is_sewn_on_counts_as_put_in(tmp_path: Path) -> None:
    sewn_on = "title: Elastic\ntext: Sew.\njoin: [{edges: [ring, skirt.waist], stretched: true}]\n"
    assert found(tmp_path / "a", KNIT + SKIRT, SEAM, sewn_on) == []
    assert found(tmp_path / "b", KNIT + SKIRT, SEAM, CASING) == [
        "tutorial.yaml:8:18 doubtful elastic-never-inserted: No step puts in the ring. Add to its step insert: [ring]"
    ]


# -- twice and never ------------------------------------------------------------------------------------------


def test_band_that_two_steps_sew_on_is_wrong_since_there_is_one_neck(tmp_path: Path) -> None:
    again = NECKBAND.replace("Sew on the neckband", "Sew the hem")
    assert found(tmp_path, KNIT + TEE, *ALL, again) == [
        "steps/05.yaml:3:27 wrong sewn-twice: front.neckline and neckband are sewn together here, and were already in"
        " the step “Sew on the neckband”."
    ]


def test_side_that_two_steps_sew_is_doubtful_since_there_may_be_two(tmp_path: Path) -> None:
    again = SIDES.replace("Sew the sides", "Sew the sleeves")
    assert found(tmp_path, KNIT + TEE, *ALL, again) == [
        "steps/05.yaml:3:29 doubtful sewn-twice: back.side and front.side are sewn together here, and were already in"
        " the step “Sew the sides”. If this is the other side, say so in the text."
    ]


def test_seam_that_is_sewn_again_inside_a_longer_one_is_reported(tmp_path: Path) -> None:
    longer = (
        "title: Sew it all\ntext: Sew.\n"
        "join: [{edges: [front.side + front.hem, back.side + back.hem], stitch: zigzag}]\n"
    )
    assert [each.partition(":")[0] for each in found(tmp_path, KNIT + TEE, *ALL, longer)] == ["steps/05.yaml"]


@pytest.mark.parametrize(
    "again",
    [
        SHOULDERS.replace("the shoulders", "the other shoulder"),
        SHOULDERS.replace("text: Sew.", "text: Now the left shoulder seam."),
        SHOULDERS.replace("text: Sew.", "text: Sew a second row beside the first."),
        SHOULDERS.replace("text: Sew.", "text: Close the gap."),
        SHOULDERS.replace("stitch: zigzag", "stitch: topstitch"),
        SHOULDERS.replace("stitch: zigzag", "stitch: overlock"),
        SHOULDERS.replace("stitch: zigzag", "stitch: zigzag, enclosed: in a French seam"),
    ],
)
def test_seam_that_is_sewn_again_on_purpose_is_left_alone(again: str, tmp_path: Path) -> None:
    assert found(tmp_path, KNIT + TEE, *ALL, again) == []


def test_right_sides_together_does_not_mean_the_right_hand_side(tmp_path: Path) -> None:
    again = SIDES.replace("text: Sew.", "text: Lay the right sides together and sew.")
    (message,) = found(tmp_path, KNIT + TEE, *ALL, again)
    assert "sewn-twice" in message


def test_binding_is_sewn_down_a_second_time_without_a_finding(tmp_path: Path) -> None:
    text = WOVEN + (
        "pieces: {bib: {cut: 1, fabric: main, edges: {round: 30 in}}}\n"
        "bindings: {edging: {edges: [bib.round], kind: single fold, finished_width: 3/8 in, overlap: 1 in}}\n"
    )
    first = "title: Sew on the binding\ntext: Sew.\njoin: [{edges: [edging, bib.round], stitch: straight}]\n"
    over = first.replace("Sew on the binding", "Fold it over")
    assert found(tmp_path, text, first, over) == []


def test_what_no_step_sews_is_named_with_what_to_add(tmp_path: Path) -> None:
    assert found(tmp_path, KNIT + TEE, SHOULDERS) == [
        "tutorial.yaml:7:88 doubtful edge-never-sewn: front.side is in no seam, band, hem or finish of any step. Add it"
        " to the step that sews it. If it is only a line to measure, put it into girths.",
        "tutorial.yaml:8:86 doubtful edge-never-sewn: back.side is in no seam, band, hem or finish of any step. Add it"
        " to the step that sews it. If it is only a line to measure, put it into girths.",
        "tutorial.yaml:9:19 doubtful band-never-sewn: No step sews on the neckband. Add to its step"
        " join: [{edges: [neckband, front.neckline + back.neckline]}]",
        "tutorial.yaml:10:15 doubtful hem-never-turned: No step turns the hem lower. Add to its step hem: [lower]",
    ]


def test_nothing_is_missed_in_a_tutorial_that_does_not_say_what_it_sews(tmp_path: Path) -> None:
    told = "title: Sew it\ntext: Sew all seams.\n"
    assert found(tmp_path / "a", KNIT + TEE, told) == []
    assert found(tmp_path / "b", KNIT + SKIRT, told) == []


def test_binding_is_sewn_where_its_edge_is_finished(tmp_path: Path) -> None:
    text = (
        KNIT + TEE + "bindings: {tape: {edges: [back.hem], kind: single fold, finished_width: 3/8 in, overlap: 1 in}}\n"
    )
    assert found(tmp_path / "a", text, *ALL) == [
        "tutorial.yaml:11:18 doubtful band-never-sewn: No step sews on the tape. Add to its step"
        " join: [{edges: [tape, back.hem]}]"
    ]
    assert found(tmp_path / "b", text, *ALL, "title: Bind\ntext: Bind it.\nfinish: [back.hem]\n") == []


def test_piece_that_is_neither_cut_nor_sewn_is_left_alone(tmp_path: Path) -> None:
    text = KNIT + TEE.replace("bands:", "  label: {cut: 1, fabric: main}\nbands:")
    assert found(tmp_path, text, "title: Cut\ntext: Cut.\ncut: [front, back, neckband]\n", *ALL) == []


def test_lines_that_are_only_measured_are_not_missed(tmp_path: Path) -> None:
    text = KNIT + TEE.replace("hem: 20 in}", "hem: 20 in, chest: 20 in}")
    assert len(found(tmp_path / "a", text, *ALL)) == 2
    girth = "girths: {bust: {edges: [front.chest, back.chest]}}\n"
    assert found(tmp_path / "b", text + girth, *ALL) == []
    marks = "spacings: {buttons: {along: [front.chest, back.chest], marks: 5}}\n"
    assert found(tmp_path / "c", text + marks, *ALL) == []


def test_band_of_another_way_is_not_missed(tmp_path: Path) -> None:
    other = (
        "other_way:\n  when: If you like.\n  text: Sew.\n"
        "  join: [{edges: [neckband, front.neckline + back.neckline]}]\n"
    )
    assert found(tmp_path, KNIT + TEE, SHOULDERS, SIDES + other, HEM) == []


# -- raw edges, pressing, minutes -----------------------------------------------------------------------------

BAG = (
    "pieces:\n"
    "  upper: {cut: 2, fabric: main, edges: {lower: 15 in, side: 10 in}}\n"
    "  base: {cut: 2, fabric: main, edges: {top: 15 in, side: 4 in}}\n"
)
ACROSS = "title: Join the base\ntext: Sew.\njoin: [{edges: [upper.lower, base.top], stitch: straight}]\n"
DOWN = (
    "title: Sew the sides\ntext: Press first.\n"
    "join: [{edges: [upper.side + base.side, upper.side + base.side], stitch: straight}]\n"
)
FINISHED = (ACROSS + "finish: [upper.lower, base.top]\n", DOWN + "finish: [upper.side, base.side]\n")


def test_raw_edge_of_one_seam_is_named_with_two_ways_out(tmp_path: Path) -> None:
    assert found(tmp_path, WOVEN + BAG, ACROSS, FINISHED[1]) == [
        "steps/01.yaml:3:17 doubtful raw-edge: upper.lower and base.top are woven and stay raw. Add to a step finish:"
        " [upper.lower, base.top], or say in the join how the edges are hidden, such as enclosed: in a French seam."
    ]


def test_garment_without_any_finished_edge_is_told_once(tmp_path: Path) -> None:
    assert found(tmp_path, WOVEN + BAG, ACROSS, DOWN) == [
        "steps/01.yaml:3:17 doubtful raw-edge: upper.lower and base.top are woven and stay raw. Add to a step finish:"
        " [upper.lower, base.top], or say in the join how the edges are hidden, such as enclosed: in a French seam. No"
        " step finishes an edge; 1 more seam is like this."
    ]


@pytest.mark.parametrize(
    "text",
    [
        KNIT + BAG,
        WOVEN.replace("linen", "wool felt") + BAG,
        WOVEN + BAG + "  lining: {cut: 2, fabric: main}\n",
        WOVEN + BAG.replace("upper: {", "upper: {called: waistband, "),
    ],
)
def test_nothing_is_said_where_an_edge_does_not_fray_or_may_be_hidden(text: str, tmp_path: Path) -> None:
    assert found(tmp_path, text, ACROSS, FINISHED[1]) == []


@pytest.mark.parametrize(
    "seam",
    [
        ACROSS.replace("stitch: straight", "stitch: overlock"),
        ACROSS.replace("stitch: straight", "stitch: straight, enclosed: in a flat-felled seam"),
        ACROSS.replace("stitch: straight", "stitch: basting"),
    ],
)
def test_seam_that_hides_or_covers_its_edges_is_not_raw(seam: str, tmp_path: Path) -> None:
    assert found(tmp_path, WOVEN + BAG, seam, FINISHED[1]) == []


def test_finish_behind_a_double_hem_is_doubtful(tmp_path: Path) -> None:
    text = WOVEN + (
        "pieces: {pocket: {cut: 1, fabric: main, edges: {top: 6 in}}}\n"
        "hems: {pocket_hem: {edges: [pocket.top], turn: 1 in, fold_under: 1/4 in}}\n"
    )
    hem, late = HEM.replace("lower", "pocket_hem"), "title: Finish\ntext: Zigzag.\nfinish: [pocket.top]\n"
    assert found(tmp_path / "a", text, hem, late) == [
        "steps/02.yaml:3:10 doubtful finished-late: pocket.top is finished here, but its raw edge was hidden already in"
        " the step “Hem”. Finish it before that, or leave it out."
    ]
    single = text.replace(", fold_under: 1/4 in", "")
    assert found(tmp_path / "b", single, hem, late) == []


def test_finish_behind_an_enclosed_seam_is_doubtful(tmp_path: Path) -> None:
    french = ACROSS.replace("stitch: straight", "stitch: straight, enclosed: in a French seam")
    late = "title: Finish\ntext: Zigzag and press.\nfinish: [upper.lower]\n"
    assert found(tmp_path, WOVEN + BAG, french, late, FINISHED[1]) == [
        "steps/02.yaml:3:10 doubtful finished-late: upper.lower is finished here, but its raw edge was hidden already in"
        " the step “Join the base”. Finish it before that, or leave it out."
    ]


def test_seam_that_is_crossed_before_it_is_pressed_is_a_hint(tmp_path: Path) -> None:
    down = FINISHED[1].replace("Press first.", "Sew.")
    assert found(tmp_path / "a", WOVEN + BAG, FINISHED[0], down) == [
        "steps/01.yaml:3:8 hint press-missing: In the step “Sew the sides” another seam is sewn across this one. Say"
        " how it is pressed before that, such as press: to one side"
    ]
    assert found(tmp_path / "b", WOVEN + BAG, *FINISHED) == []
    more = down.replace("Sew the sides", "Sew the bottom").replace("stitch: straight", "stitch: topstitch")
    assert len(found(tmp_path / "d", WOVEN + BAG, FINISHED[0], down, more)) == 1
    pressed = FINISHED[0].replace("stitch: straight", "stitch: straight, press: down")
    assert found(tmp_path / "e", WOVEN + BAG, pressed, down) == []
    between = "title: Iron\ntext: Press the seam.\n"
    assert found(tmp_path / "c", WOVEN + BAG, FINISHED[0], between, down) == []


def test_step_without_minutes_beside_others_with_them_is_a_hint(tmp_path: Path) -> None:
    timed = FINISHED[0] + "minutes: 30\n"
    assert found(tmp_path / "a", WOVEN + BAG, timed, FINISHED[1]) == [
        "steps/02.yaml:1:1 hint minutes-missing: “Sew the sides” has no minutes, so the time of the whole tutorial"
        " comes out too short. Example: minutes: 30"
    ]
    assert found(tmp_path / "b", WOVEN + BAG, *FINISHED) == []
    unread = FINISHED[1] + "minutes: half an hour\n"
    assert not [each for each in found(tmp_path / "c", WOVEN + BAG, timed, unread) if "minutes-missing" in each]
