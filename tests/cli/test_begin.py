"""``sitegen begin``: drafts that pass the check, refusals, and nothing half written."""

from __future__ import annotations

import io
import os
import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from publishing.site_folders import folder_of_plain_user

from sitegen.checks import review
from sitegen.cli import main
from sitegen.findings import Severity
from sitegen.prose import captions_of, drafted
from sitegen.publishing import write_new_folder
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


TO_DO = {"text-unwritten", "step-unconfirmed"}


def wrong(folder: Path) -> list[str]:
    """What is wrong, but for what says that a person has not been there yet."""
    findings = review(ContentFolder(folder, "mine")).findings
    return [each.message for each in findings if each.severity is Severity.WRONG and each.check not in TO_DO]


def to_do(folder: Path) -> list[tuple[str, str, int]]:
    findings = review(ContentFolder(folder, "mine")).findings
    return [(each.check, each.place.file, each.place.line) for each in findings if each.check in TO_DO]


def written(folder: Path) -> None:
    """Do what an author has to do at least: own words for each text, and each step confirmed."""
    for file in folder.rglob("*.yaml"):
        text = file.read_text(encoding="utf-8")
        text = text.replace("To be written. ", "Own words: ").replace("confirmed: no\n", "")
        text = re.sub(r"^(\w+): (Own words.*)$", r'\1: "\2"', text, flags=re.MULTILINE)
        file.write_text(text, encoding="utf-8")


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
        f"  2. Read each file in {root}/tutorials/talk/steps against the video, confirm the numbers at its head,"
        " and take out its line “confirmed: no”.\n"
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
    assert main(["check", str(target)]) == 1
    written(target)
    assert main(["check", str(target)]) == 0


def test_step_of_a_draft_reads_as_a_person_would_write_it(tmp_path: Path) -> None:
    main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path)])
    assert (tmp_path / "mine/tutorials/talk/steps/02-fold-the-band-in-half.yaml").read_text(encoding="utf-8") == (
        "# Drafted from talk.vtt, 0:28 to 0:50. The words are those of the talk, nothing is put in their place.\n"
        "# Read them against the video, make sentences of them, then take out these remarks and “confirmed: no”.\n"
        "# Until then nothing is published.\n"
        "#\n"
        "# Numbers that were heard: when, the words, and what was understood.\n"
        '#   0:28  "three eighths of an inch"  = 3/8 in (1 cm)   confirm\n'
        "\n"
        "confirmed: no\n"
        "title: Fold the band in half\n"
        'video: "0:28"\n'
        "text: |\n"
        "  The first thing we're going to do is fold the band in half. Sew the ends with a three eighths of an\n"
        "  inch seam allowance, and press it open with the iron.\n"
    )


def test_draft_is_no_release_until_its_texts_are_written_and_its_steps_confirmed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path)])
    publishing = ["publish", str(tmp_path / "mine"), "--to", str(tmp_path / "site")]
    assert main(publishing) == 1
    assert not (tmp_path / "site").exists()
    shown = capsys.readouterr().out
    assert "This only stands in for a text that is still to be written. Put your own words in its place." in shown
    assert "said: summary: To be written. What is made" in shown
    assert "said: confirmed: no" in shown
    home = "mine/tutorials/talk"
    assert to_do(tmp_path / "mine") == [
        ("text-unwritten", "mine/site.yaml", 2),
        ("text-unwritten", "mine/site.yaml", 3),
        ("step-unconfirmed", f"{home}/steps/01-today-we-make-the-neckband-from-a-strip.yaml", 10),
        ("step-unconfirmed", f"{home}/steps/02-fold-the-band-in-half.yaml", 8),
        ("step-unconfirmed", f"{home}/steps/03-pin-the-band-to-the-neckline.yaml", 5),
        ("text-unwritten", f"{home}/tutorial.yaml", 4),
    ]
    assert main([*publishing, "--draft"]) == 0
    written(tmp_path / "mine")
    assert main(publishing) == 0
    page = (tmp_path / "site/tutorials/talk/index.html").read_text(encoding="utf-8")
    assert "rib {knit}, 60\N{NO-BREAK SPACE}inches wide" in page
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
    assert out.index("A draft is in") < out.index("1 time of the captions")
    assert "1 time of the captions could not be read. The words behind are kept, at the time of those before." in out
    assert "1 sum of the talk does not add up: see the head of the steps." in out


_SAID = st.sampled_from(
    [
        "cut", "sew", "next,", "then", "first", "take", "the", "band", "hem", "3/8", "1/2", "inch", "inches", "cm", "16",
        "half", "of", "plus", "is", "so", "it's", "now", "step", "two", "okay", ".", ":", "-", "--", "#", "#1", ">", "&",
        "&amp;", "*", "**", "_", "`", "[x](y)", "{z}", "{{", "}}", "\\", '"', "'", "½", "%", "@", "!", "?", "|", "~~~",
        "===", "1.", "2)", "yes", "null", "12:30", "needle", "80/12", "iron", "縫う", "{band.cut_length}", "http://x.y/z",
    ]
)  # fmt: skip
_CUES = st.lists(st.tuples(st.integers(1, 40), st.lists(_SAID, min_size=1, max_size=30)), min_size=1, max_size=5)


