"""Faults of an author's files: each is a clear finding with its place, and all come in one run."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, folder, messages, reviewed

from sitegen.findings import Collector
from sitegen.quantities import inches
from sitegen.tutorial.build import tutorial

FABRIC = "fabrics: {main: {name: jersey, structure: knit}}\n"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("wearer: adlut\n", ["4:9 wrong-kind: Expected adult or child, found “adlut”. Example: wearer: adult"]),
        ("weerer: adult\n", ["4:1 unknown-key: The tutorial has no key “weerer”. Did you mean wearer?"]),
        ("level:\n", ["4:1 empty-value: level of the tutorial has no value."]),
        ("sizes: S\n", ["4:8 wrong-kind: Expected a list of sizes, found “S”. Example: sizes: [S, M, L]"]),
        ("sizes: [S, S]\n", ["4:12 key-twice: Size S is listed twice."]),
        ("sizes: [S, S]\nbody: {bust: '33, 35 in'}\n", ["4:12 key-twice: Size S is listed twice."]),
        (
            "sizes: S, M\nbody: {bust: '33, 35 in'}\n",
            ["4:8 wrong-kind: Expected a list of sizes, found “S, M”. Example: sizes: [S, M, L]"],
        ),
        (
            "body: {bust: '33, 35 in'}\n",
            ["4:15 size-count: body.bust has 2 values, expected 1. The tutorial lists no sizes."
             " Example: sizes: [S, M, L]"],
        ),
        (
            "before_you_start: Cut {seam_allowance long and {size} and {{twice}} and front.top} and set a} aside.\n",
            ["4:23 reference-open: A reference stands between two braces; the closing one is missing here.",
             "4:73 reference-open: A reference stands between two braces; the opening one is missing here."],
        ),
        (
            "seam_allowance: 3/8\" wide\n",
            ["4:22 not-a-length: Expected one length and nothing behind it, found “wide”."
             " Example: 3/8 in, 1 1/2 in, 0.6 cm or 5/8 in (1.5 cm)"],
        ),
        (
            "seam_allowance: 3/7 in\n",
            ["4:17 not-a-length: Expected halves, quarters, eighths or sixteenths of an inch, as on a ruler,"
             " found “3/7”. Example: 3/8 in"],
        ),
        (
            "sizes: [S, M, L]\nbody: {bust: '33, 35 in'}\n",
            ["5:15 size-count: body.bust has 2 values for 3 sizes: there is none for L."],
        ),
        (
            "sizes: [S, M]\nbody: {bust: '33,35 1/2,37 in'}\n",
            ["5:15 not-a-length: Expected a space after each comma between sizes, found “33,35 1/2,37 in”."
             " Example: 31, 33 1/2, 35 in"],
        ),
        (
            FABRIC + "pieces: {Front: {cut: 1, fabric: main}}\n",
            ["5:10 bad-name: “Front” cannot be a name here. Use small letters, digits and underscores, a letter"
             " first. Example: front_yoke"],
        ),
        (
            FABRIC + "pieces: {front: {cut: 1, fabric: mian}}\n",
            ["5:34 unknown-reference: There is no fabric “mian”. Nearest: main."],
        ),
        (
            FABRIC + "pieces: {main: {cut: 1, fabric: main}}\n",
            ["5:10 name-twice: The name main is already used at line 4. Choose another."],
        ),
    ],
)  # fmt: skip
def test_fault_is_reported_where_it_stands(text: str, expected: list[str], tmp_path: Path) -> None:
    assert messages(computed(tmp_path, text)[1]) == expected


def test_all_faults_come_in_one_run(tmp_path: Path) -> None:
    text = "sizes: [S, M]\nwearer: adlut\nbody: {bust: '33, 35, 37 in', hip: 4x in}\nsuplies: []\n"
    found = computed(tmp_path, text)[1]
    assert [each.check for each in found] == ["wrong-kind", "size-count", "not-a-length", "unknown-key"]


def test_missing_measured_in_is_named_with_an_example(tmp_path: Path) -> None:
    collector = Collector()
    tutorial(folder(tmp_path, "", head="title: A\nsummary: B\n"), "tutorials/tee", collector)
    assert messages(collector.findings) == [
        "1:1 key-missing: The tutorial lacks measured_in. Example: measured_in: inches"
    ]


def test_fault_inside_a_step_names_the_step_file(tmp_path: Path) -> None:
    found = computed(tmp_path, "", steps__01_dot_yaml="title: One\ntext: |\n  Cut {neckbnd.cut_length}.\n")[1]
    assert [(each.place.file, each.place.line, each.place.column) for each in found] == [
        ("folder/tutorials/tee/steps/01.yaml", 3, 8)
    ]


def test_band_without_its_ratio_does_not_hide_the_rest(tmp_path: Path) -> None:
    text = FABRIC + (
        "seam_allowance: 3/8 in\n"
        "pieces: {front: {cut: 1, fabric: main, edges: {neckline: 12 in}}}\n"
        "bands: {neckband: {opening: [front.neckline], finished_width: 1 in, fabric: main}}\n"
    )
    found, findings = computed(tmp_path, text)
    assert [each.check for each in findings] == ["key-missing"]
    assert found.number("front.neckline", 0) is not None


CSV = "number,S,M,L\nbody.bust,33,35,37\nfront.side,14 1/2,15,15 1/2\n"
PIECES = "sizes: [S, M, L]\n" + FABRIC + "pieces: {front: {cut: 1, fabric: main}}\n"


@pytest.mark.parametrize(
    "table",
    [
        CSV,
        "\ufeff" + CSV,
        CSV.replace(",", ";"),
        CSV.replace(",", "\t"),
        'number,S,M,L\nbody.bust,"33","35","37"\nfront.side,"14 1/2 in","15""","15 1/2"\n',
        "number;S;M;L\nbody.bust;33;35;37\nfront.side;36,83 cm;38,1 cm;39,37 cm\n",
    ],
)
def test_size_table_is_read_as_spreadsheets_save_it(table: str, tmp_path: Path) -> None:
    found, findings = computed(tmp_path, PIECES, sizes_dot_csv=table)
    assert findings == ()
    sides = [found.number("front.side", size) for size in range(3)]
    assert [side.length for side in sides if side] == [inches("14.5"), inches(15), inches("15.5")]


