"""What is said of a class that does not fit is tried: doing what is said makes it fit, and less does not."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, read_class, whole_class
from content import messages

from sitegen.classes import plan_of, too_long, ways_to_fit

SHORT = CLASS.replace("[{minutes: 200}]", "[{minutes: 60}, {minutes: 65}]")
ROOM = "room: {sewing machine: 2, iron: 5, scissors: 5}\n"


def finding(root: Path, text: str) -> str:
    _, findings = read_class(root, text)
    (found,) = [each.message for each in findings if each.check == "class-time"]
    return found


def test_a_class_that_fits_says_nothing(tmp_path: Path) -> None:
    _, findings = read_class(tmp_path, CLASS)
    assert messages(findings) == []


def test_message_of_a_class_that_does_not_fit(tmp_path: Path) -> None:
    assert finding(tmp_path, SHORT + ROOM) == (
        "The steps take 120 minutes in this class, the sessions have 125, but no step is broken off at the end of one."
        " “Press the bag” is left over. It fits with 15 more minutes in session 2, or with 3 sewing machines instead of"
        " 2, or with 1 more session of 65 minutes."
    )


def test_more_minutes_are_the_fewest_in_fives(tmp_path: Path) -> None:
    more = int(re.search(r"with (\d+) more minutes", finding(tmp_path / "a", SHORT + ROOM))[1])  # type: ignore[index]
    for minutes, fits in ((65 + more, True), (65 + more - 5, False)):
        text = SHORT.replace("minutes: 65", f"minutes: {minutes}") + ROOM
        assert plan_of(whole_class(tmp_path / str(minutes), text)).fits is fits


@pytest.mark.parametrize(("machines", "fits"), [(2, False), (3, True)])
def test_more_tools_are_the_fewest(machines: int, fits: bool, tmp_path: Path) -> None:
    text = SHORT + ROOM.replace("sewing machine: 2", f"sewing machine: {machines}")
    assert plan_of(whole_class(tmp_path, text)).fits is fits


def test_steps_without_a_tool_of_the_room_can_be_homework(tmp_path: Path) -> None:
    text = SHORT.replace("minutes: 65", "minutes: 40") + "room: {sewing machine: 5}\nbrings: [iron, scissors]\n"
    assert "with “Press the bag” as homework" in finding(tmp_path, text)
    assert plan_of(whole_class(tmp_path, text + "homework: [press]\n")).fits


def test_a_class_may_need_a_tool_for_everyone(tmp_path: Path) -> None:
    text = SHORT.replace("60}, {minutes: 65", "90") + "room: {sewing machine: 2, iron: 2, scissors: 5}\n"
    cls = whole_class(tmp_path, text)
    assert "with as many sewing machines and irons as students" in ways_to_fit(cls, plan_of(cls))


def test_step_longer_than_every_session(tmp_path: Path) -> None:
    text = CLASS.replace("[{minutes: 200}]", "[{minutes: 45, break: 10}, {minutes: 40}, {minutes: 40}]")
    cls, findings = read_class(tmp_path, text + "together: [[sew, press]]\n")
    assert cls is not None
    assert [([step.number for step in steps], minutes) for steps, minutes in too_long(cls)] == [([2, 3], 50)]
    assert any(
        each.message
        == "“Sew the sides” and “Press the bag” follow each other and take 50 minutes in this class, and no"
        " session has more than 40 without breaks."
        for each in findings
    )


def test_a_step_without_minutes_is_told_and_nothing_is_planned(tmp_path: Path) -> None:
    steps = {**STEPS, "steps__02-sew_dot_yaml": STEPS["steps__02-sew_dot_yaml"].replace("minutes: 30\n", "")}
    _, findings = read_class(tmp_path, CLASS, **steps)
    assert [each.check for each in findings] == ["class-minutes"]
    _, left_out = read_class(tmp_path, CLASS + "left_out: [sew]\n", **steps)
    assert [each.check for each in left_out] == []


@pytest.mark.parametrize(
    ("more", "check", "message"),
    [
        ("room: {seats: 4, scissors: 5, sewing machine: 5, iron: 5}", "class-seats", "The room has 4 seats for 5 students."),
        ("room: {iron: 5}", "room-tool-none", "neither the room has nor the students bring: scissors, sewing machine"),
        ("room: {iron: 5, sewing machine: 5}\nbrings: [scisors]", "room-tool-none", "bring: scissors. Is “scisors” meant to be scissors? Say how"),
        ("room: {scissors: 5, sewing machine: 5, iron: 5, irony: 2}", "room-unused", "names a tool “irony”. Nearest: iron."),
        ("before_class: [sew]", "class-order", "This step uses panel of “Cut out”, which is not done before class."),
        ("left_out: [cut]", "class-order", "“Cut out” is left out, but “Sew the sides” uses panel of it."),
        ("homework: [sew]\ntogether: [[cut, press]]", "class-together", "“Sew the sides” is homework that comes between"),
        ("prices: {canvas: £9 a metre, denim: 8 EUR a metre}", "price-currencies", "The price of denim is in EUR, that of canvas in £."),
        ("prices: {canvas: £9 a metre}", "price-missing", "These have no price, so the cost by student is too low: denim,"),
        ("widths: {canvas: 10 in}", "class-cloth", "Nobody can tell how much cotton canvas the class needs: panel takes"),
    ],
)  # fmt: skip
def test_what_cannot_be_right(more: str, check: str, message: str, tmp_path: Path) -> None:
    _, findings = read_class(tmp_path, CLASS + more + "\n")
    assert [each for each in findings if each.check == check and message in each.message], messages(findings)


def test_a_step_about_a_change_that_is_not_made_is_told(tmp_path: Path) -> None:
    steps = {
        **STEPS,
        "steps__00-taller_dot_yaml": "title: Make it taller\ntext: Cut the paper across.\nminutes: 10\n"
        "diagrams: [taller]\n",
    }
    for number, (more, idle) in enumerate(
        (("", True), ("changes: [taller]\n", False), ("left_out: [taller]\n", False))
    ):
        _, findings = read_class(tmp_path / str(number), CLASS + more, **steps)
        assert any(each.check == "class-change-idle" for each in findings) is idle, messages(findings)


def test_sessions_in_the_wrong_order(tmp_path: Path) -> None:
    sessions = 'time_zone: Europe/London\nsessions: [{date: 2027-01-19, begins: "18:00", minutes: 150}, {date: DAY, begins: "20:00", minutes: 90}]'
    text = CLASS.replace("sessions: [{minutes: 200}]", sessions)
    for day, wrong in (("2027-01-12", True), ("2027-01-19", True), ("2027-01-20", False)):
        _, findings = read_class(tmp_path / day, text.replace("DAY", day))
        assert any(each.check == "session-overlap" for each in findings) is wrong


@pytest.mark.parametrize(
    ("session", "told"),
    [
        ('{begins: "18:30", ends: "8:30"}', "session-backwards"),
        ('{begins: "18:30", ends: "25:30"}', "wrong-kind"),
        ("{minutes: 60, break: 60}", "wrong-kind"),
        ('{begins: "9:00", ends: "10:00", minutes: 60}', "given-twice"),
    ],
)
def test_a_session_that_is_not_understood_is_told_of_alone(tmp_path: Path, session: str, told: str) -> None:
    """What fits into the others would follow from it."""
    text = CLASS.replace("[{minutes: 200}]", f"[{{minutes: 20}}, {session}]")
    _, findings = read_class(tmp_path, text)
    assert [each.check for each in findings] == [told]
