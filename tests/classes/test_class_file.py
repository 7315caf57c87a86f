"""Reading the file of a class: every slip in one run, each with its place, what was expected and an example."""

from __future__ import annotations

import tempfile
from datetime import date, time
from fractions import Fraction
from pathlib import Path

import pytest
from classes.class_folders import CLASS, STEPS, TOTE, read_class, whole_class
from content import EXAMPLE, messages
from hypothesis import given, settings
from hypothesis import strategies as st

from sitegen.checks import review
from sitegen.findings import Severity
from sitegen.quantities import Unit
from sitegen.reading import ContentFolder

DATED = (
    "title: Evening class\ntutorial: tee\nstudents: {S: 3}\ntime_zone: Europe/London\n"
    'sessions: [{date: 2027-01-12, begins: "18:30", ends: "21:00", break: 15}]\n'
)


def test_everything_of_a_class(tmp_path: Path) -> None:
    text = DATED + (
        "where: the workroom\nchanges: [taller]\nroom: {seats: 6, Sewing Machines: 4}\nbrings: [scissors]\n"
        "shared: {polyester thread: 3}\nwidths: {canvas: [150 cm, 45 in]}\nspare: {lengths: 8%}\nat_tool: 60%\n"
        "before_class: [cut]\nhomework: [03-press]\nprices: {cotton canvas: 9.50 EUR / m, polyester thread: 2.8 EUR}\n"
    )
    written = whole_class(tmp_path, text).written
    session = written.sessions[0]
    assert (session.day, session.begins, session.minutes, session.pause) == (date(2027, 1, 12), time(18, 30), 150, 15)
    assert session.working == 135
    assert (written.key, written.title, written.where, written.time_zone) == (
        "evening", "Evening class", "the workroom", "Europe/London",
    )  # fmt: skip
    assert written.seats is not None
    assert written.seats.number == 6
    assert {name: count.number for name, count in written.room.items()} == {"sewing machine": 4}
    assert [each.typed.unit for each in written.widths["canvas"]] == [Unit.CM, Unit.IN]
    assert (written.spare_lengths.value, written.spare_counted.value) == (Fraction(2, 25), Fraction(1, 10))
    assert written.at_tool.value == Fraction(3, 5)
    prices = {price.item.text: (price.amount, price.currency, price.per) for price in written.prices}
    assert prices == {"canvas": (Fraction(19, 2), "EUR", Unit.M), "polyester thread": (Fraction(14, 5), "EUR", None)}


def test_a_price_that_is_not_understood_is_told_once_and_no_other_is_blamed(tmp_path: Path) -> None:
    prices = (
        "prices: {canvas: £9.50, denim: 12,50 £ a metre, top: £2 a metre, polyester thred: £3, cotton tape: 1 £ a yd}\n"
    )
    _, findings = read_class(tmp_path, CLASS + prices)
    line = CLASS.count("\n") + 1
    told = [each for each in messages(findings) if each.startswith(f"{line}:")]
    assert [each.partition(":")[2].partition(":")[0] for each in told[:4]] == [
        "1 price-missing",
        "18 wrong-kind",
        "32 yaml-syntax",
        "66 unknown-reference",
    ]
    assert told[0].endswith("too low: universal needle, chalk.")


def test_thing_that_has_its_price_already_is_no_better_name_for_another(tmp_path: Path) -> None:
    prices = "prices: {polyester thread: £3, thick polyester thread: £4}\n"
    _, findings = read_class(tmp_path, CLASS + prices)
    (found,) = [each for each in findings if each.said == "thick polyester thread"]
    assert "Nearest: polyester thread" not in found.message
    assert found.should_be == ""