def test_size_missing_from_the_table_is_named(tmp_path: Path) -> None:
    found = computed(tmp_path, PIECES, sizes_dot_csv="number,S,M\nbody.bust,33,35\n")[1]
    assert messages(found) == [
        "1:1 size-count: The size table has no column for size L.",
    ]


def test_number_in_the_file_and_in_the_table_is_one_too_many(tmp_path: Path) -> None:
    text = PIECES + "body: {bust: '33, 35, 37 in'}\n"
    found = computed(tmp_path, text, sizes_dot_csv=CSV)[1]
    assert messages(found) == [
        "7:15 given-twice: body.bust is given here and in the size table at line 2. Keep one of them."
    ]


GROWN = "sizes: [S, M, L, XL]\nbody: {bust: '33, 35, 37 in', hip: {S: 35 in, M: 37 in, L: 39 in}, waist: '26, 28, 30, 32 in'}\n"


def test_added_size_lists_every_place_that_lacks_a_value_and_breaks_nothing_else(tmp_path: Path) -> None:
    found, findings = computed(tmp_path, GROWN)
    assert messages(findings) == [
        "5:15 size-count: body.bust has 3 values for 4 sizes: there is none for XL.",
        "5:36 size-count: body.hip has no value for size XL.",
    ]
    known = [found.number(f"body.{name}", 2) for name in ("bust", "hip", "waist")]
    assert [number.length for number in known if number] == [inches(37), inches(39), inches(30)]
    assert found.number("body.bust", 3) is None


def test_value_for_a_size_that_is_not_there_is_named(tmp_path: Path) -> None:
    findings = computed(tmp_path, "sizes: [S, M]\nbody: {hip: {S: 35 in, M: 37 in, L: 39 in}}\n")[1]
    assert messages(findings) == ["5:34 size-count: There is no size L."]


def test_children_and_adults_have_runs_of_their_own(tmp_path: Path) -> None:
    text = (
        "sizes: {child: [92, 98, 104, 110], adult: [S, M, L, XL]}\nbody: {bust: '21, 22, 23, 24, 33, 35, 37, 39 in'}\n"
    )
    found = reviewed(tmp_path, text)
    assert found.findings == ()
    assert found.tutorials[0].tutorial.sizes == ("92", "98", "104", "110", "S", "M", "L", "XL")
    assert found.tutorials[0].tutorial.runs == (4,)


