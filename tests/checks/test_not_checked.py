"""What is withheld while a step or part cannot be read is told, once and with the reason."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

TOP = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: linen, structure: woven}}\n"
    "pieces:\n  front: {cut: 1, fabric: main, edges: {side: FRONT}}\n"
    "  back: {cut: 1, fabric: main, edges: {side: 14 in}}\n"
)
TEXT = TOP.replace("FRONT", "14 in")
SEW = "title: Sew\ntext: Sew.\njoin: [{edges: [front.side, back.side], stitch: straight}]\n"


def told(root: Path, text: str, **steps: str) -> list[str]:
    found = reviewed(root, text, **steps).findings
    return [f"{each.severity.value} {each.message}" for each in found if each.check == "not-checked"]


def test_a_step_that_cannot_be_read_is_named_with_what_was_not_checked(tmp_path: Path) -> None:
    (one,) = told(tmp_path, TEXT, steps__01_dot_yaml=SEW, steps__02_dot_yaml="title: Hem\ntext: [\n")
    assert one.startswith("hint Not checked until steps/02.yaml can be read: the order of making (")
    assert one.endswith(
        " of what is sewn, turned and finished when), and fabric-unused, reach-missing, thread-missing and"
        " twin-needle-missing."
    )


def test_it_is_told_once_for_all_views(tmp_path: Path) -> None:
    text = TEXT + "views: {neck: [plain, bound], hem: [short, long]}\n"
    assert len(told(tmp_path, text, steps__01_dot_yaml=SEW, steps__02_dot_yaml="title: Hem\ntext: [\n")) == 1


def test_a_number_that_cannot_be_read_is_named_where_steps_tell_of_the_making(tmp_path: Path) -> None:
    wrong = TOP.replace("FRONT", "14 elbows")
    (one,) = told(tmp_path / "a", wrong, steps__01_dot_yaml=SEW)
    assert one.startswith("hint Not checked until front.side can be read: ")
    assert told(tmp_path / "b", wrong, steps__01_dot_yaml="title: Sew\ntext: Sew.\n") == []


def test_nothing_is_told_where_everything_can_be_read(tmp_path: Path) -> None:
    assert told(tmp_path, TEXT, steps__01_dot_yaml=SEW) == []
