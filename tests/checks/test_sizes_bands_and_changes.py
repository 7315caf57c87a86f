"""Order of sizes, bands by their place, and lines of change: what is said, and where."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding

RIB = "seam_allowance: 3/8 in\nfabrics: {rib: {name: rib, structure: knit, stretch_across: 100%, buy: 1 yd}}\n"
PIECES = (
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: rib, edges: {neckline: 12 in, hem: 20 in}}\n"
    "  sleeve: {cut: 2 on fold, fabric: rib, edges: {wrist: 9 in, hem: 9 in}}\n"
)
BAND = "bands: {trim: {opening: [OPENING], ratio: RATIO, finished_width: 1 in, fabric: rib, goes_over: OVER}}\n"
SLEEVE = (
    "seam_allowance: 3/8 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 40%, buy: 2 yd}}\n"
    "pieces: {sleeve: {cut: 2 on fold, fabric: main, length: LENGTH, sides: {top: seam, bottom: BOTTOM},"
    " edges: {wrist: 8 in}, taper: {top: 14 in, bottom: 8 in, over: 10 in, edges: 2}}}\n"
    "hems: {wide: {edges: [sleeve.wrist], turn: 2 in}}\n"
)


def of(check: str, root: Path, text: str) -> list[Finding]:
    return [each for each in reviewed(root, text).findings if each.check == check]


def said(found: list[Finding]) -> list[str]:
    return [f"{each.place.line}:{each.place.column} {each.message}" for each in found]


# -- sizes ------------------------------------------------------------------------------------------------------


def sizes(names: str, bust: str, hip: str) -> str:
    return f"sizes: [{names}]\nbody: {{bust: '{bust} in', hip: '{hip} in'}}\n"


def test_swapped_columns_are_one_finding_and_not_one_for_each_row(tmp_path: Path) -> None:
    text = sizes("S, M, L, XL, 2XL", "33, 37, 35, 39, 41", "35, 39, 37, 41, 43")
    assert said(of("size-order", tmp_path, text)) == [
        "5:23 From size M to size L the whole body becomes smaller, although the sizes run from small to large. Are two"
        " columns swapped?"
    ]
    assert of("size-run", tmp_path, text) == []


def test_row_with_a_slip_of_its_own_is_still_a_break_of_the_run(tmp_path: Path) -> None:
    text = sizes("S, M, L, XL, 2XL", "33, 37, 35, 39, 41", "35, 37, 39, 41, 43")
    assert of("size-order", tmp_path, text) == []
    assert [each.place.line for each in of("size-run", tmp_path, text)] == [5]


def test_sizes_listed_out_of_order_are_known_by_their_names(tmp_path: Path) -> None:
    text = sizes("S, L, M, XL", "33, 37, 35, 39", "35, 39, 37, 41")
    assert said(of("size-order", tmp_path, text)) == [
        "4:15 Size M stands behind size L, although the sizes run from small to large. Put them in order, and every value by"
        " size with them."
    ]
    assert of("size-run", tmp_path, text) == []


def test_one_measurement_that_falls_in_a_short_run_is_doubted(tmp_path: Path) -> None:
    assert said(of("size-order", tmp_path, sizes("S, M", "35, 33", "35, 37"))) == [
        "5:19 From size S to size M the body bust falls, while the rest of the body rises."
    ]


@pytest.mark.parametrize(
    ("names", "bust", "hip"),
    [
        ("S, M, L", "33, 35, 37", "35, 37, 39"),
        ("L, M, S", "37, 35, 33", "39, 37, 35"),
        ('"00", "0", "2"', "31, 31 3/4, 33", "33, 34, 35"),
        ("small, tall, round", "33, 33, 37", "35, 35, 41"),
        ("XS, S, 2XL, XXXL", "31, 33, 41, 44", "33, 35, 43, 46"),
    ],
)
def test_sizes_that_run_one_way_are_left_alone(names: str, bust: str, hip: str, tmp_path: Path) -> None:
    assert of("size-order", tmp_path, sizes(names, bust, hip)) == []


def test_each_run_of_sizes_is_looked_at_by_itself(tmp_path: Path) -> None:
    text = sizes("", "24, 26, 33, 35", "26, 28, 35, 37").replace(
        "sizes: []", 'sizes: {child: ["98", "110"], adult: [S, M]}'
    )
    assert of("size-order", tmp_path, text) == []
    turned = (
        text.replace('["98", "110"]', '["110", "98", "116"]')
        .replace("24, 26", "26, 24, 28")
        .replace("26, 28,", "28, 26, 30,")
    )
    assert [each.place.line for each in of("size-order", tmp_path, turned)] == [4]


# -- bands ------------------------------------------------------------------------------------------------------


def band(opening: str, ratio: str, over: str) -> str:
    text = BAND.replace("OPENING", opening).replace("RATIO", ratio).replace("OVER", over)
    return RIB + PIECES + "body: {head: 12 in, hand: 7 in}\n" + text


@pytest.mark.parametrize(
    ("opening", "over", "inside", "outside", "words"),
    [
        ("front.neckline", "head", "90%", "92%", "neckband. Usual are 75% to 90%."),
        ("front.neckline", "nothing", "75%", "70%", "neckband. Usual are 75% to 90%."),
        ("sleeve.wrist", "hand", "85%", "90%", "cuff. Usual are 65% to 85%."),
        ("front.hem", "nothing", "80%", "75%", "hem band. Usual are 80% to 95%."),
    ],
)
def test_ratio_is_held_against_what_is_usual_at_its_place(
    opening: str, over: str, inside: str, outside: str, words: str, tmp_path: Path
) -> None:
    assert of("ratio-position", tmp_path, band(opening, inside, over)) == []
    (found,) = of("ratio-position", tmp_path, band(opening, outside, over))
    assert found.message == f"The ratio of the trim, {outside}, is unusual for a {words}"
    assert (found.said, found.severity.value) == (outside, "doubtful")


@pytest.mark.parametrize("ratio", ["60%", "97%", "105%"])
def test_ratio_that_is_unusual_anywhere_is_one_finding(ratio: str, tmp_path: Path) -> None:
    found = reviewed(tmp_path, band("sleeve.wrist", ratio, "hand")).findings
    assert [each.check for each in found if "ratio" in each.check] == ["band-ratio"]


def test_hem_of_a_sleeve_is_no_hem_band(tmp_path: Path) -> None:
    assert of("ratio-position", tmp_path, band("sleeve.hem", "70%", "nothing")) == []


def test_childs_band_over_a_head_of_unknown_size_is_doubted(tmp_path: Path) -> None:
    text = "wearer: child\n" + band("front.neckline", "80%", "head").replace("head: 12 in, ", "")
    assert said(of("reach-missing", tmp_path, text)) == [
        "11:101 Whether the trim goes over the head cannot be worked out, because body does not give the head. Add it for"
        " every size, such as body: {head: 20 in}"
    ]
    assert of("reach-missing", tmp_path, text.replace("wearer: child\n", "")) == [], "adults have a default"


@pytest.mark.parametrize(("over", "example"), [("hand", "8 in"), ("foot", "12 in")])
def test_example_of_a_reach_could_be_that_of_a_person(over: str, example: str, tmp_path: Path) -> None:
    text = "wearer: child\n" + band("sleeve.wrist", "80%", over).replace("hand: 7 in", "waist: 22 in")
    (found,) = of("reach-missing", tmp_path, text)
    assert found.message.endswith(f"body: {{{over}: {example}}}")


def test_adults_foot_has_no_default(tmp_path: Path) -> None:
    (found,) = of("reach-missing", tmp_path, band("sleeve.hem", "80%", "foot"))
    assert found.said == "foot"


# -- changes ------------------------------------------------------------------------------------------------


def change(line: str, rest: str, *, length: str = "24 in", bottom: str = "seam", sizes: str = "") -> str:
    piece = SLEEVE.replace("LENGTH", length).replace("BOTTOM", bottom)
    return f"{sizes}{piece}changes: {{longer_sleeve: {{piece: sleeve, line_at: {line}, {rest}}}}}\n"


def test_line_above_the_taper_is_doubted_with_its_distance(tmp_path: Path) -> None:
    (found,) = of("taper-above-line", tmp_path, change("12 in from the bottom", "lengthen_by: 1 in"))
    assert found.message == (
        "The line of longer sleeve lies 1 5/8 in above the part of the sleeve that tapers. The edge does not slope there,"
        " so there is no step to true. Move the line down."
    )
    assert (found.place.line, found.severity.value) == (8, "doubtful")


@pytest.mark.parametrize(
    ("bottom", "line", "count"),
    [("seam", "10 3/8 in", 0), ("seam", "10 1/2 in", 1), ("wide", "12 in", 0), ("wide", "12 1/8 in", 1)],
)
def test_taper_begins_above_the_seam_or_hem_at_the_lower_edge(
    bottom: str, line: str, count: int, tmp_path: Path
) -> None:
    text = change(f"{line} from the bottom", "lengthen_by: 1 in", bottom=bottom)
    assert len(of("taper-above-line", tmp_path, text)) == count


def test_first_size_in_which_the_line_lies_too_high_is_named(tmp_path: Path) -> None:
    text = change("1/2 from the top", "lengthen_by: 1 in", length="'20, 22 in'", sizes="sizes: [S, M]\n")
    (found,) = of("taper-above-line", tmp_path, text)
    assert found.size == "M"
    assert "tapers in size M." in found.message


@pytest.mark.parametrize(
    ("rest", "message"),
    [
        (
            "lengthen_by: 4 in",
            "Longer sleeve adds 4 in at one line. Beyond 3 in a piece keeps its shape better with two lines, 2 in at each.",
        ),
        (
            "shorten_by: 5 in",
            "Longer sleeve takes out 5 in at one line. Beyond 3 in a piece keeps its shape better with two lines, 2 1/2 in"
            " at each.",
        ),
        (
            "wanted: 28 in cut",
            "Longer sleeve adds 4 in at one line. Beyond 3 in a piece keeps its shape better with two lines, 2 in at each.",
        ),
    ],
)
def test_much_length_at_one_line_is_a_hint(rest: str, message: str, tmp_path: Path) -> None:
    (found,) = of("change-large", tmp_path, change("6 in from the bottom", rest))
    assert (found.message, found.severity.value, found.place.line) == (message, "hint", 8)


def test_three_inches_at_one_line_are_left_alone(tmp_path: Path) -> None:
    assert of("change-large", tmp_path, change("6 in from the bottom", "lengthen_by: 3 in")) == []


# -- bands that no ratio serves ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("opening", "asked"),
    [
        (
            "front.neckline, front.neckline",
            " front.neckline stands in its opening more than once: is another edge meant?",
        ),
        ("front.neckline", ""),
    ],
)
def test_band_that_no_ratio_serves_asks_about_an_edge_that_stands_twice_in_its_opening(
    tmp_path: Path, opening: str, asked: str
) -> None:
    text = RIB + PIECES + "body: {head: 60 in}\n" + BAND.replace("OPENING", opening).replace("RATIO", "80%")
    (found,) = of("band-stretch", tmp_path, text.replace("OVER", "head"))
    assert found.message.endswith(f"No ratio below 100% would serve.{asked}")


def test_band_that_another_ratio_serves_asks_nothing(tmp_path: Path) -> None:
    text = RIB + PIECES + "body: {head: 44 in}\n" + BAND.replace("OPENING", "front.neckline, front.neckline")
    (found,) = of("band-stretch", tmp_path, text.replace("RATIO", "70%").replace("OVER", "head"))
    assert found.message.endswith("or more would serve.")


YOKE = (
    "sizes: [S, M]\nbody: {hip: '36, 48 in'}\n"
    + RIB
    + "pieces: {skirt: {cut: 2, fabric: rib, edges: {top: 16 in}}}\n"
    + "bands: {yoke: {opening: [skirt.top, skirt.top], ratio: 70%, finished_width: 3 in, fabric: rib, goes_over: OVER}}\n"
)


def test_band_that_goes_over_a_measurement_must_stretch_as_far_in_every_size(tmp_path: Path) -> None:
    (found,) = of("band-stretch", tmp_path, YOKE.replace("OVER", "body.hip"))
    assert found.message.startswith(
        "The yoke must stretch by 114.3% to be put on in size M, but rib stretches by 100%."
    )
    assert of("band-stretch", tmp_path, YOKE.replace("OVER", "body.hip").replace("48 in", "40 in")) == []


def test_measurement_that_body_does_not_give_is_unknown_and_said_once(tmp_path: Path) -> None:
    findings = reviewed(tmp_path, YOKE.replace("OVER", "body.hips")).findings
    assert [(each.check, each.said, each.should_be) for each in findings if "hips" in each.message] == [
        ("unknown-reference", "body.hips", "body.hip")
    ]


def test_word_that_is_no_reach_is_told_with_both_ways_of_writing_one(tmp_path: Path) -> None:
    found = [each.message for each in reviewed(tmp_path, YOKE.replace("OVER", "hip")).findings]
    assert "Expected head, hand, foot, nothing or body.hip, found “hip”. Example: goes_over: head" in found
