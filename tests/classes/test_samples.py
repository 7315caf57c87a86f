"""The samples of a class against lengths that are worked out here by hand."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, read_class, whole_class

from sitegen.classes import (
    ComputedClass,
    Sample,
    SampleKind,
    SampleNeed,
    sample_needs,
    sample_supplies,
    samples_of,
    shown_size,
)
from sitegen.quantities import System, inputs_of, show_working

INCH = Fraction("25.4")
STEP = Fraction("914.4") / 8
"""An eighth of a yard in millimetres: what shops sell."""
KNIT = (
    "sizes: [S, L]\nseam_allowance: 3/8 in\n"
    "fabrics:\n"
    "  main: {name: jersey, structure: knit, stretch_across: 40%, swatch: {rest: 5 in, stretched: 7 in},"
    " washed: {before: 10 in, after: 9 1/2 in}, shrinkage: 5%, width: 40 in}\n"
    "  rib: {name: rib, structure: knit, stretch_across: 80%, width: 30 in}\n"
    "pieces:\n"
    "  front: {cut: '1', fabric: main, length: '20, 22 in', width: '18, 20 in',"
    " edges: {neckline: '10, 12 in', side: 14 in, hem: '18, 20 in'}}\n"
    "  back: {cut: '1', fabric: main, length: '20, 22 in', width: '18, 20 in',"
    " edges: {neckline: '10, 12 in', side: 14 in, hem: '18, 20 in'}}\n"
    "bands: {neckband: {opening: [front.neckline, back.neckline], ratio: 80%, finished_width: 1 in, fabric: rib,"
    " goes_over: nothing}}\n"
    "hems: {lower: {edges: [front.hem, back.hem], turn: 1 in, stitch: twin needle, needle_gap: 4 mm}}\n"
    "tools: [sewing machine, scissors]\n"
)
ZIGZAG = "stitch: zigzag, stitch_width: 1, stitch_length: 2.5"
MAKING = {
    "steps__01-cut_dot_yaml": "title: Cut out\ntext: Cut.\nminutes: 40\ncut: [front, back, neckband]\n",
    "steps__02-pull_dot_yaml": "title: Pull the cloth\ntext: 'It gives {main.stretch_across}.'\nminutes: 10\n",
    "steps__03-side_dot_yaml": "title: Sew one side\ntext: Sew.\nminutes: 20\n"
    f"join: [{{edges: [front.side, back.side], {ZIGZAG}, press: open}}]\n",
    "steps__04-other_dot_yaml": "title: Sew the other side\ntext: Sew.\nminutes: 20\n"
    f"join: [{{edges: [front.side, back.side], {ZIGZAG}, press: open}}]\n",
    "steps__05-band_dot_yaml": "title: Sew on the band\ntext: Sew.\nminutes: 40\n"
    f"join: [{{edges: [neckband, front.neckline + back.neckline], {ZIGZAG}}}]\n",
    "steps__06-hem_dot_yaml": "title: Hem it\ntext: Hem.\nminutes: 30\nhem: [lower]\n",
}
LESSONS = CLASS.replace("[{minutes: 200}]", "[{minutes: 50}, {minutes: 90}]") + "before_class: [cut]\n"


@pytest.fixture
def cls(tmp_path: Path) -> ComputedClass:
    return whole_class(tmp_path, LESSONS, tutorial=KNIT, **MAKING)


def of_kind(kind: SampleKind, cls: ComputedClass) -> list[Sample]:
    return [sample for sample in samples_of(cls, System.INCHES) if sample.kind is kind]


def cloth(sample: Sample) -> list[tuple[str, Fraction, Fraction, int]]:
    """Fabric, inches across, inches along, pieces."""
    return [
        (each.fabric, each.across.length.mm / INCH, each.along.length.mm / INCH, each.pieces) for each in sample.cloth
    ]


def test_swatches_have_the_marks_of_the_tutorial_and_room_to_hold(cls: ComputedClass) -> None:
    """5 in between the marks and 2 in at either end; a hand's breadth, 4 in, on either side of the fold."""
    (stretch,) = of_kind(SampleKind.STRETCH, cls)
    assert cloth(stretch) == [("main", 9, 8, 1)]
    assert [step.number for step in stretch.steps] == [2]
    assert stretch.count.value == 5
    (washing,) = of_kind(SampleKind.WASHING, cls)
    assert cloth(washing) == [("main", 10, 10, 2)]
    assert (washing.count.value, washing.steps) == (1, ())


def test_a_swatch_for_a_step_before_class_is_shown_and_not_handed_out(tmp_path: Path) -> None:
    lessons = LESSONS.replace("before_class: [cut]", "before_class: [cut, pull]")
    (stretch,) = of_kind(SampleKind.STRETCH, whole_class(tmp_path, lessons, tutorial=KNIT, **MAKING))
    assert stretch.count.value == 1


def test_each_way_of_sewing_has_one_sample_with_all_its_steps(cls: ComputedClass) -> None:
    sides, band = of_kind(SampleKind.SEAM, cls)
    assert cloth(sides) == [("main", 4, 8, 2)]
    assert [step.number for step in sides.steps] == [3, 4]
    assert cloth(band) == [("rib", 4, 8, 1), ("main", 4, 8, 1)]
    assert [step.number for step in band.steps] == [5]


def test_another_setting_is_another_sample(tmp_path: Path) -> None:
    other = MAKING["steps__04-other_dot_yaml"].replace("stitch_length: 2.5", "stitch_length: 3")
    changed = {**MAKING, "steps__04-other_dot_yaml": other}
    assert len(of_kind(SampleKind.SEAM, whole_class(tmp_path, LESSONS, tutorial=KNIT, **changed))) == 3


