"""``sitegen kit`` and ``sitegen sessions`` as a teacher uses them."""

from __future__ import annotations

from pathlib import Path

import pytest
from classes.class_folders import CLASS, class_folder
from content import EXAMPLE

from sitegen.cli import main

EVENING = str(EXAMPLE / "classes" / "evening-tee.yaml")
Screen = pytest.CaptureFixture[str]


def class_file(root: Path, text: str = CLASS) -> str:
    class_folder(root, text)
    return str(root / "classes" / "evening.yaml")


def test_kit_for_a_person(capsys: Screen) -> None:
    assert main(["kit", EVENING]) == 0
    out = capsys.readouterr().out
    for line in (
        "Evening class: a boxy top with rib bands",
        "8 students: 2 in size S, 3 in size M, 2 in size L, 1 in size XL. Tutorial boxy-tee; changed: longer sleeve.",
        "    polyester sewing thread                                  9 spools  £17.10",
        "3 bags of size M, in each",
        "  cut: 1 front, 1 back, 2 sleeves, 1 neckband, 2 cuffs",
        "Each student brings: scissors, pins, tape measure",
        "Cost by student",
    ):
        assert line in out.splitlines()
    assert max(len(line) for line in out.splitlines()) <= 160


def test_working_and_units_on_demand(capsys: Screen) -> None:
    assert main(["kit", EVENING, "--working", "--units", "inches"]) == 0
    out = capsys.readouterr().out
    assert "to buy: for the class 8 + spare 1 = 9" in out
    assert "2: 25 1/8 in × 19 3/4 in" in out
    assert "polyester sewing thread: 9 spools × £1.90 = £17.10" in out


def test_samples_with_their_working(capsys: Screen) -> None:
    assert main(["kit", EVENING, "--samples", "--working", "--units", "inches"]) == 0
    lines = capsys.readouterr().out.splitlines()
    for line in (
        "  neckband, size M, for “Sew on the neckband”",
        "      1 × 1x1 cotton rib with elastane, 17 1/4 in across, 2 1/4 in along the grain",
        "        swatch across the cloth: swatch at rest 5 in + 2 grips of 2 in = 9 in",
        "Cloth and supplies for the samples, besides the kit",
    ):
        assert line in lines
    assert "To buy" not in lines


def test_sessions_for_a_person(capsys: Screen) -> None:
    assert main(["sessions", EVENING]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert "Session 1: Tuesday 12 January 2027, 18:30 to 21:00" in lines
    assert "  19:00   38 min  Sew the shoulders  (2 turns at the iron; each waits 13 min)" in lines
    assert "  19:38   15 min  break" in lines
    assert "  Homework: “Check, press and wear”" in lines


def test_sessions_without_dates_count_minutes(tmp_path: Path, capsys: Screen) -> None:
    assert main(["sessions", class_file(tmp_path), "--working"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert "Session 1: 200 minutes" in lines
    assert "    40′   30 min  Sew the sides" in lines


def test_table_and_calendar_are_written_and_written_again(tmp_path: Path, capsys: Screen) -> None:
    pytest.importorskip("icalendar")
    for _ in range(2):
        assert main(["kit", EVENING, "--csv", str(tmp_path / "kit.csv")]) == 0
        assert main(["sessions", EVENING, "--ics", str(tmp_path / "class.ics")]) == 0
    assert f"The calendar of the sessions is in {tmp_path / 'class.ics'}." in capsys.readouterr().out
    (tmp_path / "kit.csv").write_text("mine", encoding="utf-8")
    assert main(["kit", EVENING, "--csv", str(tmp_path / "kit.csv")]) == 2
    assert "nothing was written" in capsys.readouterr().err
    assert (tmp_path / "kit.csv").read_text(encoding="utf-8") == "mine"


def test_what_does_not_fit_is_shown_with_its_cure_and_nothing_is_written(tmp_path: Path, capsys: Screen) -> None:
    name = class_file(tmp_path / "content", CLASS.replace("minutes: 200", "minutes: 75"))
    assert main(["sessions", name, "--ics", str(tmp_path / "class.ics")]) == 1
    captured = capsys.readouterr()
    assert "Left over: “Press the bag”" in captured.out
    assert "It fits with 15 more minutes in session 1" in captured.err
    assert main(["kit", name, "--csv", str(tmp_path / "kit.csv")]) == 1
    assert "was not written. Mend what is wrong first." in capsys.readouterr().err
    assert sorted(path.name for path in tmp_path.iterdir()) == ["content"]


@pytest.mark.parametrize("command", ["kit", "sessions"])
def test_no_class_at_all(command: str, tmp_path: Path, capsys: Screen) -> None:
    assert main([command, str(tmp_path / "classes" / "none.yaml")]) == 2
    assert "is not the file of a class: there is no such file." in capsys.readouterr().err
    (tmp_path / "loose.yaml").write_text("title: x\n", encoding="utf-8")
    assert main([command, str(tmp_path / "loose.yaml")]) == 2
    assert "it is in no folder classes" in capsys.readouterr().err
    assert main([command, str(tmp_path)]) == 2
    assert "is not the file of a class: it is a folder." in capsys.readouterr().err
    assert main([command, class_file(tmp_path / "a", CLASS.replace("tutorial: tee", "tutorial: te"))]) == 1
    assert "There is no tutorial “te”. Nearest: tee." in capsys.readouterr().err
    assert main([command, class_file(tmp_path / "b", 'title: "open\n')]) == 2
    assert "yaml-syntax" in capsys.readouterr().err


def test_check_counts_classes_and_reports_their_findings(tmp_path: Path, capsys: Screen) -> None:
    class_file(tmp_path, CLASS.replace("S: 3", "Q: 3"))
    assert main(["check", str(tmp_path)]) == 1
    out = capsys.readouterr().out
    assert "There is no size “Q”. Known are: S, L." in out
    assert ", 1 class: " in out


SLIP = CLASS.replace("tutorial: tee", "tutorial: tea")


@pytest.mark.parametrize(
    ("where", "named", "shown"),
    [
        ("content/classes", "evening.yaml", ".."),
        ("content/classes", "./evening.yaml", ".."),
        ("content/classes", "../classes/evening.yaml", ".."),
        ("content/classes/inner", "../evening.yaml", "../.."),
        ("content/tutorials", "../classes/evening.yaml", ".."),
        ("content", "classes/evening.yaml", "."),
        ("content", "classes/inner/../evening.yaml", "."),
        (".", "content/classes/evening.yaml", "content"),
        (".", "ROOT/content/classes/evening.yaml", "ROOT/content"),
        ("content/classes", "ROOT/content/classes/inner/../evening.yaml", "ROOT/content"),
    ],
)
def test_class_is_found_from_wherever_it_is_named(
    where: str, named: str, shown: str, tmp_path: Path, capsys: Screen, monkeypatch: pytest.MonkeyPatch
) -> None:
    class_file(tmp_path / "content")
    (tmp_path / "content" / "classes" / "inner").mkdir()
    monkeypatch.chdir(tmp_path / where)
    file = named.replace("ROOT", str(tmp_path))
    for command in (["kit", file], ["sessions", file], ["handout", file, "--to", str(tmp_path / "h.pdf")]):
        assert main(command) == 0
        assert capsys.readouterr().err == ""
    (tmp_path / "content" / "classes" / "evening.yaml").write_text(SLIP, encoding="utf-8")
    assert main(["kit", file]) == 1
    assert capsys.readouterr().err.splitlines()[0] == f"{shown.replace('ROOT', str(tmp_path))}/classes/evening.yaml"
