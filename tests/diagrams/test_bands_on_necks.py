"""Shoulder seams are drawn and numbered for a band on a neck alone; other bands have quarters."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.diagrams import diagram_of
from sitegen.quantities import System

TOP = (
    "seam_allowance: 1 cm\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 60%, buy: 1 yd}}\n"
    "pieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {EDGE: 12 cm}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {EDGE: 13 cm}}\n"
    "bands: {BAND: {opening: OPENING, ratio: 75%, finished_width: 5 cm, fabric: main, MORE}}\n"
)
FLAT = "[front.EDGE, back.EDGE]"
HALVES = "{front: [front.EDGE], back: [back.EDGE]}"


def tutorial(band: str, edge: str, opening: str = FLAT, more: str = "goes_over: nothing") -> str:
    text = TOP.replace("OPENING", opening).replace("BAND", band).replace("EDGE", edge)
    return text.replace("MORE", more)


@pytest.mark.parametrize(
    ("text", "on_neck"),
    [
        (tutorial("cuff", "ankle"), False),
        (tutorial("cuff", "wrist", HALVES), False),
        (tutorial("waistband", "waist", more="goes_over: foot"), False),
        (tutorial("band", "neckline"), True),
        (tutorial("neckband", "top", HALVES), True),
        (tutorial("band", "top", more="goes_over: head"), True),
    ],
    ids=["ankle", "wrist in halves", "waist", "neckline", "neckband", "over the head"],
)
def test_only_a_band_on_a_neck_has_shoulders(text: str, on_neck: bool, tmp_path: Path) -> None:
    found, findings = computed(tmp_path, text)
    assert messages(findings) == []
    (key,) = found.tutorial.bands
    drawn = diagram_of(key, found, 0, "p", System.CENTIMETRES)
    assert drawn is not None
    told = f"{drawn.svg}"
    assert ("shoulder" in told, "half back" in told, "centre front" in told) == (on_neck, on_neck, on_neck)
    assert (f"{key}.quarter_from_shoulder" in found.names()) is on_neck
    assert "quarter" in told


def test_written_quarter_from_a_shoulder_that_is_none_is_doubted(tmp_path: Path) -> None:
    text = tutorial("cuff", "ankle", more="goes_over: nothing, quarter_from_shoulder: 2.5 mm")
    found = [each.message for each in reviewed(tmp_path, text).findings if each.check == "claim-unheld"]
    assert found == [
        "The cuff quarter from shoulder cannot be worked out, so nothing is held against it. See that the edges of its"
        " opening have a length; only a band on a neck, with a front and a back, has a quarter from the shoulder, or take"
        " it out."
    ]
