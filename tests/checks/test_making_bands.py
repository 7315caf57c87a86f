"""Bands that are sewn elsewhere than to their opening, and hems under them: what is found, and what is let pass."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import messages, reviewed

from sitegen.findings import Severity

TOP = (
    "seam_allowance: 1/4 in\n"
    "fabrics: {rib: {name: rib, structure: knit, stretch_across: 100%, buy: 1 yd}}\n"
    "pieces:\n"
    "  front: {cut: 1, fabric: rib, edges: {neckline: 9 in, shoulder: 4 in, side: 15 in, hem: 18 in}}\n"
    "  back: {cut: 1, fabric: rib, edges: {neckline: 9 in, shoulder: 4 in, side: 15 in, hem: 18 in}}\n"
    "  lining: {cut: 1, fabric: rib, edges: {neckline: 18 in, wrist: 8 in}}\n"
    "bands:\n"
    "  collar: {opening: [front.neckline, back.neckline], ratio: 85%, finished_width: 1 in, fabric: rib}\n"
    "  hem_band: {opening: [front.hem, back.hem], ratio: 90%, finished_width: 2 in, fabric: rib}\n"
    "hems: {bottom: {edges: [front.hem, back.hem], turn: 1 in}}\n"
)
KINDS = ("band-elsewhere", "hemmed-under-band", "band-never-sewn", "edge-never-sewn")


def found(root: Path, *seams: str, text: str = TOP, more: str = "") -> list[str]:
    """What is said of the bands when these seams are sewn, one in each step."""
    steps = {
        f"steps__0{number}_dot_yaml": f"title: Step {number}\ntext: Sew.\njoin: [{{edges: [{seam}]}}]\n"
        for number, seam in enumerate(seams, 1)
    }
    if more:
        steps["steps__09_dot_yaml"] = f"title: Last\ntext: Sew.\n{more}\n"
    findings = reviewed(root, text, **steps).findings
    return messages(tuple(each for each in findings if each.check in KINDS))


SHOULDERS = "front.shoulder, back.shoulder"
SIDES = "front.side, back.side"
COLLAR = "collar, front.neckline + back.neckline"
HEM_BAND = "hem_band, front.hem + back.hem"


def test_band_on_another_edge_is_wrong_and_its_opening_is_never_sewn(tmp_path: Path) -> None:
    assert found(tmp_path, SHOULDERS, SIDES, "collar, front.side + back.side", HEM_BAND) == [
        "3:25 band-elsewhere: The collar is sewn to front.side and back.side here, but its opening is front.neckline and"
        " back.neckline. One of the two is another edge than is meant.",
        "7:50 edge-never-sewn: front.neckline is in no seam, band, hem or finish of any step, but it is in the opening of"
        " the collar. Add it to the step that sews it.",
        "8:49 edge-never-sewn: back.neckline is in no seam, band, hem or finish of any step, but it is in the opening of"
        " the collar. Add it to the step that sews it.",
    ]


def test_band_that_takes_the_opening_of_another_is_wrong_although_it_is_sewn_to_its_own(tmp_path: Path) -> None:
    text = found(tmp_path, SHOULDERS, SIDES, COLLAR, "collar, front.hem + back.hem", HEM_BAND)
    assert [each.partition(":")[0] + each.partition(" ")[2][:15] for each in text] == ["3band-elsewhere:"]


def test_second_edge_of_another_length_is_doubted(tmp_path: Path) -> None:
    seams = (SHOULDERS, SIDES, COLLAR, "collar, lining.wrist", HEM_BAND)
    steps = {
        f"steps__0{number}_dot_yaml": f"title: Step {number}\ntext: Sew.\njoin: [{{edges: [{seam}]}}]\n"
        for number, seam in enumerate(seams, 1)
    }
    (one,) = (each for each in reviewed(tmp_path, TOP, **steps).findings if each.check == "band-elsewhere")
    assert one.severity is Severity.DOUBTFUL


@pytest.mark.parametrize(
    "seams",
    [
        (COLLAR,),
        ("collar, front.neckline", "collar, back.neckline"),
        ("collar, collar", COLLAR),
        ("collar, hem_band", COLLAR),
        ("collar, front.neckline + back.neckline, lining.neckline",),
        (COLLAR, "collar, lining.neckline"),
        ("lining.neckline, front.neckline + back.neckline", "collar, lining.neckline"),
        ("collar, front.neckline + lining.wrist", "collar, back.neckline"),
    ],
    ids=["whole", "parts", "ring", "two bands", "with lining", "then lining", "over lining", "seam and edge"],
)
def test_band_that_is_sewn_to_its_opening_in_any_way_is_let_pass(seams: tuple[str, ...], tmp_path: Path) -> None:
    assert found(tmp_path, SHOULDERS, SIDES, *seams, HEM_BAND, more="finish: [lining.neckline, lining.wrist]") == []


def test_band_that_is_only_sewn_to_itself_is_never_sewn_on(tmp_path: Path) -> None:
    text = found(tmp_path, SHOULDERS, SIDES, "collar, collar", HEM_BAND)
    assert text == [
        "11:11 band-never-sewn: No step sews on the collar. Add to its step join: [{edges: [collar, front.neckline +"
        " back.neckline]}]"
    ]


def test_half_of_an_opening_that_no_step_sews_is_doubted(tmp_path: Path) -> None:
    text = found(tmp_path, SHOULDERS, SIDES, "collar, front.neckline", HEM_BAND)
    assert [each.partition(":")[2].partition(" ")[2][:44] for each in text] == [
        "edge-never-sewn: back.neckline is in no seam"
    ]


def test_opening_that_is_measured_too_is_still_sewn(tmp_path: Path) -> None:
    girth = TOP + "girths: {neck: {edges: [front.neckline, back.neckline]}}\n"
    assert len(found(tmp_path, SHOULDERS, SIDES, "collar, front.side", HEM_BAND, text=girth)) == 3


def test_edge_that_is_hemmed_after_a_band_was_sewn_to_it_is_wrong(tmp_path: Path) -> None:
    assert found(tmp_path, SHOULDERS, SIDES, COLLAR, HEM_BAND, more="hem: bottom") == [
        "3:6 hemmed-under-band: This hem turns up front.hem, but the hem band is sewn to that edge in the step “Step 4”."
        " If the student has the choice, write it as views."
    ]


def test_hem_as_the_other_way_of_a_step_is_let_pass(tmp_path: Path) -> None:
    more = "other_way: {text: Turn it., when: Without a band., hem: bottom}"
    assert found(tmp_path, SHOULDERS, SIDES, COLLAR, HEM_BAND, more=more) == []
