"""What is said of photos and of the marks on them: descriptions, numbers, words."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest
from checks.example_folder import lay_out

from sitegen.checks import review
from sitegen.findings import Finding
from sitegen.publishing import photo_findings
from sitegen.reading import ContentFolder

STEP = "--- photos/band-pinned_2.jpg (a picture)\n--- steps/01.yaml\ntitle: Pin the band\ntext: Match the marks.\n"


def found(folder: Path, photo: str, check: str) -> list[Finding]:
    """The findings of one check on a step with this photo, those of the picture files too."""
    content = ContentFolder(lay_out(f"{STEP}photo: {photo}\n", folder), "folder")
    result = review(content)
    return [each for each in (*result.findings, *photo_findings(result, content)) if each.check == check]


@pytest.mark.parametrize(
    ("shows", "words"),
    [
        ("", "has no description"),
        ("shows: Band pinned 2", "says only its file name"),
        ("shows: band-pinned_2.jpg", "says only its file name"),
        ("shows: photo", "says only that it is a picture"),
        ("shows: A photo of this step.", "says only that it is a picture"),
        ("shows: 'Picture 3'", "says only that it is a picture"),
        ("shows: '12'", "says only that it is a picture"),
    ],
)
def test_description_that_tells_nothing_is_doubtful(tmp_path: Path, shows: str, words: str) -> None:
    (finding,) = found(tmp_path, f"{{file: band-pinned_2.jpg, {shows}}}", "picture-undescribed")
    assert words in finding.message
    assert finding.message.endswith("such as shows: The band pinned at its quarter marks")
    assert (finding.place.file, finding.place.line) == ("folder/tutorials/example/steps/01.yaml", 3)


@pytest.mark.parametrize(
    "shows",
    ["The band pinned", "Photo of the band, pinned", "A picture of step 3: the band", "Drawing of the pocket", "Pins"],
)
def test_description_that_tells_something_is_taken(tmp_path: Path, shows: str) -> None:
    assert not found(tmp_path, f"{{file: band-pinned_2.jpg, shows: '{shows}'}}", "picture-undescribed")


@pytest.mark.parametrize(
    ("target", "said"),
    [
        ("outside.jpg", "photos/linked.jpg leads out of the content folder, and only files inside it are read."),
        ("content/nowhere.jpg", "photos/linked.jpg is a link that leads to nothing."),
        ("content/tutorials", "photos/linked.jpg is a folder, not a file."),
    ],
)
def test_picture_that_is_there_but_cannot_be_taken_is_told_why(tmp_path: Path, target: str, said: str) -> None:
    (tmp_path / "outside.jpg").write_bytes(b"x")
    root = lay_out(f"{STEP}photo: {{file: linked.jpg, shows: The band}}\n", tmp_path / "content")
    (root / "tutorials" / "example" / "photos" / "linked.jpg").symlink_to(tmp_path / target)
    told = [each for each in review(ContentFolder(root, "folder")).findings if each.check == "picture-missing"]
    assert [each.message.startswith(f"The picture {said}") for each in told] == [True], told
    assert told[0].said == "linked.jpg"


def test_photos_folder_that_cannot_be_opened_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = lay_out(f"{STEP}photo: {{file: band-pinned_2.jpg, shows: The band}}\n", tmp_path)
    plain = os.stat

    def refused(path: Any, *args: Any, **kinds: Any) -> os.stat_result:
        if str(path).endswith(".jpg"):
            raise PermissionError(13, "Permission denied")
        return plain(path, *args, **kinds)

    monkeypatch.setattr(os, "stat", refused)
    told = [each.message for each in review(ContentFolder(root, "folder")).findings if "picture" in each.check]
    assert told == ["The picture photos/band-pinned_2.jpg cannot be opened: you have no permission to read it."]


def test_picture_that_is_cut_off_is_told_before_publishing(tmp_path: Path) -> None:
    assert not found(tmp_path, "{file: band-pinned_2.jpg, shows: The band}", "picture-broken")
    (file,) = (tmp_path / "tutorials" / "example" / "photos").iterdir()
    file.write_bytes(file.read_bytes()[:-40])
    content = ContentFolder(tmp_path, "folder")
    told = [each.message for each in photo_findings(review(content), content)]
    assert told == [
        "band-pinned_2.jpg is damaged or cut off: it cannot be read to its end. Copy it from the camera again, or save"
        " it anew."
    ]


def marked(*marks: str) -> str:
    return f"{{file: band-pinned_2.jpg, shows: The band, marks: [{', '.join(marks)}]}}"


@pytest.mark.parametrize(
    ("mark", "check", "said", "words"),
    [
        ("{arrow: notch, from: [20%, 30%], to: [45%, 101%]}", "mark-outside", "101%", "from 0% to 100%, found 101% in to"),
        ("{circle: dot, at: [-1%, 30%], across: 12%}", "mark-outside", "-1%", "found -1% in at"),
        ("{circle: dot, at: [1%, 30%], across: 120%}", "mark-outside", "120%", "found 120% in across"),
        ("{arrow: notch, from: [20, 30%], to: [4%, 5%]}", "wrong-kind", "20", "a percentage of the picture in from"),
        ("{number: 1, text: Seam, at: 30%}", "wrong-kind", "30%", "how far across and how far down"),
        ("{number: 1, text: Seam, at: [1%, 2%, 3%]}", "wrong-kind", "", "how far across and how far down"),
        ("{number: one, text: Seam, at: [30%, 40%]}", "wrong-kind", "one", "a whole number"),
        ("{number: 1, at: [30%, 40%]}", "key-missing", "", "The number on a photo lacks text. Example: {number: 1,"),
        ("{arrow: notch, from: [20%, 30%]}", "key-missing", "", "The arrow on a photo lacks to. Example: {arrow:"),
        ("{circle: dot, at: [50%, 40%]}", "key-missing", "", "The circle on a photo lacks across."),
        ("{arrow: , from: [20%, 30%], to: [45%, 50%]}", "empty-value", "arrow", "has no value"),
        ("{arrow: notch, from: [20%, 30%], too: [45%, 50%]}", "unknown-key", "too", "Did you mean to?"),
        ("{square: dot, at: [50%, 40%]}", "mark-kind", "square", "an arrow, a circle or a number; found “square”"),
        ("{arow: dot, at: [50%, 40%]}", "mark-kind", "arow", "found “arow”"),
        ("{arrow: dot, circle: dot, at: [50%, 40%]}", "mark-kind", "circle", "found two of them in one"),
        ("{}", "mark-kind", "", "found nothing"),
        ("notch", "wrong-kind", "notch", "keys with values"),
        ("{arrow: 'to {seam_allowance}', from: [20%, 30%], to: [45%, 50%]}", "mark-reference", "seam_allowance", "Use a"),
        ("{arrow: notch, from: [20%, 30%], to: [23%, 30%]}", "mark-unseen", "", "is 3% of the picture's width long"),
        ("{circle: dot, at: [50%, 50%], across: 2%}", "mark-unseen", "", "is 2% of the picture's width across"),
        ("{circle: dot, at: [50%, 90%], across: 20%}", "mark-unseen", "", "is cut off by the edge of the picture"),
        ("{number: 1, text: Seam, at: [0%, 50%]}", "mark-unseen", "", "Number 1 is cut off by the edge"),
        ("{number: 2, text: Seam, at: [50%, 50%]}", "mark-numbers", "", "expected 1 to 1, found 2"),
    ],
)  # fmt: skip
def test_mark_that_cannot_be_drawn_is_told(tmp_path: Path, mark: str, check: str, said: str, words: str) -> None:
    findings = found(tmp_path, marked(mark), check)
    assert len(findings) == 1, findings
    assert words in findings[0].message
    assert findings[0].said == said
    assert findings[0].place.line == 3
    assert findings[0].place.column > len("photo: {file: band-pinned_2.jpg, shows: The band, marks:")


def test_nearest_kind_of_mark_is_put_in_the_place_of_a_misspelt_one(tmp_path: Path) -> None:
    (finding,) = found(tmp_path, marked("{arow: dot, from: [50%, 40%], to: [20%, 20%]}"), "mark-kind")
    assert finding.should_be == "arrow"


@pytest.mark.parametrize(
    "other", ["{number: 2, text: Hem, at: [33%, 40%]}", "{arrow: hem, from: [70%, 70%], to: [31%, 41%]}"]
)
def test_mark_on_a_mark_is_told_at_the_later_one(tmp_path: Path, other: str) -> None:
    (finding,) = found(tmp_path, marked("{number: 1, text: Seam, at: [30%, 40%]}", other), "mark-covered")
    assert "lies on number 1" in finding.message
    assert finding.place.column > len("photo: {file: band-pinned_2.jpg, shows: The band, marks: [{number: 1")


def test_circle_round_a_number_covers_nothing(tmp_path: Path) -> None:
    marks = ("{number: 1, text: Seam, at: [50%, 50%]}", "{circle: dot, at: [50%, 50%], across: 30%}")
    assert not found(tmp_path, marked(*marks), "mark-covered")


def test_number_that_stands_twice_is_told_once(tmp_path: Path) -> None:
    marks = [f"{{number: {n}, text: Seam, at: [{at}%, 50%]}}" for n, at in ((1, 20), (2, 50), (2, 80))]
    findings = found(tmp_path, marked(*marks), "mark-numbers")
    assert [each.message.rpartition("expected ")[2] for each in findings] == ["1 to 3, found 1, 2, 2."]


def test_number_in_the_text_of_a_mark_is_held_as_any_other(tmp_path: Path) -> None:
    mark = "{number: 1, text: 'The seam, 5/8 in (1 cm)', at: [50%, 50%]}"
    assert len(found(tmp_path, marked(mark), "unit-pair")) == 1


def test_reference_to_nothing_in_the_text_of_a_mark_is_told(tmp_path: Path) -> None:
    mark = "{number: 1, text: 'The seam, {seam_alowance}', at: [50%, 50%]}"
    assert len(found(tmp_path, marked(mark), "unknown-reference")) == 1
