"""The command ``proofread``: what it prints, its data, its exit codes."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from sitegen.cli import main

DRAFT = "Cut 16 in plus two 1/2 in seam allowances, so 16 1/2 in.\nUse `3 in (1 cm)` as code.\n"
TALK = (
    "WEBVTT\n\n00:30.000 --> 00:35.000\nso sixteen inches minus three\n\n"
    "00:35.000 --> 00:38.000\nquarters of an inch makes fifteen inches\n"
)


@pytest.fixture
def draft(tmp_path: Path) -> Path:
    path = tmp_path / "draft.md"
    path.write_text(DRAFT, encoding="utf-8")
    return path


def test_wrong_sum_is_told_with_place_and_working(draft: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proofread", str(draft)]) == 1
    shown = capsys.readouterr().out
    assert "1:47  wrong  told-sum" in shown
    assert "put:  17 in" in shown
    assert "how:  16 in + 2 × 1/2 in = 17 in" in shown
    assert shown.rstrip().endswith("1 file, 3 measurements: 1 wrong")


def test_right_text_exits_with_nothing_wrong(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "right.txt"
    path.write_text("A 3/8 in (1 cm) seam.\n", encoding="utf-8")
    assert main(["proofread", str(path)]) == 0
    assert capsys.readouterr().out == "1 file, 2 measurements: nothing wrong\n"


def test_data_has_one_object_a_file_with_offsets(draft: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proofread", "--json", str(draft)]) == 1
    (one,) = json.loads(capsys.readouterr().out)
    assert one["file"] == str(draft)
    first = one["measurements"][0]
    assert first == {
        "text": "16 in", "start": 4, "end": 9, "line": 1, "column": 5, "kind": "length", "low_mm": 406.4, "high_mm": None,
    }  # fmt: skip
    (finding,) = one["findings"]
    assert DRAFT[finding["start"] : finding["end"]] == finding["said"] == "16 1/2 in"
    assert finding["should_be"] == "17 in"
    assert finding["severity"] == "wrong"


def test_offsets_are_those_of_a_file_with_windows_line_ends(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "windows.txt"
    text = "One.\r\n\r\nA seam of 3/8 in.\r\n"
    path.write_bytes(text.encode())
    main(["proofread", "--json", str(path)])
    (found,) = json.loads(capsys.readouterr().out)[0]["measurements"]
    assert text[found["start"] : found["end"]] == "3/8 in"
    assert (found["line"], found["column"]) == (3, 11)


@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_offsets_are_those_of_the_text_that_a_program_reads(
    mark: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "d.txt"
    path.write_bytes(f"{mark}One 🙂\r\nSew 3/8 in.\r\n".encode())
    main(["proofread", "--json", str(path)])
    (found,) = json.loads(capsys.readouterr().out)[0]["measurements"]
    with open(path, encoding="utf-8-sig", newline="") as file:
        assert file.read()[found["start"] : found["end"]] == "3/8 in"


def test_standard_input_is_read(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    class Typed:
        buffer = io.BytesIO(b"Half of 9 in is 4 in.")

    monkeypatch.setattr("sys.stdin", Typed())
    assert main(["proofread", "--json", "-"]) == 1
    assert json.loads(capsys.readouterr().out)[0]["file"] == "-"


def test_each_file_is_read_once_however_often_it_is_named(
    draft: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Typed:
        buffer = io.BytesIO(b"Half of 9 in is 4 in.")

    monkeypatch.setattr("sys.stdin", Typed())
    monkeypatch.chdir(draft.parent)
    assert main(["proofread", "draft.md", "-", "./draft.md", "-", str(draft)]) == 1
    shown = capsys.readouterr().out
    assert shown.endswith("\n2 files, 6 measurements: 2 wrong\n")


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("-", "the page needs the name of a file, such as marked.html; it is not printed"),
        ("adir.html/", "adir.html/ names a folder; name the file too, such as adir.html/marked.html"),
    ],
)
def test_page_needs_the_name_of_a_file(
    name: str, told: str, draft: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(draft.parent)
    with pytest.raises(SystemExit) as stop:
        main(["proofread", "draft.md", "--html", name])
    assert stop.value.code == 2
    assert told in capsys.readouterr().err
    assert [path.name for path in draft.parent.iterdir()] == ["draft.md"]


def test_unknown_option_is_told_with_the_usage_of_the_command(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stop:
        main(["proofread", "--bogus", "x"])
    assert stop.value.code == 2
    said = capsys.readouterr().err
    assert said.startswith("usage: sitegen proofread ")
    assert "unrecognized arguments: --bogus" in said


@pytest.mark.parametrize("also", [False, True])
def test_file_that_could_not_be_read_is_counted_as_such(
    also: bool, draft: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["proofread", str(draft.parent / "no.txt"), *([str(draft)] if also else [])]) == 2
    counted = "1 file, 3 measurements: 1 wrong\n" if also else ""
    assert capsys.readouterr().out.endswith(f"\n\n{counted}1 file could not be read.\n")


@pytest.mark.parametrize(
    ("data", "told"),
    [
        ("Cut 5 in (15 cm). 🙂\n".encode("utf-16-le"), "This file is saved as UTF-16 without a byte order mark"),
        ("Cut 5 in (15 cm). 🙂\n".encode("utf-16-be"), "This file is saved as UTF-16 without a byte order mark"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "This is no text, but a picture (PNG). A file of plain text is expected here."),
        (b"PK\x03\x04\x14\x00", "This is no text, but a packed file (ZIP, or a document of an office program)."),
        (bytes(range(256)) * 3, "This is no text, its bytes are not those of letters."),
        ("Säume von 1½ cm".encode("cp1252"), "This file is not saved as UTF-8: the byte E4 stands here"),
        ("Шов 2 см".encode("cp1251"), "This file is not saved as UTF-8: the byte D8 stands here"),
        (b"Cut 5 in\x00 (15 cm).", "There is a zero byte here"),
    ],
)  # fmt: skip
def test_file_that_is_no_text_in_utf_8_is_told_for_what_it_is(
    data: bytes, told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "file.txt"
    path.write_bytes(data)
    assert main(["proofread", str(path)]) == 2
    assert told in capsys.readouterr().out


def test_sum_of_very_many_terms_is_told_by_the_first_and_the_last(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "long.txt"
    path.write_text("1 + " * 300 + "2 cm = 5 cm\n", encoding="utf-8")
    assert main(["proofread", str(path)]) == 1
    shown = capsys.readouterr().out
    assert "1 + 1 + 1 + 1 + … + 2 cm (301 terms) makes 302 cm, not 5 cm." in shown
    assert "how:  1 + 1 + 1 + 1 + … + 2 cm (301 terms) = 302 cm" in shown


def test_captions_are_read_across_cues_and_tell_the_time(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "talk.vtt"
    path.write_text(TALK, encoding="utf-8")
    assert main(["proofread", str(path)]) == 1
    shown = capsys.readouterr().out
    assert "7:27  wrong  told-sum" in shown
    assert "At 0:35: " in shown
    assert "15 1/4 in" in shown
    main(["proofread", "--json", str(path)])
    (one,) = json.loads(capsys.readouterr().out)
    assert [each["low_mm"] for each in one["measurements"]] == [406.4, 19.05, 381]
    assert one["findings"][0]["time"] == "0:35"


TAGGED = (
    'WEBVTT\n\n00:01.000 --> 00:09.000\n<v Anna>Cut 5&quot;&nbsp;(15&nbsp;cm) &amp; mark &lt;3/8"&gt;.\n\n'
    "00:10.000 --> 00:18.000\n<c.a>Sew</c> at<00:00:11.000><c> 5/8</c><c> inch,</c>\nthat's 2\n\n"
    "00:18.000 --> 00:20.000\ncm <i>all</i> round\n"
)


def test_captions_are_shown_and_told_as_a_person_reads_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "talk.vtt"
    path.write_text(TAGGED, encoding="utf-8")
    assert main(["proofread", str(path)]) == 1
    shown = capsys.readouterr().out
    assert '      said: Cut 5" (15 cm) & mark <3/8">.\n                ^^^^^^^^^^\n      put:  5" (12.5 cm)\n' in shown
    assert (
        "      said: Sew at 5/8 inch, that's 2 cm all round\n"
        "                   ^^^^^^^^^^^^^^^^^^^^^\n"
        "      put:  5/8 inch, that's 1.6 cm\n"
    ) in shown
    main(["proofread", "--json", str(path)])
    (one,) = json.loads(capsys.readouterr().out)
    assert [each["text"] for each in one["measurements"]] == ['5"', "15 cm", '3/8"', "5/8 inch", "2 cm"]
    assert [(each["said"], each["should_be"]) for each in one["findings"]] == [
        ('5" (15 cm)', '5" (12.5 cm)'),
        ("5/8 inch, that's 2 cm", "5/8 inch, that's 1.6 cm"),
    ]
    places = [TAGGED[each["start"] : each["end"]] for each in one["measurements"]]
    assert places[:3] == ["5&quot;", "15&nbsp;cm", '3/8"']
    main(["proofread", "--mark", str(path)])
    assert '⟦[5&quot;]&nbsp;([15&nbsp;cm]) → 5" (12.5 cm)⟧' in capsys.readouterr().out


def test_blanks_and_line_ends_are_one_space_in_the_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "d.txt"
    path.write_text("Sew at 5/8\n   in   (2\n cm) here.\n", encoding="utf-8")
    main(["proofread", "--json", str(path)])
    (one,) = json.loads(capsys.readouterr().out)
    assert [each["text"] for each in one["measurements"]] == ["5/8 in", "2 cm"]
    assert [(each["said"], each["should_be"]) for each in one["findings"]] == [("5/8 in (2 cm)", "5/8 in (1.6 cm)")]


def test_marked_text_shows_measurements_and_findings(draft: Path, capsys: pytest.CaptureFixture[str]) -> None:
    main(["proofread", "--mark", str(draft)])
    first = capsys.readouterr().out.splitlines()[0]
    assert first == "Cut [16 in] plus two [1/2 in] seam allowances, so ⟦[16 1/2 in] → 17 in⟧."


def test_page_shows_the_text_escaped_and_marked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, out = tmp_path / "d.txt", tmp_path / "out.html"
    path.write_text("<script>alert(1)</script> Half of 9 in is 4 in.", encoding="utf-8")
    assert main(["proofread", "--html", str(out), str(path)]) == 1
    page = BeautifulSoup(out.read_text(encoding="utf-8"), "html.parser")
    assert page.find("script") is None
    assert [mark.text for mark in page.find_all("mark")][-2:] == ["9 in", "4 in"]
    assert page.find("ins").text == "4 1/2 in"  # type: ignore[union-attr]
    assert "1 place to look at" in page.h1.text  # type: ignore[union-attr]
    assert str(out) in capsys.readouterr().out


def test_short_measurements_are_kept_on_one_line_and_long_ones_are_not(tmp_path: Path) -> None:
    path, out = tmp_path / "d.txt", tmp_path / "out.html"
    path.write_text(
        "Cut 16 1/2 in off, then thirty-seven and three quarter inches, then three\ninches.", encoding="utf-8"
    )
    assert main(["proofread", "--html", str(out), str(path)]) == 0
    page = BeautifulSoup(out.read_text(encoding="utf-8"), "html.parser")
    assert [mark.get("class") for mark in page.find_all("mark")] == [["whole"], None, None]


def test_what_is_doubtful_is_told_and_no_reason_to_fail(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path, out = tmp_path / "d.txt", tmp_path / "out.html"
    path.write_text(
        "The cloth is 140 cm wide, so four 35 cm strips come off it. Each is 90 cm long plus 3 cm.", encoding="utf-8"
    )
    assert main(["proofread", "--html", str(out), str(path)]) == 0
    shown = capsys.readouterr().out
    assert "1:69  doubtful  told-sum" in shown
    assert "If 90 cm is meant to be 140 cm − 35 cm, it should be 105 cm." in shown
    page = BeautifulSoup(out.read_text(encoding="utf-8"), "html.parser")
    assert [tag["class"] for tag in page.find_all(["del", "ins"])] == [["doubtful"], ["doubtful", "whole"]]
    assert "Line 1, doubtful: If" in " ".join(page.li.text.split())  # type: ignore[union-attr]


def test_page_is_not_written_over_a_folder(tmp_path: Path, draft: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proofread", "--html", str(tmp_path), str(draft)]) == 2
    assert "the page was not written" in capsys.readouterr().err
    assert draft.read_text(encoding="utf-8") == DRAFT


def test_page_is_not_written_over_the_draft_or_another_file(
    tmp_path: Path, draft: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["proofread", "--html", str(draft), str(draft)]) == 2
    assert "was not written by this program" in capsys.readouterr().err
    assert draft.read_text(encoding="utf-8") == DRAFT
    out = tmp_path / "out.html"
    for _ in range(2):
        assert main(["proofread", "--html", str(out), str(draft)]) == 1
    out.write_text(out.read_text(encoding="utf-8").replace("16", "17"), encoding="utf-8")
    assert main(["proofread", "--html", str(out), str(draft)]) == 2


def test_unreadable_files_are_named_and_the_others_read(
    tmp_path: Path, draft: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    broken = tmp_path / "old.txt"
    broken.write_bytes(b"half \xbd an inch")
    assert main(["proofread", str(tmp_path / "no.txt"), str(broken), str(tmp_path), str(draft)]) == 2
    shown = capsys.readouterr().out
    for told in ("There is no such file.", "not saved as UTF-8", "but this is a folder", "told-sum"):
        assert told in shown
