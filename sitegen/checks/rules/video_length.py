"""How long a video is, and whether the times of the cards lie in it."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Tutorial, video_seconds

_SOURCE = "The content format of this program: a time in a video is read as players show it"
_CARDS = (
    '--- steps/01.yaml\ntitle: Pin the band\ntext: Pin it.\nvideo: "14:20"\n'
    '--- steps/02.yaml\ntitle: Sew the band\ntext: Sew it.\nvideo: "24:20"\n'
)


@check(
    id="video-length",
    area="time",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A length of a video that is none",
    why="The last chapter of the video ends there.",
    source=_SOURCE,
    trips='video_length: "0:00"\n',
    passes='video_length: "42:10"\n',
)
def video_length(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The length of a video is written 42:10 or 1:42:10, and is more than nothing."""
    length = tutorial.video_length
    if length is None or video_seconds(length.text):
        return
    yield Finding(
        "video-length",
        Severity.WRONG,
        length.place,
        f'“{length.text}” is no length of a video. Write minutes and seconds in quotes, such as "42:10", or hours'
        ' before them, such as "1:42:10".',
        length.text,
    )


@check(
    id="video-beyond",
    area="time",
    severity=Severity.WRONG,
    looks_at=Tutorial,
    title="A time behind the end of the video",
    why="The student is sent to a place that the video does not have.",
    source="Follows from the length of the video, video_length in tutorial.yaml",
    trips=f'video_length: "20:00"\n{_CARDS}',
    passes=f'video_length: "42:10"\n{_CARDS}',
)
def video_beyond(tutorial: Tutorial, computed: Computed) -> Iterator[Finding]:
    """The time of a card lies before the end of the video."""
    length = tutorial.video_length
    until = video_seconds(length.text) if length is not None else None
    if length is None or not until:
        return
    for step in tutorial.steps:
        begins = video_seconds(step.video.text) if step.video is not None else None
        if step.video is not None and begins is not None and begins >= until:
            yield Finding(
                "video-beyond",
                Severity.WRONG,
                step.video.place,
                f"The time in the video of this card is {step.video.text}, but the video is {length.text} long."
                " One of the two is not right.",
                step.video.text,
            )
