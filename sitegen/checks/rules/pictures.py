"""Pictures of the steps."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.checks.registry import check
from sitegen.findings import Finding, Severity
from sitegen.tutorial import Computed, Photo

_STEP = "--- steps/01.yaml\ntitle: Pin the band\ntext: Match the quarter marks.\n"


@check(
    id="picture-missing",
    area="pictures",
    severity=Severity.WRONG,
    looks_at=Photo,
    title="A picture that is not there",
    why="The student sees a hole where the picture should be.",
    source="Arithmetic of files: the photos folder of the tutorial",
    trips=_STEP + "photo: {file: band-pinned.jpg, shows: The band pinned at its quarter marks}",
    passes=_STEP,
)
def picture_missing(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """Every picture that a step names must lie in the tutorial's photos folder."""
    if not photo.exists:
        yield Finding(
            "picture-missing",
            Severity.WRONG,
            photo.place,
            f"There is no picture photos/{photo.file} in this tutorial's folder.",
            photo.file,
        )


@check(
    id="picture-undescribed",
    area="pictures",
    severity=Severity.DOUBTFUL,
    looks_at=Photo,
    title="A picture without a description",
    why="Who cannot see the picture learns nothing from it.",
    source="Web Content Accessibility Guidelines 2.2, success criterion 1.1.1",
    trips=_STEP + "photo: {file: band-pinned.jpg}",
    passes=_STEP,
)
def picture_undescribed(photo: Photo, computed: Computed) -> Iterator[Finding]:
    """Every picture says what it shows."""
    if not photo.shows:
        yield Finding(
            "picture-undescribed",
            Severity.DOUBTFUL,
            photo.place,
            f"Picture {photo.file} has no description. Add what it shows, such as"
            " shows: The band pinned at its quarter marks",
            photo.file,
        )