def test_what_refers_to_a_part_that_is_not_understood_is_not_reported_as_well(tmp_path: Path) -> None:
    text = FABRIC + (
        "pieces: {front: {cut: 2, fabric: main, edges: {top: 9 in}}}\n"
        "bands: {cuff: {opening: [front.top], ratio: 80%, finished_width: 2 inn, fabric: main}}\n"
    )
    step = "title: Sew\ntext: Cut {cuff.cut_length} and {front.topp}.\njoin: [{edges: [cuff, front.top]}]\n"
    wrong = [
        each for each in reviewed(tmp_path, text, steps__1_dot_yaml=step).findings if each.severity.value == "wrong"
    ]
    assert [each.check for each in wrong] == ["unknown-reference", "not-a-length"]
    assert wrong[0].said == "front.topp"


def test_a_row_of_numbers_within_braces_asks_for_quotes(tmp_path: Path) -> None:
    text = "sizes: [S, M]\n" + FABRIC + "pieces: {front: {cut: 2, fabric: main, edges: {top: 9, 9 1/2 in}}}\n"
    text = text.replace("edges: {top: 9, 9 1/2 in}", "length: 9, 9 1/2 in")
    found = messages(computed(tmp_path, text)[1])
    assert found == [
        "6:51 unknown-key: “9 1/2 in” stands alone here. Within braces a comma ends a value, so a row of numbers needs"
        ' quotes. Example: {cut_length: "33, 35, 37 cm"}'
    ]


def test_a_count_below_nothing_is_told_from_where_to_where_it_goes(tmp_path: Path) -> None:
    step = "title: Sew\ntext: Sew.\nminutes: -15\n"
    found = reviewed(tmp_path, "", steps__1_dot_yaml=step).findings
    assert found[0].message.startswith("Expected a whole number from 0 to ")
    assert found[0].message.endswith("found “-15”. Example: minutes: 30")


def test_steps_follow_each_other_by_their_numbers(tmp_path: Path) -> None:
    files = {f"steps__{number}-x_dot_yaml": f"title: Step {number}\ntext: Sew.\n" for number in (10, 2, 1, 9)}
    files["steps__finish_dot_yaml"] = "title: Step last\ntext: Sew.\n"
    found, _ = computed(tmp_path, "", **files)
    assert [step.title for step in found.tutorial.steps] == ["Step 1", "Step 2", "Step 9", "Step 10", "Step last"]


def test_a_step_that_cannot_be_read_leaves_no_edge_unsewn(tmp_path: Path) -> None:
    text = FABRIC + "pieces: {front: {cut: 2, fabric: main, edges: {top: 9 in, side: 10 in}}}\n"
    files = {
        "steps__01_dot_yaml": "title: Sew\ntext: Sew.\njoin: [{edges: [front.top, front.top], stitch: zigzag}]\n",
        "steps__02_dot_yaml": "title: 'Sew\ntext: Sew.\njoin: [{edges: [front.side, front.side]}]\n",
    }
    found = {each.check for each in reviewed(tmp_path, text, **files).findings}
    assert "yaml-syntax" in found
    assert "edge-never-sewn" not in found


def test_a_glossary_may_hold_nothing_but_remarks(tmp_path: Path) -> None:
    files = {"../../glossary_dot_yaml": "# to be written\n"}
    assert reviewed(tmp_path, "", **files).findings == ()


def test_a_file_with_the_shorter_ending_is_told_of(tmp_path: Path) -> None:
    content = folder(tmp_path, "")
    home = tmp_path / "tutorials" / "tee"
    (home / "tutorial.yaml").rename(home / "tutorial.yml")
    collector = Collector()
    assert tutorial(content, "tutorials/tee", collector) is None
    assert messages(collector.findings) == [
        "1:1 file-missing: There is no such file. There is tutorial.yml: call it tutorial.yaml."
    ]


