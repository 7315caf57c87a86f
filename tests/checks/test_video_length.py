"""The length of the video, and cards that point behind its end."""

from __future__ import annotations

from pathlib import Path

import pytest
from content import reviewed

from sitegen.findings import Finding


def found(root: Path, length: str, *times: str) -> list[Finding]:
    files = {
        f"steps__{at:02}_dot_yaml": f'title: Card {at}\ntext: Sew.\nvideo: "{time}"\n'
        for at, time in enumerate(times, 1)
    }
    text = f'video_length: "{length}"\n'
    return [each for each in reviewed(root, text, **files).findings if each.check.startswith("video-")]


def test_card_behind_the_end_of_the_video_is_wrong(tmp_path: Path) -> None:
    (finding,) = found(tmp_path, "20:00", "14:20", "24:20")
    assert (
        finding.message
        == "The time in the video of this card is 24:20, but the video is 20:00 long. One of the two is not right."
    )
    assert (finding.check, finding.place.file, finding.place.line, finding.said) == (
        "video-beyond", "folder/tutorials/tee/steps/02.yaml", 3, "24:20",
    )  # fmt: skip


def test_card_at_the_very_end_has_nothing_to_show(tmp_path: Path) -> None:
    assert [each.check for each in found(tmp_path, "20:00", "20:00")] == ["video-beyond"]
    assert found(tmp_path, "20:01", "20:00") == []


@pytest.mark.parametrize("length", ["42.10", "0:00", "1:75:10", "42 minutes", "42:1"])
def test_length_that_is_none_is_wrong(length: str, tmp_path: Path) -> None:
    (finding,) = found(tmp_path, length, "14:20")
    assert (finding.check, finding.said, finding.place.line) == ("video-length", length, 4)
    assert finding.message.startswith(f"“{length}” is no length of a video.")


@pytest.mark.parametrize("length", ["42:10", "1:42:10", "75:00"])
def test_length_as_players_show_it_is_left_alone(length: str, tmp_path: Path) -> None:
    assert found(tmp_path, length, "14:20") == []
