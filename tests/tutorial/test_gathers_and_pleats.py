"""Gathers and pleats: the numbers before and after, seams in which they lie, and what is said of faults."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import System, inches, show_working
from sitegen.tutorial import Computed

TOP = (
    "sizes: [S, M]\nseam_allowance: 1/2 in\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces:\n"
    "  skirt: {cut: 2, fabric: main, edges: {top: '27, 28 in'}}\n"
    "  panel: {cut: 2, fabric: main, finished: {width: '{tier_top.panel}'}, sides: {left: seam, right: seam},\n"
    "    edges: {top: '{tier_top.panel}', plain: '28, 30 in'}}\n"
    "  waistband: {cut: 1, fabric: main, edges: {lower: '28, 30 in'}}\n"
)
PARTS = TOP + (
    "gathers:\n"
    "  skirt_top: {edges: [skirt.top, skirt.top], onto: [waistband.lower], ratio: 1.9 to 1}\n"
    "  tier_top: {edges: [panel.top, panel.top], onto: [waistband.lower], ratio: 3/2, cut_for: ratio}\n"
    "  ruffle: {edges: [skirt.top], onto_length: 18 in}\n"
    "pleats:\n"
    "  knife_row: {kind: knife, count: 6, depth: 1 in, finished: '12, 13 in', cut_width: '24, 25 in'}\n"
    "  box_row: {kind: box, count: 2, depth: 1 1/2 in, edges: [panel.plain]}\n"
    "  inverted_row: {kind: inverted, count: 3, edges: [waistband.lower], finished: '22, 24 in'}\n"
    "  tucks: {kind: tuck, count: 4, depth: 1/4 in}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("folds"), PARTS)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("skirt_top.before", "54", "56"),
        ("skirt_top.after", "28", "30"),
        ("skirt_top.drawn_in", "26", "26"),
        ("tier_top.before", "42", "45"),
        ("tier_top.panel", "21", "22.5"),
        ("panel.cut_width", "22", "23.5"),
        ("panel.top", "21", "22.5"),
        ("ruffle.drawn_in", "9", "10"),
        ("knife_row.take_up", "2", "2"),
        ("knife_row.taken", "12", "12"),
        ("knife_row.cut_width", "24", "25"),
        ("knife_row.visible", "2", "13/6"),
        ("box_row.take_up", "6", "6"),
        ("box_row.finished_width", "16", "18"),
        ("box_row.full_depth", "4", "4.5"),
        ("inverted_row.depth", "0.5", "0.5"),
        ("inverted_row.cut_width", "28", "30"),
        ("tucks.taken", "2", "2"),
    ],
)
def test_length_in_both_sizes(name: str, small: str, medium: str, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.length for number in numbers if number] == [inches(small), inches(medium)]


def test_tucks_without_a_panel_have_no_widths(found: Computed) -> None:
    assert [name for name in found.names() if name.startswith("tucks.")] == [
        "tucks.take_up",
        "tucks.taken",
        "tucks.depth",
    ]


def test_ratio_is_a_plain_number_and_not_a_percentage(found: Computed) -> None:
    ratio = found.number("ruffle.ratio", 0)
    assert ratio is not None
    assert show_working(ratio, System.INCHES) == (
        "ruffle before: skirt top 27 in",
        "ruffle ratio: ruffle before 27 in divided by ruffle after 18 in = 1 1/2 (to 1)",
    )


def test_width_of_a_panel_follows_from_the_ratio(found: Computed) -> None:
    panel = found.number("tier_top.panel", 1)
    assert panel is not None
    assert show_working(panel, System.INCHES) == (
        "tier top after: waistband lower 30 in",
        "tier top ratio: 1 1/2 (to 1)",
        "tier top before: tier top after 30 in × tier top ratio 1 1/2 = 45 in",
        "tier top panel: tier top before 45 in ÷ panels 2 = 22 1/2 in",
    )


def test_every_number_can_be_worked_out(found: Computed) -> None:
    ours = ("skirt_top.", "tier_top.", "ruffle.", "knife_row.", "box_row.", "inverted_row.", "tucks.")
    assert [name for name in found.numbers if name.startswith(ours) and name not in found.names()] == []


@pytest.mark.parametrize("ratio", ["1.9", "1.9 to 1", "1.9:1", "190%", "1.9 times"])
def test_ratio_is_read_as_people_say_it(ratio: str, tmp_path: Path) -> None:
    assert not gather_findings(
        tmp_path, f"{{edges: [skirt.top, skirt.top], onto: [waistband.lower], ratio: '{ratio}'}}"
    )


LAST_OF_TOP = 11


def after_top(root: Path, text: str, **files: str) -> list[str]:
    findings = reviewed(root, TOP.replace("'{tier_top.panel}'", "21 in") + text, **files).findings
    return messages(tuple(each for each in findings if each.place.line > LAST_OF_TOP))


def gather_findings(root: Path, part: str) -> list[str]:
    return after_top(root, f"gathers:\n  skirt_top: {part}\n")


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (
            "{edges: [skirt.top, skirt.top], onto: [waistband.lower], ratio: 1.5 to 1}",
            ["13:78 gather-ratio: The skirt top is gathered 1.93 to 1 in size S, not 1.5 to 1."],
        ),
        (
            "{edges: [skirt.top], onto: [waistband.lower]}",
            ["13:14 gather-ratio: The skirt top is no longer before it is gathered than after in size S: 0.96 to 1."],
        ),
        (
            "{edges: [skirt.top], onto_length: 24 in}",
            ["13:14 gather-ratio: The skirt top is gathered 1 1/8 to 1 in size S. Usual are 1 1/4 to 1 up to 3 to 1."],
        ),
        (
            "{edges: [skirt.top], onto_length: 6 in}",
            ["13:14 gather-ratio: The skirt top is gathered 4 1/2 to 1 in size S. Usual are 1 1/4 to 1 up to 3 to 1."],
        ),
        (
            "{edges: [skirt.top, skirt.top], onto: [waistband.lower], ratio: 1.5, cut_for: ratio}",
            ["13:23 gather-ratio: The edges of skirt top are 54 in long together in size S, but its ratio asks for 42 in."],
        ),
        (
            "{edges: [skirt.top], onto_length: 18 in, drawn_in: '9, 9 in'}",
            ["13:69 gather-ratio: The skirt top drawn in of size M is given as 9 in, computed it is 10 in."],
        ),
        (
            "{edges: [skirt.top]}",
            ["13:14 key-missing: Gather skirt_top needs one of onto or onto_length. Example: onto: [waistband.lower]"],
        ),
        (
            "{edges: [skirt.top], onto_length: 18 in, ratio: lots}",
            ["13:62 wrong-kind: Expected how many times as long the cloth is before it is gathered, found “lots”."
             " Example: ratio: 1.5 to 1"],
        ),
        (
            "{edges: [skirt.top], onto_length: 18 in, cut_for: ratio}",
            ["13:14 key-missing: Gather skirt_top lacks ratio. Example: ratio: 2"],
        ),
        (
            "{edges: [skrt.top], onto: [waistband.lowr]}",
            ["13:23 unknown-reference: There is no edge “skrt.top”. Nearest: skirt.top.",
             "13:41 unknown-reference: There is no edge “waistband.lowr”. Nearest: waistband.lower."],
        ),
    ],
)  # fmt: skip
def test_fault_of_gathers_is_told(part: str, expected: list[str], tmp_path: Path) -> None:
    assert gather_findings(tmp_path, part) == expected


def test_right_ratio_comes_in_the_words_of_the_wrong_one(tmp_path: Path) -> None:
    text = TOP.replace("'{tier_top.panel}'", "21 in").replace("'27, 28 in'", "'28, 30 in'")
    text += "gathers: {skirt_top: {edges: [skirt.top, skirt.top], onto: [waistband.lower], ratio: RATIO}}\n"
    for said, right in (("'150%'", "200%"), ("1.5 to 1", "2 to 1"), ("'3:1'", "2:1"), ("3", "2")):
        found = [
            each for each in reviewed(tmp_path, text.replace("RATIO", said)).findings if each.check == "gather-ratio"
        ]
        assert [(each.said, each.should_be) for each in found] == [(said.strip("'"), right)]


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (
            "{kind: knife, count: 6, depth: 1 in, finished: 12 in, cut_width: 18 in}",
            ["13:73 pleat-sum: The row cut width does not agree: given 18 in, computed 24 in."],
        ),
        (
            "{kind: box, count: 2, depth: 1 in, edges: [panel.plain], finished: 19 in}",
            ["13:75 pleat-sum: The row finished width does not agree in sizes S, M: given 19 in, computed 20, 22 in."],
        ),
        (
            "{kind: box, count: 8, depth: 1 in, edges: [panel.plain]}",
            ["13:8 pleat-sum: Pleats row take up the whole width, so that nothing is left in size S."],
        ),
        (
            "{kind: tuck, count: 3, edges: [panel.plain], finished: 30 in}",
            ["13:8 pleat-sum: Pleats row need more cloth than there is: the width before is no wider than the finished one"
             " in size S."],
        ),
        (
            "{kind: box, count: 6, depth: 2 in, finished: 12 in}",
            ["13:37 pleat-overlap: Pleats row lie over each other: a depth of up to 1 in fits fold against fold in size S."],
        ),
        (
            "{kind: box, count: 6, finished: 12 in}",
            ["13:8 key-missing: Pleats row need depth, or both edges and finished, from which it follows."
             " Example: depth: 1 in"],
        ),
        ("{kind: sword, count: 6, depth: 1 in}", ["13:15 wrong-kind: Expected knife, box, inverted or tuck, found “sword”. Example: kind: knife"]),
        ("{kind: box, count: 0, depth: 1 in}", ["13:27 wrong-kind: Expected 1 pleat or more, found “0”. Example: count: 6"]),
    ],
)  # fmt: skip
def test_fault_of_pleats_is_told(part: str, expected: list[str], tmp_path: Path) -> None:
    assert after_top(tmp_path, f"pleats:\n  row: {part}\n") == expected


SEAM = "title: Join the skirt\ntext: Sew.\njoin: [{edges: [CHAIN, waistband.lower], stitch: straight}]\n"


def seam_match(root: Path, text: str, chain: str) -> list[str]:
    files = {"steps__01_dot_yaml": SEAM.replace("CHAIN", chain)}
    findings = reviewed(root, TOP.replace("'{tier_top.panel}'", "21 in") + text, **files).findings
    return [each.message for each in findings if each.check == "seam-match"]


GATHERED = "gathers: {skirt_top: {edges: [skirt.top, skirt.top], onto: [waistband.lower]}}\n"


def test_gathered_edges_meet_what_they_are_gathered_onto(tmp_path: Path) -> None:
    assert seam_match(tmp_path, GATHERED, "skirt.top + skirt.top") == []


def test_one_of_the_gathered_edges_alone_does_not_reach_round(tmp_path: Path) -> None:
    assert seam_match(tmp_path, GATHERED, "skirt.top") == [
        "waistband lower is 14 in longer than skirt top drawn in in size S, and no ease is stated. If two of them lie"
        " along it end to end, write skirt.top + skirt.top."
    ]


def test_gathered_edge_may_be_sewn_flat_before_it_is_gathered(tmp_path: Path) -> None:
    text = TOP.replace("'{tier_top.panel}'", "'27, 28 in'") + GATHERED
    step = SEAM.replace("CHAIN, waistband.lower", "skirt.top, panel.top")
    findings = reviewed(tmp_path, text, steps__01_dot_yaml=step).findings
    assert [each for each in findings if each.check == "seam-match"] == []


def test_pleated_edge_meets_as_wide_as_it_is_finished(tmp_path: Path) -> None:
    pleats = "pleats: {row: {kind: knife, count: 4, edges: [skirt.top, skirt.top], finished: '28, 30 in'}}\n"
    assert seam_match(tmp_path, pleats, "skirt.top + skirt.top") == []
    narrow = pleats.replace("'28, 30 in'", "'27, 30 in'")
    assert seam_match(tmp_path, narrow, "skirt.top + skirt.top") == [
        "waistband lower is 1 in longer than row finished width in size S, and no ease is stated."
    ]


ROWS = (
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces:\n"
    "  skirt: {cut: 2, fabric: main, edges: {top: 28 in}}\n"
    "  waistband: {cut: 1, fabric: main, edges: {lower: 28 in}}\n"
    "gathers:\n"
    "  skirt_top: {edges: [skirt.top, skirt.top], onto: [waistband.lower], rows: {%s}}\n"
)


def test_gathering_rows_have_their_distances_from_the_raw_edge(tmp_path: Path) -> None:
    """Two rows 1/4 in apart, the first 1/4 in from the edge (4-H bulletin, "It's Fun to Sew a Cotton School Dress")."""
    tutorial, findings = computed(tmp_path, ROWS % "first: 1/4 in, apart: 1/4 in, count: 2")
    assert messages(findings) == []
    rows = [tutorial.number(f"skirt_top.row_{row}", 0) for row in (1, 2)]
    assert [row.length for row in rows if row is not None] == [inches("1/4"), inches("1/2")]
    assert tutorial.number("skirt_top.row_3", 0) is None


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ("apart: 1/4 in, count: 2", "key-missing"),
        ("first: 1/4 in, apart: 1/4 in", "key-missing"),
        ("first: 1/4 in, apart: 1/4 in, count: 0", "wrong-kind"),
        ("first: 1/4 in, apart: 1/4 in, count: 70", "wrong-kind"),
        ("first: 1/4 in, apart: 1/4 in, count: 2, second: 1/2 in", "unknown-key"),
    ],
)
def test_gathering_rows_that_are_not_whole_are_reported_where_they_stand(keys: str, said: str, tmp_path: Path) -> None:
    found = messages(computed(tmp_path, ROWS % keys)[1])
    assert len(found) == 1
    line, check = found[0].split(" ")[:2]
    assert line.startswith("9:")
    assert check == f"{said}:"
