"""The chapters of a video, one for each card with a time in it, as players show them.

Format: WebVTT, W3C Candidate Recommendation of 2019, section 4.1, with chapter titles as its text.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from sitegen.tutorial import Step, Tutorial, video_seconds

CHAPTERS = "chapters.vtt"
"""The name of the file, beside the page of the tutorial."""
_A_MINUTE = 60


def chapters(tutorial: Tutorial) -> str:
    """The chapters as a WebVTT file, empty where no card has a time.

    A chapter ends where the next begins. The last one ends with the video if its length is known, else as many
    minutes later as its card takes, or one. Cards with one time are one chapter.
    """
    found: dict[int, list[Step]] = {}
    for seconds, step in sorted(_timed(tutorial), key=lambda each: each[0]):
        found.setdefault(seconds, []).append(step)
    if not found:
        return ""
    last = max(found)
    spans = pairwise([*found, _end(tutorial, last, found[last])])
    cues = [f"{_time(begins)} --> {_time(ends)}\n{_title(found[begins])}\n" for begins, ends in spans]
    return "\n".join(["WEBVTT\n", *cues])


def _timed(tutorial: Tutorial) -> Iterator[tuple[int, Step]]:
    for step in tutorial.steps:
        seconds = video_seconds(step.video.text) if step.video is not None else None
        if seconds is not None:
            yield seconds, step


def _end(tutorial: Tutorial, last: int, steps: list[Step]) -> int:
    length = video_seconds(tutorial.video_length.text) if tutorial.video_length is not None else None
    if length is not None and length > last:
        return length
    return last + max(_A_MINUTE, sum(step.minutes or 0 for step in steps) * 60)


def _time(seconds: int) -> str:
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}.000"


def _title(steps: list[Step]) -> str:
    """The titles in one line, with the signs replaced that mark up a text of WebVTT; no arrow is left then."""
    words = "; ".join(" ".join(step.title.split()) or f"Step {step.number}" for step in steps)
    return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
