"""``sitegen begin``: drafts that pass the check, refusals, and nothing half written."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from sitegen.checks import review
from sitegen.cli import main
from sitegen.findings import Severity
from sitegen.reading import ContentFolder

TALK = """WEBVTT

00:00.000 --> 00:12.000
Okay, hi everyone. Today we make the neckband from a strip of rib {knit}, 60 inches wide.

00:12.000 --> 00:25.000
The opening measures 20 5/8 inches. We take *eighty* percent of that, so it's 16 1/2 inches, with a 75/11 needle.

00:28.000 --> 00:50.000
The first thing we're going to do is fold the band in half. Sew the ends with a three eighths of an inch seam allowance, and press it open with the iron.

00:50.000 --> 01:20.000
Next, pin the band to the neckline at the quarter marks, and sew it on with a zigzag. 1. Stretch the band & not the neckline.
"""
SUBRIP = "1\n00:00:00,000 --> 00:00:09,000\nNow cut the band 43 centimetres long\n\n2\n00:00:09,000 --> 00:00:15,000\nand sew it at 1 cm\n"


def captions(root: Path, text: str | bytes = TALK, name: str = "talk.vtt") -> str:
    path = root / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return str(path)


def wrong(folder: Path) -> list[str]:
    return [each.message for each in review(ContentFolder(folder, "mine")).findings if each.severity is Severity.WRONG]


def standing(root: Path) -> set[str]:
    return {path.relative_to(root).as_posix() for path in root.rglob("*")}


def test_draft_passes_the_check(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "mine"
    assert main(["begin", str(target), "--captions", captions(tmp_path)]) == 0
    root = target.as_posix()
    assert capsys.readouterr().out == (
        f"A draft is in {root}: 3 steps, 4 numbers to confirm, measured in inches.\n"
        "Next:\n"
        f"  1. Open {root}/site.yaml and put your title and name there.\n"
        f"  2. Read each file in {root}/tutorials/talk/steps against the video, and confirm the numbers at its head.\n"
        f"  3. Say in {root}/tutorials/talk/tutorial.yaml what is made, and for whom.\n"
        f"  4. Run: sitegen check {root}\n"
    )
    assert standing(target) == {
        "site.yaml", "glossary.yaml", "tutorials", "tutorials/talk", "tutorials/talk/tutorial.yaml", "tutorials/talk/steps",
        "tutorials/talk/steps/01-today-we-make-the-neckband-from-a-strip.yaml",
        "tutorials/talk/steps/02-fold-the-band-in-half.yaml",
        "tutorials/talk/steps/03-pin-the-band-to-the-neckline.yaml",
    }  # fmt: skip
    assert wrong(target) == []
    assert main(["check", str(target)]) == 0


def test_step_of_a_draft_reads_as_a_person_would_write_it(tmp_path: Path) -> None:
    main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path)])
    assert (tmp_path / "mine/tutorials/talk/steps/02-fold-the-band-in-half.yaml").read_text(encoding="utf-8") == (
        "# Drafted from talk.vtt, 0:28 to 0:50. The words are those of the talk, nothing is put in their place.\n"
        "# Read them against the video, make sentences of them, then take these remarks out.\n"
        "#\n"
        "# Numbers that were heard: when, the words, and what was understood.\n"
        '#   0:28  "three eighths of an inch"  = 3/8 in (1 cm)   confirm\n'
        "\n"
        "title: Fold the band in half\n"
        'video: "0:28"\n'
        "text: |\n"
        "  The first thing we're going to do is fold the band in half. Sew the ends with a three eighths of an\n"
        "  inch seam allowance, and press it open with the iron.\n"
    )


def test_draft_can_be_published_as_it_is(tmp_path: Path) -> None:
    main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path)])
    assert main(["publish", str(tmp_path / "mine"), "--to", str(tmp_path / "site")]) == 0
    page = (tmp_path / "site/tutorials/talk/index.html").read_text(encoding="utf-8")
    assert "rib {knit}, 60 inches wide" in page
    assert "*eighty* percent" in page
    assert (tmp_path / "site/tutorials/talk/chapters.vtt").exists()


def test_subrip_in_centimetres(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "mine"
    assert main(["begin", str(target), "--captions", captions(tmp_path, SUBRIP, "My talk.srt")]) == 0
    assert "1 step, 2 numbers to confirm, measured in centimetres." in capsys.readouterr().out
    assert wrong(target) == []
    assert "because most lengths of the talk are said in metric units" in (
        target / "tutorials/my-talk/tutorial.yaml"
    ).read_text(encoding="utf-8")


def test_sum_that_does_not_add_up_and_times_that_cannot_be_read_are_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:05.000\nCut 16 inches plus 1 inch, so 18 inches.\n\n00:0x.000 --> 00:09.000\nSew it.\n"
    assert main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path, text)]) == 0
    out = capsys.readouterr().out
    assert "1 time of the captions could not be read. The words behind are kept, at the time of those before." in out
    assert "1 sum of the talk does not add up: see the head of the steps." in out


def test_folder_without_captions_has_nothing_to_find_fault_with(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "mine"
    assert main(["begin", str(target)]) == 0
    assert f"A small content folder is in {target.as_posix()}." in capsys.readouterr().out
    assert review(ContentFolder(target, "mine")).findings == ()


@pytest.mark.parametrize("with_captions", [False, True])
def test_lines_behind_a_number_sign_are_right_when_it_is_taken_away(with_captions: bool, tmp_path: Path) -> None:
    target = tmp_path / "mine"
    assert main(["begin", str(target), *(["--captions", captions(tmp_path)] if with_captions else [])]) == 0
    taken = 0
    for file in target.rglob("*.yaml"):
        text, count = re.subn(r"^#(?=[a-z]|  +\S)(?!   \d)", "", file.read_text(encoding="utf-8"), flags=re.MULTILINE)
        file.write_text(text, encoding="utf-8")
        taken += count
    assert taken > 15
    assert wrong(target) == []


@pytest.mark.parametrize("made", ["missing", "empty"])
def test_folder_may_be_missing_or_empty(made: str, tmp_path: Path) -> None:
    target = tmp_path / "mine"
    if made == "empty":
        target.mkdir()
    assert main(["begin", str(target)]) == 0
    assert (target / "site.yaml").exists()
    assert standing(tmp_path) - {"mine"} == {f"mine/{path}" for path in standing(target)}


@pytest.mark.parametrize(
    ("text", "name", "message"),
    [
        ("", "talk.vtt", "talk.vtt is empty. Export the captions of the video once more."),
        (" \n\n", "talk.srt", "talk.srt is empty."),
        ("Cut 3/8 in.\n", "talk.vtt", "holds no captions. Expected WebVTT, which begins with WEBVTT, or SubRip"),
        ("WEBVTT\n", "talk.vtt", "Nothing is said in"),
        ("WEBVTT\n\n00:01.000 --> 00:02.000\n[music]\n", "talk.vtt", "Nothing is said in"),
        (b"WEBVTT\n\n00:01.000 --> 00:02.000\nCut \xbd in\n", "talk.vtt", "This file is not saved as UTF-8"),
        (TALK.encode("utf-16"), "talk.vtt", "This file is saved as UTF-16, not as UTF-8."),
        (b"\x89PNG\r\n\x1a\n\x00", "talk.vtt", "could not be read"),
    ],
)  # fmt: skip
def test_captions_that_cannot_be_used_write_nothing(
    text: str | bytes, name: str, message: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path, text, name)]) == 2
    said = capsys.readouterr()
    assert message in said.err
    assert "sitegen: nothing was written." in said.err
    assert said.out == ""
    assert standing(tmp_path) == {name}


def test_captions_that_are_not_there_write_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["begin", str(tmp_path / "mine"), "--captions", str(tmp_path / "talk.vtt")]) == 2
    assert "There is no such file." in capsys.readouterr().err
    assert main(["begin", str(tmp_path / "mine"), "--captions", str(tmp_path)]) == 2
    assert "nothing was written" in capsys.readouterr().err
    assert standing(tmp_path) == set()


def test_folder_that_holds_something_is_left_as_it_is(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "mine"
    target.mkdir()
    (target / "site.yaml").write_text("title: Mine\n", encoding="utf-8")
    assert main(["begin", str(target)]) == 2
    assert (
        "is there already and holds something. A draft is never written over it: name a new folder."
        in capsys.readouterr().err
    )
    assert standing(tmp_path) == {"mine", "mine/site.yaml"}
    assert (target / "site.yaml").read_text(encoding="utf-8") == "title: Mine\n"
