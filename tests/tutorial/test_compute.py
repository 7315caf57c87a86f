"""Numbers of a tutorial: what follows from what, size by size, and how it is told."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import computed, messages

from sitegen.quantities import Length, System, cm, inches, show_working
from sitegen.tutorial import Computed

KNIT = (
    "sizes: [S, M]\n"
    "body: {head: 22 in, waist: '26, 28 in'}\n"
    "seam_allowance: 3/8 in\n"
    "fabrics:\n"
    "  main: {name: jersey, structure: knit, stretch_across: 40%}\n"
    "  rib: {name: rib, structure: knit, stretch_across: 80%}\n"
    "pieces:\n"
    "  front:\n"
    "    {cut: 1 on fold, fabric: main, length: '25, 26 in', sides: {top: seam, bottom: hem, left: seam, right: seam},\n"
    "     edges: {neckline: '12 1/2, 13 in', side: 15 in, hem: '18, 20 in', chest: '18, 20 in'}}\n"
    "  back: {cut: 1 on fold, fabric: main, edges: {neckline: 7 1/2 in, side: '{front.side}', hem: '18, 20 in',\n"
    "     chest: '18, 20 in'}}\n"
    "  sleeve: {cut: 2, fabric: main, length: 20 in, sides: {top: cap, bottom: wrist}, edges: {cap: 17 in, wrist: 9 in},\n"
    "     taper: {top: 15 in, bottom: 9 in, over: 15 in, edges: 2}}\n"
    "bands:\n"
    "  neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: rib,\n"
    "     goes_over: head}\n"
    "  cuffs: {opening: [sleeve.wrist], ratio: 3/4, finished_width: 2 in, fabric: rib, make: 2, goes_over: hand}\n"
    "hems: {lower: {edges: [front.hem, back.hem], turn: 1 in, stitch: twin needle, needle_gap: 4 mm,\n"
    "     stitch_line: 5/8 in}}\n"
    "girths: {hip_round: {edges: [front.hem, back.hem], body: waist}}\n"
    "elastics: {waistband: {around: body.waist, ratio: 90%, overlap: 1 in, width: 3/4 in, room: 1/8 in,\n"
    "     fold_under: 3/8 in}}\n"
    "changes:\n"
    "  longer: {piece: sleeve, line_at: 2/3 from the top, wanted: 24 in finished}\n"
    "  shorter: {pieces: [front, back], line_at: 6 in from the bottom, shorten_by: 1 in}\n"
)


@pytest.fixture(scope="module")
def tee(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    found, findings = computed(tmp_path_factory.mktemp("tee"), KNIT)
    assert messages(findings) == []
    return found


@pytest.mark.parametrize(
    ("name", "small", "medium"),
    [
        ("neckband.opening_length", "20", "20.5"),
        ("neckband.finished_length", "16", "16.4"),
        ("neckband.cut_length", "16.75", "17.15"),
        ("neckband.cut_width", "2.75", "2.75"),
        ("neckband.band_quarter", "4", "4.1"),
        ("neckband.opening_quarter", "5", "5.125"),
        ("neckband.quarter_from_shoulder", "1.25", "1.375"),
        ("neckband.reach", "22", "22"),
        ("cuffs.finished_length", "6.75", "6.75"),
        ("back.side", "15", "15"),
        ("front.cut_length", "25", "26"),
        ("front.finished_length", "23.625", "24.625"),
        ("sleeve.finished_length", "21.25", "21.25"),
        ("lower.allowance", "1", "1"),
        ("lower.edge_length", "36", "40"),
        ("hip_round.ease", "10", "12"),
        ("waistband.finished_length", "23.4", "25.2"),
        ("waistband.cut_length", "24.4", "26.2"),
        ("waistband.casing", "1.25", "1.25"),
        ("longer.amount", "2.75", "2.75"),
        ("longer.new_cut_length", "22.75", "22.75"),
        ("longer.new_finished_length", "24", "24"),
        ("longer.taper_step", "0.55", "0.55"),
        ("shorter.amount", "-1", "-1"),
        ("shorter.fold", "0.5", "0.5"),
        ("shorter.part_above", "19", "20"),
        ("shorter.part_below", "6", "6"),
        ("shorter.new_cut_length", "24", "25"),
    ],
)
def test_number_in_both_sizes(name: str, small: str, medium: str, tee: Computed) -> None:
    found = [tee.number(name, size) for size in range(2)]
    assert [number.length for number in found if number] == [inches(small), inches(medium)]


def test_parts_above_and_below_make_the_cut_length(tee: Computed) -> None:
    above, below = tee.number("longer.part_above", 0), tee.number("longer.part_below", 0)
    assert above is not None
    assert below is not None
    assert above.length + below.length == inches(20)
    assert above.length == inches(20) * 2 / 3


def test_twin_needle_adds_its_gap_to_the_far_row(tee: Computed) -> None:
    far, catch = tee.number("lower.far_row", 0), tee.number("lower.catch", 0)
    assert far is not None
    assert catch is not None
    assert far.length == inches("5/8") + cm("0.4")
    assert far.length + catch.length == inches(1)


def test_stretch_is_told_for_sewing_and_for_wearing(tee: Computed) -> None:
    sew, wear = tee.number("neckband.stretch_to_sew", 0), tee.number("neckband.stretch_to_wear", 0)
    assert sew is not None
    assert wear is not None
    assert (sew.ratio.value, wear.ratio.value) == (0.25, 0.375)


def test_reach_of_an_adult_has_a_published_default(tee: Computed) -> None:
    reach = tee.number("cuffs.reach", 0)
    assert reach is not None
    assert reach.length == cm(23)
    assert "ANSUR II" in reach.note


def test_value_by_reference_follows_the_other_number(tmp_path: Path) -> None:
    found, _ = computed(tmp_path, KNIT.replace("side: 15 in", "side: '15, 16 in'"))
    sides = found.by_size("back.side")
    assert sides is not None
    assert [side.length for side in sides] == [inches(15), inches(16)]


def test_working_reads_as_the_sum_was_done(tee: Computed) -> None:
    number = tee.number("neckband.cut_length", 0)
    assert number is not None
    assert show_working(number, System.INCHES) == (
        "neckband opening length: front neckline 12 1/2 in + back neckline 7 1/2 in = 20 in",
        "neckband finished length: neckband opening length 20 in × ratio 80% = 16 in",
        "neckband cut length: neckband finished length 16 in + 2 seam allowances of 3/8 in = 16 3/4 in",
    )


def test_working_of_a_finished_length_names_what_each_end_takes(tee: Computed) -> None:
    number = tee.number("sleeve.finished_length", 0)
    assert number is not None
    assert show_working(number, System.INCHES) == (
        "sleeve finished length: sleeve cut length 20 in − 2 seam allowances of 3/8 in"
        " + cuffs finished width 2 in = 21 1/4 in",
    )


def test_circle_is_shown_as_a_circle(tmp_path: Path) -> None:
    text = KNIT.replace("side: 15 in", "side: '{back.side}'")
    found = computed(tmp_path, text)[1]
    assert messages(found) == [
        "13:48 circle: These numbers need each other in a circle: front.side → back.side → front.side."
        " Write one of them as a length."
    ]


def test_reference_to_nothing_names_the_nearest(tmp_path: Path) -> None:
    text = KNIT + "before_you_start: |\n  Cut the band\n  {neckband.cut_lenght} long.\n"
    found = computed(tmp_path, text)[1]
    assert messages(found) == [
        "32:4 unknown-reference: There is no number “neckband.cut_lenght”."
        " Nearest: neckband.cut_length, neckband.cut_width, waistband.cut_length."
    ]


CURVED = (
    "seam_allowance: 1 cm\nfabrics: {main: {name: linen, structure: woven}}\n"
    "pieces: {front: {cut: 1, fabric: main, edges: {neckline: {length: 50 cm, turn: 180 inward, measured_on: WHERE}}}}\n"
)


def neckline(tmp_path: Path, where: str) -> tuple[Length, Length]:
    found, findings = computed(tmp_path, CURVED.replace("WHERE", where))
    assert findings == ()
    seam, cut = found.number("front.neckline", 0), found.number("front.neckline.cut_edge", 0)
    assert seam is not None
    assert cut is not None
    return seam.length, cut.length


def test_curved_edge_measured_on_the_cut_edge_is_longer_on_its_seam_line(tmp_path: Path) -> None:
    seam, cut = neckline(tmp_path, "cut edge")
    assert cut == cm(50)
    assert float((seam - cut).mm) == pytest.approx(31.4159265)


def test_curved_edge_measured_on_the_seam_line_is_shorter_on_its_cut_edge(tmp_path: Path) -> None:
    seam, cut = neckline(tmp_path, "seam line")
    assert seam == cm(50)
    assert float((seam - cut).mm) == pytest.approx(31.4159265)


def test_every_number_can_be_worked_out_in_every_size(tee: Computed) -> None:
    assert len(tee.names()) == len(list(tee.numbers))
    for name in tee.names():
        for size in range(2):
            number = tee.number(name, size)
            assert number is not None
            assert show_working(number, System.CENTIMETRES)


def then(name: str, size: int, tee: Computed) -> Length:
    number = tee.number(name, size)
    assert number is not None, name
    return number.length


def test_every_length_that_follows_from_a_change_has_a_name(tee: Computed) -> None:
    assert then("longer.then.sleeve.cut_length", 0, tee) == inches("22.75")
    assert then("longer.then.sleeve.finished_length", 0, tee) == inches(24)
    assert "longer.then.front.cut_length" not in tee.names()
    assert then("shorter.then.front.finished_length", 1, tee) == inches("23.625")


MORE = KNIT + (
    "  wider: {pieces: [front, back], widen_by: 2 in, seam_edges: 4, crosses: [hem, chest]}\n"
    "swaps:\n"
    "  self_band: {band: neckband, fabric: main}\n"
    "  soft_band: {band: neckband, fabric: main, ratio: 95%}\n"
)


@pytest.fixture(scope="module")
def more(tmp_path_factory: pytest.TempPathFactory) -> Computed:
    found, findings = computed(tmp_path_factory.mktemp("more"), MORE)
    assert messages(findings) == []
    return found


def test_widening_is_spread_over_the_seam_edges(more: Computed) -> None:
    """1 in over 2 side seams = 4 edges × 1/4 in: Central Washington Univ., costume text, chapter 17 (rule)."""
    assert then("wider.each_edge", 0, more) == inches("0.5")
    assert then("wider.then.front.hem", 0, more) == inches(19)
    assert then("wider.then.hip_round.ease", 0, more) == inches(12)
    assert then("wider.then.lower.edge_length", 1, more) == inches(42)


def test_other_fabric_gets_the_least_ratio_that_serves(more: Computed) -> None:
    ratio = more.number("self_band.ratio", 0)
    assert ratio is not None
    assert ratio.ratio.value * 100 == 79
    assert then("self_band.then.neckband.finished_length", 0, more) == inches("15.8")
    assert then("soft_band.then.neckband.cut_length", 0, more) == inches("19.75")


def chained(links: int, *, backwards: bool = False) -> str:
    """Pieces of which each has a side as long as that of the next."""
    pieces = [
        f'  p{number}: {{cut: 2, fabric: main, edges: {{side: "{{p{number + 1}.side}}"}}}}' for number in range(links)
    ]
    pieces.append(f"  p{links}: {{cut: 2, fabric: main, edges: {{side: 9 in}}}}")
    rows = "\n".join(reversed(pieces) if backwards else pieces)
    return f"fabrics: {{main: {{name: felt, structure: woven}}}}\npieces:\n{rows}\n"


@pytest.mark.parametrize("links", [101, 330, 1500])
def test_long_chain_of_references_is_told_once_with_a_place(links: int, tmp_path: Path) -> None:
    _, findings = computed(tmp_path, chained(links))
    assert messages(findings) == [
        "6:45 long-chain: p0.side follows from another number, that one from the next, and so on over more than 100 in a"
        " row. Write one of them as a length."
    ]


def test_chain_as_long_as_there_may_be_is_worked_out_in_any_order(tmp_path: Path) -> None:
    for backwards in (False, True):
        found, findings = computed(tmp_path / str(backwards), chained(100, backwards=backwards))
        assert findings == ()
        side = found.number("p0.side", 0)
        assert side is not None
        assert side.length == inches(9)


def test_what_is_too_long_does_not_depend_on_what_was_asked_first(tmp_path: Path) -> None:
    for backwards in (False, True):
        found, findings = computed(tmp_path / str(backwards), chained(103, backwards=backwards))
        assert [each.check for each in findings] == ["long-chain"]
        known = [number for number in range(104) if found.number(f"p{number}.side", 0) is not None]
        assert known == list(range(3, 104))
