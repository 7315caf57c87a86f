"""One given number behind several that do not agree."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

from sitegen.findings import Finding, Severity

_HEAD = "seam_allowance: 1/2 in\nfabrics: {main: {name: cotton, structure: woven}}\nsizes: [S, M, L]\npieces:\n"
_ENDS = "sides: {top: seam, bottom: seam, left: seam, right: seam}"


def _piece(name: str, length: str, finished: str) -> str:
    return f"  {name}: {{cut: 2, fabric: main, length: '{length}', {_ENDS}, finished_length: '{finished}'}}\n"


_PANEL = _piece("panel", "16, 17, 18 in", "15, 16, 17 in")
_STRAP = _piece("strap", "21, 22, 23 in", "20, 21, 22 in")
_TOGETHER = "joined: {whole: {pieces: [panel, strap], joined_length: '36, 38, 40 in'}}\n"


def _causes(root: Path, text: str, **files: str) -> list[Finding]:
    return [each for each in reviewed(root, text, **files).findings if each.check == "common-cause"]


def test_a_right_tutorial_has_none(tmp_path: Path) -> None:
    found = reviewed(tmp_path, _HEAD + _PANEL + _STRAP + _TOGETHER).findings
    assert not [each for each in found if each.severity is Severity.WRONG]
    assert not [each for each in found if each.check == "common-cause"]


def test_an_allowance_behind_every_finished_length(tmp_path: Path) -> None:
    text = (_HEAD + _PANEL + _STRAP + _TOGETHER).replace("1/2 in", "3/8 in (1 cm)")
    (found,) = _causes(tmp_path, text)
    assert found.severity is Severity.DOUBTFUL
    assert (found.place.line, found.said, found.should_be) == (4, "3/8 in (1 cm)", "1/2 in (1.3 cm)")
    assert found.message == (
        "If the seam allowance were 1/2 in (1.3 cm), 3 numbers that do not agree would all be right. Look here first."
    )
    assert found.working == ("right then: panel finished length, strap finished length, whole joined length",)


def test_a_size_of_a_piece_in_one_size(tmp_path: Path) -> None:
    text = (_HEAD + _PANEL + _STRAP + _TOGETHER).replace("length: '16, 17, 18", "length: '16, 71, 18")
    (found,) = _causes(tmp_path, text)
    assert (found.said, found.should_be, found.size) == ("71", "17", "M")
    assert found.message.startswith("If the panel cut length of size M were 17, 2 numbers")


def test_several_sizes_of_a_piece(tmp_path: Path) -> None:
    text = (_HEAD + _PANEL + _STRAP + _TOGETHER).replace("length: '16, 17, 18", "length: '17, 18, 19")
    (found,) = _causes(tmp_path, text)
    assert (found.said, found.should_be, found.size) == ("17", "", "")
    assert found.working[:3] == (
        "size S: 16 instead of 17",
        "size M: 17 instead of 18",
        "size L: 18 in instead of 19 in",
    )


def test_one_wrong_claim_is_wrong_itself(tmp_path: Path) -> None:
    text = (_HEAD + _PANEL + _STRAP + _TOGETHER).replace("finished_length: '15, 16", "finished_length: '15, 17")
    assert not _causes(tmp_path, text)


def test_two_claims_that_are_wrong_by_different_amounts_have_no_cause(tmp_path: Path) -> None:
    text = _HEAD + _PANEL.replace("'15, 16, 17", "'15 1/2, 16 1/2, 17 1/2") + _STRAP.replace("'20, 21", "'19, 20")
    assert not _causes(tmp_path, text)


def test_a_cause_must_not_break_what_is_right(tmp_path: Path) -> None:
    # With an allowance of 3/8 in the first two would be right, but not the third, which is right now.
    text = (
        _HEAD
        + _PANEL.replace("'15, 16, 17", "'15 1/4, 16 1/4, 17 1/4")
        + _STRAP.replace("'20, 21, 22", "'20 1/4, 21 1/4, 22 1/4")
    )
    assert len(_causes(tmp_path, text)) == 1
    assert not _causes(tmp_path, text + _piece("tie", "9 in", "8 in"))


def test_what_does_not_hang_on_it_may_stay_wrong(tmp_path: Path) -> None:
    text = (_HEAD + _PANEL + _STRAP + _TOGETHER).replace("1/2 in", "3/8 in")
    hem = "hems: {low: {edges: [panel.low], turn: 1 in, fold_under: 1/2 in, allowance: 2 in}}\n"
    (found,) = _causes(tmp_path, text + hem)
    assert found.should_be == "1/2 in"


def test_texts_count_too(tmp_path: Path) -> None:
    step = "title: Sew\ntext: Sew the panel with a 5/8 in seam allowance. Press the 5/8 in seam allowance open.\n"
    head = "seam_allowance: 3/8 in\nfabrics: {main: {name: cotton, structure: woven}}\n"
    piece = "pieces: {panel: {cut: 2, fabric: main, length: 16 in, width: 9 in}}\n"
    (found,) = _causes(tmp_path, head + piece, steps__01_dot_yaml=step)
    assert (found.said, found.should_be) == ("3/8 in", "5/8 in")
    assert "“5/8 in” (01.yaml, line 2)" in found.working[0]


def test_a_ratio_behind_the_lengths_of_a_band(tmp_path: Path) -> None:
    text = (
        "seam_allowance: 3/8 in\n"
        "fabrics: {main: {name: jersey, structure: knit, stretch_across: 40%},"
        " rib: {name: rib, structure: knit, stretch_across: 80%}}\n"
        "pieces:\n"
        "  front: {cut: 1 on fold, fabric: main, edges: {neckline: 12 1/2 in}}\n"
        "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 7 1/2 in}}\n"
        "bands: {neckband: {opening: [front.neckline, back.neckline], ratio: 85%, finished_width: 1 in, fabric: rib,"
        " finished_length: 16 in, cut_length: 16 3/4 in, band_quarter: 4 in}}\n"
    )
    found = _causes(tmp_path, text)
    assert ("85%", "80%") in [(each.said, each.should_be) for each in found]
    assert all(len(each.working) == 1 for each in found)
