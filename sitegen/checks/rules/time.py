"""Minutes of a card, and the times of its place in the video."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from sitegen.checks.registry import COMMON_PRACTICE, check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Step, Tutorial, Words, video_seconds

MOST_MINUTES = 240
"""A card that takes longer than half a day of lessons is rather a typing slip, or several cards."""
_ALMOST = re.compile(r"(\d{1,3})\s?[.,;]\s?([0-5]\d)")


@check(
    id="minutes-odd",
    area="time",
    severity=Severity.DOUBTFUL,
    looks_at=Step,
    title="A card that takes no time, or more than four hours",
    why="Students plan their evening and teachers their lessons by it.",
    source=COMMON_PRACTICE,
    trips="--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nminutes: 300",
    passes="--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nminutes: 30",
)
def minutes_odd(step: Step, computed: Computed) -> Iterator[Finding]:
    """A card takes from 1 to 240 minutes."""
    if step.minutes is None or 1 <= step.minutes <= MOST_MINUTES:
        return
    yield Finding(
        "minutes-odd",
        Severity.DOUBTFUL,
        step.minutes_place,
        "This card takes 0 minutes. Leave minutes out if they are not known."
        if step.minutes == 0
        else f"This card takes {step.minutes} minutes, more than four hours. Is there a digit too many, or"
        " should these be several cards?",
        str(step.minutes),
    )


@check(
    id="video-time",
    area="time",
    severity=Severity.WRONG,
    looks_at=Step,
    title="A time in the video that is none",
    why="The student cannot find the place.",
    source="The content format of this program: minutes and seconds, with hours before them in a long video; a minute"
    " has 60 seconds",
    trips='--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nvideo: "14.20"',
    passes='--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nvideo: "14:20"',
)
def video_time(step: Step, computed: Computed) -> Iterator[Finding]:
    """The time in a video is written 14:20 or 1:14:20, and has fewer than 60 seconds and, with hours, than 60
    minutes."""
    if step.video is None or video_seconds(step.video.text) is not None:
        return
    almost = _ALMOST.fullmatch(step.video.text)
    yield Finding(
        "video-time",
        Severity.WRONG,
        step.video.place,
        f"“{step.video.text}” is no time in a video. Write minutes and seconds, such as 14:20, or hours before them,"
        " such as 1:14:20.",
        step.video.text,
        f"{almost[1]}:{almost[2]}" if almost else "",
    )


@dataclass(frozen=True, slots=True)
class _At:
    """A card and when it is shown."""

    step: Step
    words: Words
    seconds: int


@check(
    id="video-order",
    area="time",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="Times in the video that go backwards",
    why="The student is sent to another place of the video than that of the card.",
    source="Follows from the cards: they are in the order of making, and so is the video",
    trips='--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nvideo: "14:20"\n'
    '--- steps/02.yaml\ntitle: Sew the band\ntext: Sew it.\nvideo: "1:50"',
    passes='--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nvideo: "14:20"\n'
    '--- steps/02.yaml\ntitle: Sew the band\ntext: Sew it.\nvideo: "15:50"',
)
def video_order(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """From card to card the times in the video do not go backwards. Where one card alone is out of order, it is the one
    that is named."""
    times = [
        _At(step, step.video, seconds)
        for step in tutorial.steps
        if step.video is not None and (seconds := video_seconds(step.video.text)) is not None
    ]
    index = 1
    while index < len(times):
        before, here = times[index - 1], times[index]
        if here.seconds >= before.seconds:
            index += 1
        elif _too_late(times, index - 1):
            yield _out_of_order(before, f"after {here.words.text}, the time of the next card, “{here.step.title}”")
            del times[index - 1]
            index = max(1, index - 1)
        else:
            yield _out_of_order(here, f"before {before.words.text}, the time of the card before, “{before.step.title}”")
            del times[index]


def _too_late(times: list[_At], index: int) -> bool:
    """Whether all would be well without this card, and not without the next one."""
    before = times[index - 1].seconds if index else 0
    after = times[index + 2].seconds if index + 2 < len(times) else None
    return before <= times[index + 1].seconds and after is not None and after < times[index].seconds


def _out_of_order(at: _At, how: str) -> Finding:
    return Finding(
        "video-order",
        Severity.WRONG,
        at.words.place,
        f"The time in the video of this card, {at.words.text}, lies {how}.",
        at.words.text,
    )