def test_steps_in_a_folder_of_another_name_are_told_of(tmp_path: Path) -> None:
    found = messages(computed(tmp_path, "", step__01_dot_yaml="title: Sew\ntext: Sew.\n")[1])
    assert found == [
        "1:1 steps-missing: This tutorial has no step. Steps are read from its folder steps, not from step."
        " Example: steps/01-cut-out.yaml"
    ]


def test_two_tutorials_of_one_title_are_told_of(tmp_path: Path) -> None:
    other = {"../other/tutorial_dot_yaml": "title: test TEE\nsummary: Another.\nmeasured_in: inches\n"}
    found = reviewed(tmp_path, "", **other).findings
    assert [(each.check, each.place.file) for each in found] == [("title-twice", "folder/tutorials/tee/tutorial.yaml")]


def test_two_terms_that_differ_in_capitals_are_told_of_with_both_places(tmp_path: Path) -> None:
    files = {"../../glossary_dot_yaml": "selvage: The woven edge.\nhem: A folded edge.\nHem: The lower edge.\n"}
    (found,) = reviewed(tmp_path, "", **files).findings
    assert found.place.file == "folder/glossary.yaml"
    assert messages((found,)) == [
        "3:1 term-twice: “Hem” is explained here a second time; the first entry, “hem”, is on line 2, column 1. Capitals"
        " make no other word: keep one of the two, or give one of them another name."
    ]


@pytest.mark.parametrize(
    ("sizes", "keys", "read"),
    [
        ("cut_length: 15 in", ["cut_length"], {"cut_length": 15}),
        ("cut_length: 15 in, width: 12 in", ["cut_length"], {"cut_length": 15, "cut_width": 12}),
        ("cut_length: 15 in, finished_length: 14 1/2 in", ["cut_length"], {"cut_length": 15}),
        ("finished_width: 12 in", ["finished_width"], {"finished_width": 12, "cut_width": 13}),
        ("cut_length: 15 in, cut_width: 12 in", ["cut_length", "cut_width"], {"cut_length": 15, "cut_width": 12}),
    ],
)
def test_a_piece_that_says_its_length_by_another_name_is_told_of_alone(
    tmp_path: Path, sizes: str, keys: list[str], read: dict[str, int]
) -> None:
    """All that follows from the length is still worked out."""
    text = (
        "seam_allowance: 1/2 in\nfabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\n"
        "pieces: {panel: {cut: 2, fabric: main, sides: {top: raw, bottom: seam, left: seam, right: seam},"
        f" {sizes}}}}}\n"
    )
    cut = "".join(f" {{panel.{name}}}" for name in read)
    found = reviewed(tmp_path, text, steps__01_dot_yaml=f"title: Cut\ntext: Measures are{cut}.\n")
    assert [(each.check, each.said) for each in found.findings] == [("key-missing", key) for key in keys]
    numbers, _ = computed(tmp_path, text)
    for name, inches_long in read.items():
        worked = numbers.length(f"panel.{name}", 0)
        assert worked is not None
        assert worked.length == inches(inches_long)


@pytest.mark.parametrize(
    ("section", "key"),
    [
        ("bands: {b: {opening: [], ratio: 80%, finished_width: 1 in, fabric: main}}", "opening of band b"),
        ("bands: {b: {opening: {front: [], back: [f.e]}, ratio: 80%, finished_width: 1 in, fabric: main}}",
         "front of opening of band b"),
        ("hems: {h: {edges: [], turn: 1 in}}", "edges of hem h"),
        ("girths: {g: {edges: []}}", "edges of girth g"),
        ("gathers: {g: {edges: [], onto: [f.e]}}", "edges of gather g"),
        ("bindings: {b: {edges: [], kind: single, finished_width: 1/2 in}}", "edges of binding b"),
        ("trims: {t: {kind: cord, edges: [], supply: cord}}", "edges of trim t"),
    ],
)  # fmt: skip
def test_a_list_of_edges_in_which_none_stands_is_told_of(tmp_path: Path, section: str, key: str) -> None:
    """What lies along no edge would else be left out of the tutorial, and nobody told."""
    text = FABRIC + "pieces: {f: {cut: 1, fabric: main, edges: {e: 5 in}}}\n" + section + "\n"
    (told,) = (each for each in computed(tmp_path, text)[1] if each.check == "empty-value")
    assert (told.message.partition(".")[0], told.said) == (f"{key} is an empty list", "[]")
