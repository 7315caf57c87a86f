"""Bindings, circle skirts, edges that are arcs, and swatches: their numbers, and what is said of faults."""

from __future__ import annotations

from math import pi, sqrt
from pathlib import Path

import pytest
from content import computed, messages, reviewed

from sitegen.quantities import ZERO, System, Unit, inches, show_working
from sitegen.tutorial import Computed

TOP = (
    "sizes: [S, M]\nbody: {waist: '26, 28 in'}\nseam_allowance: 1/4 in\n"
    "fabrics: {main: {name: cotton, structure: woven}}\n"
    "pieces:\n"
    "  front: {cut: 1 on fold, fabric: main, length: 20 in, sides: {top: neckline, bottom: seam},\n"
    "    edges: {neckline: '20, 21 in', armhole: 15 in}}\n"
    "  cape: {cut: 1, fabric: main, edges: {\n"
    "    hem: {shape: quarter circle outward, radius: '30, 32 in', seam_allowance: 1/2 in},\n"
    "    neck: {radius: 4 in, turn: 180 inward, measured_on: cut edge},\n"
    "    round: {shape: full circle, radius: 5 in}}}\n"
)
PARTS = TOP + (
    "hems: {narrow: {edges: [skirt.hem_edge], turn: 1/4 in, fold_under: 1/4 in}}\n"
    "bindings:\n"
    "  neck_binding: {edges: [front.neckline], kind: double fold, finished_width: 3/8 in, overlap: 1 in, square: 12 in}\n"
    "  facing: {edges: [front.armhole], kind: single fold, finished_width: 1/2 in, overlap: 1/2 in}\n"
    "  cape_binding: {edges: [cape.neck, cape.round], kind: french, finished_width: 1/4 in, overlap: 1 in, strip: 20 in,\n"
    "    turn_of_cloth: 1/8 in, join_allowance: 1/2 in}\n"
    "circles:\n"
    "  skirt: {waist: body.waist, ease: 1 in, share: half, length: '20, 21 in', hem: narrow}\n"
    "  peplum: {waist: '{body.waist}', share: full, length: 8 in, hem: 1/2 in, seam_allowance: 1/2 in}\n"
    "  tier: {waist: 40 in, share: 3/8, length: 10 in}\n"
)


@pytest.fixture(scope="module")
def found(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    tutorial, findings = computed(tmp_path_factory.mktemp("strips"), PARTS)
    assert messages(findings) == []
    return tutorial


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("neck_binding.strip_width", "1.5", "1.5"),
        ("neck_binding.edge_length", "20", "21"),
        ("neck_binding.needed", "21", "22"),
        ("facing.strip_width", "1", "1"),
        ("facing.length", "15.5", "15.5"),
        ("cape_binding.strip_width", "1.625", "1.625"),
        ("skirt.waist", "27", "29"),
        ("peplum.waist", "26", "28"),
    ],
)
def test_length_in_both_sizes(name: str, small: str, medium: str, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    assert [number.length for number in numbers if number] == [inches(small), inches(medium)]


JOIN = 2 * sqrt(2) / 4
"""Both allowances of 1/4 in, along a strip that is cut at 45 degrees."""


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("neck_binding.strip", 11.75 * sqrt(2), 11.75 * sqrt(2)),
        ("neck_binding.join", JOIN, JOIN),
        ("neck_binding.length", 21 + JOIN, 22 + JOIN),
        ("neck_binding.square_side", sqrt((21 + JOIN) * 1.5), sqrt((22 + JOIN) * 1.5)),
        ("neck_binding.sewn_length", 5 * 11.75 * sqrt(2) - 4 * JOIN, 5 * 11.75 * sqrt(2) - 4 * JOIN),
        ("cape_binding.length", 14 * pi + 1 + 2 * sqrt(2), 14 * pi + 1 + 2 * sqrt(2)),
        ("skirt.radius", 27 / pi, 29 / pi),
        ("skirt.cut_radius", 27 / pi - 0.25, 29 / pi - 0.25),
        ("skirt.hem_radius", 27 / pi + 20.5, 29 / pi + 21.5),
        ("skirt.hem_edge", 27 + 20 * pi, 29 + 21 * pi),
        ("narrow.edge_length", 27 + 20 * pi, 29 + 21 * pi),
        ("narrow.fullness", pi / 2, pi / 2),
        ("peplum.cut_radius", 13 / pi - 0.5, 14 / pi - 0.5),
        ("peplum.hem_radius", 13 / pi + 8.5, 14 / pi + 8.5),
        ("tier.radius", 40 / (0.75 * pi), 40 / (0.75 * pi)),
        ("tier.hem_radius", 40 / (0.75 * pi) + 10, 40 / (0.75 * pi) + 10),
        ("cape.hem", 15 * pi, 16 * pi),
        ("cape.hem.cut_edge", 15 * pi + pi / 4, 16 * pi + pi / 4),
        ("cape.neck.cut_edge", 4 * pi, 4 * pi),
        ("cape.neck", 4 * pi, 4 * pi),
        ("cape.round", 10 * pi, 10 * pi),
    ],
)
def test_curve_or_slant_in_both_sizes(name: str, small: float, medium: float, found: Computed) -> None:
    numbers = [found.number(name, size) for size in range(2)]
    lengths = [float(number.length.in_unit(Unit.IN)) for number in numbers if number]
    assert lengths == pytest.approx([small, medium], abs=1e-6)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("neck_binding.whole_strips", 5),
        ("neck_binding.strips", 2),
        ("neck_binding.joins", 1),
        ("cape_binding.strips", 3),
    ],
)
def test_count_of_strips(name: str, value: int, found: Computed) -> None:
    number = found.number(name, 0)
    assert number is not None
    assert number.value == value