def test_hem_and_band_are_as_large_as_their_numbers_make_them(cls: ComputedClass) -> None:
    """The hem takes 1 in, with 4 in of cloth above. The opening is 20 in in S, so the band is 16 in and two
    allowances long, twice 1 in and two allowances wide; the strip of the opening has its two allowances too."""
    (hem,) = of_kind(SampleKind.HEM, cls)
    assert cloth(hem) == [("main", 8, 5, 1)]
    (band,) = of_kind(SampleKind.BAND, cls)
    allowances = Fraction(3, 4)
    assert cloth(band) == [
        ("rib", 20 * Fraction(4, 5) + allowances, 2 + allowances, 1),
        ("main", 20 + allowances, 4, 1),
    ]


def test_every_session_ends_with_a_garment(cls: ComputedClass) -> None:
    stages = of_kind(SampleKind.STAGE, cls)
    assert [(stage.session, stage.steps[-1].number) for stage in stages] == [(1, 4), (2, 6)]
    assert {stage.size for stage in stages} == {0}


def test_cloth_of_all_samples(cls: ComputedClass) -> None:
    """Of the rib a band of 16 3/4 × 2 3/4 in beside a strip of 4 × 8 in fits on 30 in: 8 in, so 2/8 yd. Of the jersey
    no layout can do with less than the area, over 95 %."""
    samples = samples_of(cls, System.INCHES)
    needs = {need.fabric.key: need for need in sample_needs(samples, cls, System.INCHES)}
    assert bought(needs["rib"]) == 2 * STEP
    area = 5 * 9 * 8 + 2 * 10 * 10 + 3 * 4 * 8 + 8 * 5 + Fraction(83, 4) * 4
    least = area / 40 / Fraction(95, 100) * INCH
    assert least <= bought(needs["main"]) < 2 * least
    assert bought(needs["main"]) % STEP == 0
    # Two garments of size S: both pieces beside each other on 40 in take 20 in before washing.
    assert garments(needs["main"]) == ceil(2 * 20 / Fraction(95, 100) * INCH / STEP) * STEP
    assert garments(needs["rib"]) == ceil(2 * Fraction(11, 4) * INCH / STEP) * STEP
    for need in needs.values():
        assert need.swatches is not None
        assert show_working(need.swatches, System.INCHES)[-1].startswith("to buy: ")
        assert {each.name for each in inputs_of(need.swatches)} >= {"one step"}
        assert any("(laid open in one layer)" in line for line in show_working(need.swatches, System.INCHES))


def bought(need: SampleNeed) -> Fraction:
    assert need.swatches is not None
    return need.swatches.length.mm


def garments(need: SampleNeed) -> Fraction:
    assert need.garments is not None
    return need.garments.length.mm


def test_cloth_that_is_too_narrow_or_of_unknown_width_says_so(tmp_path: Path) -> None:
    narrow = whole_class(tmp_path / "a", LESSONS + "widths: {rib: 12 in}\n", tutorial=KNIT, **MAKING)
    reasons = {
        need.fabric.key: need.reason for need in sample_needs(samples_of(narrow, System.INCHES), narrow, System.INCHES)
    }
    assert "12 in wide" in reasons["rib"]
    assert not reasons["main"]
    unknown = whole_class(tmp_path / "b", LESSONS, tutorial=KNIT.replace(", width: 30 in", ", buy: 1/4 yd"), **MAKING)
    needs = {need.fabric.key: need for need in sample_needs(samples_of(unknown, System.INCHES), unknown, System.INCHES)}
    assert needs["rib"].reason == "the tutorial does not say how wide it is"
    assert needs["rib"].swatches is None


def test_size_that_most_students_make_is_shown(tmp_path: Path) -> None:
    assert shown_size(whole_class(tmp_path / "a")) == 0
    assert shown_size(whole_class(tmp_path / "b", CLASS.replace("L: 2", "L: 4"))) == 1
    assert shown_size(whole_class(tmp_path / "c", CLASS.replace("L: 2", "L: 3"))) == 0


def test_class_without_minutes_has_samples_but_no_stages(tmp_path: Path) -> None:
    steps = {name: text.replace("minutes: 30\n", "") for name, text in STEPS.items()}
    cls, findings = read_class(tmp_path, **steps)
    assert cls is not None
    assert findings
    assert [sample.kind for sample in samples_of(cls, System.INCHES)] == [SampleKind.SEAM]


def test_centimetres_have_round_strips_of_their_own(cls: ComputedClass) -> None:
    sides = next(sample for sample in samples_of(cls, System.CENTIMETRES) if sample.kind is SampleKind.SEAM)
    assert [(each.across.length.mm, each.along.length.mm) for each in sides.cloth] == [(100, 200)]


def test_what_is_sewn_into_made_up_samples_is_told_besides_their_cloth(tmp_path: Path) -> None:
    supplies = (
        "supplies: [{item: zip, size: 8 in, amount: '1'}, {item: cord, amount: 40 in}, {item: chalk},"
        " {item: thread, amount: 1 spool}, {item: twin needle, amount: '1'}]\n"
    )
    taught = whole_class(tmp_path, LESSONS, tutorial=KNIT + supplies, **MAKING)
    samples = samples_of(taught, System.INCHES)
    stages = len(of_kind(SampleKind.STAGE, taught))
    found = {line.name: amount for line, amount in sample_supplies(samples, taught, System.INCHES)}
    assert list(found) == ["zip", "cord"]
    assert found["zip"].number == stages
    assert found["cord"].length.mm == ceil(stages * 40 * INCH / STEP) * STEP