@settings(max_examples=40, deadline=None)
@given(cues=_CUES, name=st.text("ab .#:{}'\"-_\\&%@!é縫\t\x07", max_size=9))
def test_whatever_is_said_the_draft_is_never_wrong_but_in_its_sums(
    cues: list[tuple[int, list[str]]], name: str
) -> None:
    text, now = "WEBVTT\n", 0
    for seconds, said in cues:
        text += f"\n{now // 60:02}:{now % 60:02}.000 --> {(now + seconds) // 60:02}:{(now + seconds) % 60:02}.000\n"
        text, now = text + " ".join(said) + "\n", now + seconds
    found = drafted(captions_of(text), f"{name}.vtt")
    with tempfile.TemporaryDirectory() as root:
        if found is not None:
            write_new_folder(Path(root) / "mine", found.files)
            said_wrong = {"unit-pair", "written-sum", "range-order", *TO_DO}
            findings = review(ContentFolder(Path(root) / "mine", "mine")).findings
            assert [each for each in findings if each.severity is Severity.WRONG and each.check not in said_wrong] == []


def test_pair_that_was_said_wrong_is_told_by_begin_and_by_check(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:05.000\nSew at 5/8 inch (2 cm).\n"
    assert main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path, text)]) == 0
    assert "1 sum of the talk does not add up: see the head of the steps." in capsys.readouterr().out
    assert wrong(tmp_path / "mine") == ["5/8 inch is 1.6 cm, not 2 cm."]


def test_sum_that_the_step_before_explains_is_told_by_neither_begin_nor_check(tmp_path: Path) -> None:
    lay = "lay it flat on the table in front of you and smooth it with both hands until there is no fold left in it"
    text = (
        f"WEBVTT\n\n00:00.000 --> 00:25.000\nNow {lay}. First, cut the strap: 2 1/2 in x 40 in.\n\n"
        f"00:29.000 --> 01:00.000\nThen fold the strap in half, so it's 1 1/2 in wide. Sew 5/8 in (2 cm) from the edge. Now {lay}.\n"
    )
    assert main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path, text)]) == 0
    found = review(ContentFolder(tmp_path / "mine", "mine")).findings
    assert [each.check for each in found if each.check in ("told-sum", "unit-pair")] == ["unit-pair"]


def test_folder_without_captions_has_nothing_to_find_fault_with_but_what_is_to_be_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "mine"
    assert main(["begin", str(target)]) == 0
    assert f"A small content folder is in {target.as_posix()}." in capsys.readouterr().out
    home = "mine/tutorials/first-tutorial"
    assert to_do(target) == [
        ("text-unwritten", "mine/site.yaml", 2),
        ("text-unwritten", "mine/site.yaml", 3),
        ("text-unwritten", f"{home}/steps/01-first-step.yaml", 2),
        ("text-unwritten", f"{home}/steps/01-first-step.yaml", 5),
        ("text-unwritten", f"{home}/tutorial.yaml", 2),
        ("text-unwritten", f"{home}/tutorial.yaml", 3),
    ]
    written(target)
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


def test_captions_are_read_from_standard_input(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Typed:
        buffer = io.BytesIO(TALK.encode())

    monkeypatch.setattr("sys.stdin", Typed())
    assert main(["begin", str(tmp_path / "mine"), "--captions", "-"]) == 0
    assert "3 steps" in capsys.readouterr().out
    assert (tmp_path / "mine/tutorials/tutorial/tutorial.yaml").exists()
    Typed.buffer = io.BytesIO(b"Cut it.")
    assert main(["begin", str(tmp_path / "other"), "--captions", "-"]) == 2
    assert "standard input holds no captions." in capsys.readouterr().err


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


def test_names_are_shown_as_they_were_typed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    captions(tmp_path, "", "talk.vtt")
    (tmp_path / "mine" / "photos").mkdir(parents=True)
    assert main(["begin", "other", "--captions", "talk.vtt"]) == 2
    assert capsys.readouterr().err.startswith("sitegen: nothing was written. talk.vtt is empty.")
    assert main(["begin", "mine"]) == 2
    assert capsys.readouterr().err.startswith("sitegen: nothing was written. mine is there already")
    assert main(["begin", "my site"]) == 0
    assert capsys.readouterr().out.endswith('Run: sitegen check "my site"\n')


def test_captions_that_may_not_be_read_write_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    with folder_of_plain_user() as root:
        name = captions(root)
        os.chmod(name, 0)
        assert main(["begin", str(root / "mine"), "--captions", name]) == 2
        said = capsys.readouterr().err
        assert said.endswith(f"sitegen: nothing was written. The captions in {name} could not be read.\n")
        assert standing(root) == {"talk.vtt"}


def test_run_that_is_stopped_leaves_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "rename", stopped)
    assert main(["begin", str(tmp_path / "mine"), "--captions", captions(tmp_path)]) == 130
    assert capsys.readouterr().err == "sitegen: stopped. Nothing is half written.\n"
    assert standing(tmp_path) == {"talk.vtt"}


@pytest.mark.parametrize("typed", [[], ["mine", "other"], ["mine", "--captions"], ["mine", "--caption-file", "x"]])
def test_wrong_usage_writes_nothing(
    typed: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    with pytest.raises(SystemExit) as stop:
        main(["begin", *typed])
    assert stop.value.code == 2
    assert "usage: sitegen" in capsys.readouterr().err
    assert standing(tmp_path) == set()