def test_all_slips_are_told_in_one_run_with_their_places(tmp_path: Path) -> None:
    text = (
        "title: Evening class\ntutorial: tee\nstudents: {S: 3, Q: 2}\n"
        'sessions: [{date: 2027-02-30, begins: "18:30", ends: "17:00"}, {begins: "9:00", ends: "10:00", minutes: 60}]\n'
        "time_zone: Europe/Londn\nchanges: [tallest]\nbefore_class: [cutt]\nroom: {iron: many}\nplaces: 4\n"
        "prices: {canvas: £9.50, silk: £3}\n"
    )
    _, findings = read_class(tmp_path, text)
    told = messages(findings)
    for expected in (
        "3:18 unknown-reference: There is no size “Q”. Known are: S, L.",
        "4:19 wrong-kind: Expected a day that exists, found “2027-02-30”. Example: date: 2027-01-12",
        "4:55 session-backwards: Session 1 ends at 17:00, but it begins at 18:30. A session ends on the day on which it"
        " begins.",
        "5:12 unknown-reference: There is no time zone “Europe/Londn” in the IANA database. Nearest: Europe/London.",
        "6:11 unknown-reference: There is no change “tallest”. Nearest: taller.",
        "7:16 unknown-reference: There is no step “cutt”. Nearest: cut.",
        "8:14 wrong-kind: Expected a whole number, found “many”. Example: room: {seats: 8, sewing machine: 4, iron: 2}",
        "10:18 wrong-kind: Expected the price of a metre or a yard, with its currency, found “£9.50”."
        " Example: canvas: £9.50 a metre or 11 EUR a metre",
    ):
        assert expected in told
    assert any("has both ends and minutes" in each for each in told)
    assert any(each.startswith("9:1 unknown-key") for each in told)
    assert any("There is no thing to buy “silk”" in each for each in told)


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("tutorial: tee", "tutorial: te", "There is no tutorial “te”. Nearest: tee."),
        ("students: {S: 3, L: 2}", "students: 5", "Expected how many students make each size, found “5”."),
        ("students: {S: 3, L: 2}", "students: {S: 0, L: 0}", "Nobody is in this class."),
        ("students: {S: 3, L: 2}", "students: {}", "Nobody is in this class."),
        ("students: {S: 3, L: 2}", "students: {S: 150, L: 150}", "300 students are more than one class holds"),
        ("students: {S: 3, L: 2}", "", "The class lacks students. Example: students: {S: 2, M: 3}"),
        ("sessions: [{minutes: 200}]", "", "The class lacks sessions."),
        ("minutes: 200", "minutes: 20, break: 20", "Expected a break shorter than the session of 20 minutes"),
        ("minutes: 200", "date: 2027-01-12, minutes: 20", "Session 1 lacks begins."),
        ("minutes: 200", 'begins: "25:00", ends: "26:00"', "Expected a time of the day from 0:00 to 23:59"),
        ("minutes: 200}]", "minutes: 200}]\nat_tool: 130%", "Expected a share from 0% to 100%"),
        ("minutes: 200}]", "minutes: 200}]\ntogether: [cut]", "Expected two steps or more"),
        ("minutes: 200}]", "minutes: 200}]\nleft_out: [cut]\nhomework: [cut]", "stands under left_out too"),
        ("minutes: 200}]", "minutes: 200}]\nviews: {neck: hood}", "There is no view “neck”."),
        ("minutes: 200}]", "minutes: 200}]\nshared: {polyester thread: 0}", "a number of at least 1"),
        ("minutes: 200}]", "minutes: 200}]\nwidths: {canvas: wide}", "Expected a length, found “wide”"),
    ],
)  # fmt: skip
def test_one_slip(old: str, new: str, message: str, tmp_path: Path) -> None:
    assert old in CLASS
    _, findings = read_class(tmp_path, CLASS.replace(old, new))
    assert [each for each in findings if message in each.message], messages(findings)


def test_a_step_that_cannot_be_read_is_no_unknown_step(tmp_path: Path) -> None:
    text = CLASS + "before_class: [cut, 01-cut, clip]\nhomework: [press]\n"
    files = {**STEPS, "steps__01-cut_dot_yaml": 'title: "Cut out\n'}
    _, findings = read_class(tmp_path, text, **files)
    assert messages(findings) == ["5:29 unknown-reference: There is no step “clip”. Known are: sew, press."]


def test_a_tutorial_without_sizes_takes_a_plain_number(tmp_path: Path) -> None:
    plain = "fabrics: {main: {name: canvas, structure: woven, buy: 1 yd}}\npieces: {panel: {cut: 2, fabric: main}}\n"
    text = "title: Evening class\ntutorial: tee\nstudents: 7\nsessions: [{minutes: 90}]\n"
    assert whole_class(tmp_path, text, tutorial=plain).student_count == 7


def test_changes_are_made_together_and_reach_the_numbers(tmp_path: Path) -> None:
    plain = whole_class(tmp_path / "a")
    taller = whole_class(tmp_path / "b", CLASS + "changes: [taller]\n")
    before, after = (cls.computed.length("panel.cut_length", 1) for cls in (plain, taller))
    assert before is not None
    assert after is not None
    assert (after.length - before.length).mm == 2 * Fraction("25.4")


