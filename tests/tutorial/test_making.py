"""The order of making: what each step uses and makes, what waits for what, and what need not."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import EXAMPLE, computed, messages

from sitegen.checks import review
from sitegen.reading import ContentFolder
from sitegen.tutorial import (
    Joining,
    Link,
    LongestPath,
    Making,
    Tutorial,
    copies_of,
    making_of,
    seams_of,
    seat_of,
    unjoined,
)

TEE = (
    "seam_allowance: 3/8 in\n"
    "body: {waist: 30 in}\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 60%}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {neckline: 12 in, shoulder: 5 in, armhole: 8 in, side: 14 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 8 in, shoulder: 5 in, armhole: 8 in, side: 14 in}}\n"
    "  sleeve: {cut: 2 on fold, fabric: main, edges: {cap: 16 in, underarm: 17 in, wrist: 9 in}}\n"
    "  pocket:\n"
    "    {cut: 1, fabric: main, sides: {top: top, bottom: side, left: inner, right: outer},\n"
    "     edges: {top: 5 in, side: 5 in, inner: 5 in, outer: 5 in}}\n"
    "  skirt: {cut: 2, fabric: main, sides: {top: waist_elastic}, edges: {waist: 20 in, hem: 20 in}}\n"
    "  yoke: {cut: 1 on fold, fabric: main, sides: {left: end, right: fold}, edges: {end: 5 in}}\n"
    "  tab: {cut: 1, fabric: main, sides: {left: round, right: seam, bottom: round}, edges: {round: 5 in}}\n"
    "  vest: {cut: 2 mirrored, fabric: main, edges: {neckline: 9 in}}\n"
    "bands:\n"
    "  neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: main}\n"
    "  vest_band: {opening: [vest.neckline], ratio: 80%, finished_width: 1 in, fabric: main}\n"
    "  cuffs: {opening: [sleeve.wrist], ratio: 80%, finished_width: 1 in, fabric: main, make: 2}\n"
    "hems:\n"
    "  pocket_hem: {edges: [pocket.top], turn: 1 in}\n"
    "  round_hem: {edges: [front.side, back.side], turn: 1 in}\n"
    "elastics: {waist_elastic: {around: body.waist, ratio: 90%, overlap: 1 in, width: 1 in, room: 1/8 in}}\n"
)
CUT = "title: Cut out\ntext: Cut.\nminutes: 40\ncut: [front, back, sleeve, pocket, neckband, cuffs]\n"
SHOULDERS = "title: Shoulders\ntext: Sew.\nminutes: 10\njoin: [{edges: [front.shoulder, back.shoulder]}]\n"
NECKBAND = "title: Ring\ntext: Sew.\nminutes: 30\njoin: [{edges: [neckband, front.neckline + back.neckline]}]\n"
SLEEVES = "title: Arms\ntext: Sew.\nminutes: 20\njoin: [{edges: [sleeve.cap, front.armhole + back.armhole]}]\n"
SIDES = (
    "title: Long seams\ntext: Sew.\nminutes: 25\n"
    "join: [{edges: [front.side + sleeve.underarm, back.side + sleeve.underarm]}]\n"
)
POCKET = "title: Bag\ntext: Turn the top down.\nminutes: 15\nhem: [pocket_hem]\n"
CUFFS = "title: Ends\ntext: Sew.\nminutes: 30\njoin: [{edges: [cuffs, sleeve.wrist]}]\n"


def tutorial(root: Path, *steps: str) -> Tutorial:
    files = {f"steps__{number:02}_dot_yaml": step for number, step in enumerate(steps, 1)}
    found, findings = computed(root, TEE, **files)
    assert messages(findings) == []
    return found.tutorial


def making(root: Path, *steps: str) -> Making:
    return making_of(tutorial(root, *steps))


def test_step_uses_pieces_and_edges_and_makes_what_it_sews(tmp_path: Path) -> None:
    (cut, neckband) = making(tmp_path, CUT, NECKBAND).works
    assert cut.uses == frozenset()
    assert cut.makes == {"front", "back", "sleeve", "pocket", "neckband", "cuffs"}
    assert neckband.uses == {"neckband", "front.neckline", "back.neckline", "front", "back"}
    assert neckband.makes == {"neckband", "front.neckline", "back.neckline"}


def test_elastic_that_is_put_in_uses_the_edges_of_its_casing(tmp_path: Path) -> None:
    found = tutorial(
        tmp_path,
        "title: Casing\ntext: Sew.\nfinish: [skirt.waist]\n",
        "title: Elastic\ntext: Pull.\ninsert: [waist_elastic]\n",
    )
    assert seat_of(found.elastics["waist_elastic"], found) == ("skirt.waist",)
    made = making_of(found)
    assert made.works[1].uses == {"waist_elastic", "skirt.waist", "skirt"}
    assert made.works[1].makes == {"waist_elastic"}
    assert made.links == (Link(1, 2, ("skirt.waist",)),)


def test_band_waits_for_the_seam_that_makes_its_opening_one(tmp_path: Path) -> None:
    made = making(tmp_path, SHOULDERS, NECKBAND)
    assert made.links == (Link(1, 2, ("back.shoulder", "front.shoulder")),)
    assert made.must_come_before(2) == (1,)


def test_chain_waits_for_the_earliest_seams_that_bring_its_pieces_together(tmp_path: Path) -> None:
    made = making(tmp_path, SHOULDERS, SLEEVES, SIDES, NECKBAND)
    assert made.must_come_before(2) == (1,)
    assert made.must_come_before(3) == (1, 2)
    assert made.must_come_before(4) == (1,), "the neck is whole before the sides are sewn"


def test_hem_over_several_pieces_waits_for_the_seam_between_them(tmp_path: Path) -> None:
    hem = "title: Ends\ntext: Turn.\nhem: [round_hem]\n"
    made = making(tmp_path, SLEEVES, SHOULDERS, hem)
    assert made.works[2].makes == {"round_hem", "front.side", "back.side"}
    assert made.must_come_before(3) == (1,), "the sleeve already joins front and back"


def test_everything_waits_for_the_step_that_cuts_it(tmp_path: Path) -> None:
    made = making(tmp_path, CUT, POCKET, CUFFS)
    assert made.must_come_before(2) == (1,)
    assert made.must_come_before(3) == (1,)
    assert made.can_be_done_together() == ((2, 3),)


def test_steps_on_different_things_can_be_done_together_until_they_are_sewn_to_each_other(tmp_path: Path) -> None:
    made = making(tmp_path, CUT, CUFFS, SHOULDERS, SLEEVES, NECKBAND)
    assert made.can_be_done_together() == ((2, 3),)
    assert made.layers() == ((1,), (2, 3), (4,), (5,))
    assert made.longest_path() == LongestPath((1, 2, 4, 5), 40 + 30 + 20 + 30)


def test_steps_on_one_garment_keep_their_order_without_being_sure_of_it(tmp_path: Path) -> None:
    made = making(tmp_path, CUT, SHOULDERS, NECKBAND, SLEEVES)
    assert made.must_come_before(4) == (1, 2)
    assert Link(3, 4, ()) in made.links
    assert not Link(3, 4, ()).sure
    assert made.can_be_done_together() == ()


def test_step_that_names_a_piece_in_words_keeps_its_place_beside_that_piece(tmp_path: Path) -> None:
    sewn_on = POCKET.replace("Turn the top down.", "Turn the top down and sew it to the sleeve.")
    assert making(tmp_path / "a", CUT, POCKET, CUFFS).can_be_done_together() == ((2, 3),)
    assert making(tmp_path / "b", CUT, sewn_on, CUFFS).can_be_done_together() == ()
    needing = POCKET + "needs: [a cuff]\n"
    assert making(tmp_path / "c", CUT, needing, CUFFS).can_be_done_together() == ()


def test_step_that_does_not_say_what_it_makes_keeps_its_place_among_all(tmp_path: Path) -> None:
    made = making(tmp_path, CUT, CUFFS, "title: Rest\ntext: Drink some water.\nminutes: 5\n", SHOULDERS)
    assert made.can_be_done_together() == ()
    assert made.must_come_before(4) == (1,)
    assert made.must_come_before(3) == ()


def test_other_way_of_a_step_adds_nothing_to_the_order(tmp_path: Path) -> None:
    other = (
        "other_way:\n  when: If you like.\n  text: Sew it at once.\n  hem: [pocket_hem]\n"
        "  join: [{edges: [cuffs, sleeve.wrist]}]\n  finish: [pocket.side]\n"
    )
    plain = making(tmp_path / "a", CUT, SHOULDERS, CUFFS, POCKET)
    assert making(tmp_path / "b", CUT, SHOULDERS + other, CUFFS, POCKET) == plain


def test_time_is_unknown_when_a_step_has_no_minutes(tmp_path: Path) -> None:
    assert making(tmp_path, CUT, SHOULDERS.replace("minutes: 10\n", "")).longest_path() is None


def test_tutorial_without_steps_has_an_empty_order(tmp_path: Path) -> None:
    made = making(tmp_path)
    assert (made.links, made.layers(), made.can_be_done_together()) == ((), (), ())
    assert made.longest_path() == LongestPath((), 0)


def test_parts_hang_together_by_the_seams_between_them(tmp_path: Path) -> None:
    found = tutorial(tmp_path, SHOULDERS, SLEEVES)
    seams = seams_of(found)
    assert [seam.parts for seam in seams] == [("front", "back"), ("sleeve", "front", "back")]
    joining = Joining(seams)
    assert (joining.since("front", "front"), joining.way("front", "front")) == (0, ())
    assert (joining.since("front", "back"), joining.way("front", "back")) == (1, seams[:1])
    assert (joining.since("sleeve", "back"), joining.way("sleeve", "back")) == (2, seams[1:])
    assert (joining.since("sleeve", "pocket"), joining.way("sleeve", "pocket")) == (None, None)


def test_gap_in_a_chain_is_named_by_both_its_edges(tmp_path: Path) -> None:
    found = tutorial(tmp_path, SHOULDERS, SLEEVES, SIDES)
    chain = found.steps[2].joins[0].chains[0]
    seams = seams_of(found)
    gap = unjoined(chain, seams[:1], found)
    assert gap is not None
    assert [name.name for name in gap] == ["front.side", "sleeve.underarm"]
    assert unjoined(chain, seams[:2], found) is None


@pytest.mark.parametrize(
    ("name", "copies"),
    [
        ("neckband", 1),
        ("cuffs", 2),
        ("front.neckline", 1),
        ("sleeve.wrist", 2),
        ("pocket.inner", 1),
        ("pocket.top", None),
        ("yoke.end", None),
        ("tab.round", None),
        ("vest.neckline", None),
        ("front.shoulder", None),
        ("sleeve.underarm", None),
        ("skirt.waist", None),
        ("waist_elastic", None),
        ("hood.edge", None),
    ],
)
def test_copies_are_counted_only_where_they_can_be_known(name: str, copies: int | None, tmp_path: Path) -> None:
    assert copies_of(name, tutorial(tmp_path)) == copies


def test_straps_of_the_example_bag_can_be_made_beside_its_body() -> None:
    found = review(ContentFolder(EXAMPLE, "content_example"))
    (tote,) = [each.tutorial for each in found.tutorials if each.tutorial.key == "two-cloth-tote"]
    titles = {step.number: step.title for step in tote.steps}
    together = {(titles[one], titles[other]) for one, other in making_of(tote).can_be_done_together()}
    assert together == {
        ("Join the base to the upper panel", "Make the straps"),
        ("Make the straps", "Sew the sides and the bottom"),
        ("Make the straps", "Box the corners"),
    }