def test_every_number_can_be_worked_out(found: Computed) -> None:
    ours = ("neck_binding.", "facing.", "cape_binding.", "skirt.", "peplum.", "tier.", "cape.")
    assert [name for name in found.numbers if name.startswith(ours) and name not in found.names()] == []


def test_working_of_a_binding_names_edge_overlap_and_joins(found: Computed) -> None:
    number = found.number("neck_binding.length", 0)
    assert number is not None
    assert show_working(number, System.INCHES)[-1] == (
        "neck binding length: neck binding edge length 20 in + neck binding overlap 1 in + neck binding join 11/16 in"
        " = 21 3/4 in (shown rounded; worked with the exact numbers)"
    )


def test_wrapped_edge_has_no_allowance_and_takes_nothing_off(found: Computed) -> None:
    allowance, finished = found.number("front.neckline.seam_allowance", 0), found.number("front.finished_length", 0)
    assert allowance is not None
    assert finished is not None
    assert allowance.length == ZERO
    assert finished.length == inches("19.75")


def test_wrapped_edge_with_an_allowance_of_its_own_loses_it(tmp_path: Path) -> None:
    text = PARTS.replace("neckline: '20, 21 in'", "neckline: {length: '20, 21 in', seam_allowance: 3/8 in}")
    tutorial, findings = computed(tmp_path, text)
    assert messages(findings) == []
    finished = tutorial.number("front.finished_length", 0)
    assert finished is not None
    assert finished.length == inches("19.375")


def test_edge_under_a_facing_keeps_its_allowance(found: Computed) -> None:
    allowance = found.number("front.armhole.seam_allowance", 0)
    assert allowance is not None
    assert allowance.length == inches("0.25")


LAST_OF_TOP = 14


def after_top(root: Path, text: str) -> list[str]:
    findings = reviewed(root, TOP + text).findings
    return messages(tuple(each for each in findings if each.place.line > LAST_OF_TOP))


NECK = "edges: [front.neckline], kind: double fold, finished_width: 3/8 in, overlap: 1 in"


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (
            f"{{{NECK}, strip_width: 1 1/4 in}}",
            ["16:106 bias-sum: The neck strip width does not agree: given 1 1/4 in, computed 1 1/2 in."],
        ),
        (
            f"{{{NECK}, length: 21 in}}",
            ["16:101 bias-sum: The neck length does not agree in size M: given 21 in, computed 21, 22 in."],
        ),
        (
            f"{{{NECK}, square: 5 in}}",
            ["16:101 bias-sum: This square makes 12 3/4 in of strip for the neck, but size S needs 21 in."],
        ),
        (
            f"{{{NECK}, square: 1/4 in}}",
            ["16:9 impossible-sum: The neck whole strips cannot be worked out in size S: neck join allowance leaves"
             " nothing of neck square."],
        ),
        (
            f"{{{NECK}, strip: 1/2 in}}",
            ["16:9 impossible-sum: The neck strips cannot be worked out in size S: gained by each strip must be longer"
             " than nothing."],
        ),
        (
            f"{{{NECK}, square: 12 in, strip: 20 in}}",
            ["16:115 given-twice: Binding neck has square and strip. Keep the one out of which it is cut."],
        ),
        (
            "{edges: [front.neckline], kind: bias, finished_width: 3/8 in}",
            ["16:9 key-missing: Binding neck lacks overlap. Example: overlap: 1 in",
             "16:41 wrong-kind: Expected single fold, double fold or french, found “bias”. Example: kind: double fold"],
        ),
        (
            f"{{{NECK.replace('neckline', 'neckl')}}}",
            ["16:18 unknown-reference: There is no edge “front.neckl”. Nearest: front.neckline."],
        ),
    ],
)  # fmt: skip
def test_fault_of_a_binding_is_told(part: str, expected: list[str], tmp_path: Path) -> None:
    assert after_top(tmp_path, f"bindings:\n  neck: {part}\n") == expected


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (
            "{waist: 28 in, share: full, length: 20 in, radius: 9 in}",
            ["17:60 circle-radius: The ring radius does not agree: given 9 in, computed 4 1/2 in."],
        ),
        (
            "{waist: body.waist, share: half, length: 20 in, cut_radius: '8, 8 3/8 in'}",
            ["17:73 circle-radius: The ring cut radius of size M is given as 8 3/8 in, computed it is 8 5/8 in."],
        ),
        (
            "{waist: 1 in, share: full, length: 20 in}",
            ["17:9 impossible-sum: The ring cut radius cannot be worked out in size S: ring seam allowance is as wide as"
             " ring radius."],
        ),
        (
            "{waist: body.waste, share: half, length: 20 in}",
            ["17:17 unknown-reference: There is no number “body.waste”. Nearest: body.waist."],
        ),
        (
            "{waist: 28 in, share: most, length: 20 in}",
            ["17:31 wrong-kind: Expected full, three quarters, half, quarter, or a share of a circle, found “most”."
             " Example: share: half"],
        ),
        (
            "{waist: 28 in, share: half, length: 20 in, hem: narow}",
            ["17:57 unknown-reference: There is no hem “narow”. Nearest: narrow."],
        ),
        ("{share: half, length: 20 in}", ["17:9 key-missing: Circle ring lacks waist. Example: waist: body.waist"]),
    ],
)  # fmt: skip
def test_fault_of_a_circle_is_told(part: str, expected: list[str], tmp_path: Path) -> None:
    text = "hems: {narrow: {edges: [front.armhole], turn: 1/4 in}}\n" + f"circles:\n  ring: {part}\n"
    assert after_top(tmp_path, text) == expected