def test_a_change_that_is_made_still_tells_the_way_from_before_to_after(tmp_path: Path) -> None:
    text = "pieces: {panel: {cut: 2, finished: {length: 11 in, width: 15 in}}}\nsizes: [S]\nseam_allowance: 1/2 in\n"
    text += "changes: {taller: {piece: panel, line_at: 5 in from the top, wanted: 15 in finished}}\n"
    one = "title: Class\ntutorial: tee\nstudents: {S: 1}\nsessions: [{minutes: 200}]\nchanges: [taller]\n"
    cls = whole_class(tmp_path, one, tutorial=text)
    told = {
        name: cls.computed.length(name, 0)
        for name in ("panel.finished_length", "taller.amount", "taller.new_finished_length")
    }
    before = cls.plain.length("panel.finished_length", 0)
    assert before is not None
    inches = {name: each.length.mm / Fraction("25.4") for name, each in told.items() if each is not None}
    assert before.length.mm == 11 * Fraction("25.4")
    assert inches == {"panel.finished_length": 15, "taller.amount": 4, "taller.new_finished_length": 15}


def test_changes_of_different_pieces_and_a_swap_all_hold(tmp_path: Path) -> None:
    text = (
        "sizes: [S]\nseam_allowance: 3/8 in\n"
        "fabrics:\n  main: {name: jersey, structure: knit, stretch_across: 40%, width: 60 in}\n"
        "  rib: {name: rib, structure: knit, stretch_across: 80%, width: 40 in}\n"
        "pieces:\n"
        "  front: {cut: 1 on fold, fabric: main, length: 24 in, width: 20 in, edges: {neckline: 20 in}}\n"
        "  sleeve: {cut: 2, fabric: main, length: 20 in, width: 16 in}\n"
        "bands: {neckband: {opening: [front.neckline], ratio: 80%, finished_width: 1 in, fabric: rib}}\n"
        "changes:\n"
        "  longer_body: {piece: front, line_at: 8 in from the top, lengthen_by: 2 in}\n"
        "  longer_sleeve: {piece: sleeve, line_at: 8 in from the top, lengthen_by: 1 in}\n"
        "swaps: {self_band: {band: neckband, fabric: main, ratio: 90%}}\n"
    )
    one = "title: Class\ntutorial: tee\nstudents: {S: 1}\nsessions: [{minutes: 200}]\n"
    cls = whole_class(tmp_path, one + "changes: [longer_body, longer_sleeve, self_band]\n", tutorial=text)
    lengths = [
        cls.computed.length(name, 0) for name in ("front.cut_length", "sleeve.cut_length", "neckband.finished_length")
    ]
    assert [each.length.mm / Fraction("25.4") for each in lengths if each] == [26, 21, 18]
    assert cls.computed.tutorial.bands["neckband"].fabric.name == "main"


def test_example_classes_have_no_findings() -> None:
    result = review(ContentFolder(EXAMPLE, "content_example"))
    assert len(result.classes) == 2
    assert [each.message for each in result.findings if "/classes/" in each.place.file] == []
    assert sorted(cls.student_count for cls in result.classes) == [6, 8]
    assert sorted(len(cls.written.sessions) for cls in result.classes) == [2, 3]


def test_no_key_of_a_class_asks_for_a_name_of_a_student(tmp_path: Path) -> None:
    _, findings = read_class(tmp_path, CLASS.replace("{S: 3, L: 2}", "{S: [Nobody], L: 2}"))
    assert any("Expected a whole number, found a list" in each.message for each in findings)


@settings(max_examples=25, deadline=None)
@given(st.text(st.characters(codec="utf-8", exclude_characters="\r"), max_size=60))
def test_odd_values_are_told_and_never_raise(value: str) -> None:
    with tempfile.TemporaryDirectory() as root:
        for key in ("students", "sessions", "prices", "room", "together", "widths", "spare", "time_zone", "views"):
            quoted = value.replace("'", "''")
            _, findings = read_class(Path(root), f"title: Class\ntutorial: tee\n{key}: '{quoted}'\n", tutorial=TOTE)
            assert any(each.severity is Severity.WRONG for each in findings)


