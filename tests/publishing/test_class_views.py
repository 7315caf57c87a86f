"""What is told of a class, against sums and clocks that are worked out here by themselves."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, TOTE, read_class, whole_class
from content import EXAMPLE

from sitegen.checks import review_class
from sitegen.classes import ComputedClass
from sitegen.publishing import KitItem, KitView, class_head, kit_view, layout_drawing, plan_view, samples_view
from sitegen.publishing.languages import speech_in
from sitegen.quantities import System
from sitegen.reading import ContentFolder

PRICES = "prices: {canvas: £9.99 a yard, polyester thread: £1.10, universal needle: £0.35}\n"


def items(kit: KitView) -> dict[str, KitItem]:
    return {item.key: item for group in kit.groups for item in group.items}


def evening() -> ComputedClass:
    cls, _ = review_class(ContentFolder(EXAMPLE, "content_example"), "classes/evening-tee.yaml")
    assert cls is not None
    return cls


def test_lengths_that_are_bought_in_other_units_than_the_class_works_in_are_told_in_both(tmp_path: Path) -> None:
    """A price a metre has the shop measure in centimetres; the bags of a class that measures in inches tell both."""
    text = CLASS + "measured_in: inches\nprices: {canvas: £9 a metre, denim: £9 a yard, cotton tape: £1 a metre}\n"
    kit = kit_view(whole_class(tmp_path, text), System.INCHES)
    details = {item.key: item.detail for group in kit.groups for item in group.items}
    assert details["canvas"] == "114.5 cm (45 in) wide"
    things = {packed.name: packed.amount for packed in kit.bags[0].things}
    assert things["cotton canvas, 114.5 cm (45 in) wide"] == "13 3/8 in (34 cm)"
    assert things["denim"] == "18 in"
    assert things["cotton tape"] == "10 in (25.5 cm)"


def test_totals_against_a_small_calculation(tmp_path: Path) -> None:
    """3 students in S, 2 in L. Elastic: 90 % of 30 and 40 in and 1 in each; 5 % to spare; shops sell 1/8 yd, 4 1/2 in.
    Thread 2 spools each, needles one each, 10 % to spare, rounded up."""
    found = items(kit_view(whole_class(tmp_path, CLASS + PRICES), System.INCHES))
    elastic = (3 * (30 * Fraction(9, 10) + 1) + 2 * (40 * Fraction(9, 10) + 1)) * Fraction(21, 20)
    eighths = ceil(elastic / Fraction(9, 2))
    assert found["top"].buy.text == f"{eighths // 8} {Fraction(eighths % 8, 8)} yd"
    assert [(each.size, each.text) for each in found["top"].for_one] == [("S", "28 in"), ("L", "37 in")]
    thread = found["polyester thread"]
    assert (thread.needed, thread.spare, thread.buy.text) == ("10 spools", "1 spool", "11 spools")
    assert found["universal needle"].called == "universal needle, 80/12"
    assert (found["chalk"].shared, found["chalk"].for_one) == ("all share it", ())


def test_money_of_the_view_adds_up(tmp_path: Path) -> None:
    """11 spools at 1.10, 6 needles at 0.35, and the cloth by the yard; what is shown is each rounded to the cent."""
    kit = kit_view(whole_class(tmp_path, CLASS + PRICES), System.INCHES)
    found = items(kit)
    costs = {key: item.cost.text for key, item in found.items() if item.cost is not None}
    assert costs["polyester thread"] == "£12.10"
    assert costs["universal needle"] == "£2.10"
    yards = Fraction(found["canvas"].buy.text.split()[0]) + sum(map(Fraction, found["canvas"].buy.text.split()[1:-1]))
    cents = int(yards * 999 + Fraction(1, 2))
    assert costs["canvas"] == f"£{cents // 100}.{cents % 100:02d}"
    assert kit.total is not None
    shown = sum(Fraction(cost.removeprefix("£")) for cost in costs.values())
    assert abs(Fraction(kit.total.text.removeprefix("£")) - shown) <= Fraction(1, 100)
    assert set(kit.without_price) == {"denim", "soft elastic", "cotton tape", "chalk"}
    paid = 3 * Fraction(kit.costs[0][1].text[1:]) + 2 * Fraction(kit.costs[1][1].text[1:])
    assert abs(paid - Fraction(kit.total.text[1:])) <= Fraction(5, 100)


@pytest.mark.parametrize("system", list(System))
def test_every_total_has_its_working(system: System) -> None:
    cls = evening()
    kit = kit_view(cls, system)
    for item in items(kit).values():
        assert item.buy.working[-1].startswith("to buy: ")
        assert item.cost is not None
        assert item.cost.working[-1].endswith(f"= {item.cost.text}")
    assert kit.total is not None
    assert kit.total.working[-1].startswith("the kit: ")
    for _, cost in kit.costs:
        assert len(cost.working) == len(items(kit)) + 1
        assert f"= {cost.text}" in cost.working[-1]
    samples = samples_view(cls, system)
    for total in samples.totals:
        assert total.amount is not None
        assert total.amount.working[-1].startswith("to buy: ")
    for session in plan_view(cls, system).sessions:
        for placed in session.steps:
            assert placed.working[-1].startswith("minutes in class: ")
            assert str(placed.minutes) in placed.working[-1]


def test_parts_and_bags_by_size(tmp_path: Path) -> None:
    kit = kit_view(whole_class(tmp_path, CLASS + "before_class: [cut]\nshared: {polyester thread: 5}\n"), System.INCHES)
    (panel,) = kit.parts
    assert kit.sizes == ("S", "L")
    assert (panel.name, panel.how, panel.cells) == ("panel", "2", ("6: 12 in × 16 in", "4: 14 in × 18 in"))
    assert [bag.head for bag in kit.bags] == ["3 bags of size S", "2 bags of size L"]
    assert kit.bags[0].cut == ("2 panels",)
    assert [(thing.name, thing.amount) for thing in kit.bags[1].things] == [
        ("denim", "27 in"),
        ("soft elastic, 1 in wide", "37 in"),
        ("universal needle, 80/12", "1"),
        ("cotton tape", "10 in"),
    ]
    assert kit.shared == ("polyester thread", "chalk")


def test_layout_holds_every_piece_of_the_class(tmp_path: Path) -> None:
    cls = whole_class(tmp_path, CLASS + "before_class: [cut]\n")
    (layout,) = kit_view(cls, System.INCHES).layouts
    assert (layout.fabric, layout.width) == ("cotton canvas", "45 in")
    copies = [placed.piece for placed in layout.picture.laid.placements for _ in placed.copies]
    assert sorted(copies) == ["panel L"] * 4 + ["panel S"] * 6
    svg, file = layout_drawing(layout, System.INCHES, "one")
    assert svg.startswith("<svg")
    assert "panel S" in file.description
    assert "panel L" in file.description
    assert not kit_view(whole_class(tmp_path / "b"), System.INCHES).layouts


def test_pieces_of_a_layout_are_called_by_piece_and_size(tmp_path: Path) -> None:
    tutorial = TOTE.replace("[S, L]", "[Age 4, Age 6]").replace("panel: {cut", "panel: {called: bag panel, cut")
    text = CLASS.replace("{S: 3, L: 2}", "{Age 4: 3, Age 6: 2}") + "before_class: [cut]\n"
    (layout,) = kit_view(whole_class(tmp_path, text, tutorial=tutorial), System.INCHES).layouts
    assert sorted(layout.picture.called.values()) == ["bag panel Age 4", "bag panel Age 6"]


def test_other_width_and_unknown_cloth_are_told(tmp_path: Path) -> None:
    kit = kit_view(whole_class(tmp_path / "a", CLASS + "widths: {canvas: [60 in, 45 in, 10 in]}\n"), System.INCHES)
    wide, narrow = items(kit)["canvas"].other_widths
    assert wide.startswith("45 in wide it would need ")
    assert narrow.startswith("10 in wide does not do: ")
    kit = kit_view(read_class(tmp_path / "b", CLASS + "widths: {canvas: 10 in}\n")[0] or evening(), System.INCHES)
    assert kit.unknown[0].startswith("cotton canvas: ")


def test_clock_of_the_plan_runs_without_a_gap() -> None:
    """Every step begins when the one before it and its break are over."""
    plan = plan_view(evening(), System.CENTIMETRES)
    for session in plan.sessions:
        clock = minutes_of(session.begins)
        for placed in session.steps:
            assert minutes_of(placed.begins) == clock
            clock += placed.minutes
            if placed.pause:
                assert minutes_of(placed.pause_begins) == clock
                clock += placed.pause
        # What is left is told without the break, which has been taken in each of these sessions or is still to come.
        pause = sum(placed.pause for placed in session.steps)
        assert clock + session.free + (15 - pause) == minutes_of(session.ends)
    assert plan.sessions[0].when == "Tuesday 12 January 2027, 18:30 to 21:00"
    assert [step.number for step in plan.before] == [1, 2, 3, 5, 6]
    assert [step.title for step in plan.sessions[-1].homework] == ["Check, press and wear"]
    assert "50% of a step" in plan.rule[-1]


def minutes_of(clock: str) -> int:
    hours, minutes = clock.split(":")
    return int(hours) * 60 + int(minutes)


def test_plan_without_clock_counts_minutes_and_without_minutes_there_is_none(tmp_path: Path) -> None:
    plan = plan_view(whole_class(tmp_path / "a"), System.INCHES)
    assert [placed.begins for placed in plan.sessions[0].steps] == ["0′", "40′", "70′"]
    assert plan.sessions[0].when == "200 minutes"
    steps = {name: text.replace("minutes: 30\n", "") for name, text in STEPS.items()}
    cls, _ = read_class(tmp_path / "b", **steps)
    assert cls is not None
    with pytest.raises(ValueError, match=r"minutes"):
        plan_view(cls, System.INCHES)


def test_notes_for_the_teacher_tell_the_numbers_of_the_class(tmp_path: Path) -> None:
    note = (
        "teacher: |\n  Check that *each* panel is {panel.cut_length}, in size {size}.\n\n  - Thread it.\n  - Oil it.\n"
    )
    steps = {**STEPS, "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"] + note}
    plan = plan_view(whole_class(tmp_path, **steps), System.INCHES)
    notes = [placed.step.notes for placed in plan.sessions[0].steps]
    told = ("Check that each panel is S 12 in, L 14 in, in size S, L.", "Thread it.", "Oil it.")
    assert notes == [(), told, ()]


def test_head_names_views_and_changes(tmp_path: Path) -> None:
    head = class_head(whole_class(tmp_path, CLASS + "changes: [taller]\nwhere: the hall\n"))
    assert (head.students, head.made) == ("5 students: 3 in size S, 2 in size L", "Tutorial tee; changed: taller")
    assert (head.title, head.tutorial, head.where) == ("Evening class", "Test tee", "the hall")


def test_samples_are_told_with_their_numbers() -> None:
    """Size M is made by most: neckband 80 % of 20 5/8 in, and 3/8 in at either end."""
    view = samples_view(evening(), System.INCHES)
    groups = {group.head: group.samples for group in view.groups}
    assert list(groups) == [
        "Swatches to stretch", "Seams", "Hems", "Bands on their openings", "Made-up samples, as they are when a session ends",
    ]  # fmt: skip
    band = groups["Bands on their openings"][0]
    assert band.name == "neckband, size M"
    assert (band.cloth[0].fabric, band.cloth[0].size.text) == (
        "1x1 cotton rib with elastane",
        "17 1/4 in across, 2 1/4 in along the grain",
    )
    assert "From mark to mark the band measures 4 1/8 in and the opening 5 1/8 in." in band.how
    (hem,) = groups["Hems"]
    assert hem.how[1] == "Stitch 5/8 in from the fold, with needles 4 mm apart."
    assert [step.number for step in groups["Seams"][1].steps] == [10, 13]
    assert [sample.name for sample in groups["Made-up samples, as they are when a session ends"]] == [
        f"after session {number}, size M" for number in (1, 2, 3)
    ]


@pytest.mark.parametrize(
    ("edge", "front", "said"),
    [
        ("ankle", "5 in", []),
        ("neckline", "5 in", ["On the garment the side marks lie 1/2 in behind the shoulder seams."]),
        ("neckline", "7 in", ["On the garment the side marks lie on the shoulder seams."]),
        ("neckline", "9 in", ["On the garment the side marks lie 1/2 in in front of the shoulder seams."]),
    ],
)
def test_side_marks_of_a_band_are_told_from_the_shoulder_on_a_neck(
    edge: str, front: str, said: list[str], tmp_path: Path
) -> None:
    text = (
        "seam_allowance: 1/2 in\nfabrics: {main: {name: jersey, structure: knit, stretch_across: 60%, buy: 1 yd}}\n"
        f"pieces: {{front: {{cut: 1, fabric: main, edges: {{{edge}: {front}}}}},"
        f" back: {{cut: 1, fabric: main, edges: {{{edge}: 7 in}}}}}}\n"
        f"bands: {{band: {{opening: [front.{edge}, back.{edge}], ratio: 80%, finished_width: 1 in, fabric: main}}}}\n"
    )
    step = f"title: Sew\ntext: Sew.\nminutes: 9\njoin: [{{edges: [band, front.{edge}, back.{edge}], stitch: zigzag}}]\n"
    one = "title: Class\ntutorial: tee\nstudents: 2\nsessions: [{minutes: 90}]\n"
    view = samples_view(whole_class(tmp_path, one, tutorial=text, steps__01_dot_yaml=step), System.INCHES)
    (band,) = (sample for group in view.groups if group.head == "Bands on their openings" for sample in group.samples)
    assert [line for line in band.how if "shoulder" in line] == said


def test_lists_speak_spanish_throughout() -> None:
    """What the program says of a class is in the tables of the language: nothing is left marked as English."""
    cls, spanish = evening(), speech_in("es", "es")
    language = spanish.of_tutorial({}, cls.computed.numbers, frozenset())
    told = [str(view(cls, System.CENTIMETRES, language)) for view in (kit_view, plan_view, samples_view)]
    # Marks of foreign words are noncharacters, which repr shows as escapes.
    assert [text[text.index("\\ufdd0") :][:80] for text in told if "\\ufdd0" in text] == []
    assert "martes 12 de enero de 2027" in told[1]
    assert "7,4 m" in told[0]