@pytest.mark.parametrize(
    ("edge", "expected"),
    [
        (
            "{radius: 30 in, turn: 90 outward, length: 45 in}",
            ["6:94 edge-arc: The cape hem does not agree: given 45 in, computed 47 1/8 in."],
        ),
        (
            "{radius: 30 in, shape: half circle outward, measured_on: cut edge, length: 94 in}",
            ["6:127 edge-arc: The cape hem cut edge does not agree: given 94 in, computed 94 1/4 in."],
        ),
        (
            "{radius: 30 in}",
            ["6:52 key-missing: Edge cape.hem has a radius and needs its turn or shape."
             " Example: hem: {shape: quarter circle outward, radius: 30 in}"],
        ),
        (
            "{shape: half circle outward}",
            ["6:52 key-missing: Edge cape.hem lacks radius."
             " Example: hem: {shape: quarter circle outward, radius: 30 in}"],
        ),
        (
            "{radius: 30 in, shape: round}",
            ["6:75 wrong-kind: Expected a full, half or quarter circle, inward or outward, found “round”."
             " Example: hem: {shape: quarter circle outward, radius: 30 in}"],
        ),
        (
            "{radius: 30 in, shape: half circle, turn: 180 outward}",
            ["6:75 given-twice: Edge cape.hem has shape and turn. Keep one of them."],
        ),
        (
            "{radius: 30 in, shape: half circle, measured_on: cut edge}",
            ["6:52 key-missing: The shape of edge cape.hem is measured on the cut edge: say whether it curves inward or"
             " outward. Example: shape: quarter circle outward"],
        ),
    ],
)  # fmt: skip
def test_fault_of_an_arc_is_told(edge: str, expected: list[str], tmp_path: Path) -> None:
    text = (
        "seam_allowance: 1/4 in\nfabrics: {main: {name: cotton, structure: woven}}\n"
        f"pieces: {{cape: {{cut: 1, fabric: main, edges: {{hem: {edge}}}}}}}\n"
    )
    findings = reviewed(tmp_path, text).findings
    assert messages(tuple(each for each in findings if each.place.line == 6)) == expected


SWATCH = "swatch: {rest: 4 in, stretched: 5 1/2 in}"


def test_swatch_gives_the_stretch(tmp_path: Path) -> None:
    text = f"fabrics: {{rib: {{name: rib, structure: knit, stretch_across: 40%, {SWATCH}}}}}\n"
    tutorial, findings = computed(tmp_path, text)
    assert messages(findings) == []
    number = tutorial.number("rib.swatch_stretch", 0)
    assert number is not None
    assert number.ratio.value * 1000 == 375


@pytest.mark.parametrize(
    ("rest", "expected"),
    [
        ("stretch_across: 35%, " + SWATCH, []),
        ("stretch_across: 40%, " + SWATCH, []),
        (
            "stretch_across: 50%, " + SWATCH,
            ["rib is said to stretch by 50%, but its swatch stretches by 37.5%, to the nearest 5% 40%."],
        ),
        (SWATCH, ["The swatch of rib stretches by 37.5%. Write it down as stretch_across: 40%"]),
        (
            "stretch_across: 40%, swatch: {rest: 5 1/2 in, stretched: 4 in}",
            ["The swatch of rib is shorter stretched than at rest. Are the two lengths changed over?"],
        ),
        ("stretch_across: 40%", []),
    ],
)
def test_claimed_stretch_is_held_against_the_swatch(rest: str, expected: list[str], tmp_path: Path) -> None:
    findings = reviewed(tmp_path, f"fabrics: {{rib: {{name: rib, structure: knit, {rest}}}}}\n").findings
    assert [each.message for each in findings if each.check == "stretch-claim"] == expected