@pytest.mark.parametrize(
    ("day", "right"),
    [("9999-12-31", False), ("0001-01-01", False), ("2200-01-01", False), ("1970-01-01", True), ("2199-12-31", True)],
)
def test_days_are_of_years_that_calendars_know(day: str, right: bool, tmp_path: Path) -> None:
    dated = f'time_zone: Europe/London\nsessions: [{{date: {day}, begins: "18:30", minutes: 150}}]\n'
    _, findings = read_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    expected = f"5:19 wrong-kind: Expected a day from the year 1970 to 2199, found “{day}”. Example: date: 2027-01-12"
    assert messages(findings) == ([] if right else [expected])


@pytest.mark.parametrize(
    ("session", "minutes", "told"),
    [
        (
            '{date: 2027-03-28, begins: "0:30", ends: "3:30"}',
            120,
            "While session 1 is held, clocks in Europe/London are put forward: 120 minutes pass from 00:30"
            " on 2027-03-28 to 03:30.",
        ),
        (
            '{date: 2027-10-31, begins: "0:30", ends: "3:30", break: 15}',
            240,
            "While session 1 is held, clocks in Europe/London are put back: 240 minutes pass from 00:30"
            " on 2027-10-31 to 03:30.",
        ),
        (
            '{date: 2027-03-27, begins: "23:30", minutes: 150}',
            150,
            "While session 1 is held, clocks in Europe/London are put forward: 150 minutes pass from 23:30"
            " on 2027-03-27 to 03:00.",
        ),
        (
            '{date: 2027-10-31, begins: "0:30", minutes: 120}',
            120,
            "Session 1 ends at 01:30 on 2027-10-31, a time that clocks in Europe/London show twice, since they are put"
            " back. The second of the two is taken.",
        ),
        (
            '{date: 2027-10-31, begins: "0:30", ends: "1:30"}',
            60,
            "Session 1 ends at 01:30 on 2027-10-31, a time that clocks in Europe/London show twice, since they are put"
            " back. The first of the two is taken.",
        ),
        (
            '{date: 2027-10-31, begins: "1:15", ends: "2:15"}',
            120,
            "Session 1 begins at 01:15 on 2027-10-31, a time that clocks in Europe/London show twice, since they are put"
            " back. The first of the two is taken.",
        ),
        ('{date: 2027-03-28, begins: "2:00", ends: "4:00"}', 120, ""),
        ('{date: 2027-10-30, begins: "18:30", ends: "21:00"}', 150, ""),
    ],
)
def test_minutes_of_a_session_are_those_that_pass(session: str, minutes: int, told: str, tmp_path: Path) -> None:
    dated = f"time_zone: Europe/London\nsessions: [{session}]\n"
    cls, findings = read_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    assert cls is not None
    assert cls.written.sessions[0].minutes == minutes
    said = [each for each in findings if each.check.startswith("session-")]
    assert [each.message for each in said] == ([told] if told else [])
    assert all((each.check, each.severity) == ("session-clocks", Severity.DOUBTFUL) for each in said)


def test_session_begins_behind_one_that_an_hour_that_comes_twice_makes_longer(tmp_path: Path) -> None:
    dated = (
        "time_zone: Europe/London\nsessions:\n"
        '  - {date: 2027-10-31, begins: "0:00", minutes: 150}\n  - {date: 2027-10-31, begins: "1:45", minutes: 60}\n'
    )
    _, findings = read_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    assert [each.message for each in findings if each.check == "session-overlap"] == [
        "Session 2 begins on 2027-10-31 at 01:45, before session 1 has ended on 2027-10-31 at 01:30. Put sessions in the"
        " order in which they are held."
    ]


def test_session_at_a_time_that_clocks_skip(tmp_path: Path) -> None:
    dated = (
        "time_zone: Europe/London\nsessions:\n"
        '  - {date: 2027-03-28, begins: "1:30", ends: "4:00"}\n  - {date: 2028-03-26, begins: "0:30", ends: "1:30"}\n'
    )
    _, findings = read_class(tmp_path, CLASS.replace("sessions: [{minutes: 200}]\n", dated))
    assert [each for each in messages(findings) if "session-skipped" in each] == [
        "6:5 session-skipped: Session 1 begins at 01:30 on 2027-03-28, a time that clocks in Europe/London skip, since"
        " they are put forward. Write another time.",
        "7:5 session-skipped: Session 2 ends at 01:30 on 2028-03-26, a time that clocks in Europe/London skip, since"
        " they are put forward. Write another time.",
    ]
