"""The other way of a step from the author's file to the page, and how hidden edges are told."""

from __future__ import annotations

from pathlib import Path

from bs4 import BeautifulSoup
from content import folder

from sitegen.publishing import publish

TEXT = (
    "seam_allowance: 3/8 in\n"
    "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, width: 60 in, buy: 1 yd}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, edges: {side: 14 in}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {side: 14 in}}\n"
)
STEP = (
    "title: Sew the sides\ntext: Sew both sides.\n"
    "join: [{edges: [front.side, back.side], stitch: zigzag, enclosed: in a French seam}]\n"
    "other_way:\n  when: If you have an *overlock machine*.\n  text: Sew {front.side} in one go.\n"
    "  join: [{edges: [front.side, back.side], stitch: overlock, press: to the back}]\n"
)


def test_other_way_is_published_with_its_numbers_and_its_seam(tmp_path: Path) -> None:
    content = folder(tmp_path / "content", TEXT, steps__01_dot_yaml=STEP)
    outcome = publish(content, tmp_path / "site", draft=False, progress=lambda done, total, now: None)
    assert outcome.front is not None, [each.message for each in outcome.findings]
    html = (tmp_path / "site" / "tutorials" / "tee" / "index.html").read_text(encoding="utf-8")
    card = BeautifulSoup(html, "html.parser").select_one("#step-1")
    assert card is not None
    (other,) = card.select(".other")
    assert " ".join(other.get_text(" ").split()) == (
        "Another way If you have an overlock machine . Sew 14 in ( 35.5 cm ) in one go."
        " front side to back side stitch overlock allowance 3/8 in ( 1 cm ) press to the back"
    )
    assert "raw edges in a French seam" in " ".join(card.get_text(" ").split())


def test_edges_that_a_step_neatens_are_told_on_its_card(tmp_path: Path) -> None:
    step = "title: Neaten\ntext: Overlock the sides.\nfinish: [front.side, back.side]\n"
    content = folder(tmp_path / "content", TEXT, steps__01_dot_yaml=step)
    outcome = publish(content, tmp_path / "site", draft=True, progress=lambda done, total, now: None)
    assert outcome.front is not None
    html = (tmp_path / "site" / "tutorials" / "tee" / "index.html").read_text(encoding="utf-8")
    card = BeautifulSoup(html, "html.parser").select_one("#step-1")
    assert card is not None
    (seam,) = card.select(".seam")
    assert seam.h4 is not None
    assert seam.h4.get_text() == "front and back side"
    assert " ".join(seam.get_text(" ").split()).endswith("neatened")
