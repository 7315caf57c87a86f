"""What is said of darts and boxed corners among the steps, and where nothing is."""

from __future__ import annotations

from pathlib import Path

from content import reviewed

PARTS = (
    "seam_allowance: 1/2 in\nfabrics: {main: {name: linen, structure: woven}}\npieces:\n"
    "  front: {cut: 2 mirrored, fabric: main, edges: {side: 16 in, hem: 12 in}, darts: {\n"
    "    bust: {edge: side, width: 1 in, length: 3 in}}}\n"
    "  back: {cut: 2 mirrored, fabric: main, edges: {side: 15 in}}\n"
    "  bag: {cut: 2, fabric: main, finished: {length: 16 in, width: 15 in},\n"
    "    sides: {top: raw, bottom: lower, left: side, right: side}, edges: {side: 14 in, lower: 11 in}}\n"
    "boxed:\n"
    "  corners: {panel: bag, square: 2 in}\n"
    "hems: {front_side: {edges: [front.side], turn: 1 in}}\n"
)
CHECKS = {"dart-never-sewn", "corners-never-boxed", "dart-late", "boxed-early", "taken-in-twice", "used-before-cut"}
DARTS = "title: Sew the darts\ntext: Sew.\ndarts: [front.bust]\n"
SIDES = "title: Sew the sides\ntext: Sew.\njoin: [{edges: [front.side, back.side]}]\n"
SEAMS = "title: Sew the bag\ntext: Sew.\njoin: [{edges: [bag.side, bag.side]}, {edges: [bag.lower, bag.lower]}]\n"
BOX = "title: Box the corners\ntext: Sew.\nbox: [corners]\n"


def found(root: Path, *steps: str) -> list[str]:
    files = {f"steps__{number:02}_dot_yaml": text for number, text in enumerate(steps, 1)}
    return [
        f"{each.place.file.rpartition('/tee/')[2]}:{each.place.line}:{each.place.column} {each.severity.value}"
        f" {each.check}: {each.message}"
        for each in reviewed(root, PARTS, **files).findings
        if each.check in CHECKS
    ]


def test_nothing_is_said_of_darts_before_edges_and_corners_after_seams(tmp_path: Path) -> None:
    assert found(tmp_path, DARTS, SIDES, SEAMS, BOX) == []


def test_nothing_is_said_where_no_step_tells_what_it_sews(tmp_path: Path) -> None:
    assert found(tmp_path, "title: Sew\ntext: Sew all.\n") == []


def test_dart_and_corners_that_no_step_sews_are_doubted_where_they_are_written(tmp_path: Path) -> None:
    assert found(tmp_path, SIDES, SEAMS) == [
        "tutorial.yaml:8:11 doubtful dart-never-sewn: No step sews the dart front bust. Add to its step"
        " darts: [front.bust]",
        "tutorial.yaml:13:12 doubtful corners-never-boxed: No step sews across the corners. Add to its step"
        " box: [corners]",
    ]


def test_dart_after_its_edge_is_wrong(tmp_path: Path) -> None:
    assert found(tmp_path, SIDES, DARTS, SEAMS, BOX) == [
        "steps/02.yaml:3:9 wrong dart-late: The dart front bust is sewn here, but its edge front.side was sewn already"
        " in the step “Sew the sides”. Sew the dart before that."
    ]


def test_dart_in_an_edge_that_was_hemmed_is_wrong(tmp_path: Path) -> None:
    hem = "title: Hem\ntext: Turn.\nhem: [front_side]\n"
    assert [each.partition(":")[0] for each in found(tmp_path, hem, DARTS, SEAMS, BOX)] == ["steps/02.yaml"]


def test_dart_before_the_other_copy_of_its_edge_passes(tmp_path: Path) -> None:
    other = SIDES.replace("the sides", "the other side")
    assert found(tmp_path, SIDES, DARTS, other, SEAMS, BOX) == []


def test_corners_before_their_seams_are_wrong(tmp_path: Path) -> None:
    assert found(tmp_path, DARTS, SIDES, BOX, SEAMS) == [
        "steps/03.yaml:3:7 wrong boxed-early: The corners are boxed here, but bag.side and bag.lower are sewn only in"
        " the step “Sew the bag”."
    ]


def test_dart_and_corners_that_two_steps_sew_are_doubted_unless_the_text_says_why(tmp_path: Path) -> None:
    again = DARTS.replace("title: Sew the darts", "title: Copied")
    assert found(tmp_path / "a", DARTS, again, SIDES, SEAMS, BOX) == [
        "steps/02.yaml:3:9 doubtful taken-in-twice: front.bust is sewn here, and was already in the step “Sew the"
        " darts”. If this is the other one, say so in the text."
    ]
    assert found(tmp_path / "b", DARTS, again.replace("Sew.", "Sew the other dart."), SIDES, SEAMS, BOX) == []


def test_corners_count_as_used_before_their_piece_is_cut(tmp_path: Path) -> None:
    cut = "title: Cut\ntext: Cut.\ncut: [front, back, bag]\n"
    assert [each.partition(" The ")[2] for each in found(tmp_path, BOX, cut, DARTS, SIDES)] == [
        "bag is used here but cut only in the step “Cut”."
    ]


def test_fabric_of_which_only_drops_are_cut_is_in_use(tmp_path: Path) -> None:
    text = (
        "fabrics: {print: {name: print, structure: woven, width: 54 in, buy: 6 yd}, OTHER}\n"
        "drops: {curtain: {width: 50 in, length: 84 in, fabric: print}}\n"
    )
    used = reviewed(tmp_path / "a", text.replace(", OTHER", "")).findings
    assert "fabric-unused" not in {each.check for each in used}
    other = reviewed(
        tmp_path / "b", text.replace("OTHER", "plain: {name: plain, structure: woven, buy: 1 yd}")
    ).findings
    assert [each.place.line for each in other if each.check == "fabric-unused"] == [4]
